// write_identity_view: what each part may be, for people.
#include <string>

#include "grainside/dossier_report.h"
#include "report/evidence_text.h"
#include "report/identity_lines.h"
#include "report/view_text.h"

namespace grainside {
inline namespace v0 {

void write_identity_view(const DossierContext& context, const Judgement& judgement, const ViewOptions& options,
                         std::string& out) {
    const report::Colours colours(options.colour);
    const std::size_t width = report::width_of(options);
    report::append_sample_heading(context, colours, width, out);
    if (judgement.parts.empty()) out += "No readings on record.\n\n";
    report::append_identity_with_weights(context, judgement.parts, colours, width, out);
    report::append_methods(context, judgement.methods, colours, width, out);
}

}  // namespace v0
}  // namespace grainside
