// GET /report: the report of a dossier, as `grainside report` writes it. Thread-safe.
#ifndef GRAINSIDE_TOOLS_DESK_REPORT_ANSWER_H
#define GRAINSIDE_TOOLS_DESK_REPORT_ANSWER_H

#include <filesystem>
#include <string_view>

#include "desk/desk_books.h"
#include "desk/dossier_state.h"
#include "desk/http_exchange.h"

namespace grainside::desk {

// `form`: html, markdown, json or csv. Throws DeskError 400 "bad-request", "has-faults".
HttpAnswer report_answer(const DeskBooks& books, const DossierText& dossier, const std::filesystem::path& folder,
                         std::string_view form);

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_REPORT_ANSWER_H
