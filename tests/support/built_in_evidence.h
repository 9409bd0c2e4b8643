// The default rule book with its evidence half, loaded once, and dossiers read against it.
#ifndef GRAINSIDE_TESTS_SUPPORT_BUILT_IN_EVIDENCE_H
#define GRAINSIDE_TESTS_SUPPORT_BUILT_IN_EVIDENCE_H

#include <cstddef>
#include <string>
#include <string_view>

#include "evidence/evidence_data.h"
#include "grainside/dossier.h"
#include "grainside/evidence_book.h"
#include "grainside/rule_book.h"

namespace grainside::support {

// All of these throw std::runtime_error where there is a fault or no such name.
const RuleBook& built_in_book();
const EvidenceBook& built_in_evidence();
ConceptId concept_named(std::string_view name);
std::size_t frame_named(std::string_view id);
std::size_t candidate_named(std::size_t frame, std::string_view id);
std::size_t method_named(std::string_view id);
const evidence::Limit& limit_named(std::string_view id);

// A dossier file's text; its listing, if any, stands inline.
Dossier dossier_of(std::string yaml);

}  // namespace grainside::support

#endif  // GRAINSIDE_TESTS_SUPPORT_BUILT_IN_EVIDENCE_H
