//! `fellwork pack`: the production pack as PDF.

use std::sync::atomic::AtomicBool;

use jiff::civil::Date;
use jobs::{JobError, PackOrder};
use style::{Loaded, Size};
use trade::counted;

use crate::args::Pack;
use crate::command::named_file::load;
use crate::exit::Exit;
use crate::output::{Kind, OneFile};
use crate::trouble::Trouble;
use crate::{files, printed};

pub fn run(asked: &Pack) -> Result<Exit, Trouble> {
    let output = OneFile::new(&asked.output, &[Kind::Pdf], asked.over.replace)?;
    let loaded = load(&asked.style)?;
    let date = asked.date.unwrap_or_else(today);
    make(&loaded, asked.size, date, &output)?;
    if !files::is_printed(&asked.output) {
        printed::words(&format!("{} is written\n", asked.output.display()))?;
    }
    Ok(Exit::Done)
}

/// Today's date where the maker is.
pub fn today() -> Date {
    jiff::ZonedDateTime::now().date()
}

/// Makes the pack of a style and writes it. Errors among its findings do not hold it back: they are
/// printed in it, and told here.
pub fn make(
    loaded: &Loaded,
    size: Option<Size>,
    date: Date,
    output: &OneFile<'_>,
) -> Result<(), Trouble> {
    let never = AtomicBool::new(false);
    let pack = jobs::pack(loaded, &PackOrder { size, date }, &never, &mut |_| ());
    let pack = pack.map_err(|error| match error {
        JobError::Paper(error) => Trouble::Paper(error),
        other => other.into(),
    })?;
    output.write(&pack.pdf)?;
    let errors = pack.errors;
    if errors > 0 {
        printed::to_stderr(&format!(
            "{} in the pack; fellwork check tells {}\n",
            counted(
                errors,
                "finding of grade error stands",
                "findings of grade error stand"
            ),
            if errors == 1 { "it" } else { "them" }
        ));
    }
    Ok(())
}
