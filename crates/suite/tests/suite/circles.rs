//! Files that use one another in a circle can only be understood together: no circle is of many files.

use std::collections::{BTreeMap, BTreeSet};

use suite::source::{Source, rust_files};

/// So many files may use one another in a circle.
const MOST: usize = 3;

/// The names of a module below its crate, or of something in one.
type Names = Vec<String>;

/// What a module says of others.
#[derive(Default)]
struct Module {
    /// Every path it names, as it is written.
    named: Vec<Names>,
    /// What it gives on as its own: by which name, and where it is from.
    given_on: BTreeMap<String, Names>,
}

/// The modules of a room.
struct Room(BTreeMap<Names, Module>);

fn names(path: &str) -> Names {
    path.split("::")
        .map(|name| name.trim().to_owned())
        .collect()
}

/// Where a file stands among the modules of its crate.
fn place(file: &Source) -> Names {
    let (_, below) = file.path.split_once("/src/").unwrap();
    let stem = below.trim_end_matches(".rs");
    let stem = stem.strip_suffix("/mod").unwrap_or(stem);
    match stem {
        "lib" | "main" => Names::new(),
        stem => stem.split('/').map(str::to_owned).collect(),
    }
}

/// Every path of a tree such as `style::{self, Edit as Change}`, and the name it goes by.
fn paths_of(before: &str, tree: &str, found: &mut Vec<(String, Names)>) {
    let tree = tree.trim();
    if tree.is_empty() {
        return;
    }
    if let Some((stem, inside)) = tree.split_once('{') {
        let inside = inside.trim_end().trim_end_matches('}');
        let mut depth = 0_usize;
        let parts = inside.split(|c| {
            match c {
                '{' => depth += 1,
                '}' => depth -= 1,
                _ => {}
            }
            c == ',' && depth == 0
        });
        let before = format!("{before}{}", stem.trim());
        for part in parts {
            // The braces of a part that is a tree itself are all in it.
            let open = part.matches('{').count();
            let closed = format!(
                "{part}{}",
                "}".repeat(open - part.matches('}').count().min(open))
            );
            paths_of(&before, &closed, found);
        }
        return;
    }
    let (path, name) = tree.split_once(" as ").unwrap_or((tree, ""));
    let mut path = names(&format!("{before}{path}"));
    if path.len() > 1 && path.last().is_some_and(|last| last == "self") {
        path.pop();
    }
    let name = match name.trim() {
        "" => path.last().cloned().unwrap_or_default(),
        name => name.to_owned(),
    };
    found.push((name, path));
}

/// The `use` declarations of some code, each with whether it gives on what it names; and the code without them.
fn declarations(code: &str) -> (Vec<(bool, String)>, String) {
    let mut found = Vec::new();
    let mut rest = String::new();
    let mut lines = code.lines();
    while let Some(line) = lines.next() {
        let line = line.trim();
        let (visible, tree) = match line.split_once("use ") {
            Some((before, tree)) if before.is_empty() || before.starts_with("pub") => {
                (!before.is_empty(), tree)
            }
            _ => {
                rest.push_str(line);
                rest.push('\n');
                continue;
            }
        };
        let mut tree = tree.to_owned();
        while !tree.contains(';') {
            let Some(more) = lines.next() else { break };
            tree.push_str(more.trim());
        }
        let tree = tree.split(';').next().unwrap_or_default();
        found.push((visible, tree.to_owned()));
    }
    (found, rest)
}

/// Every path of two names or more in some code.
fn paths_in(code: &str) -> impl Iterator<Item = Names> {
    let parts = code.split(|c: char| !(c.is_alphanumeric() || c == '_' || c == ':'));
    parts
        .map(|part| part.trim_matches(':'))
        .filter(|part| part.contains("::") && !part.contains(":::"))
        .map(names)
}

impl Module {
    fn read(file: &Source) -> Self {
        let code: Vec<&str> = file.code().collect();
        let (declared, rest) = declarations(&code.join("\n"));
        let mut module = Self::default();
        for (gives_on, tree) in declared {
            let mut paths = Vec::new();
            paths_of("", &tree, &mut paths);
            if gives_on {
                module.given_on.extend(paths);
            } else {
                module.named.extend(paths.into_iter().map(|(_, path)| path));
            }
        }
        module.named.extend(paths_in(&rest));
        module
    }
}

impl Room {
    fn of(files: &[&Source]) -> Self {
        let modules = files.iter().map(|file| (place(file), Module::read(file)));
        Self(modules.collect())
    }

