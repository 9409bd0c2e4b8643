#include "desk/dossier_state.h"

#include <algorithm>
#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "calendar.h"
#include "desk/checked_text.h"
#include "desk/desk_error.h"
#include "desk/desk_folder.h"
#include "desk/dossier_sheet.h"
#include "desk/record_lines.h"
#include "document/yaml_document.h"
#include "evidence/dossier_data.h"
#include "evidence/evidence_data.h"
#include "grainside/cost.h"
#include "grainside/cost_report.h"
#include "grainside/judge.h"
#include "report/content_text.h"
#include "report/money_text.h"
#include "report/rounded.h"
#include "report/verdict_facts.h"
#include "yaml_places.h"

namespace grainside::desk {

using document::Node;
using report::JsonWriter;
using report::rounded;

namespace {

constexpr double kLeastShown = 0.005;

// The words are held against the rules of the day for which the dossier is judged.
CheckOptions check_options(const DeskBooks& books, const Dossier& dossier) {
    CheckOptions options{books.markets, books.on};
    if (options.on.empty()) options.on = dossier.data().captured;
    if (options.on.empty()) options.on = tools::today();
    options.proofs = dossier.data().proofs;
    return options;
}

// What follows from a dossier without faults.
struct Outcome {
    DossierContext context;
    CheckOptions check;
    Judge judge;
    Reworder reworder;
    // By the readings too: what they contradict is named as what it was found to be. Rewording judges, so it goes
    // first.
    const Rewording* rewording;
    TestPlan plan;
    const Judgement& judgement;
    CostEstimate costs;

    Outcome(const DeskBooks& books, const Dossier& dossier)
        : context{books.rules, books.evidence, dossier},
          check(check_options(books, dossier)),
          judge(books.rules, books.evidence, {{books.markets, books.on}, DecisionRule::both_guarded, tools::today()}),
          reworder(books.rules, check),
          rewording(dossier.listing() == nullptr ? nullptr : &reworder.reword(dossier, judge)),
          plan(judge.plan(dossier)),
          judgement(judge.judge(dossier)),
          costs(estimate_cost(books.evidence, dossier)) {}
};

class StateWriter {
public:
    StateWriter(const DeskBooks& books, const DossierText& text, Node root, const Dossier* dossier,
                const Outcome* outcome, JsonWriter& json)
        : books_(books), text_(text), root_(root), dossier_(dossier), outcome_(outcome), json_(json) {}

    void write() {
        write_sample(json_, root_);
        write_listing();
        write_parts();
        if (outcome_ != nullptr) write_outcome();
        json_.key("costs");
        json_.begin_object();
        write_cost_sheet(json_, root_);
        if (outcome_ != nullptr) write_costs();
        json_.end_object();
    }

private:
    void truth(std::string_view key, bool holds) {
        json_.key(key);
        json_.value_bool(holds);
    }

    void write_listing() {
        const Node listing = root_.find("listing");
        if (!listing.exists()) return;
        json_.key("listing");
        json_.begin_object();
        for (const std::string_view key : {"file", "digest", "captured", "region", "language"}) {
            json_.optional_member(key, plain_value(listing.find(key)));
        }
        if (dossier_ != nullptr && dossier_->listing() != nullptr) write_fields(*dossier_->listing());
        json_.end_object();
    }

    // A field that the sample lent is none of the listing's.
    std::size_t field_count(const Listing& listing) const {
        return listing.fields.size() - (dossier_->data().lent_category ? 1 : 0);
    }

    void write_fields(const Listing& listing) {
        checked_.emplace(books_.rules, listing, outcome_->check, outcome_->rewording);
        tools::YamlPlaces places(text_.text, listing.fields);
        json_.key("fields");
        json_.begin_array();
        for (std::size_t field = 0; field < field_count(listing); ++field) {
            json_.begin_object();
            json_.member("field", listing.fields[field].name);
            json_.member("text", listing.fields[field].text);
            truth("editable", places.find(field, 0, listing.fields[field].text.size()).has_value());
            checked_->write_field(json_, field);
            json_.end_object();
        }
        json_.end_array();
    }

    void write_parts() {
        write_list(json_, "parts", root_.find("parts"), [&](Node part) {
            json_.begin_object();
            json_.member("part", part.key());
            json_.key("readings");
            json_.begin_array();
            std::size_t index = 0;
            for (const Node reading : part.find("readings")) {
                json_.begin_object();
                write_reading_sheet(json_, reading, index++);
                json_.optional_member("title", title_of(reading.find("method").text()));
                json_.end_object();
            }
            json_.end_array();
            if (outcome_ != nullptr) write_beliefs(part.key());
            json_.end_object();
        });
    }

    std::string_view title_of(std::string_view method) const {
        for (const evidence::Method& known : books_.evidence.data().methods) {
            if (known.id == method) return known.title;
        }
        return {};
    }

    void write_beliefs(std::string_view part) {
        json_.key("beliefs");
        json_.begin_array();
        for (const PartJudgement& judged : outcome_->judgement.parts) {
            if (name_of(judged.part) != part) continue;
            for (const FrameBelief& belief : judged.frames) write_belief(belief);
        }
        json_.end_array();
    }

