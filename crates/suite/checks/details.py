"""Computes details of the sewn garment again from the style file, with nothing of Fellwork's own.

Reads the style file itself (TOML, units and all) and the answers of `fellwork pieces STYLE --size S
--json`, one file a size. From what the maker states it works out by trigonometry where the V of the
band's row points and so where the button sits; the lengths of both sides of each back pocket; and
how far the concealed pocket's top edge lies below the band seam against what a belt of the stated
width hides. Every disagreement is a line on standard error and makes the exit code 1.

    python3 details.py style.toml 28x30.json 32x32.json ...
"""

import json
import math
import sys
import tomllib
from fractions import Fraction

import numpy as np
from shapely.geometry import LineString, Point

AGREE_MM = 0.02
AGREE_DEG = 0.01
# Set by hand, an edge may lie an eighth of an inch off (common practice).
PLACED_MM = 3.2
MM = {"mm": 1.0, "cm": 10.0, "in": 25.4}


def value(text):
    """A length in millimetres or an angle in degrees, as the file writes it: "10 1/2 in"."""
    number, _, unit = text.rpartition(" ")
    total = float(sum(Fraction(part) for part in number.split()))
    return total if unit == "deg" else total * MM[unit]


class Style:
    def __init__(self, path):
        with open(path, "rb") as file:
            self.doc = tomllib.load(file)

    def length(self, *keys, default=None):
        at = self.doc
        for key in keys:
            if key not in at:
                return default
            at = at[key]
        return value(at)

    def measure(self, name, size):
        """A measure in a size: base value, its grade with its breaks, and what a length adds."""
        entry = self.doc["chart"][name]
        base = [int(tag) for tag in self.doc["sizes"]["base"].split("x")]
        waist, leg = size
        total = value(entry["value"])
        total += (leg - base[1]) * value(entry.get("per_length", "0 mm"))
        low, high = sorted((base[0], waist))
        for inch in range(low, high):
            grade = value(entry.get("grade", "0 mm"))
            for other in entry.get("breaks", []):
                if inch >= other["above"]:
                    grade = value(other["grade"])
            total += math.copysign(grade, waist - base[0])
        return total


class Judge:
    def __init__(self):
        self.compared, self.worst, self.wrong = 0, {}, 0

    def agree(self, kind, what, ours, theirs, within):
        self.compared += 1
        off = abs(ours - theirs)
        self.worst[kind] = max(self.worst.get(kind, 0.0), off)
        if not off <= within:
            self.say(f"{kind}: {what}: {theirs:.4f} where {ours:.4f} is right")

    def expect(self, holds, words):
        self.compared += 1
        if not holds:
            self.say(words)

    def say(self, words):
        self.wrong += 1
        print(words, file=sys.stderr)


def corner_deg(before, at, after):
    a, b = np.subtract(before, at), np.subtract(after, at)
    return abs(math.degrees(math.atan2(a[0] * b[1] - a[1] * b[0], a @ b)))


def button(style, answer, size, judge):
    """All round: the row along the top stands at its offset below the fold and inside both ends; its
    V opens from the band's end, between the lower row and it, and points to the button."""
    if style.doc.get("band", {}).get("method") != "all-round":
        return
    rows = style.doc["seams"]["band"]["rows"]
    lower, edge = (value(row["offset"]) for row in rows[:2])
    height = style.measure("band_height", size)
    opens = style.length("band", "v_angle", default=64.0)
    band = next(piece for piece in answer["pieces"] if piece["id"] == "band")
    end = band["points"]["end_right"][0]
    half = (height - edge - lower) / 2
    point = (end - edge - half / math.tan(math.radians(opens / 2)), lower + half)
    row = next(r for r in answer["rows"] if r["seam"] == "band" and r["number"] == 2)
    corners = row["corners"]
    judge.agree("v_mm", "x of the V", point[0], corners[-2][0], AGREE_MM)
    judge.agree("v_mm", "y of the V", point[1], corners[-2][1], AGREE_MM)
    judge.agree("v_deg", "angle of the V", opens, corner_deg(*corners[-3:]), AGREE_DEG)
    below = style.length("band", "start_below", default=10.0)
    judge.agree("v_mm", "start below the band", -below, corners[0][1], AGREE_MM)
    set_on = next(f for f in answer["fixings"] if f["kind"] == "button" and f["piece"] == "band")
    judge.agree("button_mm", "button in the V, x", point[0], set_on["at"][0], AGREE_MM)
    judge.agree("button_mm", "button in the V, y", point[1], set_on["at"][1], AGREE_MM)


