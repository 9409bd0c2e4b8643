#include "listing/html_source.h"

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>

#include "listing/html_element.h"
#include "listing/html_feed.h"
#include "listing/page_encoding.h"
#include "listing/text_beyond.h"
#include "listing/whole_text.h"

namespace grainside::listing {
namespace {

constexpr std::string_view kPropertyPrefix = "additionalProperty.";

// A description that breaks off says so.
bool breaks_off(std::string_view text) {
    while (!text.empty() && is_html_space(text.back())) text.remove_suffix(1);
    return text.ends_with("...") || text.ends_with("\xE2\x80\xA6") || text.ends_with("&hellip;");
}

// The same row in the page's data may differ in case and spaces.
std::string folded(std::string_view text) {
    std::string out;
    for (const char c : text) {
        if (!is_html_space(c)) out += lower(c);
    }
    return out;
}

std::string_view field_name_of(std::string_view name, std::string& joined) {
    joined.assign(kPropertyPrefix);
    joined += name;
    return joined;
}

}  // namespace

bool HtmlSource::next(Listing& listing) {
    kept_.clear();
    if (kind_ == Kind::unread && !begin()) kind_ = Kind::done;
    if (kind_ == Kind::linked_data) {
        if (next_linked(listing)) return true;
        // Data without a word in it leaves the page to be read in another way.
        kind_ = record_ > 0 ? Kind::done : items_.empty() ? Kind::text : Kind::microdata;
        at_ = 0;
    }
    if (kind_ == Kind::microdata) {
        if (next_item(listing)) return true;
        kind_ = record_ > 0 ? Kind::done : Kind::text;
    }
    if (std::exchange(kind_, Kind::done) == Kind::text) return main_text(listing);
    return false;
}

bool HtmlSource::begin() {
    const auto file = read_whole(*source_, max_page_bytes_, "record-too-large", *sink_);
    if (!file) return false;
    const RecordText text = page_in_utf8(*file, file->start > 0, converted_, *sink_);
    is_converted_ = text.bytes.data() != file->bytes.data();
    page_ = scan_page(text);
    if (page_.too_deep) {
        sink_->report(Issue::Severity::warning, "page-too-deep", {1, 1},
                      "elements of this page are nested more than " + std::to_string(kMaxPageDepth) +
                          " deep; those below are read as plain text of the ones above",
                      "look whether the page was saved whole");
    }
    if (page_.left_out_attributes) {
        sink_->report(Issue::Severity::warning, "page-too-large-tag", {1, 1},
                      "a tag of this page has more than " + std::to_string(kMaxTagAttributes) +
                          " attributes; those behind are not read",
                      "look whether a quote is missing in it");
    }
    if (page_.too_many) {
        sink_->report(Issue::Severity::error, "record-too-large", {1, 1},
                      "this page has more items, properties or rows than any page may have; the last ones are not read",
                      "split it");
    }
    for (const RecordText& script : page_.linked_data) data_.read(script, *sink_);
    visible_ = visible_text(page_);
    for (const std::size_t item : page_.items.products()) {
        const PageRange range = page_.items.items()[item].range;
        const bool is_other = std::any_of(visible_.others.begin(), visible_.others.end(),
                                          [&](const PageRange& other) { return other.holds(range); });
        if (!is_other) items_.push_back(item);
    }
    kind_ = !data_.products().empty() ? Kind::linked_data : !items_.empty() ? Kind::microdata : Kind::text;
    return true;
}

bool HtmlSource::next_linked(Listing& listing) {
    const std::vector<RecordText>& products = data_.products();
    while (at_ < products.size()) {
        const RecordText& product = products[at_++];
        const auto mark = sink_->mark();
        listing.seller = {};
        if (product_.read(product, ProductJson::Role::graph_node, record_ + 1, listing, *sink_) !=
            ProductJson::Outcome::listing) {
            // It is JSON, so all that it can lack is words.
            sink_->take_back(mark);
            continue;
        }
        ++record_;
        listing.source = is_converted_ ? SourceLines{} : product.lines();
        if (is_converted_) {
            for (Field& field : listing.fields) field.origin = {};
        }
        if (products.size() == 1) add_visible(listing);
        finish(listing, product.origin.line);
        return true;
    }
    return false;
}

bool HtmlSource::next_item(Listing& listing) {
    while (at_ < items_.size()) {
        const std::size_t item = items_[at_++];
        give_item(item, listing);
        if (listing.fields.empty()) continue;
        ++record_;
        if (items_.size() == 1) add_visible(listing);
        finish(listing, page_.items.items()[item].line);
        return true;
    }
    return false;
}

bool HtmlSource::main_text(Listing& listing) {
    listing = {};
    if (visible_.title.empty() && visible_.text.empty() && visible_.pairs.empty()) {
        sink_->report(Issue::Severity::error, "no-text", {1, 1}, "this page has no text to check",
                      "save the page as the browser shows it; one that its scripts fill is empty without them");
        return false;
    }
    record_ = 1;
    add_visible(listing);
    finish(listing, visible_.line);
    return true;
}

std::string_view HtmlSource::property_text(const PageProperty& property, bool in_a_line) {
    if (property.written != nullptr) return *property.written;
    if (property.item != PageItem::kNone) return item_text(property.item, ItemProperty::name);
    return keep(in_a_line ? written_in_a_line(page_.text, property.range, page_.unread)
                          : written(page_.text, property.range, page_.unread, true));
}

// The first value of that name with words; "" where there is none.
std::string_view HtmlSource::item_text(std::size_t item, ItemProperty name) {
    const auto& properties = page_.items.properties();
    for (std::size_t i = page_.items.items()[item].first; i != PageItem::kNone; i = properties[i].next) {
        // A name may be an item with a name, but no deeper.
        if (properties[i].name != name || (properties[i].item != PageItem::kNone && name == ItemProperty::name))
            continue;
        const std::string_view text = property_text(properties[i], true);
        if (!text.empty()) return text;
    }
    return {};
}

void HtmlSource::give_item(std::size_t item, Listing& listing) {
    listing = {};
    const auto& properties = page_.items.properties();
    const auto add = [&](std::string_view name, std::string_view text) {
        if (!text.empty()) listing.fields.push_back({name, text});
    };
    std::string_view brand;
    for (std::size_t i = page_.items.items()[item].first; i != PageItem::kNone; i = properties[i].next) {
        const PageProperty& property = properties[i];
        switch (property.name) {
            case ItemProperty::name:
                add("name", property_text(property, true));
                break;
            case ItemProperty::description:
                add("description", property_text(property, false));
                break;
            case ItemProperty::material:
                add("material", property_text(property, true));
                break;
            case ItemProperty::category:
                add("category", property_text(property, true));
                break;
            case ItemProperty::sku:
                if (listing.id.empty()) listing.id = property_text(property, true);
                break;
            case ItemProperty::in_language:
                if (listing.language.empty()) listing.language = property_text(property, true);
                break;
            case ItemProperty::brand:
                if (brand.empty()) brand = property_text(property, true);
                break;
            case ItemProperty::additional_property: {
                if (property.item == PageItem::kNone) break;
                std::string joined;
                const std::string_view value = item_text(property.item, ItemProperty::value);
                const std::string_view unit = item_text(property.item, ItemProperty::unit_text);
                const std::string_view name =
                    keep(std::string(field_name_of(item_text(property.item, ItemProperty::name), joined)));
                add(name, unit.empty() || value.empty() ? value : keep(std::string(value) + " " + std::string(unit)));
                break;
            }
            case ItemProperty::offers:
                if (property.item == PageItem::kNone) break;
                if (listing.region.empty()) listing.region = item_text(property.item, ItemProperty::eligible_region);
                if (listing.seller.empty()) listing.seller = item_text(property.item, ItemProperty::seller);
                break;
            default:
                break;
        }
    }
    if (listing.seller.empty()) listing.seller = brand;
}

// Adds what a shopper reads and the fields do not say.
void HtmlSource::add_visible(Listing& listing) {
    const auto find = [&](std::string_view name) {
        return std::find_if(listing.fields.begin(), listing.fields.end(),
                            [&](const Field& field) { return field.name == name; });
    };
    if (find("name") == listing.fields.end() && !visible_.title.empty()) {
        listing.fields.insert(listing.fields.begin(), Field{"name", visible_.title});
    }
    const auto description = find("description");
    if (description == listing.fields.end()) {
        if (!visible_.text.empty()) listing.fields.push_back({"description", visible_.text});
    } else if (breaks_off(description->text) && visible_.text.size() > description->text.size()) {
        *description = {"description", visible_.text};
    } else if (kind_ == Kind::linked_data) {
        add_text_beyond(description, listing);
    }
    std::vector<std::pair<std::string, std::string>> known;
    for (const Field& field : listing.fields) {
        const bool is_property = field.name.starts_with(kPropertyPrefix);
        known.emplace_back(folded(is_property ? field.name.substr(kPropertyPrefix.size()) : field.name),
                           folded(field.text));
    }
    std::sort(known.begin(), known.end());
    for (const VisiblePair& pair : visible_.pairs) {
        if (std::binary_search(known.begin(), known.end(), std::pair(folded(pair.name), folded(pair.value)))) continue;
        std::string joined;
        listing.fields.push_back({keep(std::string(field_name_of(pair.name, joined))), pair.value});
    }
}

// Of data beside the page only: microdata marks a part of the page's text, and other parts of it are other fields.
void HtmlSource::add_text_beyond(std::vector<Field>::iterator description, Listing& listing) {
    TextBeyond beyond = text_beyond(visible_.text, description->text);
    if (beyond.kind == TextBeyond::Kind::continues) {
        *description = {"description", visible_.text};
    } else if (!beyond.rest.empty()) {
        listing.fields.insert(description + 1, Field{"description", keep(std::move(beyond.rest))});
    }
}

// What every listing of a page has.
void HtmlSource::finish(Listing& listing, std::uint64_t line) {
    listing.record = record_;
    listing.line = line;
    if (listing.id.empty()) listing.id = keep(sink_->file() + ":" + std::to_string(record_));
    if (listing.language.empty()) listing.language = page_.language;
    if (listing.seller.empty()) listing.seller = page_.site_name;
}

std::string_view HtmlSource::keep(std::string text) {
    kept_.push_back(std::move(text));
    return kept_.back();
}

}  // namespace grainside::listing
