// The SHA-256 of files beside a dossier or a file of proofs: each file is read once, however many spellings of its path
// there are, and all together are bounded. Not thread-safe.
#ifndef GRAINSIDE_EVIDENCE_BESIDE_DIGESTS_H
#define GRAINSIDE_EVIDENCE_BESIDE_DIGESTS_H

#include <cstdint>
#include <filesystem>
#include <map>
#include <string>
#include <string_view>

namespace grainside::evidence {

class BesideDigests {
public:
    // Files of more than `most_bytes` together are not read.
    explicit BesideDigests(std::uintmax_t most_bytes) : left_(most_bytes) {}

    enum class Trouble : std::uint8_t { none, too_large_together, unreadable };
    struct Answer {
        std::string_view sha256;  // empty where there is trouble; lives as long as this object
        Trouble trouble = Trouble::none;
    };
    // `path` with links resolved, as find_beside gives it. Reads the file to its end.
    Answer of(const std::filesystem::path& path);

private:
    std::map<std::string, std::string> known_;
    std::uintmax_t left_;
};

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_BESIDE_DIGESTS_H
