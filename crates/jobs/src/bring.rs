//! A maker's own pattern: read, looked at, and put into a style or made a style of.

use std::path::{Path, PathBuf};

use intake::{Look, SeenPiece};
use patterns::Read;
use patterns::dxf::FileUnit;
use sewing::Garment;
use style::{
    Beside, BroughtPattern, Drawn, EdgeId, Edit, Loaded, NewStyle, OWN_PIECES, PieceId, SaveError,
    Saved, Size, Tag, piece_file_text, save_beside, with_pattern,
};
use trade::Length;

use crate::error::JobError;

/// The folder of a style that brought patterns lie in.
const FOLDER: &str = "pattern";

/// Without these there is no body to lay the rest out on.
const BODY: [&str; 3] = ["front", "back", "yoke"];

/// A pattern file as it was read, with its own bytes to keep.
#[derive(Clone, Debug)]
pub struct PatternSource {
    /// The file's name without its ending.
    pub stem: String,
    /// Its ending in small letters.
    pub ending: String,
    /// What it holds.
    pub bytes: Vec<u8>,
    /// What was read of it.
    pub read: Read,
}

impl PatternSource {
    /// Reads a pattern file by the ending of its name. `unit` holds where a DXF does not say its own, or says it wrongly.
    ///
    /// # Errors
    /// It is no kind of pattern file that can be brought, too large, or cannot be read; with the place in it.
    pub fn read(name: &str, bytes: Vec<u8>, unit: Option<FileUnit>) -> Result<Self, JobError> {
        let path = Path::new(name);
        let part = |part: Option<&std::ffi::OsStr>| {
            part.unwrap_or_default().to_string_lossy().into_owned()
        };
        let ending = part(path.extension()).to_lowercase();
        if bytes.len() > patterns::limits::MOST_BYTES {
            return Err(JobError::NoPattern {
                what: format!("it has {} bytes", bytes.len()),
                instead: format!(
                    "at most {} are read: bring fewer sizes at a time",
                    patterns::limits::MOST_BYTES
                ),
            });
        }
        let read = match ending.as_str() {
            "dxf" => patterns::dxf::read(&bytes, unit),
            // A drawing says its unit with its width.
            "svg" => patterns::svg::read(&bytes),
            _ => {
                return Err(JobError::NoPattern {
                    what: "it is no kind of pattern file that can be brought".to_owned(),
                    instead: "bring a .dxf or .svg file".to_owned(),
                });
            }
        };
        let read = read.map_err(|why| JobError::NoPattern {
            what: format!("{}: {}", why.place, why.what),
            instead: why.instead,
        })?;
        Ok(Self {
            stem: part(path.file_stem()),
            ending,
            bytes,
            read,
        })
    }
}

/// How the outlines of a pattern are meant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Meant {
    /// For which state of the cloth it is drawn.
    pub drawn: Drawn,
    /// What is cut beyond the seam, for pieces that have the cut line only.
    pub allowance: Option<Length>,
}

/// A pattern that was put into a style.
#[derive(Clone, Debug)]
pub struct Brought {
    /// The style as it now is.
    pub saved: Saved,
    /// The file of pieces, as the style names it.
    pub file: String,
    /// The sizes the style is made in from now on, where they are others than before.
    pub sizes: Option<Vec<Size>>,
}

/// Puts a pattern into a style that is there: all of it or nothing.
///
/// # Errors
/// A piece that has to be there was not made out, the sizes do not fit the style's, or the style cannot be saved.
pub fn bring_into(
    loaded: &Loaded,
    look: &Look,
    source: PatternSource,
    meant: Meant,
) -> Result<Brought, JobError> {
    made_out(look)?;
    let sizes = sizes(loaded, look)?;
    let pieces = piece_file_text(&look.file).into_bytes();
    let pieces = Beside::new(loaded, FOLDER, &source.stem, "toml", pieces);
    let original = Beside::new(loaded, FOLDER, &source.stem, &source.ending, source.bytes);
    let table = intake::table(look, &pieces.name, meant.drawn, meant.allowance);
    let text = with_pattern(&loaded.text, &table, sizes.as_deref());
    let file = pieces.name.clone();
    let saved = save_beside(loaded, &text, &[pieces, original])?;
    Ok(Brought { saved, file, sizes })
}

