#include "labels.h"

#include <simdjson.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <string_view>

namespace grainside::tests {
namespace {

std::string text_of(simdjson::dom::object object, const char* key) {
    return std::string(object[key].get_string().value());
}

template <typename Read>
void each_line(const std::string& name, Read read) {
    std::ifstream file(std::string(GRAINSIDE_DOSSIERS) + '/' + name);
    if (!file) throw std::runtime_error(name + " cannot be read");
    simdjson::dom::parser parser;
    std::string line;
    while (std::getline(file, line)) {
        if (!line.empty()) read(parser.parse(line).get_object().value());
    }
}

}  // namespace

std::vector<ClaimLabel> read_claim_labels() {
    std::vector<ClaimLabel> labels;
    each_line("expected.jsonl", [&](simdjson::dom::object one) {
        ClaimLabel label{text_of(one, "dossier"), text_of(one, "field"), text_of(one, "words"),
                         text_of(one, "part"),    text_of(one, "grade"), text_of(one, "why")};
        std::int64_t nth = 1;
        if (one["nth"].get(nth) == simdjson::SUCCESS) label.nth = static_cast<int>(nth);
        labels.push_back(std::move(label));
    });
    return labels;
}

std::vector<PartLabel> read_part_labels() {
    std::vector<PartLabel> labels;
    each_line("expected_parts.jsonl", [&](simdjson::dom::object one) {
        PartLabel label{text_of(one, "dossier"), text_of(one, "part"), text_of(one, "frame"), {}, false};
        if (!one["candidate"].is_null()) label.candidate = text_of(one, "candidate");
        label.contradictory = one["contradictory"].get_bool().value();
        labels.push_back(std::move(label));
    });
    return labels;
}

std::vector<std::string> dossier_names() {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(GRAINSIDE_DOSSIERS)) {
        if (entry.path().extension() == ".yaml") names.push_back(entry.path().stem().string());
    }
    std::sort(names.begin(), names.end());
    return names;
}

}  // namespace grainside::tests
