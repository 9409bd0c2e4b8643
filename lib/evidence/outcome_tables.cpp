#include "evidence/outcome_tables.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace grainside::evidence {

using document::Node;

namespace {

constexpr std::string_view kOthers = "others";

struct Row {
    Node node;
    std::size_t candidate = kNone;  // whose id the row has
    ConceptId says = 0;             // the concept of that id
    std::vector<double> chance;     // by outcome
    bool used = false;
};

class TableReader {
public:
    TableReader(const EntryReader& reader, const Frame& frame, const Method& method)
        : reader_(reader), frame_(frame), method_(method) {}

    void read_rows(Node node) {
        for (Node one : node) {
            Row row;
            row.node = one;
            row.chance = read_chances(one);
            if (one.key() != kOthers) {
                row.candidate = index_of(frame_.candidates, one.key());
                row.says = reader_.book().vocabulary.concepts.find(one.key());
                if (row.candidate == kNone && row.says == 0) {
                    reader_.error_at_key(
                        one, "unknown-material",
                        fmt::format("'{}' is neither a concept nor a candidate of '{}'", one.key(), frame_.id),
                        reader_.faults().suggestion(one.key(), ids_of(frame_.candidates)));
                    row.used = true;  // one fault is enough
                    sound_ = false;
                }
            }
            rows_.push_back(std::move(row));
        }
    }

    bool sound() const noexcept { return sound_; }

    std::vector<double> spread(Node node) {
        std::vector<double> chance;
        std::vector<std::string_view> without;
        for (std::size_t i = 0; i < frame_.candidates.size(); ++i) {
            Row* row = row_for(i);
            if (row == nullptr && frame_.candidates[i].unlisted) {
                chance.insert(chance.end(), method_.outcomes.size(), 0);
                continue;
            }
            if (row == nullptr) {
                without.push_back(frame_.candidates[i].id);
                chance.insert(chance.end(), method_.outcomes.size(), 0);
                continue;
            }
            row->used = true;
            chance.insert(chance.end(), row->chance.begin(), row->chance.end());
        }
        if (!without.empty()) {
            sound_ = false;
            reader_.error_at_key(node, "missing-row", fmt::format("no row speaks for {}", fmt::join(without, ", ")),
                                 "add a row `others`");
        }
        for (const Row& row : rows_) {
            if (row.used) continue;
            sound_ = false;
            reader_.error_at_key(row.node, "unused-row",
                                 fmt::format("no candidate of '{}' takes the row '{}'", frame_.id, row.node.key()),
                                 "nearer rows speak for all candidates below it, or none is");
        }
        for (std::size_t k = 0; k < method_.outcomes.size(); ++k) {
            if (method_.outcomes[k].says_nothing) level(k, chance);
        }
        average_into_unlisted(chance);
        return chance;
    }

private:
    bool takes_average(std::size_t candidate) {
        return frame_.candidates[candidate].unlisted && row_for(candidate) == nullptr;
    }

    // Makes outcome `k` as likely for every candidate, and scales what is left of each row.
    void level(std::size_t k, std::vector<double>& chance) {
        constexpr double kMost = 0.999;
        const std::size_t outcomes = method_.outcomes.size();
        double average = 0;
        double listed = 0;
        for (std::size_t i = 0; i < frame_.candidates.size(); ++i) {
            if (takes_average(i)) continue;
            listed += frame_.candidates[i].prior;
            average += frame_.candidates[i].prior * chance[i * outcomes + k];
        }
        average = listed > 0 ? std::min(average / listed, kMost) : 0;
        for (std::size_t i = 0; i < frame_.candidates.size(); ++i) {
            if (takes_average(i)) continue;
            double* row = chance.data() + i * outcomes;
            const double rest = 1 - row[k];
            for (std::size_t other = 0; other < outcomes; ++other) {
                if (other == k) continue;
                // A material that never gave anything else gives all else alike.
                row[other] =
                    rest > 0 ? row[other] / rest * (1 - average) : (1 - average) / static_cast<double>(outcomes - 1);
            }
            row[k] = average;
        }
    }

