//! Cut pieces and a lay of them, judged by Python with shapely, which shares no code with us.

mod json;

use std::fs;
use std::path::Path;
use std::process::{Command, Output};
use std::sync::atomic::AtomicBool;

use cutting::{CutSize, Plan, SizePairs, Spread, SpreadRules, Way, cut};
use lay::{Lay, Limits, Options, search};
use serde_json::{Value, json};
use style::{Loaded, Size};
use suite::outside;
use suite::source::root;
use trade::Length;

use json::size_json;

/// Sizes far apart; with CI set every size is judged.
const SOME_SIZES: &[&str] = &["28x30", "32x32", "38x34"];

fn ferryman() -> Loaded {
    style::load(&root().join("crates/style/demo/saltmarsh/styles/ferryman")).unwrap()
}

fn cut_size(loaded: &Loaded, size: Size) -> CutSize {
    let garment = sewing::make(&loaded.style, &loaded.collection, size);
    cut(&garment, &Plan::of(&loaded.style))
}

fn judge(python: &Path, check: &str, files: &[(&str, &Value)]) -> Output {
    let folder = tempfile::tempdir().unwrap();
    let mut command = Command::new(python);
    command.arg(root().join("crates/suite/checks").join(check));
    for (name, value) in files {
        let file = folder.path().join(name);
        fs::write(&file, value.to_string()).unwrap();
        command.arg(file);
    }
    command.output().unwrap()
}

fn words(output: &Output) -> String {
    let out = String::from_utf8_lossy(&output.stdout);
    format!("{out}{}", String::from_utf8_lossy(&output.stderr))
}

#[test]
fn every_allowance_has_its_width() {
    let Some(python) = outside::python() else {
        return;
    };
    let loaded = ferryman();
    let every: Vec<Size> = loaded.style.sizes.all().collect();
    assert_eq!(every.len(), 27);
    let whole = outside::every_check();
    let sizes: Vec<Value> = every
        .into_iter()
        .filter(|size| whole || SOME_SIZES.contains(&size.to_string().as_str()))
        .map(|size| size_json(&cut_size(&loaded, size)))
        .collect();
    assert!(sizes.len() >= SOME_SIZES.len());
    let all = json!({ "unit": "mm", "sizes": sizes });
    let output = judge(&python, "allowances.py", &[("cut.json", &all)]);
    assert!(output.status.success(), "{}", words(&output));
}

/// A judge that always agrees is none.
#[test]
fn a_wrong_allowance_is_noticed() {
    let Some(python) = outside::python() else {
        return;
    };
    let size = size_json(&cut_size(&ferryman(), Size::new(32, 32)));
    let all = json!({ "unit": "mm", "sizes": [size] });
    let by = |value: &mut Value, more: f64| *value = (value.as_f64().unwrap() + more).into();
    type Spoil<'a> = (&'a str, &'a dyn Fn(&mut Value));
    let spoils: &[Spoil<'_>] = &[
        ("width from the sewn line", &|piece| {
            for edge in piece["edges"].as_array_mut().unwrap() {
                by(&mut edge["allowance"], 0.1);
            }
        }),
        ("area", &|piece| by(&mut piece["area"], 1.0)),
        ("outline", &|piece| {
            let cut = piece["cut"].as_array_mut().unwrap();
            let far = cut.len() / 2;
            cut.swap(1, far);
        }),
    ];
    for (kind, spoil) in spoils {
        let mut spoilt = all.clone();
        spoil(&mut spoilt["sizes"][0]["pieces"][0]);
        let output = judge(&python, "allowances.py", &[("cut.json", &spoilt)]);
        assert_eq!(output.status.code(), Some(1), "{kind} goes unnoticed");
        assert!(words(&output).contains(kind), "{}", words(&output));
    }
}

/// The cut pieces of some sizes, and how each is sewn.
fn cut_and_sewn(sizes: &[Size]) -> (Value, Vec<Value>) {
    let loaded = ferryman();
    let cut: Vec<Value> = sizes
        .iter()
        .map(|size| size_json(&cut_size(&loaded, *size)))
        .collect();
    let order = |size: &Size| {
        let garment = sewing::make(&loaded.style, &loaded.collection, *size);
        serde_json::from_str(&answers::sewing_order(&garment).unwrap()).unwrap()
    };
    let orders = sizes.iter().map(order).collect();
    (json!({ "unit": "mm", "sizes": cut }), orders)
}

fn judged(python: &Path, cut: &Value, orders: &[Value]) -> Output {
    let names: Vec<String> = (0..orders.len())
        .map(|at| format!("order-{at}.json"))
        .collect();
    let files = names.iter().map(String::as_str).zip(orders);
    let files: Vec<(&str, &Value)> = [("cut.json", cut)].into_iter().chain(files).collect();
    judge(python, "machine_settings.py", &files)
}

