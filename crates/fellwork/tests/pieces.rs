//! The pieces as JSON hold enough to compute every length, area and measure again.
//!
//! Nothing of the program's own geometry is used here: polylines are added up and cut by hand.
#![allow(clippy::unwrap_used)]

mod common;

use std::collections::BTreeMap;

use common::{Demo, code, demo, fellwork, run, stderr, stdout};
use serde_json::Value;

/// How near an independent computation has to come, in millimetres.
const NEAR: f64 = 0.01;

type Line = Vec<(f64, f64)>;

fn pieces(size: &str) -> Value {
    let output = fellwork()
        .args(["pieces", "--json", "--size", size])
        .arg(demo().style())
        .output()
        .unwrap();
    assert_eq!(code(&output), 0, "{}", stderr(&output));
    serde_json::from_slice(&output.stdout).unwrap()
}

fn xy(point: &Value) -> (f64, f64) {
    (point[0].as_f64().unwrap(), point[1].as_f64().unwrap())
}

fn line(points: &Value) -> Line {
    points.as_array().unwrap().iter().map(xy).collect()
}

fn apart(a: (f64, f64), b: (f64, f64)) -> f64 {
    (b.0 - a.0).hypot(b.1 - a.1)
}

fn length(line: &Line) -> f64 {
    line.windows(2).map(|w| apart(w[0], w[1])).sum()
}

fn area(outline: &Line) -> f64 {
    let next = outline.iter().cycle().skip(1);
    outline
        .iter()
        .zip(next)
        .map(|(a, b)| a.0 * b.1 - b.0 * a.1)
        .sum::<f64>()
        / 2.0
}

/// Edges by piece and name.
fn edges(answer: &Value) -> BTreeMap<(String, String), Line> {
    let mut all = BTreeMap::new();
    for piece in answer["pieces"].as_array().unwrap() {
        for edge in piece["edges"].as_array().unwrap() {
            let key = (
                piece["id"].as_str().unwrap().to_owned(),
                edge["name"].as_str().unwrap().to_owned(),
            );
            all.insert(key, line(&edge["points"]));
        }
    }
    all
}

fn run_length(all: &BTreeMap<(String, String), Line>, run: &Value) -> f64 {
    let key = |edge: &Value| {
        (
            edge[0].as_str().unwrap().to_owned(),
            edge[1].as_str().unwrap().to_owned(),
        )
    };
    run.as_array()
        .unwrap()
        .iter()
        .map(|edge| length(&all[&key(edge)]))
        .sum()
}

/// Distance of the outermost crossings of some pieces' edges with a level.
fn across(all: &BTreeMap<(String, String), Line>, ids: &Value, y: f64) -> f64 {
    let ids: Vec<&str> = ids
        .as_array()
        .unwrap()
        .iter()
        .map(|id| id.as_str().unwrap())
        .collect();
    let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
    for ((piece, _), line) in all {
        for w in line.windows(2).filter(|_| ids.contains(&piece.as_str())) {
            let (a, b) = (w[0], w[1]);
            if (a.1 <= y) != (b.1 <= y) {
                let x = a.0 + (b.0 - a.0) * (y - a.1) / (b.1 - a.1);
                (low, high) = (low.min(x), high.max(x));
            }
        }
    }
    high - low
}

#[test]
fn outlines_close_and_areas_and_lengths_agree() {
    let answer = pieces("32x32");
    for piece in answer["pieces"].as_array().unwrap() {
        let id = piece["id"].as_str().unwrap();
        let mut outline: Line = Vec::new();
        let mut around = 0.0;
        let edges = piece["edges"].as_array().unwrap();
        for (k, edge) in edges.iter().enumerate() {
            let points = line(&edge["points"]);
            let next = line(&edges[(k + 1) % edges.len()]["points"]);
            assert!(apart(*points.last().unwrap(), next[0]) <= 0.001, "{id} {k}");
            assert!(
                points.windows(2).all(|w| apart(w[0], w[1]) <= 0.5 + 0.001),
                "{id} {k}"
            );
            assert!(
                (length(&points) - edge["length"].as_f64().unwrap()).abs() <= NEAR,
                "{id} {k}"
            );
            around += length(&points);
            outline.extend_from_slice(&points[..points.len() - 1]);
        }
        assert!(
            (around - piece["perimeter"].as_f64().unwrap()).abs() <= NEAR,
            "{id}"
        );
        // A hundredth of a millimetre all round.
        let stated = piece["area"].as_f64().unwrap();
        assert!(
            (area(&outline) - stated).abs() <= NEAR * around,
            "{id}: {} {stated}",
            area(&outline)
        );
        for cut in piece["cut_pieces"].as_array().unwrap() {
            let cut_area = area(&line(&cut["outline"]));
            assert!(
                (cut_area - cut["area"].as_f64().unwrap()).abs() <= 1.0,
                "{id}"
            );
            assert!(
                cut_area >= stated - 1.0,
                "{id}: the cut piece holds the finished one"
            );
        }
    }
}

