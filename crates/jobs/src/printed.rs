//! Patterns at true size on paper: tiled, or on a roll.

use std::sync::atomic::AtomicBool;

use cut_sheets::PatternSet;
use cutting::CutSize;
use papers::{Paper, PatternHead, PatternPiece, Printed};
use style::Size;
use trade::Length;
use words::Words;

use crate::asked::wanted;
use crate::error::JobError;
use crate::patterns::{MadePatterns, PatternKind, PatternOutput, Work};

/// What the patterns are printed on.
#[derive(Clone, Copy)]
pub(crate) enum Print {
    /// Office paper.
    Tiled(Paper),
    /// A roll of this width.
    Rolled(Length),
}

impl Print {
    /// What a kind of file is printed on, if it is a print at all.
    pub(crate) fn of(kind: PatternKind) -> Option<Print> {
        match kind {
            PatternKind::Tiled(paper) => Some(Print::Tiled(paper)),
            PatternKind::Roll(width) => Some(Print::Rolled(width)),
            PatternKind::Dxf | PatternKind::Svg | PatternKind::Hpgl(_) => None,
        }
    }

    /// How names of files end.
    fn word(self) -> String {
        match self {
            Print::Tiled(paper) => paper.name().to_lowercase(),
            Print::Rolled(_) => "roll".to_owned(),
        }
    }

    fn print(self, set: &PatternSet, head: &PatternHead) -> Result<Printed, JobError> {
        Ok(match self {
            Print::Tiled(paper) => papers::tiled(set, head, paper)?,
            Print::Rolled(width) => papers::rolled(set, head, width)?,
        })
    }
}

/// Prints the sizes, a file each or all in one.
pub(crate) fn print(
    work: &Work<'_>,
    print: Print,
    cancel: &AtomicBool,
    tell: &mut dyn FnMut(usize, usize),
) -> Result<MadePatterns, JobError> {
    let mut made = MadePatterns {
        sizes: work.sizes.clone(),
        ..MadePatterns::default()
    };
    let of = work.sizes.len();
    let mut run = Vec::new();
    for (done, size) in work.sizes.iter().enumerate() {
        wanted(cancel)?;
        tell(done, of);
        let (garment, cut) = work.cut(*size)?;
        if work.order.nested {
            run.push(cut);
            continue;
        }
        let set = PatternSet::of_size(&garment.pattern, &cut, Words::english());
        let head = head(work, format!("size {size}"), &cut);
        made.files.push(output(
            format!("{}-{size}-{}.pdf", work.stem, print.word()),
            vec![*size],
            print.print(&set, &head)?,
        ));
    }
    if work.order.nested {
        tell(of, of);
        nested(work, print, &run, &mut made)?;
    }
    wanted(cancel)?;
    Ok(made)
}

fn nested(
    work: &Work<'_>,
    print: Print,
    run: &[CutSize],
    made: &mut MadePatterns,
) -> Result<(), JobError> {
    let base = work.loaded.style.sizes.base;
    let like = run.iter().find(|cut| cut.size == base).or(run.first());
    let (set, without) = PatternSet::nested(run, base, Words::english());
    let left_out = without.iter().map(|piece| Words::english().saying(piece));
    made.left_out = left_out.collect();
    let all: Vec<String> = work.sizes.iter().map(ToString::to_string).collect();
    // It stands on every page, on one line.
    let sizes = match all.as_slice() {
        [first, .., last] if all.len() > 6 => format!("{} sizes, {first} to {last}", all.len()),
        few => format!("sizes {}", few.join(" ")),
    };
    let head = match like {
        Some(like) => head(work, sizes, like),
        None => PatternHead::default(),
    };
    made.files.push(output(
        format!("{}-nested-{}.pdf", work.stem, print.word()),
        work.sizes.clone(),
        print.print(&set, &head)?,
    ));
    Ok(())
}

fn output(name: String, sizes: Vec<Size>, printed: Printed) -> PatternOutput {
    PatternOutput {
        name,
        sizes,
        bytes: printed.pdf,
        plan: Some(printed.plan),
    }
}

fn head(work: &Work<'_>, sizes: String, cut: &CutSize) -> PatternHead {
    let pieces = cut.pieces.iter().map(|piece| PatternPiece {
        name: Words::english().say(piece.said()),
        cut: Words::english().saying(&piece.label.cut),
        cloth: piece.label.cloth.clone(),
    });
    PatternHead {
        collection: work.loaded.collection.name.clone(),
        style: work.loaded.style.style.to_string(),
        sizes,
        date: Some(work.order.date),
        pieces: pieces.collect(),
    }
}
