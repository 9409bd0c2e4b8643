#include "listing/text_arena.h"

#include <algorithm>

namespace grainside::listing {
namespace {

constexpr std::size_t kFirstBlockBytes = 4096;

}  // namespace

void TextArena::clear() {
    used_ = 0;
    if (blocks_.size() < 2) return;
    std::size_t total = 0;
    for (const Block& block : blocks_) total += block.size;
    blocks_.clear();
    add_block(total);
}

char* TextArena::reserve(std::size_t size) {
    if (blocks_.empty()) {
        add_block(std::max(size, kFirstBlockBytes));
    } else if (blocks_.back().size - used_ < size) {
        add_block(std::max(size, blocks_.back().size * 2));
    }
    return blocks_.back().bytes.get() + used_;
}

std::string_view TextArena::keep(std::size_t size) {
    const std::string_view text(blocks_.back().bytes.get() + used_, size);
    used_ += size;
    return text;
}

std::string_view TextArena::join(std::initializer_list<std::string_view> parts) {
    std::size_t size = 0;
    for (const std::string_view part : parts) size += part.size();
    char* to = reserve(size);
    for (const std::string_view part : parts) to = std::copy(part.begin(), part.end(), to);
    return keep(size);
}

void TextArena::add_block(std::size_t size) {
    // Not value-initialised: a large block is paid for only as far as it is used.
    blocks_.push_back({std::unique_ptr<char[]>(new char[size]), size});
    used_ = 0;
}

}  // namespace grainside::listing
