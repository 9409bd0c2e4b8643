#include "table_options.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

#include "call_options.h"

namespace grainside::tools {
namespace {

constexpr std::array<std::string_view, 11> kColumnMembers = {
    "name", "description", "material", "category", "property", "additionalProperty",
    "id",   "language",    "region",   "seller",   "skip"};
constexpr std::string_view kPropertyPrefix = "additionalProperty.";

bool is_column_member(std::string_view member) {
    if (member.starts_with(kPropertyPrefix)) return member.size() > kPropertyPrefix.size();
    return std::find(kColumnMembers.begin(), kColumnMembers.end(), member) != kColumnMembers.end();
}

// A name in double quotes at the beginning of `rest`, which goes; quotes within it are doubled.
bool take_quoted_name(std::string_view& rest, std::string& name) {
    for (std::size_t at = 1; at < rest.size(); ++at) {
        if (rest[at] == '"') {
            if (rest.substr(at + 1, 1) != "\"") {
                rest.remove_prefix(at + 1);
                return true;
            }
            ++at;
        }
        name += rest[at];
    }
    return false;
}

}  // namespace

std::optional<std::vector<ColumnMapping>> parse_columns(std::string_view text, std::string& fault) {
    std::vector<ColumnMapping> mappings;
    for (std::string_view rest = text;;) {
        ColumnMapping mapping;
        const bool is_quoted = rest.starts_with('"');
        if (is_quoted && !take_quoted_name(rest, mapping.column)) {
            fault = "a double quote is not closed";
            return std::nullopt;
        }
        const std::string_view item = rest.substr(0, rest.find(','));
        const std::size_t equals = item.rfind('=');
        if (equals == std::string_view::npos || (is_quoted && equals != 0) || (!is_quoted && equals == 0)) {
            fault = "'" + std::string(item) + "' is not written as COLUMN=MEMBER";
            return std::nullopt;
        }
        if (!is_quoted) mapping.column = item.substr(0, equals);
        mapping.member = item.substr(equals + 1);
        if (!is_column_member(mapping.member)) {
            fault = "'" + mapping.member +
                    "' is none of name, description, material, category, property, additionalProperty.NAME, id, "
                    "language, region, seller, skip";
            return std::nullopt;
        }
        mappings.push_back(std::move(mapping));
        if (item.size() == rest.size()) return mappings;
        rest.remove_prefix(item.size() + 1);
    }
}

void add_table_options(CLI::App& command, TableOptions& options) {
    command
        .add_option("--columns", options.columns,
                    "What the columns of a CSV or TSV hold, where their names\ndo not say it: 'Titel=name,"
                    "Notes=skip,\nFutter=additionalProperty.Lining'. Also description,\nmaterial, category, "
                    "property (named like the column), id,\nlanguage, region, seller; the column * is all that are\n"
                    "not named. A name with a comma stands in double quotes")
        ->type_name("COLUMN=MEMBER,...")
        ->expected(1)
        ->allow_extra_args(false)
        ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll)
        ->check(CLI::Validator(
            [](const std::string& text) {
                std::string fault;
                parse_columns(text, fault);
                return fault;
            },
            ""));
    command
        .add_option(
            "--separator", options.separator,
            "What stands between the values of a CSV: , ; | : or tab\n(default: what a first line as sep=; says, else "
            "what its\nfirst row has, a comma before others)")
        ->type_name("CHAR")
        ->check(one_of({",", ";", "|", ":", "tab"}));
}

void set_table_options(const TableOptions& options, ReadOptions& read) {
    if (!options.separator.empty()) read.separator = options.separator == "tab" ? '\t' : options.separator.front();
    std::string fault;
    for (const std::string& text : options.columns) {
        auto mappings = parse_columns(text, fault);
        if (mappings) std::move(mappings->begin(), mappings->end(), std::back_inserter(read.columns));
    }
}

}  // namespace grainside::tools