#[test]
fn seams_walk_the_same() {
    let answer = pieces("38x34");
    let all = edges(&answer);
    let joins = answer["joins"].as_array().unwrap();
    assert!(joins.len() >= 8);
    for join in joins {
        let side =
            |side: &Value| run_length(&all, &side["edges"]) * side["times"].as_f64().unwrap();
        let (a, b) = (side(&join["a"]), side(&join["b"]));
        let gap = a - b - join["ease"].as_f64().unwrap();
        assert!(gap.abs() <= 2.0 * NEAR, "{}: {gap}", join["name"]);
    }
}

#[test]
fn measures_are_taken_again_as_they_are_described() {
    for size in ["32x32", "28x34"] {
        let answer = pieces(size);
        let all = edges(&answer);
        let point = |piece: &Value, name: &Value| {
            let pieces = answer["pieces"].as_array().unwrap();
            let piece = pieces.iter().find(|p| p["id"] == *piece).unwrap();
            xy(&piece["points"][name.as_str().unwrap()])
        };
        for measure in answer["measures"].as_array().unwrap() {
            let take = &measure["take"];
            let taken = if let Some(runs) = take["along"].as_array() {
                let run =
                    |run: &Value| run_length(&all, &run["edges"]) * run["times"].as_f64().unwrap();
                runs.iter().map(run).sum()
            } else if take["across"].is_object() {
                let level = &take["across"];
                let y = level["y"].as_f64().unwrap();
                let panels = level["panels"].as_array().unwrap();
                panels.iter().map(|ids| across(&all, ids, y)).sum::<f64>()
                    * level["times"].as_f64().unwrap()
            } else {
                let between = &take["between"];
                let at = |name: &str| point(&between["piece"], &between[name]);
                apart(at("from"), at("to"))
            };
            let pattern = measure["pattern"].as_f64().unwrap();
            assert!(
                (taken - pattern).abs() <= NEAR,
                "{size} {}: {taken} {pattern}",
                measure["key"]
            );
            if let Some(chart) = measure["chart"].as_f64() {
                assert!(
                    (taken - chart).abs() <= 2.0 * NEAR,
                    "{size} {}: {taken} {chart}",
                    measure["key"]
                );
            }
        }
    }
}

#[test]
fn the_table_lists_every_piece_and_seam() {
    let output = fellwork()
        .arg("pieces")
        .arg(demo().style())
        .output()
        .unwrap();
    assert_eq!(code(&output), 0);
    let text = stdout(&output);
    for name in [
        "Front",
        "Waistband",
        "Belt loop strip",
        "Inseam",
        "Band seam",
    ] {
        assert!(text.contains(name), "{name}");
    }
    assert!(!text.contains("-0.0000"), "{text}");
}

#[test]
fn a_half_size_goes_through_every_command() {
    let demo = Demo::with(
        "waists = [28, 29, 30, 31, 32, 33, 34, 36, 38]",
        "waists = [31, 31.5, 32]",
    );
    let file = demo.style_file();
    let style = file.to_str().unwrap();
    let json = |args: &[&str]| -> Value {
        let output = run(args);
        assert_eq!(code(&output), 0, "{args:?}: {}", stderr(&output));
        serde_json::from_str(&stdout(&output)).unwrap()
    };
    let pieces = json(&["pieces", style, "--size", "31.5x32", "--json"]);
    assert_eq!(pieces["size"], "31.5x32");
    let into = demo.root().join("out");
    let into_text = into.to_str().unwrap();
    let asked = ["patterns", style, "--size", "31.5x32", "-o", into_text];
    let output = run(asked.into_iter().chain(["--kind", "svg"]));
    assert_eq!(code(&output), 0, "{}", stderr(&output));
    let names = common::names(&into);
    assert!(
        names.iter().any(|n| n.ends_with("31.5x32.svg")),
        "{names:?}"
    );
    let wrong = run(["pieces", style, "--size", "31,5x32"]);
    assert_ne!(code(&wrong), 0);
    let said = stderr(&wrong);
    assert!(
        said.contains("write halves with a point: 31.5x32"),
        "{said}"
    );
    let unknown = stderr(&run(["pieces", style, "--size", "30.5x32"]));
    assert!(unknown.contains("its waists are 31, 31.5, 32"), "{unknown}");
    let lay = json(&[
        "lay",
        style,
        "--pairs",
        "31.5x32=1",
        "--seconds",
        "1",
        "--json",
    ]);
    assert!(lay.to_string().contains("31.5x32"), "{lay}");
}

#[test]
fn a_style_begins_in_half_sizes_from_the_command_line() {
    let demo = Demo::new();
    let folder = demo.collection();
    let folder = folder.to_str().unwrap();
    let asked = [
        "new",
        folder,
        "--name",
        "Heron",
        "--waists",
        "30, 31.5",
        "--lengths",
        "32",
    ];
    let output = run(asked);
    assert_eq!(code(&output), 0, "{}", stderr(&output));
    let text = std::fs::read_to_string(demo.collection().join("styles/heron/style.toml")).unwrap();
    assert!(text.contains("waists = [30, 31.5]"), "{text:.900}");
    let wrong = run(["new", folder, "--name", "Egret", "--waists", "31.25"]);
    assert!(
        stderr(&wrong).contains("such as 32 or 31.5"),
        "{}",
        stderr(&wrong)
    );
}
