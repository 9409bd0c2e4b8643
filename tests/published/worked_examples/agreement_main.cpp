// agreement: how far the default rule book agrees with the published verdicts, as Markdown on standard output.
// corpus/published/AGREEMENT.md is its output; a test compares the two.
#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

#include "known_differences.h"
#include "worked_example.h"

namespace grainside::published {
namespace {

struct Told {
    WorkedExample example;
    Agreement agreement;
    std::string_view why_not;  // of a known difference
};

struct Group {
    std::string source;
    std::vector<Told> told;
};

// "16 CFR 260" of "16 CFR 260.3(b), Example 1"; of others what stands before the clause.
std::string source_of(std::string_view cite) {
    constexpr std::string_view kCode = "16 CFR ";
    if (cite.starts_with(kCode)) return std::string(cite.substr(0, cite.find_first_not_of("0123456789", kCode.size())));
    cite = cite.substr(0, cite.find(" (from memory)"));
    std::size_t end = cite.size();
    for (std::string_view clause : {" Art", " art.", " section", " scope", " Annex", ",", ";", " (", " 4.1"}) {
        // A number in brackets belongs to the name: 'Directive (EU) 2024/825'.
        const std::size_t at = cite.find(clause);
        if (at != std::string_view::npos && cite.substr(at, 4) != " (EU") end = std::min(end, at);
    }
    return std::string(cite.substr(0, end));
}

// A cell of a table holds no bar and no line end.
std::string cell(std::string_view text) {
    std::string out;
    for (char c : text) {
        if (c == '|') out += '\\';
        out += c == '\n' ? ' ' : c;
    }
    return out;
}

std::string_view outcome(const Told& told) {
    if (!told.example.applicable) return "not applicable";
    return told.agreement.agreed ? "agreed" : "differs";
}

std::size_t count(const std::vector<Told>& all, std::string_view what) {
    return static_cast<std::size_t>(
        std::count_if(all.begin(), all.end(), [&](const Told& told) { return outcome(told) == what; }));
}

void append_row(const Told& told, std::string& out) {
    const WorkedExample& example = told.example;
    const std::string where = fmt::format("{}{}", example.market.empty() ? "any" : example.market,
                                          example.on == "2026-11-26" ? "" : " on " + example.on);
    if (!example.applicable) {
        fmt::format_to(std::back_inserter(out), "| {} | {} | | | not applicable: {} |\n", cell(example.cite),
                       example.verdict, cell(example.why));
        return;
    }
    const std::string wanted = fmt::format("{}{}", name_of(example.grade), example.or_worse ? " or worse" : "");
    fmt::format_to(std::back_inserter(out), "| {} | {}: {} ({}) | '{}'{} | {} | {} |\n", cell(example.cite),
                   example.verdict, wanted, where, cell(example.quote),
                   example.on_file.empty() ? "" : ", proof on file", cell(told.agreement.ours),
                   told.agreement.agreed ? "agreed" : "differs: " + cell(told.why_not));
}

int run() {
    const Result<RuleBook> book = RuleBook::built_in();
    const Result<std::vector<WorkedExample>> examples = read_worked_examples();
    if (!book || !examples) {
        std::fputs("the rule book or corpus/published/worked_examples.jsonl cannot be read\n", stderr);
        return 2;
    }
    std::vector<Group> groups;
    std::vector<Told> all;
    const auto known = known_differences_of_worked_examples();
    for (const WorkedExample& example : examples.value()) {
        Told told{example, {}, {}};
        if (example.applicable) told.agreement = compare(book.value(), example);
        const auto differs = std::find_if(known.begin(), known.end(),
                                          [&](const KnownDifference& one) { return one.row == example.name; });
        if (differs != known.end()) told.why_not = differs->why;
        const std::string source = source_of(example.cite);
        auto group = std::find_if(groups.begin(), groups.end(), [&](const Group& one) { return one.source == source; });
        if (group == groups.end()) group = groups.insert(groups.end(), {source, {}});
        group->told.push_back(told);
        all.push_back(std::move(told));
    }
    std::string out =
        "# Agreement with published verdicts\n\n"
        "Written by the program `agreement` of tests/published/worked_examples; do not edit. Each line is a verdict of "
        "a\n"
        "source on an example, the grade that follows from it, words of our own with the same problem, and what the\n"
        "default rule book says to them. Verdicts of other facts than the words ('or worse') are met where we ask for\n"
        "proof. README.md beside this file has the form of the rows.\n\n"
        "| source | examples | agreed | differs | not applicable |\n|---|---:|---:|---:|---:|\n";
    const auto line = [&](std::string_view name, const std::vector<Told>& told) {
        fmt::format_to(std::back_inserter(out), "| {} | {} | {} | {} | {} |\n", name, told.size(),
                       count(told, "agreed"), count(told, "differs"), count(told, "not applicable"));
    };
    for (const Group& group : groups) line(group.source, group.told);
    line("all", all);
    for (const Group& group : groups) {
        fmt::format_to(
            std::back_inserter(out),
            "\n## {}\n\n| example | its verdict, and the grade (market) | words | ours | |\n|---|---|---|---|---|\n",
            group.source);
        for (const Told& told : group.told) append_row(told, out);
    }
    std::fputs(out.c_str(), stdout);
    return 0;
}

}  // namespace
}  // namespace grainside::published

int main() {
    return grainside::published::run();
}
