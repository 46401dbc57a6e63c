//! `fellwork story`: what a customer may be told, as one page of paper or of the web.

use std::sync::atomic::AtomicBool;
use std::thread;

use jobs::StoryOrder;
use look::Wear;
use trade::Share;
use words::Words;

use crate::args::Story;
use crate::command::named_file::load;
use crate::command::pack::today;
use crate::exit::Exit;
use crate::output::{Kind, OneFile};
use crate::trouble::Trouble;
use crate::{files, printed};

pub fn run(asked: &Story) -> Result<Exit, Trouble> {
    let kinds = [Kind::Pdf, Kind::Html];
    let output = OneFile::new(&asked.output, &kinds, asked.over.replace)?;
    let loaded = load(&asked.style)?;
    let order = StoryOrder {
        size: asked.size,
        wear: Wear::of(Share::ratio(asked.wear)),
        threads: thread::available_parallelism().map_or(1, usize::from),
    };
    let never = AtomicBool::new(false);
    let told = jobs::story(&loaded, &order, Words::english(), &never)?;
    let bytes = match output.kind() {
        Kind::Html => told.page().into_bytes(),
        _ => told.pdf(asked.date.unwrap_or_else(today))?,
    };
    output.write(&bytes)?;
    if !files::is_printed(&asked.output) {
        printed::words(&format!("{} is written\n", asked.output.display()))?;
    }
    Ok(Exit::Done)
}
