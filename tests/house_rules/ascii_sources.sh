#!/bin/sh
# ascii_sources.sh ROOT: fails where a C++ source holds a byte beyond ASCII. Letters of other scripts are written as
# escapes there, so that no two of them can look alike to a reader; text for people belongs into rules/ and corpus/.
set -eu
cd "$1"
files=$(find lib tools tests -name '*.cpp' -o -name '*.h' -o -name '*.h.in' | sort)
[ -n "$files" ] || { echo "no sources below $1" >&2; exit 2; }
# One call for all files: a name of ours holds no blank.
# shellcheck disable=SC2086
if LC_ALL=C grep -nH '[^ -~[:space:]]' $files; then
    echo "not ASCII: the lines above" >&2
    exit 1
fi
echo "$(echo "$files" | wc -l) sources, all ASCII"
