#!/usr/bin/env python3
"""Writes an invented catalog as JSON Lines, the same for the same number: make_catalog.py LISTINGS > catalog.jsonl

It has what catalogs have: listings without sku, "@graph" lines with several products, blank lines, ends of lines from two
systems, and here and there a line that was cut off, is no object, holds no text or is not UTF-8.
"""

import argparse
import json
import random
import sys

ARTICLES = ["tote", "belt", "wallet", "key pouch", "satchel", "watch strap", "card holder", "crossbody bag"]
TEXTS = [
    "Genuine PU leather {article} with a cotton lining.",
    "Full grain calf {article}, solid brass buckle.",
    "Eco-friendly {article} in bonded leather (80% leather fibres, 20% latex).",
    "{article} in split suede, lining: polyester. Waterproof.",
    "Vegan leather {article}; zip by hand, 1.4 mm.",
    "Nappa {article}, vegetable-tanned, made in Portugal.",
    "Croc-embossed calf leather {article}. Hardware: nickel-free zinc alloy.",
    "Premium {article} of cork, caf\u00e9 brown, 80 % cotton and 30 % linen lining.",
]
BROKEN = [b'{"sku":"cut-off","name":"Calf be', b'["no object"]', b'{"sku":"no-text"}', b'{"name":"Calf \xff belt"}']


def product(dice: random.Random, number: int) -> dict:
    article = dice.choice(ARTICLES)
    listing = {"@type": "Product", "name": dice.choice(TEXTS).format(article=article)}
    if number % 3:
        listing["sku"] = f"INV-{number:07d}"
    if dice.random() < 0.5:
        listing["description"] = " ".join(dice.choice(TEXTS).format(article=article) for _ in range(dice.randint(1, 6)))
    if dice.random() < 0.2:
        listing["offers"] = {"eligibleRegion": dice.choice(["US", "IT", "GB"])}
    return listing


def lines(listings: int):
    dice = random.Random(listings)
    number = 0
    while number < listings:
        chance = dice.random()
        if chance < 0.01:
            yield dice.choice(BROKEN)
        elif chance < 0.03:
            yield b" " * dice.randint(0, 3)
        elif chance < 0.06:
            count = min(dice.randint(2, 5), listings - number)
            nodes = [product(dice, number + at) for at in range(count)] + [{"@type": "Organization", "name": "Ondemar"}]
            number += count
            key = "@graph" if dice.random() < 0.5 else "\\u0040graph"
            yield b'{"' + key.encode() + b'":' + json.dumps(nodes).encode() + b"}"
        else:
            yield json.dumps(product(dice, number), ensure_ascii=dice.random() < 0.5).encode()
            number += 1


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("listings", type=int)
    count = parser.parse_args().listings
    dice = random.Random(count + 1)
    for line in lines(count):
        sys.stdout.buffer.write(line + (b"\r\n" if dice.random() < 0.3 else b"\n"))
    sys.stdout.buffer.flush()
    return 0


if __name__ == "__main__":
    sys.exit(main())
