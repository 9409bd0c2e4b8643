// Any bytes as a dossier: reading neither crashes nor depends on anything else, faults have places inside of the text
// and are safe to print, and what loads holds numbers that a judgement can rest on.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "evidence/dossier_data.h"
#include "evidence/evidence_data.h"
#include "grainside/dossier.h"
#include "require.h"
#include "told_faults.h"

namespace {

using grainside::Dossier;
using grainside::EvidenceBook;
using grainside::RuleBook;
using grainside::evidence::kNone;
using grainside::evidence::Reading;
using grainside::fuzz::require;
using grainside::fuzz::told_faults;

// A longer text only says more of the same.
constexpr std::size_t kMaxInputBytes = 8192;

const EvidenceBook& book() {
    static const RuleBook rules = std::move(RuleBook::built_in()).value();
    static const EvidenceBook evidence = std::move(EvidenceBook::load(rules)).value();
    return evidence;
}

grainside::Result<Dossier> read(std::string_view text) {
    // No file beside the dossier, so that the input alone decides.
    return Dossier::parse("d.yaml", std::string(text), std::filesystem::path("no-such-folder"), book(),
                          {.today = "2026-11-26"});
}

void check_reading(const Reading& reading) {
    const auto& methods = book().data().methods;
    require(reading.method < methods.size());
    require(reading.outcome == kNone || reading.outcome < methods[reading.method].outcomes.size());
    require(reading.outcome != kNone || !reading.quantities.empty());
    const auto check = [](const grainside::measure::Measured& measured) {
        require(std::isfinite(measured.value) && std::isfinite(measured.u) && measured.u >= 0 && measured.dof > 0);
    };
    for (const auto& quantity : reading.quantities) {
        check(quantity.measured);
        require(!quantity.name.empty());
        if (quantity.dimension == grainside::measure::Dimension::share) {
            require(quantity.measured.value >= 0 && quantity.measured.value <= 100);
        }
    }
    for (const auto& [element, share] : reading.composition) check(share);
    require(reading.date.empty() || (reading.date.size() == 10 && reading.date <= "2026-11-26"));
}

void check_dossier(const Dossier& dossier) {
    const auto& data = dossier.data();
    const auto& frames = book().data().frames;
    std::size_t count = 0;
    for (const auto& part : data.parts) {
        for (const Reading& reading : part.readings) check_reading(reading);
        count += part.readings.size();
    }
    require(count == dossier.reading_count() && count <= grainside::kMaxReadings);
    require(data.months_in_use >= 0 && std::isfinite(data.months_in_use));
    for (const auto& confirmed : data.confirmed) {
        require(confirmed.frame < frames.size() && confirmed.candidate < frames[confirmed.frame].candidates.size());
    }
    for (const auto& own : data.priors) {
        require(own.frame < frames.size() && own.prior.size() == frames[own.frame].candidates.size());
        double sum = 0;
        for (const double prior : own.prior) {
            require(prior > 0);
            sum += prior;
        }
        require(std::fabs(sum - 1) < 1e-9);
    }
    if (dossier.listing() != nullptr) require(!dossier.listing()->fields.empty());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size > kMaxInputBytes) return 0;
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    const auto first = read(text);
    const auto second = read(text);
    require(static_cast<bool>(first) == static_cast<bool>(second));
    require(told_faults(first.issues(), text) == told_faults(second.issues(), text));
    if (!first) return 0;
    check_dossier(first.value());
    require(told_faults(first.value().warnings(), text) == told_faults(second.value().warnings(), text));
    return 0;
}
