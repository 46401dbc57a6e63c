//! `fellwork compare`: what is different between two versions of a style.

use jobs::system;
use serde::Serialize;
use style::Change;

use crate::args::Compare;
use crate::command::history::{called, of, read, version};
use crate::command::load;
use crate::exit::Exit;
use crate::printed;
use crate::trouble::Trouble;

/// The version of the JSON's shape.
const FORMAT: u32 = 1;

#[derive(Serialize)]
struct Compared<'a> {
    format: u32,
    a: u32,
    b: u32,
    same_text: bool,
    changes: &'a [Change],
}

pub fn run(asked: &Compare) -> Result<Exit, Trouble> {
    let loaded = load(&asked.style)?;
    let history = of(&loaded)?;
    let a = version(&history, &asked.a)?;
    let b = version(&history, &asked.b)?;
    let (before, after) = (read(&loaded, a)?, read(&loaded, b)?);
    let changes = style::difference_in(&before.style, &after.style, system(&loaded.collection));
    let same_text = a.id == b.id;
    let text = if asked.json {
        let compared = Compared {
            format: FORMAT,
            a: a.number,
            b: b.number,
            same_text,
            changes: &changes,
        };
        serde_json::to_string_pretty(&compared)? + "\n"
    } else {
        let mut text = format!("{} → {}\n", called(&history, a), called(&history, b));
        match (changes.as_slice(), same_text) {
            ([], true) => text.push_str("nothing is different\n"),
            ([], false) => text.push_str("only comments, or the way it is written\n"),
            (changes, _) => changes
                .iter()
                .for_each(|change| text.push_str(&format!("{}\n", change.sentence))),
        }
        trade::plain(&text).into_owned()
    };
    printed::to_stdout(text)?;
    Ok(Exit::Done)
}
