// What design section 7 promises of everything, asked of everything: each finding of the corpus, each dossier, each
// method of the book. What single tests hold is in README.md.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/checker.h"
#include "grainside/dossier_report.h"
#include "grainside/judge.h"
#include "scoring/labelled_file.h"
#include "support/built_in_evidence.h"

namespace grainside {
namespace {

const RuleBook& book() {
    return support::built_in_book();
}

std::vector<std::filesystem::path> files_of(const std::string& folder, std::string_view begin, std::string_view end) {
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        const std::string name = entry.path().filename().string();
        if (name.starts_with(begin) && name.ends_with(end)) files.push_back(entry.path());
    }
    std::sort(files.begin(), files.end());
    return files;
}

// Words that a view wrapped, as they were.
std::string unwrapped(std::string_view text) {
    std::string joined;
    for (const char c : text) {
        if (c != ' ' && c != '\n') {
            joined += c;
        } else if (!joined.empty() && joined.back() != ' ') {
            joined += ' ';
        }
    }
    return joined;
}

bool has_place(const Listing& listing, const Claim& claim, std::uint32_t start, std::uint32_t end) {
    return claim.field < listing.fields.size() && start < end && end <= listing.fields[claim.field].text.size();
}

// Words, claim, rule, source.
TEST(EveryFinding, IsTracedToItsSources) {
    std::size_t findings = 0;
    for (const auto& file : files_of(GRAINSIDE_CORPUS, "open_", ".jsonl")) {
        const auto corpus = scoring::read_labelled_file(file.string());
        ASSERT_TRUE(corpus) << file;
        for (const char* const market : {"", "us", "eu", "it", "jp"}) {
            CheckOptions options;
            if (*market != '\0') options.markets = {market};
            Checker checker(book(), options);
            for (const scoring::LabelledListing& labelled : corpus.value()) {
                const Listing listing = labelled.listing();
                const CheckResult& result = checker.check(listing);
                for (const Finding& finding : result.findings) {
                    ++findings;
                    ASSERT_LT(finding.claim, result.mentions.size()) << labelled.id;
                    ASSERT_TRUE(has_place(listing, result.mentions[finding.claim], finding.start, finding.end))
                        << labelled.id;
                    ASSERT_TRUE(finding.against == kNoClaim || finding.against < result.mentions.size()) << labelled.id;
                    ASSERT_LT(finding.rule, book().rules().size()) << labelled.id;
                    const RuleInfo& rule = book().rules()[finding.rule];
                    EXPECT_FALSE(rule.sources.empty()) << rule.id;
                    EXPECT_FALSE(rule.because.empty()) << rule.id;
                    for (const std::uint32_t source : rule.sources) {
                        ASSERT_LT(source, book().sources().size()) << rule.id;
                        EXPECT_FALSE(book().sources()[source].cite.empty()) << rule.id;
                    }
                }
                for (const Claim& claim : result.mentions) {
                    EXPECT_TRUE(has_place(listing, claim, claim.start, claim.end)) << labelled.id;
                }
            }
        }
    }
    EXPECT_GT(findings, 1000U);
}

TEST(EveryVerdict, NamesWhatDecidedIt) {
    std::size_t by_readings = 0;
    for (const auto& file : files_of(GRAINSIDE_CORPUS "/dossiers", "", ".yaml")) {
        const auto dossier = Dossier::read(file, support::built_in_evidence());
        ASSERT_TRUE(dossier) << file;
        if (dossier.value().listing() == nullptr) continue;
        Judge judge(book(), support::built_in_evidence());
        std::string out;
        write_judgement_records({book(), support::built_in_evidence(), dossier.value()}, judge.judge(dossier.value()),
                                judge.options(), out);
        // A claim that readings contradict says which.
        for (std::size_t at = 0; at < out.size();) {
            const std::size_t end = out.find('\n', at);
            const std::string_view line(out.data() + at, end - at);
            at = end + 1;
            if (line.find("\"grade\":\"contradicted\"") == std::string_view::npos) continue;
            ++by_readings;
            EXPECT_TRUE(line.find("\"method\":") != std::string_view::npos) << file << '\n' << line;
            EXPECT_TRUE(line.find("\"sources\":[\"") != std::string_view::npos) << file << '\n' << line;
        }
    }
    EXPECT_GT(by_readings, 10U);
}

TEST(EveryReport, CarriesTheCautionsOfEachMethodThatItNames) {
    std::size_t cautions = 0;
    for (const auto& file : files_of(GRAINSIDE_CORPUS "/dossiers", "", ".yaml")) {
        const auto dossier = Dossier::read(file, support::built_in_evidence());
        ASSERT_TRUE(dossier) << file;
        Judge judge(book(), support::built_in_evidence());
        const DossierContext context{book(), support::built_in_evidence(), dossier.value()};
        std::string told;
        std::string planned;
        if (dossier.value().listing() != nullptr) {
            write_judgement_view(context, judge.judge(dossier.value()), judge.options(), {}, told);
        } else {
            write_identity_view(context, judge.identify(dossier.value()), {}, told);
        }
        write_plan_view(context, judge.plan(dossier.value()), {}, planned);
        for (const std::string& report : {unwrapped(told), unwrapped(planned)}) {
            for (const evidence::Method& method : support::built_in_evidence().data().methods) {
                if (report.find(method.title) == std::string::npos) continue;
                for (const std::string& caution : method.cautions) {
                    ++cautions;
                    EXPECT_NE(report.find(unwrapped(caution)), std::string::npos) << file << ": " << method.id;
                }
            }
        }
    }
    EXPECT_GT(cautions, 100U);
}

// A blade, a file or a reagent: what cuts or destroys may hurt, too.
TEST(EveryMethod, ThatHarmsTheSampleHasACaution) {
    for (const evidence::Method& method : support::built_in_evidence().data().methods) {
        if (method.harm == evidence::Harm::cut || method.harm == evidence::Harm::destroy) {
            EXPECT_FALSE(method.cautions.empty()) << method.id;
        }
    }
}

// Words for what can hurt, whatever the harm to the sample.
TEST(EveryMethod, ThatWorksWithWhatCanHurtHasACaution) {
    std::size_t named = 0;
    for (const evidence::Method& method : support::built_in_evidence().data().methods) {
        for (const std::string_view word : {"acetone", "solvent", "flame", "burn", "blade", "scalpel", "knife", "acid",
                                            "X-ray", "reagent", "plating", "ammonia", "lye", "hot "}) {
            if (method.how.find(word) == std::string::npos && method.title.find(word) == std::string::npos) continue;
            ++named;
            EXPECT_FALSE(method.cautions.empty()) << method.id << ": " << word;
        }
    }
    EXPECT_GT(named, 10U);
}

}  // namespace
}  // namespace grainside
