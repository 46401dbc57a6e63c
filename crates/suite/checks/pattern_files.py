"""Reads a pattern file with ezdxf and computes its pieces again.

usage: pattern_files.py FILE.dxf OURS.json

The file has to be DXF without anything ezdxf would mend, every piece a block that is inserted once, with one
closed cut line, turn points on vertices, notches on the cut line, and areas and lengths that agree with ours:
OURS.json holds, for each piece, name, size, area and round of the cut line and the length of each sewn edge, in
millimetres, computed from the cut pieces and not from the file. Prints what was compared; ends with 1 and the
reasons when something does not agree.
"""

import json
import math
import sys

import ezdxf

LENGTH_MM = 0.1
# An area may be off by what a hundredth of a millimetre all round makes.
SHIFT_MM = 0.01
LAYERS = {str(n) for n in [*range(1, 16), 80, 81, 82, 83]} - {"12"}


def places(entity):
    """The points of a line or polyline, and whether it is closed."""
    if entity.dxftype() == "LINE":
        return [(p.x, p.y) for p in (entity.dxf.start, entity.dxf.end)], False
    return [(v.dxf.location.x, v.dxf.location.y) for v in entity.vertices], entity.is_closed


def length(points):
    return sum(math.dist(a, b) for a, b in zip(points, points[1:]))


def area(points):
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(points, points[1:] + points[:1])) / 2


def from_side(q, a, b):
    ux, uy = b[0] - a[0], b[1] - a[1]
    square = ux * ux + uy * uy
    t = max(0.0, min(1.0, ((q[0] - a[0]) * ux + (q[1] - a[1]) * uy) / square)) if square else 0.0
    return math.dist(q, (a[0] + t * ux, a[1] + t * uy))


def texts(block, layer):
    return [(t.dxf.text, (t.dxf.insert.x, t.dxf.insert.y)) for t in block.query("TEXT") if t.dxf.layer == layer]


def read_piece(block, wrong):
    """One block as name, size, area, round and edges; what breaks the practice goes into `wrong`."""
    def say(what):
        wrong.append(f"{block.name}: {what}")

    other = {e.dxf.layer for e in block} - LAYERS
    if other:
        say(f"layers {sorted(other)}")
    on = lambda layer, *kinds: [e for e in block if e.dxf.layer == layer and e.dxftype() in kinds]
    cuts = [places(e) for e in on("1", "POLYLINE", "LINE")]
    if len(cuts) != 1 or not cuts[0][1]:
        say("not one closed cut line")
        return None
    cut = cuts[0][0]
    if area(cut) <= 0:
        say("the cut line does not run anticlockwise")
    edges, vertices = {}, set(cut)
    starts = {at: text.split(": ", 1)[1] for text, at in texts(block, "15") if text.startswith("edge: ")}
    for entity in on("14", "POLYLINE", "LINE"):
        points, _ = places(entity)
        vertices.update(points)
        edges[starts.get(points[0], "without a name")] = length(points)
    for point in on("2", "POINT"):
        if (point.dxf.location.x, point.dxf.location.y) not in vertices:
            say("a turn point lies on no vertex")
    ring = list(zip(cut, cut[1:] + cut[:1]))
    for layer in ("4", "80", "81", "82", "83"):
        for point in on(layer, "POINT"):
            q = (point.dxf.location.x, point.dxf.location.y)
            far = min(from_side(q, a, b) for a, b in ring)
            if far > LENGTH_MM:
                say(f"a notch lies {far:.2f} mm from the cut line")
            if not 0 < point.dxf.thickness < 20:
                say("a notch has no depth")
    if len(on("7", "LINE")) != 1:
        say("not one grain line")
    said = dict(text.split(": ", 1) for text, _ in texts(block, "1"))
    for key in ("Piece Name", "Size", "Quantity", "Category", "Material"):
        if not said.get(key):
            say(f"no text {key}")
    return {
        "name": said.get("Piece Name"),
        "size": said.get("Size"),
        "category": said.get("Category"),
        "area": area(cut),
        "round": length(cut + cut[:1]),
        "edges": edges,
    }


def compare(ours, theirs, wrong):
    """How many lengths and areas were compared."""
    what = f"{ours['category']} {ours['size']}"
    if abs(ours["area"] - theirs["area"]) > SHIFT_MM * ours["round"]:
        wrong.append(f"{what}: area {theirs['area']:.1f}, ours {ours['area']:.1f} mm2")
    if abs(ours["round"] - theirs["round"]) > LENGTH_MM:
        wrong.append(f"{what}: round {theirs['round']:.2f}, ours {ours['round']:.2f} mm")
    if set(ours["edges"]) != set(theirs["edges"]):
        wrong.append(f"{what}: edges {sorted(theirs['edges'])}, ours {sorted(ours['edges'])}")
        return 2
    for edge, mm in ours["edges"].items():
        if abs(mm - theirs["edges"][edge]) > LENGTH_MM:
            wrong.append(f"{what}: edge {edge} {theirs['edges'][edge]:.2f}, ours {mm:.2f} mm")
    return 2 + len(ours["edges"])


def main(file, ours):
    document = ezdxf.readfile(file)
    audit = document.audit()
    wrong = [f"audit: {e.message}" for e in [*audit.errors, *audit.fixes]]
    if document.dxfversion != "AC1009":
        wrong.append(f"version {document.dxfversion}")
    inserted = [e.dxf.name for e in document.modelspace().query("INSERT")]
    if len(set(inserted)) != len(inserted):
        wrong.append("a block is inserted twice")
    head = dict(t.dxf.text.split(": ", 1) for t in document.modelspace().query("TEXT"))
    if head.get("Units") != "METRIC":
        wrong.append("no text Units: METRIC")
    read = [read_piece(document.blocks[name], wrong) for name in inserted]
    theirs = {(p["category"], p["size"]): p for p in read if p}
    ours = json.load(open(ours, encoding="utf-8"))
    compared = 0
    for piece in ours:
        there = theirs.pop((piece["category"], piece["size"]), None)
        if there is None:
            wrong.append(f"{piece['category']} {piece['size']} is not in the file")
        else:
            compared += compare(piece, there, wrong)
    wrong.extend(f"{category} {size} is not ours" for category, size in theirs)
    if wrong:
        sys.exit("\n".join(wrong[:40]))
    print(json.dumps({"pieces": len(ours), "compared": compared}))


main(*sys.argv[1:])
