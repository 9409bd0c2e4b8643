// Making text of unknown origin safe to show on a terminal. Thread-safe.
#ifndef GRAINSIDE_DOCUMENT_INERT_TEXT_H
#define GRAINSIDE_DOCUMENT_INERT_TEXT_H

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace grainside::document {

// Control characters (C0, DEL, C1), line and paragraph separators, characters that turn the writing direction, U+FEFF:
// what a terminal obeys, and what makes a page show other words than it holds.
bool is_obeyed(char32_t point) noexcept;

// `text` without anything that a terminal would obey: tabs and line ends become spaces; each byte of other control
// characters (C0, DEL, C1), of line and paragraph separators, of characters that turn the writing direction, of U+FEFF
// and of broken UTF-8 becomes '?'. The length in bytes stays the same, so that columns stay right.
std::string inert_text(std::string_view text);

// `text` for a page, a letter or a table: CR LF and CR become LF, tabs a space; each other character that is_obeyed
// names, each that no page may hold (HTML Standard, 13.2.3.5, "noncharacter-in-input-stream") and each byte that is no
// UTF-8 becomes U+FFFD. The result is well-formed UTF-8 of printable characters and LF.
std::string printable_text(std::string_view text);

// Longer source lines are cut, so that many faults on one long line stay cheap.
inline constexpr std::size_t kMaxExcerptBytes = 4096;

// `line` as an issue's excerpt: inert, cut at kMaxExcerptBytes; empty where `column` (from 1, in bytes) lies beyond.
std::string make_excerpt(std::string_view line, std::uint32_t column);

}  // namespace grainside::document

#endif  // GRAINSIDE_DOCUMENT_INERT_TEXT_H
