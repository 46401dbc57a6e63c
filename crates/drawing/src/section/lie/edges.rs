//! Edges of one ply, or of a ply and its facing: turned, faced, bound or neatened.

use std::f64::consts::{FRAC_PI_2, PI};

use draft::PieceId;
use geometry::Point;
use sewing::EDGE_MARGIN;
use style::{Construction, MeasureId, SeamId};
use words::key;

use super::{
    AIR, CLEAR, Ground, JoinedBy, Lie, TAIL, allowance, allowed, back_from, before_step, nook, ply,
    slope, stack, usable, width, wrap,
};
use crate::section::band::Trail;
use crate::section::model::{End, SectionPly};

/// A binding is at least so wide when finished (common practice: 6 to 10 mm).
const BINDING: f64 = 6.0;

impl Ground<'_> {
    /// Turned twice to the inside: the cut edge lies as deep as the allowance reaches, at most in the first
    /// fold. What an allowance holds beyond that is what thick cloth takes up at its turns. A lining that is caught lies
    /// on the turned edge, up into the fold.
    pub(super) fn hem(&self, depth: f64) -> Lie {
        let t = self.over.thickness;
        // Without a lining its place takes no room.
        let l = self.lining.as_ref().map_or(-AIR, |lining| lining.thickness);
        let [h0, h1, caught, h2] = stack([t, t, l, t]);
        let depth = depth.max(4.0 * t);
        let (r, r_in) = ((h2 - h0) / 2.0, (h1 - h0) / 2.0);
        let deepest = -t / 2.0 - r + nook(t);
        // A quarter turn from the middle of the first fold, along the hem, and the second turn.
        let before = FRAC_PI_2 * r + (depth - t - r - r_in) + PI * r_in;
        let turned = -depth + t / 2.0 + r_in;
        let inner = (turned + (self.a.0 - before).max(0.0)).min(deepest);
        let over = Trail::start(Point::new(-depth.max(self.far) - TAIL, h2), t)
            .fold(0.0, 1.0, h0)
            .fold(-depth, -1.0, h1)
            .end(inner);
        let lining = self.lining.as_ref().map(|lining| {
            let from = Point::new(-depth.max(self.far) - TAIL, caught);
            let line = Trail::start(from, l).end(-t / 2.0 - r);
            ply(lining, line, false, (End::GoesOn, End::Raw))
        });
        let outer = allowed(
            ply(&self.over, over, true, (End::GoesOn, End::Raw)),
            self.a.0,
            Point::new(-t / 2.0, (h0 + h2) / 2.0),
        );
        Lie {
            plies: [outer].into_iter().chain(lining).collect(),
            widths: vec![width(key::SECTION_WIDTH_DEPTH, depth)],
            ..Lie::default()
        }
    }

    /// Faced and turned to the inside. Behind the facing of a button fly lies the strip with the holes, its edges
    /// turned in between its two plies (common practice).
    pub(super) fn turned_edge(&self) -> Lie {
        let (t, u) = (self.over.thickness, self.under.thickness);
        let fly = self.seam.id == SeamId::Fly;
        let doubled = fly && self.facing_is_double();
        let [b0, c0, c1, b1, h0, h1, h2, h3] = stack([u, u, u, u, u, u, t, t]);
        // The facing is kept back a little, so that it does not show.
        let back = -0.4;
        let joint = (-t / 2.0 - (h3 - h2) / 2.0).min(back - u / 2.0 - (h1 - h0) / 2.0) - AIR;
        let (end, end_u) = (joint - self.a.0, joint - self.a.1);
        let lies = h3 - t / 2.0 - AIR - u / 2.0;
        let (lies_outer, lies_inner) = (lies - u - AIR, lies - 2.0 * (u + AIR));
        let back_behind = back - 1.0;
        let end_behind = back_from(back_behind - u / 2.0, (c0 - b0) / 2.0, self.a.1);
        let inner = end.min(end_u) - before_step(u);
        let foot = inner - slope(lies - h0);
        // The strip is down before the facing steps, its inner ply before its outer one.
        let outer_down = foot.min(end_behind - before_step(u));
        let outer_foot = outer_down - slope(lies_outer - b1);
        let inner_down = outer_foot.min(outer_down - before_step(u));
        let inner_foot = inner_down - slope(lies_inner - b0);
        let reach = (-if doubled { inner_foot } else { foot }).max(self.far);
        let facing = fly
            .then(|| usable(self.garment.pattern.spec[MeasureId::FlyWidth]))
            .map(|mm| mm.max(reach + EDGE_MARGIN.to_mm()));
        let tail = facing.unwrap_or(reach) + TAIL;
        let begins = -facing.unwrap_or(tail);
        let over = Trail::start(Point::new(-tail, h3), t)
            .fold(0.0, 1.0, h2)
            .end(end);
        let under = Trail::start(Point::new(begins, lies), u)
            .step(foot, inner, h0)
            .fold(back, 1.0, h1)
            .end(end_u);
        // An edge that is bound or turned in has a section of its own.
        let otherwise = self.garment.seams.iter().any(|seam| {
            seam.id == SeamId::FlyEdge && seam.construction != Construction::Overlocked
        });
        let start = match facing {
            None => End::GoesOn,
            Some(_) if otherwise => End::Raw,
            Some(_) => End::Overedged,
        };
        let mut plies = vec![
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
        if doubled {
            let strip = [
                (lies_outer, (outer_foot, outer_down), (b1, c1), true),
                (lies_inner, (inner_foot, inner_down), (b0, c0), false),
            ];
            for (lies, (foot, down), (level, turned), face_left) in strip {
                let trail = Trail::start(Point::new(begins, lies), u)
                    .step(foot, down, level)
                    .fold(back_behind, 1.0, turned)
                    .end(end_behind);
                plies.push(SectionPly {
                    name: key::SECTION_PLY_FLY_STRIP,
                    ..allowed(
                        ply(&self.under, trail, face_left, (start, End::Raw)),
                        self.a.1,
                        Point::new(back_behind - u / 2.0, (level + turned) / 2.0),
                    )
                });
            }
        }
        if otherwise && facing.is_some() {
            for facing in plies.iter_mut().skip(1) {
                facing.edge = Some(key::SECTION_EDGE_AS_FLY_EDGE);
            }
        }
        let lowest = if doubled { lies_inner } else { lies };
        let wraps = facing
            .filter(|_| !otherwise)
            .map(|mm| wrap(&plies[1..], -mm, -1.0, (lowest, lies)))
            .into_iter()
            .collect();
        Lie {
            plies,
            widths: [allowance(-joint, -joint + self.a.0)]
                .into_iter()
                .chain(facing.map(|mm| width(key::SECTION_WIDTH_FACING, mm)))
                .collect(),
            joining: Some((
                Point::new(joint, h2 + t / 2.0 + AIR / 2.0),
                Point::new(joint, h1 - u / 2.0 - AIR / 2.0),
            )),
            wraps,
            ..Lie::default()
        }
    }

    /// Whether a strip with buttonholes lies behind the facing of the fly.
    fn facing_is_double(&self) -> bool {
        let piece = self.garment.pattern.piece(PieceId::FlyFacing);
        piece.is_some_and(|p| p.cut.as_drawn.saturating_add(p.cut.mirrored) > 1)
    }

    pub(super) fn strip(&self) -> Lie {
        let t = self.over.thickness;
        let [h0, h1] = stack([t, t]);
        let wide = usable(self.garment.pattern.spec[MeasureId::LoopWidth]).max(4.0 * t + 1.0);
        let over = Trail::start(Point::new(-wide / 2.0 + CLEAR, h0), t)
            .fold(0.0, 1.0, h1)
            .fold(-wide, -1.0, h0)
            .end(-wide / 2.0 - CLEAR);
        Lie {
            plies: vec![SectionPly {
                edge: Some(key::SECTION_EDGE_MEET),
                ..ply(&self.over, over, false, (End::Raw, End::Raw))
            }],
            widths: vec![width(key::SECTION_WIDTH_LOOP, wide)],
            ..Lie::default()
        }
    }

    /// The edge of the fly facing with nothing done to it but an overedge around it, around facing and
    /// buttonhole strip where there is one.
    pub(super) fn neatened(&self) -> Lie {
        let u = self.under.thickness;
        let [h0, h1, h2] = stack([u, u, u]);
        let tail = self.far + TAIL + 6.0;
        let line = |h: f64| Trail::start(Point::new(-tail, h), u).end(0.0);
        let ends = (End::GoesOn, End::Overedged);
        let mut plies = vec![ply(&self.under, line(h2), false, ends)];
        if self.facing_is_double() {
            plies.extend(
                [(h1, true), (h0, false)].map(|(level, face_left)| SectionPly {
                    name: key::SECTION_PLY_FLY_STRIP,
                    ..ply(&self.under, line(level), face_left, ends)
                }),
            );
        }
        let foot = if plies.len() > 1 { h0 } else { h2 };
        let wraps = vec![wrap(&plies, 0.0, 1.0, (foot, h2))];
        Lie {
            plies,
            wraps,
            ..Lie::default()
        }
    }

    /// A single edge turned once. The reverse of what lies inside the garment is up, so the edge
    /// is turned up.
    pub(super) fn clean(&self) -> Lie {
        let u = self.under.thickness;
        let [h0, h1] = stack([u, u]);
        let end = back_from(-u / 2.0, (h1 - h0) / 2.0, self.a.1);
        let tail = (-end).max(self.far) + TAIL;
        let line = Trail::start(Point::new(-tail, h0), u)
            .fold(0.0, 1.0, h1)
            .end(end);
        let raw = (End::GoesOn, End::Raw);
        Lie {
            plies: vec![SectionPly {
                edge: Some(key::SECTION_EDGE_TURNED_EACH),
                ..allowed(
                    ply(&self.under, line, false, raw),
                    self.a.1,
                    Point::new(-u / 2.0, (h0 + h1) / 2.0),
                )
            }],
            widths: vec![width(key::SECTION_WIDTH_TURNED_IN, -end)],
            ..Lie::default()
        }
    }

    /// A strip wrapped round one raw edge, or round the two of a bag, with both its own edges turned
    /// in.
    pub(super) fn bound(&self) -> Lie {
        let bag = self.seam.id == SeamId::BagClose;
        let (t, u, s) = (
            self.over.thickness,
            self.under.thickness,
            self.strip.thickness,
        );
        // Without a ply on top its place takes no room.
        let room = if bag { t } else { -AIR };
        let [h0, h1, h_u, h_t, h3, h4] = stack([s, s, u, room, s, s]);
        let radius = (h4 - h0) / 2.0;
        let held = ((h3 - h1) - s) / 2.0 - AIR;
        // The corners of the cut ends meet the inside of the round fold.
        let hollow = radius - s / 2.0 - AIR;
        let centre = -(hollow * hollow - held * held).max(0.0).sqrt();
        let outer = centre + radius + s / 2.0;
        let wide = (self.far + EDGE_MARGIN.to_mm())
            .max(BINDING)
            .max(-centre + 4.0 * s);
        let tail = wide + TAIL + 4.0;
        let cut = |t: f64, h: f64| Trail::start(Point::new(-tail, h), t).end(0.0);
        let strip = Trail::start(Point::new(centre, h1), s)
            .fold(-wide, -1.0, h0)
            .fold(outer, 1.0, h4)
            .fold(-wide, -1.0, h3)
            .end(centre);
        let covered = |ply: SectionPly| SectionPly {
            edge: Some(if bag {
                key::SECTION_EDGE_IN_STRIP
            } else {
                key::SECTION_EDGE_IN_STRIP_EACH
            }),
            ..ply
        };
        let ends = (End::GoesOn, End::Raw);
        let mut plies = Vec::new();
        if bag {
            plies.push(covered(ply(&self.over, cut(t, h_t), false, ends)));
        }
        plies.push(covered(ply(&self.under, cut(u, h_u), bag, ends)));
        plies.push(SectionPly {
            edge: Some(key::SECTION_EDGE_BOTH_TURNED),
            ..ply(&self.strip, strip, false, (End::Raw, End::Raw))
        });
        let first = Point::new(-2.5, h_t + t / 2.0 + AIR / 2.0);
        let closes = bag && self.seam.rows.iter().any(|row| row.offset.to_mm() < 0.5);
        Lie {
            plies,
            widths: vec![width(key::SECTION_WIDTH_BINDING, wide)],
            joining: closes.then(|| (first, Point::new(-2.5, h_u - u / 2.0 - AIR / 2.0))),
            joined_by: JoinedBy::RowsOnLine,
            ..Lie::default()
        }
    }
}
