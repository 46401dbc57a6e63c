//! What the README says is so.

use std::fs;

use suite::fellwork::succeed;
use suite::source::root;

fn readme() -> String {
    fs::read_to_string(root().join("README.md")).unwrap()
}

#[test]
fn every_command_is_described_and_no_other() {
    let help = succeed(["--help"]);
    let commands = help.split_once("Commands:\n").unwrap().1;
    let commands = commands.split_once("\n\n").unwrap().0;
    let mut names: Vec<&str> = commands
        .lines()
        .filter(|line| line.starts_with("  ") && !line.starts_with("   "))
        .map(|line| line.split_whitespace().next().unwrap())
        .filter(|name| *name != "help")
        .collect();
    names.sort_unstable();
    let page = readme();
    let mut told: Vec<&str> = page
        .lines()
        .filter_map(|line| line.strip_prefix("| `fellwork "))
        .map(|line| line.split([' ', '`']).next().unwrap())
        .collect();
    told.sort_unstable();
    assert_eq!(told, names);
}

#[test]
fn the_sample_of_a_style_file_is_the_demo_s() {
    let page = readme();
    let sample = page.split_once("## The style file\n").unwrap().1;
    let sample = sample.split_once("Every quantity").unwrap().0;
    let demo = style::demo::files();
    let (_, demo) = demo
        .iter()
        .find(|(path, _)| *path == style::demo::STYLE)
        .unwrap();
    let mut lines = sample.lines().filter(|line| !line.is_empty()).peekable();
    assert!(lines.peek().is_some());
    for line in lines {
        let line = line.strip_prefix("    ").unwrap();
        assert!(
            demo.lines().any(|told| told == line),
            "the demo does not say {line}"
        );
    }
}

#[test]
fn every_file_the_pages_point_to_is_there() {
    for page in ["README.md", "ARCHITECTURE.md", "CHANGELOG.md"] {
        let text = fs::read_to_string(root().join(page)).unwrap();
        for (at, _) in text.match_indices("](") {
            let target = text[at + 2..].split(')').next().unwrap();
            assert!(root().join(target).exists(), "{page} points to {target}");
        }
    }
}
