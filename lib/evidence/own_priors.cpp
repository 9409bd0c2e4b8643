#include "evidence/own_priors.h"

#include <fmt/format.h>

namespace grainside::evidence {

using document::Node;

namespace {

void read_frame_prior(const EntryReader& reader, Node node, std::size_t frame_index, const Frame& frame,
                      DossierData& dossier) {
    if (!node.is_mapping()) {
        reader.error(node, "wrong-type", "expected a mapping of candidates to percent");
        return;
    }
    std::vector<double> stated(frame.candidates.size(), 0);
    double sum = 0;
    bool readable = true;
    for (Node one : node) {
        const auto candidate = reader.choice_of_key(one, ids_of(frame.candidates), "candidate");
        const auto percent = read_number(reader.document(), one, reader.faults());
        readable = readable && candidate && percent;
        if (!candidate || !percent) continue;
        if (*percent <= 0 || *percent > kWhole) {
            reader.error(one, "bad-prior", "a prior is above 0 and at most 100",
                         "what is held impossible no reading can show");
            readable = false;
        }
        stated[*candidate] = *percent;
        sum += *percent;
    }
    if (!readable) return;
    double others = 0;  // of the book's priors
    for (std::size_t i = 0; i < stated.size(); ++i) {
        if (stated[i] == 0) others += frame.candidates[i].prior;
    }
    const bool all_named = others == 0;
    if (all_named ? sum < kWhole - kPercentSlack || sum > kWhole + kPercentSlack : sum >= kWhole) {
        reader.error(node, "prior-sum",
                     all_named ? fmt::format("all candidates are named and add up to {:.6g}, not 100", sum)
                               : fmt::format("{:.6g} % leave nothing for the candidates that are not named", sum),
                     "percentages; lower them, or name every candidate");
        return;
    }
    OwnPrior own;
    own.frame = frame_index;
    for (std::size_t i = 0; i < stated.size(); ++i) {
        const double share = stated[i] > 0 ? stated[i] / (all_named ? sum : kWhole)
                                           : (1 - sum / kWhole) * frame.candidates[i].prior / others;
        own.prior.push_back(share);
    }
    dossier.priors.push_back(std::move(own));
}

}  // namespace

void read_own_priors(const EntryReader& reader, Node node, const EvidenceData& data, DossierData& dossier) {
    if (!node.is_mapping()) {
        reader.error(node, "wrong-type", "`priors` is a mapping of frames to candidates");
        return;
    }
    for (Node one : node) {
        const auto frame = reader.choice_of_key(one, ids_of(data.frames), "frame");
        if (frame) read_frame_prior(reader, one, *frame, data.frames[*frame], dossier);
    }
}

void read_confirmed(const EntryReader& reader, Node node, const EvidenceData& data, DossierData& dossier) {
    if (!node.is_mapping()) {
        reader.error(node, "wrong-type", "`confirmed` is a mapping of parts to what was found");
        return;
    }
    for (Node of_part : node) {
        const auto part = reader.part(of_part, of_part.key());
        if (!of_part.is_mapping()) {
            reader.error(of_part, "wrong-type", "expected a mapping of frames to candidates");
            continue;
        }
        for (Node one : of_part) {
            const auto frame = reader.choice_of_key(one, ids_of(data.frames), "frame");
            if (!frame) continue;
            if (part && (data.frames[*frame].parts & part_bit(*part)) == 0) {
                reader.error_at_key(one, "wrong-part",
                                    fmt::format("frame '{}' does not ask of the part '{}'", one.key(), of_part.key()),
                                    "it asks of other parts; parts and frames stand in candidates.yaml");
            }
            const auto candidate = reader.choice(one, ids_of(data.frames[*frame].candidates), "candidate");
            if (part && candidate) dossier.confirmed.push_back({*part, *frame, *candidate});
        }
    }
}

}  // namespace grainside::evidence
