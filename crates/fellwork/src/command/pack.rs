//! `fellwork pack`: the production pack as PDF.

use std::path::Path;
use std::sync::atomic::AtomicBool;

use jiff::civil::Date;
use jobs::PackOrder;
use style::{Loaded, Size};

use crate::args::Pack;
use crate::command::load;
use crate::exit::Exit;
use crate::trouble::Trouble;
use crate::{files, printed};

pub fn run(asked: &Pack) -> Result<Exit, Trouble> {
    let loaded = load(&asked.style)?;
    let date = asked.date.unwrap_or_else(today);
    make(&loaded, asked.size, date, &asked.output)?;
    if !files::is_printed(&asked.output) {
        printed::to_stdout(format!("{} is written\n", asked.output.display()))?;
    }
    Ok(Exit::Done)
}

/// Today's date where the maker is.
pub fn today() -> Date {
    jiff::ZonedDateTime::now().date()
}

/// Makes the pack of a style and writes it. Errors among its findings do not hold it back: they are
/// printed in it, and told here.
pub fn make(loaded: &Loaded, size: Option<Size>, date: Date, output: &Path) -> Result<(), Trouble> {
    let never = AtomicBool::new(false);
    let pack = jobs::pack(loaded, &PackOrder { size, date }, &never, &mut |_| ())?;
    files::write(output, &pack.pdf)?;
    let errors = pack.errors;
    if errors > 0 {
        printed::to_stderr(&format!(
            "{} finding{} of grade error stand{} in the pack; fellwork check tells them\n",
            errors,
            if errors == 1 { "" } else { "s" },
            if errors == 1 { "s" } else { "" }
        ));
    }
    Ok(())
}
