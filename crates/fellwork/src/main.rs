//! The `fellwork` command: one style file in, drawings, pieces and a production pack out.
//!
//! [`args`] says what may be asked, one file in [`command`] answers each question, [`exit`] says what
//! the exit codes mean, [`output`] what may be written where, and [`trouble`] what is printed when
//! something cannot be done.

mod args;
mod command;
mod exit;
mod files;
mod output;
mod png_file;
mod printed;
mod trouble;

use std::process::ExitCode;

use clap::Parser;

fn main() -> ExitCode {
    let asked = args::with_values_below_zero(std::env::args_os());
    match command::run(args::Args::parse_from(asked).command) {
        Ok(exit) => exit.into(),
        Err(trouble) => {
            printed::to_stderr(&trouble.render());
            exit::Exit::NotDone.into()
        }
    }
}
