//! The text a style begins with: the demo's, changed by the answers, with its comments.

use toml_edit::{Array, DocumentMut, Item, Table, Value, value};

use super::answers::{LabelWords, NewStyle, Settled};
use super::table_edit::{remove, set};
use super::{chart, substitute, taste};
use crate::details::OutseamLine;
use crate::{Collection, Figure, MeasureId, Purpose, Tag, demo};
use trade::{Length, System};

/// The demo's style under another name and as it was answered, its names led into a collection.
pub(super) fn style(asked: &NewStyle, settled: &Settled, collection: &Collection) -> String {
    let demo = without_first_comment(demo::text(demo::STYLE));
    let Ok(mut document) = demo.parse::<DocumentMut>() else {
        return demo.to_owned();
    };
    set(&mut document, &["style", "name"], asked.name.as_str());
    set(&mut document, &["style", "code"], asked.code.as_str());
    set(&mut document, &["style", "figure"], settled.figure.word());
    set(&mut document, &["style", "fit"], settled.fit.word());
    remove(&mut document, &["style", "summary"]);
    // Who washes it and how is not asked, and the demo's laundry is not the maker's.
    remove(&mut document, &["wash"]);
    // Nor are its reasons.
    remove(&mut document, &["why"]);
    told(&mut document, asked, settled, collection);
    set(&mut document, &["sizes", "waists"], tags(&settled.waists));
    set(&mut document, &["sizes", "lengths"], tags(&settled.lengths));
    set(&mut document, &["sizes", "base"], settled.base.to_string());
    let line = settled.outseam.word();
    set(&mut document, &["shape", "outseam"], line);
    if settled.outseam == OutseamLine::Straight {
        let split = chart::straight_thigh_split(settled.fit).to_string();
        set(&mut document, &["shape", "thigh_split"], split);
    }
    charted(&mut document, settled);
    if settled.figure == Figure::Women {
        // In proportion to the smaller back pocket (common practice).
        for side in ["left", "right"] {
            let of = |key| ["pockets", "back", side, key];
            set(&mut document, &of("foot_width"), "11 cm");
            set(&mut document, &of("side_length"), "12 cm");
        }
        set(&mut document, &["patch", "from_centre"], "3 cm");
    }
    // A pocket more than five is the maker's to add.
    remove(&mut document, &["pockets", "extra"]);
    remove(&mut document, &["seams", "extra_hem"]);
    remove(&mut document, &["seams", "extra_set"]);
    let on_edge = settled.outseam == OutseamLine::Straight;
    taste::put(&mut document, settled.taste, on_edge);
    let text = substitute::into_collection(&document.to_string(), collection);
    let Ok(mut document) = text.parse::<DocumentMut>() else {
        return text;
    };
    set(&mut document, &["cloth", "shell"], settled.shell.as_str());
    document.to_string()
}

/// What only the label knows: nothing of it is the demo's. What was not told is left out, and open.
fn told(document: &mut DocumentMut, asked: &NewStyle, settled: &Settled, collection: &Collection) {
    if collection.workrooms.is_empty() {
        remove(document, &["style", "workroom"]);
    }
    // A drawing is the maker's own.
    remove(document, &["patch", "art"]);
    remove(document, &["pockets", "back", "right", "art"]);
    // So is a pocket that hangs lower on one side.
    set(
        document,
        &["pockets", "back", "right", "outer_drop"],
        "0 mm",
    );
    let fibre = collection
        .cloths
        .get(&settled.shell)
        .map(|shell| shell.fibre.as_str());
    let origin = asked.words.origin.as_deref();
    let text = origin.map(|origin| match fibre {
        Some(fibre) if !fibre.is_empty() => format!("{fibre}. Made in {origin}."),
        _ => format!("Made in {origin}."),
    });
    let labels = document
        .get_mut("labels")
        .and_then(Item::as_array_of_tables_mut);
    for label in labels.into_iter().flat_map(|labels| labels.iter_mut()) {
        let tells = label.get("purpose").and_then(Item::as_array);
        let origin = Purpose::Origin.word();
        let of_origin = tells.is_some_and(|all| all.iter().any(|one| one.as_str() == Some(origin)));
        match &text {
            Some(text) if of_origin => drop(label.insert("text", value(text.as_str()))),
            _ => drop(label.remove("text")),
        }
    }
}

/// The `collection.toml` of a new label.
pub(super) fn label(name: &str, words: &LabelWords) -> String {
    let text = super::materials::label_text();
    let Ok(mut document) = text.parse::<DocumentMut>() else {
        return text.to_owned();
    };
    set(&mut document, &["collection", "name"], name);
    if let Some(workroom) = &words.workroom {
        let mut room = Table::new();
        room.insert("name", value(workroom.as_str()));
        if let Some(place) = &words.place {
            room.insert("place", value(place.as_str()));
        }
        let mut rooms = Table::new();
        rooms.set_implicit(true);
        rooms.insert(WORKROOM, Item::Table(room));
        document.insert("workrooms", Item::Table(rooms));
    }
    document.to_string()
}

/// How a new label's workroom is called in its files.
const WORKROOM: &str = "first";

/// The trims of a new label: patch and main label say its name where it has one.
pub(super) fn trims(text: &str, label: Option<&str>) -> String {
    let (Some(label), Ok(mut document)) = (label, text.parse::<DocumentMut>()) else {
        return text.to_owned();
    };
    for trim in ["patch", "main-label"] {
        set(&mut document, &["trims", trim, "text"], label);
    }
    document.to_string()
}

fn charted(document: &mut DocumentMut, settled: &Settled) {
    for charted in chart::measures(settled) {
        let at = |key| ["chart", charted.measure.code(), key];
        set(document, &at("value"), written(charted.value));
        if let Some(grade) = charted.grade {
            set(document, &at("grade"), written(grade));
        }
    }
    // It follows from the other measures.
    remove(document, &["chart", MeasureId::Outseam.code()]);
}

/// A length as the chart writes it: in sixteenths of an inch where it is one.
fn written(length: Length) -> String {
    let inches = length.show(System::Inch);
    match inches.parse::<Length>() {
        Ok(same) if (same - length).abs() < Length::mm(0.001) => inches,
        _ => length.to_string(),
    }
}

fn tags(tags: &[Tag]) -> Value {
    Value::Array(tags.iter().map(|tag| tag.value()).collect::<Array>())
}

/// The demo's first comment speaks about the demo.
fn without_first_comment(text: &str) -> &str {
    text.find("format =")
        .and_then(|at| text.get(at..))
        .unwrap_or(text)
}
