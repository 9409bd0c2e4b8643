#include "rules/built_in_book.h"

#include <cstdint>

namespace grainside::rules {

namespace {

alignas(8) constexpr std::uint64_t kBook[] = {
#include "rules_embed.inc"
};

}  // namespace

std::span<const char> built_in_book() noexcept {
    return {reinterpret_cast<const char*>(kBook), sizeof(kBook)};
}

}  // namespace grainside::rules
