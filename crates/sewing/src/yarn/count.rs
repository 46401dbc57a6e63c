//! Row by row and fixing by fixing.

use draft::ClothUse;
use style::{Seam, SeamId};
use trade::consumption::{Formula, RatioRow, bartack, yarn_per_seam};
use trade::{Confidence, Length, StitchDensity, StitchType, Unwashed, Washed};

use super::plies::{at_row, at_seam};
use super::unstated::unstated;
use super::width::{StitchWidth, of_row};
use super::{Basis, Consumption, Item, Sewn, SewnThrough, Used, countable};
use crate::garment::{Fixing, FixingKind, Garment, On, StitchRow};
use crate::work::set_densities;

/// Stitches along a keyhole buttonhole (from memory: 7 to 8 to the centimetre).
pub const BUTTONHOLE_DENSITY: StitchDensity = StitchDensity::per_cm(7.5);

/// From the cut of a buttonhole to the outside of its stitches (from memory).
pub const BUTTONHOLE_BITE: Length = Length::mm(2.5);

const BY_THREADS: Confidence =
    Confidence::Derived("the number of threads above and below, no sharing being published");
const TACK: Confidence = Confidence::Derived("the path of the thread");
const HALF: Confidence = Confidence::Derived("both threads going the same way");
const BUTTONHOLE: Confidence = Confidence::Derived(
    "the path of the thread round both sides of the cut, its bite and density from memory; \
     yarns those of the bartacks, gimp not counted",
);

/// The yarn of one pair in the size of the garment, without waste.
pub fn consumption(garment: &Garment) -> Consumption {
    let mut items: Vec<Item> = garment
        .rows
        .iter()
        .zip(set_densities(garment))
        .enumerate()
        .filter_map(|(index, row)| of_stitch_row(garment, index, row))
        .collect();
    for item in garment
        .fixings
        .iter()
        .filter_map(|fixing| of_fixing(garment, fixing))
    {
        match items.iter_mut().find(|known| same_work(known, &item)) {
            Some(known) => {
                known.count += item.count;
                known.used = known.used + item.used;
            }
            None => items.push(item),
        }
    }
    Consumption {
        size: garment.size,
        items,
        unstated: unstated(garment),
    }
}

/// How many of something set on these copies a pair has.
pub(super) fn copies(on: On) -> u32 {
    match on {
        On::AsDrawn | On::Mirrored => 1,
        On::Both => 2,
    }
}

/// Yarn per length of a whole pass, with where it comes from.
pub(super) struct PerLength {
    pub needle: f64,
    pub under: f64,
    pub basis: Basis,
    pub sharing: Confidence,
}

/// The formula where one is published, else the ratio table; nothing at all counts as none used.
pub(super) fn per_length(
    stitch: StitchType,
    density: StitchDensity,
    plies: &SewnThrough,
    width: Length,
) -> PerLength {
    let formula = Formula::of(stitch);
    if let Some(found) = yarn_per_seam(stitch, density, plies.thickness, width) {
        let basis = match formula {
            Some(_) => Basis::Formula(found.total_confidence),
            None => Basis::RatioTable(found.total_confidence),
        };
        return PerLength {
            needle: found.needle,
            under: found.under,
            basis,
            sharing: found.share_confidence,
        };
    }
    let (total, basis) = match (formula, RatioRow::of(stitch)) {
        (Some(formula), _) => (
            formula.ratio(density, plies.thickness, width),
            Basis::Formula(formula.confidence),
        ),
        (None, Some(row)) => (row.total, Basis::RatioTable(row.total_confidence)),
        (None, None) => (0.0, Basis::Unknown),
    };
    let threads = stitch.threads();
    let needle = total * f64::from(threads.needle) / f64::from(threads.total());
    PerLength {
        needle,
        under: total - needle,
        basis,
        sharing: BY_THREADS,
    }
}

