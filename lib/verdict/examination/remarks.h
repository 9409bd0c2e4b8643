// Collects what is to be said of a book, so many of each code.
#ifndef GRAINSIDE_VERDICT_EXAMINATION_REMARKS_H
#define GRAINSIDE_VERDICT_EXAMINATION_REMARKS_H

#include <cstddef>
#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/rule_book.h"
#include "verdict/examination/examiner.h"

namespace grainside::verdict {

// Of one code at most so many are kept, so that a hostile book fills no memory.
inline constexpr std::size_t kMostRemarks = 200;

class Remarks {
public:
    using Severity = Issue::Severity;

    // `rule`: only what names it is kept; empty = all.
    explicit Remarks(std::string_view rule = {}) : rule_(rule) {}

    void add(Severity severity, std::string_view code, const RuleInfo& rule, std::string message, std::string hint,
             std::string_view other = {}, std::uint32_t line = 0);
    void add(Severity severity, std::string_view code, std::string file, std::uint32_t line, std::string message,
             std::string hint);

    // Sorted by file, line, code and rule, with a note for each code of which some were left out. Leaves nothing.
    std::vector<BookRemark> take();

private:
    void add(BookRemark remark);

    std::string rule_;
    std::vector<BookRemark> remarks_;
    std::map<std::string, std::size_t, std::less<>> counts_;
};

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_EXAMINATION_REMARKS_H
