// The invented pages of corpus/pages, each with what has to be read of it written beside it.
#include <gtest/gtest.h>

#include <fstream>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/source_place.h"
#include "reading.h"

namespace grainside::testing_listing {
namespace {

std::string content_of(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    EXPECT_TRUE(in) << path;
    std::ostringstream out;
    out << in.rdbuf();
    return out.str();
}

class SavedPage : public testing::TestWithParam<const char*> {
protected:
    static std::string path(const char* ending) {
        return std::string(GRAINSIDE_CORPUS "/pages/") + GetParam() + ending;
    }
};

TEST_P(SavedPage, GivesWhatIsWrittenBesideIt) {
    const std::string page = content_of(path(".html"));
    auto reader = ListingReader::from_memory(std::string(GetParam()) + ".html", page, {});
    Listing listing;
    std::vector<Issue> issues;
    std::string seen;
    while (reader.next(listing, issues)) {
        const auto or_dash = [](std::string_view text) { return text.empty() ? "-\n" : std::string(text) + "\n"; };
        seen += "line " + std::to_string(listing.line) + "\nid " + or_dash(listing.id);
        seen += "language " + or_dash(listing.language) + "region " + or_dash(listing.region);
        seen += "seller " + or_dash(listing.seller);
        for (const Field& field : listing.fields) {
            seen += "[" + std::string(field.name) + "]\n" + std::string(field.text) + "\n";
        }
    }
    for (const Issue& issue : issues) seen += dump(issue) + "\n";
    EXPECT_EQ(seen, content_of(path(".txt")));
}

// A wrong place would be written to by `reword`: each text that has one is found there, byte for byte.
TEST_P(SavedPage, TextsStandWhereTheirOriginSays) {
    const std::string page = content_of(path(".html"));
    auto reader = ListingReader::from_memory("f.html", page, {});
    Listing listing;
    std::vector<Issue> issues;
    while (reader.next(listing, issues)) {
        SourcePlaces places;
        for (std::size_t i = 0; i < listing.fields.size(); ++i) {
            const Field& field = listing.fields[i];
            const auto region = places.find(listing, i, 0, field.text.size());
            if (field.origin.writing == Writing::nowhere) {
                EXPECT_FALSE(region);
                continue;
            }
            ASSERT_TRUE(region);
            const std::string_view there =
                std::string_view(page).substr(static_cast<std::size_t>(region->bytes.start),
                                              static_cast<std::size_t>(region->bytes.end - region->bytes.start));
            if (there.find('\\') == std::string_view::npos) {
                EXPECT_EQ(there, field.text);
            }
            EXPECT_GE(region->from.line, listing.line);
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Corpus, SavedPage, testing::Values("structured", "marked_up", "plain", "variants"),
                         [](const auto& row) { return std::string(row.param); });

}  // namespace
}  // namespace grainside::testing_listing
