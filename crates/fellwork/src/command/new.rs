//! `fellwork new`: a style to begin with.

use std::path::{Path, PathBuf};

use style::{Answers, LabelWords, NewStyle};

use crate::args::New;
use crate::command::named_file::load;
use crate::exit::Exit;
use crate::printed;
use crate::trouble::Trouble;

pub fn run(asked: &New) -> Result<Exit, Trouble> {
    if asked.label.is_some() && asked.folder.join(style::COLLECTION_FILE).is_file() {
        return Err(Trouble::Option {
            what: format!(
                "--label names a new collection, and {} is one already",
                asked.folder.display()
            ),
            instead: "leave it out; the label's name stands in its collection.toml".to_owned(),
        });
    }
    let code = asked.code.clone().unwrap_or_default();
    let path = match &asked.from {
        Some(from) => copied(asked, from, &code)?,
        None => style::new_style(
            &asked.folder,
            &NewStyle {
                name: asked.name.clone(),
                code,
                folder: asked.folder_name.clone(),
                label: asked.label.clone(),
                words: LabelWords {
                    workroom: asked.workroom.clone(),
                    place: asked.place.clone(),
                    origin: asked.origin.clone(),
                },
                answers: answers(asked),
            },
        )?,
    };
    let folder = path.parent().unwrap_or(&asked.folder);
    printed::words(&format!(
        "{} begins at {}\nnext: fellwork check {}\n",
        asked.name,
        path.display(),
        folder.display()
    ))?;
    Ok(Exit::Done)
}

fn answers(asked: &New) -> Answers {
    let usual = Answers::default();
    Answers {
        figure: asked.figure.unwrap_or(usual.figure),
        fit: asked.fit.unwrap_or(usual.fit),
        leg: asked.leg.unwrap_or(usual.leg),
        outseam: asked.outseam,
        waists: asked.waists.clone(),
        lengths: asked.lengths.clone(),
        shell: asked.shell.clone(),
        taste: asked.taste.unwrap_or(usual.taste),
    }
}

/// A copy stays in the collection whose cloths and yarns it names.
fn copied(asked: &New, from: &Path, code: &str) -> Result<PathBuf, Trouble> {
    let from = load(from)?;
    let same = match (
        asked.folder.canonicalize(),
        from.collection_folder.canonicalize(),
    ) {
        (Ok(asked), Ok(its)) => asked.starts_with(its),
        _ => false,
    };
    if !same {
        return Err(Trouble::OtherCollection {
            asked: asked.folder.clone(),
            its: from.collection_folder,
        });
    }
    let folder = asked.folder_name.as_deref();
    Ok(style::copy_style(&from, &asked.name, code, folder)?)
}
