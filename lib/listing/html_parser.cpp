#include "listing/html_parser.h"

#include <libxml/HTMLparser.h>
#include <libxml/parser.h>
#include <libxml/xmlerror.h>

#include <algorithm>
#include <exception>
#include <iterator>
#include <mutex>
#include <new>
#include <string>
#include <utility>
#include <vector>

#include "listing/html_feed.h"

namespace grainside::listing {
namespace {

constexpr std::string_view kAttributeNames[] = {"aria-hidden", "charset", "cite", "class", "content",  "data",
                                                "datetime",    "hidden",  "href", "id",    "itemprop", "itemscope",
                                                "itemtype",    "lang",    "name", "open",  "property", "role",
                                                "src",         "style",   "type", "value", "xml:lang"};
static_assert(std::size(kAttributeNames) == kAttributes);

// The page stands inside these, because libxml2 ends the whole document with its outermost element.
constexpr std::string_view kAround = "<html><body>";

bool begins_name(char c) {
    return lower(c) >= 'a' && lower(c) <= 'z';
}

std::string_view text_of(const xmlChar* text) {
    return text == nullptr ? std::string_view{} : std::string_view(reinterpret_cast<const char*>(text));
}

void pass_over(void* /*reader*/, xmlErrorPtr /*error*/) {}

void make_ready() {
    static std::once_flag once;
    std::call_once(once, [] { xmlInitParser(); });
}

struct FreeParser {
    void operator()(htmlParserCtxtPtr parser) const { htmlFreeParserCtxt(parser); }
};

}  // namespace

class HtmlParser::Reader {
public:
    Reader(std::string_view page, bool is_xml, HtmlEvents& events)
        : page_(page), is_xml_(is_xml), events_(&events), feed_(page) {
        make_ready();
        htmlSAXHandler handler{};
        handler.startElement = [](void* self, const xmlChar*, const xmlChar** attributes) {
            guarded(self, [&](Reader& reader) { reader.took_start(attributes); });
        };
        handler.endElement = [](void* self, const xmlChar*) {
            guarded(self, [](Reader& reader) { reader.took_end(); });
        };
        handler.characters = handler.ignorableWhitespace =
            handler.cdataBlock = [](void* self, const xmlChar* text, int size) {
                guarded(self, [&](Reader& reader) {
                    reader.text_.append(reinterpret_cast<const char*>(text), static_cast<std::size_t>(size));
                });
            };
        // A comment parts the texts around it.
        handler.comment = [](void* self, const xmlChar*) { guarded(self, [](Reader& reader) { reader.give_text(); }); };
        // With this mark libxml2 asks `serror` instead of handlers that all threads share.
        handler.initialized = XML_SAX2_MAGIC;
        handler.serror = pass_over;
        parser_.reset(htmlCreatePushParserCtxt(&handler, this, nullptr, 0, nullptr, XML_CHAR_ENCODING_UTF8));
        if (!parser_) throw std::bad_alloc();
        // The page is UTF-8 whatever its <meta> states.
        htmlCtxtUseOptions(parser_.get(), HTML_PARSE_RECOVER | HTML_PARSE_NONET | HTML_PARSE_IGNORE_ENC);
    }

    void run() {
        put(kAround);
        while (at_ < page_.size() && !stopped_) {
            const std::size_t mark = std::min(page_.find('<', at_), page_.size());
            if (mark > at_) {
                give(at_, mark);
            } else {
                markup();
            }
        }
        flush();
        while (depth() > 0) close();
    }

    void stop() noexcept { stopped_ = true; }
    bool left_out_attributes() const noexcept { return left_out_attributes_; }

    void flush() { put("<!---->"); }

    void close() {
        if (depth() == 0) return;
        const std::size_t before = depth();
        put("</" + std::string(text_of(parser_->name)) + ">");
        // A fault of the parser must not become a loop without end.
        if (depth() >= before) took_end();
    }

private:
    template <typename Take>
    static void guarded(void* self, Take take) {
        Reader& reader = *static_cast<Reader*>(self);
        if (reader.thrown_) return;
        // Nothing may be thrown through the parser, which is C.
        try {
            take(reader);
        } catch (...) {
            reader.thrown_ = std::current_exception();
        }
    }

    std::size_t depth() const noexcept { return kept_.size(); }

    void put(std::string_view bytes) {
        htmlParseChunk(parser_.get(), bytes.data(), static_cast<int>(bytes.size()), 0);
        if (thrown_) std::rethrow_exception(std::exchange(thrown_, nullptr));
        // It gives up where memory is short and at nothing else.
        if (parser_->disableSAX != 0) throw std::bad_alloc();
    }

    void give(std::size_t begin, std::size_t end) {
        piece_.clear();
        at_ = feed_.add_text(begin, end, piece_);
        put(piece_);
    }

    // At a '<'.
    void markup() {
        const char second = at_ + 1 < page_.size() ? page_[at_ + 1] : ' ';
        const bool is_end = second == '/' && at_ + 2 < page_.size();
        if (begins_name(second)) {
            start_tag();
        } else if (is_end && begins_name(page_[at_ + 2])) {
            end_tag();
        } else if (second == '!') {
            declaration();
        } else if (is_end || second == '?') {
            pass_to_end();
        } else {
            give(at_, at_ + 1);
        }
    }

    void declaration() {
        constexpr std::string_view kCdata = "<![CDATA[";
        const std::string_view rest = page_.substr(at_);
        const bool is_empty_comment = rest.starts_with("<!-->") || rest.starts_with("<!--->");
        if (rest.starts_with("<!--") && !is_empty_comment) {
            comment();
        } else if (is_xml_ && rest.starts_with(kCdata)) {
            flush();
            at_ += kCdata.size();
            const std::size_t end = std::min(page_.find("]]>", at_), page_.size());
            while (at_ < end) give(at_, end);
            at_ = std::min(end + 3, page_.size());
        } else {
            pass_to_end();
        }
    }

