// Which request gets which answer. Thread-safe: judging and saving are done one at a time.
#ifndef GRAINSIDE_TOOLS_DESK_DESK_ROUTES_H
#define GRAINSIDE_TOOLS_DESK_DESK_ROUTES_H

#include <mutex>
#include <string>
#include <string_view>

#include "desk/desk_books.h"
#include "desk/desk_folder.h"
#include "desk/desk_store.h"
#include "desk/dossier_state.h"
#include "desk/http_exchange.h"
#include "desk/json_request.h"

namespace grainside::desk {

class DeskRoutes {
public:
    // All outlive the object.
    DeskRoutes(const DeskBooks& books, const DeskFolder& folder) : books_(books), folder_(folder), store_(folder) {}

    // The answer to a request that the guard let pass, whatever it holds; with the headers of every answer.
    HttpAnswer answer(const HttpRequest& request);

private:
    HttpAnswer route(const HttpRequest& request);
    std::string about() const;
    std::string dossiers();
    DossierText read(std::string_view name) const { return store_.read(name); }
    std::string state(const DossierText& dossier) const { return dossier_state(books_, dossier, folder_.path()); }
    std::string try_or_save(const JsonValue& request, bool save);
    std::string step(const JsonValue& request, bool back);
    std::string create(const JsonValue& request);

    const DeskBooks& books_;
    const DeskFolder& folder_;
    DeskStore store_;
    std::mutex judging_;  // what is typed is checked beside it, so that it never waits for a large dossier
};

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_DESK_ROUTES_H
