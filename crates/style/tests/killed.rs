//! A program that is killed, at whichever call of the system, leaves every file whole and loses nothing.
//!
//! This program is started again under `strace`, which kills it at its first call that opens, writes, renames or removes
//! anything, then at its second, and so on until it comes to its end. Between two such calls nothing on the disk can
//! differ, so this is every moment there is. `strace` (from the system's packages) only sees Linux; elsewhere the test
//! says that it was skipped.
#![allow(clippy::print_stdout, clippy::unwrap_used)]

mod common;

use std::collections::BTreeSet;
use std::fs;
use std::os::unix::process::ExitStatusExt;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use common::Copy;
use style::{
    Beside, Direction, Edit, History, KeptFile, RevisionId, VersionedFile, Way, kept_files,
    read_revision,
};

/// Set when this program is started again: what to do, and in which collection.
const WORK: &str = "STYLE_TEST_KILLED";

/// The calls that change what is on the disk, or lead there.
const CALLS: &str = "openat,open,creat,write,pwrite64,fsync,fdatasync,rename,renameat,renameat2,\
link,linkat,unlink,unlinkat,mkdir,mkdirat,rmdir,ftruncate,utimensat,fchmod,flock";

/// Every kind of file there is.
const FILES: [&str; 6] = [
    "collection.toml",
    "cloths.toml",
    "yarns.toml",
    "trims.toml",
    "orders/spring.toml",
    "styles/ferryman/style.toml",
];

const LAST_WORDS: &str = "\n# changed\n";

/// What can be done to a collection.
fn work(name: &str, root: &Path) {
    let (what, file) = name.split_once(' ').unwrap_or((name, ""));
    let kept = || KeptFile::at(&root.join(file)).unwrap();
    let now = |kept: &KeptFile| kept.file.look().unwrap();
    match what {
        "save" => {
            let (kept, now) = (kept(), now(&kept()));
            let text = now.text.clone() + LAST_WORDS;
            kept.put(&RevisionId::of(&now.text), &text, Way::Edit)
                .unwrap();
        }
        "put-back" => {
            let (kept, now) = (kept(), now(&kept()));
            let history = History::of(&kept.file).unwrap();
            let text = read_revision(&history.versions()[0]).unwrap();
            kept.put(&RevisionId::of(&now.text), &text, Way::PutBack)
                .unwrap();
        }
        "name" => kept().file.name_version(1, Some("first sample")).unwrap(),
        "hand" => {
            // An editor, which is not killed: only what notices it is.
            style::take_note(root);
        }
        "undo" => {
            style::step(root, Direction::Back, None).unwrap();
        }
        "redo" => {
            style::step(root, Direction::Forward, None).unwrap();
        }
        "new" => {
            let loaded = style::load(&root.join("styles/ferryman")).unwrap();
            style::copy_style(&loaded, "Packet", "SY-09", None).unwrap();
        }
        "begin" => {
            style::write_demo(&root.with_file_name("other")).unwrap();
        }
        "bring" => {
            let loaded = style::load(&root.join("styles/ferryman")).unwrap();
            let file = Beside::new(&loaded, "pattern", "harbour", "svg", vec![b'x'; 5000]);
            let text = loaded.text.clone() + LAST_WORDS;
            style::save_beside(&loaded, &text, &[file]).unwrap();
        }
        "edit-cloths" => {
            let cloths = style::cloths_of(root).unwrap();
            let held = cloths.file.look().unwrap().version.id;
            let edit = Edit::set("cloths.tideline-14.weight", "13 oz/yd2").unwrap();
            cloths.edit(&held, &[edit]).unwrap();
        }
        other => panic!("{other}"),
    }
}

/// Not a test of its own: what the others start and kill.
#[test]
fn worker() {
    let Ok(asked) = std::env::var(WORK) else {
        return;
    };
    let (name, root) = asked.split_once('\n').unwrap();
    work(name, Path::new(root));
}

/// A collection in which every file was saved twice, so that there is something to undo and to put back.
struct Prepared {
    copy: Copy,
    before: Vec<(PathBuf, String)>,
}

impl Prepared {
    fn new(name: &str) -> Self {
        let copy = Copy::new();
        let root = copy.root();
        style::take_note(&root);
        for file in FILES {
            work(&format!("save {file}"), &root);
        }
        match name {
            "redo" => work("undo", &root),
            "hand" => {
                for file in FILES {
                    let text = fs::read_to_string(root.join(file)).unwrap();
                    fs::write(root.join(file), text + "# by hand\n").unwrap();
                }
            }
            _ => {}
        }
        let before = FILES.map(|file| {
            let path = root.join(file);
            let text = fs::read_to_string(&path).unwrap();
            (path, text)
        });
        Self {
            copy,
            before: before.to_vec(),
        }
    }
}

