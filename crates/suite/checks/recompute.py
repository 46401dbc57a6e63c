"""Computes the pattern again from its points, with nothing of Fellwork's own.

Reads the answers of `fellwork pieces STYLE --size S --json`, one file a size, and recomputes with
numpy and shapely: lengths of edges, areas, every measure from its definition, the seam walks,
the corners that have to be square, the crotch line through the inseam, and the cut outlines.
Prints the largest differences as JSON; every disagreement is a line on standard error and makes
the exit code 1.

    python3 recompute.py 28x30.json 28x32.json ...
"""

import json
import sys
from itertools import pairwise

import numpy as np
import shapely
from shapely.geometry import LineString, Point, Polygon

AGREE_MM = 0.05  # between the tool's numbers and ours
SOLVED_MM = 0.01  # between the tool's pattern and its chart
WALK_MM = 0.1  # left of a seam after its declared ease
SQUARE_DEG = 0.2
CROTCH_DEG = 1.0
# An outline moved by a thousandth of a millimetre all round changes its area by this times its length.
AREA_MM = 0.001

# Where two edges of a piece have to meet at a right angle: the edge that arrives, the edge that leaves.
CORNERS = [
    ("front", "waist", "fly"),
    ("yoke", "top", "centre"),
    ("front", "inseam", "hem"),
    ("front", "hem", "side"),
    ("back", "inseam", "hem"),
    ("back", "hem", "side"),
    ("band", "end_left", "join"),
    ("band", "overlap", "end_right"),
    ("band", "end_right", "inner"),
    ("band", "inner", "end_left"),
]


def length(points):
    return float(np.hypot(*np.diff(points, axis=0).T).sum())


def tangent(points, at_end=False):
    """Unit direction at an end of a dense line: a cubic through its first 4 mm, differentiated."""
    run = points[::-1] if at_end else points
    along = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(run, axis=0).T))])
    near = max(4, int(np.searchsorted(along, 4.0)))
    degree = min(3, len(run[:near]) - 1)
    slope = np.array([np.polyfit(along[:near], run[:near, k], degree)[-2] for k in (0, 1)])
    slope /= np.hypot(*slope)
    return -slope if at_end else slope


def between_deg(a, b):
    return abs(np.degrees(np.arctan2(a[0] * b[1] - a[1] * b[0], a @ b)))


