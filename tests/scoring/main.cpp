// score FILES...: how well claims and findings agree with labelled listings. Form and matching: corpus/README.md.
//
// Exit status: 0 scored and no limit missed; 1 a --min- limit was missed; 2 any error, a label that cannot be placed
// among them.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

#include "grainside/checker.h"
#include "grainside/rule_book.h"
#include "labelled_file.h"
#include "listing_score.h"
#include "score_table.h"

namespace {

namespace scoring = grainside::scoring;

struct Options {
    std::vector<std::string> files;
    std::vector<std::string> markets;
    std::string rules;
    std::string on;
    bool errors = false;
    scoring::Limits limits;
};

int complain(const std::vector<grainside::Issue>& issues) {
    for (const grainside::Issue& issue : issues) fmt::print(stderr, "{}", grainside::to_text(issue));
    return 2;
}

// Text of a labelled file may hold anything; a remark stays on its line.
std::string on_one_line(std::string text) {
    for (char& c : text) {
        if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) c = ' ';
    }
    return text;
}

int run(const Options& options) {
    std::vector<scoring::LabelledListing> listings;
    std::vector<grainside::Issue> faults;
    for (const std::string& file : options.files) {
        auto labelled = scoring::read_labelled_file(file);
        if (labelled) {
            auto read = std::move(labelled).value();
            std::move(read.begin(), read.end(), std::back_inserter(listings));
        } else {
            faults.insert(faults.end(), labelled.issues().begin(), labelled.issues().end());
        }
    }
    if (!faults.empty()) return complain(faults);

    auto book = options.rules.empty() ? grainside::RuleBook::built_in() : grainside::RuleBook::load(options.rules);
    if (!book) return complain(book.issues());
    const grainside::RuleBook& rules = book.value();
    const scoring::BookNames names = {
        [&](grainside::ConceptId id) { return rules.concept_name(id); },
        [&](std::uint32_t rule) { return std::string_view(rules.rules()[rule].id); },
    };
    grainside::Checker checker(rules, {.markets = options.markets, .on = options.on});
    scoring::Scores scores;
    std::vector<scoring::Remark> remarks;
    for (const scoring::LabelledListing& listing : listings) {
        const grainside::CheckResult& result = checker.check(listing.listing());
        scoring::score_listing(listing, result, scoring::markets_of(listing, options.markets), names, scores, remarks);
    }

    if (options.errors) {
        for (const scoring::Remark& remark : remarks) {
            fmt::print("{}\n", on_one_line(fmt::format("{}  {}  \"{}\"  {}", remark.id, remark.field, remark.words,
                                                       remark.what)));
        }
        fmt::print("\n");
    }
    fmt::print("{}", scoring::to_tables(scores));
    const std::string missing = scoring::shortfalls(scores, options.limits);
    if (missing.empty()) return 0;
    std::fflush(stdout);
    fmt::print(stderr, "{}", missing);
    return 1;
}

}  // namespace

int main(int argc, char** argv) {
    Options options;
    CLI::App app("Scores claims and findings against labelled listings (corpus/README.md)", "score");
    app.add_option("FILES", options.files, "Labelled listings, JSON Lines")->required();
    app.add_flag("--errors", options.errors, "One line for each miss, false alarm, wrong part or concept, failed trap");
    app.add_option("--market", options.markets, "Check under the rules of this market; may be repeated")
        ->delimiter(',')
        ->expected(1)
        ->take_all();
    app.add_option("--rules", options.rules, "A folder of rules instead of the built-in book");
    app.add_option("--on", options.on, "The day whose rules apply, YYYY-MM-DD; default: whatever their dates");
    const auto limit = [&](const char* name, std::optional<double>& value, const char* what) {
        app.add_option(name, value, what)->check(CLI::Range(0.0, 1.0));
    };
    limit("--min-claims-f1", options.limits.claims_f1, "Fail where the F1 of all claims is below, 0 to 1");
    limit("--min-findings-precision", options.limits.findings_precision, "Fail where the precision is below, 0 to 1");
    limit("--min-findings-recall", options.limits.findings_recall, "Fail where the recall is below, 0 to 1");
    limit("--min-traps", options.limits.traps, "Fail where the share of passed traps is below, 0 to 1");
    try {
        app.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
        return app.exit(error) == 0 ? 0 : 2;
    }
    try {
        return run(options);
    } catch (const std::exception& error) {
        fmt::print(stderr, "score: {}\n", error.what());
        return 2;
    }
}