/// Everything below a folder, by its way from there, and what it holds.
fn all_below(folder: &Path) -> Vec<(PathBuf, Vec<u8>)> {
    let mut found = Vec::new();
    let mut folders = vec![folder.to_path_buf()];
    while let Some(inside) = folders.pop() {
        for entry in fs::read_dir(inside).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else {
                let bytes = fs::read(&path).unwrap();
                found.push((path.strip_prefix(folder).unwrap().to_path_buf(), bytes));
            }
        }
    }
    found
}

fn copied(from: &Path) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    for (path, bytes) in all_below(from) {
        let to = folder.path().join(path);
        fs::create_dir_all(to.parent().unwrap()).unwrap();
        fs::write(to, bytes).unwrap();
    }
    folder
}

/// Whether the work came to its end before its call of this number.
fn killed_at(name: &str, root: &Path, call: u32) -> bool {
    let done = Command::new("strace")
        .args(["-f", "-qq", "-o", "/dev/null", "-e"])
        .arg(format!("trace={CALLS}"))
        .arg("-e")
        .arg(format!("inject={CALLS}:signal=KILL:when={call}"))
        .arg(std::env::current_exe().unwrap())
        .args(["worker", "--exact"])
        .env(WORK, format!("{name}\n{}", root.display()))
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status()
        .unwrap();
    match (done.signal(), done.code()) {
        (Some(9), _) | (_, Some(137)) => true,
        (_, Some(0)) => false,
        _ => panic!("{name}: killed at call {call} it ended with {done}"),
    }
}

fn tracer_is_there() -> bool {
    let there = Command::new("strace")
        .args(["-f", "-qq", "-o", "/dev/null", "true"])
        .stderr(Stdio::null())
        .status()
        .is_ok_and(|status| status.success());
    let asked = std::env::var("CI").is_ok_and(|ci| !ci.is_empty());
    assert!(there || !asked, "strace is not there, or may not trace");
    if !there {
        println!("SKIPPED: strace is not there, or may not trace");
    }
    there
}

/// Kills a piece of work at each of its calls in turn; `after` are the texts that each file may hold besides the one it
/// held before.
fn at_every_call(name: &str) {
    if !tracer_is_there() {
        return;
    }
    let prepared = Prepared::new(name);
    let done = copied(&prepared.copy.folder.path().join(""));
    work(name, &done.path().join("saltmarsh"));
    let mut call = 1;
    loop {
        let folder = copied(prepared.copy.folder.path());
        let root = folder.path().join("saltmarsh");
        let killed = killed_at(name, &root, call);
        let at = format!("{name}, killed at call {call}");
        for (path, before) in &prepared.before {
            let file = path.strip_prefix(prepared.copy.root()).unwrap();
            let text = fs::read_to_string(root.join(file)).unwrap();
            let after = fs::read_to_string(done.path().join("saltmarsh").join(file)).unwrap();
            assert!(
                text == *before || text == after,
                "{at}: {} is neither",
                file.display()
            );
            if !killed {
                assert_eq!(text, after, "{at}");
            }
        }
        whole(&at, name, folder.path());
        if !killed {
            println!("{name}: killed at each of {} calls", call - 1);
            assert!(call > 10, "{at}: it was never killed");
            return;
        }
        call += 1;
    }
}

