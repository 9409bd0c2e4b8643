#include "report/content_text.h"

#include <fmt/format.h>

#include <algorithm>

#include "report/plan_text.h"
#include "report/view_text.h"

namespace grainside::report {
namespace {

constexpr std::size_t kHeadBytes = 110;
constexpr std::size_t kTailBytes = 45;

bool continues_char(char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) == 0x80;
}

}  // namespace

std::string shortened(std::string_view words) {
    if (words.size() <= kHeadBytes + kTailBytes + 5) return std::string(words);
    std::size_t head = kHeadBytes;
    std::size_t tail = words.size() - kTailBytes;
    while (head > 0 && continues_char(words[head])) --head;
    while (tail < words.size() && continues_char(words[tail])) ++tail;
    return std::string(words.substr(0, head)) + " ... " + std::string(words.substr(tail));
}

std::string capitalised(std::string_view word) {
    std::string text(word);
    if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
        text.front() = static_cast<char>(text.front() - 32);
    return text;
}

std::string fields_of(const ReportVerdict& verdict) {
    std::vector<std::string_view> seen;
    std::string text;
    for (const ReportVerdict::Words& words : verdict.words) {
        if (std::find(seen.begin(), seen.end(), words.field) != seen.end()) continue;
        seen.push_back(words.field);
        text += (text.empty() ? "" : ", ") + words.field;
    }
    return text;
}

std::string sample_text(const ReportContent& content) {
    std::string text = content.seller;
    const auto add = [&](const std::string& more) {
        if (more.empty()) return;
        text += (text.empty() ? "" : "; ") + more;
    };
    if (!content.bought.empty() || !content.price.empty()) {
        add("bought" + (content.bought.empty() ? "" : ' ' + content.bought) +
            (content.price.empty() ? "" : " for " + content.price));
    }
    add(content.condition);
    if (content.months_in_use > 0) add(fmt::format("{:g} months in use", content.months_in_use));
    return text;
}

std::string sources_text(const std::vector<ReportSource>& sources) {
    std::string text;
    for (const ReportSource& source : sources) {
        if (!text.empty()) text += "; ";
        text += source.text + (source.from_memory ? " (from memory)" : "");
    }
    return text;
}

std::string next_tests_text(const ReportContent& content) {
    return plan_summary(content.plan, content.has_listing, !content.readings.empty());
}

std::vector<RecordLine> record_lines(const ReportContent& content) {
    std::vector<RecordLine> lines;
    const auto add = [&](std::string label, std::string value, bool is_digest = false) {
        if (!value.empty()) lines.push_back({std::move(label), std::move(value), is_digest});
    };
    add("Dossier", content.id);
    add("Dossier, SHA-256", content.dossier_sha256, true);
    add("Listing captured", content.captured);
    add("Listing file", content.listing_file);
    add(content.listing_file.empty() ? "Listing's fields, SHA-256" : "Listing file, SHA-256", content.listing_sha256,
        true);
    add("Markets", content.markets.empty() ? "none named, so only what holds everywhere" : content.markets);
    add("Rules and limits of", content.day);
    add("Decision rule for limits", content.decision_rule);
    add("A belief decides from", fmt::format("{:g} %", 100 * content.decided_at));
    add("Rule book", fmt::format("{}: {}, {}, {}", content.rule_book, counted(content.rules, "rule", "rules"),
                                 counted(content.evidence_methods, "test method", "test methods"),
                                 counted(content.limits, "limit", "limits")));
    add("Grainside", content.version);
    return lines;
}

ShortAnswer words_answer(const ReportContent& content) {
    if (!content.has_listing) return {"Nothing was claimed", "The dossier holds no listing."};
    if (content.verdicts.empty()) return {"It claims nothing", "No claim was found in the listing's words."};
    const std::size_t all = content.verdicts.size();
    const auto grade_count = [&](Grade grade) {
        return static_cast<std::size_t>(
            std::count_if(content.verdicts.begin(), content.verdicts.end(),
                          [&](const ReportVerdict& verdict) { return verdict.grade == grade; }));
    };
    const std::size_t contradicted = grade_count(Grade::contradicted);
    const std::size_t misleading = grade_count(Grade::misleading);
    const std::size_t consistent = grade_count(Grade::consistent);
    const std::size_t open = all - contradicted - misleading - consistent;
    ShortAnswer answer;
    if (contradicted > 0) {
        answer.reply = fmt::format("Not in {} of {} statements", contradicted, all);
    } else if (misleading > 0) {
        answer.reply = fmt::format("{} of {} statements mislead{}", misleading, all, misleading == 1 ? "s" : "");
    } else if (open > 0) {
        answer.reply =
            fmt::format("Nothing is shown false; {} of {} statements {} open", open, all, open == 1 ? "is" : "are");
    } else {
        answer.reply = all == 1 ? "Yes, in its one statement" : fmt::format("Yes, in all {} statements", all);
    }
    answer.more = fmt::format("{} borne out by readings, {} shown false, {} misleading in their words, {} open.",
                              consistent, contradicted, misleading, open);
    return answer;
}

}  // namespace grainside::report
