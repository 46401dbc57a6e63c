//! The order in which a workroom sews a style: operation after operation, each with its machine,
//! what it sews, and what has to be done before.

mod operation;

pub use operation::{Attachment, Needle, NotStated, Operation, Stage, Work};
