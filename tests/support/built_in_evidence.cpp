#include "support/built_in_evidence.h"

#include <algorithm>
#include <stdexcept>
#include <utility>
#include <vector>

namespace grainside::support {
namespace {

template <typename T>
T taken(Result<T> result, std::string_view about) {
    if (!result) throw std::runtime_error(to_text(result.issues().front()) + std::string(about));
    return std::move(result).value();
}

template <typename Entry>
std::size_t index_of(const std::vector<Entry>& entries, std::string_view id) {
    const auto found = std::find_if(entries.begin(), entries.end(), [id](const Entry& one) { return one.id == id; });
    if (found == entries.end()) throw std::runtime_error("the book has no " + std::string(id));
    return static_cast<std::size_t>(found - entries.begin());
}

}  // namespace

const RuleBook& built_in_book() {
    static const RuleBook kBook = taken(RuleBook::built_in(), "");
    return kBook;
}

const EvidenceBook& built_in_evidence() {
    static const EvidenceBook kEvidence = taken(EvidenceBook::load(built_in_book()), "");
    return kEvidence;
}

ConceptId concept_named(std::string_view name) {
    const ConceptId id = built_in_book().find_concept(name);
    if (id == 0) throw std::runtime_error("the book has no concept " + std::string(name));
    return id;
}

std::size_t frame_named(std::string_view id) {
    return index_of(built_in_evidence().data().frames, id);
}

std::size_t candidate_named(std::size_t frame, std::string_view id) {
    return index_of(built_in_evidence().data().frames[frame].candidates, id);
}

std::size_t method_named(std::string_view id) {
    return index_of(built_in_evidence().data().methods, id);
}

const evidence::Limit& limit_named(std::string_view id) {
    const auto& limits = built_in_evidence().data().limits;
    return limits[index_of(limits, id)];
}

Dossier dossier_of(std::string yaml) {
    const std::string shown = yaml;
    return taken(Dossier::parse("sample.yaml", std::move(yaml), {}, built_in_evidence()), "in:\n" + shown);
}

}  // namespace grainside::support
