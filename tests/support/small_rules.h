// Rules of a few lines, loaded in memory over the default concepts and parts.
#ifndef GRAINSIDE_TESTS_SUPPORT_SMALL_RULES_H
#define GRAINSIDE_TESTS_SUPPORT_SMALL_RULES_H

#include <filesystem>
#include <map>
#include <string>
#include <string_view>

#include "document/faults.h"
#include "rules/book_data.h"
#include "support/temporary_folder.h"

namespace grainside::support {

// Fills `book` from file names and their texts (sources.yaml, markets.yaml, wording/..., markets/...); the vocabulary
// is that of the default concepts without any word. REQUIRES: the texts are YAML; throws std::runtime_error where not.
void load_small_rules(const std::map<std::string, std::string>& files, rules::BookData& book, document::Faults& faults);

// A folder of its own below the temporary folder, removed at the end, with concepts.yaml and parts.yaml of the default
// book and the files given.
class RuleFolder {
public:
    explicit RuleFolder(const std::map<std::string, std::string>& files);
    const std::filesystem::path& path() const noexcept { return folder_.path(); }

private:
    TemporaryFolder folder_;
};

}  // namespace grainside::support

#endif  // GRAINSIDE_TESTS_SUPPORT_SMALL_RULES_H
