//! The workspace as text: its files, and what is code and what is test in them.

use std::fs;
use std::path::{Path, PathBuf};

/// The folder of the workspace.
///
/// # Panics
/// Never: this crate lies two folders below it.
pub fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .ancestors()
        .nth(2)
        .expect("this crate lies in crates/suite")
}

/// A file of a room's own code.
pub struct Source {
    /// The room, such as `draft`.
    pub room: String,
    /// Its path from the workspace's folder, with forward slashes.
    pub path: String,
    /// Everything in it.
    pub text: String,
    /// Whether it is a module that is compiled for tests only.
    pub tests: bool,
}

const FOR_TESTS: &str = "#[cfg(test)]";

impl Source {
    /// The lines that are part of the program: no comments, and nothing from the file's own test module on.
    pub fn code(&self) -> impl Iterator<Item = &str> {
        let lines: Vec<&str> = self.text.lines().map(str::trim).collect();
        let own_tests = lines.windows(2).position(|pair| {
            pair[0] == FOR_TESTS && pair[1].starts_with("mod ") && pair[1].ends_with('{')
        });
        let until = if self.tests {
            0
        } else {
            own_tests.unwrap_or(lines.len())
        };
        lines
            .into_iter()
            .take(until)
            .filter(|line| !line.starts_with("//"))
    }

    /// The paths, without their ends, of the modules this file declares for tests only.
    fn test_modules(&self) -> Vec<String> {
        let stem = self.path.trim_end_matches(".rs");
        let folder = ["/lib", "/main", "/mod"]
            .into_iter()
            .find_map(|name| stem.strip_suffix(name));
        let lines: Vec<&str> = self.text.lines().map(str::trim).collect();
        lines
            .windows(2)
            .filter(|pair| pair[0] == FOR_TESTS)
            .filter_map(|pair| pair[1].strip_prefix("mod ")?.strip_suffix(';'))
            .map(|name| format!("{}/{name}", folder.unwrap_or(stem)))
            .collect()
    }
}

/// The string literals of Rust source, as they are written, each with its line.
#[must_use]
pub fn literals(text: &str) -> Vec<(usize, String)> {
    let mut found = Vec::new();
    let mut rest = text;
    let line_of = |rest: &str| 1 + text[..text.len() - rest.len()].matches('\n').count();
    while let Some(next) = rest.chars().next() {
        let end_of_hashes = rest[next.len_utf8()..].trim_start_matches('#');
        if rest.starts_with("//") {
            rest = rest.find('\n').map_or("", |at| &rest[at..]);
        } else if rest.starts_with("r#") && end_of_hashes.starts_with('"') {
            let hashes = rest.len() - 1 - end_of_hashes.len();
            let end = format!("\"{}", "#".repeat(hashes));
            let inside = &end_of_hashes[1..];
            let length = inside.find(&end).unwrap_or(inside.len());
            found.push((line_of(rest), inside[..length].to_owned()));
            rest = inside.get(length + end.len()..).unwrap_or_default();
        } else if next == '\'' {
            // A character; what else begins so is a lifetime.
            let character = ["'\"'", "'\\\"'", "'\\''"];
            let known = character.iter().find(|c| rest.starts_with(**c));
            rest = &rest[known.map_or(1, |c| c.len())..];
        } else if next == '"' {
            let inside = &rest[1..];
            let mut escaped = false;
            let end = inside.find(|c| {
                let ends = c == '"' && !escaped;
                escaped = c == '\\' && !escaped;
                ends
            });
            let length = end.unwrap_or(inside.len());
            found.push((line_of(rest), inside[..length].to_owned()));
            rest = inside.get(length + 1..).unwrap_or_default();
        } else {
            rest = &rest[next.len_utf8()..];
        }
    }
    found
}

/// Every Rust file of every room, in order; `part` is a folder of the crate such as `src` or `tests`.
///
/// # Panics
/// A file of the workspace cannot be read.
pub fn rust_files(part: &str) -> Vec<Source> {
    let crates = root().join("crates");
    let mut found = Vec::new();
    for folder in entries(&crates) {
        let room = name(&folder);
        for file in files_below(&folder.join(part)) {
            if file.extension().is_some_and(|ext| ext == "rs") {
                found.push(Source {
                    room: room.clone(),
                    path: shown(&file),
                    text: fs::read_to_string(&file).expect("source is UTF-8"),
                    tests: false,
                });
            }
        }
    }
    let for_tests: Vec<String> = found.iter().flat_map(Source::test_modules).collect();
    for file in &mut found {
        file.tests = for_tests.iter().any(|module| {
            file.path == format!("{module}.rs") || file.path.starts_with(&format!("{module}/"))
        });
    }
    found
}

/// Every file below a folder, in order; none when it is not there.
///
/// # Panics
/// A folder cannot be read.
pub fn files_below(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    if !folder.is_dir() {
        return found;
    }
    for entry in entries(folder) {
        if entry.is_dir() {
            found.extend(files_below(&entry));
        } else {
            found.push(entry);
        }
    }
    found
}

/// A path from the workspace's folder, with forward slashes.
pub fn shown(file: &Path) -> String {
    let file = file.strip_prefix(root()).unwrap_or(file);
    file.to_string_lossy().replace('\\', "/")
}

fn entries(folder: &Path) -> Vec<PathBuf> {
    let mut entries: Vec<PathBuf> = fs::read_dir(folder)
        .expect("a folder of the workspace can be read")
        .map(|entry| entry.expect("an entry can be read").path())
        .collect();
    entries.sort();
    entries
}

fn name(path: &Path) -> String {
    path.file_name()
        .unwrap_or_default()
        .to_string_lossy()
        .into_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn source(path: &str, text: &str, tests: bool) -> Source {
        Source {
            room: "draft".to_owned(),
            path: path.to_owned(),
            text: text.to_owned(),
            tests,
        }
    }

    #[test]
    fn literals_are_found_where_they_are_and_nowhere_else() {
        let text =
            "a(\"one\"); // \"no\"\nb('\"', &'static str, \"t\\\"wo\"); r#\"th\"ree\"#;\n\"\";";
        let words = |line, word: &str| (line, word.to_owned());
        assert_eq!(
            literals(text),
            [
                words(1, "one"),
                words(2, "t\\\"wo"),
                words(2, "th\"ree"),
                words(3, "")
            ]
        );
    }

    #[test]
    fn a_test_module_of_its_own_ends_the_code_and_a_declared_one_does_not() {
        let text = "#[cfg(test)]\nmod check;\n// a word\nfn one() {}\n#[cfg(test)]\nmod tests {\nfn two() {}\n}";
        let file = source("crates/draft/src/rules/mod.rs", text, false);
        assert_eq!(
            file.code().collect::<Vec<_>>(),
            [FOR_TESTS, "mod check;", "fn one() {}"]
        );
        assert_eq!(file.test_modules(), ["crates/draft/src/rules/check"]);
        assert_eq!(source("a.rs", text, true).code().count(), 0);
    }
}
