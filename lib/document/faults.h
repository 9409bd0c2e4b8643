// Collecting every fault of a set of documents, each with its place, excerpt and hint.
#ifndef GRAINSIDE_DOCUMENT_FAULTS_H
#define GRAINSIDE_DOCUMENT_FAULTS_H

#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "document/document.h"
#include "grainside/result.h"

namespace grainside::document {

// Not thread-safe; one per load.
class Faults {
public:
    void error(const Document& document, Node place, std::string_view code, std::string message, std::string hint = {});
    void warning(const Document& document, Node place, std::string_view code, std::string message, std::string hint = {});
    void add(Issue issue) { issues_.push_back(std::move(issue)); }

    bool any_errors() const noexcept;
    // Sorted by file, line, column; equal ones kept in the order they were found.
    std::vector<Issue> take();

private:
    std::vector<Issue> issues_;
};

// The candidate nearest to `word` by edit distance, if it is near enough to be a slip of the pen (at most 2 edits, at
// most a third of the length); empty otherwise.
std::string_view nearest(std::string_view word, std::span<const std::string_view> candidates);

// "did you mean `x`?" or, with no near candidate and at most 12 of them, "one of a, b, c"; else empty.
std::string suggestion(std::string_view word, std::span<const std::string_view> candidates);

// Reports every key of `mapping` that is not in `known` (code "unknown-key", with a suggestion). Where `mapping` is no
// mapping, reports that instead (code "wrong-type") and returns false.
bool check_keys(const Document& document, Node mapping, std::initializer_list<std::string_view> known, Faults& faults);

// Strict readers of scalars: plain decimal, no octal, no hexadecimal, no 'nan'. Reports "wrong-type" and gives nothing
// where the text is anything else.
std::optional<std::int64_t> read_integer(const Document& document, Node node, Faults& faults);
std::optional<double> read_number(const Document& document, Node node, Faults& faults);
// Exactly 'yes' or 'no'.
std::optional<bool> read_yes_no(const Document& document, Node node, Faults& faults);
// The texts of a scalar or of a sequence of scalars. Reports "wrong-type" for anything else.
std::vector<std::string_view> read_words(const Document& document, Node node, Faults& faults);

}  // namespace grainside::document

#endif  // GRAINSIDE_DOCUMENT_FAULTS_H
