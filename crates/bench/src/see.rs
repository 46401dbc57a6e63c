//! What is being looked at: view, face, size, units and panel, all kept in the address.

use drawing::View;
use sewing::Face;
use style::{Collection, Size, StyleDoc, Units};
use trade::System;

use crate::route::encoded;

/// Which panel is open beside the drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Panel {
    Fit,
    Construction,
    Findings,
}

impl Panel {
    pub(crate) const ALL: [Self; 3] = [Self::Fit, Self::Construction, Self::Findings];

    pub(crate) const fn word(self) -> &'static str {
        match self {
            Self::Fit => "fit",
            Self::Construction => "construction",
            Self::Findings => "findings",
        }
    }
}

/// What an address asks to see. What it leaves out, or says in words unknown here, is as it usually is.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct See {
    pub(crate) view: View,
    pub(crate) face: Face,
    /// `None` is the base size.
    pub(crate) size: Option<Size>,
    /// `None` is what the collection says.
    pub(crate) units: Option<Units>,
    pub(crate) panel: Panel,
    /// The part of the garment whose section is open, such as `seam:inseam`.
    pub(crate) part: Option<String>,
}

/// The words of an address, as they come.
#[derive(Clone, Debug, Default, serde::Deserialize)]
pub(crate) struct Asked {
    view: Option<String>,
    face: Option<String>,
    size: Option<String>,
    units: Option<String>,
    panel: Option<String>,
    part: Option<String>,
}

impl Default for See {
    fn default() -> Self {
        Self {
            view: View::Front,
            face: Face::Outside,
            size: None,
            units: None,
            panel: Panel::Fit,
            part: None,
        }
    }
}

impl From<Asked> for See {
    fn from(asked: Asked) -> Self {
        let is = |text: &Option<String>, word: &str| text.as_deref() == Some(word);
        let units = asked.units.as_deref().unwrap_or_default();
        let panel = asked.panel.as_deref().unwrap_or_default();
        Self {
            view: if is(&asked.view, "back") {
                View::Back
            } else {
                View::Front
            },
            face: if is(&asked.face, "inside") {
                Face::Inside
            } else {
                Face::Outside
            },
            size: asked.size.and_then(|text| text.parse().ok()),
            units: Units::WORDS
                .iter()
                .find(|(word, _)| *word == units)
                .map(|(_, units)| *units),
            panel: Panel::ALL
                .into_iter()
                .find(|known| known.word() == panel)
                .unwrap_or(Panel::Fit),
            part: asked.part.filter(|part| part.len() <= 80),
        }
    }
}

impl See {
    /// The size shown: the one asked for when the style has it, else its base.
    pub(crate) fn size_of(&self, style: &StyleDoc) -> Size {
        self.size
            .filter(|size| style.sizes.contains(*size))
            .unwrap_or(style.sizes.base)
    }

    /// The units shown.
    pub(crate) fn units_of(&self, collection: &Collection) -> Units {
        self.units.unwrap_or(collection.units)
    }

    /// The units shown, as the units themselves know them.
    pub(crate) fn system(&self, collection: &Collection) -> System {
        match self.units_of(collection) {
            Units::Centimetres => System::Metric,
            Units::Inches => System::Inch,
        }
    }

    pub(crate) const fn face_word(&self) -> &'static str {
        match self.face {
            Face::Outside => "outside",
            Face::Inside => "inside",
        }
    }

    /// The address's query for this.
    pub(crate) fn query(&self) -> String {
        let mut query = format!("view={}&face={}", self.view.word(), self.face_word());
        if let Some(size) = self.size {
            query.push_str(&format!("&size={size}"));
        }
        if let Some(units) = self.units {
            query.push_str(&format!("&units={units}"));
        }
        query.push_str(&format!("&panel={}", self.panel.word()));
        if let Some(part) = &self.part {
            query.push_str(&format!("&part={}", encoded(part)));
        }
        query
    }

    pub(crate) fn units_query(&self) -> String {
        self.units
            .map(|units| format!("units={units}"))
            .unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn unknown_words_are_as_usual() {
        let asked = Asked {
            view: Some("sideways".into()),
            face: Some("<script>".into()),
            size: Some("32".into()),
            ..Asked::default()
        };
        assert_eq!(See::from(asked), See::default());
    }

    #[test]
    fn a_query_says_what_is_seen() {
        let see = See {
            view: View::Back,
            face: Face::Inside,
            size: Some(Size::new(34, 30)),
            units: Some(Units::Inches),
            panel: Panel::Construction,
            part: Some("seam:inseam".into()),
        };
        let query =
            "view=back&face=inside&size=34x30&units=in&panel=construction&part=seam%3Ainseam";
        assert_eq!(see.query(), query);
    }
}
