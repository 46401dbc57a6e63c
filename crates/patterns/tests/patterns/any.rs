//! Any pattern that can be, written and read again.

use geometry::Point;
use patterns::{
    Copies, Drill, InnerLine, LineKind, Named, Notch, NotchKind, Note, PatternFile, Piece, SewLine,
    TurnPoint, dxf, on_grid, on_grid_angle, svg,
};
use proptest::prelude::*;
use trade::{Angle, Length};

/// A place in a cell of its own, so that no two places are the same.
fn place(cell: u32) -> impl Strategy<Value = Point> {
    (0.0..9.0_f64, 0.0..9.0_f64).prop_map(move |(x, y)| {
        let (column, row) = (f64::from(cell % 50), f64::from(cell / 50));
        on_grid(Point::new(-200.0 + column * 10.0 + x, row * 10.0 + y))
    })
}

fn places(from: u32, n: std::ops::Range<usize>) -> impl Strategy<Value = Vec<Point>> {
    n.prop_flat_map(move |n| (from..from + n as u32).map(place).collect::<Vec<_>>())
}

/// Words in one line, with any letter and sign.
fn words() -> impl Strategy<Value = String> {
    "[!-~ÀéßЖ裤👖]([ -~ÀéßЖ裤👖]{0,20}[!-~ÀéßЖ裤👖])?".prop_filter("it is a mark's name", |text| {
        // Notes that read as a mark's name are names; a number after # is a grade rule.
        !text.contains(':') && !text.starts_with('#')
    })
}

fn maybe_words() -> impl Strategy<Value = String> {
    prop_oneof![Just(String::new()), words()]
}

fn angle() -> impl Strategy<Value = Angle> {
    (0.0..360.0_f64).prop_map(|a| on_grid_angle(Angle::deg(a)))
}

fn copies() -> impl Strategy<Value = Copies> {
    prop_oneof![
        Just(Copies::All),
        Just(Copies::AsDrawn),
        Just(Copies::Mirrored)
    ]
}

/// A closed line round a middle, anticlockwise.
fn ring(from: u32) -> impl Strategy<Value = Vec<Point>> {
    prop::collection::vec(200.0..900.0_f64, 3..40).prop_map(move |radii| {
        let n = radii.len() as f64;
        let at = |(k, r): (usize, &f64)| {
            let turn = k as f64 / n * std::f64::consts::TAU;
            on_grid(Point::new(f64::from(from) + r * turn.cos(), r * turn.sin()))
        };
        radii.iter().enumerate().map(at).collect()
    })
}

fn sewn() -> impl Strategy<Value = Vec<SewLine>> {
    prop::collection::vec((maybe_words(), places(0, 2..6)), 0..4).prop_map(|lines| {
        let sew = |(k, (name, line)): (usize, (String, Vec<Point>))| SewLine {
            name,
            closed: k == 3 && line.len() == 3,
            line: {
                let moved = line
                    .iter()
                    .map(|p| Point::new(p.x + k as f64 * 1000.0, p.y));
                let mut moved: Vec<Point> = moved.map(on_grid).collect();
                if geometry::area(&moved).to_mm2() < 0.0 {
                    moved.reverse();
                }
                moved
            },
        };
        lines.into_iter().enumerate().map(sew).collect()
    })
}

fn inner() -> impl Strategy<Value = Vec<InnerLine>> {
    let kind = prop_oneof![
        Just(LineKind::Internal),
        Just(LineKind::Fold),
        Just(LineKind::Placement),
        Just(LineKind::Stripe),
        Just(LineKind::Plaid),
        Just(LineKind::GradeReference),
    ];
    let line = (
        maybe_words(),
        kind,
        copies(),
        places(500, 2..5),
        any::<bool>(),
    );
    prop::collection::vec(line, 0..5).prop_map(|lines| {
        let inner = |(name, kind, on, mut line, closed): (_, _, _, Vec<Point>, bool)| {
            if closed && line.len() > 2 {
                line.push(line[0]);
            }
            InnerLine {
                name,
                kind,
                on,
                line,
            }
        };
        lines.into_iter().map(inner).collect()
    })
}

