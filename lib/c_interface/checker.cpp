#include "c_interface/checker.h"

#include "c_interface/asked.h"
#include "c_interface/border.h"
#include "c_interface/issues.h"
#include "grainside/listing_reader.h"

using namespace grainside::c_interface;

struct GrainsideReader {
    std::string bytes;  // of a reader in memory, which its reader looks at
    std::optional<grainside::ListingReader> reader;
};

namespace {

std::optional<grainside::ReadOptions> read_options_of(GrainsideFormat format) {
    using grainside::InputFormat;
    grainside::ReadOptions options;
    switch (format) {
        case grainside_format_automatic:
            options.format = InputFormat::automatic;
            return options;
        case grainside_format_text:
            options.format = InputFormat::text;
            return options;
        case grainside_format_markdown:
            options.format = InputFormat::markdown;
            return options;
        case grainside_format_json:
            options.format = InputFormat::json;
            return options;
        case grainside_format_json_lines:
            options.format = InputFormat::json_lines;
            return options;
        case grainside_format_html:
            options.format = InputFormat::html;
            return options;
        case grainside_format_csv:
            options.format = InputFormat::csv;
            return options;
        case grainside_format_tsv:
            options.format = InputFormat::tsv;
            return options;
    }
    return std::nullopt;
}

// The listing that is kept, checked.
void check_kept(GrainsideResult& last) {
    last.result = &last.checker.check(last.kept.listing());
    last.claims.reserve(last.result->claim_count);
    for (std::uint32_t at = 0; at < last.result->mentions.size(); ++at) {
        if (is_claim_kind(last.result->mentions[at].kind)) last.claims.push_back(at);
    }
    last.say_instead.resize(last.result->findings.size());
}

void forget(GrainsideResult& last) noexcept {
    last.result = nullptr;
    last.claims.clear();
    last.say_instead.clear();
    last.finding_records.clear();
    last.claim_records.clear();
}

}  // namespace

GrainsideStatus grainside_checker_make(const GrainsideBook* book, const GrainsideCheckOptions* options,
                                       GrainsideChecker** checker, GrainsideIssues** issues) {
    if (issues != nullptr) *issues = nullptr;
    if (checker != nullptr) *checker = nullptr;
    if (book == nullptr || checker == nullptr || !is_whole(options)) return grainside_bad_call;
    return guarded([&] {
        std::vector<grainside::Issue> faults;
        grainside::CheckOptions asked = check_options_of(options, book->shared->rules, faults);
        if (!faults.empty()) {
            give_issues(std::move(faults), issues);
            return grainside_faults;
        }
        *checker = std::make_unique<GrainsideChecker>(GrainsideChecker{GrainsideResult(book->shared, std::move(asked))})
                       .release();
        return grainside_ok;
    });
}

void grainside_checker_free(GrainsideChecker* checker) {
    delete checker;
}

GrainsideStatus grainside_check(GrainsideChecker* checker, const GrainsideListing* listing,
                                const GrainsideResult** result) {
    if (result != nullptr) *result = nullptr;
    if (checker == nullptr || listing == nullptr || result == nullptr || !is_whole(*listing)) {
        return grainside_bad_call;
    }
    return guarded([&] {
        forget(checker->last);
        checker->last.kept.keep(*listing);
        check_kept(checker->last);
        *result = &checker->last;
        return grainside_ok;
    });
}

GrainsideStatus grainside_reader_open(GrainsideText path, GrainsideFormat format, GrainsideReader** reader,
                                      GrainsideIssues** issues) {
    if (issues != nullptr) *issues = nullptr;
    if (reader != nullptr) *reader = nullptr;
    const auto options = read_options_of(format);
    if (reader == nullptr || !is_text(path) || !options) return grainside_bad_call;
    return guarded([&] {
        auto opened = grainside::ListingReader::open(std::string(view_of(path)), *options);
        if (!opened) {
            give_issues(std::move(opened).issues(), issues);
            return grainside_faults;
        }
        auto made = std::make_unique<GrainsideReader>();
        made->reader.emplace(std::move(opened).value());
        *reader = made.release();
        return grainside_ok;
    });
}

GrainsideStatus grainside_reader_of_bytes(GrainsideText name, GrainsideText bytes, GrainsideFormat format,
                                          GrainsideReader** reader) {
    if (reader != nullptr) *reader = nullptr;
    const auto options = read_options_of(format);
    if (reader == nullptr || !is_text(name) || !is_text(bytes) || !options) return grainside_bad_call;
    return guarded([&] {
        auto made = std::make_unique<GrainsideReader>();
        made->bytes = view_of(bytes);
        made->reader.emplace(grainside::ListingReader::from_memory(std::string(view_of(name)), made->bytes, *options));
        *reader = made.release();
        return grainside_ok;
    });
}

void grainside_reader_free(GrainsideReader* reader) {
    delete reader;
}

GrainsideStatus grainside_check_next(GrainsideChecker* checker, GrainsideReader* reader, const GrainsideResult** result,
                                     GrainsideIssues** issues) {
    if (issues != nullptr) *issues = nullptr;
    if (result != nullptr) *result = nullptr;
    if (checker == nullptr || reader == nullptr || result == nullptr) return grainside_bad_call;
    return guarded([&] {
        forget(checker->last);
        grainside::Listing listing;
        std::vector<grainside::Issue> told;
        const bool is_one = reader->reader->next(listing, told);
        if (is_one) {
            checker->last.kept.keep(listing);
            check_kept(checker->last);
        }
        give_issues(std::move(told), issues);
        if (!is_one) return grainside_end;
        *result = &checker->last;
        return grainside_ok;
    });
}
