//! Numbers beside a view of the garment, each with a thin leader to a detail that has a plate of its own: where the
//! view shows that there is something, the plate tells how it is made.

use flat::View;
use geometry::{BezPath, PathEl, Point, Vec2, bounds_of};
use sewing::{Face, FixingKind, Garment};
use trade::Length;

use crate::dimension::{CIRCLE_MM, unit};
use crate::lettering::{Taken, centred, text_box};
use crate::palette::{HAIRLINE, INK, PAPER, Pen, TYPE_FIGURES};
use crate::plate::PlateId;
use crate::sheet::{Layer, Shape, Sheet, Stroke, circle, open};

/// From the widest place of the garment to the numbers, on paper.
const BESIDE_MM: f64 = 7.0;
/// Clear paper round a number, and how far one may be moved up or down, in steps of so much.
const AROUND_MM: f64 = 0.8;
const STEP_MM: f64 = 1.5;
const STEPS: i32 = 40;
/// A leader over cloth is told from it by a rim of paper.
const RIM_MM: f64 = 0.5;
/// A detail is pointed at in the outer part of its width.
const OUTER_SHARE: f64 = 0.3;

/// The details of a view that have plates, and by which of its parts each is found.
const fn details(view: View, face: Face) -> &'static [(PlateId, &'static str)] {
    match (view, face) {
        (View::Front, Face::Outside) => &[
            (PlateId::BeltLoop, "fixing:loop_edge"),
            (PlateId::WaistbandOutside, "piece:band"),
            (PlateId::CoinPocket, "seam:coin_set"),
            (PlateId::HipPocketMouth, "seam:mouth"),
            (PlateId::Fly, "seam:fly"),
            (PlateId::Hem, "seam:hem"),
        ],
        (View::Front, Face::Inside) => &[
            (PlateId::PocketBag, "piece:pocket_bag"),
            (PlateId::ExtraPocket, "piece:extra_pocket"),
            (PlateId::Fly, "piece:fly_facing"),
            (PlateId::LabelsInSeam, LABELS),
        ],
        (View::Back, Face::Outside) => &[
            (PlateId::BeltLoop, "fixing:loop_edge"),
            (PlateId::Patch, "fixing:patch"),
            (PlateId::WaistbandOutside, "piece:band"),
            (PlateId::BackPocketLeft, "piece:back_pocket_left"),
            (PlateId::BackPocketRight, "piece:back_pocket_right"),
            (PlateId::Hem, "seam:hem"),
        ],
        (View::Back, Face::Inside) => &[
            (PlateId::WaistbandInside, "piece:band"),
            (PlateId::LabelsOnBand, LABELS),
            (PlateId::BackPocketsInside, "seam:back_pocket_set"),
        ],
    }
}

/// Labels are called as the maker called them: no part of a view has this name.
const LABELS: &str = "fixing:<label>";

/// The view with a number beside each detail that is among `shown`, and the plates in the order of their numbers.
/// `one_to` is the scale it is printed at.
pub fn with_callouts(
    sheet: Sheet,
    garment: &Garment,
    (view, face): (View, Face),
    shown: &[PlateId],
    one_to: u32,
) -> (Sheet, Vec<PlateId>) {
    let pen = Pen::for_scale(1.0 / f64::from(one_to.max(1)));
    let mut found: Vec<(PlateId, Point)> = details(view, face)
        .iter()
        .filter(|(plate, _)| shown.contains(plate))
        .filter_map(|(plate, part)| {
            let wanted = |name: &str| match *part {
                LABELS => is_label(garment, name, *plate == PlateId::LabelsOnBand),
                part => name == part,
            };
            Some((*plate, pointed_at(&sheet, wanted)?))
        })
        .collect();
    // Numbers run down the left side and then down the right.
    let right = |p: &Point| p.x >= 0.0;
    found.sort_by(|a, b| {
        let sides = right(&a.1).cmp(&right(&b.1));
        sides.then(a.1.y.total_cmp(&b.1.y))
    });
    let Some(layer) = numbers(&sheet, pen, &found) else {
        return (sheet, Vec::new());
    };
    let mut sheet = sheet;
    sheet.layers.push(layer);
    (sheet, found.into_iter().map(|(plate, _)| plate).collect())
}

/// Whether a part of a view is a label, on the band or in a seam.
fn is_label(garment: &Garment, part: &str, on_band: bool) -> bool {
    garment.fixings.iter().any(|f| {
        let band = f.piece == draft::PieceId::Band;
        matches!(f.kind, FixingKind::Label(..))
            && band == on_band
            && part.strip_prefix("fixing:") == Some(f.from.code())
    })
}

/// Where a leader touches a part: the one of its marks that lies farthest out, a little inside its outer end.
fn pointed_at(sheet: &Sheet, wanted: impl Fn(&str) -> bool) -> Option<Point> {
    let marks = sheet.layers.iter().flat_map(|l| &l.marks);
    let mine = marks.filter(|m| m.part.as_deref().is_some_and(&wanted));
    let outlines = mine.filter_map(|mark| match &mark.shape {
        Shape::Area { path, .. } | Shape::Line { path, .. } => {
            let points = corners(path);
            (!points.is_empty()).then_some(points)
        }
        Shape::Text(_) => None,
    });
    let out = |points: &Vec<Point>| bounds_of(points).center().x.abs();
    let points = outlines.max_by(|a, b| out(a).total_cmp(&out(b)))?;
    let room = bounds_of(&points);
    let end = if room.center().x >= -room.width() * 0.1 {
        room.x1
    } else {
        room.x0
    };
    let near: Vec<Point> = points
        .iter()
        .copied()
        .filter(|p| (p.x - end).abs() <= OUTER_SHARE * room.width() + 0.5)
        .collect();
    let sum: Vec2 = near.iter().map(|p| p.to_vec2()).sum();
    let middle = (sum / near.len() as f64).to_point();
    middle.is_finite().then_some(middle)
}

