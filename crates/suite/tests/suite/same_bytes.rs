//! The same style and date give the same bytes, in whatever order things are asked for.

use std::fs;
use std::path::{Path, PathBuf};

use suite::fellwork::{run, succeed};
use suite::source::files_below;

const VIEWS: [(&str, &str); 4] = [
    ("front", "outside"),
    ("front", "inside"),
    ("back", "outside"),
    ("back", "inside"),
];

#[test]
fn drawings_pieces_and_pack_come_out_byte_for_byte() {
    let folder = tempfile::tempdir().unwrap();
    // Two copies in folders of other names: where a collection lies must not show.
    let styles = ["here", "elsewhere, later"]
        .map(|name| style::write_demo(&folder.path().join(name)).unwrap())
        .map(|path| path.to_str().unwrap().to_owned());
    for (view, face) in VIEWS {
        let [a, b] = styles
            .each_ref()
            .map(|style| succeed(["draw", style, "--view", view, "--face", face, "-o", "-"]));
        assert!(
            a.starts_with("<svg") && a.len() > 10_000,
            "{view} {face} is no drawing"
        );
        assert!(a == b, "{view} {face} differs");
    }
    let [a, b] = styles
        .each_ref()
        .map(|style| succeed(["pieces", style, "--size", "30x32", "--json"]));
    assert!(a == b, "pieces differ");
    let [a, b] = styles
        .each_ref()
        .map(|style| run(["pack", style, "--date", "2026-03-01", "-o", "-"]).stdout);
    assert!(a.starts_with(b"%PDF") && a == b, "packs differ");
    let [a, b] = styles.each_ref().map(|style| {
        let out = folder.path().join("patterns");
        let to = out.to_str().unwrap();
        succeed([
            "patterns",
            style,
            "--kind",
            "pdf",
            "--size",
            "32x32",
            "--date",
            "2026-03-01",
            "-o",
            to,
        ]);
        let file = fs::read_dir(&out).unwrap().next().unwrap().unwrap().path();
        fs::read(file).unwrap()
    });
    assert!(a.starts_with(b"%PDF") && a == b, "patterns differ");
    let later = run(["pack", &styles[0], "--date", "2026-03-02", "-o", "-"]).stdout;
    assert!(a != later, "the date is not in the pack");
}

#[test]
fn drawing_and_printing_change_no_file_of_the_style() {
    let folder = tempfile::tempdir().unwrap();
    let path = style::write_demo(&folder.path().join("demo")).unwrap();
    let before = everything(path.parent().unwrap());
    let style = path.to_str().unwrap();
    succeed(["check", style]);
    succeed([
        "draw", style, "--view", "back", "--face", "inside", "-o", "-",
    ]);
    assert!(run(["pack", style, "-o", "-"]).status.success());
    assert!(everything(path.parent().unwrap()) == before);
}

/// Every file of a folder with its bytes, but for the versions that looking alone keeps.
fn everything(folder: &Path) -> Vec<(PathBuf, Vec<u8>)> {
    let kept = |file: &PathBuf| file.iter().any(|part| part == style::REVISIONS_FOLDER);
    files_below(folder)
        .into_iter()
        .filter(|file| !kept(file))
        .map(|file| (file.clone(), fs::read(file).unwrap()))
        .collect()
}
