// Proofs on file: a bad entry for each fault with its exact place, which documents lift a finding and why others do
// not, and what they make of a verdict. What a document must name follows ISO/IEC 17025:2017, 7.8.2 (title, laboratory,
// date, method, result), from memory.
#include "grainside/filed_proofs.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <memory>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>

#include "grainside/judge.h"
#include "support/built_in_evidence.h"
#include "support/fault_dump.h"
#include "support/temporary_folder.h"
#include "verdict/proof_search.h"

namespace grainside {
namespace {

// The default book with demands of its own, so that what the book demands may grow.
const RuleBook& book() {
    static const RuleBook shared = [] {
        const support::TemporaryFolder folder;
        std::filesystem::copy(GRAINSIDE_RULES_FOLDER, folder.path(), std::filesystem::copy_options::recursive);
        folder.write(
            "demands.yaml",
            "- {supports: waterproof, of: textile, standard: ISO 811, number: n, sources: own-reading}\n"
            "- {supports: waterproof, standard: IEC 60529 (on the very bag), number: n, sources: own-reading}\n"
            "- {supports: water-resistant, standard: 'ISO 5403-1, ISO 20344', number: n, sources: own-reading}\n");
        auto loaded = RuleBook::load(folder.path());
        if (!loaded) throw std::runtime_error(support::dump_files(loaded.issues()));
        return std::move(loaded).value();
    }();
    return shared;
}

constexpr std::string_view kHead = "document: Report 1, laboratory: House, date: 2026-03-02, ";

std::string entry(std::string_view rest) {
    return "- {" + std::string(kHead) + std::string(rest) + "}\n";
}

struct FaultRow {
    std::string_view name;
    std::string text;
    std::string_view want;
};

// SHA-256 of "abc": FIPS 180-4, example B.1.
constexpr std::string_view kAbc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

const FaultRow kFaults[] = {
    {"empty", "", ""},
    {"empty_list", "[]\n", ""},
    {"right", entry("scope: {says: waterproof}"), ""},
    {"right_in_full",
     entry("expires: 2026-03-02, scope: {listings: [a, b], part: lining, says: [waterproof]}, standard: ISO 811, "
           "result: 2 m, file: below/abc.pdf, digest: 'sha256:" +
           std::string(kAbc) + "'"),
     ""},
    {"no_list", "document: x\n", "1:1 wrong-type"},
    {"no_mapping", "- x\n", "1:3 wrong-type"},
    {"unknown_key", entry("scope: {says: waterproof}, lab: x"), "1:88 unknown-key"},
    {"unknown_key_of_the_scope", entry("scope: {says: waterproof, listing: a}"), "1:87 unknown-key"},
    {"nothing", "- {standard: s}\n", "1:3 missing-key; 1:3 missing-key; 1:3 missing-key; 1:3 missing-key"},
    {"empty_document", "- {document: '', laboratory: L, date: 2026-01-01, scope: {says: waterproof}}\n",
     "1:14 missing-key"},
    {"no_says", entry("scope: {part: body}"), "1:68 missing-key"},
    {"empty_says", entry("scope: {says: []}"), "1:75 missing-key"},
    {"unknown_concept", entry("scope: {says: [waterproof, watertite]}"), "1:88 unknown-concept"},
    // Of a key the place of the key.
    {"unknown_part", entry("scope: {says: waterproof, part: pocket}"), "1:87 unknown-part"},
    {"empty_listings", entry("scope: {says: waterproof, listings: []}"), "1:97 missing-key"},
    {"no_day", "- {document: D, laboratory: L, date: 2026-02-30, scope: {says: waterproof}}\n", "1:38 wrong-type"},
    {"runs_out_before", entry("expires: 2026-03-01, scope: {says: waterproof}"), "1:70 bad-date"},
    {"no_last_day", entry("expires: soon, scope: {says: waterproof}"), "1:70 wrong-type"},
    {"list_for_a_result", entry("scope: {says: waterproof}, result: [a]"), "1:96 wrong-type"},
    {"no_such_file", entry("scope: {says: waterproof}, file: x.pdf"), "1:94 unreadable"},
    {"file_out_of_the_folder", entry("scope: {says: waterproof}, file: ../x.pdf"), "1:94 unreadable"},
    {"file_with_a_root", entry("scope: {says: waterproof}, file: /etc/hostname"), "1:94 outside-folder"},
    {"folder_for_a_file", entry("scope: {says: waterproof}, file: below"), "1:94 unreadable"},
    {"digest_of_nothing", entry("scope: {says: waterproof}, digest: x"), "1:96 missing-key"},
    {"bad_digest", entry("scope: {says: waterproof}, file: below/abc.pdf, digest: abc"), "1:117 bad-digest"},
    {"other_digest", entry("scope: {says: waterproof}, file: below/abc.pdf, digest: " + std::string(63, '0') + "1"),
     "1:117 digest-differs"},
    {"twice", entry("scope: {says: waterproof}") + entry("scope: {says: [waterproof]}, result: r"),
     "2:3 duplicate-proof"},
    {"twice_for_other_listings",
     entry("scope: {says: waterproof, listings: [a]}") + entry("scope: {says: waterproof, listings: [b]}"), ""},
    {"too_long", entry("scope: {says: waterproof}, result: " + std::string(501, 'x')), "1:96 too-long"},
    {"all_at_once",
     entry("scope: {says: watertite, part: pocket}, file: x.pdf") + "- {document: D, scope: {says: waterproof}}\n",
     "1:75 unknown-concept; 1:86 unknown-part; 1:107 unreadable; 2:3 missing-key; 2:3 missing-key"},
};

class ProofFaults : public testing::TestWithParam<FaultRow> {};

TEST_P(ProofFaults, AreToldWithTheirPlace) {
    const support::TemporaryFolder folder;
    folder.write("below/abc.pdf", "abc");
    const auto read = FiledProofs::parse("filed.yaml", GetParam().text, folder.path(), book());
    EXPECT_EQ(read ? std::string() : support::dump_places(read.issues()), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, ProofFaults, testing::ValuesIn(kFaults),
                         [](const auto& row) { return std::string(row.param.name); });

std::shared_ptr<const FiledProofs> filed(const std::string& text) {
    auto read = FiledProofs::parse("filed.yaml", text, ".", book());
    EXPECT_TRUE(read) << support::dump_places(read.issues());
    return std::make_shared<const FiledProofs>(std::move(read).value());
}

// "lining waterproof: lifted" or "hardware nickel-free: unsupported, Report 1 ran out ...": each finding and lifted
// claim.
std::string dump(const CheckResult& result) {
    std::string text;
    const auto add = [&](std::uint32_t claim, std::string_view what) {
        if (!text.empty()) text += "; ";
        const Claim& on = result.mentions[claim];
        text.append(name_of(on.part)).append(" ").append(book().concept_name(on.says)).append(": ").append(what);
    };
    for (const Finding& finding : result.findings) {
        add(finding.claim, name_of(finding.grade));
        const ClaimOnFile* filed = on_file(result, finding.claim);
        if (filed == nullptr || filed->outcome == ProofOutcome::supports) continue;
        text += ", " + why_not_lifted(book(), result.proofs->all()[filed->proof], filed->outcome,
                                      result.mentions[finding.claim].says);
    }
    for (const ClaimOnFile& one : result.on_file) {
        if (one.lifted) add(one.claim, "lifted by " + result.proofs->all()[one.proof].document);
    }
    return text;
}

struct LiftRow {
    std::string_view name;
    std::string_view listing;  // its description
    std::string proofs;
    std::string_view want;
    std::string_view day = "2026-11-26";
    std::string_view id = "tote-1";
    std::size_t met = 1;
};

constexpr std::string_view kLining = "Lining: waterproof polyester.";
constexpr std::string_view kNo = "lining waterproof: unsupported";

const LiftRow kLifts[] = {
    {"lifted", kLining, entry("scope: {says: waterproof}, standard: ISO 811, result: 2 m"),
     "lining waterproof: lifted by Report 1"},
    {"no_standard_named", kLining, entry("scope: {says: waterproof}, result: 2 m"),
     "lining waterproof: lifted by Report 1"},
    {"standard_with_prefix_and_year", kLining,
     entry("scope: {says: waterproof}, standard: 'DIN EN ISO 811:2018', result: 2 m"),
     "lining waterproof: lifted by Report 1"},
    {"second_standard", kLining, entry("scope: {says: waterproof}, standard: IEC 60529, result: IPX4"),
     "lining waterproof: lifted by Report 1"},
    {"other_standard", kLining, entry("scope: {says: waterproof}, standard: ISO 5403, result: 2 m"),
     "lining waterproof: unsupported, Report 1 names ISO 5403; ISO 811 or IEC 60529 (on the very bag) is asked"},
    {"no_result", kLining, entry("scope: {says: waterproof}, standard: ISO 811"),
     "lining waterproof: unsupported, Report 1 states no result; a number is asked"},
    {"nothing_is_demanded", "Rivets: scratch resistant.", entry("scope: {says: scratch-resistant}"),
     "hardware scratch-resistant: lifted by Report 1"},
    // days
    {"first_day", kLining, entry("scope: {says: waterproof}, result: r"), "lining waterproof: lifted by Report 1",
     "2026-03-02"},
    {"day_before", kLining, entry("scope: {says: waterproof}, result: r"),
     "lining waterproof: unsupported, Report 1 holds only from 2026-03-02 on", "2026-03-01"},
    {"last_day", kLining, entry("expires: 2026-11-26, scope: {says: waterproof}, result: r"),
     "lining waterproof: lifted by Report 1"},
    {"day_after", kLining, entry("expires: 2026-11-25, scope: {says: waterproof}, result: r"),
     "lining waterproof: unsupported, Report 1 ran out on 2026-11-25"},
    {"no_day_asked", kLining, entry("expires: 2026-03-03, scope: {says: waterproof}, result: r"),
     "lining waterproof: lifted by Report 1", ""},
    // parts
    {"that_part", kLining, entry("scope: {says: waterproof, part: lining}, result: r"),
     "lining waterproof: lifted by Report 1"},
    {"one_of_the_parts", kLining, entry("scope: {says: waterproof, part: [strap, lining]}, result: r"),
     "lining waterproof: lifted by Report 1"},
    {"whole_covers_any", kLining, entry("scope: {says: waterproof, part: whole}, result: r"),
     "lining waterproof: lifted by Report 1"},
    {"other_part", kLining, entry("scope: {says: waterproof, part: strap}, result: r"), kNo, "2026-11-26", "tote-1", 0},
    {"part_does_not_cover_whole", "This bag is waterproof.",
     entry("scope: {says: waterproof, part: lining}, result: r"), "whole waterproof: unsupported", "2026-11-26",
     "tote-1", 0},
    // listings
    {"that_listing", kLining, entry("scope: {says: waterproof, listings: [x, tote-1]}, result: r"),
     "lining waterproof: lifted by Report 1"},
    {"other_listing", kLining, entry("scope: {says: waterproof, listings: [tote]}, result: r"), kNo, "2026-11-26",
     "tote-1", 0},
    {"file_name", kLining, entry("scope: {says: waterproof, listings: [tote.txt]}, result: r"),
     "lining waterproof: lifted by Report 1", "2026-11-26", "a/tote.txt:1"},
    {"file_name_without_ending", kLining, entry("scope: {says: waterproof, listings: [tote]}, result: r"),
     "lining waterproof: lifted by Report 1", "2026-11-26", "a/tote.txt:1"},
    {"id_with_a_slash_is_no_file", kLining, entry("scope: {says: waterproof, listings: [tote]}, result: r"), kNo,
     "2026-11-26", "a/tote", 0},
    // concepts
    {"kind_of_it", "Shell: sweat-resistant finish.", entry("scope: {says: water-resistant}, result: r"),
     "body sweat-resistant: lifted by Report 1"},
    {"not_what_it_is_a_kind_of", "Lining: water resistant polyester.",
     entry("scope: {says: sweat-resistant}, result: r"), "lining water-resistant: unsupported", "2026-11-26", "tote-1",
     0},
    {"one_of_several", kLining, entry("scope: {says: [leather, waterproof]}, result: r"),
     "lining waterproof: lifted by Report 1"},
    // several documents
    {"one_that_supports_goes_first", kLining,
     entry("expires: 2026-03-03, scope: {says: waterproof}, result: r") +
         "- {document: Report 2, laboratory: L, date: 2026-01-01, scope: {says: waterproof}, result: r}\n",
     "lining waterproof: lifted by Report 2", "2026-11-26", "tote-1", 2},
    {"else_the_first", kLining,
     entry("scope: {says: waterproof}, result: r") +
         "- {document: Report 2, laboratory: L, date: 2026-01-01, scope: {says: waterproof}, result: r}\n",
     "lining waterproof: lifted by Report 1", "2026-11-26", "tote-1", 2},
    // what no document lifts
    {"misleading_stays", "Body: vegan leather.", entry("scope: {says: [vegan-leather, material]}, result: r"),
     "body vegan-leather: misleading"},
    {"vague_stays", "An eco-friendly bag.", entry("scope: {says: eco-friendly}, result: r"),
     "whole eco-friendly: vague"},
    {"denied_is_not_covered", "The lining is not waterproof.", entry("scope: {says: waterproof}, result: r"), "",
     "2026-11-26", "tote-1", 0},
    {"proved_in_the_text", "Lining: waterproof to 1,500 mm (ISO 811).", entry("scope: {says: waterproof}, result: r"),
     ""},
    // What is answered silences nothing beside it.
    {"praise_beside_it_counts_again", "Premium waterproof leather body.",
     entry("scope: {says: waterproof}, standard: ISO 811, result: r"),
     "body premium-praise: vague; body waterproof: lifted by Report 1"},
};

class ProofLifts : public testing::TestWithParam<LiftRow> {};

TEST_P(ProofLifts, WhatTheyAnswer) {
    const LiftRow& row = GetParam();
    Checker checker(book(), {.on = std::string(row.day), .proofs = filed(row.proofs)});
    Listing listing;
    listing.id = row.id;
    listing.record = 1;
    listing.fields.push_back({"description", row.listing});
    const CheckResult& result = checker.check(listing);
    EXPECT_EQ(dump(result), row.want);
    EXPECT_EQ(result.proofs_met.size(), row.met);
}

INSTANTIATE_TEST_SUITE_P(Rows, ProofLifts, testing::ValuesIn(kLifts),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(Proofs, AreAskedAnewForTheOptionsOfACheckAgain) {
    const auto proofs = filed(entry("expires: 2026-12-31, scope: {says: waterproof}, standard: ISO 811, result: r"));
    Listing listing;
    listing.id = "tote-1";
    listing.fields.push_back({"description", kLining});
    Checker checker(book(), {.on = "2026-11-26"});
    EXPECT_EQ(dump(checker.check(listing)), "lining waterproof: unsupported");
    EXPECT_EQ(dump(checker.check_again(listing, {.on = "2026-11-26", .proofs = proofs})),
              "lining waterproof: lifted by Report 1");
    EXPECT_EQ(dump(checker.check_again(listing, {.on = "2027-01-01", .proofs = proofs})),
              "lining waterproof: unsupported, Report 1 ran out on 2026-12-31");
    EXPECT_EQ(dump(checker.check_again(listing, {.on = "2027-01-01", .proofs = proofs, .proofs_on = "2026-12-31"})),
              "lining waterproof: lifted by Report 1");
    const CheckResult& without = checker.check_again(listing, {.on = "2026-11-26"});
    EXPECT_EQ(dump(without), "lining waterproof: unsupported");
    EXPECT_EQ(without.proofs, nullptr);
    EXPECT_TRUE(without.proofs_met.empty());
}

struct StandardRow {
    std::string_view name, standard, asked;
    bool follows;
};

constexpr StandardRow kStandards[] = {
    {"same", "ISO 811", "ISO 811", true},
    {"written_otherwise", "iso-811", "ISO 811", true},
    {"with_year", "ISO 811:2018", "ISO 811", true},
    {"with_prefix", "BS EN ISO 811", "ISO 811", true},
    {"part_of_a_series", "ISO 5403-1", "ISO 5403", true},
    {"series_for_a_part", "ISO 5403", "ISO 5403-1", false},
    {"other_part", "ISO 5403-2", "ISO 5403-1", false},
    {"longer_number", "ISO 8110", "ISO 811", false},
    {"other_body", "EN 811", "ISO 811", false},
    {"second_alternative", "ISO 20344", "ISO 5403-1, ISO 20344", true},
    {"alternative_behind_or", "ISO 20344", "ISO 5403-1 or ISO 20344", true},
    {"alternative_behind_a_slash", "AATCC TM 22", "ISO 4920 / AATCC TM 22", true},
    {"brackets_do_not_count", "IEC 60529", "IEC 60529 (on the very bag)", true},
    {"nothing_is_no_standard", "", "ISO 811", false},
    {"nothing_asked", "ISO 811", "()", false},
};

TEST(ProofStandards, AreComparedByTheirWords) {
    for (const StandardRow& row : kStandards) {
        EXPECT_EQ(verdict::follows_standard(row.standard, row.asked), row.follows) << row.name;
    }
}

TEST(Proofs, ThatCoveredNothingAreTold) {
    const auto proofs = filed(entry("scope: {says: waterproof}, result: r") + entry("scope: {says: rust-proof}"));
    Checker checker(book(), {.on = "2026-11-26", .proofs = proofs});
    Listing listing;
    listing.fields.push_back({"description", kLining});
    ProofLedger ledger(*proofs);
    ledger.add(checker.check(listing).proofs_met);
    const auto unused = ledger.unused();
    ASSERT_EQ(unused.size(), 1U);
    EXPECT_EQ(unused[0].code, "proof-unused");
    EXPECT_EQ(unused[0].line, 2U);
}

// A dossier of the default book, where the section `proofs` stands behind `parts`.
std::string verdicts_of(const std::string& listing, const std::string& parts, const std::string& proofs,
                        std::string_view today) {
    const Dossier dossier = support::dossier_of("sample: {what: Bag}\nlisting:\n  captured: 2026-01-05\n  " + listing +
                                                "\nparts:\n" + parts + "proofs:\n" + proofs);
    Judge judge(support::built_in_book(), support::built_in_evidence(), {.check = {}, .today = std::string(today)});
    const Judgement& judgement = judge.judge(dossier);
    std::string text;
    for (const Verdict& verdict : judgement.verdicts) {
        const Claim& claim = judgement.check->mentions[verdict.claim];
        text.append(name_of(claim.part)).append(" ");
        text.append(support::built_in_book().concept_name(claim.says)).append(": ");
        text.append(name_of(verdict.grade)).append(", ").append(name_of(verdict.basis));
        for (const std::string_view what : {"supports it", "says otherwise", "ran out"}) {
            if (verdict.because.find(what) != std::string::npos) text.append(", ").append(what);
        }
        text += '\n';
    }
    return text;
}

TEST(Proofs, OfADossierAnswerItsClaims) {
    const std::string unread = "  lining: {readings: []}\n";
    const std::string weave =
        "  body:\n    readings:\n      - {method: cut-edge, outcome: yarns-under-coat, date: 2026-01-06}\n"
        "      - {method: flame-on-fibre, outcome: melts-and-drips, date: 2026-01-06}\n";
    const std::string leather = entry("scope: {says: leather}, result: leather");
    // The listing was captured before the document; the day is today's.
    EXPECT_EQ(verdicts_of("description: \"Lining: waterproof.\"", unread,
                          entry("scope: {says: waterproof}, standard: ISO 811, result: 2 m"), "2026-11-26"),
              "lining waterproof: consistent, evidence, supports it\n");
    EXPECT_EQ(verdicts_of("description: \"Lining: waterproof.\"", unread,
                          entry("expires: 2026-11-25, scope: {says: waterproof}, standard: ISO 811, result: 2 m"),
                          "2026-11-26"),
              "lining waterproof: unsupported, wording, ran out\n");
    // No rule flags it and no reading bears on it.
    EXPECT_EQ(verdicts_of("description: \"Lining: leather.\"", unread, leather, "2026-11-26"),
              "lining leather: consistent, evidence, supports it\n");
    // A reading that decides against wins.
    EXPECT_EQ(verdicts_of("description: \"Body: leather.\"", weave, leather, "2026-11-26"),
              "body leather: contradicted, evidence, says otherwise\n");
}

}  // namespace
}  // namespace grainside
