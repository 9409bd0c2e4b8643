// The records that the library writes as JSON Lines, put into larger answers: what a finding or a verdict holds is
// written at one place. Thread-safe for distinct writers.
#ifndef GRAINSIDE_TOOLS_DESK_RECORD_LINES_H
#define GRAINSIDE_TOOLS_DESK_RECORD_LINES_H

#include <string>
#include <string_view>
#include <vector>

#include "report/json_writer.h"

namespace grainside::desk {

// Each line of `lines`, without its end.
std::vector<std::string_view> records_in(std::string_view lines);

// `record` as the next value, with the members that `more` writes behind its own. REQUIRES: `record` is an object with
// members, and none of theirs is among them.
template <typename More>
void write_record(report::JsonWriter& json, std::string_view record, const More& more) {
    std::string members;
    report::JsonWriter added(members);
    added.begin_object();
    more(added);
    added.end_object();
    std::string whole(record);
    if (members != "{}") {
        whole.back() = ',';
        whole.append(members, 1);
    }
    json.raw_value(whole);
}

// "key":[...] of what `write` makes of each of `items`.
template <typename Items, typename Write>
void write_list(report::JsonWriter& json, std::string_view key, const Items& items, const Write& write) {
    json.key(key);
    json.begin_array();
    for (const auto& item : items) write(item);
    json.end_array();
}

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_RECORD_LINES_H
