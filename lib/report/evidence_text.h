// Small pieces that the views of a dossier share. Thread-safe.
#ifndef GRAINSIDE_REPORT_EVIDENCE_TEXT_H
#define GRAINSIDE_REPORT_EVIDENCE_TEXT_H

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "evidence/dossier_data.h"
#include "grainside/dossier_report.h"
#include "report/grade_colour.h"

namespace grainside::report {

// Labelled lines of a view: the label in its column, the value wrapped behind it.
class LabelledLines {
public:
    LabelledLines(Colours colours, std::size_t width, std::string& out) : colours_(colours), width_(width), out_(out) {}
    // An empty label continues the one above.
    void write(std::string_view label, std::string_view value);

private:
    Colours colours_;
    std::size_t width_;
    std::string& out_;
};

// The dossier's name and a line on the sample: "Tote bag, tan; bought 2026-08-14 for 189.00 USD; new".
void append_sample_heading(const DossierContext& context, Colours colours, std::size_t width, std::string& out);

// "Cut edge under a loupe, 2026-08-20: yarns or a knit under a polymer coat"; "" where the dossier has no such reading.
std::string reading_line(const DossierContext& context, Part part, std::uint32_t reading);

// The same without the method and the day: "yarns or a knit under a polymer coat".
std::string reading_result(const DossierContext& context, Part part, std::uint32_t reading);

// "20.3 decibans against it, 107 to 1", where `what` is "it".
std::string weight_text(double decibans, std::string_view what);

// "Cut edge under a loupe, 2026-08-20"
std::string method_and_date(const DossierContext& context, Part part, std::uint32_t reading);

// A caution with the titles of the methods that need it, "; " between them: the same warning is read once.
struct Caution {
    std::string text;
    std::string methods;
};
std::vector<Caution> cautions_of(const std::vector<NamedMethod>& methods);

// The cautions of the methods that a view names, each text once, then what each method stands on; nothing for no
// method.
void append_methods(const DossierContext& context, const std::vector<NamedMethod>& methods, Colours colours,
                    std::size_t width, std::string& out);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_EVIDENCE_TEXT_H
