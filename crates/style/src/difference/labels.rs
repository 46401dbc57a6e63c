//! The sewn-in labels.

use words::say;

use super::found::Found;
use super::middle::Middle;
use crate::Label;

pub(super) fn labels(found: &mut Found, old: &[Label], new: &[Label]) {
    let middle = Middle::of(old, new);
    for (index, (a, b)) in middle.pairs() {
        let path = |key: &str| format!("labels[{index}].{key}");
        let number = index + 1;
        let label = || say::DifferenceLabelNamed {
            number,
            trim: &b.trim,
        };
        let about = say::DifferenceLabel { number };
        found.value(path("trim"), about, &a.trim, &b.trim);
        let about = say::DifferenceLabelPlace { label: label() };
        found.value(path("place"), about, &a.place, &b.place);
        let about = say::DifferenceLabelPurpose { label: label() };
        let (was, is) = (a.purpose.as_slice(), b.purpose.as_slice());
        found.value(path("purpose"), about, was, is);
        let about = say::DifferenceLabelFold { label: label() };
        found.value(path("fold"), about, a.fold, b.fold);
        let about = say::DifferenceLabelText { label: label() };
        found.value(path("text"), about, a.text.as_ref(), b.text.as_ref());
        let about = say::DifferenceLabelDrawing { label: label() };
        found.value(path("art"), about, a.art.as_ref(), b.art.as_ref());
    }
    let of = |label: &Label| say::DifferenceLabelOf {
        trim: label.trim.clone(),
    };
    for (index, label) in middle.gone() {
        found.taken_out(format!("labels[{index}]"), of(label), &label.place);
    }
    for (index, label) in middle.come() {
        found.added(format!("labels[{index}]"), of(label), &label.place);
    }
}
