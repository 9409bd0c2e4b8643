#include "evidence/load_candidates.h"

#include <fmt/format.h>

#include <algorithm>

#include "evidence/entry_reader.h"

namespace grainside::evidence {

using document::Document;
using document::Faults;
using document::Node;

namespace {

class CandidateLoader {
public:
    CandidateLoader(const rules::BookData& book, EvidenceData& data, Faults& faults)
        : book_(book), data_(data), faults_(faults) {}

    void load() {
        const bool any = each_entry(book_, "candidates.yaml", faults_,
                                    [&](const EntryReader& reader, Node node) { load_frame(reader, node); });
        if (!any) {
            Issue issue;
            issue.code = "missing-file";
            issue.file = "candidates.yaml";
            issue.message = "the rule folder has no candidates.yaml";
            issue.hint = "rules/EVIDENCE.md, section 1, describes it";
            faults_.add(std::move(issue));
        }
        for (std::size_t frame = 0; frame < data_.frames.size(); ++frame) resolve_of(frame);
        for (std::size_t frame = 0; frame < data_.frames.size(); ++frame) check_within(frame);
    }

private:
    // Where a frame stands, for what can be checked only once all are known.
    struct Written {
        const Document* document;
        Node node;
    };

    void load_frame(const EntryReader& reader, Node node) {
        if (!reader.check_keys(node, {"frame", "title", "parts", "claims", "within", "of", "kin", "candidates"}))
            return;
        Frame frame;
        frame.id = reader.required_id(node, "frame");
        frame.title = reader.required_text(node, "title");
        if (!frame.id.empty() && index_of(data_.frames, frame.id) != kNone) {
            reader.error(node.find("frame"), "duplicate-frame", fmt::format("frame '{}' is defined twice", frame.id));
        }
        if (const Node parts = required(reader, node, "parts"); parts.exists()) frame.parts = reader.parts(parts);
        if (const Node claims = required(reader, node, "claims"); claims.exists()) {
            frame.claims = reader.concepts(claims);
        }
        const Node within = node.find("within");
        if (within.exists()) frame.within = reader.require_concept(within);
        if (within.exists() != node.find("of").exists()) {
            reader.error(node, "missing-key", "`within` and `of` stand together",
                         "`of` names the frame that tells whether the part is `within`");
        }
        if (const Node kin = node.find("kin"); kin.exists()) {
            constexpr std::string_view kWays[] = {"open", "apart"};
            frame.kin_apart = reader.choice(kin, kWays, "kin").value_or(0) == 1;
        }
        const Node candidates = required(reader, node, "candidates");
        for (Node one : candidates) load_candidate(reader, one, frame);
        if (candidates.exists()) check_priors(reader, candidates, frame);
        data_.frames.push_back(std::move(frame));
        written_.push_back({&reader.document(), node});
    }

    static Node required(const EntryReader& reader, Node node, std::string_view key) {
        const Node found = node.find(key);
        if (!found.exists()) reader.error(node, "missing-key", fmt::format("`{}` must stand here", key));
        return found;
    }

    void load_candidate(const EntryReader& reader, Node node, Frame& frame) {
        if (!reader.check_keys(
                node, {"candidate", "name", "prior", "bears_out", "rules_out", "leaves_open", "alloy", "unlisted"})) {
            return;
        }
        Candidate candidate;
        candidate.id = reader.required_id(node, "candidate");
        if (!candidate.id.empty() && is_known(candidate.id, frame)) {
            reader.error(node.find("candidate"), "duplicate-candidate",
                         fmt::format("candidate '{}' is there twice", candidate.id), "it is unique in the whole book");
        }
        candidate.is = candidate.id.empty() ? ConceptId{0} : book_.vocabulary.concepts.find(candidate.id);
        candidate.name = reader.text(node, "name");
        if (candidate.name.empty()) {
            if (candidate.is != 0) {
                candidate.name = book_.vocabulary.concepts[candidate.is].wording;
            } else {
                reader.error(node, "missing-key", "a candidate that is no concept needs `name`");
            }
        }
        if (const Node prior = required(reader, node, "prior"); prior.exists()) {
            candidate.prior = read_number(reader.document(), prior, faults_).value_or(1);
            if (candidate.prior <= 0) {
                reader.error(prior, "bad-prior", "a prior is above 0",
                             "what is impossible from the start no reading can show; leave the candidate out");
            }
        }
        read_concepts(reader, node, candidate);
        if (const Node alloy = node.find("alloy"); alloy.exists()) {
            candidate.alloy = reader.choice(alloy, ids_of(data_.alloys), "alloy").value_or(kNone);
        }
        if (const Node unlisted = node.find("unlisted"); unlisted.exists()) {
            candidate.unlisted = read_yes_no(reader.document(), unlisted, faults_).value_or(false);
            if (candidate.unlisted && (candidate.is != 0 || candidate.alloy != kNone)) {
                reader.error(unlisted, "both-ways", "an unlisted candidate is no concept and has no alloy",
                             "it stands for what the frame does not list");
            }
        }
        frame.candidates.push_back(std::move(candidate));
    }

