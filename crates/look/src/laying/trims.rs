//! Loops, patch, labels and zips.

use draft::{PieceId, path_of};
use geometry::{Affine, Point, Vec2, block, left_of};
use sewing::{Fixing, FixingKind};
use style::{Drawing, Letters, Tanning};
use trade::Length;

use super::{Laying, SHELL, set_on};
use crate::dye::linear;
use crate::flats::{Flat, Made};
use crate::letters::set;
use crate::place::{Place, place, places};
use crate::scene::{Sheet, Stands, Stuff};

/// A patch of which no thickness is stated, and a ribbon (from memory).
const USUAL_PATCH: f32 = 1.4;
const RIBBON: f32 = 0.3;

impl Laying<'_> {
    /// A loop: a strip folded into plies, standing off the band between its two tacks.
    pub(super) fn belt_loop(&mut self, at: Point, along: Vec2, length: Length, width: Length) {
        let outline = places(&block(at, along, length, width));
        let stuff = Stuff::Woven {
            cloth: SHELL,
            reverse: false,
            warp: [along.x as f32, along.y as f32],
            from: place(at),
        };
        // Two plies and the cover stitches between them, a little off the band.
        let more = 2.6 * self.step();
        // The band below it is two plies; over the seam it hangs free.
        let sheet = Sheet {
            stands: Stands::Bridges(2.0 * self.step() + more),
            ..set_on(outline, None, stuff, more, self.ply * 1.1)
        };
        self.push(sheet);
        let garment = self.garment;
        for row in garment
            .rows
            .iter()
            .filter(|r| r.piece == PieceId::LoopStrip)
        {
            // Rows lie on the unfolded strip, whose middle is the middle of the loop.
            let beside = row.path.start().x - width.to_mm();
            let yarn = self.yarn(row.needle.colour, row.needle.diameter);
            let pitch = row.density.pitch().to_mm();
            let half = length.to_mm() / 2.0;
            let count = (2.0 * half / pitch.max(0.3)).floor().clamp(0.0, 400.0) as u32;
            let hole = |k: u32| {
                place(at + left_of(along) * beside + along * (f64::from(k) * pitch - half))
            };
            for k in 0..count {
                self.strand_at((hole(k), hole(k + 1)), yarn, (1.5, 0.20, true));
            }
        }
    }

    /// A patch or a label.
    pub(super) fn flat_thing(
        &mut self,
        fixing: &Fixing,
        at: Point,
        along: Vec2,
        (width, height): (Length, Length),
        words: &str,
    ) {
        let across = if along.x < 0.0 { -along } else { along };
        let trim = fixing
            .from
            .trim()
            .and_then(|key| self.garment.collection.trims.get(key));
        let doc = &self.garment.doc;
        let patch = matches!(fixing.kind, FixingKind::Patch(..));
        let drawing = if patch {
            doc.patch.as_ref().and_then(|p| p.drawing.as_ref())
        } else {
            let label = doc
                .labels
                .iter()
                .find(|l| fixing.from.trim() == Some(l.trim.as_str()));
            label.and_then(|l| l.drawing.as_ref())
        };
        let leather = patch && trim.is_none_or(style::Trim::is_leather);
        let letters = doc.patch.as_ref().map_or(Letters::Pressed, |p| p.letters);
        let darkens = trim.is_none_or(|t| matches!(t.tanning, None | Some(Tanning::Vegetable)));
        let made = if leather {
            Made::Leather { darkens, letters }
        } else {
            Made::Ribbon
        };
        let thick = trim
            .and_then(|t| t.thickness)
            .map_or(USUAL_PATCH, |t| t.to_mm() as f32);
        let thick = if leather {
            thick.clamp(0.3, 4.0)
        } else {
            RIBBON
        };
        let strokes = marks(drawing, words, width, height);
        let half = [width.to_mm() as f32 / 2.0, height.to_mm() as f32 / 2.0];
        if !half.iter().all(|h| h.is_finite() && *h > 0.5 && *h < 300.0) {
            return;
        }
        let lying = (place(at), [across.x as f32, across.y as f32], half);
        self.scene
            .flats
            .push(Flat::of(lying, made, linear(fixing.colour), &strokes));
        let stuff = Stuff::Flat(self.scene.flats.len() - 1);
        let outline = places(&block(at, across, width, height));
        // Leather is cut: its edge is only a little round.
        let sheet = set_on(
            outline,
            None,
            stuff,
            thick,
            if leather { 0.5 } else { 0.15 },
        );
        let sheet = match leather {
            true => Sheet {
                stands: Stands::Bridges(2.0 * self.step() + thick),
                ..sheet
            },
            false => sheet,
        };
        self.push(sheet);
    }

    /// Tapes with teeth between them.
    pub(super) fn zip(
        &mut self,
        fixing: &Fixing,
        at: Point,
        along: Vec2,
        (length, width): (Length, Length),
    ) {
        let half = [length.to_mm() as f32 / 2.0, width.to_mm() as f32 / 2.0];
        if !half.iter().all(|h| h.is_finite() && *h > 0.5 && *h < 500.0) {
            return;
        }
        let teeth = (0..(half[0] * 2.0 / 2.0) as i32).flat_map(|k| {
            let x = k as f32 * 2.0 - half[0] + 1.0;
            [
                ([[x, -2.4], [x, 0.3]], 0.9),
                ([[x + 1.0, -0.3], [x + 1.0, 2.4]], 0.9),
            ]
        });
        let strokes: Vec<([Place; 2], f32)> = teeth.collect();
        let way = [along.x as f32, along.y as f32];
        let flat = Flat::of(
            (place(at), way, half),
            Made::Ribbon,
            linear(fixing.colour),
            &strokes,
        );
        self.scene.flats.push(flat);
        let stuff = Stuff::Flat(self.scene.flats.len() - 1);
        self.push(Sheet {
            outline: places(&block(at, along, length, width)),
            clip: None,
            stuff,
            stands: Stands::On(0.6),
            rims: Vec::new(),
            round: 0.0,
            folds: false,
        });
    }
}

