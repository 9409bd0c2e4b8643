// The head of an HTTP/1.1 request as the library gets to see it (RFC 9112, chapters 3 and 5). Pure.
#ifndef GRAINSIDE_TOOLS_DESK_REQUEST_HEAD_H
#define GRAINSIDE_TOOLS_DESK_REQUEST_HEAD_H

#include <cstddef>
#include <string>
#include <string_view>

namespace grainside::desk {

enum class HeadFault { none, malformed, target_too_long };

// Leaves the request line and those header fields of `head` that the desk asks for, and so keeps away from the library
// what it would do for others: ranges (parsed by a pattern that a long header takes too deep), packed answers, a wait
// for '100 Continue'. Malformed: a control character, a line without colon or with a space before it, a continued
// line, a second Host or Content-Length.
// `head` ends with its empty line; `most_target` bounds what the request line asks for.
HeadFault trim_head(std::string& head, std::size_t most_target);

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_REQUEST_HEAD_H
