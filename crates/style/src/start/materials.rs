//! What a new collection begins with: materials without a name of anybody's, for a maker to put their own in the place of.
//!
//! They are what the demo's are, so that what begins drafts, sews and cuts as the demo does. Nothing else of the demo goes
//! into a label that is not the demo's: no workroom, no words of patch or label, no origin, no drawing.

use super::answers::LabelWords;
use super::text;
use crate::report::Source;
use crate::{COLLECTION_FILE, Collection, demo, parse, read_collection};

macro_rules! beginning {
    ($name:literal) => {
        include_str!(concat!("../../beginning/", $name))
    };
}

const CLOTHS: &str = beginning!("cloths.toml");
const YARNS: &str = beginning!("yarns.toml");
const TRIMS: &str = beginning!("trims.toml");
const LABEL: &str = beginning!("collection.toml");

/// The demo's materials, and those of a new collection that are the same.
const SAME: &[(&str, &str)] = &[
    ("tideline-14", "denim-14"),
    ("bargeman-drill", "pocketing"),
    ("oar-lining", "lining"),
    ("rope-105", "ochre-105"),
    ("rope-80", "ochre-80"),
    ("rope-60", "ochre-60"),
    ("night-80", "navy-80"),
    ("night-40", "navy-40"),
    ("chalk-40", "ecru-40"),
];

/// The material of a new collection that is the same as one of the demo's.
pub(super) fn stands_for(demo: &str) -> Option<&'static str> {
    let found = SAME.iter().find(|(name, _)| *name == demo);
    found.map(|(_, name)| *name)
}

/// The files of a new collection besides its label: name and text.
pub(super) const FILES: [(&str, &str); 3] = [
    ("cloths.toml", CLOTHS),
    ("yarns.toml", YARNS),
    ("trims.toml", TRIMS),
];

/// The text of a new collection's label, to be filled in.
pub(super) const fn label_text() -> &'static str {
    LABEL
}

/// A new collection as it would be under this name.
pub(super) fn collection(name: &str, words: &LabelWords) -> Option<Collection> {
    let source = |file, text| Source::new(file, text);
    let label = text::label(name, words);
    let label = parse::read(
        &source(COLLECTION_FILE, label.as_str()),
        read_collection::collection,
    )
    .value?;
    Some(Collection {
        name: label.name,
        contact: label.contact,
        currency: label.currency,
        units: label.units,
        languages: label.languages,
        workrooms: label.workrooms,
        cloths: parse::read(&source("cloths.toml", CLOTHS), read_collection::cloths).value?,
        yarns: parse::read(&source("yarns.toml", YARNS), read_collection::yarns).value?,
        trims: parse::read(&source("trims.toml", TRIMS), read_collection::trims).value?,
    })
}

/// The demo's collection, whose names are led into another.
pub(super) fn demo_collection() -> Option<Collection> {
    let source = |file| Source::new(file, demo::text(file));
    let label = parse::read(&source(COLLECTION_FILE), read_collection::collection).value?;
    Some(Collection {
        name: label.name,
        contact: label.contact,
        currency: label.currency,
        units: label.units,
        languages: label.languages,
        workrooms: label.workrooms,
        cloths: parse::read(&source("cloths.toml"), read_collection::cloths).value?,
        yarns: parse::read(&source("yarns.toml"), read_collection::yarns).value?,
        trims: parse::read(&source("trims.toml"), read_collection::trims).value?,
    })
}
