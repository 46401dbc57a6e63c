//! `fellwork bring`: a maker's own pattern, read from a pattern file into a style.

mod json;
mod list;

use std::fs;
use std::path::Path;

use intake::{Asked, Look, SeenPiece};
use patterns::Read;
use style::{Beside, Drawn, Loaded, OWN_PIECES, Size, piece_file_text, save_beside, with_pattern};

use crate::args::{Bring, NamedPiece, PieceCorners};
use crate::command::load;
use crate::exit::Exit;
use crate::printed;
use crate::trouble::Trouble;

/// The folder of a style that brought patterns lie in.
const FOLDER: &str = "pattern";

/// Without these there is no body to lay the rest out on.
const BODY: [&str; 3] = ["front", "back", "yoke"];

pub fn run(asked: &Bring) -> Result<Exit, Trouble> {
    let loaded = asked.output.as_deref().map(load).transpose()?;
    let bytes = bytes(&asked.file)?;
    let read = read(asked, &bytes)?;
    let look = intake::look(
        &read.pattern,
        &shown(&asked.file),
        &said(asked, loaded.as_ref()),
    )?;
    if asked.list || loaded.is_none() {
        let text = if asked.json {
            json::list(&look, &read.passed_over)?
        } else {
            list::list(&look, &read.passed_over)
        };
        printed::to_stdout(text)?;
        return Ok(Exit::Done);
    }
    if let Some(loaded) = loaded {
        let text = put(asked, &loaded, &look, &read, bytes)?;
        printed::to_stdout(text)?;
    }
    Ok(Exit::Done)
}

/// The name of a file without its folders.
fn shown(file: &Path) -> String {
    let name = file.file_name().unwrap_or(file.as_os_str());
    name.to_string_lossy().into_owned()
}

fn bytes(file: &Path) -> Result<Vec<u8>, Trouble> {
    let failed = |why| Trouble::Read {
        path: file.to_path_buf(),
        why,
    };
    let metadata = fs::metadata(file).map_err(failed)?;
    if metadata.len() > patterns::limits::MOST_BYTES as u64 {
        return Err(Trouble::NoPattern {
            file: file.to_path_buf(),
            what: format!("it has {} bytes", metadata.len()),
            instead: format!(
                "at most {} are read: bring fewer sizes at a time",
                patterns::limits::MOST_BYTES
            ),
        });
    }
    fs::read(file).map_err(failed)
}

