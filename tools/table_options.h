// How a call says what the columns of its tables are.
#ifndef GRAINSIDE_TOOLS_TABLE_OPTIONS_H
#define GRAINSIDE_TOOLS_TABLE_OPTIONS_H

#include <CLI/CLI.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/listing_reader.h"

namespace grainside::tools {

struct TableOptions {
    std::string separator;             // one of , ; | : or the word tab; empty: as the file has it
    std::vector<std::string> columns;  // as `parse_columns` reads them
};

void add_table_options(CLI::App& command, TableOptions& options);

// "Column=member,Other column=member": what stands before the last equals sign is the column's name, which stands in
// double quotes if it holds a comma or quotes. Nothing, and why in `fault`, where it is not written so.
std::optional<std::vector<ColumnMapping>> parse_columns(std::string_view text, std::string& fault);

// REQUIRES: parsing the command line has accepted `options`.
void set_table_options(const TableOptions& options, ReadOptions& read);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_TABLE_OPTIONS_H
