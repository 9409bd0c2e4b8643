#include "evidence/listing_section.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <utility>

#include "document/sha256.h"
#include "evidence/beside_file.h"
#include "evidence/stated_digest.h"
#include "grainside/listing_reader.h"

namespace grainside::evidence {

using document::Node;

namespace {

constexpr std::string_view kTextKeys[] = {"name", "description", "material", "category"};

class ListingSection {
public:
    ListingSection(const EntryReader& reader, DossierData& dossier) : reader_(reader), dossier_(dossier) {}

    void read_inline(Node node) {
        for (Node child : node) {
            if (child.key() == "attributes") {
                read_attributes(child);
            } else if (std::find(std::begin(kTextKeys), std::end(kTextKeys), child.key()) != std::end(kTextKeys)) {
                add_field(std::string(child.key()), child);
            }
        }
        if (dossier_.listing.fields.empty()) {
            reader_.error(node, "missing-key", "this listing has no text",
                          "name a `file`, or write `name`, `description`, `material` or `attributes`");
        }
    }

    void read_file(Node node, Node digest) {
        const std::string_view name = node.text();
        const BesideFile file = find_beside(dossier_.folder, name, Where::beside, kMaxListingFileBytes);
        if (!file.found()) {
            reader_.error(node, file.code, file.message, file.hint);
            return;
        }
        dossier_.listing_file = name;
        check_digest(digest, document::sha256_of_file(file.path).value_or(std::string()));
        auto opened = ListingReader::open(file.path.string(), {});
        if (!opened) {
            reader_.error(node, "unreadable", fmt::format("the listing '{}' cannot be read", name));
            return;
        }
        ListingReader& listings = opened.value();
        std::vector<Issue> issues;
        Listing read;
        if (listings.next(read, issues)) {
            keep(read);
            if (listings.next(read, issues)) {
                reader_.error(node, "many-listings", fmt::format("'{}' holds more than one listing", name),
                              "a dossier is about one sample; cut its listing out");
            }
        } else {
            reader_.error(node, "no-listing", fmt::format("'{}' holds no listing", name));
        }
        for (Issue& issue : issues) {
            issue.file = name;  // where the reader was pointed to is the machine's business
            reader_.faults().add(std::move(issue));
        }
    }

    // What was written down when the listing was captured against what is here now.
    void check_digest(Node stated, std::string found) {
        dossier_.listing_sha256 = std::move(found);
        check_stated_digest(reader_, stated, dossier_.listing_sha256,
                            "the listing is not the one whose digest stands here: it has changed since",
                            "bring back the listing as captured");
    }

    std::string_view keep(std::string_view text) { return dossier_.texts.emplace_back(text); }

private:
    void read_attributes(Node node) {
        if (!node.is_mapping()) {
            reader_.error(node, "wrong-type", "`attributes` is a mapping of names to texts");
            return;
        }
        for (Node child : node) add_field(fmt::format("additionalProperty.{}", child.key()), child);
    }

    void add_field(const std::string& name, Node node) {
        if (!node.is_scalar()) {
            reader_.error(node, "wrong-type", "a field of a listing is a text");
            return;
        }
        if (node.text().empty()) return;
        const std::string_view kept_name = keep(name);
        dossier_.listing.fields.push_back({kept_name, keep(node.text())});
        dossier_.field_lines.push_back(node.line());
    }

    void keep(const Listing& read) {
        dossier_.listing = read;
        dossier_.listing.id = keep(read.id);
        dossier_.listing.language = keep(read.language);
        dossier_.listing.region = keep(read.region);
        for (Field& field : dossier_.listing.fields) {
            field.name = keep(field.name);
            field.text = keep(field.text);
        }
        dossier_.listing.source.bytes = keep(read.source.bytes);
    }

    const EntryReader& reader_;
    DossierData& dossier_;
};

// Names and texts with their lengths, so that no two lists of fields read alike.
std::string digest_of_fields(const Listing& listing) {
    std::string bytes;
    for (const Field& field : listing.fields) {
        for (const std::string_view text : {field.name, field.text}) bytes += fmt::format("{}:{}\n", text.size(), text);
    }
    return document::sha256_of(bytes);
}

}  // namespace

void read_listing(const EntryReader& reader, Node node, const DayCheck& days, DossierData& dossier) {
    if (!reader.check_keys(node, {"captured", "file", "digest", "name", "description", "material", "category",
                                  "attributes", "region", "language"})) {
        return;
    }
    dossier.has_listing = true;
    dossier.captured = days.read(node, "captured");
    ListingSection section(reader, dossier);
    const Node file = node.find("file");
    const Node digest = node.find("digest");
    if (!file.exists()) {
        section.read_inline(node);
        section.check_digest(digest, digest_of_fields(dossier.listing));
    } else {
        for (const std::string_view key : {"name", "description", "material", "category", "attributes"}) {
            const Node field = node.find(key);
            if (!field.exists()) continue;
            reader.error_at_key(field, "both-ways", fmt::format("`{}` cannot stand beside `file`", key),
                                "the listing is the file, or the fields here");
        }
        section.read_file(file, digest);
    }
    // What stands here is better known than what the file says.
    const std::string region = reader.text(node, "region");
    const std::string language = reader.text(node, "language");
    if (!region.empty()) dossier.listing.region = section.keep(region);
    if (!language.empty()) dossier.listing.language = section.keep(language);
    dossier.listing.id = dossier.id;
    // The kind of product decides what a claim without a part speaks of; the sample knows it where the listing is
    // silent.
    const bool told = std::any_of(dossier.listing.fields.begin(), dossier.listing.fields.end(),
                                  [](const Field& field) { return field.name == "category"; });
    if (!told && !dossier.category.empty()) {
        dossier.listing.fields.push_back({"category", section.keep(dossier.category)});
        dossier.lent_category = true;
    }
}

}  // namespace grainside::evidence
