//! What is asked for, held against what the style and its collection have.

use std::sync::atomic::{AtomicBool, Ordering};

use cutting::{BandCut, CutSize, Plan};
use style::{Cloth, Collection, Loaded, Size, StyleDoc, Tag, Units};
use trade::System;
use words::Words;

use crate::JobError;

/// What the collection shows lengths in.
pub fn system(collection: &Collection) -> System {
    match collection.units {
        Units::Centimetres => System::Metric,
        Units::Inches => System::Inch,
    }
}

/// The cloth of that name.
///
/// # Errors
/// [`JobError::NoSuchCloth`], with the cloths there are.
pub fn cloth_of<'a>(collection: &'a Collection, name: &str) -> Result<&'a Cloth, JobError> {
    collection.cloths.get(name).ok_or_else(|| {
        let known: Vec<&str> = collection.cloths.keys().map(String::as_str).collect();
        JobError::NoSuchCloth {
            cloth: name.to_owned(),
            cloths: format!("the cloths are {}", known.join(", ")),
        }
    })
}

/// The size asked for when the style is made in it, or the base size.
///
/// # Errors
/// [`JobError::NoSuchSize`], with the sizes there are.
pub fn size_of(style: &StyleDoc, asked: Option<Size>) -> Result<Size, JobError> {
    let size = asked.unwrap_or(style.sizes.base);
    if style.sizes.contains(size) {
        return Ok(size);
    }
    let list = |tags: &[Tag]| {
        let tags: Vec<String> = tags.iter().map(Tag::to_string).collect();
        tags.join(", ")
    };
    let sizes = &style.sizes;
    Err(JobError::NoSuchSize {
        style: style.style.name.clone(),
        size,
        sizes: format!(
            "its waists are {}; its lengths {}",
            list(&sizes.waists),
            list(&sizes.lengths)
        ),
    })
}

/// Refuses pieces that somebody has to decide on first, with what there is to choose from.
///
/// # Errors
/// [`JobError::CannotCut`].
pub fn can_be_cut(cut: &CutSize) -> Result<(), JobError> {
    let Some(refused) = cut.refused.first() else {
        return Ok(());
    };
    let words = Words::english();
    let ways = refused.ways.iter().map(|way| words.say(way.as_help()));
    let ways: Vec<String> = ways.collect();
    Err(JobError::CannotCut {
        why: words.say(refused.message()),
        ways: ways.join("\n"),
    })
}

/// What is decided before cutting, with the band as asked for.
pub(crate) fn plan(loaded: &Loaded, band: Option<BandCut>) -> Plan {
    let stated = Plan::of(&loaded.style);
    Plan {
        band: band.unwrap_or(stated.band),
        ..stated
    }
}

/// What a style's files are called: its name in small plain letters.
pub fn stem(loaded: &Loaded) -> String {
    let name = loaded.style.style.name.to_lowercase();
    let words = name
        .split(|c: char| !c.is_ascii_alphanumeric())
        .filter(|word| !word.is_empty());
    let stem = words.collect::<Vec<_>>().join("-");
    if stem.is_empty() {
        "style".to_owned()
    } else {
        stem
    }
}

/// Ends a job that nobody waits for.
pub(crate) fn wanted(cancel: &AtomicBool) -> Result<(), JobError> {
    if cancel.load(Ordering::Relaxed) {
        return Err(JobError::Cancelled);
    }
    Ok(())
}
