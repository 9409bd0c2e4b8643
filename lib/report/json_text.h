// Text and numbers as JSON (RFC 8259), appended to a string. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_REPORT_JSON_TEXT_H
#define GRAINSIDE_REPORT_JSON_TEXT_H

#include <cstdint>
#include <string>
#include <string_view>

namespace grainside::report {

// `text` as a JSON string with its quotes. The output is well-formed UTF-8 whatever `text` holds: each byte that is no
// part of a well-formed character becomes U+FFFD. Besides what JSON demands, the controls U+007F to U+009F, line and
// paragraph separators, characters that turn the writing direction and U+FEFF are escaped as \uXXXX, so that a record
// shown on a terminal moves nothing there; a parser gives them back unchanged.
void append_json_string(std::string& out, std::string_view text);

void append_json_number(std::string& out, std::uint64_t number);
// The shortest decimal that reads back as the same number.
// REQUIRES: `number` is finite.
void append_json_number(std::string& out, double number);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_JSON_TEXT_H
