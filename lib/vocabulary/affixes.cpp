#include "vocabulary/affixes.h"

namespace grainside::vocabulary {

WordId Affixes::find_in_long(std::string_view word) const noexcept {
    for (const Known& known : known_) {
        if (word.size() < known.affix.size() + kShortestRest) continue;
        if (word.starts_with(known.affix) || word.ends_with(known.affix)) return known.id;
    }
    return 0;
}

}  // namespace grainside::vocabulary
