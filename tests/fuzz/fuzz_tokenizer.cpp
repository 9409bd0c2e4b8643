// Any bytes: the two tokenizers agree, and what must hold for the tokens and segments of any text holds.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>
#include <vector>

#include "../unit/text/token_checks.h"
#include "text/segments.h"
#include "text/tokenizer.h"

namespace {

void require(bool holds) {
    if (!holds) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    // Longer inputs find nothing that several blocks of 64 bytes do not, and cost the fuzzer its speed.
    if (size > 4096) return 0;
    using namespace grainside::text;
    const std::string_view text(reinterpret_cast<const char*>(data), size);

    // Kept from input to input, as a worker keeps them: what an earlier text left in the buffers must not matter.
    static Tokens tokens;
    static Tokens plain;
    static std::vector<Segment> segments;
    tokenize(text, tokens);
    tokenize_plainly(text, plain);
    require(same_tokens(tokens, plain));
    require(first_fault(text, tokens).empty());
    require(first_fault(text, plain).empty());

    cut_segments(tokens, segments);
    std::uint32_t past = 0;
    for (const Segment& segment : segments) {
        require(past <= segment.first && segment.first < segment.last && segment.last <= tokens.list.size());
        past = segment.last;
    }
    return 0;
}
