//! Setting brought pieces into the frames the draft draws them in.

use crate::piece::EdgeId;
use geometry::{Affine, Point, Vec2};
use style::MeasureId;
use trade::Length;

use super::panel::Panel;
use crate::spec::Spec;

/// How far the file's notch for the centre front may lie from where the chart's overlap puts it.
const NEAR_OVERLAP: Length = Length::mm(20.0);

/// The map that turns `from` (a direction) into `to` and then lays the point `at` on `onto`.
pub(super) fn laid(at: Point, from: Vec2, onto: Point, to: Vec2) -> Affine {
    let turn = Affine::rotate(to.atan2() - from.atan2());
    Affine::translate(onto.to_vec2()) * turn * Affine::translate(-at.to_vec2())
}

/// The piece with its grain upright and the end of `below` lower than the start of `above`.
pub(super) fn upright(panel: &Panel, above: EdgeId, below: EdgeId) -> Result<Panel, String> {
    let up = Vec2::new(0.0, 1.0);
    let grain = panel.grain.1 - panel.grain.0;
    let turned = panel.moved(laid(panel.grain.0, grain, panel.grain.0, up));
    let (high, low) = (turned.need(above)?.start(), turned.need(below)?.end());
    if low.y < high.y {
        return Ok(turned);
    }
    let mut over = turned.moved(laid(turned.grain.0, up, turned.grain.0, -up));
    over.grain = (over.grain.1, over.grain.0);
    Ok(over)
}

/// The band as the draft lays it: its seam from the origin along x.
pub(super) fn band(panel: &Panel, spec: &mut Spec) -> Result<Panel, String> {
    let mut panel = panel.clone();
    let join = panel.need(EdgeId::Join)?.clone();
    let stated = join.length() - spec[MeasureId::BandOverlap];
    let notch = panel.notch_near(&join, stated, NEAR_OVERLAP);
    panel.split_end(
        EdgeId::Join,
        EdgeId::Overlap,
        join.length() - notch.unwrap_or(stated),
    )?;
    let (from, to) = (
        panel.need(EdgeId::Join)?.start(),
        panel.need(EdgeId::Overlap)?.end(),
    );
    let laid = panel.moved(laid(from, to - from, Point::ORIGIN, Vec2::new(1.0, 0.0)));
    spec.set(MeasureId::BandHeight, laid.length(EdgeId::EndLeft)? / 2.0);
    spec.set(MeasureId::BandOverlap, laid.length(EdgeId::Overlap)?);
    Ok(laid)
}

/// A pocket with its top edge level, its middle at the origin and its body below.
pub(super) fn hung(panel: &Panel) -> Result<Panel, String> {
    let top = panel.need(EdgeId::Top)?;
    let middle = top.start().midpoint(top.end());
    let along = top.end() - top.start();
    if along.hypot() < Length::mm(5.0).to_mm() {
        return Err("a pocket's top edge is shorter than 5 mm".to_owned());
    }
    Ok(panel.moved(laid(middle, along, Point::ORIGIN, Vec2::new(-1.0, 0.0))))
}
