#include "listing/page_scan.h"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "listing/html_parser.h"
#include "listing/page_others.h"
#include "listing/tag_meaning.h"

namespace grainside::listing {
namespace {

constexpr std::size_t kNoRange = static_cast<std::size_t>(-1);
// How many inline elements an inline end tag may close besides its own; each end tag looks no further.
constexpr std::size_t kInlineReach = 64;

// An element that is open, and what has to be done when it ends.
struct OpenElement {
    ElementKind kind;
    std::uint32_t begin = 0;
    bool is_unread = false;
    std::size_t other = kNoRange;  // its place in Page::others
    std::size_t unread = kNoRange;
    std::size_t main = kNoRange;
    std::size_t article = kNoRange;
    bool is_quoted = false;  // a block quotation that names its source within
    bool is_item = false;
    std::size_t item = PageItem::kNone;
    std::size_t outer_item = PageItem::kNone;  // that its properties belong to, and the current one again behind it
    std::vector<ItemProperty> properties;      // whose value is the element's text
};

bool is_one_of(Element element, std::initializer_list<Element> list) {
    return std::find(list.begin(), list.end(), element) != list.end();
}

bool is_part_of_table(Element element) {
    return is_one_of(element, {Element::td, Element::th, Element::tr, Element::tbody, Element::thead, Element::tfoot,
                               Element::caption, Element::table});
}

bool is_section(Element element) {
    return is_one_of(element, {Element::section, Element::article, Element::main, Element::aside, Element::body,
                               Element::html, Element::td, Element::dialog});
}

int level_of(Element heading) {
    return static_cast<int>(heading) - static_cast<int>(Element::h1) + 1;
}

bool is_span(const ElementKind& kind) {
    return is_same_word(kind.name, "span");
}

bool is_xml(std::string_view page) {
    const std::size_t first = page.find_first_not_of(" \t\r\n");
    return first != std::string_view::npos && page.substr(first).starts_with("<?xml");
}

class PageScanner final : public HtmlEvents {
public:
    explicit PageScanner(const RecordText& page)
        : page_(page), parser_(page.bytes, is_xml(page.bytes), *this), counted_(page.origin) {}

    Page run() {
        result_.body.line = 1;
        parser_.run();
        if (headed_ != kNoRange) end_headed(result_.text.size());
        result_.body.range.end = result_.text.size();
        put_in_order(result_.unread);
        put_in_order(result_.others);
        result_.too_many = result_.too_many || result_.items.too_many();
        result_.left_out_attributes = parser_.left_out_attributes();
        return std::move(result_);
    }

    void text(std::string_view text) override {
        behind_span_ = false;
        result_.text.add(text, open_count_[index_of(Element::pre)] > 0);
    }

    bool before_start(const ElementKind& element, bool is_empty) override {
        if (element.is(html::kRaw)) return true;
        const bool is_second = is_one_of(element.element, {Element::html, Element::head, Element::body}) &&
                               open_count_[index_of(element.element)] > 0;
        if (is_second) return false;
        close_implied(element);
        if (is_empty || open_.size() < kMaxPageDepth) return true;
        parser_.flush();
        break_before(element);
        ++too_deep_;
        result_.too_deep = true;
        return false;
    }

    bool start(const HtmlTag& tag) override {
        const Element element = tag.element.element;
        note_page(tag);
        if (tag.element.is(html::kRaw)) {
            script_is_linked_data_ = element == Element::script && is_linked_data(tag.value(Attribute::type));
            return false;
        }
        break_before(tag.element);
        // Two of them side by side are two things to the eye; within a word nobody ends one to begin another.
        if (behind_span_ && is_span(tag.element)) result_.text.add(" ", false);
        behind_span_ = false;
        if (is_same_word(tag.element.name, "cite")) mark_quotation();
        OpenElement opened;
        opened.kind = tag.element;
        opened.begin = result_.text.size();
        opened.outer_item = item_;
        take_microdata(tag, opened);
        if (tag.closes_itself) {
            if (opened.is_item) item_ = opened.outer_item;
            return false;
        }
        open_ranges(tag, opened);
        if (tag.element.is(html::kHeading) && element != Element::h1) result_.text.mark(PageText::Mark::heading);
        if (element == Element::li) result_.text.mark(PageText::Mark::item);
        pairs_.begin(element);
        ++open_count_[index_of(element)];
        open_.push_back(std::move(opened));
        return true;
    }

