//! What a pack leaves open: every "not stated" of its pages stands in its list, and nothing else.
#![allow(clippy::unwrap_used)]

use std::sync::OnceLock;

use papers::{Ask, Assembly, Pack, Who, assemble};
use serde_json::Value;
use style::{Loaded, SetAfter, Wash, WashFinish, WashedBy};

fn demo() -> &'static Loaded {
    static DEMO: OnceLock<Loaded> = OnceLock::new();
    DEMO.get_or_init(|| {
        let folder = tempfile::tempdir().unwrap();
        let path = style::write_demo(&folder.path().join("demo")).unwrap();
        style::load(&path).unwrap()
    })
}

/// The pack of a style in its base size.
fn pack(loaded: &Loaded) -> Pack {
    let base = loaded.style.sizes.base;
    let run = vec![sewing::make(&loaded.style, &loaded.collection, base)];
    assemble(loaded, &run, &Assembly::default()).unwrap()
}

fn changed(change: impl Fn(&mut Loaded)) -> Pack {
    let mut loaded = demo().clone();
    change(&mut loaded);
    pack(&loaded)
}

/// A collection that says as little as it may, as a new label's.
fn silent() -> Pack {
    changed(|loaded| {
        let collection = &mut loaded.collection;
        collection.contact.clear();
        loaded.style.style.workroom.clear();
        for cloth in collection.cloths.values_mut() {
            cloth.supply = style::Supply::default();
            cloth.colour_name.clear();
            cloth.dye.clear();
            (cloth.warp_shrinkage, cloth.weft_shrinkage) = (None, None);
            cloth.wash_test.clear();
        }
        for yarn in collection.yarns.values_mut() {
            yarn.supply = style::Supply::default();
            yarn.colour_name.clear();
        }
        for trim in collection.trims.values_mut() {
            trim.supply = style::Supply::default();
            (trim.tanning, trim.thickness) = (None, None);
            trim.text.clear();
            "plated steel, or leather".clone_into(&mut trim.material);
        }
        loaded.style.patch.as_mut().unwrap().art = None;
        loaded.style.wash = None;
        for label in &mut loaded.style.labels {
            label.purpose.clear();
            label.text = None;
        }
    })
}

/// A style that states all it can of what the demo leaves open.
fn telling() -> Pack {
    changed(|loaded| {
        let told = style::Supply {
            supplier: "Fenmill".to_owned(),
            article: "12".to_owned(),
        };
        let collection = &mut loaded.collection;
        for room in collection.workrooms.values_mut() {
            "Ines Moura".clone_into(&mut room.contact);
        }
        for cloth in collection.cloths.values_mut() {
            cloth.supply = told.clone();
            "ecru".clone_into(&mut cloth.colour_name);
        }
        for yarn in collection.yarns.values_mut() {
            yarn.supply = told.clone();
            "7".clone_into(&mut yarn.shade);
        }
        for trim in collection.trims.values_mut() {
            trim.supply = told.clone();
        }
    })
}

/// Every text of the pack that is printed as words, but for the list itself, the questions by which it was made, and
/// what the checks found, which is a list of its own.
fn texts(pack: &Pack) -> Vec<String> {
    let mut value = serde_json::to_value(pack).unwrap();
    let parts = value.as_object_mut().unwrap();
    for part in ["open", "findings"] {
        parts.remove(part).unwrap();
    }
    let mut out = Vec::new();
    gather(&value, &mut out);
    out
}

fn gather(value: &Value, out: &mut Vec<String>) {
    match value {
        Value::String(text) => out.push(text.clone()),
        Value::Array(items) => items.iter().for_each(|item| gather(item, out)),
        Value::Object(fields) => {
            let told = fields
                .iter()
                .filter(|(name, _)| *name != "$svg" && !name.ends_with("asks"));
            told.for_each(|(_, field)| gather(field, out));
        }
        _ => {}
    }
}

