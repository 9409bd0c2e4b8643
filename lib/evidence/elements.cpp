#include "evidence/elements.h"

#include <algorithm>

namespace grainside::evidence {

namespace {

constexpr std::string_view kSymbols[] = {
    "H",  "He", "Li", "Be", "B",  "C",  "N",  "O",  "F",  "Ne", "Na", "Mg", "Al", "Si", "P",  "S",  "Cl", "Ar", "K",
    "Ca", "Sc", "Ti", "V",  "Cr", "Mn", "Fe", "Co", "Ni", "Cu", "Zn", "Ga", "Ge", "As", "Se", "Br", "Kr", "Rb", "Sr",
    "Y",  "Zr", "Nb", "Mo", "Tc", "Ru", "Rh", "Pd", "Ag", "Cd", "In", "Sn", "Sb", "Te", "I",  "Xe", "Cs", "Ba", "La",
    "Ce", "Pr", "Nd", "Pm", "Sm", "Eu", "Gd", "Tb", "Dy", "Ho", "Er", "Tm", "Yb", "Lu", "Hf", "Ta", "W",  "Re", "Os",
    "Ir", "Pt", "Au", "Hg", "Tl", "Pb", "Bi", "Po", "At", "Rn", "Fr", "Ra", "Ac", "Th", "Pa", "U"};

static_assert(std::size(kSymbols) == 92, "uranium is element 92");

}  // namespace

std::span<const std::string_view> element_symbols() noexcept {
    return kSymbols;
}

bool is_element(std::string_view symbol) noexcept {
    return std::find(std::begin(kSymbols), std::end(kSymbols), symbol) != std::end(kSymbols);
}

}  // namespace grainside::evidence
