#include "identify/sampled_part.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "identify/information.h"
#include "identify/likelihood.h"
#include "identify/test_bits.h"

namespace grainside::identify {
namespace {

using evidence::EvidenceData;
using evidence::kNone;
using evidence::Method;

constexpr std::size_t kSamples = 64;

// The method tells something of a frame whose readings contradict one another.
bool is_contradicted(const EvidenceData& data, const PartEvidence& part, std::size_t method) {
    return std::any_of(part.beliefs.begin(), part.beliefs.end(), [&](const Belief& belief) {
        return belief.contradictory && table_for(data.methods[method], belief.frame) != nullptr;
    });
}

double most_bits(const Question& question) {
    constexpr double kAnswers = 3;
    return question.says == 0 ? std::numeric_limits<double>::infinity() : std::log2(kAnswers);
}

void scale_to_one(std::vector<double>& values) {
    double sum = 0;
    for (const double value : values) sum += value;
    if (sum <= 0) return;  // a book without slips: nothing explains this outcome, and nothing is learnt
    for (double& value : values) value /= sum;
}

}  // namespace

SampledPart::SampledPart(const EvidenceData& data, const PartEvidence& part, std::vector<const Question*> questions,
                         std::uint64_t seed)
    : data_(data), questions_(std::move(questions)), random_(seed) {
    const auto add_frame = [&](std::size_t frame) {
        if (std::find(frames_.begin(), frames_.end(), frame) == frames_.end()) frames_.push_back(frame);
    };
    for (const Question* question : questions_) {
        for (const FrameView& view : question->views) {
            add_frame(view.frame);
            if (view.outer != kNone) add_frame(view.outer);
        }
        waiting_.push_back(question->open);
    }
    for (const std::size_t frame : frames_) {
        priors_.push_back(part.beliefs[frame].prior);
        read_.push_back(!part.beliefs[frame].readings.empty());
    }
    for (const evidence::Reading& reading : part.record.readings) looks_.push_back(reading.method);
    for (std::size_t i = 0; i < data.methods.size(); ++i) {
        const Method& method = data.methods[i];
        const bool here = (method.parts & evidence::part_bit(part.record.part)) != 0;
        const bool on_record = std::find(looks_.begin(), looks_.end(), i) != looks_.end();
        // What was measured can be measured again; what contradicts something is worth a second look.
        const bool again =
            !method.reads.empty() || method.computes != evidence::Computes::nothing || is_contradicted(data, part, i);
        const bool speaks = !part.worn || method.when_worn == evidence::WhenWorn::counts;
        possible_.push_back(here && speaks && (!on_record || again));
    }
    samples_.resize(kSamples);
    std::vector<double> places;
    for (const std::size_t frame : frames_) {
        // Evenly spread places over the belief, dealt out anew for each frame.
        places.clear();
        for (std::size_t i = 0; i < kSamples; ++i) {
            places.push_back((static_cast<double>(i) + 0.5) / static_cast<double>(kSamples));
        }
        for (std::size_t i = kSamples; i > 1; --i) {
            std::swap(places[i - 1], places[static_cast<std::size_t>(uniform() * static_cast<double>(i))]);
        }
        const std::vector<double>& belief = part.beliefs[frame].posterior;
        for (std::size_t i = 0; i < kSamples; ++i) {
            double rest = places[i];
            std::size_t truth = 0;
            while (truth + 1 < belief.size() && rest >= belief[truth]) rest -= belief[truth++];
            samples_[i].frames.push_back({belief, truth});
        }
    }
    for (Sample& sample : samples_) {
        for (const Question* question : questions_) {
            std::vector<double> chances;
            std::vector<bool> truths;
            for (const LimitQuestion& limit : question->limits) {
                chances.push_back(limit.chance);
                truths.push_back(uniform() < limit.chance);
            }
            sample.limits.push_back(std::move(chances));
            sample.limit_truth.push_back(std::move(truths));
        }
        sample.settled.resize(questions_.size());
    }
    note_settled();
}

double SampledPart::uniform() {
    constexpr double kStep = 0x1.0p-53;
    return static_cast<double>(random_() >> 11U) * kStep;
}

std::vector<double> SampledPart::bits_of(std::size_t method) const {
    const Method& made = data_.methods[method];
    std::vector<double> bits(questions_.size(), 0);
    for (std::size_t slot = 0; slot < frames_.size(); ++slot) {
        const std::vector<double> chances =
            outcome_chances(data_, method, frames_[slot], share_behind(data_, looks_, method));
        if (chances.empty()) continue;
        for (std::size_t q = 0; q < questions_.size(); ++q) {
            for (const FrameView& view : questions_[q]->views) {
                if (view.frame != frames_[slot]) continue;
                for (const Sample& sample : samples_) {
                    if (sample.settled[q]) continue;
                    bits[q] += frame_bits(sample.frames[slot].belief, view, questions_[q]->says, chances,
                                          made.outcomes.size());
                }
            }
        }
    }
    for (std::size_t q = 0; q < questions_.size(); ++q) {
        for (std::size_t i = 0; i < questions_[q]->limits.size(); ++i) {
            if (!measures_for(made, *questions_[q], questions_[q]->limits[i].quantity)) continue;
            for (const Sample& sample : samples_) {
                if (sample.settled[q]) continue;
                bits[q] += binary_information(sample.limits[q][i], made.reliability);
            }
        }
        // True, false or neither: a question holds no more than that.
        bits[q] = std::min(bits[q] / static_cast<double>(samples_.size()), most_bits(*questions_[q]));
    }
    return bits;
}

void SampledPart::take_outcome(Sample& sample, std::size_t method) {
    const Method& made = data_.methods[method];
    const std::size_t outcomes = made.outcomes.size();
    std::vector<double> drawn(outcomes, 1);
    bool any = false;
    const double share = share_behind(data_, looks_, method);
    std::vector<std::vector<double>> tables(frames_.size());
    for (std::size_t slot = 0; slot < frames_.size(); ++slot) {
        tables[slot] = outcome_chances(data_, method, frames_[slot], share);
        if (tables[slot].empty()) continue;
        any = true;
        for (std::size_t outcome = 0; outcome < outcomes; ++outcome) {
            drawn[outcome] *= tables[slot][sample.frames[slot].truth * outcomes + outcome];
        }
    }
    if (!any) return;
    scale_to_one(drawn);
    double rest = uniform();
    std::size_t outcome = 0;
    while (outcome + 1 < outcomes && rest >= drawn[outcome]) rest -= drawn[outcome++];
    for (std::size_t slot = 0; slot < frames_.size(); ++slot) {
        if (tables[slot].empty()) continue;
        std::vector<double>& belief = sample.frames[slot].belief;
        for (std::size_t i = 0; i < belief.size(); ++i) belief[i] *= tables[slot][i * outcomes + outcome];
        scale_to_one(belief);
    }
}

void SampledPart::make(std::size_t method) {
    const Method& made = data_.methods[method];
    for (Sample& sample : samples_) {
        take_outcome(sample, method);
        for (std::size_t q = 0; q < questions_.size(); ++q) {
            for (std::size_t i = 0; i < questions_[q]->limits.size(); ++i) {
                if (!measures_for(made, *questions_[q], questions_[q]->limits[i].quantity)) continue;
                const bool right = uniform() < made.reliability;
                const bool answer = sample.limit_truth[q][i] == right;
                double& chance = sample.limits[q][i];
                const double yes = chance * (answer ? made.reliability : 1 - made.reliability);
                const double no = (1 - chance) * (answer ? 1 - made.reliability : made.reliability);
                chance = yes + no > 0 ? yes / (yes + no) : chance;
            }
        }
    }
    possible_[method] = false;
    looks_.push_back(method);
    note_speaking(method);
    note_settled();
}

void SampledPart::note_speaking(std::size_t method) {
    const Method& made = data_.methods[method];
    for (std::size_t slot = 0; slot < frames_.size(); ++slot) {
        if (table_for(made, frames_[slot]) != nullptr) read_[slot] = true;
    }
    for (std::size_t q = 0; q < questions_.size(); ++q) {
        const Question& question = *questions_[q];
        const bool speaks =
            std::any_of(question.views.begin(), question.views.end(),
                        [&](const FrameView& view) { return table_for(made, view.frame) != nullptr; }) ||
            std::any_of(question.limits.begin(), question.limits.end(),
                        [&](const LimitQuestion& limit) { return measures_for(made, question, limit.quantity); });
        if (speaks) waiting_[q] = false;
    }
}

std::size_t SampledPart::slot_of(std::size_t frame) const noexcept {
    return static_cast<std::size_t>(std::find(frames_.begin(), frames_.end(), frame) - frames_.begin());
}

// As verdicts are made: what no test speaks of is taken as given, and a belief that was strong before proves nothing.
Bearing SampledPart::frames_decide(const Sample& sample, const Question& question) const {
    TruthSum before;
    TruthSum after;
    for (const FrameView& view : question.views) {
        const std::size_t slot = slot_of(view.frame);
        const std::vector<double> unread;
        double inside_before = 1;
        double inside_after = 1;
        if (view.outer != kNone && read_[slot_of(view.outer)]) {
            inside_before = inside_of(view, priors_[slot_of(view.outer)]);
            inside_after = inside_of(view, sample.frames[slot_of(view.outer)].belief);
        }
        before.add(view, read_[slot] ? priors_[slot] : unread, inside_before);
        after.add(view, read_[slot] ? sample.frames[slot].belief : unread, inside_after);
    }
    return decided_by(before.truth(), after.truth(), data_.judging);
}

// Where nothing is claimed: one candidate has enough belief, and not by its prior alone.
bool SampledPart::one_candidate_stands(const Sample& sample, const Question& question) const {
    return std::any_of(question.views.begin(), question.views.end(), [&](const FrameView& view) {
        const std::size_t slot = slot_of(view.frame);
        const std::vector<double>& belief = sample.frames[slot].belief;
        const auto most = std::max_element(belief.begin(), belief.end());
        const double before = priors_[slot][static_cast<std::size_t>(most - belief.begin())];
        return decided_by({before, 0, 1 - before}, {*most, 0, 1 - *most}, data_.judging) == Bearing::holds;
    });
}

// By the frames: the claim is true or false with enough belief; by the limits: all of them lie on one side, or one
// speaks against the claim.
bool SampledPart::is_settled(const Sample& sample, std::size_t question) const {
    if (waiting_[question]) return false;
    const Question& asked = *questions_[question];
    const double enough = data_.judging.decided_at;
    bool limits_settled = true;
    for (const double chance : sample.limits[question]) {
        if (1 - chance >= enough) return true;
        limits_settled = limits_settled && chance >= enough;
    }
    if (asked.views.empty()) return limits_settled;
    if (asked.says == 0) return one_candidate_stands(sample, asked);
    const Bearing by_frames = frames_decide(sample, asked);
    return by_frames == Bearing::fails || (by_frames == Bearing::holds && limits_settled);
}

void SampledPart::note_settled() {
    for (Sample& sample : samples_) {
        for (std::size_t q = 0; q < questions_.size(); ++q) sample.settled[q] = is_settled(sample, q);
    }
}

double SampledPart::decided() const {
    double sum = 0;
    for (std::size_t q = 0; q < questions_.size(); ++q) {
        for (const Sample& sample : samples_) sum += sample.settled[q] ? 1 : 0;
    }
    return sum / static_cast<double>(samples_.size());
}

}  // namespace grainside::identify
