//! The pack of the demo style, assembled from its garments and read back.
//!
//! Long because every test asks one filled pack, and filling one takes seconds.
#![allow(clippy::unwrap_used)]

use std::sync::OnceLock;

use papers::{Assembly, ChartValues, Pack, PdfOptions, Severity, assemble, pack_pdf};
use style::{Loaded, SeamId, Size};

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
        let run = sewing::make_run(&loaded.style, &loaded.collection);
        let pack = assemble(
            &loaded,
            &run,
            &Assembly {
                revision: 1,
                ..Assembly::default()
            },
        )
        .unwrap();
        Demo { loaded, pack }
    })
}

fn by_size<'a>(pack: &'a Pack, name: &str) -> &'a [String] {
    let row = pack
        .chart
        .rows
        .iter()
        .find(|row| row.name.starts_with(name))
        .unwrap();
    match &row.values {
        ChartValues::BySize(values) => values,
        ChartValues::ByLength(_) => panic!("{name} follows the length"),
    }
}

/// The file says waist 33 1/2 in at size 32 and 1 in for each size: 85.09 cm, 2.54 cm a step.
#[test]
fn the_chart_is_the_style_s_chart_to_the_millimetre() {
    let pack = &demo().pack;
    assert_eq!(
        pack.chart.sizes,
        ["28", "29", "30", "31", "32", "33", "34", "36", "38"]
    );
    assert_eq!(pack.chart.sample, Some(4));
    let waist = by_size(pack, "Waist");
    assert_eq!(waist[4], "85.1");
    assert_eq!(waist[0], "74.9");
    assert_eq!(waist[8], "100.3");
    // The fly stops growing above 34: 16.5 cm at 32, 1/8 in a step.
    let fly = by_size(pack, "Fly length");
    assert_eq!((fly[6].as_str(), fly[8].as_str()), ("17.1", "17.1"));
    let inseam = pack
        .chart
        .rows
        .iter()
        .find(|row| row.name == "Inseam")
        .unwrap();
    let ChartValues::ByLength(lines) = &inseam.values else {
        panic!("the inseam follows the length")
    };
    let lines: Vec<(&str, &str)> = lines
        .iter()
        .map(|line| (line.length.as_str(), line.values[0].as_str()))
        .collect();
    assert_eq!(lines, [("30", "76.2"), ("32", "81.3"), ("34", "86.4")]);
}

#[test]
fn every_measure_has_the_number_of_its_diagram_and_says_how() {
    let pack = &demo().pack;
    for row in &pack.chart.rows {
        let drawn = pack.diagrams.iter().any(|_| !row.number.is_empty());
        assert!(
            drawn && !row.how.is_empty() && !row.tolerance.is_empty(),
            "{}",
            row.name
        );
        assert!(!row.how.contains("stated"), "{}", row.how);
    }
    let numbers: Vec<usize> = pack
        .chart
        .rows
        .iter()
        .map(|r| r.number.parse().unwrap())
        .collect();
    assert!(numbers.is_sorted(), "{numbers:?}");
}

/// A workroom has nobody to ask: nothing about a row may be left open.
#[test]
fn every_row_is_told_whole() {
    let Demo { loaded, pack } = demo();
    assert_eq!(pack.seams.len(), loaded.style.seams.len());
    let mut rows = 0;
    for seam in &pack.seams {
        for (what, text) in [
            ("joins", &seam.joins),
            ("class", &seam.class),
            ("machine", &seam.machine),
            ("plies", &seam.plies),
            ("lies", &seam.lies),
        ] {
            assert!(!text.is_empty(), "{}: {what}", seam.name);
        }
        assert!(seam.class.starts_with("ISO 4916 "), "{}", seam.name);
        assert!(seam.section.is_some(), "{}", seam.name);
        assert!(!seam.rows.is_empty(), "{}", seam.name);
        for row in &seam.rows {
            rows += 1;
            for (what, text) in [
                ("number", &row.row),
                ("stitch", &row.stitch),
                ("density", &row.density),
                ("needle yarn", &row.needle.name),
                ("size and colour of the needle yarn", &row.needle.what),
                ("under yarn", &row.under.name),
                ("size and colour of the under yarn", &row.under.what),
                ("offset", &row.offset),
                ("gauge", &row.gauge),
                ("ends", &row.ends),
            ] {
                assert!(!text.is_empty(), "{} {}: {what}", seam.name, row.row);
            }
            let coloured = row.needle.colour.is_some() && row.under.colour.is_some();
            assert!(coloured, "{} {}", seam.name, row.row);
            assert!(row.offset.contains("the "), "{}", row.offset);
        }
    }
    let stated: usize = loaded.style.all_seams().map(|seam| seam.rows.len()).sum();
    assert_eq!(rows, stated);
}

