#include "labelled_file.h"

#include <fmt/format.h>
#include <simdjson.h>

#include <algorithm>
#include <fstream>
#include <iterator>

#include "grainside/listing_reader.h"

namespace grainside::scoring {

namespace {

namespace dom = simdjson::dom;

// One record's labels, with everything that is wrong with them.
class RecordReader {
public:
    RecordReader(const std::string& file, std::uint64_t line, std::vector<Issue>& issues)
        : file_(file), line_(line), issues_(issues) {}

    void read(std::string_view text, LabelledListing& listing) {
        const simdjson::padded_string padded(text);
        dom::parser parser;
        dom::element root;
        if (const auto error = parser.parse(padded).get(root); error != simdjson::SUCCESS) {
            return fault("json-syntax", simdjson::error_message(error));
        }
        dom::object record;
        if (root.get(record) != simdjson::SUCCESS) return fault("json-syntax", "a record is an object");
        listing.line = line_;
        listing.id = string_of(record, "id");
        if (listing.id.empty()) listing.id = fmt::format("line {}", line_);
        bool honest = false;
        if (record["honest"].get(honest) == simdjson::SUCCESS) listing.honest = honest;
        if (!read_listing(padded, listing)) return;

        listing.claims = read_list<LabelledClaim>(record, "claims", listing);
        listing.findings = read_list<LabelledFinding>(record, "findings", listing);
        listing.traps = read_list<LabelledTrap>(record, "traps", listing);
    }

private:
    void fault(const char* code, std::string message) {
        Issue issue;
        issue.code = code;
        issue.file = file_;
        issue.line = static_cast<std::uint32_t>(line_);
        issue.message = std::move(message);
        issues_.push_back(std::move(issue));
    }

    static std::string string_of(const dom::object& object, std::string_view member) {
        std::string_view value;
        return object[member].get(value) == simdjson::SUCCESS ? std::string(value) : std::string();
    }

    // The member goes to the library's own reader byte by byte, so that a number is read as it is written.
    bool read_listing(const simdjson::padded_string& padded, LabelledListing& listing) {
        simdjson::ondemand::parser parser;
        simdjson::ondemand::document document;
        simdjson::ondemand::object object;
        std::string_view bytes;
        if (parser.iterate(padded).get(document) != simdjson::SUCCESS ||
            document["listing"].get_object().get(object) != simdjson::SUCCESS ||
            object.raw_json().get(bytes) != simdjson::SUCCESS) {
            fault("label", "the record has no object 'listing'");
            return false;
        }
        ListingReader reader = ListingReader::from_memory(file_, bytes, {.format = InputFormat::json});
        Listing read;
        std::vector<Issue> reading;
        if (!reader.next(read, reading)) {
            fault("label",
                  fmt::format("the listing cannot be read: {}", reading.empty() ? "empty" : reading.front().message));
            return false;
        }
        listing.language = read.language;
        listing.region = read.region;
        for (const Field& field : read.fields)
            listing.fields.push_back({std::string(field.name), std::string(field.text)});
        return true;
    }

    template <typename Label>
    std::optional<std::vector<Label>> read_list(const dom::object& record, const char* member,
                                                const LabelledListing& listing) {
        dom::element value;
        if (record[member].get(value) != simdjson::SUCCESS) return std::nullopt;
        std::vector<Label> labels;
        dom::array array;
        if (value.get(array) != simdjson::SUCCESS) {
            fault("label", fmt::format("'{}' is not a list", member));
            return labels;
        }
        for (const dom::element element : array) {
            dom::object object;
            if (element.get(object) != simdjson::SUCCESS) {
                fault("label", fmt::format("'{}' holds something that is no object", member));
                continue;
            }
            Label label;
            if (locate(object, listing, label.span) && fill(object, label)) labels.push_back(std::move(label));
        }
        return labels;
    }

