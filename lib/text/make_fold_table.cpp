// Writes the fold table of the tokenizer, from the character data of utf8proc and the lists below.
//
//     make_fold_table OUTPUT
//
// Exit status: 0 written; 1 it could not be written, or the data no longer fit the table's layout.
#include <utf8proc.h>

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <map>
#include <string>
#include <vector>

#include "text/character.h"
#include "text/look_alikes.h"
#include "text/utf8.h"

namespace {

using grainside::text::CharacterKind;
using grainside::text::FoldEntry;
using grainside::text::kLookAlikes;
using Codes = std::vector<char32_t>;
using Page = std::vector<FoldEntry>;

constexpr char32_t kLastCode = 0x10FFFF;
constexpr char32_t kFractionSlash = 0x2044;

struct KindRange {
    char32_t first;
    char32_t last;
    CharacterKind kind;
};

// Where general category and NFKC would not say what the sign does in a product text. Characters that NFKC folds to one
// ASCII sign (full-width forms and the like) take the kind of that sign without being listed.
constexpr KindRange kKinds[] = {
    {'\t', '\t', CharacterKind::space},
    {'\n', '\n', CharacterKind::newline},
    {0x0B, 0x0C, CharacterKind::space},
    {'\r', '\r', CharacterKind::newline},
    {0x85, 0x85, CharacterKind::newline},
    {'!', '!', CharacterKind::exclamation},
    {'"', '"', CharacterKind::quote},
    {'#', '#', CharacterKind::hash},
    {'%', '%', CharacterKind::percent},
    {'&', '&', CharacterKind::ampersand},
    {'\'', '\'', CharacterKind::apostrophe},
    {'*', '*', CharacterKind::asterisk},
    {'+', '+', CharacterKind::plus},
    {',', ',', CharacterKind::comma},
    {'-', '-', CharacterKind::hyphen},
    {'.', '.', CharacterKind::dot},
    {'/', '/', CharacterKind::slash},
    {':', ':', CharacterKind::colon},
    {';', ';', CharacterKind::semicolon},
    {'?', '?', CharacterKind::question},
    {'\\', '\\', CharacterKind::slash},
    {'|', '|', CharacterKind::pipe},
    {'~', '~', CharacterKind::tilde},
    // NFKC spells the trade mark sign with letters, which would become part of the word before it.
    {0x00A9, 0x00A9, CharacterKind::gap},
    {0x00AE, 0x00AE, CharacterKind::gap},
    {0x2117, 0x2117, CharacterKind::gap},
    {0x2120, 0x2120, CharacterKind::gap},
    {0x2122, 0x2122, CharacterKind::gap},
    {0x1F16A, 0x1F16C, CharacterKind::gap},
    {0x00B2, 0x00B3, CharacterKind::superscript},
    {0x00B9, 0x00B9, CharacterKind::superscript},
    {0x2070, 0x2070, CharacterKind::superscript},
    {0x2074, 0x2079, CharacterKind::superscript},
    {0x00B4, 0x00B4, CharacterKind::apostrophe},
    {0x02B9, 0x02B9, CharacterKind::apostrophe},
    {0x02BB, 0x02BD, CharacterKind::apostrophe},
    {0x02C8, 0x02C8, CharacterKind::apostrophe},
    {0x055A, 0x055A, CharacterKind::apostrophe},
    {0x2018, 0x201B, CharacterKind::apostrophe},
    {0x201C, 0x201F, CharacterKind::quote},
    {0x2032, 0x2032, CharacterKind::gap},
    {0x2033, 0x2033, CharacterKind::quote},
    {0x2036, 0x2036, CharacterKind::quote},
    // Single angle marks stand between the steps of a path more often than around words.
    {0x2039, 0x203A, CharacterKind::gap},
    {0x301D, 0x301F, CharacterKind::quote},
    {0x00B7, 0x00B7, CharacterKind::middle_dot},
    {0x0387, 0x0387, CharacterKind::middle_dot},
    {0x2027, 0x2027, CharacterKind::middle_dot},
    {0x2219, 0x2219, CharacterKind::middle_dot},
    {0x22C5, 0x22C5, CharacterKind::middle_dot},
    {0x30FB, 0x30FB, CharacterKind::middle_dot},
    {0xFF65, 0xFF65, CharacterKind::middle_dot},
    {0x2022, 0x2023, CharacterKind::bullet},
    {0x2043, 0x2043, CharacterKind::bullet},
    {0x204C, 0x204D, CharacterKind::bullet},
    {0x2192, 0x2192, CharacterKind::bullet},
    {0x21D2, 0x21D2, CharacterKind::bullet},
    {0x25A0, 0x25AB, CharacterKind::bullet},
    {0x25B6, 0x25BB, CharacterKind::bullet},
    {0x25C6, 0x25C9, CharacterKind::bullet},
    {0x25CB, 0x25CF, CharacterKind::bullet},
    {0x25E6, 0x25E6, CharacterKind::bullet},
    {0x25FB, 0x25FE, CharacterKind::bullet},
    {0x2605, 0x2606, CharacterKind::bullet},
    {0x2610, 0x2612, CharacterKind::bullet},
    {0x2705, 0x2705, CharacterKind::bullet},
    {0x2713, 0x2718, CharacterKind::bullet},
    {0x2726, 0x2727, CharacterKind::bullet},
    {0x272A, 0x272A, CharacterKind::bullet},
    {0x274C, 0x274C, CharacterKind::bullet},
    {0x274E, 0x274E, CharacterKind::bullet},
    {0x2756, 0x2756, CharacterKind::bullet},
    {0x2776, 0x2794, CharacterKind::bullet},
    {0x2798, 0x27AF, CharacterKind::bullet},
    {0x29BE, 0x29BF, CharacterKind::bullet},
    {0x2B50, 0x2B50, CharacterKind::bullet},
    {0x2600, 0x2604, CharacterKind::pictograph},
    {0x2607, 0x260F, CharacterKind::pictograph},
    {0x2613, 0x26FF, CharacterKind::pictograph},
    {0x2728, 0x2728, CharacterKind::pictograph},
    {0x2757, 0x2757, CharacterKind::pictograph},
    {0x2763, 0x2764, CharacterKind::pictograph},
    {0x1F1E6, 0x1F1FF, CharacterKind::pictograph},
    {0x1F300, 0x1F3FA, CharacterKind::pictograph},
    {0x1F400, 0x1F448, CharacterKind::pictograph},
    {0x1F44A, 0x1F537, CharacterKind::pictograph},
    {0x1F53A, 0x1F5FF, CharacterKind::pictograph},
    {0x1F600, 0x1F64F, CharacterKind::pictograph},
    {0x1F680, 0x1F6FF, CharacterKind::pictograph},
    {0x1F900, 0x1F9FF, CharacterKind::pictograph},
    {0x1FA70, 0x1FAFF, CharacterKind::pictograph},
    {0x1F449, 0x1F449, CharacterKind::bullet},
    {0x1F538, 0x1F539, CharacterKind::bullet},
    {0x058A, 0x058A, CharacterKind::hyphen},
    {0x05BE, 0x05BE, CharacterKind::hyphen},
    {0x2010, 0x2011, CharacterKind::hyphen},
    {0x2212, 0x2212, CharacterKind::hyphen},
    {0x223C, 0x223C, CharacterKind::tilde},
    {0x301C, 0x301C, CharacterKind::tilde},
    {0x3030, 0x3030, CharacterKind::tilde},
    {0x0589, 0x0589, CharacterKind::stop},
    {0x06D4, 0x06D4, CharacterKind::stop},
    {0x0964, 0x0965, CharacterKind::stop},
    {0x1362, 0x1362, CharacterKind::stop},
    {0x2025, 0x2026, CharacterKind::stop},
    {0x3002, 0x3002, CharacterKind::stop},
    {0xFE12, 0xFE12, CharacterKind::stop},
    {0xFE19, 0xFE19, CharacterKind::stop},
    {0xFF61, 0xFF61, CharacterKind::stop},
    {0x055D, 0x055D, CharacterKind::list_comma},
    {0x060C, 0x060C, CharacterKind::list_comma},
    {0x1363, 0x1363, CharacterKind::list_comma},
    {0x3001, 0x3001, CharacterKind::list_comma},
    {0xFE11, 0xFE11, CharacterKind::list_comma},
    {0xFE51, 0xFE51, CharacterKind::list_comma},
    {0xFF64, 0xFF64, CharacterKind::list_comma},
    {0x055E, 0x055E, CharacterKind::question},
    {0x061F, 0x061F, CharacterKind::question},
    {0x203D, 0x203D, CharacterKind::question},
    {0x2047, 0x2049, CharacterKind::question},
    {0x203C, 0x203C, CharacterKind::exclamation},
    {0x061B, 0x061B, CharacterKind::semicolon},
    {0x2044, 0x2044, CharacterKind::slash},
    {0x2215, 0x2215, CharacterKind::slash},
    {0x29F8, 0x29F8, CharacterKind::slash},
    {0x066A, 0x066A, CharacterKind::percent},
    {0x00A6, 0x00A6, CharacterKind::pipe},
    {0x2502, 0x2503, CharacterKind::pipe},
    {0x2551, 0x2551, CharacterKind::pipe},
    {0x203B, 0x203B, CharacterKind::asterisk},
    {0x2217, 0x2217, CharacterKind::asterisk},
};

const KindRange* listed_kind(char32_t code) {
    for (const KindRange& range : kKinds) {
        if (code >= range.first && code <= range.last) return &range;
    }
    return nullptr;
}

utf8proc_category_t category_of(char32_t code) {
    return utf8proc_category(static_cast<utf8proc_int32_t>(code));
}

bool is_letter(char32_t code) {
    const utf8proc_category_t category = category_of(code);
    return category >= UTF8PROC_CATEGORY_LU && category <= UTF8PROC_CATEGORY_LO;
}

bool is_number(char32_t code) {
    const utf8proc_category_t category = category_of(code);
    return category >= UTF8PROC_CATEGORY_ND && category <= UTF8PROC_CATEGORY_NO;
}

bool is_ascii_digit(char32_t code) {
    return code >= '0' && code <= '9';
}

std::string to_utf8(const Codes& codes) {
    std::string out;
    char buffer[4];
    for (const char32_t code : codes) out.append(buffer, grainside::text::encode_utf8(code, buffer));
    return out;
}

Codes to_codes(const std::string& text) {
    Codes out;
    for (std::size_t at = 0; at < text.size();) {
        const auto decoded = grainside::text::decode_utf8(text, at);
        if (decoded.length == 0) break;
        out.push_back(decoded.code);
        at += decoded.length;
    }
    return out;
}

std::string mapped(const std::string& text, int options) {
    utf8proc_uint8_t* result = nullptr;
    const auto length =
        utf8proc_map(reinterpret_cast<const utf8proc_uint8_t*>(text.data()), static_cast<utf8proc_ssize_t>(text.size()),
                     &result, static_cast<utf8proc_option_t>(UTF8PROC_STABLE | options));
    std::string out;
    if (length > 0) out.assign(reinterpret_cast<const char*>(result), static_cast<std::size_t>(length));
    std::free(result);
    return out;
}

std::string folded_once(const std::string& text) {
    return mapped(text, UTF8PROC_COMPAT | UTF8PROC_COMPOSE | UTF8PROC_CASEFOLD | UTF8PROC_IGNORE | UTF8PROC_STRIPMARK);
}

// Folding a folded form again may fold it further (UAX #15, 3.1), so it is repeated until nothing changes. Marks go
// first: case folding would make a letter of the Greek iota below a composed vowel, and not of one that stands apart.
Codes folded(char32_t code) {
    std::string form = mapped(to_utf8({code}), UTF8PROC_DECOMPOSE | UTF8PROC_STRIPMARK);
    for (std::string next = folded_once(form); next != form; next = folded_once(form)) form = next;
    return to_codes(form);
}

// Digits of other scripts take the ASCII digit of the same value. Unicode keeps the decimal digits of a script together
// and in order from nought, so the value is the place in the run.
char32_t ascii_digit(char32_t code) {
    char32_t first = code;
    while (first > 0 && category_of(first - 1) == UTF8PROC_CATEGORY_ND) --first;
    return U'0' + (code - first) % 10;
}

bool is_latin(char32_t folded_code) {
    struct Range {
        char32_t first;
        char32_t last;
    };
    constexpr Range kLatin[] = {{'a', 'z'},       {0x00DF, 0x00F6}, {0x00F8, 0x02AF},
                                {0x1D00, 0x1D25}, {0x1E00, 0x1EFF}, {0x2C60, 0x2C7F},
                                {0xA722, 0xA787}, {0xA78B, 0xA7FF}, {0xAB30, 0xAB64}};
    for (const Range& range : kLatin) {
        if (folded_code >= range.first && folded_code <= range.last) return true;
    }
    return false;
}

bool composes_with_syllable(char32_t code) {
    return (code >= 0x1161 && code <= 0x1175) || (code >= 0x11A8 && code <= 0x11C2);
}

class Table {
public:
    FoldEntry entry(char32_t code) {
        FoldEntry entry{};
        entry.kind = CharacterKind::gap;
        const KindRange* listed = listed_kind(code);
        if (listed != nullptr && listed->kind != CharacterKind::superscript) {
            entry.kind = listed->kind;
            return entry;
        }
        switch (category_of(code)) {
            case UTF8PROC_CATEGORY_CC:
            case UTF8PROC_CATEGORY_CN:
            case UTF8PROC_CATEGORY_CS:
            case UTF8PROC_CATEGORY_CO:
                return entry;
            case UTF8PROC_CATEGORY_ZS:
                entry.kind = CharacterKind::space;
                return entry;
            case UTF8PROC_CATEGORY_ZL:
            case UTF8PROC_CATEGORY_ZP:
                entry.kind = CharacterKind::newline;
                return entry;
            case UTF8PROC_CATEGORY_CF:
                entry.kind = CharacterKind::drop;
                return entry;
            case UTF8PROC_CATEGORY_MN:
            case UTF8PROC_CATEGORY_MC:
            case UTF8PROC_CATEGORY_ME:
                entry.kind = CharacterKind::mark;
                return entry;
            case UTF8PROC_CATEGORY_ND:
                entry.kind = CharacterKind::digit;
                set_form(entry, {ascii_digit(code)});
                return entry;
            default:
                break;
        }
        const Codes form = folded(code);
        if (form.empty()) {
            entry.kind = CharacterKind::drop;
            return entry;
        }
        Codes kept;
        bool slash = false;
        for (const char32_t part : form) {
            if ((is_letter(part) || is_number(part)) && listed_kind(part) == nullptr) kept.push_back(part);
            slash = slash || part == kFractionSlash;
        }
        if (kept.empty()) {
            entry.kind = kind_of_sign(code, form);
            return entry;
        }
        bool digits = true;
        for (const char32_t part : kept) digits = digits && is_ascii_digit(part);
        if (listed != nullptr) {
            entry.kind = listed->kind;
        } else if (digits && slash && kept.size() > 1) {
            entry.kind = CharacterKind::fraction;
            kept = form;
            for (char32_t& part : kept) part = part == kFractionSlash ? U'/' : part;
        } else if (digits) {
            entry.kind = CharacterKind::digit;
        } else {
            entry.kind =
                kept.size() == 1 && composes_with_syllable(kept[0]) ? CharacterKind::jamo : CharacterKind::letter;
            if (is_latin(kept[0])) entry.flags |= grainside::text::fold_flag::kLatin;
            const utf8proc_category_t category = category_of(code);
            if (category == UTF8PROC_CATEGORY_LU || category == UTF8PROC_CATEGORY_LT) {
                entry.flags |= grainside::text::fold_flag::kCapital;
            }
            entry.skeleton = skeleton(code);
        }
        if (kept != Codes{code} || code < 0x80) set_form(entry, kept);
        return entry;
    }

