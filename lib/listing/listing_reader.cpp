#include "grainside/listing_reader.h"

#include <utility>

#include "listing/byte_source.h"
#include "listing/html_source.h"
#include "listing/input_format.h"
#include "listing/issue_sink.h"
#include "listing/json_array_source.h"
#include "listing/json_lines_source.h"
#include "listing/markdown_cut.h"
#include "listing/record_source.h"
#include "listing/text_source.h"

namespace grainside {
inline namespace v0 {

class ListingReader::Source {
public:
    Source(listing::ByteSource bytes, const ReadOptions& options)
        : bytes_(std::move(bytes)), sink_(bytes_.name()), format_(options.format) {}

    bool next(Listing& listing, std::vector<Issue>& issues) {
        sink_.begin(issues);
        if (!records_) choose();
        const bool found = records_->next(listing);
        sink_.end();
        if (!found) listing = {};
        return found;
    }

    std::uint64_t bytes_read() const noexcept { return bytes_.bytes_read(); }

private:
    // Not done when opening, because standard input may have nothing to show yet.
    void choose() {
        if (format_ == InputFormat::automatic) {
            const bool has_no_name = bytes_.name() == "<stdin>" || bytes_.name() == "-";
            format_ = has_no_name ? listing::format_of_content(bytes_) : listing::format_of_name(bytes_.name());
        }
        switch (format_) {
            case InputFormat::json:
                records_ = std::make_unique<listing::JsonArraySource>(bytes_, sink_);
                break;
            case InputFormat::json_lines:
                records_ = std::make_unique<listing::JsonLinesSource>(bytes_, sink_);
                break;
            case InputFormat::markdown:
                records_ = std::make_unique<listing::TextSource>(bytes_, sink_, listing::cut_markdown);
                break;
            case InputFormat::html:
                records_ = std::make_unique<listing::HtmlSource>(bytes_, sink_);
                break;
            case InputFormat::automatic:
            case InputFormat::text:
            case InputFormat::csv:
            case InputFormat::tsv:
                records_ = std::make_unique<listing::TextSource>(bytes_, sink_, listing::cut_plain_text);
                break;
        }
    }

    listing::ByteSource bytes_;
    listing::IssueSink sink_;
    InputFormat format_;
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

std::uint64_t ListingReader::bytes_read() const noexcept {
    return source_->bytes_read();
}

}  // namespace v0
}  // namespace grainside
