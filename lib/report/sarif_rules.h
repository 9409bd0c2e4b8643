// The rules of a SARIF log: what its driver says of each, and the number under which results name it.
#ifndef GRAINSIDE_REPORT_SARIF_RULES_H
#define GRAINSIDE_REPORT_SARIF_RULES_H

#include <cstddef>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "grainside/evidence_book.h"
#include "grainside/rule_book.h"
#include "report/json_writer.h"

namespace grainside::report {

// In order: the rules on words; with `evidence` also the limits, then one for each grade that readings alone give.
// Not thread-safe to make; safe to share. The books must outlive it.
class SarifRules {
public:
    SarifRules(const RuleBook& book, const EvidenceBook* evidence);

    // An array of reportingDescriptor objects (SARIF 3.49).
    void write(JsonWriter& json) const;

    // REQUIRES: a rule, a limit or "readings/GRADE" of the books.
    std::size_t index_of(std::string_view id) const { return index_.at(id); }

    // Why a rule on words speaks, as text of a message: made once, because a catalog needs it many times.
    // REQUIRES: `rule` is an index into RuleBook::rules().
    const std::string& reason_of(std::size_t rule) const { return reasons_[rule]; }

private:
    // A rule or a limit as far as a log tells of it.
    struct Rule {
        std::string_view id, title, because, say_instead;
        Grade grade = Grade::vague;
        std::string_view basis;
        const std::vector<std::string>* markets = nullptr;    // nullptr: holds everywhere
        const std::vector<std::uint32_t>* sources = nullptr;  // nullptr: those of the methods
    };

    void write_one(JsonWriter& json, const Rule& rule) const;
    std::string help_of(const Rule& rule) const;

    const RuleBook& book_;
    std::vector<std::string> own_ids_;
    std::vector<Rule> rules_;
    std::vector<std::string> reasons_;
    std::unordered_map<std::string_view, std::size_t> index_;
};

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_SARIF_RULES_H
