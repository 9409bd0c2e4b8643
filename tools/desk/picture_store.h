// Pictures of readings, beside the dossiers. Not thread-safe: one call at a time.
#ifndef GRAINSIDE_TOOLS_DESK_PICTURE_STORE_H
#define GRAINSIDE_TOOLS_DESK_PICTURE_STORE_H

#include <string>
#include <string_view>

#include "desk/desk_folder.h"
#include "desk/http_exchange.h"

namespace grainside::desk {

// Keeps a JPEG, PNG or WebP picture (by its first bytes) and gives the name of its file, which is ours:
// "tote-2026-11-26-1.jpg". Throws DeskError 404 where there is no such dossier, 415 "no-picture", 500 "not-saved".
std::string keep_picture(const DeskFolder& folder, std::string_view dossier, std::string_view bytes);

// A picture that the dossier names, from the folder or below. Throws DeskError 404 "no-such-picture", 415.
HttpAnswer picture_answer(const DeskFolder& folder, std::string_view dossier, std::string_view photo);

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_PICTURE_STORE_H
