// Writing what was found: JSON Lines records for programs, a marked view for people.
//
//     grainside::Checker checker(book, {.markets = {"us"}, .on = "2026-11-26"});
//     grainside::Listing listing;
//     listing.id = "t-1";
//     listing.fields = {{"name", "PU leather tote"}};
//     const grainside::CheckResult& result = checker.check(listing);
//     const grainside::RecordWriter writer(book);
//     std::string out;
//     writer.write_claims(listing, result, out);
//     std::cout << out.substr(0, out.find(",\"kind\"")) << "}\n";
//     // prints: {"listing":"t-1","field":"name","start":0,"end":10,"words":"PU leather","part":"body"}
//     out.clear();
//     writer.write_findings(listing, result, checker, out);
//     std::cout << out.substr(out.rfind('{'));  // the closing line, behind one line a finding
//     // prints: {"listing":"t-1","claims":1,"findings":1,"worst":"misleading"}
//     out.clear();
//     grainside::write_view(book, listing, result, checker, {.colour = false, .width = 72}, out);
//     grainside::write_view_end(book, out);  // once, behind the last listing
//     std::cout << out.substr(0, out.find('\n')) << '\n';
//     // prints: t-1
//
// Output is appended to a string that the caller writes and clears; nothing here prints. Text from a listing comes out
// inert: JSON strings are escaped, control, bidirectional-formatting and invalid bytes are replaced in the human view.
// Thread-safe for distinct `out`.
#ifndef GRAINSIDE_REPORT_H
#define GRAINSIDE_REPORT_H

#include <cstddef>
#include <cstdint>
#include <memory>
#include <span>
#include <string>

#include "grainside/checker.h"
#include "grainside/concessions.h"

namespace grainside {
inline namespace v0 {

// Writes the records of design section 9. Constant text of the book is escaped once, when the writer is made.
class RecordWriter {
public:
    // The book must outlive the writer.
    explicit RecordWriter(const RuleBook& book);
    RecordWriter(RecordWriter&&) noexcept;
    RecordWriter& operator=(RecordWriter&&) noexcept;
    ~RecordWriter();

    // One line a claim: {"listing","field","start","end","words","part","kind","says","negated","hedged","called"?,
    // "place"?,"quantity"?,"look_alike"?}.
    void write_claims(const Listing& listing, const CheckResult& result, std::string& out) const;

    // One line a finding, then one closing line {"listing","claims","findings","worst","look_alikes"?}. `checker` gives
    // the wording to use instead and must be the one that made `result`. With `conceded`, which must be of `result`, a
    // finding that a concession meets has "concession" or, where that ran out, "expired_concession"; the closing line
    // counts what is conceded apart, as "conceded". A finding of grade unsupported tells what the book demands for its
    // claim ("would_support") and, of a check with proofs on file, why a document does not lift it ("not_lifted").
    // Behind the findings, a claim whose finding was lifted is a record of grade consistent with "on_file"; the closing
    // line counts those as "on_file".
    void write_findings(const Listing& listing, const CheckResult& result, const Checker& checker, std::string& out,
                        const Conceded* conceded = nullptr) const;

private:
    struct Constants;
    std::unique_ptr<Constants> constants_;
};

struct ViewOptions {
    bool colour = false;     // ANSI colours; only for a terminal
    std::size_t width = 80;  // columns to wrap at; at least 40
};

// The listing's words marked in place, each finding with grade, reason, source and wording to use instead, and a line
// that says what was found. Of a long field only the sentences around the marked words are shown. A listing without
// findings gets one line. With `conceded`, which must be of `result`, each finding says under which concession it
// stands, and the last line counts those apart. Claims whose finding a document on file lifted get a line each.
void write_view(const RuleBook& book, const Listing& listing, const CheckResult& result, const Checker& checker,
                const ViewOptions& options, std::string& out, const Conceded* conceded = nullptr);
// The listing's claims as a table, part by part.
void write_claims_view(const RuleBook& book, const Listing& listing, const CheckResult& result,
                       const ViewOptions& options, std::string& out);

// What every report for people ends with: no legal advice, local law and licensed practice decide, a grade judges words
// and evidence, not intent; rule book digest and counts.
void write_view_end(const RuleBook& book, std::string& out);

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_REPORT_H
