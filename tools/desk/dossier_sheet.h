// What a dossier's file says, as the page shows it for editing: texts as they are written, whatever they mean.
// Thread-safe for distinct writers.
#ifndef GRAINSIDE_TOOLS_DESK_DOSSIER_SHEET_H
#define GRAINSIDE_TOOLS_DESK_DOSSIER_SHEET_H

#include <string>
#include <string_view>

#include "document/document.h"
#include "report/json_writer.h"

namespace grainside::desk {

// A scalar as it is; a list as "a, b"; a mapping as "Zn: 95.4 %, Al: 4.0 %".
std::string plain_value(document::Node node);

// "key":{key:text,...} of the members of `mapping`, those of `left_out` not.
void write_values(report::JsonWriter& json, std::string_view key, document::Node mapping,
                  std::initializer_list<std::string_view> left_out = {});

// "sample":{...}
void write_sample(report::JsonWriter& json, document::Node root);
// The members of a reading: "index","method","outcome"?,"values","date"?,"photo"?,"note"?,"line".
void write_reading_sheet(report::JsonWriter& json, document::Node reading, std::size_t index);
// "sheet":{"values":{...},"exchange":{currency:text},"groups":[{"group","none":bool,"lines":[{"index","line","values"}]}]}
void write_cost_sheet(report::JsonWriter& json, document::Node root);

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_DOSSIER_SHEET_H
