//! A maker's day, from an empty folder to the papers, by command and at the bench: nothing that was written, by whomever
//! and in whatever order, is lost, and nothing of the demo is in what comes out.

use std::ffi::OsString;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use serde_json::{Value, json};
use style::{History, KeptFile, kept_files, read_revision};
use suite::fellwork::{run, succeed};
use suite::outside::tool;

use crate::recover::{asked_of, bench, free_port};

const KEY: &str = "oneDayFromMorningToNight";

/// A label and its styles in the maker's own letters. All of it is invented.
const LABEL: &str = "潮風堂";
const WORKROOM: &str = "川辺縫製";
const STYLES: [&str; 3] = ["渡し守", "Ночная смена", "Höhenweg 2"];

/// What the demo calls its own.
const DEMO: [&str; 9] = [
    "saltmarsh",
    "ferryman",
    "azenha",
    "tideline",
    "rowlock",
    "keel",
    "bargeman",
    "vale de arca",
    "portugal",
];

struct Day {
    root: PathBuf,
    port: u16,
    /// The style whose page is open while a bench is running.
    open: Option<String>,
    /// Every text that any file was seen to hold.
    seen: Vec<(PathBuf, String)>,
}

impl Day {
    fn fellwork(&self, arguments: &[&str]) -> String {
        let paths = arguments
            .iter()
            .map(|argument| match argument.strip_prefix("@") {
                Some(path) => self.root.join(path).into_os_string(),
                None => OsString::from(argument),
            });
        succeed(paths)
    }

    fn file(&self, name: &str) -> PathBuf {
        self.root.join(name)
    }

    fn text(&self, name: &str) -> String {
        fs::read_to_string(self.file(name)).unwrap()
    }

    /// Remembers what every file holds.
    fn look(&mut self) {
        for kept in kept_files(&self.root).unwrap() {
            let text = fs::read_to_string(kept.file.path()).unwrap();
            self.seen.push((kept.file.path().to_path_buf(), text));
        }
    }

    /// An editor writes into a file; an open page sees it soon.
    fn by_hand(&mut self, name: &str, from: &str, to: &str) {
        let text = self.text(name);
        assert!(text.contains(from), "{name} has no {from}");
        fs::write(self.file(name), text.replacen(from, to, 1)).unwrap();
        if let Some(style) = &self.open {
            self.ask(style, "fragments", None);
        }
        self.look();
    }

    fn ask(&self, style: &str, action: &str, body: Option<&Value>) -> Value {
        let style: String = style.bytes().map(|byte| format!("%{byte:02X}")).collect();
        let address = format!("/style/{style}/{action}");
        asked_of(self.port, KEY, &address, body).unwrap_or_else(|| panic!("{address}: no answer"))
    }

    /// Changes a value as a page of the style would.
    fn set(&mut self, style: &str, path: &str, value: &str) {
        let page = self.ask(style, "fragments", None);
        let edits = json!([{ "edit": "set", "path": path, "value": value }]);
        let body = json!({ "revision": page["revision"], "edits": edits });
        let answer = self.ask(style, "edit", Some(&body));
        assert_eq!(answer["outcome"], "done", "{}", answer["problems"]);
        self.look();
    }

    fn step(&mut self, style: &str, way: &str) -> String {
        let page = self.ask(style, "fragments", None);
        let answer = self.ask(style, way, Some(&json!({ "revision": page["revision"] })));
        assert_eq!(answer["outcome"], "done", "{}", answer["problems"]);
        self.look();
        answer["said"].as_str().unwrap().to_owned()
    }
}

/// Everything below a folder.
fn below(folder: &Path) -> Vec<PathBuf> {
    suite::source::files_below(folder)
}

