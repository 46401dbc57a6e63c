"""Checks cut pieces with shapely, which knows nothing of how they were made.

    allowances.py CUT.json

The file is what the tests of this room write of every cut piece. Every length to 0.05 mm:

* outlines are valid, the finished piece lies inside the cut one, areas agree;
* along every edge, away from the corners, the allowance has its width: measured from the sewn line
  outward, from the cut line inward, and as an area;
* at every corner the allowance, folded as it is sewn, lies within the piece it comes to lie on;
* along the cloth's own edge the cut line is one straight line;
* notches lie on the cut line, drill holes inside the finished piece.
"""

import json
import math
import sys

from shapely.affinity import affine_transform
from shapely.geometry import LineString, Point, Polygon, box
from shapely.ops import substring
from shapely.validation import explain_validity

NEAR = 0.05


def unit(v):
    n = math.hypot(*v)
    return (v[0] / n, v[1] / n)


def frame(edge, at_end):
    """Corner, direction beyond it along the edge, direction outward (outlines run anticlockwise)."""
    line = edge["sewn"]
    if at_end:
        a, b = line[-2], line[-1]
        d = unit((b[0] - a[0], b[1] - a[1]))
        return b, d, (d[1], -d[0])
    a, b = line[1], line[0]
    d = unit((b[0] - a[0], b[1] - a[1]))
    return b, d, (-d[1], d[0])


def to_local(polygon, f):
    """The polygon with the corner at the origin, x beyond it along the edge, y outward."""
    (px, py), d, n = f
    return affine_transform(
        polygon,
        [d[0], d[1], n[0], n[1], -(d[0] * px + d[1] * py), -(n[0] * px + n[1] * py)],
    )


def upside_down(shape, about=0.0):
    """Mirrored over the line y = about."""
    return affine_transform(shape, [1, 0, 0, -1, 0, 2 * about])


class Tally:
    def __init__(self):
        self.worst = {}
        self.count = {}
        self.wrong = []

    def note(self, what, who, off, limit=NEAR):
        self.count[what] = self.count.get(what, 0) + 1
        if off > self.worst.get(what, (-1.0, ""))[0]:
            self.worst[what] = (off, who)
        if not off <= limit:
            self.wrong.append(f"{what}: {who}: {off:.4f} mm")

    def say(self):
        for what, (off, who) in sorted(self.worst.items()):
            print(f"{what}: {self.count[what]} checked, worst {off:.4f} mm ({who})")
        for line in self.wrong:
            print("WRONG", line)


def at_a_point(points, line, along):
    """Whether a place along the sewn line is a corner within the edge; the cut line is mitred there."""
    p = line.interpolate(along)
    for a, b, c in zip(points, points[1:], points[2:]):
        if math.dist(b, (p.x, p.y)) < 1e-3:
            u, v = unit((b[0] - a[0], b[1] - a[1])), unit((c[0] - b[0], c[1] - b[1]))
            return abs(math.atan2(u[0] * v[1] - u[1] * v[0], u[0] * v[0] + u[1] * v[1])) > 0.1
    return False


