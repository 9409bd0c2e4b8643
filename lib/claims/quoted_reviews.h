// Customers' words in quotation marks: '"I thought it was real lamb!" wrote Petra'. The seller passes them on and
// claims nothing with them.
#ifndef GRAINSIDE_CLAIMS_QUOTED_REVIEWS_H
#define GRAINSIDE_CLAIMS_QUOTED_REVIEWS_H

#include <cstddef>
#include <span>
#include <vector>

#include "text/token.h"
#include "vocabulary/matcher.h"
#include "vocabulary/vocabulary.h"

namespace grainside::claims {

struct TokenRange {
    std::size_t first = 0;
    std::size_t last = 0;  // one past
};

// Fills `reviews`, in order, with what stands between double quotes of a field and is said to be a customer's: by a
// word (role `reviewer`) behind it or before a colon ('One customer told us: "'), or by nothing but a name up to the
// end of the line ('" Marit, Bergen').
void find_quoted_reviews(const vocabulary::Vocabulary& vocabulary, const text::Tokens& tokens,
                         std::span<const vocabulary::Hit> hits, std::vector<TokenRange>& reviews);

}  // namespace grainside::claims

#endif  // GRAINSIDE_CLAIMS_QUOTED_REVIEWS_H
