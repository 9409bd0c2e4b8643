// table_dump FILE SEPARATOR: what the reader finds in a table, for compare_tables.py. A row is its record's number, and
// then each text's size in bytes and the text itself.
#include <iostream>
#include <string>
#include <vector>

#include "grainside/listing_reader.h"

int main(int count, char** arguments) {
    if (count != 3) return 2;
    const grainside::ReadOptions options{
        .format = grainside::InputFormat::csv, .separator = arguments[2][0], .columns = {{"*", "property"}}};
    auto reader = grainside::ListingReader::open(arguments[1], options);
    if (!reader) return 2;
    grainside::Listing listing;
    std::vector<grainside::Issue> issues;
    while (reader.value().next(listing, issues)) {
        std::cout << listing.record << ' ' << listing.fields.size() << '\n';
        for (const grainside::Field& field : listing.fields) {
            std::cout << field.name.size() << ' ' << field.text.size() << '\n' << field.name << field.text << '\n';
        }
    }
    for (const grainside::Issue& issue : issues) std::cerr << grainside::to_text(issue);
    return issues.empty() ? 0 : 1;
}
