// A rule book behind its handle, shared with all that was made with it.
#ifndef GRAINSIDE_C_INTERFACE_BOOK_H
#define GRAINSIDE_C_INTERFACE_BOOK_H

#include <memory>
#include <utility>

#include "grainside/grainside_c.h"
#include "grainside/report.h"
#include "grainside/rule_book.h"

namespace grainside::c_interface {

// Immutable.
struct SharedBook {
    explicit SharedBook(RuleBook book) : rules(std::move(book)), writer(rules) {}

    const RuleBook rules;
    const RecordWriter writer;
};

}  // namespace grainside::c_interface

struct GrainsideBook {
    std::shared_ptr<const grainside::c_interface::SharedBook> shared;
};

#endif  // GRAINSIDE_C_INTERFACE_BOOK_H
