//! A drawing ready for the page: SVG text and the size it states for itself.

use serde::Serialize;

use crate::{PaperError, Scale};

/// An SVG drawing that knows its size on paper.
///
/// The root element must carry `width` and `height` in millimetres, as `width="120mm"`; a bare number
/// is read as millimetres too. A garment drawn at 1:5 is therefore one fifth of its size here, and
/// is placed so.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Drawing {
    #[serde(rename = "$svg")]
    svg: String,
    width: f64,
    height: f64,
}

/// Larger than any cloth or pattern; beyond it a PDF page cannot go either (14 400 pt, ISO 32000-1 annex C).
const LARGEST_MM: f64 = 5000.0;

impl Drawing {
    /// Takes SVG text. `place` says in words which drawing it is, for the error message.
    ///
    /// # Errors
    /// [`PaperError::Drawing`] if the text has no `<svg>` root or states no usable width and
    /// height. The rest of the text is read when the pack is printed.
    pub fn from_svg(svg: impl Into<String>, place: &str) -> Result<Self, PaperError> {
        Self::of_cloth(svg, 1, place)
    }

    /// The same for a drawing that states the size of the cloth and is printed at 1:`one_to`.
    ///
    /// # Errors
    /// As [`Drawing::from_svg`].
    pub(crate) fn of_cloth(
        svg: impl Into<String>,
        one_to: u32,
        place: &str,
    ) -> Result<Self, PaperError> {
        let svg = svg.into();
        let by = f64::from(one_to.max(1));
        let fail = |reason: &str| PaperError::Drawing {
            place: place.to_owned(),
            reason: reason.to_owned(),
        };
        let root = root_tag(&svg).ok_or_else(|| fail("it has no svg element"))?;
        let size = |name: &str| {
            attribute(root, name)
                .and_then(millimetres)
                .map(|mm| mm / by)
                .filter(|mm| *mm <= LARGEST_MM)
                .ok_or_else(|| fail(&format!("its {name} is missing or is not a length in mm")))
        };
        let (width, height) = (size("width")?, size("height")?);
        Ok(Self { svg, width, height })
    }

    /// The same drawing made smaller, for one that states the size of the cloth itself.
    #[must_use]
    pub fn at(self, scale: &Scale) -> Self {
        let by = f64::from(scale.denominator());
        Self {
            width: self.width / by,
            height: self.height / by,
            ..self
        }
    }

    /// Width on paper, in mm.
    pub fn width_mm(&self) -> f64 {
        self.width
    }

    /// Height on paper, in mm.
    pub fn height_mm(&self) -> f64 {
        self.height
    }
}

/// The text between `<svg` and its `>`.
fn root_tag(svg: &str) -> Option<&str> {
    let start = svg.find("<svg")? + "<svg".len();
    let rest = svg.get(start..)?;
    if !rest.starts_with(|c: char| c.is_ascii_whitespace()) {
        return None;
    }
    let mut quote = None;
    for (at, c) in rest.char_indices() {
        match (quote, c) {
            (None, '"' | '\'') => quote = Some(c),
            (Some(open), _) if c == open => quote = None,
            (None, '>') => return rest.get(..at),
            _ => {}
        }
    }
    None
}

/// The value of one attribute of a tag, unescaped values only (a length needs no escapes).
fn attribute<'a>(tag: &'a str, name: &str) -> Option<&'a str> {
    let mut rest = tag;
    loop {
        let eq = rest.find('=')?;
        let key = rest.get(..eq)?.trim();
        let value = rest.get(eq + 1..)?.trim_start();
        let quote = value.chars().next().filter(|c| matches!(c, '"' | '\''))?;
        let value = value.get(1..)?;
        let end = value.find(quote)?;
        if key == name {
            return value.get(..end);
        }
        rest = value.get(end + 1..)?;
    }
}

fn millimetres(text: &str) -> Option<f64> {
    let text = text.trim();
    let number: f64 = text
        .strip_suffix("mm")
        .unwrap_or(text)
        .trim()
        .parse()
        .ok()?;
    (number.is_finite() && number > 0.0).then_some(number)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn size_is_read_from_the_root_only() {
        let svg = r#"<?xml version="1.0"?><!-- a > b --><svg xmlns="x" data-a='1 > 0' width="120.5mm" height = "40 mm" stroke-width="3">
            <rect width="9" height="9"/></svg>"#;
        let drawing = Drawing::from_svg(svg, "a test").unwrap();
        assert_eq!((drawing.width_mm(), drawing.height_mm()), (120.5, 40.0));
    }

    #[test]
    fn a_drawing_without_a_size_is_named_in_the_error() {
        for svg in [
            "",
            "<svg",
            "<svgfoo width='1' height='1'>",
            "<svg width='3mm'/>",
            "<svg width='50%' height='3'/>",
            "<svg width='-1' height='3'/>",
            "<svg width='NaN' height='3'/>",
            "<svg width='inf' height='3'/>",
            "<svg width=3 height=3/>",
        ] {
            let error = Drawing::from_svg(svg, "the front view").unwrap_err();
            assert!(
                error
                    .to_string()
                    .starts_with("the front view cannot be placed"),
                "{svg}: {error}"
            );
        }
    }
}