    /// A path from the crate's own top, where it is one of this room.
    fn absolute(&self, from: &Names, path: &[String]) -> Option<Names> {
        let (first, rest) = path.split_first()?;
        let ups = path.iter().take_while(|name| *name == "super").count();
        let (start, rest): (&[String], &[String]) = match first.as_str() {
            "crate" => (&[], rest),
            "self" => (from, rest),
            "super" => (&from[..from.len().checked_sub(ups)?], &path[ups..]),
            _ => {
                let child = [from.as_slice(), &path[..1]].concat();
                let known =
                    self.0.contains_key(&child) || self.0.get(from)?.given_on.contains_key(first);
                known.then_some(())?;
                (from, path)
            }
        };
        Some([start, rest].concat())
    }

    /// The module that a path of this room leads into: what a module only gives on is looked for where it is from.
    fn module(&self, path: &[String], steps: usize) -> Option<Names> {
        let known = |length: &usize| self.0.contains_key(&path[..*length]);
        let length = (0..=path.len()).rev().find(known)?;
        let (module, rest) = path.split_at(length);
        if let Some((name, after)) = rest.split_first()
            && let Some(from) = self.0[module].given_on.get(name)
            && steps > 0
        {
            let from = self.absolute(&module.to_vec(), from)?;
            return self.module(&[from.as_slice(), after].concat(), steps - 1);
        }
        Some(module.to_vec())
    }

    /// Which modules each uses.
    fn arrows(&self) -> BTreeMap<&Names, BTreeSet<Names>> {
        let of = |module: &Names, says: &Module| {
            let paths = says.named.iter();
            let used = paths.filter_map(|path| self.module(&self.absolute(module, path)?, 8));
            used.filter(|used| used != module).collect()
        };
        let modules = self.0.iter();
        modules.map(|(name, says)| (name, of(name, says))).collect()
    }

    /// The circles of more files than [`MOST`], each in order.
    fn circles(&self) -> Vec<Vec<&Names>> {
        let arrows = self.arrows();
        let reached = |from: &Names| {
            let mut reached = BTreeSet::new();
            let mut waiting = vec![from.clone()];
            while let Some(next) = waiting.pop() {
                for to in &arrows[&next] {
                    if reached.insert(to.clone()) {
                        waiting.push(to.clone());
                    }
                }
            }
            reached
        };
        let reached: BTreeMap<&Names, BTreeSet<Names>> =
            self.0.keys().map(|name| (name, reached(name))).collect();
        let mut circles: Vec<Vec<&Names>> = Vec::new();
        for name in self.0.keys() {
            if circles.iter().any(|circle| circle.contains(&name)) {
                continue;
            }
            let both =
                |other: &&Names| reached[name].contains(*other) && reached[*other].contains(name);
            let circle: Vec<&Names> = self.0.keys().filter(both).collect();
            if circle.len() > MOST {
                circles.push(circle);
            }
        }
        circles
    }
}

#[test]
fn no_circle_is_of_many_files() {
    let files = rust_files("src");
    let mut rooms: BTreeMap<&str, Vec<&Source>> = BTreeMap::new();
    for file in files.iter().filter(|file| !file.tests) {
        rooms.entry(&file.room).or_default().push(file);
    }
    let mut wrong = Vec::new();
    for (room, files) in &rooms {
        for circle in Room::of(files).circles() {
            let circle: Vec<String> = circle.iter().map(|names| names.join("::")).collect();
            wrong.push(format!("{room}: {}", circle.join(", ")));
        }
    }
    assert!(wrong.is_empty(), "circles of files:\n{}", wrong.join("\n"));
}

#[test]
fn a_circle_is_found_through_what_a_module_gives_on() {
    let source = |path: &str, text: &str| Source {
        room: "draft".to_owned(),
        path: format!("crates/draft/src/{path}"),
        text: text.to_owned(),
        tests: false,
    };
    let files = [
        source(
            "lib.rs",
            "mod a;\nmod b;\nmod c;\npub use c::Third;\npub use a::{\n    First, Other as Another,\n};\n",
        ),
        source("a.rs", "use crate::b::{self, Second};\npub struct First;\n"),
        source(
            "b/mod.rs",
            "mod deep;\nuse super::Third;\npub use deep::Second;\n",
        ),
        source(
            "b/deep.rs",
            "fn f() -> super::super::c::Third { todo(crate::Third) }\n",
        ),
        source("c.rs", "use crate::d;\nfn g(x: crate::b::Second) {}\n"),
        source(
            "d.rs",
            "// use crate::a;\nuse std::{fmt::{self, Display}, io};\nuse crate::Another;\n#[cfg(test)]\nmod tests {\n    use crate::e;\n}\n",
        ),
        source("e.rs", "use crate::d;\n"),
    ];
    let room = Room::of(&files.iter().collect::<Vec<_>>());
    let found: Vec<Vec<String>> = room
        .circles()
        .iter()
        .map(|circle| circle.iter().map(|names| names.join("::")).collect())
        .collect();
    assert_eq!(found, [["a", "b", "b::deep", "c", "d"]]);
}
