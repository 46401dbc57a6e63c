//! `fellwork check`: what a pattern cutter or sewer would notice, in every size.

mod order;
mod sizes;
mod table;

use answers::{Checked, grouped};
use cutting::{Plan, cut_run, noticed};
use draft::Severity;

use crate::args::Check;
use crate::command::named_file::load;
use crate::exit::Exit;
use crate::printed;
use crate::trouble::Trouble;

pub fn run(asked: &Check) -> Result<Exit, Trouble> {
    if style::is_order(&asked.style) {
        return order::run(asked);
    }
    let loaded = match load(&asked.style) {
        Ok(loaded) => loaded,
        Err(trouble) => {
            if let (true, Trouble::Input(report)) = (asked.json, &trouble) {
                printed::json(&answers::unread(report)?)?;
            }
            return Err(trouble);
        }
    };
    let run = sewing::make_run(&loaded.style, &loaded.collection);
    let cuts = cut_run(&run, &Plan::of(&loaded.style));
    let mut noticed = noticed(&run, &cuts);
    let letters = papers::letters(&loaded);
    for (_, found) in &mut noticed {
        found.extend(letters.iter().cloned());
    }
    let of_size = noticed
        .iter()
        .map(|(size, found)| (*size, found.as_slice()));
    let findings = grouped(&loaded.style, of_size);
    if asked.json {
        printed::json(&answers::check(&Checked {
            loaded: &loaded,
            run: &run,
            findings: &findings,
            measures: asked.measures,
        })?)?;
    } else {
        let mut text = table::findings(&loaded, &run, &findings);
        if asked.measures {
            text.push_str(&table::measures(&run));
        }
        printed::words(&text)?;
    }
    let wrong = findings
        .iter()
        .any(|f| f.finding.severity == Severity::Error);
    Ok(if wrong { Exit::ErrorFound } else { Exit::Done })
}
