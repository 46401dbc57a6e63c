//! The measurement chart.
//!
//! "Published charts" are makers' own size charts, men's and women's, slim to relaxed: waists from 65 to 107 cm, seats
//! from 85 to 130, thighs from 51 to 80, knees from 34 to 55, hems from 29 to 50, front rises from 23 to 34 and back
//! rises from 34 to 44 cm. What is usual reaches beyond them, for smaller and larger sizes and for wide and low styles.

use super::amount::rows::{cm, mm};
use super::row::Range;
use crate::MeasureId;

/// The path of a key of a measure, put together while compiling: "chart.thigh.value".
macro_rules! at {
    ($measure:ident, $key:literal) => {
        const {
            const PARTS: [&str; 3] = ["chart.", MeasureId::$measure.code(), concat!(".", $key)];
            const PATH: [u8; PARTS[0].len() + PARTS[1].len() + PARTS[2].len()] = joined(PARTS);
            match std::str::from_utf8(&PATH) {
                Ok(path) => path,
                Err(_) => "",
            }
        }
    };
}

const fn joined<const LONG: usize>(parts: [&str; 3]) -> [u8; LONG] {
    let mut all = [0; LONG];
    let (mut at, mut part) = (0, 0);
    while part < parts.len() {
        let bytes = parts[part].as_bytes();
        let mut byte = 0;
        while byte < bytes.len() {
            all[at] = bytes[byte];
            at += 1;
            byte += 1;
        }
        part += 1;
    }
    all
}

const CHARTS: &str = "published charts, with room for other sizes and styles from memory";
const GRADES: &str =
    "published charts grade a waist by an inch and the rest by less; the room is from memory";
const DETAILS: &str = "common practice, from memory";
const GIRTH_TOLERANCES: &str =
    "published tolerances of 1/4 to 1 in; less cannot be sewn, from memory";
const DETAIL_TOLERANCES: &str =
    "published tolerances of 1/8 to 1/4 in; less cannot be sewn, from memory";

pub(super) const ROWS: &[Range] = &[
    cm(&[at!(Waist, "value")], [55.0, 150.0], [30.0, 300.0], CHARTS),
    cm(&[at!(Seat, "value")], [75.0, 170.0], [40.0, 350.0], CHARTS),
    cm(
        &[at!(FrontRise, "value")],
        [17.0, 40.0],
        [5.0, 80.0],
        CHARTS,
    ),
    cm(
        &[at!(BackRise, "value")],
        [25.0, 55.0],
        [8.0, 100.0],
        CHARTS,
    ),
    cm(&[at!(Thigh, "value")], [42.0, 100.0], [15.0, 200.0], CHARTS),
    cm(&[at!(Knee, "value")], [28.0, 90.0], [12.0, 200.0], CHARTS),
    cm(&[at!(Hem, "value")], [26.0, 100.0], [10.0, 250.0], CHARTS),
    cm(
        &[at!(Inseam, "value")],
        [55.0, 102.0],
        [10.0, 150.0],
        CHARTS,
    ),
    cm(
        &[at!(Outseam, "value")],
        [75.0, 140.0],
        [20.0, 220.0],
        CHARTS,
    ),
    cm(
        &[at!(BandHeight, "value")],
        [2.5, 7.0],
        [1.0, 40.0],
        DETAILS,
    ),
    cm(
        &[at!(BandOverlap, "value")],
        [2.5, 8.0],
        [0.5, 40.0],
        DETAILS,
    ),
    cm(
        &[at!(FlyLength, "value")],
        [8.0, 24.0],
        [2.0, 80.0],
        DETAILS,
    ),
    cm(&[at!(FlyWidth, "value")], [2.8, 6.0], [1.0, 30.0], DETAILS),
    cm(
        &[at!(YokeCentre, "value")],
        [3.0, 12.0],
        [0.1, 50.0],
        DETAILS,
    ),
    cm(&[at!(YokeSide, "value")], [1.0, 9.0], [0.1, 50.0], DETAILS),
    cm(
        &[at!(MouthWidth, "value")],
        [6.5, 17.0],
        [2.0, 60.0],
        DETAILS,
    ),
    cm(
        &[at!(MouthDepth, "value")],
        [3.5, 20.0],
        [1.0, 60.0],
        DETAILS,
    ),
    cm(
        &[at!(CoinWidth, "value")],
        [4.5, 12.0],
        [1.0, 50.0],
        DETAILS,
    ),
    cm(
        &[at!(CoinDepth, "value")],
        [4.5, 14.0],
        [1.0, 50.0],
        DETAILS,
    ),
    cm(
        &[at!(BackPocketWidth, "value")],
        [9.0, 22.0],
        [2.0, 80.0],
        DETAILS,
    ),
    cm(
        &[at!(BackPocketLength, "value")],
        [9.0, 25.0],
        [2.0, 80.0],
        DETAILS,
    ),
    cm(
        &[at!(BackPocketFromYoke, "value")],
        [0.8, 9.0],
        [0.05, 80.0],
        DETAILS,
    ),
    cm(
        &[at!(BackPocketFromCentre, "value")],
        [2.0, 11.0],
        [0.05, 80.0],
        DETAILS,
    ),
    cm(
        &[at!(LoopLength, "value")],
        [3.5, 11.0],
        [1.0, 50.0],
        DETAILS,
    ),
    cm(&[at!(LoopWidth, "value")], [0.6, 3.0], [0.2, 20.0], DETAILS),
    cm(
        &[at!(HemDepth, "value")],
        [0.6, 7.0],
        [0.2, 40.0],
        "3/8 to 1 1/2 in published for jeans and work trousers, with room from memory",
    ),
    cm(
        &[at!(Seat, "at")],
        [3.0, 15.0],
        [0.1, 60.0],
        "about 8 cm above the crotch is published for inspection; the room is from memory",
    ),
    cm(
        &[at!(Thigh, "at")],
        [0.1, 8.0],
        [0.05, 60.0],
        "published charts measure from 1 in to 7 cm below the crotch",
    ),
    cm(
        &[at!(Knee, "at")],
        [22.0, 48.0],
        [3.0, 120.0],
        "published charts measure 30 to 36 cm below the crotch, or at half the inseam",
    ),
    cm(
        &[at!(Waist, "grade"), at!(Waist, "breaks[].grade")],
        [1.2, 4.0],
        [-20.0, 20.0],
        GRADES,
    ),
    cm(
        &[at!(Seat, "grade"), at!(Seat, "breaks[].grade")],
        [0.0, 4.0],
        [-20.0, 20.0],
        GRADES,
    ),
    cm(
        &[
            at!(Thigh, "grade"),
            at!(Thigh, "breaks[].grade"),
            at!(Knee, "grade"),
            at!(Knee, "breaks[].grade"),
            at!(Hem, "grade"),
            at!(Hem, "breaks[].grade"),
        ],
        [0.0, 2.6],
        [-20.0, 20.0],
        GRADES,
    ),
    cm(
        &[at!(Inseam, "per_length"), at!(Outseam, "per_length")],
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
            at!(Waist, "tolerance"),
            at!(Seat, "tolerance"),
            at!(FrontRise, "tolerance"),
            at!(BackRise, "tolerance"),
            at!(Thigh, "tolerance"),
            at!(Knee, "tolerance"),
            at!(Hem, "tolerance"),
            at!(Inseam, "tolerance"),
            at!(Outseam, "tolerance"),
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
