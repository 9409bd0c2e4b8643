#include "report/mark_text.h"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <set>
#include <vector>

#include "report/claim_condition_text.h"

namespace grainside::report {
namespace {

struct MarkPhrase {
    std::string_view mark;
    // A phrase, or, where `of_words` says so, what stands behind the words of the class of this name.
    std::string_view text;
    bool of_words = false;
};

constexpr MarkPhrase kPhrases[] = {
    {"genuine", "before it", true},
    {"solid", "before it", true},
    {"pure", "before it", true},
    {"all", "before it", true},
    {"imitation", "before it", true},
    {"look", "beside it", true},
    {"coated", "beside it", true},
    {"blend", "behind it", true},
    {"more-than", "before it", true},
    {"praised", "with praise before it"},
    {"listed", "joined to another material"},
    {"asterisk", "with an asterisk behind it"},
    {"likened", "only as a likeness"},
    {"method", "with a test method in its sentence"},
    {"result", "with a test result in its sentence"},
    {"document", "with a numbered certificate or report in its sentence"},
    {"title", "in the listing's name"},
    {"specification", "in an attribute, in the material field or behind a label"},
    {"part-named", "with its part named by a noun"},
    {"bracketed", "in a bracket behind another material"},
    {"explained", "with another material in a bracket behind it"},
    {"before-material", "right before another material"},
    {"before-word", "with an unknown word right behind it"},
    {"labelled-part", "behind a label that names its part or asks for the material"},
    {"on-product", "in one phrase with the product"},
    {"on-part", "in one phrase with a part"},
    {"on-material", "in one phrase with a material behind it"},
    {"first-share", "as the first percentage of its part"},
    {"shares-off", "as the first of percentages that miss 100"},
};

constexpr std::size_t kWordsShown = 3;

// "with 'faux', 'imitation' or the like before it", of a class of the grammar and the first words that the book has for
// it.
std::string phrase_of(const MarkPhrase& phrase, const std::vector<std::string_view>& words) {
    std::string text = "with ";
    for (std::size_t i = 0; i < std::min(words.size(), kWordsShown); ++i) {
        text.append(i == 0 ? "'" : ", '").append(words[i]).append("'");
    }
    return text + " or the like " + std::string(phrase.text);
}

}  // namespace

MarkTexts::MarkTexts(const rules::BookData& book) {
    for (const MarkPhrase& phrase : kPhrases) {
        texts_[phrase.mark] =
            phrase.of_words ? "with a word of the class '" + std::string(phrase.mark) + "' " + std::string(phrase.text)
                            : std::string(phrase.text);
    }
    std::set<std::string_view> known;  // a class may stand in several entries: the first speaks
    for (const document::Document& document : book.documents) {
        if (!document.file().starts_with("vocabulary/")) continue;
        for (const document::Node entry : document.root()) {
            const std::string_view name = entry.find("grammar").text();
            const auto* phrase = std::find_if(std::begin(kPhrases), std::end(kPhrases),
                                              [&](const MarkPhrase& one) { return one.of_words && one.mark == name; });
            if (phrase == std::end(kPhrases)) continue;
            const std::vector<std::string_view> words = texts_of(entry.find("words"));
            if (!words.empty() && known.insert(name).second) texts_[phrase->mark] = phrase_of(*phrase, words);
        }
    }
}

std::string MarkTexts::marked(std::string_view mark) const {
    const auto found = texts_.find(mark);
    return found == texts_.end() ? std::string(mark) : found->second;
}

std::string MarkTexts::unmarked(std::string_view mark) const {
    constexpr std::string_view kWith = "with ";
    std::string text = marked(mark);
    if (text.starts_with(kWith)) return "without " + text.substr(kWith.size());
    return "not " + text;
}

}  // namespace grainside::report
