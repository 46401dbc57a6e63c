//! New collections and styles are made whole or not at all, and never over what is there.
#![allow(clippy::unwrap_used)]

mod common;

use std::fs;
use std::path::Path;

use common::{Copy, demo_text};
use style::{Answers, NewStyle, StartError, new_style, write_demo};

fn answers(name: &str) -> NewStyle {
    NewStyle {
        name: name.to_owned(),
        code: "SY-102".to_owned(),
        label: None,
        answers: Answers::default(),
    }
}

/// Everything in a folder, hidden files too.
fn names(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).unwrap();
    let mut names: Vec<String> = entries
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    names
}

#[test]
fn the_demo_is_written_whole_and_only_once() {
    let copy = Copy::new();
    for (path, text) in style::demo::files() {
        assert_eq!(&fs::read_to_string(copy.root().join(path)).unwrap(), text);
    }
    assert_eq!(names(copy.folder.path()), ["saltmarsh"]);
    fs::write(copy.root().join("yarns.toml"), "mine").unwrap();
    assert!(matches!(
        write_demo(&copy.root()),
        Err(StartError::Exists(_))
    ));
    assert_eq!(
        fs::read_to_string(copy.root().join("yarns.toml")).unwrap(),
        "mine"
    );
}

#[test]
fn an_empty_folder_may_be_filled() {
    let folder = tempfile::tempdir().unwrap();
    let empty = folder.path().join("empty");
    fs::create_dir(&empty).unwrap();
    assert!(style::load(&write_demo(&empty).unwrap()).is_ok());
}

#[test]
fn a_new_style_joins_the_collection_it_is_made_in() {
    let copy = Copy::new();
    let path = new_style(&copy.root(), &answers("Harbour Wide 2")).unwrap();
    assert!(
        path.ends_with("styles/harbour-wide-2/style.toml"),
        "{path:?}"
    );
    let loaded = style::load(&path).unwrap();
    assert_eq!(loaded.style.style.name, "Harbour Wide 2");
    assert_eq!(loaded.style.style.code, "SY-102");
    assert_eq!(loaded.collection.name, "Saltmarsh Yard");
    assert_eq!(style::list_styles(&copy.root()).unwrap().len(), 2);
    let before = fs::read_to_string(&path).unwrap();
    let again = new_style(
        &copy.root(),
        &NewStyle {
            code: "other".into(),
            ..answers("Harbour Wide 2")
        },
    );
    assert!(matches!(again, Err(StartError::Exists(_))), "{again:?}");
    assert_eq!(fs::read_to_string(&path).unwrap(), before);
    assert_eq!(
        names(&copy.root().join("styles")),
        ["ferryman", "harbour-wide-2"]
    );
}

#[test]
fn a_new_style_anywhere_else_begins_a_collection() {
    let folder = tempfile::tempdir().unwrap();
    let root = folder.path().join("deep/new");
    let with_label = NewStyle {
        label: Some("Reed & Sons' \"Own\"".into()),
        ..answers("Bittern")
    };
    let path = new_style(&root, &with_label).unwrap();
    let loaded = style::load(&path).unwrap();
    assert_eq!(loaded.collection.name, "Reed & Sons' \"Own\"");
    assert_eq!(names(&root.join("styles")), ["bittern"]);
    assert!(
        !loaded.text.contains("Ferryman"),
        "the demo's name is left in"
    );
}

#[test]
fn another_collections_own_materials_are_taken() {
    let copy = Copy::new();
    let renamed = |file: &str, from: &str, to: &str| {
        copy.write(file, demo_text(file).replace(from, to));
    };
    renamed("cloths.toml", "[cloths.tideline-14]", "[cloths.heavy]");
    renamed("yarns.toml", "[yarns.rope-", "[yarns.cord-");
    renamed("trims.toml", "[trims.", "[trims.my-");
    renamed("collection.toml", "[workrooms.azenha]", "[workrooms.own]");
    let loaded = style::load(&new_style(&copy.root(), &answers("Bittern")).unwrap()).unwrap();
    assert_eq!(loaded.style.cloth.shell, "heavy");
    assert_eq!(loaded.style.cloth.pocketing, "bargeman-drill");
    assert_eq!(loaded.style.style.workroom, "own");
    assert_eq!(
        loaded.style.seam("inseam").unwrap().rows[0].yarn,
        "cord-105"
    );
    assert_eq!(loaded.style.patch.unwrap().trim, "my-patch");
}

#[test]
fn what_cannot_be_made_leaves_nothing_behind() {
    let copy = Copy::new();
    let cloths = demo_text("cloths.toml");
    let without_lining = &cloths[..cloths.find("[cloths.oar-lining]").unwrap()];
    copy.write("cloths.toml", without_lining);
    let refused = new_style(&copy.root(), &answers("Bittern"));
    let Err(StartError::Invalid(report)) = refused else {
        panic!("{refused:?}")
    };
    assert_eq!(report.problems[0].code, "style::unknown-cloth");
    assert_eq!(names(&copy.root().join("styles")), ["ferryman"]);
    let nameless = new_style(&copy.root(), &answers("***"));
    assert!(matches!(nameless, Err(StartError::Nameless(_))));
    let bad_code = NewStyle {
        code: String::new(),
        ..answers("Heron")
    };
    let fresh = copy.folder.path().join("fresh");
    assert!(matches!(
        new_style(&fresh, &bad_code),
        Err(StartError::Invalid(_))
    ));
    assert_eq!(names(copy.folder.path()), ["saltmarsh"]);
}
