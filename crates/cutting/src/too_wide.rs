//! Pieces that do not lie on their cloth, however they are turned.

use draft::{Finding, Severity};
use style::Subject;
use trade::Length;
use words::{key, say};

use crate::cut::Cutter;
use crate::piece::{CutPiece, Part};

/// Differences below this are those of drawing.
const NEAR: Length = Length::mm(0.01);

impl Cutter<'_> {
    /// What is wider than its cloth: pieces lie with the warp, so only their extent across it counts.
    pub fn too_wide(&self, pieces: &[CutPiece]) -> Vec<Finding> {
        let mut found: Vec<Finding> = Vec::new();
        for piece in pieces {
            let cloths = &self.garment.collection.cloths;
            let Some(cloth) = cloths.get(&piece.cloth_name) else {
                continue;
            };
            let across = piece
                .on_cloth(false)
                .outline
                .iter()
                .map(|p| p.y)
                .fold(0.0, f64::max);
            let across = Length::mm(across);
            let subject = match piece.part {
                Part::Whole => Subject::Piece(piece.piece),
                Part::LeftHalf => Subject::LeftHalf(piece.piece),
                Part::RightHalf => Subject::RightHalf(piece.piece),
            };
            let fits = across <= cloth.width + NEAR;
            // Left and right of a pair are two pieces of one name.
            if fits || found.iter().any(|f| f.subject == subject) {
                continue;
            }
            let message = say::CuttingTooWide {
                across: across.in_cm(1),
                cloth: &cloth.name,
                width: cloth.width.in_cm(1),
            };
            let finding = self.finding(
                "cutting::wider-than-cloth",
                Severity::Error,
                subject,
                message,
            );
            found.push(finding.help(key::CUTTING_TOO_WIDE_HELP));
        }
        found
    }
}
