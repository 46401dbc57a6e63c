//! Why things are as they are.

use words::{Given, Said, say};

use super::found::Found;
use crate::why::Why;

/// Told by what each is about; the order they are told in is no change of the pair.
pub(super) fn why(found: &mut Found, old: &[Why], new: &[Why]) {
    let about = |why: &Why| say::DifferenceWhy {
        about: Given::from(Said::from(&why.subject)),
    };
    for (index, is) in new.iter().enumerate() {
        let Some(was) = old.iter().find(|why| why.subject == is.subject) else {
            found.added(format!("why[{index}]"), about(is), &is.says);
            continue;
        };
        found.value(format!("why[{index}].says"), about(is), &was.says, &is.says);
        let in_pack = say::DifferenceWhyInPack {
            about: Given::from(Said::from(&is.subject)),
        };
        found.value(
            format!("why[{index}].pack"),
            in_pack,
            was.in_pack,
            is.in_pack,
        );
    }
    for (index, was) in old.iter().enumerate() {
        if !new.iter().any(|why| why.subject == was.subject) {
            found.taken_out(format!("why[{index}]"), about(was), &was.says);
        }
    }
}
