#!/bin/sh
# run.sh TOOL FOLDER [PICTURES]: pages of three dossiers and of all three together, the rule reference and a survey, made by
# TOOL in FOLDER and looked at by other people's tools (check_pages.mjs); then a page that is wrong, which must not pass. With
# PICTURES, screenshots and prints are left there. Needs node, npm, java and chromium (tools/packages.txt, group page).
set -eu
tool=$(realpath "$1")
here=$(cd "$(dirname "$0")" && pwd)
corpus=$here/../../corpus
mkdir -p "$2"
folder=$(cd "$2" && pwd)
pictures=${3:+$(realpath -m "$3")}
# What npm installs stays out of the source tree.
cp "$here/package.json" "$here/package-lock.json" "$here/.npmrc" "$here/check_pages.mjs" "$folder"
(cd "$folder" && npm ci --ignore-scripts --silent)

set -- "$corpus/demo/watch_strap.yaml" "$corpus/dossiers/velmora_crossbody.yaml" "$corpus/dossiers/marisma_shopper.yaml"
"$tool" report --into "$folder/pages" "$@"
"$tool" report --out "$folder/pages/set.html" "$@"
"$tool" rules reference --out "$folder/pages/rules.html"
"$tool" survey --on 2026-11-26 --out "$folder/pages/survey.html" "$corpus/survey/demo.jsonl"
cd "$folder"
node check_pages.mjs ${pictures:+--pictures "$pictures"} pages/watch_strap.html pages/velmora_crossbody.html \
    pages/marisma_shopper.html pages/set.html pages/rules.html pages/survey.html

cat >wrong.html <<'END'
<!DOCTYPE html><html><head><title></title></head><body style="width:500px;color:#aaa"><p>pale<img src="nowhere.png"><b>
<script>console.log(1)</script></body></html>
END
if node check_pages.mjs wrong.html >wrong.log 2>&1; then
    echo "a page that is wrong passed" >&2
    exit 1
fi
for found in "Nu HTML checker" image-alt color-contrast "fetches " "holds a script" "pixels wide"; do
    grep -q "$found" wrong.log || { echo "not found in a page that is wrong: $found" >&2; exit 1; }
done
echo "a page that is wrong is refused"