/// The ends of a path's segments.
fn corners(path: &BezPath) -> Vec<Point> {
    let ends = path.elements().iter().filter_map(|element| match element {
        PathEl::MoveTo(p) | PathEl::LineTo(p) => Some(*p),
        PathEl::QuadTo(_, p) | PathEl::CurveTo(_, _, p) => Some(*p),
        PathEl::ClosePath => None,
    });
    ends.filter(|p| p.is_finite()).collect()
}

/// The numbers with their leaders; none where there is nothing to number.
fn numbers(sheet: &Sheet, pen: Pen, found: &[(PlateId, Point)]) -> Option<Layer> {
    if found.is_empty() {
        return None;
    }
    let marks = sheet.layers.iter().flat_map(|l| &l.marks);
    let widest = marks
        .filter(|m| m.part.is_some())
        .filter_map(|m| match &m.shape {
            Shape::Area { path, .. } => Some(geometry::bounds(path)),
            Shape::Line { .. } | Shape::Text(_) => None,
        })
        .fold(0.0_f64, |most, b| most.max(b.x1).max(-b.x0));
    let mut taken = Taken {
        boxes: sheet.texts().map(text_box).collect(),
        lines: Vec::new(),
    };
    let radius = pen.mm(CIRCLE_MM * 0.86);
    let size = Vec2::new(1.0, 1.0) * (2.0 * (radius + pen.mm(AROUND_MM)));
    let mut layer = Layer::named("callouts");
    for (k, (_, at)) in found.iter().enumerate() {
        let side = if at.x >= 0.0 { 1.0 } else { -1.0 };
        let x = side * (widest + pen.mm(BESIDE_MM));
        let places = (0..STEPS).map(|n| {
            // Level first, then by turns below and above.
            let by = f64::from((n + 1) / 2) * if n % 2 == 0 { -1.0 } else { 1.0 };
            Point::new(x, at.y + by * pen.mm(STEP_MM))
        });
        let centre = taken.place_clear(size, places, |_| Some(*at))?;
        let out = unit(centre - *at)?;
        let leader = [*at, centre - out * radius];
        layer.line(None, open(&leader), pen.stroke(PAPER, Length::mm(RIM_MM)));
        layer.line(None, open(&leader), pen.stroke(INK, HAIRLINE));
        layer.area(None, circle(*at, pen.length(Length::mm(0.75))), PAPER, None);
        layer.area(None, circle(*at, pen.length(Length::mm(0.5))), INK, None);
        taken.keep_clear_of(&leader);
        let ring: Option<Stroke> = Some(pen.stroke(INK, HAIRLINE));
        layer.area(None, circle(centre, Length::mm(radius)), PAPER, ring);
        let mut words = centred(&(k + 1).to_string(), pen.length(TYPE_FIGURES), centre);
        words.bold = true;
        layer.text(None, words);
    }
    Some(layer)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::garment_view;
    use crate::samples::{sewn, words_stand_clear};
    use geometry::Rect;
    use words::Words;

    const VIEWS: [(View, Face); 4] = [
        (View::Front, Face::Outside),
        (View::Front, Face::Inside),
        (View::Back, Face::Outside),
        (View::Back, Face::Inside),
    ];

    #[test]
    fn every_detail_of_a_view_has_a_number_that_stands_clear() {
        let garment = sewn(32, 32);
        for (view, face) in VIEWS {
            let sheet = garment_view(&garment, view, face, Words::english());
            let (sheet, plates) = with_callouts(sheet, &garment, (view, face), &PlateId::ALL, 5);
            let wanted: Vec<PlateId> = details(view, face).iter().map(|d| d.0).collect();
            assert_eq!(plates.len(), wanted.len(), "{view:?} {face:?}: {plates:?}");
            words_stand_clear(&sheet);
            let page = Rect::new(
                sheet.origin.x,
                sheet.origin.y,
                sheet.origin.x + sheet.width.to_mm(),
                sheet.origin.y + sheet.height.to_mm(),
            );
            let layer = sheet.layers.last().unwrap();
            let mut leaders = Vec::new();
            for mark in &layer.marks {
                if let Shape::Line { path, .. } = &mark.shape {
                    let ends = corners(path);
                    assert!(page.contains(ends[0]) && page.contains(ends[1]));
                    leaders.push((ends[0], ends[1]));
                }
            }
            for (k, one) in leaders.iter().enumerate() {
                for other in leaders[k + 1..].iter().filter(|o| *o != one) {
                    assert!(!geometry::crosses(*one, *other), "{view:?} {face:?}");
                }
            }
        }
    }

    #[test]
    fn a_detail_without_a_plate_has_no_number() {
        let garment = sewn(32, 32);
        let seen = (View::Back, Face::Outside);
        let sheet = garment_view(&garment, seen.0, seen.1, Words::english());
        let (with, plates) = with_callouts(sheet.clone(), &garment, seen, &[], 5);
        assert!(plates.is_empty());
        assert_eq!(with, sheet);
    }
}
