// What must hold for every form of a report, whatever text went into it: it is well-formed, and nothing of the text is
// obeyed by a terminal, a page, a spreadsheet or a reader of Markdown.
//
// Written for speed, and stricter than the formats are: each function knows what our writers write and nothing else. By
// readers that are not ours tests/cli/check_inert.py and tests/page look at the same forms.
#ifndef GRAINSIDE_TESTS_FUZZ_INERT_FORMS_H
#define GRAINSIDE_TESTS_FUZZ_INERT_FORMS_H

#include <algorithm>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

#include "document/inert_text.h"
#include "document/utf8.h"
#include "grainside/result.h"
#include "listing/json_scanner.h"
#include "require.h"

namespace grainside::fuzz {

// UTF-8 without a control or formatting character but line ends.
inline void check_characters(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const document::DecodedChar decoded = document::decode_utf8(text, at);
        require(decoded.valid);
        const bool ends_line = text[at] == '\n' || (text[at] == '\r' && at + 1 < text.size() && text[at + 1] == '\n');
        require(ends_line || !document::is_obeyed(decoded.point));
        at += decoded.length;
    }
}

// An issue as it is printed.
inline void check_issue(const Issue& issue) {
    require(!issue.code.empty() && !issue.message.empty());
    check_characters(to_text(issue));
}

