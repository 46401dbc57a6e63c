//! The JSON that other programs read: what each command answers with `--json`.
//!
//! Each answer is one function: it takes what was computed and gives the text. Its shape is one of [`Shape`], which
//! has a version (the answer says it under `format`) and a schema that tells every key with its unit; the schemas are
//! the files in `schemas`, and a test holds them against what the program prints. A key that is added, renamed or
//! taken away is a new version in a new file. Numbers go out through one function (`number`), so that the same garment
//! gives the same bytes on every machine.
//!
//! Nothing is worked out here. Whoever wants to know how a number comes about looks in the room that computes it.
//!
//! ```
//! let folder = tempfile::tempdir()?;
//! let loaded = style::load(&style::write_demo(folder.path())?)?;
//! let garment = sewing::make(&loaded.style, &loaded.collection, loaded.style.sizes.base);
//! let text = answers::pieces(&garment)?;
//! assert!(text.starts_with(r#"{"format":1,"unit":"mm","style":"Ferryman""#));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod bring;
mod change;
mod check;
mod check_order;
mod compare;
mod finding;
mod grouped;
mod history;
mod lay;
mod number;
mod patterns;
mod pieces;
mod plan;
mod problem;
mod sewing_order;
mod sewn;
mod shape;
mod splice;
mod take;
mod text;

pub use bring::bring;
pub use check::{Checked, check};
pub use check_order::{CheckedCloth, check_order};
pub use compare::{Compared, compare};
pub use grouped::{Grouped, count, folded, grouped};
pub use history::{ToldChanges, ToldFileChange, ToldVersion, history, history_of_collection};
pub use lay::{LaidLay, LayOfPlan, lay};
pub use patterns::patterns;
pub use pieces::pieces;
pub use plan::plan;
pub use problem::unread;
pub use sewing_order::sewing_order;
pub use shape::Shape;
pub use text::AnswerError;
