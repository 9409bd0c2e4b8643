// Which request gets which answer. Thread-safe: judging and saving are done one at a time.
#ifndef GRAINSIDE_TOOLS_DESK_DESK_ROUTES_H
#define GRAINSIDE_TOOLS_DESK_DESK_ROUTES_H

#include <mutex>
#include <string>

#include "desk/desk_books.h"
#include "desk/desk_folder.h"
#include "desk/http_exchange.h"

namespace grainside::desk {

class DeskRoutes {
public:
    // All outlive the object.
    DeskRoutes(const DeskBooks& books, const DeskFolder& folder) : books_(books), folder_(folder) {}

    // The answer to a request that the guard let pass, whatever it holds; with the headers of every answer.
    HttpAnswer answer(const HttpRequest& request);

private:
    HttpAnswer route(const HttpRequest& request);
    std::string about() const;
    std::string dossiers();
    std::string dossier(const HttpRequest& request);

    const DeskBooks& books_;
    const DeskFolder& folder_;
    std::mutex judging_;  // what is typed is checked beside it, so that it never waits for a large dossier
};

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_DESK_ROUTES_H
