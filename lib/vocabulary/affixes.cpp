#include "vocabulary/affixes.h"

namespace grainside::vocabulary {

WordId Affixes::find(std::string_view word) const noexcept {
    constexpr std::size_t kShortestRest = 2;  // 'leathers' is a plural
    for (const Known& known : known_) {
        if (word.size() < known.affix.size() + kShortestRest) continue;
        if (word.starts_with(known.affix) || word.ends_with(known.affix)) return known.id;
    }
    return 0;
}

}  // namespace grainside::vocabulary
