// What is answered about an open document, as JSON of the protocol.
#ifndef GRAINSIDE_TOOLS_EDIT_ANSWERS_H
#define GRAINSIDE_TOOLS_EDIT_ANSWERS_H

#include <cstddef>
#include <string>

#include "edit/client_abilities.h"
#include "edit/json_values.h"
#include "edit/workspace.h"

namespace grainside::tools::edit {

// 'PublishDiagnosticsParams'.
std::string diagnostics_of(const OpenDocument& document, Workspace& workspace, const ClientAbilities& client);

// 'Hover', or null: what is said of the words at `byte`, else what the name there stands for.
std::string hover_at(const OpenDocument& document, std::size_t byte, Workspace& workspace,
                     const ClientAbilities& client);

// A list of 'CompletionItem'.
std::string completion_at(const OpenDocument& document, std::size_t byte, Workspace& workspace);

// A list of 'CodeAction': better wordings and concessions of what meets `where`. `asked`: the request's 'context', from
// which come the kinds that are wanted and the client's own diagnostics, which an action names.
std::string actions_at(const OpenDocument& document, const TextSpan& where, const std::optional<Json>& asked,
                       Workspace& workspace, const ClientAbilities& client);

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_ANSWERS_H
