#include "edit/client_abilities.h"

#include <string_view>

namespace grainside::tools::edit {
namespace {

bool has_text(const std::optional<Json>& list, std::string_view wanted) {
    const auto texts = list_of(list);
    if (!texts) return false;
    for (const Json text : *texts) {
        if (text_of(text) == wanted) return true;
    }
    return false;
}

}  // namespace

ClientAbilities read_abilities(const std::optional<Json>& params) {
    const auto said = member(params, "capabilities");
    const auto document = member(said, "textDocument");
    const auto edits = member_at(said, {"workspace", "workspaceEdit"});
    ClientAbilities abilities;
    if (has_text(member_at(said, {"general", "positionEncodings"}), "utf-8")) {
        abilities.encoding = PositionEncoding::utf8;
    }
    abilities.markdown = has_text(member_at(document, {"hover", "contentFormat"}), "markdown");
    abilities.related = is_true(member_at(document, {"publishDiagnostics", "relatedInformation"}));
    abilities.actions = member_at(document, {"codeAction", "codeActionLiteralSupport"}).has_value();
    abilities.document_changes = is_true(member(edits, "documentChanges"));
    abilities.creates_files = has_text(member(edits, "resourceOperations"), "create");
    return abilities;
}

}  // namespace grainside::tools::edit
