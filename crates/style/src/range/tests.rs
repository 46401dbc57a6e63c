//! Every quantity the reader knows has a row, is listed, and is judged by its row.
#![allow(clippy::unwrap_used, clippy::panic)]

use std::collections::{BTreeMap, BTreeSet};

use super::{Amount, fits, range_of, ranges};
use crate::parse::{Reading, read};
use crate::reader::Table;
use crate::report::Source;
use crate::{
    MOST_PROBLEMS, MeasureId, Report, Stated, demo, own_piece, read_collection, read_order,
    read_style, stated_by_cloth, stated_by_order, stated_by_style, stated_by_trim, stated_by_yarn,
};

/// A file that states every key its reader knows, and what its quantities are.
struct File {
    name: &'static str,
    text: String,
    read: fn(&str, &str) -> Told,
}

/// What a reading said.
struct Told {
    stated: Vec<Stated>,
    report: Report,
    quantities: Vec<String>,
    left_out: BTreeSet<String>,
    places: BTreeMap<String, std::ops::Range<usize>>,
}

fn told<T>(
    (name, text): (&str, &str),
    kind: impl FnOnce(Table<'_>) -> Option<T>,
    list: impl FnOnce(T) -> Vec<Stated>,
) -> Told {
    let source = Source::new(name, text);
    let reading: Reading<T> = read(&source, kind);
    Told {
        stated: reading.value.map(list).unwrap_or_default(),
        report: reading.report,
        quantities: reading.asked.quantities,
        left_out: reading.asked.left_out,
        places: reading.places,
    }
}

fn changed(text: &str, from: &str, to: &str) -> String {
    assert!(text.contains(from), "{from}");
    text.replacen(from, to, 1)
}

/// The demo's style with every key it leaves out, and a chart that states everything of every measure.
fn style() -> String {
    let demo = demo::text(demo::STYLE);
    let (head, rest) = demo.split_once("[chart.waist]").unwrap();
    let (charted, tail) = rest.split_once("[shape]").unwrap();
    let charted = format!("[chart.waist]{charted}");
    let mut text = head.to_owned();
    for measure in MeasureId::ALL {
        let stated = charted.split_once(&format!("[chart.{}]", measure.code()));
        let lines = stated
            .map(|(_, rest)| rest.split("\n[").next().unwrap())
            .unwrap();
        text += &format!("[chart.{}]", measure.code());
        text += lines.trim_end();
        for (key, value) in [
            ("grade", "\"0 mm\""),
            ("per_length", "\"0 mm\""),
            (
                "breaks",
                if measure == MeasureId::Waist {
                    "[{ above = 40, grade = \"2 cm\" }]"
                } else {
                    "[{ above = 40, grade = \"0.1 mm\" }]"
                },
            ),
        ] {
            if !lines.contains(&format!("\n{key} =")) {
                text += &format!("\n{key} = {value}");
            }
        }
        if measure.known().level.is_some() && !lines.contains("\nat =") {
            text += "\nat = \"2 cm\"";
        }
        text += "\n\n";
    }
    text += "[shape]";
    text += tail;
    for (from, to) in [
        ("drop = \"9 mm\"", "drop = \"9 mm\"\nart = \"art/coin.svg\""),
        (
            "facing = \"8 cm\"",
            "mouth_fullness = \"55 %\"\nfacing = \"8 cm\"",
        ),
        (
            "[pockets.back.left]",
            "[pockets.back.left]\nlining_cloth = \"oar-lining\"\ndecoration = \"tide\"\nwaves = 5\n\
             crest = \"6 mm\"\nrise = \"10 mm\"\nmirror = true\nart = \"art/bight.svg\"",
        ),
        (
            "[pockets.back.right]",
            "[pockets.back.right]\nwaves = 4\ncrest = \"5 mm\"\nrise = \"9 mm\"",
        ),
        (
            "button = \"shank-22\"",
            "button = \"shank-22\"\nzip = \"zip-5\"\ntopstitch = \"flat\"",
        ),
        (
            "purpose = [\"brand\"]",
            "purpose = [\"brand\"]\nart = \"art/patch.svg\"",
        ),
        (
            "offset = \"0 mm\" }]",
            "offset = \"0 mm\", begin = \"cut\", end = \"cut\" }]",
        ),
        (
            "stitches = 28",
            "stitches = 28\nmouth = true\ncoin = true\nback_pockets = true",
        ),
        (
            "[cutting]",
            "[cutting]\nresidual_warp = \"1 %\"\nresidual_weft = \"1 %\"",
        ),
    ] {
        text = changed(&text, from, to);
    }
    text += "\n[[muted]]\ncode = \"a\"\nabout = \"b\"\nreason = \"c\"\n";
    text +=
        "\n[pattern]\nfile = \"pattern/a.toml\"\ndrawn = \"before wash\"\nallowance = \"1 cm\"\n";
    let mut edges: Vec<&str> = Vec::new();
    let mut pieces = String::new();
    for piece in crate::OWN_PIECES {
        let code = piece.id.code();
        pieces += &format!("[pattern.{code}]\npiece = \"a\"\n");
        for edge in own_piece(code).unwrap().edges().iter().map(|e| e.code()) {
            pieces += &format!("{edge} = [\"1\", \"2\"]\n");
            if !edges.contains(&edge) {
                edges.push(edge);
            }
        }
    }
    text += "[pattern.allowances]\n";
    for edge in edges {
        text += &format!("{edge} = \"11 mm\"\n");
    }
    text + &pieces
}

const ORDER: &str = r#"format = 1
[order]
name = "Spring run"
[[lines]]
style = "ferryman"
cloth = "tideline-14"
pairs = { 30x32 = 6, 32x32 = 14 }
[limits]
height = "4 cm"
most_plies = 40
table = "12 m"
most_pairs = 4
fewest_lays = 2
most_lays = 5
end_loss = "2 cm"
gap = "2 mm"
way = "one-way"
zones = 2
match_within = "1 m"
most_lap = "60 cm"
faults = "1 %"
splices = "0.5 %"
[cloths.tideline-14]
rolls = [{ name = "T-07", length = "46 m", shade = "B" }]
height = "5 cm"
most_plies = 50
table = "13 m"
most_pairs = 5
fewest_lays = 3
most_lays = 6
end_loss = "3 cm"
gap = "3 mm"
way = "one-way"
zones = 3
match_within = "1.1 m"
most_lap = "61 cm"
faults = "2 %"
splices = "0.6 %"
"#;

fn files() -> [File; 5] {
    let zip = "\n[trims.zip-5]\nname = \"Zip\"\nkind = \"zip\"\nlength = \"15 cm\"\ncolour = \"#8a7444\"\n";
    [
        File {
            name: "style.toml",
            text: style(),
            read: |name, text| {
                told((name, text), read_style::style, |doc| {
                    stated_by_style(&doc, doc.sizes.base)
                })
            },
        },
        File {
            name: "cloths.toml",
            text: demo::text("cloths.toml").to_owned(),
            read: |name, text| {
                told((name, text), read_collection::cloths, |all| {
                    all.iter()
                        .flat_map(|(key, one)| stated_by_cloth(key, one))
                        .collect()
                })
            },
        },
        File {
            name: "yarns.toml",
            text: demo::text("yarns.toml").to_owned(),
            read: |name, text| {
                told((name, text), read_collection::yarns, |all| {
                    all.iter()
                        .flat_map(|(key, one)| stated_by_yarn(key, one))
                        .collect()
                })
            },
        },
        File {
            name: "trims.toml",
            text: demo::text("trims.toml").to_owned() + zip,
            read: |name, text| {
                told((name, text), read_collection::trims, |all| {
                    all.iter()
                        .flat_map(|(key, one)| stated_by_trim(key, one))
                        .collect()
                })
            },
        },
        File {
            name: "order.toml",
            text: ORDER.to_owned(),
            read: |name, text| {
                told((name, text), read_order::order, |order| {
                    stated_by_order(&order)
                })
            },
        },
    ]
}

impl File {
    fn told(&self) -> Told {
        (self.read)(self.name, &self.text)
    }
}

/// A path with the names in it taken out: what is asked of one cloth is asked of all.
fn shape_of(path: &str) -> String {
    let steps: Vec<&str> = path.split('.').collect();
    let named = |at: usize| match steps.first() {
        Some(&("cloths" | "yarns" | "trims" | "seams")) => at == 1,
        Some(&"pockets") => at == 2 && steps.get(1) == Some(&"back"),
        Some(&"lines[0]") => at == 2,
        _ => false,
    };
    let shown = steps.iter().enumerate().map(|(at, step)| {
        if named(at) {
            "*".to_owned()
        } else {
            step.split_once('[')
                .map_or((*step).to_owned(), |(list, _)| format!("{list}[]"))
        }
    });
    shown.collect::<Vec<_>>().join(".")
}

#[test]
fn these_files_state_everything_their_readers_ask_for() {
    for file in files() {
        let told = file.told();
        assert!(told.report.is_empty(), "{}", told.report.render());
        // Only some measures are taken at a level; elsewhere it is refused.
        let levelled = |path: &str| {
            let measure = path
                .strip_prefix("chart.")
                .and_then(|path| path.strip_suffix(".at"));
            measure
                .and_then(MeasureId::of)
                .is_none_or(|measure| measure.known().level.is_some())
        };
        let there: BTreeSet<String> = told.places.keys().map(|path| shape_of(path)).collect();
        let missing: Vec<String> = told
            .left_out
            .iter()
            .filter(|path| levelled(path))
            .map(|path| shape_of(path))
            .collect();
        let missing: Vec<&String> = missing
            .iter()
            .filter(|path| !there.contains(*path))
            .collect();
        assert!(
            missing.is_empty(),
            "state it in this test's {}: {missing:?}",
            file.name
        );
    }
}

#[test]
fn every_quantity_that_is_read_has_a_row_and_is_listed() {
    for file in files() {
        let told = file.told();
        let read: BTreeSet<&str> = told.quantities.iter().map(String::as_str).collect();
        let listed: BTreeSet<&str> = told.stated.iter().map(|one| one.value.path()).collect();
        assert_eq!(read, listed, "{}", file.name);
        for path in read {
            assert!(range_of(path).is_some(), "{path}");
        }
    }
}

#[test]
fn every_row_is_of_a_quantity_and_gives_its_reason() {
    let read: Vec<String> = files()
        .iter()
        .flat_map(|file| file.told().quantities)
        .collect();
    for row in ranges() {
        for pattern in row.paths {
            assert!(read.iter().any(|path| fits(pattern, path)), "{pattern}");
        }
        let inside = row.usual.iter().all(|end| row.is_possible(*end));
        assert!(inside && row.reason.len() > 10, "{:?}", row.paths);
    }
}

#[test]
fn what_the_demo_states_is_usual() {
    for file in files() {
        for one in file.told().stated {
            assert!(one.range().unwrap().is_usual(one.amount), "{one:?}");
        }
    }
}

/// So many times an amount; of one that is nothing, of the most that is usual.
fn times(amount: Amount, most: Amount, factor: f64) -> Amount {
    match (amount, most) {
        (Amount::Length(v), Amount::Length(m)) => nonzero(v, m, factor).into(),
        (Amount::Share(v), Amount::Share(m)) => nonzero(v, m, factor).into(),
        (Amount::Angle(v), Amount::Angle(m)) => nonzero(v, m, factor).into(),
        (Amount::Weight(v), Amount::Weight(m)) => nonzero(v, m, factor).into(),
        (Amount::Yarn(v), Amount::Yarn(m)) => nonzero(v, m, factor).into(),
        (Amount::Density(v), Amount::Density(m)) => nonzero(v, m, factor).into(),
        (Amount::Temperature(v), Amount::Temperature(m)) => nonzero(v, m, factor).into(),
        (Amount::Duration(v), Amount::Duration(m)) => nonzero(v, m, factor).into(),
        (Amount::Count(v), Amount::Count(m)) => {
            let of = f64::from(if v == 0 { m } else { v });
            Amount::Count((of * factor).round() as u32)
        }
        _ => panic!("{amount} and {most} are of two kinds"),
    }
}

fn nonzero<T: Default + PartialEq + std::ops::Mul<f64, Output = T>>(
    value: T,
    most: T,
    by: f64,
) -> T {
    if value == T::default() {
        most * by
    } else {
        value * by
    }
}

fn written(amount: Amount) -> String {
    match amount {
        Amount::Count(count) => count.to_string(),
        other => format!("\"{other}\""),
    }
}

/// Nothing, a twentieth, three, twenty and three hundred times what it is: what cannot be is refused at its place with
/// what is usual, and what can be is read.
#[test]
fn what_cannot_be_is_refused_and_what_can_be_is_read() {
    const LIMITS: [&str; 2] = ["style::out-of-range", "style::negative"];
    let mut refused = 0;
    for file in files() {
        let sound = file.told();
        // As many at once as a report keeps apart.
        for (some, factor) in sound
            .stated
            .chunks(MOST_PROBLEMS / 2)
            .flat_map(|some| [0.0, 0.05, 3.0, 20.0, 300.0].map(|factor| (some, factor)))
        {
            let mut tried: Vec<(&Stated, Amount)> = some
                .iter()
                .map(|one| {
                    (
                        one,
                        times(one.amount, one.range().unwrap().usual[1], factor),
                    )
                })
                .collect();
            tried.sort_by_key(|(one, _)| std::cmp::Reverse(sound.places[one.value.path()].start));
            let mut text = file.text.clone();
            for (one, amount) in &tried {
                text.replace_range(sound.places[one.value.path()].clone(), &written(*amount));
            }
            let told = (file.read)(file.name, &text);
            for (one, amount) in tried {
                let row = one.range().unwrap();
                let found = told.report.problems.iter().find(|problem| {
                    problem.path == one.value.path() && LIMITS.contains(&problem.code)
                });
                // Buttons that close a fly are one at least.
                let none = one.value.path() == "fly.buttons" && amount == Amount::Count(0);
                assert_eq!(
                    found.is_none(),
                    row.is_possible(amount) && !none,
                    "{} is {amount}: {}",
                    one.value.path(),
                    told.report.render()
                );
                let Some(found) = found else { continue };
                refused += 1;
                assert!(found.line > 0 && found.column > 0, "{found:?}");
                if matches!(amount, Amount::Count(_)) {
                    continue;
                }
                let hint = found.hint.as_deref().unwrap_or_default();
                let usual = row.usual.map(|end| end.to_string());
                let said = usual.iter().all(|end| hint.contains(end));
                assert!(said, "{found:?}: {hint}");
            }
        }
    }
    assert!(refused > 500, "{refused}");
}

#[test]
fn every_measure_has_a_row_of_its_own_for_its_value_and_its_level() {
    for measure in MeasureId::ALL {
        let level = measure.known().level.map(|_| "at");
        for key in ["value"].into_iter().chain(level) {
            let path = measure.path(key);
            let row = range_of(&path).map(|row| row.paths);
            assert!(
                row.is_some_and(|paths| paths.contains(&path.as_str())),
                "what is usual for {measure:?} is missing: {path}"
            );
        }
    }
}

#[test]
fn a_quantity_without_a_row_is_not_read() {
    let source = Source::new("a.toml", "depth = \"3 cm\"\n");
    let reading = read(&source, |mut table| {
        table.optional("depth")?.quantity::<trade::Length>()
    });
    assert_eq!(reading.value, None);
    assert_eq!(reading.report.problems[0].code, "style::no-range");
}

#[test]
fn paths_find_the_row_that_stands_for_them() {
    let found = |path: &str| range_of(path).map(|row| row.paths[0]);
    assert_eq!(
        found("chart.fly_width.value"),
        Some("chart.fly_width.value")
    );
    assert_eq!(
        found("seams.fly.rows[1].offset"),
        Some("seams.fly.rows[].offset")
    );
    assert_eq!(
        found("seams.hem_x.rows[1].offset"),
        Some("seams.*.rows[].offset")
    );
    assert_eq!(found("seams.fly.rows.offset"), None);
    assert_eq!(
        found("chart.waist.breaks[0].grade"),
        Some("chart.waist.grade")
    );
    assert_eq!(found("chart.waist"), None);
    assert_eq!(
        found("cloths.a.rolls[2].length"),
        Some("cloths.*.rolls[].length")
    );
    assert_eq!(found(""), None);
}
