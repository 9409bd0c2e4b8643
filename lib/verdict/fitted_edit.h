// A wording made to fit the place where it is to stand.
#ifndef GRAINSIDE_VERDICT_FITTED_EDIT_H
#define GRAINSIDE_VERDICT_FITTED_EDIT_H

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>

namespace grainside::verdict {

struct Place {
    std::string_view text;  // of the whole field
    std::size_t start = 0;  // the words to be replaced, half-open
    std::size_t end = 0;
    bool before_noun = false;   // the noun of the same phrase stands right behind the words
    bool before_stuff = false;  // and that noun is a material by itself: no other noun stands behind it
    bool is_name = false;       // the words begin with a name, whose capital is its own: 'Italian leather'
};

// What takes the place of text[start, end): the words, with an article in front or a letter or bracket behind where
// those change.
struct FittedEdit {
    std::size_t start = 0;
    std::size_t end = 0;
    std::string wording;
};

// Why nothing fits: a sentence's end, as in "formatting stands between the words".
using NoFit = std::string_view;
inline constexpr NoFit kBrokenLine = "a line ends between the words";

// `wording` empty: the words are left out. Bounded: looks 80 bytes to each side.
//
// - The wording takes the case of the words: ALL CAPITALS, Title Case, or a capital in front. A name such as 'PU' in
//   front of small words tells nothing; there the beginning of a sentence decides.
// - A word that stands in front of the place or behind it already is not said twice, nor one in a bracket right behind.
// - 'a' or 'an' in front follows the sound of what it now stands before: by the first letter, with the usual exceptions
//   ('an hour', 'a unit', 'an MDF board'), across quotation marks and emphasis that open between.
// - Where a superlative goes, 'the' in front goes with it if a material without article reads right ('made of the
// finest
//   leather'); else ('the finest bag', "the world's finest") there is no edit.
// - Brackets with 'with', 'of' or 'in' inside do not stand before another noun, and go there.
// - Quotation marks, tags and other formatting inside the words are never lost: there is no edit then.
// - A wording with words behind its noun ('leather tanned in Pakistan') does not fit before another noun.
std::variant<FittedEdit, NoFit> fit(const Place& place, std::string wording);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_FITTED_EDIT_H
