//! Every package that is built has a licence that asks for no more than to be named.

use std::process::Command;

use suite::source::root;

/// Permissive licences, by their SPDX names.
const PERMISSIVE: &[&str] = &[
    "0BSD",
    "Apache-2.0",
    "Apache-2.0 WITH LLVM-exception",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "CC0-1.0",
    "IJG",
    "ISC",
    "MIT",
    "MPL-2.0",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
];

/// Whether an SPDX expression of `AND` over `OR` can be met; older packages write `/` for `OR`.
fn permissive(expression: &str) -> bool {
    let plain = expression.replace(['(', ')'], "").replace('/', " OR ");
    plain.split(" AND ").all(|all| {
        all.split(" OR ")
            .any(|one| PERMISSIVE.contains(&one.trim()))
    })
}

#[test]
fn every_package_may_be_used_by_anybody() {
    let output = Command::new(env!("CARGO"))
        .args([
            "tree",
            "--workspace",
            "--prefix",
            "none",
            "--edges",
            "all",
            "--offline",
        ])
        .args(["--format", "{p}\t{l}"])
        .current_dir(root())
        .output()
        .unwrap();
    assert!(
        output.status.success(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    let text = String::from_utf8(output.stdout).unwrap();
    let mut seen = 0;
    for line in text.lines() {
        // Features and headings of groups have no licence column.
        let Some((package, licence)) = line.trim_end_matches(" (*)").split_once('\t') else {
            continue;
        };
        seen += 1;
        assert!(permissive(licence), "{package}: {licence}");
    }
    assert!(seen > 100, "{seen} packages");
}

#[test]
fn an_expression_is_met_by_one_of_each() {
    assert!(permissive("MIT OR LGPL-2.1-or-later"));
    assert!(permissive("(MIT OR Apache-2.0) AND Unicode-3.0"));
    assert!(permissive("Unlicense/MIT"));
    assert!(!permissive("MIT AND GPL-3.0"));
    assert!(!permissive("GPL-3.0"));
    assert!(!permissive(""));
}

/// A typeface that is carried lies beside its licence, and both are named where people look.
#[test]
fn every_carried_typeface_has_its_licence_beside_it() {
    let read = |path: &str| std::fs::read_to_string(root().join(path)).unwrap();
    for (licence, typeface, named) in [
        (
            "crates/bench/assets/plex-sans-OFL.txt",
            "crates/bench/assets/plex-sans-400.woff2",
            "IBM Plex Sans",
        ),
        (
            "crates/papers/assets/NotoSansJP-OFL.txt",
            "crates/papers/assets/NotoSansJP-Regular.ttf",
            "Noto Sans JP",
        ),
    ] {
        assert!(root().join(typeface).is_file(), "{typeface}");
        let text = read(licence).to_uppercase();
        assert!(text.contains("SIL OPEN FONT LICENSE"), "{licence}");
        assert!(read("README.md").contains(named), "{named}");
        let architecture = read("ARCHITECTURE.md");
        assert!(architecture.contains(named), "{named}");
        assert!(architecture.contains(licence), "{licence}");
    }
}
