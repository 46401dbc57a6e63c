//! Sewing order and yarn of the sample pack.

use papers::{
    OperationRow, OperationStitch, Scale, SeamYarnRow, StageBlock, YarnNeedRow, YarnNote, YarnPart,
};

use super::drawings::section;
use super::figure;
use super::seams::yarn;

/// Two parts of the course, one operation of them not stated.
pub fn order() -> Vec<StageBlock> {
    let fell = OperationRow {
        number: "2".into(),
        name: "Inseams: fell".into(),
        pieces: "front, back".into(),
        machine: "feed-off-the-arm".into(),
        attachment: "lap folder for a lap of 9.6 mm".into(),
        stitches: ["Rope, tex 105", "Night, tex 80"]
            .map(|needle| OperationStitch {
                stitch: "401, 3.15 /cm (8 /in)".into(),
                needle: yarn(needle),
                under: yarn("Rope, tex 60"),
            })
            .into(),
        needles: "two needles, 6.4 mm".into(),
        ends: "Both ends: caught in the next seam".into(),
        mind: vec!["Front over back".into(), "No raw edge may show".into()],
        ask: String::new(),
        asks: Vec::new(),
        basis: "common practice".into(),
        seams: vec![0, 99],
        section_at: String::new(),
    };
    let press = OperationRow {
        number: "1".into(),
        name: "Coin pocket: turn in and press".into(),
        pieces: "coin pocket".into(),
        machine: "iron".into(),
        ask: "Not stated: how warm. Ask before you press.".into(),
        ..OperationRow::default()
    };
    [("Small parts", press), ("Legs", fell)]
        .map(|(name, operation)| StageBlock {
            name: name.into(),
            operations: vec![operation],
        })
        .into()
}

/// One yarn, one seam.
pub fn yarns() -> YarnPart {
    let need = |name: &str| YarnNeedRow {
        yarn: yarn(name),
        needles: "110/18 to 130/21".into(),
        needle: "61.2 m".into(),
        under: "12.0 m".into(),
        net: "73.2 m".into(),
        with_waste: "84.2 m".into(),
        order: "8418 m".into(),
        cone: "2500 m".into(),
        cones: "4".into(),
    };
    YarnPart {
        on_cloth: Vec::new(),
        sheets: vec![figure(
            section(),
            "Needle yarns",
            "Size 32 × 32.",
            Some(Scale::Shown("1:1 and 3:1".into())),
        )],
        note: "For one pair.".into(),
        order_label: "100 pairs".into(),
        waste: "15 %".into(),
        yarns: vec![need("Rope, tex 105")],
        total: Some(need("All yarns")),
        seams: vec![SeamYarnRow {
            seam: "Inseam".into(),
            stitches: "401".into(),
            sewn: "3.25 m".into(),
            needle: "8.1 m".into(),
            under: "9.8 m".into(),
            net: "17.9 m".into(),
            with_waste: "20.6 m".into(),
            basis: vec!["a".into()],
        }],
        unstated: vec![("Front rise, overedge".into(), "9.1 m".into())],
        unstated_total: "9.1 m".into(),
        unreckoned: "Not even estimated: Bags: baste.".into(),
        notes: vec![YarnNote {
            mark: "a".into(),
            text: "401, 4 + 2ST times the seam.".into(),
        }],
    }
}
