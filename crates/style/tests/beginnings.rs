//! New collections and styles are made whole or not at all, and never over what is there.
#![allow(clippy::unwrap_used)]

mod common;

use std::fs;
use std::path::Path;

use common::{Copy, demo_text};
use style::{LabelWords, NewStyle, SeamId, StartError, new_style, write_demo};

fn answers(name: &str) -> NewStyle {
    NewStyle {
        name: name.to_owned(),
        code: "SY-102".to_owned(),
        ..NewStyle::default()
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
        loaded.style.seam(SeamId::Inseam).unwrap().rows[0].yarn,
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
    let bad_name = NewStyle {
        name: "x".repeat(100_000),
        folder: Some("heron".to_owned()),
        ..answers("Heron")
    };
    let fresh = copy.folder.path().join("fresh");
    let refused = new_style(&fresh, &bad_name);
    assert!(refused.is_err(), "{refused:?}");
    assert_eq!(names(copy.folder.path()), ["saltmarsh"]);
}

/// What is the demo's own in names, words and places; none of it is anybody else's.
const OF_THE_DEMO: [&str; 15] = [
    "saltmarsh",
    "ferryman",
    "azenha",
    "arca",
    "portugal",
    "punt",
    "bight",
    "tideline",
    "bargeman",
    "oar-",
    "rope",
    "night",
    "chalk",
    "keel",
    "rowlock",
];

#[test]
fn a_new_label_has_nothing_of_the_demos_own() {
    for (label, words) in [
        (None, LabelWords::default()),
        (
            Some("Reed Bank".to_owned()),
            LabelWords {
                workroom: Some("The Weir".to_owned()),
                place: Some("Lower Ford".to_owned()),
                origin: Some("Ireland".to_owned()),
            },
        ),
    ] {
        let told = label.is_some();
        let folder = tempfile::tempdir().unwrap();
        let root = folder.path().join("own");
        let asked = NewStyle {
            label,
            words,
            code: String::new(),
            ..answers("Bittern")
        };
        let path = new_style(&root, &asked).unwrap();
        for (file, text) in texts(&root) {
            let small = text.to_lowercase();
            for word in OF_THE_DEMO {
                let found = small.lines().find(|line| line.contains(word));
                assert_eq!(found, None, "{word} in {}", file.display());
            }
        }
        let loaded = style::load(&path).unwrap();
        assert_eq!(loaded.style.style.code, "B-1");
        let says = |trim: &str| loaded.collection.trims[trim].text.clone();
        let care = loaded
            .style
            .labels
            .iter()
            .find(|l| l.trim == "care-label")
            .unwrap();
        if told {
            assert_eq!(loaded.style.style.workroom, "first");
            assert_eq!(loaded.collection.workrooms["first"].name, "The Weir");
            assert_eq!(
                (says("patch"), says("main-label")),
                ("Reed Bank".into(), "Reed Bank".into())
            );
            assert_eq!(care.text.as_deref(), Some("100 % cotton. Made in Ireland."));
        } else {
            assert_eq!(loaded.style.style.workroom, "");
            assert!(loaded.collection.workrooms.is_empty());
            assert_eq!(
                (says("patch"), says("main-label")),
                (String::new(), String::new())
            );
            assert_eq!(care.text, None);
        }
        assert_eq!(loaded.style.art().len(), 0);
        // A second style finds the same materials.
        let second = NewStyle {
            code: String::new(),
            ..answers("Brent")
        };
        let second = style::load(&new_style(&root, &second).unwrap()).unwrap();
        assert_eq!(second.style.style.code, "B-2");
        assert_eq!(second.style.cloth, loaded.style.cloth);
        assert_eq!(second.style.seams, loaded.style.seams);
    }
}

/// Every file below a folder with its text.
fn texts(folder: &Path) -> Vec<(std::path::PathBuf, String)> {
    let mut out = Vec::new();
    for name in names(folder) {
        let path = folder.join(name);
        if path.is_dir() {
            out.extend(texts(&path));
        } else {
            let text = fs::read_to_string(&path).unwrap();
            out.push((path, text));
        }
    }
    out
}

/// Nobody was asked for a pocket that hangs lower on one side, as the demo's right one does.
#[test]
fn a_style_begun_by_questions_has_back_pockets_alike() {
    let (begun, _) = style::foresee(&answers("Bittern"), None).unwrap();
    assert_eq!(begun.pockets.back.left, begun.pockets.back.right);
}

#[test]
fn a_style_begun_by_questions_says_nothing_of_its_wash() {
    let (begun, _) = style::foresee(&answers("Bittern"), None).unwrap();
    assert_eq!(begun.wash, None);
    let copy = Copy::new();
    let folder = new_style(&copy.root(), &answers("Bittern")).unwrap();
    let text = fs::read_to_string(&folder).unwrap();
    assert!(
        !text.contains("[wash]") && !text.contains("Who gives the pair"),
        "{text}"
    );
}

#[test]
fn the_materials_of_a_new_label_are_the_demos_under_other_names() {
    let copy = Copy::new();
    let demo = style::load_collection(&copy.root()).unwrap();
    let (_, own) = style::foresee(&answers("Bittern"), None).unwrap();
    assert_eq!(own.cloths.len(), demo.cloths.len());
    for (a, b) in own.cloths.values().zip(demo.cloths.values()) {
        let same = style::Cloth {
            name: a.name.clone(),
            supply: style::Supply::default(),
            colour_name: String::new(),
            dye: String::new(),
            wash_test: a.wash_test.clone(),
            skew_test: a.skew_test,
            ..b.clone()
        };
        assert_eq!(*a, same);
    }
    assert_eq!(own.yarns.len(), demo.yarns.len());
    for (a, b) in own.yarns.values().zip(demo.yarns.values()) {
        assert_eq!((a.size, a.colour), (b.size, b.colour));
    }
    assert!(own.trims.keys().eq(demo.trims.keys()));
}

#[test]
fn two_styles_never_have_one_code_or_one_folder() {
    let copy = Copy::new();
    let taken = NewStyle {
        code: "sy-101".to_owned(),
        ..answers("Bittern")
    };
    let refused = new_style(&copy.root(), &taken).unwrap_err();
    assert!(
        refused.to_string().contains("has the code sy-101 already"),
        "{refused}"
    );
    let loaded = style::load(&copy.root().join("styles/ferryman")).unwrap();
    assert!(matches!(
        style::copy_style(&loaded, "Heron", "SY-101", None),
        Err(StartError::CodeTaken { .. })
    ));
    // Of names in which no letter is like another, each has a folder and a code of its own.
    for (name, folder, code) in [
        ("渡し舟", "渡し舟", "渡-1"),
        ("渡り鳥", "渡り鳥", "渡-2"),
        ("Чайка", "чайка", "Ч-1"),
        ("عبّارة", "عبّارة", "ع-1"),
        ("Été", "été", "É-1"),
    ] {
        let asked = NewStyle {
            code: String::new(),
            ..answers(name)
        };
        let loaded = style::load(&new_style(&copy.root(), &asked).unwrap()).unwrap();
        assert_eq!(loaded.style.style.code, code);
        assert_eq!(loaded.folder().file_name().unwrap().to_str(), Some(folder));
        // Typed with accents of their own it is the same name.
        let apart = NewStyle {
            name: name.replace('É', "E\u{301}").replace('é', "e\u{301}"),
            ..asked
        };
        assert!(matches!(
            new_style(&copy.root(), &apart),
            Err(StartError::Exists(_))
        ));
    }
    let nameless = NewStyle {
        folder: Some("Star".to_owned()),
        code: String::new(),
        ..answers("★")
    };
    let loaded = style::load(&new_style(&copy.root(), &nameless).unwrap()).unwrap();
    assert_eq!(loaded.style.style.code, "S-1");
    assert!(loaded.path.ends_with("styles/star/style.toml"));
}

#[test]
fn what_a_collection_has_already_is_not_asked_again() {
    let copy = Copy::new();
    let asked = NewStyle {
        words: LabelWords {
            workroom: Some("The Weir".to_owned()),
            ..LabelWords::default()
        },
        ..answers("Bittern")
    };
    let refused = new_style(&copy.root(), &asked).unwrap_err().to_string();
    assert!(refused.contains("is a collection already"), "{refused}");
}

#[cfg(unix)]
#[test]
fn what_is_no_file_is_never_read() {
    let copy = Copy::new();
    let path = copy.root().join("cloths.toml");
    fs::remove_file(&path).unwrap();
    let said = |what: &str| {
        let report = style::load(&copy.root().join("styles/ferryman")).unwrap_err();
        assert_eq!(report.problems[0].code, "style::not-a-file");
        assert_eq!(report.problems[0].message, what);
        // Taking note of a collection does not read it either.
        style::take_note(&copy.root());
        fs::remove_file(&path).unwrap();
    };
    std::os::unix::fs::symlink("/dev/zero", &path).unwrap();
    said("this is a device, not a file");
    let made = std::process::Command::new("mkfifo")
        .arg(&path)
        .status()
        .unwrap();
    assert!(made.success());
    said("this is a pipe, not a file");
}
