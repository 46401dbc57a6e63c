//! Two people read the same style at the same time, each in a language of their own.

use std::collections::BTreeSet;
use std::sync::Barrier;
use std::thread;

use drawing::{Plate, PlateId};
use sewing::{Garment, findings_of_run, make};
use style::Size;
use words::{Words, catalogue, english_files};

/// Stands in front of every message of the made-up language.
const MARK: char = '§';
const ROUNDS: usize = 3;

/// A language in which every message is marked and is its own name, with what is put in.
fn marked() -> Words {
    let message = |(key, given): (String, Vec<String>)| {
        let given: Vec<String> = given.iter().map(|name| format!(" {{ ${name} }}")).collect();
        let short: String = key.split('-').filter_map(|part| part.get(..1)).collect();
        format!("{key} = {MARK}{short}{}\n", given.concat())
    };
    let text: String = catalogue().into_iter().map(message).collect();
    Words::of("art", &[&text]).unwrap()
}

/// The demo in two of its sizes.
fn garments() -> Vec<Garment> {
    let folder = tempfile::tempdir().unwrap();
    let file = style::write_demo(&folder.path().join("demo")).unwrap();
    let loaded = style::load(&file).unwrap();
    let sizes = [Size::new(32, 32), Size::new(28, 30)];
    sizes
        .iter()
        .map(|size| make(&loaded.style, &loaded.collection, *size))
        .collect()
}

/// What one reader is shown and told.
#[derive(Debug, PartialEq)]
struct Read {
    plates: Vec<Plate>,
    findings: Vec<String>,
}

impl Read {
    fn of(garments: &[Garment], words: &Words) -> Self {
        let alone = garments.iter().flat_map(|garment| &garment.findings);
        let together = findings_of_run(garments);
        let findings = alone
            .chain(&together)
            .map(|finding| finding.message(words))
            .collect();
        let first = garments.first().into_iter();
        Self {
            plates: first
                .flat_map(|garment| drawing::plates(garment, words))
                .collect(),
            findings,
        }
    }

    /// Everything that is written on the plates or stands beside them.
    fn said_of_plates(&self) -> Vec<String> {
        let of = |plate: &Plate| {
            let mut all: Vec<String> = plate.sheet.texts().map(|text| text.words.clone()).collect();
            all.extend([
                plate.title.clone(),
                plate.caption.clone(),
                plate.sheet.title.clone(),
            ]);
            all
        };
        self.plates.iter().flat_map(of).collect()
    }
}

/// The messages of the plates into which nothing is put and that have two words or more.
fn sentences() -> BTreeSet<String> {
    let file = english_files()
        .iter()
        .find(|file| file.contains("drawn-coin-title ="));
    let lines = file.into_iter().flat_map(|file| file.lines());
    lines
        .filter_map(|line| line.split_once(" = "))
        .map(|(_, said)| said.to_owned())
        .filter(|said| said.contains(' ') && !said.contains('{'))
        .collect()
}

#[test]
fn two_readers_at_once_are_each_shown_and_told_what_they_are_alone() {
    let (english, other) = (Words::english(), marked());
    let garments = garments();
    let alone = [english, &other].map(|words| Read::of(&garments, words));
    for _ in 0..ROUNDS {
        let begin = Barrier::new(2);
        let read = |words: &Words| {
            begin.wait();
            Read::of(&garments, words)
        };
        let together = thread::scope(|scope| {
            let readers = [english, &other].map(|words| scope.spawn(move || read(words)));
            readers.map(|reader| reader.join().unwrap())
        });
        assert!(
            together == alone,
            "what is read at once is not what is read alone"
        );
    }
    let [plain, strange] = alone;
    let drawn = |read: &Read| -> Vec<PlateId> { read.plates.iter().map(|p| p.id).collect() };
    assert!(drawn(&plain).len() > 12, "{:?}", drawn(&plain));
    assert_eq!(drawn(&plain), drawn(&strange));
    assert!(!plain.findings.is_empty());
    assert!(strange.findings.iter().all(|said| said.contains(MARK)));
    assert!(plain.findings.iter().all(|said| !said.contains(MARK)));

    let (plain, strange) = (plain.said_of_plates(), strange.said_of_plates());
    assert!(plain.iter().all(|said| !said.contains(MARK)));
    let sentences = sentences();
    assert!(sentences.len() > 60, "only {} sentences", sentences.len());
    let said = |all: &[String], sentence: &String| all.iter().any(|one| one.contains(sentence));
    let met = sentences.iter().filter(|sentence| said(&plain, sentence));
    assert!(met.count() > 30, "the plates say little of the catalogue");
    for sentence in &sentences {
        assert!(
            !said(&strange, sentence),
            "{sentence:?} stands among other words"
        );
    }
}