    void end_tag(const ElementKind& kind) override {
        const Element element = kind.element;
        if (kind.is(html::kVoid | html::kRaw) || element == Element::body || element == Element::html) {
            if (element == Element::br) {
                parser_.flush();
                result_.text.break_line();
            }
            return;
        }
        if (too_deep_ > 0) {
            --too_deep_;
            return;
        }
        if (!kind.is(html::kHeading) && open_count_[index_of(element)] == 0) return;
        const bool is_inline = !kind.is(html::kBlock | html::kUnread | html::kScope);
        const bool in_table = is_part_of_table(element);
        const std::size_t lowest = is_inline && open_.size() > kInlineReach ? open_.size() - kInlineReach : 0;
        for (std::size_t i = open_.size(); i-- > lowest;) {
            const ElementKind& open = open_[i].kind;
            const bool is_it = element == Element::other ? open.element == element && is_same_word(open.name, kind.name)
                               : kind.is(html::kHeading) ? open.is(html::kHeading)
                                                         : open.element == element;
            if (is_it) {
                pop_to(i);
                return;
            }
            if (in_table ? is_one_of(open.element, {Element::table, Element::template_part}) : open.is(html::kScope))
                return;
            if (element == Element::li && is_one_of(open.element, {Element::ul, Element::ol})) return;
            // An inline element that is closed across a block stays open: what the block holds is still in it.
            if (is_inline && open.is(html::kBlock)) return;
        }
    }

    void end() override { pop(); }

    void raw_text(const ElementKind& kind, std::size_t at, std::string_view text) override {
        if (kind.element == Element::title && result_.title.empty()) {
            result_.title = resolved(text);
            std::replace_if(result_.title.begin(), result_.title.end(), is_html_space, ' ');
        }
        if (kind.element != Element::script || !std::exchange(script_is_linked_data_, false) || text.empty()) return;
        RecordText script;
        script.bytes = text;
        script.around = page_.around;
        script.readable_behind = page_.readable_behind + (page_.bytes.size() - at - text.size());
        script.origin = place_of(at);
        script.start = page_.start + at;
        script.around_line = page_.around_line;
        result_.linked_data.push_back(script);
    }

private:
    static std::size_t index_of(Element element) { return static_cast<std::size_t>(element); }
    static void put_in_order(std::vector<PageRange>& ranges) {
        ranges.erase(std::remove_if(ranges.begin(), ranges.end(), [](const PageRange& range) { return range.empty(); }),
                     ranges.end());
        std::stable_sort(ranges.begin(), ranges.end(),
                         [](const PageRange& a, const PageRange& b) { return a.begin < b.begin; });
    }

    std::uint64_t line_at(std::size_t offset) { return place_of(offset).line; }
    // Offsets come in ascending order, so that every line is counted once.
    Place place_of(std::size_t offset) {
        counted_ = place_at(page_.bytes.substr(counted_to_), offset - counted_to_, counted_);
        counted_to_ = offset;
        return counted_;
    }

    // ---- elements ----
    void note_page(const HtmlTag& tag) {
        switch (tag.element.element) {
            case Element::html:
                if (result_.language.empty()) {
                    result_.language = resolved(tag.has(Attribute::lang) ? tag.value(Attribute::lang)
                                                                         : tag.value(Attribute::xml_lang));
                }
                break;
            case Element::body:
                if (!has_body_) result_.body = {{result_.text.size(), 0}, line_at(tag.at)};
                has_body_ = true;
                break;
            case Element::meta: {
                const std::string_view name =
                    tag.has(Attribute::property) ? tag.value(Attribute::property) : tag.value(Attribute::name);
                if (name == "og:title" && result_.og_title.empty()) {
                    result_.og_title = resolved(tag.value(Attribute::content));
                } else if (name == "og:site_name" && result_.site_name.empty()) {
                    result_.site_name = resolved(tag.value(Attribute::content));
                }
                break;
            }
            default:
                break;
        }
    }

    void break_before(const ElementKind& kind) {
        if (kind.element == Element::br) result_.text.break_line();
        if (kind.is(html::kParagraph)) {
            result_.text.break_paragraph();
        } else if (kind.element == Element::td || kind.element == Element::th) {
            break_cell();
        } else if (kind.is(html::kBlock)) {
            result_.text.break_line();
        }
    }

    // Cells of a row stand on one line, with a bar between them.
    void break_cell() {
        if (pairs_.is_in_row()) {
            result_.text.break_cell();
        } else {
            result_.text.break_line();
        }
    }

