//! Crossings under the belt loops: top, foot, and the band seam between them.

use draft::{PieceId, PointId};
use geometry::Point;
use style::{MeasureId, SeamId};
use trade::Length;

use super::crossing::{Crossing, CrossingKind, Found, Site};
use super::machine::BARTACKER;
use super::panels::{MOUTH_GROUND, band_over, outseam_at_band};
use super::plies::Plies;
use crate::allowance::{Fell, allowances};
use crate::garment::{Fixing, FixingKind, On};

pub(super) fn crossings(site: &Site<'_>, fixings: &[Fixing]) -> Vec<Crossing> {
    let Some(marks) = Marks::of(site) else {
        return Vec::new();
    };
    let top = site.context.pattern.spec[MeasureId::BandHeight].to_mm();
    let mut out = Vec::new();
    for fixing in fixings {
        let FixingKind::Loop(length, width) = fixing.kind else {
            continue;
        };
        let half = length.to_mm() / 2.0;
        let ground = marks.under(site, fixing.at.x, width);
        let name = &ground.name;
        let strip = site.lying(SeamId::LoopEdge).plain();
        // Each end of a loop is folded under.
        let end = strip.times(2);
        let mut push = |y: f64, at: String, plies: Plies, sewn: bool| {
            let found = Found {
                kind: CrossingKind::Loop,
                name: at,
                plies,
                trimmed: None,
                machine: sewn.then_some(BARTACKER),
                piece: PieceId::Band,
                on: On::AsDrawn,
            };
            out.push(site.crossing(found, Point::new(fixing.at.x, y)));
        };
        let foot = fixing.at.y - half;
        let at_seam = band_over(site, ground.body);
        push(
            fixing.at.y + half,
            format!("under the top of the loop {name}"),
            end.and(Plies::shell(2)),
            true,
        );
        if foot < 0.0 {
            push(
                0.0,
                format!("where the loop {name} crosses the band seam"),
                strip.and(at_seam),
                false,
            );
            push(
                foot,
                format!("under the foot of the loop {name}"),
                end.and(ground.body),
                true,
            );
        } else if foot < top {
            push(
                foot,
                format!("under the foot of the loop {name}"),
                end.and(at_seam),
                true,
            );
        }
    }
    out
}

/// Places along the band, millimetres from its left end.
struct Marks {
    left: f64,
    centre: f64,
    right: f64,
    end: f64,
}

struct Ground {
    body: Plies,
    name: String,
}

impl Marks {
    fn of(site: &Site<'_>) -> Option<Marks> {
        let x = |id| site.point(PieceId::Band, id).map(|p| p.x);
        Some(Marks {
            left: x(PointId::SideLeft)?,
            centre: x(PointId::CentreBack)?,
            right: x(PointId::SideRight)?,
            end: x(PointId::CentreFrontRight)?,
        })
    }

    /// The body just below the band under a loop, and what the loop is called.
    fn under(&self, site: &Site<'_>, x: f64, width: Length) -> Ground {
        let half = width.to_mm() / 2.0;
        let spec = &site.context.pattern.spec;
        let seat = site
            .seam(SeamId::Seat)
            .map_or(Length::ZERO, |seam| Fell::of(seam).width);
        let outseam = site
            .seam(SeamId::Outseam)
            .map_or(Length::ZERO, |seam| allowances(seam, Length::ZERO).over);
        let near = |mark: f64, reach: Length| (x - mark).abs() < half + reach.to_mm();
        let ground = |body, name: &str| Ground {
            body,
            name: name.to_owned(),
        };
        let mouth = spec[MeasureId::MouthWidth].to_mm();
        if near(self.centre, seat) {
            ground(site.lying(SeamId::Seat).plain(), "at the centre back")
        } else if near(self.left, outseam) {
            ground(outseam_at_band(site), "at the left outseam")
        } else if near(self.right, outseam) {
            ground(outseam_at_band(site), "at the right outseam")
        } else if x > self.left && x < self.right {
            let side = if x < self.centre { "left" } else { "right" };
            ground(Plies::shell(1), &format!("on the {side} back"))
        } else {
            let left = x < self.centre;
            let side = if left { "left" } else { "right" };
            let from_side = if left { self.left - x } else { x - self.right };
            let from_centre = if left { x } else { self.end - x };
            let body = if from_side < mouth && from_centre > 0.0 {
                MOUTH_GROUND
            } else {
                Plies::shell(1)
            };
            ground(body, &format!("on the {side} front"))
        }
    }
}
