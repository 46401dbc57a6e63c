//! `fellwork sew`: how one size is sewn.

use std::fmt::Write;

use sewing::Garment;
use sewing::work::{Operation, order_notes, sewing_order};
use trade::System;
use words::Words;

use crate::args::Sew;
use crate::command::named_file::load;
use crate::exit::Exit;
use crate::printed;
use crate::trouble::Trouble;

pub fn run(asked: &Sew) -> Result<Exit, Trouble> {
    let loaded = load(&asked.style)?;
    let size = jobs::size_of(&loaded.style, asked.size)?;
    let garment = sewing::make(&loaded.style, &loaded.collection, size);
    if asked.json {
        printed::json(&answers::sewing_order(&garment)?)?;
    } else {
        printed::words(&order(&garment, Words::english()))?;
    }
    Ok(Exit::Done)
}

/// One block an operation.
fn order(garment: &Garment, words: &Words) -> String {
    let style = &garment.doc.style;
    let head = words::say::SewHead {
        code: style.code.as_str(),
        name: style.name.as_str(),
        size: garment.size.to_string(),
    };
    let mut out = words.say(head) + "\n";
    for note in order_notes(garment) {
        // Writing into a string does not fail.
        let _ = writeln!(out, "- {}", words.named(note));
    }
    for operation in sewing_order(garment) {
        block(&mut out, &operation, words);
    }
    out
}

fn block(out: &mut String, operation: &Operation, words: &Words) {
    let machine = operation.machine.words(words).to_owned();
    let gauge = operation.gauge_words().map(|gauge| words.saying(&gauge));
    let needle = operation.needle_words().map(|needle| words.saying(&needle));
    let attachment = operation.attachment.as_ref();
    let attachment = attachment.map(|attachment| words.saying(&attachment.what));
    let with: Vec<String> = [Some(machine), gauge, needle, attachment]
        .into_iter()
        .flatten()
        .collect();
    // Writing into a string does not fail.
    let _ = writeln!(
        out,
        "\n{:>3}  {}\n     {}",
        operation.number,
        words.saying(&operation.name),
        with.join(", ")
    );
    for needle in &operation.needles {
        let set = needle.set_to.map(|set| set.figure().show(System::Inch));
        let line = [
            Some(needle.stitch.to_string()),
            set,
            Some(needle.yarn.key.clone()),
            Some(needle.under.key.clone()),
            needle.ends.as_ref().map(|ends| words.saying(ends)),
        ];
        let line: Vec<String> = line.into_iter().flatten().collect();
        let _ = writeln!(out, "     {}", line.join(", "));
    }
    let missing = operation.not_stated.as_ref();
    let missing = missing.map(|missing| {
        let what = words.saying(&missing.what);
        words.say(words::say::SewNotStated { what })
    });
    let minds = operation.mind.iter().map(|mind| words.saying(mind));
    for mind in missing.into_iter().chain(minds) {
        let _ = writeln!(out, "     - {mind}");
    }
}
