//! Orders and kept lays, as a person plans them.
#![allow(clippy::unwrap_used)]

mod common;

use common::{Demo, code, demo, names, run, stderr, stdout};
use serde_json::Value;

fn order(demo: &Demo) -> String {
    let file = demo.collection().join(style::demo::ORDER);
    file.to_str().unwrap().to_owned()
}

fn json(output: &std::process::Output) -> Value {
    assert_eq!(code(output), 0, "{}", stderr(output));
    serde_json::from_str(&stdout(output)).unwrap()
}

#[test]
fn the_demo_order_is_planned_exactly() {
    let answer = json(&run(["plan", &order(demo()), "--estimate", "--json"]));
    assert_eq!(answer["pairs"], 62);
    let cloths = answer["cloths"].as_array().unwrap();
    assert_eq!(cloths.len(), 3);
    for cloth in cloths {
        let mut pairs = 0;
        let mut length = 0.0;
        for lay in cloth["lays"].as_array().unwrap() {
            assert_eq!(lay["found"], false);
            let plies = lay["plies"].as_u64().unwrap();
            let sizes = lay["sizes"].as_array().unwrap();
            pairs += plies
                * sizes
                    .iter()
                    .map(|s| s["pairs"].as_u64().unwrap())
                    .sum::<u64>();
            length += plies as f64 * lay["ply"].as_f64().unwrap();
        }
        assert_eq!(pairs, 62);
        assert!((length - cloth["length"].as_f64().unwrap()).abs() < 0.01);
        assert!(cloth["to_buy"].as_f64() > cloth["length"].as_f64());
    }
    let words = stdout(&run(["plan", &order(demo()), "--estimate"]));
    for part in ["62 pairs", "(estimated)", "to buy", "shade A", "roll T-03"] {
        assert!(words.contains(part), "{part}: {words}");
    }
    // The same order gives the same words.
    assert_eq!(words, stdout(&run(["plan", &order(demo()), "--estimate"])));
}

#[test]
fn what_an_order_states_beyond_what_is_usual_is_said_beside_its_plan() {
    let demo = Demo::new();
    let file = order(&demo);
    let text = std::fs::read_to_string(&file).unwrap();
    let usual = stdout(&run(["plan", &file, "--estimate"]));
    assert!(!usual.contains("look again"), "{usual}");
    let odd = text
        .replacen("table = \"12 m\"", "table = \"70 m\"", 1)
        .replacen("faults = \"1 %\"", "faults = \"30 %\"", 1);
    std::fs::write(&file, &odd).unwrap();
    let words = stdout(&run(["plan", &file, "--estimate"]));
    for part in [
        "look again: limits, table: it is 70 m; 150 cm to 40 m is usual (cutting rooms differ",
        "look again: limits, faults: it is 30 %; 0 % to 10 % is usual",
    ] {
        assert!(words.contains(part), "{part}: {words}");
    }
    let answer = json(&run(["plan", &file, "--estimate", "--json"]));
    assert_eq!(answer["unusual"].as_array().unwrap().len(), 2);
    std::fs::write(
        &file,
        text.replacen("table = \"12 m\"", "table = \"12 km\"", 1),
    )
    .unwrap();
    assert_eq!(code(&run(["plan", &file, "--estimate"])), 2);
    std::fs::write(
        &file,
        text.replacen("table = \"12 m\"", "table = \"1200 m\"", 1),
    )
    .unwrap();
    let refused = run(["plan", &file, "--estimate"]);
    assert_eq!(code(&refused), 2);
    assert!(
        stderr(&refused).contains("at most 100 m makes sense here"),
        "{}",
        stderr(&refused)
    );
}

