//! `fellwork compare`: what is different between two versions of a file.

use answers::Compared;
use style::Teller;

use crate::args::Compare;
use crate::command::history::{called, in_words, kept, of, read, units, version};
use crate::exit::Exit;
use crate::printed;
use crate::trouble::Trouble;

pub fn run(asked: &Compare) -> Result<Exit, Trouble> {
    let kept = kept(&asked.file)?;
    let history = of(&kept)?;
    let a = version(&history, &asked.a)?;
    let b = version(&history, &asked.b)?;
    let teller = Teller::of(&kept);
    let (before, after) = (read(&teller, a)?, read(&teller, b)?);
    let changes = in_words(&teller.changes(&before, &after), units(&kept));
    let same_text = a.id == b.id;
    if asked.json {
        let compared = Compared {
            a: a.number,
            b: b.number,
            same_text,
            changes: &changes,
        };
        printed::json(&answers::compare(&compared)?)?;
    } else {
        let mut text = format!("{} → {}\n", called(&history, a), called(&history, b));
        match (changes.as_slice(), same_text) {
            ([], true) => text.push_str("nothing is different\n"),
            ([], false) => text.push_str("only comments, or the way it is written\n"),
            (changes, _) => changes
                .iter()
                .for_each(|change| text.push_str(&format!("{}\n", change.sentence))),
        }
        printed::words(&text)?;
    }
    Ok(Exit::Done)
}
