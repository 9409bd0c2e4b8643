// The whole way, bytes to finding lines, on one thread; and what it is made of. Beside it, in the same run, one pass
// over the same bytes. catalog_speed.py sets the built tool beside programs that find words; README.md says how to run
// both.
#include <benchmark/benchmark.h>

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "catalog.h"
#include "claims/claim_parser.h"
#include "grainside/checker.h"
#include "grainside/concessions.h"
#include "grainside/evidence_book.h"
#include "grainside/listing_reader.h"
#include "grainside/report.h"
#include "grainside/reword.h"
#include "grainside/rule_book.h"
#include "grainside/sarif.h"
#include "rules/book_data.h"
#include "text/tokenizer.h"
#include "vocabulary/matcher.h"

namespace {

constexpr std::size_t kCatalogBytes = std::size_t{16} << 20;

const std::string& catalog() {
    static const std::string text = grainside::bench::catalog_of(kCatalogBytes);
    return text;
}

const grainside::RuleBook& book() {
    static const grainside::RuleBook loaded = [] {
        auto result = grainside::RuleBook::built_in();
        if (!result) {
            for (const grainside::Issue& issue : result.issues()) std::fputs(grainside::to_text(issue).c_str(), stderr);
            std::exit(2);
        }
        return std::move(result).value();
    }();
    return loaded;
}

struct Pass {
    std::uint64_t listings = 0;
    std::uint64_t claims = 0;
    std::uint64_t findings = 0;
    std::uint64_t bytes_out = 0;

    bool operator==(const Pass&) const = default;
};

// Reads, checks and writes the whole catalog with one thread; `write` is called as RecordWriter::write_findings.
template <typename Write>
Pass whole_way(std::string& out, Write write) {
    Pass pass;
    auto reader =
        grainside::ListingReader::from_memory("catalog", catalog(), {.format = grainside::InputFormat::json_lines});
    grainside::Checker checker(book());
    grainside::Listing listing;
    std::vector<grainside::Issue> issues;
    while (reader.next(listing, issues)) {
        const grainside::CheckResult& result = checker.check(listing);
        ++pass.listings;
        pass.claims += result.claim_count;
        pass.findings += result.findings.size();
        const std::size_t before = out.size();
        write(listing, result, checker, out);
        pass.bytes_out += out.size() - before;
        if (out.size() >= std::size_t{1} << 20) out.clear();
    }
    if (!issues.empty()) return {};
    return pass;
}

// As `grainside check --format jsonl` does.
Pass whole_way(std::string& out) {
    const grainside::RecordWriter writer(book());
    return whole_way(out, [&](const auto& listing, const auto& result, const auto& checker, std::string& to) {
        writer.write_findings(listing, result, checker, to);
    });
}

// What a sound run gives, or why there is none: the same on two passes, and neither
// silence nor a finding on every claim.
std::optional<Pass> sound_pass(std::string& why) {
    std::string out;
    const Pass first = whole_way(out);
    out.clear();
    const Pass second = whole_way(out);
    if (!(first == second)) {
        why = "two passes over the same catalog differ";
    } else if (first.listings == 0) {
        why = "the catalog cannot be read";
    } else if (first.claims < 8 * first.listings || first.claims > 30 * first.listings) {
        why = "the claims are too few or too many for this catalog";
    } else if (first.findings < first.listings || first.findings > first.claims) {
        why = "the findings are too few or too many for this catalog";
    } else {
        return first;
    }
    return std::nullopt;
}

void set_rates(benchmark::State& state, const Pass& pass) {
    state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(catalog().size()));
    const auto rounds = static_cast<double>(state.iterations());
    state.counters["listings"] =
        benchmark::Counter(rounds * static_cast<double>(pass.listings), benchmark::Counter::kIsRate);
    state.counters["claims_each"] = static_cast<double>(pass.claims) / static_cast<double>(pass.listings);
    state.counters["findings_each"] = static_cast<double>(pass.findings) / static_cast<double>(pass.listings);
}

void memory_pass(benchmark::State& state) {
    const std::string& text = catalog();
    for (auto _ : state) {
        std::uint64_t sum = 0;
        for (const char c : text) sum += static_cast<unsigned char>(c);
        benchmark::DoNotOptimize(sum);
    }
    state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(text.size()));
}
BENCHMARK(memory_pass)->Unit(benchmark::kMillisecond);

