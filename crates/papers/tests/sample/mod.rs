//! A full pack of our scenario, Saltmarsh Yard's Ferryman, as the other rooms would fill it.
//! The drawings here are plain line drawings; only the text and figures matter to these tests.

mod drawings;
mod lists;
mod order;
mod seams;

use papers::{
    Chart, ChartRow, ChartValues, Checks, Cover, Fact, Figure, LengthLine, Pack, PackWords, Scale,
    StyleHead,
};

pub use drawings::garment;

/// The whole pack.
pub fn pack() -> Pack {
    Pack {
        words: PackWords {
            before: "figures before the wash".into(),
            after: "figures after the wash".into(),
            ..PackWords::default()
        },
        by_size: Vec::new(),
        checks: Checks::default(),
        style: StyleHead {
            collection: "Saltmarsh Yard".into(),
            name: "Ferryman".into(),
            code: "SY-101".into(),
            revision: "Revision 3".into(),
            workroom: "Oficina da Azenha, Vale de Arca".into(),
            summary: "Straight five-pocket, button fly, loomstate selvedge denim.".into(),
        },
        cover: Cover {
            drawings: vec![
                figure(garment(false, 5.0), "Front, outside", "", None),
                figure(garment(true, 5.0), "Back, outside", "", None),
            ],
            facts: [
                ("Fit", "men’s straight"),
                ("Sizes", "waist 28 to 38, length 30, 32, 34"),
                ("Sample size", "32 × 32"),
                ("Closing", "four buttons and a band button"),
                ("Shell", "Tideline loomstate selvedge, 14 oz/yd², 78 cm"),
                ("Shrinkage", "warp 8 %, weft 4 %, in the cut pieces"),
                ("Yarn", "ochre tex 105, 80, 60; night blue tex 80, 40"),
                ("Pieces", "17 kinds, 28 cut for one pair"),
            ]
            .map(|(label, value)| Fact { label: label.into(), value: value.into(), asks: Vec::new() })
            .into(),
            contact: vec![Fact {
                label: "Made by".into(),
                value: "Saltmarsh Yard".into(),
                asks: Vec::new(),
            }],
        },
        changes: lists::changes(),
        open: papers::OpenPart::default(),
        chart: chart(),
        chart_in_other_state: None,
        diagrams: ["Front", "Back", "Inside leg", "Pockets"]
            .iter()
            .enumerate()
            .map(|(at, title)| {
                figure(
                    drawings::garment(at % 2 == 1, 8.0),
                    title,
                    "Band edges level, front band let down to the back. Numbers at the lines are those of the chart.",
                    None,
                )
            })
            .collect(),
        construction_note: "Rows are counted from the seam line outwards. Densities are of the finished, washed seam.".into(),
        seams: seams::seams(),
        order_note: "One operation is one pass at one machine.".into(),
        order_asks: Vec::new(),
        order: order::order(),
        yarn: order::yarns(),
        plates: vec![figure(
            drawings::leg(85.0, 95.0, 1.0),
            "Coin pocket",
            "On the facing behind the right pocket mouth.",
            Some(Scale::Shown("1:1".into())),
        )],
        views: [
            ("Front, outside", false),
            ("Front, inside", false),
            ("Back, outside", true),
            ("Back, inside", true),
        ]
        .map(|(title, back)| {
            figure(
                garment(back, 5.0),
                title,
                "Finished garment in size 32 × 32, laid flat and closed. Every stitch is drawn at its length.",
                Scale::one_to(5),
            )
        })
        .into(),
        pieces_note: "Cut sizes for 32 × 32, shrinkage and allowances included.".into(),
        pieces: lists::pieces(),
        piece_sheets: vec![
            figure(drawings::leg(430.0, 1190.0, 6.0), "Back", "Cut two, mirrored. Outseam on the finished edge of the cloth.", Scale::one_to(6)),
            figure(drawings::leg(1010.0, 98.0, 4.0), "Waistband", "Cut one along the warp.", Scale::one_to(4)),
        ],
        cutting: papers::CuttingPart::default(),
        materials_note: "For one pair in size 32 × 32, waste not included.".into(),
        materials: lists::materials(),
        findings: lists::findings(),
        cautions: lists::cautions(),
        why: vec![("Outseam".into(), "The line the weaver put there shows.".into())],
    }
}

fn figure(drawing: papers::Drawing, title: &str, caption: &str, scale: Option<Scale>) -> Figure {
    Figure {
        callouts: Vec::new(),
        state: String::new(),
        drawing,
        title: title.into(),
        caption: caption.into(),
        scale,
    }
}

const INCH: f64 = 2.54;

