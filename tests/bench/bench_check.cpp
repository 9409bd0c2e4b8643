// The whole way, bytes to finding lines, on one thread; and what it is made of. Beside it, in the same run, one pass
// over the same bytes. compare_grep.sh sets the built tool beside grep on the same catalog, which `bench_check
// --catalog` writes. README.md says how to run both.
#include <benchmark/benchmark.h>

#include <array>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <optional>
#include <random>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "grainside/checker.h"
#include "grainside/concessions.h"
#include "grainside/evidence_book.h"
#include "grainside/listing_reader.h"
#include "grainside/report.h"
#include "grainside/reword.h"
#include "grainside/rule_book.h"
#include "grainside/sarif.h"

namespace {

constexpr std::size_t kCatalogBytes = std::size_t{16} << 20;

// Sentences are frames with gaps: %m a material, %q a word before it, %p a part, %h a metal, %f a finish, %c a colour,
// %n a number. Most sentences claim something, some only chat; a listing has 8 to 15 terms of the trade.
constexpr std::array<std::string_view, 27> kFrames = {
    "The %p is cut from %q %m and finished by hand.",
    "Made of %q %m with a %c %p.",
    "Its %p is lined in %m, smooth to the hand.",
    "%h %f hardware throughout.",
    "The buckle is %h with a %f coat.",
    "Lining: %n% %m, the rest %m.",
    "Not %m, but %q %m.",
    "A %c tote that goes from the office to the weekend and back again.",
    "There is room for a laptop, a bottle and a book that you may even find time to read.",
    "Two pockets inside hold keys and cards; one outside holds a ticket.",
    "The strap can be set to nine lengths and comes off when it is not wanted.",
    "Softer than %m, and easier to look after.",
    "Comes with a cotton dust bag and a card that tells how to look after it.",
    "Each one differs a little in tone, and small marks are no fault.",
    "Waterproof in the rain that we have here.",
    "The %p of %m is %n mm thick.",
    "We sew at a slow pace, eight stitches to the inch, and sign the inside.",
    "Keep it away from heat, and wipe it with a dry cloth.",
    "We drew it for a friend who wanted one thing that carries everything.",
    "It stands by itself and folds flat when it is empty.",
    "The opening is wide enough to see what lies at the bottom.",
    "You choose the length when you order, and we punch the holes to suit.",
    "It looks well with a coat and does not mind a bicycle.",
    "Measure over what you wear, not over the skin, and add the width of a hand.",
    "If the first size does not fit, send it back within thirty days and we change it.",
    "The shape is an old one; the measures follow what people carry today.",
    "Ask us where you are not sure, and we answer within a day.",
};
constexpr std::array<std::string_view, 24> kMaterials = {
    "leather",       "full grain leather",
    "cowhide",       "calf leather",
    "PU leather",    "polyurethane",
    "split leather", "bonded leather",
    "suede",         "nubuck",
    "canvas",        "cotton",
    "polyester",     "nylon",
    "faux leather",  "goatskin",
    "lambskin",      "wool felt",
    "cork",          "microfibre",
    "linen",         "nappa leather",
    "vegan leather", "recycled polyester",
};
constexpr std::array<std::string_view, 10> kQualities = {
    "genuine", "vegetable tanned", "premium", "soft", "real", "smooth", "waxed", "fine", "embossed", "heavy"};
constexpr std::array<std::string_view, 8> kParts = {"body", "strap", "handle", "lining",
                                                    "trim", "base",  "flap",   "pocket"};
constexpr std::array<std::string_view, 6> kMetals = {"Brass",       "Zinc alloy", "Stainless steel",
                                                     "Solid brass", "Steel",      "Aluminium"};
constexpr std::array<std::string_view, 6> kFinishes = {"gold-plated", "nickel-free",   "gold-tone",
                                                       "brushed",     "nickel-plated", "antiqued"};
constexpr std::array<std::string_view, 8> kColours = {"tan",           "black", "cognac", "navy",
                                                      "leather brown", "stone", "gold",   "oxblood"};
constexpr std::array<std::string_view, 5> kProducts = {"tote bag", "belt", "wallet", "ankle boots", "watch strap"};

class Catalog {
public:
    Catalog() {
        for (std::uint32_t number = 0; text_.size() < kCatalogBytes; ++number) add_listing(number);
    }
    std::string take() { return std::move(text_); }

private:
    // std::mt19937 gives the same numbers everywhere; the distributions of the standard library do not.
    std::size_t below(std::size_t bound) { return random_() % bound; }
    template <std::size_t N>
    std::string_view any(const std::array<std::string_view, N>& words) {
        return words[below(N)];
    }

