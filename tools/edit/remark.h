// What is said of a place in an open document: shown as a diagnostic, told on hovering, and what can be done about it.
#ifndef GRAINSIDE_TOOLS_EDIT_REMARK_H
#define GRAINSIDE_TOOLS_EDIT_REMARK_H

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "edit/text_places.h"
#include "grainside/finding.h"
#include "grainside/result.h"

namespace grainside::tools::edit {

// 'DiagnosticSeverity', with its numbers.
enum class Severity { error = 1, warning = 2, information = 3, hint = 4 };

// What is shown false or misleads is an error; what lacks its proof a warning; what is open or means nothing is
// information.
Severity severity_of(Grade grade) noexcept;
Severity severity_of(Issue::Severity severity) noexcept;

// Another place of the same document that a remark speaks of.
struct RelatedPlace {
    TextSpan span;
    std::string message;
};

// Lines of a label and a text, for people. Texts are as they came: whoever shows them escapes them.
struct Told {
    std::string heading;
    std::vector<std::pair<std::string, std::string>> lines;

    // Left out where there is no text.
    void add(std::string label, std::string text);
    // As Markdown, or plain.
    std::string text(bool markdown) const;
};

// What a concession of a finding names (rules/CONCESSIONS.md).
struct ConcessionKey {
    std::string rule;
    std::string listing;  // empty: any
    std::string words;
};

// A name that was likely meant, for one that nobody knows.
struct MeantName {
    TextSpan span;
    std::string name;
};

struct Remark {
    TextSpan span;
    Severity severity = Severity::information;
    std::string code;
    std::string message;
    std::vector<RelatedPlace> related;
    Told told;                                // empty: only the message
    std::optional<ConcessionKey> concedable;  // of a finding that nothing concedes yet
    std::optional<MeantName> meant;
};

// Of an issue that was found in the document.
Remark remark_of(const Issue& issue, const TextPlaces& places);

// At most so many of one document; more hide what there is to do.
inline constexpr std::size_t kMostRemarks = 1000;
// In the order of the text; beyond kMostRemarks a last one says how many more there are.
void put_in_order(std::vector<Remark>& remarks);

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_REMARK_H
