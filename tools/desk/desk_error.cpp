#include "desk/desk_error.h"

#include <cstdint>

namespace grainside::desk {

void write_issues(report::JsonWriter& json, std::string_view key, std::span<const Issue> issues) {
    json.key(key);
    json.begin_array();
    for (const Issue& issue : issues) {
        json.begin_object();
        json.member("line", std::uint64_t{issue.line});
        json.member("column", std::uint64_t{issue.column});
        json.member("code", std::string_view(issue.code));
        json.member("message", std::string_view(issue.message));
        json.optional_member("hint", issue.hint);
        json.end_object();
    }
    json.end_array();
}

HttpAnswer error_answer(const DeskError& error) {
    HttpAnswer answer;
    answer.status = error.status;
    report::JsonWriter json(answer.body);
    json.begin_object();
    json.key("error");
    json.begin_object();
    json.member("code", std::string_view(error.code));
    json.member("message", std::string_view(error.message));
    json.optional_member("hint", error.hint);
    json.optional_member("key", error.key);
    if (!error.faults.empty()) write_issues(json, "faults", error.faults);
    json.end_object();
    if (!error.now.empty()) {
        json.key("now");
        json.raw_value(error.now);
    }
    json.end_object();
    return answer;
}

}  // namespace grainside::desk
