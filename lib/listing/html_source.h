// A saved HTML page: its products as its data states them, else the words that a shopper reads.
#ifndef GRAINSIDE_LISTING_HTML_SOURCE_H
#define GRAINSIDE_LISTING_HTML_SOURCE_H

#include <cstddef>
#include <cstdint>
#include <deque>
#include <string>
#include <vector>

#include "grainside/listing_reader.h"
#include "listing/byte_source.h"
#include "listing/issue_sink.h"
#include "listing/linked_data.h"
#include "listing/page_scan.h"
#include "listing/product_json.h"
#include "listing/record_source.h"
#include "listing/visible_text.h"

namespace grainside::listing {

// Listings are, of the best kind that the page has:
// 1. the products of its JSON-LD (linked_data.h),
// 2. the products of its microdata (page_items.h),
// 3. its main text (visible_text.h).
// Where 1 or 2 give exactly one product, what a shopper reads is added: a name or description that the data lacks or
// cuts short, what the main text says beyond a description of JSON-LD that it holds, and the rows of the page's
// specification that the data does not hold. With several products nobody can tell
// whose rows they are. Not thread-safe.
class HtmlSource final : public RecordSource {
public:
    // `source` and `sink` outlive this object.
    HtmlSource(ByteSource& source, IssueSink& sink, std::size_t max_page_bytes = kMaxRecordBytes)
        : source_(&source), sink_(&sink), max_page_bytes_(max_page_bytes), product_(sink.file()) {}

    bool next(Listing& listing) override;

private:
    bool begin();
    bool next_linked(Listing& listing);
    bool next_item(Listing& listing);
    bool main_text(Listing& listing);
    void give_item(std::size_t item, Listing& listing);
    std::string_view item_text(std::size_t item, ItemProperty name);
    std::string_view property_text(const PageProperty& property, bool in_a_line);
    void add_visible(Listing& listing);
    void add_text_beyond(std::vector<Field>::iterator description, Listing& listing);
    void finish(Listing& listing, std::uint64_t line);
    std::string_view keep(std::string text);

    ByteSource* source_;
    IssueSink* sink_;
    std::size_t max_page_bytes_;
    std::string converted_;  // of a page that is not UTF-8
    bool is_converted_ = false;
    Page page_;
    VisibleText visible_;
    LinkedData data_;
    std::vector<std::size_t> items_;
    std::size_t at_ = 0;  // of the products of data_ or items_
    enum class Kind : std::uint8_t { unread, linked_data, microdata, text, done } kind_ = Kind::unread;
    ProductJson product_;
    std::uint64_t record_ = 0;
    std::deque<std::string> kept_;  // texts of the current listing that are not in the page
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_HTML_SOURCE_H
