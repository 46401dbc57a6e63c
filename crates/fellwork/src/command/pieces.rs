//! `fellwork pieces`: the pattern pieces of one size.

mod table;

use crate::args::Pieces;
use crate::command::named_file::load;
use crate::exit::Exit;
use crate::printed;
use crate::trouble::Trouble;

pub fn run(asked: &Pieces) -> Result<Exit, Trouble> {
    let loaded = load(&asked.style)?;
    let size = jobs::size_of(&loaded.style, asked.size)?;
    let garment = sewing::make(&loaded.style, &loaded.collection, size);
    if asked.json {
        printed::json(&answers::pieces(&garment)?)?;
    } else {
        printed::words(&table::pieces(&garment))?;
    }
    Ok(Exit::Done)
}
