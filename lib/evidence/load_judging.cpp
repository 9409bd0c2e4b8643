#include "evidence/load_judging.h"

#include "evidence/entry_reader.h"
#include "evidence/names.h"

namespace grainside::evidence {

using document::Document;
using document::Faults;
using document::Node;

namespace {

constexpr double kMostUncertainties = 10;
constexpr double kMostDecibans = 1000;
constexpr double kMostWeight = 1'000'000;

void read_plan(const EntryReader& reader, Node plan, Judging& judging) {
    if (!reader.check_keys(plan, {"minute", "harm", "least_bits"})) return;
    judging.minute_weight = reader.required_number(plan, "minute", 0, kMostWeight).value_or(judging.minute_weight);
    judging.least_bits = reader.required_number(plan, "least_bits", 0, kMostWeight).value_or(judging.least_bits);
    const Node harm = plan.find("harm");
    if (!harm.exists()) {
        reader.error(plan, "missing-key", "`harm` must stand here");
        return;
    }
    if (!reader.check_keys(harm, {"none", "mark", "cut", "destroy"})) return;
    for (std::size_t i = 0; i < kHarmCount; ++i) {
        judging.harm_weight[i] =
            reader.required_number(harm, harm_names()[i], 0, kMostWeight).value_or(judging.harm_weight[i]);
        // A plan would prefer to destroy what it could have looked at.
        if (i > 0 && judging.harm_weight[i] < judging.harm_weight[i - 1]) {
            reader.error(harm.find(harm_names()[i]), "out-of-range", "more harm weighs at least as much as less");
        }
    }
}

void read_slip(const EntryReader& reader, Node slip, Judging& judging) {
    if (!reader.check_keys(slip, {"anyone", "practised", "laboratory"})) return;
    for (std::size_t i = 0; i < kWhoCount; ++i) {
        if (const auto percent = reader.required_number(slip, who_names()[i], 0, kWhole / 2)) {
            judging.slip[i] = *percent / kWhole;
        }
    }
}

}  // namespace

void load_judging(const rules::BookData& book, EvidenceData& data, Faults& faults) {
    bool any = false;
    for (const Document& document : book.documents) {
        if (document.file() != "judging.yaml") continue;
        any = true;
        const EntryReader reader(book, document, faults);
        const Node root = document.root();
        if (!reader.check_keys(
                root, {"decided_at", "from_even", "guard", "same_look", "slip", "conflict", "plan", "earliest"}))
            continue;
        Judging& judging = data.judging;
        if (root.find("earliest").exists()) judging.earliest = reader.required_day(root, "earliest", "a day");
        if (const auto read = reader.required_number(root, "decided_at", kWhole / 2, kWhole)) {
            judging.decided_at = *read / kWhole;
            // At one half a claim and its denial would both be decided; at all of it nothing ever is.
            if (judging.decided_at <= 0.5 || judging.decided_at >= 1) {
                reader.error(root.find("decided_at"), "out-of-range", "`decided_at` lies between 50 and 100",
                             "95 is customary");
            }
        }
        if (const auto read = reader.required_number(root, "from_even", kWhole / 2, kWhole)) {
            judging.from_even = *read / kWhole;
            if (judging.from_even >= 1) {
                reader.error(root.find("from_even"), "out-of-range", "`from_even` is below 100",
                             "no reading is beyond all doubt");
            }
        }
        judging.guard = reader.required_number(root, "guard", 0, kMostUncertainties).value_or(judging.guard);
        if (const auto read = reader.required_number(root, "same_look", 0, kWhole)) {
            judging.same_look = *read / kWhole;
        }
        if (const Node slip = root.find("slip"); slip.exists()) {
            read_slip(reader, slip, judging);
        } else {
            reader.error(root, "missing-key", "`slip` must stand here");
        }
        judging.conflict = reader.required_number(root, "conflict", 0, kMostDecibans).value_or(judging.conflict);
        if (const Node plan = root.find("plan"); plan.exists()) {
            read_plan(reader, plan, judging);
        } else {
            reader.error(root, "missing-key", "`plan` must stand here");
        }
    }
    if (!any) {
        Issue issue;
        issue.code = "missing-file";
        issue.file = "judging.yaml";
        issue.message = "the rule folder has no judging.yaml";
        issue.hint = "rules/EVIDENCE.md, section 5, shows one";
        faults.add(std::move(issue));
    }
}

}  // namespace grainside::evidence
