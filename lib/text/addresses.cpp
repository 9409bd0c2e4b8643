#include "text/addresses.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <iterator>

#include "document/character_reference.h"
#include "text/fold_table.h"
#include "text/utf8.h"

namespace grainside::text {
namespace {

constexpr std::size_t kNowhere = std::string_view::npos;

bool is_ascii_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

bool is_ascii_word(char c) {
    return is_ascii_letter(c) || (c >= '0' && c <= '9');
}

bool is_white(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

bool is_word_kind(CharacterKind kind) {
    return kind == CharacterKind::letter || kind == CharacterKind::jamo || kind == CharacterKind::digit ||
           kind == CharacterKind::mark;
}

struct Address {
    std::size_t begin = kNowhere;
    std::size_t end = kNowhere;
    bool leaves_word = false;
};

// Gives the addresses in the order of the text. Each kind has a sign that prose seldom holds; what a sign turns out not
// to belong to is not looked at again, so that the whole costs linear time.
class AddressFinder {
public:
    explicit AddressFinder(std::string_view text) : text_(text) {
        for (Sign& sign : signs_) sign.at = text.find(sign.text);
    }

    // `begin` kNowhere: there are no more.
    Address next() {
        for (;;) {
            for (Sign& sign : signs_) {
                if (sign.at != kNowhere && sign.at < from_) sign.at = text_.find(sign.text, from_);
            }
            const Sign* const first = std::min_element(std::begin(signs_), std::end(signs_),
                                                       [](const Sign& a, const Sign& b) { return a.at < b.at; });
            if (first->at == kNowhere) return {};
            const std::size_t at = first->at;
            const Address found = (this->*first->read)(at);
            if (found.begin != kNowhere) {
                floor_ = from_ = found.end;
                return found;
            }
            from_ = at + 1;
        }
    }

private:
    struct Sign {
        std::string_view text;
        Address (AddressFinder::*read)(std::size_t at) const;
        std::size_t at = kNowhere;  // the next one
    };

    bool begins_word(std::size_t at) const { return at == floor_ || !is_ascii_word(text_[at - 1]); }

    // 'https://' and its kin.
    Address read_scheme(std::size_t colon) const {
        std::size_t begin = colon;
        while (begin > floor_ && is_ascii_letter(text_[begin - 1])) --begin;
        return begin == colon ? Address{} : read_path(begin, colon + std::string_view("://").size());
    }

    Address read_www(std::size_t begin) const { return read_path(begin, begin + std::string_view("www.").size()); }

    Address read_path(std::size_t begin, std::size_t path) const {
        if (!begins_word(begin)) return {};
        const std::size_t end = end_of_path(path);
        return end == path ? Address{} : Address{begin, end, true};
    }

    // RFC 5322, section 3.4.1, as far as shops write it.
    Address read_mail(std::size_t sign) const {
        constexpr std::string_view kMarks = "._%+-";
        std::size_t begin = sign;
        while (begin > floor_ && (is_ascii_word(text_[begin - 1]) || kMarks.find(text_[begin - 1]) != kNowhere)) {
            --begin;
        }
        while (begin < sign && !is_ascii_word(text_[begin])) ++begin;
        std::size_t end = sign + 1;
        std::size_t last_dot = kNowhere;
        while (end < text_.size() && (is_ascii_word(text_[end]) || text_[end] == '.' || text_[end] == '-')) {
            // A stop ends the sentence, and two are an ellipsis.
            if (text_[end] == '.') {
                if (end + 1 == text_.size() || !is_ascii_word(text_[end + 1])) break;
                last_dot = end;
            }
            ++end;
        }
        if (begin == sign || last_dot == kNowhere || last_dot == sign + 1) return {};
        return {begin, end, true};
    }

    // Of the words between '[' and ']', only what follows.
    Address read_target(std::size_t bracket) const {
        const std::size_t open = bracket + 1;
        const std::size_t begin = behind_white(open + 1);
        std::size_t end = begin;
        bool is_path = false;
        if (begin < text_.size() && text_[begin] == '<') {
            end = text_.find_first_of("<>\n", begin + 1);
            if (end == kNowhere || text_[end] != '>') return {};
            ++end;
            is_path = true;
        } else {
            constexpr std::string_view kPathMarks = "/.#?:";
            std::size_t depth = 0;
            for (; end < text_.size() && !is_white(text_[end]); ++end) {
                const char c = text_[end];
                if (c == '[' || c == ']' || c == '<') return {};
                if (c == '(') ++depth;
                if (c == ')' && depth-- == 0) break;
                is_path = is_path || kPathMarks.find(c) != kNowhere;
            }
        }
        if (!is_path && end != begin) return {};
        std::size_t close = behind_white(end);
        if (close > end && close < text_.size() && (text_[close] == '"' || text_[close] == '\'')) {
            const char signs[] = {text_[close], '\n', '\0'};
            const std::size_t quote = text_.find_first_of(signs, close + 1);
            if (quote == kNowhere || text_[quote] == '\n') return {};
            close = behind_white(quote + 1);
        }
        if (close == text_.size() || text_[close] != ')') return {};
        return {open, close + 1, false};
    }

    std::size_t behind_white(std::size_t at) const {
        while (at < text_.size() && (text_[at] == ' ' || text_[at] == '\t')) ++at;
        return at;
    }

    // Up to white space or a mark that stands around addresses; a bracket belongs to it only with its other half, and
    // the marks that end a clause do not belong to it.
    std::size_t end_of_path(std::size_t begin) const {
        constexpr std::string_view kAround = "<>\"`|[]{}\\";
        constexpr std::string_view kBehind = ".,;:!?'*_~-";
        std::size_t depth = 0;
        std::size_t end = begin;
        while (end < text_.size()) {
            const char c = text_[end];
            std::size_t length = 1;
            if (static_cast<unsigned char>(c) >= 0x80) {
                const Decoded decoded = decode_utf8(text_, end);
                if (decoded.length == 0 || !is_word_kind(fold_entry(decoded.code).kind)) break;
                length = decoded.length;
            } else if (c == '&') {
                const document::CharacterReference reference = document::read_character_reference(text_, end);
                if (reference.length != 0) {
                    if (reference.code != '&' && !is_word_kind(fold_entry(reference.code).kind)) break;
                    length = reference.length;
                }
            } else if (static_cast<unsigned char>(c) <= ' ' || kAround.find(c) != kNowhere ||
                       (c == ')' && depth == 0)) {
                break;
            } else if (c == '(') {
                ++depth;
            } else if (c == ')') {
                --depth;
            }
            end += length;
        }
        while (end > begin && kBehind.find(text_[end - 1]) != kNowhere) --end;
        return end;
    }

    std::string_view text_;
    std::size_t from_ = 0;   // where signs are looked for
    std::size_t floor_ = 0;  // the end of the last address
    Sign signs_[4] = {{"://", &AddressFinder::read_scheme},
                      {"](", &AddressFinder::read_target},
                      {"@", &AddressFinder::read_mail},
                      {"www.", &AddressFinder::read_www}};
};

}  // namespace

void pass_over_addresses(std::string_view text, Tokens& tokens) {
    AddressFinder finder(text);
    Address address = finder.next();
    if (address.begin == kNowhere) return;
    const auto begins_before = [](const Token& token, std::size_t at) { return token.start < at; };
    const auto end = tokens.list.end();
    auto kept = tokens.list.begin();
    auto next = kept;
    for (; address.begin != kNowhere; address = finder.next()) {
        const auto first = std::lower_bound(next, end, address.begin, begins_before);
        const auto behind = std::lower_bound(first, end, address.end, begins_before);
        kept = kept == next ? first : std::move(next, first, kept);
        next = behind;
        if (first == behind || !address.leaves_word) continue;
        const Token& last = *(behind - 1);
        const auto flags = static_cast<std::uint8_t>(first->flags & (flag::kSpaceBefore | flag::kHyphenBefore));
        *kept++ = {first->start, last.end, first->folded_offset, 0, TokenKind::word, flags};
    }
    kept = kept == next ? end : std::move(next, end, kept);
    tokens.list.erase(kept, end);
}

}  // namespace grainside::text
