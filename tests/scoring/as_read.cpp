// as_read FOLDER FILES...: writes what is read of each labelled listing of FILES into FOLDER/NAME.txt, and what is read
// of each text of the built-in rules' proofs into FOLDER/rules_GROUP.txt. tests/scoring/README.md has the form.
// With `--in-full` before FOLDER the changed texts too, each with its lines, which are some 50 MB.
//
// Exit status: 0 written; 2 any error.
#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <map>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "cut_texts.h"
#include "grainside/checker.h"
#include "grainside/rule_book.h"
#include "labelled_file.h"
#include "reading_lines.h"
#include "verdict/proof.h"

namespace {

namespace scoring = grainside::scoring;
using grainside::Checker;
using grainside::CheckOptions;
using grainside::CheckResult;
using grainside::Finding;
using grainside::Listing;
using grainside::ProofText;
using grainside::RuleBook;
using grainside::RuleInfo;

constexpr std::size_t kShownOfAText = 72;  // bytes; the whole text stands in the rule's file

// The markets that the corpus is labelled for, on the day of its labels, and no market at all.
struct Setting {
    std::string_view prefix;  // of the rules that it gives
    CheckOptions options;
};
const Setting kSettings[] = {
    {"", {}},
    {"us ", {.markets = {"us"}, .on = "2026-11-26"}},
    {"eu ", {.markets = {"eu"}, .on = "2026-11-26"}},
    {"uk ", {.markets = {"uk"}, .on = "2026-11-26"}},
};

std::string claim_lines(const RuleBook& book, const Listing& listing, const CheckResult& result) {
    std::string lines;
    for (std::size_t at = 0; at < result.mentions.size(); ++at)
        lines += scoring::claim_line(book, listing, result, at) + "\n";
    return lines;
}

// Findings that differ in nothing but who gives them, as one line; in the order of the first.
class FindingLines {
public:
    void add(const std::string& finding, const std::string& giver) {
        const auto same =
            std::find_if(found_.begin(), found_.end(), [&](const auto& one) { return one.first == finding; });
        if (same == found_.end()) {
            found_.emplace_back(finding, giver);
        } else {
            same->second += ", " + giver;
        }
    }

    std::string lines() const {
        std::string lines;
        for (const auto& [finding, givers] : found_) lines += fmt::format("! {}: {}\n", finding, givers);
        return lines;
    }

private:
    std::vector<std::pair<std::string, std::string>> found_;
};

std::string finding_lines(const RuleBook& book, const Listing& listing, Checker& checker) {
    FindingLines found;
    for (const Setting& setting : kSettings) {
        const CheckResult& result = checker.check_again(listing, setting.options);
        for (const Finding& finding : result.findings) {
            found.add(scoring::finding_line(book, listing, result, finding, checker),
                      fmt::format("{}{}", setting.prefix, book.rules()[finding.rule].id));
        }
    }
    return found.lines();
}

// With `in_full` what is read of each changed text stands before the line that sums it up.
std::string of_corpus(const RuleBook& book, bool in_full, const std::vector<scoring::LabelledListing>& labelled) {
    Checker checker(book);
    Checker of_cuts(book);
    std::string lines;
    for (const scoring::LabelledListing& one : labelled) {
        const Listing listing = one.listing();
        const CheckResult& result = checker.check(listing);
        std::string each;
        scoring::CutTexts cuts(book, of_cuts, in_full ? &each : nullptr);
        cuts.cut(listing);
        lines +=
            fmt::format("== {} {}\n{}{}{}{}", one.id, scoring::listing_line(book, result),
                        claim_lines(book, listing, result), finding_lines(book, listing, checker), each, cuts.line());
    }
    return lines;
}

// The texts of the rules, each where the first rule that has it stands: many rules of markets prove themselves with the
// texts of their model. Each is checked for every rule that has it, under that rule's market and on its day.
class ProofLines {
public:
    ProofLines(const RuleBook& book, bool in_full) : book_(book), of_cuts_(book), in_full_(in_full) {}

