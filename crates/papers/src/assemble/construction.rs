//! The construction list: every seam with its class, plies, allowances and stitch rows.

use ::words::Said;
use draft::ClothUse;
use sewing::{Described, class_of, describe};
use style::{BandMethod, Cloth, Construction, MeasureId, RowSpec, Seam, SeamId};
use trade::Length;

use super::context::Context;
use super::figures::drawn;
use super::words::{capital, joined};
use super::yarn::yarn_text;
use crate::{PaperError, SeamBlock, StitchRowText};

pub(super) const NOTE: &str = "Rows are numbered from the visible edge inwards; a row's place is that of its needle. Numbers of ISO 4916 are \
    given for orientation and are not checked against the standard: words, drawings and rows decide. The number behind the letters \
    of ASTM D6193 is that of the rows of stitches through the plies; by common practice the row that joins them counts whether or \
    not it is stated, a safety stitch as two and a coverstitch as one, and an overedge that only neatens does not. \
    Machines are from memory, allowances common practice; thickness is the sum of the plies, not pressed.";

/// A row nearer to a line than this lies on it.
const ON_THE_LINE: Length = Length::mm(0.05);

pub(super) fn seams(context: &Context<'_>) -> Result<Vec<SeamBlock>, PaperError> {
    context
        .shown
        .seams
        .iter()
        .map(|seam| block(context, seam))
        .collect()
}

fn block(context: &Context<'_>, seam: &Seam) -> Result<SeamBlock, PaperError> {
    // Drawn as it is sewn, with what guides and folders are set to.
    let as_sewn = context.sewn.seams.iter().find(|sewn| sewn.id == seam.id);
    let section = as_sewn.and_then(|seam| {
        drawing::seam_section_thumbnail(&context.sewn, seam, ::words::Words::english())
    });
    let told = describe(context.shown, seam);
    let say = context.say;
    let unsure = class_of(seam).is_some_and(|class| !class.pairing_sure);
    Ok(SeamBlock {
        joins: say.named(told.joins).to_owned(),
        construction: say.named(told.construction.key()).to_owned(),
        class: context.said(told.class.as_ref()) + if unsure { " (to be confirmed)" } else { "" },
        machine: say.saying(&told.machine),
        plies: say.saying(&told.plies),
        allowances: context.said(told.allowances.as_ref()),
        lies: joined(
            [say.saying(&told.lies).as_str(), selvedge(context, seam)],
            "; ",
        ),
        rows: rows(context, seam, &told),
        section: section.map(|sheet| drawn(&sheet)).transpose()?,
        name: capital(told.seam.words(say)),
    })
}

/// What is special about a pressed-open outseam along the finished edges of the cloth.
fn selvedge(context: &Context<'_>, seam: &Seam) -> &'static str {
    let shell = cloth_of(context, ClothUse::Shell);
    let there = shell.is_some_and(|cloth| cloth.selvedge)
        && seam.id == SeamId::Outseam
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

fn rows(context: &Context<'_>, seam: &Seam, told: &Described) -> Vec<StitchRowText> {
    let said = |of_rows: &[Option<Said>], index: usize| {
        context.said(of_rows.get(index).and_then(Option::as_ref))
    };
    let text = |(index, row): (usize, &RowSpec)| StitchRowText {
        row: (index + 1).to_string(),
        stitch: format!(
            "{} {}",
            row.stitch,
            ::words::Words::english().named(row.stitch.key())
        ),
        density: context.words.densities(row.density).join(", "),
        needle: yarn_text(context, &row.yarn),
        under: yarn_text(context, &row.under),
        offset: place(context, seam, index, row),
        gauge: said(&told.gauges, index),
        ends: said(&told.ends, index),
    };
    seam.rows.iter().enumerate().map(text).collect()
}

/// Where a row lies.
fn place(context: &Context<'_>, seam: &Seam, index: usize, row: &RowSpec) -> String {
    let round = context.loaded.style.band.method == BandMethod::AllRound && index > 0;
    // Counted from the band seam like any other, but kept from the band's own edges by the sewer.
    let offset = if round && seam.id == SeamId::Band {
        context.shown.pattern.spec[MeasureId::BandHeight] - row.offset
    } else {
        row.offset
    };
    let joins = offset.abs() < ON_THE_LINE;
    let from = match seam.construction {
        Construction::TurnedEdge if seam.id == SeamId::Fly => "fly edge",
        Construction::BandOverEdge | Construction::BandTurned if round => {
            "band's ends and top edge"
        }
        Construction::BandOverEdge | Construction::BandTurned => "band seam",
        _ if joins && row.stitch.is_overedge() => return "over the raw edges".to_owned(),
        Construction::MockFelled | Construction::TurnedEdge if joins => "seam line",
        Construction::LapFelled | Construction::MockFelled => "visible fold",
        Construction::RolledHem | Construction::FoldedHem => "finished lower edge",
        Construction::TurnedHem
        | Construction::TurnedEdge
        | Construction::CleanFinished
        | Construction::BoundEdge => "finished edge",
        Construction::PatchSet | Construction::LaidOn => "edge of the upper piece",
        Construction::Strip => "left edge of the finished loop",
        Construction::Surface => "drawn line",
        Construction::PressedOpen
        | Construction::SafetyStitched
        | Construction::Overlocked
        | Construction::FrenchSeam => "seam line",
    };
    if joins {
        format!("on the {from}")
    } else {
        format!("{} from the {from}", offset.show_mm())
    }
}
