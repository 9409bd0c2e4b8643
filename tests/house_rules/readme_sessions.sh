#!/bin/sh
# readme_sessions.sh ROOT FOLDER: runs every ```console block of ROOT/README.md and of the guides in ROOT/tools/guides, and
# compares what comes with what the page says, byte by byte. FOLDER holds the built tool and goes on PATH.
#
# A line that begins with '$ ' is a command, '> ' goes on with it; all others are output, both streams. The commands of
# a block share one shell, in a fresh folder with ROOT's corpus/ and rules/ in it; those of a guide share the folder, so
# that it can go on with what it wrote before.
#
# Exit status: 0 all as written; 1 some output differs, or a page has no such block; 77 there is no README.md.
set -eu
root=$(cd "$1" && pwd)
tool=$(cd "$2" && pwd)
[ -f "$root/README.md" ] || { echo "there is no README.md"; exit 77; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

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

# sessions PAGE SHARED: those of one page; SHARED is true where they have one folder.
blocks=0
different=0
sessions() {
    page=$1
    name=$(echo "$page" | tr '/.' '__')
    awk -v work="$work/$name" '
        /^```console[ \t]*$/ { ++blocks; file = sprintf("%s.%03d.said", work, blocks); inside = 1; printf "" > file; next }
        /^```/ { inside = 0; next }
        inside { print > file }
    ' "$root/$page"
    any=false
    for said in "$work/$name".*.said; do
        [ -e "$said" ] || break
        any=true
        blocks=$((blocks + 1))
        folder=${said%.said}
        "$2" && folder=$work/$name
        if [ ! -d "$folder" ]; then
            mkdir "$folder"
            for linked in corpus rules; do
                [ ! -e "$root/$linked" ] || ln -s "$root/$linked" "$folder/$linked"
            done
        fi
        (cd "$folder" && env PATH="$tool:$PATH" LC_ALL=C.UTF-8 TERM=dumb sh "$work/play" 3<"$said" </dev/null) \
            >"${said%.said}.came" 2>&1 || true
        if ! diff -u --label "$page says (block $blocks)" --label "came out" "$said" "${said%.said}.came"; then
            different=$((different + 1))
        fi
    done
    if ! "$any"; then
        echo "$page shows no session: it has no \`\`\`console block" >&2
        exit 1
    fi
}
sessions README.md false
for guide in "$root"/tools/guides/*.md; do
    [ -e "$guide" ] || break
    sessions "tools/guides/${guide##*/}" true
done
echo "$blocks sessions, $different different"
[ "$different" -eq 0 ]
