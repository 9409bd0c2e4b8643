"""Writes the listings of the labelled files in CORPUS as feeds: corpus_feed.py FOLDER CORPUS

Into FOLDER: feed.jsonl (as the corpus has them), escaped.json (an array, indented, every character beyond ASCII
escaped), plain.txt and heading.md (texts of all descriptions and names, with a byte order mark and CR LF).
"""

import json
import pathlib
import sys


def main() -> int:
    folder = pathlib.Path(sys.argv[1])
    listings = []
    for path in sorted(pathlib.Path(sys.argv[2]).glob("*.jsonl")):
        with open(path, encoding="utf-8") as file:
            listings += [json.loads(line)["listing"] for line in file if line.strip()]
    with open(folder / "feed.jsonl", "w", encoding="utf-8") as file:
        file.writelines(json.dumps(listing, ensure_ascii=False) + "\n" for listing in listings)
    (folder / "escaped.json").write_text(json.dumps(listings, indent=1), encoding="ascii")
    texts = "\r\n\r\n".join(str(listing.get("description", "")) for listing in listings)
    (folder / "plain.txt").write_bytes(b"\xef\xbb\xbf" + texts.encode("utf-8"))
    heading = "# " + str(listings[0].get("name", "Bag")) + "\r\n\r\n" + texts
    (folder / "heading.md").write_bytes(heading.encode("utf-8"))
    print(len(listings), "listings")
    return 0


if __name__ == "__main__":
    sys.exit(main())
