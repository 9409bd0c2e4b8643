// A measured composition against the composition window of an alloy specification, percent by mass.
//
// Every element that was measured and can be seen counts once under every window, so that the log-likelihoods of
// several windows for one reading compare: an element that the window lists has its range, the balance element what the
// listed ones leave of 100, any other one should be a trace. What was not measured is skipped; a reading that looked
// for an element and found none has to say so (0 with its uncertainty). Elements are taken as independent, which a
// reading that is scaled to 100 is not quite: likelihoods come out a little too sharp. A window says what a cast may
// hold; what was cut, filed or plated is the reader's business. Pure functions, any number of threads; time goes with
// the product of the two lists, some twenty elements each.
#ifndef GRAINSIDE_MEASURE_ALLOY_WINDOW_H
#define GRAINSIDE_MEASURE_ALLOY_WINDOW_H

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "measure/blurred_range.h"
#include "measure/measured.h"

namespace grainside::measure {

struct ElementRange {
    std::string symbol;  // "Cu"; compared letter by letter
    double low = 0;      // 0 with an upper limit only ("at most")
    double high = 0;
    double tolerance = 0;  // by how much a product analysis may miss the range of the cast on either side
};

struct AlloyWindow {
    std::vector<ElementRange> elements;
    std::string balance;       // the element that makes up the rest: Zn in brass and zinc alloys, Fe in steel; or empty
    double trace_limit = 0.5;  // for elements that the window does not name; common practice, no source
};

struct ElementReading {
    std::string symbol;
    Measured percent;
};

enum class ElementRole : std::uint8_t { listed, balance, trace };

struct ElementFit {
    std::string symbol;
    ElementRole role = ElementRole::listed;
    Range range;                // what it was held against, tolerance included
    double log_likelihood = 0;  // blurred_range.h, per percent
    // That the true value is in the range, from this reading alone (conformity.h). A range that begins at 0 has no
    // lower limit here, because nothing can be below it.
    double probability = 0;
    // How much worse the reading fits than the best one could at the same uncertainty: log of the ratio of the two
    // probabilities, 0 at best. It does not blame an element for a range that the method cannot resolve.
    double log_fit = 0;
};

struct WindowFit {
    double log_likelihood = 0;         // sum over `elements`; 0 where none could be compared
    std::vector<ElementFit> elements;  // in the order of the readings, without those that were skipped
    std::optional<std::size_t> worst;  // the one with the lowest log_fit below 0, the first of equals
};

// `unseen`: elements that the method of this reading cannot see or sees too badly to count, for X-ray fluorescence C
// and N, on many instruments Mg. They are skipped, and because such a reading shares out what it misses among what it
// sees, the balance element may reach up by as much.
// Nothing where a range or tolerance is negative or upside down or above 100, an element is listed or measured twice,
// the balance is also listed, the lows sum to more than 100 with a balance, or a reading is not usable
// (usable.h).
std::optional<WindowFit> fit_window(const AlloyWindow& window, const std::vector<ElementReading>& readings,
                                    const std::vector<std::string>& unseen = {});

// What the listed elements leave of 100 for the balance: at most 100 less the lows of those seen, at least 100 less all
// highs and one trace_limit. Nothing as above and where there is no balance.
std::optional<Range> balance_range(const AlloyWindow& window, const std::vector<std::string>& unseen = {});

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_ALLOY_WINDOW_H
