// SarifWriter: a SARIF log, result by result.
#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <map>
#include <utility>

#include "evidence/dossier_data.h"
#include "grainside/sarif.h"
#include "grainside/source_place.h"
#include "grainside/version.h"
#include "report/concession_text.h"
#include "report/demand_text.h"
#include "report/evidence_text.h"
#include "report/plain_lines.h"
#include "report/proof_record.h"
#include "report/sarif_result.h"
#include "report/sarif_rules.h"
#include "report/sarif_text.h"

namespace grainside {
inline namespace v0 {

using report::JsonWriter;

namespace {

constexpr std::size_t kMostMessageCells = 120;
constexpr std::size_t kMostRelatedReadings = 6;  // as the view shows

std::string_view level_of(Issue::Severity severity) {
    switch (severity) {
        case Issue::Severity::error:
            return "error";
        case Issue::Severity::warning:
            return "warning";
        case Issue::Severity::note:
            break;
    }
    return "note";
}

std::string line_region(std::uint64_t line) {
    return line == 0 ? std::string() : fmt::format("{{\"startLine\":{}}}", line);
}

// Where the dossier has a reading, and what was seen.
report::SarifRelated reading_place(const DossierContext& context, const WeighedEvidence& evidence,
                                   const std::string& dossier) {
    report::SarifRelated related;
    related.message = report::sarif_message_text(fmt::format(
        "{}: {} ({})", name_of(evidence.part), report::reading_line(context, evidence.part, evidence.reading),
        report::weight_text(evidence.decibans, "it")));
    related.artifact = dossier;
    for (const evidence::PartRecord& part : context.dossier.data().parts) {
        if (part.part == evidence.part && evidence.reading < part.readings.size()) {
            related.region = line_region(part.readings[evidence.reading].line);
        }
    }
    return related;
}

// A column of an issue counts bytes, which the log's columns do not: so only its line.
void write_notification(JsonWriter& json, const Issue& issue) {
    json.begin_object();
    json.member("level", level_of(issue.severity));
    json.key("message");
    json.begin_object();
    json.member("text", std::string_view(report::sarif_message_text(
                            issue.hint.empty() ? issue.message : issue.message + "; " + issue.hint)));
    json.end_object();
    if (!issue.code.empty()) {
        json.key("descriptor");
        json.begin_object();
        json.member("id", std::string_view(issue.code));
        json.end_object();
    }
    if (!issue.file.empty() && !report::is_standard_input(issue.file)) {
        json.key("locations");
        json.begin_array();
        json.begin_object();
        json.key("physicalLocation");
        json.begin_object();
        json.key("artifactLocation");
        json.begin_object();
        json.member("uri", std::string_view(report::sarif_uri(issue.file)));
        json.end_object();
        if (issue.line != 0) {
            json.key("region");
            json.begin_object();
            json.member("startLine", std::uint64_t{issue.line});
            json.end_object();
        }
        json.end_object();
        json.end_object();
        json.end_array();
    }
    json.end_object();
}

}  // namespace

struct SarifWriter::State {
    State(const RuleBook& rule_book, const EvidenceBook* evidence, SarifRun what)
        : book(rule_book), rules(rule_book, evidence), run(std::move(what)) {}

    // The object of an artifact location; empty for standard input.
    std::string artifact_of(std::string_view input) {
        if (report::is_standard_input(input)) return {};
        std::string uri = report::sarif_uri(input);
        const auto [place, added] = artifacts.try_emplace(uri, artifacts.size());
        if (added) in_order.push_back(uri);
        std::string text = "{\"uri\":";
        report::append_json_string(text, uri);
        text.append(",\"index\":").append(std::to_string(place->second)).append("}");
        return text;
    }

    // Sources are told apart by their input, and by records that begin anew.
    void begin_listing(std::string_view input, const Listing& listing) {
        if (input != input_ || listing.record <= record_) places_ = SourcePlaces();
        input_ = input;
        record_ = listing.record;
        fingerprints.begin(input, listing);
    }

    // The region's object of `listing.fields[field].text[start, end)`; empty where nothing is known of it.
    std::string region_of(const Listing& listing, std::uint32_t field, std::uint32_t start, std::uint32_t end,
                          std::uint64_t line) {
        // A line of what was unpacked is none of the file.
        if (listing.fields[field].origin.writing == Writing::packed) return {};
        const auto found = places_.find(listing, field, start, end);
        if (!found) return line_region(line);
        return fmt::format(R"({{"startLine":{},"startColumn":{},"endLine":{},"endColumn":{}}})", found->from.line,
                           found->from.column, found->to.line, found->to.column);
    }

    // What would support a claim, as text of a message: made once, because a catalog needs it many times.
    const std::string& demands_of(ConceptId says) {
        const auto [known, first] = demands_.try_emplace(says);
        if (first) {
            known->second = report::sarif_message_text(report::demands_line(book, says, Grade::unsupported));
        }
        return known->second;
    }

    void append(const report::SarifResult& result, std::string& out) {
        out += any_result ? ",\n" : "\n";
        any_result = true;
        append_sarif_result(result, fingerprints, out);
    }

    report::SarifRelated statement_against(const Listing& listing, const Claim& other, const std::string& artifact,
                                           std::uint64_t line) {
        const Field& field = listing.fields[other.field];
        report::SarifRelated related;
        related.message = fmt::format("The statement that it disagrees with: '{}'.",
                                      report::sarif_message_text(report::one_line(
                                          field.text.substr(other.start, other.end - other.start), kMostMessageCells)));
        related.artifact = artifact;
        if (!artifact.empty()) related.region = region_of(listing, other.field, other.start, other.end, line);
        related.field = field.name;
        return related;
    }

    const RuleBook& book;
    report::SarifRules rules;
    SarifRun run;
    report::SarifFingerprints fingerprints;
    std::map<std::string, std::size_t, std::less<>> artifacts;  // numbers, by URI
    std::vector<std::string> in_order;                          // URIs
    bool any_result = false;

private:
    SourcePlaces places_;
    std::string input_;  // of the listing at hand
    std::uint64_t record_ = 0;
    std::map<ConceptId, std::string> demands_;
};

SarifWriter::SarifWriter(const RuleBook& book, SarifRun run)
    : state_(std::make_unique<State>(book, nullptr, std::move(run))) {}
SarifWriter::SarifWriter(const EvidenceBook& evidence, SarifRun run)
    : state_(std::make_unique<State>(evidence.rule_book(), &evidence, std::move(run))) {}
SarifWriter::SarifWriter(SarifWriter&&) noexcept = default;
SarifWriter& SarifWriter::operator=(SarifWriter&&) noexcept = default;
SarifWriter::~SarifWriter() = default;

void SarifWriter::begin(std::string& out) {
    out += R"({"$schema":"https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",)"
           R"("version":"2.1.0","runs":[{"tool":{"driver":)";
    JsonWriter json(out);
    json.begin_object();
    json.member("name", std::string_view("Grainside"));
    json.member("version", kVersion);
    json.member("semanticVersion", kVersion);
    json.member("language", std::string_view("en"));
    json.key("rules");
    state_->rules.write(json);
    json.end_object();
    out += R"(},"language":"en","columnKind":"unicodeCodePoints","automationDetails":{"id":)";
    report::append_json_string(out, "grainside/" + state_->run.command + '/');
    out += "},\"results\":[";
}

void SarifWriter::write_findings(std::string_view input, const Listing& listing, const CheckResult& result,
                                 const Checker& checker, std::string& out, const Conceded* conceded) {
    State& state = *state_;
    const std::string artifact = state.artifact_of(input);
    state.begin_listing(input, listing);
    for (std::size_t at = 0; at < result.findings.size(); ++at) {
        const Finding& finding = result.findings[at];
        const RuleInfo& rule = state.book.rules()[finding.rule];
        const Claim& claim = result.mentions[finding.claim];
        const std::string instead = rule.say_instead.empty() ? std::string() : checker.say_instead(listing, finding);
        report::SarifResult one;
        one.rule = rule.id;
        one.rule_index = finding.rule;
        one.listing = &listing;
        one.field = claim.field;
        one.start = finding.start;
        one.end = finding.end;
        one.claim = &claim;
        one.says = state.book.concept_name(claim.says);
        one.grade = finding.grade;
        one.basis = finding.basis;
        one.because = state.rules.reason_of(finding.rule);
        one.say_instead = instead;
        if (finding.grade == Grade::unsupported) one.demands = state.demands_of(claim.says);
        if (result.proofs != nullptr) {
            one.filed = report::filed_line(state.book, result, finding.claim, finding.grade);
        }
        one.artifact = artifact;
        if (!artifact.empty()) one.region = state.region_of(listing, one.field, one.start, one.end, listing.line);
        if (finding.against != kNoClaim) {
            one.related.push_back(
                state.statement_against(listing, result.mentions[finding.against], artifact, listing.line));
        }
        one.concession = report::concession_of(conceded, at);
        one.conceded = one.concession != nullptr && conceded->stands(at);
        state.append(one, out);
    }
}

void SarifWriter::write_verdicts(const DossierContext& context, const Judgement& judgement, std::string& out,
                                 const Conceded* conceded) {
    State& state = *state_;
    const std::string dossier = state.artifact_of(context.dossier.file());
    const Listing* listing = context.dossier.listing();
    if (judgement.check == nullptr || listing == nullptr) return;
    const std::string& listing_file = context.dossier.data().listing_file;
    std::string beside(context.dossier.file());
    if (!listing_file.empty()) beside = beside.substr(0, beside.rfind('/') + 1) + listing_file;
    const std::string artifact = state.artifact_of(beside);
    state.begin_listing(context.dossier.file(), *listing);
    const std::vector<std::uint32_t>& lines = context.dossier.data().field_lines;
    const auto line_of = [&](std::uint32_t field) { return field < lines.size() ? lines[field] : 0; };
    for (std::size_t at = 0; at < judgement.verdicts.size(); ++at) {
        const Verdict& verdict = judgement.verdicts[at];
        if (verdict.grade == Grade::consistent) continue;
        const Claim& claim = judgement.check->mentions[verdict.claim];
        const std::string rule = rule_of(context.book, *judgement.check, verdict);
        report::SarifResult one;
        one.rule = rule;
        one.rule_index = state.rules.index_of(rule);
        one.listing = listing;
        one.field = claim.field;
        one.start = claim.start;
        one.end = claim.end;
        one.claim = &claim;
        one.says = state.book.concept_name(claim.says);
        one.grade = verdict.grade;
        one.basis = verdict.basis;
        const std::string because = report::sarif_message_text(verdict.because);
        one.because = because;
        one.say_instead = verdict.say_instead;
        // `because` tells what is on file.
        if (verdict.grade == Grade::unsupported) one.demands = state.demands_of(claim.says);
        one.artifact = artifact;
        if (!artifact.empty()) {
            one.region = state.region_of(*listing, one.field, one.start, one.end, line_of(one.field));
        }
        if (verdict.finding != kNoClaim) {
            const Finding& finding = judgement.check->findings[verdict.finding];
            if (finding.against != kNoClaim) {
                one.related.push_back(
                    state.statement_against(*listing, judgement.check->mentions[finding.against], artifact,
                                            line_of(judgement.check->mentions[finding.against].field)));
            }
        }
        for (std::size_t i = 0; i < std::min(verdict.readings.size(), kMostRelatedReadings); ++i) {
            one.related.push_back(reading_place(context, verdict.readings[i], dossier));
        }
        one.concession = report::concession_of(conceded, at);
        one.conceded = one.concession != nullptr && conceded->stands(at);
        state.append(one, out);
    }
}

void SarifWriter::name_inputs(std::span<const std::string> inputs) {
    for (const std::string& input : inputs) state_->artifact_of(input);
}

void SarifWriter::begin_part() {
    state_->any_result = false;
}

std::string_view SarifWriter::before_part() {
    return std::exchange(state_->any_result, true) ? "," : "";
}

void SarifWriter::end(std::span<const Issue> issues, bool successful, std::string& out) {
    const State& state = *state_;
    out += state.any_result ? "\n],\"artifacts\":" : "],\"artifacts\":";
    JsonWriter json(out);  // goes on with the members of the run
    json.begin_array();
    for (const std::string& uri : state.in_order) {
        json.begin_object();
        json.key("location");
        json.begin_object();
        json.member("uri", std::string_view(uri));
        json.end_object();
        json.key("roles");
        json.begin_array();
        json.value(std::string_view("analysisTarget"));
        json.end_array();
        json.end_object();
    }
    json.end_array();
    json.key("invocations");
    json.begin_array();
    json.begin_object();
    json.key("executionSuccessful");
    json.value_bool(successful);
    json.key("toolExecutionNotifications");
    json.begin_array();
    for (const Issue& issue : issues) write_notification(json, issue);
    json.end_array();
    json.end_object();
    json.end_array();
    json.key("properties");
    json.begin_object();
    json.member("rule_book", state.book.digest());
    json.optional_member("on", state.run.day);
    json.key("markets");
    json.begin_array();
    for (const std::string& market : state.run.markets) json.value(std::string_view(market));
    json.end_array();
    json.member("note", std::string_view(
                            "This is not legal advice; local law and licensed practice decide. A grade judges words "
                            "and evidence, never intent. 'From memory' marks a source whose text could not be seen "
                            "when the rule was written."));
    json.end_object();
    out += "}]}\n";
}

}  // namespace v0
}  // namespace grainside
