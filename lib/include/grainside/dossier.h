// A dossier: one sample's record, a YAML file (rules/EVIDENCE.md, section 6).
//
//     const std::string text =
//         "sample: {what: Tote, bought: 2026-10-12}\n"
//         "listing: {name: Full grain leather tote}\n"
//         "parts:\n"
//         "  body:\n"
//         "    readings:\n"
//         "      - {method: cut-edge, outcome: yarns-under-coat, date: 2026-10-01}\n";
//     const auto dossier = grainside::Dossier::parse("tote.yaml", text, ".", evidence, {.today = "2026-11-26"});
//     if (!dossier) return 2;
//     std::cout << dossier.value().id() << ": " << dossier.value().reading_count() << " reading, "
//               << dossier.value().listing()->fields.front().text << '\n';
//     // prints: tote: 1 reading, Full grain leather tote
//     for (const grainside::Issue& warning : dossier.value().warnings()) std::cout << warning.code << '\n';
//     // prints: before-purchase
//     const auto later = grainside::Dossier::parse("tote.yaml", text, ".", evidence, {.today = "2026-10-02"});
//     for (const grainside::Issue& issue : later.issues()) std::cout << issue.code << ", line " << issue.line << '\n';
//     // prints: future-date, line 1
//     // prints: before-purchase, line 6
//
// Reading reports every fault of the file at once, each with its place and what to do; a dossier with a fault is
// refused whole, so that a verdict never rests on half a record. Warnings do not refuse it.
//
// Limits: files of 4 MiB, 1000 readings, one listing of 16 MiB. A dossier names no file outside of its own folder.
// Immutable once read; safe to share between threads. The EvidenceBook must outlive it.
#ifndef GRAINSIDE_DOSSIER_H
#define GRAINSIDE_DOSSIER_H

#include <cstddef>
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/evidence_book.h"
#include "grainside/listing.h"
#include "grainside/result.h"

namespace grainside {

namespace evidence {
struct DossierData;
}

inline namespace v0 {

// Over all parts of a dossier.
inline constexpr std::size_t kMaxReadings = 1000;

struct DossierOptions {
    // YYYY-MM-DD; a date behind it is a fault. Empty: dates are not held against the calendar.
    std::string today;
};

class Dossier {
public:
    static Result<Dossier> read(const std::filesystem::path& file, const EvidenceBook& book,
                                const DossierOptions& options = {});
    // `file` names the text in faults; a listing named by `file:` is looked for in `folder`.
    static Result<Dossier> parse(std::string file, std::string text, const std::filesystem::path& folder,
                                 const EvidenceBook& book, const DossierOptions& options = {});

    Dossier(Dossier&&) noexcept;
    Dossier& operator=(Dossier&&) noexcept;
    ~Dossier();

    std::string_view id() const noexcept;    // the file's name without folder and extension
    std::string_view file() const noexcept;  // as the caller named it
    // nullptr where the dossier holds none. Lives as long as the dossier.
    const Listing* listing() const noexcept;
    std::size_t reading_count() const noexcept;
    // Remarks that do not refuse the dossier: a reading dated before the purchase, a part without a reading.
    const std::vector<Issue>& warnings() const noexcept { return warnings_; }

    const evidence::DossierData& data() const noexcept { return *data_; }  // for the library's own stages

private:
    Dossier(std::unique_ptr<evidence::DossierData> data, std::vector<Issue> warnings);
    std::unique_ptr<evidence::DossierData> data_;
    std::vector<Issue> warnings_;
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_DOSSIER_H
