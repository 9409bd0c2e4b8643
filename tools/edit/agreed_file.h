// The file of concessions: from the editor where it is open there, else from disk.
#ifndef GRAINSIDE_TOOLS_EDIT_AGREED_FILE_H
#define GRAINSIDE_TOOLS_EDIT_AGREED_FILE_H

#include <optional>
#include <string>
#include <string_view>

#include "edit/open_documents.h"
#include "edit/rule_books.h"
#include "grainside/concessions.h"

namespace grainside::tools::edit {

class AgreedFile {
public:
    // An empty path: there is none.
    explicit AgreedFile(std::string path);

    bool is_named() const noexcept { return !path_.empty(); }
    const std::string& uri() const noexcept { return uri_; }
    bool exists() const { return text_.has_value(); }
    // Empty where it does not exist.
    std::string_view text() const noexcept { return text_ ? std::string_view(*text_) : std::string_view(); }

    // Takes the text over; true where it is another one than before. `open` is nullptr where it is not open.
    bool refresh(const OpenDocument* open);
    // nullptr where there are none, or the file has a fault: then nothing is conceded.
    const Concessions* read(const LoadedBook& book);

private:
    std::string path_;
    std::string uri_;
    std::optional<std::string> text_;
    std::optional<Concessions> concessions_;
    const LoadedBook* read_by_ = nullptr;  // which book it was read by; nullptr: it is to be read
};

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_AGREED_FILE_H
