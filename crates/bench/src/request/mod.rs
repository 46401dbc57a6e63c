//! What every handler needs, whichever page it is of.

pub(crate) mod answered;
mod blocking;
mod form_answer;
pub(crate) mod limits;
mod open;
pub(crate) mod parts_had;
mod route;
mod understood;

pub(crate) use answered::answered;
pub(crate) use blocking::blocking;
pub(crate) use form_answer::FormAnswer;
pub(crate) use limits::few;
pub(crate) use open::{loaded, open};
pub(crate) use parts_had::PartsHad;
pub(crate) use route::Route;
pub(crate) use understood::understood;
