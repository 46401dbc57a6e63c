//! The construction list: every seam with its class, plies, allowances and stitch rows.

use draft::ClothUse;
use sewing::{Garment, class_of, describe};
use style::{Cloth, Construction, RowSpec, Seam};
use trade::Length;

use super::Context;
use super::figures::drawn;
use super::words::{joined, millimetres, swatch};
use crate::{PaperError, SeamBlock, StitchRowText, YarnText};

pub(super) const NOTE: &str = "Rows are numbered from the visible edge inwards; a row's place is that of its needle. Numbers of ISO 4916 are \
    given for orientation and are not checked against the standard: words, drawings and rows decide.";

pub(super) fn seams(context: &Context<'_>) -> Result<Vec<SeamBlock>, PaperError> {
    context
        .shown
        .seams
        .iter()
        .map(|seam| block(context, seam))
        .collect()
}

fn block(context: &Context<'_>, seam: &Seam) -> Result<SeamBlock, PaperError> {
    let section = drawing::seam_section_thumbnail(context.shown, seam);
    let told = describe(context.shown, seam);
    let unsure = class_of(seam).is_some_and(|class| !class.pairing_sure);
    let row = |(index, row)| row_text(context, seam, index, row);
    Ok(SeamBlock {
        name: told.name,
        joins: told.joins.to_owned(),
        construction: joined([told.construction, told.machine], ", "),
        class: told.class + if unsure { " (to be confirmed)" } else { "" },
        plies: told.plies,
        allowances: told.allowances,
        lies: joined([told.lies.as_str(), selvedge(context, seam)], "; "),
        rows: seam.rows.iter().enumerate().map(row).collect(),
        section: section.map(|sheet| drawn(&sheet)).transpose()?,
    })
}

/// What is special about a pressed-open outseam along the finished edges of the cloth.
fn selvedge(context: &Context<'_>, seam: &Seam) -> &'static str {
    let shell = cloth_of(context, ClothUse::Shell);
    let there = shell.is_some_and(|cloth| cloth.selvedge)
        && seam.name == "outseam"
        && seam.construction == Construction::PressedOpen;
    if there {
        "the cloth's finished edges show inside"
    } else {
        ""
    }
}

/// The collection's cloth for a use.
pub(super) fn cloth_of<'a>(context: &'a Context<'_>, cloth: ClothUse) -> Option<&'a Cloth> {
    let refs = &context.loaded.style.cloth;
    let key = match cloth {
        ClothUse::Shell => Some(&refs.shell),
        ClothUse::Pocketing => Some(&refs.pocketing),
        ClothUse::Lining => refs.lining.as_ref(),
    };
    context.loaded.collection.cloths.get(key?)
}

fn row_text(context: &Context<'_>, seam: &Seam, index: usize, row: &RowSpec) -> StitchRowText {
    StitchRowText {
        row: (index + 1).to_string(),
        stitch: format!("{} {}", row.stitch, row.stitch.name()),
        density: row.density.show(context.words.system),
        needle: yarn(context, &row.yarn),
        under: yarn(context, &row.under),
        offset: place(seam, row.offset),
        ends: ends(context.shown, &seam.name, index + 1),
    }
}

fn yarn(context: &Context<'_>, key: &str) -> YarnText {
    context.loaded.collection.yarns.get(key).map_or_else(
        || YarnText {
            name: key.to_owned(),
            colour: None,
        },
        |yarn| YarnText {
            name: format!("{}, {}", yarn.name, yarn.size.show(context.words.system)),
            colour: swatch(yarn.colour),
        },
    )
}

/// How the laid rows of a number begin and end; each way once.
fn ends(garment: &Garment, seam: &str, number: usize) -> String {
    let mut ways: Vec<String> = Vec::new();
    for row in garment
        .rows
        .iter()
        .filter(|r| r.seam == seam && r.number == number)
    {
        let (begins, ends) = (row.begins.word(), row.ends.word());
        let way = if begins == ends {
            begins.to_owned()
        } else {
            format!("begins {begins}, ends {ends}")
        };
        if !ways.contains(&way) {
            ways.push(way);
        }
    }
    ways.join("; ")
}

/// Where a row lies.
fn place(seam: &Seam, offset: Length) -> String {
    let from = match (seam.name.as_str(), seam.construction) {
        ("fly", _) => "fly edge",
        ("band", _) => "band seam",
        (_, Construction::LapFelled | Construction::MockFelled) => "visible fold",
        (_, Construction::RolledHem) => "finished lower edge",
        (_, Construction::TurnedHem | Construction::TurnedEdge) => "finished edge",
        (_, Construction::PatchSet) => "edge of the upper piece",
        (_, Construction::Strip) => "left edge of the finished loop",
        (_, Construction::Surface) => "drawn line",
        _ => "seam line",
    };
    if offset.abs() < Length::mm(0.05) {
        format!("on the {from}")
    } else {
        format!("{} from the {from}", millimetres(offset))
    }
}
