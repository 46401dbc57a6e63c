//! Every answer for programs keeps the schema it is published with, judged by Python with jsonschema.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use ::answers::Shape;
use serde_json::Value;
use suite::fellwork::{run, succeed};
use suite::outside;
use suite::source::root;

/// A collection with something of everything: a style that had three versions, one whose chart is in conflict, one that
/// cannot be read, an order that can be planned and one that cannot.
struct Collection {
    folder: tempfile::TempDir,
}

impl Collection {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let collection = Self { folder };
        style::write_demo(&collection.path("demo")).unwrap();
        for (from, to) in [("count = 5", "count = 7"), ("count = 7", "count = 6")] {
            succeed(["history", &collection.style("ferryman")]);
            collection.rewrite("demo/styles/ferryman/style.toml", from, to);
        }
        let first = ["--name", "2=first sample"];
        succeed(
            ["history", &collection.style("ferryman")]
                .iter()
                .chain(&first),
        );
        for (name, from, to) in [
            ("conflict", "value = \"24 1/2 in\"", "value = \"17 in\""),
            ("broken", "count = 6", "count = \"many\""),
        ] {
            let demo = collection.text("demo");
            let original = collection.style("ferryman");
            succeed(["new", &demo, "--name", name, "--from", &original]);
            collection.rewrite(&format!("demo/styles/{name}/style.toml"), from, to);
        }
        let order = collection.path("demo/orders/spring.toml");
        fs::copy(&order, collection.path("demo/orders/tight.toml")).unwrap();
        collection.rewrite("demo/orders/tight.toml", "most_lays = 5", "most_lays = 1");
        collection.rewrite(
            "demo/orders/spring.toml",
            "height = \"4 cm\"",
            "height = \"9 cm\"",
        );
        collection
    }

    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    fn text(&self, name: &str) -> String {
        self.path(name).to_str().unwrap().to_owned()
    }

    fn style(&self, name: &str) -> String {
        self.text(&format!("demo/styles/{name}"))
    }

    fn rewrite(&self, name: &str, from: &str, to: &str) {
        let text = fs::read_to_string(self.path(name)).unwrap();
        assert!(text.contains(from), "{name}: {from}");
        fs::write(self.path(name), text.replacen(from, to, 1)).unwrap();
    }

    /// Asks the program and keeps its answer.
    fn answer(&self, shape: Shape, number: usize, asked: &[&str]) -> PathBuf {
        let output = run(asked);
        let answer: Value = serde_json::from_slice(&output.stdout).unwrap_or_else(|why| {
            let told = String::from_utf8_lossy(&output.stderr);
            panic!("{asked:?}: {why}: {told}")
        });
        assert_eq!(answer["format"], shape.version(), "{asked:?}");
        let file = self.path(&format!("{}.{number}.json", shape.name()));
        fs::write(&file, output.stdout).unwrap();
        file
    }
}

fn schema(shape: Shape) -> PathBuf {
    let name = format!("{}-{}.json", shape.name(), shape.version());
    root().join("crates/answers/schemas").join(name)
}

fn judge(python: &Path, files: &[PathBuf]) -> Value {
    let output = Command::new(python)
        .arg(root().join("crates/suite/checks/schemas.py"))
        .args(files)
        .output()
        .unwrap();
    let words = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{words}");
    serde_json::from_slice(&output.stdout).unwrap()
}

#[test]
fn every_answer_is_as_its_schema_says_and_no_other_is() {
    let Some(python) = outside::python_with("jsonschema") else {
        return;
    };
    let collection = Collection::new();
    let [ferryman, conflict, broken] =
        ["ferryman", "conflict", "broken"].map(|n| collection.style(n));
    let [demo, spring, tight, drawn, printed] = [
        "demo",
        "demo/orders/spring.toml",
        "demo/orders/tight.toml",
        "drawn",
        "printed",
    ]
    .map(|name| collection.text(name));
    succeed([
        "patterns", &ferryman, "--kind", "dxf", "--size", "32x32", "-o", &drawn,
    ]);
    let pattern = format!("{drawn}/ferryman.dxf");
    let lining = [
        "--cloth",
        "oar-lining",
        "--seconds",
        "600",
        "--places",
        "50000",
        "--json",
    ];
    let on_lining = |command, of| [&[command, of], &lining[..]].concat();
    let paper = ["--size", "32x32", "-o", &printed, "--replace", "--json"];
    let on_paper = |kind| [&["patterns", &ferryman, "--kind", kind], &paper[..]].concat();
    let asked: Vec<(Shape, Vec<&str>)> = vec![
        (Shape::Check, vec!["check", &ferryman, "--json"]),
        (
            Shape::Check,
            vec!["check", &conflict, "--measures", "--json"],
        ),
        (Shape::CheckOrder, vec!["check", &spring, "--json"]),
        (Shape::CheckOrder, vec!["check", &tight, "--json"]),
        (Shape::Unread, vec!["check", &broken, "--json"]),
        (Shape::Pieces, vec!["pieces", &ferryman, "--json"]),
        (Shape::SewingOrder, vec!["sew", &ferryman, "--json"]),
        (Shape::Lay, on_lining("lay", &ferryman)),
        (Shape::Lay, on_lining("lay", &spring)),
        (Shape::Plan, vec!["plan", &spring, "--estimate", "--json"]),
        (Shape::Plan, on_lining("plan", &spring)),
        (Shape::Patterns, on_paper("pdf")),
        (Shape::Patterns, on_paper("roll")),
        (Shape::Bring, vec!["bring", &pattern, "--list", "--json"]),
        (Shape::History, vec!["history", &ferryman, "--json"]),
        (Shape::HistoryOfCollection, vec!["history", &demo, "--json"]),
        (
            Shape::Compare,
            vec!["compare", &ferryman, "1", "now", "--json"],
        ),
    ];
    let covered: BTreeSet<&str> = asked.iter().map(|(shape, _)| shape.name()).collect();
    assert_eq!(covered.len(), Shape::ALL.len(), "{covered:?}");
    let files: Vec<PathBuf> = asked
        .iter()
        .enumerate()
        .flat_map(|(number, (shape, asked))| {
            [schema(*shape), collection.answer(*shape, number, asked)]
        })
        .collect();
    let summary = judge(&python, &files);
    assert_eq!(summary["answers"], asked.len());
    assert!(summary["noticed"].as_u64().unwrap() > 1000, "{summary}");
}