    const std::string& long_forms() const { return long_forms_; }

private:
    // An accented letter looks like what its base looks like.
    static std::uint8_t skeleton(char32_t code) {
        const Codes parts = to_codes(mapped(to_utf8({code}), UTF8PROC_DECOMPOSE));
        for (const auto& look_alike : kLookAlikes) {
            if (!parts.empty() && look_alike.letter == parts[0]) return static_cast<std::uint8_t>(look_alike.latin);
        }
        return 0;
    }

    static CharacterKind kind_of_sign(char32_t code, const Codes& form) {
        if (form.size() == 1 && form[0] != code) {
            if (const KindRange* listed = listed_kind(form[0])) return listed->kind;
        }
        switch (category_of(form.size() == 1 ? form[0] : code)) {
            case UTF8PROC_CATEGORY_PS:
                return CharacterKind::open;
            case UTF8PROC_CATEGORY_PE:
                return CharacterKind::close;
            case UTF8PROC_CATEGORY_PI:
            case UTF8PROC_CATEGORY_PF:
                return CharacterKind::quote;
            case UTF8PROC_CATEGORY_PD:
                return CharacterKind::dash;
            default:
                return CharacterKind::gap;
        }
    }

    void set_form(FoldEntry& entry, const Codes& codes) {
        const std::string form = to_utf8(codes);
        entry.length = static_cast<std::uint8_t>(form.size());
        if (form.size() <= FoldEntry::kShortForm) {
            for (std::size_t i = 0; i < form.size(); ++i) entry.bytes[i] = static_cast<std::uint8_t>(form[i]);
            return;
        }
        std::size_t offset = long_forms_.find(form);
        if (offset == std::string::npos) {
            offset = long_forms_.size();
            long_forms_ += form;
        }
        entry.bytes[0] = static_cast<std::uint8_t>(offset & 0xFFU);
        entry.bytes[1] = static_cast<std::uint8_t>(offset >> 8);
    }

