#include "document/faults.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <set>
#include <tuple>
#include <utility>

#include "document/inert_text.h"

namespace grainside::document {
namespace {

constexpr std::size_t kMaxNearWord = 64;
constexpr std::size_t kMaxEdits = 2;
constexpr std::size_t kMaxListed = 12;

// Edits are insertions, deletions, replacements and swaps of neighbours (optimal string alignment).
// REQUIRES: both at most kMaxNearWord + kMaxEdits long.
std::size_t edit_distance(std::string_view a, std::string_view b) {
    using Row = std::array<std::size_t, kMaxNearWord + kMaxEdits + 1>;
    Row before_last{};
    Row last{};
    Row row{};
    for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        before_last = std::exchange(last, row);
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t replaced = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            row[j] = std::min({replaced, last[j] + 1, row[j - 1] + 1});
            const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
            if (swapped) row[j] = std::min(row[j], before_last[j - 2] + 1);
        }
    }
    return row[b.size()];
}

}  // namespace

void Faults::error(const Document& document, Node place, std::string_view code, std::string message, std::string hint) {
    add(Issue::Severity::error, document, {place.line(), place.column()}, code, std::move(message), std::move(hint));
}

void Faults::warning(const Document& document, Node place, std::string_view code, std::string message,
                     std::string hint) {
    add(Issue::Severity::warning, document, {place.line(), place.column()}, code, std::move(message), std::move(hint));
}

void Faults::error_at_key(const Document& document, Node place, std::string_view code, std::string message,
                          std::string hint) {
    add(Issue::Severity::error, document, document.key_place(place), code, std::move(message), std::move(hint));
}

void Faults::add(Issue::Severity severity, const Document& document, Place place, std::string_view code,
                 std::string message, std::string hint) {
    // The excerpt is looked for only when the issue will be kept: finding a line costs a pass over the source.
    const bool kept = issues_.size() < kMaxIssues;
    add(Issue{.severity = severity,
              .code = std::string(code),
              .file = document.file(),
              .line = place.line,
              .column = place.column,
              .message = std::move(message),
              .hint = std::move(hint),
              .excerpt = kept ? make_excerpt(document.source_line(place.line), place.column) : std::string()});
}

void Faults::add(Issue issue) {
    any_errors_ = any_errors_ || issue.severity == Issue::Severity::error;
    if (issues_.size() < kMaxIssues) {
        issues_.push_back(std::move(issue));
    } else {
        ++left_out_;
    }
}

std::string Faults::suggestion(std::string_view word, std::span<const std::string_view> candidates) {
    met(word, candidates);
    return document::suggestion(word, candidates);
}

void Faults::met(std::string_view word, std::span<const std::string_view> candidates) {
    if (watched_.empty() || word != watched_) return;
    std::set<std::string_view> known(names_in_place_.begin(), names_in_place_.end());
    std::vector<std::string> fresh;
    for (const std::string_view name : candidates) {
        if (known.insert(name).second) fresh.emplace_back(name);
    }
    std::move(fresh.begin(), fresh.end(), std::back_inserter(names_in_place_));
}

std::vector<Issue> Faults::take() {
    std::vector<Issue> taken = std::exchange(issues_, {});
    std::stable_sort(taken.begin(), taken.end(), [](const Issue& a, const Issue& b) {
        return std::tie(a.file, a.line, a.column) < std::tie(b.file, b.line, b.column);
    });
    if (left_out_ != 0) {
        Issue note;
        note.severity = Issue::Severity::note;
        note.code = "more-faults";
        note.message = std::to_string(left_out_) + " more are not shown";
        taken.push_back(std::move(note));
    }
    left_out_ = 0;
    any_errors_ = false;
    return taken;
}

std::string_view nearest(std::string_view word, std::span<const std::string_view> candidates) {
    if (word.size() > kMaxNearWord) return {};
    std::size_t allowed = std::min(kMaxEdits, word.size() / 3);
    std::string_view best;
    for (const std::string_view candidate : candidates) {
        const std::size_t shorter = std::min(word.size(), candidate.size());
        if (word.size() + candidate.size() - 2 * shorter > allowed) continue;
        const std::size_t distance = edit_distance(word, candidate);
        if (distance > allowed) continue;
        best = candidate;
        if (distance == 0) break;
        allowed = distance - 1;
    }
    return best;
}

std::string suggestion(std::string_view word, std::span<const std::string_view> candidates) {
    const std::string_view near = nearest(word, candidates);
    if (!near.empty()) return "did you mean `" + std::string(near) + "`?";
    if (candidates.empty() || candidates.size() > kMaxListed) return {};
    std::string all = "one of ";
    for (std::size_t i = 0; i < candidates.size(); ++i) {
        if (i > 0) all += ", ";
        all += candidates[i];
    }
    return all;
}

std::string key_hint(Node child, std::span<const std::string_view> known, Faults& faults) {
    const std::string_view key = child.key();
    faults.met(key, known);
    const bool digit = !key.empty() && key[0] >= '0' && key[0] <= '9';
    if (digit && child.kind() == NodeKind::null) {
        return "a comma ends the value before it in braces; decimals have a point, as in `4.20`";
    }
    return suggestion(key, known);
}

bool check_keys(const Document& document, Node mapping, std::initializer_list<std::string_view> known, Faults& faults) {
    if (!mapping.is_mapping()) {
        faults.error(document, mapping, "wrong-type", "expected a mapping, with lines of the form `key: value`");
        return false;
    }
    const std::span<const std::string_view> names(known.begin(), known.size());
    for (const Node child : mapping) {
        if (std::find(names.begin(), names.end(), child.key()) != names.end()) continue;
        faults.error_at_key(document, child, "unknown-key", "the key `" + std::string(child.key()) + "` is not known",
                            key_hint(child, names, faults));
    }
    return true;
}

}  // namespace grainside::document
