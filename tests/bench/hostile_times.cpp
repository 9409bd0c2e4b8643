// hostile_times [ROUNDS]: the time to check one listing, a byte, on hostile texts beside ordinary ones of the same
// length.
//
// Each listing is timed by itself in processor time, rounds interleaved. p50 and p99 are over all timings of a set; the
// worst is the text whose median is the largest. Ratios of one run hold on another machine, nanoseconds do not. Exit
// status: 0 measured; 1 the answer was not what it must be; 2 a wrong call.
#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <string>
#include <utility>
#include <vector>

#include "catalog.h"
#include "grainside/checker.h"
#include "grainside/listing_reader.h"
#include "grainside/rule_book.h"
#include "support/hostile_texts.h"

namespace {

constexpr std::size_t kOrdinaryTexts = 300;
// About an ordinary listing, a long page, and a text that nobody wrote by hand.
constexpr std::size_t kSizes[] = {1'000, 30'000, 1'000'000};
constexpr std::size_t kBytesOfASet = 3'000'000;  // fewer ordinary texts where they are long

struct Text {
    std::string name;
    std::string bytes;
    std::vector<double> times = {};  // nanoseconds a byte
};

// Descriptions of the invented catalog, joined until they are long enough.
std::vector<Text> ordinary_texts(std::size_t size) {
    const std::size_t count = std::clamp(kBytesOfASet / size, std::size_t{1}, kOrdinaryTexts);
    const std::string catalog = grainside::bench::catalog_of(3 * size * count + (std::size_t{1} << 16));
    auto reader =
        grainside::ListingReader::from_memory("catalog", catalog, {.format = grainside::InputFormat::json_lines});
    grainside::Listing listing;
    std::vector<grainside::Issue> issues;
    std::vector<Text> texts;
    std::string joined;
    while (texts.size() < count && reader.next(listing, issues)) {
        for (const grainside::Field& field : listing.fields) {
            if (field.name != "description") continue;
            joined += field.text;
            joined += "\n\n";
        }
        if (joined.size() < size) continue;
        texts.push_back({"ordinary " + std::to_string(texts.size()), std::move(joined)});
        joined.clear();
    }
    return texts;
}

std::vector<Text> hostile_texts(std::size_t size) {
    std::vector<Text> texts;
    for (const grainside::support::HostileText& row : grainside::support::kHostileTexts) {
        texts.push_back({std::string(row.name), grainside::support::repeated(row, size / row.repeated.size() + 1)});
    }
    return texts;
}

double processor_nanoseconds() {
    timespec now{};
    ::clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) * 1e9 + static_cast<double>(now.tv_nsec);
}

grainside::Listing listing_of(const Text& text) {
    grainside::Listing listing;
    listing.fields.push_back({"description", text.bytes});
    return listing;
}

void time_once(grainside::Checker& checker, Text& text) {
    const grainside::Listing listing = listing_of(text);
    const double start = processor_nanoseconds();
    checker.check(listing);
    text.times.push_back((processor_nanoseconds() - start) / static_cast<double>(text.bytes.size()));
}

double share_of(std::vector<double> values, double share) {
    std::sort(values.begin(), values.end());
    return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1) + 0.5)];
}

struct Figures {
    double p50 = 0, p99 = 0, worst = 0;
    std::string worst_name;
};

Figures figures_of(const std::vector<Text>& texts) {
    Figures figures;
    std::vector<double> all;
    for (const Text& text : texts) {
        all.insert(all.end(), text.times.begin(), text.times.end());
        const double median = share_of(text.times, 0.5);
        if (median <= figures.worst) continue;
        figures.worst = median;
        figures.worst_name = text.name;
    }
    figures.p50 = share_of(all, 0.5);
    figures.p99 = share_of(all, 0.99);
    return figures;
}

// Twice the same, and somewhere a claim.
bool is_sound(grainside::Checker& checker, const std::vector<Text>& texts) {
    std::size_t claims = 0;
    for (const Text& text : texts) {
        const grainside::Listing listing = listing_of(text);
        const std::size_t first = checker.check(listing).claim_count;
        const std::size_t findings = checker.check(listing).findings.size();
        const grainside::CheckResult& again = checker.check(listing);
        if (again.claim_count != first || again.findings.size() != findings) return false;
        claims += first;
    }
    return claims > 0;
}

void print_row(std::size_t size, const char* set, const Figures& figures, const Figures& ordinary) {
    std::printf("%9zu  %-9s %8.2f %8.2f %8.2f   %5.2f %5.2f %5.2f  %s\n", size, set, figures.p50, figures.p99,
                figures.worst, figures.p50 / ordinary.p50, figures.p99 / ordinary.p99, figures.worst / ordinary.worst,
                figures.worst_name.c_str());
}

}  // namespace

int main(int argc, char** argv) {
    const long rounds = argc == 1 ? 15 : std::strtol(argv[1], nullptr, 10);
    if (argc > 2 || rounds < 1 || rounds > 10'000) {
        std::fputs("usage: hostile_times [ROUNDS], 1 to 10000; default 15\n", stderr);
        return 2;
    }
    auto book = grainside::RuleBook::built_in();
    if (!book) return 2;
    grainside::Checker checker(book.value());
    std::puts("    bytes  set        p50      p99    worst   of the ordinary: p50, p99, worst; the worst");
    for (const std::size_t size : kSizes) {
        std::vector<Text> ordinary = ordinary_texts(size);
        std::vector<Text> hostile = hostile_texts(size);
        if (!is_sound(checker, ordinary) || !is_sound(checker, hostile)) {
            std::fputs("hostile_times: the same text gave another answer, or none has a claim\n", stderr);
            return 1;
        }
        for (long round = 0; round < rounds; ++round) {
            for (Text& text : ordinary) time_once(checker, text);
            for (Text& text : hostile) time_once(checker, text);
        }
        const Figures usual = figures_of(ordinary);
        print_row(size, "ordinary", usual, usual);
        print_row(size, "hostile", figures_of(hostile), usual);
    }
    return 0;
}