fn row<'a>(pack: &'a Pack, seam: &str, number: usize) -> &'a papers::StitchRowText {
    let seam = pack.seams.iter().find(|s| s.name == seam).unwrap();
    &seam.rows[number - 1]
}

/// Offsets of 1.6 and 8 mm in the file are 6.4 mm apart; the band's upper row is 2 mm from its edges.
#[test]
fn a_row_is_told_as_the_style_states_it() {
    let pack = &demo().pack;
    let inseam = row(pack, "Inseam", 2);
    assert_eq!(inseam.stitch, "401 two-thread chainstitch");
    assert_eq!(inseam.density, "3.15 /cm, 8 /in");
    assert_eq!(inseam.offset, "8 mm from the visible fold");
    assert_eq!(inseam.gauge, "two needles, 6.4 mm");
    assert_eq!(inseam.needle.what, "tex 80, night blue");
    let band = row(pack, "Waistband set on", 2);
    assert_eq!(band.offset, "2 mm from the band's ends and top edge");
    let hem = row(pack, "Hem", 1);
    assert!(hem.ends.contains("tied by hand"), "{}", hem.ends);
}

#[test]
fn the_sewing_order_sews_every_seam_and_says_with_what() {
    let pack = &demo().pack;
    let operations: Vec<_> = pack.order.iter().flat_map(|s| &s.operations).collect();
    let numbers: Vec<usize> = operations
        .iter()
        .map(|o| o.number.parse().unwrap())
        .collect();
    assert!(
        numbers.iter().copied().eq(1..=operations.len()),
        "{numbers:?}"
    );
    for operation in &operations {
        assert!(!operation.name.is_empty() && !operation.machine.is_empty());
        for stitch in &operation.stitches {
            assert!(!stitch.needle.name.is_empty() && !stitch.under.name.is_empty());
            assert!(!operation.needles.is_empty(), "{}", operation.name);
            assert!(!operation.ends.is_empty(), "{}", operation.name);
        }
    }
    let named = |words: &str| {
        operations
            .iter()
            .position(|o| o.name.contains(words))
            .unwrap()
    };
    // Rivets of the coin pocket have to be in before the bag lies behind it.
    let coin = operations
        .iter()
        .position(|o| o.machine == "rivet press" && o.pieces.contains("coin"))
        .unwrap();
    assert!(coin < named("Hip pocket facings: set"));
    assert!(named("Inseams: fell") < named("Hems: sew"));
}

/// A reader of the order has the section of a seam before him when he comes to it, and nowhere a second one.
#[test]
fn every_seam_is_shown_once_with_the_operation_that_sews_it() {
    let pack = &demo().pack;
    let operations = || pack.order.iter().flat_map(|s| &s.operations);
    let mut shown: Vec<usize> = operations().flat_map(|o| o.seams.clone()).collect();
    shown.sort_unstable();
    assert!(shown.iter().copied().eq(0..pack.seams.len()), "{shown:?}");
    let fell = operations()
        .find(|o| o.name.contains("Inseams: fell"))
        .unwrap();
    assert_eq!(pack.seams[fell.seams[0]].name, "Inseam");
    // Rows 1 and 2 of the front rise come after the row that joins it, with which it is shown.
    let joined = operations()
        .find(|o| o.name.contains("Front rise: join"))
        .unwrap();
    assert_eq!(pack.seams[joined.seams[0]].name, "Front rise seam");
    let later = operations().filter(|o| {
        o.section_at
            .contains(&format!("operation {}.", joined.number))
    });
    assert!(later.count() >= 2);
    assert!(operations().all(|o| !o.basis.is_empty()));
}

