#include "report/sarif_result.h"

#include <fmt/format.h>

#include "document/digest.h"
#include "report/plain_lines.h"
#include "report/sarif_text.h"
#include "text/words_key.h"

namespace grainside::report {
namespace {

// Of words in a message so many cells, of a listing's id and a field's name fewer: programs that show logs cut them
// otherwise.
constexpr std::size_t kMostWordCells = 120;
constexpr std::size_t kMostNameCells = 80;

std::string shown(std::string_view text, std::size_t cells) {
    return sarif_message_text(one_line(text, cells));
}

// "'vegan leather' is misleading. Vegan, eco and match tell ... Say instead: 'imitation leather'."
std::string message_of(const SarifResult& result, std::string_view words) {
    std::string text =
        fmt::format("'{}' is {}. {}", shown(words, kMostWordCells), name_of(result.grade), result.because);
    if (!result.say_instead.empty()) {
        text += fmt::format(" Say instead: '{}'.", sarif_message_text(result.say_instead));
    }
    if (!result.demands.empty()) text += fmt::format(" What {}.", result.demands);
    if (!result.filed.empty()) text += fmt::format(" On file: {}.", sarif_message_text(result.filed));
    return text;
}

void append_message(std::string& out, std::string_view key, std::string_view text) {
    out += key;
    out += "{\"text\":";
    append_json_string(out, text);
    out += '}';
}

// {"physicalLocation"?,"logicalLocations"?
void append_place(std::string& out, std::string_view artifact, std::string_view region, std::string_view listing,
                  std::string_view field) {
    out += '{';
    if (!artifact.empty()) {
        out.append("\"physicalLocation\":{\"artifactLocation\":").append(artifact);
        if (!region.empty()) out.append(",\"region\":").append(region);
        out += '}';
    }
    if (field.empty()) return;
    if (!artifact.empty()) out += ',';
    out += "\"logicalLocations\":[{\"name\":";
    append_json_string(out, one_line(field, kMostNameCells));
    out += ",\"fullyQualifiedName\":";
    append_json_string(out, one_line(listing, kMostNameCells) + '/' + one_line(field, kMostNameCells));
    out += ",\"kind\":\"property\"}]";
}

void append_concession(std::string& out, const SarifResult& result) {
    const Concession& concession = *result.concession;
    out += R"(,"suppressions":[{"kind":"external","status":"accepted","justification":)";
    append_json_string(out, concession.reason);
    JsonWriter json(out);
    out += ",\"properties\":";
    json.begin_object();
    json.member("owner", std::string_view(concession.owner));
    json.member("until", std::string_view(concession.until));
    json.end_object();
    out += "}]";
}

void append_properties(std::string& out, const SarifResult& result, std::string_view words) {
    const Claim& claim = *result.claim;
    out += ",\"properties\":";
    JsonWriter json(out);
    json.begin_object();
    json.member("listing", result.listing->id);
    json.member("field", result.listing->fields[result.field].name);
    json.member("words", words);
    json.member("part", name_of(claim.part));
    json.member("kind", name_of(claim.kind));
    json.member("says", result.says);
    json.member("grade", name_of(result.grade));
    json.member("basis", name_of(result.basis));
    json.optional_member("say_instead", result.say_instead);
    if (result.concession != nullptr && !result.conceded) {
        json.key("expired_concession");
        json.begin_object();
        json.member("reason", std::string_view(result.concession->reason));
        json.member("owner", std::string_view(result.concession->owner));
        json.member("until", std::string_view(result.concession->until));
        json.end_object();
    }
    json.end_object();
}

}  // namespace

void SarifFingerprints::begin(std::string_view input, const Listing& listing) {
    seen_.clear();
    const std::string source(is_standard_input(input) ? "<stdin>" : input);
    identity_ = listing.id;
    // Such an id holds the record's number, and so would change where a record is added above.
    if (listing.record == 0 || listing.id != fmt::format("{}:{}", source, listing.record)) return;
    identity_ = sarif_uri(source);
    for (const Field& field : listing.fields) {
        if (field.name == "name") identity_.append(1, '\0').append(field.text);
    }
}

std::string SarifFingerprints::next(std::string_view rule, std::string_view field, std::string_view words) {
    text::make_words_key(words, tokens_, key_);
    const std::uint64_t digest = document::digest_of({rule, identity_, field, key_});
    return fmt::format("{:016x}:{}", digest, ++seen_[digest]);
}

void append_sarif_result(const SarifResult& result, SarifFingerprints& fingerprints, std::string& out) {
    const Field& field = result.listing->fields[result.field];
    const std::string_view words = field.text.substr(result.start, result.end - result.start);
    out += "{\"ruleId\":";
    append_json_string(out, result.rule);
    out += ",\"ruleIndex\":";
    append_json_number(out, std::uint64_t{result.rule_index});
    out.append(",\"level\":\"").append(sarif_level(result.grade)).append("\"");
    append_message(out, ",\"message\":", message_of(result, words));
    out += ",\"locations\":[";
    append_place(out, result.artifact, result.region, result.listing->id, field.name);
    out += "}]";
    if (!result.related.empty()) {
        out += ",\"relatedLocations\":[";
        for (std::size_t i = 0; i < result.related.size(); ++i) {
            const SarifRelated& related = result.related[i];
            if (i != 0) out += ',';
            append_place(out, related.artifact, related.region, result.listing->id, related.field);
            if (out.back() != '{') out += ',';
            // The number tells apart readings that say the same.
            out.append("\"id\":").append(std::to_string(i + 1));
            append_message(out, ",\"message\":", related.message);
            out += '}';
        }
        out += ']';
    }
    out.append(R"(,"partialFingerprints":{"grainside/v1":")")
        .append(fingerprints.next(result.rule, field.name, words))
        .append("\"}");
    if (result.conceded) append_concession(out, result);
    append_properties(out, result, words);
    out += '}';
}

}  // namespace grainside::report