fn of_stitch_row(
    garment: &Garment,
    index: usize,
    (row, set_to): (&StitchRow, Unwashed<StitchDensity>),
) -> Option<Item> {
    let seam: &Seam = garment.seams.iter().find(|s| s.id == row.seam)?;
    let spec = seam.rows.get(row.number.checked_sub(1)?)?;
    let plies = at_row(garment, seam, row.piece, (spec.stitch, spec.offset));
    let width = of_row(seam, row.number, row.stitch);
    let length = countable(garment.length_at_machine(row).figure());
    let per = per_length(row.stitch, set_to.figure(), &plies, width.width);
    let count = copies(row.on);
    let sewn = length * f64::from(count) * width.pass;
    Some(Item {
        seam: row.seam.into(),
        construction: Some(seam.construction),
        sewn: Sewn::Row(row.number),
        row: Some(index),
        piece: row.piece,
        stitch: row.stitch,
        density: Some(Washed::new(row.density)),
        set_to: Some(set_to),
        count,
        length: Unwashed::new(length),
        plies,
        width,
        needle_yarn: row.needle.key.clone(),
        under_yarn: row.under.key.clone(),
        used: Used {
            needle: countable(sewn * per.needle),
            under: countable(sewn * per.under),
        },
        basis: per.basis,
        sharing: per.sharing,
    })
}

/// A tack or a buttonhole; none for what is not sewn by a tacking machine.
fn of_fixing(garment: &Garment, fixing: &Fixing) -> Option<Item> {
    let (sewn, stitch, length, width, path, stitches) = match fixing.kind {
        FixingKind::Bartack(length, width, stitches) => (
            Sewn::Bartack(stitches),
            StitchType::S304,
            length,
            width,
            length,
            stitches,
        ),
        FixingKind::Buttonhole(cut) => {
            let path = countable(cut) * 2.0;
            let stitches = (BUTTONHOLE_DENSITY * path).round();
            (
                Sewn::Buttonhole,
                StitchType::S404,
                cut,
                BUTTONHOLE_BITE,
                path,
                // Not below zero, and a conversion never leaves the range of the type.
                stitches as u32,
            )
        }
        _ => return None,
    };
    let plies = plies_of_fixing(garment, fixing);
    let count = copies(fixing.on);
    let one = bartack(stitches, width, path, plies.thickness).map_or(Length::ZERO, countable);
    let each = one * f64::from(count) / 2.0;
    let buttonhole = sewn == Sewn::Buttonhole;
    Some(Item {
        seam: fixing.from.clone(),
        construction: fixing
            .from
            .seam()
            .and_then(|id| garment.seams.iter().find(|s| s.id == id))
            .map(|s| s.construction),
        sewn,
        row: None,
        piece: fixing.piece,
        stitch,
        density: None,
        set_to: None,
        count,
        length: Unwashed::new(countable(length)),
        plies,
        width: StitchWidth::throw(width),
        needle_yarn: garment.doc.bartacks.yarn.clone(),
        under_yarn: garment.doc.bartacks.under.clone(),
        used: Used {
            needle: each,
            under: each,
        },
        basis: Basis::Path(if buttonhole { BUTTONHOLE } else { TACK }),
        sharing: HALF,
    })
}

/// Common practice: a loop's end is folded under, so a tack goes through four plies of it and the
/// two of the band, or one of the body below it; a mouth tack catches the facing; a hole goes
/// through the two plies of the band, or of the strip behind the fly facing; any other tack through its seam.
fn plies_of_fixing(garment: &Garment, fixing: &Fixing) -> SewnThrough {
    let shell = |n: u8| SewnThrough::new(garment, &[(n, ClothUse::Shell)]);
    match (&fixing.kind, fixing.from.seam()) {
        (FixingKind::Buttonhole(_), _) => shell(2),
        (_, Some(SeamId::LoopEdge)) => shell(if fixing.at.y >= 0.0 { 6 } else { 5 }),
        (_, Some(SeamId::Mouth)) => {
            SewnThrough::new(garment, &[(3, ClothUse::Shell), (1, ClothUse::Pocketing)])
        }
        (_, seam) => seam
            .and_then(|seam| at_seam(garment, seam, fixing.piece))
            .unwrap_or_else(|| shell(2)),
    }
}

fn same_work(one: &Item, other: &Item) -> bool {
    one.row.is_none()
        && one.seam == other.seam
        && one.sewn == other.sewn
        && one.piece == other.piece
        && one.length == other.length
        && one.width == other.width
        && one.plies == other.plies
}

#[cfg(test)]
mod tests;
