// Tokens: words, numbers and marks of a text, each with its byte span in the original.
#ifndef GRAINSIDE_TEXT_TOKEN_H
#define GRAINSIDE_TEXT_TOKEN_H

#include <cstdint>
#include <string_view>
#include <vector>

namespace grainside::text {

enum class TokenKind : std::uint8_t {
    // Begins with a letter, goes on with letters, digits and inner apostrophes (which the fold drops). A raised digit
    // belongs to a word of one or two letters ("m2"); elsewhere it is a footnote mark, and thus a gap.
    word,
    // Digits of any script, folded to ASCII, with '.' or ',' only between digits; letters that follow are a word joined
    // to it ("1.4" "mm"). A point before the first digit is read as "0." if no word ends there. A fraction in one
    // character is a number of its own with '/' in its folded form: two and a half is "2" and "1/2".
    number,
    comma,  // ,  and its full-width and ideographic kin
    // A dot before white space, the end, a tag or a closing mark; two or more dots; ellipsis; ideographic full stop.
    stop,
    question,     // ?
    exclamation,  // !
    semicolon,    // ;
    colon,        // :
    slash,        // / and \ .
    plus,         // +
    ampersand,    // &
    percent,      // %
    open,         // ( [ {
    close,        // ) ] }
    dash,         // a hyphen with white space on both sides, "--", en and em dashes everywhere except between digits
    pipe,         // |, // and table cell borders (<td>, <th>); bullet characters not at the start of a line
    asterisk,     // * not at the start of a line; two or more are a gap
    bullet,       // at the start of a line: - * + and dashes, bullet characters, check marks,
                  // pictographs, "1. " "12) "; <li>
    quote,        // double quotes of every shape
    // A line break, or a block tag (<p>, <br>, <div>, <tr>, <h2>, ...); runs of them are one token, and there is none
    // before the first other token. Before <li> and <h1> it is empty: the tag's bytes belong to the mark that it gives.
    line_end,
    // '#' to '######' and white space at the start of a line; <h1> to <h6>: what follows up to line_end is a heading.
    heading,
};

namespace flag {
inline constexpr std::uint8_t kSpaceBefore = 1;   // white space or a tag lies between this token and the last
inline constexpr std::uint8_t kHyphenBefore = 2;  // joined to the last token by a hyphen ("full-grain", "1.2-1.4")
inline constexpr std::uint8_t kLookAlike = 4;     // letters of another script stood for Latin ones in this word
inline constexpr std::uint8_t kCapital = 8;       // begins with a capital letter
inline constexpr std::uint8_t kAllCapitals = 16;  // two or more letters, all capitals
inline constexpr std::uint8_t kBlankLine = 32;    // on line_end: at least one empty line, or a tag that starts a block
inline constexpr std::uint8_t kApostrophe = 64;   // of a word: an inner apostrophe was dropped ("it's")
}  // namespace flag

struct Token {
    std::uint32_t start = 0;          // first byte in the original
    std::uint32_t end = 0;            // one past the last byte in the original
    std::uint32_t folded_offset = 0;  // where the folded form begins in Tokens::folded
    std::uint16_t folded_length = 0;  // of a word or number, capped at 65535; 0 of an address
    TokenKind kind = TokenKind::word;
    std::uint8_t flags = 0;
};
static_assert(sizeof(Token) == 16);

// The tokens of one text. Cleared and filled again for the next text; what it holds is never freed.
struct Tokens {
    std::vector<Token> list;
    // Folded bytes, with at least 16 readable bytes after every folded form, so that lookups may load past the end.
    std::vector<char> folded;

    std::string_view folded_text(const Token& token) const {
        return {folded.data() + token.folded_offset, token.folded_length};
    }
};

}  // namespace grainside::text

#endif  // GRAINSIDE_TEXT_TOKEN_H
