//! What a customer is told of a pair, against what the pair has.

use words::{Said, say};

use super::case::{Broken, Case};

/// Something told about that this style does not have.
pub(super) fn of_nothing(case: &Case<'_>) -> Vec<Broken> {
    let doc = case.context.doc;
    let gone = doc.why.iter().filter(|why| !doc.has(&why.subject));
    gone.map(|why| {
        let about = Said::from(&why.subject);
        Broken::note(why.subject.clone(), say::SewingWhyOfNothing { about })
            .help(words::key::SEWING_WHY_OF_NOTHING_HELP)
    })
    .collect()
}
