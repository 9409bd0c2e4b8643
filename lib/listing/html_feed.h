// A page piece by piece, each in a form of which libxml2's HTML parser makes what the HTML standard does.
//
// libxml2 2.9.14 follows HTML 4 and is not made for hostile pages. Measured: a quote in an unquoted value
// ("title=it's") hides the next tags; "@click" and what else is no name makes attributes of the words of its value;
// "&#150;" becomes a control character, and names of references that HTML 4 does not have stay; each attribute is
// compared with all others of its tag.
#ifndef GRAINSIDE_LISTING_HTML_FEED_H
#define GRAINSIDE_LISTING_HTML_FEED_H

#include <cstddef>
#include <string>
#include <string_view>

#include "listing/html_element.h"
#include "listing/utf8_check.h"

namespace grainside::listing {

// More attributes of one tag are left out. The most that a page needs is some dozens (from memory).
inline constexpr std::size_t kMaxTagAttributes = 256;

// Time is linear in the page. Not thread-safe.
class HtmlFeed {
public:
    struct Tag {
        ElementKind element;
        std::size_t end = 0;    // behind its '>'
        bool is_whole = false;  // the page does not break off in it
        bool closes_itself = false;
        bool left_out_attributes = false;
    };

    // `page` outlives this object.
    explicit HtmlFeed(std::string_view page) : page_(page), invalid_(find_invalid_utf8(page, 0)) {}

    // The tag whose name begins at `name_at`, appended to `out` without its end: the caller knows whether it ends
    // itself. Only elements of lists and tables keep their names. Names of attributes have '_' for what libxml2 does
    // not take for a part of them, and values stand in quotes.
    Tag add_tag(std::size_t name_at, std::string& out);

    // The text from `begin` on, up to `end` or some 64 KiB; gives where it ends. Character references are escaped, so
    // that the parser hands them on as they are written; NUL bytes are left out, bytes that are no UTF-8 are U+FFFD.
    std::size_t add_text(std::size_t begin, std::size_t end, std::string& out);

private:
    std::size_t add_run(std::size_t at, std::size_t end, char quote, std::string& out);

    std::string_view page_;
    InvalidBytes invalid_;  // the next ones
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_HTML_FEED_H
