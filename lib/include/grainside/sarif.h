// Findings and verdicts as a SARIF log, for the tools that CI runs (OASIS Standard, Static Analysis Results Interchange
// Format, version 2.1.0).
//
//     const std::string_view feed = "{\"sku\":\"t-1\",\"name\":\"Genuine PU leather tote\"}\n";
//     auto reader = grainside::ListingReader::from_memory("feed.jsonl", feed, {});
//     grainside::Checker checker(book, {.on = "2026-11-26"});
//     grainside::SarifWriter log(book, {.command = "check", .day = "2026-11-26"});
//     std::string out;
//     log.begin(out);
//     grainside::Listing listing;
//     std::vector<grainside::Issue> issues;
//     while (reader.next(listing, issues)) {
//         log.write_findings("feed.jsonl", listing, checker.check(listing), checker, out);
//     }
//     log.end(issues, true, out);
//     for (const std::string_view part : {"\"version\":\"2.1.0\"", "\"uri\":\"feed.jsonl\"", "\"startColumn\":22"}) {
//         std::cout << (out.find(part) != std::string::npos ? part : "missing") << '\n';
//     }
//     // prints: "version":"2.1.0"
//     // prints: "uri":"feed.jsonl"
//     // prints: "startColumn":22
//
// One log with one run over all inputs. Results are appended to `out` as they come, so that the caller may write `out`
// and clear it between any two calls; the writer itself keeps no more than the names of the inputs. Lines count from 1,
// columns in Unicode code points.
//
// Text of listings is inert in messages: control characters, characters that turn the writing direction and broken
// UTF-8 are replaced, and what SARIF reads as a link or a placeholder is escaped. In `properties.words` the words stand
// as the seller wrote them, escaped as JSON, as in the records of report.h.
//
// A result's fingerprint is made of rule, listing, field, the words (as concessions compare them) and, for equal ones,
// their order in the listing: no line, column, offset or other text. A listing without an id goes by its input and
// name.
//
// Not thread-safe; the books must outlive the writer.
#ifndef GRAINSIDE_SARIF_H
#define GRAINSIDE_SARIF_H

#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/checker.h"
#include "grainside/concessions.h"
#include "grainside/dossier_report.h"
#include "grainside/result.h"

namespace grainside {
inline namespace v0 {

// What a log says of its run as a whole.
struct SarifRun {
    std::string command;                    // "check": names the run
    std::vector<std::string> markets = {};  // those asked for; empty: that of each listing
    std::string day = {};                   // whose rules hold, YYYY-MM-DD; empty: that of each listing
};

class SarifWriter {
public:
    // Rules on words. The other also knows limits, and verdicts that the readings alone decided.
    SarifWriter(const RuleBook& book, SarifRun run);
    SarifWriter(const EvidenceBook& evidence, SarifRun run);
    SarifWriter(SarifWriter&&) noexcept;
    SarifWriter& operator=(SarifWriter&&) noexcept;
    ~SarifWriter();

    // The head of the log, with every rule that could speak.
    void begin(std::string& out);

    // `input` is the path that the listing was read from, "-" for standard input: a relative one becomes a relative
    // URI, an absolute one a file URI. `checker` is the one that made `result`; `conceded`, if any, is of `result`.
    void write_findings(std::string_view input, const Listing& listing, const CheckResult& result,
                        const Checker& checker, std::string& out, const Conceded* conceded = nullptr);

    // The verdicts that are worse than consistent. They point to the file of the listing, where that stands beside the
    // dossier, else to the dossier; the readings that weigh most are related locations.
    void write_verdicts(const DossierContext& context, const Judgement& judgement, std::string& out,
                        const Conceded* conceded = nullptr);

    // For results that several threads write, each with a writer of its own and in any order: the inputs in the order
    // of the call are told to all of them first, so that they number them alike. `begin_part` begins what is written
    // into one string. Where the strings are put together, `before_part` of the writer that begins and ends the log
    // gives what stands before each that is not empty.
    void name_inputs(std::span<const std::string> inputs);
    void begin_part();
    std::string_view before_part();

    // The tail: inputs, and how the run went. `issues` become notifications; `successful` is false where one was an
    // error.
    void end(std::span<const Issue> issues, bool successful, std::string& out);

private:
    struct State;
    std::unique_ptr<State> state_;
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_SARIF_H
