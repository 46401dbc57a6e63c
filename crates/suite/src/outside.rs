//! Tools that are not ours. On a maker's machine a check whose tool is missing is skipped with a
//! printed note; where `CI` is set it fails, so that no check is lost unnoticed.

use std::env;
use std::ffi::OsStr;
use std::io::Write;
use std::path::PathBuf;
use std::process::Command;

/// Whether this is the machine where every check is made, and made whole: `CI` is set, and not to nothing.
pub fn every_check() -> bool {
    says_something(env::var_os("CI").as_deref())
}

fn says_something(value: Option<&OsStr>) -> bool {
    value.is_some_and(|value| !value.is_empty())
}

/// Where a program lies on the search path, under the first of several names that is there.
///
/// # Panics
/// None is there, and this is the machine where all have to be (`CI` is set).
pub fn tool(names: &[&str]) -> Option<PathBuf> {
    let path = env::var_os("PATH").unwrap_or_default();
    let found = names.iter().find_map(|name| {
        env::split_paths(&path)
            .map(|folder| folder.join(name))
            .find(|file| file.is_file())
    });
    if found.is_none() {
        skipped(&format!("{} is not installed", names.join(" or ")));
    }
    found
}

/// A Python that has numpy and shapely.
///
/// # Panics
/// There is none, and `CI` is set.
pub fn python() -> Option<PathBuf> {
    python_with("numpy, shapely")
}

/// A Python that has some packages, named as Python imports them.
///
/// # Panics
/// There is none, and `CI` is set.
pub fn python_with(packages: &str) -> Option<PathBuf> {
    let python = tool(&["python3"])?;
    let has_all = Command::new(&python)
        .args(["-c", &format!("import {packages}")])
        .output()
        .is_ok_and(|output| output.status.success());
    if !has_all {
        skipped(&format!(
            "python3 has not all of {packages} (crates/suite/checks/requirements.txt)"
        ));
        return None;
    }
    Some(python)
}

/// The accessibility checker axe-core: where `FELLWORK_AXE` says, or where `.ci/run` puts it.
///
/// # Panics
/// It is not there, and `CI` is set.
pub fn axe() -> Option<String> {
    let named = env::var_os("FELLWORK_AXE").map(PathBuf::from);
    let file = named.unwrap_or_else(|| crate::source::root().join("target/checks/axe.min.js"));
    let script = std::fs::read_to_string(&file);
    if script.is_err() {
        skipped(&format!(
            "axe-core is not at {} (.ci/run fetches it)",
            file.display()
        ));
    }
    script.ok()
}

/// Says on standard error, past the test harness that would hide it, that a check is not made.
///
/// # Panics
/// `CI` is set.
pub fn skipped(why: &str) {
    assert!(
        !every_check(),
        "{why}, and with CI set every check has to be made"
    );
    let name = std::thread::current()
        .name()
        .unwrap_or("a check")
        .to_owned();
    // Nobody can be told when standard error is closed.
    let _ = writeln!(std::io::stderr(), "SKIPPED {name}: {why}");
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_empty_variable_is_none() {
        assert!(!says_something(None));
        assert!(!says_something(Some(OsStr::new(""))));
        assert!(says_something(Some(OsStr::new("true"))));
    }
}
