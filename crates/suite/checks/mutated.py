#!/usr/bin/env python3
"""Spoils files of every kind and sees what the program makes of them.

    mutated.py PROGRAM [--files 10000] [--brought 3000] [--seed 20261130] [--workers 2] [--seconds 60]

Each run takes the demo, spoils one of its files (a style, an order, the four that styles share, a drawing) or a pattern
file that the program wrote itself, and gives it to a command. Whatever is in the file, the program must end by itself
within the time, with 0, 1 or 2, without a panic, must leave every other file as it was and nothing half-made behind.
The same seed spoils the same bytes. Prints one line a fault and a summary, and ends with 1 where there was a fault.

Needs nothing but Python 3 and the program.
"""

import argparse
import concurrent.futures
import hashlib
import os
import random
import shutil
import subprocess
import sys
import tempfile

FILES = [
    ("styles/ferryman/style.toml", 5),
    ("orders/spring.toml", 2),
    ("cloths.toml", 2),
    ("yarns.toml", 1),
    ("trims.toml", 1),
    ("collection.toml", 1),
    ("styles/ferryman/art/patch.svg", 1),
    ("styles/ferryman/.revisions/names.toml", 1),
]

NAMES = b'format = 1\n[names]\n"0001-14200e8c9043fa37" = "first sample"\n'

# Values that are no quantities, or that are too much of one.
VALUES = [
    "", "0", "-1", "1e308", "-1e-308", "nan", "inf", "99999999999999999999", "0 mm", "-3 cm", "1e9 cm", "5", "true",
    "[]", "{}", "\u202e", "\x1b[2J", "\u0000", "32x32", "x" * 5000, "../../etc/passwd", "１２ cm", "1/0 in", "1 1 1 in",
    "#zzzzzz", "tex 0", "0 /in", "é", "ペア",
]


def spoiled(data: bytes, rng: random.Random) -> bytes:
    """The bytes with one to four things done to them."""
    for _ in range(rng.randint(1, 4)):
        data = rng.choice(WAYS)(data, rng)
    return data


def flip(data, rng):
    if not data:
        return data
    out = bytearray(data)
    for _ in range(rng.randint(1, 8)):
        out[rng.randrange(len(out))] = rng.randrange(256)
    return bytes(out)


def cut(data, rng):
    return data[: rng.randrange(len(data) + 1)]


def drop(data, rng):
    a, b = sorted(rng.randrange(len(data) + 1) for _ in range(2))
    return data[:a] + data[min(b, a + rng.randint(1, 400)):]


def double(data, rng):
    lines = data.split(b"\n")
    at = rng.randrange(len(lines))
    return b"\n".join(lines[: at + 1] + lines[at: at + rng.randint(1, 40)] + lines[at + 1:])


def swap(data, rng):
    lines = data.split(b"\n")
    a, b = rng.randrange(len(lines)), rng.randrange(len(lines))
    lines[a], lines[b] = lines[b], lines[a]
    return b"\n".join(lines)


def value(data, rng):
    """Another value in the place of one: what stands in quotes, or a number."""
    import re

    found = list(re.finditer(rb'"[^"\n]*"|-?\d+(?:\.\d+)?', data))
    if not found:
        return data
    where = rng.choice(found)
    word = rng.choice(VALUES).encode()
    if rng.random() < 0.6:
        word = b'"' + word + b'"'
    return data[: where.start()] + word + data[where.end():]


def scale(data, rng):
    """A number times something."""
    import re

    found = list(re.finditer(rb"\d+(?:\.\d+)?", data))
    if not found:
        return data
    where = rng.choice(found)
    by = rng.choice([0, 0.05, 0.5, 2, 3, 20, 300, 1e6, -1])
    number = f"{float(where.group()) * by:g}".encode()
    return data[: where.start()] + number + data[where.end():]


def deep(data, rng):
    word = rng.choice([b"[", b"{a=", b"<g>", b"a.", b"\"", b"[[a]]\n"])
    at = rng.randrange(len(data) + 1)
    return data[:at] + word * rng.choice([3, 200, 20000]) + data[at:]


WAYS = [flip, cut, drop, double, swap, value, value, value, scale, scale, deep]


class Place:
    """A demo that one worker spoils, and the files in it as they were."""

    def __init__(self, program, seconds, like=None):
        self.program = program
        self.seconds = seconds
        self.folder = tempfile.mkdtemp(prefix="spoiled-")
        self.root = os.path.join(self.folder, "demo")
        if like is None:
            self.make()
        else:
            shutil.copytree(like, self.folder, dirs_exist_ok=True)
        self.patterns = []
        for kind in ("dxf", "svg"):
            out = os.path.join(self.folder, kind)
            self.patterns += [os.path.join(out, name) for name in sorted(os.listdir(out))]
        self.whole = self.contents()

    def make(self):
        self.run(["demo", "--no-bench", self.root], check=True)
        names = os.path.join(self.root, FILES[-1][0])
        os.makedirs(os.path.dirname(names), exist_ok=True)
        with open(names, "wb") as file:
            file.write(NAMES)
        for kind in ("dxf", "svg"):
            out = os.path.join(self.folder, kind)
            style = os.path.join(self.root, "styles/ferryman")
            self.run(["patterns", style, "--kind", kind, "--size", "32x32", "-o", out], check=True)

    def run(self, args, check=False):
        done = subprocess.run(
            [self.program, *args],
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            timeout=self.seconds,
        )
        if check and done.returncode != 0:
            sys.exit(f"{args}: {done.returncode}\n{done.stderr.decode(errors='replace')}")
        return done

    def contents(self):
        """Every file but the kept versions, and the hash of what it holds."""
        found = {}
        for folder, _, names in os.walk(self.folder):
            for name in names:
                path = os.path.join(folder, name)
                if ".revisions" in path and not path.endswith("names.toml"):
                    continue
                with open(path, "rb") as file:
                    found[path] = hashlib.sha256(file.read()).hexdigest()
        return found

    def left_behind(self):
        marks = ("unfinished", "pending-", ".new-")
        for folder, folders, names in os.walk(self.folder):
            for name in folders + names:
                if any(mark in name for mark in marks):
                    yield os.path.join(folder, name)

    def faults(self, done, allowed=()):
        words = done.stderr.decode(errors="replace")
        if done.returncode not in (0, 1, 2):
            yield f"ended with {done.returncode}: {words[-300:]}"
        if "panicked" in words:
            yield f"panicked: {words[-300:]}"
        for stream, what in ((done.stdout, "prints"), (done.stderr, "says")):
            text = stream.decode(errors="replace")
            if "\x1b[2J" in text or "\u202e" in text:
                yield f"{what} what steers a terminal"
        now = self.contents()
        for path in sorted(set(now) | set(self.whole)):
            if now.get(path) != self.whole.get(path) and path not in allowed:
                yield f"{path} is another file now"
        yield from (f"{path} is left behind" for path in self.left_behind())

    def close(self):
        shutil.rmtree(self.folder, ignore_errors=True)


