//! The demo style, sewn, for the tests of this room.

use std::path::Path;

use sewing::{Garment, make};
use style::{ChartEntry, Figure, Loaded, MeasureId, OutseamLine, Size, Sizes};
use trade::Length;

pub fn ferryman() -> Loaded {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../style/demo/saltmarsh")
        .join(style::demo::STYLE);
    match style::load(&path) {
        Ok(loaded) => loaded,
        Err(report) => panic!("{report}"),
    }
}

pub fn sewn(waist: u32, length: u32) -> Garment {
    let loaded = ferryman();
    make(&loaded.style, &loaded.collection, Size::new(waist, length))
}

/// A chart of one size: whose, its size, and in inches waist, seat, thigh, knee, hem, front rise, back rise.
type Row = (&'static str, Figure, Size, [f64; 7]);

/// Six pairs as unlike as charts get: slim and wide, low and high in the rise, for men and women. The first three of each
/// are near the tables the draft is tested with; the rises of two are an inch lower and higher.
const UNLIKE: [Row; 5] = [
    (
        "men's slim, low",
        Figure::Men,
        Size::new(28, 32),
        [29.5, 35.0, 21.5, 15.5, 13.0, 9.25, 12.75],
    ),
    (
        "men's relaxed",
        Figure::Men,
        Size::new(40, 32),
        [41.5, 49.5, 30.5, 21.5, 19.5, 13.0, 16.5],
    ),
    (
        "women's slim",
        Figure::Women,
        Size::new(24, 30),
        [26.0, 33.5, 20.0, 13.5, 11.5, 9.25, 13.25],
    ),
    (
        "women's straight, high",
        Figure::Women,
        Size::new(30, 30),
        [31.5, 40.5, 24.75, 17.75, 16.5, 12.25, 16.0],
    ),
    (
        "women's wide",
        Figure::Women,
        Size::new(36, 30),
        [38.0, 48.0, 30.0, 22.0, 24.0, 13.0, 16.75],
    ),
];

/// The demo, whose outseam runs straight, and the five of [`UNLIKE`].
pub fn unlike() -> Vec<(&'static str, Garment)> {
    let mut all = vec![("the demo", sewn(32, 32))];
    all.extend(UNLIKE.iter().map(|row| (row.0, charted(row))));
    all
}

/// Charts that no pair can have, for what must not break of them.
pub fn impossible() -> Vec<(&'static str, Garment)> {
    let rows: [Row; 4] = [
        (
            "no seat",
            Figure::Men,
            Size::new(32, 32),
            [33.5, 4.0, 60.0, 18.0, 16.5, 11.0, 14.75],
        ),
        (
            "no thigh",
            Figure::Men,
            Size::new(32, 32),
            [33.5, 40.0, 1.0, 18.0, 16.5, 11.0, 14.75],
        ),
        (
            "no rise",
            Figure::Women,
            Size::new(28, 30),
            [30.0, 37.5, 23.0, 15.0, 13.0, 1.0, 2.0],
        ),
        (
            "no leg",
            Figure::Women,
            Size::new(28, 1),
            [30.0, 37.5, 23.0, 15.0, 80.0, 10.0, 14.0],
        ),
    ];
    rows.iter().map(|row| (row.0, charted(row))).collect()
}

/// The demo's style sewn to another chart.
fn charted((_, figure, size, inches): &Row) -> Garment {
    let mut loaded = ferryman();
    let doc = &mut loaded.style;
    doc.style.figure = *figure;
    doc.shape.outseam = OutseamLine::Shaped;
    doc.sizes = Sizes {
        waists: vec![size.waist],
        lengths: vec![size.length],
        base: *size,
    };
    doc.chart.clear();
    let mut state = |measure, value, at| {
        let entry = ChartEntry {
            value,
            grade: None,
            per_length: None,
            breaks: Vec::new(),
            at,
            tolerance: Length::mm(5.0),
        };
        doc.chart.insert(measure, entry);
    };
    use MeasureId as M;
    let measures = [
        M::Waist,
        M::Seat,
        M::Thigh,
        M::Knee,
        M::Hem,
        M::FrontRise,
        M::BackRise,
    ];
    for (measure, inches) in measures.into_iter().zip(inches) {
        let at = match measure {
            M::Seat => Some(Length::mm(80.0)),
            M::Thigh => Some(Length::inches(1.0)),
            M::Knee => Some(Length::inches(14.0)),
            _ => None,
        };
        state(measure, Length::inches(*inches), at);
    }
    state(M::Inseam, size.length.length(), None);
    state(M::BandHeight, Length::mm(38.0), None);
    make(&loaded.style, &loaded.collection, *size)
}
