//! What is being looked at: view or plate, face, size, units and panel, all kept in the address.

use drawing::{PlateId, View};
use sewing::Face;
use style::{Collection, Size, StyleDoc, Units};
use trade::System;
use words::Words;

use crate::addresses::encoded;
use crate::room::Room;

/// Which panel is open beside the drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Panel {
    Fit,
    Cloth,
    Details,
    Construction,
    Yarn,
    Order,
    Findings,
}

impl Panel {
    pub(crate) const ALL: [Self; 7] = [
        Self::Fit,
        Self::Cloth,
        Self::Details,
        Self::Construction,
        Self::Yarn,
        Self::Order,
        Self::Findings,
    ];

    pub(crate) const fn word(self) -> &'static str {
        match self {
            Self::Fit => "fit",
            Self::Cloth => "cloth",
            Self::Details => "details",
            Self::Construction => "construction",
            Self::Yarn => "yarn",
            Self::Order => "order",
            Self::Findings => "findings",
        }
    }

    /// What its tab says.
    pub(crate) fn title(self, say: &'static Words) -> &'static str {
        match self {
            Self::Fit => say.tabs_fit(),
            Self::Cloth => say.tabs_cloth(),
            Self::Details => say.tabs_details(),
            Self::Construction => say.tabs_construction(),
            Self::Yarn => say.tabs_yarn(),
            Self::Order => say.tabs_order(),
            Self::Findings => say.tabs_findings(),
        }
    }
}

/// What a drawing of the pair shows besides its cloth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Layer {
    Stitches,
    Fittings,
    Below,
    Measures,
    Findings,
}

impl Layer {
    pub(crate) const ALL: [Self; 5] = [
        Self::Stitches,
        Self::Fittings,
        Self::Below,
        Self::Measures,
        Self::Findings,
    ];

    pub(crate) const fn word(self) -> &'static str {
        match self {
            Self::Stitches => "stitches",
            Self::Fittings => "fittings",
            Self::Below => "below",
            Self::Measures => "measures",
            Self::Findings => "findings",
        }
    }

    /// The key that turns it on and off, and what it is called.
    pub(crate) fn said(self, say: &'static Words) -> (&'static str, &'static str) {
        match self {
            Self::Stitches => ("s", say.drawing_layer_stitches()),
            Self::Fittings => ("h", say.drawing_layer_fittings()),
            Self::Below => ("l", say.drawing_layer_below()),
            Self::Measures => ("m", say.drawing_layer_measures()),
            Self::Findings => ("n", say.drawing_layer_findings()),
        }
    }
}

/// The layers of a drawing that is not asked for others.
const USUAL_LAYERS: [Layer; 2] = [Layer::Stitches, Layer::Fittings];

/// What is drawn on paper in place of the pair.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum OnPaper {
    /// A detail, to scale.
    Detail(PlateId),
    /// All yarns.
    YarnPlan,
}

impl OnPaper {
    /// All of them, in the order in which they are listed.
    pub(crate) fn all() -> impl Iterator<Item = Self> {
        let details = PlateId::ALL.into_iter().map(Self::Detail);
        details.chain([Self::YarnPlan])
    }

    /// The one that an address writes so.
    pub(crate) fn of(code: &str) -> Option<Self> {
        Self::all().find(|plate| plate.code() == code)
    }

    /// As an address writes it.
    pub(crate) const fn code(self) -> &'static str {
        match self {
            Self::Detail(plate) => plate.code(),
            Self::YarnPlan => "yarn-plan",
        }
    }

    /// What it is called, within a sentence.
    pub(crate) fn words(self, say: &Words) -> &str {
        match self {
            Self::Detail(plate) => plate.words(say),
            Self::YarnPlan => say.drawing_plate_yarn_plan(),
        }
    }
}

/// What an address asks to see. What it leaves out, or says in words unknown here, is as it usually is.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Viewing {
    pub(crate) view: View,
    pub(crate) face: Face,
    /// The plate shown in place of the view.
    pub(crate) plate: Option<OnPaper>,
    /// `None` is the base size.
    pub(crate) size: Option<Size>,
    /// `None` is what the collection says.
    pub(crate) units: Option<Units>,
    pub(crate) panel: Panel,
    /// The room that the findings are looked at from.
    pub(crate) room: Room,
    /// The part of the garment whose section is open, such as `seam:inseam`.
    pub(crate) part: Option<String>,
    /// For how many pairs yarn is counted up.
    pub(crate) pairs: u32,
    /// The layers that are on, in the order of [`Layer::ALL`].
    pub(crate) layers: Vec<Layer>,
}

/// The longest key or part taken from an address.
const LONGEST: usize = 80;
/// An order for which yarn is counted up when none is asked for.
const USUAL_PAIRS: u32 = 100;
/// The largest order counted up.
const MOST_PAIRS: u32 = 1_000_000;

/// The words of an address, as they come.
#[derive(Clone, Debug, Default, serde::Deserialize)]
pub(crate) struct AddressWords {
    view: Option<String>,
    face: Option<String>,
    plate: Option<String>,
    size: Option<String>,
    units: Option<String>,
    panel: Option<String>,
    room: Option<String>,
    part: Option<String>,
    pairs: Option<String>,
    layers: Option<String>,
}

