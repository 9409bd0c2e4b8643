// Any texts as the files of a rule book: loading neither crashes nor depends on anything else, faults name a file that
// is there and a line in it and are safe to print, and what loads never makes a check, a judgement or a plan fail. Told
// as page, manual, view and SARIF, its own texts are inert (inert_forms.h).
//
// Input: files, each behind a mark with its name (input_parts.h), as in a rule folder. Files that every book needs are
// there unless the input has its own: a part of the default concepts and kinds of products, a source, two markets.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <map>
#include <string>
#include <string_view>
#include <system_error>
#include <utility>
#include <vector>

#include "grainside/checker.h"
#include "grainside/dossier.h"
#include "grainside/evidence_book.h"
#include "grainside/judge.h"
#include "grainside/rule_book.h"
#include "grainside/sarif.h"
#include "inert_forms.h"
#include "input_parts.h"
#include "report/rule_reference.h"
#include "report/rule_view.h"
#include "rules/book_data.h"
#include "support/temporary_folder.h"
#include "vocabulary/grammar_concepts.h"

namespace {

namespace fs = std::filesystem;
using namespace grainside;
using fuzz::require;

// A longer text only says more of the same.
constexpr std::size_t kMaxInputBytes = 8192;
constexpr std::size_t kMaxFiles = 12;

using Files = std::map<std::string, std::string>;

// The concepts that the grammar asks for, those that the seeds name, and all above them: of the whole tree, reading
// takes most of the time.
std::string some_concepts() {
    const RuleBook whole = std::move(RuleBook::built_in()).value();
    const vocabulary::Vocabulary& words = whole.data().vocabulary;
    vocabulary::ConceptSet wanted(words.concepts.size());
    const auto want = [&](ConceptId id) { wanted.insert_all(words.concepts[id].ancestors); };
    vocabulary::concepts_of_grammar(words).for_each(want);
    for (const char* name : {"full-grain-leather", "cotton", "polyurethane", "vegan-leather", "zinc-alloy", "brass",
                             "silk", "linen", "wool", "waterproof"}) {
        want(whole.find_concept(name));
    }
    std::string text;
    wanted.for_each([&](ConceptId id) {
        const vocabulary::ConceptTree::Entry& entry = words.concepts[id];
        text += "- {concept: " + entry.name + ", kind: " + std::string(name_of(entry.kind));
        if (!entry.parents.empty()) text += ", is: [";
        for (std::size_t i = 0; i < entry.parents.size(); ++i) {
            text += (i == 0 ? "" : ", ") + words.concepts[entry.parents[i]].name;
        }
        text += entry.parents.empty() ? "}\n" : "]}\n";
    });
    return text;
}

const Files& base_files() {
    static const Files files = {
        {"concepts.yaml", some_concepts()},
        {"parts.yaml", "- {category: any, main_part: body}\n- {category: bag, main_part: body}\n"},
        {"sources.yaml", "- {source: law, cite: A law, says: It says., how: seen}\n"},
        {"markets.yaml", "- {market: us, name: United States}\n- {market: eu}\n"}};
    return files;
}

// Names of the kind that a rule folder has: nothing leads out of it.
bool is_file_name(std::string_view name) {
    constexpr std::string_view kEnding = ".yaml";
    if (name.size() > 60 || !name.ends_with(kEnding) || name.starts_with('/')) return false;
    name.remove_suffix(kEnding.size());
    return !name.empty() && !name.ends_with('/') && name.find("//") == std::string_view::npos &&
           std::all_of(name.begin(), name.end(), [](char c) {
               return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '/' || c == '-' || c == '_';
           });
}

Files files_of(std::string_view input) {
    Files files = base_files();
    std::size_t count = 0;
    for (const auto& [name, text] : fuzz::parts_of(input, "wording/a.yaml")) {
        if (is_file_name(name) && ++count <= kMaxFiles) files[name] = text;
    }
    return files;
}

// One folder for all inputs, emptied for each.
const fs::path& write_files(const Files& files) {
    static const support::TemporaryFolder folder;
    std::error_code error;
    for (const fs::directory_entry& entry : fs::directory_iterator(folder.path())) fs::remove_all(entry.path(), error);
    for (const auto& [name, text] : files) {
        // None is a folder of another: a folder's name has no '.'.
        folder.write(name, text);
    }
    return folder.path();
}

std::string printed(const std::vector<Issue>& issues, const Files& files) {
    std::string text;
    for (const Issue& issue : issues) {
        fuzz::check_issue(issue);
        const auto file = files.find(issue.file);
        if (file != files.end()) {
            const auto lines = std::count(file->second.begin(), file->second.end(), '\n') + 1;
            require(issue.line <= static_cast<std::size_t>(lines));
        } else {
            require(issue.line == 0);  // of a file that is missing, or of the whole
        }
        text += to_text(issue);
    }
    return text;
}

// Its own words are the text that is checked, so that its rules have something to say.
Listing listing_of(std::string_view input) {
    Listing listing;
    listing.id = "fuzz";
    listing.fields = {{"name", "Full grain leather bag, 1.2 mm, made in Italy"},
                      {"description", input},
                      {"material", "100% cotton lining, polyurethane"}};
    return listing;
}

void check_with(const RuleBook& book, std::string_view input) {
    const Listing listing = listing_of(input);
    for (const char* market : {"us", ""}) {
        Checker checker(book,
                        {.markets = market[0] == '\0' ? std::vector<std::string>{} : std::vector<std::string>{market},
                         .on = "2026-11-26"});
        const CheckResult& result = checker.check(listing);
        for (const Finding& finding : result.findings) {
            require(finding.rule < book.rules().size() && finding.claim < result.mentions.size());
            const std::string wording = checker.say_instead(listing, finding);
            require(wording.empty() || checker.passes_itself(listing, wording));
        }
    }
}

// The book's own texts, which come from whoever wrote it, in the forms in which it is told.
void tell(const RuleBook& book, const EvidenceBook* evidence) {
    const report::RuleReference reference(book, evidence);
    std::string out;
    reference.append_page(out);
    fuzz::check_page(out);
    out.clear();
    reference.append_manual(out);
    fuzz::check_manual(out);
    out.clear();
    for (const RuleInfo& rule : book.rules()) report::append_rule_explained(book, rule, {.width = 40}, out);
    fuzz::check_characters(out);
    out.clear();
    SarifWriter log = evidence == nullptr ? SarifWriter(book, {.command = "check", .markets = {}, .day = {}})
                                          : SarifWriter(*evidence, {.command = "judge", .markets = {}, .day = {}});
    log.begin(out);
    log.end({}, true, out);
    fuzz::check_json(out);
}

void judge_with(const EvidenceBook& evidence) {
    const auto dossier = Dossier::parse("d.yaml",
                                        "sample: {what: bag}\n"
                                        "listing: {name: Full grain leather bag, description: Cotton lining}\n",
                                        fs::path("no-such-folder"), evidence, {.today = "2026-11-26"});
    if (!dossier) return;
    Judge judge(evidence.rule_book(), evidence, {.check = {}, .today = "2026-11-26"});
    const Judgement& judgement = judge.judge(dossier.value());
    for (const Verdict& verdict : judgement.verdicts) {
        require(verdict.holds >= 0 && verdict.fails >= 0 && verdict.open >= 0);
        require(verdict.holds + verdict.fails + verdict.open <= 1 + 1e-9);
    }
    const TestPlan plan = judge.plan(dossier.value());
    for (const PlannedTest& test : plan.tests) require(test.bits >= 0 && test.minutes >= 0 && test.cost >= 0);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size > kMaxInputBytes) return 0;
    const std::string_view input(reinterpret_cast<const char*>(data), size);
    const Files files = files_of(input);
    const fs::path& folder = write_files(files);
    const auto book = RuleBook::load(folder);
    const std::string faults = printed(book.issues(), files);
    // Loading takes most of the time: half of the inputs are loaded twice.
    if (size % 2 == 0) {
        const auto again = RuleBook::load(folder);
        require(static_cast<bool>(book) == static_cast<bool>(again) && faults == printed(again.issues(), files));
        require(!book || book.value().digest() == again.value().digest());
    }
    if (!book) return 0;
    check_with(book.value(), input);
    if (!EvidenceBook::is_there(book.value())) {
        tell(book.value(), nullptr);
        return 0;
    }
    const auto evidence = EvidenceBook::load(book.value());
    printed(evidence.issues(), files);
    if (!evidence) return 0;
    tell(book.value(), &evidence.value());
    judge_with(evidence.value());
    return 0;
}
