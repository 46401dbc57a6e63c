//! A finding is muted and counted again by edits, with everything else kept.
#![allow(clippy::unwrap_used)]

mod common;

use common::{demo_collection, demo_style};
use style::{Edit, PartId, apply, difference, parse};
use trade::System;
use words::Words;

const MUTED: &str =
    r#"{ "code": "sewing::patch-hangs", "about": "part:patch", "reason": "meant so" }"#;

fn edit(kind: &str, path: &str, value: &str) -> Edit {
    let said = format!(r#"{{ "edit": "{kind}", "path": "{path}", "value": {value} }}"#);
    serde_json::from_str(&said).unwrap()
}

#[test]
fn a_muted_finding_has_its_reason_and_can_be_taken_back() {
    let before = parse(demo_style(), "style.toml", &demo_collection()).unwrap();
    assert_eq!(
        before.muted("sewing::patch-hangs", &PartId::Patch.into()),
        None
    );
    let text = apply(demo_style(), &edit("set", "muted", &format!("[{MUTED}]"))).unwrap();
    let after = parse(&text, "style.toml", &demo_collection()).unwrap();
    let (number, muted) = after
        .muted("sewing::patch-hangs", &PartId::Patch.into())
        .unwrap();
    assert_eq!((number, muted.reason.as_str()), (0, "meant so"));
    assert_eq!(
        after.muted("sewing::patch-hangs", &PartId::Band.into()),
        None
    );
    let said = difference(&before, &after);
    assert_eq!(said.len(), 1);
    assert_eq!(
        said[0].words(Words::english(), System::Metric),
        "finding on patch muted: meant so"
    );
    assert!(
        text.contains("[[muted]]\ncode = \"sewing::patch-hangs\""),
        "{text}"
    );
    let twice = apply(&text, &edit("insert", "muted[1]", MUTED)).unwrap();
    let twice = parse(&twice, "style.toml", &demo_collection()).unwrap();
    assert_eq!(twice.muted.len(), 2);
    let again = apply(&text, &Edit::remove("muted[0]").unwrap()).unwrap();
    let again = parse(&again, "style.toml", &demo_collection()).unwrap();
    assert_eq!(again, before);
    let said = difference(&after, &again);
    assert_eq!(
        said[0].words(Words::english(), System::Metric),
        "finding on patch counted again"
    );
}
