#include "table_evidence.h"

namespace grainside::support {

evidence::EvidenceData frame_of(const std::vector<double>& priors) {
    evidence::EvidenceData data;
    evidence::Frame frame;
    frame.id = "frame";
    frame.parts = evidence::kAllParts;
    for (const double prior : priors) {
        evidence::Candidate candidate;
        candidate.id = "candidate-" + std::to_string(frame.candidates.size());
        candidate.prior = prior;
        frame.candidates.push_back(std::move(candidate));
    }
    data.frames.push_back(std::move(frame));
    data.judging.slip = {};
    return data;
}

std::size_t add_method(evidence::EvidenceData& data, const std::string& looks_at, const Rows& rows) {
    evidence::Method method;
    method.id = "method-" + std::to_string(data.methods.size());
    method.looks_at = looks_at;
    method.parts = evidence::kAllParts;
    for (std::size_t i = 0; i < rows.front().size(); ++i)
        method.outcomes.push_back({"o" + std::to_string(i), "", false});
    evidence::OutcomeTable table;
    for (const std::vector<double>& row : rows) table.chance.insert(table.chance.end(), row.begin(), row.end());
    method.tables.push_back(std::move(table));
    data.methods.push_back(std::move(method));
    return data.methods.size() - 1;
}

evidence::PartRecord body_with(const std::vector<std::pair<std::size_t, std::size_t>>& readings) {
    evidence::PartRecord record;
    for (const auto& [method, outcome] : readings) {
        evidence::Reading reading;
        reading.method = method;
        reading.outcome = outcome;
        record.readings.push_back(std::move(reading));
    }
    return record;
}

identify::Question about_the_first(const evidence::EvidenceData& data) {
    identify::Question question;
    question.says = 1;
    identify::FrameView view;
    view.bearings.assign(data.frames[0].candidates.size(), identify::Bearing::fails);
    view.bearings[0] = identify::Bearing::holds;
    question.views.push_back(std::move(view));
    return question;
}

}  // namespace grainside::support
