// short_texts WORDS [--in-full]: what is read of short texts of every two words of the file WORDS, beside leather: each
// word of the grammar before, between and behind every other, and before some third. tests/scoring/README.md has the
// form.
//
// Exit status: 0 written; 2 any error.
#include <fmt/format.h>

#include <cstddef>
#include <cstdio>
#include <exception>
#include <fstream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/checker.h"
#include "grainside/rule_book.h"
#include "reading_digest.h"

namespace {

namespace scoring = grainside::scoring;
using grainside::Checker;
using grainside::RuleBook;

// A field of a bag, with two words to put in.
struct Frame {
    std::string_view field;
    std::string_view before;
    std::string_view between;
    std::string_view behind;
};
constexpr Frame kFrames[] = {
    {"name", "", " ", " leather bag"},
    {"description", "The bag is ", " leather ", " and more."},
    {"description", "Leather ", " ", ""},
    {"description", "Lining: ", ", ", " leather"},
    {"description", "", " cotton. ", " leather strap"},
};

// Thirds of every two words, spread over all of them.
constexpr std::size_t kThirds = 6;
std::size_t third_of(std::size_t first, std::size_t second, std::size_t which, std::size_t words) {
    return (first * 31 + second * 17 + which * words / kThirds) % words;
}

std::vector<std::string> words_of(const std::string& path) {
    std::ifstream stream(path);
    if (!stream) throw std::runtime_error(path + " cannot be read");
    std::vector<std::string> words;
    for (std::string line; std::getline(stream, line);) {
        if (!line.empty() && line.front() != '#') words.push_back(line);
    }
    return words;
}

void read_two(const std::string& first, const std::string& second, std::string& text, scoring::ReadingDigest& digest) {
    for (const Frame& frame : kFrames) {
        text.assign(frame.before).append(first).append(frame.between).append(second).append(frame.behind);
        digest.read(frame.field, text);
    }
}

int run(const std::string& path, bool in_full) {
    const std::vector<std::string> words = words_of(path);
    const auto book = RuleBook::built_in();
    if (!book) throw std::runtime_error(grainside::to_text(book.issues().front()));
    Checker checker(book.value());
    std::string each;
    std::string text;
    for (std::size_t first = 0; first < words.size(); ++first) {
        each.clear();
        scoring::ReadingDigest digest(book.value(), checker, in_full ? &each : nullptr);
        for (std::size_t second = 0; second < words.size(); ++second) {
            read_two(words[first], words[second], text, digest);
            for (std::size_t which = 0; which < kThirds; ++which) {
                const std::string& third = words[third_of(first, second, which, words.size())];
                text.assign(words[first]).append(" ").append(words[second]).append(" ").append(third);
                digest.read("description", text);
            }
        }
        fmt::print("== {}\n{}{}", words[first], each, digest.line());
    }
    return 0;
}

}  // namespace

int main(int argc, char** argv) {
    const std::vector<std::string_view> words(argv + 1, argv + argc);
    if (words.empty() || words.size() > 2 || (words.size() == 2 && words[1] != "--in-full")) {
        fmt::print(stderr, "usage: short_texts WORDS [--in-full]\n");
        return 2;
    }
    try {
        return run(std::string(words[0]), words.size() == 2);
    } catch (const std::exception& error) {
        fmt::print(stderr, "short_texts: {}\n", error.what());
        return 2;
    }
}
