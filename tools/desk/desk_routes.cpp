#include "desk/desk_routes.h"

#include <algorithm>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <string_view>
#include <utility>

#include "calendar.h"
#include "desk/desk_error.h"
#include "desk/desk_guard.h"
#include "desk/desk_page.h"
#include "desk/dossier_change.h"
#include "desk/json_request.h"
#include "desk/methods_answer.h"
#include "desk/picture_store.h"
#include "desk/record_lines.h"
#include "desk/report_answer.h"
#include "desk/words_answer.h"
#include "desk/yaml_shape.h"
#include "document/sha256.h"
#include "evidence/cost_data.h"
#include "evidence/dossier_data.h"
#include "evidence/evidence_data.h"
#include "grainside/version.h"
#include "report/fixed_texts.h"
#include "rules/book_data.h"

namespace grainside::desk {

using report::JsonWriter;

namespace {

// A dossier with faults may be saved only where it had as many before: so they can be mended one by one.
void refuse_new_faults(const DeskBooks& books, const DossierText& old, const DossierText& changed,
                       const std::filesystem::path& folder) {
    const Result<Dossier> after = read_dossier_text(books, changed, folder);
    if (after) return;
    const std::size_t before = old.text.empty() ? 0 : read_dossier_text(books, old, folder).issues().size();
    if (after.issues().size() <= before) return;
    throw DeskError{400, "has-faults", "the dossier would have faults", "mend them before you save", after.issues()};
}

std::string new_dossier_text(const JsonValue& request) {
    YamlShape sample = YamlShape::mapping();
    const auto what = optional_text(request, "what");
    sample.add("what", YamlShape::scalar(what && !what->empty() ? *what : text_member(request, "name")));
    if (const auto category = optional_text(request, "category"); category && !category->empty()) {
        sample.add("category", YamlShape::scalar(*category));
    }
    const auto lines = [](const YamlShape& section) {
        std::string text;
        for (const auto& [key, value] : section.children) {
            text.append("  ").append(written_in_lines(key, value, 2, "\n")).append("\n");
        }
        return text;
    };
    std::string text = "sample:\n" + lines(sample);
    YamlShape listing = YamlShape::mapping();
    for (const std::string_view key : {"name", "description"}) {
        const auto words = optional_text(request["listing"], key);
        if (words && !words->empty()) listing.add(key, YamlShape::scalar(*words));
    }
    if (listing.children.empty()) return text;
    std::vector<std::pair<std::string, YamlShape>> capture{{"captured", YamlShape::scalar(tools::today())}};
    if (const auto region = optional_text(request["listing"], "region"); region && !region->empty()) {
        capture.emplace_back("region", YamlShape::scalar(*region));
    }
    listing.children.insert(listing.children.begin(), capture.begin(), capture.end());
    return text + "listing:\n" + lines(listing);
}

std::string kept_picture(std::string_view file) {
    std::string out;
    JsonWriter json(out);
    json.begin_object();
    json.member("photo", file);
    json.end_object();
    return out;
}

}  // namespace

HttpAnswer DeskRoutes::answer(const HttpRequest& request) {
    HttpAnswer answer;
    try {
        answer = route(request);
    } catch (const DeskError& error) {
        answer = error_answer(error);
    }
    add_safe_headers(answer);
    return answer;
}

HttpAnswer DeskRoutes::route(const HttpRequest& request) {
    const auto json = [](std::string body) { return HttpAnswer{.body = std::move(body)}; };
    const bool post = request.method == "POST";
    if (post && request.path == "/words") return json(words_answer(books_, parse_request(request.body)));
    if (!post && request.path == "/about") return json(about());
    if (!post && request.path == "/methods") return json(methods_answer(books_));
    if (!post) {
        if (std::optional<HttpAnswer> file = page_file(request.path)) return std::move(*file);
    }

    // One at a time from here on.
    const std::lock_guard lock(judging_);
    const std::string_view name = request.parameter("name");
    if (!post && request.path == "/dossiers") return json(dossiers());
    if (!post && request.path == "/dossier") {
        // Asked every few seconds, to notice what is changed by hand.
        if (const std::string_view was = request.parameter("was"); !was.empty()) {
            if (document::sha256_of(folder_.read(name)) == was) return {.status = 204, .body = {}};
        }
        return json(state(read(name)));
    }
    if (!post && request.path == "/report") {
        return report_answer(books_, read(name), folder_.path(), request.parameter("form"));
    }
    if (!post && request.path == "/picture") return picture_answer(folder_, name, request.parameter("photo"));
    if (!post) throw DeskError{404, "not-found", "the desk has nothing here"};
    if (request.path == "/picture") return json(kept_picture(keep_picture(folder_, name, request.body)));
    if (request.path == "/dossier/try") return json(try_or_save(parse_request(request.body), false));
    if (request.path == "/dossier/save") return json(try_or_save(parse_request(request.body), true));
    if (request.path == "/dossier/undo") return json(step(parse_request(request.body), true));
    if (request.path == "/dossier/redo") return json(step(parse_request(request.body), false));
    if (request.path == "/dossier/new") return json(create(parse_request(request.body)));
    throw DeskError{404, "not-found", "the desk has nothing here"};
}

std::string DeskRoutes::about() const {
    std::string out;
    JsonWriter json(out);
    json.begin_object();
    json.member("folder", std::string_view(folder_.name()));
    json.member("today", std::string_view(tools::today()));
    write_list(json, "market", books_.markets,
               [&](const std::string& market) { json.value(std::string_view(market)); });
    json.optional_member("on", books_.on);
    write_list(json, "markets", books_.rules.markets(), [&](const std::string& market) {
        json.begin_object();
        json.member("market", std::string_view(market));
        json.member("name", books_.rules.market_name(market));
        json.end_object();
    });
    const auto& categories = books_.rules.data().vocabulary.categories;
    json.key("categories");
    json.begin_array();
    for (std::size_t i = 1; i < categories.size(); ++i) json.value(std::string_view(categories[i].name));
    json.end_array();
    write_list(json, "currencies", books_.evidence.data().costs.currencies, [&](const evidence::Currency& currency) {
        json.begin_object();
        json.member("currency", std::string_view(currency.id));
        json.member("name", std::string_view(currency.name));
        json.end_object();
    });
    // Of which a line of costs may be: what a thing is or was made into, no trait that several such share.
    const auto& concepts = books_.rules.data().vocabulary.concepts;
    json.key("materials");
    json.begin_array();
    for (std::size_t i = 1; i < concepts.size(); ++i) {
        const auto id = static_cast<ConceptId>(i);
        if (concepts.kind(id) >= Kind::composition || books_.rules.concept_name(id).starts_with("trait-")) continue;
        json.begin_object();
        json.member("material", books_.rules.concept_name(id));
        json.member("name", books_.rules.concept_wording(id));
        json.end_object();
    }
    json.end_array();
    json.key("grades");
    json.begin_array();
    for (std::size_t grade = 0; grade < 6; ++grade) {
        json.begin_object();
        json.member("grade", name_of(static_cast<Grade>(grade)));
        json.member("means", report::meaning_of(static_cast<Grade>(grade)));
        json.end_object();
    }
    json.end_array();
    json.key("foot");
    json.begin_array();
    for (const std::string_view text : {report::kNoAdvice, report::kReadingNote}) json.value(text);
    json.end_array();
    json.member("rule_book", books_.rules.digest());
    json.member("version", std::string_view(kVersion));
    json.end_object();
    return out;
}

std::string DeskRoutes::dossiers() {
    std::string out;
    JsonWriter json(out);
    json.begin_object();
    json.member("folder", std::string_view(folder_.name()));
    const FolderListing listing = folder_.list();
    write_list(json, "dossiers", listing.dossiers, [&](const FoundDossier& found) {
        json.begin_object();
        json.member("name", std::string_view(found.name));
        json.member("changed", std::string_view(found.changed));
        try {
            const Result<Dossier> read =
                read_dossier_text(books_, {found.name, folder_.read(found.name), {}}, folder_.path());
            json.member("what", std::string_view(read ? read.value().data().what : std::string()));
            json.member("parts", std::uint64_t{read ? read.value().data().parts.size() : 0});
            json.member("readings", std::uint64_t{read ? read.value().reading_count() : 0});
            json.member("faults", std::uint64_t{read.issues().size()});
        } catch (const DeskError& error) {
            json.member("error", std::string_view(error.message));
        }
        json.end_object();
    });
    json.member("others", std::uint64_t{listing.others});
    json.end_object();
    return out;
}

// A file that somebody else changed comes back with what it says now.
std::string DeskRoutes::try_or_save(const JsonValue& request, bool save) {
    const std::string name(text_member(request, "name"));
    const std::string_view was = text_member(request, "was");
    DossierText dossier = read(name);
    try {
        if (dossier.digest != was) {
            throw DeskError{409, "stale", "the dossier was changed by somebody else",
                            "look at what it says now, and make the change again"};
        }
        const std::string old = dossier.text;
        dossier.text = changed_text(old, request["changes"], books_.evidence);
        if (!save) return state(dossier);
        refuse_new_faults(books_, {name, old, {}}, dossier, folder_.path());
        store_.save(name, was, dossier.text);
    } catch (DeskError& error) {
        if (error.status == 409) error.now = state(read(name));
        throw;
    }
    return state(read(name));
}

std::string DeskRoutes::step(const JsonValue& request, bool back) {
    const std::string name(text_member(request, "name"));
    const std::string_view was = text_member(request, "was");
    try {
        if (back) {
            store_.undo(name, was);
        } else {
            store_.redo(name, was);
        }
    } catch (DeskError& error) {
        if (error.status == 409) error.now = state(read(name));
        throw;
    }
    return state(read(name));
}

std::string DeskRoutes::create(const JsonValue& request) {
    const std::string name(text_member(request, "name"));
    const std::string text = new_dossier_text(request);
    refuse_new_faults(books_, {}, {name, text, {}}, folder_.path());
    store_.create(name, text);
    return state(read(name));
}

}  // namespace grainside::desk
