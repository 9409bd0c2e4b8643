// The listing as it stood, its words marked and tied to their verdicts.
#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include "report/html/page_parts.h"

namespace grainside::report {
namespace {

// Of a longer field the sentences around the marked words stand for the whole.
constexpr std::size_t kMostFieldBytes = 20'000;
constexpr std::string_view kBlank = " \t\r\n";
constexpr std::string_view kLeftOut = " [...] ";

// One excerpt's text, cut where marks begin and end.
class MarkedExcerpt {
public:
    MarkedExcerpt(const PageContext& page, const ReportField& field, const Excerpt& excerpt)
        : page_(page), field_(field), excerpt_(excerpt) {}

    void write() {
        // Marks that end before the excerpt begins, or begin behind its end, are none of its own.
        std::vector<const VerdictMark*> ends;
        for (std::size_t i = excerpt_.first_mark; i < excerpt_.last_mark; ++i) {
            const VerdictMark& mark = field_.marks[i];
            if (mark.span.end <= excerpt_.start || mark.span.start >= excerpt_.end) continue;
            starts_.push_back(&mark);
        }
        ends = starts_;
        std::stable_sort(ends.begin(), ends.end(),
                         [](const VerdictMark* a, const VerdictMark* b) { return a->span.end < b->span.end; });
        std::size_t at = excerpt_.start;
        std::size_t next_start = 0;
        std::size_t next_end = 0;
        while (at < excerpt_.end || next_end < ends.size()) {
            while (next_start < starts_.size() && starts_[next_start]->span.start <= at)
                change(*starts_[next_start++], true);
            std::size_t to = excerpt_.end;
            if (next_start < starts_.size()) to = std::min(to, starts_[next_start]->span.start);
            if (next_end < ends.size()) to = std::min(to, ends[next_end]->span.end);
            write_run(at, to);
            at = to;
            while (next_end < ends.size() && (ends[next_end]->span.end <= at || at == excerpt_.end)) {
                change(*ends[next_end], false);
                if (ends[next_end]->span.end <= excerpt_.end) write_reference(*ends[next_end]);
                ++next_end;
            }
        }
    }

private:
    void change(const VerdictMark& mark, bool opens) {
        std::size_t& count = active_[static_cast<std::size_t>(mark.span.grade)];
        count = opens ? count + 1 : count - 1;
    }

    // Of several marks over the same words the worst one shows.
    void write_run(std::size_t from, std::size_t to) {
        if (from >= to) return;
        const std::string_view run = std::string_view(field_.text).substr(from, to - from);
        for (std::size_t grade = 0; grade < active_.size(); ++grade) {
            if (active_[grade] == 0) continue;
            page_.html.element("mark", {{"class", name_of(static_cast<Grade>(grade))}}, run);
            return;
        }
        page_.html.text(run);
    }

    void write_reference(const VerdictMark& mark) {
        const std::string number = std::to_string(mark.verdict);
        page_.html.begin("sup");
        page_.html.element("a",
                           {{"class", "ref"},
                            {"href", '#' + page_.verdict_id(mark.verdict)},
                            {"aria-label", "verdict " + number + ": " + std::string(name_of(mark.span.grade))}},
                           number);
        page_.html.end();
    }

    const PageContext& page_;
    const ReportField& field_;
    const Excerpt& excerpt_;
    std::vector<const VerdictMark*> starts_;
    std::array<std::size_t, 6> active_{};
};

std::vector<Excerpt> excerpts_of(const ReportField& field) {
    const std::size_t first = field.text.find_first_not_of(kBlank);
    if (first == std::string::npos) return {};
    const std::size_t end = field.text.find_last_not_of(kBlank) + 1;
    if (field.text.size() <= kMostFieldBytes) return {{first, end, 0, field.marks.size()}};
    std::vector<MarkedSpan> spans;
    for (const VerdictMark& mark : field.marks) spans.push_back(mark.span);
    return cut_excerpts(field.text, spans);
}

void write_field(const PageContext& page, const ReportField& field) {
    HtmlWriter& html = page.html;
    html.element("dt", field.label);
    html.begin("dd");
    const std::vector<Excerpt> excerpts = excerpts_of(field);
    const std::string_view text = field.text;
    std::size_t shown = 0;
    const auto left_out = [&](std::size_t to) {
        if (text.substr(shown, to - shown).find_first_not_of(kBlank) != std::string_view::npos) html.text(kLeftOut);
    };
    for (const Excerpt& excerpt : excerpts) {
        left_out(excerpt.start);
        MarkedExcerpt(page, field, excerpt).write();
        shown = excerpt.end;
    }
    left_out(text.size());
    html.end();
}

}  // namespace

void write_listing(const PageContext& page) {
    HtmlWriter& html = page.html;
    html.begin("section", {{"id", page.id("listing")}});
    page.heading(1, "The listing as it stood");
    if (!page.content.has_listing) {
        html.element("p", "The dossier holds no listing: nothing was claimed.");
        html.end();
        return;
    }
    std::string line;
    if (!page.content.captured.empty()) line += "Captured on " + page.content.captured + ". ";
    line += "The numbers lead to the verdicts on the words.";
    html.element("p", {{"class", "soft"}}, line);
    html.begin("dl", {{"class", "listing"}});
    for (const ReportField& field : page.content.fields) write_field(page, field);
    html.end();
    html.end();
}

}  // namespace grainside::report
