// Making text of unknown origin safe to show on a terminal. Thread-safe.
#ifndef GRAINSIDE_DOCUMENT_INERT_TEXT_H
#define GRAINSIDE_DOCUMENT_INERT_TEXT_H

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace grainside::document {

// `text` without anything that a terminal would obey: tabs and line ends become spaces; each byte of other control
// characters (C0, DEL, C1), of line and paragraph separators, of characters that turn the writing direction, of U+FEFF
// and of broken UTF-8 becomes '?'. The length in bytes stays the same, so that columns stay right.
std::string inert_text(std::string_view text);

// Longer source lines are cut, so that many faults on one long line stay cheap.
inline constexpr std::size_t kMaxExcerptBytes = 4096;

// `line` as an issue's excerpt: inert, cut at kMaxExcerptBytes; empty where `column` (from 1, in bytes) lies beyond.
std::string make_excerpt(std::string_view line, std::uint32_t column);

}  // namespace grainside::document

#endif  // GRAINSIDE_DOCUMENT_INERT_TEXT_H
