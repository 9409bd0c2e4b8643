#!/bin/sh
# tests/install/run.sh BUILD FOLDER: installs BUILD into FOLDER/copy, builds the programs beside this file against that
# copy, in C++ by find_package and in C by pkg-config too, and runs them and the installed tool. Then makes the Debian
# packages in FOLDER/packages and runs the tool out of what they hold.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
mkdir -p "$2"
build=$(cd "$1" && pwd)
folder=$(cd "$2" && pwd)
rm -rf "$folder/copy" "$folder/consumer" "$folder/packages" "$folder/unpacked"

quietly() { output=$("$@" 2>&1) || { printf '%s\n' "$output" >&2; exit 1; }; }
quietly cmake --install "$build" --prefix "$folder/copy"
quietly cmake -S "$here" -B "$folder/consumer" -DCMAKE_PREFIX_PATH="$folder/copy" -DCMAKE_BUILD_TYPE=Release
quietly cmake --build "$folder/consumer"
"$folder/consumer/consumer" >/dev/null

# Byte for byte what the tool writes, in whichever way it was linked.
on=2026-11-26
{
    "$folder/copy/bin/grainside" check --format jsonl --on "$on" "$here/tote.txt" || true
    "$folder/copy/bin/grainside" judge --format jsonl "$here/tote.yaml" || true
} >"$folder/wanted"
pkgconfig=$(dirname "$(find "$folder/copy" -name grainside.pc)")
flags() { PKG_CONFIG_PATH=$pkgconfig pkg-config "$@" grainside; }
# shellcheck disable=SC2046
quietly c++ -std=c++20 $(flags --cflags) "$here/main.cpp" $(flags --libs --static) -o "$folder/consumer/by_pkg_config"
"$folder/consumer/by_pkg_config" >/dev/null
# shellcheck disable=SC2046
quietly cc -std=c11 -pedantic -Wall -Wextra -Werror $(flags --cflags) "$here/consumer.c" $(flags --libs --static) \
    -o "$folder/consumer/in_c_by_pkg_config"
for program in consumer_in_c in_c_by_pkg_config; do
    (cd "$here" && "$folder/consumer/$program" "$here/tote.txt" "$here/tote.yaml" "$on") | diff -u "$folder/wanted" -
done
echo "from C: $(wc -l <"$folder/wanted") records, those of the tool"

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

# The Debian packages: what they say of themselves, what they hold, and the tool out of them.
command -v dpkg-deb >/dev/null 2>&1 || { echo "no dpkg-deb here: no Debian packages"; exit 0; }
quietly cpack --config "$build/CPackConfig.cmake" -B "$folder/packages"
tool_package=$(find "$folder/packages" -maxdepth 1 -name 'grainside_*.deb')
dev_package=$(find "$folder/packages" -maxdepth 1 -name 'libgrainside-dev_*.deb')
depends=$(dpkg-deb --field "$tool_package" Depends)
for library in libc6 libstdc++6 libyaml-cpp0.7 libsimdjson14 libxml2; do
    case $depends in
        *"$library "*) ;;
        *) echo "the package of the tool does not depend on $library: $depends" >&2; exit 1 ;;
    esac
done
dpkg-deb --contents "$tool_package" >"$folder/tool.contents"
dpkg-deb --contents "$dev_package" >"$folder/dev.contents"
holds() { grep -q " \./usr/$2\$" "$folder/$1.contents" || { echo "the package lacks /usr/$2" >&2; exit 1; }; }
holds tool bin/grainside
holds tool share/man/man1/grainside.1
holds tool share/man/man7/grainside-rules.7
holds tool share/doc/grainside/rules.html
holds tool share/bash-completion/completions/grainside
holds tool share/zsh/vendor-completions/_grainside
holds tool share/fish/vendor_completions.d/grainside.fish
holds dev include/grainside/grainside.h
holds dev include/grainside/grainside_c.h
holds dev include/grainside/version.h
holds dev lib/libgrainside.a
holds dev lib/pkgconfig/grainside.pc
holds dev lib/cmake/grainside/grainsideConfig.cmake
mkdir "$folder/unpacked"
dpkg-deb --extract "$tool_package" "$folder/unpacked"
dpkg-deb --extract "$dev_package" "$folder/unpacked"
{
    "$folder/unpacked/usr/bin/grainside" check --format jsonl --on "$on" "$here/tote.txt" || true
    "$folder/unpacked/usr/bin/grainside" judge --format jsonl "$here/tote.yaml" || true
} | diff -u "$folder/wanted" -
PKG_CONFIG_PATH=$folder/unpacked/usr/lib/pkgconfig pkg-config --cflags grainside | grep -q "$folder/unpacked/usr/" ||
    { echo "grainside.pc does not move with its folder" >&2; exit 1; }
echo "Debian packages: $(cd "$folder/packages" && du -h --apparent-size ./*.deb | tr -s '\t\n' '  ')"
