// Days of a dossier, held against the calendar and the purchase.
#ifndef GRAINSIDE_EVIDENCE_DAY_CHECK_H
#define GRAINSIDE_EVIDENCE_DAY_CHECK_H

#include <string>

#include "evidence/entry_reader.h"

namespace grainside::evidence {

// Days are texts YYYY-MM-DD, which sort as the days do; empty where not known. Not thread-safe.
class DayCheck {
public:
    // `today` empty: no day is in the future; `earliest` empty: none is too long ago.
    DayCheck(const EntryReader& reader, std::string today, std::string earliest)
        : reader_(reader), today_(std::move(today)), earliest_(std::move(earliest)) {}

    // The day that stands under `key`, empty where none does. Faults: "wrong-type" (no day of the calendar),
    // "future-date". Warning: "early-date".
    std::string read(document::Node entry, std::string_view key) const;
    // The same of something that is done to the bought sample. Warning: "before-purchase".
    std::string read_after_purchase(document::Node entry, std::string_view key) const;

    void set_bought(std::string bought) { bought_ = std::move(bought); }

private:
    const EntryReader& reader_;
    std::string today_;
    std::string earliest_;
    std::string bought_;
};

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_DAY_CHECK_H
