//! The plain data a production pack is printed from: words, figures as text, and drawings.
//!
//! Every figure arrives as the text to print, already rounded and in the unit the maker reads, because
//! rounding and units belong to the rooms that computed it. An empty text prints as nothing; an empty
//! list leaves its section out.

mod by_size;
mod chart;
mod checks;
mod construction;
mod cutting;
mod lists;
mod open;
mod order;
mod pack_words;
mod yarn;

use std::num::NonZeroU32;

use serde::Serialize;

use crate::Drawing;

pub use by_size::{SizeRow, SizeTable};
pub use chart::{Chart, ChartRow, ChartValues, LengthLine};
pub use checks::{CheckGroup, CheckRow, Checks};
pub use construction::{SeamBlock, StitchRowText, YarnText};
pub use cutting::{ClothCut, CutRow, CuttingPart, GradeRow, GradeTable, MoveRow, MoveTable};
pub use lists::{
    Caution, Change, FindingRow, MaterialGroup, MaterialRow, PieceRow, Severity, Swatch,
};
pub use open::{Ask, OpenGroup, OpenPart, OpenRow, Who};
pub use order::{OperationRow, OperationStitch, StageBlock};
pub use pack_words::PackWords;
pub use yarn::{SeamYarnRow, YarnNeedRow, YarnNote, YarnOnClothRow, YarnPart};

/// Everything one style's production pack says.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Pack {
    /// Which style this is; repeated at the head and foot of every page.
    pub style: StyleHead,
    /// What the layout says of itself: titles, leads, and in which state figures are.
    pub words: PackWords,
    /// The first page.
    pub cover: Cover,
    /// What changed since the revision before; empty for a first revision.
    pub changes: Vec<Change>,
    /// Everything the pack leaves open, gathered from the lines that lack it.
    pub open: OpenPart,
    /// The finished measures in every size.
    pub chart: Chart,
    /// The chart of the pair before its wash; of one that is sold raw, what is expected after it. None where the
    /// wash takes nothing.
    pub chart_in_other_state: Option<Chart>,
    /// How each measure is taken, drawn; printed at their own size, narrow ones beside one another and below one
    /// another beside a tall first one.
    pub diagrams: Vec<Figure>,
    /// A sentence above the sewing order. May be empty.
    pub order_note: String,
    /// What is open of the whole order; the sentence above it says it.
    pub order_asks: Vec<Ask>,
    /// Every operation in the order of sewing, by the parts of the workroom's course.
    pub order: Vec<StageBlock>,
    /// A sentence above the sewing order on how the rows of seams are counted. May be empty.
    pub construction_note: String,
    /// Every seam with its stitch rows. Each is printed below the operation that names it first, and the rest
    /// after the sewing order.
    pub seams: Vec<SeamBlock>,
    /// Which yarn goes where, and how much of it.
    pub yarn: YarnPart,
    /// Details drawn to scale with their dimensions, each whole, as many on a page as it holds.
    pub plates: Vec<Figure>,
    /// The garment seen from outside and inside, one drawing a page.
    pub views: Vec<Figure>,
    /// A sentence above the piece list, such as which size the areas are of. May be empty.
    pub pieces_note: String,
    /// Every piece to cut.
    pub pieces: Vec<PieceRow>,
    /// The pieces drawn with grain, notches and allowances. Those that follow one another at one scale stand
    /// together, as many as a page holds.
    pub piece_sheets: Vec<Figure>,
    /// What is cut from which cloth, how it is laid, and how the pieces grow.
    pub cutting: CuttingPart,
    /// A sentence above the material list, such as how many pairs the quantities are for. May be empty.
    pub materials_note: String,
    /// Cloth, yarn, trims, labels and packing, grouped.
    pub materials: Vec<MaterialGroup>,
    /// What is not the same in every size.
    pub by_size: Vec<SizeTable>,
    /// What is inspected, and how the pair is packed.
    pub checks: Checks,
    /// What the checks found and is still to settle, the gravest first.
    pub findings: Vec<FindingRow>,
    /// What the workroom must mind whatever the style: metal, leather, needles, labelling.
    pub cautions: Vec<Caution>,
    /// Why things are as they are, where the maker lets the workroom read it: what each is about, and the maker's words.
    pub why: Vec<(String, String)>,
}

/// The names by which a style and this edition of its pack are known.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct StyleHead {
    /// The label or collection, such as "Saltmarsh Yard". It is also the author of the PDF.
    pub collection: String,
    /// The style's name, such as "Ferryman".
    pub name: String,
    /// The style's code, such as "SY-101".
    pub code: String,
    /// Which edition of the pack, in words, such as "Revision 3".
    pub revision: String,
    /// The workroom it is addressed to, with its place, such as "Oficina da Azenha, Vale de Arca".
    pub workroom: String,
    /// The style in one sentence.
    pub summary: String,
}

/// The first page: drawings and the facts a reader looks for first.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Cover {
    /// Drawings side by side, usually front and back from outside, each scaled to fit, all by one factor.
    pub drawings: Vec<Figure>,
    /// Facts in two columns: sizes, cloth, fit, closing, sample size.
    pub facts: Vec<Fact>,
    /// Who made it, who sews it, whom to ask; in two columns below the facts.
    pub contact: Vec<Fact>,
}

/// One labelled fact.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Fact {
    /// What it is, such as "Sizes".
    pub label: String,
    /// The fact, such as "waist 28 to 38, length 30, 32, 34"; where it is open, that it is.
    pub value: String,
    /// What it leaves open; the value says it.
    pub asks: Vec<Ask>,
}

/// A drawing with its title and caption.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Figure {
    /// The drawing.
    pub drawing: Drawing,
    /// A short title, such as "Front, outside"; it becomes a bookmark where the figure has its own page.
    pub title: String,
    /// A sentence or two below the drawing. May be empty.
    pub caption: String,
    /// What the numbers on it stand for, from 1: titles of the plates that tell more. May be empty.
    pub callouts: Vec<String>,
    /// In which state of the pair its figures are, where that is not the state of its section. May be empty.
    pub state: String,
    /// Given: the drawing is placed at exactly the size it states, and the page grows beyond A4 if it
    /// must. Absent: the drawing is scaled to fit.
    pub scale: Option<Scale>,
}

/// The scale a drawing is placed at.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Scale {
    /// One to a whole number; printed beside the drawing with a scale bar.
    OneTo(NonZeroU32),
    /// The drawing itself shows how large it is; the words, such as "2:1", are printed beside its title.
    Shown(String),
}

impl Scale {
    /// The scale 1:`n`. `None` for 1:0, which is no scale.
    pub fn one_to(n: u32) -> Option<Self> {
        NonZeroU32::new(n).map(Self::OneTo)
    }

    /// The `n` by which a drawing of the cloth's own size is divided; 1 where it is made to size already.
    pub fn denominator(&self) -> u32 {
        match self {
            Self::OneTo(n) => n.get(),
            Self::Shown(_) => 1,
        }
    }
}
