//! Crossings under the belt loops: top, foot, and the band seam between them.

use draft::{PieceId, PointId};
use geometry::Point;
use style::{MeasureId, SeamId};
use trade::Length;
use words::{Key, Said, key, say};

use super::crossing::{Crossing, CrossingKind, Found, Sewing, Site};
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
        let at_loop = ground.name;
        let strip = site.lying(SeamId::LoopEdge).plain();
        // Each end of a loop is folded under.
        let end = strip.times(2);
        let mut push = |y: f64, name: Said, plies: Plies, sewn: bool| {
            let found = Found {
                kind: CrossingKind::Loop,
                name,
                plies,
                trimmed: None,
                sewn: sewn.then_some(Sewing {
                    seam: SeamId::LoopEdge,
                    machine: BARTACKER,
                }),
                piece: PieceId::Band,
                on: On::AsDrawn,
            };
            out.push(site.crossing(found, Point::new(fixing.at.x, y)));
        };
        let foot = fixing.at.y - half;
        let at_seam = band_over(site, ground.body);
        push(
            fixing.at.y + half,
            say::CrossingLoopTop { spot: at_loop }.into(),
            end.and(Plies::shell(2)),
            true,
        );
        if foot < 0.0 {
            push(
                0.0,
                say::CrossingLoopSeam { spot: at_loop }.into(),
                strip.and(at_seam),
                false,
            );
            push(
                foot,
                say::CrossingLoopFoot { spot: at_loop }.into(),
                end.and(ground.body),
                true,
            );
        } else if foot < top {
            push(
                foot,
                say::CrossingLoopFoot { spot: at_loop }.into(),
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
    name: Key,
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
        let ground = |body, name| Ground { body, name };
        let mouth = spec[MeasureId::MouthWidth].to_mm();
        if near(self.centre, seat) {
            ground(
                site.lying(SeamId::Seat).plain(),
                key::CROSSING_LOOP_AT_CENTRE_BACK,
            )
        } else if near(self.left, outseam) {
            ground(outseam_at_band(site), key::CROSSING_LOOP_AT_LEFT_OUTSEAM)
        } else if near(self.right, outseam) {
            ground(outseam_at_band(site), key::CROSSING_LOOP_AT_RIGHT_OUTSEAM)
        } else if x > self.left && x < self.right {
            let name = if x < self.centre {
                key::CROSSING_LOOP_ON_LEFT_BACK
            } else {
                key::CROSSING_LOOP_ON_RIGHT_BACK
            };
            ground(Plies::shell(1), name)
        } else {
            let left = x < self.centre;
            let name = if left {
                key::CROSSING_LOOP_ON_LEFT_FRONT
            } else {
                key::CROSSING_LOOP_ON_RIGHT_FRONT
            };
            let from_side = if left { self.left - x } else { x - self.right };
            let from_centre = if left { x } else { self.end - x };
            let body = if from_side < mouth && from_centre > 0.0 {
                MOUTH_GROUND
            } else {
                Plies::shell(1)
            };
            ground(body, name)
        }
    }
}
