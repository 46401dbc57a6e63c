//! The arguments of the commands that change a value, and that take a change back.

use std::ffi::OsString;
use std::path::PathBuf;

use clap::Args as ClapArgs;

/// `fellwork set`.
#[derive(Debug, ClapArgs)]
#[command(after_help = "\
Examples:
  fellwork set saltmarsh/styles/ferryman chart.thigh.value \"63 cm\"
  fellwork set saltmarsh/styles/ferryman seams.inseam.construction mock-felled \\
      \"seams.inseam.rows[0].density\" \"9 /in\"
  fellwork set saltmarsh/styles/ferryman chart.thigh.grade \"-1/4 in\"
  fellwork set saltmarsh/cloths.toml cloths.tideline-14.width \"80 cm\"
  fellwork set saltmarsh/styles/ferryman --remove patch
  fellwork set saltmarsh/styles/ferryman --insert \"muted[0]\" \\
      '{ \"code\": \"sewing::patch-hangs\", \"about\": \"part:patch\", \"reason\": \"meant so\" }'

A path is what stands in the file: sections with points between, members of a list by number from 0. A value is written \
as in the file, without quotation marks of its own; a list or a section as JSON, and so is a text that begins like one. All changes of one call are made, or none, \
and are one version; comments stay. A change that leaves a mistake in the file is refused with the mistake.")]
pub struct Set {
    /// A style's folder, an order, or another file of a collection
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    /// Where a value stands and what it becomes; several pairs, one after the other
    #[arg(value_names = ["PATH", "VALUE"], num_args = 2..)]
    pub values: Vec<String>,
    /// Put a member into a list, before the one that has its number
    #[arg(long, value_names = ["PATH", "VALUE"], num_args = 2)]
    pub insert: Vec<String>,
    /// Take out what stands at a path; may be said several times
    #[arg(long, value_name = "PATH")]
    pub remove: Vec<String>,
}

/// What was asked with every value below zero of a [`Set`] behind a space: what begins with a hyphen would be an option,
/// and none of ours begins with a number. [`without_space`] takes it off again.
pub fn with_values_below_zero(
    asked: impl IntoIterator<Item = OsString>,
) -> impl Iterator<Item = OsString> {
    let mut set = false;
    asked.into_iter().enumerate().map(move |(at, word)| {
        set |= at == 1 && word == "set";
        let below = word.to_str().is_some_and(|word| {
            let number = word.strip_prefix('-').and_then(|rest| rest.chars().next());
            number.is_some_and(|first| first.is_ascii_digit() || first == '.')
        });
        if !set || !below {
            return word;
        }
        let mut kept = OsString::from(" ");
        kept.push(word);
        kept
    })
}

/// A value as it was asked for, before [`with_values_below_zero`].
pub fn without_space(value: &str) -> &str {
    value
        .strip_prefix(' ')
        .filter(|value| value.starts_with('-'))
        .unwrap_or(value)
}

/// `fellwork undo` and `fellwork redo`.
#[derive(Debug, ClapArgs)]
#[command(after_help = "\
Examples:
  fellwork undo saltmarsh       the last change of any file, also one made at the bench or by hand
  fellwork redo saltmarsh       makes it again

Undo goes on along the changes of all files, in the order of time. fellwork history saltmarsh lists them.")]
pub struct Undo {
    /// The collection's folder, or a file in it
    #[arg(value_name = "COLLECTION")]
    pub collection: PathBuf,
}
