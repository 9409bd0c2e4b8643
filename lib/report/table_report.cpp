#include "report/table_report.h"

#include <fmt/format.h>

#include <vector>

#include "report/content_text.h"
#include "report/csv_text.h"
#include "report/rounded.h"

namespace grainside::report {
namespace {

// A cell of a spreadsheet holds no more than 32,767 characters; words this long are nobody's.
std::string words_text(const ReportVerdict& verdict) {
    std::string text;
    for (const ReportVerdict::Words& one : verdict.words) text += (text.empty() ? "" : " | ") + shortened(one.text);
    return text;
}

std::string readings_text(const ReportVerdict& verdict) {
    std::string text;
    for (const ReportReading& one : verdict.readings) {
        text += (text.empty() ? "" : " | ") + one.method + (one.date.empty() ? "" : ' ' + one.date) + ": " + one.result;
    }
    return text;
}

std::string joined(const std::vector<std::string>& lines) {
    std::string text;
    for (const std::string& line : lines) text += (text.empty() ? "" : " | ") + line;
    return text;
}

std::string share_text(const ReportVerdict& verdict, double share) {
    return verdict.belief.empty() ? std::string() : fmt::format("{:g}", rounded(share));
}

std::vector<std::string> row_of(const ReportContent& content, const ReportVerdict& verdict) {
    return {content.id,
            content.what,
            content.seller,
            content.bought,
            content.price,
            std::string(name_of(verdict.part)),
            std::string(name_of(verdict.kind)),
            words_text(verdict),
            fields_of(verdict),
            verdict.says,
            std::string(name_of(verdict.grade)),
            std::string(name_of(verdict.basis)),
            share_text(verdict, verdict.holds),
            share_text(verdict, verdict.fails),
            share_text(verdict, verdict.open),
            verdict.because,
            verdict.say_instead,
            verdict.remedy,
            readings_text(verdict),
            joined(verdict.limits),
            joined(verdict.changes),
            joined(verdict.would_support),
            verdict.on_file,
            sources_text(verdict.sources),
            verdict.rule,
            content.markets,
            content.day,
            content.rule_book,
            content.listing_sha256,
            content.dossier_sha256};
}

}  // namespace

void append_table_report(std::string& out, std::span<const ReportContent* const> dossiers) {
    const std::vector<std::string> names = {"dossier",
                                            "sample",
                                            "seller",
                                            "bought",
                                            "price",
                                            "part",
                                            "kind",
                                            "words",
                                            "field",
                                            "says",
                                            "grade",
                                            "basis",
                                            "probability",
                                            "probability_false",
                                            "probability_open",
                                            "because",
                                            "say_instead",
                                            "remedy",
                                            "readings",
                                            "limits",
                                            "would_change",
                                            "would_support",
                                            "on_file",
                                            "sources",
                                            "rule",
                                            "markets",
                                            "on",
                                            "rule_book",
                                            "listing_sha256",
                                            "dossier_sha256"};
    append_csv_record(out, names);
    for (const ReportContent* content : dossiers) {
        for (const ReportVerdict& verdict : content->verdicts) append_csv_record(out, row_of(*content, verdict));
        if (!content->verdicts.empty()) continue;
        std::vector<std::string> row(names.size());
        row[0] = content->id;
        row[1] = content->what;
        row[2] = content->seller;
        row[3] = content->bought;
        row[4] = content->price;
        append_csv_record(out, row);
    }
}

}  // namespace grainside::report
