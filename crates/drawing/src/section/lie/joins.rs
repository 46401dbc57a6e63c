//! Seams that join two edges: beside each other, to one side, into each other or enclosed.

use std::f64::consts::PI;
use style::SeamId;

use geometry::Point;
use sewing::Fell;
use trade::Length;
use words::key;

use super::{
    AIR, FIRST_TO_EDGES, Ground, JoinedBy, Lie, TAIL, allowance, allowed, back_from, nook, ply,
    slope, stack, usable, width, wrap,
};
use crate::section::band::Trail;
use crate::section::model::{End, SectionWidth};

impl Ground<'_> {
    pub(super) fn pressed_open(&self) -> Lie {
        let (t, u) = (self.over.thickness, self.under.thickness);
        let ([low, high], [low_u, high_u]) = (stack([t, t]), stack([u, u]));
        let level = high + t / 2.0 - high_u - u / 2.0;
        let (low_u, high_u) = (low_u + level, high_u + level);
        let (r, r_u) = ((high - low) / 2.0, (high_u - low_u) / 2.0);
        let selvedge = self.runs_to_selvedge();
        // Inside the fold of the band no edge needs to be overedged.
        let end = match self.seam.id {
            _ if selvedge => End::Selvedge,
            SeamId::BandJoin => End::Raw,
            _ => End::Overedged,
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
        let wraps = if end == End::Overedged {
            vec![
                wrap(&plies[..1], left, -1.0, (low, low)),
                wrap(&plies[1..], right, 1.0, (low_u, low_u)),
            ]
        } else {
            Vec::new()
        };
        Lie {
            plies,
            widths: vec![allowance(0.0, self.a.0), allowance(0.0, -self.a.1)],
            joining: Some((
                Point::new(apex - t / 2.0 - 0.2, middle),
                Point::new(apex_u + u / 2.0 + 0.2, middle),
            )),
            wraps,
            ..Lie::default()
        }
    }

    /// The outseam of panels cut along the finished edge of the shell.
    fn runs_to_selvedge(&self) -> bool {
        let shell = self
            .garment
            .collection
            .cloths
            .get(&self.garment.doc.cloth.shell);
        self.seam.id == SeamId::Outseam && shell.is_some_and(|cloth| cloth.selvedge)
    }

    pub(super) fn felled(&self) -> Lie {
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
            widths: vec![width(key::SECTION_WIDTH_LAP, lap)],
            ..Lie::default()
        }
    }

    /// Joined face to face, then both allowances turned under the ply on top.
    pub(super) fn to_one_side(&self) -> Lie {
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
            widths: vec![allowance(-joint, -joint + self.a.0)],
            joining: Some((
                Point::new(joint, h1 + t / 2.0 + AIR / 2.0),
                Point::new(joint, h0 - u / 2.0 - AIR),
            )),
            wraps,
            ..Lie::default()
        }
    }

    /// Two plies with their edges together, as the foot of a pocket bag.
    pub(super) fn edges_together(&self) -> Lie {
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
            widths: vec![allowance(0.0, -self.a.0)],
            joining: Some((
                Point::new(0.0, h1 + t / 2.0 + AIR),
                Point::new(0.0, h0 - u / 2.0 - AIR),
            )),
            wraps,
            ..Lie::default()
        }
    }

    /// Sewn first with the wrong sides together, then turned and closed on the seam line, so that
    /// both cut edges lie between the two rows. The plies close up again at the second row.
    pub(super) fn french(&self) -> Lie {
        let (t, u) = (self.over.thickness, self.under.thickness);
        let [h0, h1, h2, h3] = stack([u, u, t, t]);
        let (r, r_u) = ((h3 - h2) / 2.0, (h1 - h0) / 2.0);
        // From the seam line to where each fold begins, so that the allowance is used up.
        let straight = |a: f64, r: f64| (a - FIRST_TO_EDGES - PI * r - AIR).max(0.5);
        let (s, s_u) = (straight(self.a.0, r), straight(self.a.1, r_u));
        let joint = s.min(s_u) - AIR;
        let (end, end_u) = (
            joint - (self.a.0 - s - PI * r - (s - joint)),
            joint - (self.a.1 - s_u - PI * r_u - (s_u - joint)),
        );
        let closes = end.min(end_u) - 0.3;
        let middle = (h1 + h2) / 2.0;
        let (shut, shut_u) = (middle + (t + AIR) / 2.0, middle - (u + AIR) / 2.0);
        let long = 2.2 * (h3 - shut).max(shut_u - h0);
        let tail = self.far + TAIL + 6.0;
        let over = Trail::start(Point::new(-tail, shut), t)
            .step(closes - long, closes, h3)
            .fold(s + r + t / 2.0, 1.0, h2)
            .end(end);
        let under = Trail::start(Point::new(-tail, shut_u), u)
            .step(closes - long, closes, h0)
            .fold(s_u + r_u + u / 2.0, 1.0, h1)
            .end(end_u);
        let share = ((long - closes) / long).clamp(0.0, 1.0);
        let at_line = |from: f64, to: f64| Point::new(0.0, from + (to - from) * share);
        let ends = (End::GoesOn, End::Raw);
        let plies = vec![
            allowed(
                ply(&self.over, over, false, ends),
                self.a.0,
                at_line(shut, h3),
            ),
            allowed(
                ply(&self.under, under, true, ends),
                self.a.1,
                at_line(shut_u, h0),
            ),
        ];
        let edge = (s + r + t / 2.0).max(s_u + r_u + u / 2.0);
        Lie {
            plies,
            widths: vec![
                SectionWidth {
                    name: key::SECTION_WIDTH_FIRST_ROW,
                    from: Length::mm(-joint),
                    to: Length::mm(-end),
                },
                SectionWidth {
                    name: key::SECTION_WIDTH_ENCLOSED,
                    from: Length::ZERO,
                    to: Length::mm(-edge),
                },
            ],
            joining: Some((
                Point::new(joint, h2 + t / 2.0 + AIR / 2.0),
                Point::new(joint, h1 - u / 2.0 - AIR / 2.0),
            )),
            joined_by: JoinedBy::RowsBeyond,
            ..Lie::default()
        }
    }
}
