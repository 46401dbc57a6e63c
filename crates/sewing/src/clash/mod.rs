//! Clashes: what cannot be where something else is, found on the sewn pair in its sewing order.
//!
//! Every row, tack and buttonhole is laid into the frame of the panel it comes to lie on ([`scene`]), with the plies its
//! needle goes through and the operation in which that happens; metal likewise. A clash is then read from places and from
//! the order: what is set already when the needle comes. The rules are rows of [`crate::SEWING_RULES`].

mod closed;
mod holes;
mod metal;
mod patch;
mod pockets;
mod reach;
mod rows;
mod scene;
mod through;
mod trims;
mod whereabouts;

pub(crate) use closed::closed_before;
pub(crate) use holes::{button_bite, hole_bite};
pub(crate) use metal::{foot_on_metal, needle_on_metal};
pub(crate) use patch::through_band;
pub(crate) use pockets::{closes_coin, closes_extra, closes_mouth};
pub(crate) use reach::no_arm;
pub(crate) use rows::{across, too_close};
pub(crate) use scene::Scene;
pub(crate) use trims::through_trim;
