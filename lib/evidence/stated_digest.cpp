#include "evidence/stated_digest.h"

#include <fmt/format.h>

namespace grainside::evidence {

void check_stated_digest(const EntryReader& reader, document::Node stated, std::string_view found,
                         std::string_view differs, std::string_view hint) {
    constexpr std::string_view kPrefix = "sha256:";
    constexpr std::size_t kDigits = 64;
    if (!stated.exists()) return;
    std::string_view digits = stated.text();
    if (digits.starts_with(kPrefix)) digits.remove_prefix(kPrefix.size());
    if (digits.size() != kDigits || digits.find_first_not_of("0123456789abcdef") != std::string_view::npos) {
        reader.error(stated, "bad-digest", "a digest is the SHA-256 as 64 digits 0-9 and a-f",
                     "`sha256sum FILE` prints it");
    } else if (digits != found) {
        reader.error(stated, "digest-differs", std::string(differs),
                     fmt::format("{}; its digest now is {}", hint, found));
    }
}

}  // namespace grainside::evidence