#[test]
fn what_differs_by_size_is_told_for_every_size() {
    let pack = &demo().pack;
    let Demo { loaded, .. } = demo();
    let sizes = &loaded.style.sizes;
    let yarn = pack
        .by_size
        .iter()
        .find(|t| t.title.contains("yarn"))
        .unwrap();
    for table in &pack.by_size {
        assert_eq!(
            table.sizes.len(),
            sizes.waists.len() + sizes.lengths.len() - 1
        );
        for row in &table.rows {
            assert_eq!(row.values.len(), table.sizes.len(), "{}", row.what);
            assert!(row.values.iter().all(|v| !v.is_empty()), "{}", row.what);
        }
    }
    // The column of the drawn size is what the yarn list says of it, and a larger pair takes more.
    let base = yarn.sizes.iter().position(|s| s == "32x32").unwrap();
    for (row, need) in yarn.rows.iter().zip(&pack.yarn.yarns) {
        assert_eq!(
            (&row.what, &row.values[base]),
            (&need.yarn.name, &need.with_waste)
        );
    }
    let metres = |text: &str| text.trim_end_matches(" m").parse::<f64>().unwrap();
    let total = |at: usize| -> f64 { yarn.rows.iter().map(|r| metres(&r.values[at])).sum() };
    assert!(total(0) < total(base) && total(base) < total(sizes.waists.len() - 1));
    // Cloth in the drawn size is what its lay takes.
    let cloth = pack
        .by_size
        .iter()
        .find(|t| t.title.contains("Cloth"))
        .unwrap();
    let laid = cloth
        .rows
        .iter()
        .find(|r| r.what.contains("Tideline") && r.what.contains("laid"))
        .unwrap();
    let facts = &pack.cutting.cloths[0].facts;
    let taken = facts.iter().find(|f| f.label == "One pair takes").unwrap();
    assert!(
        (metres(&laid.values[base]) - metres(&taken.value)).abs() < 0.02,
        "{laid:?}"
    );
    // Four buttons on a fly that stops growing above 34.
    let marks = pack
        .by_size
        .iter()
        .find(|t| t.title.contains("marked"))
        .unwrap();
    assert_ne!(marks.rows[0].values[0], marks.rows[0].values[6]);
    assert_eq!(marks.rows[0].values[6], marks.rows[0].values[8]);
}

/// Nobody guesses a limit or a way of packing that no file states.
#[test]
fn what_no_file_states_is_asked_for() {
    let pack = &demo().pack;
    let packing = pack.checks.groups.last().unwrap();
    assert!(packing.rows.len() > 4);
    for row in &packing.rows {
        assert_eq!(
            (row.how.as_str(), row.asks[0].said.as_str()),
            ("", "Not stated: ask.")
        );
    }
    let rows = || pack.checks.groups.iter().flat_map(|g| &g.rows);
    assert!(rows().all(|row| !row.basis.is_empty()));
    let shrinkage = rows().find(|row| row.what == "Shrinkage").unwrap();
    assert!(
        shrinkage.how.contains("8 % along the warp"),
        "{}",
        shrinkage.how
    );
    let raw = changed(|loaded| loaded.style.wash.as_mut().unwrap().finish = style::WashFinish::Raw);
    let mut of_raw = raw.checks.groups.iter().flat_map(|g| &g.rows);
    assert!(of_raw.all(|row| row.what != "Shrinkage"));
    assert_eq!(raw.words.before, raw.words.after);
    assert_ne!(pack.words.before, pack.words.after);
    let asked = pack
        .cover
        .contact
        .iter()
        .filter(|f| f.value.contains("Not stated: ask"));
    assert!(asked.count() >= 1 && pack.materials_note.contains("asked before it is bought"));
    let address = pack
        .cover
        .contact
        .iter()
        .find(|f| f.label == "Questions to");
    assert!(address.unwrap().value.contains("@saltmarsh.example"));
}

