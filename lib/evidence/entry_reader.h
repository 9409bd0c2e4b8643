// What the entries of the evidence files and of dossiers are made of: texts, ids, numbers within bounds, parts,
// concepts, and names out of a list. Every reader reports what is wrong with its place and goes on.
#ifndef GRAINSIDE_EVIDENCE_ENTRY_READER_H
#define GRAINSIDE_EVIDENCE_ENTRY_READER_H

#include <cstddef>
#include <cstdint>
#include <functional>
#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "document/document.h"
#include "document/faults.h"
#include "evidence/evidence_data.h"
#include "rules/book_data.h"

namespace grainside::evidence {

// Percentages of a whole that are worked out by hand add up to 100 within this.
inline constexpr double kPercentSlack = 0.01;
// All of something, in per cent.
inline constexpr double kWhole = 100;

// Reads one document. Not thread-safe; what it is made from must outlive it.
class EntryReader {
public:
    EntryReader(const rules::BookData& book, const document::Document& document, document::Faults& faults)
        : book_(book), document_(document), faults_(faults) {}

    const rules::BookData& book() const noexcept { return book_; }
    const document::Document& document() const noexcept { return document_; }
    document::Faults& faults() const noexcept { return faults_; }

    void error(document::Node place, std::string_view code, std::string message, std::string hint = {}) const;
    void error_at_key(document::Node place, std::string_view code, std::string message, std::string hint = {}) const;

    // False, with a fault, where `entry` is no mapping; keys beyond `known` are faults.
    bool check_keys(document::Node entry, std::initializer_list<std::string_view> known) const;

    // The text under `key`; empty where there is none, or nothing behind the key. Fault: "wrong-type".
    std::string text(document::Node entry, std::string_view key) const;
    // The same where it must stand. Faults also: "missing-key".
    std::string required_text(document::Node entry, std::string_view key) const;
    // The same of at most `most` bytes. Faults also: "too-long".
    std::string required_text(document::Node entry, std::string_view key, std::size_t most) const;
    // The same where the key may be left out; where it stands it says something.
    std::string text_if_named(document::Node entry, std::string_view key, std::size_t most) const;
    // A day of the calendar as YYYY-MM-DD; `hint` says which. Faults: "missing-key", "wrong-type".
    std::string required_day(document::Node entry, std::string_view key, std::string hint) const;
    // A text of lower-case letters, digits and hyphens. Faults also: "bad-id".
    std::string required_id(document::Node entry, std::string_view key) const;
    // True if `id` is one; else a fault "bad-id" at `place`.
    bool check_id(document::Node place, std::string_view id) const;

    // A number from `low` to `high`. Faults: "missing-key", "wrong-type", "out-of-range".
    std::optional<double> required_number(document::Node entry, std::string_view key, double low, double high) const;
    std::optional<double> number(document::Node node, double low, double high) const;

    // The texts of a scalar or a list. Fault: "wrong-type".
    void each_text(document::Node list, const std::function<void(document::Node)>& visit) const;
    std::vector<std::string> texts(document::Node list) const;

    // Faults: "unknown-part", "unknown-concept", "wrong-type".
    std::optional<Part> part(document::Node node, std::string_view name) const;
    PartSet parts(document::Node list) const;
    std::vector<ConceptId> concepts(document::Node list) const;
    ConceptId require_concept(document::Node node) const;
    // Indices of sources.yaml. Faults: "missing-key", "unknown-source", "wrong-type".
    std::vector<std::uint32_t> required_sources(document::Node entry) const;

    // Which of `names` the text of `node` is. Reports "unknown-" and `what` with a suggestion.
    std::optional<std::size_t> choice(document::Node node, std::span<const std::string_view> names,
                                      std::string_view what) const;
    // The same for a name that stands somewhere else, a key for instance; the fault is told at the key of `place`.
    std::optional<std::size_t> choice_of_key(document::Node place, std::span<const std::string_view> names,
                                             std::string_view what) const;

    // True if the key of `at_key` is the symbol of an element; else a fault "unknown-element".
    bool check_element(document::Node at_key) const;

private:
    const rules::BookData& book_;
    const document::Document& document_;
    document::Faults& faults_;
};

// The ids of frames, methods, limits ...; views into `items`.
template <typename Items>
std::vector<std::string_view> ids_of(const Items& items) {
    std::vector<std::string_view> ids;
    ids.reserve(items.size());
    for (const auto& item : items) ids.push_back(item.id);
    return ids;
}

// kNone where there is none of that id.
template <typename Items>
std::size_t index_of(const Items& items, std::string_view id) {
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (items[i].id == id) return i;
    }
    return kNone;
}

// Calls `visit` with each entry of each document whose name is `file` or, where that ends in '/', begins with it. A
// document that is no sequence is a fault "wrong-type". False where the book has no such document.
bool each_entry(const rules::BookData& book, std::string_view file, document::Faults& faults,
                const std::function<void(const EntryReader&, document::Node)>& visit);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_ENTRY_READER_H
