//! Parts of the style page that are replaced when something changes. Each is one element with a fixed id.

pub(crate) mod bar;
pub(crate) mod cloth;
pub(crate) mod cloths_file;
mod compare;
pub(crate) mod construction;
pub(crate) mod details;
pub(crate) mod drawing;
pub(crate) mod findings;
pub(crate) mod fit;
pub(crate) mod head;
pub(crate) mod history;
pub(crate) mod notice;
pub(crate) mod order;
pub(crate) mod shells;
mod stated;
pub(crate) mod strip;
pub(crate) mod tabs;
pub(crate) mod work;
pub(crate) mod yarn;