/// Every text of a value but those of drawings.
fn texts(value: &serde_json::Value, out: &mut Vec<String>) {
    match value {
        serde_json::Value::String(text) => out.push(text.clone()),
        serde_json::Value::Array(items) => items.iter().for_each(|item| texts(item, out)),
        serde_json::Value::Object(fields) => {
            let told = fields.iter().filter(|(name, _)| *name != "$svg");
            told.for_each(|(_, field)| texts(field, out));
        }
        _ => {}
    }
}

/// A workroom knows cloths, yarns and trims by their names; the keys of files mean nothing to it.
#[test]
fn no_key_of_the_collection_is_printed_to_the_workroom() {
    let Demo { loaded, pack } = demo();
    let mut workroom = pack.clone();
    for found in &mut workroom.findings {
        found.code = String::new();
    }
    let collection = &loaded.collection;
    let keys = collection
        .cloths
        .keys()
        .chain(collection.yarns.keys())
        .chain(collection.trims.keys());
    let mut words = Vec::new();
    texts(&serde_json::to_value(&workroom).unwrap(), &mut words);
    let plain: Vec<&str> = pack.findings.iter().map(|f| f.about.as_str()).collect();
    assert!(
        plain.iter().any(|about| about.contains("Night 40")),
        "{plain:?}"
    );
    for key in keys.filter(|key| key.contains('-')) {
        for part in &words {
            assert!(!part.contains(key.as_str()), "{key} in {part}");
        }
    }
}

#[test]
fn yarn_adds_up_and_every_figure_names_its_basis() {
    let yarn = &demo().pack.yarn;
    let metres = |text: &str| -> f64 {
        match text.strip_suffix(" m") {
            Some(figure) => figure.parse().unwrap(),
            None => 0.0,
        }
    };
    let total = yarn.total.as_ref().unwrap();
    let by_yarn: f64 = yarn.yarns.iter().map(|y| metres(&y.net)).sum();
    let by_seam: f64 = yarn.seams.iter().map(|s| metres(&s.net)).sum();
    // Each figure is rounded to a tenth.
    let off = 0.05 * (yarn.seams.len() + 1) as f64;
    assert!((by_yarn - metres(&total.net)).abs() < off);
    assert!((by_seam - metres(&total.net)).abs() < off);
    // 15 % for waste; a hundred pairs take a hundred times as much.
    let with_waste = metres(&total.with_waste);
    assert!((with_waste - 1.15 * metres(&total.net)).abs() < 0.2);
    assert!((metres(&total.order) - 100.0 * with_waste).abs() < 6.0);
    assert!(yarn.seams.iter().all(|seam| !seam.basis.is_empty()));
    for seam in &yarn.seams {
        for mark in &seam.basis {
            assert!(yarn.notes.iter().any(|note| note.mark == *mark), "{mark}");
        }
    }
    let lockstitch = yarn
        .notes
        .iter()
        .find(|n| n.text.starts_with("301"))
        .unwrap();
    assert!(lockstitch.text.contains("2 + 2ST"), "{}", lockstitch.text);
    assert!(yarn.sheets.len() >= 2);
    for sheet in &yarn.sheets {
        let drawing = &sheet.drawing;
        assert!(drawing.width_mm() <= 172.0 && drawing.height_mm() <= 222.0);
    }
}

#[test]
fn every_plate_is_printed_at_its_own_scale_on_an_upright_page() {
    let pack = &demo().pack;
    assert!(pack.plates.len() >= 12, "{} plates", pack.plates.len());
    for plate in &pack.plates {
        assert!(!plate.title.is_empty() && !plate.caption.is_empty());
        assert!(matches!(plate.scale, Some(papers::Scale::Shown(_))));
        let drawing = &plate.drawing;
        assert!(
            drawing.width_mm() <= 172.0 && drawing.height_mm() <= 227.0,
            "{}",
            plate.title
        );
    }
}

