//! What a workroom looks for and used to ask about is said where it is looked for.
#![allow(clippy::unwrap_used)]

use std::sync::OnceLock;

use papers::{Assembly, Pack, assemble};
use style::{Closing, Loaded};

struct Demo {
    loaded: Loaded,
    pack: Pack,
}

fn demo() -> &'static Demo {
    static DEMO: OnceLock<Demo> = OnceLock::new();
    DEMO.get_or_init(|| {
        let folder = tempfile::tempdir().unwrap();
        let path = style::write_demo(&folder.path().join("demo")).unwrap();
        let loaded = style::load(&path).unwrap();
        let pack = pack(&loaded);
        Demo { loaded, pack }
    })
}

fn pack(loaded: &Loaded) -> Pack {
    let base = loaded.style.sizes.base;
    let run = vec![sewing::make(&loaded.style, &loaded.collection, base)];
    assemble(loaded, &run, &Assembly::default()).unwrap()
}

fn changed(change: impl Fn(&mut Loaded)) -> Pack {
    let mut loaded = demo().loaded.clone();
    change(&mut loaded);
    pack(&loaded)
}

/// The style read anew with a part of its text replaced.
fn with(from: &str, to: &str) -> Pack {
    let folder = tempfile::tempdir().unwrap();
    let path = style::write_demo(&folder.path().join("demo")).unwrap();
    let text = std::fs::read_to_string(&path).unwrap();
    assert!(text.contains(from));
    std::fs::write(&path, text.replacen(from, to, 1)).unwrap();
    pack(&style::load(&path).unwrap())
}

fn cover<'a>(pack: &'a Pack, label: &str) -> &'a str {
    let mut facts = pack.cover.contact.iter().chain(&pack.cover.facts);
    &facts.find(|fact| fact.label == label).unwrap().value
}

#[test]
fn colour_and_dye_of_the_shell_stand_with_it() {
    let pack = &demo().pack;
    assert!(cover(pack, "Shell").contains("deep indigo"));
    let shell = &pack.materials[0].rows[0];
    assert!(shell.spec.contains("rope-dyed indigo warp, undyed weft"));
    assert_eq!(shell.supply, "Fenmill Weavers, article TL-475-LS");
}

#[test]
fn there_is_no_interlining_and_no_minute() {
    let pack = &demo().pack;
    let cloth = &pack.materials[0].rows;
    let none = cloth.iter().find(|row| row.name == "Interlining").unwrap();
    assert_eq!(none.spec, "none: not a part of this style");
    assert!(pack.order_note.contains("declare yours"));
}

/// One pocket hangs lower outside than the other: unsaid, a sewer takes it for a slip and straightens it.
#[test]
fn a_pocket_unlike_the_other_is_meant_so() {
    let pack = &demo().pack;
    let said = "The right back pocket differs from the left on purpose: \
                outer drop 6 mm after the wash (left 0 mm), its own stitching";
    assert!(pack.pieces_note.contains(said), "{}", pack.pieces_note);
    assert!(cover(pack, "Back pockets").contains(said));
    let alike = changed(|loaded| {
        let back = &mut loaded.style.pockets.back;
        back.right = back.left.clone();
    });
    assert!(!alike.pieces_note.contains("on purpose"));
    assert_eq!(cover(&alike, "Back pockets"), "Upper half lined");
    let raw = changed(|loaded| {
        loaded.style.wash.as_mut().unwrap().finish = style::WashFinish::Raw;
    });
    assert!(raw.pieces_note.contains("outer drop 6 mm unwashed"));
}

