//! One file for each command.

mod bench;
mod bring;
mod check;
mod compare;
mod demo;
mod draw;
mod history;
mod key;
mod lay;
mod look;
mod named_file;
mod new;
mod pack;
mod patterns;
mod pieces;
mod plan;
mod set;
mod sew;
mod story;
mod watch;

use style::Direction;

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
        Command::Sew(asked) => sew::run(&asked),
        Command::Draw(asked) => draw::run(&asked),
        Command::Look(asked) => look::run(&asked),
        Command::Pack(asked) => pack::run(&asked),
        Command::Story(asked) => story::run(&asked),
        Command::Lay(asked) => lay::run(&asked),
        Command::Patterns(asked) => patterns::run(&asked),
        Command::Plan(asked) => plan::run(&asked),
        Command::Bench(asked) => bench::run(&asked),
        Command::Bring(asked) => bring::run(&asked),
        Command::New(asked) => new::run(&asked),
        Command::History(asked) => history::run(&asked),
        Command::Compare(asked) => compare::run(&asked),
        Command::Set(asked) => set::run(&asked),
        Command::Undo(asked) => set::step(&asked, Direction::Back),
        Command::Redo(asked) => set::step(&asked, Direction::Forward),
    }
}
