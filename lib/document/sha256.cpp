#include "document/sha256.h"

// The header of libmd wants the system's types before it.
#include <sys/types.h>
// A blank line keeps the two in this order.

#include <sha2.h>

#include <array>
#include <cstdint>
#include <fstream>
#include <vector>

namespace grainside::document {
namespace {

class Sha256 {
public:
    Sha256() { SHA256Init(&state_); }
    void add(const char* bytes, std::size_t count) {
        std::array<std::uint8_t, kBlock> block{};
        for (std::size_t at = 0; at < count;) {
            const std::size_t taken = std::min(count - at, block.size());
            std::copy(bytes + at, bytes + at + taken, block.begin());
            SHA256Update(&state_, block.data(), taken);
            at += taken;
        }
    }
    std::string digits() {
        std::array<std::uint8_t, SHA256_DIGEST_LENGTH> digest{};
        SHA256Final(digest.data(), &state_);
        constexpr std::string_view kDigits = "0123456789abcdef";
        std::string text;
        for (const std::uint8_t byte : digest) {
            text += kDigits[byte >> 4U];
            text += kDigits[byte & 0xFU];
        }
        return text;
    }

private:
    static constexpr std::size_t kBlock = 4096;
    SHA2_CTX state_{};
};

}  // namespace

std::string sha256_of(std::string_view bytes) {
    Sha256 digest;
    digest.add(bytes.data(), bytes.size());
    return digest.digits();
}

std::optional<std::string> sha256_of_file(const std::filesystem::path& file) {
    constexpr std::size_t kReadBytes = std::size_t{256} << 10;
    std::ifstream input(file, std::ios::binary);
    if (!input) return std::nullopt;
    Sha256 digest;
    std::vector<char> block(kReadBytes);
    while (input) {
        input.read(block.data(), static_cast<std::streamsize>(block.size()));
        digest.add(block.data(), static_cast<std::size_t>(input.gcount()));
    }
    if (!input.eof()) return std::nullopt;
    return digest.digits();
}

}  // namespace grainside::document
