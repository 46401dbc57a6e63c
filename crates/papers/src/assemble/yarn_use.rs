//! How much of each sewing yarn one pair takes: a geometric estimate from the laid rows.

use draft::ClothUse;
use indexmap::IndexMap;
use sewing::{EdgeUse, FixingKind, Garment, On, StitchRow, construct, edge_use};
use style::Seam;
use trade::consumption::{bartack, yarn_per_seam};
use trade::{Length, StitchType};

use super::Context;
use super::construction::cloth_of;

/// Bite of an overedge and spacing of the outer needles where the rows do not tell it
/// (3/16 and 1/4 inch, common practice).
const USUAL_BITE: Length = Length::inches(0.1875);
const USUAL_GAUGE: Length = Length::inches(0.25);

/// Plies under a bartack: a loop or pocket edge, folded, on a seam (common practice).
const BARTACK_PLIES: f64 = 4.0;

/// What one yarn is used for.
#[derive(Debug, Default)]
pub(super) struct Use {
    /// Yarn for one pair, without waste.
    pub length: Length,
    /// The seams it sews, by name, and "bartacks".
    pub seams: Vec<String>,
}

/// The use of every yarn the style names, by key, in the order of first use.
///
/// Each row takes the published formula of its stitch ([`trade::consumption`]) with the plies of its
/// seam as thickness. A row of a stitch with several needles is one needle of a pass.
pub(super) fn yarn_use(context: &Context<'_>) -> IndexMap<String, Use> {
    let garment = context.shown;
    let mut uses: IndexMap<String, Use> = IndexMap::new();
    let mut add = |key: &str, length: Length, seam: &str| {
        let used = uses.entry(key.to_owned()).or_default();
        used.length += length;
        if !used.seams.iter().any(|known| known == seam) {
            used.seams.push(seam.to_owned());
        }
    };
    for row in &garment.rows {
        let Some(seam) = garment.seams.iter().find(|seam| seam.name == row.seam) else {
            continue;
        };
        let Some((needle, under)) = row_use(context, seam, row) else {
            continue;
        };
        add(&row.needle.key, needle, &row.seam);
        add(&row.under.key, under, &row.seam);
    }
    let tacks = &garment.doc.bartacks;
    let both = tack_use(context, garment);
    if both > Length::ZERO {
        // A bartack is a lockstitch: half its thread is on the needle.
        add(&tacks.yarn, both / 2.0, BARTACKS);
        add(&tacks.under, both / 2.0, BARTACKS);
    }
    uses
}

/// The name bartacks go by among the seams.
pub(super) const BARTACKS: &str = "bartacks";

/// Needle and under yarn of one laid row on all its copies.
fn row_use(context: &Context<'_>, seam: &Seam, row: &StitchRow) -> Option<(Length, Length)> {
    let plies = f64::from(construct(seam.construction).plies);
    let thick = thickness(context, seam).unwrap_or_default() * plies;
    let per = yarn_per_seam(row.stitch, row.density, thick, width(seam, row.stitch))?;
    let sewn = row.length() * copies(row.on) / needles_sharing(seam, row.stitch);
    let used = (sewn * per.needle, sewn * per.under);
    (used.0.is_finite() && used.1.is_finite()).then_some(used)
}

/// Thickness of the thickest cloth sewn in a seam.
fn thickness(context: &Context<'_>, seam: &Seam) -> Option<Length> {
    let cloths = cloths_of(context.shown, &seam.name);
    let thick = |cloth| Some(cloth_of(context, cloth)?.thickness);
    cloths.into_iter().filter_map(thick).reduce(Length::max)
}

/// The cloths of the pieces sewn in a seam; the shell for one that is stitched on the face alone.
fn cloths_of(garment: &Garment, seam: &str) -> Vec<ClothUse> {
    let sewn = |piece: &&draft::Piece| {
        piece.edges.iter().any(
            |edge| matches!(edge_use(piece.id, edge.name), EdgeUse::Sewn(name, _) if name == seam),
        )
    };
    let found = garment.pattern.pieces.iter().filter(sewn);
    let mut cloths: Vec<ClothUse> = found.map(|piece| piece.cloth).collect();
    if cloths.is_empty() {
        cloths.push(ClothUse::Shell);
    }
    cloths
}

const fn copies(on: On) -> f64 {
    match on {
        On::Both => 2.0,
        On::AsDrawn | On::Mirrored => 1.0,
    }
}

/// Rows of a stitch whose needles are each written as a row.
fn needles_sharing(seam: &Seam, stitch: StitchType) -> f64 {
    let needles = usize::from(stitch.threads().needle);
    let rows = seam.rows.iter().filter(|row| row.stitch == stitch).count();
    let together = !stitch.is_overedge() && needles > 1 && rows >= needles;
    if together { needles as f64 } else { 1.0 }
}

fn width(seam: &Seam, stitch: StitchType) -> Length {
    if stitch.is_overedge() {
        return USUAL_BITE;
    }
    let offsets = || {
        seam.rows
            .iter()
            .filter(|r| r.stitch == stitch)
            .map(|r| r.offset)
    };
    let spread = offsets()
        .reduce(Length::max)
        .zip(offsets().reduce(Length::min));
    spread
        .map(|(far, near)| far - near)
        .filter(|between| *between > Length::ZERO)
        .unwrap_or(USUAL_GAUGE)
}

fn tack_use(context: &Context<'_>, garment: &Garment) -> Length {
    let shell = cloth_of(context, ClothUse::Shell);
    let thick = shell.map_or(Length::ZERO, |cloth| cloth.thickness) * BARTACK_PLIES;
    garment
        .fixings
        .iter()
        .filter_map(|fixing| match fixing.kind {
            FixingKind::Bartack(length, width, stitches) => {
                Some(bartack(stitches, width, length, thick)? * copies(fixing.on))
            }
            _ => None,
        })
        .filter(|length| length.is_finite())
        .sum()
}
