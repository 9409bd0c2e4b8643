#!/bin/sh
# take_example.sh HEADER CODE PRINTS: writes the code of the example in HEADER's first comment, for a function to include,
# and what it prints. Lines of code have five blanks behind the slashes; `// prints: X` among them is a line of output.
# What a compiler says of the code names the header's line. Fails where the header has no example or it prints nothing.
set -eu
header=$1
awk -v name="$header" '
    /^#ifndef/ { exit }
    sub(/^\/\/     /, "") {
        if (FNR != last + 1) printf "#line %d \"%s\"\n", FNR, name
        last = FNR
        print
    }' "$header" >"$2"
sed -n -e '/^#ifndef/q' -e 's|^//     *// prints: ||p' "$header" >"$3"
if [ ! -s "$3" ]; then
    echo "$header: its first comment has no example with a line '// prints: ...' (tests/examples/without_example.txt)" >&2
    exit 1
fi
