//! Nests, movements of points, steps of the chart.

use cutting::{GradeError, Landmark, LengthName, Part, increments, length_name, movements, nest};
use draft::{EdgeId, PieceId, PointId};
use geometry::Point;
use sewing::On;
use style::{MeasureId, Size};
use trade::Length;

use crate::common::{all_cut, ferryman, from_outline};

const CROTCH: Landmark = Landmark::Point(PointId::Crotch);

#[test]
fn all_sizes_lie_on_each_other_at_the_point() {
    let run = all_cut();
    let nested = nest(run, PieceId::Front, Part::Whole, On::AsDrawn, CROTCH).unwrap();
    assert_eq!(nested.sizes.len(), 27);
    for one in &nested.sizes {
        let crotch = &one
            .sewn
            .iter()
            .find(|(name, _)| *name == EdgeId::Inseam)
            .unwrap()
            .1[0];
        assert!((*crotch - Point::ORIGIN).hypot() < 1e-9);
        assert!(from_outline(&one.cut, Point::ORIGIN) < 40.0);
    }
    // A larger waist is a larger piece.
    let wide = |k: usize| {
        let xs = nested.sizes[k].cut.iter().map(|p| p.x);
        xs.clone().fold(f64::MIN, f64::max) - xs.fold(f64::MAX, f64::min)
    };
    assert!(wide(24) > wide(0));
}

/// Points move as the chart says: the inseam grows by an inch a length tag, cut 1/0.92 of that.
#[test]
fn points_move_as_the_chart_grows() {
    let run = all_cut();
    let base = Size::new(32, 32);
    let table = movements(run, base, PieceId::Front, Part::Whole, On::AsDrawn, CROTCH).unwrap();
    assert_eq!(table.sizes.len(), 27);
    let point = |id| {
        let at = Landmark::Point(id);
        table.points.iter().find(|m| m.point == at).unwrap()
    };
    let column = |size: Size| table.sizes.iter().position(|s| *s == size).unwrap();
    for row in &table.points {
        assert_eq!(
            row.by[column(base)].unwrap().hypot(),
            0.0,
            "{:?}",
            row.point
        );
    }
    assert_eq!(point(PointId::Crotch).by[0].unwrap().hypot(), 0.0);
    let longer = point(PointId::HemOut).by[column(Size::new(32, 34))].unwrap();
    assert!((longer.y + 2.0 * 25.4 / 0.92).abs() < 0.5, "{longer:?}");
    // The levels of seat and knee do not change with the length.
    let knee = point(PointId::KneeOut).by[column(Size::new(32, 34))].unwrap();
    assert!(knee.hypot() < 0.5, "{knee:?}");
    assert!(
        table
            .points
            .iter()
            .any(|m| m.point.code() == "notch outseam knee on side")
    );
    let wider = point(PointId::Hip).by[column(Size::new(34, 32))].unwrap();
    assert!(wider.x > 5.0, "{wider:?}");
}

#[test]
fn what_is_not_there_is_said() {
    let run = &all_cut()[..2];
    let at = |point| nest(run, PieceId::Front, Part::Whole, On::AsDrawn, point);
    let error = at(Landmark::Point(PointId::LoopTop)).unwrap_err();
    assert!(
        error
            .to_string()
            .contains("its points are waist_centre, fly_foot"),
        "{error}"
    );
    assert!(matches!(
        nest(&[], PieceId::Front, Part::Whole, On::Both, CROTCH),
        Err(GradeError::NoPiece(_))
    ));
    let base = Size::new(60, 60);
    assert!(matches!(
        movements(run, base, PieceId::Front, Part::Whole, On::Both, CROTCH),
        Err(GradeError::NoSize(_))
    ));
}

#[test]
fn steps_of_the_chart_with_their_breaks() {
    let doc = ferryman().style;
    let steps = increments(&doc);
    let fly: Vec<_> = steps
        .iter()
        .filter(|s| s.measure == MeasureId::FlyLength && s.from.waist != s.to.waist)
        .collect();
    assert_eq!(fly.len(), 8);
    // 1/8 in an inch up to 34, nothing above.
    let broken: Vec<Size> = fly.iter().filter(|s| s.breaks).map(|s| s.from).collect();
    assert_eq!(broken, [Size::new(34, 32)]);
    assert!((fly[0].by - Length::inches(0.125)).to_mm().abs() < 1e-9);
    // From 34 to 36 the waist grows by two inches, one an inch.
    let waist = steps
        .iter()
        .find(|s| s.measure == MeasureId::Waist && s.to.waist == style::Tag::inches(36))
        .unwrap();
    assert!((waist.by - Length::inches(2.0)).to_mm().abs() < 1e-9);
    assert!((waist.per_inch - Length::inches(1.0)).to_mm().abs() < 1e-9);
    let inseam = steps
        .iter()
        .filter(|s| s.measure == MeasureId::Inseam && s.from.length != s.to.length);
    assert!(
        inseam
            .map(|s| s.by)
            .all(|by| (by - Length::inches(2.0)).to_mm().abs() < 1e-9)
    );
}

#[test]
fn lengths_have_names() {
    let sizes = ferryman().style.sizes;
    let name = |length| length_name(&sizes, Size::new(32, length));
    assert_eq!(name(30), LengthName::Short);
    assert_eq!(name(32), LengthName::Regular);
    assert_eq!(name(34), LengthName::Long);
}
