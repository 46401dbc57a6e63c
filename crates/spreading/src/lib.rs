//! The lays of an order: which sizes lie together, in how many plies, and how much cloth that takes.
//!
//! [`CutOrder`] cuts every size an order names. For each cloth ([`ClothJob`]) [`plan`] finds the lays
//! that cut the order exactly with the least cloth; how long a lay will be is at first an estimate
//! ([`Estimates`]), and [`plan_cloth`] has the chosen lays searched and plans again until searching
//! changes nothing. Where no plan is found it says whether there is none or whether it cannot know. [`spread_rolls`] says which roll gives which ply and where a roll may end inside
//! one. Whoever calls decides how a lay is looked for: nothing here starts a search.
//!
//! ```
//! use spreading::{PlyLength, Task, plan};
//! use trade::Length;
//!
//! /// Every pair takes two metres, whatever its size.
//! struct Even;
//!
//! impl PlyLength for Even {
//!     fn of(&self, pairs: &[u32]) -> Option<Length> {
//!         Some(Length::cm(200.0) * f64::from(pairs.iter().sum::<u32>()))
//!     }
//!     fn rate(&self, _: usize) -> Length {
//!         Length::cm(200.0)
//!     }
//!     fn factor(&self, pairs_in_ply: u32) -> f64 {
//!         f64::from(pairs_in_ply)
//!     }
//!     fn longest(&self) -> Length {
//!         Length::cm(900.0)
//!     }
//! }
//!
//! let task = Task {
//!     wanted: vec![4, 2],
//!     most_plies: 10,
//!     most_pairs: 4,
//!     lays: 1..=2,
//!     ends: Length::cm(4.0),
//! };
//! let plans = plan(&task, &Even);
//! assert!(plans.proved && !plans.of_lays.is_empty());
//! ```

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
