// Whole numbers as people read them.
#ifndef GRAINSIDE_TOOLS_GROUPED_NUMBER_H
#define GRAINSIDE_TOOLS_GROUPED_NUMBER_H

#include <cstdint>
#include <string>

namespace grainside::tools {

// "12,345"
std::string grouped(std::uint64_t number);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_GROUPED_NUMBER_H
