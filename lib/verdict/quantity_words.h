// The names of quantities as people say them.
#ifndef GRAINSIDE_VERDICT_QUANTITY_WORDS_H
#define GRAINSIDE_VERDICT_QUANTITY_WORDS_H

#include <string>
#include <string_view>

namespace grainside::verdict {

// "content of Ni" for "content.Ni", "nickel release" for "nickel-release".
std::string quantity_words(std::string_view quantity);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_QUANTITY_WORDS_H
