#include "verdict/filed_role.h"

namespace grainside::verdict {

FiledTold filed_on(const CheckResult& check, std::uint32_t claim, Grade grade) {
    const ClaimOnFile* filed = on_file(check, claim);
    if (filed == nullptr || grade == Grade::misleading || grade == Grade::vague) return {};
    FiledTold told{&check.proofs->all()[filed->proof], filed->outcome, FiledRole::supports};
    if (filed->outcome != ProofOutcome::supports) {
        if (grade != Grade::unsupported && grade != Grade::inconclusive) return {};
        told.role = FiledRole::not_enough;
    } else if (grade == Grade::contradicted) {
        told.role = FiledRole::overruled;
    }
    return told;
}

}  // namespace grainside::verdict
