#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/report.h"
#include "report/cell_width.h"
#include "report/marked_text.h"
#include "small_book.h"

namespace grainside::report {
namespace {

std::string view_of(const Listing& listing, const ViewOptions& options = {}) {
    Checker checker(small_book(), us_options());
    std::string out;
    write_view(small_book(), listing, checker.check(listing), checker, options, out);
    return out;
}

std::string claims_view_of(const Listing& listing, const ViewOptions& options = {}) {
    Checker checker(small_book());
    std::string out;
    write_claims_view(small_book(), listing, checker.check(listing), options, out);
    return out;
}

TEST(View, IsOneLineWhereNothingWasFound) {
    EXPECT_EQ(view_of(listing_of({{"description", "Waterproof."}})), "l1: nothing found; 1 claim\n");
    EXPECT_EQ(view_of(listing_of({{"description", "Wood."}})), "l1: nothing found; no claims\n");
    EXPECT_EQ(view_of(listing_of({{"description", "Wood."}}, "")), "listing: nothing found; no claims\n");
}

TEST(View, SaysTheLineUnlessTheIdDoes) {
    Listing listing = listing_of({{"description", "Wood."}});
    listing.line = 12;
    EXPECT_EQ(view_of(listing), "l1, line 12: nothing found; no claims\n");
    listing.id = "catalog.jsonl:12";
    EXPECT_EQ(view_of(listing), "catalog.jsonl:12: nothing found; no claims\n");
}

TEST(View, ShowsEverythingOfAFinding) {
    EXPECT_EQ(view_of(listing_of({{"name", "Bag"}, {"description", "Soft polyurethane."}})), R"(l1

  description:
    Soft polyurethane.
         ^^^^^^^^^^^^

    misleading     'polyurethane'
      reads as     body: polyurethane
      because      Polyurethane is a "plastic", says the rule of the tests.
      say instead  body of plastic sheet
      sources      Law of the tests, section 1
                   Standard of the tests (from memory)
      markets      us, eu
      rule         plastic-named

1 finding: 1 misleading; 1 claim

)");
}

// The rule of this finding cites two sources whose citations are the same: it is shown once.
TEST(View, NamesWhatAFindingStandsAgainst) {
    EXPECT_EQ(view_of(listing_of({{"name", "Silk"}, {"material", "Linen"}})), R"(l1

  name:
    Silk
    ^^^^

    misleading     'Silk'
      reads as     body: silk
      because      Silk here, linen there.
      against      'Linen' in material (body: linen)
      source       Law of the tests, section 1
      markets      all
      rule         silk-beside-linen

1 finding: 1 misleading; 2 claims

)");
}

TEST(View, SumsUpByGrade) {
    const std::string view = view_of(listing_of({{"description", "Cotton. Polyurethane. Cotton."}}));
    EXPECT_NE(view.find("\n3 findings: 1 misleading, 2 vague; 3 claims\n"), std::string::npos) << view;
}

TEST(View, TellsOfFieldsLeftOut) {
    const std::string big(kMaxFieldBytes + 1, 'x');
    EXPECT_EQ(view_of(listing_of({{"description", big}})),
              "l1: nothing found; no claims\n1 field is longer than 16 MiB and not read\n");
}

TEST(View, ColoursInsteadOfCarets) {
    ViewOptions options;
    options.colour = true;
    const std::string view = view_of(listing_of({{"description", "Soft polyurethane, soft cotton."}}), options);
    EXPECT_NE(view.find("    Soft \x1B[4;31mpolyurethane\x1B[0m, soft \x1B[4;35mcotton\x1B[0m.\n"), std::string::npos);
    EXPECT_EQ(view.find('^'), std::string::npos);
}

// What a terminal obeys, besides line ends: controls, broken UTF-8, direction marks.
bool is_inert(std::string_view text) {
    for (std::size_t at = 0; at < text.size(); ++at) {
        const auto byte = static_cast<unsigned char>(text[at]);
        if ((byte < 0x20 && byte != '\n') || byte == 0x7F || byte == 0xFF) return false;
        const std::string_view three = text.substr(at, 3);
        if (three == "\xE2\x80\xAE" || three == "\xE2\x81\xA6" || text.substr(at, 2) == "\xC2\x9B") return false;
    }
    return true;
}

const std::vector<std::string>& hostile_texts() {
    static const std::vector<std::string> kTexts = {
        "\x1B[2J\x1B]0;title\x07 polyurethane \xE2\x80\xAE cotton",
        std::string("a\0b polyurethane\x7F", 17),
        "\xFF\xFE polyurethane \xC3",
        "\xC2\x9B"
        "31m polyurethane \xE2\x81\xA6",
        "polyurethane\r\x1B[1A overwritten",
        std::string(std::size_t{1} << 20, 'x') + " polyurethane",
        std::string(std::size_t{1} << 20, '\x1B') + " polyurethane " + std::string(std::size_t{1} << 20, '\x9B'),
    };
    return kTexts;
}

TEST(HostileView, IsInertAndSmall) {
    for (const std::string& text : hostile_texts()) {
        const std::string name = "additionalProperty." + text;
        const Listing listing = listing_of({{name, text}}, text);
        for (const std::string& view : {view_of(listing), claims_view_of(listing)}) {
            EXPECT_TRUE(is_inert(view)) << testing::PrintToString(view.substr(0, 2000));
            EXPECT_NE(view.find("polyurethane"), std::string::npos);
            EXPECT_LT(view.size(), 4000U);
        }
    }
}

TEST(HostileView, BringsNoColoursOfItsOwn) {
    ViewOptions options;
    options.colour = true;
    for (const std::string& text : hostile_texts()) {
        std::string view = view_of(listing_of({{"name", text}}, text), options);
        for (std::size_t at = 0; (at = view.find('\x1B', at)) != std::string::npos;) {
            const std::size_t end = view.find('m', at);
            EXPECT_EQ(view.find_first_not_of("0123456789;", at + 2), end);
            view.erase(at, end - at + 1);
        }
        EXPECT_TRUE(is_inert(view));
    }
}

TEST(View, KeepsWithinItsWidth) {
    const std::string text =
        "A cotton bag with words enough for several lines, made of polyurethane, so that all of them are wrapped; and "
        "\xE9\x9D\xA9\xE9\x9D\xA9\xE9\x9D\xA9\xE9\x9D\xA9\xE9\x9D\xA9\xE9\x9D\xA9\xE9\x9D\xA9\xE9\x9D\xA9\xE9\x9D\xA9";
    for (const std::size_t width : {std::size_t{40}, std::size_t{60}, std::size_t{120}}) {
        ViewOptions options;
        options.width = width;
        const Listing listing = listing_of({{"description", text}}, std::string_view(text).substr(0, 100));
        for (const std::string& view : {view_of(listing, options), claims_view_of(listing, options)}) {
            for (std::size_t from = 0; from < view.size();) {
                const std::size_t to = view.find('\n', from);
                EXPECT_LE(cells_of(view.substr(from, to - from)), width) << view.substr(from, to - from);
                from = to + 1;
            }
        }
    }
}

struct MarkedRow {
    std::string_view name, text;
    std::vector<MarkedSpan> marks;
    std::string_view want;  // without colours, at indent 2, width 22
};

const MarkedRow kMarked[] = {
    {"one", "A bag here.", {{2, 5, Grade::vague}}, "  A bag here.\n    ^^^\n"},
    {"two", "A bag, a belt.", {{2, 5, Grade::vague}, {9, 13, Grade::vague}}, "  A bag, a belt.\n    ^^^    ^^^^\n"},
    {"nested", "A big bag.", {{2, 9, Grade::vague}, {6, 9, Grade::misleading}}, "  A big bag.\n    ^^^^^^^\n"},
    {"over_a_line_end",
     "Nineteen cells are one line.",
     {{9, 22, Grade::vague}},
     "  Nineteen cells are\n           ^^^^^^^^^\n  one line.\n  ^^^\n"},
    {"unmarked_line",
     "Nineteen cells are one line.",
     {{0, 8, Grade::vague}},
     "  Nineteen cells are\n  ^^^^^^^^\n  one line.\n"},
    {"wide", "\xE9\x9D\xA9 bag", {{0, 3, Grade::vague}}, "  \xE9\x9D\xA9 bag\n  ^^\n"},
    {"combining", "cafe\xCC\x81 bag", {{0, 6, Grade::vague}}, "  cafe\xCC\x81 bag\n  ^^^^\n"},
    {"two_paragraphs", "One.\r\n\r\n  A bag.", {{12, 15, Grade::vague}}, "  One.\n  A bag.\n    ^^^\n"},
    {"spaces_become_one", "A  \t big bag.", {{5, 12, Grade::vague}}, "  A big bag.\n    ^^^^^^^\n"},
    {"inert_bytes_keep_their_place", "\x1B[1m bag \xFF.", {{5, 8, Grade::vague}}, "  ?[1m bag ?.\n       ^^^\n"},
    {"word_wider_than_a_line",
     "abcdefghijklmnopqrstuvwxyz",
     {{20, 22, Grade::vague}},
     "  abcdefghijklmnopqrst\n  uvwxyz\n  ^^\n"},
};

TEST(MarkedText, PutsCaretsBelow) {
    for (const MarkedRow& row : kMarked) {
        std::string out;
        append_marked_text(out, row.text, row.marks, Colours(false), 2, 22);
        EXPECT_EQ(out, row.want) << row.name;
    }
}

TEST(MarkedText, GivesNestedMarksTheWorstColour) {
    const std::vector<MarkedSpan> marks = {{2, 9, Grade::vague}, {6, 9, Grade::misleading}};
    std::string out;
    append_marked_text(out, "A big bag.", marks, Colours(true), 2, 22);
    EXPECT_EQ(out, "  A \x1B[4;35mbig \x1B[0m\x1B[4;31mbag\x1B[0m.\n");
}

TEST(MarkedText, ColoursEachLineByItself) {
    const std::vector<MarkedSpan> marks = {{9, 22, Grade::vague}};
    std::string out;
    append_marked_text(out, "Nineteen cells are one line.", marks, Colours(true), 2, 22);
    EXPECT_EQ(out, "  Nineteen \x1B[4;35mcells are\x1B[0m\n  \x1B[4;35mone\x1B[0m line.\n");
}

TEST(MarkedText, SaysWhereTextWasLeftOut) {
    const std::string filler(500, 'x');
    const std::string text = filler + ". A bag. " + filler;
    const std::vector<MarkedSpan> marks = {{504, 507, Grade::vague}};
    std::string out;
    append_marked_text(out, text, marks, Colours(false), 2, 40);
    EXPECT_EQ(out, "  ... A bag. ...\n        ^^^\n");
}

TEST(ClaimsView, IsATable) {
    EXPECT_EQ(claims_view_of(listing_of({{"description", "Lining: cotton. Polyurethane, waterproof."}})),
              R"(l1: 3 claims
  part    kind         says          words
  whole   performance  waterproof    waterproof
  body    material     polyurethane  Polyurethane
  lining  material     cotton        cotton

)");
    EXPECT_EQ(claims_view_of(listing_of({{"description", "Wood."}})), "l1: no claims\n");
}

TEST(ClaimsView, TellsHowItIsSaid) {
    Claim claim;
    claim.end = 4;
    claim.says = small_book().find_concept("polyurethane");
    claim.called = small_book().find_concept("leather");
    claim.negated = true;
    claim.hedged = true;
    CheckResult result;
    result.mentions = {claim};
    std::string out;
    write_claims_view(small_book(), listing_of({{"name", "Some words"}}), result, {}, out);
    EXPECT_NE(out.find("not polyurethane, called leather, hedged  Some\n"), std::string::npos) << out;
}

TEST(ViewEnd, SaysWhatAReportIsNot) {
    std::string out;
    write_view_end(small_book(), out);
    EXPECT_NE(out.find("not legal advice; local law and licensed practice decide"), std::string::npos);
    EXPECT_NE(out.find("never intent"), std::string::npos);
    EXPECT_NE(out.find(std::string(small_book().digest()) + ": 4 rules, "), std::string::npos) << out;
}

}  // namespace
}  // namespace grainside::report
