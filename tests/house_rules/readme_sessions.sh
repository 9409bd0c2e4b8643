#!/bin/sh
# readme_sessions.sh ROOT FOLDER: runs every ```console block of ROOT/README.md and compares what comes with what the
# page says, byte by byte. FOLDER holds the built tool and goes on PATH.
#
# A line that begins with '$ ' is a command, '> ' goes on with it; all others are output, both streams. The commands of
# a block share one shell, in a fresh folder with ROOT's corpus/ and rules/ in it.
#
# Exit status: 0 all as written; 1 some output differs, or the page has no such block; 77 there is no README.md.
set -eu
root=$(cd "$1" && pwd)
tool=$(cd "$2" && pwd)
[ -f "$root/README.md" ] || { echo "there is no README.md"; exit 77; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

awk -v work="$work" '
    /^```console[ \t]*$/ { ++blocks; file = sprintf("%s/%03d.said", work, blocks); inside = 1; printf "" > file; next }
    /^```/ { inside = 0; next }
    inside { print > file }
' "$root/README.md"

cat > "$work/play" <<'PLAY'
# Reads a session, runs its commands and prints the session as it came out.
status=0
command=
run() {
    [ -n "$command" ] || return 0
    # $? of the command before, which `echo $?` in the session asks for.
    (exit "$status")
    eval "$command" 2>&1
    status=$?
    command=
}
while IFS= read -r line <&3; do
    case $line in
        '$ '*) run; printf '%s\n' "$line"; command=${line#'$ '} ;;
        '> '*) printf '%s\n' "$line"; command="$command
${line#> }" ;;
    esac
done
run
PLAY

blocks=0
different=0
for said in "$work"/*.said; do
    [ -e "$said" ] || break
    blocks=$((blocks + 1))
    folder=${said%.said}
    mkdir "$folder"
    for name in corpus rules; do
        [ ! -e "$root/$name" ] || ln -s "$root/$name" "$folder/$name"
    done
    (cd "$folder" && env PATH="$tool:$PATH" LC_ALL=C.UTF-8 TERM=dumb sh "$work/play" 3<"$said" </dev/null) \
        >"$folder.came" 2>&1 || true
    if ! diff -u --label "README.md says (block $blocks)" --label "came out" "$said" "$folder.came"; then
        different=$((different + 1))
    fi
done
if [ "$blocks" -eq 0 ]; then
    echo "README.md shows no session: it has no \`\`\`console block" >&2
    exit 1
fi
echo "$blocks sessions, $different different"
[ "$different" -eq 0 ]
