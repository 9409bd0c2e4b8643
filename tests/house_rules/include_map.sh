#!/bin/sh
# include_map.sh ROOT: fails where an include goes against the map. A folder of lib/ includes itself, the folders before
# it in this list, and the public headers; public headers include public headers and the standard library only.
set -eu
cd "$1"
files=$(find lib -name '*.cpp' -o -name '*.h' -o -name '*.h.in' | sort)
[ -n "$files" ] || { echo "no sources below $1/lib" >&2; exit 2; }
# shellcheck disable=SC2086
awk -v map="document listing pipeline text vocabulary claims rules measure evidence identify cost verdict survey report c_interface" '
    BEGIN {
        count = split(map, names, " ")
        for (i = 1; i <= count; ++i) place[names[i]] = i
    }
    function wrong(why) { printf "%s:%d: %s: %s\n", FILENAME, FNR, $0, why; faults = 1 }
    FNR == 1 {
        split(FILENAME, path, "/")
        folder = path[2]
        if (folder != "include" && !(folder in place)) wrong("the folder is not on the map")
    }
    !/^[ \t]*#[ \t]*include/ { next }
    folder == "include" {
        if (/"/ && !/"grainside\//) wrong("a public header includes public headers only")
        # The C header has those of C.
        if (/<[^>]*[\/.][^>]*>/ && !(FILENAME ~ /_c\.h$/ && /<std(bool|def|int)\.h>|<string\.h>/)) wrong("a public header includes the standard library only")
        next
    }
    match($0, /"[^"]*"/) {
        included = substr($0, RSTART + 1, RLENGTH - 2)
        if (included !~ /\//) {
            if (included !~ /\.inc$/) wrong("name the folder, as in \"" folder "/" included "\"")
            next
        }
        from = substr(included, 1, index(included, "/") - 1)
        if (from == "grainside") next
        if (!(from in place)) wrong("the folder is not on the map")
        else if (place[from] > place[folder]) wrong(folder " may not know " from)
    }
    END { exit faults }
' $files
echo "$(echo "$files" | wc -l) files, every include follows the map"
