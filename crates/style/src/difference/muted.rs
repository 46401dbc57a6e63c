//! Findings that are no longer counted, or again.

use words::{Given, Said, say};

use super::change::Kind;
use super::found::Found;
use super::middle::Middle;
use super::value::Value;
use crate::muted::Muted;

pub(super) fn muted(found: &mut Found, old: &[Muted], new: &[Muted]) {
    let middle = Middle::of(old, new);
    for (index, (a, b)) in middle.pairs() {
        let path = |key: &str| format!("muted[{index}].{key}");
        let code = &b.code;
        let about = say::DifferenceMutedCode { code };
        found.value(path("code"), about, &a.code, &b.code);
        let about = say::DifferenceMutedAbout { code };
        let subject = |muted: &Muted| Given::from(Said::from(&muted.subject));
        found.value(path("about"), about, subject(a), subject(b));
        let about = say::DifferenceMutedReason { code };
        found.value(path("reason"), about, &a.reason, &b.reason);
    }
    let finding = |muted: &Muted| say::DifferenceFinding {
        about: Said::from(&muted.subject),
    };
    let reason = |muted: &Muted| Value::from(&muted.reason);
    for (index, gone) in middle.gone() {
        let (path, was) = (format!("muted[{index}]"), reason(gone));
        found.push(path, finding(gone), Kind::CountedAgain, was, Value::Nothing);
    }
    for (index, come) in middle.come() {
        let (path, is) = (format!("muted[{index}]"), reason(come));
        found.push(path, finding(come), Kind::Muted, Value::Nothing, is);
    }
}
