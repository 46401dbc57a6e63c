//! Pieces on cloth: finding a short lay.
//!
//! A [`Problem`] is a cloth of a given width and the [`Piece`]s to be cut from it, with the turns
//! the cloth allows, a gap between pieces, faults of the cloth to be kept clear of, and for
//! shuttle-loom cloth the rule that a straight side lies on a finished edge. [`search`] gives a
//! [`Lay`]: where every piece lies, the length used, and a lower bound on any lay's length. It has
//! a first lay within a fraction of a second and betters it for as long as it may go on; it tells
//! how it stands, can be cancelled, and gives the same lay again for the same seed when it is
//! limited by the places it may try rather than by time.
//!
//! The first lay is made with the collision engine of `jagua-rs`. The search then fixes a length a
//! little too short, lets pieces overlap, and moves one piece at a time to where it overlaps least,
//! giving lasting overlaps more and more weight, until none is left: guided local search, after
//! Gardeyn, Vanden Berghe and Wauters (2025). How much two pieces overlap is the length of the
//! shortest move that parts them, read from no-fit areas; what little overlap is left goes by moving
//! all pieces at once, and where a few overlaps stay, some of the length taken is given back at
//! them. An order of many pieces is first laid in portions. [`check`] is the last word: it measures
//! the finished lay on the pieces as they were given.
//!
//! Pieces that have to match in shade keep to one [`Zone`] across the cloth, or are [`Matched`] along it.
//! [`splices`] says where a roll may end inside a lay and the next one begin.
//!
//! This is the only room that starts threads for computing, and it looks at the clock only to end
//! a search that is limited by time.
//!
//! ```
//! use std::sync::atomic::AtomicBool;
//!
//! use geometry::Point;
//! use lay::{Limits, Options, Piece, Problem, Turn};
//! use trade::Length;
//!
//! let corners = [(0.0, 0.0), (300.0, 0.0), (300.0, 200.0), (0.0, 200.0)];
//! let problem = Problem {
//!     width: Length::cm(45.0),
//!     pieces: vec![Piece {
//!         key: "panel".to_owned(),
//!         outline: corners.map(|(x, y)| Point::new(x, y)).to_vec(),
//!         demand: 2,
//!         turns: vec![Turn::None],
//!         on_edge: None,
//!         within: None,
//!     }],
//!     gap: Length::ZERO,
//!     faults: Vec::new(),
//!     sets: Vec::new(),
//! };
//! let options = Options {
//!     limits: Limits { time: None, places: Some(2_000) },
//!     ..Options::default()
//! };
//! let lay = lay::search(&problem, &options, &AtomicBool::new(false), &mut |_| ())?;
//! assert!(lay.length < Length::cm(30.1), "{:?}", lay.length);
//! # Ok::<(), lay::LayError>(())
//! ```

mod board;
mod bounds;
mod check;
mod compress;
mod convex;
mod crossings;
mod explore;
mod first_lay;
mod joined;
mod lay;
mod limits;
mod lines;
mod matching;
mod nofit;
mod parallel_search;
mod place;
mod portions;
mod poses;
mod problem;
mod random;
mod search;
mod separation;
mod shapes;
mod shared_search;
mod simplified;
mod skeleton;
mod splice;
mod tables;
mod worker;

pub use bounds::{Bounds, Decides, bounds};
pub use check::{Mistake, check, reach};
pub use lay::{Lay, Placement};
pub use limits::{Ended, Limits, Options, Progress};
pub use matching::{Matched, check_matches, match_copies};
pub use problem::{LayError, MOST_PIECES, OnEdge, Piece, Problem, StraightSide, Turn, Zone};
pub use search::{search, search_on};
pub use splice::{Splice, splices};
