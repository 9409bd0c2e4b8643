// The tokenizer on the kinds of text that it meets, beside two peers in the same run: a pass over the bytes, which is
// what no tokenizer can beat, and NFKC_Casefold by ICU, which folds and neither cuts nor keeps places.
#include <benchmark/benchmark.h>
#include <unicode/bytestream.h>
#include <unicode/normalizer2.h>
#include <unicode/stringpiece.h>

#include <cstring>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "text/segments.h"
#include "text/tokenizer.h"

namespace {

using grainside::text::Segment;
using grainside::text::Tokens;

constexpr std::size_t kBytes = std::size_t{1} << 20;

constexpr std::string_view kSentences[] = {
    "This tote is cut from full-grain leather that was tanned with bark extracts in small batches. ",
    "The lining is a tight cotton twill, and the strap is adjustable from 80 to 120 cm. ",
    "Hardware: solid brass, brushed by hand; the zip runs smoothly. ",
    "Measures about 38 x 28 x 12 cm, with a leather thickness of 1.4-1.6 mm. ",
    "Please note that natural marks are not a fault but a sign of genuine hide (see care card). ",
    "Composition: 60% polyester, 40% cotton. Edges painted, not folded. ",
    "An everyday companion for work and weekend, made to carry a laptop of up to 14 inches. ",
    "Wipe with a soft dry cloth and keep away from strong light and heat.\n",
};

constexpr std::string_view kAccented[] = {
    "Doubl\u00E9 de coton \u00E9pais, surpiq\u00FB\u00E9 \u00E0 la main. ",
    "Soft \u201Cbuttery\u201D leather \u2013 it won\u2019t crack. ",
};

constexpr std::string_view kMarkup[] = {
    "<div class=\"block\"><p>Full-grain <b>leather</b></p></div>",
    "<ul><li>Cotton&nbsp;lining</li><li>Brass &amp; steel</li></ul>",
    "<table><tr><td style='width:50%'>Strap</td><td>caf&eacute;</td></tr></table><br/>",
};

constexpr std::string_view kHan[] = {
    "\u672C\u4EA7\u54C1\u91C7\u7528\u5934\u5C42\u725B\u76AE\u5236\u6210\uFF0C\u624B\u611F\u67D4\u8F6F\u3002",
    "\u5185\u91CC\u4E3A\u68C9\u5E03\uFF0C\u4E94\u91D1\u4E3A\u9EC4\u94DC\uFF1B\u539A\u5EA6\u7EA6\u4E3A\u516D\u6BEB\u7C73"
    "\u3002",
};

template <std::size_t N>
std::string text_of(const std::string_view (&sentences)[N]) {
    std::mt19937 random(1);
    std::uniform_int_distribution<std::size_t> pick(0, N - 1);
    std::string text;
    while (text.size() < kBytes) text += sentences[pick(random)];
    return text;
}

std::string prose() {
    return text_of(kSentences);
}

// About two bytes in a hundred are not ASCII.
std::string accented_prose() {
    std::mt19937 random(2);
    std::uniform_int_distribution<std::size_t> pick(0, std::size(kSentences) - 1);
    std::uniform_int_distribution<std::size_t> pick_accented(0, std::size(kAccented) - 1);
    std::string text;
    for (std::size_t i = 0; text.size() < kBytes; ++i) {
        text += i % 5 == 0 ? kAccented[pick_accented(random)] : kSentences[pick(random)];
    }
    return text;
}

std::string markup() {
    return text_of(kMarkup);
}

std::string han() {
    return text_of(kHan);
}

double share_of_non_ascii(std::string_view text) {
    std::size_t count = 0;
    for (const char c : text) count += static_cast<std::uint8_t>(c) >> 7;
    return static_cast<double>(count) / static_cast<double>(text.size());
}

void report(benchmark::State& state, std::string_view text) {
    state.SetBytesProcessed(static_cast<std::int64_t>(state.iterations()) * static_cast<std::int64_t>(text.size()));
    state.counters["non_ascii"] = share_of_non_ascii(text);
}

using Tokenizer = void (*)(std::string_view, Tokens&);

void bench_tokenizer(benchmark::State& state, Tokenizer tokenizer, std::string (*make)()) {
    const std::string text = make();
    Tokens tokens;
    Tokens plain;
    grainside::text::tokenize(text, tokens);
    grainside::text::tokenize_plainly(text, plain);
    if (tokens.list.size() != plain.list.size() || tokens.list.empty()) {
        state.SkipWithError("the tokenizers differ");
        return;
    }
    for (auto _ : state) {
        tokenizer(text, tokens);
        benchmark::DoNotOptimize(tokens.list.data());
    }
    report(state, text);
    state.counters["bytes_a_token"] = static_cast<double>(text.size()) / static_cast<double>(tokens.list.size());
}

// As a catalog has it: fields of one or two sentences, one after the other.
void bench_short_fields(benchmark::State& state) {
    const std::string text = prose();
    Tokens tokens;
    for (auto _ : state) {
        for (std::size_t at = 0; at < text.size(); at += 150) {
            grainside::text::tokenize(std::string_view(text).substr(at, 150), tokens);
            benchmark::DoNotOptimize(tokens.list.data());
        }
    }
    report(state, text);
}

void bench_segments(benchmark::State& state) {
    const std::string text = prose();
    Tokens tokens;
    std::vector<Segment> segments;
    grainside::text::tokenize(text, tokens);
    for (auto _ : state) {
        grainside::text::cut_segments(tokens, segments);
        benchmark::DoNotOptimize(segments.data());
    }
    report(state, text);
}

void bench_icu_casefold(benchmark::State& state, std::string (*make)()) {
    const std::string text = make();
    UErrorCode status = U_ZERO_ERROR;
    const icu::Normalizer2* const normalizer = icu::Normalizer2::getNFKCCasefoldInstance(status);
    if (U_FAILURE(status)) {
        state.SkipWithError("ICU has no NFKC_Casefold data");
        return;
    }
    std::string folded;
    for (auto _ : state) {
        folded.clear();
        icu::StringByteSink<std::string> sink(&folded);
        normalizer->normalizeUTF8(0, icu::StringPiece(text.data(), static_cast<std::int32_t>(text.size())), sink,
                                  nullptr, status);
        benchmark::DoNotOptimize(folded.data());
    }
    report(state, text);
}

void bench_pass_over_bytes(benchmark::State& state) {
    const std::string text = prose();
    for (auto _ : state) benchmark::DoNotOptimize(std::memchr(text.data(), '\0', text.size()));
    report(state, text);
}

BENCHMARK(bench_pass_over_bytes);
BENCHMARK_CAPTURE(bench_tokenizer, ascii_prose, grainside::text::tokenize, prose);
BENCHMARK_CAPTURE(bench_tokenizer, accented_prose, grainside::text::tokenize, accented_prose);
BENCHMARK_CAPTURE(bench_tokenizer, all_markup, grainside::text::tokenize, markup);
BENCHMARK_CAPTURE(bench_tokenizer, all_han, grainside::text::tokenize, han);
BENCHMARK_CAPTURE(bench_tokenizer, ascii_prose_plainly, grainside::text::tokenize_plainly, prose);
BENCHMARK(bench_short_fields);
BENCHMARK(bench_segments);
BENCHMARK_CAPTURE(bench_icu_casefold, ascii_prose, prose);
BENCHMARK_CAPTURE(bench_icu_casefold, accented_prose, accented_prose);
BENCHMARK_CAPTURE(bench_icu_casefold, all_han, han);

}  // namespace

BENCHMARK_MAIN();
