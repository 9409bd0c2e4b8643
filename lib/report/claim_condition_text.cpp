#include "report/claim_condition_text.h"

#include <algorithm>
#include <cstddef>

namespace grainside::report {

using document::Node;

namespace {

constexpr std::string_view kTrait = "trait-";

// Kinds of what is mentioned and not claimed.
bool is_mention(std::string_view kind) {
    return kind == "quality" || kind == "craft";
}

class ClaimPhrase {
public:
    ClaimPhrase(const rules::BookData& book, const MarkTexts& marks, Node condition)
        : book_(book), marks_(marks), condition_(condition) {}

    std::string write(std::string_view article) {
        write_head(article);
        write_says();
        write_called();
        write_parts();
        write_numbers();
        write_marks();
        write_listing();
        return std::move(text_);
    }

private:
    std::vector<std::string> texts(std::string_view key) const {
        const std::vector<std::string_view> views = texts_of(condition_.find(key));
        return {views.begin(), views.end()};
    }
    std::string_view text(std::string_view key) const { return condition_.find(key).text(); }

    void add(std::string_view piece) { text_.append(", ").append(piece); }

    void write_head(std::string_view article) {
        const std::vector<std::string> kinds = texts("kind");
        const bool mentions = !kinds.empty() && std::all_of(kinds.begin(), kinds.end(), is_mention);
        std::string noun = text("negated") == "yes" ? "denied " : "";
        if (text("hedged") == "yes") noun += "hedged ";
        if (!kinds.empty()) noun += listed(kinds, "or") + ' ';
        noun += mentions ? "mention" : "claim";
        const bool vowel = article == "a" && std::string_view("aeiou").find(noun.front()) != std::string_view::npos;
        text_ = std::string(article) + (vowel ? "n " : " ") + noun;
        if (text("differs") == "yes") text_ += " of something else";
        if (text("differs") == "no") text_ += " of the same or a kind of it";
        if (text("negated") == "any") add("denied or not");
        if (text("hedged") == "no") add("not hedged");
    }

    // "leather, suede or a kind of one of them"; of what has no kinds only its name. By their ids: several concepts may
    // be written alike in a wording. A trait is a property that the book gives to concepts, and has no words.
    std::string concepts(std::string_view key, bool with_kinds) const {
        std::vector<std::string> names;
        bool any_kinds = false;
        for (const std::string& id : texts(key)) {
            if (id.starts_with(kTrait)) {
                names.push_back("something with the trait '" + with_spaces(id.substr(kTrait.size())) + "'");
            } else {
                names.push_back(with_spaces(id));
                any_kinds = any_kinds || has_kinds(id);
            }
        }
        if (with_kinds && any_kinds) names.emplace_back(names.size() == 1 ? "a kind of it" : "a kind of one of them");
        return listed(names, "or");
    }

    static std::string with_spaces(std::string id) {
        std::replace(id.begin(), id.end(), '-', ' ');
        return id;
    }

    bool has_kinds(const std::string& id) const {
        std::size_t kinds = 0;  // itself counted
        book_.vocabulary.concepts[book_.vocabulary.concepts.find(id)].descendants.for_each([&](ConceptId) { ++kinds; });
        return kinds > 1;
    }

    void write_says() {
        const bool any = condition_.find("says").exists();
        const bool only = condition_.find("says_only").exists();
        if (any) text_ += " that says " + concepts("says", true);
        if (only) text_ += (any ? ", or just " : " that says just ") + concepts("says_only", false);
        if (condition_.find("not_says").exists()) add("but not " + concepts("not_says", true));
    }

    void write_called() {
        if (condition_.find("called").exists()) add("borrowing the noun of " + concepts("called", true));
        if (condition_.find("not_called").exists()) add("not borrowing the noun of " + concepts("not_called", true));
        if (text("borrowed") == "yes") add("borrowing a noun");
        if (text("borrowed") == "no") add("borrowing no noun");
        if (text("look_alike") == "yes") add("written with letters of another script");
        if (text("look_alike") == "no") add("written without letters of another script");
        if (condition_.find("in_place").exists()) add("naming " + concepts("in_place", false) + " or a place in it");
        if (text("place") == "same") add("naming the same country");
        if (text("place") == "different") add("naming another country");
        if (text("later") == "yes") add("standing behind it");
    }

    std::string parts(std::string_view key) const {
        std::vector<std::string> names = texts(key);
        for (std::string& name : names) name = name == "whole" ? "whole product" : name == "main" ? "main part" : name;
        return "the " + listed(names, "or");
    }

    void write_parts() {
        if (condition_.find("part").exists()) add("of " + parts("part"));
        if (condition_.find("not_part").exists()) add("not of " + parts("not_part"));
    }

    // Numbers as the file writes them.
    std::string range(std::string_view key, std::string_view unit) const {
        const Node node = condition_.find(key);
        const std::string from(node.find("from").text());
        const std::string to(node.find("to").text());
        const std::string end = ' ' + std::string(unit);
        if (from.empty() || from == "0") return "at most " + to + end;
        return to.empty() ? "at least " + from + end : "from " + from + " to " + to + end;
    }

    void write_numbers() {
        if (text("quantity") == "yes") add("with a number");
        if (text("quantity") == "no") add("without a number");
        if (condition_.find("share").exists()) add("with a share of " + range("share", "%"));
        if (condition_.find("millimetres").exists()) add("with a thickness of " + range("millimetres", "mm"));
        if (condition_.find("of_total").exists()) {
            add("with a coat of " + range("of_total", "%") + " of the part's thickness");
        }
    }

    void write_marks() {
        const auto phrases = [&](std::string_view key, auto phrase) {
            std::vector<std::string> marks = texts(key);
            for (std::string& mark : marks) mark = (marks_.*phrase)(mark);
            return marks;
        };
        if (condition_.find("marked").exists()) add(listed(phrases("marked", &MarkTexts::marked), "or"));
        if (condition_.find("marked_all").exists()) add(listed(phrases("marked_all", &MarkTexts::marked), "and"));
        if (condition_.find("unmarked").exists()) add(listed(phrases("unmarked", &MarkTexts::unmarked), "and"));
    }

    void write_listing() {
        if (condition_.find("category").exists()) add("in listings of the category " + listed(texts("category"), "or"));
        if (condition_.find("not_category").exists()) {
            add("in listings of another category than " + listed(texts("not_category"), "or"));
        }
    }

    const rules::BookData& book_;
    const MarkTexts& marks_;
    Node condition_;
    std::string text_;
};

}  // namespace

std::string claim_condition_text(const rules::BookData& book, const MarkTexts& marks, Node condition,
                                 std::string_view article) {
    return ClaimPhrase(book, marks, condition).write(article);
}

std::vector<std::string_view> texts_of(Node node) {
    std::vector<std::string_view> texts;
    if (node.is_scalar()) texts.push_back(node.text());
    if (node.is_sequence()) {
        for (const Node one : node) texts.push_back(one.text());
    }
    return texts;
}

std::string listed(const std::vector<std::string>& texts, std::string_view conjunction) {
    std::string text;
    for (std::size_t i = 0; i < texts.size(); ++i) {
        if (i > 0 && i + 1 == texts.size()) {
            text.append(" ").append(conjunction).append(" ");
        } else if (i > 0) {
            text += ", ";
        }
        text += texts[i];
    }
    return text;
}

}  // namespace grainside::report
