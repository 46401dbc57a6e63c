//! `fellwork bring`: a maker's own pattern, read from a pattern file into a style.

mod json;
mod list;

use std::fs;
use std::path::Path;

use intake::Asked;
use jobs::{JobError, Meant, PatternSource, bring_into};
use style::{Drawn, Loaded};

use crate::args::{Bring, NamedPiece, PieceCorners};
use crate::command::load;
use crate::exit::Exit;
use crate::printed;
use crate::trouble::Trouble;

pub fn run(asked: &Bring) -> Result<Exit, Trouble> {
    let loaded = asked.output.as_deref().map(load).transpose()?;
    let source = source(asked)?;
    let look = intake::look(
        &source.read.pattern,
        &shown(&asked.file),
        &said(asked, loaded.as_ref()),
    )?;
    let passed_over = source.read.passed_over.clone();
    let words = match loaded {
        Some(loaded) if !asked.list => {
            let drawn = if asked.before_wash {
                Drawn::BeforeWash
            } else {
                Drawn::AfterWash
            };
            let meant = Meant {
                drawn,
                allowance: asked.allowance,
            };
            let brought = bring_into(&loaded, &look, source, meant)?;
            list::told(&brought, &look, &passed_over)
        }
        _ if asked.json => {
            printed::to_stdout(json::list(&look, &passed_over)?)?;
            return Ok(Exit::Done);
        }
        _ => list::list(&look, &passed_over),
    };
    printed::words(&words)?;
    Ok(Exit::Done)
}

/// The name of a file without its folders.
fn shown(file: &Path) -> String {
    let name = file.file_name().unwrap_or(file.as_os_str());
    name.to_string_lossy().into_owned()
}

/// The file as it was read; one that is too large is not read at all.
fn source(asked: &Bring) -> Result<PatternSource, Trouble> {
    let file = &asked.file;
    let failed = |why| Trouble::Read {
        path: file.clone(),
        why,
    };
    let metadata = fs::metadata(file).map_err(failed)?;
    let largest = patterns::limits::MOST_BYTES as u64;
    let bytes = if metadata.len() > largest {
        return Err(Trouble::NoPattern {
            file: file.clone(),
            what: format!("it has {} bytes", metadata.len()),
            instead: format!("at most {largest} are read: bring fewer sizes at a time"),
        });
    } else {
        fs::read(file).map_err(failed)?
    };
    let unit = asked.unit.map(Into::into);
    PatternSource::read(&shown(file), bytes, unit).map_err(|error| match error {
        JobError::NoPattern { what, instead } => Trouble::NoPattern {
            file: file.clone(),
            what,
            instead,
        },
        other => other.into(),
    })
}

fn said(asked: &Bring, loaded: Option<&Loaded>) -> Asked {
    Asked {
        sizes: asked.size.clone(),
        pieces: asked
            .piece
            .iter()
            .map(|NamedPiece { own, theirs }| (own.clone(), theirs.clone()))
            .collect(),
        corners: asked
            .corners
            .iter()
            .map(|PieceCorners { own, corners }| (own.clone(), corners.clone()))
            .collect(),
        sewn: asked.sewn,
        grain_up: asked.grain_up,
        lengths: loaded.map_or_else(Vec::new, |l| l.style.sizes.lengths.clone()),
        base: loaded.map(|l| l.style.sizes.base),
    }
}