    void open_ranges(const HtmlTag& tag, OpenElement& opened) {
        const Element element = tag.element.element;
        const std::string_view role = tag.value(Attribute::role);
        const std::uint32_t begin = opened.begin;
        bool is_unread = tag.element.is(html::kUnread) || has_unread_role(role) || is_hidden(tag);
        if (element == Element::dialog && tag.has(Attribute::open)) is_unread = is_hidden(tag);
        // The header of the page; that of the product is a part of it.
        if (element == Element::header && main_depth_ == 0) is_unread = true;
        if (is_unread) {
            opened.is_unread = true;
            if (unread_depth_++ == 0) {
                opened.unread = result_.unread.size();
                result_.unread.push_back({begin, begin});
            }
            return;
        }
        if (unread_depth_ > 0) return;
        if (element == Element::main || is_same_word(role, "main")) {
            opened.main = result_.mains.size();
            result_.mains.push_back({{begin, begin}, line_at(tag.at)});
            ++main_depth_;
        } else if (element == Element::article) {
            opened.article = result_.articles.size();
            result_.articles.push_back({{begin, begin}, line_at(tag.at)});
            ++main_depth_;
        }
        const bool may_be_other = !is_one_of(element, {Element::html, Element::body, Element::main});
        if (may_be_other && (marks_words_of_others(tag) || names_other_things(tag.value(Attribute::class_names)) ||
                             names_other_things(tag.value(Attribute::id)))) {
            opened.other = result_.others.size();
            result_.others.push_back({begin, begin});
        }
    }

    void mark_quotation() {
        if (open_count_[index_of(Element::blockquote)] == 0) return;
        const auto quotation = std::find_if(open_.rbegin(), open_.rend(), [](const OpenElement& open) {
            return open.kind.element == Element::blockquote;
        });
        if (quotation != open_.rend()) quotation->is_quoted = true;
    }

    void take_microdata(const HtmlTag& tag, OpenElement& opened) {
        const bool is_item = tag.has(Attribute::itemscope);
        std::vector<ItemProperty> names;
        if (tag.has(Attribute::itemprop) && item_ != PageItem::kNone) {
            names = item_properties(tag.value(Attribute::itemprop));
        }
        if (is_item) {
            const bool is_property = !names.empty();
            opened.is_item = true;
            opened.item =
                result_.items.open(tag.value(Attribute::itemtype), is_property ? item_ : PageItem::kNone,
                                   is_property ? names.front() : ItemProperty::unknown, line_at(tag.at), opened.begin);
            item_ = opened.item;
            return;
        }
        if (names.empty()) return;
        std::optional<Attribute> attribute = value_attribute(tag.element.element);
        // On other elements search engines obey `content` too; of codes it is what a program should read.
        const bool is_code = names.front() == ItemProperty::sku || names.front() == ItemProperty::eligible_region ||
                             names.front() == ItemProperty::in_language;
        if (!attribute && is_code && tag.has(Attribute::content)) attribute = Attribute::content;
        if (is_code && tag.element.name == "data" && tag.has(Attribute::value)) attribute = Attribute::value;
        if (!attribute) {
            opened.properties = std::move(names);
            return;
        }
        for (const ItemProperty name : names) {
            if (name != ItemProperty::unknown) result_.items.add(item_, name, resolved(tag.value(*attribute)));
        }
    }

    // ---- what ends what (HTML standard, "in body" and "in table" insertion modes, as far as text needs them) ----
    void close_implied(const ElementKind& kind) {
        const Element element = kind.element;
        if (kind.is(html::kBlock) && !is_part_of_table(element)) close_to({Element::p}, {});
        if (kind.is(html::kHeading) && !open_.empty() && open_.back().kind.is(html::kHeading)) parser_.close();
        switch (element) {
            case Element::li:
                close_to({Element::li}, {Element::ul, Element::ol, Element::menu, Element::dir});
                break;
            case Element::dt:
            case Element::dd:
                close_to({Element::dt, Element::dd}, {Element::dl});
                break;
            case Element::td:
            case Element::th:
                close_to({Element::td, Element::th}, {Element::tr, Element::table});
                break;
            case Element::tr:
                close_to({Element::tr}, {Element::table});
                break;
            case Element::tbody:
            case Element::thead:
            case Element::tfoot:
                close_to({Element::tbody, Element::thead, Element::tfoot}, {Element::table});
                break;
            case Element::option:
            case Element::optgroup:
                close_to({Element::option}, {});
                break;
            default:
                break;
        }
    }

