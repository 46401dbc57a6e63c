//! Nothing that Fellwork did not make is written over, whatever `-o` names.
#![allow(clippy::unwrap_used)]

mod common;

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Output;

use common::{Demo, code, fellwork, names, stderr};

fn draw(demo: &Demo, output: &Path, more: &[&str]) -> Output {
    fellwork()
        .arg("draw")
        .arg(demo.style())
        .args(["--view", "front", "--face", "outside", "-o"])
        .arg(output)
        .args(more)
        .output()
        .unwrap()
}

/// Every file below a folder with what it holds, but for the versions that looking alone keeps.
fn everything(folder: &Path) -> Vec<(PathBuf, Vec<u8>)> {
    let mut all = Vec::new();
    for name in names(folder) {
        let path = folder.join(name);
        if path.ends_with(style::REVISIONS_FOLDER) {
            continue;
        }
        if path.is_dir() {
            all.extend(everything(&path));
        } else {
            all.push((path.clone(), fs::read(&path).unwrap()));
        }
    }
    all
}

#[test]
fn no_file_of_a_collection_is_written_over() {
    let demo = Demo::new();
    let before = everything(&demo.collection());
    let files = [
        "styles/ferryman/style.toml",
        "collection.toml",
        "cloths.toml",
        "yarns.toml",
        "trims.toml",
        "orders/spring.toml",
        "styles/ferryman/art/patch.svg",
        "styles/ferryman/.revisions/x.svg",
        "lays/x.svg",
        "new.toml",
    ];
    for file in files {
        let place = demo.collection().join(file);
        for more in [&[] as &[&str], &["--replace"]] {
            let output = draw(&demo, &place, more);
            let words = stderr(&output);
            assert_eq!(code(&output), 2, "{file}: {words}");
            assert!(words.contains("name"), "{file}: {words}");
        }
    }
    let link = demo.root().join("link.svg");
    let art = demo.collection().join("styles/ferryman/art/patch.svg");
    #[cfg(unix)]
    {
        std::os::unix::fs::symlink(&art, &link).unwrap();
        assert_eq!(code(&draw(&demo, &link, &["--replace"])), 2);
    }
    // A drawing that Fellwork made is the maker's own once a style names it.
    let own = demo.root().join("own.svg");
    assert_eq!(code(&draw(&demo, &own, &[])), 0);
    fs::copy(&own, &art).unwrap();
    assert_eq!(code(&draw(&demo, &art, &[])), 2);
    let (path, patch) = before
        .iter()
        .find(|(path, _)| path.ends_with("patch.svg"))
        .unwrap();
    fs::write(path, patch).unwrap();
    assert!(
        everything(&demo.collection()) == before,
        "something changed"
    );
}

#[test]
fn a_name_has_to_end_as_what_is_written() {
    let demo = Demo::new();
    for (name, right) in [("x.png", "x.svg"), ("x", "x.svg"), ("x.toml", "x.svg")] {
        let place = demo.root().join(name);
        let output = draw(&demo, &place, &["--replace"]);
        assert_eq!(code(&output), 2);
        assert!(stderr(&output).contains(right), "{}", stderr(&output));
        assert!(!place.exists());
    }
    let pack = |name: &str| {
        let place = demo.root().join(name);
        let mut program = fellwork();
        program.arg("pack").arg(demo.style()).arg("-o").arg(&place);
        let output = program.output().unwrap();
        assert!(!place.exists());
        (code(&output), stderr(&output))
    };
    let (rc, words) = pack("pack.svg");
    assert!(rc == 2 && words.contains("pack.pdf"), "{words}");
    let lay = fellwork()
        .arg("lay")
        .arg(demo.style())
        .args(["--seconds", "1", "-o"])
        .arg(demo.root().join("lay.png"))
        .output()
        .unwrap();
    assert_eq!(code(&lay), 2);
    assert!(stderr(&lay).contains("lay.dxf"), "{}", stderr(&lay));
}

