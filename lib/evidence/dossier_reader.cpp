#include "evidence/dossier_reader.h"

#include <fmt/format.h>

#include <iterator>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <utility>

#include "evidence/cost_reader.h"
#include "evidence/day_check.h"
#include "evidence/entry_reader.h"
#include "evidence/listing_section.h"
#include "evidence/own_priors.h"
#include "evidence/picture_files.h"
#include "evidence/proof_reader.h"
#include "evidence/reading_reader.h"
#include "grainside/dossier.h"

namespace grainside::evidence {

using document::Document;
using document::Faults;
using document::Node;

namespace {

constexpr double kMostMonths = 1200;

void read_sample(const EntryReader& reader, Node node, const EvidenceData& data, DayCheck& days, DossierData& dossier) {
    if (!reader.check_keys(node, {"what", "category", "seller", "bought", "price", "condition", "months_in_use"})) {
        return;
    }
    dossier.what = reader.text(node, "what");
    dossier.seller = reader.text(node, "seller");
    dossier.price = reader.text(node, "price");
    if (const Node price = node.find("price"); price.exists()) read_price(reader, price, data, dossier);
    dossier.bought = days.read(node, "bought");
    days.set_bought(dossier.bought);
    if (const Node category = node.find("category"); category.exists()) {
        std::vector<std::string_view> names;
        for (const vocabulary::Category& known : reader.book().vocabulary.categories) names.push_back(known.name);
        if (reader.choice(category, names, "category")) dossier.category = category.text();
    }
    if (const Node condition = node.find("condition"); condition.exists()) {
        constexpr std::string_view kConditions[] = {"new", "used"};
        if (reader.choice(condition, kConditions, "condition")) dossier.condition = condition.text();
    }
    const Node months = node.find("months_in_use");
    if (!months.exists()) return;
    const auto count = read_number(reader.document(), months, reader.faults());
    if (!count) return;
    if (*count < 0) {
        reader.error(months, "negative", "nothing is in use for less than no time", "0 for a sample that was not used");
    } else if (*count > kMostMonths) {
        reader.error(months, "out-of-range", fmt::format("{} months are more than a hundred years", *count),
                     "the time stands in months");
    } else {
        dossier.months_in_use = *count;
        if (*count > 0 && dossier.condition == "new") {
            reader.faults().warning(reader.document(), months, "worn-though-new",
                                    "the sample is called new and was in use; it counts as worn");
        }
    }
}

class PartsReader {
public:
    PartsReader(const EntryReader& reader, const EvidenceData& data, const DayCheck& days, DossierData& dossier)
        : reader_(reader), data_(data), days_(days), dossier_(dossier) {}

    void read(Node parts) {
        if (!parts.is_mapping()) {
            reader_.error(parts, "wrong-type", "`parts` is a mapping of parts to their readings");
            return;
        }
        for (Node node : parts) {
            const auto part = reader_.part(node, node.key());
            if (!reader_.check_keys(node, {"readings"})) continue;
            // What stands below a part that there is not is read all the same, for its faults.
            std::vector<Reading> readings = read_readings(node, part);
            if (part) dossier_.parts.push_back({*part, std::move(readings)});
        }
    }

private:
    std::vector<Reading> read_readings(Node node, std::optional<Part> part) {
        std::vector<Reading> read;
        const Node readings = node.find("readings");
        if (readings.exists() && !readings.is_sequence()) {
            reader_.error(readings, "wrong-type", "`readings` is a list");
            return read;
        }
        for (Node one : readings) {
            if (++count_ > kMaxReadings) {
                // Once: the rest is not looked at.
                if (count_ == kMaxReadings + 1) {
                    reader_.error(one, "too-many-readings", fmt::format("more than {} readings", kMaxReadings),
                                  "one dossier is one sample");
                }
                return read;
            }
            read.push_back(read_reading(reader_, one, part, data_, days_));
            check_picture(one, read.back().photo);
            note_repeat(readings, one, read);
        }
        if (part && readings.begin() == readings.end()) {
            reader_.faults().warning(reader_.document(), node, "no-readings",
                                     fmt::format("nothing was read on the part '{}'", name_of(*part)));
        }
        return read;
    }

    // A test that was made again has another value, day, photo or note; what is the same in every member is more likely
    // an entry that was made twice, and counts all the same (at the discount of repeats).
    void note_repeat(Node readings, Node last, const std::vector<Reading>& read) const {
        std::size_t at = 0;
        for (const Node earlier : readings) {
            if (at + 1 >= read.size()) return;
            // Cheap to ask first: readings by another method are not the same.
            if (read[at].method != read.back().method || !same_entries(earlier, last)) {
                ++at;
                continue;
            }
            reader_.faults().warning(
                reader_.document(), last, "same-reading-twice",
                fmt::format("the same reading stands twice: in line {} it is the same in every member", read[at].line),
                "take one out, or say what is different: its day, photo or note");
            return;
        }
    }

    // Members in any order.
    static bool same_entries(Node a, Node b) {
        if (a.kind() != b.kind() || a.text() != b.text()) return false;
        std::size_t of_a = 0;
        for (const Node one : a) {
            const Node other = one.key().empty() ? Node() : b.find(one.key());
            if (!other.exists() || !same_entries(one, other)) return false;
            ++of_a;
        }
        return of_a == static_cast<std::size_t>(std::distance(b.begin(), b.end()));
    }

    // A reading holds without its picture, but a report can show none.
    void check_picture(Node reading, const std::string& photo) {
        if (photo.empty() || !pictures_.insert(photo).second) return;
        const BesideFile file = find_picture(dossier_, photo);
        if (file.found()) return;
        reader_.faults().warning(reader_.document(), reading.find("photo"), "no-picture", file.message, file.hint);
    }

    const EntryReader& reader_;
    const EvidenceData& data_;
    const DayCheck& days_;
    DossierData& dossier_;
    std::set<std::string> pictures_;  // that were looked for
    std::size_t count_ = 0;
};

}  // namespace

void read_dossier(const Document& document, const rules::BookData& book, const EvidenceData& data,
                  const std::string& today, DossierData& dossier, Faults& faults) {
    const EntryReader reader(book, document, faults);
    const Node root = document.root();
    if (!reader.check_keys(root, {"sample", "listing", "parts", "confirmed", "priors", "costs", "proofs"})) return;
    DayCheck days(reader, today, data.judging.earliest);
    if (const Node sample = root.find("sample"); sample.exists()) {
        read_sample(reader, sample, data, days, dossier);
    } else {
        reader.error(root, "missing-key", "a dossier needs `sample`", "say at least `sample: {what: ...}`");
    }
    if (const Node listing = root.find("listing"); listing.exists()) {
        read_listing(reader, listing, days, dossier);
    }
    if (const Node parts = root.find("parts"); parts.exists()) PartsReader(reader, data, days, dossier).read(parts);
    if (const Node confirmed = root.find("confirmed"); confirmed.exists()) {
        read_confirmed(reader, confirmed, data, dossier);
    }
    if (const Node priors = root.find("priors"); priors.exists()) read_own_priors(reader, priors, data, dossier);
    if (const Node costs = root.find("costs"); costs.exists()) read_costs(reader, costs, data, dossier);
    if (const Node proofs = root.find("proofs"); proofs.exists()) {
        auto index = std::make_unique<FiledProofs::Index>();
        ProofReader(*index).read(reader, proofs, dossier.folder, "dossier");
        if (!index->all.empty()) dossier.proofs = std::make_shared<const FiledProofs>(std::move(index));
    }
}

}  // namespace grainside::evidence
