//! Whole tastes of construction, each a set of sections that take the place of the demo's.

use toml_edit::{DocumentMut, Item, Table};

use super::answers::Taste;
use super::table_edit::remove;

impl Taste {
    /// The sections it brings; the demo itself is felled.
    const fn sections(self) -> &'static str {
        match self {
            Self::Felled => "",
            Self::Topstitched => include_str!("../../tastes/topstitched.toml"),
            Self::Quiet => include_str!("../../tastes/quiet.toml"),
        }
    }

    /// What it does without.
    const fn without(self) -> &'static [&'static [&'static str]] {
        match self {
            Self::Felled | Self::Topstitched => &[],
            Self::Quiet => &[
                &["rivets"],
                &["seams", "decoration"],
                &["pockets", "back", "right", "art"],
            ],
        }
    }
}

/// Off the cloth's own edge each allowance is overedged by itself before the seam is pressed apart.
const OFF_EDGE: &str = r#"
construction = "pressed-open"
rows = [
  { stitch = "301", density = "9 /in", yarn = "night-80", under = "night-40", offset = "0 mm" },
  { stitch = "504", density = "9 /in", yarn = "night-40", under = "night-40", offset = "0 mm" },   # over each raw edge
]
"#;

/// Along the cloth's own edge nothing is raw.
const ON_EDGE: &str = r#"
construction = "pressed-open"
rows = [{ stitch = "401", density = "9 /in", yarn = "night-80", under = "night-40", offset = "0 mm" }]
"#;

/// Puts a taste into a style; `on_edge` says whether the outseam lies on the cloth's own edge.
pub(super) fn put(document: &mut DocumentMut, taste: Taste, on_edge: bool) {
    if let Ok(sections) = taste.sections().parse::<DocumentMut>() {
        merge(document.as_table_mut(), sections.as_table());
    }
    let outseam = if on_edge { ON_EDGE } else { OFF_EDGE };
    if let (Ok(rows), Some(seam)) = (
        outseam.trim_start().parse::<DocumentMut>(),
        document
            .get_mut("seams")
            .and_then(|seams| seams.get_mut("outseam"))
            .and_then(Item::as_table_mut),
    ) {
        refill(seam, rows.as_table());
        if !on_edge {
            unsaid(seam);
        }
    }
    for path in taste.without() {
        remove(document, path);
    }
}

/// Gives each section that both have the lines of the other, and adds the keys of one that is only there in part.
fn merge(into: &mut Table, from: &Table) {
    for (key, item) in from.iter() {
        let Item::Table(from) = item else { continue };
        let Some(Item::Table(old)) = into.get_mut(key) else {
            continue;
        };
        if from.contains_key("construction") || from.contains_key("like") {
            refill(old, from);
            continue;
        }
        for (key, value) in from.iter().filter(|(_, item)| item.is_value()) {
            replace(old, key, value);
        }
        merge(old, from);
    }
}

/// A seam is one whole: none of its old lines stay.
fn refill(old: &mut Table, from: &Table) {
    old.clear();
    for (key, value) in from.iter() {
        old.insert(key, value.clone());
    }
}

/// Replaces a value and leaves the comment behind it.
fn replace(old: &mut Table, key: &str, value: &Item) {
    match (old.get_mut(key), value) {
        (Some(Item::Value(there)), Item::Value(value)) => {
            let decor = there.decor().clone();
            *there = value.clone();
            *there.decor_mut() = decor;
        }
        _ => {
            old.insert(key, value.clone());
        }
    }
}

/// Takes the comment behind a section's name away, which speaks of what it was.
fn unsaid(section: &mut Table) {
    section.decor_mut().set_suffix("");
}
