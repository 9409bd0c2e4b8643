#include "vocabulary/term_forms.h"

#include <string_view>
#include <utility>

namespace grainside::vocabulary {

TermForms::TermForms(Vocabulary& vocabulary) : vocabulary_(vocabulary) {
    // Room for the default book, so that no table is touched twice at every start of the tool.
    constexpr std::size_t kUsualTerms = 14'000;
    constexpr std::size_t kUsualWords = 30'000;  // of terms, and after variants
    terms_.reserve(kUsualTerms);
    path_words_.reserve(kUsualWords);
    vocabulary_.terms.reserve(kUsualWords);
    vocabulary_.words.reserve(kUsualWords);
}

void TermForms::add(const text::Tokens& words, const Sense& sense, bool inflects) {
    // Every listed word gets its own number before variants are let in, so that no variant takes a listed word.
    const auto first = static_cast<std::uint32_t>(path_words_.size());
    for (const text::Token& token : words.list) {
        path_words_.push_back(vocabulary_.words.intern(words.folded_text(token)));
    }
    terms_.push_back({first, static_cast<std::uint32_t>(path_words_.size()) - first, sense, inflects});
}

std::span<const WordId> TermForms::path(const Term& term) const {
    return std::span(path_words_).subspan(term.first, term.count);
}

void TermForms::build() {
    find_borrowed_nouns();
    for (const Term& term : terms_) vocabulary_.terms.add(path(term), term.sense);
    for (const Term& term : terms_) {
        if (term.inflects) add_joined(term);
    }
    add_listed_forms();
    add_variants();
    vocabulary_.misspellings.freeze();
    vocabulary_.terms.freeze();
    vocabulary_.term_forms = vocabulary_.terms.terms() + aliases_;
}

// A word stands in many terms; its variants are made once.
void TermForms::add_variants() {
    constexpr std::uint8_t kInflects = 1;
    constexpr std::uint8_t kMeans = 2;
    std::vector<std::uint8_t> uses(vocabulary_.words.size() + 1);
    for (const Term& term : terms_) {
        if (term.inflects) uses[path(term).back()] |= kInflects;
        if (term.sense.role != Role::meaning) continue;
        for (WordId id : path(term)) uses[id] |= kMeans;
    }
    for (WordId id : joined_) uses[id] |= kInflects;
    for (WordId id = 1; id < uses.size(); ++id) {
        const std::string word(vocabulary_.words.text(id));
        if ((uses[id] & kInflects) != 0) {
            for (const std::string& form : number_forms(word)) alias(form, id);
        }
        for (const std::string& form : pairs_.forms(word)) alias(form, id);
        if ((uses[id] & kMeans) != 0) vocabulary_.misspellings.add(word, id);
    }
    // The other spelling of one word before another's number and spelling: 'color' is 'colour', whether or not
    // 'colours' is listed before it.
    for (WordId id = 1; id < uses.size(); ++id) {
        if ((uses[id] & kInflects) == 0) continue;
        for (const std::string& form : pairs_.forms(vocabulary_.words.text(id))) {
            for (const std::string& plural : number_forms(form)) alias(plural, id);
        }
    }
}

// 'cork leather' says cork and borrows the noun leather: a term of a material that is no hide, ending in a word
// that names one.
void TermForms::find_borrowed_nouns() {
    const auto& concepts = vocabulary_.concepts;
    std::vector<ConceptId> hide_nouns(vocabulary_.words.size() + 1);  // by word; 0 = none
    for (const Term& term : terms_) {
        const bool noun = term.count == 1 && term.sense.role == Role::meaning &&
                          concepts.is_a(term.sense.concept_id, vocabulary_.known.hide_word);
        if (!noun) continue;
        ConceptId& known = hide_nouns[path(term).front()];
        if (known == 0) known = term.sense.concept_id;
    }
    for (Term& term : terms_) {
        if (term.sense.role != Role::meaning || term.count < 2 ||
            !concepts.is_a(term.sense.concept_id, vocabulary_.known.borrows_hide)) {
            continue;
        }
        if (const ConceptId noun = hide_nouns[path(term).back()]; noun != 0) term.sense.called = noun;
    }
}

// A plural or other spelling that is listed as a word of its own in some other term ('details' in 'leather
// details') cannot be an alias of the singular, so the term gets a second path.
void TermForms::add_listed_forms() {
    std::vector<std::optional<std::vector<WordId>>> listed_forms(vocabulary_.words.size() + 1);  // by last word
    std::vector<WordId> other;
    for (const Term& term : terms_) {
        if (!term.inflects) continue;
        std::optional<std::vector<WordId>>& listed = listed_forms[path(term).back()];
        if (!listed) listed = forms_with_a_number(path(term).back());
        for (WordId form : *listed) {
            other.assign(path(term).begin(), path(term).end());
            other.back() = form;
            if (!vocabulary_.terms.has_term(other)) vocabulary_.terms.add(other, term.sense);
        }
    }
}

std::vector<WordId> TermForms::forms_with_a_number(WordId word) const {
    std::vector<std::string> forms = number_forms(vocabulary_.words.text(word));
    for (std::string& form : pairs_.forms(vocabulary_.words.text(word))) forms.push_back(std::move(form));
    std::vector<WordId> listed;
    for (const std::string& form : forms) {
        if (const WordId known = vocabulary_.words.find(form); known != 0 && known != word) listed.push_back(known);
    }
    return listed;
}

void TermForms::alias(const std::string& form, WordId id) {
    const std::size_t before = vocabulary_.words.spellings();
    vocabulary_.words.alias(form, id);
    aliases_ += vocabulary_.words.spellings() - before;
}

// 'full grain' is also written 'fullgrain': two neighbouring words as one, unless that is a term already.
void TermForms::add_joined(const Term& term) {
    std::string joined;
    std::vector<WordId> other;
    for (std::size_t i = 0; i + 1 < term.count; ++i) {
        const std::span<const WordId> words = path(term);
        const std::string_view left = vocabulary_.words.text(words[i]);
        const std::string_view right = vocabulary_.words.text(words[i + 1]);
        if (!can_be_joined(left, right)) continue;
        joined.assign(left).append(right);
        other.assign(words.begin(), words.begin() + static_cast<std::ptrdiff_t>(i));
        other.push_back(vocabulary_.words.intern(joined));
        other.insert(other.end(), words.begin() + static_cast<std::ptrdiff_t>(i) + 2, words.end());
        if (vocabulary_.terms.has_term(other)) continue;
        vocabulary_.terms.add(other, term.sense);
        if (i + 2 == term.count) joined_.push_back(other.back());
    }
}

}  // namespace grainside::vocabulary
