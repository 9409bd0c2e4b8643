// What an open document is to us: by its place among rule files, its name, what the client calls its language, and, of
// YAML, what it begins its entries with.
#ifndef GRAINSIDE_TOOLS_EDIT_DOCUMENT_KIND_H
#define GRAINSIDE_TOOLS_EDIT_DOCUMENT_KIND_H

#include <string>
#include <string_view>

#include "grainside/listing_reader.h"

namespace grainside::tools::edit {

enum class DocumentKind {
    nothing,  // YAML that is none of ours, or a language that holds no listing
    listing,
    dossier,
    rule_file,  // any file of a rule book
    concessions,
};

struct Recognised {
    DocumentKind kind = DocumentKind::nothing;
    InputFormat format = InputFormat::text;  // of a listing
    std::string book_file;                   // of a rule file: its place in the book, "wording/split.yaml"
    // YAML without a first key yet: nothing is said of it, but the keys of a dossier are offered, which are those that
    // somebody begins by hand.
    bool is_hardly_begun = false;
};

// `rules_folder`: an absolute path, all YAML below which is the rule book's; empty: none.
Recognised recognise(std::string_view uri, std::string_view language, std::string_view text,
                     std::string_view rules_folder);

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_DOCUMENT_KIND_H
