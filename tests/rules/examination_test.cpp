// The built-in book, examined: no rule is dead or hidden, no proof has a text twice.
#include "verdict/examination/examiner.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "support/built_in_evidence.h"

namespace grainside {
namespace {

// "code rule other" of errors that are known and wait to be mended. Take a line out with the error that it names.
const std::vector<std::string> kKnown = {};

TEST(Examination, TheBookHasNoErrorsButTheKnownOnes) {
    const ExaminationReport report = Examiner(support::built_in_book()).report();
    EXPECT_EQ(report.rules, support::built_in_book().rules().size());
    EXPECT_GT(report.texts, report.rules);
    std::vector<std::string> errors;
    std::string told;
    for (const BookRemark& remark : report.remarks) {
        if (remark.issue.severity != Issue::Severity::error) continue;
        errors.push_back(remark.issue.code + ' ' + remark.rule + (remark.other.empty() ? "" : ' ' + remark.other));
        told += to_text(remark.issue);
    }
    EXPECT_EQ(errors, kKnown) << told;
    EXPECT_EQ(errors.size(), report.errors);
}

}  // namespace
}  // namespace grainside
