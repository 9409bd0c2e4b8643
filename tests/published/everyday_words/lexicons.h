// General-purpose lexical resources of Debian packages: word lists (wamerican, wbritish) and WordNet (wordnet-base).
//
// They know nothing of leather goods and nobody here chose their words: what the checker says of them is an outside
// measure of false alarms.
#ifndef GRAINSIDE_TESTS_PUBLISHED_EVERYDAY_WORDS_LEXICONS_H
#define GRAINSIDE_TESTS_PUBLISHED_EVERYDAY_WORDS_LEXICONS_H

#include <cstdint>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace grainside::published {

inline constexpr const char* kWordLists[] = {"/usr/share/dict/american-english", "/usr/share/dict/british-english"};
inline constexpr const char* kGlossFiles[] = {"/usr/share/wordnet/data.noun", "/usr/share/wordnet/data.verb",
                                              "/usr/share/wordnet/data.adj", "/usr/share/wordnet/data.adv"};

// "" where all word lists, all gloss files are there; else what is missing and which package brings it.
std::string missing_word_lists();
std::string missing_glosses();

// The entries of both lists, each once, sorted by bytes: 'aardvark', "aardvark's", 'Aaron'.
std::set<std::string> entries_of_word_lists();

// What a synset says of itself: its definition, or one of its example sentences.
struct GlossText {
    std::string head;  // the synset's first word
    std::string text;
    std::uint8_t topic = 0;  // WordNet's lexicographer file: 5 animals, 6 artefacts, 20 plants, 27 substances ...
    bool is_example = false;
};

// WordNet's lexicographer files of artefacts and substances, whose glosses speak of goods and what they are made of.
inline constexpr std::uint8_t kArtefacts = 6;
inline constexpr std::uint8_t kSubstances = 27;

// The definitions and examples of one data file (wndb(5WN) has the form), in its order.
std::vector<GlossText> gloss_texts_of(const char* path);

// The words of a list kept beside these tests: one a line, up to the first blank; '#' begins a remark.
std::set<std::string> listed_words(const std::string& file);

}  // namespace grainside::published

#endif  // GRAINSIDE_TESTS_PUBLISHED_EVERYDAY_WORDS_LEXICONS_H
