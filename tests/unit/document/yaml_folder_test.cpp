#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "document/yaml_document.h"
#include "tree_dump.h"

namespace grainside::document {
namespace {

namespace fs = std::filesystem;

class YamlFolder : public testing::Test {
protected:
    void SetUp() override {
        const auto* test = testing::UnitTest::GetInstance()->current_test_info();
        folder_ = fs::path(testing::TempDir()) / ("grainside_yaml_folder_" + std::string(test->name()));
        fs::remove_all(folder_);
        fs::create_directories(folder_);
    }
    void TearDown() override { fs::remove_all(folder_); }

    void write(const std::string& name, const std::string& text) const {
        fs::create_directories((folder_ / name).parent_path());
        std::ofstream(folder_ / name, std::ios::binary) << text;
    }

    std::string read() {
        std::string names;
        for (const Document& document : read_yaml_folder(folder_, faults_)) names += document.file() + ' ';
        return names;
    }

    fs::path folder_;
    Faults faults_;
};

TEST_F(YamlFolder, ReadsEveryYamlFileInByteOrder) {
    write("b.yaml", "a: 1\n");
    write("a/z.yaml", "a: 1\n");
    write("a.yaml", "a: 1\n");
    write("B.yaml", "");
    write("a/\xC3\xA9.yaml", "a: 1\n");
    write("a-b.yaml", "a: 1\n");
    write("notes.txt", "a: [\n");
    write("c.yml", "a: [\n");
    EXPECT_EQ(read(), "B.yaml a-b.yaml a.yaml a/z.yaml a/\xC3\xA9.yaml b.yaml ");
    EXPECT_EQ(dump(faults_.take()), "");
}

TEST_F(YamlFolder, ReportsTheFaultsOfAllFilesAndKeepsTheGoodOnes) {
    write("a.yaml", "a: 1\na: 2\n");
    write("b.yaml", "b: 1\n");
    write("c.yaml", "c: [\n");
    EXPECT_EQ(read(), "b.yaml ");
    const std::vector<Issue> issues = faults_.take();
    ASSERT_EQ(dump(issues), "2:1 duplicate-key; 1:4 yaml-syntax");
    EXPECT_EQ(issues[0].file, "a.yaml");
    EXPECT_EQ(issues[1].file, "c.yaml");
}

TEST_F(YamlFolder, FollowsNoLinks) {
    write("real/a.yaml", "a: 1\n");
    fs::create_symlink(folder_ / "real/a.yaml", folder_ / "link.yaml");
    fs::create_directory_symlink(folder_, folder_ / "real/loop");
    fs::create_directory_symlink(folder_ / "real", folder_ / "real.yaml");
    EXPECT_EQ(read(), "real/a.yaml ");
    EXPECT_EQ(dump(faults_.take()), "");
}

TEST_F(YamlFolder, AFolderNamedLikeAFileIsAFolder) {
    write("x.yaml/a.yaml", "a: 1\n");
    EXPECT_EQ(read(), "x.yaml/a.yaml ");
}

TEST_F(YamlFolder, ATooLargeFileIsNotReadOn) {
    write("big.yaml", std::string(kMaxYamlBytes + 100, '\n'));
    EXPECT_EQ(read(), "");
    EXPECT_EQ(dump(faults_.take()), "0:0 too-large");
}

TEST_F(YamlFolder, ReportsAFolderThatIsNotThere) {
    EXPECT_TRUE(read_yaml_folder(folder_ / "missing", faults_).empty());
    const std::vector<Issue> issues = faults_.take();
    ASSERT_EQ(dump(issues), "0:0 unreadable");
    EXPECT_EQ(issues[0].file, (folder_ / "missing").generic_string());
}

TEST_F(YamlFolder, AnEmptyFolderHasNoDocumentsAndNoFaults) {
    EXPECT_EQ(read(), "");
    EXPECT_EQ(dump(faults_.take()), "");
}

TEST_F(YamlFolder, ReadsTheProjectsRules) {
    const std::vector<Document> documents = read_yaml_folder(GRAINSIDE_RULES_FOLDER, faults_);
    for (const Issue& issue : faults_.take()) ADD_FAILURE() << to_text(issue);
    ASSERT_FALSE(documents.empty());
    for (const Document& document : documents) EXPECT_TRUE(document.root().exists()) << document.file();
}

}  // namespace
}  // namespace grainside::document
