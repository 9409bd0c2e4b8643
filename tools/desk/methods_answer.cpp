#include "desk/methods_answer.h"

#include <cstddef>
#include <string_view>
#include <vector>

#include "desk/record_lines.h"
#include "evidence/computed_quantities.h"
#include "evidence/elements.h"
#include "evidence/evidence_data.h"
#include "evidence/quantity_names.h"
#include "report/json_writer.h"
#include "rules/book_data.h"

namespace grainside::desk {

using evidence::Method;
using report::JsonWriter;

namespace {

// How a value is written, and what for an example; numbers of no meaning.
struct InputKind {
    std::string_view kind;
    std::string key;
    std::string unit;
    std::string example;
};

InputKind kind_of(const evidence::QuantityRead& quantity) {
    if (quantity.name == evidence::kContent) {
        return {"elements", "composition", "%", "Zn: 95.4 \xC2\xB1 0.6 %, Cu: 0.05 \xC2\xB1 0.02 %"};
    }
    if (quantity.name == evidence::kFibreShare) return {"fibres", "shares", "%", "cotton: 60 \xC2\xB1 2 %"};
    if (quantity.unit == evidence::kColourUnit) {
        return {"colour", quantity.name, "", "L: 48.2 \xC2\xB1 0.4, a: 12.1 \xC2\xB1 0.4, b: 20.3 \xC2\xB1 0.4"};
    }
    return {"quantity", quantity.name, quantity.unit, "1.2 \xC2\xB1 0.1 " + quantity.unit};
}

struct Member {
    std::string_view id;
    std::string_view name;
};

// What has a number of its own in such a value.
std::vector<Member> members_of(std::string_view kind, const RuleBook& rules) {
    std::vector<Member> members;
    if (kind == "colour") {
        for (const std::string_view axis : {"L", "a", "b"}) members.push_back({axis, axis});
    } else if (kind == "elements") {
        for (const std::string_view symbol : evidence::element_symbols()) members.push_back({symbol, symbol});
    } else if (kind == "fibres") {
        const vocabulary::Vocabulary& vocabulary = rules.data().vocabulary;
        for (std::size_t i = 1; i < vocabulary.concepts.size(); ++i) {
            const auto id = static_cast<ConceptId>(i);
            if (!vocabulary.concepts.is_a(id, vocabulary.known.textile)) continue;
            members.push_back({rules.concept_name(id), rules.concept_wording(id)});
        }
    }
    return members;
}

class MethodWriter {
public:
    MethodWriter(const Method& method, const RuleBook& rules, JsonWriter& json)
        : method_(method), rules_(rules), json_(json) {}

    void write() {
        json_.begin_object();
        json_.member("method", std::string_view(method_.id));
        json_.member("title", std::string_view(method_.title));
        json_.member("about", std::string_view(method_.how));
        json_.member("harm", name_of(method_.harm));
        json_.member("who", name_of(method_.who));
        json_.member("minutes", method_.minutes);
        json_.member("cost", method_.cost);
        const auto text = [&](const std::string& one) { json_.value(std::string_view(one)); };
        write_list(json_, "cautions", method_.cautions, text);
        json_.key("parts");
        json_.begin_array();
        for (std::size_t part = 0; part < kPartCount; ++part) {
            if ((method_.parts & evidence::part_bit(static_cast<Part>(part))) != 0) {
                json_.value(name_of(static_cast<Part>(part)));
            }
        }
        json_.end_array();
        json_.key("inputs");
        json_.begin_array();
        if (!method_.outcomes.empty()) write_outcome();
        for (const evidence::QuantityRead& quantity : method_.reads) write_quantity(quantity);
        json_.end_array();
        json_.end_object();
    }

private:
    void truth(std::string_view key, bool holds) {
        json_.key(key);
        json_.value_bool(holds);
    }

    void write_outcome() {
        json_.begin_object();
        json_.member("key", std::string_view("outcome"));
        json_.member("kind", std::string_view("outcome"));
        truth("needed", method_.reads.empty());
        write_list(json_, "choices", method_.outcomes, [&](const evidence::Outcome& outcome) {
            json_.begin_object();
            json_.member("id", std::string_view(outcome.id));
            json_.member("title", std::string_view(outcome.means));
            json_.end_object();
        });
        json_.end_object();
    }

    void write_quantity(const evidence::QuantityRead& quantity) {
        const InputKind kind = kind_of(quantity);
        json_.begin_object();
        json_.member("key", std::string_view(kind.key));
        json_.member("kind", kind.kind);
        const bool all = evidence::needs_all_quantities(method_.computes);
        truth("needed", method_.outcomes.empty() && (all || method_.reads.size() == 1));
        truth("together", all);
        json_.optional_member("unit", kind.unit);
        if (const std::vector<Member> members = members_of(kind.kind, rules_); !members.empty()) {
            write_list(json_, "members", members, [&](const Member& member) {
                json_.begin_object();
                json_.member("id", member.id);
                json_.member("name", member.name);
                json_.end_object();
            });
        }
        json_.member("example", std::string_view(kind.example));
        json_.end_object();
    }

    const Method& method_;
    const RuleBook& rules_;
    JsonWriter& json_;
};

}  // namespace

std::string methods_answer(const DeskBooks& books) {
    std::string out;
    JsonWriter json(out);
    json.begin_object();
    write_list(json, "methods", books.evidence.data().methods,
               [&](const Method& method) { MethodWriter(method, books.rules, json).write(); });
    json.key("parts");
    json.begin_array();
    for (std::size_t part = 0; part < kPartCount; ++part) json.value(name_of(static_cast<Part>(part)));
    json.end_array();
    json.key("harms");
    json.begin_array();
    for (std::size_t harm = 0; harm < evidence::kHarmCount; ++harm)
        json.value(name_of(static_cast<evidence::Harm>(harm)));
    json.end_array();
    json.end_object();
    return out;
}

}  // namespace grainside::desk
