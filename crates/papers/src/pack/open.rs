//! What the pack leaves open: each question at the place where its answer is looked for, and all of them in one list.

use serde::Serialize;

/// Who cannot go on without an answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Who {
    /// Who buys cloth, yarn, trims and labels, and agrees the order.
    Buyer,
    /// Who spreads and cuts.
    Cutter,
    /// Who sews.
    Sewer,
    /// Who washes.
    Laundry,
    /// Who looks at the pair and measures it.
    Inspector,
    /// Who packs and sends it.
    Packer,
}

impl Who {
    /// All of them, in the order of the workroom's work.
    pub const ALL: [Self; 6] = [
        Self::Buyer,
        Self::Cutter,
        Self::Sewer,
        Self::Laundry,
        Self::Inspector,
        Self::Packer,
    ];
}

/// Something that no file states. It stays with the line that lacks it, and the list is made of these.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Ask {
    /// Who needs the answer.
    pub who: Who,
    /// What is asked, within a sentence, such as "what counts as a fault". Empty where the label of the line asks it.
    pub what: String,
    /// The words at its place, such as "What counts as a fault: not stated, ask."
    pub said: String,
}

/// Everything that is open, to be answered before the first pair is cut.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct OpenPart {
    /// What it is headed.
    pub title: String,
    /// On the cover: how much is open. Empty where nothing is.
    pub count: String,
    /// A sentence above it.
    pub note: String,
    /// What heads its columns: the question, its place in the pack, the answer.
    pub heads: [String; 3],
    /// The questions by who needs the answers.
    pub groups: Vec<OpenGroup>,
}

/// The questions of one of them.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct OpenGroup {
    /// Who needs the answers, such as "The buyer".
    pub who: String,
    /// The questions.
    pub rows: Vec<OpenRow>,
}

/// One question.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct OpenRow {
    /// Its number in the whole list, from 1.
    pub number: String,
    /// What is asked, such as "Rope 60: colour number".
    pub what: String,
    /// Where in the pack the answer belongs, such as "Sewing order, operation 13".
    pub place: String,
}
