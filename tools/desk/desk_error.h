// Answers that refuse or failed: {"error":{"code","message","hint"?,"key"?,"faults"?}}.
#ifndef GRAINSIDE_TOOLS_DESK_DESK_ERROR_H
#define GRAINSIDE_TOOLS_DESK_DESK_ERROR_H

#include <span>
#include <string>
#include <string_view>

#include "desk/http_exchange.h"
#include "grainside/result.h"
#include "report/json_writer.h"

namespace grainside::desk {

// What cannot be done for a request; thrown while it is answered and turned into an answer at one place.
struct DeskError {
    int status = 400;
    std::string code;     // permanent, "stale"
    std::string message;  // one sentence
    std::string hint = {};
    std::vector<Issue> faults = {};
    std::string key = {};  // of the value that it is about; empty: none
    std::string now = {};  // the state as it is, a JSON object; empty: none
};

HttpAnswer error_answer(const DeskError& error);

// "key":[{"line","column","code","message","hint"?,"severity"}]
void write_issues(report::JsonWriter& json, std::string_view key, std::span<const Issue> issues);

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_DESK_ERROR_H
