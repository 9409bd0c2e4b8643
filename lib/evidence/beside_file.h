// Files that a dossier or a file of proofs names: it may have come from anybody, so none leads out of its folder.
// Thread-safe.
#ifndef GRAINSIDE_EVIDENCE_BESIDE_FILE_H
#define GRAINSIDE_EVIDENCE_BESIDE_FILE_H

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>

namespace grainside::evidence {

enum class Where : std::uint8_t {
    beside,  // in the dossier's own folder
    below    // or in a folder in it
};

// A regular file with links resolved, or why there is none. Codes: "outside-folder", "unreadable", "too-large".
struct BesideFile {
    std::filesystem::path path;
    std::string_view code;  // empty: found
    std::string message, hint;

    bool found() const noexcept { return code.empty(); }
};

// `name` as the file has it that names it; messages call that one `owner`. Pipes and devices are refused: they might
// never end.
BesideFile find_beside(const std::filesystem::path& folder, std::string_view name, Where where,
                       std::uintmax_t most_bytes, std::string_view owner = "dossier");

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_BESIDE_FILE_H
