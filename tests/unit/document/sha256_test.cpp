// Examples of FIPS 180-4: the three messages of NIST's "SHA-256 examples" (also RFC 6234, 8.5, tests 1 to 3), and the
// message without a bit (NIST CAVP, SHA256ShortMsg, Len = 0).
#include "document/sha256.h"

#include <gtest/gtest.h>

#include <fstream>
#include <string>

#include "support/temporary_folder.h"

namespace grainside::document {
namespace {

struct Example {
    std::string_view name;
    std::string message;
    std::string_view digest;
};

const Example kExamples[] = {
    {"one_block", "abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"},
    {"two_blocks", "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
     "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1"},
    {"a_million_times_a", std::string(1'000'000, 'a'),
     "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0"},
    {"nothing", "", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"},
};

class Sha256Test : public testing::TestWithParam<Example> {};

TEST_P(Sha256Test, OfTextAndFile) {
    EXPECT_EQ(sha256_of(GetParam().message), GetParam().digest);
    const support::TemporaryFolder folder;
    const auto path = folder.path() / "message";
    std::ofstream(path, std::ios::binary) << GetParam().message;
    EXPECT_EQ(sha256_of_file(path), std::string(GetParam().digest));
}

INSTANTIATE_TEST_SUITE_P(Rows, Sha256Test, testing::ValuesIn(kExamples),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(Sha256File, IsNothingForWhatCannotBeRead) {
    const support::TemporaryFolder folder;
    EXPECT_EQ(sha256_of_file(folder.path() / "missing"), std::nullopt);
    EXPECT_EQ(sha256_of_file(folder.path()), std::nullopt);  // a folder
}

}  // namespace
}  // namespace grainside::document