class Size:
    """One size: its pieces by id, with edges as arrays of points."""

    def __init__(self, answer, report):
        self.answer, self.report = answer, report
        self.tag = answer["size"]
        self.pieces = {piece["id"]: piece for piece in answer["pieces"]}
        self.edges = {
            (piece["id"], edge["name"]): np.array(edge["points"], dtype=float)
            for piece in answer["pieces"]
            for edge in piece["edges"]
        }

    def agree(self, kind, what, ours, theirs, within=AGREE_MM):
        self.report.compare(kind, f"{self.tag} {what}", ours, theirs, within)

    def run(self, edges):
        return sum(length(self.edges[tuple(edge)]) for edge in edges)

    def angle(self, piece, arrives, leaves):
        """The angle inside a piece where one edge ends and the next begins."""
        a = tangent(self.edges[piece, arrives], at_end=True)
        return between_deg(-a, tangent(self.edges[piece, leaves]))

    def check(self):
        for piece in self.pieces.values():
            self.outline(piece)
        for measure in self.answer["measures"]:
            self.measure(measure)
        for join in self.answer["joins"]:
            self.join(join)
        for piece, arrives, leaves in CORNERS:
            angle = self.angle(piece, arrives, leaves)
            self.agree("corner_deg", f"{piece} {arrives}/{leaves}", angle, 90.0, SQUARE_DEG)
        jump = self.angle("front", "crotch", "inseam") + self.angle("back", "seat", "inseam") - 180
        self.agree("crotch_jump_deg", "crotch line at the inseam", jump, 0.0, CROTCH_DEG)

    def outline(self, piece):
        name = piece["id"]
        edges = [self.edges[name, edge["name"]] for edge in piece["edges"]]
        for edge, points in zip(piece["edges"], edges):
            self.agree("edge_mm", f"{name} {edge['name']}", length(points), edge["length"])
        for before, after in zip(edges, edges[1:] + edges[:1]):
            gap = float(np.hypot(*(after[0] - before[-1])))
            self.agree("closed_mm", f"{name} outline", gap, 0.0, 0.001)
        around = sum(length(points) for points in edges)
        self.agree("perimeter_mm", name, around, piece["perimeter"])
        finished = Polygon(np.concatenate([points[:-1] for points in edges]))
        self.report.expect(finished.is_valid, f"{self.tag} {name}: outline crosses itself")
        self.report.expect(finished.exterior.is_ccw, f"{self.tag} {name}: outline runs clockwise")
        self.agree("area_mm2", name, finished.area, piece["area"], AREA_MM * around)
        self.report.expect(len(piece["cut_pieces"]) > 0, f"{self.tag} {name}: no cut piece")
        for cut in piece["cut_pieces"]:
            self.cut(piece, cut, finished)

    def cut(self, piece, cut, finished):
        name = f"{piece['id']} cut {cut['copies']}"
        outline = Polygon(cut["outline"])
        self.report.expect(outline.is_valid, f"{self.tag} {name}: outline crosses itself")
        self.agree("cut_area_mm2", name, outline.area, cut["area"], AREA_MM * outline.length)
        # Along an edge without allowance both lines are one, apart from the chords of curves.
        inside = outline.buffer(AGREE_MM).contains(finished)
        self.report.expect(inside, f"{self.tag} {name}: finished outline is not inside")
        for edge, allowance in cut["allowances"].items():
            for off in self.allowances(piece["id"], edge, allowance, outline):
                self.agree("allowance_mm", f"{name} {edge}", off, allowance)

    def allowances(self, piece, edge, allowance, outline):
        """Distances to the cut line, square from the middle part of an edge, where no mitre reaches."""
        points = self.edges[piece, edge]
        along = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(points, axis=0).T))])
        for at in np.linspace(0.15, 0.85, 15) * along[-1]:
            k = int(np.clip(np.searchsorted(along, at), 1, len(points) - 1))
            a, b = points[k - 1], points[k]
            middle = (a + b) / 2
            direction = (b - a) / np.hypot(*(b - a))
            outward = np.array([direction[1], -direction[0]])
            # From a little inside, so that a cut line on the edge itself is met too.
            ray = LineString([middle - outward * 0.2, middle + outward * (allowance + 5.0)])
            met = ray.intersection(outline.exterior)
            if met.is_empty:
                yield float("inf")
                continue
            start = Point(ray.coords[0])
            hits = [start.distance(part) - 0.2 for part in shapely.get_parts(met)]
            yield min(hits, key=lambda hit: abs(hit - allowance))

    def measure(self, measure):
        (how, take), = measure["take"].items()
        ours = getattr(self, how)(take)
        self.agree("measure_mm", measure["key"], ours, measure["pattern"])
        if measure["chart"] is not None:
            self.agree("chart_mm", measure["key"], ours, measure["chart"])
            self.agree("solved_mm", measure["key"], measure["pattern"], measure["chart"], SOLVED_MM)

    def along(self, runs):
        return sum(run["times"] * self.run(run["edges"]) for run in runs)

    def across(self, take):
        return take["times"] * sum(self.extent(panel, take["y"]) for panel in take["panels"])

    def extent(self, panel, y):
        crossings = []
        for (piece, _), points in self.edges.items():
            if piece not in panel:
                continue
            for (x0, y0), (x1, y1) in pairwise(points):
                if min(y0, y1) <= y <= max(y0, y1) and y0 != y1:
                    crossings.append(x0 + (x1 - x0) * (y - y0) / (y1 - y0))
        return max(crossings) - min(crossings)

    def between(self, take):
        points = self.pieces[take["piece"]]["points"]
        return float(np.hypot(*(np.array(points[take["from"]]) - np.array(points[take["to"]]))))

    def join(self, join):
        a, b = (side["times"] * self.run(side["edges"]) for side in (join["a"], join["b"]))
        self.agree("side_mm", f"{join['name']} a", a, join["a"]["length"])
        self.agree("side_mm", f"{join['name']} b", b, join["b"]["length"])
        self.agree("walk_mm", join["name"], a - b - join["ease"], 0.0, WALK_MM)


class Report:
    """What was compared, how far apart it was at most, and what disagrees."""

    def __init__(self):
        self.worst, self.compared, self.wrong = {}, 0, []

    def compare(self, kind, what, ours, theirs, within):
        off = abs(ours - theirs)
        self.compared += 1
        if not off <= self.worst.get(kind, (-1.0, ""))[0]:
            self.worst[kind] = (off, what)
        if not off <= within:
            self.wrong.append(f"{kind} {what}: {ours:.4f} here, {theirs:.4f} there, {within} allowed")

    def expect(self, holds, words):
        self.compared += 1
        if not holds:
            self.wrong.append(words)


def main(files):
    report = Report()
    for file in files:
        with open(file, encoding="utf-8") as text:
            Size(json.load(text), report).check()
    worst = {kind: {"off": round(off, 5), "at": at} for kind, (off, at) in report.worst.items()}
    summary = {"sizes": len(files), "compared": report.compared, "wrong": len(report.wrong), "worst": worst}
    print(json.dumps(summary, indent=1))
    for line in report.wrong[:40]:
        print(line, file=sys.stderr)
    return 1 if report.wrong or not files else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
