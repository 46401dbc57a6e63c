//! `fellwork patterns`: the cut pieces as files for other programs and plotters, and on paper.

use std::sync::atomic::AtomicBool;

use clap::ValueEnum;
use cutting::BandCut;
use jobs::{MadePatterns, PatternOrder};
use trade::{Length, counted};

use crate::args::{PaperWord, PatternKind, Patterns};
use crate::command::named_file::load;
use crate::command::pack::today;
use crate::exit::Exit;
use crate::output::Folder;
use crate::printed;
use crate::trouble::Trouble;

pub fn run(asked: &Patterns) -> Result<Exit, Trouble> {
    only_what_applies(asked)?;
    let folder = Folder::new(&asked.output, asked.over.replace)?;
    let loaded = load(&asked.style)?;
    let order = PatternOrder {
        kind: kind(asked),
        sizes: asked.size.clone(),
        date: asked.date.unwrap_or_else(today),
        band: asked.band.map(BandCut::from),
        nested: asked.nested,
    };
    let never = AtomicBool::new(false);
    let made = jobs::patterns(&loaded, &order, &never, &mut |_, _| ())?;
    if !made.left_out.is_empty() {
        printed::to_stderr(&format!(
            "left out, for not every size has it alike: {}; print these size by size\n",
            made.left_out.join(", ")
        ));
    }
    let written: Vec<(String, &[u8])> = made
        .files
        .iter()
        .map(|file| (file.name.clone(), file.bytes.as_slice()))
        .collect();
    folder.write(&written)?;
    let on_paper = matches!(asked.kind, PatternKind::Pdf | PatternKind::Roll);
    match (on_paper, asked.json) {
        (true, true) => printed::json(&answers::patterns(&made)?)?,
        (true, false) => printed::words(&on_paper_words(asked, &made))?,
        (false, _) => printed::words(&words(asked, &made))?,
    }
    Ok(Exit::Done)
}

/// The usual width of a plotter's roll.
const ROLL: Length = Length::cm(150.0);

/// Options that say nothing of the kind asked for are refused, not passed over.
fn only_what_applies(asked: &Patterns) -> Result<(), Trouble> {
    use PatternKind::{Hpgl, Pdf, Roll};
    let applies = [
        (
            asked.width.is_some() && !matches!(asked.kind, Hpgl | Roll),
            "--width is the width of a plotter's roll",
            "leave it out, or take --kind hpgl or roll",
        ),
        (
            asked.paper.is_some() && !matches!(asked.kind, Pdf),
            "--paper is the paper that pdf is tiled on",
            "leave it out, or take --kind pdf",
        ),
        (
            asked.nested && !matches!(asked.kind, Pdf | Roll),
            "--nested prints all sizes on each other",
            "leave it out, or take --kind pdf or roll",
        ),
        (
            asked.json && !matches!(asked.kind, Pdf | Roll),
            "--json says where everything lies on paper",
            "leave it out, or take --kind pdf or roll",
        ),
    ];
    let Some((_, what, instead)) = applies.iter().find(|(wrong, ..)| *wrong) else {
        return Ok(());
    };
    let kind = asked.kind.to_possible_value();
    let kind = kind.as_ref().map_or("", |kind| kind.get_name());
    Err(Trouble::Option {
        what: format!("{what}, which {kind} has no use for"),
        instead: (*instead).to_owned(),
    })
}

fn kind(asked: &Patterns) -> jobs::PatternKind {
    let width = asked.width.unwrap_or(ROLL);
    match asked.kind {
        PatternKind::Dxf => jobs::PatternKind::Dxf,
        PatternKind::Svg => jobs::PatternKind::Svg,
        PatternKind::Hpgl => jobs::PatternKind::Hpgl(width),
        PatternKind::Pdf => jobs::PatternKind::Tiled(asked.paper.unwrap_or(PaperWord::A4).into()),
        PatternKind::Roll => jobs::PatternKind::Roll(width),
    }
}

fn words(asked: &Patterns, made: &MadePatterns) -> String {
    format!(
        "{} with {} in {} in {}\n",
        counted(made.files.len(), "file", "files"),
        counted(made.pieces, "piece", "pieces"),
        counted(made.sizes.len(), "size", "sizes"),
        asked.output.display()
    )
}

fn on_paper_words(asked: &Patterns, made: &MadePatterns) -> String {
    let lines = made.files.iter().map(|file| {
        let count = file.plan.as_ref().map_or(0, |plan| plan.pages.len());
        let pages = counted(count, "page", "pages");
        let place = asked.output.join(&file.name);
        format!("{} is written, {pages} of patterns\n", place.display())
    });
    lines.collect()
}