#[test]
fn pieces_are_listed_in_the_order_of_their_numbers_with_areas() {
    let pack = &demo().pack;
    assert_eq!(pack.pieces[0].name, "Front");
    assert_eq!(
        (
            pack.pieces[0].count.as_str(),
            pack.pieces[0].pairing.as_str()
        ),
        ("2", "left and right")
    );
    for (at, piece) in pack.pieces.iter().enumerate() {
        assert_eq!(piece.number, (at + 1).to_string());
        assert!(
            piece.thumbnail.is_some() && piece.area.ends_with("cm²"),
            "{}",
            piece.name
        );
    }
}

/// Every piece of a pair is cut once from one cloth; each cloth has its lay and what no lay can be below.
#[test]
fn the_cutter_is_told_what_is_cut_from_which_cloth() {
    let pack = &demo().pack;
    let cut = &pack.cutting;
    let names: Vec<&str> = cut.cloths.iter().map(|c| c.name.as_str()).collect();
    assert_eq!(
        names,
        [
            "Tideline loomstate selvedge",
            "Bargeman pocketing drill",
            "Oar plain-weave lining"
        ]
    );
    // One on each cloth, and on the shell one of the smallest and of the largest pair.
    let lays: Vec<&str> = cut.lays.iter().map(|lay| lay.title.as_str()).collect();
    assert_eq!(
        lays,
        [
            "Lay on Tideline loomstate selvedge, 32x32",
            "Lay on Tideline loomstate selvedge, 28x32",
            "Lay on Tideline loomstate selvedge, 38x32",
            "Lay on Bargeman pocketing drill, 32x32",
            "Lay on Oar plain-weave lining, 32x32",
        ]
    );
    let rows = || cut.cloths.iter().flat_map(|c| &c.rows);
    let copies = |row: &papers::CutRow| {
        let count = |text: &str| text.parse::<u32>().unwrap();
        count(&row.as_drawn) + count(&row.mirrored)
    };
    for piece in &pack.pieces {
        let of_piece = rows().filter(|row| row.number == piece.number);
        let cut: u32 = of_piece.map(copies).sum();
        // A band joined at the centre back is counted by its halves.
        assert_eq!(cut, piece.count.parse::<u32>().unwrap(), "{}", piece.name);
    }
    for cloth in &cut.cloths {
        let metres = |label: &str| {
            let fact = cloth.facts.iter().find(|f| f.label == label).unwrap();
            fact.value.trim_end_matches(" m").parse::<f64>().unwrap()
        };
        let (taken, least) = (metres("One pair takes"), metres("No lay is shorter than"));
        assert!(taken >= least && least > 0.0, "{}", cloth.name);
    }
    let shell = &cut.cloths[0].facts;
    let shrinkage = shell
        .iter()
        .find(|f| f.label.contains("shrinkage"))
        .unwrap();
    assert!(
        shrinkage.value.starts_with("8 % warp, 4 % weft"),
        "{}",
        shrinkage.value
    );
    assert_eq!(cut.corners.len(), 1);
}

/// The front is an inch of inseam longer at each length; before a wash that takes 8 % of the warp that is
/// 25.4 / 0.92 = 27.6 mm, downwards from the crotch.
#[test]
fn points_move_as_the_chart_grows() {
    let pack = &demo().pack;
    let lengths = pack
        .cutting
        .moves
        .iter()
        .find(|m| m.piece == "Front" && m.sizes == ["32x30", "32x34"]);
    let front = lengths.unwrap();
    assert_eq!(front.at, "crotch");
    let hem = front.rows.iter().find(|r| r.point == "hem in").unwrap();
    let along = |k: usize| {
        hem.by[k][1]
            .replace('\u{2212}', "-")
            .parse::<f64>()
            .unwrap()
    };
    assert!((along(1) + 2.0 * 25.4 / 0.92).abs() < 1.0, "{hem:?}");
    assert!((along(0) + along(1)).abs() < 1.0, "{hem:?}");
    let waists = &pack.cutting.grades[0];
    assert_eq!(waists.steps.len(), 8);
    let waist = waists.rows.iter().find(|r| r.measure == "Waist").unwrap();
    assert_eq!(
        (waist.by[0].as_str(), waist.by[7].as_str()),
        ("25.4", "50.8")
    );
    let fly = waists
        .rows
        .iter()
        .find(|r| r.measure == "Fly length")
        .unwrap();
    assert!(fly.breaks.iter().any(|b| *b));
}

