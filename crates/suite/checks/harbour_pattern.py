"""Writes the invented pattern "Harbour" as DXF, apart from Fellwork: with ezdxf, in inches, its names in Portuguese.

It stands for the file of a maker who drew jeans elsewhere. Curves are points of cubic Béziers, 40 to a curve.
Printed: the length of every edge in millimetres, as numpy adds it up.

    python harbour_pattern.py sewn OUT.dxf      sewn line on layer 14, cut line on layer 1
    python harbour_pattern.py cut OUT.dxf       the cut line only, 3/8 in beyond the sewn line, hem 1 1/4 in

Layers by the practice of ASTM D6673: 1 cut line and words of the piece, 2 turn points, 4 notches, 7 grain,
14 sewn line, 15 words of the style.
"""

import json
import sys

import ezdxf
import numpy as np
from shapely.geometry import Polygon

INCH = 25.4


def curve(p0, p1, p2, p3, n=40):
    t = np.linspace(0.0, 1.0, n + 1)[:, None]
    p0, p1, p2, p3 = map(np.asarray, (p0, p1, p2, p3))
    return (1 - t) ** 3 * p0 + 3 * (1 - t) ** 2 * t * p1 + 3 * (1 - t) * t**2 * p2 + t**3 * p3


def line(*points):
    return np.array(points, dtype=float)


def pieces():
    """Each piece: its name, its grain, its notches, and its edges in order, anticlockwise, in inches."""
    front = [
        ("fly", np.vstack([line((0.5, 8.6), (0.15, 2.6)), curve((0.15, 2.6), (0.02, 0.9), (-0.9, 0.25), (-2.1, 0.0))[1:]])),
        ("inseam", np.vstack([curve((-2.1, 0.0), (-1.5, -4.0), (-0.25, -9.5), (-0.05, -14.0)), line((-0.05, -14.0), (0.2, -31.6))[1:]])),
        ("hem", line((0.2, -31.6), (8.0, -31.6))),
        ("side", np.vstack([line((8.0, -31.6), (8.25, -14.0)), curve((8.25, -14.0), (8.4, -7.0), (10.1, -1.0), (10.1, 3.1))[1:], curve((10.1, 3.1), (10.1, 5.4), (9.7, 7.6), (9.2, 9.3))[1:]])),
        ("waist", curve((9.2, 9.3), (6.4, 8.55), (3.4, 8.5), (0.5, 8.6))),
    ]
    back = [
        ("seat", np.vstack([line((1.35, 8.3), (0.0, 3.1)), curve((0.0, 3.1), (-0.5, 1.2), (-1.9, 0.05), (-3.9, -0.35))[1:]])),
        ("inseam", np.vstack([curve((-3.9, -0.35), (-2.6, -4.0), (-0.7, -9.5), (-0.45, -14.0)), line((-0.45, -14.0), (-0.2, -31.6))[1:]])),
        ("hem", line((-0.2, -31.6), (8.8, -31.6))),
        ("side", np.vstack([line((8.8, -31.6), (9.05, -14.0)), curve((9.05, -14.0), (9.2, -7.0), (10.9, -1.0), (10.9, 3.1))[1:], curve((10.9, 3.1), (10.9, 4.9), (10.7, 6.4), (10.35, 7.75))[1:]])),
        ("top", line((10.35, 7.75), (1.35, 8.3))),
    ]
    yoke = [
        ("centre", line((0.0, 2.6), (0.0, 0.0))),
        ("lower", curve((0.0, 0.0), (3.0, 0.0), (6.0, 0.35), (8.95, 1.1))),
        ("side", line((8.95, 1.1), (8.55, 2.68))),
        ("top", curve((8.55, 2.68), (5.8, 2.1), (2.9, 2.6), (0.0, 2.6))),
    ]
    return [
        ("FRENTE", ((4.1, -22.0), (4.1, -4.0)), [("inseam", 0.45), ("side", 0.42)], front),
        ("COSTAS", ((4.3, -22.0), (4.3, -4.0)), [("inseam", 0.45), ("side", 0.43)], back),
        ("PALA", ((4.0, 0.6), (4.0, 1.8)), [], yoke),
    ]


def length(points):
    return float(np.hypot(*np.diff(points, axis=0).T).sum())


def at(points, share):
    steps = np.hypot(*np.diff(points, axis=0).T)
    along = np.concatenate([[0.0], np.cumsum(steps)]) 
    wanted = share * along[-1]
    return tuple(np.interp(wanted, along, points[:, k]) for k in (0, 1))


def cut_line(edges):
    """3/8 in beyond the sewn line, with mitred corners; 1 1/4 in at the hem."""
    ring = np.vstack([points[:-1] for _, points in edges])
    grown = Polygon(ring).buffer(0.375, join_style="mitre", mitre_limit=4.0)
    hem = dict(edges).get("hem")
    if hem is not None:
        # The corners at the hem run on along their side seams to the hem's own allowance.
        low = hem[0][1]
        points = np.array(grown.exterior.coords)[:-1]
        n = len(points)
        moved = points.copy()
        for k in np.flatnonzero(points[:, 1] < low - 0.3):
            above = max((points[k - 1], points[(k + 1) % n]), key=lambda p: p[1])
            along = points[k] - above
            moved[k] = points[k] + along * (low - 1.25 - points[k][1]) / along[1]
        grown = Polygon(moved)
    return np.array(grown.exterior.coords)[:-1][::-1]


def main():
    kind, out = sys.argv[1:]
    doc = ezdxf.new("R12")
    space = doc.modelspace()
    for k, words in enumerate(["Style Name: PORTO", "Units: ENGLISH", "Sample Size: 32"]):
        space.add_text(words, height=0.2, dxfattribs={"layer": "15", "insert": (0, -40 - k)})
    lengths = {}
    for k, (name, grain, notches, edges) in enumerate(pieces()):
        block = doc.blocks.new(f"{name}-32")
        ring = np.vstack([points[:-1] for _, points in edges])
        block.add_polyline2d([tuple(p) for p in cut_line(edges)], close=True, dxfattribs={"layer": "1"})
        if kind == "sewn":
            block.add_polyline2d([tuple(p) for p in ring], close=True, dxfattribs={"layer": "14"})
            for _, points in edges:
                block.add_point(tuple(points[0]), dxfattribs={"layer": "2"})
        for edge, share in notches:
            block.add_point(at(dict(edges)[edge], share), dxfattribs={"layer": "4"})
        block.add_line(*grain, dxfattribs={"layer": "7"})
        middle = ((grain[0][0] + grain[1][0]) / 2, (grain[0][1] + grain[1][1]) / 2)
        for j, words in enumerate([f"Piece Name: {name}", "Size: 32", "Quantity: 1,1"]):
            block.add_text(words, height=0.2, dxfattribs={"layer": "1", "insert": (middle[0], middle[1] - 0.4 * j)})
        space.add_blockref(block.name, (20.0 * k, 0.0), dxfattribs={"layer": "1"})
        lengths[name] = {edge: round(length(points) * INCH, 4) for edge, points in edges}
    doc.saveas(out)
    print(json.dumps(lengths, indent=1))


main()
