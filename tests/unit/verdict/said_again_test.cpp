#include "verdict/said_again.h"

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <vector>

namespace grainside::verdict {
namespace {

// Claim 0 is the title's name, 1 the same name in the text, 2 what disagrees with it, 3 a name in a third sentence.
// Claim 1 is flagged against 2.
std::vector<Claim> claims() {
    std::vector<Claim> claims(4);
    for (std::uint32_t i = 0; i < claims.size(); ++i) {
        claims[i].says = 7;
        claims[i].part = Part::upper;
        claims[i].start = 10 * i;
        claims[i].end = 10 * i + 7;
        claims[i].sentence = i == 3 ? 2 : i == 0 ? 0 : 1;
    }
    claims[2].says = 8;
    claims[2].kind = Kind::composition;
    return claims;
}

Finding finding(std::uint32_t claim, std::uint32_t against, Basis basis = Basis::cross_check,
                Grade grade = Grade::misleading) {
    Finding finding;
    finding.rule = 3;
    finding.claim = claim;
    finding.against = against;
    finding.grade = grade;
    finding.basis = basis;
    return finding;
}

// The claims that are flagged, in order, with the bytes of those that were added: "1 0@0-7".
std::string flagged(const std::vector<Claim>& claims, std::vector<Finding> findings) {
    const std::size_t before = findings.size();
    flag_said_again(claims, findings);
    std::string text;
    for (std::size_t i = 0; i < findings.size(); ++i) {
        if (!text.empty()) text += ' ';
        text += std::to_string(findings[i].claim);
        if (i < before) continue;
        text += '@' + std::to_string(findings[i].start) + '-' + std::to_string(findings[i].end);
        EXPECT_EQ(findings[i].rule, 3U);
        EXPECT_EQ(findings[i].against, 2U);
    }
    return text;
}

TEST(SaidAgain, IsFlaggedInEachOtherSentence) {
    EXPECT_EQ(flagged(claims(), {finding(1, 2)}), "1 0@0-7 3@30-37");
    EXPECT_EQ(flagged(claims(), {}), "");
}

struct Row {
    std::string_view name;
    void (*change)(std::vector<Claim>&);
    std::string_view want;
};

constexpr Row kRows[] = {
    {"another_material", [](std::vector<Claim>& c) { c[3].says = 9; }, "1 0@0-7"},
    {"called_otherwise", [](std::vector<Claim>& c) { c[3].called = 9; }, "1 0@0-7"},
    {"another_part", [](std::vector<Claim>& c) { c[3].part = Part::lining; }, "1 0@0-7"},
    {"denied", [](std::vector<Claim>& c) { c[3].negated = true; }, "1 0@0-7"},
    {"hedged", [](std::vector<Claim>& c) { c[3].hedged = true; }, "1 0@0-7"},
    {"another_kind", [](std::vector<Claim>& c) { c[3].kind = Kind::grain; }, "1 0@0-7"},
    {"look", [](std::vector<Claim>& c) { c[3].marks = static_cast<std::uint32_t>(Mark::look); }, "1 0@0-7"},
    {"imitation", [](std::vector<Claim>& c) { c[3].marks = static_cast<std::uint32_t>(Mark::imitation); }, "1 0@0-7"},
    {"praised_is_the_same", [](std::vector<Claim>& c) { c[3].marks = static_cast<std::uint32_t>(Mark::praised); },
     "1 0@0-7 3@30-37"},
    {"the_same_sentence",
     [](std::vector<Claim>& c) {
         c[3].sentence = 1;
         c[2].sentence = 5;
     },
     "1 0@0-7"},
    {"another_thing",
     [](std::vector<Claim>& c) {
         c[1].family = 1;
         c[3].family = 2;
     },
     "1 0@0-7"},
    {"one_of_several", [](std::vector<Claim>& c) { c[3].family = kOneOfSeveral; }, "1 0@0-7"},
    {"what_disagrees_tells_it_itself", [](std::vector<Claim>& c) { c[2].sentence = 2; }, "1 0@0-7"},
    {"a_share_is_no_name",
     [](std::vector<Claim>& c) {
         for (Claim& claim : c) claim.kind = Kind::composition;
     },
     "1"},
};

TEST(SaidAgain, IsNotWhatSaysSomethingElse) {
    for (const Row& row : kRows) {
        std::vector<Claim> changed = claims();
        row.change(changed);
        EXPECT_EQ(flagged(changed, {finding(1, 2)}), row.want) << row.name;
    }
}

TEST(SaidAgain, KeepsWhatIsFlaggedAsBadlyAlready) {
    EXPECT_EQ(flagged(claims(), {finding(0, 2), finding(1, 2)}), "0 1 3@30-37");
    EXPECT_EQ(flagged(claims(), {finding(0, kNoClaim, Basis::wording, Grade::vague), finding(1, 2)}),
              "0 1 0@0-7 3@30-37");
}

TEST(SaidAgain, IsOfStatementsThatDisagreeAlone) {
    EXPECT_EQ(flagged(claims(), {finding(1, kNoClaim, Basis::wording)}), "1");
}

}  // namespace
}  // namespace grainside::verdict
