// A dossier's text and all that follows from it, as the page shows it. Thread-safe.
#ifndef GRAINSIDE_TOOLS_DESK_DOSSIER_STATE_H
#define GRAINSIDE_TOOLS_DESK_DOSSIER_STATE_H

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>

#include "desk/desk_books.h"
#include "grainside/dossier.h"

namespace grainside::desk {

struct DossierText {
    std::string name;
    std::string text;
    // What the file on disk has: the digest that a change has to name as `was`. Of `text` unless that is only tried.
    std::string digest;
    std::size_t undo = 0;  // how many steps back there are
    std::size_t redo = 0;
};

Result<Dossier> read_dossier_text(const DeskBooks& books, const DossierText& dossier,
                                  const std::filesystem::path& folder);

// The *state* of README.md, an object in JSON. `folder` is where a listing's file, pictures and documents lie.
std::string dossier_state(const DeskBooks& books, const DossierText& dossier, const std::filesystem::path& folder);

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_DOSSIER_STATE_H
