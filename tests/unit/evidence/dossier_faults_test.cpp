// A bad dossier for each fault, with the exact place; every fault says what to do.
#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "grainside/dossier.h"
#include "small_evidence.h"
#include "support/fault_dump.h"

namespace grainside::evidence {
namespace {

std::vector<Issue> issues_of(std::string text) {
    const auto dossier =
        Dossier::parse("d.yaml", std::move(text), {}, support::small_evidence_book(), {.today = "2026-11-26"});
    return dossier ? dossier.value().warnings() : dossier.issues();
}

std::string faults_of(std::string text) {
    return support::dump_places(issues_of(std::move(text)));
}

struct Row {
    std::string_view name, part, reading, want;
};

// One reading, the third line.
constexpr Row kReadings[] = {
    {"right", "body", "method: edge, outcome: yarns", ""},
    {"right_quantity", "body", "method: section, coat: 0.21 +- 0.02 mm, total: 1 +- 0.1 mm", ""},
    {"right_repeats", "body", "method: section, coat: '0.20, 0.22, 0.21 mm', total: 1.0-1.2 mm", ""},
    {"no_method", "body", "outcome: yarns", "3:1 missing-key"},
    {"unknown_method", "body", "method: edeg, outcome: yarns", "3:10 unknown-method"},
    {"unknown_outcome", "body", "method: edge, outcome: yarn", "3:25 unknown-outcome"},
    {"outcome_of_a_meter", "body", "method: section, outcome: thick", "3:28 unknown-outcome"},
    {"wrong_part", "hardware", "method: edge, outcome: yarns", "3:10 wrong-part"},
    {"wrong_part_whole", "whole", "method: edge, outcome: yarns", "3:10 wrong-part"},
    {"unknown_key", "body", "method: edge, outcome: yarns, photos: a.jpg", "3:32 unknown-key"},
    {"photo_is_a_list", "body", "method: edge, outcome: yarns, photo: [a.jpg]", "3:39 wrong-type"},
    {"nothing_read", "body", "method: edge, date: 2026-08-20", "3:1 empty-reading"},
    {"quantity_of_another_method", "body", "method: edge, outcome: yarns, coat: 0.2 +- 0.1 mm", "3:32 unread-quantity"},
    {"composition_of_another_method", "body", "method: edge, outcome: yarns, composition: {Zn: exactly 3 %}",
     "3:32 unread-quantity"},
    {"computed_is_not_written", "hardware", "method: weighing, density: 6.6 +- 0.1 g/cm3",
     "3:1 empty-reading; 3:20 unread-quantity"},
    {"content_is_written_composition", "hardware", "method: xrf, content: {Zn: exactly 3 %}",
     "3:1 empty-reading; 3:15 unread-quantity"},
    // days
    {"day_in_the_future", "body", "method: edge, outcome: yarns, date: 2026-11-27", "3:38 future-date"},
    {"today", "body", "method: edge, outcome: yarns, date: 2026-11-26", ""},
    {"no_such_day", "body", "method: edge, outcome: yarns, date: 2026-02-30", "3:38 wrong-type"},
    {"day_in_words", "body", "method: edge, outcome: yarns, date: yesterday", "3:38 wrong-type"},
    // quantities
    {"no_uncertainty", "body", "method: section, coat: 0.21 mm, total: 1 +- 0.1 mm", "3:25 no-uncertainty"},
    {"no_unit", "body", "method: section, coat: 0.21 +- 0.02, total: 1 +- 0.1 mm", "3:25 missing-unit"},
    {"unknown_unit", "body", "method: section, coat: 0.21 +- 0.02 millis, total: 1 +- 0.1 mm", "3:25 unknown-unit"},
    {"wrong_unit", "body", "method: section, coat: 0.21 +- 0.02 g, total: 1 +- 0.1 mm", "3:25 wrong-unit"},
    {"negative", "body", "method: section, coat: -0.21 +- 0.02 mm, total: 1 +- 0.1 mm", "3:25 negative"},
    {"zero_uncertainty", "body", "method: section, coat: 0.21 +- 0 mm, total: 1 +- 0.1 mm", "3:25 bad-uncertainty"},
    {"two_repeats", "body", "method: section, coat: '0.20, 0.22 mm', total: 1 +- 0.1 mm", "3:25 too-few-repeats"},
    {"decimal_comma", "body", "method: section, coat: '0,21 +- 0,02 mm', total: 1 +- 0.1 mm", "3:25 decimal-comma"},
    {"range_upside_down", "body", "method: section, coat: 0.3-0.2 mm, total: 1 +- 0.1 mm", "3:25 range-reversed"},
    {"open_ended", "body", "method: section, coat: '> 0.2 mm', total: 1 +- 0.1 mm", "3:25 open-ended"},
    {"words", "body", "method: section, coat: thin, total: 1 +- 0.1 mm", "3:25 bad-quantity"},
    {"quantity_is_a_list", "body", "method: section, coat: [0.2 mm], total: 1 +- 0.1 mm", "3:25 wrong-type"},
    {"coat_above_total", "body", "method: section, coat: 1.2 +- 0.1 mm, total: 0.4 +- 0.1 mm", "3:25 coat-above-total"},
    {"coat_just_above_total", "body", "method: section, coat: 1.08 +- 0.05 mm, total: 1.00 +- 0.05 mm",
     "3:25 coat-above-total"},
    {"total_of_nothing", "body", "method: section, coat: exactly 0 mm, total: exactly 0 mm", "3:1 not-computable"},
    // weighing
    {"weights_swapped", "hardware",
     "method: weighing, in_air: 17 +- 0.01 g, in_water: 21 +- 0.01 g, water: 21 +- 1 degC", "3:52 floats"},
    {"weights_equal", "hardware", "method: weighing, in_air: 17 +- 0.01 g, in_water: 17 +- 0.01 g, water: 21 +- 1 degC",
     "3:52 floats"},
    {"negative_weight", "hardware",
     "method: weighing, in_air: 17 +- 0.01 g, in_water: -2 +- 0.01 g, water: 21 +- 1 degC", "3:52 negative"},
    {"no_weight_in_water", "hardware",
     "method: weighing, in_air: 17 +- 0.01 g, in_water: exactly 0 g, water: 21 +- 1 degC", "3:1 not-computable"},
    {"boiling_water", "hardware",
     "method: weighing, in_air: 21 +- 0.01 g, in_water: 17 +- 0.01 g, water: 100 +- 1 degC", "3:73 out-of-range"},
    {"no_temperature", "hardware", "method: weighing, in_air: 21 +- 0.01 g, in_water: 17 +- 0.01 g",
     "3:1 missing-quantity"},
    // compositions and shares
    {"unknown_element", "hardware", "method: xrf, composition: {Zi: 95 +- 1 %}", "3:29 unknown-element"},
    {"element_share_above_100", "hardware", "method: xrf, composition: {Zn: 101 +- 1 %}", "3:33 above-100"},
    {"negative_share", "hardware", "method: xrf, composition: {Zn: -1 +- 1 %}", "3:33 negative"},
    {"shares_above_100", "hardware", "method: xrf, composition: {Zn: 95 +- 1 %, Al: 10 +- 1 %}", "3:28 above-100"},
    {"shares_above_100_within_uncertainty", "hardware", "method: xrf, composition: {Zn: 97 +- 1 %, Al: 5 +- 1 %}", ""},
    {"share_without_uncertainty", "hardware", "method: xrf, composition: {Zn: 95 %}", "3:33 no-uncertainty"},
    {"composition_is_a_text", "hardware", "method: xrf, composition: zinc", "3:28 wrong-type"},
    {"composition_is_empty", "hardware", "method: xrf, composition: {}", "3:28 empty-reading"},
    {"unknown_fibre", "lining", "method: fibres, shares: {coton: 60 +- 2 %}", "3:27 unknown-concept"},
    {"fibres_above_100", "lining", "method: fibres, shares: {cotton: 60 +- 2 %, polyester: 60 +- 2 %}",
     "3:26 above-100"},
    // colours
    {"colour_without_after", "body", "method: colour, before: {L: exactly 5, a: exactly 5, b: exactly 5}",
     "3:1 missing-quantity"},
    {"colour_without_b", "body",
     "method: colour, before: {L: exactly 5, a: exactly 5}, after: {L: exactly 5, a: exactly 5, b: exactly 5}",
     "3:26 missing-key"},
    {"colour_as_a_list", "body", "method: colour, before: [5, 5, 5], after: {L: exactly 5, a: exactly 5, b: exactly 5}",
     "3:26 wrong-type"},
    {"whiter_than_white", "body",
     "method: colour, before: {L: exactly 101, a: exactly 5, b: exactly -201}, after: {L: exactly -5, a: 5, b: exactly "
     "5}",
     "3:30 out-of-range; 3:60 out-of-range; 3:86 negative; 3:101 no-uncertainty"},
    // sizes that no bench has
    {"beyond_a_double", "body", "method: section, coat: 1e400 +- 1 mm, total: 1 +- 0.1 mm", "3:25 out-of-range"},
    {"beyond_the_formula", "body", "method: section, coat: 1e200 +- 1e308 mm, total: 1e-200 +- 1e308 mm",
     "3:1 not-computable"},
};
class ReadingFaults : public testing::TestWithParam<Row> {};
TEST_P(ReadingFaults, AreToldWithTheirPlace) {
    const auto issues = issues_of("sample: {}\nparts: {" + std::string(GetParam().part) + ": {readings: [\n{" +
                                  std::string(GetParam().reading) + "}]}}\n");
    EXPECT_EQ(support::dump_places(issues), GetParam().want);
    for (const Issue& issue : issues) {
        EXPECT_FALSE(issue.message.empty());
        if (issue.code == "wrong-type") continue;  // the message says what was expected
        EXPECT_FALSE(issue.hint.empty()) << issue.code;
    }
}
INSTANTIATE_TEST_SUITE_P(Rows, ReadingFaults, testing::ValuesIn(kReadings),
                         [](const auto& row) { return std::string(row.param.name); });

struct FileRow {
    std::string_view name, text, want;
};
constexpr FileRow kFiles[] = {
    {"empty", "", "0:0 wrong-type"},
    {"list", "- sample\n", "1:1 wrong-type"},
    {"not_yaml", "sample: [\n", "1:9 yaml-syntax"},
    {"alias", "sample: &a {what: bag}\nlisting: *a\n", "1:9 alias; 2:10 alias"},
    {"keys_with_nothing_behind_them", "sample: {what: , seller: }\n", ""},
    {"no_sample", "parts: {}\n", "1:1 missing-key"},
    {"sample_is_a_text", "sample: bag\n", "1:9 wrong-type"},
    {"unknown_key", "sample: {}\npart: {}\n", "2:1 unknown-key"},
    {"unknown_key_of_sample", "sample: {prize: 3}\n", "1:10 unknown-key"},
    {"unknown_category", "sample: {category: bags}\n", "1:20 unknown-category"},
    {"unknown_condition", "sample: {condition: worn}\n", "1:21 unknown-condition"},
    {"negative_months", "sample: {months_in_use: -1}\n", "1:25 negative"},
    {"months_in_words", "sample: {months_in_use: two}\n", "1:25 wrong-type"},
    {"a_century_of_months", "sample: {months_in_use: 1201}\n", "1:25 out-of-range"},
    {"bought_in_the_future", "sample: {bought: 2027-01-01}\n", "1:18 future-date"},
    {"bought_on_no_day", "sample: {bought: 2026-13-01}\n", "1:18 wrong-type"},
    {"price_is_a_list", "sample: {price: [1, 2]}\n", "1:17 wrong-type"},
    // parts
    {"parts_is_a_list", "sample: {}\nparts: [body]\n", "2:8 wrong-type"},
    {"unknown_part", "sample: {}\nparts: {pocket: {readings: []}}\n", "2:9 unknown-part"},
    {"fault_below_an_unknown_part",
     "sample: {}\nparts: {pocket: {readings: [{method: edge, outcome: yarns, date: yesterday}, {method: edeg}]}}\n",
     "2:9 unknown-part; 2:66 wrong-type; 2:87 unknown-method"},
    {"part_is_a_list", "sample: {}\nparts: {body: [x]}\n", "2:15 wrong-type"},
    {"unknown_key_of_a_part", "sample: {}\nparts: {body: {reading: []}}\n", "2:15 no-readings; 2:16 unknown-key"},
    {"readings_is_a_mapping", "sample: {}\nparts: {body: {readings: {a: b}}}\n", "2:26 wrong-type"},
    {"reading_is_a_text", "sample: {}\nparts: {body: {readings: [edge]}}\n", "2:27 wrong-type"},
    {"part_twice", "sample: {}\nparts:\n  body: {}\n  body: {}\n", "4:3 duplicate-key"},
    // listing
    {"listing_is_a_text", "sample: {}\nlisting: a tote\n", "2:10 wrong-type"},
    {"listing_without_text", "sample: {}\nlisting: {region: eu}\n", "2:10 missing-key"},
    {"unknown_key_of_listing", "sample: {}\nlisting: {title: A tote}\n", "2:10 missing-key; 2:11 unknown-key"},
    {"captured_in_the_future", "sample: {}\nlisting: {captured: 2027-01-01, name: A}\n", "2:21 future-date"},
    {"file_and_fields", "sample: {}\nlisting: {file: no-such-file.txt, name: A}\n", "2:17 unreadable; 2:35 both-ways"},
    {"attributes_is_a_list", "sample: {}\nlisting: {name: A, attributes: [x]}\n", "2:32 wrong-type"},
    {"attribute_is_a_list", "sample: {}\nlisting: {name: A, attributes: {Lining: [x]}}\n", "2:41 wrong-type"},
    // confirmed
    {"confirmed_is_a_text", "sample: {}\nconfirmed: yes\n", "2:12 wrong-type"},
    {"confirmed_part_is_a_text", "sample: {}\nconfirmed: {body: cotton}\n", "2:19 wrong-type"},
    {"confirmed_unknown_part", "sample: {}\nconfirmed: {pocket: {sheet: cotton}}\n", "2:13 unknown-part"},
    {"confirmed_unknown_frame", "sample: {}\nconfirmed: {body: {sheets: cotton}}\n", "2:20 unknown-frame"},
    {"confirmed_unknown_candidate", "sample: {}\nconfirmed: {body: {sheet: coton}}\n", "2:27 unknown-candidate"},
    {"confirmed_of_another_part", "sample: {}\nconfirmed: {hardware: {sheet: cotton}}\n", "2:24 wrong-part"},
    // priors
    {"priors_is_a_list", "sample: {}\npriors: [x]\n", "2:9 wrong-type"},
    {"prior_unknown_frame", "sample: {}\npriors: {sheets: {cotton: 3}}\n", "2:10 unknown-frame"},
    {"prior_unknown_candidate", "sample: {}\npriors: {sheet: {coton: 3}}\n", "2:18 unknown-candidate"},
    {"prior_of_nothing", "sample: {}\npriors: {sheet: {cotton: 0}}\n", "2:26 bad-prior"},
    {"prior_in_words", "sample: {}\npriors: {sheet: {cotton: high}}\n", "2:26 wrong-type"},
    {"priors_leave_nothing", "sample: {}\npriors: {sheet: {cotton: 60, suede: 40}}\n", "2:17 prior-sum"},
    {"all_priors_named", "sample: {}\npriors: {metal: {zinc-alloy: 60, brass: 40}}\n", ""},
    {"all_priors_named_short_of_100", "sample: {}\npriors: {metal: {zinc-alloy: 60, brass: 30}}\n", "2:17 prior-sum"},
};
class DossierFaults : public testing::TestWithParam<FileRow> {};
TEST_P(DossierFaults, AreToldWithTheirPlace) {
    EXPECT_EQ(faults_of(std::string(GetParam().text)), GetParam().want);
}
INSTANTIATE_TEST_SUITE_P(Rows, DossierFaults, testing::ValuesIn(kFiles),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(DossierFaults, OfSeveralKindsAreAllTold) {
    EXPECT_EQ(faults_of("sample: {category: bags}\nparts: {body: {readings: [\n{method: edge, outcome: x},\n{method: "
                        "section, coat: 1 mm}]}}\n"),
              "1:20 unknown-category; 3:25 unknown-outcome; 4:1 missing-quantity; 4:25 no-uncertainty");
}

std::string with_readings(std::size_t count) {
    std::string text = "sample: {}\nparts:\n  body:\n    readings:\n";
    for (std::size_t i = 0; i < count; ++i) {
        text += "      - {method: edge, outcome: yarns, note: place " + std::to_string(i) + "}\n";
    }
    return text;
}

TEST(DossierFaults, AThousandReadingsAreEnough) {
    EXPECT_EQ(faults_of(with_readings(kMaxReadings)), "");
    EXPECT_EQ(faults_of(with_readings(kMaxReadings + 5)), "1005:9 too-many-readings");
}

TEST(DossierFaults, NameTheOutcomesOfTheMethod) {
    const auto issues = issues_of("sample: {}\nparts: {body: {readings: [{method: edge, outcome: yarn}]}}\n");
    ASSERT_EQ(issues.size(), 1U);
    EXPECT_EQ(issues[0].hint, "did you mean `yarns`? one of fibre, yarns");
}

TEST(DossierFaults, SayHowAnUncertaintyIsWritten) {
    const auto issues =
        issues_of("sample: {}\nparts: {body: {readings: [{method: section, total: exactly 1 mm, coat: 0.2 mm}]}}\n");
    ASSERT_EQ(issues.size(), 1U);
    EXPECT_NE(issues[0].hint.find("write `0.21 \xC2\xB1 0.02 mm` (k = 2)"), std::string::npos) << issues[0].hint;
}

}  // namespace
}  // namespace grainside::evidence
