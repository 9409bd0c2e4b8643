#include "report/identity_lines.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>

#include "report/evidence_text.h"
#include "report/plain_lines.h"
#include "verdict/percent_text.h"

namespace grainside::report {
namespace {

constexpr double kLeastShown = 0.02;
constexpr std::size_t kMostShown = 5;
constexpr double kLeastDecibans = 0.05;

class IdentityLines {
public:
    IdentityLines(const DossierContext& context, Colours colours, std::size_t width, std::string& out)
        : context_(context), colours_(colours), width_(width), lines_(colours, width, out), out_(out) {}

    void write_part(const PartJudgement& part, bool with_weights) {
        for (const FrameBelief& belief : part.frames) {
            out_ += "  ";
            append_wrapped(out_,
                           fmt::format("{}: {}{}", name_of(part.part), belief.title,
                                       belief.own_priors ? " (what was believed before is the dossier's own)" : ""),
                           4, width_);
            write_candidates(belief);
            if (with_weights) write_weights(part.part, belief);
            if (belief.contradictory) write_alarm(part.part, belief);
        }
        if (part.frames.empty()) {
            out_ += fmt::format("  {}: its readings tell nothing of what it is\n", name_of(part.part));
        }
    }

private:
    void write_candidates(const FrameBelief& belief) {
        for (std::size_t i = 0; i < std::min(kMostShown, belief.candidates.size()); ++i) {
            const CandidateBelief& candidate = belief.candidates[i];
            if (i > 0 && candidate.posterior < kLeastShown) break;
            out_ += fmt::format("    {:>8}  ", verdict::percent_text(candidate.posterior));
            append_wrapped(
                out_, fmt::format("{} (before any reading {})", candidate.name, verdict::percent_text(candidate.prior)),
                14, width_);
        }
    }

    void write_weights(Part part, const FrameBelief& belief) {
        std::string_view label = "readings";
        for (std::size_t i = 0; i < belief.readings.size(); ++i) {
            if (std::abs(belief.decibans[i]) < kLeastDecibans) continue;
            lines_.write(label, fmt::format("{} ({})", reading_line(context_, part, belief.readings[i]),
                                            weight_text(belief.decibans[i], belief.candidates.front().name)));
            label = {};
        }
    }

    void write_alarm(Part part, const FrameBelief& belief) {
        std::string text = fmt::format(
            "the readings contradict one another: {:.0f} decibans less probable together than each for itself",
            belief.conflict);
        lines_.write("alarm", text);
        for (const std::uint32_t odd : belief.odd_ones) {
            lines_.write({}, "they agree without: " + reading_line(context_, part, odd));
        }
        if (belief.odd_ones.empty())
            lines_.write({}, "taking out a single reading does not end it, or there are too many to try");
    }

    DossierContext context_;
    Colours colours_;
    std::size_t width_;
    LabelledLines lines_;
    std::string& out_;
};

void append(const DossierContext& context, const std::vector<PartJudgement>& parts, Colours colours, std::size_t width,
            bool with_weights, std::string& out) {
    if (parts.empty()) return;
    out += colours.heading();
    out += "What the readings show";
    out += colours.plain();
    out += '\n';
    IdentityLines lines(context, colours, width, out);
    for (const PartJudgement& part : parts) lines.write_part(part, with_weights);
    out += '\n';
}

}  // namespace

void append_identity(const DossierContext& context, const std::vector<PartJudgement>& parts, Colours colours,
                     std::size_t width, std::string& out) {
    append(context, parts, colours, width, false, out);
}

void append_identity_with_weights(const DossierContext& context, const std::vector<PartJudgement>& parts,
                                  Colours colours, std::size_t width, std::string& out) {
    append(context, parts, colours, width, true, out);
}

}  // namespace grainside::report
