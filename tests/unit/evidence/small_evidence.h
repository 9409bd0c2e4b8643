// An evidence book of a few lines, for tests that change one of its files or read a dossier against it.
#ifndef GRAINSIDE_TESTS_UNIT_EVIDENCE_SMALL_EVIDENCE_H
#define GRAINSIDE_TESTS_UNIT_EVIDENCE_SMALL_EVIDENCE_H

#include <map>
#include <string>
#include <string_view>

#include "evidence/evidence_data.h"
#include "grainside/evidence_book.h"

namespace grainside::support {

// File names and texts of the small book: frames sheet (of body and lining) and metal (of hardware), two alloys with
// composition and density, and methods for all that a reading can hold.
std::map<std::string, std::string> small_evidence();

// The faults of the small book with `text` as its `file`: "line:column code", joined by "; ". A fault of another file
// carries that file's name in front, so that it cannot pass for one of `file`.
std::string faults_with(const std::string& file, std::string_view text);

// The data of the small book with `text` as its `file`, or with several files changed; throws std::runtime_error where
// it has a fault.
evidence::EvidenceData loaded_with(const std::string& file, std::string_view text);
evidence::EvidenceData loaded_with(const std::map<std::string, std::string>& changed);

// The small book, loaded once from a folder.
const EvidenceBook& small_evidence_book();

}  // namespace grainside::support

#endif  // GRAINSIDE_TESTS_UNIT_EVIDENCE_SMALL_EVIDENCE_H