/// The bag is cut for the shell's 8 % and loses 3 % itself: 0.97 / 0.92 is 1.054; across 0.97 / 0.96 is 1.010.
#[test]
fn pocketing_that_loses_less_hangs_slack() {
    let facts = |pack: &Pack, cloth: usize| -> Vec<String> {
        let facts = &pack.cutting.cloths[cloth].facts;
        facts
            .iter()
            .map(|fact| format!("{}: {}", fact.label, fact.value))
            .collect()
    };
    let pack = &demo().pack;
    let bag = facts(pack, 1);
    assert!(
        bag.iter()
            .any(|fact| fact.starts_with("Slack after the wash: 5.4 % warp, 1 % weft")),
        "{bag:?}"
    );
    assert!(facts(pack, 0).iter().all(|fact| !fact.starts_with("Slack")));
    assert!(
        facts(pack, 0).contains(&"Cut for a shrinkage of: 8 % warp, 4 % weft (stated)".to_owned())
    );
    let measured = changed(|loaded| {
        let shell = loaded.collection.cloths.get_mut("tideline-14").unwrap();
        shell.warp_shrinkage = None;
    });
    let shell = facts(&measured, 0);
    assert!(
        shell
            .iter()
            .any(|fact| fact.ends_with("(measured in its wash test)")),
        "{shell:?}"
    );
}

#[test]
fn how_the_cloth_lies_on_the_table_is_said() {
    let note = &demo().pack.cutting.note;
    for words in [
        "face up",
        "turned head to tail",
        "none is turned over",
        "face to face",
    ] {
        assert!(note.contains(words), "{words}: {note}");
    }
    for lay in &demo().pack.cutting.lays {
        assert!(lay.caption.contains("one ply, face up"), "{}", lay.caption);
    }
}

/// Whoever sews a button fly is told nothing of zips.
#[test]
fn a_pack_speaks_of_what_closes_its_fly() {
    let says_zip = |pack: &Pack| {
        let mut value = serde_json::to_value(pack).unwrap();
        // Findings are the rules' own words, and drawings have their tests.
        value.as_object_mut().unwrap().remove("findings");
        let mut texts = Vec::new();
        words(&value, &mut texts);
        texts
            .into_iter()
            .find(|text| text.to_lowercase().contains("zip"))
    };
    assert_eq!(says_zip(&demo().pack), None);
    let zip = changed(|loaded| {
        let trims = &mut loaded.collection.trims;
        let mut zip = trims["rivet-9"].clone();
        zip.kind = style::TrimKind::Zip;
        zip.length = Some(trade::Length::cm(14.0));
        trims.insert("zip".to_owned(), zip);
        let fly = &mut loaded.style.fly;
        (fly.closing, fly.zip, fly.button) = (Closing::Zip, Some("zip".to_owned()), None);
    });
    assert!(says_zip(&zip).is_some());
    let headings: Vec<&str> = zip.materials.iter().map(|it| it.heading.as_str()).collect();
    assert!(
        headings.contains(&"Buttons, rivets and zip"),
        "{headings:?}"
    );
}

fn words(value: &serde_json::Value, out: &mut Vec<String>) {
    match value {
        serde_json::Value::String(text) => out.push(text.clone()),
        serde_json::Value::Array(items) => items.iter().for_each(|item| words(item, out)),
        serde_json::Value::Object(fields) => {
            let told = fields.iter().filter(|(name, _)| *name != "$svg");
            told.for_each(|(_, field)| words(field, out));
        }
        _ => {}
    }
}

/// What is sewn on is folded as the list of materials says.
#[test]
fn a_label_is_folded_alike_on_every_page() {
    let pack = &demo().pack;
    let labels = pack
        .seams
        .iter()
        .find(|seam| seam.name == "Labels sewn on")
        .unwrap();
    assert!(
        !labels.lies.contains("its edges as they are"),
        "{}",
        labels.lies
    );
    let mut materials = pack.materials.iter().flat_map(|group| &group.rows);
    let fold = "both ends turned under";
    assert!(labels.lies.contains(&format!("Main label: {fold}")));
    assert!(
        materials
            .find(|row| row.name == "Main label")
            .unwrap()
            .spec
            .contains(fold)
    );
}

