"""Measures a printed pattern from its pixels.

usage: paper.py PDFTOPPM PLAN.json FOLDER

Reads where everything should lie (`fellwork patterns --json`), renders the PDF beside it at 300 dots an
inch and measures in the picture: both sides of the check square, and lengths of pieces from cut line to
cut line. Where a length runs over a join, the pages are put together by their register marks as found in
the picture, as one tapes them. Everything has to agree within 0.2 mm; a line on standard error says what
does not, and the exit code is 1.
"""

import json
import subprocess
import sys
from pathlib import Path

import numpy as np

DPI = 300
PX = 25.4 / DPI  # mm
WITHIN = 0.2
WANTED = 3  # pieces


class Print:
    def __init__(self, pdftoppm, pdf):
        self.pdftoppm, self.pdf = pdftoppm, pdf

    def ink(self, page, x, y, w, h):
        """Darkness 0..1 of a part of a page, and the exact place of its upper left pixel, mm."""
        px, py = int(x / PX), int(y / PX)
        args = [self.pdftoppm, "-r", str(DPI), "-gray", "-f", str(page), "-l", str(page)]
        args += ["-x", str(px), "-y", str(py), "-W", str(int(w / PX) + 1), "-H", str(int(h / PX) + 1)]
        out = subprocess.run(args + [str(self.pdf)], check=True, capture_output=True).stdout
        kind, wide, tall, most = out.split(maxsplit=4)[:4]
        assert kind == b"P5" and most == b"255", out[:20]
        wide, tall = int(wide), int(tall)
        grey = np.frombuffer(out[-wide * tall :], dtype=np.uint8).reshape(tall, wide)
        return 1.0 - grey / 255.0, px * PX, py * PX

    def line(self, page, x, y, across, reach=1.5, wide=0.4, width=None):
        """Where a line near (x, y) lies along x (`across` is 'x') or y; None without ink.

        The darkest run of `width` mm counts, so that a thinner line beside it does no harm.
        """
        if across == "x":
            dark, x0, _ = self.ink(page, x - reach, y - wide / 2, 2 * reach, wide)
            profile, start = dark.mean(axis=0), x0
        else:
            dark, _, y0 = self.ink(page, x - wide / 2, y - reach, wide, 2 * reach)
            profile, start = dark.mean(axis=1), y0
        if profile.max() < 0.3:
            return None
        if width:
            run = max(1, round(width / PX))
            peak = int(np.convolve(profile, np.ones(run), "same").argmax())
        else:
            peak = int(profile.argmax())
        half = round(0.6 / PX)
        a, b = max(0, peak - half), min(len(profile), peak + half + 1)
        part = profile[a:b]
        return start + (np.average(np.arange(a, b), weights=part) + 0.5) * PX


def crossings(outline, x):
    """Where the upright line at x crosses a closed outline, and how steeply the outline runs there."""
    ys = []
    for (x1, y1), (x2, y2) in zip(outline, outline[1:] + outline[:1]):
        if (x1 <= x) != (x2 <= x):
            ys.append((y1 + (y2 - y1) * (x - x1) / (x2 - x1), abs((y2 - y1) / (x2 - x1))))
    return sorted(ys)


def page_of(plan, x, y, room=4.0):
    for page in plan["pages"]:
        (px, py), (w, h) = page["on_plane"], page["window"]
        if px + room < x < px + w - room and py + room < y < py + h - room:
            return page
    return None


def on_page(page, x, y):
    return [at + v - p for at, v, p in zip(page["on_page"], (x, y), page["on_plane"])]


def mark(printed, page, at):
    """The middle of a register mark: its arms beyond the ring."""
    x, y = on_page(page, *at)
    xs = [printed.line(page["page"], x, y + d, "x", reach=0.9, wide=0.3) for d in (-3.0, 3.0)]
    ys = [printed.line(page["page"], x + d, y, "y", reach=0.9, wide=0.3) for d in (-3.0, 3.0)]
    xs, ys = [v for v in xs if v], [v for v in ys if v]
    return (np.mean(xs), np.mean(ys)) if xs and ys else None


