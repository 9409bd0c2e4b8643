#include "edit/page_reading.h"

#include "grainside/listing_reader.h"

namespace grainside::tools::edit {

std::vector<PageReading::Said> PageReading::read(std::string_view page) const {
    ListingReader reader = ListingReader::from_memory(name_, page, {.format = InputFormat::html});
    std::vector<Said> said;
    Listing listing;
    std::vector<Issue> issues;
    while (reader.next(listing, issues)) {
        for (std::size_t at = 0; at < listing.fields.size(); ++at) {
            const Field& field = listing.fields[at];
            said.push_back({listing.record, std::string(field.name), std::string(field.text), at});
        }
    }
    return said;
}

std::optional<std::string> PageReading::text_with(const PageField& where, const TextSpan& span,
                                                  std::string_view bytes) {
    bytes_read_ += page_.size();
    if (bytes_read_ > most_bytes_) return std::nullopt;
    if (!said_) said_ = read(page_);
    std::string page(page_.substr(0, span.begin));
    page += bytes;
    page += page_.substr(span.end);
    std::vector<Said> now = read(page);
    if (now.size() != said_->size()) return std::nullopt;
    std::optional<std::string> found;
    for (std::size_t at = 0; at < now.size(); ++at) {
        const Said& before = (*said_)[at];
        if (before.record == where.record && before.field == where.field) {
            if (now[at].record != before.record || now[at].name != before.name) return std::nullopt;
            found = std::move(now[at].text);
        } else if (now[at] != before) {
            return std::nullopt;
        }
    }
    return found;
}

}  // namespace grainside::tools::edit