def back_pocket(style, answer, size, side, judge):
    """Width and foot from the chart and the style; each side as long as stated, one by the drop more."""
    said = style.doc["pockets"]["back"][side]
    piece = next(p for p in answer["pieces"] if p["id"] == f"back_pocket_{side}")
    edges = {edge["name"]: np.array(edge["points"]) for edge in piece["edges"]}
    long = lambda name: float(np.hypot(*(edges[name][-1] - edges[name][0])))
    inner = value(said["side_length"])
    outer = inner + value(said.get("outer_drop", "0 mm"))
    judge.agree("pocket_mm", f"{side} inner side", inner, long("inner"), AGREE_MM)
    judge.agree("pocket_mm", f"{side} outer side", outer, long("outer"), AGREE_MM)
    width = style.measure("back_pocket_width", size)
    judge.agree("pocket_mm", f"{side} width", width, long("top"), AGREE_MM)
    foot = abs(edges["outer"][0][0] - edges["inner"][-1][0])
    judge.agree("pocket_mm", f"{side} foot", value(said["foot_width"]), foot, AGREE_MM)
    lowest = min(points[:, 1].min() for points in edges.values())
    length = style.measure("back_pocket_length", size)
    judge.agree("pocket_mm", f"{side} length", length, -lowest, AGREE_MM)
    # The corners of the foot, from the two triangles of the sides.
    inset = (width - value(said["foot_width"])) / 2
    for name, stated in (("inner", inner), ("outer", outer)):
        points = edges[name]
        ys = (points[0][1], points[-1][1])
        down = math.sqrt(stated**2 - inset**2)
        judge.agree("pocket_mm", f"{side} {name} corner", down, abs(ys[0] - ys[1]), AGREE_MM)


def hidden(style, answer, judge):
    """The concealed pocket runs up to the band seam, so that a belt over the band hides its edge."""
    said = style.doc["pockets"].get("extra")
    if said is None:
        return 0.0
    pieces = {piece["id"]: piece for piece in answer["pieces"]}
    line = next(l for l in pieces["pocket_bag"]["lines"] if l["name"] == "extra_pocket")["points"]
    from_, to = np.array(line[0]), np.array(line[-1])
    judge.agree("extra_mm", "width", value(said["width"]), float(np.hypot(*(to - from_))), AGREE_MM)
    side = (to - from_) / np.hypot(*(to - from_))
    down = np.array([-side[1], side[0]])
    deep = max(abs(float(down @ (np.array(p) - from_))) for p in line)
    judge.agree("extra_mm", "depth", value(said["depth"]), deep, AGREE_MM)
    waists = [
        LineString(edge["points"])
        for piece, names in (("front", ["waist"]), ("pocket_facing", ["waist", "waist_under"]))
        for edge in pieces[piece]["edges"]
        if edge["name"] in names
    ]
    steps = [from_ + (to - from_) * k / 200 for k in range(201)]
    below = max(min(waist.distance(Point(p)) for waist in waists) for p in steps)
    band = next(m for m in answer["measures"] if m["key"] == "band_height")["pattern"]
    belt = style.length("loops", "belt", default=38.0)
    hides = max(0.0, (belt - band) / 2) + PLACED_MM
    found = "sewing::extra-below-band" in answer["findings"]
    judge.expect(found == (below > hides), f"extra pocket: {below:.2f} mm below the band, {hides:.2f} hidden, finding {found}")
    judge.expect(below <= hides, f"extra pocket: its edge lies {below:.2f} mm below the band")
    centre = np.array(pieces["front"]["points"]["waist_centre"])
    nearer = min(float(np.hypot(*(p - centre))) for p in (from_, to))
    # Stated along the band seam, which a straight line cuts short by less than this.
    judge.agree("extra_mm", "from centre front", value(said["from_centre"]), nearer, 1.0)
    return below


def main(style_file, files):
    judge = Judge()
    style = Style(style_file)
    deepest = 0.0
    for file in files:
        with open(file, encoding="utf-8") as opened:
            answer = json.load(opened)
        size = tuple(int(tag) for tag in answer["size"].split("x"))
        button(style, answer, size, judge)
        for side in ("left", "right"):
            back_pocket(style, answer, size, side, judge)
        deepest = max(deepest, hidden(style, answer, judge))
    print(json.dumps({"sizes": len(files), "compared": judge.compared, "worst": judge.worst, "extra_below_mm": deepest}))
    return 1 if judge.wrong else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], sys.argv[2:]))
