// Entropy and mutual information against textbook tables.
#include "identify/information.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numeric>
#include <vector>

namespace grainside::identify {
namespace {

// Cover and Thomas, Elements of Information Theory, example 2.2.1 and after 2.43 (also MacKay, exercise 8.6; from
// memory, recomputed): rows are Y, columns X.
constexpr std::array<std::array<double, 4>, 4> kJoint = {{{1.0 / 8, 1.0 / 16, 1.0 / 32, 1.0 / 32},
                                                          {1.0 / 16, 1.0 / 8, 1.0 / 32, 1.0 / 32},
                                                          {1.0 / 16, 1.0 / 16, 1.0 / 16, 1.0 / 16},
                                                          {1.0 / 4, 0, 0, 0}}};

struct Table {
    std::array<double, 4> x{}, y{};
    std::vector<double> joint, y_given_x;  // [x * 4 + y]
};

Table table() {
    Table made;
    made.y_given_x.resize(16);
    for (std::size_t y = 0; y < 4; ++y) {
        for (std::size_t x = 0; x < 4; ++x) {
            made.x[x] += kJoint[y][x];
            made.y[y] += kJoint[y][x];
            made.joint.push_back(kJoint[y][x]);
        }
    }
    for (std::size_t y = 0; y < 4; ++y) {
        for (std::size_t x = 0; x < 4; ++x) made.y_given_x[x * 4 + y] = kJoint[y][x] / made.x[x];
    }
    return made;
}

constexpr std::array<int, 4> kEach = {0, 1, 2, 3};

TEST(Information, IsThatOfCoverAndThomas) {
    const Table t = table();
    EXPECT_DOUBLE_EQ(entropy(t.x), 7.0 / 4);
    EXPECT_DOUBLE_EQ(entropy(t.y), 2);
    EXPECT_DOUBLE_EQ(entropy(t.joint), 27.0 / 8);
    const double shared = mutual_information(t.x, kEach, 4, t.y_given_x, 4);
    EXPECT_DOUBLE_EQ(shared, 3.0 / 8);
    EXPECT_DOUBLE_EQ(entropy(t.x) - shared, 11.0 / 8);  // H(X|Y)
    EXPECT_DOUBLE_EQ(entropy(t.y) - shared, 13.0 / 8);  // H(Y|X)
}

// MacKay, Information Theory, Inference, and Learning Algorithms, chapter 9 (from memory, recomputed): a binary
// symmetric channel with f = 0.15 and P(x = 1) = 0.1.
TEST(Information, IsThatOfMacKaysChannel) {
    EXPECT_NEAR(binary_information(0.1, 0.85), 0.150327, 5e-7);
    const std::array belief = {0.1, 0.9};
    const std::array chance = {0.85, 0.15, 0.15, 0.85};
    EXPECT_NEAR(mutual_information(belief, std::array{0, 1}, 2, chance, 2), 0.150327, 5e-7);
    EXPECT_NEAR(entropy(std::array{0.22, 0.78}), 0.76, 0.005);  // H(Y)
    EXPECT_NEAR(entropy(std::array{0.15, 0.85}), 0.61, 0.005);  // H(Y|X)
}

// The same source's Z channel: f = 0.15, same prior, no false alarms.
TEST(Information, IsThatOfTheZChannel) {
    const std::array belief = {0.1, 0.9};
    const std::array chance = {0.85, 0.15, 0.0, 1.0};
    EXPECT_NEAR(mutual_information(belief, std::array{0, 1}, 2, chance, 2), 0.358572, 5e-7);
}

// A university exercise (3.10, mutual information at the BSC; seen): crossover 0.1, P 0.2 and 0.8.
TEST(Information, IsThatOfTheExercise) {
    EXPECT_NEAR(entropy(std::array{0.2, 0.8}), 0.7219, 5e-5);
    EXPECT_NEAR(binary_information(0.8, 0.9), 0.3578, 5e-5);
    EXPECT_NEAR(binary_information(0.2, 0.9), 0.3578, 5e-5);
    EXPECT_NEAR(entropy(std::array{0.26, 0.74}), 0.826746, 5e-7);
}

// A disease of 1 % and a test that is right in 95 % either way (textbook posterior 0.161; gain computed from it).
TEST(Information, OfTheDiseaseTest) {
    EXPECT_NEAR(binary_information(0.01, 0.95), 0.0370655, 5e-8);
}

// A claim that is false with 0.30; sensitivity 0.9, specificity 0.8 (computed by hand beforehand).
TEST(Information, OfAnUnevenTest) {
    const std::array belief = {0.3, 0.7};
    const std::array chance = {0.9, 0.1, 0.2, 0.8};
    EXPECT_NEAR(mutual_information(belief, std::array{0, 1}, 2, chance, 2), 0.330452, 5e-7);
}

TEST(Information, OfWhatIsCertainIsNothing) {
    EXPECT_EQ(entropy(std::array{1.0, 0.0}), 0);
    EXPECT_EQ(binary_information(0, 0.9), 0);
    EXPECT_EQ(binary_information(1, 0.9), 0);
    EXPECT_EQ(binary_information(0.4, 0.5), 0);
    EXPECT_DOUBLE_EQ(binary_information(0.5, 1), 1);
}

// Candidates of one class need not be told apart: a test that only tells them apart is worth nothing.
TEST(Information, IsAboutTheClassesOnly) {
    const std::array belief = {0.25, 0.25, 0.5};
    const std::array chance = {1.0, 0.0, 0.0, 1.0, 0.5, 0.5};
    EXPECT_NEAR(mutual_information(belief, std::array{0, 0, 1}, 2, chance, 2), 0, 1e-15);
    EXPECT_NEAR(mutual_information(belief, std::array{0, 1, 2}, 3, chance, 2), 0.5, 1e-15);
}

// Of three classes that nobody is in, one does not divide by nothing.
TEST(Information, OfAnEmptyClassIsFinite) {
    const std::array belief = {0.5, 0.5, 0.0};
    const std::array chance = {1.0, 0.0, 0.0, 1.0, 0.5, 0.5};
    EXPECT_DOUBLE_EQ(mutual_information(belief, std::array{0, 1, 2}, 4, chance, 2), 1);
}

}  // namespace
}  // namespace grainside::identify