#[test]
fn lays_of_a_plan_are_drawn_kept_and_found_again() {
    let demo = Demo::new();
    let text = std::fs::read_to_string(order(&demo)).unwrap();
    let (before, after) = text.split_once("pairs = {").unwrap();
    let (_, after) = after.split_once('}').unwrap();
    let few = format!("{before}pairs = {{ 30x32 = 2, 32x32 = 4 }}{after}");
    std::fs::write(order(&demo), few).unwrap();
    let drawings = demo.root().join("drawings");
    let lining = |more: &[&str]| {
        let mut words = vec!["plan".to_owned(), order(&demo)];
        words.extend(["--cloth", "oar-lining", "--seconds", "1", "--json"].map(str::to_owned));
        words.extend(more.iter().map(ToString::to_string));
        run(words)
    };
    let first = lining(&["-o", drawings.to_str().unwrap()]);
    let found = json(&first);
    let lays = found["cloths"][0]["lays"].as_array().unwrap();
    assert!(lays.iter().all(|lay| lay["found"] == true));
    assert!(
        stderr(&first).contains("oar-lining, "),
        "{}",
        stderr(&first)
    );
    let drawn: Vec<String> = (1..=lays.len())
        .map(|n| format!("oar-lining-{n}.svg"))
        .collect();
    assert_eq!(names(&drawings), drawn);
    let svg = std::fs::read_to_string(drawings.join("oar-lining-1.svg")).unwrap();
    assert!(svg.contains("Lay 1 of "));
    assert!(names(&demo.collection()).contains(&"lays".to_owned()));
    // Nothing is searched again, and the answer is the same.
    let second = lining(&[]);
    assert_eq!(stderr(&second), "");
    assert_eq!(stdout(&second), stdout(&first));
    // One lay of the plan on its own is the same lay.
    let one = run([
        "lay",
        &order(&demo),
        "--cloth",
        "oar-lining",
        "--lay",
        "1",
        "--seconds",
        "1",
        "--json",
    ]);
    let one = json(&one);
    assert_eq!(one["kept"], true);
    assert_eq!(one["length"], lays[0]["length"]);
    assert_eq!(one["of_plan"]["lay"], 1);
    assert_eq!(one["of_plan"]["of"], lays.len());
    // Which lay it took is said, asked for or not.
    let told = [
        "lay",
        &order(&demo),
        "--cloth",
        "oar-lining",
        "--seconds",
        "1",
    ];
    let told = stdout(&run(told));
    let first = format!("lay 1 of {} of the plan for oar-lining: ", lays.len());
    assert!(told.starts_with(&first), "{told}");
    let fresh = run([
        "lay",
        &order(&demo),
        "--cloth",
        "oar-lining",
        "--seconds",
        "1",
        "--fresh",
        "--json",
    ]);
    assert_eq!(json(&fresh)["kept"], false);
}

#[test]
fn a_kept_lay_of_other_pieces_is_not_used() {
    let demo = Demo::new();
    let lay = |style: &std::path::Path| {
        let style = style.to_str().unwrap();
        json(&run([
            "lay",
            style,
            "--cloth",
            "oar-lining",
            "--seconds",
            "1",
            "--json",
        ]))
    };
    assert_eq!(lay(&demo.style())["kept"], false);
    assert_eq!(lay(&demo.style())["kept"], true);
    let cloths = demo.collection().join("cloths.toml");
    let text = std::fs::read_to_string(&cloths).unwrap();
    std::fs::write(
        &cloths,
        text.replace("width = \"148 cm\"", "width = \"120 cm\""),
    )
    .unwrap();
    assert_eq!(lay(&demo.style())["kept"], false);
}

#[test]
fn what_cannot_be_planned_is_said_and_nothing_is_done() {
    let broken = Demo::new();
    let file = order(&broken);
    let text = std::fs::read_to_string(&file).unwrap();
    let case = |from: &str, to: &str, args: &[&str]| {
        assert!(text.contains(from), "{from}");
        std::fs::write(&file, text.replacen(from, to, 1)).unwrap();
        let output = run([&["plan", &file, "--estimate"], args].concat());
        assert_eq!(code(&output), 2);
        assert_eq!(stdout(&output), "");
        stderr(&output)
    };
    let size = case("31x32 = 8", "35x32 = 8", &[]);
    assert!(
        size.contains("Ferryman is not made in size 35x32"),
        "{size}"
    );
    assert!(size.contains("spring.toml:9:"), "{size}");
    let lays = case("most_lays = 5", "most_lays = 1", &[]);
    assert!(
        lays.contains("no plan cuts 62 pairs exactly in 1 lay of"),
        "{lays}"
    );
    assert!(lays.contains("most_pairs"), "{lays}");
    let cloth = case("format = 1", "format = 1", &["--cloth", "velvet"]);
    assert!(cloth.contains("no cloth named velvet"), "{cloth}");
    let rules = run(["lay", &file, "--gap", "2 mm"]);
    assert!(
        stderr(&rules).contains("the order's own"),
        "{}",
        stderr(&rules)
    );
    let no_order = run(["lay", broken.style().to_str().unwrap(), "--lay", "2"]);
    assert!(
        stderr(&no_order).contains("this is a style"),
        "{}",
        stderr(&no_order)
    );
    let missing = run(["plan", "nowhere/orders/none.toml"]);
    assert_eq!(code(&missing), 2);
}
