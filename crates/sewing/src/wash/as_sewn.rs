//! The pair as it lies in the workroom, before its wash.

use draft::{BackPocketSpec, ExtraPocketSpec, Pattern, PieceId, Spec};
use style::{Seam, SeamId};
use trade::{Length, StitchDensity, Unwashed, Washed};

use super::before::{ACROSS, BeforeWash, DOWN};
use super::behaviour::Washes;
use crate::context::Context;
use crate::garment::{Garment, On, StitchRow};
use crate::grown_pieces::cut_pieces;
use crate::work::{set_densities, set_density};
use crate::{fixings, laps, rows};

impl Garment {
    /// The same pair as it is sewn: every piece, row, place and distance as a sewer finds it, before the first
    /// wash takes its share. What is drawn from it shows a workroom what to set and where to mark.
    ///
    /// Rows keep the distance a guide is set to, so they are laid anew on the pieces as cut, round patch and label
    /// as well, which do not shrink. A design on a pocket is stated as the finished pair shows it and moves with
    /// the cloth.
    #[must_use]
    pub fn as_sewn(&self) -> Garment {
        let before = &self.before_wash;
        let mut doc = self.doc.clone();
        doc.band.start_below = before.start_below(&self.doc).figure();
        let pattern = Pattern {
            spec: details(before),
            ..before.pattern.clone()
        };
        let seams = rows::from_seam_line(&doc, &pattern.spec);
        let context = Context {
            doc: &doc,
            collection: &self.collection,
            size: self.size,
            pattern: &pattern,
            seams: &seams,
        };
        // What is wrong with the pair was said of the finished one.
        let mut said = Vec::new();
        let set = set_densities(self);
        let mut sewn = rows::rows(&context, &mut said);
        for at in 0..sewn.len() {
            let (before, rest) = sewn.split_at_mut(at);
            if let Some(row) = rest.first_mut() {
                let nth = before.iter().filter(|r| kind(r) == kind(row)).count();
                self.set_as_sewn(row, nth, &set);
            }
        }
        let fixings = fixings::fixings(&context, &mut said);
        let (laps, cut) = (laps::laps(&context), cut_pieces(&context, &mut said));
        let seams = self.at_machine(seams, &set);
        Garment {
            before_wash: BeforeWash::by(&pattern, &doc, Washes::NONE),
            rows: sewn,
            fixings,
            laps,
            cut,
            doc,
            pattern,
            seams,
            ..self.clone()
        }
    }

    /// Seams with the densities machines are set to.
    fn at_machine(&self, mut seams: Vec<Seam>, set: &[Unwashed<StitchDensity>]) -> Vec<Seam> {
        for seam in &mut seams {
            for at in 0..seam.rows.len() {
                let set = set_density(self, set, (seam, at + 1));
                if let (Some(row), Some(set)) = (seam.rows.get_mut(at), set) {
                    row.density = set.figure();
                }
            }
        }
        seams
    }

    /// Gives a row that was laid on the pieces as cut the density its machine is set to, and a row that is stated as
    /// the finished pair shows it its own line. `nth` of the rows that are told apart by nothing else.
    fn set_as_sewn(&self, row: &mut StitchRow, nth: usize, set: &[Unwashed<StitchDensity>]) {
        let mut alike = self
            .rows
            .iter()
            .zip(set)
            .filter(|(r, _)| kind(r) == kind(row));
        let Some((own, set)) = alike.nth(nth) else {
            return;
        };
        let as_finished = row.seam == SeamId::Decoration;
        let scale = self.before_wash.scale(row.piece).filter(|_| as_finished);
        if let Some(scale) = scale {
            row.path = own.path.transformed(scale.map);
        }
        row.density = set.figure();
    }
}

/// What rows are told apart by.
fn kind(row: &StitchRow) -> (SeamId, usize, PieceId, On) {
    (row.seam, row.number, row.piece, row.on)
}

/// What the style states beside its chart, on the pieces as they are cut.
fn details(before: &BeforeWash) -> Spec {
    let spec = &before.pattern.spec;
    let grown = |piece, way| {
        move |length: Length| before.unwashed(piece, way, Washed::new(length)).figure()
    };
    let down = grown(PieceId::Front, DOWN);
    let across = grown(PieceId::Front, ACROSS);
    let back_pocket = |piece, pocket: BackPocketSpec| BackPocketSpec {
        foot_width: grown(piece, ACROSS)(pocket.foot_width),
        side_length: grown(piece, DOWN)(pocket.side_length),
        outer_drop: grown(piece, DOWN)(pocket.outer_drop),
        ..pocket
    };
    let extra = |pocket: ExtraPocketSpec| ExtraPocketSpec {
        width: grown(PieceId::ExtraPocket, ACROSS)(pocket.width),
        depth: grown(PieceId::ExtraPocket, DOWN)(pocket.depth),
        from_centre: across(pocket.from_centre),
        ..pocket
    };
    let mut sewn = spec.clone();
    sewn.coin_below_band = down(spec.coin_below_band);
    sewn.coin_from_side = across(spec.coin_from_side);
    sewn.coin_lower_narrowing = grown(PieceId::CoinPocket, ACROSS)(spec.coin_lower_narrowing);
    sewn.coin_drop = grown(PieceId::CoinPocket, DOWN)(spec.coin_drop);
    sewn.bag_depth = grown(PieceId::PocketBag, DOWN)(spec.bag_depth);
    sewn.bag_width = grown(PieceId::PocketBag, ACROSS)(spec.bag_width);
    sewn.facing = across(spec.facing);
    sewn.back_pocket_left = back_pocket(PieceId::BackPocketLeft, spec.back_pocket_left);
    sewn.back_pocket_right = back_pocket(PieceId::BackPocketRight, spec.back_pocket_right);
    sewn.extra_pocket = spec.extra_pocket.map(extra);
    sewn
}
