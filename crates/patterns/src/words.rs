//! The words by which marks are named in a file.

use crate::model::{Copies, LineKind};

/// What a text names: "placement, mirrored: extra pocket".
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Mark {
    Edge,
    Point,
    Notch,
    DoubleNotch,
    DrawnNotch,
    DrawnDoubleNotch,
    Drill,
    Line(LineKind),
}

/// Each mark's word. A kind that has a layer of its own shares the plain word.
const WORDS: &[(&str, Mark)] = &[
    ("edge", Mark::Edge),
    ("point", Mark::Point),
    ("notch", Mark::Notch),
    ("double notch", Mark::DoubleNotch),
    ("drawn notch", Mark::DrawnNotch),
    ("drawn double notch", Mark::DrawnDoubleNotch),
    ("drill", Mark::Drill),
    ("fold", Mark::Line(LineKind::Fold)),
    ("placement", Mark::Line(LineKind::Placement)),
    ("line", Mark::Line(LineKind::Internal)),
];

const COPIES: &[(&str, Copies)] = &[
    (", as drawn", Copies::AsDrawn),
    (", mirrored", Copies::Mirrored),
];

/// "fold, mirrored: hem".
pub(crate) fn say(mark: Mark, on: Copies, name: &str) -> String {
    let word = WORDS
        .iter()
        .find(|(_, m)| *m == mark)
        .map_or("line", |(w, _)| w);
    let copies = COPIES.iter().find(|(_, c)| *c == on).map_or("", |(w, _)| w);
    format!("{word}{copies}: {name}")
}

/// Whether words that are only a note would be taken for a name.
pub(crate) fn heard(text: &str) -> Option<(Mark, Copies, &str)> {
    let (head, name) = text.split_once(':')?;
    let (word, on) = COPIES
        .iter()
        .find_map(|(suffix, on)| head.strip_suffix(suffix).map(|word| (word, *on)))
        .unwrap_or((head, Copies::All));
    let (_, mark) = WORDS.iter().find(|(w, _)| *w == word)?;
    Some((*mark, on, name.trim()))
}

/// One line of words without control characters or space at its ends.
pub(crate) fn one_line(text: &str) -> String {
    let clean: String = text
        .chars()
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect();
    clean.trim().to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_said_is_heard() {
        for (_, mark) in WORDS {
            for on in [Copies::All, Copies::AsDrawn, Copies::Mirrored] {
                let text = say(*mark, on, "a: b, mirrored");
                assert_eq!(heard(&text), Some((*mark, on, "a: b, mirrored")));
            }
        }
        assert_eq!(heard("cut 1 pair: mirrored"), None);
        assert_eq!(heard("no colon"), None);
    }
}
