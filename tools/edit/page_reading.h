// A saved page, read again with some of its bytes replaced. What is seen of a page does not know where it stands in it;
// so a place is proven by what the listing says when the bytes there change.
#ifndef GRAINSIDE_TOOLS_EDIT_PAGE_READING_H
#define GRAINSIDE_TOOLS_EDIT_PAGE_READING_H

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "edit/text_places.h"

namespace grainside::tools::edit {

// A field of one of the listings of a page.
struct PageField {
    std::uint64_t record = 0;  // as `Listing::record`
    std::size_t field = 0;     // index into `Listing::fields`
};

// One for each pass over a document. The page outlives it.
class PageReading {
public:
    // `most_bytes`: read in all, at some 100 MB a second; no more is told then.
    PageReading(std::string_view page, std::string name, std::size_t most_bytes)
        : page_(page), name_(std::move(name)), most_bytes_(most_bytes) {}

    // The text of the field where `bytes` stand in the place of `span`. Nothing when any other field, or which fields
    // and listings there are, is another then; and when too much has been read.
    std::optional<std::string> text_with(const PageField& where, const TextSpan& span, std::string_view bytes);

private:
    struct Said {
        std::uint64_t record;
        std::string name;
        std::string text;
        std::size_t field;
        bool operator==(const Said&) const = default;
    };
    std::vector<Said> read(std::string_view page) const;

    std::string_view page_;
    std::string name_;
    std::optional<std::vector<Said>> said_;  // of the page as it is; read when first needed
    std::size_t most_bytes_;
    std::size_t bytes_read_ = 0;
};

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_PAGE_READING_H
