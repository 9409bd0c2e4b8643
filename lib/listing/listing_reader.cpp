#include "grainside/listing_reader.h"

#include <utility>

#include "listing/binary_file.h"
#include "listing/byte_order_mark.h"
#include "listing/byte_source.h"
#include "listing/html_source.h"
#include "listing/input_format.h"
#include "listing/issue_sink.h"
#include "listing/json_array_source.h"
#include "listing/json_lines_source.h"
#include "listing/markdown_cut.h"
#include "listing/record_source.h"
#include "listing/table_source.h"
#include "listing/text_source.h"

namespace grainside {
inline namespace v0 {

namespace {

// No byte of a packed file is a byte of its text.
void forget_places(Listing& listing) {
    listing.source = {};
    for (Field& field : listing.fields) field.origin = {0, 0, Writing::packed};
}

}  // namespace

class ListingReader::Source {
public:
    Source(listing::ByteSource bytes, const ReadOptions& options)
        : bytes_(std::move(bytes)), sink_(bytes_.name()), options_(options) {}

    bool next(Listing& listing, std::vector<Issue>& issues) {
        sink_.begin(issues);
        if (!records_) choose();
        const bool found = records_->next(listing);
        if (found) {
            last_record_ = listing.record;
        } else if (!std::exchange(ended_, true)) {
            listing::report_unpacking_fault(bytes_, last_record_, sink_);
        }
        sink_.end();
        if (found && bytes_.is_unpacked()) forget_places(listing);
        if (!found) listing = {};
        return found;
    }

    listing::ByteSource& bytes() noexcept { return bytes_; }
    bool source_stays() const noexcept { return records_ && !bytes_.is_unpacked() && records_->source_stays(); }
    InputFormat format() {
        if (!records_) choose();
        return options_.format;
    }

private:
    // Not done when opening, because standard input may have nothing to show yet.
    void choose() {
        InputFormat& format = options_.format;
        // The first bytes of what stands in the middle tell nothing of the whole.
        const bool is_part = options_.start.line != 1 || options_.start.byte != 0;
        if (!is_part) {
            bytes_.unpack();
            if (const listing::BinaryKind kind = listing::binary_kind_of(bytes_); !kind.what.empty()) {
                // No lines for a batch to cut.
                format = InputFormat::text;
                records_ = std::make_unique<listing::BinarySource>(kind, sink_);
                return;
            }
        }
        if (format == InputFormat::automatic) {
            const bool has_no_name = bytes_.name() == "<stdin>" || bytes_.name() == "-";
            format = has_no_name ? listing::format_of_content(bytes_) : listing::format_of_name(bytes_.name());
        }
        switch (format) {
            case InputFormat::json:
                records_ = std::make_unique<listing::JsonArraySource>(bytes_, sink_);
                break;
            case InputFormat::json_lines:
                records_ = std::make_unique<listing::JsonLinesSource>(bytes_, sink_, kMaxRecordBytes, options_.start);
                break;
            case InputFormat::markdown:
                records_ = std::make_unique<listing::TextSource>(bytes_, sink_, listing::cut_markdown);
                break;
            case InputFormat::csv:
            case InputFormat::tsv:
                records_ = std::make_unique<listing::TableSource>(bytes_, sink_, options_);
                break;
            case InputFormat::html:
                records_ = std::make_unique<listing::HtmlSource>(bytes_, sink_);
                break;
            case InputFormat::automatic:
            case InputFormat::text:
                records_ = std::make_unique<listing::TextSource>(bytes_, sink_, listing::cut_plain_text);
                break;
        }
    }

    listing::ByteSource bytes_;
    listing::IssueSink sink_;
    ReadOptions options_;
    std::uint64_t last_record_ = 0;
    bool ended_ = false;
    std::unique_ptr<listing::RecordSource> records_;
};

Result<ListingReader> ListingReader::open(const std::string& path, const ReadOptions& options) {
    auto bytes = listing::ByteSource::open(path);
    if (!bytes) return std::move(bytes).issues();
    return ListingReader(std::make_unique<Source>(std::move(bytes).value(), options));
}

ListingReader ListingReader::from_memory(std::string name, std::string_view bytes, const ReadOptions& options) {
    return ListingReader(std::make_unique<Source>(listing::ByteSource::from_memory(std::move(name), bytes), options));
}

ListingReader::ListingReader(std::unique_ptr<Source> source) : source_(std::move(source)) {}
ListingReader::ListingReader(ListingReader&&) noexcept = default;
ListingReader& ListingReader::operator=(ListingReader&&) noexcept = default;
ListingReader::~ListingReader() = default;

bool ListingReader::next(Listing& listing, std::vector<Issue>& issues) {
    return source_->next(listing, issues);
}

listing::ByteSource& ListingReader::bytes() noexcept {
    return source_->bytes();
}

InputFormat ListingReader::format() {
    return source_->format();
}

bool ListingReader::source_stays() const noexcept {
    return source_->source_stays();
}

std::uint64_t ListingReader::bytes_read() const noexcept {
    return source_->bytes().bytes_read();
}

std::uint64_t ListingReader::source_bytes() const noexcept {
    return source_->bytes().source_bytes();
}

std::uint64_t ListingReader::stated_size() const noexcept {
    return source_->bytes().stated_size();
}

}  // namespace v0
}  // namespace grainside
