// What the columns of a table are for, where nobody says so: by their names.
#ifndef GRAINSIDE_LISTING_COLUMN_NAMES_H
#define GRAINSIDE_LISTING_COLUMN_NAMES_H

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace grainside::listing {

enum class ColumnUse : std::uint8_t {
    name,
    description,
    material,
    category,
    property,  // an "additionalProperty" named like the column, or as a mapping says
    id,
    language,
    region,
    seller,
    skip
};

// How a mapping names a use: "name", ..., "skip". "additionalProperty" is another name of "property".
std::optional<ColumnUse> column_use_named(std::string_view word);

// Small letters; marks and blanks as one blank between words: "Artikel-Nr." and "artikel_nr" are alike.
std::string plain_column_name(std::string_view name);

// By a name that `plain_column_name` gave. Of several columns for one id, language, region or seller the first that has
// a text counts, those of the lowest rank first. Nothing for a name that is not known.
struct KnownColumn {
    ColumnUse use = ColumnUse::property;
    unsigned rank = 0;
};
std::optional<KnownColumn> known_column(std::string_view plain_name);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_COLUMN_NAMES_H