/// Whoever looks next finds every version, nothing half-made and no change that nobody made; and can go on.
fn whole(at: &str, name: &str, folder: &Path) {
    let root = folder.join("saltmarsh");
    style::take_note(&root);
    for kept in kept_files(&root).unwrap() {
        let text = fs::read_to_string(kept.file.path()).unwrap();
        let history = History::of(&kept.file).unwrap();
        assert!(history.names_problem().is_none(), "{at}");
        let texts: Vec<String> = history
            .versions()
            .iter()
            .map(|version| read_revision(version).unwrap())
            .collect();
        assert_eq!(texts.last(), Some(&text), "{at}: {}", kept.name());
        let numbers: Vec<u32> = history
            .versions()
            .iter()
            .map(|version| version.number)
            .collect();
        let whole: Vec<u32> = (1..).take(numbers.len()).collect();
        assert_eq!(numbers, whole, "{at}: {}", kept.name());
        if FILES.contains(&kept.name().as_str()) {
            let least = if name == "hand" { 3 } else { 2 };
            assert!(
                texts.len() >= least,
                "{at}: a version of {} is gone",
                kept.name()
            );
        }
    }
    let timeline = style::timeline(&root).unwrap();
    let outside = timeline
        .changes()
        .iter()
        .filter(|change| change.way == Way::Outside)
        .count();
    let by_hand = if name == "hand" { FILES.len() } else { 0 };
    assert_eq!(outside, by_hand, "{at}: what was written by hand");
    let left: BTreeSet<PathBuf> = all_below(folder)
        .into_iter()
        .map(|(path, _)| path)
        .filter(|path| {
            let path = path.display().to_string();
            path.contains("unfinished") || path.contains("pending") || path.contains(".new-")
        })
        .collect();
    assert!(left.is_empty(), "{at}: {left:?} is left behind");
    // A style that is there is whole, and what was done can be done again.
    for style in style::list_styles(&root).unwrap() {
        style::load(&style).unwrap_or_else(|report| panic!("{at}: {}", report.render()));
    }
    for file in FILES {
        let kept = KeptFile::at(&root.join(file)).unwrap();
        let now = kept.file.look().unwrap();
        let text = now.text.clone() + "# on\n";
        let file = VersionedFile::new(kept.file.path());
        file.save(&RevisionId::of(&now.text), &text, Way::Edit)
            .unwrap();
    }
}

#[test]
fn a_save_of_each_kind_of_file() {
    for file in FILES {
        at_every_call(&format!("save {file}"));
    }
}

#[test]
fn a_version_put_back() {
    for file in [
        "styles/ferryman/style.toml",
        "cloths.toml",
        "orders/spring.toml",
    ] {
        at_every_call(&format!("put-back {file}"));
    }
}

#[test]
fn a_version_named() {
    for file in ["styles/ferryman/style.toml", "yarns.toml"] {
        at_every_call(&format!("name {file}"));
    }
}

#[test]
fn changes_taken_back_and_made_again() {
    at_every_call("undo");
    at_every_call("redo");
}

#[test]
fn what_was_written_by_hand_being_noticed() {
    at_every_call("hand");
}

#[test]
fn a_style_and_a_collection_begun() {
    at_every_call("new");
    at_every_call("begin");
}

#[test]
fn a_pattern_brought_and_a_cloth_edited() {
    at_every_call("bring");
    at_every_call("edit-cloths");
}

/// Four programs write into each kind of file at once; each text that was saved is a version, none twice.
#[test]
fn four_writers_on_each_kind_of_file() {
    const WRITERS: usize = 4;
    const TIMES: usize = 10;
    for name in FILES {
        let copy = Copy::new();
        let path = copy.root().join(name);
        let first = fs::read_to_string(&path).unwrap();
        VersionedFile::new(&path).look().unwrap();
        let mut wanted: Vec<String> = std::thread::scope(|scope| {
            let write = |writer: usize| {
                let (path, first) = (&path, &first);
                scope.spawn(move || {
                    let file = VersionedFile::new(path);
                    let mut saved = Vec::new();
                    while saved.len() < TIMES {
                        let held = RevisionId::of(&file.look().unwrap().text);
                        let text = format!("{first}# writer {writer}, {}\n", saved.len());
                        match file.save(&held, &text, Way::Edit) {
                            Ok(_) => saved.push(text),
                            Err(store::StoreError::Stale { .. }) => {}
                            Err(other) => panic!("{other}"),
                        }
                    }
                    saved
                })
            };
            let writers: Vec<_> = (0..WRITERS).map(write).collect();
            writers
                .into_iter()
                .flat_map(|writer| writer.join().unwrap())
                .collect()
        });
        wanted.push(first);
        let history = History::of(&VersionedFile::new(&path)).unwrap();
        let mut kept: Vec<String> = history
            .versions()
            .iter()
            .map(|version| read_revision(version).unwrap())
            .collect();
        assert_eq!(
            kept.last(),
            Some(&fs::read_to_string(&path).unwrap()),
            "{name}"
        );
        kept.sort();
        wanted.sort();
        assert_eq!(kept, wanted, "{name}");
        let timeline = style::timeline(&copy.root()).unwrap();
        assert_eq!(timeline.changes().len(), WRITERS * TIMES, "{name}");
    }
}
