// Random readings and whole dossiers over the default book, from a seed and nothing else.
#ifndef GRAINSIDE_TESTS_UNIT_IDENTIFY_RANDOM_DOSSIER_H
#define GRAINSIDE_TESTS_UNIT_IDENTIFY_RANDOM_DOSSIER_H

#include <cstddef>
#include <cstdint>
#include <random>
#include <string>
#include <vector>

#include "evidence/dossier_data.h"

namespace grainside::support {

// Not thread-safe. The standard fixes what mt19937_64 gives; no distribution of the library is used.
class RandomDossier {
public:
    explicit RandomDossier(std::uint64_t seed) : random_(seed) {}

    std::size_t below(std::size_t count) { return static_cast<std::size_t>(random_() % count); }
    double between(double low, double high);

    // One to six readings of one part, by any method that suits it: outcomes, densities, compositions.
    evidence::PartRecord part();
    // A dossier's text with a listing of several claims and readings by methods of all kinds. Three outcomes of four
    // fit something that each part might be, so that readings agree now and then.
    std::string yaml();

private:
    std::string reading(Part part, const std::vector<std::size_t>& truth);
    std::size_t outcome_of(const evidence::Method& method, const std::vector<std::size_t>& truth);
    std::string quantities(const evidence::Method& method);

    std::mt19937_64 random_;
};

}  // namespace grainside::support

#endif  // GRAINSIDE_TESTS_UNIT_IDENTIFY_RANDOM_DOSSIER_H
