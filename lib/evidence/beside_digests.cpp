#include "evidence/beside_digests.h"

#include <system_error>

#include "document/sha256.h"

namespace grainside::evidence {

BesideDigests::Answer BesideDigests::of(const std::filesystem::path& path) {
    const auto [known, is_new] = known_.try_emplace(path.string());
    if (is_new) {
        std::error_code unknown;
        const std::uintmax_t size = std::filesystem::file_size(path, unknown);
        if (unknown || size > left_) {
            known_.erase(known);
            return {{}, unknown ? Trouble::unreadable : Trouble::too_large_together};
        }
        left_ -= size;
        known->second = document::sha256_of_file(path).value_or(std::string());
    }
    if (known->second.empty()) return {{}, Trouble::unreadable};
    return {known->second, Trouble::none};
}

}  // namespace grainside::evidence