// The stages, each with all before it, so that the differences are their shares. `use` is given each listing.
template <typename Use>
void time_stage(benchmark::State& state, Use use) {
    for (auto _ : state) {
        auto reader =
            grainside::ListingReader::from_memory("catalog", catalog(), {.format = grainside::InputFormat::json_lines});
        grainside::Listing listing;
        std::vector<grainside::Issue> issues;
        std::size_t seen = 0;
        while (reader.next(listing, issues)) seen += use(listing);
        benchmark::DoNotOptimize(seen);
    }
    state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(catalog().size()));
}

void read_only(benchmark::State& state) {
    time_stage(state, [](const grainside::Listing& listing) { return listing.fields.size(); });
}
BENCHMARK(read_only)->Unit(benchmark::kMillisecond);

void read_fold(benchmark::State& state) {
    grainside::text::Tokens tokens;
    time_stage(state, [&](const grainside::Listing& listing) {
        std::size_t count = 0;
        for (const grainside::Field& field : listing.fields) {
            grainside::text::tokenize(field.text, tokens);
            count += tokens.list.size();
        }
        return count;
    });
}
BENCHMARK(read_fold)->Unit(benchmark::kMillisecond);

void read_fold_match(benchmark::State& state) {
    const auto& vocabulary = book().data().vocabulary;
    grainside::text::Tokens tokens;
    std::vector<grainside::vocabulary::WordId> words;
    std::vector<grainside::vocabulary::Hit> hits;
    time_stage(state, [&](const grainside::Listing& listing) {
        std::size_t count = 0;
        for (const grainside::Field& field : listing.fields) {
            grainside::text::tokenize(field.text, tokens);
            grainside::vocabulary::match_terms(vocabulary, tokens, words, hits);
            count += hits.size();
        }
        return count;
    });
}
BENCHMARK(read_fold_match)->Unit(benchmark::kMillisecond);

void read_parse_claims(benchmark::State& state) {
    grainside::claims::ClaimParser parser(book().data().vocabulary);
    std::vector<grainside::Claim> claims;
    time_stage(state, [&](const grainside::Listing& listing) {
        parser.parse(listing, claims);
        return claims.size();
    });
}
BENCHMARK(read_parse_claims)->Unit(benchmark::kMillisecond);

void read_and_check(benchmark::State& state) {
    std::string why;
    const auto pass = sound_pass(why);
    if (!pass) return state.SkipWithError(why.c_str());
    for (auto _ : state) {
        auto reader =
            grainside::ListingReader::from_memory("catalog", catalog(), {.format = grainside::InputFormat::json_lines});
        grainside::Checker checker(book());
        grainside::Listing listing;
        std::vector<grainside::Issue> issues;
        std::size_t findings = 0;
        while (reader.next(listing, issues)) findings += checker.check(listing).findings.size();
        if (findings != pass->findings) return state.SkipWithError("another number of findings");
    }
    set_rates(state, *pass);
}
BENCHMARK(read_and_check)->Unit(benchmark::kMillisecond);

// The same listings reworded; its time over that of read_and_check says how many checks a rewording costs.
void read_and_reword(benchmark::State& state) {
    std::string why;
    const auto pass = sound_pass(why);
    if (!pass) return state.SkipWithError(why.c_str());
    std::size_t settled = 0;
    for (auto _ : state) {
        auto reader =
            grainside::ListingReader::from_memory("catalog", catalog(), {.format = grainside::InputFormat::json_lines});
        grainside::Reworder reworder(book());
        grainside::Listing listing;
        std::vector<grainside::Issue> issues;
        std::size_t left = 0;
        while (reader.next(listing, issues)) left += reworder.reword(listing).left.size();
        if (left > pass->findings) return state.SkipWithError("more findings than before");
        settled = pass->findings - left;
    }
    set_rates(state, *pass);
    state.counters["settled"] = static_cast<double>(settled) / static_cast<double>(pass->findings);
}
BENCHMARK(read_and_reword)->Unit(benchmark::kMillisecond);

// The listings lie in memory as the reader gives them: what remains is checking.
void check_only(benchmark::State& state) {
    std::string why;
    const auto pass = sound_pass(why);
    if (!pass) return state.SkipWithError(why.c_str());
    struct Kept {
        std::vector<std::string> texts;
        grainside::Listing listing;
    };
    std::vector<Kept> kept;
    kept.reserve(pass->listings);
    auto reader =
        grainside::ListingReader::from_memory("catalog", catalog(), {.format = grainside::InputFormat::json_lines});
    grainside::Listing read;
    std::vector<grainside::Issue> issues;
    while (reader.next(read, issues)) {
        Kept& one = kept.emplace_back();
        one.texts.reserve(2 * read.fields.size());
        for (const grainside::Field& field : read.fields) {
            const std::string_view name = one.texts.emplace_back(field.name);
            const std::string_view text = one.texts.emplace_back(field.text);
            one.listing.fields.push_back({name, text});
        }
    }
    grainside::Checker checker(book());
    for (auto _ : state) {
        std::size_t findings = 0;
        for (const Kept& one : kept) findings += checker.check(one.listing).findings.size();
        if (findings != pass->findings) return state.SkipWithError("another number of findings");
    }
    set_rates(state, *pass);
}
BENCHMARK(check_only)->Unit(benchmark::kMillisecond);

