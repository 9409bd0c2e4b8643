#include "grainside/rule_book.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>

#include "document/compiled_document.h"
#include "document/digest.h"
#include "document/yaml_document.h"
#include "rules/book_data.h"
#include "rules/built_in_book.h"
#include "rules/load_demands.h"

namespace grainside {

namespace rules {

// One loader of meaning for both encodings.
std::unique_ptr<BookData> read_book(std::vector<document::Document> documents, std::uint64_t digest,
                                    document::Faults& faults) {
    auto book = std::make_unique<BookData>();
    book->documents = std::move(documents);
    book->digest = fmt::format("{:016x}", digest);
    vocabulary::load_vocabulary(book->documents, book->vocabulary, faults);
    // Without its words a book is one fault, not one for each condition.
    if (book->vocabulary.concepts.size() <= 1) return nullptr;
    load_sources(*book, faults);
    load_markets(*book, faults);
    load_rules(*book, faults);
    load_demands(*book, faults);
    return faults.any_errors() ? nullptr : std::move(book);
}

}  // namespace rules

inline namespace v0 {

RuleBook::RuleBook(std::unique_ptr<rules::BookData> data) : data_(std::move(data)) {}
RuleBook::RuleBook(RuleBook&&) noexcept = default;
RuleBook& RuleBook::operator=(RuleBook&&) noexcept = default;
RuleBook::~RuleBook() = default;

Result<RuleBook> RuleBook::load(const std::filesystem::path& folder) {
    document::Faults faults;
    auto documents = document::read_yaml_folder(folder, faults);
    const std::uint64_t digest = document::digest_of(documents);
    if (auto data = rules::read_book(std::move(documents), digest, faults)) return RuleBook(std::move(data));
    return faults.take();
}

Result<RuleBook> RuleBook::from_documents(std::vector<document::Document> documents) {
    document::Faults faults;
    const std::uint64_t digest = document::digest_of(documents);
    if (auto data = rules::read_book(std::move(documents), digest, faults)) return RuleBook(std::move(data));
    return faults.take();
}

Result<RuleBook> RuleBook::built_in() {
    document::Faults faults;
    auto documents = document::open_compiled(rules::built_in_book(), faults);
    const std::uint64_t digest = document::compiled_digest(rules::built_in_book());
    if (auto data = rules::read_book(std::move(documents), digest, faults)) return RuleBook(std::move(data));
    return faults.take();
}

std::span<const RuleInfo> RuleBook::rules() const noexcept {
    return data_->rules;
}
std::span<const SourceInfo> RuleBook::sources() const noexcept {
    return data_->sources;
}

const RuleInfo* RuleBook::find_rule(std::string_view id) const noexcept {
    const auto found =
        std::find_if(data_->rules.begin(), data_->rules.end(), [&](const RuleInfo& rule) { return rule.id == id; });
    return found == data_->rules.end() ? nullptr : &*found;
}

std::vector<std::string> RuleBook::markets() const {
    std::vector<std::string> names;
    for (const rules::Market& market : data_->markets) names.push_back(market.name);
    return names;
}

std::string_view RuleBook::market_name(std::string_view market) const noexcept {
    for (const rules::Market& one : data_->markets) {
        if (one.name == market) return one.title.empty() ? one.name : one.title;
    }
    return {};
}

std::string_view RuleBook::concept_name(ConceptId id) const noexcept {
    return id < concept_count() ? std::string_view(data_->vocabulary.concepts[id].name) : std::string_view();
}
std::string_view RuleBook::concept_wording(ConceptId id) const noexcept {
    return id < concept_count() ? std::string_view(data_->vocabulary.concepts[id].wording) : std::string_view();
}
ConceptId RuleBook::find_concept(std::string_view name) const noexcept {
    return data_->vocabulary.concepts.find(name);
}
bool RuleBook::is_a(ConceptId id, ConceptId ancestor) const noexcept {
    return id < concept_count() && data_->vocabulary.concepts.is_a(id, ancestor);
}
std::span<const Demand> RuleBook::demands_for(ConceptId id) const noexcept {
    if (id >= data_->demands_of.size()) return {};
    const rules::BookData::DemandRange range = data_->demands_of[id];
    return std::span(data_->demands).subspan(range.first, range.count);
}
std::string_view RuleBook::digest() const noexcept {
    return data_->digest;
}
std::size_t RuleBook::concept_count() const noexcept {
    return data_->vocabulary.concepts.size();
}
std::size_t RuleBook::term_form_count() const noexcept {
    return data_->vocabulary.term_forms;
}

}  // namespace v0
}  // namespace grainside
