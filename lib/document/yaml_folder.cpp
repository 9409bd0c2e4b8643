// read_yaml_folder: the files of a rule folder, in an order that does not depend on the machine.
#include <algorithm>
#include <fstream>
#include <string>
#include <system_error>
#include <utility>

#include "document/yaml_document.h"

namespace grainside::document {
namespace {

namespace fs = std::filesystem;

struct Entry {
    std::string name;  // relative to the folder
    fs::path path;
};

void report(Faults& faults, std::string file, std::string_view code, std::string message, std::string hint = {}) {
    Issue issue;
    issue.code = code;
    issue.file = std::move(file);
    issue.message = std::move(message);
    issue.hint = std::move(hint);
    faults.add(std::move(issue));
}

std::vector<Entry> list_folder(const fs::path& folder, Faults& faults) {
    std::vector<Entry> entries;
    std::error_code error;
    fs::recursive_directory_iterator at(folder, error);
    for (; !error && at != fs::recursive_directory_iterator(); at.increment(error)) {
        std::error_code no_status;
        const fs::file_status status = at->symlink_status(no_status);
        if (no_status || status.type() != fs::file_type::regular || at->path().extension() != ".yaml") continue;
        entries.push_back({at->path().lexically_relative(folder).generic_string(), at->path()});
    }
    if (error) report(faults, folder.generic_string(), "unreadable", "the folder cannot be read: " + error.message());
    std::sort(entries.begin(), entries.end(), [](const Entry& a, const Entry& b) { return a.name < b.name; });
    return entries;
}

std::vector<Document> read_entries(const fs::path& folder, Faults& faults) {
    std::vector<Document> documents;
    std::size_t total = 0;
    for (const Entry& entry : list_folder(folder, faults)) {
        std::optional<std::string> text = read_yaml_file(entry.path);
        if (!text) {
            report(faults, entry.name, "unreadable", "the file cannot be read");
            continue;
        }
        total += text->size();
        if (total > kMaxYamlFolderBytes) {
            report(faults, entry.name, "too-large",
                   "with this file the folder holds more than " + std::to_string(kMaxYamlFolderBytes >> 20) + " MiB");
            break;
        }
        std::optional<Document> document = parse_yaml(entry.name, std::move(*text), faults);
        if (document) documents.push_back(std::move(*document));
    }
    return documents;
}

}  // namespace

std::optional<std::string> read_yaml_file(const fs::path& path) {
    std::ifstream stream(path, std::ios::binary);
    if (!stream) return std::nullopt;
    std::string text;
    std::string block(std::size_t{64} << 10, '\0');
    while (text.size() <= kMaxYamlBytes) {
        const std::size_t wanted = std::min(block.size(), kMaxYamlBytes + 1 - text.size());
        stream.read(block.data(), static_cast<std::streamsize>(wanted));
        text.append(block, 0, static_cast<std::size_t>(stream.gcount()));
        if (stream.bad()) return std::nullopt;
        if (stream.eof()) break;
    }
    return text;
}

std::vector<Document> read_yaml_folder(const fs::path& folder, Faults& faults) {
    try {
        return read_entries(folder, faults);
    } catch (const std::exception& error) {
        report(faults, folder.generic_string(), "unreadable",
               std::string("the folder cannot be read: ") + error.what());
        return {};
    }
}

}  // namespace grainside::document
