#![allow(clippy::unwrap_used)]
//! Every plate of many garments: words apart, inside the sheet, on the page; stitches as counted.

use std::sync::LazyLock;

use geometry::PathEl;
use sewing::{Garment, make};
use style::{
    BandMethod, Closing, CoinShape, Drawing, DrawnLine, DrawnStep, HemEnds, HemJoin, LabelFold,
    Letters, Lining, Loaded, MeasureId, SeamId, Size, Units,
};
use trade::Length;
use words::Words;

use super::page::{TALL_MM, WIDE_MM};
use super::{Plate, PlateId, plates};
use crate::samples::{ferryman, raw, words_stand_clear};
use crate::sheet::{Mark, Shape};

/// The demo in several sizes, and styles that lack or change what plates show.
static GARMENTS: LazyLock<Vec<(String, Garment, Vec<Plate>)>> = LazyLock::new(|| {
    garments()
        .into_iter()
        .map(|(name, garment)| {
            let plates = plates(&garment, Words::english());
            (name, garment, plates)
        })
        .collect()
});

fn garments() -> Vec<(String, Garment)> {
    let loaded = ferryman();
    let base = Size::new(32, 32);
    let mut out = Vec::new();
    for size in [base, Size::new(28, 30), Size::new(38, 34)] {
        let garment = make(&loaded.style, &loaded.collection, size);
        out.push((format!("size {size}"), garment));
    }
    let mut other = |name: &str, change: &dyn Fn(&mut Loaded)| {
        let mut loaded = ferryman();
        change(&mut loaded);
        let garment = make(&loaded.style, &loaded.collection, base);
        out.push((name.to_owned(), garment));
    };
    for (word, shape) in CoinShape::WORDS {
        other(word, &|l| l.style.pockets.coin.shape = *shape);
    }
    other("coin pocket drawn as a shield", &|l| {
        let at = |x: f64, y: f64| [Length::mm(x), Length::mm(y)];
        l.style.pockets.coin.shape = CoinShape::Free;
        l.style.pockets.coin.drawing = Some(Drawing {
            lines: vec![DrawnLine {
                from: at(0.0, 0.0),
                steps: vec![
                    DrawnStep::Curve(at(-6.0, 20.0), at(-4.0, 45.0), at(4.0, 55.0)),
                    DrawnStep::Straight(at(37.0, 85.0)),
                    DrawnStep::Straight(at(70.0, 55.0)),
                    DrawnStep::Straight(at(74.0, 0.0)),
                ],
                closed: false,
            }],
        });
    });
    other("inches", &|l| l.collection.units = Units::Inches);
    other("no rivets", &|l| l.style.rivets = None);
    other("no coin rivets, no extra pocket, zip", &|l| {
        if let Some(rivets) = &mut l.style.rivets {
            rivets.coin = false;
        }
        l.style.pockets.extra = None;
        l.style.fly.closing = Closing::Zip;
    });
    other("linings none and full, pockets alike", &|l| {
        l.style.pockets.back.left.lining = Lining::None;
        l.style.pockets.back.right.lining = Lining::Full;
        l.style.pockets.back.right.outer_drop = Length::ZERO;
    });
    other("coin on the left, extra on the right", &|l| {
        l.style.pockets.coin.side = style::Side::Left;
        if let Some(extra) = &mut l.style.pockets.extra {
            extra.side = style::Side::Right;
        }
    });
    other("no seams", &|l| l.style.seams.clear());
    other(
        "band in two rows, no roping, hem overlapped at the outseam",
        &|l| {
            l.style.band.method = BandMethod::TwoRow;
            if let Some(row) = l
                .style
                .seams
                .get_mut(&SeamId::Band)
                .and_then(|s| s.rows.as_mut()?.get_mut(1))
            {
                row.offset = Length::mm(36.0);
            }
            l.style.hem.roping = false;
            l.style.hem.join = HemJoin::Outseam;
            l.style.hem.ends = HemEnds::Overlapped;
        },
    );
    other(
        "no patch, no labels, two loops, hem backtacked at the back",
        &|l| {
            l.style.patch = None;
            l.style.labels.clear();
            l.style.loops.count = 2;
            l.style.hem.join = HemJoin::BackOfLeg;
            l.style.hem.ends = HemEnds::Backtacked;
        },
    );
    other(
        "zip, letters raised, labels folded otherwise, in inches",
        &|l| {
            l.collection.units = Units::Inches;
            l.style.fly.closing = Closing::Zip;
            l.style.fly.buttons = 0;
            l.style.fly.button = None;
            let button = l.collection.trims.values().next().cloned();
            if let Some(mut zip) = button {
                zip.length = Some(Length::mm(150.0));
                l.collection.trims.insert("zip".to_owned(), zip);
                l.style.fly.zip = Some("zip".to_owned());
            }
            if let Some(patch) = &mut l.style.patch {
                patch.letters = Letters::Raised;
            }
            let folds = [LabelFold::MitreFold, LabelFold::CentreFold, LabelFold::Flat];
            for (label, fold) in l.style.labels.iter_mut().zip(folds) {
                label.fold = fold;
            }
        },
    );
    out
}

