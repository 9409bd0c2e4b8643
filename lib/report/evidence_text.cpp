#include "report/evidence_text.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "evidence/evidence_data.h"
#include "measure/quantity_text.h"
#include "measure/unit.h"
#include "report/plain_lines.h"
#include "report/verdict_facts.h"
#include "verdict/quantity_words.h"

namespace grainside::report {
namespace {

constexpr std::size_t kLabelIndent = 6;
constexpr std::size_t kValueIndent = 19;
constexpr std::size_t kMostQuantities = 8;

std::string quantity_text(const evidence::Method& method, const evidence::NamedQuantity& quantity) {
    const measure::UnitInfo* unit = nullptr;
    for (const evidence::QuantityRead& read : method.reads) {
        if (quantity.name.starts_with(read.name)) unit = measure::find_unit(read.unit);
    }
    if (unit == nullptr || unit->dimension != quantity.dimension) unit = &measure::working_unit(quantity.dimension);
    const std::string words = verdict::quantity_words(quantity.name);
    if (!quantity.written.empty()) return words + ' ' + quantity.written;
    return fmt::format("{} {}", words, measure::to_text(quantity.measured, *unit));
}

}  // namespace

void LabelledLines::write(std::string_view label, std::string_view value) {
    out_.append(kLabelIndent, ' ');
    out_ += colours_.quiet();
    out_ += label;
    out_ += colours_.plain();
    out_.append(kValueIndent - kLabelIndent - label.size(), ' ');
    append_wrapped(out_, value, kValueIndent, width_);
}

namespace {

std::string sample_line(const evidence::DossierData& dossier) {
    std::string line = dossier.what;
    if (!dossier.bought.empty()) line += "; bought " + dossier.bought;
    if (!dossier.price.empty()) line += (dossier.bought.empty() ? "; bought for " : " for ") + dossier.price;
    if (!dossier.condition.empty()) line += "; " + dossier.condition;
    if (dossier.months_in_use > 0) line += fmt::format(", {:g} months in use", dossier.months_in_use);
    return line;
}

}  // namespace

void append_sample_heading(const DossierContext& context, Colours colours, std::size_t width, std::string& out) {
    out += colours.heading();
    out += one_line(context.dossier.id(), width);
    out += colours.plain();
    out += '\n';
    append_wrapped(out, sample_line(context.dossier.data()), 0, width);
    out += '\n';
}

namespace {

const evidence::Reading* reading_at(const DossierContext& context, Part part, std::uint32_t reading) {
    for (const evidence::PartRecord& record : context.dossier.data().parts) {
        if (record.part == part && reading < record.readings.size()) return &record.readings[reading];
    }
    return nullptr;
}

}  // namespace

std::string method_and_date(const DossierContext& context, Part part, std::uint32_t reading) {
    const evidence::Reading* one = reading_at(context, part, reading);
    if (one == nullptr) return {};
    const std::string& title = context.evidence.data().methods[one->method].title;
    return one->date.empty() ? title : title + ", " + one->date;
}

std::string reading_result(const DossierContext& context, Part part, std::uint32_t reading) {
    const evidence::Reading* one = reading_at(context, part, reading);
    if (one == nullptr) return {};
    const evidence::Method& method = context.evidence.data().methods[one->method];
    std::string line;
    if (one->outcome != evidence::kNone) line += method.outcomes[one->outcome].means;
    for (std::size_t i = 0; i < std::min(one->quantities.size(), kMostQuantities); ++i) {
        if (i > 0 || one->outcome != evidence::kNone) line += ", ";
        line += quantity_text(method, one->quantities[i]);
    }
    return line;
}

std::string reading_line(const DossierContext& context, Part part, std::uint32_t reading) {
    const std::string result = reading_result(context, part, reading);
    return result.empty() ? result : method_and_date(context, part, reading) + ": " + result;
}

std::string weight_text(double decibans, std::string_view what) {
    const double odds = std::pow(10, std::abs(decibans) / 10);
    return fmt::format("{:.1f} decibans {} {}, {:.{}f} to 1", std::abs(decibans), decibans < 0 ? "against" : "for",
                       what, odds, odds < 10 ? 1 : 0);
}

std::vector<Caution> cautions_of(const std::vector<NamedMethod>& methods) {
    std::vector<Caution> cautions;
    for (const NamedMethod& method : methods) {
        for (const std::string& text : method.cautions) {
            const auto same = std::find_if(cautions.begin(), cautions.end(),
                                           [&](const Caution& known) { return known.text == text; });
            if (same == cautions.end()) {
                cautions.push_back({text, method.title});
            } else {
                same->methods += "; " + method.title;
            }
        }
    }
    return cautions;
}

void append_methods(const DossierContext& context, const std::vector<NamedMethod>& methods, Colours colours,
                    std::size_t width, std::string& out) {
    constexpr std::size_t kIndent = 4;
    const auto heading = [&](std::string_view text) {
        out += colours.heading();
        out += text;
        out += colours.plain();
        out += '\n';
    };
    const auto item = [&](const std::string& text) {
        out += "  - ";
        append_wrapped(out, text, kIndent, width);
    };
    const std::vector<Caution> cautions = cautions_of(methods);
    if (!cautions.empty()) heading("Cautions of the methods named");
    for (const Caution& caution : cautions) item(fmt::format("{} ({})", caution.text, caution.methods));
    if (!cautions.empty()) out += '\n';
    if (methods.empty()) return;
    heading("What the methods stand on");
    for (const NamedMethod& method : methods) {
        std::vector<std::string> cites;
        for (const std::uint32_t index : method.sources) {
            cites.push_back(cited(context.book.sources()[index]));
        }
        item(fmt::format("{}: {}", method.title, fmt::join(cites, "; ")));
    }
    out += '\n';
}

}  // namespace grainside::report
