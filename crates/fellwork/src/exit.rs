//! What the exit codes mean.

use std::process::ExitCode;

/// How a command ended. This is the one place where the codes are given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Exit {
    /// 0: what was asked is done; `check` found no error.
    Done,
    /// 1: `check` found at least one error in a style that can be read.
    ErrorFound,
    /// 2: nothing was done: the input cannot be read, the output cannot be written, or the command
    /// was not understood (the last is also the code of the argument parser).
    NotDone,
}

/// The codes in words, for `--help`.
pub const IN_WORDS: &str = "\
Exit codes:
  0  done; check found no error
  1  check found at least one error in a style that can be read
  2  nothing was done: what is read cannot be, what is written cannot be,
     or the command was not understood";

impl From<Exit> for ExitCode {
    fn from(exit: Exit) -> Self {
        Self::from(match exit {
            Exit::Done => 0,
            Exit::ErrorFound => 1,
            Exit::NotDone => 2,
        })
    }
}
