#!/bin/sh
# run.sh TOOL FOLDER: TOOL edit, driven in FOLDER by a client of the Language Server Protocol that is not ours
# (drive_server.mjs). Needs node and npm (tools/packages.txt, group page).
set -eu
tool=$(realpath "$1")
here=$(cd "$(dirname "$0")" && pwd)
rules=$(realpath "$here/../../rules")
corpus=$(realpath "$here/../../corpus")
mkdir -p "$2"
# What npm installs stays out of the source tree.
cp "$here/package.json" "$here/package-lock.json" "$here/.npmrc" "$here/drive_server.mjs" "$2"
cd "$2"
[ -d node_modules ] || npm ci --ignore-scripts --silent
node drive_server.mjs "$tool" "$rules" "$corpus"
