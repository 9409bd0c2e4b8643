// What conditions ask of claims, on claims made by hand.
#include "rules/rule_matcher.h"

#include <gtest/gtest.h>

#include <random>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "support/fault_dump.h"
#include "support/small_rules.h"

namespace grainside::rules {
namespace {

constexpr std::string_view kMarkets = "- {market: us}\n- {market: eu}\n- {market: it, within: eu}\n";

std::string rule_text(std::string_view id, std::string_view body) {
    return "- rule: " + std::string(id) + "\n  title: T\n  grade: vague\n" + std::string(body) +
           "  because: B.\n  sources: law\n  proof:\n"
           "    flags: [{text: a, words: a}, {text: b, words: b}, {text: c, words: c}]\n"
           "    passes: [{text: d}, {text: e}, {text: f}]\n";
}

class SmallBook {
public:
    explicit SmallBook(const std::string& rules) {
        document::Faults faults;
        support::load_small_rules({{"sources.yaml", "- {source: law, cite: A law, says: It says., how: seen}\n"},
                                   {"markets.yaml", std::string(kMarkets)},
                                   {"wording/a.yaml", rules}},
                                  data, faults);
        EXPECT_EQ(support::dump_places(faults.take()), "");
    }
    ConceptId id(std::string_view name) const { return data.vocabulary.concepts.find(name); }
    // A claim of the body that says `says`, in a phrase, a sentence and at a place of its own.
    Claim claim(std::string_view says, std::uint32_t number = 0) const {
        Claim claim;
        claim.says = id(says);
        claim.kind = data.vocabulary.concepts[claim.says].kind;
        claim.part = Part::body;
        claim.start = 10 * number;
        claim.end = 10 * number + 5;
        claim.phrase = number;
        claim.sentence = number;
        return claim;
    }
    BookData data;
};

// Which claims are found, each with what it stands against: "0", "0<1".
std::string found(const SmallBook& book, const std::vector<Claim>& claims, std::vector<std::string> markets = {},
                  std::string_view on = {}, const ListingFacts& facts = {}) {
    RuleMatcher matcher(book.data);
    matcher.select(markets, on);
    std::vector<Finding> findings;
    matcher.match(claims, facts, findings);
    std::string text;
    for (const Finding& finding : findings) {
        text += (text.empty() ? "" : " ") + std::to_string(finding.claim);
        if (finding.against != kNoClaim) text += "<" + std::to_string(finding.against);
    }
    return text;
}

// ---- one claim -------------------------------------------------------------------------------------------------

struct ClaimRow {
    std::string_view name, when;
    void (*change)(const SmallBook&, Claim&);  // of a claim that says leather of the body
    bool holds;
};

const ClaimRow kClaims[] = {
    {"says", "{says: leather}", [](const SmallBook&, Claim&) {}, true},
    {"says_a_kind_of_it", "{says: leather}", [](const SmallBook& b, Claim& c) { c.says = b.id("calf-leather"); }, true},
    {"says_another", "{says: leather}", [](const SmallBook& b, Claim& c) { c.says = b.id("cotton"); }, false},
    {"says_only", "{says_only: leather}", [](const SmallBook&, Claim&) {}, true},
    {"says_only_no_kind_of_it", "{says_only: leather}",
     [](const SmallBook& b, Claim& c) { c.says = b.id("calf-leather"); }, false},
    {"says_and_says_only", "{says: cotton, says_only: leather}", [](const SmallBook&, Claim&) {}, true},
    {"says_and_says_only_the_first", "{says: cotton, says_only: leather}",
     [](const SmallBook& b, Claim& c) { c.says = b.id("cotton"); }, true},
    {"says_the_first_concept_of_the_book", "{says_only: material}",
     [](const SmallBook& b, Claim& c) { c.says = b.id("material"); }, true},
    {"not_says", "{says: leather, not_says: suede}", [](const SmallBook& b, Claim& c) { c.says = b.id("suede-split"); },
     false},
    {"not_says_before_says", "{not_says: suede, says: leather}",
     [](const SmallBook& b, Claim& c) { c.says = b.id("suede"); }, false},
    {"not_says_alone", "{not_says: suede}", [](const SmallBook& b, Claim& c) { c.says = b.id("cotton"); }, true},
    {"kind", "{kind: [grain, material]}", [](const SmallBook&, Claim&) {}, true},
    {"other_kind", "{kind: grain}", [](const SmallBook&, Claim&) {}, false},
    {"part", "{says: leather, part: body}", [](const SmallBook&, Claim&) {}, true},
    {"other_part", "{says: leather, part: lining}", [](const SmallBook&, Claim&) {}, false},
    {"not_part", "{says: leather, not_part: body}", [](const SmallBook&, Claim&) {}, false},
    {"not_main_part", "{says: leather, not_part: main}", [](const SmallBook&, Claim&) {}, false},
    {"not_main_part_of_another", "{says: leather, not_part: main}",
     [](const SmallBook&, Claim& c) { c.part = Part::lining; }, true},
    {"millimetres", "{says: leather, millimetres: {from: 0.151}}",
     [](const SmallBook&, Claim& c) {
         c.quantity = Quantity{0.2, 0.2, Unit::millimetre};
     },
     true},
    {"millimetres_of_microns", "{says: leather, millimetres: {from: 0.151}}",
     [](const SmallBook&, Claim& c) {
         c.quantity = Quantity{200, 200, Unit::micrometre};
     },
     true},
    {"millimetres_at_the_limit", "{says: leather, millimetres: {from: 0.151}}",
     [](const SmallBook&, Claim& c) {
         c.quantity = Quantity{0.15, 0.15, Unit::millimetre};
     },
     false},
    {"millimetres_of_a_percentage", "{says: leather, millimetres: {from: 0}}",
     [](const SmallBook&, Claim& c) {
         c.quantity = Quantity{20, 20, Unit::percent};
     },
     false},
    {"of_total", "{says: leather, of_total: {from: 33.4}}", [](const SmallBook&, Claim& c) { c.of_total = 50; }, true},
    {"of_total_below", "{says: leather, of_total: {from: 33.4}}", [](const SmallBook&, Claim& c) { c.of_total = 33.3; },
     false},
    {"of_total_unknown", "{says: leather, of_total: {from: 0}}", [](const SmallBook&, Claim&) {}, false},
    {"main_part", "{says: leather, part: main}", [](const SmallBook&, Claim&) {}, true},
    {"other_than_the_main_part", "{says: leather, part: main}",
     [](const SmallBook&, Claim& c) { c.part = Part::strap; }, false},
    {"main_or_strap", "{says: leather, part: [main, strap]}", [](const SmallBook&, Claim& c) { c.part = Part::strap; },
     true},
    {"marked", "{says: leather, marked: [genuine, solid]}",
     [](const SmallBook&, Claim& c) { c.marks = static_cast<std::uint32_t>(Mark::solid); }, true},
    {"not_marked", "{says: leather, marked: genuine}", [](const SmallBook&, Claim&) {}, false},
    {"marked_all", "{says: leather, marked_all: [genuine, title]}",
     [](const SmallBook&, Claim& c) { c.marks = static_cast<std::uint32_t>(Mark::genuine); }, false},
    {"unmarked", "{says: leather, unmarked: look}",
     [](const SmallBook&, Claim& c) { c.marks = static_cast<std::uint32_t>(Mark::look); }, false},
    {"denied_is_not_asked_for", "{says: leather}", [](const SmallBook&, Claim& c) { c.negated = true; }, false},
    {"denied", "{says: leather, negated: yes}", [](const SmallBook&, Claim& c) { c.negated = true; }, true},
    {"denied_or_not", "{says: leather, negated: any}", [](const SmallBook&, Claim& c) { c.negated = true; }, true},
    {"hedged_or_not_by_default", "{says: leather}", [](const SmallBook&, Claim& c) { c.hedged = true; }, true},
    {"not_hedged", "{says: leather, hedged: no}", [](const SmallBook&, Claim& c) { c.hedged = true; }, false},
    {"quantity", "{says: leather, quantity: yes}", [](const SmallBook&, Claim&) {}, false},
    {"look_alike", "{says: leather, look_alike: yes}", [](const SmallBook&, Claim& c) { c.look_alike = true; }, true},
    {"called", "{says: leather, called: suede}", [](const SmallBook& b, Claim& c) { c.called = b.id("suede"); }, true},
    {"called_nothing", "{says: leather, called: suede}", [](const SmallBook&, Claim&) {}, false},
    {"not_called", "{says: leather, not_called: suede}", [](const SmallBook& b, Claim& c) { c.called = b.id("suede"); },
     false},
    {"not_called_nothing", "{says: leather, not_called: suede}", [](const SmallBook&, Claim&) {}, true},
    {"in_place", "{says: leather, in_place: italy}", [](const SmallBook& b, Claim& c) { c.place = b.id("italy"); },
     true},
    {"in_place_within", "{says: leather, in_place: europe}",
     [](const SmallBook& b, Claim& c) { c.place = b.id("italy"); }, true},
    {"in_place_is_wider", "{says: leather, in_place: italy}",
     [](const SmallBook& b, Claim& c) { c.place = b.id("europe"); }, false},
    {"in_place_one_of_a_list", "{says: leather, in_place: [china, italy]}",
     [](const SmallBook& b, Claim& c) { c.place = b.id("italy"); }, true},
    {"in_another_place", "{says: leather, in_place: [china]}",
     [](const SmallBook& b, Claim& c) { c.place = b.id("italy"); }, false},
    {"in_no_place", "{says: leather, in_place: italy}", [](const SmallBook&, Claim&) {}, false},
    {"borrowed", "{says: leather, borrowed: yes}", [](const SmallBook&, Claim&) {}, false},
    {"share", "{says: leather, share: {from: 20, to: 30}}",
     [](const SmallBook&, Claim& c) {
         c.quantity = Quantity{20, 30, Unit::percent};
         c.kind = Kind::composition;
     },
     true},
    {"share_too_high", "{says: leather, share: {from: 20, to: 30}}",
     [](const SmallBook&, Claim& c) {
         c.quantity = Quantity{20, 31, Unit::percent};
         c.kind = Kind::composition;
     },
     false},
    {"share_of_no_number", "{says: leather, share: {from: 0}}", [](const SmallBook&, Claim&) {}, false},
    {"share_of_another_unit", "{says: leather, share: {from: 0}}",
     [](const SmallBook&, Claim& c) {
         c.quantity = Quantity{5, 5, Unit::millimetre};
     },
     false},
    {"one_of_two_conditions", "[{says: cotton}, {says: leather}]", [](const SmallBook&, Claim&) {}, true},
    {"neither_of_two", "[{says: cotton}, {says: leather, part: lining}]", [](const SmallBook&, Claim&) {}, false},
};

class OneClaim : public testing::TestWithParam<ClaimRow> {};

TEST_P(OneClaim, HoldsOrNot) {
    const SmallBook book(rule_text("r", "  when: " + std::string(GetParam().when) + "\n"));
    Claim claim = book.claim("leather");
    GetParam().change(book, claim);
    EXPECT_EQ(found(book, {claim}), GetParam().holds ? "0" : "");
}

// As `unless`, the same condition lets pass what it held for, and nothing else.
TEST_P(OneClaim, AsUnlessTheOtherWayRound) {
    const SmallBook book(
        rule_text("r", "  when: {not_says: ivory, negated: any}\n  unless: " + std::string(GetParam().when) + "\n"));
    Claim claim = book.claim("leather");
    GetParam().change(book, claim);
    EXPECT_EQ(found(book, {claim}), GetParam().holds ? "" : "0");
}

INSTANTIATE_TEST_SUITE_P(Rows, OneClaim, testing::ValuesIn(kClaims),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(RuleMatcher, AsksForTheCategory) {
    const SmallBook book(rule_text("r", "  when: {says: leather, category: belt}\n"));
    ListingFacts facts;
    EXPECT_EQ(found(book, {book.claim("leather")}, {}, {}, facts), "");
    for (std::size_t i = 0; i < book.data.vocabulary.categories.size(); ++i) {
        if (book.data.vocabulary.categories[i].name == "belt") facts.category = static_cast<std::uint8_t>(i);
    }
    EXPECT_EQ(found(book, {book.claim("leather")}, {}, {}, facts), "0");
}

// ---- two claims ------------------------------------------------------------------------------------------------

struct BesideRow {
    std::string_view name, beside;
    void (*change)(const SmallBook&, Claim&, Claim&);  // leather in phrase 0, sentence 0; cotton in 1 and 1, after it
    bool holds;
};

const BesideRow kBeside[] = {
    {"part_by_default", "{says: cotton}", [](const SmallBook&, Claim&, Claim&) {}, true},
    {"other_part", "{says: cotton}", [](const SmallBook&, Claim&, Claim& o) { o.part = Part::lining; }, false},
    {"reach_part", "{says: cotton, reach: part}", [](const SmallBook&, Claim&, Claim& o) { o.part = Part::lining; },
     false},
    {"part_of_another_family", "{says: cotton, reach: part}",
     [](const SmallBook&, Claim& c, Claim& o) {
         c.family = 1;
         o.family = 2;
     },
     false},
    {"part_of_one_family", "{says: cotton, reach: part}",
     [](const SmallBook&, Claim& c, Claim& o) {
         c.family = 2;
         o.family = 2;
     },
     true},
    {"part_of_any_family", "{says: cotton, reach: part}", [](const SmallBook&, Claim& c, Claim&) { c.family = 1; },
     true},
    {"elsewhere_of_another_family", "{says: cotton, reach: elsewhere}",
     [](const SmallBook&, Claim& c, Claim& o) {
         o.field = 1;
         c.family = 1;
         o.family = 2;
     },
     false},
    {"reach_noun", "{says: cotton, reach: noun}",
     [](const SmallBook&, Claim& c, Claim& o) {
         c.family = 2;
         o.family = 2;
     },
     true},
    {"reach_noun_of_another_part", "{says: cotton, reach: noun}",
     [](const SmallBook&, Claim& c, Claim& o) {
         c.family = 2;
         o.family = 2;
         o.part = Part::trim;
     },
     false},
    {"reach_noun_of_another_family", "{says: cotton, reach: noun}",
     [](const SmallBook&, Claim& c, Claim& o) {
         c.family = 1;
         o.family = 2;
     },
     false},
    {"reach_noun_of_any_family", "{says: cotton, reach: noun}",
     [](const SmallBook&, Claim& c, Claim&) { c.family = 1; }, false},
    {"reach_anywhere", "{says: cotton, reach: anywhere}",
     [](const SmallBook&, Claim&, Claim& o) {
         o.part = Part::lining;
         o.field = 3;
     },
     true},
    {"reach_elsewhere", "{says: cotton, reach: elsewhere}", [](const SmallBook&, Claim&, Claim& o) { o.field = 1; },
     true},
    {"elsewhere_is_another_field", "{says: cotton, reach: elsewhere}", [](const SmallBook&, Claim&, Claim&) {}, false},
    {"elsewhere_is_the_same_part", "{says: cotton, reach: elsewhere}",
     [](const SmallBook&, Claim&, Claim& o) {
         o.field = 1;
         o.part = Part::lining;
     },
     false},
    {"reach_sentence", "{says: cotton, reach: sentence}",
     [](const SmallBook&, Claim&, Claim& o) {
         o.sentence = 0;
         o.part = Part::lining;
     },
     true},
    {"reach_part_in_sentence", "{says: cotton, reach: part-in-sentence}",
     [](const SmallBook&, Claim&, Claim& o) { o.sentence = 0; }, true},
    {"part_in_another_sentence", "{says: cotton, reach: part-in-sentence}", [](const SmallBook&, Claim&, Claim&) {},
     false},
    {"another_part_in_the_sentence", "{says: cotton, reach: part-in-sentence}",
     [](const SmallBook&, Claim&, Claim& o) {
         o.sentence = 0;
         o.part = Part::lining;
     },
     false},
    {"another_family_in_the_sentence", "{says: cotton, reach: part-in-sentence}",
     [](const SmallBook&, Claim& c, Claim& o) {
         o.sentence = 0;
         c.family = 1;
         o.family = 2;
     },
     false},
    {"another_sentence", "{says: cotton, reach: sentence}", [](const SmallBook&, Claim&, Claim&) {}, false},
    {"reach_phrase", "{says: cotton, reach: phrase}",
     [](const SmallBook&, Claim&, Claim& o) {
         o.phrase = 0;
         o.sentence = 0;
     },
     true},
    {"another_phrase_of_the_sentence", "{says: cotton, reach: phrase}",
     [](const SmallBook&, Claim&, Claim& o) { o.sentence = 0; }, false},
    {"not_there", "{says: linen, reach: anywhere}", [](const SmallBook&, Claim&, Claim&) {}, false},
    {"not_the_claim_itself", "{says: leather, reach: anywhere}", [](const SmallBook&, Claim&, Claim&) {}, false},
    {"differs", "{says: [cotton, leather], differs: yes}", [](const SmallBook&, Claim&, Claim&) {}, true},
    {"differs_not_from_its_kind", "{says: [cotton, leather], differs: yes}",
     [](const SmallBook& b, Claim&, Claim& o) { o.says = b.id("calf-leather"); }, false},
    {"differs_not_from_what_it_is_a_kind_of", "{says: material, differs: yes}",
     [](const SmallBook& b, Claim&, Claim& o) { o.says = b.id("material"); }, false},
    {"agrees_with_its_kind", "{says: leather, differs: no}",
     [](const SmallBook& b, Claim&, Claim& o) { o.says = b.id("calf-leather"); }, true},
    {"agrees_not_with_another", "{says: cotton, differs: no}", [](const SmallBook&, Claim&, Claim&) {}, false},
    {"later", "{says: cotton, later: yes}", [](const SmallBook&, Claim&, Claim&) {}, true},
    {"later_in_another_field", "{says: cotton, later: yes, reach: anywhere}",
     [](const SmallBook&, Claim&, Claim& o) {
         o.field = 1;
         o.start = 0;
         o.end = 3;
     },
     true},
    {"earlier_is_not_later", "{says: cotton, later: yes}",
     [](const SmallBook&, Claim& c, Claim& o) {
         std::swap(c.start, o.start);
         std::swap(c.end, o.end);
     },
     false},
    {"same_place", "{says: cotton, place: same}",
     [](const SmallBook&, Claim& c, Claim& o) {
         c.place = 5;
         o.place = 5;
     },
     true},
    {"same_place_is_another", "{says: cotton, place: same}",
     [](const SmallBook&, Claim& c, Claim& o) {
         c.place = 5;
         o.place = 6;
     },
     false},
    {"different_place", "{says: cotton, place: different}",
     [](const SmallBook&, Claim& c, Claim& o) {
         c.place = 5;
         o.place = 6;
     },
     true},
    {"different_place_is_the_same", "{says: cotton, place: different}",
     [](const SmallBook&, Claim& c, Claim& o) {
         c.place = 5;
         o.place = 5;
     },
     false},
    {"no_place_differs_from_none", "{says: cotton, place: different}",
     [](const SmallBook&, Claim& c, Claim&) { c.place = 5; }, false},
    {"denied_beside", "{says: cotton}", [](const SmallBook&, Claim&, Claim& o) { o.negated = true; }, false},
};

class TwoClaims : public testing::TestWithParam<BesideRow> {};

TEST_P(TwoClaims, HoldOrNot) {
    const SmallBook book(
        rule_text("r", "  when: {says_only: leather}\n  beside: " + std::string(GetParam().beside) + "\n"));
    std::vector<Claim> claims = {book.claim("leather", 0), book.claim("cotton", 1)};
    GetParam().change(book, claims[0], claims[1]);
    EXPECT_EQ(found(book, claims), GetParam().holds ? "0<1" : "");
    ASSERT_EQ(book.data.rules.size(), 1U);
    EXPECT_EQ(book.data.rules[0].basis, Basis::cross_check);
}

TEST_P(TwoClaims, AsUnlessBesideTheOtherWayRound) {
    const SmallBook book(
        rule_text("r", "  when: {says_only: leather}\n  unless_beside: " + std::string(GetParam().beside) + "\n"));
    std::vector<Claim> claims = {book.claim("leather", 0), book.claim("cotton", 1)};
    GetParam().change(book, claims[0], claims[1]);
    EXPECT_EQ(found(book, claims), GetParam().holds ? "" : "0");
    EXPECT_EQ(book.data.rules[0].basis, Basis::wording);
}

// Many claims between take another way through the listing's claims.
TEST_P(TwoClaims, HoldOrNotAmongMany) {
    const SmallBook book(
        rule_text("r", "  when: {says_only: leather}\n  beside: " + std::string(GetParam().beside) + "\n"));
    std::vector<Claim> claims = {book.claim("leather", 0), book.claim("cotton", 1)};
    GetParam().change(book, claims[0], claims[1]);
    for (std::uint32_t i = 0; i < 300; ++i) {
        claims.push_back(book.claim("brass", 10 + i));
        claims.back().place = 7;
        claims.back().part = Part::hardware;
        claims.back().negated = true;
    }
    EXPECT_EQ(found(book, claims), GetParam().holds ? "0<1" : "");
}

INSTANTIATE_TEST_SUITE_P(Rows, TwoClaims, testing::ValuesIn(kBeside),
                         [](const auto& row) { return std::string(row.param.name); });

// ---- many claims -----------------------------------------------------------------------------------------------

// A claim of few looks, so that many of them look alike; its numbers tell its place.
Claim drawn_claim(const SmallBook& book, std::mt19937& random, std::uint32_t number) {
    static constexpr std::string_view kSaid[] = {"leather", "cotton", "silk"};
    const auto one_of = [&](std::uint32_t count) { return static_cast<std::uint32_t>(random()) % count; };
    Claim claim = book.claim(kSaid[one_of(3)], number);
    claim.field = number / 8;
    claim.part = one_of(2) == 0 ? Part::body : Part::lining;
    claim.hedged = one_of(4) == 0;
    claim.look_alike = one_of(8) == 0;
    claim.marks = one_of(4) == 0 ? 1U << one_of(4) : 0;
    if (one_of(4) == 0) {
        claim.quantity = Quantity{.low = 1.0 + one_of(2), .high = 3.0 + one_of(2), .unit = Unit::millimetre};
        claim.of_total = 10.0 * one_of(3);
    }
    return claim;
}

struct AskedRow {
    std::string_view name, beside;
};

const AskedRow kAsked[] = {
    {"anywhere", "{says: cotton, hedged: yes, marked: genuine, reach: anywhere}"},
    {"of_the_part", "{says: silk, look_alike: yes, hedged: yes}"},
    {"in_another_field", "{says: cotton, look_alike: yes, reach: elsewhere}"},
    {"later", "{says: cotton, marked: pure, later: yes, reach: anywhere}"},
    {"another_than_itself", "{says: leather, hedged: yes, marked: solid, reach: anywhere}"},
    {"up_to_a_thickness", "{says: [leather, cotton, silk], millimetres: {from: 1, to: 3}, hedged: yes}"},
    {"share_of_the_total", "{says: [leather, cotton, silk], of_total: {from: 15}, marked: all, reach: anywhere}"},
};

class ManyClaims : public testing::TestWithParam<AskedRow> {};

// Above 64 claims those that look alike are looked at once. Claims that no rule asks for must change nothing.
TEST_P(ManyClaims, AreFoundAsAmongFew) {
    const SmallBook book(rule_text("r", "  when: {says: leather}\n  beside: " + std::string(GetParam().beside) + "\n"));
    std::size_t with = 0;
    for (std::uint32_t seed = 1; seed <= 200; ++seed) {
        std::mt19937 random(seed);
        std::vector<Claim> claims;
        for (std::uint32_t i = 0; i < 60; ++i) claims.push_back(drawn_claim(book, random, i));
        RuleMatcher matcher(book.data);
        matcher.select({}, {});
        const auto flagged = [&] {
            std::vector<Finding> findings;
            matcher.match(claims, {}, findings);
            std::vector<std::uint32_t> places;
            for (const Finding& finding : findings) places.push_back(finding.claim);
            return places;
        };
        const std::vector<std::uint32_t> among_few = flagged();
        if (!among_few.empty()) ++with;
        for (std::uint32_t i = 0; i < 900; ++i) {
            claims.push_back(book.claim("brass", 200 + i));
            claims.back().field = 100;
            claims.back().part = Part::hardware;
            claims.back().marks = i;
        }
        EXPECT_EQ(flagged(), among_few) << "seed " << seed;
    }
    EXPECT_GT(with, 10U);
}

INSTANTIATE_TEST_SUITE_P(Rows, ManyClaims, testing::ValuesIn(kAsked),
                         [](const auto& row) { return std::string(row.param.name); });

// What rules/README.md, section 13, says of long listings.
TEST(RuleMatcher, LooksAtAThousandDifferentStatementsAndSixtyFourNeighbours) {
    const std::string when = "  when: {says: leather}\n  beside: {says: cotton, reach: ";
    const SmallBook anywhere(rule_text("r", when + "anywhere}\n"));
    const SmallBook sentence(rule_text("r", when + "sentence}\n"));
    const auto listing = [](const SmallBook& book, std::uint32_t between) {
        std::vector<Claim> claims = {book.claim("leather", 0)};
        for (std::uint32_t i = 0; i < between; ++i) {
            claims.push_back(book.claim("brass", 1 + i));
            claims.back().marks = i;
        }
        claims.push_back(book.claim("cotton", 1 + between));
        for (Claim& claim : claims) claim.sentence = 0;
        return claims;
    };
    EXPECT_EQ(found(anywhere, listing(anywhere, 1022)), "0<1023");
    EXPECT_EQ(found(anywhere, listing(anywhere, 1023)), "");
    EXPECT_EQ(found(sentence, listing(sentence, 63)), "0<64");
    EXPECT_EQ(found(sentence, listing(sentence, 64)), "");
    // What is said again and again is one statement.
    std::vector<Claim> repeated = listing(anywhere, 2000);
    for (std::size_t i = 1; i + 1 < repeated.size(); ++i) {
        repeated[i].marks = 0;
        repeated[i].quantity = Quantity{.low = 1, .high = 2, .unit = Unit::millimetre};
    }
    EXPECT_EQ(found(anywhere, repeated), "0<2001");
    // Behind it as before it.
    for (const auto& [between, wanted] : {std::pair{63U, "64<0"}, std::pair{64U, ""}}) {
        std::vector<Claim> claims = listing(sentence, between);
        std::swap(claims.front().says, claims.back().says);
        EXPECT_EQ(found(sentence, claims), wanted) << between;
    }
}

// ---- markets and dates -----------------------------------------------------------------------------------------

struct ForceRow {
    std::string_view name, body;
    std::vector<std::string> markets;
    std::string_view on;
    bool holds;
};

const ForceRow kForce[] = {
    {"no_market_holds_everywhere", "", {"us"}, "", true},
    {"market_asked_for", "  markets: us\n", {"us"}, "", true},
    {"another_market", "  markets: us\n", {"eu"}, "", false},
    {"within_a_larger_one", "  markets: eu\n", {"it"}, "", true},
    {"larger_one_is_not_within", "  markets: it\n", {"eu"}, "", false},
    {"one_of_two", "  markets: [us, it]\n", {"eu", "us"}, "", true},
    {"unknown_market_asked_for", "  markets: us\n", {"mars"}, "", false},
    {"always", "", {}, "1900-01-01", true},
    {"day_before", "  in_force: {from: 2026-09-27}\n", {}, "2026-09-26", false},
    {"first_day", "  in_force: {from: 2026-09-27}\n", {}, "2026-09-27", true},
    {"last_day", "  in_force: {until: 2026-09-27}\n", {}, "2026-09-27", true},
    {"day_after", "  in_force: {until: 2026-09-27}\n", {}, "2026-09-28", false},
    {"no_day_asked_for", "  in_force: {from: 2026-09-27, until: 2026-09-28}\n", {}, "", true},
    {"market_and_day", "  markets: eu\n  in_force: {from: 2026-09-27}\n", {"it"}, "2027-01-01", true},
};

class InForce : public testing::TestWithParam<ForceRow> {};

TEST_P(InForce, OrNot) {
    const SmallBook book(rule_text("r", "  when: {says: leather}\n" + std::string(GetParam().body)));
    EXPECT_EQ(found(book, {book.claim("leather")}, GetParam().markets, GetParam().on), GetParam().holds ? "0" : "");
}

INSTANTIATE_TEST_SUITE_P(Rows, InForce, testing::ValuesIn(kForce),
                         [](const auto& row) { return std::string(row.param.name); });

// RuleMatcher::select: 'those of no market and of `markets`'.
TEST(RuleMatcher, WithoutMarketsOnlyRulesOfNoMarketHold) {
    const SmallBook book(rule_text("r", "  when: {says: leather}\n  markets: us\n") +
                         rule_text("s", "  when: {says: leather}\n"));
    EXPECT_EQ(found(book, {book.claim("leather")}), "0");
}

TEST(RuleMatcher, SelectsAnew) {
    const SmallBook book(rule_text("r", "  when: {says: leather}\n  markets: us\n"));
    const std::vector<Claim> claims = {book.claim("leather")};
    RuleMatcher matcher(book.data);
    std::string seen;
    const std::vector<std::vector<std::string>> rounds = {{"us"}, {"eu"}, {"us", "eu"}, {"us"}, {"eu", "us"}, {"it"}};
    for (const auto& markets : rounds) {
        matcher.select(markets, "2024-01-01");
        std::vector<Finding> findings;
        matcher.match(claims, {}, findings);
        seen += findings.empty() ? "-" : "+";
    }
    EXPECT_EQ(seen, "+-+++-");
}

TEST(RuleMatcher, OverListSpansTheList) {
    const SmallBook book(rule_text("r", "  when: {says: cotton, marked: shares-off}\n  over_list: yes\n"));
    Claim claim = book.claim("cotton");
    claim.marks = static_cast<std::uint32_t>(Mark::shares_off);
    claim.list_end = 42;
    RuleMatcher matcher(book.data);
    matcher.select({}, {});
    std::vector<Finding> findings;
    matcher.match(std::vector<Claim>{claim}, {}, findings);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].end, 42U);
}

}  // namespace
}  // namespace grainside::rules