#[test]
fn metal_is_counted_from_the_garment() {
    let pack = &demo().pack;
    let quantity = |name: &str| {
        let mut rows = pack.materials.iter().flat_map(|group| &group.rows);
        rows.find(|row| row.name == name).unwrap().quantity.clone()
    };
    // One on the band, four on the fly; rivets: two at each mouth, two on the coin pocket.
    assert_eq!(quantity("Keel shank button"), "1");
    assert_eq!(quantity("Keel fly button"), "4");
    assert_eq!(quantity("Rowlock rivet"), "6");
    assert_eq!(quantity("Saltmarsh patch"), "1");
}

#[test]
fn a_leather_patch_brings_its_cautions() {
    let pack = &demo().pack;
    let all: String = pack.cautions.iter().map(|c| c.text.as_str()).collect();
    for words in [
        "EN 1811",
        "EN ISO 17075",
        "1007/2011",
        "non-textile parts of animal origin",
        "metal detector",
    ] {
        assert!(all.contains(words), "{words}");
    }
}

/// The demo's style with its text changed, assembled in its base size.
fn changed(change: impl Fn(&mut Loaded)) -> Pack {
    let mut loaded = demo().loaded.clone();
    change(&mut loaded);
    let base = loaded.style.sizes.base;
    let run = vec![sewing::make(&loaded.style, &loaded.collection, base)];
    assemble(&loaded, &run, &Assembly::default()).unwrap()
}

/// What a caution says, with what it asks.
fn caution(pack: &Pack, heading: &str) -> Option<String> {
    let caution = pack.cautions.iter().find(|c| c.heading == heading)?;
    let asks = caution.asks.iter().map(|ask| ask.said.as_str());
    let said: Vec<&str> = [caution.text.as_str()].into_iter().chain(asks).collect();
    Some(said.join(" "))
}

#[test]
fn chromium_is_told_by_how_the_leather_is_tanned() {
    let with = |tanning: Option<style::Tanning>| {
        changed(|loaded| {
            let patch = loaded.collection.trims.get_mut("patch").unwrap();
            patch.tanning = tanning;
        })
    };
    let heading = "Chromium in leather";
    let chrome = with(Some(style::Tanning::Chrome));
    assert!(
        caution(&chrome, heading)
            .unwrap()
            .contains("tanned with chromium")
    );
    let unstated = with(None);
    assert!(
        caution(&unstated, heading)
            .unwrap()
            .contains("how it was tanned is unknown")
    );
    let bare = changed(|loaded| loaded.style.patch = None);
    assert_eq!(caution(&bare, heading), None);
    assert!(
        !caution(&bare, "Fibre and origin")
            .unwrap()
            .contains("animal")
    );
}

#[test]
fn a_style_whose_labels_tell_no_fibre_and_no_care_says_so() {
    let told = &demo().pack;
    let none = changed(|loaded| loaded.style.labels.clear());
    for heading in ["Fibre and origin", "Care"] {
        assert!(!caution(told, heading).unwrap().contains("No label"));
        assert!(
            caution(&none, heading)
                .unwrap()
                .contains("No label of this style is stated")
        );
    }
    assert!(caution(told, "Size").is_some());
    assert_eq!(caution(&none, "Size"), None);
}

