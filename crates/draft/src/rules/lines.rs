//! Rules about lines: smooth through seams, square at corners, the leg straight on its grain.

use geometry::{Point, angle_between};
use style::PartId;
use trade::{Angle, Length};
use words::{Key, Said, key, say};

use super::case::{Broken, Case, beyond, within};
use super::corners::{corners, joints};
use crate::measure::{Measurable, Panel};
use crate::piece::{EdgeId, Piece, PieceId, PointId};

/// How far corners and joints may be off.
const ANGLE_WINDOW: Angle = Angle::deg(2.0);
/// How far the crease may lie from the middle of knee and hem.
const CREASE_OFF: Length = Length::mm(1.0);

pub(super) fn smooth(case: &Case<'_>) -> Vec<Broken> {
    joints(case.pattern)
        .into_iter()
        .filter(|j| beyond(j.bend().to_rad(), ANGLE_WINDOW.to_rad()))
        .map(|j| {
            Broken::warning(
                j.name,
                say::FitLineBends {
                    bend: j.bend().in_deg(1),
                },
            )
        })
        .collect()
}

pub(super) fn square(case: &Case<'_>) -> Vec<Broken> {
    let mut broken: Vec<Broken> = corners(case.pattern)
        .into_iter()
        .filter(|c| beyond(c.off_square().to_rad(), ANGLE_WINDOW.to_rad()))
        .map(|c| {
            Broken::warning(
                c.name,
                say::FitCorner {
                    angle: c.angle.in_deg(1),
                },
            )
        })
        .collect();
    for (panel, name) in [
        (PieceId::Front, PartId::FrontHemAtCrease),
        (PieceId::Back, PartId::BackHemAtCrease),
    ] {
        let Some(piece) = case.pattern.piece(panel) else {
            continue;
        };
        let Some(hem) = piece.edge(EdgeId::Hem) else {
            continue;
        };
        let grain = piece.grain.1 - piece.grain.0;
        let angle = angle_between(hem.direction_at(hem.length() / 2.0), grain);
        let off = (angle - Angle::deg(90.0)).abs();
        if beyond(off.to_rad(), ANGLE_WINDOW.to_rad()) {
            broken.push(Broken::warning(
                name,
                say::FitHemGrain {
                    angle: angle.in_deg(1),
                },
            ));
        }
    }
    broken
}

/// How far a point lies to the right of the line from `foot` to `top`, looking up it.
fn right_of((foot, top): (Point, Point), p: Point) -> Length {
    let along = top - foot;
    Length::mm((p - foot).cross(along) / along.hypot())
}

/// What findings are about on one panel of the leg.
#[derive(Clone, Copy)]
struct Legged {
    inseam: Key,
    outer: Key,
    crease: PartId,
    outseam: PartId,
}

const FRONT: Legged = Legged {
    inseam: key::FIT_FRONT_INSEAM,
    outer: key::FIT_FRONT_OUTSEAM,
    crease: PartId::FrontCrease,
    outseam: PartId::FrontOutseam,
};

const BACK: Legged = Legged {
    inseam: key::FIT_BACK_INSEAM,
    outer: key::FIT_BACK_OUTSEAM,
    crease: PartId::BackCrease,
    outseam: PartId::BackOutseam,
};

fn leg_panels<'a>(case: &'a Case<'_>) -> impl Iterator<Item = (Legged, Panel, &'a Piece)> {
    [
        (FRONT, PieceId::Front, Panel::Front),
        (BACK, PieceId::Back, Panel::Back),
    ]
    .into_iter()
    .filter_map(|(name, id, panel)| Some((name, panel, case.pattern.piece(id)?)))
}

