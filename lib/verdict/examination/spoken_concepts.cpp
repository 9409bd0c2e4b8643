#include "verdict/examination/spoken_concepts.h"

#include "claims/piece.h"
#include "vocabulary/grammar_concepts.h"

namespace grainside::verdict {

namespace {

constexpr std::uint32_t bit(Kind kind) noexcept {
    return 1U << static_cast<unsigned>(kind);
}

}  // namespace

vocabulary::ConceptSet concepts_with_terms(const rules::BookData& book) {
    vocabulary::ConceptSet set(book.vocabulary.concepts.size());
    for (const document::Document& document : book.documents) {
        if (!document.file().starts_with("vocabulary/") || !document.root().is_sequence()) continue;
        for (const document::Node entry : document.root()) {
            const document::Node says = entry.find("says");
            if (!says.is_scalar()) continue;
            if (const ConceptId id = book.vocabulary.concepts.find(says.text()); id != 0) set.insert(id);
        }
    }
    return set;
}

vocabulary::ConceptSet spoken_concepts(const rules::BookData& book) {
    vocabulary::ConceptSet set = concepts_with_terms(book);
    set.insert_all(vocabulary::concepts_of_grammar(book.vocabulary));
    return set;
}

std::uint32_t kinds_of_claims(const vocabulary::Vocabulary& vocabulary, ConceptId id) noexcept {
    const std::uint32_t own = bit(vocabulary.concepts[id].kind);
    return claims::is_stuff(vocabulary, id) ? own | bit(Kind::composition) | bit(Kind::quality) : own;
}

}  // namespace grainside::verdict