/// REACH Annex XVII entries 27, 43, 47 and 72; ISO 3758:2023; Regulation (EU) 2023/988. Each defers to the law of the place and
/// to licensed practice.
#[test]
fn cautions_name_what_the_law_asks_for_and_defer_to_it() {
    let pack = &demo().pack;
    for (heading, named) in [
        ("Nickel", &["entry 27"][..]),
        ("Chromium in leather", &["entry 47"]),
        ("Dyes and chemicals", &["entry 43", "entry 72", "azo"]),
        ("Care", &["ISO 3758:2023", "licence", "harshest"]),
        (
            "Safety and the maker's address",
            &["2023/988", "13 December 2024", "electronic address"],
        ),
    ] {
        let told = caution(pack, heading).unwrap();
        for words in named {
            assert!(told.contains(words), "{heading}: {told}");
        }
        assert!(told.contains("licensed"), "{heading}: {told}");
    }
}

/// What is not counted is the same figure on the material page and the yarn page, and the sum of what is printed there.
#[test]
fn uncounted_yarn_is_one_figure() {
    for units in [style::Units::Centimetres, style::Units::Inches] {
        let pack = changed(|loaded| loaded.collection.units = units);
        let tenths = |text: &str| -> i64 {
            let number: String = text.chars().filter(char::is_ascii_digit).collect();
            number.parse().unwrap()
        };
        let parts: i64 = pack
            .yarn
            .unstated
            .iter()
            .map(|(_, much)| tenths(much))
            .sum();
        assert!(pack.yarn.unstated.len() > 2);
        assert_eq!(parts, tenths(&pack.yarn.unstated_total));
        let note = &pack.materials_note;
        assert!(
            note.contains(&format!("about {},", pack.yarn.unstated_total)),
            "{note}"
        );
    }
}

/// The workroom reads why a thing is so where the maker lets it, by the name of the thing.
#[test]
fn the_workroom_reads_the_whys_it_may() {
    let told: Vec<&str> = demo()
        .pack
        .why
        .iter()
        .map(|(about, _)| about.as_str())
        .collect();
    assert_eq!(told, ["Outseam", "Hem"]);
    let cloth = changed(|loaded| loaded.style.why[0].in_pack = true);
    assert_eq!(cloth.why[0].0, "Cloth Tideline loomstate selvedge");
}

/// Work whose yarn nothing estimates is named where yarn is bought, operation by operation.
#[test]
fn yarn_that_is_not_even_estimated_is_named() {
    let pack = &demo().pack;
    let silent = pack.order.iter().flat_map(|stage| &stage.operations);
    let silent: Vec<&str> = silent
        .filter(|operation| {
            operation.ask.contains("ot stated") && !operation.ask.contains("estimated as")
        })
        .map(|operation| operation.name.as_str())
        .collect();
    assert!(!silent.is_empty());
    for name in silent {
        let told = pack.yarn.unreckoned.to_lowercase();
        assert!(told.contains(&name.to_lowercase()), "{name}: {told}");
    }
}

#[test]
fn metal_that_does_not_say_it_is_free_of_nickel_is_named() {
    assert!(!caution(&demo().pack, "Nickel").unwrap().contains("Rowlock"));
    let plated = changed(|loaded| {
        loaded.collection.trims.get_mut("rivet-9").unwrap().material = "plated steel".to_owned();
    });
    assert!(
        caution(&plated, "Nickel")
            .unwrap()
            .contains("What Rowlock rivet is made of")
    );
}

