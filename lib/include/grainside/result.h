// What can go wrong while loading, and how it is told.
//
// Loading rules or reading input may fail; checking may not. Whatever is wrong is an `Issue` with its place and, where
// we know one, what to do. A `Result<T>` is a value or a non-empty list of issues, never both.
//
//     const auto tote = grainside::Dossier::parse("tote.yaml", "sample: {what: Tote, prize: 89 EUR}\n", ".", evidence);
//     if (!tote) {
//         for (const grainside::Issue& issue : tote.issues()) std::cout << grainside::to_text(issue);
//     }
//     // prints: tote.yaml:1:22: error: the key `prize` is not known [unknown-key]
//     // prints:   sample: {what: Tote, prize: 89 EUR}
//     // prints:                        ^
//     // prints:   hint: did you mean `price`?
//
//     // A function of yours that may fail in the same way.
//     const auto first_market = [](const grainside::RuleBook& asked) -> grainside::Result<std::string> {
//         const std::vector<std::string> markets = asked.markets();
//         if (markets.empty()) return grainside::Issue{.code = "no-market", .message = "the book names no market"};
//         return markets.front();
//     };
//     if (const auto market = first_market(book)) std::cout << market.value() << '\n';
//     // prints: us
//
// Thread safety: plain values; as safe as the standard containers they are made of.
#ifndef GRAINSIDE_RESULT_H
#define GRAINSIDE_RESULT_H

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace grainside {
inline namespace v0 {

// One fault or remark. `line` and `column` count from 1; 0 says that the place is not known. Columns count bytes.
struct Issue {
    enum class Severity : std::uint8_t { error, warning, note };

    Severity severity = Severity::error;
    std::string code = {};  // permanent and short, for example "unknown-key"; rules/README.md explains each
    std::string file = {};  // as the caller named it; "<stdin>" for standard input
    std::uint32_t line = 0;
    std::uint32_t column = 0;
    std::string message = {};  // one sentence, no full stop
    std::string hint = {};     // what to do; may be empty
    std::string excerpt = {};  // the source line of the fault, control characters replaced; may be empty
};

// "file:line:column: error: message [code]", then the excerpt with a caret below the column, then "hint: ...".
// Ends with a newline. Never emits a control character other than newline, whatever the issue holds.
std::string to_text(const Issue& issue);

// A value, or why there is none.
template <typename T>
class [[nodiscard]] Result {
public:
    Result(T value) : value_(std::move(value)) {}
    // REQUIRES: `issues` is not empty.
    Result(std::vector<Issue> issues) : issues_(std::move(issues)) {}
    Result(Issue issue) { issues_.push_back(std::move(issue)); }

    explicit operator bool() const noexcept { return value_.has_value(); }

    // REQUIRES: the result holds a value.
    T& value() & { return *value_; }
    const T& value() const& { return *value_; }
    T&& value() && { return std::move(*value_); }

    // Empty exactly where there is a value.
    const std::vector<Issue>& issues() const& noexcept { return issues_; }
    std::vector<Issue>&& issues() && noexcept { return std::move(issues_); }

private:
    std::optional<T> value_;
    std::vector<Issue> issues_;
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_RESULT_H
