//! Pieces set on others: the waistband, pockets, patches and labels; and stitches through one ply.

use geometry::Point;
use style::{Construction, LabelFold, MeasureId, PatchThrough, SeamId};
use trade::StitchType;
use words::key;

use super::{
    AIR, Ground, Lie, TAIL, allowance, allowed, back_from, before_step, ply, slope, stack, usable,
    width, wrap,
};
use crate::section::band::Trail;
use crate::section::model::{End, SectionPly};

/// What a woven label turns under at its ends (common practice: 6 mm).
const LABEL_TURN: f64 = 6.0;
/// Drawn between the two plies of the band where only the inner one is sewn.
const APART: f64 = 0.9;

impl Ground<'_> {
    /// The band over the body's edge: both its edges turned in, the body's between them. A band that is
    /// turned is joined to the body first, so that its outer edge and the body's lie edge to edge.
    pub(super) fn band(&self) -> Lie {
        let (t, u) = (self.over.thickness, self.under.thickness);
        let [h0, h1, h2, h3, h4] = stack([t, t, u, t, t]);
        let a = self.a.0;
        let tall = usable(self.garment.pattern.spec[MeasureId::BandHeight]).max(a + 2.0);
        let r = (h4 - h3) / 2.0;
        let longest = -tall + t + h4 - h0;
        let turned = back_from(-t / 2.0, r, a).max(longest);
        let joint = -t / 2.0 - r - AIR;
        let joined = self.seam.construction == Construction::BandTurned;
        // Allowances of a joined band are measured from the row that joins it.
        let (outer_end, body_end) = if joined {
            (
                (joint - a).max(longest),
                (joint - self.a.1).max(-tall + 2.0),
            )
        } else {
            (turned, -self.a.1.min(tall - 2.0))
        };
        let from = turned.min(outer_end).min(body_end) - before_step(t);
        let long = slope(h4 - h2);
        let trail = Trail::start(Point::new(outer_end, h3), t).fold(0.0, 1.0, h4);
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
        let beyond = if joined { -joint } else { 0.0 };
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
                    Point::new(if joined { joint } else { 0.0 }, h2),
                ),
            ],
            widths: vec![
                allowance(beyond, beyond + self.a.1),
                width(key::SECTION_WIDTH_BAND, tall),
            ],
            joining: joined.then(|| {
                (
                    Point::new(joint, h3 + t / 2.0 + AIR / 2.0),
                    Point::new(joint, h2 - u / 2.0 - AIR / 2.0),
                )
            }),
            ..Lie::default()
        }
    }

    /// A pocket's edge, with the lining that is turned in with it, on what it is set on.
    pub(super) fn patch(&self) -> Lie {
        let (t, u) = (self.over.thickness, self.under.thickness);
        // Without a lining its place takes no room.
        let l = self.lining.as_ref().map_or(-AIR, |lining| lining.thickness);
        let [h0, turned, lined_turned, lined, top] = stack([u, t, l, l, t]);
        let [_, lies_lined, lies] = stack([u, l, t]);
        let end = back_from(-t / 2.0, (top - turned) / 2.0, self.a.0);
        let apex = -t - AIR - l / 2.0;
        let end_lined = back_from(apex, (lined - lined_turned) / 2.0, self.a.0);
        let innermost = match self.lining {
            Some(_) => end.min(end_lined),
            None => end,
        };
        let foot = innermost - before_step(t);
        let long = slope(top - lies);
        let tail = (-foot + long).max(self.far) + TAIL;
        let over = Trail::start(Point::new(-tail, lies), t)
            .step(foot - long, foot, top)
            .fold(0.0, 1.0, turned)
            .end(end);
        let lining = self.lining.as_ref().map(|lining| {
            let inside = Trail::start(Point::new(-tail, lies_lined), l)
                .step(foot - long, foot, lined)
                .fold(apex + l / 2.0, 1.0, lined_turned)
                .end(end_lined);
            ply(lining, inside, false, (End::GoesOn, End::Raw))
        });
        let under = Trail::start(Point::new(-tail, h0), u).end(TAIL);
        let outer = allowed(
            ply(&self.over, over, true, (End::GoesOn, End::Raw)),
            self.a.0,
            Point::new(-t / 2.0, (turned + top) / 2.0),
        );
        let ground = ply(&self.under, under, true, (End::GoesOn, End::GoesOn));
        Lie {
            plies: [outer, ground].into_iter().chain(lining).collect(),
            ..Lie::default()
        }
    }

    pub(super) fn surface(&self) -> Lie {
        let t = self.over.thickness;
        let over = Trail::start(Point::new(-self.far - TAIL, t / 2.0), t).end(TAIL);
        Lie {
            plies: vec![ply(&self.over, over, true, (End::GoesOn, End::GoesOn))],
            ..Lie::default()
        }
    }

    /// A facing flat on its bag, its cut edge overedged or covered by the stitches.
    fn flat_facing(&self) -> Lie {
        let (t, u) = (self.over.thickness, self.under.thickness);
        let [h0, h1] = stack([u, t]);
        let tail = self.far + TAIL + 4.0;
        let level = |t: f64, h: f64, to: f64| Trail::start(Point::new(-tail, h), t).end(to);
        let any = |is: fn(StitchType) -> bool| self.seam.rows.iter().any(|row| is(row.stitch));
        let overedged = any(StitchType::is_overedge);
        let end = if overedged { End::Overedged } else { End::Raw };
        let facing = ply(&self.over, level(t, h1, 0.0), true, (End::GoesOn, end));
        let facing = match (overedged, any(StitchType::covers)) {
            (false, false) => SectionPly {
                edge: Some(key::SECTION_EDGE_SHOWING),
                ..facing
            },
            _ => facing,
        };
        let mut plies = vec![facing];
        let wraps = if overedged {
            vec![wrap(&plies, 0.0, 1.0, (h1, h1))]
        } else {
            Vec::new()
        };
        let goes_on = (End::GoesOn, End::GoesOn);
        plies.push(ply(&self.under, level(u, h0, TAIL), true, goes_on));
        Lie {
            plies,
            wraps,
            ..Lie::default()
        }
    }

    /// A patch on both plies of the band, or a label on the inner one alone; a facing on its bag. Their edges
    /// stay as they are; a label's ends may be turned under.
    pub(super) fn laid_on(&self) -> Lie {
        if self.seam.id == SeamId::FacingSet {
            return self.flat_facing();
        }
        if self.seam.id == SeamId::LabelSet {
            return self.label();
        }
        let (t, u) = (self.over.thickness, self.under.thickness);
        // Sewn on before the band is closed, it leaves the inner ply free.
        let open = self.through() == PatchThrough::OuterPly;
        let [h0, _, h1, h2] = stack([u, if open { APART } else { -AIR }, u, t]);
        let tail = self.far + TAIL + 4.0;
        let level = |t: f64, h: f64, to: f64| Trail::start(Point::new(-tail, h), t).end(to);
        let goes_on = (End::GoesOn, End::GoesOn);
        Lie {
            plies: vec![
                SectionPly {
                    trim: true,
                    edge: Some(key::SECTION_EDGE_SHOWING),
                    ..ply(&self.over, level(t, h2, 0.0), true, (End::GoesOn, End::Raw))
                },
                ply(&self.under, level(u, h1, TAIL), true, goes_on),
                ply(&self.inner_half(), level(u, h0, TAIL), false, goes_on),
            ],
            sewn: open.then_some((h1 - u / 2.0 - AIR, h2 + t / 2.0 + AIR)),
            ..Lie::default()
        }
    }

    fn through(&self) -> PatchThrough {
        let patch = self.garment.doc.patch.as_ref();
        patch.map_or(PatchThrough::WholeBand, |patch| patch.through)
    }

    fn label(&self) -> Lie {
        let (l, u) = (self.over.thickness, self.under.thickness);
        let turned = self.label_fold() == LabelFold::EndFold;
        let under = if turned { l } else { -AIR };
        let [h0, h1, h2, _, h3] = stack([l, under, u, APART, u]);
        let tail = self.far.max(LABEL_TURN) + TAIL;
        let start = Trail::start(Point::new(-tail, h0), l);
        let label = if turned {
            let end = back_from(-l / 2.0, (h1 - h0) / 2.0, LABEL_TURN);
            start.fold(0.0, 1.0, h1).end(end)
        } else {
            start.end(0.0)
        };
        let level = |h: f64| Trail::start(Point::new(-tail, h), u).end(TAIL);
        let goes_on = (End::GoesOn, End::GoesOn);
        let edge = if turned {
            key::SECTION_EDGE_TURNED_UNDER
        } else {
            key::SECTION_EDGE_SHOWING
        };
        Lie {
            plies: vec![
                ply(&self.under, level(h3), true, goes_on),
                ply(&self.inner_half(), level(h2), false, goes_on),
                SectionPly {
                    trim: true,
                    edge: Some(edge),
                    ..ply(&self.over, label, false, (End::GoesOn, End::Raw))
                },
            ],
            // Sewn from the inside, before the band is closed.
            sewn: Some((h0 - l / 2.0 - AIR, h2 + u / 2.0 + AIR)),
            ..Lie::default()
        }
    }

    fn inner_half(&self) -> super::Fabric {
        super::Fabric {
            name: key::SECTION_PLY_INNER_HALF,
            ..self.under.clone()
        }
    }

    /// How the first label on the band is folded.
    fn label_fold(&self) -> LabelFold {
        let label = self.garment.doc.labels.first();
        label.map_or(LabelFold::Flat, |label| label.fold)
    }
}