pub(super) fn crease(case: &Case<'_>) -> Vec<Broken> {
    // A straight outseam lies on the grain itself; such a leg has no crease to be even about.
    if case.pattern.spec.straight_outseam {
        return outseam_on_grain(case);
    }
    let mut broken = Vec::new();
    for (name, panel, piece) in leg_panels(case) {
        for (at_knee, inner, outer) in [
            (true, PointId::KneeIn, PointId::KneeOut),
            (false, PointId::HemIn, PointId::HemOut),
        ] {
            let (Some(a), Some(b)) = (piece.point(inner), piece.point(outer)) else {
                continue;
            };
            let off = right_of(piece.grain, a.midpoint(b));
            if beyond(off.abs().to_mm(), CREASE_OFF.to_mm()) {
                let (most, off) = (CREASE_OFF.in_cm(2), off.abs().in_cm(2));
                let message: Said = if at_knee {
                    say::FitCreaseKnee { most, off }.into()
                } else {
                    say::FitCreaseHem { most, off }.into()
                };
                broken.push(Broken::error(name.crease, message));
            }
        }
        broken.extend(crease_at_crotch(case, name, panel, piece));
    }
    broken
}

/// How far a straight outseam may stray between hip and hem: that of a seam walk.
const STRAY: Length = Length::mm(0.5);

fn outseam_on_grain(case: &Case<'_>) -> Vec<Broken> {
    leg_panels(case)
        .filter_map(|(name, _, piece)| {
            let (hip, hem) = (piece.point(PointId::Hip)?, piece.point(PointId::HemOut)?);
            let side = piece.edge(EdgeId::Side)?;
            let off = (right_of(piece.grain, hip) - right_of(piece.grain, hem)).abs();
            let stray = side
                .dense(Length::mm(5.0))
                .into_iter()
                .filter(|p| p.y <= hip.y)
                .map(|p| (right_of(piece.grain, p) - right_of(piece.grain, hem)).abs())
                .fold(off, Length::max);
            (stray > STRAY).then(|| {
                Broken::error(
                    name.outseam,
                    say::FitOutseamStrays {
                        off: stray.in_cm(2),
                    },
                )
            })
        })
        .collect()
}

/// At the crotch line the crease may sit in the middle or up to 1 cm towards the side.
fn crease_at_crotch(case: &Case<'_>, name: Legged, panel: Panel, piece: &Piece) -> Option<Broken> {
    let crotch = piece.point(PointId::Crotch)?;
    let width = case.pattern.width(panel, crotch.y)?;
    let middle = Point::new(crotch.x + width.to_mm() / 2.0, crotch.y);
    let towards_side = -right_of(piece.grain, middle);
    if within(towards_side.to_mm(), -1.0, 10.0) {
        return None;
    }
    let off = towards_side.abs().in_cm(1);
    let message: Said = if towards_side > Length::ZERO {
        say::FitCreaseOutseam { off }.into()
    } else {
        say::FitCreaseInseam { off }.into()
    };
    Some(Broken::warning(name.crease, message))
}

pub(super) fn taper(case: &Case<'_>) -> Vec<Broken> {
    let mut lines: Vec<(Key, Angle)> = Vec::new();
    for (name, _, piece) in leg_panels(case) {
        let (Some(inseam), Some(side)) = (piece.edge(EdgeId::Inseam), piece.edge(EdgeId::Side))
        else {
            continue;
        };
        let up = piece.grain.1 - piece.grain.0;
        // Positive where the leg widens upwards.
        let outwards =
            |v: geometry::Vec2, sign: f64| Angle::rad(sign * v.cross(up).atan2(v.dot(up)));
        lines.push((name.inseam, outwards(-inseam.end_direction(), -1.0)));
        if !case.pattern.spec.straight_outseam {
            lines.push((name.outer, outwards(side.start_direction(), 1.0)));
        }
    }
    let by_angle = |a: &&(Key, Angle), b: &&(Key, Angle)| a.1.total_cmp(&b.1);
    let (Some(least), Some(most)) = (lines.iter().min_by(by_angle), lines.iter().max_by(by_angle))
    else {
        return Vec::new();
    };
    if most.1 - least.1 <= Angle::deg(0.5) {
        return Vec::new();
    }
    vec![
        Broken::warning(
            PartId::LegBelowKnee,
            say::FitTaper {
                by: most.1.in_deg(1),
                least: least.0,
                less: least.1.in_deg(1),
                most: most.0,
            },
        )
        .help(key::FIT_TAPER_HELP),
    ]
}
