//! The rows and fixings of one size.

use geometry::Path;
use serde::Serialize;
use sewing::{Fixing, FixingKind, Garment, On, RowEnd, StitchRow};
use trade::Length;

use crate::number::Xy;
use crate::pieces::{dense, mm, rounded, xy};

#[derive(Serialize)]
pub(crate) struct RowRow<'a> {
    seam: &'a str,
    number: usize,
    piece: &'static str,
    copies: &'static str,
    stitch: String,
    per_cm: f64,
    needle: &'a str,
    under: &'a str,
    begins: &'static str,
    ends: &'static str,
    length: f64,
    stitches: usize,
    /// Where the line turns: its corners, and both its ends.
    corners: Vec<Xy>,
    points: Vec<Xy>,
}

#[derive(Serialize)]
pub(crate) struct FixingRow<'a> {
    kind: &'static str,
    from: &'a str,
    piece: &'static str,
    copies: &'static str,
    at: Xy,
    along: [f64; 2],
    /// Diameter, or length and width, or width and height.
    size: Vec<f64>,
}

pub(crate) const fn copies(on: On) -> &'static str {
    match on {
        On::AsDrawn => "as_drawn",
        On::Mirrored => "mirrored",
        On::Both => "both",
    }
}

/// How this shape writes an end of a row, however people are told of it.
const fn ending(end: RowEnd) -> &'static str {
    match end {
        RowEnd::Backtacked => "backtacked",
        RowEnd::CaughtInSeam => "caught in the next seam",
        RowEnd::TuckedIn => "threads tucked into the fold",
        RowEnd::Overlapped => "overlaps its start",
        RowEnd::TiedByHand => "threads tied by hand",
        RowEnd::RunsOn => "runs on over the seam",
        RowEnd::ChainedOff => "chained off, tail sewn in",
        RowEnd::Cut => "threads cut",
    }
}

pub(crate) fn rows(garment: &Garment) -> Vec<RowRow<'_>> {
    garment.rows.iter().map(row).collect()
}

fn row(row: &StitchRow) -> RowRow<'_> {
    RowRow {
        seam: row.seam.code(),
        number: row.number,
        piece: row.piece.code(),
        copies: copies(row.on),
        stitch: row.stitch.to_string(),
        per_cm: rounded(row.density.to_per_cm()),
        needle: &row.needle.key,
        under: &row.under.key,
        begins: ending(row.begins),
        ends: ending(row.ends),
        length: mm(row.length()),
        stitches: row.stitches(),
        corners: corners(&row.path),
        points: dense(&row.path),
    }
}

/// The joints of a path's parts.
fn corners(path: &Path) -> Vec<Xy> {
    let joints = path
        .segments()
        .windows(1)
        .map(|part| Path::new(part.to_vec()).start());
    joints.chain([path.end()]).map(xy).collect()
}

pub(crate) fn fixings(garment: &Garment) -> Vec<FixingRow<'_>> {
    garment.fixings.iter().map(fixing).collect()
}

fn fixing(fixing: &Fixing) -> FixingRow<'_> {
    let (kind, size): (_, &[Length]) = match &fixing.kind {
        FixingKind::Rivet(across) => ("rivet", &[*across]),
        FixingKind::Button(across) => ("button", &[*across]),
        FixingKind::Buttonhole(length) => ("buttonhole", &[*length]),
        FixingKind::Zip(length, width) => ("zip", &[*length, *width]),
        FixingKind::Bartack(length, width, _) => ("bartack", &[*length, *width]),
        FixingKind::Loop(length, width) => ("loop", &[*length, *width]),
        FixingKind::Patch(width, height, _) => ("patch", &[*width, *height]),
        FixingKind::Label(width, height, _) => ("label", &[*width, *height]),
    };
    FixingRow {
        kind,
        from: fixing.from.code(),
        piece: fixing.piece.code(),
        copies: copies(fixing.on),
        at: xy(fixing.at),
        along: [rounded(fixing.along.x), rounded(fixing.along.y)],
        size: size.iter().copied().map(mm).collect(),
    }
}
