//! Metal, patch and labels as one pair takes them.

use draft::PieceId;
use sewing::{Fixing, FixingKind, On};
use style::{Label, LabelFold, Patch, Tanning, Trim, TrimKind};

use super::context::Context;
use super::words::{capital, joined, swatch};
use crate::MaterialRow;

/// Buttons and rivets in the order in which they are met on the garment, then the zip.
pub(super) fn metal(context: &Context<'_>) -> Vec<MaterialRow> {
    let mut kinds: Vec<(&str, bool)> = Vec::new();
    for fixing in context.shown.fixings.iter().filter(|f| is_metal(f)) {
        let kind = (fixing.from.code(), is_hidden(fixing));
        if !kinds.contains(&kind) {
            kinds.push(kind);
        }
    }
    let mut rows: Vec<MaterialRow> = kinds
        .into_iter()
        .map(|(trim, hidden)| metal_row(context, trim, hidden))
        .collect();
    if let Some(zip) = &context.loaded.style.fly.zip {
        rows.push(trim_row(context, zip, "Fly", 1));
    }
    rows
}

fn is_metal(fixing: &Fixing) -> bool {
    matches!(fixing.kind, FixingKind::Rivet(_) | FixingKind::Button(_))
}

/// A rivet that is seen inside only.
fn is_hidden(fixing: &Fixing) -> bool {
    matches!(fixing.kind, FixingKind::Rivet(_)) && !fixing.outside
}

fn metal_row(context: &Context<'_>, trim: &str, hidden: bool) -> MaterialRow {
    let of: Vec<&Fixing> = context
        .shown
        .fixings
        .iter()
        .filter(|f| is_metal(f) && f.from.trim() == Some(trim) && is_hidden(f) == hidden)
        .collect();
    let count = of
        .iter()
        .map(|f| if f.on == On::Both { 2 } else { 1 })
        .sum();
    let mut places: Vec<&str> = Vec::new();
    for fixing in &of {
        let name = match fixing.piece {
            PieceId::Front => "pocket mouths",
            PieceId::CoinPocket => "upper corners of the coin pocket",
            PieceId::BackPocketLeft | PieceId::BackPocketRight => {
                "upper corners of the back pockets"
            }
            PieceId::Band => "waistband",
            PieceId::FlyShield => "fly shield",
            other => other.words(::words::Words::english()),
        };
        if !places.contains(&name) {
            places.push(name);
        }
    }
    let how = if hidden {
        "; seen inside only, set before the pockets are sewn"
    } else {
        ""
    };
    let used = capital(&places.join(", ")) + how;
    let row = trim_row(context, trim, &used, count);
    if hidden {
        MaterialRow {
            name: row.name.clone() + ", hidden",
            ..row
        }
    } else {
        row
    }
}

pub(super) fn patch_and_labels(context: &Context<'_>) -> Vec<MaterialRow> {
    let style = &context.loaded.style;
    let patch = style.patch.iter().map(|patch| patch_row(context, patch));
    let labels = style.labels.iter().map(|label| label_row(context, label));
    patch.chain(labels).collect()
}

/// Said of a patch or a label that says nothing yet.
const OPEN: &str = "what it says is open";

fn patch_row(context: &Context<'_>, patch: &Patch) -> MaterialRow {
    let place = format!(
        "On the band, right of centre back by {}",
        context.words.length(patch.from_centre)
    );
    let row = trim_row(context, &patch.trim, &place, 1);
    let art = patch
        .art
        .as_ref()
        .map_or_else(String::new, |art| format!("drawing {art}"));
    let letters = format!("letters {}", patch.letters);
    let trim = context.loaded.collection.trims.get(&patch.trim);
    let silent = trim.is_none_or(|trim| trim.text.is_empty());
    let open = if silent && patch.art.is_none() {
        OPEN
    } else {
        ""
    };
    MaterialRow {
        spec: joined(
            [row.spec.as_str(), letters.as_str(), art.as_str(), open],
            ", ",
        ),
        ..row
    }
}

