#include "verdict/quantity_words.h"

#include <algorithm>

namespace grainside::verdict {

std::string quantity_words(std::string_view quantity) {
    const std::size_t point = quantity.find('.');
    std::string words(quantity.substr(0, point));
    if (point != std::string_view::npos) words.append(" of ").append(quantity.substr(point + 1));
    std::replace(words.begin(), words.end(), '-', ' ');
    std::replace(words.begin(), words.end(), '_', ' ');
    return words;
}

}  // namespace grainside::verdict
