#include "survey/name_keys.h"

#include <cstddef>

#include "grainside/survey.h"
#include "text/words_key.h"

namespace grainside::survey {

std::string_view name_in(std::string_view text) noexcept {
    constexpr std::string_view kBlank = " \t\r\n\f\v";
    const std::size_t first = text.find_first_not_of(kBlank);
    if (first == std::string_view::npos) return {};
    text.remove_prefix(first);
    if (text.size() > kMostNameBytes) {
        std::size_t end = kMostNameBytes;
        while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80) --end;
        // Not UTF-8: any border will do.
        text = text.substr(0, end == 0 ? kMostNameBytes : end);
    }
    return text.substr(0, text.find_last_not_of(kBlank) + 1);
}

std::string_view NameKeys::key_of(std::string_view name) {
    text::make_words_key(name, tokens_, key_);
    if (key_.empty()) key_ = name;
    return key_;
}

}  // namespace grainside::survey
