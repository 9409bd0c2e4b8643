// Values as the page types them, and what they are in YAML. Thread-safe.
#ifndef GRAINSIDE_TOOLS_DESK_VALUE_SHAPE_H
#define GRAINSIDE_TOOLS_DESK_VALUE_SHAPE_H

#include <string_view>

#include "desk/yaml_shape.h"
#include "evidence/evidence_data.h"

namespace grainside::desk {

// "Zn: 95.4 +- 0.6 %, Al: 4.0 %" and "a, b". Throw DeskError 400 "bad-value" where a part of it has no name.
YamlShape mapping_of(std::string_view text);
YamlShape list_of(std::string_view text);

// `text` in the kind of node that stands there; where none does, a scalar.
YamlShape value_like(document::Node there, std::string_view text);
// Whether the method's value under `key` is a mapping: a composition, shares of fibres, a colour.
bool reads_mapping(const evidence::Method& method, std::string_view key);
// nullptr where there is none of that id.
const evidence::Method* find_method(const evidence::EvidenceData& data, std::string_view id);

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_VALUE_SHAPE_H
