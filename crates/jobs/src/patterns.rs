//! The cut pieces as files for other programs and plotters, and on paper.

use std::sync::atomic::AtomicBool;

use cutting::{BandCut, CutSize, Plan, cut};
use jiff::civil::Date;
use papers::{Paper, PrintPlan};
use patterns::{PatternFile, dxf, from_cut, hpgl, svg};
use style::{Loaded, Size};
use trade::Length;

use crate::asked::{can_be_cut, plan, size_of, stem, wanted};
use crate::error::JobError;
use crate::printed::{self, Print};

/// What kind of file.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PatternKind {
    /// For pattern and cutting programs, all sizes in one.
    Dxf,
    /// For drawing programs, true to scale, one a size.
    Svg,
    /// For a plotter or cutting table this wide, one a size.
    Hpgl(Length),
    /// At true size, tiled on office paper.
    Tiled(Paper),
    /// At true size, one page as wide as a plotter's roll.
    Roll(Length),
}

/// Which pattern files are made.
#[derive(Clone, Debug, PartialEq)]
pub struct PatternOrder {
    /// What kind.
    pub kind: PatternKind,
    /// The sizes; every size when there are none.
    pub sizes: Vec<Size>,
    /// The date in the files.
    pub date: Date,
    /// How the band is cut, in place of what the style says.
    pub band: Option<BandCut>,
    /// On paper: all sizes on each other in one file.
    pub nested: bool,
}

/// One file, ready to be written.
#[derive(Clone, Debug, PartialEq)]
pub struct PatternOutput {
    /// Its name.
    pub name: String,
    /// The sizes in it.
    pub sizes: Vec<Size>,
    /// What is in it.
    pub bytes: Vec<u8>,
    /// On paper: where everything lies.
    pub plan: Option<PrintPlan>,
}

/// Pattern files that were made.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct MadePatterns {
    /// The files, in the order of the sizes.
    pub files: Vec<PatternOutput>,
    /// How many pieces they hold together; not counted on paper.
    pub pieces: usize,
    /// The sizes, each once and in the order of the style.
    pub sizes: Vec<Size>,
    /// Pieces that could not be nested, for not every size has them alike.
    pub left_out: Vec<String>,
}

/// Makes pattern files. `tell` hears how many of how many sizes are done.
///
/// # Errors
/// A size is unknown, a piece cannot be cut as the style says or is too wide for the roll, a page cannot be
/// set, or it was cancelled.
pub fn patterns(
    loaded: &Loaded,
    order: &PatternOrder,
    cancel: &AtomicBool,
    tell: &mut dyn FnMut(usize, usize),
) -> Result<MadePatterns, JobError> {
    for size in &order.sizes {
        size_of(&loaded.style, Some(*size))?;
    }
    let all = loaded.style.sizes.all();
    let sizes: Vec<Size> = all
        .filter(|size| order.sizes.is_empty() || order.sizes.contains(size))
        .collect();
    let work = Work {
        loaded,
        order,
        plan: plan(loaded, order.band),
        stem: stem(loaded),
        sizes,
    };
    if let Some(print) = Print::of(order.kind) {
        return printed::print(&work, print, cancel, tell);
    }
    work.for_programs(cancel, tell)
}

/// What is being made.
pub(crate) struct Work<'a> {
    pub(crate) loaded: &'a Loaded,
    pub(crate) order: &'a PatternOrder,
    pub(crate) plan: Plan,
    /// How the names of the files begin.
    pub(crate) stem: String,
    pub(crate) sizes: Vec<Size>,
}

impl Work<'_> {
    /// A size, sewn and cut.
    pub(crate) fn cut(&self, size: Size) -> Result<(sewing::Garment, CutSize), JobError> {
        let garment = sewing::make(&self.loaded.style, &self.loaded.collection, size);
        let cut = cut(&garment, &self.plan);
        can_be_cut(&cut)?;
        Ok((garment, cut))
    }

    fn for_programs(
        &self,
        cancel: &AtomicBool,
        tell: &mut dyn FnMut(usize, usize),
    ) -> Result<MadePatterns, JobError> {
        let date = self.order.date;
        let mut pattern = PatternFile {
            style: self.loaded.style.style.to_string(),
            author: self.loaded.collection.name.clone(),
            date: format!("{:02}-{:02}-{:04}", date.day(), date.month(), date.year()),
            sample_size: self.loaded.style.sizes.base.to_string(),
            pieces: Vec::new(),
        };
        for (done, size) in self.sizes.iter().enumerate() {
            wanted(cancel)?;
            tell(done, self.sizes.len());
            pattern
                .pieces
                .extend(from_cut(&self.cut(*size)?.1, words::Words::english()));
        }
        let of_size = |size: Size| pattern.of_size(&size.to_string());
        let one = |size: Size, ending: &str, text: String| PatternOutput {
            name: format!("{}-{size}.{ending}", self.stem),
            sizes: vec![size],
            bytes: text.into_bytes(),
            plan: None,
        };
        let each = self.sizes.iter().copied();
        let files = match self.order.kind {
            PatternKind::Svg => each
                .map(|size| one(size, "svg", svg::write(&of_size(size))))
                .collect(),
            PatternKind::Hpgl(width) => each
                .map(|size| Ok(one(size, "hpgl", hpgl::write(&of_size(size), width)?)))
                .collect::<Result<_, JobError>>()?,
            PatternKind::Dxf | PatternKind::Tiled(_) | PatternKind::Roll(_) => {
                vec![PatternOutput {
                    name: format!("{}.dxf", self.stem),
                    sizes: self.sizes.clone(),
                    bytes: dxf::write(&pattern).into_bytes(),
                    plan: None,
                }]
            }
        };
        Ok(MadePatterns {
            files,
            pieces: pattern.pieces.len(),
            sizes: self.sizes.clone(),
            left_out: Vec::new(),
        })
    }
}
