#include "text/tag_scanner.h"

#include <algorithm>
#include <array>

namespace grainside::text {
namespace {

constexpr std::size_t kNone = std::string_view::npos;
constexpr std::size_t kLongestName = 10;

// A name of up to kLongestName small letters and digits in one number, six bits each; 0 = no such name.
using PackedName = std::uint64_t;

constexpr PackedName kNoName = 0;

constexpr PackedName packed_character(char c) {
    if (c >= 'a' && c <= 'z') return static_cast<PackedName>(c - 'a') + 1;
    if (c >= 'A' && c <= 'Z') return static_cast<PackedName>(c - 'A') + 1;
    if (c >= '0' && c <= '9') return static_cast<PackedName>(c - '0') + 27;
    return kNoName;
}

constexpr PackedName pack(std::string_view name) {
    PackedName packed = kNoName;
    for (const char c : name) packed = packed << 6 | packed_character(c);
    return packed;
}

struct TagName {
    PackedName name = kNoName;
    CharacterKind opening = CharacterKind::gap;
    CharacterKind closing = CharacterKind::gap;
};

constexpr CharacterKind kBlock = CharacterKind::block_tag;
constexpr CharacterKind kRow = CharacterKind::row_tag;
constexpr CharacterKind kInline = CharacterKind::inline_tag;

// Every other name is an inline tag.
constexpr TagName kTagNames[] = {
    {pack("address"), kBlock, kBlock},
    {pack("article"), kBlock, kBlock},
    {pack("aside"), kBlock, kBlock},
    {pack("blockquote"), kBlock, kBlock},
    {pack("body"), kBlock, kBlock},
    {pack("br"), CharacterKind::break_tag, CharacterKind::break_tag},
    {pack("caption"), kBlock, kBlock},
    {pack("dd"), kRow, kRow},
    {pack("details"), kBlock, kBlock},
    {pack("div"), kBlock, kBlock},
    {pack("dl"), kBlock, kBlock},
    {pack("dt"), kRow, kRow},
    {pack("fieldset"), kBlock, kBlock},
    {pack("figcaption"), kBlock, kBlock},
    {pack("figure"), kBlock, kBlock},
    {pack("footer"), kBlock, kBlock},
    {pack("form"), kBlock, kBlock},
    {pack("h1"), CharacterKind::heading_tag, kBlock},
    {pack("h2"), CharacterKind::heading_tag, kBlock},
    {pack("h3"), CharacterKind::heading_tag, kBlock},
    {pack("h4"), CharacterKind::heading_tag, kBlock},
    {pack("h5"), CharacterKind::heading_tag, kBlock},
    {pack("h6"), CharacterKind::heading_tag, kBlock},
    {pack("head"), kBlock, kBlock},
    {pack("header"), kBlock, kBlock},
    {pack("hr"), kBlock, kBlock},
    {pack("html"), kBlock, kBlock},
    {pack("legend"), kBlock, kBlock},
    {pack("li"), CharacterKind::item_tag, kRow},
    {pack("main"), kBlock, kBlock},
    {pack("nav"), kBlock, kBlock},
    {pack("ol"), kBlock, kBlock},
    {pack("option"), kRow, kRow},
    {pack("p"), kBlock, kBlock},
    {pack("pre"), kBlock, kBlock},
    {pack("section"), kBlock, kBlock},
    {pack("summary"), kBlock, kBlock},
    {pack("table"), kBlock, kBlock},
    {pack("tbody"), kBlock, kBlock},
    {pack("td"), CharacterKind::cell_tag, kInline},
    {pack("tfoot"), kBlock, kBlock},
    {pack("th"), CharacterKind::cell_tag, kInline},
    {pack("thead"), kBlock, kBlock},
    {pack("title"), kBlock, kBlock},
    {pack("tr"), kRow, kRow},
    {pack("ul"), kBlock, kBlock},
};

constexpr PackedName kScript = pack("script");
constexpr PackedName kStyle = pack("style");

constexpr std::size_t kSlots = 128;

constexpr std::size_t slot_of(PackedName name) {
    return static_cast<std::size_t>((name * 0x9E3779B97F4A7C15ULL) >> 57);
}

// Open addressing: a name stands in its slot or in the first free one after it.
constexpr std::array<TagName, kSlots> kTagTable = [] {
    std::array<TagName, kSlots> table{};
    for (const TagName& tag : kTagNames) {
        std::size_t slot = slot_of(tag.name);
        while (table[slot].name != kNoName) slot = (slot + 1) % kSlots;
        table[slot] = tag;
    }
    return table;
}();

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

char small_letter(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c + ('a' - 'A')) : c;
}

bool is_white(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\f';
}

bool ends_name(char c) {
    return is_white(c) || c == '/' || c == '>';
}

CharacterKind kind_of(PackedName name, bool closing) {
    std::size_t slot = slot_of(name);
    while (kTagTable[slot].name != name && kTagTable[slot].name != kNoName) slot = (slot + 1) % kSlots;
    if (kTagTable[slot].name == kNoName) return kInline;
    return closing ? kTagTable[slot].closing : kTagTable[slot].opening;
}

}  // namespace

