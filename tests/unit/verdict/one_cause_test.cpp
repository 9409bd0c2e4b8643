#include "verdict/one_cause.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <random>
#include <string>
#include <string_view>
#include <vector>

namespace grainside::verdict {
namespace {

struct Row {
    std::string_view name;
    // One finding a word: field/start-end/grade/rule/phrase, grade m(isleading), u(nsupported) or v(ague).
    std::string_view findings;
    std::string_view want;  // those that stay, in order
};

constexpr Row kRows[] = {
    {"none", "", ""},
    {"one", "0/0-7/v/1/0", "0/0-7/v/1/0"},
    {"apart_both_stay", "0/0-7/v/1/0 0/8-12/v/2/1", "0/0-7/v/1/0 0/8-12/v/2/1"},
    {"touching_is_no_overlap", "0/0-7/m/1/0 0/7-12/v/2/1", "0/0-7/m/1/0 0/7-12/v/2/1"},
    {"quality_word_inside_misleading_words", "0/0-7/v/1/0 0/0-20/m/2/0", "0/0-20/m/2/0"},
    {"quality_word_first_in_time", "0/0-20/v/1/0 0/8-12/m/2/0", "0/8-12/m/2/0"},
    {"worst_grade_wins_though_shorter", "0/0-20/u/1/0 0/4-7/m/2/0", "0/4-7/m/2/0"},
    {"equal_grade_more_words_win", "0/0-7/m/1/0 0/0-20/m/2/0", "0/0-20/m/2/0"},
    {"equal_words_first_rule_wins", "0/0-7/m/9/0 0/0-7/m/3/0", "0/0-7/m/3/0"},
    {"other_field_is_another_place", "0/0-7/m/1/0 1/0-7/v/2/1", "0/0-7/m/1/0 1/0-7/v/2/1"},
    {"each_time_they_stand", "0/0-7/m/1/0 0/30-37/m/1/1", "0/0-7/m/1/0 0/30-37/m/1/1"},
    {"one_rule_once_in_a_phrase", "0/0-7/m/1/0 0/8-12/m/1/0", "0/0-7/m/1/0"},
    {"sorted_by_field_and_start", "1/0-7/m/1/0 0/9-12/v/2/1 0/0-7/u/3/2", "0/0-7/u/3/2 0/9-12/v/2/1 1/0-7/m/1/0"},
    {"chain_of_overlaps", "0/0-10/m/1/0 0/8-20/v/2/1 0/18-30/m/3/2", "0/0-10/m/1/0 0/18-30/m/3/2"},
};

struct Case {
    std::vector<Claim> claims;
    std::vector<Finding> findings;
};

Case read(const std::string& text) {
    Case result;
    for (std::size_t at = 0; at < text.size();
         at = text.find(' ', at) == std::string::npos ? text.size() : text.find(' ', at) + 1) {
        unsigned field = 0;
        unsigned start = 0;
        unsigned end = 0;
        char grade = 'v';
        unsigned rule = 0;
        unsigned phrase = 0;
        EXPECT_EQ(std::sscanf(text.c_str() + at, "%u/%u-%u/%c/%u/%u", &field, &start, &end, &grade, &rule, &phrase), 6);
        Finding finding;
        finding.claim = static_cast<std::uint32_t>(result.claims.size());
        finding.start = start;
        finding.end = end;
        finding.rule = rule;
        finding.grade = grade == 'm' ? Grade::misleading : grade == 'u' ? Grade::unsupported : Grade::vague;
        result.findings.push_back(finding);
        Claim claim;
        claim.field = field;
        claim.phrase = phrase;
        result.claims.push_back(claim);
    }
    return result;
}

std::string dump(const Case& found) {
    std::string text;
    for (const Finding& finding : found.findings) {
        const Claim& claim = found.claims[finding.claim];
        text += (text.empty() ? "" : " ") + std::to_string(claim.field) + "/" + std::to_string(finding.start) + "-" +
                std::to_string(finding.end) + "/" + name_of(finding.grade).front() + "/" +
                std::to_string(finding.rule) + "/" + std::to_string(claim.phrase);
    }
    return text;
}

// Two fields in which nothing stands beside the words of the findings.
const std::vector<Field>& blank_fields() {
    static const std::string kBlank(100, ' ');
    static const std::vector<Field> kFields = {{"name", kBlank}, {"description", kBlank}};
    return kFields;
}

class OneCause : public testing::TestWithParam<Row> {};

TEST_P(OneCause, KeepsTheWorst) {
    Case found = read(std::string(GetParam().findings));
    keep_one_per_cause(blank_fields(), found.claims, found.findings);
    EXPECT_EQ(dump(found), GetParam().want);
}

TEST_P(OneCause, WhateverTheOrder) {
    Case found = read(std::string(GetParam().findings));
    std::reverse(found.findings.begin(), found.findings.end());
    keep_one_per_cause(blank_fields(), found.claims, found.findings);
    EXPECT_EQ(dump(found), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, OneCause, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

// Whether two claims of one phrase, for which one rule speaks, stand side by side, so that they are one cause.
struct BetweenRow {
    std::string_view name, between;
    bool is_one_cause;
};
constexpr BetweenRow kBetween[] = {
    {"space", " ", true},
    {"spaces", "   ", true},
    {"no_break_space", "\u00A0", true},
    {"thin_space", "\u2009", true},
    {"reference", "&nbsp;", true},
    {"line_end", "\r\n", true},
    {"tag", "</b> <i>", true},
    {"hyphen", "-", true},
    {"slash", "/", true},
    {"no_break_hyphen", "\u2011", true},
    {"soft_hyphen_and_space", "\u00AD ", true},
    {"comma_and_space", ", ", false},
    {"dash", " \u2013 ", false},
    {"word", " or ", false},
    {"nothing", "", true},
};
class Between : public testing::TestWithParam<BetweenRow> {};
TEST_P(Between, IsRead) {
    const std::string text = "full" + std::string(GetParam().between) + "calf";
    const std::vector<Field> fields = {{"name", text}};
    const auto size = static_cast<std::uint32_t>(text.size());
    std::vector<Finding> findings(2);
    findings[0].end = 4;
    findings[1].claim = 1;
    findings[1].start = size - 4;
    findings[1].end = size;
    keep_one_per_cause(fields, std::vector<Claim>(2), findings);
    EXPECT_EQ(findings.size(), GetParam().is_one_cause ? 1U : 2U);
}
INSTANTIATE_TEST_SUITE_P(Rows, Between, testing::ValuesIn(kBetween),
                         [](const auto& row) { return std::string(row.param.name); });

// What stays overlaps nothing that stays, and what goes was beaten by something at least as bad.
TEST(OneCause, HoldsOnRandomFindings) {
    std::size_t differences = 0;
    for (unsigned seed = 1; seed <= 500; ++seed) {
        std::mt19937 random(seed);
        Case found;
        for (std::size_t i = random() % 30; i > 0; --i) {
            Finding finding;
            finding.claim = static_cast<std::uint32_t>(found.claims.size());
            finding.start = static_cast<std::uint32_t>(random() % 60);
            finding.end = finding.start + 1 + static_cast<std::uint32_t>(random() % 20);
            finding.rule = static_cast<std::uint32_t>(random() % 5);
            finding.grade = static_cast<Grade>(1 + random() % 3);
            found.findings.push_back(finding);
            Claim claim;
            claim.field = static_cast<std::uint32_t>(random() % 2);
            claim.phrase = finding.claim;  // each its own phrase
            found.claims.push_back(claim);
        }
        const Case before = found;
        keep_one_per_cause(blank_fields(), found.claims, found.findings);
        const auto overlap = [&](const Finding& a, const Finding& b) {
            return found.claims[a.claim].field == found.claims[b.claim].field && a.start < b.end && b.start < a.end;
        };
        for (const Finding& a : found.findings) {
            for (const Finding& b : found.findings) differences += a.claim != b.claim && overlap(a, b) ? 1U : 0U;
        }
        for (const Finding& gone : before.findings) {
            bool stayed = false;
            bool beaten = false;
            for (const Finding& kept : found.findings) stayed = stayed || kept.claim == gone.claim;
            for (const Finding& other : before.findings) {
                beaten = beaten || (other.claim != gone.claim && overlap(other, gone) && other.grade <= gone.grade);
            }
            differences += stayed || beaten ? 0U : 1U;
        }
    }
    EXPECT_EQ(differences, 0U);
}

}  // namespace
}  // namespace grainside::verdict
