// An invented catalog for benchmarks: JSON Lines, as long as one likes, the same bytes on every machine.
#ifndef GRAINSIDE_BENCH_CATALOG_H
#define GRAINSIDE_BENCH_CATALOG_H

#include <cstddef>
#include <cstdint>
#include <random>
#include <string>
#include <string_view>
#include <vector>

namespace grainside::bench {

// Listing after listing, from word lists in the source and a fixed seed. A listing has 1,250 bytes and 8 to 15 terms of
// the trade on average. Where it is kind: its sentences repeat, and it is English. Not thread-safe.
class Catalog {
public:
    // Appends the next listing, a line, to `text`.
    void append_listing(std::string& text);

    // What its gaps are filled with and its sentences claim.
    static std::vector<std::string_view> terms();

private:
    std::size_t below(std::size_t bound);
    void append_sentence(std::string& text);

    // The same numbers everywhere; the distributions of the standard library are not.
    std::mt19937 random_{20260927};
    std::uint32_t number_ = 0;
};

// At least `bytes` of it.
std::string catalog_of(std::size_t bytes);

}  // namespace grainside::bench

#endif  // GRAINSIDE_BENCH_CATALOG_H
