// Where the nodes of a YAML document stand in its text, in bytes.
#ifndef GRAINSIDE_TOOLS_YAML_SPANS_H
#define GRAINSIDE_TOOLS_YAML_SPANS_H

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "document/document.h"

namespace grainside::tools {

// Follows the text from the places that the document has; what does not agree gives nothing, so a place is never a
// guess. Both outlive the object, and the document was parsed from the text. Thread-safe.
class YamlSpans {
public:
    YamlSpans(std::string_view yaml, const document::Document& document);

    // Of the value: its first character, quote, bracket, dash of a list in lines or block mark. REQUIRES: no null,
    // which has no place of its own.
    std::size_t begin(document::Node node) const;
    // Behind its last character, quote or bracket; of a text in lines behind the last one that is not blank. Of a null
    // behind the colon or the dash.
    std::optional<std::size_t> end(document::Node node) const;
    // Of the key in a mapping.
    std::size_t key_begin(document::Node node) const;
    // Whether a collection stands in brackets.
    bool in_brackets(document::Node collection) const;

    // From the first to behind the line feed of the line that `at` stands in; the last line may have none.
    std::size_t line_begin(std::size_t at) const;
    std::size_t line_end(std::size_t at) const;

private:
    std::optional<std::size_t> end_of_scalar(std::size_t begin, std::string_view text) const;
    std::optional<std::size_t> end_of_brackets(document::Node node) const;
    // Passes white space, line ends and comments.
    std::size_t pass_blanks(std::size_t at) const;
    std::size_t at_place(document::Place place) const;

    std::string_view yaml_;
    const document::Document& document_;
    std::vector<std::size_t> lines_;
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_YAML_SPANS_H
