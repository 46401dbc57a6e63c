//! How the plies of each construction lie: centre lines and what else the construction brings.

use std::f64::consts::{FRAC_PI_2, PI};

use geometry::Point;
use sewing::{EDGE_MARGIN, Fell, Garment, allowances, turned_depth};
use style::{Construction, Seam};
use trade::Length;

use super::band::{Corner, Trail};
use super::fabrics::{Fabric, fabrics};
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
/// Rows and pieces farther from the seam line than this are not drawn.
pub(super) const FARTHEST: f64 = 150.0;

/// The plies of a seam as they lie, and what its construction brings of itself.
#[derive(Clone, Debug, Default)]
pub(super) struct Lie {
    pub plies: Vec<SectionPly>,
    pub zero: &'static str,
    pub widths: Vec<SectionWidth>,
    /// The needle line of the row that joins the plies.
    pub joining: Option<(Point, Point)>,
    pub wraps: Vec<Wrap>,
}

/// Everything a construction is laid from.
struct Ground<'a> {
    garment: &'a Garment,
    seam: &'a Seam,
    over: Fabric,
    under: Fabric,
    /// Allowances of the two plies.
    a: (f64, f64),
    /// The row farthest from the seam line.
    far: f64,
}

pub(super) fn lie(garment: &Garment, seam: &Seam, thickened: f64) -> Lie {
    let (over, under) = fabrics(garment, seam, thickened);
    let both = allowances(seam, garment.pattern.spec.hem_depth);
    let rows = seam.rows.iter().map(|r| r.offset.to_mm());
    let ground = Ground {
        garment,
        seam,
        over,
        under,
        a: (usable(both.over), usable(both.under)),
        far: rows
            .filter(|mm| (0.0..=FARTHEST).contains(mm))
            .fold(0.0, f64::max),
    };
    match seam.construction {
        Construction::PressedOpen => ground.pressed_open(),
        Construction::LapFelled => ground.felled(),
        Construction::SafetyStitched | Construction::Overlocked if seam.name == "bag_close" => {
            ground.edges_together()
        }
        Construction::FrenchSeam | Construction::BoundEdge => ground.edges_together(),
        Construction::MockFelled | Construction::SafetyStitched | Construction::Overlocked => {
            ground.to_one_side()
        }
        Construction::BandOverEdge | Construction::BandTurned => ground.band(),
        Construction::RolledHem | Construction::FoldedHem | Construction::CleanFinished => ground.hem(usable(garment.pattern.spec.hem_depth)),
        Construction::TurnedHem => ground.hem(usable(turned_depth(seam))),
        Construction::TurnedEdge => ground.turned_edge(),
        Construction::PatchSet | Construction::LaidOn => ground.patch(),
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
        name: fabric.name.clone(),
        thickness: Length::mm(fabric.thickness),
        face: fabric.face,
        reverse: fabric.reverse,
        ends,
        allowance: Length::ZERO,
        corners,
        face_left,
        allowance_from: None,
    }
}

fn allowed(ply: SectionPly, allowance: f64, from: Point) -> SectionPly {
    SectionPly {
        allowance: Length::mm(allowance),
        allowance_from: Some(from),
        ..ply
    }
}