def check_edge(tally, who, piece, k, cut, sewn):
    edges = piece["edges"]
    edge = edges[k]
    wanted = edge["allowance"]
    beside = [edges[k - 1]["allowance"], edges[(k + 1) % len(edges)]["allowance"]]
    clear = 1.6 * max([wanted, *beside]) + 2.0
    line = LineString(edge["sewn"])
    if line.length <= 2.5 * clear:
        return
    on_cloth = piece["cloth_edge"] if (piece["cloth_edge"] or {}).get("edge") == edge["name"] else None
    narrowest = on_cloth["narrowest"] if on_cloth else wanted
    widest = on_cloth["widest"] if on_cloth else wanted
    middle = substring(line, clear, line.length - clear)
    # From the sewn line outward.
    steps = int(middle.length // 2) + 1
    for s in range(steps + 1):
        p = middle.interpolate(s / steps, normalized=True)
        d = cut.exterior.distance(p)
        tally.note("width from the sewn line", who, max(narrowest - d, d - widest))
    # From the edge's own cut line inward.
    if len(edge["cut"]) >= 2 and not on_cloth:
        own = LineString(edge["cut"])
        for s in range(int(own.length // 2) + 1):
            p = own.interpolate(2.0 * s)
            along = line.project(p)
            if clear < along < line.length - clear and not at_a_point(edge["sewn"], line, along):
                tally.note("width from the cut line", who, abs(line.distance(p) - wanted))
    # As an area: what lies between, square to the middle of the edge.
    if wanted > 0 and not on_cloth:
        strip = middle.buffer(-wanted, single_sided=True, join_style="mitre")
        probe = middle.buffer(-(wanted + 1.0), single_sided=True, join_style="mitre")
        found = probe.intersection(cut.difference(sewn)).area
        # The probe reaches a millimetre further than the allowance, so what is too wide is seen too.
        tally.note("width as an area", who, abs(found - strip.area) / middle.length)


BESIDE = {
    ("back", "top"): ("yoke", "lower", True, False),
    ("yoke", "lower"): ("back", "top", True, False),
    ("front", "inseam"): ("back", "inseam", False, False),
    ("back", "inseam"): ("front", "inseam", False, False),
    ("back", "seat"): ("back", "seat", False, True),
    ("yoke", "centre"): ("yoke", "centre", False, True),
    ("front", "crotch"): ("front", "crotch", False, True),
    ("pocket_facing", "side"): ("yoke", "side", False, False),
    ("yoke", "side"): ("pocket_facing", "side", False, False),
}
DRAWN_LEFT = {"front", "pocket_facing", "pocket_bag", "coin_pocket"}


def kind_of(piece):
    return piece["code"].removesuffix("_mirrored")


def other_piece(pieces, piece, other, across):
    """The copy of another piece on the same side of the wearer, or on the other side."""
    mirrored = piece["on"] == "Mirrored"
    left = (kind_of(piece) in DRAWN_LEFT) != mirrored
    wanted_left = left != across
    for candidate in pieces:
        if kind_of(candidate) != other:
            continue
        for copy in {"Both": [False, True], "AsDrawn": [False], "Mirrored": [True]}[candidate["on"]]:
            if ((other in DRAWN_LEFT) != copy) == wanted_left:
                return candidate
    return None


def check_corner(tally, who, piece, corner, pieces):
    if corner["shaped"] is None or corner["rule"] in ("bare", "hem-on-cloth-edge"):
        return
    edge = next(e for e in piece["edges"] if e["name"] == corner["shaped"])
    at_end = corner["shaped"] == corner["before"]
    f = frame(edge, at_end)
    cut = Polygon(piece["cut"])
    own = to_local(cut, f)
    deep = edge["allowance"]
    if deep <= 0:
        return
    onto = own
    if edge["lie"] in ("felled", "across"):
        name, beside_edge, turned, across = BESIDE[(kind_of(piece), corner["shaped"])]
        other = other_piece(pieces, piece, name, across)
        there = next(e for e in other["edges"] if e["name"] == beside_edge)
        onto = to_local(Polygon(other["cut"]), frame(there, at_end != turned))
    # The end of the allowance: what of the cut piece lies beyond the seam line near the corner.
    near = box(-6.0, 0.0, 60.0, deep + 0.02).intersection(own)
    parts = [near] if near.geom_type == "Polygon" else list(near.geoms)
    parts = [p for p in parts if p.geom_type == "Polygon" and p.distance(Point(0, 0)) < 0.1]
    for part in parts:
        fold = edge["fold"]
        layers = [part]
        if fold is not None:
            inner = part.intersection(box(-6.0, 0.0, 60.0, fold))
            outer = part.intersection(box(-6.0, fold, 60.0, deep + 0.02))
            layers = [inner, upside_down(outer, fold)]
        for layer in layers:
            lying = upside_down(layer)
            out = lying.difference(onto.buffer(NEAR, join_style="mitre"))
            # Along the fold itself the curve of the seam leaves its straight line.
            out = out.intersection(box(-6.0, -200.0, 60.0, -0.3))
            far = 0.0
            for shape in getattr(out, "geoms", [out]):
                if shape.geom_type == "Polygon" and shape.area > 1e-3:
                    far = max([far, *(onto.distance(Point(c)) for c in shape.exterior.coords)])
            tally.note(f"corner {corner['kind']} ({corner['rule']})", who, far, NEAR * 1.5)


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        data = json.load(file)
    tally = Tally()
    pieces_seen = 0
    for size in data["sizes"]:
        for piece in size["pieces"]:
            pieces_seen += 1
            who = f"{size['size']} {piece['code']} {piece['on']}"
            cut, sewn = Polygon(piece["cut"]), Polygon(piece["sewn"])
            outlines = (("cut", cut), ("sewn", sewn))
            crossed = [(name, shape) for name, shape in outlines if not shape.is_valid]
            for name, shape in crossed:
                tally.wrong.append(f"{who}: the {name} outline: {explain_validity(shape)}")
            if crossed:
                continue
            outside = sewn.difference(cut.buffer(1e-6)).area
            tally.note("finished piece inside the cut one, mm2", who, outside, 1e-3)
            tally.note("area, mm2", who, abs(cut.area - piece["area"]), 1e-3)
            for k, edge in enumerate(piece["edges"]):
                check_edge(tally, f"{who} {edge['name']}", piece, k, cut, sewn)
            for corner in piece["corners"]:
                label = f"{who} {corner['before']}/{corner['after']}"
                check_corner(tally, label, piece, corner, size["pieces"])
            if piece["cloth_edge"]:
                edge = piece["cloth_edge"]
                straight = LineString([edge["from"], edge["to"]])
                off = straight.difference(cut.exterior.buffer(1e-4)).length
                tally.note("cloth's own edge off the cut line", who, off, 1e-3)
                beyond = max(x for x, _ in piece["cut"]) - edge["from"][0]
                tally.note("beyond the cloth's own edge", who, beyond, 1e-6)
            for notch in piece["notches"]:
                tally.note("notch off the cut line", who, cut.exterior.distance(Point(notch["at"])))
            for drill in piece["drills"]:
                if not sewn.contains(Point(drill["at"])):
                    tally.wrong.append(f"{who}: drill hole {drill['name']} lies outside")
    tally.say()
    print(f"{pieces_seen} pieces, {len(tally.wrong)} wrong")
    return 1 if tally.wrong else 0


if __name__ == "__main__":
    sys.exit(main())
