//! `cargo run` and `cargo test --workspace` share every dependency, so that a newcomer builds it once.

use std::collections::BTreeSet;
use std::process::Command;

use suite::source::root;

/// Every package with its features, as cargo settles them with these kinds of dependencies.
fn settled(kinds: &str) -> BTreeSet<String> {
    let output = Command::new(env!("CARGO"))
        .args(["tree", "--workspace", "--prefix", "none", "--edges", kinds])
        .args(["--format", "{p} {f}", "--no-dedupe", "--offline"])
        .current_dir(root())
        .output()
        .unwrap();
    let words = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{words}");
    String::from_utf8(output.stdout)
        .unwrap()
        .lines()
        .map(str::to_owned)
        .collect()
}

#[test]
fn running_and_testing_settle_on_the_same_features() {
    let (run, test) = (settled("normal,build"), settled("normal,build,dev"));
    let apart: Vec<&String> = run.difference(&test).collect();
    assert!(
        apart.is_empty(),
        "built twice, because tests ask for other features: {apart:?}; name in suite's dependencies what asks for them"
    );
}

#[test]
fn one_program_can_be_run() {
    // With a second one, or with default-members, `cargo run` would need to be told which.
    let manifest = std::fs::read_to_string(root().join("Cargo.toml")).unwrap();
    assert!(!manifest.contains("default-members"));
}
