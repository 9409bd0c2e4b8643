#include "listing/visible_text.h"

#include <algorithm>
#include <string_view>
#include <utility>

namespace grainside::listing {
namespace {

// A name that is longer is no name of a property but prose in a table that lays out the page.
constexpr std::size_t kLongestPairName = 80;

bool by_begin(const PageRange& a, const PageRange& b) {
    return a.begin < b.begin;
}

const PageHeading* chosen_title(const Page& page) {
    const auto in_main = std::find_if(page.titles.begin(), page.titles.end(),
                                      [](const PageHeading& heading) { return heading.in_main; });
    if (in_main != page.titles.end()) return &*in_main;
    return page.titles.empty() ? nullptr : &page.titles.front();
}

PageRegion main_region(const Page& page, const PageHeading* title) {
    const auto has_words = [](const PageRegion& region) { return !region.range.empty(); };
    const auto main = std::find_if(page.mains.begin(), page.mains.end(), has_words);
    if (main != page.mains.end()) return *main;
    if (title != nullptr) {
        const auto around = std::find_if(page.articles.begin(), page.articles.end(),
                                         [&](const PageRegion& article) { return article.range.holds(title->range); });
        if (around != page.articles.end()) return *around;
    }
    if (page.articles.size() == 1 && has_words(page.articles.front())) return page.articles.front();
    return page.body;
}

// Several articles in the main part, none of which has the title, are cards of other goods or people's comments.
std::vector<PageRange> foreign_articles(const Page& page, const PageRegion& region, const PageHeading* title) {
    std::vector<PageRange> found;
    for (const PageRegion& article : page.articles) {
        const bool is_inside = region.range.holds(article.range) && !article.range.holds(region.range);
        if (is_inside && (title == nullptr || !article.range.holds(title->range))) found.push_back(article.range);
    }
    if (found.size() < 2) found.clear();
    return found;
}

// Whether `at` stands in one of `ranges`, which are in order of begin. `reach` is the furthest end up to each.
class Inside {
public:
    explicit Inside(const std::vector<PageRange>& ranges) : ranges_(ranges) {
        std::uint32_t furthest = 0;
        for (const PageRange& range : ranges) reach_.push_back(furthest = std::max(furthest, range.end));
    }
    bool operator()(std::uint32_t at) const {
        const auto behind = std::upper_bound(ranges_.begin(), ranges_.end(), PageRange{at, at}, by_begin);
        return behind != ranges_.begin() && reach_[static_cast<std::size_t>(behind - ranges_.begin()) - 1] > at;
    }

private:
    const std::vector<PageRange>& ranges_;
    std::vector<std::uint32_t> reach_;
};

}  // namespace

VisibleText visible_text(const Page& page) {
    VisibleText out;
    const PageHeading* const title = chosen_title(page);
    if (title != nullptr) out.title = written_in_a_line(page.text, title->range, page.unread);
    if (out.title.empty()) out.title = page.og_title.empty() ? page.title : page.og_title;

    const PageRegion region = main_region(page, title);
    out.line = region.line;
    for (const PageRange& range : page.others) {
        const bool has_title = title != nullptr && range.holds(title->range);
        if (!has_title && !range.holds(region.range)) out.others.push_back(range);
    }
    std::vector<PageRange> cuts = out.others;
    cuts.insert(cuts.end(), page.unread.begin(), page.unread.end());
    const auto articles = foreign_articles(page, region, title);
    cuts.insert(cuts.end(), articles.begin(), articles.end());
    std::sort(cuts.begin(), cuts.end(), by_begin);

    const Inside is_cut(cuts);
    std::vector<PageRange> taken;
    for (const PagePair& pair : page.pairs) {
        const PageRange whole{pair.name.begin, pair.value.end};
        if (!region.range.holds(whole) || is_cut(whole.begin)) continue;
        std::string name = written_in_a_line(page.text, pair.name, cuts);
        while (!name.empty() && (name.back() == ':' || name.back() == ' ')) name.pop_back();
        // A question needs its answer behind it, which is how the grammar reads it.
        if (name.empty() || name.size() > kLongestPairName || name.back() == '?') continue;
        std::string value = written(page.text, pair.value, cuts, false);
        if (value.empty()) continue;
        taken.push_back(whole);
        out.pairs.push_back({std::move(name), std::move(value)});
    }
    if (title != nullptr) taken.push_back(title->range);
    cuts.insert(cuts.end(), taken.begin(), taken.end());
    std::sort(cuts.begin(), cuts.end(), by_begin);
    const bool is_all_cut =
        std::any_of(cuts.begin(), cuts.end(), [&](const PageRange& cut) { return cut.holds(region.range); });
    if (!is_all_cut) out.text = written(page.text, region.range, cuts, true);
    return out;
}

}  // namespace grainside::listing
