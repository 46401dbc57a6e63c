//! What only the label knows and has not said yet. A style can be drafted and sewn without it, but not sent.

use style::{PartId, Purpose, Subject};
use words::{Key, Said, key, say};

use super::case::{Broken, Case};

/// Who sews it.
pub(super) fn workroom(case: &Case<'_>) -> Vec<Broken> {
    if !case.context.doc.style.workroom.is_empty() {
        return Vec::new();
    }
    let rooms = &case.context.collection.workrooms;
    let remedy: Said = match rooms.keys().next() {
        Some(room) => say::SewingOpenWorkroom {
            room: room.to_string(),
        }
        .into(),
        None => key::SEWING_OPEN_WORKROOM_2.into(),
    };
    vec![Broken::note(PartId::Workroom, key::SEWING_OPEN_WORKROOM_3).help(remedy)]
}

/// What the patch says or shows.
pub(super) fn patch(case: &Case<'_>) -> Vec<Broken> {
    let Some(patch) = &case.context.doc.patch else {
        return Vec::new();
    };
    let says = case
        .trim(&patch.trim)
        .is_some_and(|trim| !trim.text.is_empty());
    if says || patch.art.is_some() {
        return Vec::new();
    }
    vec![
        Broken::note(PartId::Patch, key::SEWING_OPEN_PATCH)
            .help(say::SewingOpenPatchHelp {
                trim: patch.trim.to_string(),
            })
            .at(case.fixing(&patch.trim)),
    ]
}

/// What each label says.
pub(super) fn labels(case: &Case<'_>) -> Vec<Broken> {
    let labels = case.context.doc.labels.iter();
    let open = labels.filter(|label| {
        let own = label.text.as_deref().unwrap_or_default();
        let trim = case.trim(&label.trim).map_or("", |trim| trim.text.as_str());
        // A size label says the size of the pair it is in.
        let sized = label.purpose.contains(&Purpose::Size);
        own.is_empty() && trim.is_empty() && label.art.is_none() && !sized
    });
    open.map(|label| {
        let purposes: Vec<Key> = label.purpose.iter().map(|purpose| purpose.key()).collect();
        let subject = Subject::Label(label.trim.clone());
        let broken = if purposes.is_empty() {
            Broken::note(subject, key::SEWING_OPEN_LABEL)
        } else {
            Broken::note(subject, say::SewingOpenLabelTells { purposes })
        };
        broken
            .help(say::SewingOpenLabelsHelp {
                trim: label.trim.to_string(),
            })
            .at(case.fixing(&label.trim))
    })
    .collect()
}
