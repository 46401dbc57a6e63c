"""Checks a lay against its instance with shapely, in double precision, sharing no code with us.

    layout.py INSTANCE.json LAY.json

Demand, turns, overlap of every two pieces, reaching beyond the strip, and pieces that have to lie on an edge of it. Prints one line and
exits with 1 when anything is wrong.
"""

import json
import sys
from collections import Counter

from shapely import STRtree, affinity, box
from shapely.geometry import Polygon

ALLOWED_SHARE = 1e-6


def main(instance_file, lay_file):
    with open(instance_file, encoding="utf-8") as f:
        instance = json.load(f)
    with open(lay_file, encoding="utf-8") as f:
        lay = json.load(f)
    items = {str(item["id"]): item for item in instance["items"]}
    wrong = []

    laid = Counter(p["id"] for p in lay["placements"])
    for key, item in items.items():
        if laid[key] != item["demand"]:
            wrong.append(f"item {key}: {laid[key]} laid, {item['demand']} wanted")
    wrong += [f"item {key}: not in the instance" for key in laid if key not in items]

    pieces = []
    for p in lay["placements"]:
        item = items[p["id"]]
        if float(p["rotation"]) not in [float(a) for a in item["orientation"]["rotation"]["angles"]]:
            wrong.append(f"item {p['id']}: rotation {p['rotation']} is not allowed")
        polygon = Polygon(item["shape"]["data"])
        polygon = affinity.rotate(polygon, p["rotation"], origin=(0, 0))
        pieces.append(affinity.translate(polygon, p["x"], p["y"]))

    length, height = lay["length"], instance["strip_height"]
    strip = box(0, 0, length, height)
    area = sum(p.area for p in pieces)
    beyond = max(p.difference(strip).area / p.area for p in pieces)
    if beyond > ALLOWED_SHARE:
        wrong.append(f"a piece reaches beyond the strip by {beyond:.2e} of its area")

    worst = 0.0
    tree = STRtree(pieces)
    for i, piece in enumerate(pieces):
        for j in tree.query(piece):
            if j > i:
                other = pieces[j]
                share = piece.intersection(other).area / min(piece.area, other.area)
                worst = max(worst, share)
                if share > ALLOWED_SHARE:
                    wrong.append(f"pieces {i} and {j} overlap by {share:.2e} of the smaller")

    for p, piece in zip(lay["placements"], pieces):
        _, low, _, high = piece.bounds
        if items[p["id"]].get("on_edge") and min(abs(low), abs(height - high)) > 1e-3:
            wrong.append(f"item {p['id']}: it does not lie on the cloth's own edge")

    density = area / (length * height)
    if abs(density - lay["density"]) > 1e-9:
        wrong.append(f"density {lay['density']} said, {density} found")
    print(
        f"length {length:.4f} density {100 * density:.3f} % overlap {worst:.1e} beyond {beyond:.1e}"
        f" pieces {len(pieces)}: {'; '.join(wrong) or 'right'}"
    )
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:3]))
