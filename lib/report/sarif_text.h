// Texts of a SARIF log: messages, levels, URIs. Source of the rules: OASIS SARIF 2.1.0, sections 3.11.5 (placeholders),
// 3.11.6 (embedded links), 3.4 (artifact locations), 3.27.10 (levels), from memory; RFC 3986 for URIs. Thread-safe.
#ifndef GRAINSIDE_REPORT_SARIF_TEXT_H
#define GRAINSIDE_REPORT_SARIF_TEXT_H

#include <string>
#include <string_view>

#include "grainside/finding.h"

namespace grainside::report {

// error, warning or note.
std::string_view sarif_level(Grade grade) noexcept;

// `text` as plain text of a message: inert (document/inert_text.h), braces doubled, square brackets and backslashes
// behind a backslash, so that none of it is read as a placeholder or a link.
std::string sarif_message_text(std::string_view text);

// `path` as a URI: a relative path as a relative reference, an absolute one with the scheme file. Every byte that is
// neither unreserved nor a slash is percent-encoded; a leading "./" is dropped.
std::string sarif_uri(std::string_view path);

// Whether `input` names standard input, which has no URI.
bool is_standard_input(std::string_view input) noexcept;

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_SARIF_TEXT_H