impl Default for Viewing {
    fn default() -> Self {
        Self {
            view: View::Front,
            face: Face::Outside,
            plate: None,
            size: None,
            units: None,
            panel: Panel::Fit,
            room: Room::Fit,
            part: None,
            pairs: USUAL_PAIRS,
            layers: USUAL_LAYERS.to_vec(),
        }
    }
}

impl From<AddressWords> for Viewing {
    fn from(asked: AddressWords) -> Self {
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
            plate: asked.plate.as_deref().and_then(OnPaper::of),
            size: asked.size.and_then(|text| text.parse().ok()),
            units: Units::WORDS
                .iter()
                .find(|(word, _)| *word == units)
                .map(|(_, units)| *units),
            room: Room::ROW
                .into_iter()
                .find(|room| is(&asked.room, room.word()))
                .unwrap_or(Room::Fit),
            panel: Panel::ALL
                .into_iter()
                .find(|known| known.word() == panel)
                .unwrap_or(Panel::Fit),
            part: asked.part.filter(|part| part.len() <= LONGEST),
            pairs: asked
                .pairs
                .and_then(|text| text.trim().parse().ok())
                .filter(|pairs| (1..=MOST_PAIRS).contains(pairs))
                .unwrap_or(USUAL_PAIRS),
            layers: match asked.layers {
                None => USUAL_LAYERS.to_vec(),
                Some(words) => Layer::ALL
                    .into_iter()
                    .filter(|layer| words.split(' ').any(|word| word == layer.word()))
                    .collect(),
            },
        }
    }
}

impl Viewing {
    /// The size shown: the one asked for when the style has it, else its base.
    pub(crate) fn size_of(&self, style: &StyleDoc) -> Size {
        self.size
            .filter(|size| style.sizes.contains(*size))
            .unwrap_or(style.sizes.base)
    }

    /// The room whose panels stand beside the drawing.
    pub(crate) fn room(&self) -> Room {
        let mut with_it = Room::ROW.into_iter();
        match self.panel {
            Panel::Findings => self.room,
            panel => with_it
                .find(|room| room.panels().contains(&panel))
                .unwrap_or(Room::Fit),
        }
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

    pub(crate) fn shows(&self, layer: Layer) -> bool {
        self.layers.contains(&layer)
    }

    /// The same with one layer turned on, or off again.
    pub(crate) fn turning(&self, layer: Layer) -> Self {
        let on = |each: &Layer| self.shows(*each) != (*each == layer);
        Self {
            layers: Layer::ALL.into_iter().filter(on).collect(),
            ..self.clone()
        }
    }

    /// The address's query for this.
    pub(crate) fn query(&self) -> String {
        let mut query = format!("view={}&face={}", self.view.word(), self.face_word());
        if let Some(plate) = self.plate {
            query.push_str(&format!("&plate={}", plate.code()));
        }
        if let Some(size) = self.size {
            query.push_str(&format!("&size={size}"));
        }
        if let Some(units) = self.units {
            query.push_str(&format!("&units={units}"));
        }
        query.push_str(&format!("&panel={}", self.panel.word()));
        if self.panel == Panel::Findings && self.room != Room::Fit {
            query.push_str(&format!("&room={}", self.room.word()));
        }
        if let Some(part) = &self.part {
            query.push_str(&format!("&part={}", encoded(part)));
        }
        if self.pairs != USUAL_PAIRS {
            query.push_str(&format!("&pairs={}", self.pairs));
        }
        if self.layers != USUAL_LAYERS {
            let words: Vec<&str> = self.layers.iter().map(|layer| layer.word()).collect();
            query.push_str(&format!("&layers={}", encoded(&words.join(" "))));
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
        let asked = AddressWords {
            view: Some("sideways".into()),
            face: Some("<script>".into()),
            size: Some("32".into()),
            pairs: Some("-1".into()),
            plate: Some("x".repeat(200)),
            ..AddressWords::default()
        };
        assert_eq!(Viewing::from(asked), Viewing::default());
    }

    #[test]
    fn a_layer_turned_twice_is_as_it_was() {
        let see = Viewing::default();
        for layer in Layer::ALL {
            let turned = see.turning(layer);
            assert_ne!(turned.shows(layer), see.shows(layer));
            assert_eq!(turned.turning(layer), see);
        }
        let none = Viewing::from(AddressWords {
            layers: Some(String::new()),
            ..AddressWords::default()
        });
        assert!(none.layers.is_empty());
    }

    #[test]
    fn a_query_says_what_is_seen() {
        let see = Viewing {
            view: View::Back,
            face: Face::Inside,
            plate: Some(OnPaper::Detail(PlateId::CoinPocket)),
            size: Some(Size::new(34, 30)),
            units: Some(Units::Inches),
            panel: Panel::Construction,
            room: Room::Fit,
            part: Some("seam:inseam".into()),
            pairs: 300,
            layers: vec![Layer::Stitches, Layer::Measures],
        };
        let query = "view=back&face=inside&plate=coin-pocket&size=34x30&units=in&panel=construction\
             &part=seam%3Ainseam&pairs=300&layers=stitches%20measures";
        assert_eq!(see.query(), query);
    }
}