/// The maker's lines and the words of a patch or a label as strokes about its middle; words keep clear of the lines.
fn marks(
    drawing: Option<&Drawing>,
    words: &str,
    width: Length,
    height: Length,
) -> Vec<([Place; 2], f32)> {
    const LINE: f32 = 0.8;
    /// From the edge to beyond the row it is sewn with.
    const ROW: f64 = 4.2;
    let (wide, high) = (width.to_mm(), height.to_mm());
    // A drawing begins at the upper left corner; its lines come with y up already.
    let map = Affine::translate(Vec2::new(-wide / 2.0, high / 2.0));
    let mut out = Vec::new();
    let (mut top, mut foot) = (f64::NEG_INFINITY, f64::INFINITY);
    for line in drawing.iter().flat_map(|d| &d.lines) {
        let points = path_of(line).transformed(map).dense(Length::mm(0.4));
        for p in &points {
            top = top.max(p.y);
            foot = foot.min(p.y);
        }
        out.extend(places(&points).windows(2).map(|w| ([w[0], w[1]], LINE)));
    }
    let (above, below) = (high / 2.0 - top, foot + high / 2.0);
    let (middle, room) = if top < foot {
        (0.0, high)
    } else if below >= above {
        // Clear of the row along its edge.
        let row = ROW.min(below / 3.0);
        ((below + row) / 2.0 - high / 2.0, below - row)
    } else {
        let row = ROW.min(above / 3.0);
        (high / 2.0 - (above + row) / 2.0, above - row)
    };
    let (strokes, unit) = set(words, (wide * 0.82) as f32, (room * 0.62) as f32);
    let thick = (unit * 0.85).clamp(0.22, 1.6);
    let lifted = |p: Place| [p[0], p[1] + middle as f32];
    out.extend(strokes.into_iter().map(|s| (s.map(lifted), thick)));
    out
}