    // Closes the innermost of `wanted`, unless one of `borders` stands before it, or without borders a scope.
    void close_to(std::initializer_list<Element> wanted, std::initializer_list<Element> borders) {
        const bool any = std::any_of(wanted.begin(), wanted.end(),
                                     [&](Element element) { return open_count_[index_of(element)] > 0; });
        if (!any) return;
        for (std::size_t i = open_.size(); i-- > 0;) {
            const ElementKind& kind = open_[i].kind;
            if (is_one_of(kind.element, wanted)) {
                pop_to(i);
                return;
            }
            if (is_one_of(kind.element, borders) || (borders.size() == 0 && kind.is(html::kScope))) return;
        }
    }

    void pop_to(std::size_t index) {
        while (open_.size() > index) parser_.close();
    }

    void pop() {
        OpenElement closed = std::move(open_.back());
        open_.pop_back();
        const Element element = closed.kind.element;
        --open_count_[index_of(element)];
        behind_span_ = is_span(closed.kind);
        const PageRange range{closed.begin, result_.text.size()};
        if (closed.is_unread) --unread_depth_;
        if (closed.unread != kNoRange) result_.unread[closed.unread].end = range.end;
        if (closed.other != kNoRange) result_.others[closed.other].end = range.end;
        if (closed.is_quoted && closed.other == kNoRange) result_.others.push_back(range);
        if (closed.main != kNoRange || closed.article != kNoRange) --main_depth_;
        if (closed.main != kNoRange) result_.mains[closed.main].range.end = range.end;
        if (closed.article != kNoRange) result_.articles[closed.article].range.end = range.end;
        if (closed.is_item) {
            if (closed.item != PageItem::kNone) result_.items.close(closed.item, range.end);
            item_ = closed.outer_item;
        }
        for (const ItemProperty name : closed.properties) {
            if (name != ItemProperty::unknown) result_.items.add(closed.outer_item, name, range);
        }
        if (closed.kind.is(html::kHeading)) end_heading(element, range);
        if (element == Element::li || closed.kind.is(html::kHeading)) result_.text.drop_mark();
        if (const auto pair = pairs_.end(element, range)) add_pair(*pair);
        // A part about others goes on behind its heading to the end of the section that both stand in.
        if (headed_ != kNoRange && is_section(element) && open_.size() <= headed_depth_) end_headed(range.end);
        if (closed.kind.is(html::kParagraph)) {
            result_.text.break_paragraph();
        } else if (closed.kind.is(html::kUnread) && !closed.kind.is(html::kBlock)) {
            // A control or a picture parts the words around it.
            result_.text.add(" ", false);
        } else if (closed.kind.is(html::kBlock) && element != Element::td && element != Element::th) {
            result_.text.break_line();
        }
    }

    // ---- headings ----
    void end_heading(Element element, PageRange range) {
        if (unread_depth_ > 0) return;
        if (headed_ != kNoRange && level_of(element) <= headed_level_) end_headed(range.begin);
        const std::string words = written_in_a_line(result_.text, range, {});
        if (headed_ == kNoRange && heads_other_things(words)) {
            headed_ = result_.others.size();
            headed_level_ = level_of(element);
            headed_depth_ = open_.size();
            while (headed_depth_ > 0 && !is_section(open_[headed_depth_ - 1].kind.element)) --headed_depth_;
            if (headed_depth_ > 0) --headed_depth_;
            result_.others.push_back({range.begin, range.begin});
            return;
        }
        if (element == Element::h1 && !words.empty()) result_.titles.push_back({range, main_depth_ > 0});
    }

    void end_headed(std::uint32_t at) {
        result_.others[headed_].end = at;
        headed_ = kNoRange;
    }

    void add_pair(const PagePair& pair) {
        if (unread_depth_ > 0 || pair.name.empty() || pair.value.empty()) return;
        if (result_.pairs.size() == kMaxPagePairs) {
            result_.too_many = true;
            return;
        }
        result_.pairs.push_back(pair);
    }

    RecordText page_;
    HtmlParser parser_;
    Page result_;
    std::vector<OpenElement> open_;
    std::array<std::uint32_t, kElements> open_count_{};
    std::size_t too_deep_ = 0;  // elements that are open below the depth that is kept
    std::size_t unread_depth_ = 0;
    std::size_t main_depth_ = 0;
    std::size_t item_ = PageItem::kNone;
    PagePairs pairs_;
    std::size_t headed_ = kNoRange;  // in Page::others, what a heading has opened
    int headed_level_ = 0;
    std::size_t headed_depth_ = 0;
    bool script_is_linked_data_ = false;
    bool has_body_ = false;
    bool behind_span_ = false;  // nothing stands between a </span> and here
    Place counted_;
    std::size_t counted_to_ = 0;
};

}  // namespace

Page scan_page(const RecordText& page) {
    return PageScanner(page).run();
}

}  // namespace grainside::listing
