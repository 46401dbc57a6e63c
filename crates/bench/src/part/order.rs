//! The sewing order: operation after operation, each with its machine, its stitch and its yarn.

use maud::{Markup, html};
use sewing::Garment;

use crate::field::Show;
use crate::see::{Panel, See};

pub(crate) fn render(_show: &Show<'_>, _garment: &Garment, see: &See) -> Markup {
    html! { section #order hidden[see.panel != Panel::Order] {} }
}