    std::string long_forms_;
};

std::string literal(const FoldEntry& entry) {
    char text[96];
    std::snprintf(text, sizeof text, "{{%u,%u,%u,%u},%u,CharacterKind{%u},%u,%u},", unsigned{entry.bytes[0]},
                  unsigned{entry.bytes[1]}, unsigned{entry.bytes[2]}, unsigned{entry.bytes[3]}, unsigned{entry.length},
                  static_cast<unsigned>(entry.kind), unsigned{entry.flags}, unsigned{entry.skeleton});
    return text;
}

std::string literal(const Page& page) {
    std::string out;
    for (std::size_t i = 0; i < page.size(); ++i) {
        out += literal(page[i]);
        out += i % 8 == 7 ? "\n" : " ";
    }
    return out;
}

bool write_table(std::ofstream& out) {
    Table table;
    std::map<std::string, std::size_t> number_of_page;
    std::string pages;
    std::string entries;
    for (char32_t first = 0; first <= kLastCode; first += 256) {
        Page page;
        for (char32_t code = first; code < first + 256; ++code) page.push_back(table.entry(code));
        const std::string text = literal(page);
        const auto [place, is_new] = number_of_page.emplace(text, number_of_page.size());
        if (is_new) entries += text;
        pages += std::to_string(place->second) + ((first >> 8) % 32 == 31 ? ",\n" : ", ");
    }
    if (number_of_page.size() > 256 || table.long_forms().size() > 0xFFFF) return false;

    out << "// Generated by make_fold_table from utf8proc " << utf8proc_version() << " (Unicode "
        << utf8proc_unicode_version() << "), do not edit: " << number_of_page.size() << " pages.\n";
    out << "const std::uint8_t kFoldPages[] = {\n" << pages << "};\n";
    out << "const FoldEntry kFoldEntries[] = {\n" << entries << "};\n";
    out << "const char kFoldLongForms[] =\n    \"";
    std::size_t column = 0;
    for (const char c : table.long_forms()) {
        char octal[8];
        std::snprintf(octal, sizeof octal, "\\%03o", static_cast<unsigned>(static_cast<std::uint8_t>(c)));
        out << octal << (++column % 24 == 0 ? "\"\n    \"" : "");
    }
    out << "\";\n";
    return static_cast<bool>(out.flush());
}

}  // namespace

int main(int argc, char** argv) {
    if (argc != 2) {
        std::fputs("usage: make_fold_table OUTPUT\n", stderr);
        return 1;
    }
    std::ofstream out(argv[1], std::ios::binary | std::ios::trunc);
    if (!out || !write_table(out)) {
        std::fprintf(stderr, "make_fold_table: cannot write %s\n", argv[1]);
        return 1;
    }
    return 0;
}
