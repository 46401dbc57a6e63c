//! A strip of cloth with one row of a group on it.

use geometry::tolerance::ROUNDING;
use geometry::{BezPath, Point, Rect};
use sewing::yarn::{Group, GroupRow, Role, Sewn};
use trade::stitch::FaceLook;
use trade::{Colour, Length};

use crate::sheet::{Layer, Stroke, circle, closed, open};

/// Paler than any yarn, for a group that lies on nothing.
const NO_CLOTH: Colour = Colour::rgb(0xdd, 0xdd, 0xdd);
/// Throw of a zigzag and a bartack, length of a tack, and the space between tacks (the usual tack,
/// as the style format has it).
const THROW_MM: f64 = 2.0;
const TACK_MM: f64 = 10.0;
const TACK_EVERY_MM: f64 = 16.0;
/// Bite of an overedge and spacing of a coverstitch, as far as a strip shows them.
const BITE_MM: f64 = 4.0;
/// From the middle of a strip up to the row beside an overedge and to the overedge itself.
const ROW_UP_MM: f64 = 2.6;
const OVEREDGE_UP_MM: f64 = 0.6;
/// Stitches finer than this run together.
const FINEST_MM: f64 = 0.2;
/// Clear cloth at both ends of a strip.
const END_MM: f64 = 1.5;

/// The row a group is drawn by: the one it sews most of.
pub(super) fn drawn_by(group: &Group) -> Option<&GroupRow> {
    group
        .rows
        .iter()
        .reduce(|best, row| if row.length > best.length { row } else { best })
}

/// How much of the cloth's width the stitches of a group take, on the cloth.
pub(super) fn breadth(group: &Group) -> Length {
    let Some(row) = drawn_by(group) else {
        return Length::ZERO;
    };
    let sewn = matches!(row.sewn, Sewn::Row(_)) && group.density.is_some();
    let across = match look(group, row) {
        _ if !sewn => THROW_MM,
        FaceLook::Dashes | FaceLook::Chain => 0.0,
        FaceLook::Zigzag | FaceLook::ZigzagChain => THROW_MM,
        FaceLook::CoverLoops | FaceLook::Overedge | FaceLook::OveredgeTwoRows => BITE_MM,
        // The overedge hangs lower than the row stands above the middle.
        FaceLook::DashesAndOveredge | FaceLook::ChainAndOveredge => {
            2.0 * (BITE_MM - OVEREDGE_UP_MM)
        }
    };
    Length::mm(across) + group.diameter
}

fn look(group: &Group, row: &GroupRow) -> FaceLook {
    let looks = row.stitch.looks();
    match group.role {
        Role::Needle => looks.needle_face,
        Role::Under => looks.under_face,
    }
}

/// Cloth and stitches at this scale, clipped to the place.
pub(super) fn strip(group: &Group, place: Rect, scale: f64) -> Layer {
    let mut layer = Layer::named(if scale > 1.0 { "enlarged" } else { "true size" });
    let corners = [
        Point::new(place.x0, place.y0),
        Point::new(place.x1, place.y0),
        Point::new(place.x1, place.y1),
        Point::new(place.x0, place.y1),
    ];
    layer.clip = Some(closed(&corners));
    let cloth = group.grounds.first().map_or(NO_CLOTH, |g| g.colour);
    layer.area(None, closed(&corners), cloth, None);
    let Some(row) = drawn_by(group) else {
        return layer;
    };
    let part = group.yarns.first().map(|key| format!("yarn:{key}"));
    let mut hand = Hand {
        layer: &mut layer,
        part,
        yarn: group.colour,
        cloth,
        diameter: group.diameter.to_mm().clamp(0.0, 5.0) * scale,
        scale,
        middle: place.center().y,
    };
    let (from, to) = (place.x0 + END_MM, place.x1 - END_MM);
    match (row.sewn, group.density) {
        (Sewn::Row(_), Some(density)) => {
            hand.row(look(group, row), from, to, density.figure().pitch() * scale);
        }
        (Sewn::Bartack(stitches), _) => hand.tacks(from, to, stitches),
        _ => hand.tacks(from, to, 28),
    }
    layer
}

/// Whole stitches on a strip this long; none where they would run together or do not fit.
pub(super) fn fitting(length_mm: f64, pitch: Length, scale: f64) -> usize {
    let pitch = pitch.to_mm();
    if !pitch.is_finite() || pitch < FINEST_MM * scale {
        return 0;
    }
    // Between none and the length of a strip over the finest pitch.
    (length_mm / pitch + ROUNDING).floor() as usize
}

struct Hand<'a> {
    layer: &'a mut Layer,
    part: Option<String>,
    yarn: Colour,
    cloth: Colour,
    /// Of the yarn, on paper.
    diameter: f64,
    scale: f64,
    /// Height of the middle of the strip.
    middle: f64,
}