#[test]
fn a_table_of_all_sizes_is_headed_so() {
    let words = &demo().pack.words;
    assert_eq!(words.before, "size 32x32 · figures before the wash");
    assert_eq!(words.before_all, "all sizes · figures before the wash");
    assert_eq!(words.after_all, "all sizes · figures after the wash");
    let raw = changed(|loaded| {
        loaded.style.wash.as_mut().unwrap().finish = style::WashFinish::Raw;
    });
    assert_eq!(
        raw.words.after_all,
        "all sizes · figures of the unwashed pair"
    );
}

/// What a chart does not state is not passed off as the style's.
#[test]
fn a_chart_says_what_its_figures_rest_on() {
    let note = &demo().pack.chart.note;
    assert!(
        note.contains("Every measure is stated by the style."),
        "{note}"
    );
    assert!(
        note.contains("Tolerances are stated by the style;"),
        "{note}"
    );
    let without = |from: &str, to: &str| with(from, to).chart.note;
    let hem = without(
        "value = \"16 1/2 in\"\ngrade = \"1/4 in\"\ntolerance = \"0.65 cm\"",
        "value = \"16 1/2 in\"",
    );
    assert!(
        hem.contains("but for these, which have the usual ones (common practice): hem."),
        "{hem}"
    );
    let loops = without(
        "[chart.loop_length]\nvalue = \"5.7 cm\"\ntolerance = \"0.3 cm\"\n",
        "",
    );
    assert!(
        loops.contains("for which the usual figure stands (common practice): belt loop, length."),
        "{loops}"
    );
    let outseam = "[chart.outseam]\nvalue = \"109.2 cm\"                # to the top of the band\ngrade = \"1/8 in\"\nper_length = \"1 in\"\ntolerance = \"1.3 cm\"\n";
    let drafted = without(outseam, "");
    assert!(
        drafted.contains("which follow from the others: outseam."),
        "{drafted}"
    );
    let before = demo().pack.chart_in_other_state.as_ref().unwrap();
    assert!(
        !before.note.contains("Every measure is stated"),
        "{}",
        before.note
    );
}

/// A table without a word on where its figures come from is believed more, or less, than it deserves.
#[test]
fn every_table_says_what_it_rests_on() {
    let pack = &demo().pack;
    let rests_on = ["stated", "reckoned", "practice", "worked out", "counted"];
    let other = pack.chart_in_other_state.as_ref().unwrap();
    let notes = [
        &pack.materials_note,
        &pack.yarn.note,
        &pack.chart.note,
        &other.note,
        &pack.pieces_note,
        &pack.cutting.note,
        &pack.order_note,
        &pack.construction_note,
        &pack.cutting.grades[0].title,
    ];
    for note in notes
        .into_iter()
        .chain(pack.by_size.iter().map(|table| &table.note))
    {
        let told = rests_on
            .iter()
            .any(|words| note.to_lowercase().contains(words));
        assert!(told, "{note}");
    }
    assert!(pack.findings.iter().all(|found| !found.basis.is_empty()));
    let checks = pack.checks.groups.iter().flat_map(|group| &group.rows);
    assert!(checks.into_iter().all(|row| !row.basis.is_empty()));
}

/// The level is put in by the words themselves, so that another language can say it its own way.
#[test]
fn a_girth_is_taken_at_its_level() {
    let how = |pack: &Pack, name: &str| {
        let row = pack
            .chart
            .rows
            .iter()
            .find(|row| row.name.starts_with(name));
        row.unwrap().how.clone()
    };
    let pack = &demo().pack;
    assert!(how(pack, "Seat").starts_with("At 8 cm above the crotch: "));
    assert!(how(pack, "Knee").starts_with("At 35.56 cm below the crotch: "));
    let other = pack.chart_in_other_state.as_ref().unwrap();
    let seat = other
        .rows
        .iter()
        .find(|row| row.name.starts_with("Seat"))
        .unwrap();
    assert!(
        seat.how.starts_with("At 8.7 cm above the crotch: "),
        "{}",
        seat.how
    );
}
