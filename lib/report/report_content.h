// All that a dossier's report says, before it takes a form: the writers of HTML, Markdown, JSON and CSV differ in
// layout and escaping only. Text of the dossier and its listing stands here as it is, hostile or not. Plain data.
#ifndef GRAINSIDE_REPORT_REPORT_CONTENT_H
#define GRAINSIDE_REPORT_REPORT_CONTENT_H

#include <array>
#include <cstddef>
#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "evidence/picture_files.h"
#include "grainside/cost.h"
#include "grainside/judge.h"
#include "report/evidence_text.h"
#include "report/excerpts.h"
#include "report/money_text.h"

namespace grainside::report {

// Words of the listing with the number of the verdict on them.
struct VerdictMark {
    MarkedSpan span;
    std::uint32_t verdict = 0;
};

struct ReportField {
    std::string label;  // "description", "Lining"
    std::string text;
    std::vector<VerdictMark> marks;  // sorted by start, then longest first
};

struct ReportReading {
    Part part = Part::body;
    std::string method, date, result, note;
    std::size_t picture = kNoPicture;  // index into ReportContent::pictures
    std::string weight;                // "20.3 decibans against it, 107 to 1"; where it weighs for a verdict
    double decibans = 0;

    static constexpr std::size_t kNoPicture = static_cast<std::size_t>(-1);
};

struct ReportSource {
    std::string text;
    bool from_memory = false;
};

struct ReportVerdict {
    std::uint32_t number = 0;  // from 1, through the whole report
    Part part = Part::whole;
    Kind kind = Kind::material;
    Grade grade = Grade::unsupported;
    Basis basis = Basis::evidence;
    struct Words {
        std::string text;
        std::string field;
    };
    std::vector<Words> words;
    std::string says;  // "goat leather", "not bonded leather"
    std::string because;
    std::string against;      // the statement that a cross-check sets it against
    std::string say_instead;  // wording that passes the check; empty: none is known
    std::string remedy;       // what to do where none is
    double holds = 0, fails = 0, open = 1;
    std::string belief;  // in words; empty where nothing was read
    bool contradictory = false;
    std::vector<ReportReading> readings;
    std::vector<std::string> limits;
    std::vector<std::string> changes;
    std::vector<std::string> would_support;  // what the book demands, of an unsupported claim
    std::string on_file;                     // what a document makes of it; empty where none is to be told
    std::vector<ReportSource> sources;
    std::string rule;  // id of the rule on its words; empty where readings alone speak
};

struct ReportAnswer {
    std::string name;
    double before = 0;
    double after = 0;
};
// One question about a part: "what sheet material it is".
struct ReportQuestion {
    Part part = Part::body;
    std::string asks;
    std::vector<ReportAnswer> answers;  // likeliest first; the unlikely ones left out
    bool contradictory = false;
};

struct ReportMethod {
    std::string title;
    std::vector<ReportSource> sources;
};

struct ReportCost {
    CostEstimate estimate;
    MoneyStyle style;
    std::vector<ReportSource> sources;                // of the ranges and rates of the book
    std::map<std::uint32_t, std::string> source_ids;  // of the same, by their index in the rule book
};

struct ReportContent {
    std::string id, what, seller, bought, price, condition;
    double months_in_use = 0;

    bool has_listing = false;
    std::string captured, listing_file, listing_sha256, region, language;
    std::vector<ReportField> fields;

    std::vector<ReportVerdict> verdicts;    // part by part
    std::array<std::size_t, 6> of_grade{};  // `verdicts` by Grade
    std::vector<std::uint32_t> proofs_met;  // CheckResult::proofs_met
    Grade worst = Grade::consistent;

    std::vector<ReportQuestion> questions;
    std::vector<ReportReading> readings;  // all of the dossier, in written order
    std::vector<ReportReading> unasked;   // those that no claim asks about
    std::vector<evidence::PictureFile> pictures;

    TestPlan plan;
    ReportCost cost;
    std::vector<Caution> cautions;      // of every method named here, planned ones too
    std::vector<ReportMethod> methods;  // on record

    std::string decision_rule, markets, day;
    double decided_at = 0;
    std::string dossier_sha256;
    std::vector<std::string> files;  // that the dossier names, as one opens them from here
    std::string rule_book;           // digest
    std::size_t rules = 0, evidence_methods = 0, limits = 0;
    std::string version;
};

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_REPORT_CONTENT_H
