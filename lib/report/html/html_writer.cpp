#include "report/html/html_writer.h"

#include <algorithm>
#include <iterator>

#include "document/inert_text.h"

namespace grainside::report {
namespace {

// Their line breaks mean nothing, so that the source can be read by people.
constexpr std::string_view kBlocks[] = {
    "section", "article", "header", "footer", "main", "nav",   "ul",   "ol",    "li",      "dl",
    "dt",      "dd",      "table",  "thead",  "tr",   "tbody", "p",    "h1",    "h2",      "h3",
    "h4",      "h5",      "div",    "figure", "svg",  "body",  "head", "title", "caption", "figcaption"};

bool is_block(std::string_view name) {
    return std::find(std::begin(kBlocks), std::end(kBlocks), name) != std::end(kBlocks);
}

std::string_view reference_for(char c) {
    switch (c) {
        case '&':
            return "&amp;";
        case '<':
            return "&lt;";
        case '>':
            return "&gt;";
        case '"':
            return "&quot;";
        case '\'':
            return "&#39;";
        default:
            return {};
    }
}

void append_escaped(std::string& out, std::string_view text) {
    for (const char c : document::printable_text(text)) {
        if (const std::string_view reference = reference_for(c); !reference.empty()) {
            out += reference;
        } else {
            out += c;
        }
    }
}

}  // namespace

void HtmlWriter::open(std::string_view name, Attributes attributes, std::string_view close) {
    out_ += '<';
    out_ += name;
    for (const Attribute& attribute : attributes) {
        out_ += ' ';
        out_ += attribute.name;
        out_ += "=\"";
        append_escaped(out_, attribute.value);
        out_ += '"';
    }
    out_ += close;
}

void HtmlWriter::begin(std::string_view name, Attributes attributes) {
    open(name, attributes, ">");
    open_.push_back(name);
}

void HtmlWriter::end() {
    const std::string_view name = open_.back();
    open_.pop_back();
    out_ += "</";
    out_ += name;
    out_ += '>';
    if (is_block(name)) out_ += '\n';
}

void HtmlWriter::text(std::string_view text) {
    append_escaped(out_, text);
}

void HtmlWriter::element(std::string_view name, Attributes attributes, std::string_view content) {
    begin(name, attributes);
    text(content);
    end();
}

void HtmlWriter::lone(std::string_view name, Attributes attributes) {
    open(name, attributes, ">");
}

void HtmlWriter::shape(std::string_view name, Attributes attributes) {
    open(name, attributes, "/>");
}

}  // namespace grainside::report
