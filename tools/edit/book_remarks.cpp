#include "edit/book_remarks.h"

#include <cstddef>
#include <string>
#include <utility>

#include "document/inert_text.h"
#include "grainside/concessions.h"
#include "verdict/proof.h"

namespace grainside::tools::edit {
namespace {

void add_proofs(std::string_view file, const RuleBook& book, const TextPlaces& places, std::vector<Remark>& remarks) {
    for (const RuleInfo& rule : book.rules()) {
        if (rule.file != file) continue;
        for (const ProofFault& fault : prove(book, rule.id).faults) {
            Remark remark;
            remark.span = fault.line == 0 || fault.file != file ? places.span_of_issue(rule.line, 1)
                                                                : places.span_of_line(fault.line - 1);
            remark.severity = Severity::error;
            remark.code = "proof";
            remark.message = document::inert_text(rule.id + ": " + fault.message);
            remarks.push_back(std::move(remark));
        }
    }
}

Remark of_other_files(const Issue& first, std::size_t count) {
    Remark remark;
    remark.code = "other-files";
    remark.severity = Severity::warning;
    remark.message = document::inert_text(
        "With this file the rule book has " + std::to_string(count) + (count == 1 ? " fault" : " faults") +
        " in other files; the first: " + first.file + ':' + std::to_string(first.line) + ": " + first.message);
    return remark;
}

}  // namespace

std::vector<Remark> rule_file_remarks(std::string_view file, const BookReading& reading, const TextPlaces& places) {
    std::vector<Remark> remarks;
    const Issue* elsewhere = nullptr;
    std::size_t count = 0;
    for (const Issue& issue : reading.faults) {
        if (issue.file == file) {
            remarks.push_back(remark_of(issue, places));
        } else {
            if (elsewhere == nullptr) elsewhere = &issue;
            ++count;
        }
    }
    if (remarks.empty() && elsewhere != nullptr) remarks.push_back(of_other_files(*elsewhere, count));
    if (reading.book != nullptr) add_proofs(file, reading.book->rules, places, remarks);
    return remarks;
}

std::vector<Remark> concession_remarks(const TextPlaces& places, const CheckContext& context) {
    std::vector<Remark> remarks;
    const auto read = Concessions::parse("", std::string(places.text()), *context.book->evidence);
    if (!read) {
        for (const Issue& issue : read.issues()) remarks.push_back(remark_of(issue, places));
        return remarks;
    }
    for (const Concession& one : read.value().all()) {
        if (one.until >= context.today) continue;
        Remark remark;
        remark.span = one.line == 0 ? TextSpan{} : places.span_of_line(one.line - 1);
        remark.severity = Severity::warning;
        remark.code = "concession-ran-out";
        remark.message =
            "This concession ran out on " + one.until + "; mend the listing, or agree on another last day.";
        remarks.push_back(std::move(remark));
    }
    return remarks;
}

}  // namespace grainside::tools::edit