/// The questions that stand at their places.
fn asks(pack: &Pack) -> Vec<Ask> {
    let facts = pack.cover.contact.iter().chain(&pack.cover.facts);
    let facts = facts.chain(pack.cutting.cloths.iter().flat_map(|cloth| &cloth.facts));
    let mut out: Vec<Ask> = facts.flat_map(|fact| fact.asks.clone()).collect();
    out.extend(pack.cautions.iter().flat_map(|it| it.asks.clone()));
    let materials = pack.materials.iter().flat_map(|group| &group.rows);
    out.extend(materials.flat_map(|it| it.asks.clone()));
    out.extend(pack.cutting.asks.clone());
    out.extend(pack.order_asks.clone());
    let operations = pack.order.iter().flat_map(|stage| &stage.operations);
    out.extend(operations.flat_map(|it| it.asks.clone()));
    let checks = pack.checks.groups.iter().flat_map(|group| &group.rows);
    out.extend(checks.flat_map(|it| it.asks.clone()));
    out
}

fn listed(pack: &Pack) -> Vec<&papers::OpenRow> {
    pack.open
        .groups
        .iter()
        .flat_map(|group| &group.rows)
        .collect()
}

/// Words by which a page says that something is missing.
const OPEN: [&str; 4] = ["not stated", "says is open", "is open:", ": ask"];

#[test]
fn whatever_a_page_says_is_open_is_a_question_of_the_list() {
    for pack in [pack(demo()), silent(), telling()] {
        let asks = asks(&pack);
        for text in texts(&pack) {
            let mut rest = text.clone();
            for ask in &asks {
                rest = rest.replace(&ask.said, "");
            }
            // The pack is not the order, and the patterns come beside it: both are told whatever the style states.
            let rest = rest.to_lowercase();
            for words in OPEN {
                assert!(!rest.contains(words), "{words} in {text:?} is in no list");
            }
        }
        assert_eq!(asks.len(), listed(&pack).len());
    }
}

/// The list knows what to mind that asks by the end of its message's name.
#[test]
fn what_to_mind_that_asks_is_named_so() {
    let catalogue = include_str!("../../words/languages/en/operations-mind.ftl");
    let mut asking = 0;
    for line in catalogue.lines().filter(|line| line.starts_with("mind-")) {
        let (name, said) = line.split_once(" = ").unwrap();
        let open = said.contains("not stated") || said.split([' ', ':', ',']).any(|w| w == "ask");
        assert_eq!(open, name.ends_with("-ask"), "{line}");
        asking += u32::from(open);
    }
    assert!(asking >= 2);
}

/// What is said at a place is printed at that place.
#[test]
fn every_question_is_said_where_it_stands() {
    let pack = silent();
    for fact in pack.cover.contact.iter().chain(&pack.cover.facts) {
        assert!(fact.asks.iter().all(|ask| fact.value.contains(&ask.said)));
    }
    assert!(
        pack.cutting
            .asks
            .iter()
            .all(|ask| pack.cutting.note.contains(&ask.said))
    );
    assert!(!pack.order_asks.is_empty());
    for ask in &pack.order_asks {
        assert!(pack.order_note.contains(&ask.said));
    }
    for row in pack.order.iter().flat_map(|stage| &stage.operations) {
        let said = format!("{} {}", row.ask, row.mind.join(" "));
        assert!(
            row.asks.iter().all(|ask| said.contains(&ask.said)),
            "{said}"
        );
    }
}

