// Any bytes as a dossier: what loads is reported in every form, the same each time, and nothing of it gets out of the
// form: elements of HTML that are ours alone and closed in their order, CSV of equal rows, no character that is obeyed.
#include <array>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "document/inert_text.h"
#include "document/utf8.h"
#include "grainside/full_report.h"

namespace {

using namespace grainside;

// A longer text only says more of the same, and a plan takes 20 ms.
constexpr std::size_t kMaxInputBytes = 2048;
// With costs, a report draws some hundred thousand numbers: the cost side has its own tests, and fuzz_dossier reads it.
constexpr std::string_view kSlow = "costs";

void require(bool holds) {
    if (!holds) std::abort();
}

const EvidenceBook& book() {
    static const RuleBook rules = std::move(RuleBook::built_in()).value();
    static const EvidenceBook evidence = std::move(EvidenceBook::load(rules)).value();
    return evidence;
}

void check_characters(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const document::DecodedChar decoded = document::decode_utf8(text, at);
        require(decoded.valid);
        const bool ends_line = text[at] == '\n' || (text[at] == '\r' && at + 1 < text.size() && text[at + 1] == '\n');
        require(ends_line || !document::is_obeyed(decoded.point));
        at += decoded.length;
    }
}

// Every '<' of the page begins a tag of ours; tags are closed in their order.
void check_page(std::string_view page) {
    std::vector<std::string_view> open;
    for (std::size_t at = page.find('<'); at != std::string_view::npos; at = page.find('<', at + 1)) {
        const std::size_t end = page.find('>', at);
        require(end != std::string_view::npos);
        const std::string_view tag = page.substr(at + 1, end - at - 1);
        if (tag.starts_with('!') || tag.starts_with("meta") || tag.ends_with('/')) continue;
        const std::string_view name = tag.substr(0, tag.find(' '));
        if (name.starts_with('/')) {
            require(!open.empty() && open.back() == name.substr(1));
            open.pop_back();
            continue;
        }
        for (const char c : name) require((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'));
        require(name != "script" && name != "img" && name != "iframe" && name != "object");
        open.push_back(name);
        // The styles are a constant, and hold '>'.
        if (name == "style") at = page.find("</style>", at) - 1;
    }
    require(open.empty());
}

void check_table(std::string_view table) {
    std::size_t columns = 0;
    std::size_t cells = 1;
    bool quoted = false;
    for (const char c : table) {
        if (c == '"') quoted = !quoted;
        if (quoted) continue;
        if (c == ',') ++cells;
        if (c != '\n') continue;
        require(columns == 0 || columns == cells);
        columns = cells;
        cells = 1;
    }
    require(!quoted && columns > 0);
}

std::array<std::string, 4> forms_of(const Dossier& dossier) {
    Judge judge(book().rule_book(), book(), {.check = {}, .today = "2026-11-26"});
    const std::vector<FullReport> reports = [&] {
        std::vector<FullReport> made;
        made.push_back(FullReport::gather({book().rule_book(), book(), dossier}, judge));
        return made;
    }();
    std::array<std::string, 4> forms;
    write_html(reports, forms[0]);
    write_markdown(reports, forms[1]);
    write_json(reports, forms[2]);
    write_csv(reports, forms[3]);
    return forms;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    if (size > kMaxInputBytes || text.find(kSlow) != std::string_view::npos) return 0;
    const auto dossier = Dossier::parse("d.yaml", std::string(text), std::filesystem::path("no-such-folder"), book(),
                                        {.today = "2026-11-26"});
    if (!dossier) return 0;
    const auto forms = forms_of(dossier.value());
    require(forms == forms_of(dossier.value()));
    for (const std::string& form : forms) check_characters(form);
    check_page(forms[0]);
    check_table(forms[3]);
    return 0;
}
