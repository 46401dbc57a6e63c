//! What only the label knows and has not said yet. A style can be drafted and sewn without it, but not sent.

use style::{PartId, Purpose, Subject};

use super::case::{Broken, Case};

/// Who sews it.
pub(super) fn workroom(case: &Case<'_>) -> Vec<Broken> {
    if !case.context.doc.style.workroom.is_empty() {
        return Vec::new();
    }
    let rooms = &case.context.collection.workrooms;
    let remedy = match rooms.keys().next() {
        Some(room) => format!("write workroom = \"{room}\" under [style], or another of collection.toml"),
        None => "write a section such as [workrooms.first] with name and place into collection.toml, and workroom = \"first\" under [style]".to_owned(),
    };
    vec![Broken::note(PartId::Workroom, "it is open which workroom sews it").help(remedy)]
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
        Broken::note(PartId::Patch, "it is open what the patch says or shows")
            .help(format!(
                "write `text` under [trims.{}] in trims.toml, or name a drawing as `art` under [patch]",
                patch.trim
            ))
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
        let tells: Vec<&str> = label.purpose.iter().map(|purpose| purpose.word()).collect();
        let tells = if tells.is_empty() {
            String::new()
        } else {
            format!("; it is to tell {}", tells.join(", "))
        };
        Broken::note(
            Subject::Label(label.trim.clone()),
            format!("it is open what the label says{tells}"),
        )
        .help(format!(
            "write its `text` in its [[labels]], or under [trims.{}] in trims.toml",
            label.trim
        ))
        .at(case.fixing(&label.trim))
    })
    .collect()
}
