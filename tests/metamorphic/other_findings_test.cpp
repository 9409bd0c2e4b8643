// Changes to the labelled listings that must change what is said of the changed words: a denial, a head that says
// imitation, another part.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <iostream>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

#include "changed_listing.h"
#include "exceptions.h"

namespace grainside::metamorphic {
namespace {

using scoring::LabelledListing;

// One claim or finding of a listing as written.
struct Statement {
    Claim claim;
    std::uint32_t start = 0;  // of the finding's words where it is a finding, else of the claim's
    std::uint32_t end = 0;
    std::uint32_t rule = 0;
    bool is_finding = false;
    std::string_view text;  // of its field
    std::string_view field;

    std::string_view words() const { return text.substr(start, end - start); }
};

struct Turn {
    std::string_view name;
    bool (*concerns)(const Statement& statement);
    void (*edit)(ChangedField& field, const Statement& statement);
    // Whether what is now said of the statement's words is something else.
    bool (*is_other)(const Statement& statement, const ChangedListing& changed, const CheckResult& result);
};
void PrintTo(const Turn& turn, std::ostream* out) {
    *out << turn.name;
}

bool says(const Claim& claim, std::string_view name) {
    return book().is_a(claim.says, book().find_concept(name));
}

bool is_identity(const Claim& claim) {
    return claim.kind == Kind::material || claim.kind == Kind::species || claim.kind == Kind::grain;
}

bool overlaps(const Origin& origin, const Statement& statement) {
    return origin.start != kAdded && origin.start < statement.end && statement.start < origin.end;
}

Origin origin_in(const ChangedListing& changed, std::uint32_t field, std::uint32_t start, std::uint32_t end) {
    return origin_of(changed.fields[field], start, end);
}

std::vector<Claim> claims_on(const Statement& statement, const ChangedListing& changed, const CheckResult& result) {
    std::vector<Claim> found;
    for (const Claim& claim : result.mentions) {
        if (claim.field != statement.claim.field) continue;
        if (overlaps(origin_in(changed, claim.field, claim.start, claim.end), statement)) found.push_back(claim);
    }
    return found;
}

bool is_flagged(const Statement& statement) {
    return statement.is_finding && !statement.claim.negated;
}

bool is_flagged_identity(const Statement& statement) {
    return is_flagged(statement) && is_identity(statement.claim);
}

bool rule_is_silent(const Statement& statement, const ChangedListing& changed, const CheckResult& result) {
    return std::none_of(result.findings.begin(), result.findings.end(), [&](const Finding& finding) {
        const Claim& claim = result.mentions[finding.claim];
        return finding.rule == statement.rule && claim.field == statement.claim.field &&
               overlaps(origin_in(changed, claim.field, finding.start, finding.end), statement);
    });
}

bool ends_in_leather(const Statement& statement) {
    constexpr std::string_view kLeather = "leather";
    const std::string_view words = statement.words();
    if (statement.is_finding || !is_identity(statement.claim) || statement.claim.negated) return false;
    if (!says(statement.claim, "leather") || words.size() < kLeather.size()) return false;
    if (statement.claim.has(Mark::imitation) || statement.claim.has(Mark::look)) return false;
    const std::string_view last = words.substr(words.size() - kLeather.size());
    const bool stands_alone = words.size() == last.size() || words[words.size() - last.size() - 1] == ' ';
    return stands_alone &&
           std::equal(last.begin(), last.end(), kLeather.begin(), [](char a, char b) { return (a | 0x20) == b; });
}

bool says_no_leather(const Statement& statement, const ChangedListing& changed, const CheckResult& result) {
    const std::vector<Claim> claims = claims_on(statement, changed, result);
    return std::none_of(claims.begin(), claims.end(), [](const Claim& claim) {
        return is_identity(claim) && says(claim, "leather") && !claim.has(Mark::imitation) && !claim.has(Mark::look);
    });
}

bool is_outer_grain(const Statement& statement) {
    return ends_in_leather(statement) &&
           (says(statement.claim, "full-grain-leather") || says(statement.claim, "top-grain-leather"));
}

// 'full grain faux leather' says two things, and one of them is told to be misleading.
bool is_no_leather_or_misleads(const Statement& statement, const ChangedListing& changed, const CheckResult& result) {
    return says_no_leather(statement, changed, result) ||
           std::any_of(result.findings.begin(), result.findings.end(), [&](const Finding& finding) {
               const Claim& claim = result.mentions[finding.claim];
               return finding.grade == Grade::misleading && claim.field == statement.claim.field &&
                      overlaps(origin_in(changed, claim.field, finding.start, finding.end), statement);
           });
}

bool ends_its_phrase(const Statement& statement) {
    if (statement.is_finding || !is_identity(statement.claim) || statement.claim.part == Part::lining) return false;
    if (statement.field != "description") return false;
    return statement.end == statement.text.size() ||
           std::string_view(".,;\n").find(statement.text[statement.end]) != std::string_view::npos;
}

bool is_of_the_lining(const Statement& statement, const ChangedListing& changed, const CheckResult& result) {
    const std::vector<Claim> claims = claims_on(statement, changed, result);
    return std::any_of(claims.begin(), claims.end(), [&](const Claim& claim) {
        return claim.says == statement.claim.says && claim.part == Part::lining;
    });
}

constexpr Turn kTurns[] = {
    {"flagged_words_behind_not", is_flagged,
     [](ChangedField& field, const Statement& statement) { insert(field, statement.start, "not "); }, rule_is_silent},
    {"flagged_material_behind_no", is_flagged_identity,
     [](ChangedField& field, const Statement& statement) { insert(field, statement.start, "no "); }, rule_is_silent},
    {"faux_before_all_words", ends_in_leather,
     [](ChangedField& field, const Statement& statement) { insert(field, statement.start, "faux "); }, says_no_leather},
    {"faux_behind_a_grain_class", is_outer_grain,
     [](ChangedField& field, const Statement& statement) { insert(field, statement.end - 7, "faux "); },
     is_no_leather_or_misleads},
    {"leather_before_look", ends_in_leather,
     [](ChangedField& field, const Statement& statement) { insert(field, statement.end, "-look"); }, says_no_leather},
    {"material_before_lining", ends_its_phrase,
     [](ChangedField& field, const Statement& statement) { insert(field, statement.end, " lining"); },
     is_of_the_lining},
};

std::vector<Statement> statements_of(const LabelledListing& listing, const CheckResult& result) {
    std::vector<Statement> all;
    const auto add = [&](const Claim& claim, std::uint32_t start, std::uint32_t end) -> Statement& {
        Statement statement;
        statement.claim = claim;
        statement.start = start;
        statement.end = end;
        statement.text = listing.fields[claim.field].text;
        statement.field = listing.fields[claim.field].name;
        all.push_back(statement);
        return all.back();
    };
    for (const Claim& claim : result.mentions) add(claim, claim.start, claim.end);
    for (const Finding& finding : result.findings) {
        Statement& statement = add(result.mentions[finding.claim], finding.start, finding.end);
        statement.rule = finding.rule;
        statement.is_finding = true;
    }
    return all;
}

class OtherFindings : public testing::TestWithParam<Turn> {};

TEST_P(OtherFindings, Follow) {
    const Turn& turn = GetParam();
    Checker checker = make_checker();
    std::size_t changed = 0;
    std::size_t followed = 0;
    for (const LabelledListing& listing : corpus()) {
        bool all_follow = true;
        for (const Statement& statement : statements_of(listing, checker.check(listing.listing()))) {
            if (!turn.concerns(statement)) continue;
            ChangedListing form = unchanged(listing);
            const Listing as_written = form.view();
            // Where what is asked is so without the change, nothing is learnt.
            if (turn.is_other(statement, form, checker.check(as_written))) continue;
            ChangedField& field = form.fields[statement.claim.field];
            turn.edit(field, statement);
            const Listing view = form.view();
            ++changed;
            if (turn.is_other(statement, form, checker.check(view))) {
                ++followed;
                continue;
            }
            all_follow = false;
            if (is_excepted(turn.name, listing.id)) continue;
            ADD_FAILURE() << fmt::format(
                "{} under {}: {}@{} '{}' {}\n{}", listing.id, turn.name, field.name, statement.start, statement.words(),
                statement.is_finding ? book().rules()[statement.rule].id : "",
                field.changed.text.substr(statement.start < 60 ? 0 : statement.start - 60, 160));
        }
        EXPECT_FALSE(all_follow && is_excepted(turn.name, listing.id)) << listing.id << ": take its row away";
    }
    std::cout << followed << " of " << changed << " statements follow\n";
    EXPECT_GT(changed, 0U);
}

std::string name_of_turn(const testing::TestParamInfo<Turn>& info) {
    return std::string(info.param.name);
}
INSTANTIATE_TEST_SUITE_P(Turns, OtherFindings, testing::ValuesIn(kTurns), name_of_turn);

}  // namespace

bool is_turn(std::string_view name) {
    return std::any_of(std::begin(kTurns), std::end(kTurns), [&](const Turn& turn) { return turn.name == name; });
}

}  // namespace grainside::metamorphic