    void add(const RuleInfo& rule) {
        Checker checker(book_, grainside::options_of_proof(rule));
        for (const ProofText& example : rule.flags) add(rule, example, checker);
        for (const ProofText& example : rule.passes) add(rule, example, checker);
    }

    // By what the rules are about.
    std::map<std::string, std::string> by_group() const {
        std::map<std::string, std::string> lines;
        for (const Text& text : texts_) lines[text.group] += text.reading + text.findings.lines() + text.cuts;
        return lines;
    }

private:
    struct Text {
        std::string group;
        std::string reading;
        FindingLines findings;
        std::string cuts;
    };

    void add(const RuleInfo& rule, const ProofText& example, Checker& checker) {
        const Listing listing = grainside::listing_of(example);
        const CheckResult& result = checker.check(listing);
        const std::string line = grainside::one_line_of(example);
        const auto [seen, is_new] = place_of_.try_emplace(line + '\n' + std::string(example.category), texts_.size());
        if (is_new) {
            std::string each;
            scoring::CutTexts cuts(book_, of_cuts_, in_full_ ? &each : nullptr);
            cuts.stretch(listing);
            texts_.push_back({rule.group,
                              fmt::format("== {} {}\n{}", scoring::quoted_line(line, kShownOfAText),
                                          scoring::listing_line(book_, result), claim_lines(book_, listing, result)),
                              {},
                              each + cuts.line()});
        }
        for (const Finding& finding : result.findings) {
            const std::string& by = book_.rules()[finding.rule].id;
            texts_[seen->second].findings.add(scoring::finding_line(book_, listing, result, finding, checker),
                                              by == rule.id ? by : fmt::format("{} for {}", by, rule.id));
        }
    }

    const RuleBook& book_;
    Checker of_cuts_;
    bool in_full_;
    std::map<std::string, std::size_t> place_of_;
    std::vector<Text> texts_;
};

void write(const std::filesystem::path& path, const std::string& lines) {
    std::ofstream stream(path, std::ios::binary);
    stream << lines;
    stream.close();
    if (!stream) throw std::runtime_error(path.string() + " cannot be written");
}

int run(bool in_full, const std::filesystem::path& folder, const std::vector<std::string>& files) {
    auto book = RuleBook::built_in();
    std::vector<grainside::Issue> faults;
    if (!book) faults = book.issues();
    for (std::size_t i = 0; i < files.size() && book; ++i) {
        const auto labelled = scoring::read_labelled_file(files[i]);
        if (labelled) {
            write(folder / std::filesystem::path(files[i]).stem().concat(".txt"),
                  of_corpus(book.value(), in_full, labelled.value()));
        } else {
            faults.insert(faults.end(), labelled.issues().begin(), labelled.issues().end());
        }
    }
    for (const grainside::Issue& issue : faults) fmt::print(stderr, "{}", grainside::to_text(issue));
    if (!faults.empty()) return 2;

    ProofLines proofs(book.value(), in_full);
    for (const RuleInfo& rule : book.value().rules()) proofs.add(rule);
    for (const auto& [group, lines] : proofs.by_group()) write(folder / ("rules_" + group + ".txt"), lines);
    return 0;
}

}  // namespace

int main(int argc, char** argv) {
    std::vector<std::string> words(argv + 1, argv + argc);
    const bool in_full = !words.empty() && words.front() == "--in-full";
    if (in_full) words.erase(words.begin());
    if (words.size() < 2) {
        fmt::print(stderr, "usage: as_read [--in-full] FOLDER FILES...\n");
        return 2;
    }
    try {
        return run(in_full, words.front(), {words.begin() + 1, words.end()});
    } catch (const std::exception& error) {
        fmt::print(stderr, "as_read: {}\n", error.what());
        return 2;
    }
}
