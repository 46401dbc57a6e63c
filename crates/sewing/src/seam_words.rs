//! A seam in words, as a construction list prints it.

use draft::{ClothUse, PieceId};
use style::{MeasureId, Seam, SeamId};
use trade::Length;

use crate::allowance::allowances;
use crate::construct::{Rule, class_of, construct, operation_of};
use crate::context::mm;
use crate::garment::{Garment, RowEnd};
use crate::seam::facts;
use crate::work::gauge_of;

/// What a construction list says about a seam besides its rows. Any of the texts may be empty.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Described {
    /// "Inseam".
    pub name: String,
    /// "front and back, crotch to hem".
    pub joins: &'static str,
    /// "lap-felled".
    pub construction: &'static str,
    /// "ISO 4916 2.04.06 · ASTM D6193 LSc-2".
    pub class: String,
    /// "feed-off-the-arm".
    pub machine: &'static str,
    /// "4 plies, 3.3 mm": the thickest place along the seam, away from crossings.
    pub plies: String,
    /// "front 8.1 mm, back 17.7 mm".
    pub allowances: String,
    /// "front over back; both edges turned into each other".
    pub lies: String,
    /// How the needles stand that sew each row: "two needles, 6.4 mm", "single needle"; empty for a
    /// row without a place.
    pub gauges: Vec<String>,
    /// How each row begins and ends: "both ends: threads tucked into the fold".
    pub ends: Vec<String>,
}

/// Describes a seam of a sewn size.
pub fn describe(garment: &Garment, seam: &Seam) -> Described {
    let made = construct(seam.construction);
    Described {
        name: capitalised(seam.id.title()),
        joins: facts(seam.id).joins(),
        construction: seam.construction.word(),
        class: class_of(seam).map_or_else(String::new, |class| {
            format!("ISO 4916 {} · ASTM D6193 {}", class.iso, class.astm)
        }),
        machine: operation_of(seam).map_or("", |operation| operation.machine),
        plies: plies(garment, seam, made.plies),
        allowances: widths(garment, seam),
        lies: lies(garment, seam),
        gauges: (1..=seam.rows.len())
            .map(|number| gauge_of(garment, seam, number))
            .collect(),
        ends: (1..=seam.rows.len())
            .map(|number| ends_of(garment, seam.id, number))
            .collect(),
    }
}

/// Which ply is on top, and which way the allowance lies.
pub(crate) fn lies(garment: &Garment, seam: &Seam) -> String {
    let made = construct(seam.construction);
    match seam.lap {
        Some(lap) => format!("{lap}; {}", made.lies),
        None if seam.id == SeamId::Hem && garment.doc.hem.roping => {
            format!("{}; diagonal roping wanted", made.lies)
        }
        None => made.lies.to_owned(),
    }
}

/// Both ends of a row, or of each of its runs where these differ; empty for a row that is not laid.
///
/// Where a run goes on over a seam, only its other end is an end.
pub(crate) fn ends_of(garment: &Garment, seam: SeamId, number: usize) -> String {
    let mut ways: Vec<String> = Vec::new();
    for row in &garment.rows {
        if row.seam != seam || row.number != number {
            continue;
        }
        let way = match (row.begins, row.ends) {
            (RowEnd::RunsOn, RowEnd::RunsOn) => continue,
            (begins, RowEnd::RunsOn) => format!("begins: {}", begins.word()),
            (RowEnd::RunsOn, ends) => format!("ends: {}", ends.word()),
            (begins, ends) if begins == ends => format!("both ends: {}", begins.word()),
            (begins, ends) => format!("begins: {}; ends: {}", begins.word(), ends.word()),
        };
        if !ways.contains(&way) {
            ways.push(way);
        }
    }
    ways.join("; ")
}

pub(crate) fn capitalised(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

/// Counted as plies of the cloth the seam is mostly sewn through.
fn plies(garment: &Garment, seam: &Seam, count: u8) -> String {
    let cloth = match sewn_on(seam) {
        ClothUse::Pocketing => &garment.doc.cloth.pocketing,
        _ => &garment.doc.cloth.shell,
    };
    // The facing of the fly is cut in two plies, and only the front has an allowance between them.
    let turned = facts(seam.id).turned;
    let count = match turned.map(|turned| turned.faced_with) {
        Some(PieceId::FlyFacing) => 3,
        _ => count,
    };
    let word = if count == 1 { "ply" } else { "plies" };
    match garment.collection.cloths.get(cloth) {
        Some(cloth) => format!("{count} {word}, {}", mm(cloth.thickness * f64::from(count))),
        None => format!("{count} {word}"),
    }
}

pub(crate) fn widths(garment: &Garment, seam: &Seam) -> String {
    let both = allowances(seam, garment.pattern.spec[MeasureId::HemDepth]);
    match (construct(seam.construction).rule, seam.lap) {
        (Rule::None, _) => String::new(),
        (Rule::Felled, Some(lap)) => format!(
            "{} {}, {} {}",
            lap.over,
            mm(both.over),
            lap.under,
            mm(both.under)
        ),
        _ if construct(seam.construction).joins > 1 && both.over > Length::ZERO => {
            format!("{} on each ply", mm(both.over))
        }
        _ => mm(both.over),
    }
}

/// The cloth a seam is mostly sewn through.
pub(crate) fn sewn_on(seam: &Seam) -> ClothUse {
    facts(seam.id).through
}
