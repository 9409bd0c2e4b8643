#include "verdict/verdict_text.h"

#include <fmt/format.h>

#include <algorithm>

#include "identify/likelihood.h"
#include "identify/posterior.h"
#include "identify/test_bits.h"
#include "verdict/limit_text.h"
#include "verdict/shown_belief.h"

namespace grainside::verdict {
namespace {

using evidence::Method;

// What is claimed, in the book's words: the same for all claims that say the same.
std::string statement_words(const Bench& bench, const Claim& claim) {
    const std::string& wording = bench.tree[claim.says].wording;
    return claim.negated ? "not " + wording : wording;
}

const LimitDecision* first_that(const ClaimEvidence& evidence, LimitVerdict says) {
    const auto found = std::find_if(evidence.limits.begin(), evidence.limits.end(),
                                    [says](const LimitDecision& one) { return one.says == says; });
    return found == evidence.limits.end() ? nullptr : &*found;
}

// "'Cut edge under a loupe' (10 min, about 1 euro, harm: cut, by practised hands)"
std::string method_words(const Method& method) {
    std::string words = fmt::format("'{}' ({:g} min", method.title, method.minutes);
    if (method.cost > 0) words += fmt::format(", about {:g} euro", method.cost);
    words += method.harm == evidence::Harm::none ? ", harmless" : fmt::format(", harm: {}", name_of(method.harm));
    if (method.who == evidence::Who::practised) words += ", by practised hands";
    if (method.who == evidence::Who::laboratory) words += ", by a laboratory";
    return words + ')';
}

std::string reading_words(const Bench& bench, const evidence::PartRecord& record, std::uint32_t index) {
    const evidence::Reading& reading = record.readings[index];
    std::string words = fmt::format("'{}'", bench.data.methods[reading.method].title);
    if (!reading.date.empty()) words += fmt::format(" of {}", reading.date);
    return words;
}

std::string contradicted(const Bench& bench, const Claim& claim, const ClaimEvidence& evidence) {
    // What the part is says more than a limit that it crosses.
    if (evidence.frames_grade == Grade::contradicted) {
        const identify::Belief* belief = claim.negated ? closest(evidence) : loudest_against(evidence);
        return fmt::format("The readings show {}; {} is false of it.", shown(bench, *belief),
                           statement_words(bench, claim));
    }
    return limit_sentence(bench, *first_that(evidence, LimitVerdict::contradicts));
}

std::string consistent(const Bench& bench, const Claim& claim, const ClaimEvidence& evidence) {
    if (const LimitDecision* limit = first_that(evidence, LimitVerdict::supports)) {
        return limit_sentence(bench, *limit);
    }
    const identify::Belief* belief = claim.negated ? loudest_against(evidence) : closest(evidence);
    return fmt::format("The readings show {}.", shown(bench, *belief));
}

std::string unsupported(const Bench& bench, const Claim& claim, const ClaimEvidence& evidence) {
    const identify::Belief* belief = evidence.part == nullptr ? nullptr : closest(evidence);
    if (belief != nullptr) {
        return fmt::format("The readings show {}; none tells whether it is {}.", shown(bench, *belief),
                           statement_words(bench, claim));
    }
    return evidence.asked ? "No reading on record speaks of it."
                          : "No reading on record speaks of it, and no test of this book would.";
}

std::string inconclusive(const Bench& bench, const ClaimEvidence& evidence) {
    if (const LimitDecision* limit = first_that(evidence, LimitVerdict::undecided)) {
        return limit_sentence(bench, *limit);
    }
    if (evidence.contradictory) {
        return "Readings of this part contradict one another, and the verdict would hang on one of them.";
    }
    if (const identify::Belief* belief = evidence.part == nullptr ? nullptr : closest(evidence)) {
        if (!identify::moved(*belief)) return "The readings on record tell nothing of it.";
        const bool frames_alone =
            std::all_of(evidence.limits.begin(), evidence.limits.end(),
                        [](const LimitDecision& decision) { return decision.says == LimitVerdict::unread; });
        // Else a belief above the line that the report names would seem to be overlooked.
        if (const identify::Truth& truth = evidence.truth;
            frames_alone && std::max(truth.holds, truth.fails) >= bench.data.judging.decided_at) {
            return fmt::format(
                "The readings leave {}; that the words are {} was likely before any of them, and they alone do not "
                "decide it.",
                shown(bench, *belief), truth.fails > truth.holds ? "false" : "true");
        }
        return fmt::format("The readings leave {}; that does not decide it.", shown(bench, *belief));
    }
    if (const LimitDecision* limit = first_that(evidence, LimitVerdict::met)) return limit_sentence(bench, *limit);
    return "The readings on record do not decide it.";
}

bool decides(const LimitDecision& decision, Grade grade) {
    return (grade == Grade::contradicted && decision.says == LimitVerdict::contradicts) ||
           (grade == Grade::consistent && decision.says == LimitVerdict::supports);
}

// Which readings the verdict hangs on. Frames and limits may each give it: then a reading carries it only where both
// rest on it.
void add_carriers(const Bench& bench, const ClaimEvidence& evidence, std::vector<std::string>& changes) {
    const auto without = [&](const evidence::PartRecord& record, std::uint32_t reading, Grade grade) {
        changes.push_back(
            fmt::format("Without {} it would be {}.", reading_words(bench, record, reading), name_of(grade)));
    };
    std::vector<const LimitDecision*> limits;
    for (const LimitDecision& decision : evidence.limits) {
        if (decides(decision, evidence.grade)) limits.push_back(&decision);
    }
    const bool by_frames = evidence.frames_grade == evidence.grade;
    if (!by_frames && limits.size() == 1 && limits.front()->readings.size() == 1 &&
        limits.front()->limit->no_part_is.empty()) {
        without(bench.part(limits.front()->part)->record, limits.front()->readings.front(), evidence.frames_grade);
    }
    if (!by_frames) return;
    if (limits.empty()) {
        for (const Carrier& carrier : evidence.carriers) {
            without(evidence.part->record, carrier.reading, carrier.without);
        }
    }
    if (evidence.carriers.empty() && evidence.stands_alone && evidence.readings.size() > 1) {
        changes.emplace_back("It would stand without any one of its readings.");
    }
}

// Readings on a worn sample that do not count; told where they would have spoken of the claim.
void add_worn(const Bench& bench, const ClaimEvidence& evidence, std::vector<std::string>& changes) {
    if (evidence.part == nullptr || !bench.dossier.worn()) return;
    for (std::uint32_t i = 0; i < evidence.part->record.readings.size(); ++i) {
        const evidence::Reading& reading = evidence.part->record.readings[i];
        const bool left_out = std::any_of(evidence.views.begin(), evidence.views.end(), [&](const auto& view) {
            return identify::table_for(bench.data.methods[reading.method], view.frame) != nullptr &&
                   !identify::counts(bench.data, view.frame, reading, true);
        });
        if (!left_out) continue;
        changes.push_back(fmt::format("{} does not count: on a worn sample it does not speak for the state as new.",
                                      reading_words(bench, evidence.part->record, i)));
    }
}

}  // namespace

std::string because_of(const Bench& bench, const Claim& claim, const ClaimEvidence& evidence) {
    switch (evidence.grade) {
        case Grade::contradicted:
            return contradicted(bench, claim, evidence);
        case Grade::consistent:
            return consistent(bench, claim, evidence);
        case Grade::unsupported:
            return unsupported(bench, claim, evidence);
        default:
            return inconclusive(bench, evidence);
    }
}

Changes changes_of(const Bench& bench, const Claim& claim, const ClaimEvidence& evidence) {
    constexpr std::size_t kMostOfLimits = 3;
    Changes result;
    const bool decided = evidence.grade == Grade::contradicted || evidence.grade == Grade::consistent;
    if (decided) add_carriers(bench, evidence, result.sentences);
    std::vector<std::string> of_limits;
    for (const LimitDecision& decision : evidence.limits) {
        for (std::string& sentence : limit_changes(decision, evidence.grade)) {
            if (of_limits.size() < kMostOfLimits) of_limits.push_back(std::move(sentence));
        }
    }
    result.sentences.insert(result.sentences.end(), of_limits.begin(), of_limits.end());
    add_worn(bench, evidence, result.sentences);
    if (decided) return result;
    const identify::Question question = question_of(bench, claim, evidence);
    const identify::PartEvidence* part = bench.part(question.part);
    if (part == nullptr) return result;
    if (const auto method = identify::most_telling(bench.data, *part, question)) {
        result.next_test = method;
        result.sentences.push_back(fmt::format("For its effort {} would tell most about {}.",
                                               method_words(bench.data.methods[*method]),
                                               statement_words(bench, claim)));
    }
    return result;
}

}  // namespace grainside::verdict
