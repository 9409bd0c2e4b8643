// One fuzz input as several named texts: a line "%% NAME" begins each. Seeds stay readable, and a fuzzer finds the
// marks in its dictionary.
#ifndef GRAINSIDE_TESTS_FUZZ_INPUT_PARTS_H
#define GRAINSIDE_TESTS_FUZZ_INPUT_PARTS_H

#include <map>
#include <string>
#include <string_view>

namespace grainside::fuzz {

// What stands before the first mark goes by `first`. Of two texts with one name, the last counts.
inline std::map<std::string, std::string_view> parts_of(std::string_view input, std::string_view first) {
    constexpr std::string_view kMark = "%% ";
    std::map<std::string, std::string_view> parts;
    std::string name(first);
    while (true) {
        std::size_t end = input.starts_with(kMark) ? 0 : input.find("\n%% ");
        const bool last = end == std::string_view::npos;
        if (!last && !input.starts_with(kMark)) ++end;
        parts[name] = input.substr(0, end);
        if (last) return parts;
        input.remove_prefix(end + kMark.size());
        const std::size_t line = input.find('\n');
        name = input.substr(0, line);
        input.remove_prefix(line == std::string_view::npos ? input.size() : line + 1);
    }
}

}  // namespace grainside::fuzz

#endif  // GRAINSIDE_TESTS_FUZZ_INPUT_PARTS_H
