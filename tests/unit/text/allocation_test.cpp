#include <gtest/gtest.h>

#include <new>
#include <string>
#include <vector>

#include "support/allocations.h"
#include "text/segments.h"
#include "text/tokenizer.h"

namespace grainside::text {
namespace {

TEST(AllocationTest, NoneOnceTheBuffersHaveGrown) {
    std::string long_text;
    for (int i = 0; i < 200; ++i) {
        long_text +=
            "<p>Full-grain le\u0430ther, 1.4 mm \u2013 caf\u00E9 &eacute;t&eacute; \uFDFA. Is it?</p>\n- "
            "\u76AE\u9769\n";
    }
    const std::string short_text = "Soft na\u00EFve leather, Na\u00EFve and 1\u00BD mm.";
    Tokens tokens;
    std::vector<Segment> segments;
    for (const auto tokenizer : {tokenize, tokenize_plainly}) {
        tokenizer(long_text, tokens);
        cut_segments(tokens, segments);
        const std::size_t before = support::allocations().count;
        for (int round = 0; round < 10; ++round) {
            tokenizer(short_text, tokens);
            cut_segments(tokens, segments);
            tokenizer(long_text, tokens);
            cut_segments(tokens, segments);
        }
        EXPECT_EQ(support::allocations().count - before, 0U);
    }
    const std::size_t before = support::allocations().count;
    ::operator delete(::operator new(1));
    EXPECT_EQ(support::allocations().count - before, 1U) << "the count counts nothing";
}

}  // namespace
}  // namespace grainside::text
