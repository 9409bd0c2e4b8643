// One sample's record, read and checked: the listing as it stood, and what the tests showed, part by part. Plain data.
#ifndef GRAINSIDE_EVIDENCE_DOSSIER_DATA_H
#define GRAINSIDE_EVIDENCE_DOSSIER_DATA_H

#include <array>
#include <cstddef>
#include <cstdint>
#include <deque>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "evidence/cost_data.h"
#include "evidence/evidence_data.h"
#include "grainside/claim.h"
#include "grainside/filed_proofs.h"
#include "grainside/listing.h"
#include "measure/measured.h"

namespace grainside::evidence {

// A number that was read or worked out, in the working unit of its dimension.
struct NamedQuantity {
    std::string name;  // "coat", "coat-share", "density", "content.Zn", "fibre-share.cotton"
    measure::Measured measured;
    measure::Dimension dimension{};
    std::string written = {};  // as the dossier has it; empty where it was worked out
};

struct Reading {
    std::size_t method = 0;                 // index into EvidenceData::methods
    std::size_t outcome = kNone;            // index into Method::outcomes; kNone where only quantities were read
    std::vector<NamedQuantity> quantities;  // as read, then as computed
    std::vector<std::pair<std::string, measure::Measured>> composition;  // element and percent by mass
    std::string date;                                                    // YYYY-MM-DD; empty where not stated
    std::string photo, note;
    std::uint32_t line = 0;  // in the dossier
};

struct PartRecord {
    Part part = Part::body;
    std::vector<Reading> readings;  // in written order
};

// What a laboratory confirmed, or what is believed before any reading.
struct ConfirmedPart {
    Part part = Part::body;
    std::size_t frame = 0;
    std::size_t candidate = 0;
};
struct OwnPrior {
    std::size_t frame = 0;
    std::vector<double> prior;  // by candidate; adds up to 1
};

struct DossierData {
    std::string file;              // as the caller named it
    std::string id;                // the file's name without folder and extension
    std::filesystem::path folder;  // where files that it names lie
    std::string sha256;            // of its text
    std::string what, seller, bought, price, condition, category;
    std::optional<CostValue> paid;  // `price` as money
    double months_in_use = 0;
    bool worn() const noexcept { return months_in_use > 0 || condition == "used"; }

    bool has_listing = false;
    std::string captured, listing_file;
    std::string listing_sha256;     // of the file; of an inline listing, of its fields' names and texts
    std::deque<std::string> texts;  // what the listing's views point into
    Listing listing;
    bool lent_category = false;  // its last field is the sample's category
    // Of an inline listing: where each of its fields stands in the dossier, from 1; 0 = not there.
    std::vector<std::uint32_t> field_lines;

    std::vector<PartRecord> parts;
    std::vector<ConfirmedPart> confirmed;
    std::vector<OwnPrior> priors;
    DossierCosts costs;
    std::shared_ptr<const FiledProofs> proofs;  // nullptr: the dossier has none
};

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_DOSSIER_DATA_H
