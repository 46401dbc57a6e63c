//! What a collection states: cloths, yarns, trims, and the orders cut from them.

use crate::order::{MOST_LAYS, MOST_PLIES};

use super::amount::rows::{cm, count, gsm, m, mm, percent, tex};
use super::row::Range;

const PRACTICE: &str = "common practice, from memory";
const ROOMS: &str = "cutting rooms differ: ask the workroom; the usual values are from memory";

pub(super) const ROWS: &[Range] = &[
    gsm(
        &["cloths.*.weight"],
        [60.0, 1150.0],
        [20.0, 2000.0],
        "linings of 2 oz to denim of 33 oz to the square yard, from memory",
    ),
    mm(
        &["cloths.*.thickness"],
        [0.1, 2.0],
        [0.02, 20.0],
        "0.8 to 1.2 mm measured on denim in published tests; the room is from memory",
    ),
    cm(
        &["cloths.*.width"],
        [60.0, 190.0],
        [10.0, 500.0],
        "70 to 80 cm from shuttle looms, up to 170 from others, from memory",
    ),
    percent(
        &["cloths.*.warp_shrinkage"],
        [-2.0, 15.0],
        [-10.0, 30.0],
        "1 to 5 % published for cloth that was shrunk, 10 to 13.5 for loomstate after three launderings, 7 to 10 after one from memory",
    ),
    percent(
        &["cloths.*.weft_shrinkage"],
        [-2.0, 20.0],
        [-10.0, 30.0],
        "5 to 8 % published for rigid cloth after three launderings, 8 to 14 with stretch, 1 to 8 where it is heat set",
    ),
    percent(
        &["cloths.*.skew"],
        [-8.0, 8.0],
        [-15.0, 15.0],
        "a mill skews denim by 8 % of its width (a published patent)",
    ),
    cm(
        &["cloths.*.wash_test[].before", "cloths.*.wash_test[].after"],
        [9.0, 120.0],
        [1.0, 1000.0],
        "marks 50 cm apart or 12 1/2 in square are published",
    ),
    cm(
        &["cloths.*.skew_test.rising", "cloths.*.skew_test.falling"],
        [9.0, 160.0],
        [1.0, 1000.0],
        "diagonals of marked squares, whose usual sizes stand above",
    ),
    tex(
        &["yarns.*.size"],
        [12.0, 280.0],
        [5.0, 600.0],
        "yarns for denim are tex 24 to 150, from memory",
    ),
    m(
        &["yarns.*.put_up"],
        [50.0, 30_000.0],
        [1.0, 1_000_000.0],
        "cones of 1000 to 10 000 m, from memory",
    ),
    mm(
        &["trims.*.diameter"],
        [5.0, 32.0],
        [2.0, 150.0],
        "rivets of 7 to 12 mm, buttons of 22 to 32 ligne, from memory",
    ),
    mm(
        &["trims.*.width", "trims.*.height"],
        [5.0, 160.0],
        [1.5, 600.0],
        "labels of 10 to 80 mm, patches of 50 to 100, from memory",
    ),
    cm(
        &["trims.*.length"],
        [6.0, 28.0],
        [1.0, 100.0],
        "zips of 3 to 9 in, from memory",
    ),
    mm(
        &["trims.*.thickness"],
        [0.2, 4.0],
        [0.02, 20.0],
        "leather of 2 to 6 oz, from memory",
    ),
    count(&["lines[].pairs.*"], [1, 5000], [1, 10_000], PRACTICE),
    cm(
        &["limits.height", "cloths.*.height"],
        [0.5, 25.0],
        [0.05, 100.0],
        ROOMS,
    ),
    m(
        &["limits.table", "cloths.*.table"],
        [1.5, 40.0],
        [0.3, 100.0],
        ROOMS,
    ),
    count(
        &["limits.most_plies", "cloths.*.most_plies"],
        [1, 200],
        [1, MOST_PLIES],
        ROOMS,
    ),
    count(
        &["limits.most_pairs", "cloths.*.most_pairs"],
        [1, 12],
        [1, 20],
        ROOMS,
    ),
    count(
        &[
            "limits.fewest_lays",
            "limits.most_lays",
            "cloths.*.fewest_lays",
            "cloths.*.most_lays",
        ],
        [1, MOST_LAYS],
        [1, MOST_LAYS],
        "more lays cannot be weighed against each other",
    ),
    cm(
        &["limits.end_loss", "cloths.*.end_loss"],
        [0.0, 15.0],
        [0.0, 1000.0],
        "2 cm for a straight knife (a published time study); the room is from memory",
    ),
    mm(
        &["limits.gap", "cloths.*.gap"],
        [0.0, 12.0],
        [0.0, 300.0],
        ROOMS,
    ),
    count(
        &["limits.zones", "cloths.*.zones"],
        [1, 6],
        [1, 6],
        "a width has no more parts that differ in shade, from memory",
    ),
    m(
        &["limits.match_within", "cloths.*.match_within"],
        [0.0, 3.0],
        [0.0, 10.0],
        ROOMS,
    ),
    m(
        &["limits.most_lap", "cloths.*.most_lap"],
        [0.0, 2.0],
        [0.0, 10.0],
        ROOMS,
    ),
    percent(
        &[
            "limits.faults",
            "limits.splices",
            "cloths.*.faults",
            "cloths.*.splices",
        ],
        [0.0, 10.0],
        [0.0, 50.0],
        ROOMS,
    ),
    m(
        &["cloths.*.rolls[].length"],
        [2.0, 250.0],
        [0.1, 10_000.0],
        "rolls of 30 to 120 m, from memory",
    ),
];
