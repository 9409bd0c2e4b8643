// A checker behind its handle, and its last result.
#ifndef GRAINSIDE_C_INTERFACE_CHECKER_H
#define GRAINSIDE_C_INTERFACE_CHECKER_H

#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "c_interface/book.h"
#include "c_interface/kept_listing.h"
#include "grainside/checker.h"

struct GrainsideResult {
    GrainsideResult(std::shared_ptr<const grainside::c_interface::SharedBook> shared_book,
                    grainside::CheckOptions options)
        : book(std::move(shared_book)), checker(book->rules, std::move(options)) {}

    std::shared_ptr<const grainside::c_interface::SharedBook> book;
    grainside::Checker checker;
    grainside::c_interface::KeptListing kept;
    const grainside::CheckResult* result = nullptr;  // of `checker`, about `kept`; nullptr before the first check
    std::vector<std::uint32_t> claims;               // indices of the mentions that are claims

    // What is worked out when it is asked for. One thread at a time has a result.
    mutable std::vector<std::optional<std::string>> say_instead;  // one a finding
    mutable std::string finding_records;
    mutable std::string claim_records;
};

// The result of the last check is all that a checker keeps.
struct GrainsideChecker {
    GrainsideResult last;
};

#endif  // GRAINSIDE_C_INTERFACE_CHECKER_H
