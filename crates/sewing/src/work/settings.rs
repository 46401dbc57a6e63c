//! How dense each machine is set to sew.

use style::Seam;
use trade::{Length, Share, StitchDensity, Unwashed, Washed};

use super::passes::passes;
use crate::garment::{Garment, StitchRow};

/// The density each row is sewn at, in the order of [`Garment::rows`].
///
/// What goes through one machine in one pass is sewn at one setting: that with which the finished pair has the
/// stated density over all of it. A piece of it that runs another way of the cloth than the rest comes out a
/// little apart.
pub fn set_densities(garment: &Garment) -> Vec<Unwashed<StitchDensity>> {
    let alone = |row: &StitchRow| Washed::new(row.density).unwashed(lost(garment, [row]));
    let mut out: Vec<Unwashed<StitchDensity>> = garment.rows.iter().map(alone).collect();
    for seam in &garment.seams {
        for pass in passes(garment, seam) {
            let of_pass = |row: &StitchRow| row.seam == seam.id && pass.rows.contains(&row.number);
            let lost = lost(garment, garment.rows.iter().filter(|row| of_pass(row)));
            for (row, set) in garment.rows.iter().zip(&mut out) {
                if of_pass(row) {
                    *set = Washed::new(row.density).unwashed(lost);
                }
            }
        }
    }
    out
}

/// The density a row of a seam is sewn at, on whichever piece; none for one that is not laid.
pub(crate) fn set_density(
    garment: &Garment,
    set: &[Unwashed<StitchDensity>],
    (seam, number): (&Seam, usize),
) -> Option<Unwashed<StitchDensity>> {
    let of_row = |row: &StitchRow| row.seam == seam.id && row.number == number;
    let at = garment.rows.iter().position(of_row)?;
    set.get(at).copied()
}

/// The share of these rows, end to end, that the wash takes.
fn lost<'a>(garment: &Garment, rows: impl IntoIterator<Item = &'a StitchRow>) -> Share {
    let (mut finished, mut sewn) = (Length::ZERO, Length::ZERO);
    for row in rows {
        finished += row.length();
        sewn += garment.length_at_machine(row).figure();
    }
    let lost = Share::ratio(1.0 - finished / sewn);
    if lost.is_finite() { lost } else { Share::ZERO }
}
