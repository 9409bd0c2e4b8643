// Concessions: reading their files.
#include "grainside/concessions.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "document/yaml_document.h"
#include "evidence/entry_reader.h"
#include "evidence/evidence_data.h"
#include "evidence/list_file.h"
#include "rules/book_data.h"
#include "text/words_key.h"
#include "verdict/concession_index.h"
#include "verdict/rule_of_verdict.h"

namespace grainside {
inline namespace v0 {

namespace {

namespace fs = std::filesystem;
using document::Node;

constexpr std::string_view kPlainFields[] = {"name", "description", "material", "category"};
constexpr std::string_view kAttribute = "additionalProperty.";
constexpr std::size_t kNoLimit = document::kMaxYamlBytes;

// The ids that a concession may name, in the order of the book: those of rules on words first.
struct RuleNames {
    explicit RuleNames(const EvidenceBook& book) {
        for (const RuleInfo& rule : book.rule_book().rules()) names.push_back(rule.id);
        first_of_judge = names.size();
        for (const evidence::Limit& limit : book.data().limits) names.push_back(limit.id);
        for (const Grade grade : {Grade::contradicted, Grade::unsupported, Grade::inconclusive}) {
            by_readings.push_back(std::string(verdict::kByReadings) += name_of(grade));
        }
        names.insert(names.end(), by_readings.begin(), by_readings.end());
    }

    std::vector<std::string> by_readings;
    std::vector<std::string_view> names;  // views into the book and `by_readings`
    std::size_t first_of_judge = 0;
};

class ConcessionReader {
public:
    ConcessionReader(const rules::BookData& book, const RuleNames& rules, const document::Document& document,
                     document::Faults& faults, Concessions::Index& index)
        : reader_(book, document, faults), rules_(rules), index_(index) {}

    void read() {
        const Node root = reader_.document().root();
        if (!root.exists() || root.kind() == document::NodeKind::null) return;
        if (!root.is_sequence()) {
            reader_.error(root, "wrong-type", "a file of concessions is a list", "begin each with '- rule: ...'");
            return;
        }
        for (const Node entry : root) read_one(entry);
    }

private:
    void read_one(Node entry) {
        if (!reader_.check_keys(entry, {"rule", "listing", "words", "field", "reason", "owner", "until"})) return;
        if (index_.all.size() >= kMaxConcessions) {
            if (index_.all.size() == kMaxConcessions && !full_) {
                reader_.error(entry, "too-many-concessions", fmt::format("more than {} concessions", kMaxConcessions));
            }
            full_ = true;
            return;
        }
        const bool complete = entry.find("rule").exists();
        Concession one;
        one.rule = reader_.required_text(entry, "rule");
        one.listing = reader_.text_if_named(entry, "listing", kNoLimit);
        one.words = reader_.text_if_named(entry, "words", kNoLimit);
        one.field = reader_.text_if_named(entry, "field", kNoLimit);
        one.reason = reader_.required_text(entry, "reason", kMaxConcessionReason);
        one.owner = reader_.required_text(entry, "owner", kMaxConcessionOwner);
        one.until = reader_.required_day(entry, "until", "write the last day as YYYY-MM-DD");
        one.file = reader_.document().file();
        one.line = entry.line();
        const bool known = complete && !one.rule.empty() && find_rule(entry.find("rule"), one);
        if (!one.field.empty()) check_field(entry.find("field"), one.field);
        if (!entry.find("listing").exists() && !entry.find("words").exists()) {
            reader_.error(entry, "too-wide", "this would concede every finding of its rule",
                          "add `listing`, `words`, or both");
            return;
        }
        text::make_words_key(one.words, tokens_, words_key_);
        if (!one.words.empty() && words_key_.empty()) {
            reader_.error(entry.find("words"), "no-words", "these words hold no letter and no digit",
                          "copy them from the report");
            return;
        }
        if (known && !(one.listing.empty() && one.words.empty())) add(entry, std::move(one));
    }

    bool find_rule(Node node, Concession& one) {
        const auto& names = rules_.names;
        const auto place = std::find(names.begin(), names.end(), one.rule);
        if (place == names.end()) {
            std::string hint = reader_.faults().suggestion(one.rule, names);
            if (hint.empty()) hint = "`grainside rules list` has the rules; a verdict names the limit that decided";
            reader_.error(node, "unknown-rule", fmt::format("there is no rule `{}`", one.rule), std::move(hint));
            return false;
        }
        one.needs_judge = place - names.begin() >= static_cast<std::ptrdiff_t>(rules_.first_of_judge);
        return true;
    }

    void check_field(Node node, std::string_view field) {
        const bool plain = std::find(std::begin(kPlainFields), std::end(kPlainFields), field) != std::end(kPlainFields);
        if (plain || (field.starts_with(kAttribute) && field.size() > kAttribute.size())) return;
        reader_.error(node, "unknown-field", fmt::format("there is no field `{}`", field),
                      "one of name, description, material, category, additionalProperty.NAME");
    }

    void add(Node entry, Concession one) {
        const std::uint32_t first = index_.add(std::move(one), words_key_);
        if (first == kNoConcession) return;
        const Concession& same = index_.all[first];
        reader_.error(entry, "duplicate-concession",
                      fmt::format("this is conceded already, in line {} of {}", same.line, same.file),
                      "keep one of them");
    }

    evidence::EntryReader reader_;
    const RuleNames& rules_;
    Concessions::Index& index_;
    text::Tokens tokens_;
    std::string words_key_;
    bool full_ = false;
};

void read_text(std::string file, std::string text, const EvidenceBook& book, const RuleNames& rules,
               document::Faults& faults, Concessions::Index& index) {
    const auto parsed = document::parse_yaml(std::move(file), std::move(text), faults);
    if (parsed) ConcessionReader(book.rule_book().data(), rules, *parsed, faults, index).read();
}

}  // namespace

Concessions::Concessions(std::unique_ptr<Index> index) : index_(std::move(index)) {}
Concessions::Concessions(Concessions&&) noexcept = default;
Concessions& Concessions::operator=(Concessions&&) noexcept = default;
Concessions::~Concessions() = default;

std::span<const Concession> Concessions::all() const noexcept {
    return index_->all;
}

Result<Concessions> Concessions::read(std::span<const fs::path> files, const EvidenceBook& book) {
    document::Faults faults;
    const RuleNames rules(book);
    auto index = std::make_unique<Index>();
    for (const fs::path& file : files) {
        if (auto text = evidence::read_list_file(file, "concessions", faults)) {
            read_text(file.generic_string(), std::move(*text), book, rules, faults, *index);
        }
    }
    if (faults.any_errors()) return faults.take();
    return Concessions(std::move(index));
}

Result<Concessions> Concessions::parse(std::string file, std::string text, const EvidenceBook& book) {
    document::Faults faults;
    auto index = std::make_unique<Index>();
    verdict::read_concessions(std::move(file), std::move(text), book, faults, *index);
    if (faults.any_errors()) return faults.take();
    return Concessions(std::move(index));
}

}  // namespace v0

void verdict::read_concessions(std::string file, std::string text, const EvidenceBook& book, document::Faults& faults,
                               Concessions::Index& index) {
    read_text(std::move(file), std::move(text), book, RuleNames(book), faults, index);
}

}  // namespace grainside
