//! One file for each command, and what they share: reading a style and choosing a size.

mod bench;
mod bring;
mod check;
mod demo;
mod draw;
mod find_lay;
mod lay;
mod new;
mod pack;
mod patterns;
mod pieces;
mod plan;

use std::path::Path;

use cutting::{BandCut, BandWay, CutSize, Plan};
use style::{Cloth, Collection, Loaded, Size, StyleDoc, Units};
use trade::System;

use crate::args::{BandWord, Command};
use crate::exit::Exit;
use crate::trouble::Trouble;

/// Carries out a command.
///
/// # Errors
/// What cannot be done, and why.
pub fn run(command: Command) -> Result<Exit, Trouble> {
    match command {
        Command::Demo(asked) => demo::run(&asked),
        Command::Check(asked) => check::run(&asked),
        Command::Pieces(asked) => pieces::run(&asked),
        Command::Draw(asked) => draw::run(&asked),
        Command::Pack(asked) => pack::run(&asked),
        Command::Lay(asked) => lay::run(&asked),
        Command::Patterns(asked) => patterns::run(&asked),
        Command::Plan(asked) => plan::run(&asked),
        Command::Bench(asked) => bench::run(&asked),
        Command::Bring(asked) => bring::run(&asked),
        Command::New(asked) => new::run(&asked),
    }
}

/// What is decided before cutting, with the band as asked for.
fn plan(loaded: &Loaded, band: Option<BandWord>) -> Plan {
    let stated = Plan::of(&loaded.style);
    Plan {
        band: band.map_or(stated.band, BandCut::from),
        ..stated
    }
}

/// Reads a style. A collection named instead is answered with its styles.
fn load(path: &Path) -> Result<Loaded, Trouble> {
    let is_style = path.join(style::STYLE_FILE).exists();
    if path.join(style::COLLECTION_FILE).is_file() && !is_style {
        return Err(Trouble::CollectionNamed {
            folder: path.to_path_buf(),
            instead: styles_in(path),
        });
    }
    Ok(style::load(path)?)
}

/// What the collection shows lengths in.
fn system(collection: &Collection) -> System {
    match collection.units {
        Units::Centimetres => System::Metric,
        Units::Inches => System::Inch,
    }
}

/// The cloth of that name.
fn cloth_of<'a>(collection: &'a Collection, name: &str) -> Result<&'a Cloth, Trouble> {
    collection.cloths.get(name).ok_or_else(|| {
        let known: Vec<&str> = collection.cloths.keys().map(String::as_str).collect();
        Trouble::NoSuchCloth {
            cloth: name.to_owned(),
            cloths: format!("the cloths are {}", known.join(", ")),
        }
    })
}

fn styles_in(collection: &Path) -> String {
    const MOST_NAMED: usize = 8;
    let styles = style::list_styles(collection).unwrap_or_default();
    let folders: Vec<String> = styles
        .iter()
        .filter_map(|file| file.parent())
        .map(|folder| folder.display().to_string())
        .collect();
    match folders.len() {
        0 => "it has no style yet: begin one with fellwork new".to_owned(),
        1..=MOST_NAMED => format!("name one of its styles: {}", folders.join(", ")),
        n => format!("name one of its {n} styles, such as {}", folders[0]),
    }
}

/// The size asked for when the style is made in it, or the base size.
fn size_of(style: &StyleDoc, asked: Option<Size>) -> Result<Size, Trouble> {
    let size = asked.unwrap_or(style.sizes.base);
    if style.sizes.contains(size) {
        return Ok(size);
    }
    let list = |tags: &[u32]| {
        let tags: Vec<String> = tags.iter().map(u32::to_string).collect();
        tags.join(", ")
    };
    let sizes = &style.sizes;
    Err(Trouble::NoSuchSize {
        style: style.style.name.clone(),
        size,
        sizes: format!(
            "its waists are {}; its lengths {}",
            list(&sizes.waists),
            list(&sizes.lengths)
        ),
    })
}

/// Refuses pieces that somebody has to decide on first, with what there is to choose from.
fn can_be_cut(cut: &CutSize) -> Result<(), Trouble> {
    let Some(refused) = cut.refused.first() else {
        return Ok(());
    };
    let ways: Vec<String> = refused.ways.iter().map(BandWay::as_help).collect();
    Err(Trouble::CannotCut {
        why: refused.message(),
        ways: ways.join("\n"),
    })
}