fn label_row(context: &Context<'_>, label: &Label) -> MaterialRow {
    let trim = context.loaded.collection.trims.get(&label.trim);
    let say = ::words::Words::english();
    let purposes = label.purpose.iter().map(|purpose| say.named(purpose.key()));
    let purposes: Vec<&str> = purposes.collect();
    let tells = if purposes.is_empty() {
        "what it tells is not stated".to_owned()
    } else {
        format!("tells {}", purposes.join(", "))
    };
    let art = label
        .art
        .as_ref()
        .map_or_else(String::new, |art| format!("drawing {art}"));
    let reads = match label_text(context, label).as_str() {
        "" if label.art.is_none() => OPEN.to_owned(),
        text => reads(text),
    };
    let own = trim.map_or_else(String::new, material_and_size);
    MaterialRow {
        spec: joined(
            [
                own.as_str(),
                folded(label.fold),
                tells.as_str(),
                reads.as_str(),
                art.as_str(),
            ],
            ", ",
        ),
        ..trim_row(context, &label.trim, &capital(&label.place), 1)
    }
}

const fn folded(fold: LabelFold) -> &'static str {
    match fold {
        LabelFold::Flat => "cut straight, laid flat",
        LabelFold::EndFold => "both ends turned under",
        LabelFold::CentreFold => "folded in the middle, both ends caught in the seam",
        LabelFold::MitreFold => "both ends turned up at 45 degrees",
    }
}

/// What the drawn pair's label says: the sewn garment knows the text of its size.
fn label_text(context: &Context<'_>, label: &Label) -> String {
    let sewn = context.shown.fixings.iter().find_map(|f| match &f.kind {
        FixingKind::Label(_, _, text) if f.from.trim() == Some(label.trim.as_str()) => {
            Some(text.clone())
        }
        _ => None,
    });
    let own = || {
        let trim = context.loaded.collection.trims.get(&label.trim);
        trim.map_or_else(String::new, |trim| trim.text.clone())
    };
    label.text.clone().or(sewn).unwrap_or_else(own)
}

fn trim_row(context: &Context<'_>, key: &str, used: &str, count: u32) -> MaterialRow {
    let trim = context.loaded.collection.trims.get(key);
    MaterialRow {
        name: trim.map_or_else(|| key.to_owned(), |trim| trim.name.clone()),
        spec: trim.map_or_else(String::new, trim_spec),
        colour: trim.and_then(|trim| swatch(trim.colour)),
        used: used.to_owned(),
        quantity: count.to_string(),
    }
}

fn trim_spec(trim: &Trim) -> String {
    joined(
        [material_and_size(trim), reads(&trim.text)]
            .iter()
            .map(String::as_str),
        ", ",
    )
}

fn reads(text: &str) -> String {
    if text.is_empty() {
        String::new()
    } else {
        format!("reads “{text}”")
    }
}

fn material_and_size(trim: &Trim) -> String {
    let across = trim.diameter.map(|d| format!("{} across", d.show_mm()));
    let flat = trim
        .width
        .zip(trim.height)
        .map(|(w, h)| format!("{} × {}", w.show_mm(), h.show_mm()));
    let long = trim.length.map(|l| format!("{} long", l.show_mm()));
    let size = across.or(flat).or(long).unwrap_or_default();
    let thick = trim
        .thickness
        .map_or_else(String::new, |t| format!("{} thick", t.show_mm()));
    let tanned = match (trim.kind, trim.tanning) {
        (_, Some(Tanning::Vegetable)) => "tanned with plant extracts",
        (_, Some(Tanning::Chrome)) => "tanned with chromium",
        (_, Some(Tanning::ChromeFree)) => "tanned without chromium",
        (TrimKind::Patch, None) if trim.is_leather() => "tanning not stated",
        _ => "",
    };
    joined(
        [trim.kind.word(), &size, &trim.material, &thick, tanned],
        ", ",
    )
}
