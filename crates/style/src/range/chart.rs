//! The measurement chart.
//!
//! "Published charts" are makers' own size charts, men's and women's, slim to relaxed: waists from 65 to 107 cm, seats
//! from 85 to 130, thighs from 51 to 80, knees from 34 to 55, hems from 29 to 50, front rises from 23 to 34 and back
//! rises from 34 to 44 cm. What is usual reaches beyond them, for smaller and larger sizes and for wide and low styles.

use super::Range;
use super::amount::rows::{cm, mm};

const CHARTS: &str = "published charts, with room for other sizes and styles from memory";
const GRADES: &str =
    "published charts grade a waist by an inch and the rest by less; the room is from memory";
const DETAILS: &str = "common practice, from memory";
const GIRTH_TOLERANCES: &str =
    "published tolerances of 1/4 to 1 in; less cannot be sewn, from memory";
const DETAIL_TOLERANCES: &str =
    "published tolerances of 1/8 to 1/4 in; less cannot be sewn, from memory";

pub(super) const ROWS: &[Range] = &[
    cm(&["chart.waist.value"], [55.0, 150.0], [30.0, 300.0], CHARTS),
    cm(&["chart.seat.value"], [75.0, 170.0], [40.0, 350.0], CHARTS),
    cm(
        &["chart.front_rise.value"],
        [17.0, 40.0],
        [5.0, 80.0],
        CHARTS,
    ),
    cm(
        &["chart.back_rise.value"],
        [25.0, 55.0],
        [8.0, 100.0],
        CHARTS,
    ),
    cm(&["chart.thigh.value"], [42.0, 100.0], [15.0, 200.0], CHARTS),
    cm(&["chart.knee.value"], [28.0, 90.0], [12.0, 200.0], CHARTS),
    cm(&["chart.hem.value"], [26.0, 100.0], [10.0, 250.0], CHARTS),
    cm(
        &["chart.inseam.value"],
        [55.0, 102.0],
        [10.0, 150.0],
        CHARTS,
    ),
    cm(
        &["chart.outseam.value"],
        [75.0, 140.0],
        [20.0, 220.0],
        CHARTS,
    ),
    cm(
        &["chart.band_height.value"],
        [2.5, 7.0],
        [1.0, 40.0],
        DETAILS,
    ),
    cm(
        &["chart.band_overlap.value"],
        [2.5, 8.0],
        [0.5, 40.0],
        DETAILS,
    ),
    cm(
        &["chart.fly_length.value"],
        [8.0, 24.0],
        [2.0, 80.0],
        DETAILS,
    ),
    cm(&["chart.fly_width.value"], [2.8, 6.0], [1.0, 30.0], DETAILS),
    cm(
        &["chart.yoke_centre.value"],
        [3.0, 12.0],
        [0.1, 50.0],
        DETAILS,
    ),
    cm(&["chart.yoke_side.value"], [1.0, 9.0], [0.1, 50.0], DETAILS),
    cm(
        &["chart.mouth_width.value"],
        [6.5, 17.0],
        [2.0, 60.0],
        DETAILS,
    ),
    cm(
        &["chart.mouth_depth.value"],
        [3.5, 20.0],
        [1.0, 60.0],
        DETAILS,
    ),
    cm(
        &["chart.coin_width.value"],
        [4.5, 12.0],
        [1.0, 50.0],
        DETAILS,
    ),
    cm(
        &["chart.coin_depth.value"],
        [4.5, 14.0],
        [1.0, 50.0],
        DETAILS,
    ),
    cm(
        &["chart.back_pocket_width.value"],
        [9.0, 22.0],
        [2.0, 80.0],
        DETAILS,
    ),
    cm(
        &["chart.back_pocket_length.value"],
        [9.0, 25.0],
        [2.0, 80.0],
        DETAILS,
    ),
    cm(
        &["chart.back_pocket_from_yoke.value"],
        [0.8, 9.0],
        [0.05, 80.0],
        DETAILS,
    ),
    cm(
        &["chart.back_pocket_from_centre.value"],
        [2.0, 11.0],
        [0.05, 80.0],
        DETAILS,
    ),
    cm(
        &["chart.loop_length.value"],
        [3.5, 11.0],
        [1.0, 50.0],
        DETAILS,
    ),
    cm(
        &["chart.loop_width.value"],
        [0.6, 3.0],
        [0.2, 20.0],
        DETAILS,
    ),
    cm(
        &["chart.hem_depth.value"],
        [0.6, 7.0],
        [0.2, 40.0],
        "3/8 to 1 1/2 in published for jeans and work trousers, with room from memory",
    ),
    cm(
        &["chart.seat.at"],
        [3.0, 15.0],
        [0.1, 60.0],
        "about 8 cm above the crotch is published for inspection; the room is from memory",
    ),
    cm(
        &["chart.thigh.at"],
        [0.1, 8.0],
        [0.05, 60.0],
        "published charts measure from 1 in to 7 cm below the crotch",
    ),
    cm(
        &["chart.knee.at"],
        [22.0, 48.0],
        [3.0, 120.0],
        "published charts measure 30 to 36 cm below the crotch, or at half the inseam",
    ),
    cm(
        &["chart.waist.grade", "chart.waist.breaks[].grade"],
        [1.2, 4.0],
        [-20.0, 20.0],
        GRADES,
    ),
    cm(
        &["chart.seat.grade", "chart.seat.breaks[].grade"],
        [0.0, 4.0],
        [-20.0, 20.0],
        GRADES,
    ),
    cm(
        &[
            "chart.thigh.grade",
            "chart.thigh.breaks[].grade",
            "chart.knee.grade",
            "chart.knee.breaks[].grade",
            "chart.hem.grade",
            "chart.hem.breaks[].grade",
        ],
        [0.0, 2.6],
        [-20.0, 20.0],
        GRADES,
    ),
    cm(
        &["chart.inseam.per_length", "chart.outseam.per_length"],
        [2.0, 3.2],
        [-20.0, 20.0],
        "lengths are labelled in inches; the room is from memory",
    ),
    cm(
        &["chart.*.per_length"],
        [-0.8, 0.8],
        [-20.0, 20.0],
        "lengths leave girths and details nearly alone, from memory",
    ),
    cm(
        &["chart.*.grade", "chart.*.breaks[].grade"],
        [-0.5, 0.8],
        [-20.0, 20.0],
        GRADES,
    ),
    mm(
        &[
            "chart.waist.tolerance",
            "chart.seat.tolerance",
            "chart.front_rise.tolerance",
            "chart.back_rise.tolerance",
            "chart.thigh.tolerance",
            "chart.knee.tolerance",
            "chart.hem.tolerance",
            "chart.inseam.tolerance",
            "chart.outseam.tolerance",
        ],
        [3.0, 26.0],
        [0.0, 300.0],
        GIRTH_TOLERANCES,
    ),
    mm(
        &["chart.*.tolerance"],
        [1.0, 10.0],
        [0.0, 300.0],
        DETAIL_TOLERANCES,
    ),
];
