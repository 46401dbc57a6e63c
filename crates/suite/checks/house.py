"""How large the house is: lines of code by room, its longest functions, its long files and the circles between files.

    python3 crates/suite/checks/house.py [FOLDER]

Lines of code are those of `src` that are neither blank nor comment, without tests of their own module. A function's
length is counted from its head to its last brace. A circle is a set of files of one room each of which can be reached
from each other along `use crate::…` and `use super::…`; a file and the files below it (`pattern.rs` and `pattern/…`)
are one. Nothing here passes or fails: the suite's architecture tests do that.
"""

import re
import sys
from pathlib import Path

HOUSE = Path(sys.argv[1] if len(sys.argv) > 1 else ".")
FN = re.compile(r"^(\s*)(?:pub(?:\([^)]*\))? )?(?:const )?(?:async )?(?:extern \"C\" )?fn (\w+)")


def code(text):
    """The lines of a file that are code, its module of tests left out, each with its number."""
    lines, depth, inside = [], 0, None
    pending = False
    for number, line in enumerate(text.splitlines(), 1):
        bare = line.strip()
        if inside is None and bare.startswith("#[cfg(test)]"):
            pending = True
            continue
        if pending and re.match(r"(pub(\(crate\))? )?mod \w+ \{", bare):
            inside, pending = depth, False
        elif pending and bare.endswith(";"):
            pending = False
            continue
        depth += bare.count("{") - bare.count("}")
        if inside is not None:
            if depth <= inside:
                inside = None
            continue
        if bare and not bare.startswith("//"):
            lines.append((number, line))
    return lines


def functions(lines):
    """Each function: its length in lines of code, its name and its first line."""
    found = []
    for at, (number, line) in enumerate(lines):
        head = FN.match(line)
        if not head:
            continue
        for last in range(at, len(lines)):
            if lines[last][1].startswith(head[1] + "}") or (last == at and line.rstrip().endswith("}")):
                found.append((last - at + 1, head[2], number))
                break
            if lines[last][1].rstrip().endswith(";") and last <= at + 12 and "{" not in "".join(l for _, l in lines[at:last + 1]):
                break
    return found


def module(path, src):
    parts = list(path.relative_to(src).with_suffix("").parts)
    return tuple(parts[:-1] if parts[-1] in ("mod", "lib", "main") else parts)


def uses(text, own):
    """The modules of the same room that a file names."""
    found = set()
    for base, rest in re.findall(r"\b(crate|(?:super::)*super)::((?:\w+::)*(?:\w+|\{[^;]*?\}))", text, re.S):
        at = () if base == "crate" else own[: len(own) - base.count("super")]
        head = rest.split("{")[0]
        stem = tuple(p for p in head.split("::") if p)
        if "{" in rest:
            for one in re.findall(r"[\w:]+", rest.split("{", 1)[1]):
                found.add(at + stem + tuple(p for p in one.split("::") if p))
        else:
            found.add(at + stem)
    return found


def circles(files):
    """Sets of more than one file that reach each other (Tarjan)."""
    names = set(files)
    edges = {}
    for name, text in files.items():
        reached = set()
        for path in uses(text, name):
            while path and path not in names:
                path = path[:-1]
            if path and path != name and path[: len(name)] != name and name[: len(path)] != path:
                reached.add(path)
        edges[name] = sorted(reached)
    index, low, stack, out, count = {}, {}, [], [], [0]

    def visit(v):
        index[v] = low[v] = count[0]
        count[0] += 1
        stack.append(v)
        for w in edges[v]:
            if w not in index:
                visit(w)
                low[v] = min(low[v], low[w])
            elif w in stack:
                low[v] = min(low[v], index[w])
        if low[v] == index[v]:
            ring = []
            while True:
                w = stack.pop()
                ring.append(w)
                if w == v:
                    break
            if len(ring) > 1:
                out.append(sorted(ring))

    sys.setrecursionlimit(10_000)
    for v in sorted(edges):
        if v not in index:
            visit(v)
    return out


def main():
    total, longest, long_files, rings = 0, [], [], []
    print(f"{'room':<12}{'files':>6}{'code':>8}{'tests':>8}")
    for room in sorted((HOUSE / "crates").iterdir()):
        src = room / "src"
        if not src.is_dir():
            continue
        sources = sorted(src.rglob("*.rs"))
        size, files = 0, {}
        for path in sources:
            text = path.read_text()
            if path.name == "tests.rs" or "tests" in path.relative_to(src).parts:
                continue
            lines = code(text)
            size += len(lines)
            files[module(path, src)] = "\n".join(line for _, line in lines)
            where = path.relative_to(HOUSE)
            longest += [(length, f"{where}:{first} {name}") for length, name, first in functions(lines)]
            if len(text.splitlines()) > 400:
                long_files.append((len(text.splitlines()), str(where)))
        everything = sum(
            1 for path in room.rglob("*.rs") for line in path.read_text().splitlines()
            if line.strip() and not line.strip().startswith("//")
        )
        total += size
        rings += [(room.name, ring) for ring in circles(files)]
        print(f"{room.name:<12}{len(sources):>6}{size:>8}{everything - size:>8}")
    print(f"{'all':<12}{'':>6}{total:>8}")
    print("\nlongest functions")
    for length, where in sorted(longest, reverse=True)[:10]:
        print(f"{length:>6}  {where}")
    print(f"\nfiles over 400 lines: {len(long_files)}")
    for length, where in sorted(long_files, reverse=True):
        print(f"{length:>6}  {where}")
    print(f"\ncircles of more than three files: {sum(len(ring) > 3 for _, ring in rings)} (of {len(rings)})")
    for name, ring in rings:
        if len(ring) > 3:
            print(f"{len(ring):>6}  {name}: " + ", ".join("/".join(part) for part in ring))


main()