def command_for(place, name, rng):
    style = os.path.join(place.root, "styles/ferryman")
    order = os.path.join(place.root, "orders/spring.toml")
    if name.startswith("orders"):
        return rng.choice([["plan", order, "--estimate"], ["check", order], ["history", order]])
    if name.endswith("names.toml"):
        return ["history", style]
    if rng.random() < 0.1:
        return ["history", os.path.join(place.root, name) if name.endswith(".toml") else style]
    if rng.random() < 0.1:
        return ["draw", style, "-o", "-"]
    return ["check", style] + (["--json"] if rng.random() < 0.3 else [])


def one_file(place, seed):
    rng = random.Random(seed)
    name = rng.choices([f for f, _ in FILES], [w for _, w in FILES])[0]
    path = os.path.join(place.root, name)
    with open(path, "rb") as file:
        first = file.read()
    with open(path, "wb") as file:
        file.write(spoiled(first, rng))
    args = command_for(place, name, rng)
    try:
        done = place.run(args)
        found = list(place.faults(done, allowed=(path,)))
    except subprocess.TimeoutExpired:
        done, found = None, [f"did not end within {place.seconds} s"]
    with open(path, "wb") as file:
        file.write(first)
    return done and done.returncode, [f"{name}, seed {seed}, {args[0]}: {fault}" for fault in found]


def one_brought(place, seed):
    rng = random.Random(seed)
    pattern = rng.choice(place.patterns)
    with open(pattern, "rb") as file:
        data = spoiled(file.read(), rng)
    path = os.path.join(place.folder, "brought" + os.path.splitext(pattern)[1])
    with open(path, "wb") as file:
        file.write(data)
    style = os.path.join(place.root, "styles/ferryman")
    args = ["bring", path] + (["--list"] if rng.random() < 0.4 else ["-o", style])
    text = os.path.join(style, "style.toml")
    with open(text, "rb") as file:
        first = file.read()
    try:
        done = place.run(args)
        now = place.contents()
        added = [p for p in now if p not in place.whole and os.sep + "pattern" + os.sep in p]
        allowed = [path, *added] + ([text] if done.returncode == 0 else [])
        found = list(place.faults(done, allowed=allowed))
        if done.returncode != 0 and added:
            found.append(f"it was refused and left {added}")
        shutil.rmtree(os.path.join(style, "pattern"), ignore_errors=True)
    except subprocess.TimeoutExpired:
        done, found = None, [f"did not end within {place.seconds} s"]
    with open(text, "wb") as file:
        file.write(first)
    os.remove(path)
    return done and done.returncode, [f"{os.path.basename(path)}, seed {seed}, bring: {fault}" for fault in found]


# What was spoiled is a version each time: a place is left before there are too many to list.
A_PLACE = 200


def work(program, seconds, like, which, seeds):
    place = Place(program, seconds, like)
    codes, found = {}, []
    try:
        for seed in seeds:
            code, faults = (one_file if which == "files" else one_brought)(place, seed)
            codes[code] = codes.get(code, 0) + 1
            found += faults
    finally:
        place.close()
    return codes, found


def main():
    asked = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    asked.add_argument("program")
    asked.add_argument("--files", type=int, default=10000)
    asked.add_argument("--brought", type=int, default=3000)
    asked.add_argument("--seed", type=int, default=20261130)
    asked.add_argument("--workers", type=int, default=2)
    asked.add_argument("--seconds", type=int, default=60)
    asked = asked.parse_args()
    program = os.path.abspath(asked.program)
    codes, faults, runs = {}, [], 0
    template = Place(program, asked.seconds)
    with concurrent.futures.ProcessPoolExecutor(asked.workers) as pool:
        jobs = []
        for which, count in (("files", asked.files), ("brought", asked.brought)):
            first = asked.seed + (0 if which == "files" else 1_000_000)
            for start in range(first, first + count, A_PLACE):
                seeds = range(start, min(start + A_PLACE, first + count))
                jobs.append(pool.submit(work, program, asked.seconds, template.folder, which, seeds))
        for job in concurrent.futures.as_completed(jobs):
            some, found = job.result()
            for code, count in some.items():
                codes[code] = codes.get(code, 0) + count
                runs += count
            for fault in found:
                print(fault, flush=True)
            faults += found
            print(f"{runs} runs, {len(faults)} faults so far", file=sys.stderr, flush=True)
    template.close()
    print(f"{runs} runs, seed {asked.seed}: ended with {dict(sorted(codes.items(), key=str))}, {len(faults)} faults")
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
