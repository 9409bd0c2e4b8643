// RecordWriter: claims and findings as JSON Lines (design section 9).
#include <array>
#include <cmath>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/report.h"
#include "report/concession_text.h"
#include "report/demand_text.h"
#include "report/json_text.h"
#include "report/json_writer.h"
#include "report/proof_record.h"

namespace grainside {
inline namespace v0 {

using report::append_json_number;
using report::append_json_string;

namespace {

constexpr std::size_t kGradeCount = 6;
constexpr std::size_t kBasisCount = 3;

// The text of a rule that does not depend on the listing.
struct RuleText {
    std::string reason;            // ,"rule":...,"because":...
    std::string ground;            // ,"sources":...,"markets":... and the mark of an unseen source
    std::string ground_of_lifted;  // the same without what can be done about the words
    bool offers_wording = false;
};

void append_list(report::JsonWriter& json, std::string_view key, const std::vector<std::string>& items) {
    json.key(key);
    json.begin_array();
    for (const std::string& item : items) json.value(item);
    json.end_array();
}

// The members that `fill` writes, as they follow others: with a comma instead of the opening bracket.
template <typename Fill>
std::string following_members(Fill fill) {
    std::string text;
    report::JsonWriter json(text);
    json.begin_object();
    fill(json);
    text.front() = ',';
    return text;
}

RuleText text_of(const RuleBook& book, const RuleInfo& rule) {
    RuleText text;
    text.reason = following_members([&](report::JsonWriter& json) {
        json.member("rule", rule.id);
        json.member("because", rule.because);
    });
    const auto ground = [&](std::string_view remedy) {
        return following_members([&](report::JsonWriter& json) {
            std::vector<std::string> sources;
            bool from_memory = false;
            for (std::uint32_t index : rule.sources) {
                sources.push_back(book.sources()[index].id);
                from_memory = from_memory || book.sources()[index].from_memory;
            }
            append_list(json, "sources", sources);
            append_list(json, "markets", rule.markets);
            json.optional_member("remedy", remedy);
            if (from_memory) {
                json.key("from_memory");
                json.value_bool(true);
            }
        });
    };
    text.ground = ground(rule.remedy);
    text.ground_of_lifted = ground({});
    text.offers_wording = !rule.say_instead.empty();
    return text;
}

std::string quoted(std::string_view text) {
    std::string out;
    append_json_string(out, text);
    return out;
}

std::string_view slice(const Listing& listing, const Claim& claim, std::uint32_t start, std::uint32_t end) {
    return listing.fields[claim.field].text.substr(start, end - start);
}

void append_number_member(std::string& out, std::string_view key, std::uint64_t number) {
    out += key;
    append_json_number(out, number);
}

}  // namespace

struct RecordWriter::Constants {
    explicit Constants(const RuleBook& rule_book) : book(rule_book) {
        rules.reserve(book.rules().size());
        for (const RuleInfo& rule : book.rules()) rules.push_back(text_of(book, rule));
        concepts.reserve(book.concept_count());
        for (std::size_t id = 0; id < book.concept_count(); ++id) {
            concepts.push_back(quoted(book.concept_name(static_cast<ConceptId>(id))));
            report::append_demands_member(demands.emplace_back(), book, static_cast<ConceptId>(id));
        }
        for (std::size_t part = 0; part < kPartCount; ++part) {
            for (std::size_t kind = 0; kind < kKindCount; ++kind) {
                part_and_kind[part][kind] = following_members([&](report::JsonWriter& json) {
                    json.member("part", name_of(static_cast<Part>(part)));
                    json.member("kind", name_of(static_cast<Kind>(kind)));
                });
            }
        }
        for (std::size_t grade = 0; grade < kGradeCount; ++grade) {
            for (std::size_t basis = 0; basis < kBasisCount; ++basis) {
                grade_and_basis[grade][basis] = following_members([&](report::JsonWriter& json) {
                    json.member("grade", name_of(static_cast<Grade>(grade)));
                    json.member("basis", name_of(static_cast<Basis>(basis)));
                });
            }
        }
    }

    void append_concept(std::string& out, std::string_view key, ConceptId id) const {
        out += key;
        out += id < concepts.size() ? std::string_view(concepts[id]) : std::string_view("\"\"");
    }

    // {"listing","field","start","end","words","part","kind","says": what claims and findings have in common.
    void append_place(std::string& out, const Listing& listing, const Claim& claim, std::uint32_t start,
                      std::uint32_t end) const {
        out += "{\"listing\":";
        append_json_string(out, listing.id);
        append_words(out, ",\"field\":", listing, claim, start, end);
        out += part_and_kind[static_cast<std::size_t>(claim.part)][static_cast<std::size_t>(claim.kind)];
        append_concept(out, ",\"says\":", claim.says);
    }

    static void append_words(std::string& out, std::string_view field_key, const Listing& listing, const Claim& claim,
                             std::uint32_t start, std::uint32_t end) {
        out += field_key;
        append_json_string(out, listing.fields[claim.field].name);
        append_number_member(out, ",\"start\":", start);
        append_number_member(out, ",\"end\":", end);
        out += ",\"words\":";
        append_json_string(out, slice(listing, claim, start, end));
    }

    // The claims whose finding a document lifted, as records of their own; gives their number.
    std::uint64_t write_lifted(const Listing& listing, const CheckResult& result, std::string& out) const {
        std::uint64_t count = 0;
        for (const ClaimOnFile& one : result.on_file) {
            if (!one.lifted) continue;
            ++count;
            const FiledProof& proof = result.proofs->all()[one.proof];
            const RuleInfo& rule = book.rules()[one.rule];
            append_place(out, listing, result.mentions[one.claim], one.start, one.end);
            out +=
                grade_and_basis[static_cast<std::size_t>(Grade::consistent)][static_cast<std::size_t>(Basis::evidence)];
            out += following_members([&](report::JsonWriter& json) {
                json.member("rule", std::string_view(rule.id));
                json.member("because", std::string_view("A document on file supports it: " + proof_text(proof) + '.'));
            });
            out += rules[one.rule].ground_of_lifted;
            report::append_proof_member(out, "on_file", proof);
            out += "}\n";
        }
        return count;
    }

    const RuleBook& book;
    std::vector<RuleText> rules;
    std::vector<std::string> concepts;  // as JSON strings
    std::vector<std::string> demands;   // by concept: the member `would_support`, or nothing
    std::array<std::array<std::string, kKindCount>, kPartCount> part_and_kind;
    std::array<std::array<std::string, kBasisCount>, kGradeCount> grade_and_basis;
};

RecordWriter::RecordWriter(const RuleBook& book) : constants_(std::make_unique<Constants>(book)) {}
RecordWriter::RecordWriter(RecordWriter&&) noexcept = default;
RecordWriter& RecordWriter::operator=(RecordWriter&&) noexcept = default;
RecordWriter::~RecordWriter() = default;

void RecordWriter::write_claims(const Listing& listing, const CheckResult& result, std::string& out) const {
    const Constants& constants = *constants_;
    for (const Claim& claim : result.mentions) {
        if (!is_claim_kind(claim.kind)) continue;
        constants.append_place(out, listing, claim, claim.start, claim.end);
        out += claim.negated ? ",\"negated\":true" : ",\"negated\":false";
        out += claim.hedged ? ",\"hedged\":true" : ",\"hedged\":false";
        if (claim.called != 0) constants.append_concept(out, ",\"called\":", claim.called);
        if (claim.place != 0) constants.append_concept(out, ",\"place\":", claim.place);
        // JSON has no word for a number that is too large to be one.
        if (claim.quantity && std::isfinite(claim.quantity->low) && std::isfinite(claim.quantity->high)) {
            out += ",\"quantity\":{\"low\":";
            append_json_number(out, claim.quantity->low);
            out += ",\"high\":";
            append_json_number(out, claim.quantity->high);
            out += ",\"unit\":";
            append_json_string(out, name_of(claim.quantity->unit));
            out += '}';
        }
        if (claim.look_alike) out += ",\"look_alike\":true";
        out += "}\n";
    }
}

void RecordWriter::write_findings(const Listing& listing, const CheckResult& result, const Checker& checker,
                                  std::string& out, const Conceded* conceded) const {
    const Constants& constants = *constants_;
    Grade worst = Grade::consistent;
    for (std::size_t at = 0; at < result.findings.size(); ++at) {
        const Finding& finding = result.findings[at];
        const Claim& claim = result.mentions[finding.claim];
        const RuleText& rule = constants.rules[finding.rule];
        const bool stands = conceded != nullptr && conceded->stands(at);
        if (finding.grade < worst && !stands) worst = finding.grade;
        constants.append_place(out, listing, claim, finding.start, finding.end);
        out +=
            constants.grade_and_basis[static_cast<std::size_t>(finding.grade)][static_cast<std::size_t>(finding.basis)];
        out += rule.reason;
        if (rule.offers_wording) {
            if (const std::string instead = checker.say_instead(listing, finding); !instead.empty()) {
                out += ",\"say_instead\":";
                append_json_string(out, instead);
            }
        }
        out += rule.ground;
        if (finding.against != kNoClaim) {
            const Claim& other = result.mentions[finding.against];
            Constants::append_words(out, ",\"against\":{\"field\":", listing, other, other.start, other.end);
            constants.append_concept(out, ",\"says\":", other.says);
            out += '}';
        }
        if (finding.grade == Grade::unsupported) {
            out += constants.demands[claim.says];
            if (result.proofs != nullptr) {
                report::append_filed_member(out, constants.book, result, finding.claim, finding.grade);
            }
        }
        report::append_concession_member(out, conceded, at);
        out += "}\n";
    }
    const std::uint64_t lifted = constants.write_lifted(listing, result, out);

    out += "{\"listing\":";
    append_json_string(out, listing.id);
    append_number_member(out, ",\"claims\":", result.claim_count);
    const std::size_t counted = report::counting(conceded, result.findings.size());
    append_number_member(out, ",\"findings\":", counted);
    if (conceded != nullptr) append_number_member(out, ",\"conceded\":", conceded->count);
    if (result.proofs != nullptr) append_number_member(out, ",\"on_file\":", lifted);
    out += ",\"worst\":";
    if (counted == 0) {
        out += "null";
    } else {
        append_json_string(out, name_of(worst));
    }
    std::uint64_t look_alikes = 0;
    for (const Claim& claim : result.mentions) {
        if (claim.look_alike && is_claim_kind(claim.kind)) ++look_alikes;
    }
    if (look_alikes != 0) append_number_member(out, ",\"look_alikes\":", look_alikes);
    out += "}\n";
}

}  // namespace v0
}  // namespace grainside
