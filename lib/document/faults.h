// Collecting every fault of a set of documents, each with its place, excerpt and hint.
#ifndef GRAINSIDE_DOCUMENT_FAULTS_H
#define GRAINSIDE_DOCUMENT_FAULTS_H

#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "document/document.h"
#include "grainside/result.h"

namespace grainside::document {

// A collection keeps this many issues and only counts the others, so that a hostile file fills no memory.
inline constexpr std::size_t kMaxIssues = 1000;

// Not thread-safe; one per load.
class Faults {
public:
    // A fault at a value. An absent `place` gives an issue of the whole file.
    void error(const Document& document, Node place, std::string_view code, std::string message, std::string hint = {});
    void warning(const Document& document, Node place, std::string_view code, std::string message,
                 std::string hint = {});
    // A fault of the key itself: told at the key where its place is known, else at its value.
    void error_at_key(const Document& document, Node place, std::string_view code, std::string message,
                      std::string hint = {});
    void add(Issue issue);

    // Errors that were counted but not kept are errors all the same.
    bool any_errors() const noexcept { return any_errors_; }

    // The hint for a word that is none of `candidates`: `suggestion` below. Readers ask for it here, and so tell
    // whoever watches what they would have taken.
    std::string suggestion(std::string_view word, std::span<const std::string_view> candidates);
    // For those who complete what somebody types: a word that no list has is put where the typing goes on, the
    // document is read, and the names that its reader knew in that place are those to offer. So what is offered is what
    // is read. REQUIRES: `word` is not empty.
    void watch(std::string word) { watched_ = std::move(word); }
    // In the reader's order, each once, of all places where it met the word; empty where it met it nowhere.
    const std::vector<std::string>& names_in_place() const noexcept { return names_in_place_; }
    // What a reader tells that does not ask for a hint.
    void met(std::string_view word, std::span<const std::string_view> candidates);
    // Sorted by file, line, column; equal ones kept in the order they were found. Where more than kMaxIssues were
    // found, a last note ("more-faults") says how many are not shown. Leaves the collection empty.
    std::vector<Issue> take();

private:
    void add(Issue::Severity severity, const Document& document, Place place, std::string_view code,
             std::string message, std::string hint);

    std::vector<Issue> issues_;
    std::string watched_;
    std::vector<std::string> names_in_place_;
    std::size_t left_out_ = 0;
    bool any_errors_ = false;
};

// The candidate nearest to `word` by edit distance (in bytes; two swapped neighbours are one edit), if it is near
// enough to be a slip of the pen (at most 2 edits, at most a third of the word's length); empty otherwise. The first of
// equally near ones. Words beyond 64 bytes are near to nothing.
std::string_view nearest(std::string_view word, std::span<const std::string_view> candidates);

// "did you mean `x`?" or, with no near candidate and at most 12 of them, "one of a, b, c"; else empty.
std::string suggestion(std::string_view word, std::span<const std::string_view> candidates);

// The hint for a key that is not known: the suggestion; or, for what follows a decimal comma in braces (a key that
// begins with a digit and has no value, as in `{price: 4,20 EUR}`), what the comma does there.
std::string key_hint(Node child, std::span<const std::string_view> known, Faults& faults);

// Reports every key of `mapping` that is not in `known` (code "unknown-key" at the key, with a suggestion). Where
// `mapping` is no mapping, reports that instead (code "wrong-type") and returns false.
bool check_keys(const Document& document, Node mapping, std::initializer_list<std::string_view> known, Faults& faults);

// Strict readers of scalars. Each reports "wrong-type" and gives nothing where the text is anything else than
// described; numbers and yes/no must stand without quotes.
//
// Plain decimal with an optional minus: no plus, no leading zero, no octal, no hexadecimal.
std::optional<std::int64_t> read_integer(const Document& document, Node node, Faults& faults);
// The same with an optional fraction that has digits on both sides of the point: no exponent, no 'nan', no 'inf'.
std::optional<double> read_number(const Document& document, Node node, Faults& faults);
// Exactly 'yes' or 'no'.
std::optional<bool> read_yes_no(const Document& document, Node node, Faults& faults);
// A day of the calendar as YYYY-MM-DD, years 0001 to 9999 (proleptic Gregorian, ISO 8601); quotes are allowed. Gives
// the text, which sorts as the days do; it lives as long as the document.
std::optional<std::string_view> read_date(const Document& document, Node node, Faults& faults);
// The texts of a scalar or of a sequence of scalars; members that are no scalars are reported and left out.
std::vector<std::string_view> read_words(const Document& document, Node node, Faults& faults);

}  // namespace grainside::document

#endif  // GRAINSIDE_DOCUMENT_FAULTS_H