    bool is_known(std::string_view id, const Frame& frame) const {
        return index_of(frame.candidates, id) != kNone ||
               std::any_of(data_.frames.begin(), data_.frames.end(),
                           [&](const Frame& other) { return index_of(other.candidates, id) != kNone; });
    }

    void read_concepts(const EntryReader& reader, Node node, Candidate& candidate) {
        const auto read = [&](std::string_view key) {
            const Node list = node.find(key);
            return list.exists() ? reader.concepts(list) : std::vector<ConceptId>{};
        };
        candidate.bears_out = read("bears_out");
        candidate.rules_out = read("rules_out");
        candidate.leaves_open = read("leaves_open");
        const auto check = [&](const std::vector<ConceptId>& first, const std::vector<ConceptId>& second,
                               std::string_view key) {
            for (const ConceptId id : first) {
                if (std::find(second.begin(), second.end(), id) == second.end()) continue;
                reader.error(node.find(key), "both-ways",
                             fmt::format("'{}' stands in another list of this candidate too",
                                         book_.vocabulary.concepts[id].name));
            }
        };
        check(candidate.bears_out, candidate.rules_out, "rules_out");
        check(candidate.bears_out, candidate.leaves_open, "leaves_open");
        check(candidate.rules_out, candidate.leaves_open, "leaves_open");
        // The first rule of comparison would make the entry void: what it is, it bears out.
        for (const std::string_view key : {"rules_out", "leaves_open"}) {
            const std::vector<ConceptId>& list = key == "rules_out" ? candidate.rules_out : candidate.leaves_open;
            for (const ConceptId id : list) {
                if (candidate.is == 0 || id != candidate.is) continue;
                reader.error(node.find(key), "both-ways",
                             fmt::format("the candidate is '{}' itself", book_.vocabulary.concepts[id].name));
            }
        }
    }

    void check_priors(const EntryReader& reader, Node candidates, Frame& frame) {
        constexpr std::size_t kFewest = 2;
        if (!candidates.is_sequence() || frame.candidates.size() < kFewest) {
            reader.error(candidates, "too-few-candidates",
                         fmt::format("frame '{}' has {} candidates; a question has at least {} answers", frame.id,
                                     frame.candidates.size(), kFewest));
            return;
        }
        double sum = 0;
        for (const Candidate& candidate : frame.candidates) sum += candidate.prior;
        if (sum <= 0) return;  // told already, candidate by candidate
        for (Candidate& candidate : frame.candidates) candidate.prior /= sum;
    }

    void resolve_of(std::size_t index) {
        Frame& frame = data_.frames[index];
        const Node of = written_[index].node.find("of");
        if (!of.exists()) return;
        const EntryReader reader(book_, *written_[index].document, faults_);
        frame.of = reader.choice(of, ids_of(data_.frames), "frame").value_or(kNone);
    }

    void check_within(std::size_t index) {
        const Frame& frame = data_.frames[index];
        if (frame.of == kNone) return;
        const EntryReader reader(book_, *written_[index].document, faults_);
        const Node of = written_[index].node.find("of");
        std::size_t at = frame.of;
        for (std::size_t step = 0; at != kNone && step <= data_.frames.size(); ++step) {
            if (at == index) {
                reader.error(of, "cycle", fmt::format("frame '{}' hangs on itself", frame.id));
                return;
            }
            at = data_.frames[at].of;
        }
        const auto& concepts = book_.vocabulary.concepts;
        const auto is_within = [&](const Candidate& candidate) {
            return (candidate.is != 0 && concepts.is_a(candidate.is, frame.within)) ||
                   std::any_of(candidate.bears_out.begin(), candidate.bears_out.end(),
                               [&](ConceptId id) { return concepts.is_a(id, frame.within); });
        };
        const std::vector<Candidate>& answers = data_.frames[frame.of].candidates;
        if (frame.within != 0 && std::none_of(answers.begin(), answers.end(), is_within)) {
            reader.error(of, "never-within",
                         fmt::format("no candidate of frame '{}' is '{}'", data_.frames[frame.of].id,
                                     concepts[frame.within].name));
        }
        if ((frame.parts & data_.frames[frame.of].parts) != frame.parts) {
            reader.error(of, "unknown-part",
                         fmt::format("frame '{}' does not ask of every part that '{}' asks of",
                                     data_.frames[frame.of].id, frame.id));
        }
    }

    const rules::BookData& book_;
    EvidenceData& data_;
    Faults& faults_;
    std::vector<Written> written_;  // at the index of the frame
};

}  // namespace

void load_candidates(const rules::BookData& book, EvidenceData& data, Faults& faults) {
    CandidateLoader(book, data, faults).load();
}

}  // namespace grainside::evidence
