//! Patterns at true size on paper: tiled, or on a roll.

use cutting::{CutSize, Plan, cut};
use drawing::PatternSet;
use papers::{Paper, PatternHead, PatternPiece, PrintPlan, Printed};
use serde::Serialize;
use style::{Loaded, Size};
use trade::Length;

use super::stem;
use crate::args::{PatternKind, Patterns};
use crate::command::pack::today;
use crate::command::{can_be_cut, plan};
use crate::exit::Exit;
use crate::trouble::Trouble;
use crate::{files, printed};

/// The version of the JSON's shape.
const FORMAT: u32 = 1;

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

/// One file, ready to be written.
struct Ready {
    name: String,
    sizes: Vec<Size>,
    printed: Printed,
}

/// What the patterns are printed on.
#[derive(Clone, Copy)]
pub enum Print {
    /// Office paper.
    Tiled(Paper),
    /// A roll of this width.
    Rolled(Length),
}

impl Print {
    /// What was asked for, if it is a print at all.
    pub fn of(asked: &Patterns) -> Option<Print> {
        match asked.kind {
            PatternKind::Pdf => Some(Print::Tiled(asked.paper.into())),
            PatternKind::Roll => Some(Print::Rolled(asked.width)),
            PatternKind::Dxf | PatternKind::Svg | PatternKind::Hpgl => None,
        }
    }

    /// How names of files end.
    fn word(self) -> String {
        match self {
            Print::Tiled(paper) => paper.name().to_lowercase(),
            Print::Rolled(_) => "roll".to_owned(),
        }
    }

    fn print(self, set: &PatternSet, head: &PatternHead) -> Result<Printed, Trouble> {
        Ok(match self {
            Print::Tiled(paper) => papers::tiled(set, head, paper)?,
            Print::Rolled(width) => papers::rolled(set, head, width)?,
        })
    }
}

/// Prints the sizes, a file each or all in one.
pub fn run(
    asked: &Patterns,
    print: Print,
    loaded: &Loaded,
    sizes: &[Size],
) -> Result<Exit, Trouble> {
    let plan = plan(loaded, asked.band);
    let ready = if asked.nested {
        vec![nested(loaded, &plan, sizes, (asked, print))?]
    } else {
        let one = |size: &Size| one_size(loaded, &plan, *size, (asked, print));
        sizes.iter().map(one).collect::<Result<_, _>>()?
    };
    let written: Vec<(String, &[u8])> = ready
        .iter()
        .map(|file| (file.name.clone(), file.printed.pdf.as_slice()))
        .collect();
    files::write_all(&asked.output, &written)?;
    printed::to_stdout(if asked.json {
        json(ready)?
    } else {
        words(asked, &ready)
    })?;
    Ok(Exit::Done)
}

fn one_size(
    loaded: &Loaded,
    plan: &Plan,
    size: Size,
    (asked, print): (&Patterns, Print),
) -> Result<Ready, Trouble> {
    let garment = sewing::make(&loaded.style, &loaded.collection, size);
    let cut = cut(&garment, plan);
    can_be_cut(&cut)?;
    let set = PatternSet::of_size(&garment.pattern, &cut);
    let head = head(loaded, asked, format!("size {size}"), &cut);
    Ok(Ready {
        name: format!("{}-{size}-{}.pdf", stem(loaded), print.word()),
        sizes: vec![size],
        printed: print.print(&set, &head)?,
    })
}

fn nested(
    loaded: &Loaded,
    plan: &Plan,
    sizes: &[Size],
    (asked, print): (&Patterns, Print),
) -> Result<Ready, Trouble> {
    let run: Vec<CutSize> = sizes
        .iter()
        .map(|size| {
            cut(
                &sewing::make(&loaded.style, &loaded.collection, *size),
                plan,
            )
        })
        .collect();
    run.iter().try_for_each(can_be_cut)?;
    let base = loaded.style.sizes.base;
    let like = run.iter().find(|cut| cut.size == base).or(run.first());
    let (set, without) = PatternSet::nested(&run, base);
    if !without.is_empty() {
        printed::to_stderr(&format!(
            "left out, for not every size has it alike: {}; print these size by size\n",
            without.join(", ")
        ));
    }
    let all: Vec<String> = sizes.iter().map(ToString::to_string).collect();
    let head = match like {
        Some(like) => head(loaded, asked, format!("sizes {}", all.join(" ")), like),
        None => PatternHead::default(),
    };
    Ok(Ready {
        name: format!("{}-nested-{}.pdf", stem(loaded), print.word()),
        sizes: sizes.to_vec(),
        printed: print.print(&set, &head)?,
    })
}

fn head(loaded: &Loaded, asked: &Patterns, sizes: String, cut: &CutSize) -> PatternHead {
    let pieces = cut.pieces.iter().map(|piece| PatternPiece {
        name: piece.name(),
        cut: piece.label.cut.clone(),
        cloth: piece.label.cloth.clone(),
    });
    PatternHead {
        collection: loaded.collection.name.clone(),
        style: loaded.style.style.to_string(),
        sizes,
        date: Some(asked.date.unwrap_or_else(today)),
        pieces: pieces.collect(),
    }
}

fn words(asked: &Patterns, files: &[Ready]) -> String {
    let lines = files.iter().map(|file| {
        let count = file.printed.plan.pages.len();
        let pages = if count == 1 { "page" } else { "pages" };
        let place = asked.output.join(&file.name);
        format!(
            "{} is written, {count} {pages} of patterns\n",
            place.display()
        )
    });
    lines.collect()
}

fn json(files: Vec<Ready>) -> Result<String, serde_json::Error> {
    let rows = files.into_iter().map(|file| FileRow {
        file: file.name,
        sizes: file.sizes.iter().map(ToString::to_string).collect(),
        plan: file.printed.plan,
    });
    let answer = Answer {
        format: FORMAT,
        unit: "mm",
        files: rows.collect(),
    };
    serde_json::to_string(&answer).map(|text| text + "\n")
}
