// Texts of a SARIF log.
#include "report/sarif_text.h"

#include <gtest/gtest.h>

#include <string_view>

namespace grainside::report {
namespace {

struct Row {
    std::string_view name, text, want;
};

// Expected by RFC 3986, section 2 (unreserved characters) and section 4.2 (a first segment with a colon would be a
// scheme), and RFC 8089 for the scheme file.
constexpr Row kUris[] = {
    {"plain", "feed/catalog-1_a.jsonl", "feed/catalog-1_a.jsonl"},
    {"here", "./feed.jsonl", "feed.jsonl"},
    {"here_twice", "././feed.jsonl", "feed.jsonl"},
    {"above", "../feed.jsonl", "../feed.jsonl"},
    {"space", "a b.txt", "a%20b.txt"},
    {"scheme", "http:x.txt", "http%3Ax.txt"},
    {"query", "a?b#c.txt", "a%3Fb%23c.txt"},
    {"percent", "100%.txt", "100%25.txt"},
    {"beyond_ascii", "\xC3\xA9t\xC3\xA9.txt", "%C3%A9t%C3%A9.txt"},
    {"no_utf8", "\xFF.txt", "%FF.txt"},
    {"backslash", "a\\b.txt", "a%5Cb.txt"},
    {"control", "a\n\x1B.txt", "a%0A%1B.txt"},
    {"absolute", "/home/a b/feed.jsonl", "file:///home/a%20b/feed.jsonl"},
    {"dot", "./", "./"},
};

TEST(SarifUri, EncodesPaths) {
    for (const Row& row : kUris) EXPECT_EQ(sarif_uri(row.text), row.want) << row.name;
}

// Expected by SARIF 2.1.0, 3.11.5 and 3.11.6 (from memory).
constexpr Row kMessages[] = {
    {"plain", "Genuine PU leather", "Genuine PU leather"},
    {"placeholder", "{0}", "{{0}}"},
    {"link", "[x](1)", "\\[x\\](1)"},
    {"backslash", "a\\b", "a\\\\b"},
    {"line_end", "a\nb", "a b"},
    {"escape", "a\x1B[31m", "a?\\[31m"},
    {"direction",
     "a\xE2\x80\xAE"
     "b",
     "a???b"},
    {"no_utf8", "a\xFF", "a?"},
    {"tag", "<script>", "<script>"},
};

TEST(SarifMessage, IsPlainAndInert) {
    for (const Row& row : kMessages) EXPECT_EQ(sarif_message_text(row.text), row.want) << row.name;
}

// SARIF 2.1.0, 3.27.10, has no other levels.
TEST(SarifLevel, FollowsTheGrade) {
    EXPECT_EQ(sarif_level(Grade::contradicted), "error");
    EXPECT_EQ(sarif_level(Grade::misleading), "error");
    EXPECT_EQ(sarif_level(Grade::unsupported), "warning");
    EXPECT_EQ(sarif_level(Grade::inconclusive), "warning");
    EXPECT_EQ(sarif_level(Grade::vague), "note");
    EXPECT_EQ(sarif_level(Grade::consistent), "none");
}

}  // namespace
}  // namespace grainside::report
