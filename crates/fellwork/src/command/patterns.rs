//! `fellwork patterns`: the cut pieces as files for other programs and plotters, and on paper.

use std::sync::atomic::AtomicBool;

use cutting::BandCut;
use jobs::{MadePatterns, PatternOrder};
use papers::PrintPlan;
use serde::Serialize;

use crate::args::{PatternKind, Patterns};
use crate::command::load;
use crate::command::pack::today;
use crate::exit::Exit;
use crate::trouble::Trouble;
use crate::{files, printed};

/// The version of the JSON's shape.
const FORMAT: u32 = 1;

pub fn run(asked: &Patterns) -> Result<Exit, Trouble> {
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
    files::write_all(&asked.output, &written)?;
    let on_paper = matches!(asked.kind, PatternKind::Pdf | PatternKind::Roll);
    printed::to_stdout(match (on_paper, asked.json) {
        (true, true) => json(made)?,
        (true, false) => on_paper_words(asked, &made),
        (false, _) => words(asked, &made),
    })?;
    Ok(Exit::Done)
}

fn kind(asked: &Patterns) -> jobs::PatternKind {
    match asked.kind {
        PatternKind::Dxf => jobs::PatternKind::Dxf,
        PatternKind::Svg => jobs::PatternKind::Svg,
        PatternKind::Hpgl => jobs::PatternKind::Hpgl(asked.width),
        PatternKind::Pdf => jobs::PatternKind::Tiled(asked.paper.into()),
        PatternKind::Roll => jobs::PatternKind::Roll(asked.width),
    }
}

const fn plural(n: usize) -> &'static str {
    if n == 1 { "" } else { "s" }
}

fn words(asked: &Patterns, made: &MadePatterns) -> String {
    format!(
        "{} file{} with {} pieces in {} size{} in {}\n",
        made.files.len(),
        plural(made.files.len()),
        made.pieces,
        made.sizes.len(),
        plural(made.sizes.len()),
        asked.output.display()
    )
}

fn on_paper_words(asked: &Patterns, made: &MadePatterns) -> String {
    let lines = made.files.iter().map(|file| {
        let count = file.plan.as_ref().map_or(0, |plan| plan.pages.len());
        let pages = if count == 1 { "page" } else { "pages" };
        let place = asked.output.join(&file.name);
        format!(
            "{} is written, {count} {pages} of patterns\n",
            place.display()
        )
    });
    lines.collect()
}

#[derive(Serialize)]
struct Answer {
    format: u32,
    unit: &'static str,
    files: Vec<FileRow>,
}

#[derive(Serialize)]
struct FileRow {
    file: String,
    sizes: Vec<String>,
    plan: PrintPlan,
}

fn json(made: MadePatterns) -> Result<String, serde_json::Error> {
    let rows = made.files.into_iter().filter_map(|file| {
        Some(FileRow {
            file: file.name,
            sizes: file.sizes.iter().map(ToString::to_string).collect(),
            plan: file.plan?,
        })
    });
    let answer = Answer {
        format: FORMAT,
        unit: "mm",
        files: rows.collect(),
    };
    serde_json::to_string(&answer).map(|text| text + "\n")
}
