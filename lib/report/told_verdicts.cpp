#include "report/told_verdicts.h"

#include <cstddef>
#include <string_view>
#include <tuple>

namespace grainside::report {

std::map<Part, std::vector<ToldVerdict>> told_by_part(const Judgement& judgement) {
    using Same =
        std::tuple<Part, ConceptId, ConceptId, ConceptId, Kind, bool, bool, Grade, std::string_view, std::string_view>;
    std::map<Part, std::vector<ToldVerdict>> told;
    std::map<Same, std::size_t> places;
    for (const Verdict& verdict : judgement.verdicts) {
        const Claim& claim = judgement.check->mentions[verdict.claim];
        std::vector<ToldVerdict>& of_part = told[claim.part];
        const auto [place, first] =
            places.try_emplace({claim.part, claim.says, claim.called, claim.place, claim.kind, claim.negated,
                                claim.hedged, verdict.grade, verdict.because, verdict.say_instead},
                               of_part.size());
        if (first) of_part.push_back({&verdict, {}});
        of_part[place->second].places.push_back(verdict.claim);
    }
    return told;
}

}  // namespace grainside::report
