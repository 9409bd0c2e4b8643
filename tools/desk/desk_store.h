// Saving dossiers: whole or not at all, never over what somebody else wrote, and with the way back.
#ifndef GRAINSIDE_TOOLS_DESK_DESK_STORE_H
#define GRAINSIDE_TOOLS_DESK_DESK_STORE_H

#include <functional>
#include <string>
#include <string_view>

#include "desk/desk_folder.h"
#include "desk/dossier_state.h"

namespace grainside::desk {

// Every change names the digest of the text it was made for. The file is looked at under a lock that all desks of the
// folder share, and once more after it was exchanged for the new one, in one step (renameat2, RENAME_EXCHANGE): what an
// editor without locks wrote in between comes back. Throws DeskError: 409 "stale" where the file is another one by now,
// 409 "exists", 503 "busy" where another desk holds the folder, 500 "not-saved". Not thread-safe: one call at a time.
class DeskStore {
public:
    explicit DeskStore(const DeskFolder& folder) : folder_(folder) {}

    DossierText read(std::string_view name) const;
    void save(std::string_view name, std::string_view was, std::string_view text);
    // Throw also 400 "nothing-to-undo", "nothing-to-redo".
    void undo(std::string_view name, std::string_view was);
    void redo(std::string_view name, std::string_view was);
    void create(std::string_view name, std::string_view text);

private:
    void replace(const std::string& file, int history, std::string_view was, std::string_view text,
                 const std::function<void(std::string_view)>& keep);

    const DeskFolder& folder_;
};

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_DESK_STORE_H
