// The texts that the client has open, kept as it has them ('Text Document Synchronization').
#ifndef GRAINSIDE_TOOLS_EDIT_OPEN_DOCUMENTS_H
#define GRAINSIDE_TOOLS_EDIT_OPEN_DOCUMENTS_H

#include <cstddef>
#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "edit/json_values.h"
#include "edit/text_places.h"

namespace grainside::tools::edit {

// Of a longer document the text is kept and nothing is said.
inline constexpr std::size_t kMostDocumentBytes = std::size_t{16} << 20U;
inline constexpr std::size_t kMostOpenDocuments = 2000;

class OpenDocument {
public:
    OpenDocument(std::string uri, std::string language, std::int64_t version, std::string text,
                 PositionEncoding encoding);

    const std::string& uri() const noexcept { return uri_; }
    // 'languageId' in small letters.
    const std::string& language() const noexcept { return language_; }
    std::int64_t version() const noexcept { return version_; }
    const std::string& text() const noexcept { return text_; }
    // Made when it is first asked for after a change.
    const TextPlaces& places() const;

    // The changes of one notification, in their order; each with a range replaces what stands there after those before
    // it, one without replaces all. False where one is none; those before it hold.
    bool change(const simdjson::dom::array& changes, std::int64_t version);

private:
    std::string uri_;
    std::string language_;
    std::int64_t version_ = 0;
    std::string text_;
    PositionEncoding encoding_;
    mutable std::unique_ptr<TextPlaces> places_;
};

// By URI, in its order. Not thread-safe.
class OpenDocuments {
public:
    explicit OpenDocuments(PositionEncoding encoding) : encoding_(encoding) {}

    // Of a 'TextDocumentItem'; nullptr where it is none, or too many are open. One that is open already is replaced.
    OpenDocument* open(const std::optional<Json>& item);
    bool close(std::string_view uri);
    // nullptr: it is not open.
    OpenDocument* find(std::string_view uri);
    const std::map<std::string, OpenDocument, std::less<>>& all() const noexcept { return all_; }

private:
    PositionEncoding encoding_;
    std::map<std::string, OpenDocument, std::less<>> all_;
};

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_OPEN_DOCUMENTS_H
