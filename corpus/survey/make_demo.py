"""make_demo.py > demo.jsonl: 240 listings of six invented sellers, for the survey's example and its tests.

Each seller has a few sentences of its own and a share of listings into which one of its doubtful sentences goes; a
fixed seed makes the file the same everywhere. Nothing in it is real.
"""
import json
import random

GOODS = [("tote", "Tote"), ("belt", "Belt"), ("crossbody bag", "Crossbody"), ("wallet", "Wallet"),
         ("backpack", "Backpack"), ("key pouch", "Key pouch")]
COLOURS = ["tan", "black", "dark brown", "oxblood", "navy", "olive"]
PLAIN = ["Cowhide leather outside, cotton lining.", "Vegetable-tanned cowhide, edges left raw.",
         "Outer: goat leather. Lining: polyester.", "Cotton canvas body with cowhide leather trim."]
# Seller, how many listings, in how many of ten a doubtful sentence stands, and which.
SELLERS = [
    ("Ondemar Workshop", 40, 1, ["Durable."]),
    ("Velmora Outlet", 60, 7, ["Genuine PU leather.", "Waterproof.", "Vegan leather, eco-friendly."]),
    ("Casa Tarviso", 50, 3, ["Eco-friendly.", "Full grain bonded leather.", "Waterproof."]),
    ("Harrow & Penn", 48, 2, ["Premium leather.", "Scratch-resistant."]),
    ("Marisma Direct", 30, 5, ["Genuine PU leather.", "Solid brass plated buckle."]),
    ("Lindqvarn Loft", 12, 3, ["Nickel-free hardware.", "Vegan leather, eco-friendly."]),
]

rng = random.Random(20261126)
for seller, count, tenths, doubtful in SELLERS:
    code = "".join(word[0] for word in seller.split() if word[0].isalpha()).lower()
    for number in range(1, count + 1):
        category, title = rng.choice(GOODS)
        text = rng.choice(PLAIN)
        if rng.randrange(10) < tenths:
            text += " " + rng.choice(doubtful)
        print(json.dumps({"sku": f"{code}-{number:03}", "name": f"{title}, {rng.choice(COLOURS)}", "description": text,
                          "category": category, "offers": {"seller": {"name": seller}, "eligibleRegion": rng.choice(["US", "US", "GB"])}}))
