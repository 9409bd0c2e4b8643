// Concessions: reading their files.
#include "grainside/concessions.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>
#include <system_error>
#include <utility>

#include "document/yaml_document.h"
#include "evidence/entry_reader.h"
#include "evidence/evidence_data.h"
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
        one.listing = text_if_named(entry, "listing");
        one.words = text_if_named(entry, "words");
        one.field = text_if_named(entry, "field");
        one.reason = short_text(entry, "reason", kMaxConcessionReason);
        one.owner = short_text(entry, "owner", kMaxConcessionOwner);
        one.until = day(entry);
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

    // A key that stands there says something.
    std::string text_if_named(Node entry, std::string_view key) {
        return entry.find(key).exists() ? reader_.required_text(entry, key) : std::string();
    }

    std::string short_text(Node entry, std::string_view key, std::size_t most) {
        std::string text = reader_.required_text(entry, key);
        if (text.size() > most) {
            reader_.error(entry.find(key), "too-long",
                          fmt::format("`{}` has {} bytes; {} are allowed", key, text.size(), most));
        }
        return text;
    }

    std::string day(Node entry) {
        const Node node = entry.find("until");
        if (!node.exists()) {
            reader_.error(entry, "missing-key", "`until` must stand here", "write the last day as YYYY-MM-DD");
            return {};
        }
        return std::string(read_date(reader_.document(), node, reader_.faults()).value_or(std::string_view()));
    }

    bool find_rule(Node node, Concession& one) {
        const auto& names = rules_.names;
        const auto place = std::find(names.begin(), names.end(), one.rule);
        if (place == names.end()) {
            std::string hint = document::suggestion(one.rule, names);
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

std::optional<std::string> text_of(const fs::path& file, document::Faults& faults) {
    std::error_code failed;
    if (fs::is_regular_file(file, failed)) {
        if (auto text = document::read_yaml_file(file)) return text;
    }
    Issue issue;
    issue.code = "unreadable";
    issue.file = file.string();
    const bool folder = fs::is_directory(file, failed);
    issue.message = folder ? "this is a folder, not a file of concessions" : "the file of concessions cannot be read";
    issue.hint = folder ? "name the file in it" : "is the name right?";
    faults.add(std::move(issue));
    return std::nullopt;
}

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
        if (auto text = text_of(file, faults)) {
            read_text(file.generic_string(), std::move(*text), book, rules, faults, *index);
        }
    }
    if (faults.any_errors()) return faults.take();
    return Concessions(std::move(index));
}

Result<Concessions> Concessions::parse(std::string file, std::string text, const EvidenceBook& book) {
    document::Faults faults;
    auto index = std::make_unique<Index>();
    read_text(std::move(file), std::move(text), book, RuleNames(book), faults, *index);
    if (faults.any_errors()) return faults.take();
    return Concessions(std::move(index));
}

}  // namespace v0
}  // namespace grainside
