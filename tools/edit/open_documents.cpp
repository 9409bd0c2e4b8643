#include "edit/open_documents.h"

#include <algorithm>
#include <utility>

namespace grainside::tools::edit {

OpenDocument::OpenDocument(std::string uri, std::string language, std::int64_t version, std::string text,
                           PositionEncoding encoding)
    : uri_(std::move(uri)),
      language_(std::move(language)),
      version_(version),
      text_(std::move(text)),
      encoding_(encoding) {
    std::transform(language_.begin(), language_.end(), language_.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
}

const TextPlaces& OpenDocument::places() const {
    if (!places_) places_ = std::make_unique<TextPlaces>(text_, encoding_);
    return *places_;
}

bool OpenDocument::change(const simdjson::dom::array& changes, std::int64_t version) {
    version_ = version;
    for (const Json change : changes) {
        const auto text = text_of(member(change, "text"));
        if (!text) return false;
        if (!member(change, "range")) {
            text_ = *text;
        } else {
            const auto span = places().read_range(member(change, "range"));
            if (!span) return false;
            text_.replace(span->begin, span->end - span->begin, *text);
        }
        places_.reset();
    }
    return true;
}

OpenDocument* OpenDocuments::open(const std::optional<Json>& item) {
    const auto uri = text_of(member(item, "uri"));
    const auto text = text_of(member(item, "text"));
    if (!uri || !text) return nullptr;
    close(*uri);
    if (all_.size() >= kMostOpenDocuments) return nullptr;
    const auto place =
        all_.emplace(std::string(*uri),
                     OpenDocument(std::string(*uri), std::string(text_of(member(item, "languageId")).value_or("")),
                                  integer_of(member(item, "version")).value_or(0), std::string(*text), encoding_));
    return &place.first->second;
}

bool OpenDocuments::close(std::string_view uri) {
    const auto found = all_.find(uri);
    if (found == all_.end()) return false;
    all_.erase(found);
    return true;
}

OpenDocument* OpenDocuments::find(std::string_view uri) {
    const auto found = all_.find(uri);
    return found == all_.end() ? nullptr : &found->second;
}

}  // namespace grainside::tools::edit
