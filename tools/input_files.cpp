#include "input_files.h"

#include <glob.h>
#include <sys/stat.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <map>
#include <optional>
#include <set>
#include <string_view>
#include <system_error>
#include <utility>

#include "whole_source.h"

namespace grainside::tools {
namespace {

namespace files = std::filesystem;

constexpr std::array<std::string_view, 11> kListingEndings = {
    ".jsonl", ".ndjson", ".json", ".csv", ".tsv", ".html", ".htm", ".xhtml", ".md", ".markdown", ".txt"};
constexpr std::string_view kAnyFolders = "**/";
constexpr std::size_t kMostEndingsTold = 5;

bool holds_listings(std::string name) {
    std::transform(name.begin(), name.end(), name.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    for (const std::string_view packed : {std::string_view(".gz"), std::string_view(".zst")}) {
        if (name.ends_with(packed)) {
            name.resize(name.size() - packed.size());
            break;
        }
    }
    return std::any_of(kListingEndings.begin(), kListingEndings.end(),
                       [&](std::string_view ending) { return name.ends_with(ending); });
}

bool is_pattern(std::string_view name) {
    return name.find_first_of("*?[") != std::string_view::npos;
}

// A path of which no character is a pattern's.
std::string literal(std::string_view path) {
    std::string out;
    for (const char c : path) {
        if (c == '*' || c == '?' || c == '[' || c == '\\') out += '\\';
        out += c;
    }
    return out;
}

std::string below(const std::string& folder, const std::string& name) {
    return folder.ends_with('/') ? folder + name : folder + '/' + name;
}

class InputExpansion {
public:
    explicit InputExpansion(Diagnostics& diagnostics) : diagnostics_(diagnostics) {}

    void add(const std::string& input) {
        struct stat status {};
        if (input != "-" && ::stat(input.c_str(), &status) != 0 && is_pattern(input)) {
            std::vector<std::string> found;
            match(input, found);
            std::sort(found.begin(), found.end());
            found.erase(std::unique(found.begin(), found.end()), found.end());
            if (found.empty()) {
                diagnostics_.error("nothing matches '" + input + "'",
                                   "check the pattern; ** stands for any folders between two slashes");
            }
            for (const std::string& one : found) add_path(one);
            return;
        }
        add_path(input);
    }

    std::vector<std::string> take() { return std::move(paths_); }

private:
    void add_path(const std::string& path) {
        struct stat status {};
        const bool is_here = path != "-" && ::stat(path.c_str(), &status) == 0;
        if (is_here && S_ISDIR(status.st_mode)) {
            std::vector<std::string> found;
            std::map<std::string, std::size_t> left_out;
            walk(path, [&](const std::string& file) {
                if (holds_listings(file)) {
                    found.push_back(file);
                } else {
                    ++left_out[files::path(file).extension().string()];
                }
            });
            std::sort(found.begin(), found.end());
            if (found.empty()) {
                diagnostics_.error("the folder '" + path + "' has no file whose ending says that it holds listings",
                                   "name the files, or call them .csv, .jsonl, .txt and so on");
            } else if (!left_out.empty()) {
                tell_left_out(path, left_out);
            }
            for (const std::string& file : found) add_path(file);
            return;
        }
        if (is_here && S_ISREG(status.st_mode) && !seen_.insert({status.st_dev, status.st_ino}).second) return;
        paths_.push_back(path);
    }

    // By their endings, the commonest first.
    void tell_left_out(const std::string& folder, const std::map<std::string, std::size_t>& left_out) {
        std::vector<std::pair<std::size_t, std::string>> kinds;
        std::size_t count = 0;
        for (const auto& [ending, number] : left_out) {
            kinds.emplace_back(number, ending.empty() ? "without an ending" : ending);
            count += number;
        }
        std::stable_sort(kinds.begin(), kinds.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
        std::string list;
        for (std::size_t at = 0; at < std::min(kinds.size(), kMostEndingsTold); ++at) {
            list += (list.empty() ? "" : ", ") + std::to_string(kinds[at].first) + ' ' + kinds[at].second;
        }
        if (kinds.size() > kMostEndingsTold) list += ", and others";
        Issue note;
        note.severity = Issue::Severity::note;
        note.file = folder;
        note.message = std::to_string(count) + (count == 1 ? " file" : " files") +
                       " of this folder left out, whose endings do not say that they hold listings: " + list;
        note.hint = "name a file to have it read all the same";
        diagnostics_.report(note);
    }

    // Calls `use_file` with every regular file below `folder`, and `use_folder` with every folder.
    template <typename UseFile, typename UseFolder>
    void walk(const std::string& folder, const UseFile& use_file, const UseFolder& use_folder) {
        std::vector<std::string> left{folder};
        while (!left.empty()) {
            const std::string here = std::move(left.back());
            left.pop_back();
            std::error_code error;
            files::directory_iterator entry(here, error);
            for (; !error && entry != files::directory_iterator(); entry.increment(error)) {
                const std::string name = entry->path().filename().string();
                if (name.starts_with('.')) continue;
                const std::string path = below(here, name);
                std::error_code unknown;
                if (entry->is_directory(unknown)) {
                    if (entry->is_symlink(unknown)) continue;
                    use_folder(path);
                    left.push_back(path);
                } else if (entry->is_regular_file(unknown)) {
                    use_file(path);
                }
            }
            if (error) diagnostics_.error("the folder '" + here + "' cannot be read: " + error.message());
        }
    }
    template <typename UseFile>
    void walk(const std::string& folder, const UseFile& use_file) {
        walk(folder, use_file, [](const std::string&) {});
    }

    void match(const std::string& pattern, std::vector<std::string>& found) {
        const std::size_t any = any_folders_in(pattern);
        if (any == std::string::npos) {
            match_names(pattern, found);
            return;
        }
        std::vector<std::string> bases;
        if (any == 0) {
            bases.emplace_back();
        } else {
            match_names(pattern.substr(0, any), bases);
        }
        const std::string rest = pattern.substr(any + kAnyFolders.size());
        for (const std::string& base : bases) {
            std::error_code error;
            if (!base.empty() && !files::is_directory(base, error)) continue;
            std::vector<std::string> folders{base};
            walk(
                base.empty() ? "." : base, [](const std::string&) {},
                [&](const std::string& path) { folders.push_back(base.empty() ? path.substr(2) : path); });
            for (const std::string& folder : folders) {
                match(folder.empty() ? rest : below(literal(folder), rest), found);
            }
        }
    }

    // Where `**` stands between slashes or at the beginning.
    static std::size_t any_folders_in(const std::string& pattern) {
        for (std::size_t at = pattern.find(kAnyFolders); at != std::string::npos;
             at = pattern.find(kAnyFolders, at + 1)) {
            if (at == 0 || pattern[at - 1] == '/') return at;
        }
        return std::string::npos;
    }

    static void match_names(const std::string& pattern, std::vector<std::string>& found) {
        glob_t matches{};
        if (::glob(pattern.c_str(), GLOB_NOSORT, nullptr, &matches) == 0) {
            for (std::size_t i = 0; i < matches.gl_pathc; ++i) found.emplace_back(matches.gl_pathv[i]);
        }
        ::globfree(&matches);
    }

    Diagnostics& diagnostics_;
    std::vector<std::string> paths_;
    std::set<std::pair<dev_t, ino_t>> seen_;
};

}  // namespace

std::vector<std::string> expand_inputs(const std::vector<std::string>& inputs, Diagnostics& diagnostics) {
    InputExpansion expansion(diagnostics);
    for (const std::string& input : inputs) expansion.add(input);
    return expansion.take();
}

std::vector<std::string> read_input_list(const std::string& list, Diagnostics& diagnostics) {
    std::vector<std::string> inputs;
    const std::optional<std::string> text = whole_source(list, diagnostics);
    if (!text) return inputs;
    for (std::string_view rest = *text; !rest.empty();) {
        const std::size_t end = std::min(rest.find('\n'), rest.size());
        std::string_view line = rest.substr(0, end);
        if (line.ends_with('\r')) line.remove_suffix(1);
        if (!line.empty()) inputs.emplace_back(line);
        rest.remove_prefix(std::min(end + 1, rest.size()));
    }
    if (inputs.empty()) diagnostics.error("'" + list + "' names no file", "write one path a line");
    return inputs;
}

}  // namespace grainside::tools
