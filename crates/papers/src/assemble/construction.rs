//! The construction list: every seam with its class, plies, allowances and stitch rows.

use ::words::{Given, Said, key, say};
use draft::ClothUse;
use sewing::{Described, class_of, describe};
use style::{BandMethod, Cloth, Construction, LabelFold, MeasureId, RowSpec, Seam, SeamId};
use trade::Length;

use super::context::Context;
use super::figures::drawn;
use super::trims::folded;
use super::words::{capital, joined};
use super::yarn::yarn_text;
use crate::{PaperError, SeamBlock, StitchRowText};

/// How rows are counted, and what classes, machines and thicknesses rest on.
pub(super) fn note(context: &Context<'_>) -> String {
    context.say.named(key::PAPERS_CONSTRUCTION_NOTE).to_owned()
}

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
    let section =
        as_sewn.and_then(|seam| drawing::seam_section_thumbnail(&context.sewn, seam, context.say));
    let told = describe(context.shown, seam);
    let say = context.say;
    let unsure = class_of(seam).is_some_and(|class| !class.pairing_sure);
    Ok(SeamBlock {
        joins: say.named(told.joins).to_owned(),
        construction: say.named(told.construction.key()).to_owned(),
        class: class(context, told.class.as_ref(), unsure),
        machine: say.saying(&told.machine),
        plies: say.saying(&told.plies),
        allowances: context.said(told.allowances.as_ref()),
        lies: joined(
            [lies(context, seam, &told).as_str(), selvedge(context, seam)],
            "; ",
        ),
        rows: rows(context, seam, &told),
        section: section.map(|sheet| drawn(&sheet)).transpose()?,
        name: capital(told.seam.words(say)),
    })
}

/// "ISO 4916 2.04.06 · ASTM D6193 LSc-2 (to be confirmed)".
fn class(context: &Context<'_>, class: Option<&Said>, unsure: bool) -> String {
    match class {
        Some(class) if unsure => context.say.say(say::PapersClassUnsure {
            class: Given::from(class.clone()),
        }),
        class => context.said(class),
    }
}

/// How the upper ply lies. Labels are sewn on as each is folded, which their construction does not know.
fn lies(context: &Context<'_>, seam: &Seam, told: &Described) -> String {
    if seam.id != SeamId::LabelSet {
        return context.say.saying(&told.lies);
    }
    let trims = &context.loaded.collection.trims;
    let sewn_on = context.loaded.style.labels.iter().filter(|label| {
        // A label folded in the middle is caught in a seam instead.
        label.fold != LabelFold::CentreFold
    });
    let folded = sewn_on.map(|label| {
        let known = trims.get(&label.trim);
        let label_name = known.map_or(label.trim.as_str(), |trim| trim.name.as_str());
        Given::from(say::PapersLabelFolded {
            fold: folded(label.fold),
            label: label_name,
        })
    });
    let labels: Vec<Given> = folded.collect();
    if labels.is_empty() {
        return context.say.saying(&told.lies);
    }
    let labels = Given::List(labels);
    context.say.say(say::PapersLabelsLie { labels })
}

/// What is special about a pressed-open outseam along the finished edges of the cloth.
fn selvedge<'a>(context: &Context<'a>, seam: &Seam) -> &'a str {
    let shell = cloth_of(context, ClothUse::Shell);
    let there = shell.is_some_and(|cloth| cloth.selvedge)
        && seam.id == SeamId::Outseam
        && seam.construction == Construction::PressedOpen;
    if there {
        context.say.named(key::PAPERS_EDGES_SHOW)
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
        stitch: format!("{} {}", row.stitch, context.say.named(row.stitch.key())),
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
        Construction::TurnedEdge if seam.id == SeamId::Fly => key::PAPERS_FROM_FLY_EDGE,
        Construction::BandOverEdge | Construction::BandTurned if round => {
            key::PAPERS_FROM_BAND_EDGES
        }
        Construction::BandOverEdge | Construction::BandTurned => key::PAPERS_FROM_BAND_SEAM,
        _ if joins && row.stitch.is_overedge() => {
            return context.say.named(key::PAPERS_OVER_EDGES).to_owned();
        }
        Construction::MockFelled | Construction::TurnedEdge if joins => key::PAPERS_FROM_SEAM_LINE,
        Construction::LapFelled | Construction::MockFelled => key::PAPERS_FROM_FOLD,
        Construction::RolledHem | Construction::FoldedHem => key::PAPERS_FROM_LOWER_EDGE,
        Construction::TurnedHem
        | Construction::TurnedEdge
        | Construction::CleanFinished
        | Construction::BoundEdge => key::PAPERS_FROM_FINISHED_EDGE,
        Construction::PatchSet | Construction::LaidOn => key::PAPERS_FROM_UPPER_EDGE,
        Construction::Strip => key::PAPERS_FROM_LOOP_EDGE,
        Construction::Surface => key::PAPERS_FROM_DRAWN_LINE,
        Construction::PressedOpen
        | Construction::SafetyStitched
        | Construction::Overlocked
        | Construction::FrenchSeam => key::PAPERS_FROM_SEAM_LINE,
    };
    if joins {
        context.say.say(say::PapersRowOn { from })
    } else {
        let away = offset.show_mm();
        context.say.say(say::PapersRowFrom { away, from })
    }
}
