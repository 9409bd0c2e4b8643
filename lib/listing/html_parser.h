// A page read by libxml2's HTML parser: its tags, texts and ends, one after the other.
#ifndef GRAINSIDE_LISTING_HTML_PARSER_H
#define GRAINSIDE_LISTING_HTML_PARSER_H

#include <cstddef>
#include <memory>
#include <string_view>

#include "listing/html_element.h"
#include "listing/html_tag.h"

namespace grainside::listing {

// What a page holds, in its order. An element that was kept ends once.
class HtmlEvents {
public:
    HtmlEvents() = default;
    HtmlEvents(const HtmlEvents&) = delete;
    HtmlEvents& operator=(const HtmlEvents&) = delete;
    virtual ~HtmlEvents() = default;

    // A start tag comes next: the moment to close what it ends. False: the tag is left out. The last words before it
    // may be still to come (HtmlParser::flush). `is_empty`: it has no content and no end.
    virtual bool before_start(const ElementKind& element, bool is_empty) = 0;
    // Whether the element is kept, so that its end is told.
    virtual bool start(const HtmlTag& tag) = 0;
    // An end tag of the page: the moment to close the elements that it ends. Unheeded, it ends nothing.
    virtual void end_tag(const ElementKind& element) = 0;
    // The innermost element that was kept ends.
    virtual void end() = 0;
    // Character references are not resolved.
    virtual void text(std::string_view text) = 0;
    // The inside of an element of html::kRaw, a slice of the page, behind its start tag; also where it is empty.
    virtual void raw_text(const ElementKind& element, std::size_t at, std::string_view text) = 0;
};

// libxml2 takes tags and attributes apart and keeps the open elements. They end by its rules for lists and tables (HTML
// 4), and where the events ask for it by those of HTML 5. The inside of html::kRaw does not reach it, because it would
// read most of that as tags. It gets one tag at a time, in the form that html_feed.h says, opens no file, prints
// nothing and shares nothing between threads but what xmlInitParser sets up once. Throws std::bad_alloc. Time is linear
// in the page as long as the events keep no more than some hundred elements open. Not thread-safe.
class HtmlParser {
public:
    // `page` and `events` outlive this object. `is_xml`: "/>" ends every element and CDATA is text, as in XHTML.
    HtmlParser(std::string_view page, bool is_xml, HtmlEvents& events);
    HtmlParser(const HtmlParser&) = delete;
    HtmlParser& operator=(const HtmlParser&) = delete;
    ~HtmlParser();

    // Reads the page, or on to `stop`.
    void run();
    void stop() noexcept;

    // For the events: ends the innermost element; hands over the texts so far.
    void close();
    void flush();

    // Whether a tag had more than kMaxTagAttributes (html_feed.h).
    bool left_out_attributes() const noexcept;

private:
    class Reader;
    std::unique_ptr<Reader> reader_;
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_HTML_PARSER_H
