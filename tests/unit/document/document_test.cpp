#include "document/document.h"

#include <gtest/gtest.h>

#include <type_traits>
#include <utility>
#include <vector>

#include "tree_dump.h"

namespace grainside::document {
namespace {

static_assert(std::is_nothrow_move_constructible_v<Document> && std::is_nothrow_move_assignable_v<Document>);
static_assert(!std::is_copy_constructible_v<Document> && !std::is_copy_assignable_v<Document>);

TEST(Document, AbsentNodesAnswerEverything) {
    const Node absent;
    EXPECT_FALSE(absent.exists());
    EXPECT_EQ(absent.text(), "");
    EXPECT_EQ(absent.key(), "");
    EXPECT_EQ(absent.line(), 0u);
    EXPECT_FALSE(absent.find("a").exists());
    EXPECT_EQ(absent.begin(), absent.end());
}

TEST(Document, FindsChildrenByKey) {
    const Document document = parse_good("a: 1\nb: {c: 2}\n");
    EXPECT_EQ(document.root().find("a").text(), "1");
    EXPECT_EQ(document.root().find("b").find("c").text(), "2");
    EXPECT_FALSE(document.root().find("c").exists());
    EXPECT_FALSE(document.root().find("a").find("a").exists());
}

// Short strings too: they are where a moved std::string would leave views behind.
TEST(Document, NodesStayGoodWhenTheDocumentMoves) {
    Document first = parse_good("a: x\n");
    const Node node = first.root().find("a");
    const std::string_view source = first.source_line(1);
    std::vector<Document> documents;
    documents.push_back(std::move(first));
    documents.emplace_back("other", std::vector<NodeRecord>(), "", "");
    EXPECT_EQ(node.text(), "x");
    EXPECT_EQ(node.key(), "a");
    EXPECT_EQ(source, "a: x");
    EXPECT_EQ(documents[0].root().find("a").text(), "x");
}

TEST(Document, GivesSourceLinesWithoutTheirEnds) {
    const Document document = parse_good("a: 1\r\n\nb: 2\n# end");
    EXPECT_EQ(document.source_line(0), "");
    EXPECT_EQ(document.source_line(1), "a: 1");
    EXPECT_EQ(document.source_line(2), "");
    EXPECT_EQ(document.source_line(3), "b: 2");
    EXPECT_EQ(document.source_line(4), "# end");
    EXPECT_EQ(document.source_line(5), "");
}

TEST(Document, KnowsWhereKeysStand) {
    const Document document = parse_good("a:\n  'b':\n    - x\n");
    const Node a = document.root().find("a");
    EXPECT_EQ(document.key_place(a), (Place{1, 1}));
    EXPECT_EQ(document.key_place(a.find("b")), (Place{2, 3}));
    EXPECT_EQ(document.key_place(*a.find("b").begin()), (Place{3, 7}));
    EXPECT_EQ(document.key_place({}), Place{});
}

}  // namespace
}  // namespace grainside::document
