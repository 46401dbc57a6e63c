//! `fellwork draw`: one view of the garment as SVG.

use crate::args::Draw;
use crate::command::named_file::load;
use crate::exit::Exit;
use crate::output::{Kind, OneFile};
use crate::trouble::Trouble;

pub fn run(asked: &Draw) -> Result<Exit, Trouble> {
    let output = OneFile::new(&asked.output, &[Kind::Svg], asked.over.replace)?;
    let loaded = load(&asked.style)?;
    let size = jobs::size_of(&loaded.style, asked.size)?;
    let garment = sewing::make(&loaded.style, &loaded.collection, size);
    let (view, face) = (asked.view.into(), asked.face.into());
    let sheet = drawing::garment_view(&garment, view, face, words::Words::english());
    output.write(drawing::svg(&sheet).as_bytes())?;
    Ok(Exit::Done)
}
