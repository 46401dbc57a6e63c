"""Works out from the cut pieces what machines are set to, with nothing of Fellwork's own.

Reads the cut pieces of some sizes, as they lie before the wash, and the answers of
`fellwork sew STYLE --size S --json`, one a size, in the same order. From the pieces alone it measures the
height of the band, the depth of the hem, the width of the belt loops, the lengths of seams, what one side of a
seam is cut longer than the other, and the chart before the wash, and compares each with what the order says.
Prints how many figures agreed as JSON; every disagreement is a line on standard error and makes the exit
code 1.

    python3 machine_settings.py cut.json 28x30.json 32x32.json ...
"""

import json
import sys

import numpy as np

AGREE_MM = 0.1

# Taken up by the thickness of the cloth at each of the two turns of a hem (common practice, as the
# allowance of the hem says on the pattern).
CLOTH_TURN_MM = 1.5


def length(points):
    return float(np.hypot(*np.diff(np.asarray(points, float), axis=0).T).sum())


def apart(line, other):
    """How far the middle of a line lies from another, square to it."""
    line, other = np.asarray(line, float), np.asarray(other, float)
    along = line[-1] - line[0]
    along /= np.hypot(*along)
    to = other.mean(axis=0) - line.mean(axis=0)
    return abs(float(along[0] * to[1] - along[1] * to[0]))


class Size:
    def __init__(self, cut, order):
        self.name = cut["size"]
        self.pieces = {}
        for piece in cut["pieces"]:
            self.pieces.setdefault(piece["code"], piece)
        self.order = order
        self.checked = 0
        self.wrong = []

    def edge(self, piece, name):
        edges = self.pieces[piece]["edges"]
        return next(edge for edge in edges if edge["name"] == name)

    def sewn(self, piece, *names):
        return sum(length(self.edge(piece, name)["sewn"]) for name in names)

    def whole(self, *pieces_and_edge):
        *pieces, edge = pieces_and_edge
        return sum(self.sewn(piece, edge) for piece in pieces)

    def agrees(self, what, ours, theirs):
        self.checked += 1
        if theirs is None or abs(ours - theirs) > AGREE_MM:
            self.wrong.append(f"{self.name} {what}: {ours:.3f} mm from the pieces, {theirs} stated")

    def operations(self, seam):
        for operation in self.order["operations"]:
            if any(row["from"] == seam for row in operation["rows"]):
                yield operation

    def attachment(self, seam, word):
        for operation in self.operations(seam):
            found = operation["attachment"]
            if found and word in found["name"]:
                return found["set_to"]
        return None

    def eased(self, seam):
        return next((o["eased"] for o in self.operations(seam) if o["eased"] is not None), None)

    def measure(self, key):
        return next((m["sewn"] for m in self.order["measures"] if m["key"] == key), None)


def band_parts(size):
    return [code for code in size.pieces if code == "band" or code.startswith("band_")]


def check(size):
    bands = band_parts(size)
    heights = [
        apart(size.edge(band, "join")["sewn"], size.edge(band, "inner")["sewn"]) / 2 for band in bands
    ]
    size.agrees("band folder", heights[0], size.attachment("band", "band folder"))
    size.agrees("height of the band", heights[0], size.measure("band_height"))

    depth = (size.edge("front", "hem")["allowance"] - 2 * CLOTH_TURN_MM) / 2
    size.agrees("hem folder", depth, size.attachment("hem", "hem folder"))
    size.agrees("depth of the hem", depth, size.measure("hem_depth"))

    folds = [line["line"] for line in size.pieces["loop_strip"]["inner"]]
    width = apart(folds[0], folds[-1])
    size.agrees("loop folder", width, size.attachment("loop_edge", "strip folder"))

    front, back = size.sewn("front", "inseam"), size.sewn("back", "inseam")
    size.agrees("stretch of the inseam", front - back, size.eased("inseam"))
    size.agrees("inseam", front, size.measure("inseam"))
    size.agrees("hem", size.sewn("front", "hem") + size.sewn("back", "hem"), size.measure("hem"))
    size.agrees(
        "front rise",
        size.sewn("front", "fly", "crotch") + heights[0],
        size.measure("front_rise"),
    )
    size.agrees(
        "back rise",
        size.sewn("back", "seat") + size.sewn("yoke", "centre") + heights[0],
        size.measure("back_rise"),
    )
    # Cut in two, the waist is the two joins together.
    size.agrees("waist", sum(size.sewn(band, "join") for band in bands), size.measure("waist"))

    # A row on the seam line is as long as the edge of the ply that lies on top, on both legs.
    on_top = 2 * size.whole("front", "pocket_facing", "side")
    for operation in size.operations("outseam"):
        for row in operation["rows"]:
            if row["from"] == "outseam" and row["offset"] == 0:
                size.agrees(f"outseam, row {row['row']}", on_top, row["sewn"])
    return size


def main():
    with open(sys.argv[1]) as file:
        cuts = json.load(file)["sizes"]
    orders = []
    for name in sys.argv[2:]:
        with open(name) as file:
            orders.append(json.load(file))
    sizes = [check(Size(cut, order)) for cut, order in zip(cuts, orders, strict=True)]
    wrong = [line for size in sizes for line in size.wrong]
    print("\n".join(wrong), file=sys.stderr)
    print(json.dumps({"agreed": sum(s.checked for s in sizes) - len(wrong), "sizes": len(sizes)}))
    sys.exit(1 if wrong else 0)


main()
