// Comparing trees for the fuzz targets.
#ifndef GRAINSIDE_TESTS_FUZZ_SAME_TREES_H
#define GRAINSIDE_TESTS_FUZZ_SAME_TREES_H

#include "document/document.h"

namespace grainside::document {

// Kinds, keys, texts, quotes and places of the whole trees are equal. Reads every byte of both.
inline bool same_trees(Node a, Node b) {
    if (a.exists() != b.exists() || a.kind() != b.kind() || a.key() != b.key() || a.text() != b.text()) return false;
    if (a.line() != b.line() || a.column() != b.column() || a.quoted() != b.quoted()) return false;
    auto in_b = b.begin();
    for (const Node child : a) {
        if (in_b == b.end() || !same_trees(child, *in_b)) return false;
        ++in_b;
    }
    return in_b == b.end();
}

}  // namespace grainside::document

#endif  // GRAINSIDE_TESTS_FUZZ_SAME_TREES_H