fn chart() -> Chart {
    let waists = [28.0, 29.0, 30.0, 31.0, 32.0, 33.0, 34.0, 36.0, 38.0];
    // name, how, tolerance, value at the sample size in cm, grade in cm an inch of waist
    let by_size: [(&str, &str, &str, f64, f64); 22] = [
        (
            "Waist",
            "Along the top edge of the closed band, twice.",
            "1.3",
            33.5 * INCH,
            INCH,
        ),
        (
            "Seat",
            "Across, 8 cm above the crotch, following the level, twice.",
            "1.3",
            40.0 * INCH,
            INCH,
        ),
        (
            "Front rise",
            "From the crotch seam to the top of the band, along the front.",
            "0.65",
            11.0 * INCH,
            INCH / 8.0,
        ),
        (
            "Back rise",
            "From the crotch seam to the top of the band, along the seat seam.",
            "0.65",
            14.75 * INCH,
            INCH / 8.0,
        ),
        (
            "Thigh",
            "Across, 2.5 cm below the crotch, square to the inseam side, twice.",
            "0.8",
            24.5 * INCH,
            INCH / 2.0,
        ),
        (
            "Knee",
            "Across, 35.6 cm below the crotch, twice.",
            "0.65",
            18.0 * INCH,
            INCH / 4.0,
        ),
        (
            "Hem",
            "Along the lower edge, twice.",
            "0.65",
            16.5 * INCH,
            INCH / 4.0,
        ),
        ("Band height", "Square to its edges.", "0.3", 3.8, 0.0),
        (
            "Band overlap",
            "From the front edge to the end beneath.",
            "0.3",
            4.2,
            0.0,
        ),
        (
            "Fly length",
            "From the band seam to the end of the opening.",
            "0.3",
            16.5,
            INCH / 8.0,
        ),
        (
            "Fly width",
            "From the centre front to the outer stitching.",
            "0.3",
            3.8,
            0.0,
        ),
        (
            "Yoke at centre",
            "Along the seat seam, from the band seam.",
            "0.3",
            6.5,
            0.0,
        ),
        (
            "Yoke at side",
            "Along the outseam, from the band seam.",
            "0.3",
            3.8,
            0.0,
        ),
        (
            "Pocket mouth, width",
            "Along the band seam, from the outseam.",
            "0.3",
            10.5,
            INCH / 16.0,
        ),
        (
            "Pocket mouth, depth",
            "Along the outseam, from the band seam.",
            "0.3",
            7.0,
            0.0,
        ),
        (
            "Coin pocket, width",
            "Along its upper edge.",
            "0.3",
            7.5,
            0.0,
        ),
        (
            "Coin pocket, depth",
            "Square to its upper edge.",
            "0.3",
            9.0,
            0.0,
        ),
        (
            "Back pocket, width",
            "Along its upper edge.",
            "0.3",
            15.5,
            INCH / 8.0,
        ),
        (
            "Back pocket, length",
            "From the upper edge to the point.",
            "0.3",
            17.0,
            INCH / 16.0,
        ),
        (
            "Back pocket from yoke",
            "From the yoke seam to the upper edge, at the side towards the centre.",
            "0.3",
            3.2,
            0.0,
        ),
        (
            "Loop length",
            "Between its bartacks’ outer ends.",
            "0.3",
            5.7,
            0.0,
        ),
        ("Loop width", "Square to its edges.", "0.2", 1.2, 0.0),
    ];
    let text = |value: f64| format!("{value:.1}");
    let mut rows: Vec<ChartRow> = by_size
        .iter()
        .map(|(name, how, tolerance, value, grade)| ChartRow {
            number: String::new(),
            name: (*name).into(),
            how: (*how).into(),
            tolerance: (*tolerance).into(),
            values: ChartValues::BySize(
                waists
                    .iter()
                    .map(|w| text(value + grade * (w - 32.0)))
                    .collect(),
            ),
        })
        .collect();
    let by_length = |value: f64, grade: f64| {
        ChartValues::ByLength(
            [30.0, 32.0, 34.0]
                .map(|length| LengthLine {
                    length: format!("{length:.0}"),
                    values: waists
                        .iter()
                        .map(|w| text(value + grade * (w - 32.0) + INCH * (length - 32.0)))
                        .collect(),
                })
                .into(),
        )
    };
    for (at, row) in [
        ChartRow {
            name: "Inseam".into(),
            how: "Along the seam, from the crotch seam to the lower edge.".into(),
            tolerance: "1.3".into(),
            values: by_length(32.0 * INCH, 0.0),
            ..ChartRow::default()
        },
        ChartRow {
            name: "Outseam".into(),
            how: "Along the seam, from the top of the band to the lower edge.".into(),
            tolerance: "1.3".into(),
            values: by_length(108.5, INCH / 8.0),
            ..ChartRow::default()
        },
    ]
    .into_iter()
    .enumerate()
    {
        rows.insert(7 + at, row);
    }
    for (at, row) in rows.iter_mut().enumerate() {
        row.number = (at + 1).to_string();
    }
    Chart {
        title: "Measurement chart".into(),
        note: "Centimetres. The finished garment after its first wash, laid flat and closed. The sample size is set bold.".into(),
        sizes_label: "waist size, inches".into(),
        sizes: waists.map(|w| format!("{w:.0}")).into(),
        sample: Some(4),
        lengths_label: "Length, in".into(),
        rows,
    }
}
