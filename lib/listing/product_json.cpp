#include "listing/product_json.h"

#include <algorithm>
#include <bit>
#include <string>
#include <string_view>

#include "listing/product_walk.h"
#include "listing/utf8_check.h"
#include "listing/wrapped_list.h"

namespace grainside::listing {
namespace {

// What an invalid byte is read as: a gap between words. A question mark would be one byte as well, but it would turn
// the sentence into a question, which claims nothing.
constexpr char kGap = ' ';

constexpr std::size_t kFirstParserBytes = 16384;

// Of a record that breaks off behind an object simdjson looks at one byte more, and a comma or bracket there would lead
// it out of the record.
bool keeps_within(char behind) {
    return behind == '\0' || is_json_space(behind);
}

bool is_only_space(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) <= 0x20; });
}

}  // namespace

ProductJson::ProductJson(std::string source_name) : walk_(std::make_unique<Walk>(std::move(source_name))) {}
ProductJson::ProductJson(ProductJson&&) noexcept = default;
ProductJson& ProductJson::operator=(ProductJson&&) noexcept = default;
ProductJson::~ProductJson() = default;

ProductJson::Outcome ProductJson::read(const RecordText& text, Role role, std::uint64_t record, Listing& listing,
                                       IssueSink& sink) {
    return walk_->read(text, role, record, listing, sink);
}

const RecordText& ProductJson::graph() const noexcept {
    return walk_->graph();
}

ProductJson::Outcome ProductJson::Walk::read(const RecordText& text, Role role, std::uint64_t record, Listing& listing,
                                             IssueSink& sink) {
    text_ = text;
    parsed_ = text.bytes;
    readable_behind_ = text.readable_behind;
    role_ = role;
    listing_ = &listing;
    sink_ = &sink;
    sku_ = at_id_ = offering_seller_ = seller_ = brand_ = {};
    error_ = simdjson::SUCCESS;
    is_graph_ = is_other_type_ = too_many_ = has_nul_ = false;
    arena_.clear();
    listing.id = listing.language = listing.region = listing.seller = {};
    listing.fields.clear();

    const auto mark = sink.mark();
    const std::size_t first = std::min(parsed_.find_first_not_of(" \t\r\n"), parsed_.size());
    if (first == parsed_.size() || parsed_[first] != '{') {
        if (!scanner_.is_document(parsed_)) {
            report_broken();
            return Outcome::skipped;
        }
        sink.report_at(
            Issue::Severity::error, "not-an-object", text_, first,
            "a product should stand here as an object in { }, but this is " + std::string(kind_of_json(parsed_[first])),
            "write one product as {\"name\": ..., \"description\": ...}");
        return Outcome::skipped;
    }
    error_ = index();
    if (error_ != simdjson::SUCCESS || !product()) {
        listing.fields.clear();
        report_broken();
        return Outcome::skipped;
    }
    if (is_graph_) return Outcome::graph;
    if (is_other_type_) {
        sink.take_back(mark);
        return Outcome::skipped;
    }
    if (std::all_of(listing.fields.begin(), listing.fields.end(),
                    [](const Field& field) { return is_only_space(field.text); })) {
        std::string hint = "give it a name or a description";
        if (const WrappedList list = find_wrapped_list(parsed_.substr(first), scanner_); !list.name.empty()) {
            hint += "; the list in " + shown_name(list.name) +
                    " is read where this object is all of a JSON file, not a line of JSON Lines";
        }
        sink.report_at(Issue::Severity::error, "no-text", text_, first, "this record has no text to check",
                       std::move(hint));
        return Outcome::skipped;
    }
    listing.id = !sku_.empty() ? sku_ : at_id_;
    if (listing.id.empty()) listing.id = arena_.join({source_name_, ":", std::to_string(record)});
    listing.seller = !offering_seller_.empty() ? offering_seller_ : !seller_.empty() ? seller_ : brand_;
    return Outcome::listing;
}

// Runs the first stage of simdjson, over a copy where the record cannot be parsed as it lies.
simdjson::error_code ProductJson::Walk::index() {
    if (parser_.capacity() < parsed_.size()) {
        // In powers of two, so that records that grow little by little do not allocate each time.
        const simdjson::error_code error = parser_.allocate(std::bit_ceil(std::max(parsed_.size(), kFirstParserBytes)));
        if (error != simdjson::SUCCESS) return error;
    }
    for (bool repaired = false;; repaired = true) {
        if (repaired || readable_behind_ < simdjson::SIMDJSON_PADDING ||
            !keeps_within(parsed_.data()[parsed_.size()])) {
            const std::size_t size = parsed_.size();
            if (parsed_.data() != copy_.data()) {
                if (copy_.size() < size + simdjson::SIMDJSON_PADDING) {
                    copy_.resize(std::bit_ceil(size + simdjson::SIMDJSON_PADDING));
                }
                std::copy(parsed_.begin(), parsed_.end(), copy_.begin());
                copy_[size] = '\0';  // an earlier record lay here
                parsed_ = {copy_.data(), size};
                readable_behind_ = copy_.size() - size;
            }
            if (repaired) repair();
        }
        const simdjson::error_code error = parser_
                                               .iterate(simdjson::padded_string_view(parsed_.data(), parsed_.size(),
                                                                                     parsed_.size() + readable_behind_))
                                               .get(document_);
        if (error != simdjson::UTF8_ERROR || repaired) return error;
    }
}

// Overwrites invalid UTF-8 in `copy_`, and warns of it. Offsets stay as they are.
void ProductJson::Walk::repair() {
    std::size_t count = 0;
    std::size_t first = 0;
    for (InvalidBytes bad = find_invalid_utf8(parsed_, 0); bad.length != 0;
         bad = find_invalid_utf8(parsed_, bad.offset + bad.length)) {
        if (count == 0) first = bad.offset;
        count += bad.length;
        std::fill_n(copy_.begin() + static_cast<std::ptrdiff_t>(bad.offset), bad.length, kGap);
    }
    sink_->report_at(Issue::Severity::warning, "not-utf8", text_, first,
                     count == 1 ? "one byte of this record is not UTF-8 and is read as a gap"
                                : std::to_string(count) + " bytes of this record are not UTF-8 and are read as gaps",
                     "save the file as UTF-8");
}

void ProductJson::Walk::report_broken() {
    if (error_ == simdjson::MEMALLOC || error_ == simdjson::CAPACITY) {
        sink_->report_at(Issue::Severity::error, "record-too-large", text_, 0,
                         "there is not enough memory to read this record", "split it");
        return;
    }
    if (!scanner_.is_document(parsed_)) {
        const JsonFault& fault = scanner_.fault();
        sink_->report_at(Issue::Severity::error, "json-syntax", text_, fault.offset, std::string(fault.message),
                         std::string(fault.hint));
        return;
    }
    sink_->report_at(Issue::Severity::error, "json-syntax", text_, 0,
                     "this record cannot be read: " + std::string(simdjson::error_message(error_)), "write it again");
}

}  // namespace grainside::listing
