//! Findings in other words: what is muted, merged and folded goes by what a finding is, never by how it reads.

use cutting::{Plan, cut_run, noticed};
use draft::Finding;
use sewing::{findings_of_run, make};
use style::{Loaded, Muted, Size};
use words::{Words, catalogue};

use crate::common;

/// A language in which every message is its own name, with what is put in.
fn other() -> Words {
    let message = |(key, given): (String, Vec<String>)| {
        let given: Vec<String> = given.iter().map(|name| format!(" {{ ${name} }}")).collect();
        format!("{key} = <{key}>{}\n", given.concat())
    };
    let text: String = catalogue().into_iter().map(message).collect();
    Words::of("xx", &[&text]).unwrap()
}

/// The demo with some of its text replaced.
fn with(changes: &[(&str, &str)]) -> Loaded {
    let loaded = common::ferryman();
    let text = changes
        .iter()
        .fold(loaded.text.clone(), |text, (from, to)| {
            assert_eq!(text.matches(from).count(), 1, "{from}");
            text.replace(from, to)
        });
    loaded.with_text(&text).unwrap()
}

const FLY: (&str, &str) = ("value = \"16.5 cm\"", "value = \"40 cm\"");

fn all_of(loaded: &Loaded) -> Vec<Finding> {
    let sizes = [Size::new(28, 30), Size::new(32, 32)];
    let made = |size: &Size| make(&loaded.style, &loaded.collection, *size);
    let run: Vec<_> = sizes.iter().map(made).collect();
    let all = noticed(&run, &cut_run(&run, &Plan::of(&loaded.style)));
    all.into_iter().flat_map(|(_, found)| found).collect()
}

#[test]
fn every_rule_of_fit_and_cutting_speaks_by_the_catalogue() {
    let (english, other) = (Words::english(), other());
    let wide_skew = ("skew = \"straight\"", "skew = \"sheared\"");
    let text = common::ferryman().text;
    let mut styles = vec![with(&[]), with(&[FLY])];
    if text.contains(wide_skew.0) {
        styles.push(with(&[wide_skew]));
    }
    let mut met = 0;
    for loaded in styles {
        for finding in all_of(&loaded) {
            let room = finding.code.split("::").next();
            if !matches!(room, Some("fit" | "cutting" | "pattern")) {
                continue;
            }
            met += 1;
            let code = finding.code;
            let message = finding.message(&other);
            assert!(message.starts_with('<'), "{code}: {message}");
            assert!(!message.contains("<verbatim>"), "{code}: {message}");
            assert_ne!(message, finding.message(english), "{code}");
            let source = finding.source(&other);
            assert!(!source.contains("<verbatim>"), "{code}: {source}");
            if let Some(remedy) = finding.remedy(&other) {
                assert!(!remedy.contains("<verbatim>"), "{code}: {remedy}");
            }
        }
    }
    assert!(met > 4, "only {met} findings");
}

#[test]
fn a_conflict_and_what_follows_from_it_are_the_same_in_other_words() {
    let (english, other) = (Words::english(), other());
    let found = all_of(&with(&[FLY]));
    let conflict = found.iter().find(|f| f.code == "fit::conflict").unwrap();
    assert!(conflict.message(&other).starts_with("<conflict-one>"));
    assert!(
        conflict
            .remedy(&other)
            .unwrap()
            .starts_with("<conflict-set>")
    );
    assert!(conflict.message(english).starts_with("fly length 40.0 cm"));
    // Its edit is what the remedy says, whatever words say it.
    assert!(conflict.edit.is_some());
    let folded: Vec<&Finding> = found.iter().filter(|f| f.follows).collect();
    assert!(!folded.is_empty());
    for follower in folded {
        assert_ne!(follower.about(&other), follower.about(english));
    }
}

#[test]
fn what_is_muted_stays_so_in_other_words() {
    let other = other();
    let loaded = common::ferryman();
    let size = Size::new(32, 32);
    let all = make(&loaded.style, &loaded.collection, size).findings;
    let finding = all.iter().find(|f| !f.is_error()).unwrap();
    let mut doc = loaded.style.clone();
    doc.muted.push(Muted {
        code: finding.code.to_owned(),
        subject: finding.subject.clone(),
        reason: "meant so".to_owned(),
    });
    assert!(finding.muted(&doc).is_some());
    // What the file keeps is the code, which no language changes; words of an earlier file still mean the same.
    let muted = |about: &str| {
        let entry = format!(
            "[[muted]]\ncode = \"{}\"\nabout = \"{about}\"\nreason = \"meant so\"\n\n[bartacks]",
            finding.code
        );
        with(&[("[bartacks]", &entry)])
    };
    for about in [finding.subject.code(), finding.about(Words::english())] {
        assert!(finding.muted(&muted(&about).style).is_some(), "{about}");
    }
    let changed = muted(&finding.about(&other));
    assert!(finding.muted(&changed.style).is_none());
}

#[test]
fn findings_of_a_run_are_merged_by_what_they_are() {
    let (english, other) = (Words::english(), other());
    let all = findings_of_run(common::all_sizes());
    let merged = |found: &&Finding| found.found_in.is_some();
    assert!(all.iter().any(|found| merged(&found)));
    for found in all.iter().filter(merged) {
        let (code, told) = (found.code, found.message(&other));
        assert!(told.starts_with("<finding-found"), "{code}: {told}");
        let figures_differ = found
            .message(english)
            .contains("; the numbers are those of ");
        assert_eq!(
            told.starts_with("<finding-found-first>"),
            figures_differ,
            "{code}"
        );
    }
}
