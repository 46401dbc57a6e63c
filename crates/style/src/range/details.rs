//! What a style states beside its chart: shape, details, seams, tacks and cutting.

use super::amount::rows::{celsius, cm, count, deg, minutes, mm, per_cm, percent};
use super::row::Range;

const PRACTICE: &str = "common practice, from memory";
const SPLITS: &str = "published drafts make the back up to 4 cm wider at seat, knee and hem, the thigh 5; the room is from memory";

pub(super) const ROWS: &[Range] = &[
    cm(
        &[
            "shape.seat_split",
            "shape.knee_split",
            "shape.hem_split",
            "shape.waist_split",
        ],
        [-2.0, 4.0],
        [-60.0, 60.0],
        SPLITS,
    ),
    cm(&["shape.thigh_split"], [0.0, 6.0], [-60.0, 60.0], SPLITS),
    cm(
        &["shape.front_tilt"],
        [-1.0, 4.0],
        [-60.0, 60.0],
        "1 cm in the classic metric block; the room is from memory",
    ),
    deg(
        &["shape.seat_angle"],
        [5.0, 22.0],
        [0.0, 45.0],
        "7 to 10 degrees in trouser drafts, 15 in tailoring of the 1890s, 12 to 16 for jeans from memory",
    ),
    cm(
        &["shape.seat_dart"],
        [0.0, 5.0],
        [0.0, 60.0],
        "2 to 3 cm published for jeans; the room is from memory",
    ),
    mm(
        &["shape.inseam_stretch"],
        [0.0, 12.0],
        [0.0, 300.0],
        "0.1 to 0.4 cm in published drafts, up to 1 cm in the trade from memory",
    ),
    mm(
        &["shape.band_ease"],
        [0.0, 15.0],
        [0.0, 300.0],
        "at most half a percent or 1 cm, common practice",
    ),
    count(&["fly.buttons"], [2, 6], [0, 12], PRACTICE),
    mm(&["band.start_below"], [3.0, 40.0], [0.0, 500.0], PRACTICE),
    deg(
        &["band.v_angle"],
        [40.0, 110.0],
        [20.0, 150.0],
        "a V that still reads as one, from memory",
    ),
    cm(
        &["pockets.coin.below_band", "pockets.coin.from_side"],
        [0.2, 7.0],
        [0.0, 50.0],
        PRACTICE,
    ),
    mm(
        &["pockets.coin.lower_narrowing"],
        [-10.0, 25.0],
        [-300.0, 300.0],
        PRACTICE,
    ),
    mm(&["pockets.coin.drop"], [1.0, 40.0], [0.0, 300.0], PRACTICE),
    cm(
        &["pockets.bag.depth"],
        [18.0, 42.0],
        [3.0, 100.0],
        "the length of a hand and what it holds, from memory",
    ),
    cm(
        &["pockets.bag.width"],
        [11.0, 30.0],
        [3.0, 80.0],
        "the width of a hand and what it holds, from memory",
    ),
    cm(&["pockets.bag.facing"], [3.0, 16.0], [1.0, 80.0], PRACTICE),
    percent(
        &["pockets.bag.mouth_fullness"],
        [25.0, 85.0],
        [10.0, 95.0],
        "between a slant and a square corner, from memory",
    ),
    cm(
        &["pockets.back.*.foot_width"],
        [6.0, 20.0],
        [1.0, 60.0],
        PRACTICE,
    ),
    cm(
        &["pockets.back.*.side_length"],
        [7.0, 22.0],
        [1.0, 60.0],
        PRACTICE,
    ),
    mm(
        &["pockets.back.*.outer_drop"],
        [-25.0, 30.0],
        [-300.0, 300.0],
        PRACTICE,
    ),
    count(&["pockets.back.*.waves"], [2, 14], [1, 40], PRACTICE),
    mm(
        &["pockets.back.*.crest"],
        [1.0, 50.0],
        [0.0, 400.0],
        PRACTICE,
    ),
    mm(
        &["pockets.back.*.rise"],
        [-60.0, 60.0],
        [-400.0, 400.0],
        PRACTICE,
    ),
    cm(&["pockets.extra.width"], [4.0, 16.0], [1.0, 60.0], PRACTICE),
    cm(&["pockets.extra.depth"], [5.0, 20.0], [1.0, 60.0], PRACTICE),
    cm(
        &["pockets.extra.from_centre"],
        [1.0, 18.0],
        [0.0, 60.0],
        PRACTICE,
    ),
    count(&["loops.count"], [0, 9], [0, 9], PRACTICE),
    mm(
        &["loops.belt"],
        [20.0, 60.0],
        [5.0, 300.0],
        "belts for jeans are 35 to 45 mm wide, from memory",
    ),
    cm(&["patch.from_centre"], [0.0, 14.0], [0.0, 60.0], PRACTICE),
    mm(
        &["seams.fly.rows[].offset", "seams.hem.rows[].offset"],
        [0.0, 65.0],
        [-300.0, 300.0],
        "within a fly and a hem, whose usual sizes stand above",
    ),
    mm(
        &["seams.*.rows[].offset"],
        [-1.0, 25.0],
        [-300.0, 300.0],
        "rows are sewn into allowances of 10 to 25 mm, from memory",
    ),
    per_cm(
        &["seams.*.rows[].density"],
        [1.5, 7.0],
        [0.5, 20.0],
        "7 to 8 stitches to the inch for denim; finer for light cloth and overedges, from memory",
    ),
    mm(
        &["bartacks.length"],
        [4.0, 25.0],
        [1.0, 150.0],
        "tacks of 1/4 to 3/4 in, from memory",
    ),
    mm(&["bartacks.width"], [1.0, 5.0], [0.3, 50.0], PRACTICE),
    count(
        &["bartacks.stitches"],
        [14, 72],
        [5, 200],
        "14 stitches to a quarter inch published as the least; the most is from memory",
    ),
    percent(
        &["cutting.residual_warp", "cutting.residual_weft"],
        [-2.0, 5.0],
        [-10.0, 30.0],
        "1 to 3 % published for cloth that was shrunk; the room is from memory",
    ),
    celsius(
        &["wash.steps[].temperature"],
        [10.0, 95.0],
        [0.0, 200.0],
        "a cold rinse to a hot desize, drying with hot air more, from memory",
    ),
    minutes(
        &["wash.steps[].time"],
        [1.0, 180.0],
        [0.1, 2880.0],
        "from memory; drying on a line takes a day",
    ),
    count(
        &["wash.steps[].liquor"],
        [3, 25],
        [1, 100],
        "5 to 15 litres to the kilogram, from memory",
    ),
    mm(
        &["pattern.allowance", "pattern.allowances.*"],
        [1.0, 65.0],
        [0.1, 400.0],
        "7/16 in to 1 in published for jeans, hems and facings more, from memory",
    ),
];
