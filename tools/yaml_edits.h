// The edits of a listing that stands in its dossier, as bytes of the YAML.
#ifndef GRAINSIDE_TOOLS_YAML_EDITS_H
#define GRAINSIDE_TOOLS_YAML_EDITS_H

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "diagnostics.h"
#include "grainside/dossier.h"
#include "grainside/evidence_book.h"
#include "grainside/reword.h"
#include "source_edits.h"

namespace grainside::tools {

// In the order of the file. `path` names the dossier, `yaml` is its text. The mended text was read again and says what
// was meant; nothing, with errors, where it does not.
std::optional<std::vector<SourceEdit>> yaml_edits(const std::string& path, std::string_view yaml,
                                                  const Dossier& dossier, const Rewording& rewording,
                                                  const EvidenceBook& evidence, Diagnostics& diagnostics);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_YAML_EDITS_H
