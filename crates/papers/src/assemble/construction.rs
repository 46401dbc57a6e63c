//! The construction list: every seam with its class, plies, allowances and stitch rows.

use draft::ClothUse;
use sewing::{EdgeUse, Finish, Garment, RowEnd, Rule, allowances, class_of, construct, edge_use};
use style::{Cloth, Construction, RowSpec, Seam, known};
use trade::Length;
use trade::seam::SeamClass;

use super::Context;
use super::seam_words::{joins, place};
use super::words::{capital, joined, millimetres, swatch};
use crate::{SeamBlock, StitchRowText, YarnText};

pub(super) const NOTE: &str = "Rows are numbered from the visible edge inwards; a row's place is that of its needle. Numbers of ISO 4916 are \
    given for orientation and are not checked against the standard: words, drawings and rows decide.";

pub(super) fn seams(context: &Context<'_>) -> Vec<SeamBlock> {
    context.shown.seams.iter().map(|seam| block(context, seam)).collect()
}

fn block(context: &Context<'_>, seam: &Seam) -> SeamBlock {
    let style = &context.loaded.style;
    let facts = construct(seam.construction);
    let title = known::seam_name(&seam.name).map_or(seam.name.as_str(), |known| known.title);
    SeamBlock {
        name: capital(title),
        joins: joins(&seam.name, style),
        construction: seam.construction.word().to_owned(),
        class: class_of(seam).map_or_else(String::new, class),
        plies: plies(context, seam, facts.plies),
        allowances: allowance_words(context, seam),
        lies: lies(context, seam),
        rows: seam
            .rows
            .iter()
            .enumerate()
            .map(|(index, row)| row_text(context, seam, index, row))
            .collect(),
        section: None,
    }
}

fn class(class: &SeamClass) -> String {
    let doubt = if class.pairing_sure { "" } else { " (to be confirmed)" };
    format!("ISO 4916 {} · ASTM D6193 {}{doubt}", class.iso, class.astm)
}

/// "4 plies, 3.3 mm": the plies of the thickest cloth in the seam, not pressed.
fn plies(context: &Context<'_>, seam: &Seam, plies: u8) -> String {
    let word = if plies == 1 { "ply" } else { "plies" };
    thickness(context, seam).map_or_else(
        || format!("{plies} {word}"),
        |one| format!("{plies} {word}, up to {}", millimetres(one * f64::from(plies))),
    )
}

/// Thickness of the thickest cloth sewn in a seam.
pub(super) fn thickness(context: &Context<'_>, seam: &Seam) -> Option<Length> {
    let cloths = cloths_of(context.shown, &seam.name);
    cloths
        .into_iter()
        .filter_map(|cloth| Some(cloth_of(context, cloth)?.thickness))
        .reduce(Length::max)
}

fn cloths_of(garment: &Garment, seam: &str) -> Vec<ClothUse> {
    let sewn = |piece: &&draft::Piece| {
        piece.edges.iter().any(|edge| {
            matches!(edge_use(piece.id, edge.name), EdgeUse::Sewn(name, _) if name == seam)
        })
    };
    let found: Vec<ClothUse> = garment.pattern.pieces.iter().filter(sewn).map(|p| p.cloth).collect();
    if found.is_empty() {
        // Stitched on the face of a shell piece.
        vec![ClothUse::Shell]
    } else {
        found
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

fn allowance_words(context: &Context<'_>, seam: &Seam) -> String {
    let facts = construct(seam.construction);
    let both = allowances(seam, context.shown.pattern.spec.hem_depth);
    let over = millimetres(both.over);
    match facts.rule {
        Rule::None => String::new(),
        Rule::RolledHem | Rule::TurnedHem => format!("{over} beyond the finished edge"),
        Rule::Felled => match seam.lap {
            Some(lap) => format!("{} {over}, {} {}", lap.over, lap.under, millimetres(both.under)),
            None => format!("upper {over}, under {}", millimetres(both.under)),
        },
        Rule::Even(_) if seam.construction == Construction::PatchSet => format!("{over} turned in"),
        Rule::Even(_) => format!("{over} on each ply"),
    }
}

fn lies(context: &Context<'_>, seam: &Seam) -> String {
    let facts = construct(seam.construction);
    let lap = seam.lap.map_or_else(String::new, |lap| lap.to_string());
    let shell = cloth_of(context, ClothUse::Shell);
    let selvedge = shell.is_some_and(|cloth| cloth.selvedge)
        && seam.name == "outseam"
        && seam.construction == Construction::PressedOpen;
    let finish = match facts.finish {
        Finish::Overedged if selvedge => "the cloth's finished edges show inside",
        Finish::Selvedge => "the cloth's finished edges show inside",
        Finish::Overedged => "edges overedged",
        Finish::Folded | Finish::Raw => "",
    };
    joined([lap.as_str(), facts.lies, finish], "; ")
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
            name: joined(
                [
                    yarn.name.as_str(),
                    &yarn.size.show(context.words.system),
                    &yarn.colour_name,
                ],
                ", ",
            ),
            colour: swatch(yarn.colour),
        },
    )
}

/// How the laid rows of a number begin and end; each way once.
fn ends(garment: &Garment, seam: &str, number: usize) -> String {
    let mut ways: Vec<String> = Vec::new();
    for row in garment.rows.iter().filter(|r| r.seam == seam && r.number == number) {
        let (begins, ends) = (end_words(row.begins), end_words(row.ends));
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

const fn end_words(end: RowEnd) -> &'static str {
    match end {
        RowEnd::Backtacked => "backtacked",
        RowEnd::CaughtInSeam => "caught in the next seam",
        RowEnd::TuckedIn => "threads tucked into the fold",
        RowEnd::Overlapped => "overlaps its start",
    }
}
