#include "document/document.h"

#include <utility>

namespace grainside::document {

Document::Document(std::string file, std::vector<NodeRecord> records, const std::string& strings,
                   const std::string& source, std::vector<Place> key_places)
    : file_(std::move(file)),
      records_(std::move(records)),
      strings_(strings.begin(), strings.end()),
      source_(source.begin(), source.end()),
      key_places_(std::move(key_places)),
      view_(records_),
      strings_view_(strings_.data(), strings_.size()) {}

Document::Document(std::string file, std::span<const NodeRecord> records, std::string_view strings)
    : file_(std::move(file)), view_(records), strings_view_(strings) {}

std::string_view Document::stem() const noexcept {
    std::string_view name = file_;
    name = name.substr(name.rfind('/') + 1);
    return name.substr(0, name.rfind('.'));
}

Node Document::root() const noexcept {
    return view_.empty() ? Node() : Node(view_.data(), strings_view_.data(), 0);
}

std::string_view Document::strings() const noexcept {
    return strings_view_;
}

std::string_view Document::source_line(std::uint32_t line) const noexcept {
    if (line == 0 || source_.empty()) return {};
    std::string_view rest(source_.data(), source_.size());
    for (std::uint32_t at = 1; at < line; ++at) {
        const std::size_t end = rest.find('\n');
        if (end == std::string_view::npos) return {};
        rest.remove_prefix(end + 1);
    }
    std::string_view found = rest.substr(0, rest.find('\n'));
    if (found.ends_with('\r')) found.remove_suffix(1);
    return found;
}

Place Document::key_place(Node node) const noexcept {
    if (!node.exists()) return {};
    if (node.index() < key_places_.size() && key_places_[node.index()].line != 0) return key_places_[node.index()];
    return {node.line(), node.column()};
}

}  // namespace grainside::document
