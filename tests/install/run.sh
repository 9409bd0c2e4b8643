#!/bin/sh
# tests/install/run.sh BUILD FOLDER: installs BUILD into FOLDER/copy, builds the program beside this file against that
# copy, by find_package and by pkg-config, and runs it and the installed tool.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
mkdir -p "$2"
build=$(cd "$1" && pwd)
folder=$(cd "$2" && pwd)
rm -rf "$folder/copy" "$folder/consumer"

quietly() { output=$("$@" 2>&1) || { printf '%s\n' "$output" >&2; exit 1; }; }
quietly cmake --install "$build" --prefix "$folder/copy"
quietly cmake -S "$here" -B "$folder/consumer" -DCMAKE_PREFIX_PATH="$folder/copy" -DCMAKE_BUILD_TYPE=Release
quietly cmake --build "$folder/consumer"
"$folder/consumer/consumer"

pkgconfig=$(dirname "$(find "$folder/copy" -name grainside.pc)")
flags() { PKG_CONFIG_PATH=$pkgconfig pkg-config "$@" --define-variable=prefix="$folder/copy" grainside; }
# shellcheck disable=SC2046
quietly c++ -std=c++20 $(flags --cflags) "$here/main.cpp" $(flags --libs --static) -o "$folder/consumer/by_pkg_config"
"$folder/consumer/by_pkg_config"

# The Python package, where it was built: the installed one, and not that of the build tree.
package=$(find "$folder/copy" -type d -path '*-packages/grainside')
if [ -n "$package" ]; then
    python=$(sed -n 's/^GRAINSIDE_PYTHON:FILEPATH=//p' "$build/CMakeCache.txt")
    PYTHONPATH=${package%/grainside} PYTHONDONTWRITEBYTECODE=1 "$python" - "$package" <<'END'
import os, sys, grainside
assert os.path.dirname(grainside.__file__) == sys.argv[1], grainside.__file__
(finding,) = grainside.Checker(on="2026-11-26").check({"name": "Genuine PU leather tote"})
print("Python package", grainside.__version__ + ":", finding["grade"], repr(finding["words"]))
END
fi

"$folder/copy/bin/grainside" --version
if "$folder/copy/bin/grainside" check "$here/tote.txt" >"$folder/said"; then
    echo "the installed tool let a false title pass" >&2
    exit 1
fi
grep -q "PU leather" "$folder/said"
if "$folder/copy/bin/grainside" judge "$here/tote.yaml" >"$folder/said"; then
    echo "the installed tool let fabric pass for leather" >&2
    exit 1
fi
grep -q "contradicted   'Full grain leather'" "$folder/said"