    void add_sentence() {
        const std::string_view frame = any(kFrames);
        for (std::size_t i = 0; i < frame.size(); ++i) {
            if (frame[i] != '%' || i + 1 == frame.size()) {
                text_ += frame[i];
                continue;
            }
            switch (frame[i + 1]) {
                case 'm':
                    text_ += any(kMaterials);
                    break;
                case 'q':
                    text_ += any(kQualities);
                    break;
                case 'p':
                    text_ += any(kParts);
                    break;
                case 'h':
                    text_ += any(kMetals);
                    break;
                case 'f':
                    text_ += any(kFinishes);
                    break;
                case 'c':
                    text_ += any(kColours);
                    break;
                case 'n':
                    text_ += std::to_string(1 + below(90));
                    break;
                default:
                    text_ += frame[i];
                    continue;
            }
            ++i;
        }
    }

    void add_property(std::string_view name, std::string_view value) {
        text_ += R"({"@type":"PropertyValue","name":")";
        text_ += name;
        text_ += R"(","value":")";
        text_ += value;
        text_ += R"("})";
    }

    void add_listing(std::uint32_t number) {
        const std::string_view product = any(kProducts);
        text_ += R"({"@context":"https://schema.org","@type":"Product","sku":"inv-)" + std::to_string(number) +
                 R"(","name":"Invented )";
        text_ += any(kColours);
        text_ += ' ';
        text_ += product;
        text_ += " in ";
        text_ += any(kMaterials);
        text_ += R"(","description":")";
        for (std::size_t sentences = 10 + below(9); sentences > 0; --sentences) {
            add_sentence();
            text_ += sentences == 1 ? "" : below(6) == 0 ? R"(\n)" : " ";
        }
        text_ += R"(","material":")";
        text_ += any(kMaterials);
        text_ += R"(","category":")";
        text_ += product;
        text_ += R"(","inLanguage":"en","additionalProperty":[)";
        add_property("Lining", any(kMaterials));
        text_ += ',';
        add_property("Hardware", any(kMetals));
        text_ += R"(],"offers":{"@type":"Offer","price":")" + std::to_string(20 + below(400)) +
                 R"(.00","priceCurrency":"EUR"}})";
        text_ += '\n';
    }

    std::mt19937 random_{20260927};
    std::string text_;
};

const std::string& catalog() {
    static const std::string text = Catalog().take();
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

void read_only(benchmark::State& state) {
    for (auto _ : state) {
        auto reader =
            grainside::ListingReader::from_memory("catalog", catalog(), {.format = grainside::InputFormat::json_lines});
        grainside::Listing listing;
        std::vector<grainside::Issue> issues;
        std::size_t fields = 0;
        while (reader.next(listing, issues)) fields += listing.fields.size();
        benchmark::DoNotOptimize(fields);
    }
    state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(catalog().size()));
}
BENCHMARK(read_only)->Unit(benchmark::kMillisecond);

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

// Terms that compare_grep.sh gives to grep: what the catalog's sentences are filled with.
void print_terms() {
    const auto print = [](const auto& words) {
        for (const std::string_view word : words) std::printf("%.*s\n", static_cast<int>(word.size()), word.data());
    };
    print(kMaterials);
    print(kQualities);
    print(kMetals);
    print(kFinishes);
    print(std::array<std::string_view, 1>{"waterproof"});
}

}  // namespace

int main(int argc, char** argv) {
    const std::string_view first = argc > 1 ? argv[1] : "";
    if (first == "--catalog") {
        return std::fwrite(catalog().data(), 1, catalog().size(), stdout) == catalog().size() ? 0 : 1;
    }
    if (first == "--terms") {
        print_terms();
        return 0;
    }
    benchmark::Initialize(&argc, argv);
    if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 2;
    benchmark::RunSpecifiedBenchmarks();
    benchmark::Shutdown();
    return 0;
}
