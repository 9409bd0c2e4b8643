#include "edit/agreed_file.h"

#include <filesystem>
#include <system_error>
#include <utility>

#include "document/yaml_document.h"
#include "edit/file_uri.h"

namespace grainside::tools::edit {

AgreedFile::AgreedFile(std::string path) : path_(std::move(path)) {
    if (!path_.empty()) uri_ = uri_of_path(path_);
    refresh(nullptr);
}

bool AgreedFile::refresh(const OpenDocument* open) {
    std::optional<std::string> text;
    if (open != nullptr) {
        text = open->text();
    } else if (!path_.empty()) {
        std::error_code error;
        if (std::filesystem::is_regular_file(path_, error)) text = document::read_yaml_file(path_);
    }
    if (text == text_) return false;
    text_ = std::move(text);
    read_by_ = nullptr;
    return true;
}

const Concessions* AgreedFile::read(const LoadedBook& book) {
    if (!text_ || !book.evidence) return nullptr;
    if (read_by_ != &book) {
        concessions_.reset();
        auto parsed = Concessions::parse(path_, *text_, *book.evidence);
        if (parsed) concessions_.emplace(std::move(parsed).value());
        read_by_ = &book;
    }
    return concessions_ ? &*concessions_ : nullptr;
}

}  // namespace grainside::tools::edit
