//! Two people read the same style at the same time, each in a language of their own.

use std::collections::BTreeSet;
use std::sync::Barrier;
use std::thread;

use drawing::{Plate, PlateId};
use sewing::work::{Operation, sewing_order};
use sewing::yarn::consumption;
use sewing::{Garment, describe, findings_of_run, make};
use style::{
    BandMethod, Closing, Construction, FlyTopstitch, HemEnds, HemJoin, Lining, Loaded,
    PatchThrough, RowEnding, RowSpec, SeamId, Size, StyleDoc, WashedBy, known,
};
use trade::{Length, StitchDensity, StitchType};
use words::{Said, Words, catalogue, english_files};

/// Stands in front of every message of the made-up language.
pub(crate) const MARK: char = '§';
const ROUNDS: usize = 3;

/// A language in which every message is marked and is its own name, with what is put in.
pub(crate) fn marked() -> Words {
    let message = |(key, given): (String, Vec<String>)| {
        let given: Vec<String> = given.iter().map(|name| format!(" {{ ${name} }}")).collect();
        let short: String = key.split('-').filter_map(|part| part.get(..1)).collect();
        format!("{key} = {MARK}{short}{}\n", given.concat())
    };
    let text: String = catalogue().into_iter().map(message).collect();
    Words::of("art", &[&text]).unwrap()
}

fn demo() -> Loaded {
    let folder = tempfile::tempdir().unwrap();
    let file = style::write_demo(&folder.path().join("demo")).unwrap();
    style::load(&file).unwrap()
}