#[test]
fn the_list_is_numbered_and_every_line_has_its_place() {
    let pack = pack(demo());
    let rows = listed(&pack);
    assert!(rows.len() > 40, "{}", rows.len());
    for (at, row) in rows.iter().enumerate() {
        assert_eq!(row.number, (at + 1).to_string());
        assert!(!row.what.is_empty() && !row.place.is_empty(), "{row:?}");
    }
    let mut told: Vec<_> = rows.iter().map(|row| (&row.what, &row.place)).collect();
    told.sort_unstable();
    let all = told.len();
    told.dedup();
    assert_eq!(told.len(), all, "a question stands twice");
    let place = |what: &str| {
        let row = rows.iter().find(|row| row.what.contains(what));
        row.unwrap_or_else(|| panic!("{what} is not asked"))
            .place
            .as_str()
    };
    assert!(place("row that joins the shield").starts_with("Sewing order, operation "));
    assert_eq!(place("Rope 60 – colour number"), "Materials");
    assert_eq!(place("Sample size"), "Cover");
    assert_eq!(place("which laundry"), "To mind");
    assert_eq!(
        place("broken yarn"),
        "Inspection and packing: On the line, before the wash"
    );
    assert_eq!(place("rests open"), "Cutting");
}

/// Whoever is asked finds the question under their work.
#[test]
fn every_line_of_work_has_its_questions() {
    let asks = asks(&pack(demo()));
    for who in Who::ALL {
        assert!(asks.iter().any(|ask| ask.who == who), "{who:?}");
    }
    let silent = self::asks(&silent());
    let said = |words: &str| silent.iter().filter(|ask| ask.said.contains(words)).count();
    assert!(
        said("Tanning") == 1 && said("free of nickel") == 3,
        "{silent:#?}"
    );
    assert_eq!(said("What it says"), 4);
    assert_eq!(said("What the first wash takes of it"), 3);
    assert_eq!(said("No label of this style is stated to tell"), 3);
}

#[test]
fn what_is_stated_is_asked_no_more() {
    let (demo, telling) = (pack(demo()), telling());
    assert!(
        telling.materials[1].rows[0]
            .supply
            .contains("Fenmill, article 12, colour number 7")
    );
    let bought = telling.materials.iter().flat_map(|group| &group.rows);
    let open: Vec<&str> = bought
        .flat_map(|row| &row.asks)
        .map(|ask| ask.said.as_str())
        .collect();
    // How a label is folded within its seam no file states.
    assert!(
        open.iter().all(|said| said.contains("cut size")),
        "{open:?}"
    );
    assert!(listed(&telling).len() < listed(&demo).len());
}

/// The wash of a style is stated or asked for, whole or in part.
#[test]
fn the_gaps_of_a_wash_are_asked_for() {
    let wash = |steps: bool, by| {
        changed(|loaded| {
            let known = loaded.style.wash.clone().unwrap();
            loaded.style.wash = Some(Wash {
                by,
                finish: WashFinish::Washed,
                set_after: vec![SetAfter::Patch],
                steps: if steps { known.steps } else { Vec::new() },
            });
        })
    };
    let asked = |pack: &Pack| -> Vec<String> {
        let asks = asks(pack).into_iter().filter(|ask| ask.who == Who::Laundry);
        asks.map(|ask| ask.said).collect()
    };
    assert_eq!(asked(&wash(true, WashedBy::Workroom)), Vec::<String>::new());
    assert_eq!(
        asked(&wash(true, WashedBy::Laundry)),
        ["Which laundry: not stated, ask."]
    );
    let unwritten = asked(&wash(false, WashedBy::Workroom));
    assert_eq!(
        unwritten,
        [
            "The recipe: not stated, ask.",
            "The recipe is not stated: ask"
        ]
    );
}

/// A drawing says it too: then its operation or its material asks.
#[test]
fn what_a_drawing_says_is_not_stated_is_in_the_list() {
    let pack = changed(|loaded| {
        loaded.style.seams.shift_remove(&style::SeamId::BandJoin);
        loaded.collection.trims.get_mut("patch").unwrap().thickness = None;
    });
    let all = serde_json::to_string(&pack).unwrap();
    assert!(all.contains("not stated"));
    let what: Vec<&str> = listed(&pack).iter().map(|row| row.what.as_str()).collect();
    assert!(what.contains(&"Saltmarsh patch – thickness"), "{what:#?}");
    assert!(
        what.iter()
            .any(|what| what.starts_with("Waistband: join its halves")),
        "{what:#?}"
    );
}
