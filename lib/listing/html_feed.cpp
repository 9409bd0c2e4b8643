#include "listing/html_feed.h"

#include <algorithm>
#include <cstdint>

namespace grainside::listing {
namespace {

constexpr std::size_t kMostTextBytes = std::size_t{64} << 10;
// Of tables, lists and paragraphs libxml2 knows what ends what. Elsewhere the rules of HTML 4 end too much, and the
// page would lose its title in "<h1><p>Tote</p></h1>", or what stands in "<b itemprop=description><p>Calf</b>"; second
// <html>, <head> and <body> it passes over.
bool has_rules_of_libxml2(Element element) {
    switch (element) {
        case Element::caption:
        case Element::dd:
        case Element::dt:
        case Element::legend:
        case Element::li:
        case Element::optgroup:
        case Element::option:
        case Element::p:
        case Element::tbody:
        case Element::td:
        case Element::tfoot:
        case Element::th:
        case Element::thead:
        case Element::tr:
            return true;
        default:
            return false;
    }
}

// All others it gets under a name that it knows (an unknown one costs an error message each time) and of which it has
// no rules: neither does it end anything, nor anything it.
constexpr std::string_view kNeutralName = "abbr";

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

// What stands for itself from `at` on, or one thing that does not; gives where the next begins. Stops at `quote`.
// REQUIRES: at < end, page_[at] is no quote that the text stands in.
std::size_t HtmlFeed::add_run(std::size_t at, std::size_t end, char quote, std::string& out) {
    if (invalid_.length > 0 && invalid_.offset < at) invalid_ = find_invalid_utf8(page_, at);
    if (invalid_.length > 0 && invalid_.offset == at) {
        out += kReplacementCharacter;
        const std::size_t behind = at + invalid_.length;
        invalid_ = find_invalid_utf8(page_, behind);
        return behind;
    }
    if (invalid_.length > 0) end = std::min(end, invalid_.offset);
    std::size_t run = at;
    while (run < end && page_[run] != '&' && page_[run] != '<' && page_[run] != '\0' && page_[run] != quote) ++run;
    out.append(page_.substr(at, run - at));
    if (run > at) return run;
    if (page_[at] == '&') out += "&amp;";
    if (page_[at] == '<') out += "&lt;";
    return at + 1;
}

std::size_t HtmlFeed::add_text(std::size_t begin, std::size_t end, std::string& out) {
    std::size_t limit = std::min(end, begin + kMostTextBytes);
    // A piece ends between two characters.
    while (limit < end && (static_cast<unsigned char>(page_[limit]) & 0xC0U) == 0x80U) ++limit;
    std::size_t at = begin;
    while (at < limit) at = add_run(at, limit, '\0', out);
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
    out += has_rules_of_libxml2(tag.element.element) ? tag.element.name : kNeutralName;
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
                    at = add_run(at, page_.size(), quote, out);
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
                    at = add_run(at, at + 1, quote, out);
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