fn notches() -> impl Strategy<Value = Vec<Notch>> {
    let kind = prop_oneof![
        Just(NotchKind::Slit),
        Just(NotchKind::T),
        Just(NotchKind::Castle),
        Just(NotchKind::Check),
        Just(NotchKind::U),
        Just(NotchKind::Drawn),
    ];
    let notch = (maybe_words(), angle(), 10_u32..80, kind, any::<bool>());
    (prop::collection::vec(notch, 0..6), places(1000, 6..7)).prop_map(|(notches, places)| {
        let notch = |((name, into, depth, kind, double), at)| Notch {
            name,
            at,
            into,
            depth: Length::mm(f64::from(depth) / 10.0),
            kind,
            double,
        };
        notches.into_iter().zip(places).map(notch).collect()
    })
}

fn points() -> impl Strategy<Value = Vec<TurnPoint>> {
    (
        prop::collection::vec((maybe_words(), any::<bool>()), 0..6),
        places(1500, 6..7),
    )
        .prop_map(|(names, places)| {
            let point = |((name, corner), at): ((String, bool), Point)| TurnPoint {
                corner: corner || name.is_empty(),
                name,
                at,
            };
            names.into_iter().zip(places).map(point).collect()
        })
}

fn drills() -> impl Strategy<Value = Vec<Drill>> {
    (
        prop::collection::vec((maybe_words(), copies()), 0..4),
        places(2000, 4..5),
    )
        .prop_map(|(names, places)| {
            let drill = |((name, on), at)| Drill { name, on, at };
            names.into_iter().zip(places).map(drill).collect()
        })
}

fn texts() -> impl Strategy<Value = Vec<Note>> {
    (prop::collection::vec(words(), 0..4), places(2500, 4..5)).prop_map(|(words, places)| {
        let note = |(words, at)| Note { words, at };
        words.into_iter().zip(places).map(note).collect()
    })
}

fn piece() -> impl Strategy<Value = Piece> {
    let said = (
        words(),
        maybe_words(),
        maybe_words(),
        maybe_words(),
        0..5_u32,
        0..5_u32,
    );
    let lines = (ring(3000), sewn(), inner(), prop::option::of(ring(9000)));
    let marks = (notches(), points(), drills(), texts());
    let more = (
        prop::collection::vec(words(), 0..3),
        (place(3000), angle()),
        prop::option::of((place(3001), place(3002))),
        prop::option::of((place(3003), place(3004))),
        prop::collection::vec(words(), 0..3),
    );
    (said, lines, marks, more).prop_map(|(said, lines, marks, more)| {
        let (name, size, category, material, as_drawn, mirrored) = said;
        let (cut, sewn, inner, cutout) = lines;
        let (notches, points, drills, texts) = marks;
        let (notes, (words_at, words_along), grain, mirror, starts) = more;
        let start = |(name, at): (String, &Point)| Named { name, at: *at };
        Piece {
            name,
            size,
            category,
            material,
            as_drawn,
            mirrored,
            notes,
            words_at,
            words_along,
            edge_starts: starts.into_iter().zip(&cut).map(start).collect(),
            cut,
            sewn,
            points,
            grain,
            mirror,
            inner,
            cutouts: cutout.into_iter().collect(),
            notches,
            drills,
            texts,
        }
    })
}

pub fn pattern() -> impl Strategy<Value = PatternFile> {
    let head = (maybe_words(), maybe_words(), maybe_words(), maybe_words());
    (head, prop::collection::vec(piece(), 1..4)).prop_map(
        |((style, author, date, size), pieces)| PatternFile {
            style,
            author,
            date,
            sample_size: size,
            pieces,
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn dxf_written_and_read_is_the_same(pattern in pattern()) {
        let text = dxf::write(&pattern);
        let read = dxf::read(text.as_bytes(), None).unwrap();
        prop_assert_eq!(&read.pattern, &pattern);
        prop_assert!(read.passed_over.is_empty(), "{:?}", read.passed_over);
        prop_assert_eq!(dxf::write(&read.pattern), text);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn svg_written_and_read_is_the_same(pattern in pattern()) {
        let text = svg::write(&pattern);
        let read = svg::read(text.as_bytes()).unwrap();
        prop_assert_eq!(&read.pattern, &pattern);
        prop_assert_eq!(svg::write(&read.pattern), text);
    }
}
