//! `fellwork demo`: the demo collection, its pack and the bench, in one go.

use std::path::Path;

use style::Loaded;

use crate::args::Demo;
use crate::command::{bench, pack};
use crate::exit::Exit;
use crate::output::{Kind, OneFile};
use crate::printed;
use crate::trouble::Trouble;

/// The pack's name beside the demo's style file.
const PACK: &str = "ferryman.pdf";

pub fn run(asked: &Demo) -> Result<Exit, Trouble> {
    let (loaded, found) = demo(&asked.folder)?;
    let pdf = loaded.folder().join(PACK);
    let output = OneFile::new(&pdf, &[Kind::Pdf], false)?;
    pack::make(&loaded, None, pack::today(), &output)?;
    printed::words(&format!(
        "{} {} {}\n  its style  {}\n  its pack   {}\n",
        loaded.collection.name,
        if found { "was already at" } else { "is at" },
        asked.folder.display(),
        loaded.path.display(),
        pdf.display()
    ))?;
    if asked.no_bench {
        return Ok(Exit::Done);
    }
    bench::serve(&asked.folder, &asked.serving)
}

/// The demo in a folder, and whether it was there before.
fn demo(folder: &Path) -> Result<(Loaded, bool), Trouble> {
    let path = folder.join(style::demo::STYLE);
    if path.is_file() {
        return Ok((style::load(&path)?, true));
    }
    let path = style::write_demo(folder)?;
    Ok((style::load(&path)?, false))
}
