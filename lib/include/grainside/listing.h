// A listing: one product's text as fields, borrowed from the caller.
//
//     const std::string title = "Genuine PU leather tote";  // outlives the listing
//     grainside::Listing listing;
//     listing.id = "t-1";
//     listing.region = "US CA";
//     listing.fields = {{"name", title}, {"material", "polyurethane"}, {"additionalProperty.Lining", "cotton"}};
//     grainside::Checker checker(book);
//     for (const grainside::Claim& claim : checker.check(listing).mentions) {
//         const grainside::Field& field = listing.fields[claim.field];
//         std::cout << field.name << ": " << field.text.substr(claim.start, claim.end - claim.start) << '\n';
//     }
//     // prints: name: Genuine PU leather
//     // prints: material: polyurethane
//     // prints: additionalProperty.Lining: cotton
//
// A listing holds views. Whoever fills it keeps the bytes alive while it is in use; `ListingReader` keeps those of the
// listing that it gave last. Nothing is copied, so a catalog can be read without allocating for each record. A plain
// value: as safe between threads as a vector of views.
#ifndef GRAINSIDE_LISTING_H
#define GRAINSIDE_LISTING_H

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

namespace grainside {
inline namespace v0 {

// The longest field that is checked, in bytes; of a longer one `check` reports "field-too-long" and reads the others.
inline constexpr std::size_t kMaxFieldBytes = std::size_t{16} << 20;

// How the text of a field is written in its source.
enum class Writing : std::uint8_t {
    nowhere,           // made by a program, or inline in a dossier's YAML
    plain,             // byte for byte
    json_value,        // byte for byte, a JSON number, true or false
    json_string,       // between the quotes of a JSON string, with its escapes
    number_with_unit,  // a JSON number, behind which the text has the unit of another member
    table_bare,        // byte for byte, in a table and without quotes, so that it can hold no separator
    table_quoted,      // between the quotes of a table's value, where "" is one quote
    packed             // in a source that is packed (gzip, zstd): no bytes of the file itself are this text
};

// Where a field stands in its source; `SourcePlaces` (source_place.h) maps words of the text to it.
struct FieldOrigin {
    std::uint64_t start = 0;  // bytes before it in the source, a byte order mark counted
    std::uint32_t size = 0;   // bytes that it takes there, without quotes
    Writing writing = Writing::nowhere;
};

struct Field {
    // "name", "description", "material", "category" or "additionalProperty.NAME".
    std::string_view name;
    // As the seller wrote it, UTF-8. Invalid bytes are treated as gaps between words. Offsets of claims count into
    // this.
    std::string_view text;
    FieldOrigin origin = {};
};

// The lines of a source that hold a record, unless it is packed; of a text or a JSON file all of them, without its byte
// order mark.
struct SourceLines {
    std::string_view bytes;   // empty = not at hand; lives as long as the listing's texts
    std::uint64_t start = 0;  // bytes before it in the source, a byte order mark counted
    std::uint64_t line = 1;   // the number of its first line
};

struct Listing {
    std::string_view id;        // sku or @id; where there is none, the reader makes one from file and record number
    std::string_view language;  // BCP 47, "" = not stated (read as English)
    std::string_view region;  // offers.eligibleRegion, ISO 3166-1 alpha-2 in the seller's letters, several with spaces
                              // between them; "" = not stated
    std::string_view seller;  // who offers it, in the seller's letters (offers.seller, else brand); "" = not stated
    std::vector<Field> fields;  // in written order
    std::uint64_t record = 0;   // which record of its source, from 1; 0 = not from a reader
    std::uint64_t line = 0;     // the source line on which it begins, from 1; 0 = not known
    SourceLines source = {};    // what it was read from
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_LISTING_H
