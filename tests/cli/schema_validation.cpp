#include "schema_validation.h"

namespace grainside::tests {

ProcessResult validate_records(const std::vector<std::string>& schemas, const std::string& text,
                               const std::filesystem::path& folder) {
    ProcessCall call;
    call.program = GRAINSIDE_PYTHON;
    call.arguments = {GRAINSIDE_VALIDATOR};
    for (const std::string& schema : schemas)
        call.arguments.push_back(GRAINSIDE_SCHEMA_FOLDER "/" + schema + ".schema.json");
    call.folder = folder;
    call.input = {text};
    return run_process(call);
}

}  // namespace grainside::tests
