// A belief as people read it.
#ifndef GRAINSIDE_VERDICT_PERCENT_TEXT_H
#define GRAINSIDE_VERDICT_PERCENT_TEXT_H

#include <string>

namespace grainside::verdict {

// "62 %", "97.3 %", "0.5 %"; never 0 % or 100 %, which no reading can give: "< 0.1 %", "> 99.9 %". `share`: 0 to 1.
std::string percent_text(double share);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_PERCENT_TEXT_H