#[test]
fn another_file_is_written_over_only_when_asked() {
    let demo = Demo::new();
    let mine = demo.root().join("mine.svg");
    fs::write(&mine, "<svg xmlns=\"http://www.w3.org/2000/svg\"/>").unwrap();
    let refused = draw(&demo, &mine, &[]);
    assert_eq!(code(&refused), 2);
    assert!(
        stderr(&refused).contains("--replace"),
        "{}",
        stderr(&refused)
    );
    assert!(fs::read_to_string(&mine).unwrap().ends_with("svg\"/>"));
    assert_eq!(code(&draw(&demo, &mine, &["--replace"])), 0);
    // Now it is ours, and may be drawn again.
    assert_eq!(code(&draw(&demo, &mine, &[])), 0);
    // A pack over a pack, but not over somebody else's pages.
    let pdf = demo.root().join("pack.pdf");
    let pack = || {
        let mut program = fellwork();
        program.arg("pack").arg(demo.style()).arg("-o").arg(&pdf);
        code(&program.output().unwrap())
    };
    assert_eq!((pack(), pack()), (0, 0));
    fs::write(&pdf, "%PDF-1.7 a letter").unwrap();
    assert_eq!(pack(), 2);
    assert_eq!(fs::read(&pdf).unwrap(), b"%PDF-1.7 a letter");
}

#[test]
fn files_in_a_folder_are_written_all_or_none() {
    let demo = Demo::new();
    let into = demo.root().join("patterns");
    let patterns = |kind: &str, into: &Path, more: &[&str]| {
        let mut program = fellwork();
        program.arg("patterns").arg(demo.style());
        program.args(["--kind", kind, "--band", "weft", "--size", "32x32", "-o"]);
        let output = program.arg(into).args(more).output().unwrap();
        (code(&output), stderr(&output))
    };
    // What Fellwork wrote it writes again, of every kind.
    for kind in ["dxf", "svg", "hpgl", "pdf"] {
        for _ in 0..2 {
            let (rc, words) = patterns(kind, &into, &[]);
            assert_eq!(rc, 0, "{kind}: {words}");
        }
    }
    let theirs = into.join("ferryman.dxf");
    fs::write(&theirs, "0\nSECTION\n2\nENTITIES\n0\nENDSEC\n0\nEOF\n").unwrap();
    let (rc, words) = patterns("dxf", &into, &[]);
    assert!(rc == 2 && words.contains("ferryman.dxf"), "{words}");
    assert!(fs::read_to_string(&theirs).unwrap().contains("ENTITIES"));
    assert_eq!(patterns("dxf", &into, &["--replace"]).0, 0);
    let (rc, words) = patterns("dxf", &demo.style_file(), &["--replace"]);
    assert!(rc == 2 && words.contains("is a file"), "{words}");
    let (rc, words) = patterns("dxf", &demo.collection().join("lays"), &[]);
    assert!(rc == 2 && words.contains("collection"), "{words}");
}

/// A story is a page of its own, and is written over like everything else that was made here.
#[test]
fn a_story_is_written_over_only_when_it_is_one() {
    let demo = Demo::new();
    let folder = tempfile::tempdir().unwrap();
    let page = folder.path().join("story.html");
    let tell_worn = |output: &Path, wear: &str| {
        fellwork()
            .arg("story")
            .arg(demo.style())
            .args(["--wear", wear, "-o"])
            .arg(output)
            .output()
            .unwrap()
    };
    let tell = |output: &Path| tell_worn(output, "0");
    assert_eq!(code(&tell(&page)), 0);
    let first = fs::read(&page).unwrap();
    assert!(first.starts_with(b"<!DOCTYPE html>"));
    assert_eq!(code(&tell(&page)), 0);
    assert_eq!(
        fs::read(&page).unwrap(),
        first,
        "the same style, the same bytes"
    );
    let is_forecast = |page: &[u8]| String::from_utf8_lossy(page).contains("a forecast");
    assert!(!is_forecast(&first));
    let worn = folder.path().join("worn.html");
    assert_eq!(code(&tell_worn(&worn, "0.5")), 0);
    assert!(is_forecast(&fs::read(&worn).unwrap()));
    fs::write(&page, "<!DOCTYPE html><title>mine</title>").unwrap();
    let kept = tell(&page);
    assert_eq!(code(&kept), 2, "{}", stderr(&kept));
    assert!(fs::read_to_string(&page).unwrap().contains("mine"));
}
