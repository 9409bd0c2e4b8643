// What a mark of a claim says of the words around it.
#ifndef GRAINSIDE_REPORT_MARK_TEXT_H
#define GRAINSIDE_REPORT_MARK_TEXT_H

#include <map>
#include <string>
#include <string_view>

#include "rules/book_data.h"

namespace grainside::report {

// Immutable once made; any number of threads may use one.
class MarkTexts {
public:
    // Looks the words of the grammar up once, in one pass over the vocabulary.
    explicit MarkTexts(const rules::BookData& book);

    // "in the listing's name", "with 'faux', 'imitation' or the like before it"; the bare name where there is no such
    // mark.
    std::string marked(std::string_view mark) const;
    // Its denial: "not in the listing's name", "without 'faux', 'imitation' or the like before it".
    std::string unmarked(std::string_view mark) const;

private:
    std::map<std::string_view, std::string, std::less<>> texts_;
};

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_MARK_TEXT_H