fn needle_points(mark: &Mark) -> Option<(&str, usize)> {
    let name = mark.part.as_deref()?.strip_prefix("needle-points:")?;
    let Shape::Line { path, .. } = &mark.shape else {
        return None;
    };
    let moves = path.elements().iter();
    Some((
        name,
        moves.filter(|e| matches!(e, PathEl::MoveTo(_))).count(),
    ))
}

/// Needle points on the sheet under this name.
fn marked(plate: &Plate, name: &str) -> usize {
    plate
        .sheet
        .layers
        .iter()
        .flat_map(|l| &l.marks)
        .filter_map(needle_points)
        .filter(|(n, _)| *n == name)
        .map(|(_, count)| count)
        .sum()
}

#[test]
fn words_keep_apart_and_every_plate_fits_its_page() {
    for (name, _, plates) in GARMENTS.iter() {
        for plate in plates {
            let sheet = &plate.sheet;
            assert!(
                sheet.width.to_mm() <= WIDE_MM + 1e-9,
                "{name} {}",
                plate.id.code()
            );
            assert!(
                sheet.height.to_mm() <= TALL_MM + 1e-9,
                "{name} {}",
                plate.id.code()
            );
            words_stand_clear(sheet);
        }
    }
}

#[test]
fn stitches_on_a_plate_are_those_that_are_sewn() {
    let mut rows = 0;
    for (name, garment, plates) in GARMENTS.iter() {
        let garment = garment.as_sewn();
        for plate in plates {
            let mut names: Vec<String> = Vec::new();
            for drawn in &plate.stitches {
                let row = &garment.rows[drawn.row];
                let here = format!(
                    "{name}: {} {} {}",
                    plate.id.code(),
                    row.seam.code(),
                    row.number
                );
                assert_eq!((&row.seam, row.number), (&drawn.seam, drawn.number));
                if drawn.whole {
                    assert_eq!(drawn.drawn, row.stitches(), "{here}");
                } else {
                    assert!(drawn.drawn < row.stitches(), "{here}");
                }
                let of = format!("{}:{}", row.seam.code(), row.number);
                if !names.contains(&of) {
                    names.push(of);
                }
                rows += 1;
            }
            for of in names {
                let said: usize = plate
                    .stitches
                    .iter()
                    .filter(|d| format!("{}:{}", d.seam.code(), d.number) == of)
                    .map(|d| d.drawn)
                    .sum();
                assert_eq!(marked(plate, &of), said, "{name}: {} {of}", plate.id.code());
            }
        }
    }
    assert!(rows > 100, "{rows}");
}