    // What the frame does not list gives each outcome as often as what it lists does on average.
    void average_into_unlisted(std::vector<double>& chance) {
        const std::size_t outcomes = method_.outcomes.size();
        std::vector<double> average(outcomes, 0);
        double listed = 0;
        for (std::size_t i = 0; i < frame_.candidates.size(); ++i) {
            if (takes_average(i)) continue;
            listed += frame_.candidates[i].prior;
            for (std::size_t k = 0; k < outcomes; ++k) {
                average[k] += frame_.candidates[i].prior * chance[i * outcomes + k];
            }
        }
        for (std::size_t i = 0; i < frame_.candidates.size(); ++i) {
            if (!takes_average(i) || listed <= 0) continue;
            for (std::size_t k = 0; k < outcomes; ++k) chance[i * outcomes + k] = average[k] / listed;
        }
    }

    std::vector<double> read_chances(Node row) {
        std::vector<double> chance(method_.outcomes.size(), 0);
        if (!row.is_mapping()) {
            sound_ = false;
            reader_.error(row, "wrong-type", "a row is a mapping of outcomes to percent");
            return chance;
        }
        double sum = 0;
        bool readable = true;
        for (Node one : row) {
            const auto outcome = reader_.choice_of_key(one, ids_of(method_.outcomes), "outcome");
            const std::optional<double> percent = reader_.number(one, 0, kWhole);
            readable = readable && outcome && percent;
            if (!outcome || !percent) continue;
            chance[*outcome] = *percent / kWhole;
            sum += *percent;
        }
        if (!readable) {
            sound_ = false;
            return chance;
        }
        if (std::fabs(sum - kWhole) > kPercentSlack) {
            sound_ = false;
            reader_.error_at_key(row, "row-sum",
                                 fmt::format("the row '{}' adds up to {:.6g}, not 100", row.key(), sum));
            return chance;
        }
        for (double& one : chance) one *= kWhole / sum;
        return chance;
    }

    Row* row_for(std::size_t candidate) {
        Row* others = nullptr;
        for (Row& row : rows_) {
            if (row.candidate == candidate) return &row;
            if (row.node.key() == kOthers) others = &row;
        }
        if (frame_.candidates[candidate].unlisted) return nullptr;  // `others` are what the frame lists
        Row* above = nearest_above(frame_.candidates[candidate].is);
        return above != nullptr ? above : others;
    }

    // The candidate's own concept has no row of that name, or row_for had found it.
    Row* nearest_above(ConceptId concept_id) {
        if (concept_id == 0) return nullptr;
        const auto& concepts = reader_.book().vocabulary.concepts;
        std::vector<ConceptId> level = concepts[concept_id].parents;
        std::vector<ConceptId> seen = level;
        while (!level.empty()) {
            for (Row& row : rows_) {
                if (row.says != 0 && std::find(level.begin(), level.end(), row.says) != level.end()) return &row;
            }
            std::vector<ConceptId> next;
            for (const ConceptId id : level) {
                for (const ConceptId parent : concepts[id].parents) {
                    if (std::find(seen.begin(), seen.end(), parent) != seen.end()) continue;
                    seen.push_back(parent);
                    next.push_back(parent);
                }
            }
            level = std::move(next);
        }
        return nullptr;
    }

    const EntryReader& reader_;
    const Frame& frame_;
    const Method& method_;
    std::vector<Row> rows_;
    bool sound_ = true;
};

}  // namespace

std::optional<OutcomeTable> read_outcome_table(const EntryReader& reader, Node node, std::size_t frame,
                                               const Method& method, const EvidenceData& data) {
    if (!node.is_mapping()) {
        reader.error(node, "wrong-type", "expected a mapping of materials to rows");
        return std::nullopt;
    }
    TableReader rows(reader, data.frames[frame], method);
    rows.read_rows(node);
    OutcomeTable table;
    table.frame = frame;
    table.chance = rows.spread(node);
    if (!rows.sound()) return std::nullopt;
    return table;
}

}  // namespace grainside::evidence
