//! Parts of the style page that are replaced when something changes. Each is one element with a fixed id.

pub(crate) mod background_work;
pub(crate) mod cloth;
mod cloth_values;
pub(crate) mod cloths_file;
pub(crate) mod construction;
pub(crate) mod details;
pub(crate) mod drawing;
pub(crate) mod findings;
pub(crate) mod fit;
pub(crate) mod notice;
pub(crate) mod order;
pub(crate) mod page_head;
pub(crate) mod shells;
mod shells_table;
pub(crate) mod strip;
pub(crate) mod style_foot;
pub(crate) mod style_head;
pub(crate) mod tabs;
pub(crate) mod yarn;
