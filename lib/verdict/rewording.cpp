#include <algorithm>
#include <functional>
#include <iterator>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <tuple>
#include <utility>
#include <variant>
#include <vector>

#include "evidence/dossier_data.h"
#include "grainside/reword.h"
#include "verdict/fitted_edit.h"
#include "verdict/letter_case.h"
#include "verdict/reword_problem.h"

namespace grainside {
inline namespace v0 {

namespace {

using verdict::FittedEdit;
using verdict::NoFit;
using verdict::Problem;
using verdict::WordSpan;

// After so many checks of one listing whatever is not settled is left as it was.
constexpr int kMostRounds = 24;

using Examine = std::function<std::vector<Problem>(const Listing&)>;

struct Fit : FittedEdit {
    bool leaves_out = false;
};

// A problem of the listing as it was given, and what is tried on it.
struct Item {
    Problem problem;
    std::vector<Fit> fits;  // still to be tried, the last first
    bool active = false;    // fits.back() is made
    bool covered = false;   // an edit on other words covers these
    std::string why_not;
};

class Rounds {
public:
    Rounds(const RuleBook& book, const Listing& listing, const Examine& examine)
        : book_(book), listing_(listing), examine_(examine), taken_(listing.fields.size()) {}

    void run(Rewording& result) {
        const std::vector<Problem> before = examine_(listing_);
        for (const Problem& problem : before) add(problem);
        take_up();
        std::vector<Problem> after = before;
        for (int round = 0; any_active() && round < kMostRounds; ++round) {
            after = examine_(edited());
            if (settle(after) || back_to(before.size(), after)) continue;
            write(after, result);
            return;
        }
        // Nothing is active, or it did not come to rest: then nothing is changed.
        for (Item& item : items_) {
            if (item.active) give_up(item, "no edit was found that brings no other finding");
        }
        edited();
        write(any_edit_ ? examine_(listing_) : before, result);
    }

private:
    struct Made {
        std::size_t start, end;          // in the given text
        std::size_t new_start, new_end;  // in the edited text
        std::string_view wording;
        std::size_t item;
    };
    using Key = std::tuple<std::uint32_t, std::uint32_t, std::uint32_t, std::uint32_t>;
    static Key key_of(const WordSpan& at, std::uint32_t rule) { return {at.field, at.start, at.end, rule}; }

    void add(const Problem& problem) {
        Item item{problem, {}, false, false, {}};
        if (problem.wordings.empty()) {
            item.why_not = "what would be true cannot be known from the listing";
        } else if (!problem.fixed.empty()) {
            item.why_not = problem.fixed;
        }
        for (const std::string& wording : problem.wordings) add_fit(item, wording);
        known_.try_emplace(key_of(problem.at, problem.rule), items_.size());
        items_.push_back(std::move(item));
    }

    void add_fit(Item& item, const std::string& wording) {
        const Problem& problem = item.problem;
        if (!problem.fixed.empty()) return;
        const Field& field = listing_.fields[problem.at.field];
        const std::string_view text = field.text;
        auto fitted = verdict::fit(
            {text, problem.at.start, problem.at.end, problem.before_noun, problem.before_stuff, problem.is_name},
            wording);
        if (auto* edit = std::get_if<FittedEdit>(&fitted)) {
            // Whichever of these it is that separates the values there.
            if (field.origin.writing == Writing::table_bare &&
                edit->wording.find_first_of(",;\t|:\"\r\n") != std::string::npos) {
                item.why_not = "its value in the table has no quotes, and the wording has a mark that needs them";
                return;
            }
            item.fits.insert(item.fits.begin(), {std::move(*edit), wording.empty()});
        } else {
            item.why_not = std::get<NoFit>(fitted);
        }
    }

    // Other edits may have changed what the rule offers for words that were left, and which statement that follows.
    // True where there is more to try.
    bool offers_more(Item& item, const Problem& now) {
        bool more = false;
        const bool had_none = item.fits.empty();
        for (const std::string& wording : now.wordings) {
            auto& tried = item.problem.wordings;
            if (item.active || std::find(tried.begin(), tried.end(), wording) != tried.end()) continue;
            tried.push_back(wording);
            add_fit(item, wording);
            more = more || !item.fits.empty();
        }
        if (more && had_none) item.problem.against = now.against ? followed(*now.against) : std::nullopt;
        return more;
    }

    // Makes what does not overlap: the worst grade first, then the longest words, then the first.
    void take_up() {
        if (std::exchange(any_freed_, false)) {
            for (Item& item : items_) item.covered = false;
        }
        std::vector<std::size_t> order;
        for (std::size_t i = 0; i < items_.size(); ++i) {
            if (!items_[i].fits.empty() && !items_[i].active && !items_[i].covered) order.push_back(i);
        }
        std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            const auto key = [&](std::size_t i) {
                const Problem& problem = items_[i].problem;
                const std::uint32_t length = problem.at.end - problem.at.start;
                return std::tuple(problem.grade, ~length, problem.at.field, problem.at.start, i);
            };
            return key(a) < key(b);
        });
        for (const std::size_t i : order) {
            Item& item = items_[i];
            const FittedEdit& edit = item.fits.back();
            auto& taken = taken_[item.problem.at.field];
            const auto behind = taken.lower_bound(edit.start);
            const bool meets_behind = behind != taken.end() && behind->first < edit.end;
            const bool meets_before = behind != taken.begin() && std::prev(behind)->second > edit.start;
            item.covered = meets_behind || meets_before;
            item.active = !item.covered;
            if (item.active) taken.emplace(edit.start, edit.end);
        }
    }

    bool any_active() const {
        return std::any_of(items_.begin(), items_.end(), [](const Item& item) { return item.active; });
    }

    // The listing with what is made; `made_` says where.
    const Listing& edited() {
        any_edit_ = any_edit_ || any_active();
        made_.assign(listing_.fields.size(), {});
        for (std::size_t i = 0; i < items_.size(); ++i) {
            if (!items_[i].active) continue;
            const FittedEdit& edit = items_[i].fits.back();
            made_[items_[i].problem.at.field].push_back({edit.start, edit.end, 0, 0, edit.wording, i});
        }
        texts_.assign(listing_.fields.size(), {});
        edited_ = listing_;
        for (std::size_t field = 0; field < listing_.fields.size(); ++field) {
            auto& made = made_[field];
            std::sort(made.begin(), made.end(), [](const Made& a, const Made& b) { return a.start < b.start; });
            const std::string_view text = listing_.fields[field].text;
            join_doubles(text, made);
            std::string& out = texts_[field];
            std::size_t from = 0;
            for (Made& one : made) {
                out += text.substr(from, one.start - from);
                one.new_start = out.size();
                out += one.wording;
                one.new_end = out.size();
                from = one.end;
            }
            out += text.substr(from);
            edited_.fields[field].text = out;
        }
        return edited_;
    }

    // 'imitation suede imitation suede': where two neighbours come to the same wording, one of them goes.
    static void join_doubles(std::string_view text, std::vector<Made>& made) {
        std::string_view said;
        for (std::size_t i = 0; i < made.size(); ++i) {
            Made& one = made[i];
            const std::size_t last_end = i == 0 ? 0 : made[i - 1].end;
            const std::string_view gap = text.substr(last_end, one.start - last_end);
            const bool beside = i > 0 && (gap == " " || gap == ", " || gap == "/" || gap == " / ");
            // 'coated' and 'coated leather': the first goes.
            const bool begins_so = gap == " " && !said.empty() && one.wording.size() > said.size() &&
                                   one.wording[said.size()] == ' ' &&
                                   verdict::same_letters(said, one.wording.substr(0, said.size()));
            if (begins_so) {
                made[i - 1].end = one.start;
                made[i - 1].wording = {};
            }
            if (beside && !said.empty() && verdict::same_letters(said, one.wording)) {
                one.start = last_end;
                one.wording = {};
            } else {
                said = one.wording;
            }
        }
    }

    // The edit that a span of the edited text touches. One that wrote nothing is touched by words around its place.
    const Made* touched(const WordSpan& at) const {
        const auto& made = made_[at.field];
        auto one = std::lower_bound(made.begin(), made.end(), at.start,
                                    [](const Made& edit, std::size_t start) { return edit.new_end <= start; });
        if (one == made.end()) return nullptr;
        const bool inside = one->new_start == one->new_end ? at.start < one->new_start && one->new_start < at.end
                                                           : one->new_start < at.end;
        return inside ? &*one : nullptr;
    }

    // A statement of the edited text, in the given one: where an edit wrote it, the statement that this one follows.
    std::optional<WordSpan> followed(const WordSpan& at) const {
        if (const Made* one = touched(at)) return items_[one->item].problem.against;
        return in_given_text(at);
    }

    // REQUIRES: touches no edit.
    WordSpan in_given_text(const WordSpan& at) const {
        const auto& made = made_[at.field];
        const auto behind = std::lower_bound(made.begin(), made.end(), at.start,
                                             [](const Made& edit, std::size_t start) { return edit.new_end <= start; });
        if (behind == made.begin()) return at;
        const Made& last = *std::prev(behind);
        const auto shift = [&](std::uint32_t offset) {
            return static_cast<std::uint32_t>(offset - last.new_end + last.end);
        };
        return {at.field, shift(at.start), shift(at.end)};
    }

    std::size_t find(const WordSpan& at, std::uint32_t rule) const {
        const auto known = known_.find(key_of(at, rule));
        return known == known_.end() ? items_.size() : known->second;
    }

    // Takes back what the check did not let pass, and takes up what came to light. True where anything changed.
    bool settle(const std::vector<Problem>& after) {
        std::vector<std::pair<std::size_t, std::string>> failing;
        bool changed = false;
        for (const Problem& problem : after) {
            if (const Made* one = touched(problem.at)) {
                failing.emplace_back(one->item, "the wording would be " + named(problem));
                continue;
            }
            Problem given = problem;
            given.at = in_given_text(problem.at);
            const Made* one = problem.against ? touched(*problem.against) : nullptr;
            if (const std::size_t known = find(given.at, problem.rule); known < items_.size()) {
                changed = offers_more(items_[known], problem) || changed;
                // What was mended for a disagreement still disagrees with words that stay, and nothing is left to try
                // on them: which of the two is true, the listing does not say. What only names the same better,
                // 'imitation leather' for 'PU leather', takes no side.
                if (one != nullptr && items_[one->item].problem.against && items_[known].fits.empty() &&
                    items_[known].problem.fixed.empty()) {
                    failing.emplace_back(one->item, words_of(problem) + " would still be " + named(problem));
                }
                continue;
            }
            // What a quotation says stops nobody from mending the seller's own words.
            if (one != nullptr && problem.fixed.empty()) {
                failing.emplace_back(one->item, words_of(problem) + " would then be " + named(problem));
                continue;
            }
            // It stood behind a worse finding, which is mended.
            given.against.reset();
            if (problem.against && one == nullptr) given.against = in_given_text(*problem.against);
            add(given);
            changed = true;
        }
        for (auto& [item, why] : failing) {
            if (!items_[item].active) continue;
            next_fit(items_[item], std::move(why));
            changed = true;
        }
        if (changed) take_up();
        return changed;
    }

    // A reworded listing may not have more findings than the given one: takes back the last edit in front of one that
    // came to light. True where it did.
    bool back_to(std::size_t most, const std::vector<Problem>& after) {
        if (after.size() <= most) return false;
        for (auto item = items_.rbegin(); item != items_.rend(); ++item) {
            if (!item->active) continue;
            give_up(*item, "other findings would come to light");
            take_up();
            return true;
        }
        return false;
    }

    void next_fit(Item& item, std::string why) {
        take_back(item);
        item.fits.pop_back();
        item.why_not = std::move(why);
    }

    void give_up(Item& item, std::string why) {
        take_back(item);
        item.fits.clear();
        item.why_not = std::move(why);
    }

    // What was covered by the edit has to be settled by itself.
    void take_back(Item& item) {
        item.active = false;
        taken_[item.problem.at.field].erase(item.fits.back().start);
        any_freed_ = true;
    }

    // The words of a problem of the edited text, for people.
    std::string words_of(const Problem& problem) const {
        const WordSpan& at = problem.at;
        return '\'' + std::string(edited_.fields[at.field].text.substr(at.start, at.end - at.start)) + '\'';
    }

    // Its grade, with what its rule is about: an id tells nobody.
    std::string named(const Problem& problem) const {
        std::string text(name_of(problem.grade));
        if (problem.rule != kNoRule) text += " (" + book_.rules()[problem.rule].title + ")";
        return text;
    }

    // Words that stand side by side, as in 'full grain PU leather', are one statement with itself.
    Taken against_of(const Problem& problem) const {
        if (!problem.against || problem.rule == kNoRule) return {};
        const WordSpan& at = *problem.against;
        if (at.field == problem.at.field && (at.start == problem.at.end + 1 || problem.at.start == at.end + 1))
            return {};
        return {at.field, std::string(listing_.fields[at.field].text.substr(at.start, at.end - at.start))};
    }

    void write(const std::vector<Problem>& after, Rewording& result) {
        result.edits.clear();
        result.left.clear();
        result.texts = texts_;
        for (const auto& field : made_) {
            for (const Made& one : field) {
                const Item& item = items_[one.item];
                const std::string_view text = listing_.fields[item.problem.at.field].text;
                const bool leaves_out = !item.fits.empty() && item.fits.back().leaves_out;
                const WordSpan& at = item.problem.at;
                result.edits.push_back(
                    {item.problem.at.field, static_cast<std::uint32_t>(one.start), static_cast<std::uint32_t>(one.end),
                     std::string(text.substr(one.start, one.end - one.start)), std::string(one.wording),
                     item.problem.because, item.problem.rule, item.problem.grade, against_of(item.problem),
                     std::string(leaves_out ? text.substr(at.start, at.end - at.start) : std::string_view())});
            }
        }
        for (const Problem& problem : after) {
            const WordSpan at = in_given_text(problem.at);
            const std::size_t known = find(at, problem.rule);
            Leftover left{at.field, at.start,       at.end,       {},           problem.because,
                          {},       problem.remedy, problem.rule, problem.grade};
            left.words = listing_.fields[at.field].text.substr(at.start, at.end - at.start);
            if (known < items_.size()) left.why_not = items_[known].why_not;
            if (left.remedy.empty() && !problem.wordings.empty()) {
                left.remedy = "Such words would pass by themselves: " + problem.wordings.back() + ".";
            }
            result.left.push_back(std::move(left));
        }
    }

    const RuleBook& book_;
    const Listing& listing_;
    const Examine& examine_;
    std::vector<Item> items_;
    std::map<Key, std::size_t> known_;
    std::vector<std::map<std::size_t, std::size_t>> taken_;  // by field: where the edits that are made begin and end
    std::vector<std::vector<Made>> made_;                    // by field, in the order of the text
    std::vector<std::string> texts_;
    Listing edited_;
    bool any_edit_ = false;
    bool any_freed_ = false;
};

}  // namespace

