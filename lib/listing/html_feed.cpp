#include "listing/html_feed.h"

#include <algorithm>
#include <cstdint>

namespace grainside::listing {
namespace {

constexpr std::size_t kMostTextBytes = std::size_t{64} << 10;
// libxml2 cuts names at 100 bytes, and takes the rest for an attribute.
constexpr std::size_t kMostNameBytes = 64;
constexpr std::string_view kReplacementCharacter = "\xEF\xBF\xBD";

// What libxml2 takes for a part of a name.
bool is_name_byte(char c) {
    return (lower(c) >= 'a' && lower(c) <= 'z') || (c >= '0' && c <= '9') || c == '-' || c == '_' || c == ':' ||
           c == '.';
}

bool ends_name(char c) {
    return is_html_space(c) || c == '/' || c == '>';
}

bool is_quote(char c) {
    return c == '"' || c == '\'';
}

}  // namespace

// One character, or one byte of it where it stands for itself in any place; gives where the next one begins.
std::size_t HtmlFeed::add_character(std::size_t at, std::string& out) {
    if (invalid_.length > 0 && invalid_.offset < at) {
        invalid_ = find_invalid_utf8(page_, at);
    }
    if (invalid_.length > 0 && invalid_.offset == at) {
        out += kReplacementCharacter;
        const std::size_t behind = at + invalid_.length;
        invalid_ = find_invalid_utf8(page_, behind);
        return behind;
    }
    const char c = page_[at];
    if (c == '&') {
        out += "&amp;";
    } else if (c == '<') {
        out += "&lt;";
    } else if (c != '\0') {
        out += c;
    }
    return at + 1;
}

std::size_t HtmlFeed::add_text(std::size_t begin, std::size_t end, std::string& out) {
    const std::size_t limit = std::min(end, begin + kMostTextBytes);
    std::size_t at = begin;
    const auto is_inside = [&](std::size_t place) {
        return place < end && (static_cast<unsigned char>(page_[place]) & 0xC0U) == 0x80U;
    };
    // A piece ends between two characters.
    while (at < limit || is_inside(at)) at = add_character(at, out);
    return at;
}

// HTML standard, "tag name state" to "self-closing start tag state".
HtmlFeed::Tag HtmlFeed::add_tag(std::size_t name_at, std::string& out) {
    enum class State : std::uint8_t { between, name, behind_name, before_value, quoted, bare };
    std::size_t at = name_at;
    while (at < page_.size() && !ends_name(page_[at])) ++at;
    Tag tag;
    tag.element = element_kind(page_.substr(name_at, at - name_at));
    out += '<';
    for (const char c : tag.element.name.substr(0, kMostNameBytes)) out += is_name_byte(c) ? c : '_';
    State state = State::between;
    char quote = '"';
    std::size_t attributes = 0;
    std::size_t size = 0;  // of `out`, from where on attributes are too many
    out += ' ';
    while (at < page_.size()) {
        const char c = page_[at];
        const bool is_space = is_html_space(c);
        if (c == '>' && state != State::quoted) {
            tag.is_whole = true;
            break;
        }
        switch (state) {
            case State::between:
                tag.closes_itself = c == '/';
                if (!is_space && c != '/') {
                    if (++attributes == kMaxTagAttributes + 1) size = out.size();
                    // A name may begin with '=', but does not go on with it.
                    out += ' ';
                    out += is_name_byte(c) ? c : '_';
                    state = State::name;
                }
                ++at;
                break;
            case State::name:
            case State::behind_name:
                if (c == '=') {
                    out += '=';
                    state = State::before_value;
                    ++at;
                } else if (is_space) {
                    state = State::behind_name;
                    ++at;
                } else if (c == '/' || state == State::behind_name) {
                    state = State::between;
                } else {
                    out += is_name_byte(c) ? c : '_';
                    ++at;
                }
                break;
            case State::before_value:
                if (is_space) {
                    ++at;
                    break;
                }
                state = is_quote(c) ? State::quoted : State::bare;
                quote = is_quote(c) ? c : '"';
                out += quote;
                if (state == State::quoted) ++at;
                break;
            case State::quoted:
                if (c == quote) {
                    out += c;
                    state = State::between;
                    ++at;
                } else {
                    at = add_character(at, out);
                }
                break;
            case State::bare:
                if (is_space) {
                    out += quote;
                    state = State::between;
                } else if (c == quote) {
                    out += "&#34;";
                    ++at;
                } else {
                    at = add_character(at, out);
                }
                break;
        }
        // What is too much takes no memory either.
        if (attributes > kMaxTagAttributes) out.resize(size);
    }
    if (attributes > kMaxTagAttributes) {
        tag.left_out_attributes = true;
    } else if (state == State::bare) {
        out += quote;
    } else if (state == State::before_value) {
        out += "\"\"";
    }
    tag.end = std::min(at + 1, page_.size());
    return tag;
}

}  // namespace grainside::listing
