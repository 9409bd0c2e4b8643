#include "evidence/listing_section.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <system_error>

#include "grainside/listing_reader.h"

namespace grainside::evidence {

using document::Node;

namespace {

namespace fs = std::filesystem;

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

    void read_file(Node node, const fs::path& folder) {
        const std::string_view name = node.text();
        if (!is_plain_name(name)) {
            reader_.error(node, "outside-folder", fmt::format("'{}' is no plain file name", name),
                          "put the file beside the dossier and name it without folders");
            return;
        }
        const std::optional<fs::path> path = resolve(node, folder);
        if (!path) return;
        dossier_.listing_file = name;
        auto opened = ListingReader::open(path->string(), {});
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

    static bool is_plain_name(std::string_view name) {
        constexpr std::string_view kForbidden("/\\\0", 3);
        return !name.empty() && name != "." && name != ".." && name != "-" &&
               name.find_first_of(kForbidden) == std::string_view::npos;
    }

    // Where the file lies, links resolved.
    std::optional<fs::path> resolve(Node node, const fs::path& folder) {
        std::error_code failed;
        const fs::path home = fs::canonical(folder.empty() ? fs::path(".") : folder, failed);
        const fs::path path = failed ? fs::path() : fs::canonical(home / fs::path(std::string(node.text())), failed);
        if (failed) {
            reader_.error(node, "unreadable", fmt::format("there is no file '{}' beside the dossier", node.text()));
            return std::nullopt;
        }
        if (path.parent_path() != home) {
            reader_.error(node, "outside-folder", fmt::format("'{}' leads out of the dossier's folder", node.text()),
                          "put a copy beside the dossier");
            return std::nullopt;
        }
        // A pipe or a device might never end.
        const bool regular = fs::is_regular_file(path, failed);
        const std::uintmax_t size = failed || !regular ? 0 : fs::file_size(path, failed);
        if (failed || !regular) {
            reader_.error(node, "unreadable", fmt::format("'{}' is no readable file", node.text()));
            return std::nullopt;
        }
        if (size > kMaxListingFileBytes) {
            reader_.error(node, "too-large",
                          fmt::format("'{}' is larger than {} MiB", node.text(), kMaxListingFileBytes >> 20));
            return std::nullopt;
        }
        return path;
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

}  // namespace

void read_listing(const EntryReader& reader, Node node, const fs::path& folder, const DayCheck& days,
                  DossierData& dossier) {
    if (!reader.check_keys(node, {"captured", "file", "digest", "name", "description", "material", "category",
                                  "attributes", "region", "language"})) {
        return;
    }
    dossier.has_listing = true;
    dossier.captured = days.read(node, "captured");
    reader.text(node, "digest");
    ListingSection section(reader, dossier);
    const Node file = node.find("file");
    if (!file.exists()) {
        section.read_inline(node);
    } else {
        for (const std::string_view key : {"name", "description", "material", "category", "attributes"}) {
            const Node field = node.find(key);
            if (!field.exists()) continue;
            reader.error_at_key(field, "both-ways", fmt::format("`{}` cannot stand beside `file`", key),
                                "the listing is the file, or the fields here");
        }
        section.read_file(file, folder);
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
    }
}

}  // namespace grainside::evidence
