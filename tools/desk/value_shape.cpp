#include "desk/value_shape.h"

#include <algorithm>

#include "desk/desk_error.h"
#include "evidence/quantity_names.h"
#include "evidence/quantity_reader.h"

namespace grainside::desk {
namespace {

std::string_view trimmed(std::string_view text) {
    const std::size_t first = text.find_first_not_of(" \t\n");
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t\n") - first + 1);
}

template <typename Visit>
void each_piece(std::string_view text, const Visit& visit) {
    while (!text.empty()) {
        const std::size_t end = std::min(text.find(','), text.size());
        if (const std::string_view piece = trimmed(text.substr(0, end)); !piece.empty()) visit(piece);
        text.remove_prefix(std::min(end + 1, text.size()));
    }
}

}  // namespace

YamlShape mapping_of(std::string_view text) {
    YamlShape mapping = YamlShape::mapping();
    each_piece(text, [&](std::string_view piece) {
        const std::size_t colon = piece.find(':');
        const std::string_view name = trimmed(piece.substr(0, colon));
        if (colon == std::string_view::npos || name.empty() || mapping.find(name) != nullptr) {
            throw DeskError{400, "bad-value", "'" + std::string(piece) + "' is no name with its value",
                            "as in 'Zn: 95.4 \xC2\xB1 0.6 %, Al: 4.0 \xC2\xB1 0.3 %', each name once"};
        }
        mapping.add(name, YamlShape::scalar(trimmed(piece.substr(colon + 1))));
    });
    return mapping;
}

YamlShape list_of(std::string_view text) {
    YamlShape list = YamlShape::sequence();
    each_piece(text, [&](std::string_view piece) { list.add({}, YamlShape::scalar(piece)); });
    return list;
}

YamlShape value_like(document::Node there, std::string_view text) {
    if (there.is_mapping()) return mapping_of(text);
    if (there.is_sequence()) return list_of(text);
    return YamlShape::scalar(text);
}

bool reads_mapping(const evidence::Method& method, std::string_view key) {
    return std::any_of(method.reads.begin(), method.reads.end(), [&](const evidence::QuantityRead& quantity) {
        if (quantity.name == evidence::kContent) return key == "composition";
        if (quantity.name == evidence::kFibreShare) return key == "shares";
        return quantity.name == key && quantity.unit == evidence::kColourUnit;
    });
}

const evidence::Method* find_method(const evidence::EvidenceData& data, std::string_view id) {
    const auto found = std::find_if(data.methods.begin(), data.methods.end(),
                                    [&](const evidence::Method& method) { return method.id == id; });
    return found == data.methods.end() ? nullptr : &*found;
}

}  // namespace grainside::desk