/// The demo in two of its sizes.
fn garments() -> Vec<Garment> {
    let loaded = demo();
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

fn lockstitched(offset_mm: f64) -> RowSpec {
    RowSpec {
        stitch: StitchType::S301,
        density: StitchDensity::per_inch(8.0),
        yarn: "rope-105".to_owned(),
        under: "rope-60".to_owned(),
        offset: Length::mm(offset_mm),
        begin: None,
        end: None,
    }
}

/// The demo with each seam in each of its constructions, and closed, banded, hemmed and riveted otherwise.
fn garments_of_every_kind() -> Vec<Garment> {
    let demo = demo();
    let sewn = |change: &dyn Fn(&mut StyleDoc)| {
        let mut style = demo.style.clone();
        // The maker's own words are in no language of ours.
        let steps = style.wash.iter_mut().flat_map(|wash| &mut wash.steps);
        steps.for_each(|step| step.does = "RINSE".to_owned());
        change(&mut style);
        make(&style, &demo.collection, Size::new(32, 32))
    };
    let mut all = vec![
        sewn(&|_| ()),
        sewn(&|style| {
            let fly = &mut style.fly;
            (fly.closing, fly.buttons, fly.button) = (Closing::Zip, 0, None);
            fly.zip = Some("zip-16".to_owned());
            style.rivets = None;
            style.hem.join = HemJoin::BackOfLeg;
            style.hem.ends = HemEnds::Overlapped;
        }),
        sewn(&|style| {
            style.fly.topstitch = FlyTopstitch::AfterRise;
            style.pockets.back.left.lining = Lining::Full;
        }),
        sewn(&|style| {
            let fly = &mut style.fly;
            (fly.closing, fly.buttons, fly.button) = (Closing::Zip, 0, None);
            fly.zip = Some("zip-16".to_owned());
            fly.topstitch = FlyTopstitch::AfterRise;
        }),
        sewn(&|style| {
            style.band.method = BandMethod::TwoRow;
            let wash = style.wash.as_mut().unwrap();
            wash.by = WashedBy::Workroom;
            wash.steps.clear();
            style.hem.join = HemJoin::Outseam;
            style.shape.band_ease = Length::mm(12.0);
            style.loops.count = 1;
            style.labels.truncate(2);
            let seams = &mut style.seams;
            seams.retain(|seam, _| *seam != SeamId::LabelSet && *seam != SeamId::PatchSet);
        }),
        sewn(&|style| {
            style.band.method = BandMethod::TwoRow;
            let band = style.seams.get_mut(&SeamId::Band).unwrap();
            band.construction = Some(Construction::BandTurned);
            style.shape.inseam_stretch = Length::mm(6.0);
            let mouth = style.seams.get_mut(&SeamId::Mouth).unwrap();
            let rows = mouth.rows.iter_mut().flatten();
            rows.for_each(|row| row.end = Some(RowEnding::TiedByHand));
        }),
        sewn(&|style| {
            style.rivets.as_mut().unwrap().back_hidden = true;
            style.bartacks.mouth = Some(true);
            style.patch.as_mut().unwrap().through = PatchThrough::OuterPly;
            let facing = style.seams.get_mut(&SeamId::FacingSet).unwrap();
            facing.construction = Some(Construction::LaidOn);
            let neatened = RowSpec {
                stitch: StitchType::S504,
                ..lockstitched(0.0)
            };
            facing.rows = Some(vec![neatened, lockstitched(2.0)]);
        }),
    ];
    for seam in known::seams() {
        for construction in seam.constructions {
            // As the demo's rows are, and with a plain row on the seam line and one beside it.
            for plain in [false, true] {
                all.push(sewn(&|style| {
                    let spec = style.seams.get_mut(&seam.id).unwrap();
                    spec.construction = Some(*construction);
                    if plain {
                        spec.rows = Some([0.0, 8.0].map(lockstitched).to_vec());
                    }
                }));
            }
        }
    }
    all
}

/// Everything a sewing order says of its operations.
fn said_of_order(order: &[Operation], words: &Words) -> Vec<String> {
    let mut all = Vec::new();
    for operation in order {
        let stage = operation.stage.said().into();
        all.extend([operation.name.clone(), operation.machine.into(), stage]);
        all.extend(operation.mind.clone());
        all.extend(operation.gauge_words());
        all.extend(
            operation
                .not_stated
                .as_ref()
                .map(|asked| asked.what.clone()),
        );
        all.extend(operation.attachment.as_ref().map(|put| put.what.clone()));
        all.extend(operation.needles.iter().filter_map(|n| n.ends.clone()));
    }
    all.iter().map(|said| words.saying(said)).collect()
}

/// Everything a construction list and a yarn list say of the seams.
fn said_of_seams(garment: &Garment, words: &Words) -> Vec<String> {
    let mut all: Vec<Said> = Vec::new();
    for seam in &garment.seams {
        let told = describe(garment, seam);
        all.extend([told.joins.into(), told.machine, told.plies, told.lies]);
        all.extend(told.class.into_iter().chain(told.allowances));
        all.extend(told.gauges.into_iter().chain(told.ends).flatten());
    }
    all.extend(consumption(garment).unstated.into_iter().map(|u| u.what));
    all.iter().map(|said| words.saying(said)).collect()
}

/// Whether what is said has a word that is neither a name that was put in nor the mark of a message.
fn has_english(said: &str, names: &BTreeSet<&str>) -> bool {
    said.split_whitespace().any(|word| {
        let long = word.len() > "mm".len();
        long && word.chars().all(|c| c.is_ascii_lowercase()) && !names.contains(word)
    })
}

/// What is minded on a pattern or a cloth unlike the demo's: edges that lie unevenly along a selvedge, and edges that a
/// wash leaves unequal by more than a sewer sees, or that are allowed for alike where front and shield meet.
const OF_OTHER_PATTERNS: [&str; 3] = ["mind-join-uneven", "mind-ease-on", "mind-shield-join"];

#[test]
fn the_sewing_order_is_drawn_up_in_the_words_of_its_reader() {
    let (english, other) = (Words::english(), marked());
    let mut met = BTreeSet::new();
    for garment in garments_of_every_kind() {
        let order = sewing_order(&garment);
        let read = |words: &Words| {
            let mut all = said_of_order(&order, words);
            all.extend(said_of_seams(&garment, words));
            all
        };
        met.extend(order.iter().flat_map(|o| &o.mind).map(Said::key));
        let trims = &garment.collection.trims;
        let called = trims.values().flat_map(|trim| trim.name.split_whitespace());
        let names = trims.keys().map(String::as_str).chain(called).collect();
        let (plain, strange) = (read(english), read(&other));
        assert_eq!(plain.len(), strange.len());
        assert!(plain.len() > 300, "only {}", plain.len());
        for (plain, strange) in plain.iter().zip(&strange) {
            assert!(!plain.contains(MARK) && !plain.is_empty(), "{plain}");
            assert!(strange.starts_with(MARK), "{plain} is {strange}");
            assert!(!has_english(strange, &names), "{plain} is {strange}");
        }
    }
    let keys = catalogue().into_iter().map(|(key, _)| key);
    let missed: Vec<String> = keys
        .filter(|key| key.starts_with("mind-") && !met.contains(key.as_str()))
        .filter(|key| !OF_OTHER_PATTERNS.contains(&key.as_str()))
        .collect();
    assert!(missed.is_empty(), "no order says {missed:?}");
}
