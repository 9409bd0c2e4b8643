// An open dossier: its faults, the verdicts at the words of its listing, readings that contradict others.
#ifndef GRAINSIDE_TOOLS_EDIT_DOSSIER_REMARKS_H
#define GRAINSIDE_TOOLS_EDIT_DOSSIER_REMARKS_H

#include <filesystem>
#include <string>
#include <vector>

#include "edit/check_context.h"
#include "edit/remark.h"
#include "edit/wording_edit.h"

namespace grainside::tools::edit {

struct DossierDocument {
    const TextPlaces& places;
    std::string name;
    // Where files that it names are looked for. Of a document that is no file: a place where there can be none.
    std::filesystem::path folder;
};

// REQUIRES: the book has an evidence half.
std::vector<Remark> dossier_remarks(const DossierDocument& document, const CheckContext& context);

// Better wordings for a listing that stands in the dossier itself, of edits that meet `where`.
std::vector<WordingEdit> dossier_wordings(const DossierDocument& document, const CheckContext& context,
                                          const TextSpan& where);

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_DOSSIER_REMARKS_H