fn width(name: &'static str, mm: f64) -> SectionWidth {
    SectionWidth {
        name,
        from: Length::ZERO,
        to: Length::mm(mm),
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

impl Ground<'_> {
    fn pressed_open(&self) -> Lie {
        let (t, u) = (self.over.thickness, self.under.thickness);
        let ([low, high], [low_u, high_u]) = (stack([t, t]), stack([u, u]));
        let level = high + t / 2.0 - high_u - u / 2.0;
        let (low_u, high_u) = (low_u + level, high_u + level);
        let (r, r_u) = ((high - low) / 2.0, (high_u - low_u) / 2.0);
        let selvedge = self.runs_to_selvedge();
        let end = if selvedge {
            End::Selvedge
        } else {
            End::Overedged
        };
        let (apex, apex_u) = (-AIR / 2.0 - t / 2.0, AIR / 2.0 + u / 2.0);
        let left = back_from(apex, r, self.a.0);
        let right = -back_from(-apex_u, r_u, self.a.1);
        let tail = self.a.0.max(self.far) + TAIL;
        let over = Trail::start(Point::new(-tail, high), t)
            .fold(-AIR / 2.0, 1.0, low)
            .end(left);
        let under = Trail::start(Point::new(tail, high_u), u)
            .fold(AIR / 2.0, -1.0, low_u)
            .end(right);
        let middle = (low + high) / 2.0;
        let middle_u = (low_u + high_u) / 2.0;
        let plies = vec![
            allowed(
                ply(&self.over, over, true, (End::GoesOn, end)),
                self.a.0,
                Point::new(apex, middle),
            ),
            allowed(
                ply(&self.under, under, false, (End::GoesOn, end)),
                self.a.1,
                Point::new(apex_u, middle_u),
            ),
        ];
        let wraps = if selvedge {
            Vec::new()
        } else {
            vec![
                wrap(&plies[..1], left, -1.0, (low, low)),
                wrap(&plies[1..], right, 1.0, (low_u, low_u)),
            ]
        };
        Lie {
            plies,
            zero: "seam line",
            widths: Vec::new(),
            joining: Some((
                Point::new(apex - t / 2.0 - 0.2, middle),
                Point::new(apex_u + u / 2.0 + 0.2, middle),
            )),
            wraps,
        }
    }

    /// The outseam of panels cut along the finished edge of the shell.
    fn runs_to_selvedge(&self) -> bool {
        let shell = self
            .garment
            .collection
            .cloths
            .get(&self.garment.doc.cloth.shell);
        self.seam.name == "outseam" && shell.is_some_and(|cloth| cloth.selvedge)
    }

    fn felled(&self) -> Lie {
        let fell = Fell::of(self.seam);
        let lap = usable(fell.width);
        let (t, u) = (self.over.thickness, self.under.thickness);
        let [h0, h1, h2, h3] = stack([u, t, u, t]);
        let (r, r_u) = ((h3 - h1) / 2.0, (h2 - h0) / 2.0);
        let (apex, apex_u) = (-t / 2.0, -lap + u / 2.0);
        // Each cut end stays inside the fold of the other ply.
        let over_end = back_from(apex, r, self.a.0).max(apex_u + r_u - nook(t));
        // The seam lines of both plies lie on one another: at the middle of the folded cloth.
        let level = (apex - apex_u - r_u).max(0.0);
        let rest = (self.a.1 - level - PI * r_u).max(0.0);
        let under_end = (apex_u + r_u + rest).min(apex - r + nook(u));
        let tail = lap.max(self.far) + TAIL;
        let over = Trail::start(Point::new(-tail, h3), t)
            .fold(0.0, 1.0, h1)
            .end(over_end);
        let under = Trail::start(Point::new(TAIL, h0), u)
            .fold(-lap, -1.0, h2)
            .end(under_end);
        Lie {
            plies: vec![
                allowed(
                    ply(&self.over, over, true, (End::GoesOn, End::Raw)),
                    self.a.0,
                    Point::new(apex, (h1 + h3) / 2.0),
                ),
                allowed(
                    ply(&self.under, under, false, (End::GoesOn, End::Raw)),
                    self.a.1,
                    Point::new(apex, h0),
                ),
            ],
            zero: "fold",
            widths: vec![width("lap", lap)],
            ..Lie::default()
        }
    }

    /// Joined face to face, then both allowances turned under the ply on top.
    fn to_one_side(&self) -> Lie {
        let (t, u) = (self.over.thickness, self.under.thickness);
        let [h0, h1, h2] = stack([u, t, t]);
        let joint = -t / 2.0 - (h2 - h1) / 2.0 - AIR;
        let (end, end_u) = (joint - self.a.0, joint - self.a.1);
        let tail = (-end).max(self.far) + TAIL;
        let over = Trail::start(Point::new(-tail, h2), t)
            .fold(0.0, 1.0, h1)
            .end(end);
        let under = Trail::start(Point::new(TAIL, h0 + u + AIR), u)
            .step(1.0 + slope(u + AIR), 1.0, h0)
            .end(end_u);
        let plies = vec![
            allowed(
                ply(&self.over, over, true, (End::GoesOn, End::Overedged)),
                self.a.0,
                Point::new(joint, h1),
            ),
            allowed(
                ply(&self.under, under, false, (End::GoesOn, End::Overedged)),
                self.a.1,
                Point::new(joint, h0),
            ),
        ];
        let wraps = vec![wrap(&plies, end.min(end_u), -1.0, (h0, h1))];
        Lie {
            plies,
            zero: "fold",
            widths: Vec::new(),
            joining: Some((
                Point::new(joint, h1 + t / 2.0 + AIR / 2.0),
                Point::new(joint, h0 - u / 2.0 - AIR),
            )),
            wraps,
        }
    }

    /// Two plies with their edges together, as the foot of a pocket bag.
    fn edges_together(&self) -> Lie {
        let (t, u) = (self.over.thickness, self.under.thickness);
        let [h0, h1] = stack([u, t]);
        let tail = self.far + TAIL + 6.0;
        let lay = |t: f64, h: f64, a: f64| Trail::start(Point::new(-tail, h), t).end(a);
        let (over, under) = (lay(t, h1, self.a.0), lay(u, h0, self.a.1));
        let ends = (End::GoesOn, End::Overedged);
        let plies = vec![
            allowed(
                ply(&self.over, over, false, ends),
                self.a.0,
                Point::new(0.0, h1),
            ),
            allowed(
                ply(&self.under, under, true, ends),
                self.a.1,
                Point::new(0.0, h0),
            ),
        ];
        let wraps = vec![wrap(&plies, self.a.0.max(self.a.1), 1.0, (h0, h1))];
        Lie {
            plies,
            zero: "seam line",
            widths: Vec::new(),
            joining: Some((
                Point::new(0.0, h1 + t / 2.0 + AIR),
                Point::new(0.0, h0 - u / 2.0 - AIR),
            )),
            wraps,
        }
    }

    fn band(&self) -> Lie {
        let (t, u) = (self.over.thickness, self.under.thickness);
        let [h0, h1, h2, h3, h4] = stack([t, t, u, t, t]);
        let a = self.a.0;
        let tall = usable(self.garment.pattern.spec.band_height).max(a + 2.0);
        let r = (h4 - h3) / 2.0;
        let turned = back_from(-t / 2.0, r, a).max(-tall + t + h4 - h0);
        let body_end = -self.a.1.min(tall - 2.0);
        let from = turned.min(body_end) - before_step(t);
        let long = slope(h4 - h2);
        let trail = Trail::start(Point::new(turned, h3), t).fold(0.0, 1.0, h4);
        // Above the body's edge the two halves of the band come together.
        let trail = if tall + from > long + 2.0 {
            let apart = (t + AIR) / 2.0;
            trail
                .step(from, from - long, h2 + apart)
                .fold(-tall, -1.0, h2 - apart)
                .step(from - long, from, h0)
        } else {
            trail.fold(-tall, -1.0, h0)
        };
        let over = trail.fold(0.0, 1.0, h1).end(turned);
        let under = Trail::start(Point::new(TAIL, h2), u).end(body_end);
        Lie {
            plies: vec![
                allowed(
                    ply(&self.over, over, false, (End::Raw, End::Raw)),
                    a,
                    Point::new(-t / 2.0, (h0 + h1) / 2.0),
                ),
                allowed(
                    ply(&self.under, under, false, (End::GoesOn, End::Raw)),
                    self.a.1,
                    Point::new(0.0, h2),
                ),
            ],
            zero: "edge",
            widths: vec![width("band", tall)],
            ..Lie::default()
        }
    }

    /// Turned twice to the inside. The cut end lies in the first fold: what the allowance holds
    /// beyond that is what the turns take up.
    fn hem(&self, depth: f64) -> Lie {
        let t = self.over.thickness;
        let [h0, h1, h2] = stack([t, t, t]);
        let depth = depth.max(4.0 * t);
        let inner = -t / 2.0 - (h2 - h0) / 2.0 + nook(t);
        let over = Trail::start(Point::new(-depth.max(self.far) - TAIL, h2), t)
            .fold(0.0, 1.0, h0)
            .fold(-depth, -1.0, h1)
            .end(inner);
        Lie {
            plies: vec![allowed(
                ply(&self.over, over, true, (End::GoesOn, End::Raw)),
                self.a.0,
                Point::new(-t / 2.0, (h0 + h2) / 2.0),
            )],
            zero: "edge",
            widths: vec![width("depth", depth)],
            ..Lie::default()
        }
    }

    fn turned_edge(&self) -> Lie {
        let (t, u) = (self.over.thickness, self.under.thickness);
        let [h0, h1, h2, h3] = stack([u, u, t, t]);
        // The facing is kept back a little, so that it does not show.
        let back = -0.4;
        let joint = (-t / 2.0 - (h3 - h2) / 2.0).min(back - u / 2.0 - (h1 - h0) / 2.0) - AIR;
        let (end, end_u) = (joint - self.a.0, joint - self.a.1);
        let inner = end.min(end_u) - before_step(u);
        let lies = h3 - t / 2.0 - AIR - u / 2.0;
        let long = slope(lies - h0);
        let reach = (-inner + long).max(self.far);
        let facing = (self.seam.name == "fly")
            .then(|| usable(self.garment.pattern.spec.fly_width))
            .map(|mm| mm.max(reach + EDGE_MARGIN.to_mm()));
        let tail = facing.unwrap_or(reach) + TAIL;
        let over = Trail::start(Point::new(-tail, h3), t)
            .fold(0.0, 1.0, h2)
            .end(end);
        let under = Trail::start(Point::new(-facing.unwrap_or(tail), lies), u)
            .step(inner - long, inner, h0)
            .fold(back, 1.0, h1)
            .end(end_u);
        let start = facing.map_or(End::GoesOn, |_| End::Overedged);
        let plies = vec![
            allowed(
                ply(&self.over, over, true, (End::GoesOn, End::Raw)),
                self.a.0,
                Point::new(joint, h2),
            ),
            allowed(
                ply(&self.under, under, false, (start, End::Raw)),
                self.a.1,
                Point::new(joint, h1),
            ),
        ];
        let wraps = facing
            .map(|mm| wrap(&plies[1..], -mm, -1.0, (lies, lies)))
            .into_iter()
            .collect();
        Lie {
            plies,
            zero: "edge",
            widths: facing.map(|mm| width("facing", mm)).into_iter().collect(),
            joining: Some((
                Point::new(joint, h2 + t / 2.0 + AIR / 2.0),
                Point::new(joint, h1 - u / 2.0 - AIR / 2.0),
            )),
            wraps,
        }
    }

    fn patch(&self) -> Lie {
        let (t, u) = (self.over.thickness, self.under.thickness);
        let [h0, h1, h2] = stack([u, t, t]);
        let r = (h2 - h1) / 2.0;
        let end = back_from(-t / 2.0, r, self.a.0);
        let foot = end - before_step(t);
        let long = slope(h2 - h1);
        let tail = (-foot + long).max(self.far) + TAIL;
        let over = Trail::start(Point::new(-tail, h1), t)
            .step(foot - long, foot, h2)
            .fold(0.0, 1.0, h1)
            .end(end);
        let under = Trail::start(Point::new(-tail, h0), u).end(TAIL);
        Lie {
            plies: vec![
                allowed(
                    ply(&self.over, over, true, (End::GoesOn, End::Raw)),
                    self.a.0,
                    Point::new(-t / 2.0, (h1 + h2) / 2.0),
                ),
                ply(&self.under, under, true, (End::GoesOn, End::GoesOn)),
            ],
            zero: "fold",
            ..Lie::default()
        }
    }

    fn strip(&self) -> Lie {
        let t = self.over.thickness;
        let [h0, h1] = stack([t, t]);
        let wide = usable(self.garment.pattern.spec.loop_width).max(4.0 * t + 1.0);
        let over = Trail::start(Point::new(-wide / 2.0 + CLEAR, h0), t)
            .fold(0.0, 1.0, h1)
            .fold(-wide, -1.0, h0)
            .end(-wide / 2.0 - CLEAR);
        Lie {
            plies: vec![ply(&self.over, over, false, (End::Raw, End::Raw))],
            zero: "edge",
            widths: vec![width("loop", wide)],
            ..Lie::default()
        }
    }

    fn surface(&self) -> Lie {
        let t = self.over.thickness;
        let over = Trail::start(Point::new(-self.far - TAIL, t / 2.0), t).end(TAIL);
        Lie {
            plies: vec![ply(&self.over, over, true, (End::GoesOn, End::GoesOn))],
            zero: "line",
            ..Lie::default()
        }
    }
}
