//! What the labels have to say where the pair is sold, against what they say.
//!
//! Which texts the law asks for differs from place to place: whether they are there is looked at, not how they are worded.
//! A label that shows a drawing may show in it what its text does not say.

use draft::{PieceId, PointId};
use style::{Label, PartId, Purpose, Subject, Trim};
use words::{Key, key, say};

use super::case::{Broken, Case};

/// What no pair is sold without, the fibres apart, which have a rule of their own.
const ASKED: [(Purpose, Key); 4] = [
    (Purpose::Brand, key::SEWING_LABELS_ASK_BRAND),
    (Purpose::Size, key::SEWING_LABELS_ASK_SIZE),
    (Purpose::Care, key::SEWING_LABELS_ASK_CARE),
    (Purpose::Origin, key::SEWING_LABELS_ASK_ORIGIN),
];

/// Parts of words by which a text tells how a thing is washed, in several languages; a degree sign does so in all
/// (from memory).
const CARE: [&str; 14] = [
    "°", "wash", "lav", "wasch", "wass", "iron", "bügel", "repass", "engomar", "stir", "bleach",
    "dry", "tvätt", "洗",
];

/// The same for where it was made.
const ORIGIN: [&str; 12] = [
    "made in",
    "product of",
    "fabri",
    "feito",
    "hecho",
    "hergestellt",
    "prodotto",
    "gemaakt",
    "tillverkad",
    "製",
    "vervaardigd",
    "origin",
];

/// The same for the statement of article 12 of Regulation (EU) No 1007/2011 on parts of animal origin.
const ANIMAL: [&str; 6] = [
    "animal",
    "animaux",
    "tierisch",
    "dierlijk",
    "animalisk",
    "animale",
];

fn tells(text: &str, stems: &[&str]) -> bool {
    let text = text.to_lowercase();
    stems.iter().any(|stem| text.contains(stem))
}

/// What no label is stated to tell, and what a label is stated to tell and its text does not.
pub(super) fn lacking(case: &Case<'_>) -> Vec<Broken> {
    let labels = &case.context.doc.labels;
    let told = |purpose: Purpose| labels.iter().any(|label| label.purpose.contains(&purpose));
    let nowhere: Vec<Key> = ASKED
        .iter()
        .filter(|(purpose, _)| !told(*purpose))
        .map(|(_, what)| *what)
        .collect();
    let mut out = Vec::new();
    if !nowhere.is_empty() {
        out.push(
            Broken::note(PartId::Labels, say::SewingLabelsNowhere { what: nowhere })
                .help(key::SEWING_LABELS_NOWHERE_HELP)
                .at(case.point(PieceId::Band, PointId::CentreBack)),
        );
    }
    out.extend(labels.iter().filter_map(|label| of_label(case, label)));
    out
}

fn of_label(case: &Case<'_>, label: &Label) -> Option<Broken> {
    let of_trim = || case.trim(&label.trim).map(|trim| trim.text.as_str());
    let text = label.text.as_deref().or_else(of_trim).unwrap_or_default();
    if text.is_empty() || label.art.is_some() {
        return None;
    }
    let lacks = |purpose, stems: &[&str]| label.purpose.contains(&purpose) && !tells(text, stems);
    let patch = case.context.doc.patch.as_ref();
    let leather = patch
        .and_then(|patch| case.trim(&patch.trim))
        .is_some_and(Trim::is_leather);
    let what: Vec<Key> = [
        (lacks(Purpose::Care, &CARE), key::SEWING_LABELS_ASK_CARE),
        (
            lacks(Purpose::Origin, &ORIGIN),
            key::SEWING_LABELS_ASK_ORIGIN,
        ),
        (
            leather && lacks(Purpose::Fibre, &ANIMAL),
            key::SEWING_LABELS_ASK_ANIMAL,
        ),
    ]
    .into_iter()
    .filter_map(|(lacks, what)| lacks.then_some(what))
    .collect();
    (!what.is_empty()).then(|| {
        let words = text.to_owned();
        Broken::note(
            Subject::Label(label.trim.clone()),
            say::SewingLabelsLack { what, words },
        )
        .help(key::SEWING_LABELS_LACK_HELP)
        .at(case.fixing(&label.trim))
    })
}
