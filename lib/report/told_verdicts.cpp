#include "report/told_verdicts.h"

#include <cstddef>
#include <string_view>
#include <tuple>

#include "report/concession_text.h"
#include "verdict/claim_verdicts.h"

namespace grainside::report {

std::map<Part, std::vector<ToldVerdict>> told_by_part(const Judgement& judgement, const Conceded* conceded) {
    using Same = std::tuple<verdict::Saying, Grade, std::string_view, std::string_view, const Concession*>;
    std::map<Part, std::vector<ToldVerdict>> told;
    std::map<Same, std::size_t> places;
    for (std::size_t at = 0; at < judgement.verdicts.size(); ++at) {
        const Verdict& verdict = judgement.verdicts[at];
        const Claim& claim = judgement.check->mentions[verdict.claim];
        std::vector<ToldVerdict>& of_part = told[claim.part];
        const auto [place, first] = places.try_emplace({verdict::saying_of(claim), verdict.grade, verdict.because,
                                                        verdict.say_instead, concession_of(conceded, at)},
                                                       of_part.size());
        if (first) of_part.push_back({at, &verdict, {}});
        of_part[place->second].places.push_back(verdict.claim);
    }
    return told;
}

}  // namespace grainside::report
