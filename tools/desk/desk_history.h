// What a dossier was before: the steps of undo and redo, as files in `.grainside-desk/NAME/` of its folder.
//
// `undo-N.yaml` holds a text that was replaced, the highest number last. `redo-N-DIGEST.yaml` one that undo replaced;
// it counts only while the dossier is the text of that SHA-256, so that nothing is redone over other work. At most
// kMostSteps and kMostStepBytes are kept; the oldest go. Where the program is killed half way, a step may be the text
// that the dossier has already: those are passed over.
#ifndef GRAINSIDE_TOOLS_DESK_DESK_HISTORY_H
#define GRAINSIDE_TOOLS_DESK_DESK_HISTORY_H

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "desk/desk_folder.h"
#include "desk/owned_descriptor.h"

namespace grainside::desk {

inline constexpr std::size_t kMostSteps = 200;
inline constexpr std::size_t kMostStepBytes = std::size_t{64} << 20;

struct HistoryStep {
    std::string file;
    std::string text;
};

// REQUIRES: the folder is locked while steps are added or dropped. Throws DeskError 500 "no-history" where the history
// cannot be written or is a link.
class DeskHistory {
public:
    // Looks only; the folders are made when a step is kept.
    DeskHistory(const DeskFolder& folder, std::string_view name);

    // How many steps there are for a dossier whose text has this digest.
    std::size_t undo_count(std::string_view digest) const;
    std::size_t redo_count(std::string_view digest) const;
    // The next one back, or forth.
    std::optional<HistoryStep> undo_step(std::string_view digest) const;
    std::optional<HistoryStep> redo_step(std::string_view digest) const;

    // Keeps the dossier's file as it is, as the newest step back: by a second name for it where the file system has
    // such, so that what a program without locks still writes into it is kept too. Gives the file.
    std::string keep_undo(const std::string& dossier_file, std::string_view text);
    // Keeps `text` as a step forth from the text with that digest.
    std::string keep_redo(std::string_view text, std::string_view digest);
    // Any text that must not be lost, as a step back.
    void keep_text(std::string_view text);
    void drop(const std::string& file);
    // That step back and those above it, which were passed over.
    void drop_undo_from(const std::string& file);
    // Steps forth that lead from another text, and steps beyond what is kept.
    void tidy(std::string_view digest);

    // The folder of the history, made where it is missing.
    int folder();

private:
    struct Entry {
        std::string file;
        std::uint64_t number = 0;
        std::string from;  // of redo: the digest that it counts for
        std::size_t size = 0;
    };
    std::vector<Entry> entries(std::string_view kind) const;  // by number
    std::optional<HistoryStep> read(const Entry& entry) const;
    std::string new_file(std::string_view kind, std::string_view from);
    void write(const std::string& file, std::string_view text);

    const DeskFolder& desk_;
    std::string name_;
    OwnedDescriptor folder_;
};

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_DESK_HISTORY_H
