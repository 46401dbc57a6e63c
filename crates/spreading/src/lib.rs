//! The lays of an order: which sizes lie together, in how many plies, and how much cloth that takes.
//!
//! [`CutOrder`] cuts every size an order names. For each cloth ([`ClothJob`]) [`plan`] finds the lays
//! that cut the order exactly with the least cloth; how long a lay will be is at first an estimate
//! ([`Estimates`]), and [`plan_cloth`] has the chosen lays searched and plans again until searching
//! changes nothing. Where no plan is found it says whether there is none or whether it cannot know. [`spread_rolls`] says which roll gives which ply and where a roll may end inside
//! one. Whoever calls decides how a lay is looked for: nothing here starts a search.

mod begin;
mod cut_order;
mod divide;
mod estimate;
mod lanes;
mod plan;
mod plan_cloth;
mod rolls;
mod search;

pub use cut_order::{Asked, ClothJob, CutOrder, Kind, OrderError, Unsure};
pub use estimate::Estimates;
pub use plan::{Plan, PlannedLay, Plans, PlyLength, Task, plan};
pub use plan_cloth::{Choice, ClothPlan, Find, SpreadLay, plan_cloth};
pub use rolls::{Begun, Drawn, Rest, Rolls, spread_rolls};