/// Folders, hems, ease, seam lengths and the chart before the wash, worked out from the cut pieces alone.
#[test]
fn machines_are_set_to_what_the_cut_pieces_need() {
    let Some(python) = outside::python() else {
        return;
    };
    let some = |size: &Size| SOME_SIZES.contains(&size.to_string().as_str());
    let sizes: Vec<Size> = ferryman().style.sizes.all().filter(some).collect();
    let (cut, orders) = cut_and_sewn(&sizes);
    let output = judged(&python, &cut, &orders);
    assert!(output.status.success(), "{}", words(&output));
    let summary: Value = serde_json::from_slice(&output.stdout).unwrap();
    assert!(summary["agreed"].as_u64().unwrap() >= 33, "{summary}");
}

/// What the order said before it knew of the wash is noticed.
#[test]
fn a_folder_for_the_washed_pair_is_noticed() {
    let Some(python) = outside::python() else {
        return;
    };
    let (cut, mut orders) = cut_and_sewn(&[Size::new(32, 32)]);
    let operations = orders[0]["operations"].as_array_mut().unwrap();
    let folder = operations.iter_mut().find(|operation| {
        let name = operation["attachment"]["name"].as_str();
        name.is_some_and(|name| name.contains("band folder"))
    });
    folder.unwrap()["attachment"]["set_to"] = json!(38.0);
    let output = judged(&python, &cut, &orders);
    assert_eq!(output.status.code(), Some(1));
    let said = words(&output);
    assert!(
        said.contains("32x32 band folder: 41.304 mm from the pieces, 38.0 stated"),
        "{said}"
    );
}

/// Two sizes laid on the shell; a place count ends the search, so the lay is always the same.
fn laid() -> (Value, Value) {
    let loaded = ferryman();
    let key = loaded.style.cloth.shell.clone();
    let cloth = &loaded.collection.cloths[&key];
    let sizes = [Size::new(30, 32), Size::new(34, 32)].map(|size| cut_size(&loaded, size));
    let labels = sizes.each_ref().map(|cut| cut.size.to_string());
    let order: Vec<_> = sizes
        .iter()
        .zip(&labels)
        .map(|(cut, label)| SizePairs {
            label,
            cut,
            pairs: 1,
        })
        .collect();
    let rules = SpreadRules::plain(Way::TwoWay, Length::ZERO);
    let spread = Spread::new(&order, &key, cloth, &rules);
    let options = Options {
        limits: Limits {
            time: None,
            places: Some(1),
        },
        workers: 1,
        ..Options::default()
    };
    let found: Lay = search(
        &spread.problem,
        &options,
        &AtomicBool::new(false),
        &mut |_| (),
    )
    .unwrap();
    let items: Vec<Value> = spread
        .problem
        .pieces
        .iter()
        .map(|piece| {
            let shape: Vec<[f64; 2]> = piece.outline.iter().map(|p| [p.x, p.y]).collect();
            let angles: Vec<u16> = piece.turns.iter().map(|turn| turn.degrees()).collect();
            json!({
                "id": piece.key, "demand": piece.demand, "shape": { "data": shape },
                "orientation": { "rotation": { "angles": angles } }, "on_edge": piece.on_edge.is_some(),
            })
        })
        .collect();
    let placements: Vec<Value> = found
        .placements
        .iter()
        .map(|p| {
            json!({ "id": p.key, "rotation": p.turn.degrees(), "x": p.x.to_mm(), "y": p.y.to_mm() })
        })
        .collect();
    let width = spread.problem.width.to_mm();
    (
        json!({ "strip_height": width, "items": items }),
        json!({
            "length": found.length.to_mm(), "density": found.efficiency.to_ratio(),
            "placements": placements,
        }),
    )
}

#[test]
fn a_lay_of_the_demo_keeps_every_rule() {
    let Some(python) = outside::python() else {
        return;
    };
    let (instance, lay) = laid();
    let ask = |lay: &Value| {
        let files = [("instance.json", &instance), ("lay.json", lay)];
        judge(&python, "layout.py", &files)
    };
    let output = ask(&lay);
    assert!(output.status.success(), "{}", words(&output));
    let on_edge = |item: &&Value| item["on_edge"] == true;
    assert!(
        instance["items"]
            .as_array()
            .unwrap()
            .iter()
            .filter(on_edge)
            .count()
            >= 8
    );
    // Spoilt, it is noticed: a piece on another, one off its edge, one missing.
    let placed = lay["placements"].as_array().unwrap();
    let beside = placed
        .iter()
        .skip(1)
        .find(|p| p["rotation"] == placed[0]["rotation"]);
    let mut overlapping = lay.clone();
    for along in ["x", "y"] {
        overlapping["placements"][0][along] = beside.unwrap()[along].clone();
    }
    let items = instance["items"].as_array().unwrap();
    let first = items.iter().find(|item| item["on_edge"] == true).unwrap();
    let place = placed.iter().position(|p| p["id"] == first["id"]).unwrap();
    let mut off_edge = lay.clone();
    off_edge["placements"][place]["y"] = (placed[place]["y"].as_f64().unwrap() * 0.5 + 0.5).into();
    let mut missing = lay.clone();
    missing["placements"].as_array_mut().unwrap().pop();
    for (spoilt, kind) in [
        (overlapping, "overlap by"),
        (off_edge, "own edge"),
        (missing, "0 laid"),
    ] {
        let output = ask(&spoilt);
        assert_eq!(output.status.code(), Some(1), "{kind}");
        assert!(words(&output).contains(kind), "{}", words(&output));
    }
}
