// A small streaming writer of HTML (the XML-like subset that both an HTML and an SVG reader takes): elements in the
// order of the calls, text and attribute values escaped, nothing else gets in.
//
//     HtmlWriter html(out);
//     html.begin("p", {{"class", "soft"}});
//     html.text(words_of_a_stranger);
//     html.end();
//
// Text comes out inert: '&', '<', '>', quotes as references, the rest as document::printable_text has it. `out` must
// outlive the writer. REQUIRES: begin and end in pairs; names of elements and attributes are constants of ours.
#ifndef GRAINSIDE_REPORT_HTML_HTML_WRITER_H
#define GRAINSIDE_REPORT_HTML_HTML_WRITER_H

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace grainside::report {

class HtmlWriter {
public:
    struct Attribute {
        std::string_view name;
        std::string_view value;
    };
    using Attributes = std::initializer_list<Attribute>;

    explicit HtmlWriter(std::string& out) : out_(out) {}

    void begin(std::string_view name, Attributes attributes = {});
    void end();
    void text(std::string_view text);
    // An element that holds text only.
    void element(std::string_view name, std::string_view text) { element(name, {}, text); }
    void element(std::string_view name, Attributes attributes, std::string_view text);
    // One that holds nothing and is not closed in HTML (meta, br, and the shapes of SVG, which close themselves).
    void lone(std::string_view name, Attributes attributes);
    void shape(std::string_view name, Attributes attributes);
    // Text of ours that is HTML already.
    void constant(std::string_view html) { out_ += html; }

private:
    void open(std::string_view name, Attributes attributes, std::string_view close);

    std::string& out_;
    std::vector<std::string_view> open_;
};

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_HTML_HTML_WRITER_H
