#!/bin/sh
# run.sh TOOL FOLDER [PICTURES]: the page of `TOOL desk` in a headless browser (desk_page.mjs), in FOLDER. What npm installs is that
# of tests/page; where FOLDER's neighbour `page` has it, it is taken from there. With PICTURES, screenshots are left there.
set -eu
tool=$(realpath "$1")
here=$(cd "$(dirname "$0")" && pwd)
sources=$(cd "$here/../.." && pwd)
mkdir -p "$2"
folder=$(cd "$2" && pwd)
pictures=${3:+$(realpath -m "$3")}
# What npm installs stays out of the source tree.
cp "$here"/*.mjs "$here/../page/package.json" "$here/../page/package-lock.json" "$here/../page/.npmrc" "$folder"
cd "$folder"
if [ -d ../page/node_modules ]; then
    ln -sfn ../page/node_modules node_modules
else
    npm ci --ignore-scripts --silent
fi
# The page's modules, beside a package.json that says that they are modules.
rm -rf modules
mkdir modules
cp "$sources"/tools/desk/page/*.js modules
node check_parts.mjs modules
exec node desk_page.mjs ${pictures:+--pictures "$pictures"} "$tool" "$folder/samples" "$sources"
