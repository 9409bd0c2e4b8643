// One listing, and a result put together by hand. The form is that of README.md.
#include "reading_lines.h"

#include <gtest/gtest.h>

#include <functional>
#include <optional>

namespace grainside::scoring {
namespace {

const RuleBook& book() {
    static const RuleBook kBuiltIn = RuleBook::built_in().value();
    return kBuiltIn;
}

Listing listing() {
    Listing made;
    made.fields = {{"name", "PU tote"}, {"description", "Lining: 60% cotton, 30% linen"}};
    return made;
}

Claim claim(std::uint32_t field, std::uint32_t start, std::uint32_t end, std::string_view says) {
    Claim made;
    made.field = field;
    made.start = start;
    made.end = end;
    made.says = book().find_concept(says);
    made.phrase = start;
    made.sentence = start;
    return made;
}

CheckResult result() {
    CheckResult made;
    made.mentions = {claim(0, 0, 2, "polyurethane"), claim(1, 8, 18, "cotton"), claim(1, 20, 29, "linen")};
    return made;
}

TEST(ReadingLines, TellWhatAClaimHas) {
    CheckResult read = result();
    Claim& linen = read.mentions[2];
    linen.kind = Kind::composition;
    linen.part = Part::lining;
    linen.family = 3;
    linen.negated = linen.hedged = linen.look_alike = true;
    linen.called = book().find_concept("leather");
    linen.place = book().find_concept("italy");
    linen.quantity = Quantity{30, 32.5, Unit::percent};
    linen.of_total = 12.5;
    linen.marks = static_cast<std::uint32_t>(Mark::title) | static_cast<std::uint32_t>(Mark::part_named);
    linen.list_end = 29;
    linen.phrase = read.mentions[0].phrase;
    linen.sentence = read.mentions[1].sentence;
    EXPECT_EQ(claim_line(book(), listing(), read, 2),
              "description@20 \"30% linen\" composition linen lining/3 denied hedged look-alike called=leather "
              "place=italy quantity=30..32.5-percent of-total=12.5% marks=title,part-named list-to=29 phrase^2 "
              "sentence^1");
    EXPECT_EQ(claim_line(book(), listing(), read, 0), "name@0 \"PU\" material polyurethane whole");
}

// Else something could change and no line would show it.
TEST(ReadingLines, DifferWithEachMemberOfAClaim) {
    const std::pair<std::string_view, std::function<void(Claim&)>> members[] = {
        {"field",
         [](Claim& c) {
             c.field = 0;
             c.start = 0;
             c.end = 7;
         }},
        {"start", [](Claim& c) { ++c.start; }},
        {"end", [](Claim& c) { --c.end; }},
        {"says", [](Claim& c) { c.says = book().find_concept("silk"); }},
        {"called", [](Claim& c) { c.called = book().find_concept("silk"); }},
        {"place", [](Claim& c) { c.place = book().find_concept("italy"); }},
        {"part", [](Claim& c) { c.part = Part::body; }},
        {"kind", [](Claim& c) { c.kind = Kind::craft; }},
        {"family", [](Claim& c) { c.family = 1; }},
        {"of_total", [](Claim& c) { c.of_total = 1; }},
        {"negated", [](Claim& c) { c.negated = true; }},
        {"hedged", [](Claim& c) { c.hedged = true; }},
        {"look_alike", [](Claim& c) { c.look_alike = true; }},
        {"quantity", [](Claim& c) { c.quantity = Quantity{}; }},
        {"low",
         [](Claim& c) {
             c.quantity = Quantity{1, 2, Unit::none};
         }},
        {"high",
         [](Claim& c) {
             c.quantity = Quantity{1, 3, Unit::none};
         }},
        {"unit",
         [](Claim& c) {
             c.quantity = Quantity{1, 3, Unit::millimetre};
         }},
        {"phrase", [](Claim& c) { c.phrase = 8; }},
        {"sentence", [](Claim& c) { c.sentence = 8; }},
        {"phrase and sentence", [](Claim& c) { c.phrase = c.sentence = 8; }},
        {"list_end", [](Claim& c) { c.list_end = 29; }},
    };
    std::map<std::string, std::string_view> lines = {{claim_line(book(), listing(), result(), 2), "nothing"}};
    for (const auto& [member, change] : members) {
        CheckResult changed = result();
        change(changed.mentions[2]);
        const auto [same, is_new] = lines.emplace(claim_line(book(), listing(), changed, 2), member);
        EXPECT_TRUE(is_new) << member << " shows as " << same->second;
    }
    for (int bit = 0; bit < kMarkCount; ++bit) {
        CheckResult changed = result();
        changed.mentions[2].marks = 1U << static_cast<unsigned>(bit);
        EXPECT_TRUE(lines.emplace(claim_line(book(), listing(), changed, 2), "a mark").second) << "bit " << bit;
    }
}

TEST(ReadingLines, ClaimAboveDoesNotChangeTheLinesBehindIt) {
    CheckResult more = result();
    Claim& first = more.mentions.emplace_back(claim(0, 3, 7, "cotton"));
    std::swap(first, more.mentions[1]);
    std::swap(more.mentions[3], more.mentions[2]);
    for (Claim& behind : std::span(more.mentions).subspan(2)) {
        ++behind.phrase;
        ++behind.sentence;
    }
    for (std::size_t at : {1U, 2U})
        EXPECT_EQ(claim_line(book(), listing(), result(), at), claim_line(book(), listing(), more, at + 1));
}

TEST(ReadingLines, AListingIsItsKindAndMainPart) {
    CheckResult read;
    read.main_part = Part::upper;
    EXPECT_EQ(listing_line(book(), read), "is any, upper");
    read.fields_too_long = 2;
    EXPECT_EQ(listing_line(book(), read), "is any, upper, 2 fields not read");
}

// 16 CFR 24.2(a): such goods may not be called leather.
TEST(ReadingLines, TellWhatAFindingStandsOn) {
    Listing tote;
    tote.fields = {{"name", "Leather tote"}, {"description", "Outside: polyurethane."}};
    Checker checker(book(), {.markets = {"us"}});
    const CheckResult& read = checker.check(tote);
    ASSERT_EQ(read.findings.size(), 1U);
    EXPECT_EQ(finding_line(book(), tote, read, read.findings[0], checker),
              "misleading name@0 \"Leather\" against description@9 \"polyurethane\" instead \"polyurethane\"");
}

TEST(QuotedLine, StaysOnItsLineAndKeepsCharactersWhole) {
    EXPECT_EQ(quoted_line("a\nb\t\x7f\\", 72), "\"a\\x0ab\\x09\\x7f\\x5c\"");
    EXPECT_EQ(quoted_line("caf\xC3\xA9", 5), "\"caf\xC3\xA9\"");
    EXPECT_EQ(quoted_line("caf\xC3\xA9", 4), "\"caf\"...");
    EXPECT_EQ(quoted_line("", 0), "\"\"");
}

}  // namespace
}  // namespace grainside::scoring
