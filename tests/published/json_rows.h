// JSON Lines of corpus/published: one object a line, every fault of a file told at once.
#ifndef GRAINSIDE_TESTS_PUBLISHED_JSON_ROWS_H
#define GRAINSIDE_TESTS_PUBLISHED_JSON_ROWS_H

#include <simdjson.h>

#include <fstream>
#include <string>
#include <utility>
#include <vector>

#include "grainside/result.h"

namespace grainside::published {

// `read` fills a row from an object and gives what is wrong with it, "" where nothing is. Issues: "cannot-open",
// "json-syntax", "row".
template <typename Row, typename Read>
Result<std::vector<Row>> read_json_rows(const std::string& path, Read read) {
    std::vector<Row> rows;
    std::vector<Issue> issues;
    Issue issue;
    issue.file = path;
    const auto fault = [&](const char* code, std::string message) {
        issue.code = code;
        issue.message = std::move(message);
        issues.push_back(issue);
    };
    std::ifstream file(path);
    if (!file) fault("cannot-open", "cannot be opened");
    simdjson::dom::parser parser;
    for (std::string line; std::getline(file, line);) {
        ++issue.line;
        simdjson::dom::object object;
        if (parser.parse(line).get(object) != simdjson::SUCCESS) {
            fault("json-syntax", "a row is an object");
            continue;
        }
        Row row;
        if (std::string message = read(object, row); !message.empty()) fault("row", std::move(message));
        rows.push_back(std::move(row));
    }
    if (!issues.empty()) return issues;
    return rows;
}

}  // namespace grainside::published

#endif  // GRAINSIDE_TESTS_PUBLISHED_JSON_ROWS_H
