#include "grainside/dossier.h"

#include <optional>
#include <system_error>
#include <utility>

#include "document/sha256.h"
#include "document/yaml_document.h"
#include "evidence/dossier_data.h"
#include "evidence/dossier_reader.h"
#include "evidence/evidence_data.h"
#include "rules/book_data.h"

namespace grainside {
inline namespace v0 {

namespace {

namespace fs = std::filesystem;

std::string id_of(std::string_view file) {
    const std::size_t slash = file.find_last_of('/');
    if (slash != std::string_view::npos) file.remove_prefix(slash + 1);
    const std::size_t point = file.find_last_of('.');
    return std::string(point == 0 ? file : file.substr(0, point));
}

// Nothing for what cannot be read, and for folders, pipes and devices.
std::optional<std::string> read_text(const fs::path& file) {
    std::error_code failed;
    return fs::is_regular_file(file, failed) ? document::read_yaml_file(file) : std::nullopt;
}

// What does not sort as days do would let every date pass.
bool is_day(const std::string& today, document::Faults& faults) {
    const auto parsed = document::parse_yaml("DossierOptions::today", today, faults);
    return parsed && read_date(*parsed, parsed->root(), faults);
}

}  // namespace

Dossier::Dossier(std::unique_ptr<evidence::DossierData> data, std::vector<Issue> warnings)
    : data_(std::move(data)), warnings_(std::move(warnings)) {}
Dossier::Dossier(Dossier&&) noexcept = default;
Dossier& Dossier::operator=(Dossier&&) noexcept = default;
Dossier::~Dossier() = default;

Result<Dossier> Dossier::read(const fs::path& file, const EvidenceBook& book, const DossierOptions& options) {
    std::optional<std::string> text = read_text(file);
    if (!text) {
        Issue issue;
        issue.code = "unreadable";
        issue.file = file.string();
        std::error_code unknown;
        const bool folder = std::filesystem::is_directory(file, unknown);
        issue.message = folder ? "this is a folder, not a dossier" : "the dossier cannot be read";
        issue.hint = folder ? "name the files, as in `" + file.generic_string() + "/*.yaml`" : "is the name right?";
        return issue;
    }
    return parse(file.generic_string(), std::move(*text), file.parent_path(), book, options);
}

Result<Dossier> Dossier::parse(std::string file, std::string text, const fs::path& folder, const EvidenceBook& book,
                               const DossierOptions& options) {
    document::Faults faults;
    if (!options.today.empty() && !is_day(options.today, faults)) return faults.take();
    auto data = std::make_unique<evidence::DossierData>();
    data->file = file;
    data->id = id_of(file);
    data->folder = folder.empty() ? fs::path(".") : folder;
    data->sha256 = document::sha256_of(text);
    const auto parsed = document::parse_yaml(std::move(file), std::move(text), faults);
    if (!parsed) return faults.take();
    evidence::read_dossier(*parsed, book.rule_book().data(), book.data(), options.today, *data, faults);
    if (faults.any_errors()) return faults.take();
    return Dossier(std::move(data), faults.take());
}

std::string_view Dossier::id() const noexcept {
    return data_->id;
}
std::string_view Dossier::file() const noexcept {
    return data_->file;
}
const Listing* Dossier::listing() const noexcept {
    return data_->has_listing ? &data_->listing : nullptr;
}
std::size_t Dossier::reading_count() const noexcept {
    std::size_t count = 0;
    for (const evidence::PartRecord& part : data_->parts) count += part.readings.size();
    return count;
}

}  // namespace v0
}  // namespace grainside