    void write_belief(const FrameBelief& belief) {
        json_.begin_object();
        json_.member("frame", std::string_view(belief.frame));
        json_.member("asks", std::string_view(belief.title));
        json_.key("candidates");
        json_.begin_array();
        for (const CandidateBelief& candidate : belief.candidates) {
            if (candidate.posterior < kLeastShown) continue;
            json_.begin_object();
            json_.member("candidate", std::string_view(candidate.id));
            json_.member("name", std::string_view(candidate.name));
            json_.member("prior", rounded(candidate.prior));
            json_.member("probability", rounded(candidate.posterior));
            json_.end_object();
        }
        json_.end_array();
        json_.member("conflict", rounded(belief.conflict));
        truth("contradictory", belief.contradictory);
        json_.end_object();
    }

    void write_outcome() {
        std::string lines;
        write_judgement_records(outcome_->context, outcome_->judgement, outcome_->judge.options(), lines);
        std::vector<std::string_view> records = records_in(lines);
        json_.key("verdicts");
        json_.begin_array();
        for (std::size_t i = 0; i < outcome_->judgement.verdicts.size(); ++i) {
            const Claim& claim = outcome_->judgement.check->mentions[outcome_->judgement.verdicts[i].claim];
            write_record(json_, records[i], [&](JsonWriter& more) {
                if (checked_) checked_->write_at(more, claim.field, claim.start, claim.end);
                if (checked_) checked_->write_edit(more, claim.field, claim.start, claim.end);
                write_cited(
                    more, books_.rules,
                    report::sources_of(outcome_->context, outcome_->judgement, outcome_->judgement.verdicts[i]));
                more.member("says_name", std::string_view(said_name(books_.rules, claim)));
            });
        }
        json_.end_array();
        json_.key("judged");
        json_.raw_value(records.back());

        lines.clear();
        write_plan_records(outcome_->context, outcome_->plan, lines);
        records = records_in(lines);
        json_.key("plan");
        json_.begin_array();
        for (std::size_t i = 0; i < outcome_->plan.tests.size(); ++i) json_.raw_value(records[i]);
        json_.end_array();
        json_.key("planned");
        json_.raw_value(records.back());
    }

    void write_costs() {
        std::string lines;
        write_price_records(outcome_->context, outcome_->costs, nullptr, lines);
        const std::vector<std::string_view> records = records_in(lines);
        json_.key("lines");
        json_.begin_array();
        for (std::size_t i = 0; i + 1 < records.size(); ++i) json_.raw_value(records[i]);
        json_.end_array();
        json_.key("sums");
        json_.raw_value(records.back());
        if (outcome_->costs.on_record) write_price();
    }

    // In the report's words: a page with words of its own would say otherwise one day.
    void write_price() {
        const CostEstimate& costs = outcome_->costs;
        const report::MoneyStyle style = report::style_of(costs.currency, books_.evidence.data().costs);
        const auto text = [&](const std::string& one) { json_.value(std::string_view(one)); };
        json_.key("told");
        json_.begin_object();
        if (costs.multiple) {
            json_.member("multiple", std::string_view(report::multiple_text(*costs.multiple)));
        }
        write_list(json_, "price", report::price_lines(costs, style), text);
        json_.end_object();
    }

    const DeskBooks& books_;
    const DossierText& text_;
    Node root_;
    const Dossier* dossier_;
    const Outcome* outcome_;
    JsonWriter& json_;
    std::optional<CheckedText> checked_;
};

}  // namespace

Result<Dossier> read_dossier_text(const DeskBooks& books, const DossierText& dossier,
                                  const std::filesystem::path& folder) {
    return Dossier::parse(dossier.name + std::string(kDossierEnding), dossier.text, folder, books.evidence,
                          {.today = tools::today()});
}

std::string dossier_state(const DeskBooks& books, const DossierText& text, const std::filesystem::path& folder) {
    const Result<Dossier> dossier = read_dossier_text(books, text, folder);
    document::Faults ignored;  // the dossier's own reader reports them
    const auto document = document::parse_yaml(text.name, text.text, ignored);

    std::string out;
    JsonWriter json(out);
    json.begin_object();
    json.member("name", std::string_view(text.name));
    json.member("digest", std::string_view(text.digest));
    json.member("text", std::string_view(text.text));
    json.member("undo", std::uint64_t{text.undo});
    json.member("redo", std::uint64_t{text.redo});
    write_issues(json, "faults", dossier.issues());
    write_issues(json, "warnings", dossier ? dossier.value().warnings() : std::vector<Issue>());
    if (document) {
        std::optional<Outcome> outcome;
        if (dossier) outcome.emplace(books, dossier.value());
        StateWriter(books, text, document->root(), dossier ? &dossier.value() : nullptr, outcome ? &*outcome : nullptr,
                    json)
            .write();
    }
    json.end_object();
    return out;
}

}  // namespace grainside::desk
