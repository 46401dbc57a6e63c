//! Beginning: the demo collection, a new collection, a new style by a few answers or as a copy.
//!
//! A folder is made whole beside where it belongs and then renamed into place, so that it is never there in part,
//! and nothing that exists is ever overwritten.

mod answers;
mod begin;
mod brought;
mod chart;
mod copy;
mod error;
mod folder;
mod materials;
mod named;
mod settled_answers;
mod substitute;
mod table_edit;
mod taste;
mod text;

pub use answers::{
    Answers, LabelWords, Leg, NewStyle, OFFERED_LENGTHS, Taste, USUAL_LENGTHS, offered_waists,
    usual_waists,
};
pub use begin::{can_begin_in, foresee, new_style, write_demo};
pub use brought::{BroughtPattern, new_style_of_pattern};
pub use chart::{usual_grade, usual_measure};
pub use copy::copy_style;
pub use error::StartError;
