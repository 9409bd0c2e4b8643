#include "verdict/limit_text.h"

#include <fmt/format.h>

#include "evidence/quantity_names.h"
#include "measure/quantity_text.h"
#include "measure/unit.h"
#include "verdict/quantity_words.h"
#include "verdict/shown_belief.h"

namespace grainside::verdict {
namespace {

// "The coat of the body is 0.210 mm"
std::string subject(const Bench& bench, const LimitDecision& decision) {
    const std::string quantity = quantity_words(decision.limit->quantity);
    return fmt::format("The {} of the {} {} {}", quantity, name_of(decision.part),
                       quantity.ends_with('s') && !quantity.ends_with("ss") ? "are" : "is",
                       value_text(bench, decision));
}

std::string of_stated(const LimitDecision& decision) {
    const std::string& stated = decision.supported_by;
    switch (decision.says) {
        case LimitVerdict::supports:
            return fmt::format("which agrees with {}", stated);
        case LimitVerdict::contradicts:
            return fmt::format("which is not {}", stated);
        default:
            return fmt::format("too near to the end of {} to decide", stated);
    }
}

std::string of_bounds(const LimitDecision& decision) {
    const std::string& against = decision.contradicted_by;
    const std::string& towards = decision.supported_by;
    switch (decision.says) {
        case LimitVerdict::contradicts:
            return fmt::format("and {} the claim is false", against);
        case LimitVerdict::supports:
            return fmt::format("and {} bears the claim out", towards);
        case LimitVerdict::met:
            return fmt::format("not {}, which would contradict the claim; that alone does not show it", against);
        default:
            break;
    }
    if (!decision.between) return fmt::format("too near to the limit ({}) to decide", decision.near);
    if (against.empty()) return fmt::format("short of what would bear the claim out ({})", towards);
    return fmt::format("between what would contradict the claim ({}) and what would bear it out ({})", against,
                       towards);
}

std::string of_absence(const Bench& bench, const LimitDecision& decision) {
    const std::string value = value_text(bench, decision);
    if (decision.says == LimitVerdict::undecided) {
        return fmt::format("The {} may be {}, and that does not decide it.", name_of(decision.part), value);
    }
    return fmt::format("The {} is read as {}.", name_of(decision.part), value);
}

std::string capitalised(std::string text) {
    if (!text.empty() && text.front() >= 'a' && text.front() <= 'z') {
        text.front() = static_cast<char>(text.front() - 'a' + 'A');
    }
    return text;
}

}  // namespace

std::string value_text(const Bench& bench, const LimitDecision& decision) {
    const evidence::Limit& limit = *decision.limit;
    if (!limit.no_part_is.empty()) {
        const identify::PartEvidence& part = *bench.part(decision.part);
        std::string text;
        for (const std::size_t frame : frames_that_tell(bench.tree, bench.data, limit, part)) {
            if (!text.empty()) text += "; ";
            text += shown(bench, part.beliefs[frame]);
        }
        return text;
    }
    const measure::UnitInfo* unit = measure::find_unit(limit.unit);
    if (unit == nullptr) {
        const auto dimension = evidence::dimension_of(limit.quantity, bench.data, bench.tree);
        unit = &measure::working_unit(dimension.value_or(measure::Dimension::number));
    }
    return measure::to_text(decision.value, *unit);
}

std::string limit_sentence(const Bench& bench, const LimitDecision& decision) {
    const evidence::Limit& limit = *decision.limit;
    if (!limit.no_part_is.empty()) return of_absence(bench, decision) + ' ' + limit.because;
    if (decision.worn_out) {
        return fmt::format("{}, but the sample is worn, and wear lowers it. {}", subject(bench, decision),
                           limit.because);
    }
    if (decision.needs_unshown) {
        return fmt::format("{}, but no reading shows that the part is {}. {}", subject(bench, decision),
                           bench.tree[limit.needs].wording, limit.because);
    }
    if (decision.partial && decision.says == LimitVerdict::undecided) {
        return fmt::format("{} by what was read, which is not all that counts. {}", subject(bench, decision),
                           limit.because);
    }
    return fmt::format("{}, {}. {}", subject(bench, decision),
                       limit.stated_tolerance ? of_stated(decision) : of_bounds(decision), limit.because);
}

std::vector<std::string> limit_changes(const LimitDecision& decision, Grade grade) {
    std::vector<std::string> changes;
    const evidence::Limit& limit = *decision.limit;
    const std::string quantity = quantity_words(limit.quantity);
    if (decision.says == LimitVerdict::unread) {
        const bool could_fall = grade != Grade::contradicted && !decision.contradicted_by.empty();
        const bool could_rise = grade != Grade::contradicted && grade != Grade::consistent;
        if (could_fall) {
            changes.push_back(fmt::format("{} {} would contradict it; nothing on record measures it.",
                                          capitalised(quantity), decision.contradicted_by));
        } else if (could_rise && !decision.supported_by.empty()) {
            changes.push_back(fmt::format("{} of {} would bear it out; nothing on record measures it.",
                                          capitalised(quantity), decision.supported_by));
        }
        return changes;
    }
    if (decision.says != LimitVerdict::undecided || !limit.no_part_is.empty() || decision.between) return changes;
    if (decision.needs_unshown) return changes;
    if (decision.partial) {
        changes.push_back(fmt::format("A reading of all of the {} would settle it.", quantity));
    } else if (decision.worn_out) {
        changes.push_back(fmt::format("A sample that was not worn would show what {} was when new.", quantity));
    } else if (decision.repeats && *decision.repeats > static_cast<int>(decision.readings.size())) {
        changes.push_back(
            fmt::format("{} readings of {} in all would settle it, if their mean stays and their scatter is at random.",
                        *decision.repeats, quantity));
    } else {
        changes.push_back(
            fmt::format("More readings of {} would not settle it: the value lies too near to the limit.", quantity));
    }
    return changes;
}

}  // namespace grainside::verdict
