//! How the plies of each construction lie: centre lines and what else the construction brings.

mod edges;
mod joins;
mod set;

use std::f64::consts::FRAC_PI_2;

use geometry::Point;
use sewing::{Garment, allowances, turned_depth};
use style::{Construction, MeasureId, Seam, SeamId};
use trade::Length;
use words::{Key, key};

use super::band::Corner;
use super::fabrics::{Fabric, Fabrics, fabrics};
use super::model::{End, SectionPly, SectionWidth, Wrap};

/// Air drawn between two plies, so that both outlines print.
pub(super) const AIR: f64 = 0.06;
/// Cloth shown beyond the last thing there is to see.
const TAIL: f64 = 8.0;
/// Half the gap between two cut edges that meet.
const CLEAR: f64 = 0.25;
/// A step of a ply from one height to the next takes at least this long.
const STEP: f64 = 4.0;
/// Cut ends keep this far from the step of the ply around them.
const BEFORE_STEP: f64 = 1.2;
/// From the cut edge to the needle of an overedge (common practice: 4.8 mm, 3/16 inch).
const BITE: f64 = 4.8;
/// From the first row of a seam that encloses its edges to those edges (common practice: 5 to 6 mm).
const FIRST_TO_EDGES: f64 = 5.0;
/// Rows and pieces farther from the seam line than this are not drawn.
pub(super) const FARTHEST: f64 = 150.0;

/// The plies of a seam as they lie, and what its construction brings of itself.
#[derive(Clone, Debug, Default)]
pub(super) struct Lie {
    pub plies: Vec<SectionPly>,
    pub widths: Vec<SectionWidth>,
    /// The needle line of the row that joins the plies.
    pub joining: Option<(Point, Point)>,
    pub joined_by: JoinedBy,
    pub wraps: Vec<Wrap>,
    /// Rows go from this height to that one only, not through all that lies there.
    pub sewn: Option<(f64, f64)>,
}

/// Which rows of a seam are the one that joins the plies.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum JoinedBy {
    /// Those on the seam line.
    #[default]
    RowsOnLine,
    /// Those beyond the seam line, in the allowances.
    RowsBeyond,
}

/// Everything a construction is laid from.
struct Ground<'a> {
    garment: &'a Garment,
    seam: &'a Seam,
    over: Fabric,
    under: Fabric,
    strip: Fabric,
    lining: Option<Fabric>,
    /// Allowances of the two plies.
    a: (f64, f64),
    /// The row farthest from the seam line.
    far: f64,
}

pub(super) fn lie(garment: &Garment, seam: &Seam, thickened: f64) -> Lie {
    let Fabrics {
        over,
        under,
        strip,
        lining,
    } = fabrics(garment, seam, thickened);
    let both = allowances(seam, garment.pattern.spec[MeasureId::HemDepth]);
    let rows = seam.rows.iter().map(|r| r.offset.to_mm());
    let ground = Ground {
        garment,
        seam,
        over,
        under,
        strip,
        lining,
        a: (usable(both.over), usable(both.under)),
        far: rows
            .filter(|mm| (0.0..=FARTHEST).contains(mm))
            .fold(0.0, f64::max),
    };
    match seam.construction {
        Construction::PressedOpen => ground.pressed_open(),
        Construction::LapFelled => ground.felled(),
        Construction::Overlocked if seam.id == SeamId::FlyEdge => ground.neatened(),
        Construction::SafetyStitched | Construction::Overlocked if seam.id == SeamId::BagClose => {
            ground.edges_together()
        }
        Construction::FrenchSeam => ground.french(),
        Construction::BoundEdge => ground.bound(),
        Construction::CleanFinished => ground.clean(),
        Construction::MockFelled | Construction::SafetyStitched | Construction::Overlocked => {
            ground.to_one_side()
        }
        Construction::BandOverEdge | Construction::BandTurned => ground.band(),
        Construction::RolledHem | Construction::FoldedHem => {
            ground.hem(usable(garment.pattern.spec[MeasureId::HemDepth]))
        }
        Construction::TurnedHem => ground.hem(usable(turned_depth(seam))),
        Construction::TurnedEdge => ground.turned_edge(),
        Construction::PatchSet => ground.patch(),
        Construction::LaidOn => ground.laid_on(),
        Construction::Strip => ground.strip(),
        Construction::Surface => ground.surface(),
    }
}

fn usable(length: Length) -> f64 {
    let mm = length.to_mm();
    if mm.is_finite() {
        mm.clamp(0.0, FARTHEST)
    } else {
        0.0
    }
}

/// Heights of the middles of plies, from the innermost up.
fn stack<const N: usize>(thicknesses: [f64; N]) -> [f64; N] {
    let mut foot = 0.0;
    thicknesses.map(|t| {
        let middle = foot + t / 2.0;
        foot += t + AIR;
        middle
    })
}

fn ply(fabric: &Fabric, corners: Vec<Corner>, face_left: bool, ends: (End, End)) -> SectionPly {
    SectionPly {
        name: fabric.name,
        thickness: Length::mm(fabric.thickness),
        face: fabric.face,
        reverse: fabric.reverse,
        ends,
        allowance: Length::ZERO,
        corners,
        face_left,
        allowance_from: None,
        trim: false,
        edge: match ends {
            (End::Overedged, _) | (_, End::Overedged) => Some(key::SECTION_EDGE_OVEREDGED),
            (_, End::Selvedge) => Some(key::SECTION_EDGE_SELVEDGE),
            (_, End::Raw) => Some(key::SECTION_EDGE_COVERED),
            _ => None,
        },
    }
}

fn allowed(ply: SectionPly, allowance: f64, from: Point) -> SectionPly {
    SectionPly {
        allowance: Length::mm(allowance),
        allowance_from: Some(from),
        ..ply
    }
}

fn width(name: Key, mm: f64) -> SectionWidth {
    SectionWidth {
        name,
        from: Length::ZERO,
        to: Length::mm(mm),
    }
}

/// An allowance that lies flat between two distances from the seam line.
fn allowance(from: f64, to: f64) -> SectionWidth {
    SectionWidth {
        name: key::SECTION_WIDTH_ALLOWANCE,
        from: Length::mm(from),
        to: Length::mm(to),
    }
}

/// Where a ply that folds at `apex` (the middle of the cloth) and goes back to the left ends, when
/// `a` of it lie beyond the apex.
fn back_from(apex: f64, radius: f64, a: f64) -> f64 {
    apex - radius - (a - FRAC_PI_2 * radius).max(0.0)
}

/// How far a square cut end reaches past the beginning of the round fold that holds it: its
/// corners meet the inside of the fold after √(t · air), of which a fifth is kept clear.
fn nook(thickness: f64) -> f64 {
    0.8 * (thickness * AIR).sqrt()
}

/// The length of a step of this height: never steep, so that cloth lies on cloth.
fn slope(rise: f64) -> f64 {
    STEP.max(2.2 * rise.abs())
}

/// Clear length between a cut end and a step.
fn before_step(thickness: f64) -> f64 {
    BEFORE_STEP.max(1.1 * thickness)
}

fn wrap(plies: &[SectionPly], edge: f64, beyond: f64, (foot, top): (f64, f64)) -> Wrap {
    let half = plies.first().map_or(0.4, |p| p.thickness.to_mm() / 2.0);
    Wrap {
        needle: edge - beyond * BITE,
        edge: edge + beyond * AIR,
        top: top + half,
        bottom: foot - half,
    }
}
