#include "identify/test_bits.h"

#include <algorithm>
#include <cmath>

#include "evidence/quantity_names.h"
#include "identify/effort.h"
#include "identify/information.h"
#include "identify/likelihood.h"

namespace grainside::identify {

using evidence::EvidenceData;
using evidence::Method;

bool reads_quantity(const Method& method, std::string_view quantity) noexcept {
    const std::string_view name = quantity.substr(0, quantity.find('.'));
    const auto computed = evidence::computed_by(method.computes);
    return evidence::reads(method, name) ||
           std::any_of(computed.begin(), computed.end(), [&](const auto& one) { return one.name == name; });
}

bool measures_for(const Method& method, const Question& question, std::string_view quantity) noexcept {
    if (!reads_quantity(method, quantity)) return false;
    std::vector<std::size_t> frames = method.frames;
    for (const evidence::OutcomeTable& table : method.tables) frames.push_back(table.frame);
    if (frames.empty() || question.views.empty()) return true;
    return std::any_of(question.views.begin(), question.views.end(), [&](const FrameView& view) {
        return std::find(frames.begin(), frames.end(), view.frame) != frames.end() ||
               std::find(frames.begin(), frames.end(), view.outer) != frames.end();
    });
}

double share_behind(const EvidenceData& data, std::span<const std::size_t> made, std::size_t method) noexcept {
    double share = 1;
    for (const std::size_t one : made) {
        if (data.methods[one].looks_at == data.methods[method].looks_at) share *= data.judging.same_look;
    }
    return share;
}

std::vector<double> outcome_chances(const EvidenceData& data, std::size_t method, std::size_t frame, double share) {
    const Method& made = data.methods[method];
    const evidence::OutcomeTable* table = table_for(made, frame);
    std::vector<double> chances;
    if (table == nullptr) return chances;
    const std::size_t outcomes = made.outcomes.size();
    for (std::size_t candidate = 0; candidate < data.frames[frame].candidates.size(); ++candidate) {
        double sum = 0;
        const std::size_t row = chances.size();
        for (std::size_t outcome = 0; outcome < outcomes; ++outcome) {
            chances.push_back(std::pow(outcome_chance(data, made, *table, candidate, outcome), share));
            sum += chances.back();
        }
        for (std::size_t i = row; i < chances.size(); ++i) chances[i] /= sum;
    }
    return chances;
}

double frame_bits(const std::vector<double>& belief, const FrameView& view, ConceptId says,
                  const std::vector<double>& chances, std::size_t outcome_count) {
    constexpr int kBearings = 3;
    std::vector<int> classes(belief.size());
    for (std::size_t i = 0; i < belief.size(); ++i) {
        classes[i] = says == 0 ? static_cast<int>(i) : static_cast<int>(view.bearings[i]);
    }
    const int count = says == 0 ? static_cast<int>(belief.size()) : kBearings;
    return view.inside * mutual_information(belief, classes, count, chances, outcome_count);
}

std::optional<std::size_t> most_telling(const EvidenceData& data, const PartEvidence& part, const Question& question) {
    std::vector<std::size_t> made;
    for (const evidence::Reading& reading : part.record.readings) made.push_back(reading.method);
    std::optional<std::size_t> best;
    double best_worth = 0;
    for (std::size_t i = 0; i < data.methods.size(); ++i) {
        const Method& method = data.methods[i];
        const bool speaks = !part.worn || method.when_worn == evidence::WhenWorn::counts;
        if (!speaks || (method.parts & evidence::part_bit(part.record.part)) == 0) continue;
        double bits = 0;
        for (const LimitQuestion& limit : question.limits) {
            if (measures_for(method, question, limit.quantity))
                bits += binary_information(limit.chance, method.reliability);
        }
        const bool on_record = std::find(made.begin(), made.end(), i) != made.end();
        for (const FrameView& view : question.views) {
            if (on_record || table_for(method, view.frame) == nullptr) continue;
            const auto chances = outcome_chances(data, i, view.frame, share_behind(data, made, i));
            bits +=
                frame_bits(part.beliefs[view.frame].posterior, view, question.says, chances, method.outcomes.size());
        }
        const double worth = bits / effort_of(data.judging, method);
        if (bits < data.judging.least_bits || worth <= best_worth) continue;
        best = i;
        best_worth = worth;
    }
    return best;
}

}  // namespace grainside::identify