#[test]
fn needle_points_stand_a_pitch_apart() {
    let garment = make(&ferryman().style, &ferryman().collection, Size::new(32, 32));
    let plate = plates(&garment, Words::english())
        .into_iter()
        .find(|p| p.id == PlateId::CoinPocket)
        .unwrap();
    let pitch = garment
        .as_sewn()
        .rows
        .iter()
        .find(|r| r.seam == SeamId::CoinHem)
        .unwrap()
        .density
        .pitch()
        .to_mm()
        * plate.scale.times();
    let mark = plate
        .sheet
        .layers
        .iter()
        .flat_map(|l| &l.marks)
        .find(|m| m.part.as_deref() == Some("needle-points:coin_hem:1"))
        .unwrap();
    let Shape::Line { path, .. } = &mark.shape else {
        panic!("a line")
    };
    let at: Vec<_> = path
        .elements()
        .iter()
        .filter_map(|e| match e {
            PathEl::MoveTo(p) => Some(*p),
            _ => None,
        })
        .collect();
    // The hem's row is straight.
    for pair in at.windows(2) {
        assert!(((pair[1] - pair[0]).hypot() - pitch).abs() < 1e-6);
    }
}

#[test]
fn dimensions_say_what_the_style_says() {
    let garment = raw(32, 32);
    let says = |id: PlateId, words: &[&str]| {
        let all = plates(&garment, Words::english());
        let plate = all.iter().find(|p| p.id == id).unwrap();
        let texts: Vec<&str> = crate::samples::texts(&plate.sheet)
            .iter()
            .map(|t| t.words.as_str())
            .collect();
        for word in words {
            assert!(
                texts.contains(word),
                "{}: {word} not in {texts:?}",
                id.code()
            );
        }
    };
    // Chart and style of the demo: coin 7.5 × 8.5 cm, foot 6 mm narrower, 9 mm pointed, 2.2 cm below
    // the band and 1.4 cm from the outseam.
    says(
        PlateId::CoinPocket,
        &["7.5 cm", "8.5 cm", "6.9 cm", "9 mm", "2.2 cm", "1.4 cm"],
    );
    says(PlateId::HipPocketMouth, &["mouth 10.5 cm", "mouth 7 cm"]);
    says(
        PlateId::PocketBag,
        &["bag 27 cm", "bag 19.5 cm", "facing 8 cm"],
    );
    // The rows of the demo's hems and of the seams that set its pockets, square from their edges.
    says(
        PlateId::PocketCorners,
        &["1.6 mm", "8 mm", "2 mm", "8.4 mm"],
    );
    says(
        PlateId::ExtraPocket,
        &["4.7 cm", "9.5 cm", "6.3 cm", "R 2.35 cm"],
    );
    says(
        PlateId::BackPocketRight,
        &[
            "15.5 cm",
            "17 cm",
            "12.8 cm",
            "13.8 cm",
            "14.4 cm",
            "outer drop 6 mm",
            "3.2 cm",
            "5.5 cm",
        ],
    );
}

#[test]
fn a_plate_is_left_out_where_the_style_has_no_such_detail() {
    let mut loaded = ferryman();
    loaded.style.pockets.extra = None;
    let garment = make(&loaded.style, &loaded.collection, Size::new(32, 32));
    let ids: Vec<PlateId> = plates(&garment, Words::english())
        .iter()
        .map(|p| p.id)
        .collect();
    assert!(!ids.contains(&PlateId::ExtraPocket), "{ids:?}");
    assert!(ids.contains(&PlateId::CoinPocket));
}

#[test]
fn a_chart_that_cannot_be_drafted_still_gives_plates_that_stand_clear() {
    let mut loaded = ferryman();
    for measure in [MeasureId::Waist, MeasureId::Seat, MeasureId::Thigh] {
        if let Some(entry) = loaded.style.chart.get_mut(&measure) {
            entry.value = entry.value * 0.4;
        }
    }
    let garment = make(&loaded.style, &loaded.collection, Size::new(32, 32));
    assert!(garment.conflict.is_some());
    for plate in plates(&garment, Words::english()) {
        words_stand_clear(&plate.sheet);
    }
}
