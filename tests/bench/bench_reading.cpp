// How fast listings are read out of JSON Lines in memory, beside two peers over the same bytes in the same run: one
// pass that sums the bytes, and simdjson's own many-document iteration that asks for no field.
#include <benchmark/benchmark.h>
#include <simdjson.h>

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/listing_reader.h"

namespace {

constexpr std::size_t kListings = 40000;
constexpr std::size_t kFieldsEach = 7;

// Invented listings of about 1.5 KB. Every fourth description has escapes and every eighth letters beyond ASCII, so
// that the slow ways are taken as often as in a real catalog.
const std::string& catalog() {
    static const std::string text = [] {
        constexpr std::string_view kSentences[] = {
            "The body is cut from vegetable tanned cowhide and lined in cotton twill.",
            "Edges are painted by hand in three coats and polished between them.",
            "The zip runs on a brass coloured chain with a leather pull.",
            "An inner pocket holds a phone, two slots hold cards and a ring holds keys.",
            "Every hide differs a little in tone, and small marks are no fault.",
            "Wipe with a dry cloth and keep away from heat and from strong light.",
            "The strap can be set to nine lengths between 70 and 120 cm.",
        };
        std::string out;
        for (std::size_t i = 0; i < kListings; ++i) {
            const std::string number = std::to_string(i);
            out += R"({"@context":"https://schema.org","@type":"Product","sku":"inv-)" + number +
                   R"(","name":"Invented tote number )" + number + R"( in full grain leather","description":")";
            for (std::size_t s = 0; s < 14; ++s) {
                out += kSentences[(i * 3 + s * 5) % std::size(kSentences)];
                out += i % 4 == 0 && s % 5 == 4 ? "\\n" : " ";
            }
            if (i % 8 == 0) out += "Couleur caf\xC3\xA9.";
            out += R"(","material":["Leather","Cotton"],"category":"Bags > Totes","inLanguage":"en",)"
                   R"("additionalProperty":[{"@type":"PropertyValue","name":"Lining","value":"Cotton twill"},)"
                   R"({"@type":"PropertyValue","name":"Thickness","value":1.4,"unitText":"mm"}],)"
                   R"("offers":{"@type":"Offer","price":"129.00","priceCurrency":"EUR","eligibleRegion":"DE"}})"
                   "\n";
        }
        // simdjson's iteration wants room behind its input.
        out.reserve(out.size() + simdjson::SIMDJSON_PADDING);
        return out;
    }();
    return text;
}

void set_bytes(benchmark::State& state) {
    state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(catalog().size()));
}

std::size_t read_catalog() {
    auto reader =
        grainside::ListingReader::from_memory("catalog", catalog(), {.format = grainside::InputFormat::json_lines});
    grainside::Listing listing;
    std::vector<grainside::Issue> issues;
    std::size_t fields = 0;
    while (reader.next(listing, issues)) fields += listing.fields.size();
    return issues.empty() ? fields : 0;
}

void memory_pass(benchmark::State& state) {
    const std::string& text = catalog();
    for (auto _ : state) {
        std::uint64_t sum = 0;
        for (const char c : text) sum += static_cast<unsigned char>(c);
        benchmark::DoNotOptimize(sum);
    }
    set_bytes(state);
}
BENCHMARK(memory_pass);

void simdjson_without_fields(benchmark::State& state) {
    simdjson::ondemand::parser parser;
    parser.threaded = false;
    const std::string& text = catalog();
    for (auto _ : state) {
        simdjson::ondemand::document_stream documents;
        if (parser.iterate_many(text.data(), text.size(), 1 << 20).get(documents) != simdjson::SUCCESS) std::abort();
        std::size_t count = 0;
        for (auto document : documents) count += document.error() == simdjson::SUCCESS ? 1U : 0U;
        if (count != kListings) state.SkipWithError("not every document was found");
    }
    set_bytes(state);
}
BENCHMARK(simdjson_without_fields);

void json_lines_into_listings(benchmark::State& state) {
    if (read_catalog() != kListings * kFieldsEach) {
        state.SkipWithError("the fields do not add up");
        return;
    }
    for (auto _ : state) benchmark::DoNotOptimize(read_catalog());
    set_bytes(state);
    state.counters["listings"] = benchmark::Counter(
        static_cast<double>(state.iterations()) * static_cast<double>(kListings), benchmark::Counter::kIsRate);
}
BENCHMARK(json_lines_into_listings);

}  // namespace

BENCHMARK_MAIN();
