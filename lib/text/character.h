// What one character of a text is to the tokenizer, once references are decoded and tags are recognised.
#ifndef GRAINSIDE_TEXT_CHARACTER_H
#define GRAINSIDE_TEXT_CHARACTER_H

#include <cstdint>

namespace grainside::text {

enum class CharacterKind : std::uint8_t {
    gap,          // cuts words, leaves no token: symbols, trade mark signs, NUL, bytes that are no UTF-8
    drop,         // as if it were not there: soft hyphens, zero-width and directional controls
    mark,         // a combining mark: folded away like the above, but part of the letter before it
    space,        // white space within a line
    newline,      // ends a line
    letter,       // has a folded form
    jamo,         // a Hangul vowel or tail that composes with the syllable before it; a letter otherwise
    digit,        // its folded form is made of ASCII digits
    superscript,  // a raised digit: part of a short word ("m2"), otherwise a footnote mark and thus a gap
    fraction,     // "1/2" and its kin in one character: a number of its own
    apostrophe,
    dot,
    comma,       // also groups and separates the digits of a number
    list_comma,  // the ideographic comma and others that never stand within a number
    stop,        // ends a sentence whatever follows
    question,
    exclamation,
    semicolon,
    colon,
    slash,
    plus,
    ampersand,
    percent,
    open,
    close,
    quote,
    pipe,
    hyphen,
    dash,   // longer than a hyphen
    tilde,  // joins the ends of a range ("1.2~1.4"), otherwise a gap
    asterisk,
    hash,
    bullet,      // a bullet character or check mark
    pictograph,  // a bullet at the start of a line, otherwise a gap
    middle_dot,  // a bullet where one can stand, otherwise a gap
    inline_tag,  // the tags follow; their characters have no folded form
    break_tag,
    row_tag,    // begins or ends a line
    block_tag,  // begins or ends a paragraph
    item_tag,
    cell_tag,
    heading_tag,
    end_of_text,
};

namespace fold_flag {
inline constexpr std::uint8_t kLatin = 1;    // a letter of the Latin script, or one whose folded form begins with one
inline constexpr std::uint8_t kCapital = 2;  // an upper-case or title-case letter
}  // namespace fold_flag

// One row of the fold table. Eight bytes, so that a page of 256 characters is 2 KiB.
struct FoldEntry {
    static constexpr std::uint8_t kShortForm = 4;

    // The folded form when it has up to kShortForm bytes; otherwise bytes 0 and 1 hold its offset in the table of long
    // forms, low byte first.
    std::uint8_t bytes[kShortForm];
    std::uint8_t length;  // of the folded form; 0 on a letter: the character itself in UTF-8
    CharacterKind kind;
    std::uint8_t flags;     // fold_flag
    std::uint8_t skeleton;  // the small Latin letter that this letter of another script looks like; 0 = none
};
static_assert(sizeof(FoldEntry) == 8);

struct Character {
    CharacterKind kind = CharacterKind::gap;
    char32_t code = 0;                 // 0 for tags and for bytes that are no UTF-8
    const FoldEntry* entry = nullptr;  // null for tags and the end of the text
    std::uint32_t start = 0;           // bytes of the text, end exclusive
    std::uint32_t end = 0;
};

}  // namespace grainside::text

#endif  // GRAINSIDE_TEXT_CHARACTER_H
