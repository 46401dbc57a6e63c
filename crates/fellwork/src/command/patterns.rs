//! `fellwork patterns`: the cut pieces as files for other programs and plotters, and on paper.

mod paper;

use cutting::cut;
use patterns::{PatternFile, dxf, from_cut, hpgl, svg};
use style::{Loaded, Size};

use crate::args::{PatternKind, Patterns};
use crate::command::pack::today;
use crate::command::{can_be_cut, load, plan, size_of};
use crate::exit::Exit;
use crate::trouble::Trouble;
use crate::{files, printed};

pub fn run(asked: &Patterns) -> Result<Exit, Trouble> {
    let loaded = load(&asked.style)?;
    let sizes = sizes(&loaded, &asked.size)?;
    if let Some(print) = paper::Print::of(asked) {
        return paper::run(asked, print, &loaded, &sizes);
    }
    let pattern = pattern(&loaded, asked, &sizes)?;
    let stem = stem(&loaded);
    let of_size = |size: &Size| pattern.of_size(&size.to_string());
    let written: Vec<(String, String)> = match asked.kind {
        PatternKind::Pdf | PatternKind::Roll => Vec::new(),
        PatternKind::Dxf => vec![(format!("{stem}.dxf"), dxf::write(&pattern))],
        PatternKind::Svg => {
            let file = |size| (format!("{stem}-{size}.svg"), svg::write(&of_size(size)));
            sizes.iter().map(file).collect()
        }
        PatternKind::Hpgl => {
            let file = |size| {
                let text = hpgl::write(&of_size(size), asked.width)?;
                Ok((format!("{stem}-{size}.hpgl"), text))
            };
            sizes.iter().map(file).collect::<Result<_, Trouble>>()?
        }
    };
    files::write_all(&asked.output, &written)?;
    let pieces = pattern.pieces.len();
    printed::to_stdout(format!(
        "{} file{} with {pieces} pieces in {} size{} in {}\n",
        written.len(),
        plural(written.len()),
        sizes.len(),
        plural(sizes.len()),
        asked.output.display()
    ))?;
    Ok(Exit::Done)
}

const fn plural(n: usize) -> &'static str {
    if n == 1 { "" } else { "s" }
}

/// The sizes asked for, each once and in the order of the style; all of them where none is.
fn sizes(loaded: &Loaded, asked: &[Size]) -> Result<Vec<Size>, Trouble> {
    for size in asked {
        size_of(&loaded.style, Some(*size))?;
    }
    let all = loaded.style.sizes.all();
    Ok(all
        .filter(|size| asked.is_empty() || asked.contains(size))
        .collect())
}

fn pattern(loaded: &Loaded, asked: &Patterns, sizes: &[Size]) -> Result<PatternFile, Trouble> {
    let plan = plan(loaded, asked.band);
    let date = asked.date.unwrap_or_else(today);
    let head = &loaded.style.style;
    let mut pattern = PatternFile {
        style: format!("{} {}", head.code, head.name),
        author: loaded.collection.name.clone(),
        date: format!("{:02}-{:02}-{:04}", date.day(), date.month(), date.year()),
        sample_size: loaded.style.sizes.base.to_string(),
        pieces: Vec::new(),
    };
    for size in sizes {
        let garment = sewing::make(&loaded.style, &loaded.collection, *size);
        let cut = cut(&garment, &plan);
        can_be_cut(&cut)?;
        pattern.pieces.extend(from_cut(&cut));
    }
    Ok(pattern)
}

/// What the files are called: the style's name in small plain letters.
fn stem(loaded: &Loaded) -> String {
    let name = loaded.style.style.name.to_lowercase();
    let words = name
        .split(|c: char| !c.is_ascii_alphanumeric())
        .filter(|word| !word.is_empty());
    let stem = words.collect::<Vec<_>>().join("-");
    if stem.is_empty() {
        "style".to_owned()
    } else {
        stem
    }
}
