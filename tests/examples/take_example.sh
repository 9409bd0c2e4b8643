#!/bin/sh
# take_example.sh HEADER PROGRAM PRINTS INCLUDE...: writes the example in HEADER's first comment as a program, and what it
# prints. Lines of code have five blanks behind the slashes; `// prints: X` among them is a line of output. Fails where
# there is no code or nothing is printed.
set -eu
header=$1
program=$2
prints=$3
shift 3
{
    for name in "$@"; do echo "#include <$name>"; done
    echo 'int main(void) {'
    sed -n -e '/^#ifndef/q' -e "s|^//     ||p" "$header"
    echo '    return 0;'
    echo '}'
} >"$program"
sed -n -e '/^#ifndef/q' -e 's|^//     *// prints: ||p' "$header" >"$prints"
if [ ! -s "$prints" ]; then
    echo "$header: its example prints nothing" >&2
    exit 1
fi
