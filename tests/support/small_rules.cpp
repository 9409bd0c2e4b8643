#include "support/small_rules.h"

#include <stdexcept>
#include <utility>

#include "document/yaml_document.h"
#include "rules/load_demands.h"

namespace grainside::support {

namespace fs = std::filesystem;

namespace {

constexpr std::string_view kShared[] = {"concepts.yaml", "parts.yaml"};

// Conditions may name places; those of the book stand among its words.
constexpr std::string_view kPlaces =
    "- {place: europe, names: [europe]}\n"
    "- {place: italy, within: europe, names: [italy]}\n"
    "- {place: china, names: [china]}\n";

// Without words but those of three places, so that it is loaded once and copied for each test.
const vocabulary::Vocabulary& wordless_vocabulary() {
    static const vocabulary::Vocabulary shared = [] {
        document::Faults faults;
        std::vector<document::Document> documents;
        for (document::Document& document : document::read_yaml_folder(GRAINSIDE_RULES_FOLDER, faults)) {
            for (const std::string_view file : kShared) {
                if (document.file() == file) documents.push_back(std::move(document));
            }
        }
        documents.push_back(document::parse_yaml("vocabulary/places.yaml", std::string(kPlaces), faults).value());
        vocabulary::Vocabulary vocabulary;
        vocabulary::load_vocabulary(documents, vocabulary, faults);
        if (faults.any_errors()) throw std::runtime_error("the default concepts cannot be loaded");
        return vocabulary;
    }();
    return shared;
}

}  // namespace

void load_small_rules(const std::map<std::string, std::string>& files, rules::BookData& book,
                      document::Faults& faults) {
    book.vocabulary = wordless_vocabulary();
    for (const auto& [name, text] : files) {
        auto document = document::parse_yaml(name, text, faults);
        if (!document) throw std::runtime_error(name + " is no YAML: " + to_text(faults.take().front()));
        book.documents.push_back(std::move(*document));
    }
    rules::load_sources(book, faults);
    rules::load_markets(book, faults);
    rules::load_rules(book, faults);
    rules::load_demands(book, faults);
}

RuleFolder::RuleFolder(const std::map<std::string, std::string>& files) {
    for (const std::string_view file : kShared) fs::copy(fs::path(GRAINSIDE_RULES_FOLDER) / file, path());
    for (const auto& [file, text] : files) folder_.write(file, text);
}

}  // namespace grainside::support
