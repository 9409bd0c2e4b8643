// Records against the JSON Schemas of tools/schema, by a validator that is not ours (python3-jsonschema).
#ifndef GRAINSIDE_TESTS_CLI_SCHEMA_VALIDATION_H
#define GRAINSIDE_TESTS_CLI_SCHEMA_VALIDATION_H

#include <filesystem>
#include <string>
#include <vector>

#include "support/process_runner.h"

namespace grainside::tests {

// Status 0 where each line of `text` fits exactly one of the schemas ("claim"); else 1, and which line and why.
ProcessResult validate_records(const std::vector<std::string>& schemas, const std::string& text,
                               const std::filesystem::path& folder);

}  // namespace grainside::tests

#endif  // GRAINSIDE_TESTS_CLI_SCHEMA_VALIDATION_H
