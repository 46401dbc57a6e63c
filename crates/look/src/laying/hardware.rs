//! Rivets, buttons, holes and tacks.

use draft::PieceId;
use flat::{Half, Hand, View};
use geometry::{Point, Vec2, left_of};
use sewing::{Face, Fixing, FixingKind};
use trade::Length;

use super::Laying;
use crate::dye::linear;
use crate::metal::Metal;
use crate::place::place;
use crate::scene::Slit;

/// Beyond the centre line by more than this, a fixing lies in the fold between the legs.
const HIDDEN_BEYOND_MM: f64 = -6.0;
/// The width of a buttonhole with its stitches, from memory.
const HOLE_WIDTH: f64 = 4.0;

impl Laying<'_> {
    /// Everything set on the side that is seen; loops first, for tacks and buttons lie on them.
    pub(super) fn fixings(&mut self) {
        let order = |kind: &FixingKind| match kind {
            FixingKind::Patch(..) | FixingKind::Label(..) => 0,
            FixingKind::Loop(..) => 1,
            FixingKind::Zip(..) => 2,
            FixingKind::Buttonhole(..) => 3,
            FixingKind::Bartack(..) => 4,
            FixingKind::Rivet(..) | FixingKind::Button(..) => 5,
        };
        let garment = self.garment;
        let mut sorted: Vec<&Fixing> = garment.fixings.iter().collect();
        sorted.sort_by_key(|fixing| order(&fixing.kind));
        for fixing in sorted {
            let covered = match (self.view, self.face) {
                (View::Front, Face::Outside) => fixing.piece == PieceId::CoinPocket,
                (View::Front, Face::Inside) => {
                    let hole = matches!(fixing.kind, FixingKind::Buttonhole(_));
                    hole && fixing.piece == PieceId::Band && self.laid.covered(fixing.at)
                }
                (View::Back, _) => false,
            };
            if !covered && self.shows_fixing(fixing) {
                for hand in self.laid.copies(fixing.piece, fixing.on) {
                    self.fixing(fixing, *hand);
                }
            }
        }
    }

    /// Fixings of a piece that lies partly under another.
    pub(super) fn fixings_of(&mut self, hand: Hand, piece: PieceId) {
        let garment = self.garment;
        for fixing in garment.fixings.iter().filter(|f| f.piece == piece) {
            if self.shows_fixing(fixing) && self.laid.copies(piece, fixing.on).contains(&hand) {
                self.fixing(fixing, hand);
            }
        }
    }

    /// Labels on the inside of the back band, seen over the front waist.
    pub(super) fn labels_behind(&mut self) {
        if self.face == Face::Inside {
            return;
        }
        let garment = self.garment;
        for fixing in garment
            .fixings
            .iter()
            .filter(|f| f.piece == PieceId::Band && f.inside)
        {
            let spot = self.laid.band(fixing.at);
            if spot.half == Half::Back && matches!(fixing.kind, FixingKind::Label(..)) {
                self.set(fixing, spot.at, Vec2::new(1.0, 0.0));
            }
        }
    }

    fn shows_fixing(&self, fixing: &Fixing) -> bool {
        match self.face {
            Face::Outside => fixing.outside,
            Face::Inside => fixing.inside,
        }
    }

    fn fixing(&mut self, fixing: &Fixing, hand: Hand) {
        let Some(at) = self.laid.point(fixing.piece, fixing.at, hand) else {
            return;
        };
        // What is folded in between the legs is not seen.
        if fixing.piece != PieceId::Band && at.x * self.laid.sign(hand) < HIDDEN_BEYOND_MM {
            return;
        }
        let along = self
            .laid
            .direction(fixing.piece, fixing.at, fixing.along, hand);
        self.set(fixing, at, along);
    }

    fn set(&mut self, fixing: &Fixing, at: Point, along: Vec2) {
        match &fixing.kind {
            FixingKind::Rivet(across) => self.metal(fixing, at, *across, false),
            FixingKind::Button(across) => self.metal(fixing, at, *across, true),
            FixingKind::Bartack(length, width, stitches) => {
                self.tack(fixing, at, along, (*length, *width, *stitches))
            }
            FixingKind::Buttonhole(length) => self.buttonhole(fixing, at, along, *length),
            FixingKind::Loop(length, width) => self.belt_loop(at, along, *length, *width),
            FixingKind::Zip(length, width) => self.zip(fixing, at, along, (*length, *width)),
            FixingKind::Patch(width, height, words) => {
                self.flat_thing(fixing, at, along, (*width, *height), words)
            }
            FixingKind::Label(width, height, words) => {
                self.flat_thing(fixing, at, along, (*width, *height), words)
            }
        }
    }

    fn metal(&mut self, fixing: &Fixing, at: Point, across: Length, button: bool) {
        let radius = (across.to_mm() / 2.0) as f32;
        if !(radius.is_finite() && radius > 0.5) {
            return;
        }
        self.scene.metals.push(Metal {
            at: place(at),
            radius: radius.min(40.0),
            button,
            colour: linear(fixing.colour),
            level: self.scene.sheets.len(),
        });
    }

    /// The thickness of the yarn that tacks and holes are sewn with.
    fn tack_yarn(&mut self, fixing: &Fixing) -> usize {
        let key = &self.garment.doc.bartacks.yarn;
        let size = self.garment.collection.yarns.get(key).map(|yarn| yarn.size);
        let diameter = size.map_or(Length::mm(0.34), trade::yarn::yarn_diameter);
        self.yarn(fixing.colour, diameter)
    }

    /// A short dense row: first a few long stitches along, then many across them.
    fn tack(
        &mut self,
        fixing: &Fixing,
        at: Point,
        along: Vec2,
        (length, width, stitches): (Length, Length, u32),
    ) {
        let yarn = self.tack_yarn(fixing);
        let (long, wide) = (
            along * (length.to_mm() / 2.0),
            left_of(along) * (width.to_mm() / 2.0),
        );
        for side in [-0.35, 0.35] {
            let ends = (
                place(at - long * 0.94 + wide * side),
                place(at + long * 0.94 + wide * side),
            );
            self.strand_at(ends, yarn, (1.0, 0.15, false));
        }
        let count = stitches.clamp(2, 400);
        let share = |k: u32| f64::from(k) / f64::from(count) * 2.0 - 1.0;
        for k in 0..count {
            let side = if k % 2 == 0 { 1.0 } else { -1.0 };
            let ends = (
                place(at + long * share(k) - wide * side),
                place(at + long * share(k + 1) + wide * side),
            );
            self.strand_at(ends, yarn, (0.42, 0.55, false));
        }
    }

    /// A keyhole: satin stitches along both lips and round the eye, a slit between them.
    fn buttonhole(&mut self, fixing: &Fixing, at: Point, along: Vec2, length: Length) {
        const PITCH: f64 = 0.5;
        const EYE: f64 = 1.3;
        let yarn = self.tack_yarn(fixing);
        let half = (length.to_mm() / 2.0).clamp(3.0, 30.0);
        let out = left_of(along);
        let eye = at + along * (half - 2.2);
        let (from, to) = (at - along * (half - 1.2), eye);
        let level = self.scene.sheets.len();
        self.scene.slits.push(Slit {
            from: place(from),
            to: place(to),
            level,
        });
        let long = (to - from).hypot();
        let count = (long / PITCH).floor() as u32;
        for k in 0..count {
            let on = from + along * (PITCH * f64::from(k));
            for side in [1.0, -1.0] {
                let ends = (
                    place(on + out * (0.35 * side)),
                    place(on + along * 0.2 + out * (HOLE_WIDTH / 2.0 * side)),
                );
                self.strand_at(ends, yarn, (0.6, 0.55, false));
            }
        }
        // Round the eye, and a bar at the other end.
        for k in 0..16_u32 {
            let turn = Vec2::from_angle(-2.3 + 4.6 * f64::from(k) / 15.0);
            let way = along * turn.x + out * turn.y;
            let ends = (
                place(eye + way * (EYE * 0.55)),
                place(eye + way * (EYE + 0.95)),
            );
            self.strand_at(ends, yarn, (0.6, 0.6, false));
        }
        let bar = from - along * 0.5;
        for k in 0..4_u32 {
            let on = bar - along * (0.35 * f64::from(k));
            let ends = (
                place(on - out * (HOLE_WIDTH / 2.0)),
                place(on + out * (HOLE_WIDTH / 2.0)),
            );
            self.strand_at(ends, yarn, (0.7, 0.6, false));
        }
    }
}