#[test]
fn a_makers_day() {
    let folder = tempfile::tempdir().unwrap();
    let root = folder.path().join("潮風");
    let mut day = Day {
        root: root.clone(),
        port: free_port(),
        open: None,
        seen: Vec::new(),
    };
    // Morning: a label, and three styles of it.
    day.fellwork(&[
        "new",
        "@",
        "--name",
        STYLES[0],
        "--label",
        LABEL,
        "--workroom",
        WORKROOM,
        "--origin",
        "日本",
        "--waists",
        "30,32,34",
        "--lengths",
        "32",
    ]);
    day.fellwork(&[
        "new",
        "@",
        "--name",
        STYLES[1],
        "--fit",
        "relaxed",
        "--taste",
        "quiet",
        "--waists",
        "30,32,34",
        "--lengths",
        "32",
    ]);
    day.fellwork(&[
        "new",
        "@",
        "--name",
        STYLES[2],
        "--from",
        &format!("@styles/{}", STYLES[0]),
    ]);
    let styles = style::list_styles(&root).unwrap();
    let folders: Vec<String> = styles
        .iter()
        .map(|file| {
            file.parent()
                .unwrap()
                .file_name()
                .unwrap()
                .to_string_lossy()
                .into_owned()
        })
        .collect();
    assert_eq!(folders.len(), 3, "{folders:?}");
    let codes: std::collections::BTreeSet<String> = styles
        .iter()
        .map(|file| style::load(file).unwrap().style.style.code)
        .collect();
    assert_eq!(codes.len(), 3, "two styles have one code: {codes:?}");
    day.look();
    let first = folders
        .iter()
        .find(|folder| folder.as_str() == STYLES[0])
        .unwrap()
        .clone();
    let second = folders
        .iter()
        .find(|folder| folder.starts_with('н') || folder.starts_with('Н'))
        .unwrap()
        .clone();
    let of = |folder: &str| format!("styles/{folder}/style.toml");

    // At the bench, with an editor beside it.
    let served = bench(&root, day.port, KEY);
    day.open = Some(first.clone());
    day.set(&first, "loops.count", "7");
    day.by_hand(&of(&first), "count = 7", "count = 6");
    day.set(&first, "style.summary", "一番");
    day.by_hand("cloths.toml", "warp_shrinkage", "warp_shrinkage ");
    day.by_hand("collection.toml", "units = \"cm\"", "units = \"in\"");
    day.by_hand("collection.toml", "units = \"in\"", "units = \"cm\"");
    day.set(&second, "loops.count", "7");
    day.fellwork(&[
        "history",
        &format!("@styles/{first}"),
        "--name",
        "now=見本の前",
    ]);
    day.by_hand(&of(&first), "count = 6", "count = 5");

    // Everything is taken back and made again, in the order of time, also by a bench that was killed in between.
    let end: Vec<(PathBuf, String)> = kept_files(&root)
        .unwrap()
        .into_iter()
        .map(|kept| {
            (
                kept.file.path().to_path_buf(),
                fs::read_to_string(kept.file.path()).unwrap(),
            )
        })
        .collect();
    let mut said = vec![day.step(&second, "undo"), day.step(&second, "undo")];
    assert!(
        said[0].contains(&first) && said[0].contains("6 → 5"),
        "{said:?}"
    );
    assert!(said[1].contains("5 → 7"), "{said:?}");
    drop(served);
    let served = bench(&root, day.port, KEY);
    for _ in 0..6 {
        said.push(day.step(&first, "undo"));
    }
    let page = day.ask(&first, "fragments", None);
    let nothing = day.ask(
        &first,
        "undo",
        Some(&json!({ "revision": page["revision"] })),
    );
    assert_eq!(nothing["outcome"], "nothing", "{said:?}");
    assert!(day.text(&of(&first)).contains("count = 5") && !day.text(&of(&first)).contains("一番"));
    for _ in 0..said.len() {
        day.step(&second, "redo");
    }
    for (file, text) in &end {
        assert_eq!(
            &fs::read_to_string(file).unwrap(),
            text,
            "{}",
            file.display()
        );
    }
    drop(served);
    day.open = None;

    // Afternoon: an order, written by hand and changed; its plan and the papers.
    let order = "format = 1\n[order]\nname = \"春\"\n[[lines]]\nstyle = \"STYLE\"\npairs = { 30x32 = 2, 32x32 = 4 }\n\
        [limits]\nheight = \"4 cm\"\ntable = \"12 m\"\nmost_pairs = 4\nmost_lays = 3\n";
    fs::create_dir_all(root.join("orders")).unwrap();
    fs::write(root.join("orders/春.toml"), order.replace("STYLE", &first)).unwrap();
    day.look();
    day.fellwork(&["check", "@orders/春.toml"]);
    day.by_hand("orders/春.toml", "32x32 = 4", "32x32 = 5");
    let plan = day.fellwork(&["plan", "@orders/春.toml", "--estimate"]);
    assert!(plan.contains("春") && plan.contains("7 pairs"), "{plan}");
    day.fellwork(&["history", "@orders/春.toml", "--name", "1=最初"]);
    let papers = folder.path().join("pack.pdf");
    let papers = papers.to_str().unwrap();
    day.fellwork(&["pack", &format!("@styles/{first}"), "-o", papers]);

    // Night: every text that any file ever held is a version that can be put back.
    for (file, text) in &day.seen {
        let kept = KeptFile::at(file).unwrap();
        let history = History::of(&kept.file).unwrap();
        let found = history
            .versions()
            .iter()
            .any(|version| read_revision(version).unwrap() == *text);
        assert!(found, "a text of {} is gone", file.display());
    }
    let named = day.fellwork(&["history", &format!("@styles/{first}"), "--named"]);
    assert!(named.contains("見本の前"), "{named}");
    let before = day.text(&of(&first));
    day.fellwork(&[
        "history",
        &format!("@styles/{first}"),
        "--put-back",
        "見本の前",
    ]);
    assert!(day.text(&of(&first)).contains("count = 6"));
    day.fellwork(&["history", "@orders/春.toml", "--put-back", "最初"]);
    assert!(day.text("orders/春.toml").contains("32x32 = 4"));
    let kept = KeptFile::at(&day.file(&of(&first))).unwrap();
    assert!(
        History::of(&kept.file)
            .unwrap()
            .versions()
            .iter()
            .any(|version| read_revision(version).unwrap() == before)
    );
    let all = day.fellwork(&["history", "@"]);
    for words in [
        "put back",
        "changed outside",
        "undone",
        "made again",
        "orders/春.toml",
        &of(&second),
    ] {
        assert!(all.contains(words), "{words}: {all}");
    }

    // Nothing of the demo is in any file, kept or made.
    for file in below(&root) {
        let text = String::from_utf8_lossy(&fs::read(&file).unwrap()).to_lowercase();
        for word in DEMO {
            assert!(!text.contains(word), "{word} is in {}", file.display());
        }
    }
    if let Some(pdftotext) = tool(&["pdftotext"]) {
        let text = Command::new(pdftotext)
            .args([papers, "-"])
            .output()
            .unwrap();
        let text = String::from_utf8(text.stdout).unwrap();
        for word in DEMO {
            assert!(!text.to_lowercase().contains(word), "{word} is in the pack");
        }
        for own in [LABEL, WORKROOM, STYLES[0]] {
            assert!(text.contains(own), "the pack does not say {own}");
        }
    }
    // A last look by somebody else: the program agrees that nothing is wrong with what is there.
    for folder in &folders {
        let checked = run([
            OsString::from("check"),
            root.join("styles").join(folder).into_os_string(),
        ]);
        assert!(
            checked.status.code().is_some_and(|code| code < 2),
            "{}",
            String::from_utf8_lossy(&checked.stderr)
        );
    }
}
