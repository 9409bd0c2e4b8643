#include "listing/html_tokenizer.h"

#include <algorithm>
#include <iterator>

namespace grainside::listing {
namespace {

constexpr std::string_view kAttributeNames[] = {"aria-hidden", "charset", "class", "content",  "data",      "datetime",
                                                "hidden",      "href",    "id",    "itemprop", "itemscope", "itemtype",
                                                "lang",        "name",    "open",  "property", "role",      "src",
                                                "style",       "type",    "value", "xml:lang"};
static_assert(std::size(kAttributeNames) == kAttributes);

bool is_letter(char c) {
    return lower(c) >= 'a' && lower(c) <= 'z';
}

bool ends_name(char c) {
    return is_html_space(c) || c == '/' || c == '>';
}

}  // namespace

bool HtmlTokenizer::next(HtmlToken& token) {
    while (!at_end()) {
        if (raw_.is(html::kRaw)) {
            raw_text(token);
            if (!token.text.empty()) return true;
            continue;
        }
        token.at = at_;
        token.text = {};
        if (page_[at_] == '<' && markup(token)) {
            if (token.kind == HtmlToken::Kind::end) continue;
            return true;
        }
        // A '<' that begins nothing is text, and so is what follows up to the next one.
        const std::size_t end = std::min(page_.find('<', at_ + 1), page_.size());
        token.kind = HtmlToken::Kind::text;
        token.text = page_.substr(at_, end - at_);
        at_ = end;
        return true;
    }
    token.kind = HtmlToken::Kind::end;
    token.text = {};
    return false;
}

// False where the '<' is text. What is passed over leaves the kind `end`.
bool HtmlTokenizer::markup(HtmlToken& token) {
    token.kind = HtmlToken::Kind::end;
    if (at_ + 1 >= page_.size()) return false;
    const char second = page_[at_ + 1];
    if (is_letter(second)) return tag(token, at_ + 1, false);
    if (second == '!') {
        pass_declaration(token);
        return true;
    }
    if (second == '?') {
        pass_to(">", at_ + 2);
        return true;
    }
    if (second != '/' || at_ + 2 >= page_.size()) return false;
    if (is_letter(page_[at_ + 2])) return tag(token, at_ + 2, true);
    pass_to(">", at_ + 2);
    return true;
}

void HtmlTokenizer::pass_declaration(HtmlToken& token) {
    constexpr std::string_view kCdata = "<![CDATA[";
    const std::string_view rest = page_.substr(at_);
    if (rest.starts_with("<!--")) {
        if (rest.starts_with("<!-->")) {
            at_ += 5;
        } else if (rest.starts_with("<!--->")) {
            at_ += 6;
        } else {
            // "--!>" ends a comment too, as browsers have it.
            std::size_t end = page_.find("--", at_ + 4);
            while (end != std::string_view::npos && !page_.substr(end).starts_with("-->") &&
                   !page_.substr(end).starts_with("--!>")) {
                end = page_.find("--", end + 1);
            }
            pass_to(">", std::min(end, page_.size()));
        }
    } else if (is_xml_ && rest.starts_with(kCdata)) {
        const std::size_t begin = at_ + kCdata.size();
        const std::size_t end = std::min(page_.find("]]>", begin), page_.size());
        token.kind = HtmlToken::Kind::text;
        token.text = page_.substr(begin, end - begin);
        at_ = std::min(end + 3, page_.size());
    } else {
        pass_to(">", at_ + 2);
    }
}

bool HtmlTokenizer::tag(HtmlToken& token, std::size_t name_at, bool is_end) {
    std::size_t name_end = name_at;
    while (name_end < page_.size() && !ends_name(page_[name_end])) ++name_end;
    token.element = element_kind(page_.substr(name_at, name_end - name_at));
    token.present = 0;
    token.closes_itself = false;
    at_ = name_end;
    attributes(token);
    // A tag that the page breaks off in is none.
    if (at_end()) return true;
    ++at_;
    token.kind = is_end ? HtmlToken::Kind::end_tag : HtmlToken::Kind::start_tag;
    if (!is_end && token.element.is(html::kRaw) && !(is_xml_ && token.closes_itself)) raw_ = token.element;
    return true;
}

// Ends on the '>' of the tag, or at the end of the page.
void HtmlTokenizer::attributes(HtmlToken& token) {
    for (;;) {
        token.closes_itself = false;
        while (!at_end() && (is_html_space(page_[at_]) || page_[at_] == '/')) {
            token.closes_itself = page_[at_] == '/';
            ++at_;
        }
        if (at_end() || page_[at_] == '>') return;
        const std::size_t begin = at_;
        // A name may begin with '=', but does not go on with it.
        do {
            ++at_;
        } while (!at_end() && !ends_name(page_[at_]) && page_[at_] != '=');
        const std::string_view name = page_.substr(begin, at_ - begin);
        std::size_t behind = at_;
        while (behind < page_.size() && is_html_space(page_[behind])) ++behind;
        std::string_view value;
        if (behind < page_.size() && page_[behind] == '=') {
            at_ = behind + 1;
            value = attribute_value();
        }
        const auto* const found = std::find_if(std::begin(kAttributeNames), std::end(kAttributeNames),
                                               [&](std::string_view known) { return is_same_word(known, name); });
        if (found == std::end(kAttributeNames)) continue;
        const auto which = static_cast<std::size_t>(found - std::begin(kAttributeNames));
        if ((token.present >> which & 1U) != 0) continue;
        token.present |= 1U << which;
        token.values[which] = value;
    }
}

std::string_view HtmlTokenizer::attribute_value() {
    while (!at_end() && is_html_space(page_[at_])) ++at_;
    if (at_end() || page_[at_] == '>') return {};
    const char quote = page_[at_];
    if (quote == '"' || quote == '\'') {
        const std::size_t end = std::min(page_.find(quote, at_ + 1), page_.size());
        const std::string_view value = page_.substr(at_ + 1, end - at_ - 1);
        at_ = std::min(end + 1, page_.size());
        return value;
    }
    const std::size_t begin = at_;
    while (!at_end() && !is_html_space(page_[at_]) && page_[at_] != '>') ++at_;
    return page_.substr(begin, at_ - begin);
}

void HtmlTokenizer::raw_text(HtmlToken& token) {
    std::size_t end = page_.find("</", at_);
    for (; end != std::string_view::npos; end = page_.find("</", end + 2)) {
        const std::size_t behind = end + 2 + raw_.name.size();
        if (behind < page_.size() && ends_name(page_[behind]) &&
            is_same_word(page_.substr(end + 2, raw_.name.size()), raw_.name)) {
            break;
        }
    }
    end = std::min(end, page_.size());
    token.kind = HtmlToken::Kind::raw_text;
    token.element = raw_;
    token.at = at_;
    token.text = page_.substr(at_, end - at_);
    token.present = 0;
    at_ = end;
    raw_ = {};
}

void HtmlTokenizer::pass_to(std::string_view mark, std::size_t from) {
    const std::size_t found = page_.find(mark, from);
    at_ = found == std::string_view::npos ? page_.size() : found + mark.size();
}

}  // namespace grainside::listing
