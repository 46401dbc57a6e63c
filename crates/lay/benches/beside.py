"""Lays the open packing instances beside a general-purpose packing library, run by run in turn.

    beside.py PACKING INSTANCES_FOLDER SECONDS SEEDS CORES NAME... > runs.jsonl

PACKING is our built example (`cargo build --release -p lay --example packing`), the library is
spyrrow (PyPI, MIT). Of every instance and seed both sides run once, one after the other, on the same
number of cores; every layout is checked by `crates/suite/checks/layout.py` with shapely. One JSON line a run;
at the end, on standard error, the medians and the paired difference of each instance. The figures
mean something only on a machine that does nothing else: the load before each run is written down too.

On a machine that has other work, `CPU_CLOCK=1` gives both sides a clock of their own CPU time, divided by CORES
(`cpu_clock.c`, built with `cc`, preloaded): then SECONDS are work, not time on the wall. Where a side leaves a core
idle it gets more of it than it would; that holds for both.
"""

import json
import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import spyrrow

CHECK = Path(__file__).parents[2] / "suite" / "checks" / "layout.py"


def clocked(cores):
    """The environment a side runs in."""
    if not os.environ.get("CPU_CLOCK"):
        return None
    clock = Path(tempfile.gettempdir()) / f"cpu_clock-{os.getpid()}.so"
    if not clock.exists():
        source = Path(__file__).with_name("cpu_clock.c")
        subprocess.run(["cc", "-O2", "-shared", "-fPIC", "-o", str(clock), str(source)], check=True)
    return os.environ | {"LD_PRELOAD": str(clock), "CPU_CLOCK_CORES": str(cores)}


def run(side, packing, file, seconds, seed, cores):
    """One side in a process of its own."""
    program = [packing] if side == "ours" else [sys.executable, __file__, "--library"]
    told = [str(word) for word in (file, seconds, seed, cores)]
    answer = subprocess.run(program + told, capture_output=True, check=True, text=True, env=clocked(cores))
    return json.loads(answer.stdout)


def library(file, seconds, seed, cores):
    instance = json.loads(Path(file).read_text(encoding="utf-8"))
    items = [
        spyrrow.Item(
            str(item["id"]),
            [tuple(p) for p in item["shape"]["data"]],
            demand=item["demand"],
            allowed_orientations=[float(a) for a in item["orientation"]["rotation"]["angles"]],
        )
        for item in instance["items"]
    ]
    config = spyrrow.StripPackingConfig(
        total_computation_time=seconds, early_termination=False, num_workers=cores, seed=seed
    )
    height = instance["strip_height"]
    found = spyrrow.StripPackingInstance("", strip_height=height, items=items).solve(config)
    placements = [
        {"id": p.id, "rotation": p.rotation % 360.0, "x": p.translation[0], "y": p.translation[1]}
        for p in found.placed_items
    ]
    area = sum(item["demand"] * area_of(item["shape"]["data"]) for item in instance["items"])
    return {"length": found.width, "density": area / (found.width * height), "placements": placements}


def area_of(points):
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(points, points[1:] + points[:1]))) / 2


def checked(file, lay):
    with tempfile.NamedTemporaryFile("w", suffix=".json") as out:
        json.dump(lay, out)
        out.flush()
        said = subprocess.run([sys.executable, CHECK, str(file), out.name], capture_output=True, text=True, check=False)
        return said.returncode == 0, (said.stdout or said.stderr).strip()


def main(packing, folder, seconds, seeds, cores, *names):
    if not CHECK.exists():
        sys.exit(f"{CHECK} is not there, so no layout could be checked")
    differences = {}
    for name in names:
        file = Path(folder) / f"{name}.json"
        for seed in seeds.split(","):
            pair = {}
            for side in ("ours", "library"):
                load = os.getloadavg()[0]
                began = time.monotonic()
                lay = run(side, packing, file, int(seconds), int(seed), int(cores))
                took = time.monotonic() - began
                right, words = checked(file, lay)
                pair[side] = 100 * lay["density"]
                print(
                    json.dumps(
                        {
                            "instance": name,
                            "seed": int(seed),
                            "side": side,
                            "density": round(pair[side], 3),
                            "seconds": round(took, 1),
                            "load": load,
                            "right": right,
                            "check": words,
                        }
                    ),
                    flush=True,
                )
            differences.setdefault(name, []).append((pair["ours"], pair["library"]))
    for name, pairs in differences.items():
        own, theirs = (statistics.median(side) for side in zip(*pairs))
        apart = statistics.median(a - b for a, b in pairs)
        print(f"{name:10} median ours {own:.2f} library {theirs:.2f} paired difference {apart:+.2f}", file=sys.stderr)


if __name__ == "__main__":
    if sys.argv[1:2] == ["--library"]:
        file, *numbers = sys.argv[2:]
        print(json.dumps(library(file, *map(int, numbers))))
    else:
        main(*sys.argv[1:])
