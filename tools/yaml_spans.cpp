#include "yaml_spans.h"

#include <algorithm>

#include "yaml_scalar_walk.h"

namespace grainside::tools {

using document::Node;
using document::Place;

namespace {

constexpr std::string_view kBlanks = " \t\r\n";

}  // namespace

YamlSpans::YamlSpans(std::string_view yaml, const document::Document& document) : yaml_(yaml), document_(document) {
    // A byte order mark is no part of the first line.
    constexpr std::string_view kMark = "\xEF\xBB\xBF";
    lines_.push_back(yaml.starts_with(kMark) ? kMark.size() : 0);
    for (std::size_t end = yaml.find('\n'); end != std::string_view::npos; end = yaml.find('\n', end + 1)) {
        lines_.push_back(end + 1);
    }
}

std::size_t YamlSpans::at_place(Place place) const {
    const std::size_t line = std::min<std::size_t>(place.line == 0 ? 0 : place.line - 1, lines_.size() - 1);
    return std::min(lines_[line] + (place.column == 0 ? 0 : place.column - 1), yaml_.size());
}

std::size_t YamlSpans::begin(Node node) const {
    return at_place({node.line(), node.column()});
}

std::size_t YamlSpans::key_begin(Node node) const {
    return at_place(document_.key_place(node));
}

bool YamlSpans::in_brackets(Node collection) const {
    const std::size_t at = begin(collection);
    return at < yaml_.size() && (yaml_[at] == '{' || yaml_[at] == '[');
}

std::optional<std::size_t> YamlSpans::end(Node node) const {
    if (node.is_scalar()) return end_of_scalar(begin(node), node.text());
    if (!node.is_mapping() && !node.is_sequence()) {
        if (node.key().empty()) return begin(node) + 1;
        const auto key = end_of_scalar(key_begin(node), node.key());
        if (!key) return std::nullopt;
        const std::size_t colon = pass_blanks(*key);
        return colon < yaml_.size() && yaml_[colon] == ':' ? colon + 1 : *key;
    }
    if (in_brackets(node)) return end_of_brackets(node);
    std::optional<std::size_t> last;
    for (const Node child : node) {
        last = end(child);
        if (!last) return std::nullopt;
    }
    return last;
}

std::optional<std::size_t> YamlSpans::end_of_scalar(std::size_t begin, std::string_view text) const {
    YamlScalarWalk walk(yaml_, begin, text);
    std::optional<std::size_t> at = walk.to(text.size());
    if (!at) return std::nullopt;
    const char style = walk.style();
    if (style == '"' || style == '\'') {
        const std::size_t quote = std::min(yaml_.find_first_not_of(kBlanks, *at), yaml_.size());
        return quote < yaml_.size() && yaml_[quote] == style ? std::optional(quote + 1) : std::nullopt;
    }
    // The white space behind a text in lines belongs to nobody.
    const std::size_t last = yaml_.find_last_not_of(kBlanks, *at == 0 ? 0 : *at - 1);
    return std::max(begin, last == std::string_view::npos ? begin : last + 1);
}

std::optional<std::size_t> YamlSpans::end_of_brackets(Node node) const {
    const char close = node.is_mapping() ? '}' : ']';
    std::size_t at = begin(node) + 1;
    for (const Node child : node) {
        const auto last = end(child);
        if (!last) return std::nullopt;
        at = std::max(at, *last);
    }
    at = pass_blanks(at);
    if (at < yaml_.size() && yaml_[at] == ',') at = pass_blanks(at + 1);
    return at < yaml_.size() && yaml_[at] == close ? std::optional(at + 1) : std::nullopt;
}

std::size_t YamlSpans::pass_blanks(std::size_t at) const {
    for (;;) {
        at = std::min(yaml_.find_first_not_of(kBlanks, at), yaml_.size());
        if (at == yaml_.size() || yaml_[at] != '#') return at;
        at = std::min(yaml_.find('\n', at), yaml_.size());
    }
}

std::size_t YamlSpans::line_begin(std::size_t at) const {
    return *std::prev(std::upper_bound(lines_.begin(), lines_.end(), at));
}

std::size_t YamlSpans::line_end(std::size_t at) const {
    const std::size_t end = yaml_.find('\n', at);
    return end == std::string_view::npos ? yaml_.size() : end + 1;
}

}  // namespace grainside::tools