    // A document type, an instruction, or what the standard calls a bogus comment.
    void pass_to_end() {
        flush();
        at_ = std::min(std::min(page_.find('>', at_), page_.size()) + 1, page_.size());
    }

    // The parser knows where it ends: it keeps what it cannot take yet.
    void comment() {
        do {
            const std::size_t end = std::min(std::min(page_.find('>', at_), page_.size()) + 1, page_.size());
            // Bytes as they are would be an error to it even here.
            while (at_ < end) give_comment(end);
        } while (at_ < page_.size() && parser_->input->cur < parser_->input->end);
        if (parser_->input->cur < parser_->input->end) put("-->");
    }

    void give_comment(std::size_t end) {
        const std::size_t piece = std::min(end - at_, std::size_t{64} << 10);
        piece_.assign(page_.substr(at_, piece));
        std::replace_if(
            piece_.begin(), piece_.end(), [](char c) { return c == '\0' || static_cast<unsigned char>(c) >= 0x80; },
            '.');
        at_ += piece;
        put(piece_);
    }

    void start_tag() {
        const std::size_t begin = at_;
        piece_.clear();
        const HtmlFeed::Tag tag = feed_.add_tag(at_ + 1, piece_);
        at_ = tag.end;
        // A tag that the page breaks off in is none.
        if (!tag.is_whole) return;
        left_out_attributes_ = left_out_attributes_ || tag.left_out_attributes;
        const ElementKind& element = tag.element;
        // Only XML and foreign elements obey "/>".
        const bool is_closed = element.is(html::kVoid) || (tag.closes_itself && (is_xml_ || svg_depth_ > 0));
        std::string fed = std::exchange(piece_, {});
        if (!events_->before_start(element, is_closed)) {
            flush();
            return;
        }
        fed += is_closed ? "/>" : ">";
        tag_ = {};
        tag_.element = element;
        tag_.at = begin;
        tag_.closes_itself = is_closed;
        is_start_ = true;
        put(fed);
        piece_ = std::move(fed);
        if (element.is(html::kRaw) && !is_closed) raw_text(element);
    }

    void raw_text(const ElementKind& element) {
        const std::size_t begin = at_;
        std::size_t end = page_.find("</", at_);
        for (; end != std::string_view::npos; end = page_.find("</", end + 2)) {
            const std::size_t behind = end + 2 + element.name.size();
            if (behind < page_.size() &&
                (is_html_space(page_[behind]) || page_[behind] == '/' || page_[behind] == '>') &&
                is_same_word(page_.substr(end + 2, element.name.size()), element.name)) {
                break;
            }
        }
        at_ = std::min(end, page_.size());
        events_->raw_text(element, begin, page_.substr(begin, at_ - begin));
        close();
    }

    void end_tag() {
        piece_.clear();
        const HtmlFeed::Tag tag = feed_.add_tag(at_ + 2, piece_);
        at_ = tag.end;
        if (!tag.is_whole) return;
        const std::size_t before = depth();
        events_->end_tag(tag.element);
        // No tag stands within a character reference, whether it ends anything or not.
        if (depth() == before) flush();
    }

    // ---- what the parser says ----
    void give_text() {
        if (text_.empty()) return;
        events_->text(text_);
        text_.clear();
    }

    void took_start(const xmlChar** attributes) {
        if (!std::exchange(is_start_, false)) return;
        give_text();
        for (; attributes != nullptr && attributes[0] != nullptr; attributes += 2) {
            const std::string_view name = text_of(attributes[0]);
            const auto* const found = std::find(std::begin(kAttributeNames), std::end(kAttributeNames), name);
            if (found == std::end(kAttributeNames)) continue;
            const auto which = static_cast<std::size_t>(found - std::begin(kAttributeNames));
            tag_.present |= 1U << which;
            tag_.values[which] = text_of(attributes[1]);
        }
        if (tag_.element.element == Element::svg) ++svg_depth_;
        kept_.push_back({tag_.element.element, events_->start(tag_)});
    }

    void took_end() {
        if (kept_.empty()) return;
        give_text();
        const Open open = kept_.back();
        kept_.pop_back();
        if (open.element == Element::svg) --svg_depth_;
        if (open.is_kept) events_->end();
    }

    struct Open {
        Element element;
        bool is_kept;
    };

    std::string_view page_;
    bool is_xml_;
    HtmlEvents* events_;
    HtmlFeed feed_;
    std::unique_ptr<htmlParserCtxt, FreeParser> parser_;
    std::size_t at_ = 0;
    bool stopped_ = false;
    std::string piece_;
    std::string text_;
    HtmlTag tag_;
    bool is_start_ = false;  // a tag of the page is with the parser
    std::vector<Open> kept_;
    std::size_t svg_depth_ = 0;
    bool left_out_attributes_ = false;
    std::exception_ptr thrown_;
};

HtmlParser::HtmlParser(std::string_view page, bool is_xml, HtmlEvents& events)
    : reader_(std::make_unique<Reader>(page, is_xml, events)) {}
HtmlParser::~HtmlParser() = default;

void HtmlParser::run() {
    reader_->run();
}
void HtmlParser::stop() noexcept {
    reader_->stop();
}
void HtmlParser::close() {
    reader_->close();
}
void HtmlParser::flush() {
    reader_->flush();
}
bool HtmlParser::left_out_attributes() const noexcept {
    return reader_->left_out_attributes();
}

}  // namespace grainside::listing
