#include "vocabulary/concept_tree.h"

#include <fmt/format.h>

#include <algorithm>

namespace grainside::vocabulary {

using document::Document;
using document::Faults;
using document::Node;

namespace {

constexpr std::size_t kMaxConcepts = 16'000;  // ids have 16 bits, and is-a is a square of bits

bool is_identifier(std::string_view text) {
    if (text.empty() || text.front() == '-' || text.back() == '-') return false;
    return std::all_of(text.begin(), text.end(),
                       [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; });
}

}  // namespace

bool ConceptSet::empty() const noexcept {
    return std::all_of(words_.begin(), words_.end(), [](std::uint64_t word) { return word == 0; });
}

ConceptId ConceptTree::insert(const Document& document, Node place, std::string_view name, Faults& faults) {
    if (!is_identifier(name)) {
        faults.error(document, place, "wrong-type", fmt::format("'{}' is no concept id", name),
                     "use lower-case letters, digits and hyphens");
        return 0;
    }
    if (entries_.size() >= kMaxConcepts) {
        faults.error(document, place, "too-many-concepts", fmt::format("more than {} concepts", kMaxConcepts));
        return 0;
    }
    const auto id = static_cast<ConceptId>(entries_.size());
    if (!by_name_.emplace(name, id).second) {
        faults.error(document, place, "duplicate-concept", fmt::format("concept '{}' is defined twice", name),
                     "an id is permanent and stands once");
        return 0;
    }
    Entry entry;
    entry.name = name;
    entries_.push_back(std::move(entry));
    pending_.push_back({&document, place, {}, false});
    return id;
}

void ConceptTree::load(const Document& document, Faults& faults) {
    if (!document.root().is_sequence()) {
        faults.error(document, document.root(), "wrong-type", "a concept file is a sequence of concepts");
        return;
    }
    for (Node node : document.root()) {
        if (!check_keys(document, node, {"concept", "is", "kind", "name", "before_noun", "part"}, faults)) continue;
        const Node name = node.find("concept");
        if (!name.exists()) {
            faults.error(document, node, "missing-key", "an entry without `concept`");
            continue;
        }
        const ConceptId id = insert(document, name, name.text(), faults);
        if (id == 0) continue;
        Entry& entry = entries_[id];
        Pending& pending = pending_[id];
        if (const Node is = node.find("is"); is.exists()) {
            pending.node = is;
            for (std::string_view parent : read_words(document, is, faults)) pending.parents.emplace_back(parent);
        }
        if (const Node kind = node.find("kind"); kind.exists()) {
            if (const auto named = kind_named(kind.text())) {
                entry.kind = *named;
                pending.has_kind = true;
            } else {
                std::vector<std::string_view> names;
                for (std::size_t k = 0; k < kKindCount; ++k) names.push_back(name_of(static_cast<Kind>(k)));
                faults.error(document, kind, "unknown-kind", fmt::format("there is no kind '{}'", kind.text()),
                             faults.suggestion(kind.text(), names));
            }
        } else if (pending.parents.empty()) {
            faults.error(document, node, "missing-key", "a concept without a parent needs `kind`");
        }
        if (const Node part = node.find("part"); part.exists()) {
            entry.part = part_named(part.text());
            if (!entry.part)
                faults.error(document, part, "unknown-part", fmt::format("there is no part '{}'", part.text()));
        }
        const Node wording = node.find("name");
        entry.wording = wording.exists() ? std::string(wording.text()) : entry.name;
        if (const Node before = node.find("before_noun"); before.exists()) entry.before_noun = before.text();
        if (!wording.exists()) std::replace(entry.wording.begin(), entry.wording.end(), '-', ' ');
    }
}

ConceptId ConceptTree::add(const Document& document, Node place, std::string_view name, std::string_view parent,
                           std::string wording, Faults& faults) {
    const ConceptId id = insert(document, place, name, faults);
    if (id == 0) return 0;
    entries_[id].wording = std::move(wording);
    pending_[id].parents.emplace_back(parent);
    return id;
}

void ConceptTree::close(Faults& faults) {
    for (std::size_t id = 1; id < entries_.size(); ++id) {
        for (const std::string& parent : pending_[id].parents) {
            const ConceptId found = find(parent);
            if (found == 0) {
                std::vector<std::string_view> names;
                for (const auto& [name, unused] : by_name_) names.push_back(name);
                faults.error(*pending_[id].document, pending_[id].node, "unknown-concept",
                             fmt::format("'{}' is-a '{}', which is no concept", entries_[id].name, parent),
                             faults.suggestion(parent, names));
            } else {
                entries_[id].parents.push_back(found);
            }
        }
    }
    // Parents first: a concept is done once all its parents are. What is left over stands in a cycle.
    for (Entry& entry : entries_) {
        entry.ancestors = ConceptSet(entries_.size());
        entry.descendants = ConceptSet(entries_.size());
    }
    std::vector<char> done(entries_.size());
    done[0] = 1;
    bool moved = true;
    while (moved) {
        moved = false;
        for (std::size_t id = 1; id < entries_.size(); ++id) {
            Entry& entry = entries_[id];
            if (done[id] != 0 || !std::all_of(entry.parents.begin(), entry.parents.end(),
                                              [&](ConceptId parent) { return done[parent] != 0; })) {
                continue;
            }
            entry.ancestors.insert(static_cast<ConceptId>(id));
            for (ConceptId parent : entry.parents) entry.ancestors.insert_all(entries_[parent].ancestors);
            if (!pending_[id].has_kind && !entry.parents.empty()) entry.kind = entries_[entry.parents.front()].kind;
            for (ConceptId parent : entry.parents) {
                if (!entry.part) entry.part = entries_[parent].part;
            }
            done[id] = 1;
            moved = true;
        }
    }
    for (std::size_t id = 1; id < entries_.size(); ++id) {
        if (done[id] == 0) {
            faults.error(*pending_[id].document, pending_[id].node, "cycle",
                         fmt::format("'{}' is its own ancestor", entries_[id].name));
            continue;
        }
        entries_[id].ancestors.for_each(
            [&](ConceptId ancestor) { entries_[ancestor].descendants.insert(static_cast<ConceptId>(id)); });
    }
    pending_.clear();
    pending_.shrink_to_fit();
    row_words_ = entries_[0].ancestors.words().size();
    ancestor_bits_.reserve(row_words_ * entries_.size());
    kinds_.reserve(entries_.size());
    for (const Entry& entry : entries_) {
        const std::vector<std::uint64_t>& row = entry.ancestors.words();
        ancestor_bits_.insert(ancestor_bits_.end(), row.begin(), row.end());
        kinds_.push_back(entry.kind);
    }
    closed_ = true;
}

ConceptId ConceptTree::find(std::string_view name) const noexcept {
    const auto at = by_name_.find(name);
    return at != by_name_.end() ? at->second : ConceptId{0};
}

ConceptId ConceptTree::require(const Document& document, Node node, Faults& faults) const {
    const ConceptId id = find(node.text());
    if (id == 0) {
        std::vector<std::string_view> names;
        for (const auto& [name, unused] : by_name_) names.push_back(name);
        faults.error(document, node, "unknown-concept", fmt::format("there is no concept '{}'", node.text()),
                     faults.suggestion(node.text(), names));
    }
    return id;
}

}  // namespace grainside::vocabulary
