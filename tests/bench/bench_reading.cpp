// How fast listings are read out of JSON Lines in memory, beside two peers over the same bytes in the same run: one
// pass that sums the bytes, and simdjson's own many-document iteration that asks for no field. Then how fast saved
// pages are, beside libxml2's HTML parser over the same bytes, with handlers that do nothing, and as a tree.
#include <benchmark/benchmark.h>
#include <libxml/HTMLparser.h>
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

// An invented page of about 100 KB: most of a shop's page is menus, scripts and other goods.
const std::string& saved_page() {
    static const std::string text = [] {
        std::string out =
            "<!DOCTYPE html><html lang=en><head><meta charset=utf-8><title>Tote</title>"
            R"(<script type="application/ld+json">{"@context":"https://schema.org","@type":"Product","sku":"inv-1",)"
            R"("name":"Invented tote","description":"Full grain leather, lined in cotton."}</script></head><body>)";
        for (int i = 0; i < 400; ++i) {
            out += R"(<li class="menu__item menu__item--deep"><a class="menu__link" href="/bags/)" + std::to_string(i) +
                   R"(" data-track="menu">Bags &amp; cases</a></li>)";
        }
        out += "<script>var state = \"" + std::string(30000, 'x') + "\";</script><main><h1>Invented tote</h1>";
        for (int i = 0; i < 60; ++i)
            out += "<p class=\"text\">The body is cut from <b>cowhide</b>, lined &amp; stitched.";
        out += "<table class=spec><tr><th>Body<td>Calf<tr><th>Lining<td>Cotton</table></main><footer>";
        for (int i = 0; i < 150; ++i)
            out += "<div class='card'><img src='a.jpg' alt='Tote'><span>Other goods</span></div>";
        return out + "</footer></body></html>";
    }();
    return text;
}

void set_pages(benchmark::State& state) {
    state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(saved_page().size()));
    state.counters["pages"] = benchmark::Counter(static_cast<double>(state.iterations()), benchmark::Counter::kIsRate);
}

void page_into_listings(benchmark::State& state) {
    for (auto _ : state) {
        auto reader =
            grainside::ListingReader::from_memory("page", saved_page(), {.format = grainside::InputFormat::html});
        grainside::Listing listing;
        std::vector<grainside::Issue> issues;
        // Name and description of the data, and two rows of the page.
        if (!reader.next(listing, issues) || listing.fields.size() != 4 || !issues.empty()) {
            state.SkipWithError("the fields do not add up");
            return;
        }
        benchmark::DoNotOptimize(listing);
    }
    set_pages(state);
}
BENCHMARK(page_into_listings);

constexpr int kQuiet = HTML_PARSE_RECOVER | HTML_PARSE_NOERROR | HTML_PARSE_NOWARNING | HTML_PARSE_NONET;

void libxml2_without_handlers(benchmark::State& state) {
    const std::string& page = saved_page();
    const int size = static_cast<int>(page.size());
    for (auto _ : state) {
        xmlSAXHandler handler{};
        htmlParserCtxtPtr parser =
            htmlCreatePushParserCtxt(&handler, nullptr, nullptr, 0, nullptr, XML_CHAR_ENCODING_UTF8);
        htmlCtxtUseOptions(parser, kQuiet);
        htmlParseChunk(parser, page.data(), size, 1);
        htmlFreeParserCtxt(parser);
    }
    set_pages(state);
}
BENCHMARK(libxml2_without_handlers);

void libxml2_tree(benchmark::State& state) {
    const std::string& page = saved_page();
    for (auto _ : state) {
        const htmlDocPtr tree = htmlReadMemory(page.data(), static_cast<int>(page.size()), nullptr, "utf-8", kQuiet);
        if (tree == nullptr) state.SkipWithError("no tree was made");
        xmlFreeDoc(tree);
    }
    set_pages(state);
}
BENCHMARK(libxml2_tree);

}  // namespace

BENCHMARK_MAIN();
