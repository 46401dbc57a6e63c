//! A picture of a story sheet, as it stands on paper and on a page of the web.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde::{Serialize, Serializer};

use crate::{Drawing, PaperError};

/// A picture made of points of colour, with words for whoever does not see it.
#[derive(Debug, Clone, PartialEq)]
pub struct StoryPicture {
    /// A JPEG, in the letters a page can carry.
    data: String,
    wide: u32,
    high: u32,
    words: String,
    drawing: Drawing,
}

/// Points to a millimetre on paper: 300 to an inch, as presses ask for.
const POINTS_PER_MM: f64 = 300.0 / 25.4;

impl StoryPicture {
    /// A picture from the bytes of a JPEG of so many points across and down.
    ///
    /// # Errors
    /// [`PaperError::Drawing`] if it has no size or is larger than any page.
    pub fn from_jpeg(jpeg: &[u8], wide: u32, high: u32, words: &str) -> Result<Self, PaperError> {
        let data = format!("data:image/jpeg;base64,{}", STANDARD.encode(jpeg));
        let (width, height) = (
            f64::from(wide) / POINTS_PER_MM,
            f64::from(high) / POINTS_PER_MM,
        );
        let svg = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width:.3}mm\" height=\"{height:.3}mm\" viewBox=\"0 0 {wide} {high}\">\
             <image width=\"{wide}\" height=\"{high}\" href=\"{data}\"/></svg>"
        );
        Ok(Self {
            drawing: Drawing::from_svg(svg, words)?,
            data,
            wide,
            high,
            words: words.to_owned(),
        })
    }

    /// As an address that carries the picture itself.
    pub(super) fn data(&self) -> &str {
        &self.data
    }

    /// Points across and down.
    pub(super) const fn size(&self) -> (u32, u32) {
        (self.wide, self.high)
    }

    /// What it shows, in words.
    pub(super) fn words(&self) -> &str {
        &self.words
    }
}

impl Serialize for StoryPicture {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        #[derive(Serialize)]
        struct Printed<'a> {
            drawing: &'a Drawing,
            words: &'a str,
        }
        Printed {
            drawing: &self.drawing,
            words: &self.words,
        }
        .serialize(to)
    }
}
