// Memory for the few texts that have to be built for a record: unescaped strings, composed field names, ids.
#ifndef GRAINSIDE_LISTING_TEXT_ARENA_H
#define GRAINSIDE_LISTING_TEXT_ARENA_H

#include <cstddef>
#include <initializer_list>
#include <memory>
#include <string_view>
#include <vector>

namespace grainside::listing {

// Texts stay where they are until `clear`. After `clear` the arena holds one block as large as everything before it, so
// that records of like size need no allocation. Not thread-safe.
class TextArena {
public:
    void clear();

    // Room for `size` bytes; `keep` then takes the first ones of it. At most one reservation is open.
    char* reserve(std::size_t size);
    std::string_view keep(std::size_t size);

    std::string_view join(std::initializer_list<std::string_view> parts);

private:
    struct Block {
        std::unique_ptr<char[]> bytes;
        std::size_t size = 0;
    };
    void add_block(std::size_t size);

    std::vector<Block> blocks_;  // the last one is being filled
    std::size_t used_ = 0;       // of the last block
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_TEXT_ARENA_H
