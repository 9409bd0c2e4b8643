// Whole rewordings: what is edited, what is left, and the closed loop over the corpus.
#include "grainside/reword.h"

#include <gtest/gtest.h>

#include <chrono>
#include <cstddef>
#include <filesystem>
#include <ostream>
#include <string>
#include <string_view>
#include <vector>

#include "labelled_file.h"
#include "support/built_in_evidence.h"

namespace grainside {
namespace {

const RuleBook& book() {
    return support::built_in_book();
}

Listing listing_of(std::string_view text) {
    Listing listing;
    listing.fields.push_back({"description", text});
    return listing;
}

Listing with_texts(const Listing& listing, const std::vector<std::string>& texts) {
    Listing changed = listing;
    for (std::size_t i = 0; i < texts.size(); ++i) changed.fields[i].text = texts[i];
    return changed;
}

struct RewordRow {
    std::string_view name;
    std::string_view text;
    std::string_view want;  // the text afterwards
    std::string_view left;  // "GRADE 'WORDS' NO_EDIT; ..."
};
std::ostream& operator<<(std::ostream& out, const RewordRow& row) {
    return out << row.name;
}

std::string dump_left(const Rewording& rewording) {
    std::string out;
    for (const Leftover& left : rewording.left) {
        out += (out.empty() ? "" : "; ") + std::string(name_of(left.grade)) + " '" + left.words + "' " + left.why_not;
    }
    return out;
}

constexpr std::string_view kUnknown = "what would be true cannot be known from the listing";

// What a copywriter would make of them.
const RewordRow kRows[] = {
    {"honest", "Belt in full grain leather with a brass buckle.", "Belt in full grain leather with a brass buckle.",
     ""},
    {"imitation", "Tote in PU leather.", "Tote in imitation leather (polyurethane).", ""},
    {"article", "A vegan leather tote.", "An imitation leather tote.", ""},
    {"plating_before_noun", "Solid gold-plated buckles.", "Gold-plated buckles.", ""},
    {"plating_in_the_case_of_the_words", "SOLID GOLD-PLATED BUCKLES", "GOLD-PLATED BUCKLES", ""},
    {"plated_over_other", "Solid brass buckle, brass plated.", "Brass-plated buckle, brass plated.", ""},
    {"all_leather", "All-leather briefcase; gussets are vinyl.", "Leather briefcase; gussets are vinyl.", ""},
    {"true_words_follow", "Tote in genuine full grain PU leather.", "Tote in imitation leather (polyurethane).", ""},
    {"nickel_before_noun", "Nickel-free buckle: nickel-plated steel.",
     "Nickel-plated (contains nickel) buckle: nickel-plated steel.", ""},
    {"praise_goes", "Tote in luxury leather.", "Tote in leather.", ""},
    {"praise_inside_worse_words", "Tote in premium PU leather.", "Tote in imitation leather (polyurethane).", ""},
    {"two_in_one_sentence", "Tote in vegan leather with an eco-friendly strap.",
     "Tote in imitation leather with a strap.", ""},
    {"unproven_is_left", "Waterproof leather tote.", "Waterproof leather tote.",
     "unsupported 'Waterproof' what would be true cannot be known from the listing"},
    {"predicate_is_left", "Leather tote. It is durable.", "Leather tote. It is durable.",
     "vague 'durable' without the words the phrase around them has to be written anew"},
    {"shares_are_left", "Lining: 70% cotton, 40% polyester.", "Lining: 70% cotton, 40% polyester.",
     "misleading '70% cotton, 40% polyester' what would be true cannot be known from the listing"},
    {"same_wording_once", "Sofa in vegan leather, eco leather.", "Sofa in imitation leather.", ""},
    // What the words next to it claim too much stays for a person; the better name does not wait for that.
    {"a_better_name_takes_no_side", "Tanned without any chemicals. Outer: PU leather.",
     "Tanned without any chemicals. Outer: Imitation leather (polyurethane).",
     "misleading 'without any chemicals' what would be true cannot be known from the listing"},
    {"quotation_is_left", "\"I love my vegan leather tote.\" Vegan leather, cotton lining.",
     "\"I love my vegan leather tote.\" Imitation leather, cotton lining.",
     "misleading 'vegan leather' it stands in a quotation, and what others said is theirs"},
    {"name_in_quotation_marks", "A \"vegan leather\" tote.", "An \"imitation leather\" tote.", ""},
    {"superlative_of_a_noun", "Bag in faux leather. The finest leather bag you can buy.",
     "Bag in faux leather. The finest leather bag you can buy.",
     "misleading 'finest leather' the words around belong to the superlative that would go"},
    {"superlative_of_a_stuff", "Bag in faux leather. Made from the finest leather.",
     "Bag in faux leather. Made from imitation leather.", ""},
    {"superlative_goes", "Cut from the finest leather and the finest calfskin.", "Cut from leather and calfskin.", ""},
    {"superlative_of_a_product", "The finest leather bag.", "The finest leather bag.",
     "vague 'finest' the words around belong to the superlative that would go"},
    {"long_brackets_before_a_noun", "An apple leather loop.", "An imitation leather loop.", ""},
    {"long_brackets_at_the_end", "Loop in apple leather.", "Loop in imitation leather (sheet with apple filler).", ""},
    {"noun_not_twice", "Full grain cowhide. The cover is corrected grain leather.",
     "Corrected grain cowhide. The cover is corrected grain leather.", ""},
    {"number_begins_a_sentence", "18k solid gold buckle, gold-plated brass.", "Brass buckle, gold-plated brass.", ""},
    // Text that means to break what shows it is carried over byte for byte.
    {"hostile_controls", "\x1B[31mTote in vegan leather\x1B[0m\xE2\x80\xAE.",
     "\x1B[31mTote in imitation leather\x1B[0m\xE2\x80\xAE.", ""},
    {"hostile_bytes", "\xFF\xC3Tote in vegan leather\xFF", "\xFF\xC3Tote in imitation leather\xFF", ""},
    {"hostile_markup", "<script>vegan leather</script>", "<script>vegan leather</script>", ""},
    {"look_alikes", "Tote in v\xD0\xB5gan leather.", "Tote in imitation leather.", ""},
};

class RewordTest : public testing::TestWithParam<RewordRow> {};

TEST_P(RewordTest, GivesWhatTheRowSays) {
    Reworder reworder(book());
    const Rewording& result = reworder.reword(listing_of(GetParam().text));
    EXPECT_EQ(result.texts.at(0), GetParam().want);
    EXPECT_EQ(dump_left(result), GetParam().left);
}

INSTANTIATE_TEST_SUITE_P(Rows, RewordTest, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

// A seller has to see which of two statements an edit follows.
TEST(Rewording, TellsWhichStatementItFollows) {
    Reworder reworder(book());
    Listing listing;
    listing.fields.push_back({"name", "Genuine leather sofa"});
    listing.fields.push_back({"description", "The cover is split leather."});
    const Rewording& result = reworder.reword(listing);
    ASSERT_EQ(result.edits.size(), 1U);
    EXPECT_EQ(result.texts[0], "Split leather sofa");
    EXPECT_EQ(result.edits[0].taken.field, 1U);
    EXPECT_EQ(result.edits[0].taken.words, "split leather");
    // Nothing is taken where the words are wrong by themselves.
    const Rewording& alone = reworder.reword(listing_of("A vegan leather tote."));
    ASSERT_EQ(alone.edits.size(), 1U);
    EXPECT_EQ(alone.edits[0].taken.words, "");
}

// Of other words that stand in the way a person reads which they are and what is wrong with them, not the id of a rule.
TEST(Rewording, TellsWhichOtherWordsStandInTheWay) {
    Reworder reworder(book(), CheckOptions{{"us"}});
    Listing listing;
    listing.fields.push_back({"name", "Italian leather tote"});
    listing.fields.push_back({"description", "Tote of Italian leather, tanned in India."});
    const Rewording& still = reworder.reword(listing);
    ASSERT_EQ(still.left.size(), 2U);
    const RuleInfo& origin = book().rules()[still.left[1].rule];
    EXPECT_EQ(origin.id, "leather-origin-elsewhere-us");
    EXPECT_EQ(still.left[1].why_not, "'Italian leather' would still be misleading (" + origin.title + ")");

    listing.fields[0].text = "Cork leather wallet";
    listing.fields[1].text = "Wallet in cork leather. Full leather. The body is cork fabric.";
    const Rewording& then = reworder.reword(listing);
    ASSERT_EQ(then.left.size(), 1U);
    EXPECT_EQ(then.left[0].words, "cork leather");
    EXPECT_TRUE(then.left[0].why_not.starts_with("'leather' would then be misleading (")) << then.left[0].why_not;
}

// Edits that hang together: the coat makes the nappa 'coated leather', and only then does the rule of the first words
// offer that for them too.
TEST(Rewording, TriesWhatAnotherEditMakesTrueBeforeThatIsTakenBack) {
    Reworder reworder(book(), {{"eu"}, ""});
    const Rewording& result =
        reworder.reword(listing_of("The cover is real leather. It is nappa with a polyurethane coating of 0.3 mm."));
    EXPECT_EQ(result.texts.at(0),
              "The cover is coated leather. It is coated leather with a polyurethane coating of 0.3 mm.");
    EXPECT_EQ(dump_left(result), "");
    // Both follow the coat, and neither the nappa that goes.
    ASSERT_EQ(result.edits.size(), 2U);
    EXPECT_EQ(result.edits[0].taken.words, "0.3 mm");
    EXPECT_EQ(result.edits[1].taken.words, "0.3 mm");
}

TEST(Rewording, LeavesOutWhatIsUnprovenWhereAsked) {
    Reworder reworder(book(), {}, {.leave_out_unproven = true});
    EXPECT_EQ(reworder.reword(listing_of("Waterproof leather tote.")).texts.at(0), "Leather tote.");
    EXPECT_EQ(reworder.reword(listing_of("The tote is waterproof.")).texts.at(0), "The tote is waterproof.");
}

TEST(Rewording, NamesRulesGradesAndWhatAPersonCanDo) {
    Reworder reworder(book());
    const Rewording& result = reworder.reword(listing_of("Waterproof tote in vegan leather."));
    ASSERT_EQ(result.edits.size(), 1U);
    const Edit& edit = result.edits[0];
    EXPECT_EQ(edit.words, "vegan leather");
    EXPECT_EQ(edit.wording, "imitation leather");
    EXPECT_EQ(edit.grade, Grade::misleading);
    EXPECT_EQ(book().rules()[edit.rule].id, "vegan-called-leather");
    ASSERT_EQ(result.left.size(), 1U);
    EXPECT_EQ(result.left[0].why_not, kUnknown);
    EXPECT_NE(result.left[0].remedy.find("name the test method"), std::string::npos);
}

// The wording of a rule may be reserved in another market: Italy keeps the noun in every compound.
TEST(Rewording, TakesBackWhatTheMarketDoesNotLetPass) {
    Reworder reworder(book(), {{"it"}, ""});
    const Rewording& result = reworder.reword(listing_of("Tote in vegan leather."));
    EXPECT_EQ(result.texts.at(0), "Tote in vegan leather.");
    EXPECT_EQ(result.left.size(), 1U);
}

TEST(Rewording, WritesNoNumberAnew) {
    Listing listing;
    listing.fields.push_back({"additionalProperty.Waterproof", "true", {0, 4, Writing::json_value}});
    Reworder reworder(book(), {}, {.leave_out_unproven = true});
    EXPECT_TRUE(reworder.reword(listing).edits.empty());
}

// Each quarter of a megabyte of findings may cost no more than a few checks.
TEST(Rewording, StaysLinearOnHostileText) {
    Reworder reworder(book());
    const auto seconds = [&](std::size_t times) {
        std::string text;
        for (std::size_t i = 0; i < times; ++i) text += i % 2 == 0 ? "Vegan leather, luxury leather. " : "An eco bag. ";
        const auto begin = std::chrono::steady_clock::now();
        const Rewording& result = reworder.reword(listing_of(text));
        EXPECT_GE(result.edits.size(), times / 2);
        return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
    };
    seconds(1000);
    const double small = seconds(4000);
    const double large = seconds(16000);
    EXPECT_LT(large, small * 16) << "quadratic would be 16 times";
}

// ---- the closed loop -------------------------------------------------------------------------------------------

struct Loop {
    std::size_t listings = 0;
    std::size_t edits = 0;
    std::size_t left = 0;
};

// Everything that is promised of one rewording; `again` rewords another listing in the same way.
template <typename Count, typename Again>
void expect_closed(const Listing& listing, const Rewording& first, const Count& count, const Again& again, Loop& loop) {
    const Rewording result = first;
    ++loop.listings;
    loop.edits += result.edits.size();
    loop.left += result.left.size();
    // The edits alone make the texts, and nothing else changes.
    std::vector<std::string> texts;
    for (const Field& field : listing.fields) texts.emplace_back(field.text);
    for (auto edit = result.edits.rbegin(); edit != result.edits.rend(); ++edit) {
        std::string& text = texts.at(edit->field);
        ASSERT_EQ(text.substr(edit->start, edit->end - edit->start), edit->words);
        text.replace(edit->start, edit->end - edit->start, edit->wording);
    }
    ASSERT_EQ(texts, result.texts);
    const Listing reworded = with_texts(listing, result.texts);
    EXPECT_LE(count(reworded), count(listing)) << listing.id;
    EXPECT_EQ(count(reworded), result.left.size()) << listing.id;
    const Rewording& second = again(reworded);
    EXPECT_EQ(second.texts, result.texts) << listing.id << " changes again";
    for (const std::string& text : result.texts) {
        for (const std::string_view doubled : {" a a ", " an an ", " the the ", " a an ", " an a "}) {
            EXPECT_EQ(text.find(doubled), std::string::npos) << text;
        }
    }
}

class ClosedLoop : public testing::TestWithParam<std::string_view> {};

TEST_P(ClosedLoop, HoldsOverTheCorpus) {
    std::vector<std::string> markets;
    if (!GetParam().empty()) markets.emplace_back(GetParam());
    const CheckOptions options{markets, "2026-11-26"};
    Reworder reworder(book(), options);
    Reworder second(book(), options);
    Checker checker(book(), options);
    const auto count = [&](const Listing& listing) { return checker.check(listing).findings.size(); };
    Loop loop;
    for (const auto& entry : std::filesystem::directory_iterator(GRAINSIDE_CORPUS_FOLDER)) {
        if (!entry.path().filename().string().starts_with("open_")) continue;
        const auto labelled = scoring::read_labelled_file(entry.path().string());
        ASSERT_TRUE(labelled);
        for (const auto& one : labelled.value()) {
            const Listing listing = one.listing();
            const Rewording& result = reworder.reword(listing);
            expect_closed(
                listing, result, count, [&](const Listing& text) -> const Rewording& { return second.reword(text); },
                loop);
            // Each wording passes alone.
            for (const Edit& edit : result.edits) {
                checker.check(listing);
                EXPECT_TRUE(checker.passes_itself(listing, edit.wording)) << edit.wording;
            }
        }
    }
    EXPECT_GT(loop.listings, 600U);
    // About half of the findings are settled; in a market that reserves the noun fewer.
    EXPECT_GT(loop.edits, GetParam() == "it" ? 300U : 400U);
    EXPECT_TRUE(GetParam() == "it" || loop.left * 9 < loop.edits * 10) << loop.left << " of " << loop.edits + loop.left;
    RecordProperty("edits", static_cast<int>(loop.edits));
    RecordProperty("left", static_cast<int>(loop.left));
}

INSTANTIATE_TEST_SUITE_P(Markets, ClosedLoop, testing::Values("", "us", "eu", "it"), [](const auto& market) {
    return market.param.empty() ? std::string("everywhere") : std::string(market.param);
});

TEST(Rewording, ClosedLoopHoldsForDossiers) {
    Reworder reworder(book());
    Judge judge(book(), support::built_in_evidence());
    Judge counting(book(), support::built_in_evidence());
    Loop loop;
    for (const auto& entry : std::filesystem::directory_iterator(std::string(GRAINSIDE_CORPUS_FOLDER) + "/dossiers")) {
        if (entry.path().extension() != ".yaml") continue;
        SCOPED_TRACE(entry.path().filename());
        auto read = Dossier::read(entry.path(), support::built_in_evidence(), {});
        ASSERT_TRUE(read);
        const Dossier& dossier = read.value();
        if (dossier.listing() == nullptr) continue;
        // What words get, whatever the readings: as `judge` shows them.
        const auto count = [&](const Listing& listing) {
            std::size_t problems = 0;
            for (const Verdict& verdict : counting.judge(dossier, listing).verdicts) {
                const bool words = verdict.finding != kNoClaim;
                problems += verdict.grade == Grade::contradicted || verdict.grade == Grade::misleading ||
                                    (words && (verdict.grade == Grade::unsupported || verdict.grade == Grade::vague))
                                ? 1U
                                : 0U;
            }
            return problems;
        };
        const Rewording& result = reworder.reword(dossier, judge);
        ++loop.listings;
        loop.edits += result.edits.size();
        const Listing reworded = with_texts(*dossier.listing(), result.texts);
        EXPECT_EQ(count(reworded), result.left.size());
        EXPECT_LE(count(reworded), count(*dossier.listing()));
    }
    EXPECT_GE(loop.listings, 25U);
    EXPECT_GE(loop.edits, 20U);
}

TEST(Rewording, NamesWhatTheReadingsShow) {
    const Dossier dossier = support::dossier_of(
        "sample: {what: strap, category: watch-strap}\n"
        "listing: {description: 'Lining: goat leather.'}\n"
        "parts:\n"
        "  lining:\n"
        "    readings:\n"
        "      - {method: species-laboratory, outcome: reads-pig}\n");
    Reworder reworder(book());
    Judge judge(book(), support::built_in_evidence());
    const Rewording& result = reworder.reword(dossier, judge);
    ASSERT_EQ(result.edits.size(), 1U);
    EXPECT_EQ(result.texts.at(0), "Lining: pigskin leather.");
    EXPECT_EQ(result.edits[0].rule, kNoRule);
    EXPECT_EQ(result.edits[0].grade, Grade::contradicted);
}

// What a rule offers, or what a person can do: every rule of the default book has one of them.
TEST(Rewording, EveryRuleOffersAWordingOrARemedy) {
    for (const RuleInfo& rule : book().rules()) {
        EXPECT_FALSE(rule.say_instead.empty() && rule.remedy.empty()) << rule.id;
        EXPECT_TRUE(!rule.leave_out || rule.remedy.find("out") != std::string::npos) << rule.id;
    }
}

// A coat above the limit: two neighbouring names become one, and what a friend said stops neither.
TEST(Rewording, OfADossierSaysTheWordingOnceAndPastAQuotation) {
    const Dossier dossier = support::dossier_of(
        "sample: {what: satchel, category: bag}\n"
        "listing:\n  region: eu\n  description: |\n"
        "    Body: full grain buffalo leather. \"It smells like real leather\", says a friend.\n"
        "parts:\n  body:\n    readings:\n"
        "      - {method: cut-edge, outcome: fibre-and-grain}\n"
        "      - {method: coat-microscopy, coat: 0.22 +- 0.02 mm, total: 1.95 +- 0.04 mm}\n");
    Judge judge(support::built_in_book(), support::built_in_evidence());
    Reworder reworder(support::built_in_book());
    const Rewording& result = reworder.reword(dossier, judge);
    ASSERT_EQ(result.texts.size(), dossier.listing()->fields.size());
    EXPECT_EQ(result.texts[0], "Body: coated leather. \"It smells like real leather\", says a friend.\n");
}

}  // namespace
}  // namespace grainside
