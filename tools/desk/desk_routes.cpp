#include "desk/desk_routes.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <optional>
#include <string_view>
#include <utility>

#include "calendar.h"
#include "desk/desk_error.h"
#include "desk/desk_guard.h"
#include "desk/desk_page.h"
#include "desk/dossier_state.h"
#include "desk/json_request.h"
#include "desk/record_lines.h"
#include "desk/words_answer.h"
#include "document/sha256.h"
#include "evidence/dossier_data.h"
#include "grainside/version.h"
#include "report/fixed_texts.h"
#include "rules/book_data.h"

namespace grainside::desk {

using report::JsonWriter;

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
    if (!post && request.path == "/dossiers") return json(dossiers());
    if (!post && request.path == "/dossier") return json(dossier(request));
    if (!post) {
        if (std::optional<HttpAnswer> file = page_file(request.path)) return std::move(*file);
    }
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
    const std::lock_guard lock(judging_);
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

std::string DeskRoutes::dossier(const HttpRequest& request) {
    const std::lock_guard lock(judging_);
    DossierText dossier;
    dossier.name = request.parameter("name");
    dossier.text = folder_.read(dossier.name);
    dossier.digest = document::sha256_of(dossier.text);
    return dossier_state(books_, dossier, folder_.path());
}

}  // namespace grainside::desk