struct Reworder::Workspace {
    const RuleBook& book;
    Checker checker;
    RewordOptions options;
    Rewording result;
};

Reworder::Reworder(const RuleBook& book, CheckOptions check, RewordOptions options)
    : work_(std::make_unique<Workspace>(Workspace{book, Checker(book, std::move(check)), options, {}})) {}
Reworder::Reworder(Reworder&&) noexcept = default;
Reworder& Reworder::operator=(Reworder&&) noexcept = default;
Reworder::~Reworder() = default;

const Rewording& Reworder::reword(const Listing& listing) {
    Workspace& work = *work_;
    std::vector<std::uint32_t> proofs_met;
    const Examine examine = [&](const Listing& text) {
        const CheckResult& result = work.checker.check(text);
        if (&text == &listing) proofs_met = result.proofs_met;
        return verdict::problems_of(work.book, work.checker, text, result, work.options);
    };
    Rounds(work.book, listing, examine).run(work.result);
    work.result.proofs_met = std::move(proofs_met);
    return work.result;
}

const Rewording& Reworder::reword(const Dossier& dossier, Judge& judge) {
    Workspace& work = *work_;
    work.result = {};
    if (dossier.listing() == nullptr) return work.result;
    std::vector<std::uint32_t> proofs_met;
    const Examine examine = [&](const Listing& text) {
        const Judgement& judgement = judge.judge(dossier, text);
        if (&text == dossier.listing()) proofs_met = judgement.check->proofs_met;
        return verdict::problems_of(work.book, judgement, text, work.options);
    };
    Rounds(work.book, *dossier.listing(), examine).run(work.result);
    work.result.proofs_met = std::move(proofs_met);
    return work.result;
}

}  // namespace v0
}  // namespace grainside
