#include "report/proof_record.h"

#include "report/json_writer.h"
#include "verdict/filed_role.h"

namespace grainside::report {

using verdict::FiledRole;
using verdict::FiledTold;

void append_proof_member(std::string& out, std::string_view key, const FiledProof& proof, std::string_view why) {
    out.append(",\"").append(key).append("\":");
    JsonWriter json(out);
    json.begin_object();
    json.member("document", std::string_view(proof.document));
    json.member("laboratory", std::string_view(proof.laboratory));
    json.member("date", std::string_view(proof.date));
    json.optional_member("expires", proof.expires);
    json.optional_member("standard", proof.standard);
    json.optional_member("result", proof.result);
    json.optional_member("file", proof.copy);
    json.optional_member("sha256", proof.sha256);
    json.optional_member("why", why);
    json.end_object();
}

void append_filed_member(std::string& out, const RuleBook& book, const CheckResult& check, std::uint32_t claim,
                         Grade grade) {
    const FiledTold told = verdict::filed_on(check, claim, grade);
    switch (told.role) {
        case FiledRole::none:
            break;
        case FiledRole::supports:
            append_proof_member(out, "on_file", *told.proof);
            break;
        case FiledRole::overruled:
            append_proof_member(out, "on_file_overruled", *told.proof);
            break;
        case FiledRole::not_enough:
            append_proof_member(out, "not_lifted", *told.proof,
                                why_not_lifted(book, *told.proof, told.outcome, check.mentions[claim].says));
            break;
    }
}

std::string filed_line(const RuleBook& book, const CheckResult& check, std::uint32_t claim, Grade grade) {
    const FiledTold told = verdict::filed_on(check, claim, grade);
    switch (told.role) {
        case FiledRole::none:
            break;
        case FiledRole::supports:
            return proof_text(*told.proof);
        case FiledRole::overruled:
            return proof_text(*told.proof) + "; the readings decide against it";
        case FiledRole::not_enough:
            return why_not_lifted(book, *told.proof, told.outcome, check.mentions[claim].says);
    }
    return {};
}

}  // namespace grainside::report