def way(plan, a, b):
    """Pages from a to b, each joined to the next by marks."""
    queue, seen = [[a]], {a["code"]}
    while queue:
        path = queue.pop(0)
        if path[-1]["code"] == b["code"]:
            return path
        for page in plan["pages"]:
            if page["code"] not in seen and any(m in path[-1]["marks"] for m in page["marks"]):
                seen.add(page["code"])
                queue.append(path + [page])
    return None


def offset(printed, plan, a, b):
    """What to add to a place on page a to have it on page b, as taped, and how many joins that is."""
    path = way(plan, a, b)
    if path is None:
        return None
    total = np.zeros(2)
    for one, other in zip(path, path[1:]):
        shared = [m for m in one["marks"] if m in other["marks"]]
        moves = []
        for m in shared:
            here, there = mark(printed, one, m), mark(printed, other, m)
            if here and there:
                moves.append(np.subtract(there, here))
        if not moves:
            return None
        total += np.mean(moves, axis=0)
    return total, len(path) - 1


def square(printed, plan, wrong):
    at, side, page = plan["square"]["at"], plan["square"]["side"], plan["square"]["page"]
    for across, k in (("x", 0), ("y", 1)):
        for share in (0.2, 0.8):
            place = [at[0] + share * side, at[1] + share * side]
            ends = []
            for far in (0.0, side):
                place[k] = at[k] + far
                ends.append(printed.line(page, *place, across))
            if None in ends:
                wrong.append(f"the check square has no line near {place}")
            elif abs(ends[1] - ends[0] - 100.0) > WITHIN:
                wrong.append(f"the check square is {ends[1] - ends[0]:.2f} mm along {across}")


def lengths(printed, plan, wrong):
    """Measures upright lengths through pieces; as many pieces as wanted, and joins where there are any."""
    done, joined, worst = 0, 0, 0.0
    by_size = sorted(plan["pieces"], key=lambda p: -np.ptp([y for _, y in p["outline"]]))
    seen = set()
    for piece in by_size:
        if piece["code"] in seen:
            continue
        xs = [x for x, _ in piece["outline"]]
        for share in (0.5, 0.42, 0.58, 0.35, 0.65, 0.72, 0.28):
            x = min(xs) + share * (max(xs) - min(xs))
            cross = crossings(piece["outline"], x)
            if len(cross) < 2 or max(cross[0][1], cross[-1][1]) > 0.5:
                continue
            (top, _), (foot, _) = cross[0], cross[-1]
            a, b = page_of(plan, x, top), page_of(plan, x, foot)
            if a is None or b is None:
                continue
            found = []
            for page, y in ((a, top), (b, foot)):
                px, py = on_page(page, x, y)
                found.append(printed.line(page["page"], px, py, "y", width=0.5))
            moved = offset(printed, plan, a, b)
            if None in found or moved is None:
                continue
            by, joins = moved
            measured = found[1] - (found[0] + by[1])
            off = measured - (foot - top)
            worst = max(worst, abs(off))
            if abs(off) > WITHIN:
                wrong.append(f"{piece['code']} is {measured:.2f} mm long at {x:.0f}, not {foot - top:.2f}")
            seen.add(piece["code"])
            done += 1
            joined += joins > 0
            break
        if done >= WANTED and (joined or len(plan["pages"]) == 1):
            break
    if done < WANTED:
        wrong.append(f"only {done} lengths could be measured")
    if len(plan["pages"]) > 1 and not joined:
        wrong.append("no length over a join could be measured")
    return done, joined, worst


def main():
    pdftoppm, plan, folder = sys.argv[1:]
    answer = json.loads(Path(plan).read_text())
    wrong, summary = [], []
    for file in answer["files"]:
        printed = Print(pdftoppm, Path(folder) / file["file"])
        square(printed, file["plan"], wrong)
        done, joined, worst = lengths(printed, file["plan"], wrong)
        summary.append({"file": file["file"], "lengths": done, "joined": joined, "worst_mm": round(worst, 3)})
    print(json.dumps(summary))
    for words in wrong:
        print(words, file=sys.stderr)
    sys.exit(1 if wrong else 0)


main()