void read_check_write(benchmark::State& state) {
    std::string why;
    const auto pass = sound_pass(why);
    if (!pass) return state.SkipWithError(why.c_str());
    std::string out;
    for (auto _ : state) {
        out.clear();
        if (!(whole_way(out) == *pass)) return state.SkipWithError("another answer");
    }
    set_rates(state, *pass);
    state.counters["out_per_in"] = static_cast<double>(pass->bytes_out) / static_cast<double>(catalog().size());
}
BENCHMARK(read_check_write)->Unit(benchmark::kMillisecond);

// The same as a SARIF log, lines and columns of each finding included.
void read_check_write_sarif(benchmark::State& state) {
    std::string why;
    const auto pass = sound_pass(why);
    if (!pass) return state.SkipWithError(why.c_str());
    std::string out;
    std::uint64_t bytes = 0;
    for (auto _ : state) {
        grainside::SarifWriter writer(book(), {.command = "check"});
        out.clear();
        writer.begin(out);
        const Pass came =
            whole_way(out, [&](const auto& listing, const auto& result, const auto& checker, std::string& to) {
                writer.write_findings("catalog.jsonl", listing, result, checker, to);
            });
        if (came.findings != pass->findings) return state.SkipWithError("another number of findings");
        bytes = came.bytes_out;
    }
    set_rates(state, *pass);
    state.counters["out_per_in"] = static_cast<double>(bytes) / static_cast<double>(catalog().size());
}
BENCHMARK(read_check_write_sarif)->Unit(benchmark::kMillisecond);

// JSON Lines again, each finding held against 10,000 concessions that meet nothing and one for each rule that does
// where the words are 'vegan leather'.
void read_check_write_with_concessions(benchmark::State& state) {
    std::string why;
    const auto pass = sound_pass(why);
    if (!pass) return state.SkipWithError(why.c_str());
    const auto evidence = grainside::EvidenceBook::load(book());
    if (!evidence) return state.SkipWithError("the evidence book cannot be loaded");
    constexpr std::size_t kConcessions = 10'000;
    std::string text;
    for (std::size_t i = 0; i < kConcessions; ++i) {
        const std::string& rule = book().rules()[i % book().rules().size()].id;
        text += "- {rule: " + rule + ", listing: 'sku-" + std::to_string(i) + "', words: '" + std::to_string(i) +
                " leather', reason: old labels, owner: packaging, until: 2026-12-31}\n";
    }
    for (const grainside::RuleInfo& rule : book().rules()) {
        text += "- {rule: " + rule.id +
                ", words: vegan leather, reason: old labels, owner: packaging, until: 2026-12-31}\n";
    }
    const auto concessions = grainside::Concessions::parse("agreed.yaml", text, evidence.value());
    if (!concessions) return state.SkipWithError("the concessions have a fault");
    const grainside::RecordWriter writer(book());
    std::string out;
    std::uint64_t conceded = 0;
    for (auto _ : state) {
        grainside::ConcessionLedger ledger(concessions.value(), "2026-11-26");
        out.clear();
        conceded = 0;
        const Pass came =
            whole_way(out, [&](const auto& listing, const auto& result, const auto& checker, std::string& to) {
                const grainside::Conceded& met = ledger.of_findings(book(), listing, result);
                conceded += met.count;
                writer.write_findings(listing, result, checker, to, &met);
            });
        if (came.findings != pass->findings || conceded == 0) return state.SkipWithError("another answer");
    }
    set_rates(state, *pass);
    state.counters["conceded_share"] = static_cast<double>(conceded) / static_cast<double>(pass->findings);
}
BENCHMARK(read_check_write_with_concessions)->Unit(benchmark::kMillisecond);

void start_up(benchmark::State& state) {
    for (auto _ : state) {
        auto result = grainside::RuleBook::built_in();
        if (!result) return state.SkipWithError("the built-in book cannot be opened");
        benchmark::DoNotOptimize(result.value().digest());
    }
}
BENCHMARK(start_up)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
