// From the header row of a table to what is read of its rows.
#ifndef GRAINSIDE_LISTING_TABLE_COLUMNS_H
#define GRAINSIDE_LISTING_TABLE_COLUMNS_H

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/listing_reader.h"
#include "listing/column_names.h"
#include "listing/issue_sink.h"
#include "listing/place.h"

namespace grainside::listing {

struct TableColumn {
    std::size_t cell = 0;  // which of its row, from 0
    ColumnUse use = ColumnUse::property;
    std::string field;  // of a text: the name of its field
    unsigned rank = 0;  // of what is no text: the lowest counts
};

// Not thread-safe after `read`; immutable otherwise.
class TableColumns {
public:
    // `names` are those of the header row, unescaped, and `header` is where they stand. False, and an error that says
    // which columns there are, where a mapping names a column that is not there, or where no column holds a text.
    // Columns without a name and names that stand twice are warned of.
    bool read(std::span<const std::string> names, std::span<const ColumnMapping> mappings, const RecordText& header,
              IssueSink& sink);

    // Of the header row, skipped ones counted.
    std::size_t width() const noexcept { return width_; }
    // Texts in the order of the file.
    std::span<const TableColumn> texts() const noexcept { return texts_; }
    // Id, language, region and seller, the best first.
    std::span<const TableColumn> facts() const noexcept { return facts_; }

private:
    void add(std::size_t cell, ColumnUse use, unsigned rank, std::string_view property);

    std::size_t width_ = 0;
    std::vector<TableColumn> texts_;
    std::vector<TableColumn> facts_;
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_TABLE_COLUMNS_H