    bool locate(const dom::object& object, const LabelledListing& listing, Span& span) {
        const std::string field = string_of(object, "field");
        const std::string words = string_of(object, "words");
        if (words.empty()) {
            fault("label", fmt::format("{}: a label has no words", listing.id));
            return false;
        }
        std::int64_t nth = 1;
        const auto error = object["nth"].get(nth);
        if ((error != simdjson::SUCCESS && error != simdjson::NO_SUCH_FIELD) || nth < 1) {
            fault("label", fmt::format("{}: 'nth' of \"{}\" is no number from 1", listing.id, words));
            return false;
        }
        // An attribute may stand twice; its occurrences are counted through.
        std::int64_t seen = 0;
        bool known = false;
        for (std::size_t i = 0; i < listing.fields.size(); ++i) {
            if (listing.fields[i].name != field) continue;
            known = true;
            const std::string& text = listing.fields[i].text;
            for (std::size_t at = text.find(words); at != std::string::npos; at = text.find(words, at + 1)) {
                if (++seen < nth) continue;
                span = {static_cast<std::uint32_t>(i), static_cast<std::uint32_t>(at),
                        static_cast<std::uint32_t>(at + words.size())};
                return true;
            }
        }
        fault("label", known ? fmt::format("{}: \"{}\" (occurrence {}) does not stand in {}, which holds {}",
                                           listing.id, words, nth, field, seen)
                             : fmt::format("{}: the listing has no field '{}' for \"{}\"", listing.id, field, words));
        return false;
    }

    template <typename Value>
    bool named(const dom::object& object, const char* member, std::optional<Value> (*find)(std::string_view),
               Value& value) {
        const std::string name = string_of(object, member);
        const std::optional<Value> found = find(name);
        if (!found) {
            fault("label", fmt::format("\"{}\": '{}' is no {}", string_of(object, "words"), name, member));
            return false;
        }
        value = *found;
        return true;
    }

    bool fill(const dom::object& object, LabelledClaim& claim) {
        claim.says = string_of(object, "says");
        bool negated = false;
        if (object["negated"].get(negated) == simdjson::SUCCESS) claim.negated = negated;
        const bool part = named<Part>(
            object, "part", [](std::string_view name) { return part_named(name); }, claim.part);
        const bool kind = named<Kind>(
            object, "kind", [](std::string_view name) { return kind_named(name); }, claim.kind);
        return part && kind;
    }

    bool fill(const dom::object& object, LabelledFinding& finding) {
        dom::array markets;
        if (object["markets"].get(markets) == simdjson::SUCCESS) {
            for (const dom::element market : markets) {
                std::string_view name;
                if (market.get(name) == simdjson::SUCCESS) finding.markets.emplace_back(name);
            }
        }
        return named<Grade>(
            object, "grade", [](std::string_view name) { return grade_named(name); }, finding.grade);
    }

    static bool fill(const dom::object& object, LabelledTrap& trap) {
        trap.because = string_of(object, "because");
        return true;
    }

    const std::string& file_;
    std::uint64_t line_;
    std::vector<Issue>& issues_;
};

}  // namespace

Listing LabelledListing::listing() const {
    Listing views;
    views.id = id;
    views.language = language;
    views.region = region;
    views.line = line;
    for (const OwnedField& field : fields) views.fields.push_back({field.name, field.text});
    return views;
}

std::string_view LabelledListing::words(const Span& span) const {
    return std::string_view(fields[span.field].text).substr(span.start, span.end - span.start);
}

Result<std::vector<LabelledListing>> read_labelled_bytes(const std::string& name, std::string_view bytes) {
    std::vector<LabelledListing> listings;
    std::vector<Issue> issues;
    std::uint64_t line = 0;
    while (!bytes.empty()) {
        ++line;
        const std::size_t end = std::min(bytes.find('\n'), bytes.size());
        const std::string_view text = bytes.substr(0, end);
        bytes.remove_prefix(std::min(end + 1, bytes.size()));
        if (text.find_first_not_of(" \t\r") == std::string_view::npos) continue;
        RecordReader(name, line, issues).read(text, listings.emplace_back());
    }
    if (!issues.empty()) return issues;
    return listings;
}

Result<std::vector<LabelledListing>> read_labelled_file(const std::string& path) {
    std::ifstream stream(path, std::ios::binary);
    std::string bytes;
    if (stream) bytes.assign(std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>());
    if (!stream || stream.bad()) {
        Issue issue;
        issue.code = "cannot-open";
        issue.file = path;
        issue.message = "the file cannot be read";
        return issue;
    }
    return read_labelled_bytes(path, bytes);
}

}  // namespace grainside::scoring
