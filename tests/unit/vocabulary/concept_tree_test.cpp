#include "vocabulary/concept_tree.h"

#include <gtest/gtest.h>

#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "document/yaml_document.h"
#include "support/fault_dump.h"

namespace grainside::vocabulary {
namespace {

// A tree and the document that its faults point into.
struct Loaded {
    document::Faults faults;
    std::vector<document::Document> documents;
    ConceptTree tree;
};

void load(std::string text, Loaded& loaded) {
    auto document = document::parse_yaml("concepts.yaml", std::move(text), loaded.faults);
    ASSERT_TRUE(document.has_value());
    loaded.documents.push_back(std::move(*document));
    loaded.tree.load(loaded.documents.back(), loaded.faults);
    loaded.tree.close(loaded.faults);
}

struct FaultRow {
    std::string_view name, text, want;
};

constexpr FaultRow kFaults[] = {
    {"none", "- {concept: a, kind: material}\n- {concept: b, is: a}\n", ""},
    {"unknown_parent", "- {concept: a, kind: material}\n- {concept: b, is: c}\n", "2:20 unknown-concept"},
    {"one_of_two_parents_unknown", "- {concept: a, kind: grain}\n- {concept: b, is: [a, c]}\n", "2:20 unknown-concept"},
    {"two_unknown_parents", "- {concept: a, is: [x, y]}\n", "1:20 unknown-concept; 1:20 unknown-concept"},
    {"own_parent", "- {concept: a, is: a}\n", "1:20 cycle"},
    {"cycle_of_two", "- {concept: a, is: b}\n- {concept: b, is: a}\n", "1:20 cycle; 2:20 cycle"},
    {"cycle_of_three_beside_a_good_one",
     "- {concept: a, is: b}\n- {concept: b, is: c}\n- {concept: c, is: a}\n- {concept: d, kind: grain}\n",
     "1:20 cycle; 2:20 cycle; 3:20 cycle"},
    {"duplicate", "- {concept: a, kind: grain}\n- {concept: a, kind: grain}\n", "2:13 duplicate-concept"},
    {"unknown_kind", "- {concept: a, kind: materiel}\n", "1:22 unknown-kind"},
    {"neither_parent_nor_kind", "- {concept: a}\n", "1:3 missing-key"},
    {"no_concept", "- {is: a}\n", "1:3 missing-key"},
    {"capital_in_an_id", "- {concept: Leather, kind: grain}\n", "1:13 wrong-type"},
    {"space_in_an_id", "- {concept: full grain, kind: grain}\n", "1:13 wrong-type"},
    {"hyphen_at_the_end", "- {concept: full-, kind: grain}\n", "1:13 wrong-type"},
    {"unknown_key", "- {concept: a, kind: grain, parent: b}\n", "1:29 unknown-key"},
    {"entry_is_a_text", "- leather\n", "1:3 wrong-type"},
    {"file_is_a_mapping", "concept: a\n", "1:1 wrong-type"},
    {"all_at_once",
     "- {concept: a, is: zz}\n- {concept: b, kind: no}\n- {concept: b, kind: grain}\n- {concept: c, is: c}\n",
     "1:20 unknown-concept; 2:22 unknown-kind; 3:13 duplicate-concept; 4:20 cycle"},
};

class ConceptTreeFaults : public testing::TestWithParam<FaultRow> {};

TEST_P(ConceptTreeFaults, AreToldWithTheirPlace) {
    Loaded loaded;
    load(std::string(GetParam().text), loaded);
    EXPECT_EQ(support::dump_places(loaded.faults.take()), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, ConceptTreeFaults, testing::ValuesIn(kFaults),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(ConceptTree, HintsAtTheNearestParent) {
    Loaded loaded;
    load("- {concept: leather, kind: material}\n- {concept: suede, is: laether}\n", loaded);
    const std::vector<Issue> issues = loaded.faults.take();
    ASSERT_EQ(issues.size(), 1U);
    EXPECT_EQ(issues[0].hint, "did you mean `leather`?");
}

TEST(ConceptTree, IsAIsReflexiveAndGoesUpEveryWay) {
    Loaded loaded;
    load(
        "- {concept: full-grain, is: [grain, kept]}\n"  // before its parents
        "- {concept: grain, is: leather, kind: grain}\n"
        "- {concept: kept, kind: finish}\n"
        "- {concept: leather, kind: material}\n"
        "- {concept: cotton, kind: material, name: cotton cloth}\n",
        loaded);
    ASSERT_EQ(support::dump_places(loaded.faults.take()), "");
    const ConceptTree& tree = loaded.tree;
    const auto is_a = [&](std::string_view a, std::string_view b) { return tree.is_a(tree.find(a), tree.find(b)); };
    EXPECT_TRUE(is_a("full-grain", "full-grain"));
    EXPECT_TRUE(is_a("full-grain", "grain"));
    EXPECT_TRUE(is_a("full-grain", "kept"));
    EXPECT_TRUE(is_a("full-grain", "leather"));
    EXPECT_FALSE(is_a("leather", "full-grain"));
    EXPECT_FALSE(is_a("full-grain", "cotton"));
    EXPECT_FALSE(is_a("grain", "kept"));
    EXPECT_TRUE(tree.related(tree.find("leather"), tree.find("full-grain")));
    EXPECT_FALSE(tree.related(tree.find("grain"), tree.find("kept")));
    EXPECT_EQ(tree.find("velvet"), 0);
    EXPECT_EQ(tree[tree.find("full-grain")].kind, Kind::grain);  // of the first parent
    EXPECT_EQ(tree[tree.find("full-grain")].wording, "full grain");
    EXPECT_EQ(tree[tree.find("cotton")].wording, "cotton cloth");
}

TEST(ConceptTree, AddedConceptsTakeTheirParent) {
    Loaded loaded;
    auto document = document::parse_yaml("concepts.yaml", "- {concept: place, kind: origin}\n", loaded.faults);
    ASSERT_TRUE(document.has_value());
    loaded.tree.load(*document, loaded.faults);
    const ConceptId italy = loaded.tree.add(*document, document->root(), "italy", "place", "Italy", loaded.faults);
    loaded.tree.close(loaded.faults);
    EXPECT_EQ(support::dump_places(loaded.faults.take()), "");
    EXPECT_EQ(loaded.tree.find("italy"), italy);
    EXPECT_TRUE(loaded.tree.is_a(italy, loaded.tree.find("place")));
    EXPECT_EQ(loaded.tree[italy].kind, Kind::origin);
    EXPECT_EQ(loaded.tree[italy].wording, "Italy");
}

// Against the textbook's transitive closure (Warshall 1962), over trees of random shape.
TEST(ConceptTree, ClosureIsWarshalls) {
    std::size_t trees = 0;
    std::size_t differences = 0;
    for (unsigned seed = 1; seed <= 20; ++seed) {
        std::mt19937 random(seed);
        const std::size_t count = 2 + random() % 120;  // past 64, where a set needs a second word
        std::vector<std::vector<char>> above(count, std::vector<char>(count));
        std::string text;
        for (std::size_t i = 0; i < count; ++i) {
            above[i][i] = 1;
            text += "- {concept: c" + std::to_string(i);
            std::string parents;
            for (std::size_t k = 0; i > 0 && k < random() % 3; ++k) {
                const std::size_t parent = random() % i;
                if (above[i][parent] != 0) continue;
                above[i][parent] = 1;
                parents += (parents.empty() ? "c" : ", c") + std::to_string(parent);
            }
            text += parents.empty() ? ", kind: grain}\n" : ", is: [" + parents + "]}\n";
        }
        for (std::size_t k = 0; k < count; ++k) {
            for (std::size_t i = 0; i < count; ++i) {
                for (std::size_t j = 0; j < count; ++j) {
                    if (above[i][k] != 0 && above[k][j] != 0) above[i][j] = 1;
                }
            }
        }
        Loaded loaded;
        load(text, loaded);
        ASSERT_EQ(support::dump_places(loaded.faults.take()), "");
        ++trees;
        for (std::size_t i = 0; i < count; ++i) {
            for (std::size_t j = 0; j < count; ++j) {
                const ConceptId a = loaded.tree.find("c" + std::to_string(i));
                const ConceptId b = loaded.tree.find("c" + std::to_string(j));
                const bool is_a = loaded.tree.is_a(a, b);
                if (is_a != (above[i][j] != 0) || is_a != loaded.tree[b].descendants.contains(a)) ++differences;
            }
        }
    }
    EXPECT_EQ(differences, 0U) << trees << " trees, " << differences << " differences";
}

}  // namespace
}  // namespace grainside::vocabulary