fn read(asked: &Bring, bytes: &[u8]) -> Result<Read, Trouble> {
    let ending = asked
        .file
        .extension()
        .map(|e| e.to_string_lossy().to_lowercase());
    let unit = asked.unit.map(Into::into);
    let read = match ending.as_deref() {
        Some("dxf") => patterns::dxf::read(bytes, unit),
        // A drawing says its unit with its width.
        Some("svg") => patterns::svg::read(bytes),
        _ => {
            return Err(Trouble::NoPattern {
                file: asked.file.clone(),
                what: "it is no kind of pattern file that can be brought".to_owned(),
                instead: "bring a .dxf or .svg file".to_owned(),
            });
        }
    };
    read.map_err(|why| Trouble::NoPattern {
        file: asked.file.clone(),
        what: format!("{}: {}", why.place, why.what),
        instead: why.instead,
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

/// Writes the pattern into the style; gives what to tell.
fn put(
    asked: &Bring,
    loaded: &Loaded,
    look: &Look,
    read: &Read,
    bytes: Vec<u8>,
) -> Result<String, Trouble> {
    let unclear = unclear(look);
    if !unclear.is_empty() {
        return Err(Trouble::NotMadeOut {
            unclear,
            ways: "see its pieces and corners with fellwork bring --list, then say which they are:\n\
                   --piece front=\"NAME\" names a piece, --corners front=3,4,6,8,9 the corner at which each of its edges begins"
                .to_owned(),
        });
    }
    let sizes = sizes(loaded, look)?;
    let stem = asked.file.file_stem().unwrap_or_default().to_string_lossy();
    let ending = asked
        .file
        .extension()
        .unwrap_or_default()
        .to_string_lossy()
        .to_lowercase();
    let pieces = piece_file_text(&look.file).into_bytes();
    let pieces = Beside::new(loaded, FOLDER, &stem, "toml", pieces);
    let original = Beside::new(loaded, FOLDER, &stem, &ending, bytes);
    let drawn = if asked.before_wash {
        Drawn::BeforeWash
    } else {
        Drawn::AfterWash
    };
    let table = intake::table(look, &pieces.name, drawn, asked.allowance);
    let text = with_pattern(&loaded.text, &table, sizes.as_deref());
    let saved = save_beside(loaded, &text, &[pieces.clone(), original])?;
    Ok(list::told(
        &saved.loaded,
        look,
        &pieces.name,
        &read.passed_over,
        sizes.as_deref(),
    ))
}

/// What has to be there and was not made out, each with why.
fn unclear(look: &Look) -> String {
    let taken = |name: &str| {
        let mut pieces = look.pieces.iter();
        pieces.any(|p| p.taken_for.is_some_and(|k| k.name == name))
    };
    let title = |name: &str| {
        OWN_PIECES
            .iter()
            .find(|p| p.name == name)
            .map_or("", |p| p.title)
    };
    let mut lines: Vec<String> = BODY
        .iter()
        .filter(|name| !taken(name))
        .map(|name| format!("no piece is made out as the {}", title(name)))
        .collect();
    let front_is_cut = look.pieces.iter().any(|p: &SeenPiece| {
        p.taken_for.is_some_and(|k| k.name == "front") && p.edges.iter().any(|e| e.name == "mouth")
    });
    if front_is_cut && !taken("pocket_facing") {
        lines.push(
            "the front has its pocket mouth cut away, and no piece is made out as the hip pocket facing that fills the corner"
                .to_owned(),
        );
    }
    if !lines.is_empty() {
        let aside = look
            .pieces
            .iter()
            .filter_map(|p| Some((&p.name, p.aside.as_ref()?)));
        lines.extend(aside.map(|(name, why)| format!("\"{name}\" is left aside: {why}")));
    }
    lines.join("\n")
}

/// The sizes the style has to be made in, where they are others than it states.
fn sizes(loaded: &Loaded, look: &Look) -> Result<Option<Vec<Size>>, Trouble> {
    let run = &loaded.style.sizes;
    let held = |size: &Size| look.sizes.contains(size);
    if run.all().all(|size| held(&size)) {
        return Ok(None);
    }
    let list = |sizes: &[Size]| {
        let words: Vec<String> = sizes.iter().map(Size::to_string).collect();
        words.join(", ")
    };
    if !held(&run.base) {
        return Err(Trouble::OtherSizes {
            why: format!(
                "the chart is stated at {}, and the pattern holds {}",
                run.base,
                if look.sizes.is_empty() { "no size whole".to_owned() } else { list(&look.sizes) }
            ),
            ways: "say which size it is with --size, or state the chart and the base at a size the pattern holds".to_owned(),
        });
    }
    // A run is every waist in every length: keep the lengths the base's waist has, and the waists that have them all.
    let kept: Vec<Size> = look
        .sizes
        .iter()
        .copied()
        .filter(|s| run.contains(*s))
        .collect();
    let lengths: Vec<u32> = run
        .lengths
        .iter()
        .copied()
        .filter(|length| kept.contains(&Size::new(run.base.waist, *length)))
        .collect();
    let whole = |size: &Size| {
        lengths.contains(&size.length)
            && lengths
                .iter()
                .all(|length| kept.contains(&Size::new(size.waist, *length)))
    };
    Ok(Some(kept.iter().copied().filter(whole).collect()))
}
