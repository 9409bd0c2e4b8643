// The listing of a dossier: its fields inline, or a file beside the dossier.
#ifndef GRAINSIDE_EVIDENCE_LISTING_SECTION_H
#define GRAINSIDE_EVIDENCE_LISTING_SECTION_H

#include <cstddef>

#include "evidence/day_check.h"
#include "evidence/dossier_data.h"
#include "evidence/entry_reader.h"

namespace grainside::evidence {

inline constexpr std::size_t kMaxListingFileBytes = std::size_t{16} << 20;

// Fills the listing of `dossier`, whose id and folder stand already; its views point into `dossier.texts`. The file is
// a regular one in that folder itself, named without folders; a symbolic link that leads out of it is refused. It is
// read as ListingReader reads it, and must hold exactly one listing. Issues of the reader carry the file's name as
// written. Faults: "unknown-key", "missing-key" (neither `file` nor a text), "wrong-type", "both-ways" (`file` and
// inline fields), "outside-folder", "unreadable", "too-large", "no-listing", "many-listings", "bad-digest",
// "digest-differs", those of DayCheck and of ListingReader.
void read_listing(const EntryReader& reader, document::Node node, const DayCheck& days, DossierData& dossier);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_LISTING_SECTION_H