// `rest` is what stands behind the name of a tag: nothing in it runs, fetches or leads off the page.
inline void check_attributes(std::string_view rest) {
    while (true) {
        rest.remove_prefix(std::min(rest.find_first_not_of(' '), rest.size()));
        if (rest.empty() || rest == "/") return;
        const std::string_view name = rest.substr(0, rest.find_first_of(" ="));
        for (const char c : name)
            require((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-');
        require(!name.empty() && !name.starts_with("on") && name != "style" && name != "src" && name != "action");
        rest.remove_prefix(name.size());
        if (!rest.starts_with('=')) continue;
        require(rest.starts_with("=\""));
        const std::size_t end = rest.find('"', 2);
        require(end != std::string_view::npos);
        require(name != "href" || rest[2] == '#');
        rest.remove_prefix(end + 1);
    }
}

// Every '<' of the page begins a tag of ours; tags are closed in their order.
inline void check_page(std::string_view page) {
    check_characters(page);
    std::vector<std::string_view> open;
    for (std::size_t at = page.find('<'); at != std::string_view::npos; at = page.find('<', at + 1)) {
        const std::size_t end = page.find('>', at);
        require(end != std::string_view::npos);
        std::string_view tag = page.substr(at + 1, end - at - 1);
        if (tag == "!DOCTYPE html" || tag == "!doctype html") continue;
        const std::string_view name = tag.substr(0, tag.find(' '));
        if (name.starts_with('/')) {
            require(!open.empty() && open.back() == name.substr(1));
            open.pop_back();
            continue;
        }
        for (const char c : name) require((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '/');
        require(name != "script" && name != "img" && name != "iframe" && name != "object" && name != "form");
        check_attributes(tag.substr(name.size()));
        if (name == "meta" || tag.ends_with('/')) continue;
        open.push_back(name);
        // The styles are a constant, and hold '>'.
        if (name == "style") at = page.find("</style>", at) - 1;
    }
    require(open.empty());
}

// What a spreadsheet takes for a formula, in the letters of either width.
inline bool begins_formula(std::string_view cell) {
    constexpr std::string_view kBeginnings[] = {
        "=", "+", "-", "@", "\xEF\xBC\x9D", "\xEF\xBC\x8B", "\xEF\xBC\x8D", "\xEF\xBC\xA0", "\xE2\x88\x92"};
    cell.remove_prefix(std::min(cell.find_first_not_of(" \t\r\n"), cell.size()));
    return std::any_of(std::begin(kBeginnings), std::end(kBeginnings),
                       [&](std::string_view beginning) { return cell.starts_with(beginning); });
}

// Rows of one width (RFC 4180), no cell a formula.
inline void check_table(std::string_view table) {
    check_characters(table);
    std::size_t columns = 0;
    std::size_t cells = 0;
    while (!table.empty()) {
        std::string cell;
        if (table.starts_with('"')) {
            for (table.remove_prefix(1);; table.remove_prefix(1)) {
                require(!table.empty());
                if (table[0] == '"' && !table.starts_with("\"\"")) break;
                if (table[0] == '"') table.remove_prefix(1);
                cell += table[0];
            }
            table.remove_prefix(1);
        } else {
            cell = table.substr(0, table.find_first_of(",\r\n\""));
            table.remove_prefix(cell.size());
        }
        require(!begins_formula(cell));
        ++cells;
        require(table.starts_with(',') || table.starts_with("\r\n"));
        if (table.starts_with(',')) {
            table.remove_prefix(1);
            require(!table.empty());
            continue;
        }
        table.remove_prefix(2);
        require(columns == 0 || columns == cells);
        columns = std::exchange(cells, 0);
    }
    require(cells == 0 && columns > 0);
}

// A view with colours: of escape sequences only those that set a colour or a style ("ESC [ digits m",
// ECMA-48, 8.3.117).
inline void check_coloured(std::string_view text) {
    std::string plain;
    for (std::size_t at = 0; at < text.size(); ++at) {
        if (!text.substr(at).starts_with("\x1b[")) {
            plain += text[at];
            continue;
        }
        at = text.find_first_not_of("0123456789;", at + 2);
        require(at != std::string_view::npos && text[at] == 'm');
    }
    check_characters(plain);
}

// One JSON value.
inline void check_json(std::string_view text) {
    check_characters(text);
    listing::JsonScanner scanner;
    require(scanner.is_document(text));
}

// One JSON object a line.
inline void check_json_lines(std::string_view text) {
    while (!text.empty()) {
        const std::size_t end = text.find('\n');
        require(end != std::string_view::npos && text.starts_with('{'));
        check_json(text.substr(0, end));
        text.remove_prefix(end + 1);
    }
}

// No tag, link, code or address: what would begin one stands behind a backslash, or is the code around an at sign.
inline void check_markdown(std::string_view text) {
    check_characters(text);
    for (std::size_t at = 0; at < text.size(); ++at) {
        if (text[at] == '\\') {
            ++at;
            continue;
        }
        require(text[at] != '<' && text[at] != '[' && !text.substr(at).starts_with("://"));
        if (text[at] != '`') continue;
        require(text.substr(at).starts_with("`@`"));
        at += 2;
    }
}

// A manual page of man(7): ASCII, no request or macro but ours, no escape but those of characters (groff_char(7)).
inline void check_manual(std::string_view text) {
    constexpr std::string_view kMacros[] = {".TH ", ".SH ", ".SS ", ".B ", ".BR ", ".IP ", ".PP\n", ".TP\n", ".br\n"};
    constexpr std::string_view kEscapes[] = {"e", "-", "&", "(aq", "(dq", "(ga", "(ha", "(ti", "(bu", "[u"};
    const auto begins_with_one = [](std::string_view rest, const auto& beginnings) {
        return std::any_of(std::begin(beginnings), std::end(beginnings),
                           [&](std::string_view beginning) { return rest.starts_with(beginning); });
    };
    // The first line is a comment of ours.
    require(text.starts_with(".\\\" "));
    text.remove_prefix(text.find('\n'));
    bool line_begins = false;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const std::string_view rest = text.substr(at);
        require(rest[0] == '\n' || (rest[0] >= ' ' && rest[0] <= '~'));
        if (line_begins) require(rest[0] != '\'' && rest[0] != ' ');
        if (line_begins && rest[0] == '.') require(begins_with_one(rest, kMacros));
        line_begins = rest[0] == '\n';
        if (rest[0] != '\\') continue;
        require(begins_with_one(rest.substr(1), kEscapes));
        ++at;
    }
}

}  // namespace grainside::fuzz

#endif  // GRAINSIDE_TESTS_FUZZ_INERT_FORMS_H
