// One labelled listing, and results put together by hand: no rule book is asked.
#include "listing_score.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <map>

namespace grainside::scoring {
namespace {

constexpr std::string_view kText = "Calf tote lined with PU leather, leather brown";

// Concepts and rules of these tests, by number.
const std::vector<std::string> kConcepts = {"", "calf-leather", "polyurethane", "leather"};

const BookNames kNames = {
    [](ConceptId id) { return std::string_view(kConcepts.at(id)); },
    [](std::uint32_t) { return std::string_view("some-rule"); },
};

Span place(std::string_view words) {
    const std::size_t at = kText.find(words);
    return {0, static_cast<std::uint32_t>(at), static_cast<std::uint32_t>(at + words.size())};
}

LabelledListing labelled() {
    LabelledListing listing;
    listing.id = "t-1";
    listing.fields = {{"name", std::string(kText)}};
    listing.claims = {{place("Calf"), Part::body, Kind::species, false, "calf-leather"},
                      {place("PU leather"), Part::lining, Kind::material, false, "polyurethane"}};
    listing.findings = {{place("PU leather"), Grade::misleading, {}}};
    listing.traps = {{place("leather brown"), "a colour"}};
    return listing;
}

Claim claim(std::string_view words, Part part, Kind kind, ConceptId says, bool negated = false) {
    Claim made;
    made.start = place(words).start;
    made.end = place(words).end;
    made.part = part;
    made.kind = kind;
    made.says = says;
    made.negated = negated;
    return made;
}

Finding finding(const CheckResult& result, std::uint32_t at, Grade grade) {
    Finding made;
    made.claim = at;
    made.start = result.mentions[at].start;
    made.end = result.mentions[at].end;
    made.grade = grade;
    return made;
}

CheckResult as_labelled() {
    CheckResult result;
    result.mentions = {claim("Calf", Part::whole, Kind::species, 1),
                       claim("PU leather", Part::lining, Kind::material, 2)};
    result.findings = {finding(result, 1, Grade::misleading)};
    return result;
}

struct Scored {
    Scores scores;
    std::string remarks;
};

Scored score(const LabelledListing& listing, const CheckResult& result, const std::vector<std::string>& markets = {}) {
    Scored scored;
    std::vector<Remark> remarks;
    score_listing(listing, result, markets, kNames, scored.scores, remarks);
    for (const Remark& remark : remarks) scored.remarks += fmt::format("{}: {}\n", remark.words, remark.what);
    return scored;
}

TEST(ListingScoreTest, NothingToRemarkWhereAllIsAsLabelled) {
    const Scored scored = score(labelled(), as_labelled());
    EXPECT_EQ(scored.remarks, "");
    EXPECT_EQ(scored.scores.all_claims().f1(), 1.0);
    EXPECT_EQ(scored.scores.all_claims().exact, 2U);
    EXPECT_EQ(scored.scores.all_claims().part_right, 2U);
    EXPECT_EQ(scored.scores.all_claims().says_right, 2U);
    EXPECT_EQ(scored.scores.all_findings().f1(), 1.0);
    EXPECT_EQ(scored.scores.traps_passed, 1U);
}

TEST(ListingScoreTest, NothingFoundMissesEverythingAndPassesTheTrap) {
    const Scored scored = score(labelled(), CheckResult{});
    EXPECT_EQ(scored.remarks,
              "Calf: missed claim: species calf-leather (body)\n"
              "PU leather: missed claim: material polyurethane (lining)\n"
              "PU leather: missed finding: misleading\n");
    EXPECT_EQ(scored.scores.all_claims().recall(), 0.0);
    EXPECT_EQ(scored.scores.all_claims().precision(), std::nullopt);
    EXPECT_EQ(scored.scores.traps_passed, 1U);
}

TEST(ListingScoreTest, EachSortOfErrorIsRemarked) {
    CheckResult result;
    result.mentions = {claim("Calf", Part::body, Kind::species, 1, true),
                       claim("leather,", Part::body, Kind::material, 3),
                       claim("leather brown", Part::body, Kind::material, 3)};
    result.findings = {finding(result, 1, Grade::vague), finding(result, 2, Grade::misleading)};
    const Scored scored = score(labelled(), result);
    EXPECT_EQ(scored.remarks,
              "PU leather: part: body, labelled lining\n"
              "PU leather: says: leather, labelled polyurethane\n"
              "Calf: missed claim: species calf-leather (body)\n"
              "Calf: false claim: not species calf-leather (body)\n"
              "leather brown: false claim: material leather (body)\n"
              "PU leather: missed finding: misleading\n"
              "leather,: false finding: vague by some-rule\n"
              "leather brown: false finding: misleading by some-rule\n"
              "leather brown: trap (a colour): claim: material leather (body) finding: misleading by some-rule\n");
    EXPECT_EQ(scored.scores.all_claims().right, 1U);
    EXPECT_EQ(scored.scores.all_claims().exact, 0U);
    EXPECT_EQ(scored.scores.traps_passed, 0U);
}

TEST(ListingScoreTest, MentionsAreNoClaims) {
    CheckResult result = as_labelled();
    result.mentions.push_back(claim("leather brown", Part::whole, Kind::quality, 3));
    EXPECT_EQ(score(labelled(), result).remarks, "");
}

TEST(ListingScoreTest, AFindingOfOneMarketCountsThereOnly) {
    LabelledListing listing = labelled();
    listing.findings->front().markets = {"us"};
    const CheckResult with = as_labelled();
    const CheckResult without;
    EXPECT_EQ(score(listing, with).scores.all_findings().found, 0U) << "neither required nor a false alarm";
    EXPECT_EQ(score(listing, without).scores.all_findings().labels, 0U);
    EXPECT_EQ(score(listing, with, {"us"}).scores.all_findings().f1(), 1.0);
    EXPECT_EQ(score(listing, without, {"us"}).scores.all_findings().recall(), 0.0);

    CheckResult other_grade = with;
    other_grade.findings.front().grade = Grade::vague;
    EXPECT_EQ(score(listing, other_grade).scores.all_findings().found, 1U)
        << "another grade is a false alarm all the same";
}

TEST(ListingScoreTest, AMarketMayMakeTheGradeOfTheSameWordsWorse) {
    LabelledListing listing = labelled();
    LabelledFinding worse = listing.findings->front();
    listing.findings->front().grade = Grade::vague;
    worse.markets = {"us"};
    listing.findings->push_back(worse);
    const CheckResult misleading = as_labelled();
    CheckResult vague = misleading;
    vague.findings.front().grade = Grade::vague;
    EXPECT_EQ(score(listing, vague).scores.all_findings().f1(), 1.0);
    EXPECT_EQ(score(listing, misleading, {"us"}).scores.all_findings().f1(), 1.0);
    EXPECT_EQ(score(listing, vague, {"us"}).scores.all_findings().recall(), 0.0);
}

TEST(ListingScoreTest, IsHonestWhereNoMarketThatIsAskedHasAFinding) {
    LabelledListing listing = labelled();
    listing.honest = true;
    listing.findings->front().markets = {"us"};
    EXPECT_EQ(score(listing, CheckResult()).scores.honest, 1U);
    EXPECT_EQ(score(listing, CheckResult(), {"us"}).scores.honest, 0U);
}

TEST(ListingScoreTest, WithoutLabelsNothingIsScored) {
    LabelledListing listing = labelled();
    listing.claims.reset();
    listing.findings.reset();
    listing.traps.reset();
    const Scored scored = score(listing, as_labelled());
    EXPECT_EQ(scored.remarks, "");
    EXPECT_FALSE(scored.scores.has_claims || scored.scores.has_findings || scored.scores.has_traps);
}

TEST(ListingScoreTest, ALabelWithoutAConceptIsNotScoredForIt) {
    LabelledListing listing = labelled();
    for (LabelledClaim& label : *listing.claims) label.says.clear();
    const Scored scored = score(listing, as_labelled());
    EXPECT_EQ(scored.scores.all_claims().says_labelled, 0U);
    EXPECT_EQ(scored.remarks, "");
}

TEST(ListingScoreTest, HonestListingsAreCountedByTheirSilence) {
    LabelledListing listing = labelled();
    listing.honest = true;
    EXPECT_EQ(score(listing, as_labelled()).scores.honest_silent, 0U);
    EXPECT_EQ(score(listing, CheckResult{}).scores.honest_silent, 1U);
}

struct PartRow {
    std::string_view name;
    Part labelled, found, also_labelled;
    bool want;
};

class SamePartTest : public testing::TestWithParam<PartRow> {};

TEST_P(SamePartTest, TakesWholeForTheMainOutsidePart) {
    LabelledListing listing;
    listing.claims = {{{}, GetParam().labelled, Kind::material, false, ""},
                      {{}, GetParam().also_labelled, Kind::material, false, ""}};
    EXPECT_EQ(same_part(listing, GetParam().labelled, GetParam().found), GetParam().want);
}

constexpr PartRow kParts[] = {
    {"equal", Part::lining, Part::lining, Part::lining, true},
    {"unequal", Part::lining, Part::trim, Part::lining, false},
    {"body_as_whole", Part::body, Part::whole, Part::body, true},
    {"whole_as_body", Part::whole, Part::body, Part::lining, true},
    {"whole_as_upper", Part::whole, Part::upper, Part::lining, true},
    {"lining_as_whole", Part::lining, Part::whole, Part::body, false},
    {"strap_of_a_bag_as_whole", Part::strap, Part::whole, Part::body, false},
    {"strap_of_a_belt_as_whole", Part::strap, Part::whole, Part::lining, true},
    {"body_is_not_strap", Part::body, Part::strap, Part::body, false},
    {"body_of_a_shoe_as_whole", Part::whole, Part::body, Part::upper, false},
};

INSTANTIATE_TEST_SUITE_P(Rows, SamePartTest, testing::ValuesIn(kParts),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(MarketsTest, AreThoseAskedForElseTheListingsOwn) {
    LabelledListing listing;
    EXPECT_TRUE(markets_of(listing, {}).empty());
    listing.region = "IT";
    EXPECT_EQ(markets_of(listing, {}), std::vector<std::string>{"it"});
    listing.region = "GB";
    EXPECT_EQ(markets_of(listing, {}), std::vector<std::string>{"uk"});
    const std::vector<std::string> asked = {"us"};
    EXPECT_EQ(markets_of(listing, asked), asked);
    listing.region = "Europe";
    EXPECT_TRUE(markets_of(listing, {}).empty());
}

}  // namespace
}  // namespace grainside::scoring
