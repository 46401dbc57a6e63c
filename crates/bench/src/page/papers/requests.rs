//! Which pack or patterns are asked for, as a page says it in words, and what is wrong with the words.

use jiff::civil::Date;
use jobs::{PackOrder, PatternKind, PatternOrder};
use papers::Paper;
use serde::Deserialize;
use style::{Loaded, Size};
use trade::Length;
use words::Words;

/// The roll a plotter has where nobody says.
pub(super) const USUAL_ROLL: Length = Length::cm(150.0);
/// The widest roll there is.
const WIDEST_ROLL: Length = Length::cm(500.0);
/// The narrowest.
const NARROWEST_ROLL: Length = Length::cm(20.0);
/// The longest text that is looked at.
const LONGEST: usize = 4000;

/// Today's date where the maker is.
pub(super) fn today() -> Date {
    jiff::ZonedDateTime::now().date()
}

/// A pack, in words.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub(super) struct PackRequest {
    size: String,
    date: String,
}

/// Patterns, in words.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub(super) struct PatternRequest {
    kind: String,
    /// "32x32 34x32"; all when empty.
    sizes: String,
    width: String,
    nested: String,
}

/// The kinds of files: what an address calls each, what a person reads, and for what it is.
pub(super) fn kinds(say: &'static Words) -> [(&'static str, &'static str, &'static str); 6] {
    [
        ("dxf", say.papers_kind_dxf(), say.papers_kind_dxf_for()),
        ("svg", say.papers_kind_svg(), say.papers_kind_svg_for()),
        ("hpgl", say.papers_kind_hpgl(), say.papers_kind_hpgl_for()),
        ("a4", say.papers_kind_a4(), say.papers_kind_a4_for()),
        ("a3", say.papers_kind_a3(), say.papers_kind_a3_for()),
        ("roll", say.papers_kind_roll(), say.papers_kind_roll_for()),
    ]
}

impl PackRequest {
    /// What is asked for, or every mistake in it.
    pub(super) fn read(
        &self,
        say: &'static Words,
        loaded: &Loaded,
    ) -> Result<PackOrder, Vec<String>> {
        let mut problems = Vec::new();
        let size = match self.size.trim() {
            "" => None,
            text => size(loaded, text).map_err(|why| problems.push(why)).ok(),
        };
        let date = match self.date.trim() {
            "" => today(),
            text => text.parse().unwrap_or_else(|_| {
                problems.push(say.papers_date_wrong().to_owned());
                today()
            }),
        };
        if problems.is_empty() {
            Ok(PackOrder { size, date })
        } else {
            Err(problems)
        }
    }
}

impl PatternRequest {
    /// What is asked for, or every mistake in it.
    pub(super) fn read(
        &self,
        say: &'static Words,
        loaded: &Loaded,
    ) -> Result<PatternOrder, Vec<String>> {
        let mut problems = Vec::new();
        let width = self.width(say, &mut problems);
        let kind = match self.kind.as_str() {
            "dxf" => PatternKind::Dxf,
            "svg" => PatternKind::Svg,
            "hpgl" => PatternKind::Hpgl(width),
            "a4" => PatternKind::Tiled(Paper::A4),
            "a3" => PatternKind::Tiled(Paper::A3),
            "roll" => PatternKind::Roll(width),
            _ => {
                let known = kinds(say).map(|(word, _, _)| word);
                problems.push(say.papers_kind_wrong(known.join(", ")));
                PatternKind::Dxf
            }
        };
        let sizes = self.sizes.get(..LONGEST).unwrap_or(&self.sizes);
        let mut asked = Vec::new();
        for word in sizes.split_whitespace() {
            match size(loaded, word) {
                Ok(size) => asked.push(size),
                Err(why) => problems.push(why),
            }
        }
        if !problems.is_empty() {
            problems.truncate(3);
            return Err(problems);
        }
        Ok(PatternOrder {
            kind,
            sizes: asked,
            date: today(),
            band: None,
            nested: !self.nested.is_empty()
                && matches!(kind, PatternKind::Tiled(_) | PatternKind::Roll(_)),
        })
    }

    fn width(&self, say: &'static Words, problems: &mut Vec<String>) -> Length {
        let text = self.width.trim();
        if text.is_empty() {
            return USUAL_ROLL;
        }
        let width: Option<Length> = text.parse().ok();
        // The comparisons are false for what is no number.
        match width.filter(|width| *width >= NARROWEST_ROLL && *width <= WIDEST_ROLL) {
            Some(width) => width,
            None => {
                problems.push(say.papers_width_wrong().to_owned());
                USUAL_ROLL
            }
        }
    }
}

fn size(loaded: &Loaded, text: &str) -> Result<Size, String> {
    let size: Size = text.parse().map_err(|why| format!("{why}"))?;
    jobs::size_of(&loaded.style, Some(size)).map_err(|why| crate::work::words(&why).join(": "))
}
