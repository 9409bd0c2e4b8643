#include "row_expectations.h"

#include <algorithm>

namespace grainside::published {

namespace {

std::string path_of(const std::string& file) {
    return std::string(GRAINSIDE_PUBLISHED_CORPUS "/") + file;
}

const KnownDifference* find(std::span<const KnownDifference> known, std::string_view row) {
    const auto at =
        std::find_if(known.begin(), known.end(), [&](const KnownDifference& entry) { return entry.row == row; });
    return at == known.end() ? nullptr : &*at;
}

std::string texts_of(const std::vector<Issue>& issues) {
    std::string text;
    for (const Issue& issue : issues) text += to_text(issue);
    return text;
}

}  // namespace

std::vector<Row> rows_of(const std::string& file) {
    Result<std::vector<Row>> rows = read_rows(path_of(file));
    return rows ? std::move(rows).value() : std::vector<Row>();
}

void expect_file(const std::string& file, std::size_t count, std::span<const KnownDifference> known) {
    const Result<std::vector<Row>> rows = read_rows(path_of(file));
    ASSERT_TRUE(rows) << texts_of(rows.issues());
    EXPECT_EQ(rows.value().size(), count);
    for (const KnownDifference& entry : known) {
        EXPECT_TRUE(std::any_of(rows.value().begin(), rows.value().end(),
                                [&](const Row& row) { return row.name == entry.row; }))
            << "a known difference names no row: " << entry.row;
        EXPECT_EQ(find(known, entry.row), &entry) << "named twice: " << entry.row;
    }
}

void expect_agreement(const Row& row, std::span<const KnownDifference> known) {
    static const Result<RuleBook> book = RuleBook::built_in();
    ASSERT_TRUE(book) << texts_of(book.issues());
    const std::string difference = disagreement(book.value(), row);
    if (const KnownDifference* entry = find(known, row.name); entry != nullptr) {
        EXPECT_FALSE(difference.empty()) << "mended: take " << row.name
                                         << " off the list of known differences, which says '" << entry->why << "'\n"
                                         << row.text;
    } else {
        EXPECT_TRUE(difference.empty()) << row.text << '\n' << difference << row.cite;
    }
}

}  // namespace grainside::published
