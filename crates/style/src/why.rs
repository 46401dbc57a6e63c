//! Why something is as it is, in the maker's words: what a customer may be told, and the workroom where the maker lets it.

use serde::Serialize;

use crate::known;
use crate::read_collection::all;
use crate::reader::{Node, Table};
use crate::{MeasureId, PartId, PieceId, SeamId, Subject};

/// One `[[why]]`: a sentence or two on a choice, in the order in which the story tells them.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Why {
    /// What it is about.
    #[serde(rename = "about")]
    pub subject: Subject,
    /// Why it is so, as the maker wrote it.
    pub says: String,
    /// Whether the workroom reads it too.
    #[serde(rename = "pack")]
    pub in_pack: bool,
}

/// How a section is begun, told where one is written otherwise.
const EXAMPLE: &str = "[[why]] above each, with about = \"seam:inseam\" and says = \"...\"";

pub(crate) fn whys(node: Option<Node<'_>>) -> Option<Vec<Why>> {
    let Some(node) = node else {
        return Some(Vec::new());
    };
    let members = node.list(EXAMPLE)?;
    let mut told: Vec<Subject> = Vec::new();
    all(members.iter().map(|member| why(member.table()?, &mut told)))
}

fn why(mut table: Table<'_>, told: &mut Vec<Subject>) -> Option<Why> {
    let about = table
        .required("about", "about = \"...\", what it is about, by its code")
        .and_then(|node| subject(&node, told));
    let says = table
        .required("says", "says = \"...\", one or two sentences")
        .and_then(|node| node.text());
    let in_pack = match table.optional("pack") {
        Some(node) => node.flag(),
        None => Some(false),
    };
    table.finish();
    Some(Why {
        subject: about?,
        says: says?,
        in_pack: in_pack?,
    })
}

fn subject(node: &Node<'_>, told: &mut Vec<Subject>) -> Option<Subject> {
    let text = node.text()?;
    let Some(subject) = Subject::of(&text) else {
        let codes = codes();
        let meant = known::nearest(&text, codes.iter().map(String::as_str));
        let hint = meant.map_or_else(
            || "write what it is about by its code, such as \"seam:inseam\", \"part:fly\", \"cloth:KEY\" or \"label:KEY\"".to_owned(),
            |near| format!("did you mean \"{near}\"?"),
        );
        let message = format!(
            "`about`: \"{}\" is nothing a pair has",
            crate::reader::short(&text)
        );
        node.problem("style::unknown-subject", message, hint);
        return None;
    };
    if told.contains(&subject) {
        let message = format!("`about`: \"{text}\" has been told why already");
        node.problem("style::told-twice", message, "make one of the two");
        return None;
    }
    told.push(subject.clone());
    Some(subject)
}

/// The codes of what every pair has, whatever its collection.
fn codes() -> Vec<String> {
    let seams = SeamId::ALL.map(Subject::Seam);
    let parts = PartId::ALL.map(Subject::Part);
    let measures = MeasureId::ALL.map(Subject::Measure);
    let pieces = PieceId::ALL.map(Subject::Piece);
    let all = seams.iter().chain(&parts).chain(&measures).chain(&pieces);
    all.map(Subject::code).collect()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use crate::parse::{Reading, style_alone};
    use crate::report::Source;
    use crate::{STYLE_FILE, SeamId, StyleDoc, Subject, demo};

    /// The demo with these in place of its own.
    fn read(whys: &str) -> Reading<StyleDoc> {
        let demo = demo::text(demo::STYLE);
        let rest = demo.find("[[why]]").map_or(demo, |at| &demo[..at]);
        style_alone(&Source::new(STYLE_FILE, format!("{rest}\n{whys}").as_str()))
    }

    #[test]
    fn whys_keep_their_order_and_are_read_by_code() {
        let doc = read(
            "[[why]]\nabout = \"seam:inseam\"\nsays = \"No raw edge inside the leg.\"\n\
             [[why]]\nabout = \"part:fly\"\nsays = \"Buttons last.\"\npack = true\n",
        );
        let doc = doc.value.unwrap();
        let [inseam, fly] = doc.why.as_slice() else {
            panic!("two")
        };
        assert_eq!(inseam.subject, Subject::Seam(SeamId::Inseam));
        assert!(!inseam.in_pack && fly.in_pack);
        assert_eq!(fly.says, "Buttons last.");
    }

    #[test]
    fn what_is_about_nothing_or_told_twice_is_named() {
        let slip = read("[[why]]\nabout = \"seam:insaem\"\nsays = \"x\"\n")
            .report
            .to_string();
        assert!(slip.contains("did you mean \"seam:inseam\"?"), "{slip}");
        let twice = "[[why]]\nabout = \"part:fly\"\nsays = \"x\"\n".repeat(2);
        let twice = read(&twice).report.to_string();
        assert!(twice.contains("has been told why already"), "{twice}");
    }
}
