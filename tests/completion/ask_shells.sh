#!/bin/bash
# ask_shells.sh TOOL FOLDER: completion as the shells would have it. FOLDER holds the scripts that the build wrote. Bash is
# really asked. Of zsh and fish the text is held against the tool's own help; where they are installed, they read it, too.
set -u
tool=$1
folder=$2
faults=0
asked=0
fault() {
    echo "$*" >&2
    faults=$((faults + 1))
}

# --- bash: what it offers for a call of which the last word is being written
cd "$(mktemp -d)" || exit 2
trap 'rm -rf "$PWD"' EXIT
mkdir feeds rules
touch 'my listing.txt' feeds/a.jsonl
# shellcheck source=/dev/null
. "$folder/grainside"
complete -p grainside >/dev/null || fault "bash does not know it"
# expect WANTED CALL...: WANTED is what is offered, with '|' between.
expect() {
    local wanted=$1 came
    shift
    # shellcheck disable=SC2034
    COMP_WORDS=("$@") COMP_CWORD=$(($# - 1)) COMPREPLY=()
    _grainside
    came=$(IFS='|'; echo "${COMPREPLY[*]}")
    asked=$((asked + 1))
    [ "$came" = "$wanted" ] || fault "bash, $*: '$came', not '$wanted'"
}
expect 'check' grainside che
expect '--format' grainside check --form
expect 'human|jsonl|sarif' grainside check --format ''
expect 'sarif' grainside check --format = s
expect 'sarif' grainside check --quiet --format s
expect 'html|markdown|json|csv' grainside report --format ''
expect 'us,eu|us,es|us,ee' grainside check --market us,e
expect 'feeds|my listing.txt|rules' grainside check ''
expect 'my listing.txt' grainside check my
expect 'rules' grainside check --rules ru
expect '' grainside check --threads ''
expect '' grainside check --separator ''
expect 'show' grainside rules sho
expect 'solid-on-plating-eu' grainside rules show solid-on-plating-e
expect '--rules' grainside rules show --ru
expect '' grainside chekc --

# --- every command and every option of the help is in each script, and in bash's for its command
# words_of_help CALL...: the commands and long options that its help names.
words_of_help() {
    "$tool" "$@" --help | sed -n -e 's/^  \([a-z][a-z]*\)  .*/\1/p' -e 's/^  \(-h,\)\{0,1\}\(--[a-zA-Z-]*\).*/\2/p' |
        grep -v '^inputs$\|^dossiers$\|^rule$'
}
calls=0
walk() {
    local word script
    calls=$((calls + 1))
    # shellcheck disable=SC2034
    COMP_WORDS=(grainside "$@" --) COMP_CWORD=$(($# + 1)) COMPREPLY=()
    _grainside
    local offered=" ${COMPREPLY[*]} "
    for word in $(words_of_help "$@"); do
        case $word in
            --*)
                case $offered in *" $word "*) ;; *) fault "bash offers no $word for '$*'" ;; esac
                grep -q -e "[*]$word[=[]" "$folder/_grainside" || fault "zsh has no $word"
                grep -q -e " -l ${word#--} " "$folder/grainside.fish" || fault "fish has no $word"
                ;;
            *)
                [ $# -lt 2 ] || continue
                grep -q "^                '$word:" "$folder/_grainside" || fault "zsh has no command $word"
                grep -q -e " -a $word -d " "$folder/grainside.fish" || fault "fish has no command $word"
                walk "$@" "$word"
                ;;
        esac
    done
}
walk
[ "$calls" -gt 15 ] || fault "only $calls commands were found in the help"

for shell in "zsh -n $folder/_grainside" "fish --no-execute $folder/grainside.fish"; do
    if command -v "${shell%% *}" >/dev/null 2>&1; then
        $shell || fault "${shell%% *} cannot read its script"
    fi
done
echo "$asked questions to bash, the help of $calls commands, $faults faults"
[ "$faults" -eq 0 ]
