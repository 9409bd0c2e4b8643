#include "grainside/rule_book.h"

#include <fmt/format.h>
#include <xxhash.h>

#include <algorithm>

#include "document/compiled_document.h"
#include "document/yaml_document.h"
#include "rules/book_data.h"
#include "rules/built_in_book.h"

namespace grainside {

namespace rules {

namespace {

// XXH3, 64 bit: enough to tell two honest books apart.
class Digest {
public:
    Digest() { XXH3_64bits_reset(&state_); }
    void add(std::string_view bytes) {
        constexpr char kEnd = '\xff';  // no byte of UTF-8: keeps 'ab','c' and 'a','bc' apart
        waiting_ += bytes;
        waiting_ += kEnd;
        if (waiting_.size() >= kPortion) flush();
    }
    std::string text() {
        flush();
        return fmt::format("{:016x}", XXH3_64bits_digest(&state_));
    }

private:
    static constexpr std::size_t kPortion = 4096;  // a call for each short text would cost more than its bytes
    void flush() {
        XXH3_64bits_update(&state_, waiting_.data(), waiting_.size());
        waiting_.clear();
    }
    XXH3_state_t state_;
    std::string waiting_;
};

void add_node(Digest& digest, document::Node node) {
    digest.add(node.key());
    digest.add(node.is_scalar() ? "=" : node.is_sequence() ? "[" : "{");
    digest.add(node.text());
    for (document::Node child : node) add_node(digest, child);
    digest.add("end");
}

// One loader of meaning for both encodings.
Result<std::unique_ptr<BookData>> load_book(std::vector<document::Document> documents, document::Faults& faults) {
    auto book = std::make_unique<BookData>();
    book->documents = std::move(documents);
    book->digest = digest_of(book->documents);
    vocabulary::load_vocabulary(book->documents, book->vocabulary, faults);
    // Without its words a book is one fault, not one for each condition.
    if (book->vocabulary.concepts.size() <= 1) return faults.take();
    load_sources(*book, faults);
    load_markets(*book, faults);
    load_rules(*book, faults);
    if (faults.any_errors()) return faults.take();
    return book;
}

}  // namespace

std::string digest_of(std::span<const document::Document> documents) {
    Digest digest;
    for (const document::Document& document : documents) {
        digest.add(document.file());
        if (document.root().exists()) add_node(digest, document.root());
    }
    return digest.text();
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
    auto data = rules::load_book(std::move(documents), faults);
    if (!data) return std::move(data).issues();
    return RuleBook(std::move(data).value());
}

Result<RuleBook> RuleBook::built_in() {
    document::Faults faults;
    auto documents = document::open_compiled(rules::built_in_book(), faults);
    auto data = rules::load_book(std::move(documents), faults);
    if (!data) return std::move(data).issues();
    return RuleBook(std::move(data).value());
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
