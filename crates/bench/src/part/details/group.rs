//! One group of details, and what its fields are made with.

use drawing::PlateId;
use maud::{Markup, html};
use sewing::Garment;
use style::{MeasureId, SeamId};
use trade::Length;

use crate::typed_fields::{Fields, capital};
use crate::viewing::Viewing;

/// What the groups need to show themselves.
pub(crate) struct Details<'a> {
    pub(crate) show: Fields<'a>,
    /// The style's folder, as its address has it.
    pub(crate) name: &'a str,
    pub(crate) garment: &'a Garment,
    pub(crate) see: &'a Viewing,
    /// The drawings in the style's folder that a detail can name.
    pub(crate) art: &'a [String],
}

/// One group of details.
pub(super) struct Group {
    pub(super) key: &'static str,
    pub(super) title: &'static str,
    /// Pieces of the garment it is about.
    pub(super) pieces: &'static [&'static str],
    /// Seams that make it; each is decided among the seams.
    pub(super) seams: &'static [SeamId],
    /// Trims it is about, whose places on the drawing lead here.
    pub(super) trims: Vec<String>,
    /// The plates that show it, where there are any.
    pub(super) plates: &'static [PlateId],
    pub(super) body: Markup,
}

/// One detail: what it is called, what it means in a sentence, and its field.
pub(super) fn cell(title: &str, how: &str, field: &Markup) -> Markup {
    html! {
        label.cell data-how=(how) { span { (title) } (field) }
    }
}

/// A detail that is not one field but several; it is no label of its own.
pub(super) fn wide(title: &str, how: &str, field: &Markup) -> Markup {
    html! {
        div.cell.wide data-how=(how) { span { (title) } (field) }
    }
}

/// A detail that is ticked.
pub(super) fn tick(title: &str, how: &str, field: &Markup) -> Markup {
    html! {
        label.cell.tick data-how=(how) { (field) " " (title) }
    }
}

impl Details<'_> {
    /// A length with its usual value in grey; its label is for somebody who cannot see the group.
    pub(super) fn length(
        &self,
        path: &str,
        title: &str,
        label: &str,
        how: &str,
        usual: Length,
    ) -> Markup {
        let usual = usual.show(self.show.system);
        let field = self
            .show
            .optional(path.to_owned(), label.to_owned(), None, &usual);
        cell(title, how, &field.render())
    }

    /// A length the file has to say.
    pub(super) fn needed_length(
        &self,
        path: &str,
        title: &str,
        label: &str,
        how: &str,
        value: Length,
    ) -> Markup {
        let field = self.show.length(path.to_owned(), label.to_owned(), value);
        cell(title, how, &field.render())
    }

    /// A measure of the chart, shown here for the sake of the whole; it is changed there.
    pub(super) fn charted(&self, measure: MeasureId) -> Markup {
        let value = self.show.loaded.style.value(measure, self.garment.size);
        let Some(value) = value else {
            return html! {};
        };
        let (code, title) = (measure.code(), self.show.say.named(measure.title()));
        html! {
            div.cell.charted {
                span { (capital(title)) }
                a href={ "#measure-" (code) } data-panel="fit" data-part={ "measure:" (code) } {
                    (value.show(self.show.system))
                }
            }
        }
    }
}