Tag TagScanner::scan(std::uint32_t at) {
    const Tag none{CharacterKind::gap, at + 1};
    if (at + 1 >= text_.size() || at < failed_until_) return none;
    const char next = text_[at + 1];
    Tag tag = none;
    if (next == '!' || next == '?') {
        tag = scan_declaration(at);
    } else if (is_letter(next) || (next == '/' && at + 2 < text_.size() && is_letter(text_[at + 2]))) {
        tag = scan_element(at);
    }
    return tag.kind == CharacterKind::gap ? none : tag;
}

Tag TagScanner::scan_declaration(std::uint32_t at) {
    // The content of a CDATA section is text; feeds wrap whole descriptions in one.
    constexpr std::string_view kCharacterData = "<![CDATA[";
    constexpr std::string_view kCommentStart = "<!--";
    constexpr std::string_view kCommentEnd = "-->";
    if (text_.substr(at, kCharacterData.size()) == kCharacterData) {
        return {kInline, static_cast<std::uint32_t>(at + kCharacterData.size())};
    }
    if (text_.substr(at, kCommentStart.size()) == kCommentStart) {
        if (no_comment_end_) return {};
        const std::size_t end = text_.find(kCommentEnd, at + kCommentStart.size());
        if (end == kNone) {
            no_comment_end_ = true;
            return {};
        }
        return {kInline, static_cast<std::uint32_t>(end + kCommentEnd.size())};
    }
    const std::size_t end = tag_end(at + 2);
    return end == kNone ? Tag{} : Tag{kInline, static_cast<std::uint32_t>(end)};
}

Tag TagScanner::scan_element(std::uint32_t at) {
    const bool closing = text_[at + 1] == '/';
    const std::size_t first = at + (closing ? 2U : 1U);
    PackedName name = kNoName;
    for (std::size_t i = first; i < text_.size() && !ends_name(text_[i]); ++i) {
        const PackedName next = packed_character(text_[i]);
        if (next == kNoName || i - first == kLongestName) {
            name = kNoName;
            break;
        }
        name = name << 6 | next;
    }

    std::size_t end = tag_end(first);
    if (end == kNone) return {};
    if (!closing && (name == kScript || name == kStyle)) {
        const std::size_t past = name == kScript ? raw_element_end("script", end, no_script_end_)
                                                 : raw_element_end("style", end, no_style_end_);
        if (past != kNone) end = past;
    }
    return {kind_of(name, closing), static_cast<std::uint32_t>(end)};
}

std::size_t TagScanner::tag_end(std::size_t from) {
    bool after_equals = false;
    std::size_t i = from;
    for (; i < text_.size(); ++i) {
        const char c = text_[i];
        if (c == '>') return i + 1;
        if (c == '<') break;
        if (after_equals && (c == '"' || c == '\'')) {
            const std::size_t close = closing_quote(i);
            if (close != kNone) i = close;
        }
        after_equals = c == '=' || (after_equals && is_white(c));
    }
    failed_until_ = i;
    return kNone;
}

std::size_t TagScanner::closing_quote(std::size_t opening) {
    const char quote = text_[opening];
    bool& missing = quote == '"' ? no_double_quote_ : no_single_quote_;
    if (missing) return kNone;
    const std::size_t close = text_.find(quote, opening + 1);
    missing = close == kNone;
    return close;
}

std::size_t TagScanner::raw_element_end(std::string_view name, std::size_t from, bool& missing) {
    if (missing) return kNone;
    for (std::size_t i = text_.find('<', from); i != kNone; i = text_.find('<', i + 1)) {
        const std::size_t after = i + 2 + name.size();
        if (after >= text_.size()) break;
        if (text_[i + 1] != '/' || !ends_name(text_[after])) continue;
        const std::string_view candidate = text_.substr(i + 2, name.size());
        const bool same = std::equal(candidate.begin(), candidate.end(), name.begin(),
                                     [](char a, char b) { return small_letter(a) == b; });
        if (!same) continue;
        const std::size_t close = text_.find('>', after);
        return close == kNone ? text_.size() : close + 1;
    }
    missing = true;
    return kNone;
}

}  // namespace grainside::text
