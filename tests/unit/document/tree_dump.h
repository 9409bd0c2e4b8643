// One-line dumps of trees and faults, so that a table row is one line and a difference reads itself.
#ifndef GRAINSIDE_TESTS_UNIT_DOCUMENT_TREE_DUMP_H
#define GRAINSIDE_TESTS_UNIT_DOCUMENT_TREE_DUMP_H

#include <string>
#include <string_view>
#include <vector>

#include "document/document.h"
#include "document/faults.h"

namespace grainside::document {

// JSON-like, every scalar as a string: {"a": "1", "b": ["x", null]}; "absent" for an empty document.
std::string dump(Node node);

// The same with places, one node a line: "2:3 b = [" and so on, nested by indentation.
std::string dump_places(Node node);

// "line:column code" of each issue in the order of Faults::take(), joined by "; ".
std::string dump(std::vector<Issue> issues);

// Parses text that must be accepted; a refusal fails the test and gives an empty document.
Document parse_good(std::string_view text);

// The dumped faults of a text, warnings included; "" = accepted.
std::string faults_of(std::string_view text);

}  // namespace grainside::document

#endif  // GRAINSIDE_TESTS_UNIT_DOCUMENT_TREE_DUMP_H
