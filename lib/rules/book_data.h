// What a rule book holds inside.
#ifndef GRAINSIDE_RULES_BOOK_DATA_H
#define GRAINSIDE_RULES_BOOK_DATA_H

#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "document/document.h"
#include "document/faults.h"
#include "grainside/rule_book.h"
#include "rules/condition.h"
#include "vocabulary/vocabulary.h"

namespace grainside::rules {

// The compiled side of RuleInfo, at the same index. Several conditions in one list: one of them suffices.
struct CompiledRule {
    std::vector<ClaimCondition> when;
    std::vector<ClaimCondition> unless;
    std::vector<BesideCondition> beside;  // empty: not asked
    std::vector<BesideCondition> unless_beside;
    bool over_list = false;  // the finding spans the whole list of percentages
    // Where it was read, for those who tell the condition in words; both point into BookData::documents. The second is
    // that of the rule that it is `like`, and absent where there is none.
    document::Node entry;
    document::Node model_entry;
};

struct Market {
    std::string name;                 // "us"
    std::string title;                // "United States"; may be empty
    std::vector<std::string> within;  // larger markets whose rules hold there too
};

struct BookData {
    std::vector<document::Document> documents;  // faults and texts point into them
    vocabulary::Vocabulary vocabulary;
    std::vector<RuleInfo> rules;
    std::vector<CompiledRule> compiled;
    std::vector<SourceInfo> sources;
    std::vector<Market> markets;
    std::vector<Demand> demands;  // by concept; those of one in the order of the file
    // By concept: its own demands or those it takes from an ancestor; empty where no concept has one.
    struct DemandRange {
        std::uint32_t first = 0;
        std::uint32_t count = 0;
    };
    std::vector<DemandRange> demands_of;
    // By concept: indices of the rules whose `when` can hold for a claim that says it, in book order.
    std::vector<std::vector<std::uint32_t>> by_concept;
    std::string digest;
};

// Fills sources, markets and rules from the documents; the vocabulary is loaded already. Faults: those of the
// conditions, and "unknown-key", "missing-key", "duplicate-rule", "duplicate-source", "duplicate-market",
// "unknown-source", "unknown-market", "unknown-grade", "bad-date", "bad-template", "thin-proof", "unused-words".
void load_sources(BookData& book, document::Faults& faults);
void load_markets(BookData& book, document::Faults& faults);
void load_rules(BookData& book, document::Faults& faults);

// The book that the documents are; nullptr, with faults, where they are none. Faults of reading them that are there
// already, count.
std::unique_ptr<BookData> read_book(std::vector<document::Document> documents, std::uint64_t digest,
                                    document::Faults& faults);

}  // namespace grainside::rules

#endif  // GRAINSIDE_RULES_BOOK_DATA_H