#[test]
fn each_pocket_lining_is_of_its_own_cloth() {
    let pack = changed(|loaded| {
        let cloths = &mut loaded.collection.cloths;
        let mut other = cloths["oar-lining"].clone();
        other.name = "Thole lining".to_owned();
        cloths.insert("thole".to_owned(), other);
        loaded.style.pockets.back.right.lining_cloth = Some("thole".to_owned());
    });
    let lining = |name: &str| {
        let piece = pack.pieces.iter().find(|p| p.name == name).unwrap();
        piece.cloth.clone()
    };
    assert_eq!(lining("Back pocket lining, left"), "Oar plain-weave lining");
    assert_eq!(lining("Back pocket lining, right"), "Thole lining");
    let cloths = &pack.materials[0].rows;
    let used = |name: &str| &cloths.iter().find(|c| c.name == name).unwrap().used;
    assert_eq!(used("Thole lining"), "Lining: back pocket lining, right");
    let shown = pack
        .cover
        .facts
        .iter()
        .find(|f| f.label == "Lining")
        .unwrap();
    assert!(shown.value.contains("Oar") && shown.value.contains("Thole"));
}

#[test]
fn labels_and_patch_say_what_they_tell_and_how_they_are_made() {
    let pack = &demo().pack;
    let mut rows = pack.materials.iter().flat_map(|group| &group.rows);
    let mut spec = |name: &str| rows.find(|row| row.name == name).unwrap().spec.clone();
    let patch = spec("Saltmarsh patch");
    for words in [
        "75 mm × 30 mm",
        "1.6 mm thick",
        "tanned with plant extracts",
        "letters pressed",
        "drawn line by line on its plate",
    ] {
        assert!(patch.contains(words), "{patch}");
    }
    assert!(spec("Main label").contains("both ends turned under"));
    assert!(spec("Size label").contains("tells size, reads “32x32”"));
    let care = spec("Fibre and care label");
    assert!(care.contains("tells fibre, care, origin") && care.contains("Made in Portugal"));
    let mut rows = pack.materials.iter().flat_map(|group| &group.rows);
    let care = rows.find(|row| row.name == "Fibre and care label").unwrap();
    assert!(
        care.used
            .contains("29.8 cm below the band seam before the wash"),
        "{}",
        care.used
    );
}

#[test]
fn what_a_style_does_not_have_is_left_out() {
    let bare = changed(|loaded| {
        let style = &mut loaded.style;
        style.patch = None;
        style.labels.clear();
        style.rivets = None;
        style.pockets.extra = None;
        for seam in [
            SeamId::PatchSet,
            SeamId::LabelSet,
            SeamId::ExtraHem,
            SeamId::ExtraSet,
        ] {
            style.seams.shift_remove(&seam);
        }
    });
    let headings: Vec<&str> = bare.materials.iter().map(|g| g.heading.as_str()).collect();
    assert!(!headings.contains(&"Patch and labels"), "{headings:?}");
    let full = &demo().pack;
    assert!(bare.plates.len() < full.plates.len());
    let named = |pack: &Pack, word: &str| {
        let mut operations = pack.order.iter().flat_map(|s| &s.operations);
        operations.any(|o| o.name.contains(word))
    };
    for word in ["Patch", "Extra pocket", "Labels"] {
        assert!(named(full, word) && !named(&bare, word), "{word}");
    }
    pack_pdf(&bare, &PdfOptions::default()).unwrap();
}

#[test]
fn findings_come_gravest_first() {
    let grades: Vec<Severity> = demo().pack.findings.iter().map(|f| f.severity).collect();
    assert!(grades.is_sorted(), "{grades:?}");
    let crotch = demo().pack.findings.iter().find(|f| f.about == "crotch");
    assert_eq!(crotch.unwrap().place, "Front, at crotch");
}

#[test]
fn the_same_style_gives_the_same_pack_and_bytes() {
    let Demo { loaded, pack } = demo();
    let base = loaded.style.sizes.base;
    let run = vec![sewing::make(&loaded.style, &loaded.collection, base)];
    let options = Assembly {
        size: Some(Size::new(1, 1)),
        revision: 1,
        ..Assembly::default()
    };
    // A run of one size, and a size that is not made: the base size is drawn, the chart is whole.
    let other = assemble(loaded, &run, &options).unwrap();
    assert_eq!(other.chart, pack.chart);
    assert_eq!(other.views, pack.views);
    let options = PdfOptions::default();
    assert!(pack_pdf(pack, &options).unwrap() == pack_pdf(pack, &options).unwrap());
}
