#include "listing/text_beyond.h"

#include <cstddef>
#include <cstring>
#include <vector>

#include "listing/html_element.h"

namespace grainside::listing {
namespace {

constexpr std::string_view kEndsSentence = ".!?:";

// The bytes without white space, in lower case, and where each of them stands.
struct Folded {
    std::string bytes;
    std::vector<std::size_t> places;
};

Folded folded_with_places(std::string_view text) {
    Folded folded;
    folded.bytes.reserve(text.size());
    folded.places.reserve(text.size());
    for (std::size_t at = 0; at < text.size(); ++at) {
        if (is_html_space(text[at])) continue;
        folded.bytes += lower(text[at]);
        folded.places.push_back(at);
    }
    return folded;
}

// Whether a sentence or a line ends between the bytes at `last` and `next`.
bool is_border(std::string_view text, std::size_t last, std::size_t next) {
    return kEndsSentence.find(text[last]) != std::string_view::npos ||
           text.substr(last, next - last).find('\n') != std::string_view::npos;
}

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && is_html_space(text.front())) text.remove_prefix(1);
    while (!text.empty() && is_html_space(text.back())) text.remove_suffix(1);
    return text;
}

}  // namespace

TextBeyond text_beyond(std::string_view text, std::string_view description) {
    const Folded all = folded_with_places(text);
    const Folded wanted = folded_with_places(description);
    TextBeyond beyond;
    if (wanted.bytes.empty()) return beyond;
    const auto is_border_at = [&](std::size_t at) {
        return at == 0 || at == all.places.size() || is_border(text, all.places[at - 1], all.places[at]);
    };
    std::size_t kept_from = 0;  // in `text`
    for (std::size_t from = 0; from < all.bytes.size();) {
        // memmem of the C library is linear, std::string::find is not.
        const void* const found =
            ::memmem(all.bytes.data() + from, all.bytes.size() - from, wanted.bytes.data(), wanted.bytes.size());
        if (found == nullptr) break;
        const auto begin = static_cast<std::size_t>(static_cast<const char*>(found) - all.bytes.data());
        const std::size_t end = begin + wanted.bytes.size();
        from = end;
        if (!is_border_at(begin)) continue;
        if (!is_border_at(end)) return {TextBeyond::Kind::continues, {}};
        beyond.kind = TextBeyond::Kind::rest;
        const std::string_view before = trimmed(text.substr(kept_from, all.places[begin] - kept_from));
        if (!before.empty()) beyond.rest.append(before).append("\n\n");
        kept_from = all.places[end - 1] + 1;
    }
    if (beyond.kind != TextBeyond::Kind::rest) return beyond;
    beyond.rest += trimmed(text.substr(kept_from));
    beyond.rest.resize(trimmed(beyond.rest).size());
    return beyond;
}

}  // namespace grainside::listing
