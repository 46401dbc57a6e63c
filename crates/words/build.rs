//! A method for every message of the English catalogue.
// So a build script tells cargo what it was built from.
#![allow(clippy::print_stdout)]

use std::collections::BTreeMap;
use std::error::Error;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::{env, fs};

#[path = "src/reading.rs"]
mod reading;

use reading::{Kind, Message};

const ENGLISH: &str = "languages/en";

fn main() -> Result<(), Box<dyn Error>> {
    println!("cargo::rerun-if-changed={ENGLISH}");
    println!("cargo::rerun-if-changed=src/reading.rs");
    let mut files: Vec<PathBuf> = fs::read_dir(ENGLISH)?
        .map(|entry| Ok(entry?.path()))
        .collect::<Result<_, std::io::Error>>()?;
    files.retain(|file| file.extension().is_some_and(|ext| ext == "ftl"));
    files.sort();
    let mut methods = String::new();
    let (mut keys, mut says) = (String::new(), String::new());
    let mut embedded = String::new();
    let mut places: BTreeMap<String, PathBuf> = BTreeMap::new();
    for file in files {
        println!("cargo::rerun-if-changed={}", file.display());
        let text = fs::read_to_string(&file)?;
        let messages =
            reading::messages(&text).map_err(|what| format!("{}: {what}", file.display()))?;
        for message in messages {
            if message.given.len() < 2 {
                write_method(&mut methods, &message, &file)?;
            }
            if message.given.is_empty() {
                write_key(&mut keys, &message)?;
            } else {
                write_said(&mut says, &message)?;
            }
            if let Some(other) = places.insert(message.key.clone(), file.clone()) {
                let [other, file] = [&other, &file].map(|path| path.display());
                return Err(format!("`{}` is in {other} and in {file}", message.key).into());
            }
        }
        let whole = fs::canonicalize(&file)?;
        writeln!(
            embedded,
            "    include_str!({:?}),",
            whole.display().to_string()
        )?;
    }
    let code = format!(
        "const ENGLISH_FILES: &[&str] = &[\n{embedded}];\n\nimpl Words {{\n{methods}}}\n\n\
         /// The messages into which nothing is put, by name.\npub mod key {{\n    use crate::Key;\n\n{keys}}}\n\n\
         /// The messages into which something is put, each with what it takes.\npub mod say {{\n    use crate::{{Given, Said}};\n\n{says}}}\n"
    );
    let out = PathBuf::from(env::var("OUT_DIR")?).join("catalogue.rs");
    fs::write(out, code)?;
    Ok(())
}

fn write_method(code: &mut String, message: &Message, file: &Path) -> std::fmt::Result {
    let key = &message.key;
    let name = key.replace('-', "_");
    let place = file.file_name().unwrap_or_default().to_string_lossy();
    writeln!(code, "    /// `{key}` of {place}.\n    #[must_use]")?;
    if message.given.is_empty() {
        return writeln!(
            code,
            "    pub fn {name}(&self) -> &str {{\n        self.plain({key:?})\n    }}\n"
        );
    }
    let mut parameters = String::new();
    let mut values = String::new();
    for (given, kind) in &message.given {
        let parameter = given.replace('-', "_");
        let (takes, makes) = match kind {
            Kind::Text => ("impl Display", "crate::text"),
            Kind::Count => ("impl TryInto<u64>", "crate::count"),
        };
        write!(parameters, ", {parameter}: {takes}")?;
        write!(values, "({given:?}, {makes}({parameter})), ")?;
    }
    writeln!(
        code,
        "    pub fn {name}(&self{parameters}) -> String {{\n        self.told({key:?}, &[{values}])\n    }}\n"
    )
}

fn write_key(code: &mut String, message: &Message) -> std::fmt::Result {
    let key = &message.key;
    let name = key.replace('-', "_").to_uppercase();
    writeln!(
        code,
        "    /// `{key}`\n    pub const {name}: Key = Key({key:?});"
    )
}

/// A struct with a field for each thing that is put in, so that none can take another's place.
fn write_said(code: &mut String, message: &Message) -> std::fmt::Result {
    let key = &message.key;
    let name: String = key
        .split(['-', '_'])
        .map(|part| {
            let (first, rest) = part.split_at(usize::from(!part.is_empty()));
            first.to_uppercase() + rest
        })
        .collect();
    let (mut fields, mut types, mut bounds, mut given) = Default::default();
    let pieces: [&mut String; 4] = [&mut fields, &mut types, &mut bounds, &mut given];
    let [fields, types, bounds, given] = pieces;
    for (index, (put, kind)) in message.given.iter().enumerate() {
        let field = put.replace('-', "_");
        let (bound, makes) = match kind {
            Kind::Text => ("Into<Given>", format!("self_.{field}.into()")),
            Kind::Count => ("TryInto<u64>", format!("crate::counted(self_.{field})")),
        };
        writeln!(
            fields,
            "        /// `${put}`\n        pub {field}: T{index},"
        )?;
        write!(types, "T{index}, ")?;
        write!(bounds, "T{index}: {bound}, ")?;
        write!(given, "({put:?}, {makes}), ")?;
    }
    writeln!(
        code,
        "    /// `{key}`\n    pub struct {name}<{types}> {{\n{fields}    }}\n\n    \
         impl<{bounds}> From<{name}<{types}>> for Said {{\n        \
         fn from(self_: {name}<{types}>) -> Self {{\n            Said::with({key:?}, vec![{given}])\n        }}\n    }}\n\n    \
         impl<{bounds}> From<{name}<{types}>> for Given {{\n        \
         fn from(said: {name}<{types}>) -> Self {{\n            Said::from(said).into()\n        }}\n    }}\n"
    )
}
