#include "listing/text_beyond.h"

#include <algorithm>
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

// Half-open, in bytes without white space.
struct Cut {
    std::size_t begin;
    std::size_t end;
};

class TextCutter {
public:
    explicit TextCutter(std::string_view text) : text_(text), all_(folded_with_places(text)) {}

    // Where `wanted` stands from the beginning of a sentence on. False: it breaks off within a sentence.
    bool find(std::string_view wanted, std::vector<Cut>& cuts) const {
        const std::string_view all = all_.bytes;
        for (std::size_t from = 0; from < all.size();) {
            // memmem of the C library is linear, std::string::find is not.
            const void* const found = ::memmem(all.data() + from, all.size() - from, wanted.data(), wanted.size());
            if (found == nullptr) break;
            const auto begin = static_cast<std::size_t>(static_cast<const char*>(found) - all.data());
            const std::size_t end = begin + wanted.size();
            from = end;
            if (!is_border_at(begin)) continue;
            if (!is_border_at(end)) return false;
            cuts.push_back({begin, end});
        }
        return true;
    }

    // REQUIRES: `cuts` are in order.
    std::string rest(const std::vector<Cut>& cuts) const {
        std::string rest;
        std::size_t kept_from = 0;  // in `text`
        for (const Cut& cut : cuts) {
            const std::size_t begin = all_.places[cut.begin];
            if (begin < kept_from) continue;
            const std::string_view before = trimmed(text_.substr(kept_from, begin - kept_from));
            if (!before.empty()) rest.append(before).append("\n\n");
            kept_from = all_.places[cut.end - 1] + 1;
        }
        rest += trimmed(text_.substr(kept_from));
        rest.resize(trimmed(rest).size());
        return rest;
    }

private:
    bool is_border_at(std::size_t at) const {
        return at == 0 || at == all_.places.size() || is_border(text_, all_.places[at - 1], all_.places[at]);
    }

    std::string_view text_;
    Folded all_;
};

// Long enough to be of this product and of no other. So many are looked for that the work stays linear.
constexpr std::size_t kLeastSentence = 20;
constexpr std::size_t kMostSentences = 32;

std::vector<std::string_view> sentences_of(std::string_view description, const Folded& folded) {
    std::vector<std::string_view> sentences;
    std::size_t begin = 0;
    for (std::size_t at = 1; at <= folded.bytes.size() && sentences.size() < kMostSentences; ++at) {
        if (at < folded.bytes.size() && !is_border(description, folded.places[at - 1], folded.places[at])) continue;
        if (at - begin >= kLeastSentence) sentences.push_back(std::string_view(folded.bytes).substr(begin, at - begin));
        begin = at;
    }
    return sentences;
}

}  // namespace

TextBeyond text_beyond(std::string_view text, std::string_view description) {
    const Folded wanted = folded_with_places(description);
    if (wanted.bytes.empty()) return {};
    const TextCutter cutter(text);
    std::vector<Cut> cuts;
    if (!cutter.find(wanted.bytes, cuts)) return {TextBeyond::Kind::continues, {}};
    if (cuts.empty()) {
        for (const std::string_view sentence : sentences_of(description, wanted)) cutter.find(sentence, cuts);
        std::sort(cuts.begin(), cuts.end(), [](const Cut& a, const Cut& b) { return a.begin < b.begin; });
    }
    if (cuts.empty()) return {};
    return {TextBeyond::Kind::rest, cutter.rest(cuts)};
}

}  // namespace grainside::listing