impl Hand<'_> {
    fn row(&mut self, look: FaceLook, from: f64, to: f64, pitch: Length) {
        let count = fitting(to - from, pitch, self.scale);
        if count == 0 {
            let line = open(&[Point::new(from, self.middle), Point::new(to, self.middle)]);
            self.strand(line, self.diameter);
            return;
        }
        let pitch = pitch.to_mm();
        // Centred, so that both ends look alike.
        let start = (from + to - pitch * count as f64) / 2.0;
        let (bite, middle) = (BITE_MM * self.scale, self.middle);
        let (row_up, overedge_up) = (ROW_UP_MM * self.scale, OVEREDGE_UP_MM * self.scale);
        for k in 0..count {
            let x = start + pitch * k as f64;
            match look {
                FaceLook::Dashes => self.dash(x, pitch, middle),
                FaceLook::Chain => self.link(x, pitch, middle),
                FaceLook::Zigzag | FaceLook::ZigzagChain => {
                    self.zig(x, pitch, k, THROW_MM * self.scale)
                }
                FaceLook::CoverLoops => self.zig(x, pitch, k, bite),
                FaceLook::Overedge => self.wrap(x, pitch, middle - bite / 2.0, bite),
                FaceLook::OveredgeTwoRows => {
                    self.wrap(x, pitch, middle - bite / 2.0, bite);
                    self.dash(x, pitch, middle);
                }
                FaceLook::DashesAndOveredge => {
                    self.dash(x, pitch, middle - row_up);
                    self.wrap(x, pitch, middle - overedge_up, bite);
                }
                FaceLook::ChainAndOveredge => {
                    self.link(x, pitch, middle - row_up);
                    self.wrap(x, pitch, middle - overedge_up, bite);
                }
            }
        }
        if look == FaceLook::Dashes {
            for k in 0..=count {
                self.hole(start + pitch * k as f64);
            }
        }
    }

    fn strand(&mut self, path: BezPath, width: f64) {
        let stroke = Stroke {
            round: true,
            ..Stroke::plain(self.yarn, Length::mm(width))
        };
        self.layer.line(self.part.as_deref(), path, stroke);
    }

    /// Where the needle went in: the cloth's shadow beside the yarn.
    fn hole(&mut self, x: f64) {
        let dark = self.cloth.mixed(Colour::BLACK, 0.55);
        let at = circle(Point::new(x, self.middle), Length::mm(self.diameter * 0.3));
        self.layer.area(None, at, dark, None);
    }

    /// A separate stitch: the yarn from hole to hole, its ends bent down into the cloth.
    fn dash(&mut self, x: f64, pitch: f64, y: f64) {
        let end = (0.1 * pitch + self.diameter / 2.0).min(0.45 * pitch);
        let line = open(&[Point::new(x + end, y), Point::new(x + pitch - end, y)]);
        self.strand(line, self.diameter);
    }

    /// One loop of a chain: two legs that open from the loop before and close in the next.
    fn link(&mut self, x: f64, pitch: f64, y: f64) {
        let (d, end) = (self.diameter, x + 1.12 * pitch);
        let mut path = BezPath::new();
        path.move_to(Point::new(x, y));
        let open_to = 1.35 * d;
        for side in [-1.0, 1.0] {
            let bend = y + side * open_to;
            path.move_to(Point::new(x, y));
            path.curve_to(
                Point::new(x + 0.25 * pitch, bend),
                Point::new(end - 0.15 * pitch, bend),
                Point::new(end, y),
            );
        }
        self.strand(path, d * 0.95);
    }

    /// One crossing from side to side and back along the row.
    fn zig(&mut self, x: f64, pitch: f64, k: usize, throw: f64) {
        let side = if k.is_multiple_of(2) { 0.5 } else { -0.5 };
        let line = open(&[
            Point::new(x, self.middle - side * throw),
            Point::new(x + pitch, self.middle + side * throw),
        ]);
        self.strand(line, self.diameter);
    }

    /// One stitch of an overedge: along the needle line, slanting to the edge and along it.
    fn wrap(&mut self, x: f64, pitch: f64, y: f64, bite: f64) {
        let line = open(&[
            Point::new(x, y),
            Point::new(x + 0.75 * pitch, y),
            Point::new(x + pitch, y + bite),
            Point::new(x + 0.2 * pitch, y + bite),
            Point::new(x + 0.75 * pitch, y),
        ]);
        self.strand(line, self.diameter);
    }

    /// Bartacks one after the other, each of so many stitches.
    fn tacks(&mut self, from: f64, to: f64, stitches: u32) {
        let (long, every) = (TACK_MM * self.scale, TACK_EVERY_MM * self.scale);
        let count = ((to - from - long) / every).floor().max(0.0) as u32 + 1;
        let room = long + every * f64::from(count - 1);
        let start = (from + to - room) / 2.0;
        let half = THROW_MM * self.scale / 2.0;
        // A tack of more stitches than its length has room for looks no denser.
        let stitches = stitches.clamp(1, 72);
        for tack in 0..count {
            let x = start + every * f64::from(tack);
            let points: Vec<Point> = (0..=stitches)
                .map(|k| {
                    let y = if k.is_multiple_of(2) { -half } else { half };
                    let along = long * f64::from(k) / f64::from(stitches);
                    Point::new(x + along, self.middle + y)
                })
                .collect();
            self.strand(open(&points), self.diameter);
        }
    }
}
