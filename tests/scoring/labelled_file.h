// Reading labelled listings: corpus/README.md has the form.
//
// Each label is tied to its place while reading, so that a label whose words do not stand in its field is found before
// anything is scored.
#ifndef GRAINSIDE_TESTS_SCORING_LABELLED_FILE_H
#define GRAINSIDE_TESTS_SCORING_LABELLED_FILE_H

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/claim.h"
#include "grainside/finding.h"
#include "grainside/listing.h"
#include "grainside/result.h"
#include "matching.h"

namespace grainside::scoring {

struct LabelledClaim {
    Span span;
    Part part = Part::whole;
    Kind kind = Kind::material;
    bool negated = false;
    std::string says;  // a concept; empty = not scored
};

struct LabelledFinding {
    Span span;
    Grade grade = Grade::misleading;
    std::vector<std::string> markets;  // lower case; empty = everywhere
};

struct LabelledTrap {
    Span span;
    std::string because;
};

struct OwnedField {
    std::string name;
    std::string text;
};

struct LabelledListing {
    std::string id;
    std::uint64_t line = 0;  // in its file, from 1
    bool honest = false;
    std::string language;
    std::string region;
    std::vector<OwnedField> fields;
    // Absent where the record does not have the member: then it says nothing, which is not the same as an empty list.
    std::optional<std::vector<LabelledClaim>> claims;
    std::optional<std::vector<LabelledFinding>> findings;
    std::optional<std::vector<LabelledTrap>> traps;

    // Views into this object.
    Listing listing() const;
    // REQUIRES: `span` lies in one of the fields.
    std::string_view words(const Span& span) const;
};

// Reads JSON Lines; empty lines are passed over. Issues (all of the file): "cannot-open", "json-syntax", "label" with
// the line of the record and what is wrong with it.
Result<std::vector<LabelledListing>> read_labelled_file(const std::string& path);
Result<std::vector<LabelledListing>> read_labelled_bytes(const std::string& name, std::string_view bytes);

}  // namespace grainside::scoring

#endif  // GRAINSIDE_TESTS_SCORING_LABELLED_FILE_H
