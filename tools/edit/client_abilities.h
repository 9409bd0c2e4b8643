// What the client said that it can ('ClientCapabilities'), as far as it matters here.
#ifndef GRAINSIDE_TOOLS_EDIT_CLIENT_ABILITIES_H
#define GRAINSIDE_TOOLS_EDIT_CLIENT_ABILITIES_H

#include "edit/json_values.h"
#include "edit/text_places.h"

namespace grainside::tools::edit {

struct ClientAbilities {
    PositionEncoding encoding = PositionEncoding::utf16;
    bool markdown = false;          // in hovers
    bool related = false;           // 'relatedInformation' of diagnostics
    bool actions = false;           // 'CodeAction' literals
    bool document_changes = false;  // 'documentChanges' of workspace edits
    bool creates_files = false;     // the resource operation 'create'
};

// `params` of 'initialize'.
ClientAbilities read_abilities(const std::optional<Json>& params);

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_CLIENT_ABILITIES_H
