//! One file for each command, and what they share: reading a style and choosing a size.

mod bench;
mod bring;
mod check;
mod compare;
mod demo;
mod draw;
mod history;
mod key;
mod lay;
mod new;
mod pack;
mod patterns;
mod pieces;
mod plan;
mod watch;

use std::path::Path;

use style::Loaded;

use crate::args::Command;
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
        Command::History(asked) => history::run(&asked),
        Command::Compare(asked) => compare::run(&asked),
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
