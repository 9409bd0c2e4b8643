// A scalar's text and its YAML source, side by side.
#ifndef GRAINSIDE_TOOLS_YAML_SCALAR_WALK_H
#define GRAINSIDE_TOOLS_YAML_SCALAR_WALK_H

#include <cstddef>
#include <optional>
#include <string_view>

namespace grainside::tools {

// Goes forward only, character by character (YAML 1.2.2, chapters 7 and 8): white space of the text stands for any
// white space of the source, which is how lines fold and are indented.
class YamlScalarWalk {
public:
    // `begin`: of the scalar's first character, quote or block mark. Both texts outlive the walk.
    YamlScalarWalk(std::string_view yaml, std::size_t begin, std::string_view text);

    // ' ' plain, '"', '\'', '|' or '>'.
    char style() const noexcept { return style_; }
    // Goes on until `offset` of the text; the place in the source, or nothing where the two do not agree. An offset
    // that was passed already is where the walk stands.
    std::optional<std::size_t> to(std::size_t offset);
    // Passes white space of the source that the text has already had, so that a word begins here.
    std::size_t at_word();

private:
    bool step();
    bool escape();

    std::string_view yaml_;
    std::string_view text_;
    std::size_t at_;
    std::size_t done_ = 0;
    char style_ = ' ';
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_YAML_SCALAR_WALK_H
