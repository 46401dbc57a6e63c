//! How large a plate is drawn, and the bar that proves it on paper.

use std::fmt;

use geometry::Point;
use trade::System;
use words::Words;

use crate::lettering::text_width;
use crate::palette::{HAIRLINE, INK, PAPER, SEWN_LINE, TYPE_FIGURES};
use crate::sheet::{Anchor, Layer, Stroke, Text, closed};

/// A drawing scale of whole numbers: so many millimetres on paper for so many of cloth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PlateScale {
    paper: u32,
    cloth: u32,
}

impl PlateScale {
    /// The scales a plate may have, the largest first.
    pub const ALL: [PlateScale; 12] = [
        PlateScale::new(4, 1),
        PlateScale::new(3, 1),
        PlateScale::new(2, 1),
        PlateScale::new(1, 1),
        PlateScale::new(1, 2),
        PlateScale::new(1, 3),
        PlateScale::new(1, 4),
        PlateScale::new(1, 5),
        PlateScale::new(1, 6),
        PlateScale::new(1, 8),
        PlateScale::new(1, 10),
        PlateScale::new(1, 20),
    ];

    const fn new(paper: u32, cloth: u32) -> PlateScale {
        PlateScale { paper, cloth }
    }

    /// The largest scale of no more than so many millimetres on paper for one of cloth; the smallest
    /// there is where none is small enough.
    pub(super) fn no_larger_than(times: f64) -> PlateScale {
        let fits = PlateScale::ALL.into_iter().find(|s| s.times() <= times);
        fits.unwrap_or(PlateScale::new(1, 20))
    }

    /// Millimetres on paper for one of cloth: 0.5 at 1:2.
    pub fn times(self) -> f64 {
        f64::from(self.paper) / f64::from(self.cloth)
    }
}

/// "1:2", "2:1".
impl fmt::Display for PlateScale {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}", self.paper, self.cloth)
    }
}

/// Longest bar on paper, and its thickness.
const BAR_MM: f64 = 52.0;
const THICK_MM: f64 = 1.1;
/// Height of bar and figures together.
pub(super) const BAR_ROOM_MM: f64 = 6.0;

/// Draws the bar with its upper left corner at `at`, in steps of whole units of the collection.
pub(super) fn bar(layer: &mut Layer, at: Point, scale: PlateScale, system: System, words: &Words) {
    let times = scale.times();
    let (unit, word) = match system {
        System::Metric => (10.0, "cm"),
        System::Inch => (25.4, "in"),
    };
    // Steps of one, two, five or ten units; as many as fit, from two to five.
    let step = [1.0, 2.0, 5.0, 10.0, 20.0]
        .into_iter()
        .find(|n| n * unit * times >= BAR_MM / 6.5)
        .unwrap_or(20.0);
    let long = step * unit * times;
    let count = (BAR_MM / long).floor().clamp(1.0, 5.0) as u32;
    let rim = Stroke::plain(INK, HAIRLINE);
    for k in 0..count {
        let x = at.x + long * f64::from(k);
        let corners = [
            Point::new(x, at.y),
            Point::new(x + long, at.y),
            Point::new(x + long, at.y + THICK_MM),
            Point::new(x, at.y + THICK_MM),
        ];
        let fill = if k % 2 == 0 { INK } else { PAPER };
        layer.area(None, closed(&corners), fill, Some(rim));
    }
    let under = at.y + THICK_MM + TYPE_FIGURES.to_mm() * 0.95 + SEWN_LINE.to_mm();
    for k in 0..=count {
        let figure = f64::from(k) * step;
        let last = k == count;
        let words = if last {
            format!("{figure} {word}")
        } else {
            format!("{figure}")
        };
        // The unit follows the last figure, which itself stays under its tick.
        let half = text_width(&format!("{figure}"), TYPE_FIGURES).to_mm() / 2.0;
        let x = at.x + long * f64::from(k) - half;
        layer.text(None, plain(words, Point::new(x, under), false));
    }
    let beside = Point::new(
        at.x + long * f64::from(count) + 4.0,
        at.y + TYPE_FIGURES.to_mm() * 0.62,
    );
    layer.text(None, plain(words.drawn_scale(scale), beside, true));
}

fn plain(words: String, at: Point, bold: bool) -> Text {
    Text {
        at,
        words,
        size: TYPE_FIGURES,
        anchor: Anchor::Start,
        turn_deg: 0.0,
        colour: INK,
        bold,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn scales_step_down_from_the_largest() {
        let times: Vec<f64> = PlateScale::ALL.iter().map(|s| s.times()).collect();
        assert!(times.windows(2).all(|w| w[0] > w[1]));
        assert_eq!(PlateScale::new(1, 2).to_string(), "1:2");
    }

    #[test]
    fn the_bar_is_as_long_as_it_says() {
        for scale in PlateScale::ALL {
            for (system, unit) in [(System::Metric, 10.0), (System::Inch, 25.4)] {
                let mut layer = Layer::named("scale");
                bar(&mut layer, Point::ORIGIN, scale, system, Words::english());
                let mut right: f64 = 0.0;
                let mut last = String::new();
                for mark in &layer.marks {
                    match &mark.shape {
                        crate::Shape::Area { path, .. } => {
                            right = right.max(geometry::bounds(path).x1);
                        }
                        crate::Shape::Text(text) if text.words.contains(' ') && !text.bold => {
                            last.clone_from(&text.words);
                        }
                        _ => {}
                    }
                }
                let units: f64 = last
                    .split(' ')
                    .next()
                    .and_then(|n| n.parse().ok())
                    .unwrap_or(f64::NAN);
                assert!(
                    (right - units * unit * scale.times()).abs() < 1e-9,
                    "{scale}: {last} {right}"
                );
            }
        }
    }
}
