// Regions: what a label, a heading or a field says of the text behind it.
#ifndef GRAINSIDE_CLAIMS_REGIONS_H
#define GRAINSIDE_CLAIMS_REGIONS_H

#include <cstdint>
#include <span>
#include <vector>

#include "claims/piece.h"
#include "grainside/claim.h"

namespace grainside::claims {

enum class RegionKind : std::uint8_t {
    open,    // nothing is said: the grammar decides
    part,    // 'Lining: ...'
    main,    // 'Material: ...': the main outside part
    origin,  // 'Country of manufacture: ...', 'Leather origin: ...', 'Tanned in: ...'
    silent,  // 'Colour: ...', 'Dimensions: ...': no claims inside
    title,   // 'Product name: ...': read as a title, and elsewhere as open text
};

struct Region {
    RegionKind kind = RegionKind::open;
    Part part = Part::whole;  // of kind part; of a deed, the part that it was done to, or whole
    std::uint8_t family = 0;  // of the noun that names it
    ConceptId asks = 0;       // of an attribute or a question: what 'yes' says
    bool teaching = false;    // of a question: it asks what a material is, and the next sentence tells
    bool thickness = false;   // the label speaks of thickness
    bool of_leather = false;  // of kind origin: the label asks where the hides are from
    ConceptId deed = 0;       // of kind origin: what was done there, as 'Tanned in: ...' tells; 0: it was made there
    bool tannage = false;     // the label asks for the tannage
    bool labelled = false;    // behind a label or in an attribute: a specification, not prose
};

// What the pieces of a label, a heading or an attribute's name say; open where they say nothing.
Region region_of_label(const vocabulary::Vocabulary& vocabulary, std::span<const Piece> pieces);

// The part that a question asks about: the last that it names; silent where it asks for care or for other goods, open
// where it names none. A question that yes answers tells in `asks` what.
Region region_of_question(std::span<const Piece> pieces);

// Fills `regions`, one a piece: each piece behind a 'label:' or a leading 'label -' takes the label's region, the
// others take `outer`. Pieces of a silent label are silent themselves, and so is 'leather' before what was done to it
// ('Leather tanned in: ...'). Returns the region that a label at the very end
// of the segment opens for the text after it, or an open one. `inventory` is that of the pieces.
Region label_regions(const vocabulary::Vocabulary& vocabulary, const Inventory& inventory, std::span<Piece> pieces,
                     const Region& outer, std::vector<Region>& regions);

}  // namespace grainside::claims

#endif  // GRAINSIDE_CLAIMS_REGIONS_H
