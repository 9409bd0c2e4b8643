#!/bin/sh
# self_test.sh CXX NM: each check of this folder passes on a good sample and fails on a bad one.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
cxx=$1
nm=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
faults=0

# expect STATUS WHAT COMMAND...
expect() {
    wanted=$1
    what=$2
    shift 2
    status=0
    "$@" >"$work/output" 2>&1 || status=$?
    if [ "$status" -ne "$wanted" ]; then
        echo "$what: exit status $status, expected $wanted" >&2
        cat "$work/output" >&2
        faults=$((faults + 1))
    fi
}

tree() {
    rm -rf "$work/tree"
    mkdir -p "$work/tree/lib/text" "$work/tree/lib/include/grainside" "$work/tree/tools" "$work/tree/tests"
    printf '#include "text/a.h"\n#include "listing/b.h"\n#include "grainside/c.h"\n#include "made.inc"\n' \
        >"$work/tree/lib/text/a.cpp"
    printf '#include <vector>\n#include "grainside/d.h"\n' >"$work/tree/lib/include/grainside/c.h"
}
source_with() { printf '%b\n' "$2" >"$work/tree/$1"; }

tree
expect 0 "plain sources" "$here/ascii_sources.sh" "$work/tree"
source_with tests/x.cpp '// caf\0303\0251'
expect 1 "a letter beyond ASCII" "$here/ascii_sources.sh" "$work/tree"

tree
expect 0 "includes on the map" "$here/include_map.sh" "$work/tree"
for bad in '#include "claims/a.h"' '#include "a.h"' '#include "tools/a.h"'; do
    tree
    source_with lib/text/b.cpp "$bad"
    expect 1 "text: $bad" "$here/include_map.sh" "$work/tree"
done
for bad in '#include "text/a.h"' '#include <fmt/format.h>' '#include <simdjson.h>'; do
    tree
    source_with lib/include/grainside/d.h "$bad"
    expect 1 "public header: $bad" "$here/include_map.sh" "$work/tree"
done
tree
source_with lib/include/grainside/d.h '#include <stddef.h>'
expect 1 "a header of C in C++" "$here/include_map.sh" "$work/tree"
tree
source_with lib/include/grainside/d_c.h '#include <stddef.h>'
expect 0 "a header of C in the C header" "$here/include_map.sh" "$work/tree"
tree
mkdir "$work/tree/lib/util"
source_with lib/util/a.cpp '// nothing'
expect 1 "a folder that is not on the map" "$here/include_map.sh" "$work/tree"

library_with() {
    printf '%s\n' "$1" >"$work/a.cpp"
    "$cxx" -std=c++20 -c "$work/a.cpp" -o "$work/a.o"
    rm -f "$work/a.a"
    ar rcs "$work/a.a" "$work/a.o"
}
library_with '#include <string>
int f(const std::string& s) { return std::stoi(s); }'
expect 0 "a silent library" "$here/library_is_silent.sh" "$nm" "$work/a.a"
for bad in 'std::printf("%d", n);' 'std::cout << n;' 'std::cerr << n;' 'std::puts("");' 'std::abort();' 'std::exit(n);'; do
    library_with "#include <cstdio>
#include <cstdlib>
#include <iostream>
void f(int n) { (void)n; $bad }"
    expect 1 "a library with $bad" "$here/library_is_silent.sh" "$nm" "$work/a.a"
done

page() { printf '%s\n' "$@" >"$work/tree/README.md"; }
tree
expect 77 "no page" "$here/readme_sessions.sh" "$work/tree" "$work"
page 'A page.' '```sh' '$ false' '```'
expect 1 "a page without sessions" "$here/readme_sessions.sh" "$work/tree" "$work"
page '```console' '$ printf "a b" |' '>     cat; echo' 'a b' '$ sh -c "echo x >&2; exit 3"' 'x' '$ echo $?' '3' '```'
expect 0 "sessions as written" "$here/readme_sessions.sh" "$work/tree" "$work"
page '```console' '$ echo a' 'a' '```' '```console' '$ echo b' 'c' '```'
expect 1 "another output" "$here/readme_sessions.sh" "$work/tree" "$work"
page '```console' '$ echo a' '```'
expect 1 "output left out" "$here/readme_sessions.sh" "$work/tree" "$work"

[ "$faults" -eq 0 ]
