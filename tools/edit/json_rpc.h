// Messages of JSON-RPC 2.0, as the Language Server Protocol 3.17 uses it: read and written.
#ifndef GRAINSIDE_TOOLS_EDIT_JSON_RPC_H
#define GRAINSIDE_TOOLS_EDIT_JSON_RPC_H

#include <simdjson.h>

#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "edit/json_values.h"
#include "report/json_writer.h"

namespace grainside::tools::edit {

// JSON-RPC 2.0, section 5.1; those from -32899 to -32800 and -32002 are the protocol's ('ErrorCodes').
enum class ErrorCode : int {
    parse_error = -32700,
    invalid_request = -32600,
    method_not_found = -32601,
    invalid_params = -32602,
    internal_error = -32603,
    server_not_initialized = -32002,
    request_cancelled = -32800,
};

struct Message {
    enum class Kind {
        request,
        notification,
        answer,  // to a request of the server, which sends none
        broken,
    };
    Kind kind = Kind::broken;
    std::string id = "null";  // as JSON
    std::string method;
    std::optional<Json> params;                // an object or a list; lives until the next message is read
    ErrorCode error = ErrorCode::parse_error;  // of a broken one
    std::string fault;                         // of a broken one, what is wrong with it
};

// Keeps the memory of the message at hand. Not thread-safe.
class MessageReader {
public:
    // Never fails: whatever is wrong is in the message. `content` is changed where it holds half of a surrogate pair,
    // which JSON may write and Unicode knows not: U+FFFD takes its place, one unit of UTF-16 as well.
    Message read(std::string& content);

private:
    std::unique_ptr<simdjson::dom::parser> parser_;
};

// Each writes one frame. `result` is JSON.
void append_result(std::string& out, std::string_view id, std::string_view result);
void append_error(std::string& out, std::string_view id, ErrorCode code, std::string_view message);
// `params` is JSON.
void append_notification(std::string& out, std::string_view method, std::string_view params);

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_JSON_RPC_H