/// Makes a new style of a pattern: the sizes are the pattern's, the chart says what it measures, everything else is as
/// answered. Gives the path of its file.
///
/// # Errors
/// A piece that has to be there was not made out, no size is whole, or the style cannot be made. Nothing is left behind.
pub fn begin_with(
    folder: &Path,
    asked: &NewStyle,
    look: &Look,
    source: PatternSource,
    meant: Meant,
) -> Result<PathBuf, JobError> {
    made_out(look)?;
    let Some(first) = look.sizes.first() else {
        return Err(JobError::OtherSizes {
            why: "no size is there with every piece".to_owned(),
        });
    };
    let lengths = look.sizes.iter().filter(|size| size.waist == first.waist);
    let lengths: Vec<Tag> = lengths.map(|size| size.length).collect();
    let run = whole_run(&look.sizes, &lengths);
    let pattern = BroughtPattern::new(
        &source.stem,
        &source.ending,
        piece_file_text(&look.file),
        source.bytes,
        run,
    );
    let table = intake::table(look, &pattern.file, meant.drawn, meant.allowance);
    let path = style::new_style_of_pattern(folder, asked, &pattern, &table)?;
    // Where the chart cannot be made to say it, it stays as is usual, and the findings tell the differences.
    let _ = chart_as_measured(&path);
    Ok(path)
}

/// How often a chart is measured anew: what is laid out on the panels follows it and is measured too.
const ROUNDS: usize = 3;

/// Makes the chart say what the style's own pattern measures in the base size, in a version of its own that can be taken
/// back. Nothing is done where that would bring an error that was not there.
fn chart_as_measured(style: &Path) -> Result<(), SaveError> {
    let first = style::load(style)?;
    let made = |loaded: &Loaded| {
        let doc = &loaded.style;
        sewing::make(doc, &loaded.collection, doc.sizes.base)
    };
    let errors = |garment: &Garment| {
        let findings = garment.findings.iter();
        findings.filter(|f| f.is_error()).count()
    };
    let mut garment = made(&first);
    let before = errors(&garment);
    let mut loaded = first.clone();
    for _ in 0..ROUNDS {
        let apart = garment.findings.iter();
        let apart = apart.filter(|finding| finding.code == "pattern::measure");
        let edits: Vec<&Edit> = apart.filter_map(|finding| finding.edit.as_ref()).collect();
        if edits.is_empty() {
            break;
        }
        let mut text = loaded.text.clone();
        for edit in edits {
            text = style::apply(&text, edit)?;
        }
        loaded = loaded.with_text(&text)?;
        garment = made(&loaded);
    }
    if errors(&garment) <= before {
        style::save(&first, &loaded.text)?;
    }
    Ok(())
}

/// The sizes whose waist is there in every one of these lengths: a run is every waist in every length.
fn whole_run(sizes: &[Size], lengths: &[Tag]) -> Vec<Size> {
    let whole = |size: &&Size| {
        lengths.contains(&size.length)
            && lengths
                .iter()
                .all(|length| sizes.contains(&Size::of(size.waist, *length)))
    };
    sizes.iter().filter(whole).copied().collect()
}

/// What has to be there and was not made out, each with why; empty when all was.
pub fn unclear(look: &Look) -> Vec<String> {
    let taken = |name: &str| {
        let mut pieces = look.pieces.iter();
        pieces.any(|p| p.taken_for.is_some_and(|k| k.id.code() == name))
    };
    let title = |name: &str| {
        OWN_PIECES
            .iter()
            .find(|p| p.id.code() == name)
            .map_or("", |p| p.title)
    };
    let mut lines: Vec<String> = BODY
        .iter()
        .filter(|name| !taken(name))
        .map(|name| format!("no piece is made out as the {}", title(name)))
        .collect();
    let front_is_cut = look.pieces.iter().any(|p: &SeenPiece| {
        p.taken_for.is_some_and(|k| k.id == PieceId::Front)
            && p.edges.iter().any(|e| e.id == EdgeId::Mouth)
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
    lines
}

fn made_out(look: &Look) -> Result<(), JobError> {
    let unclear = unclear(look);
    if unclear.is_empty() {
        Ok(())
    } else {
        Err(JobError::NotMadeOut {
            unclear: unclear.join("\n"),
        })
    }
}

/// The sizes the style has to be made in, where they are others than it states.
fn sizes(loaded: &Loaded, look: &Look) -> Result<Option<Vec<Size>>, JobError> {
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
        return Err(JobError::OtherSizes {
            why: format!(
                "the chart is stated at {}, and the pattern holds {}",
                run.base,
                if look.sizes.is_empty() {
                    "no size whole".to_owned()
                } else {
                    list(&look.sizes)
                }
            ),
        });
    }
    // Keep the lengths the base's waist has, and the waists that have them all.
    let kept: Vec<Size> = look
        .sizes
        .iter()
        .copied()
        .filter(|s| run.contains(*s))
        .collect();
    let lengths: Vec<Tag> = run
        .lengths
        .iter()
        .copied()
        .filter(|length| kept.contains(&Size::of(run.base.waist, *length)))
        .collect();
    Ok(Some(whole_run(&kept, &lengths)))
}
