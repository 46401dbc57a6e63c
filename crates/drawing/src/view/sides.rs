//! Which half of a view is the wearer's left and which the right, in words beside the waist: the pair
//! is turned over and turned out from one view to the next, and nobody should have to work it out.

use flat::Hand;
use geometry::Point;
use trade::Length;
use words::{Words, key};

use super::scene::Scene;
use crate::lettering::CAPITALS;
use crate::palette::{INK, QUIET};
use crate::sheet::{Anchor, Layer, Text};

/// At a fifth of the size, as the pack prints a view, this is a type of 10 points; on a screen that
/// shows the pair whole it is still read.
const TYPE: Length = Length::mm(18.0);
/// From the side fold to the words.
const APART_MM: f64 = 12.0;

/// The words of both halves, level with the middle of the band, where the pair is narrowest.
pub(super) fn words(scene: &Scene, words: &Words) -> Layer {
    let mut layer = Layer::named("sides");
    let line = scene.laid.waist_line(scene.view.half());
    let Some(fold) = line.last().filter(|p| p.is_finite()) else {
        return layer;
    };
    let middle = fold.y + scene.laid.band_height().to_mm() / 2.0;
    for (hand, name) in [
        (Hand::Left, key::VIEW_WEARERS_LEFT),
        (Hand::Right, key::VIEW_WEARERS_RIGHT),
    ] {
        let beside = Point::new(fold.x + APART_MM, middle - TYPE.to_mm() * CAPITALS / 2.0);
        let at = scene.laid.mirrored(beside, hand);
        layer.text(
            None,
            Text {
                at,
                words: words.named(name).to_owned(),
                size: TYPE,
                anchor: if at.x > 0.0 {
                    Anchor::Start
                } else {
                    Anchor::End
                },
                turn_deg: 0.0,
                colour: INK.mixed(QUIET, 0.5),
                bold: false,
            },
        );
    }
    layer
}
