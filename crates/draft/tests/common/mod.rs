//! Charts for the tests: the published-style tables of `tests/data/tables.md`, and single charts
//! stated in centimetres, both as a whole style document.
#![allow(dead_code, clippy::unwrap_used)]

use draft::Spec;
use style::{ChartEntry, Figure, Fit, MeasureId, OutseamLine, Size, Sizes, StyleDoc};
use trade::Length;

/// The core of a chart.
#[derive(Clone, Debug)]
pub struct Chart {
    pub figure: Figure,
    pub fit: Fit,
    pub size: Size,
    pub waist: Length,
    pub seat: Length,
    pub thigh: Length,
    pub knee: Length,
    pub hem: Length,
    pub front_rise: Length,
    pub back_rise: Length,
    pub inseam: Length,
    /// Below the crotch.
    pub knee_at: Length,
}

impl Chart {
    /// A straight men's chart at 32x32, to be changed by the test that uses it.
    pub fn straight() -> Chart {
        table_rows()
            .into_iter()
            .find(|c| {
                c.figure == Figure::Men
                    && c.fit == Fit::Straight
                    && c.size.waist == style::Tag::inches(32)
            })
            .unwrap()
    }

    /// The demo style's document with this chart in its single size; what the chart does not name
    /// keeps its default, and the outseam is left to the draft.
    pub fn doc(&self) -> StyleDoc {
        let mut doc = ferryman();
        // Even about the crease, as the published constructions are.
        doc.shape.outseam = OutseamLine::Shaped;
        doc.style.figure = self.figure;
        doc.style.fit = self.fit;
        doc.sizes = Sizes {
            waists: vec![self.size.waist],
            lengths: vec![self.size.length],
            base: self.size,
        };
        doc.chart.clear();
        let mut state = |measure, value, at| {
            let entry = ChartEntry {
                value,
                grade: None,
                per_length: None,
                breaks: Vec::new(),
                at,
                tolerance: Length::mm(5.0),
            };
            doc.chart.insert(measure, entry);
        };
        state(MeasureId::Waist, self.waist, None);
        state(MeasureId::Seat, self.seat, Some(Length::mm(80.0)));
        state(MeasureId::Thigh, self.thigh, Some(Length::inches(1.0)));
        state(MeasureId::Knee, self.knee, Some(self.knee_at));
        state(MeasureId::Hem, self.hem, None);
        state(MeasureId::FrontRise, self.front_rise, None);
        state(MeasureId::BackRise, self.back_rise, None);
        state(MeasureId::Inseam, self.inseam, None);
        state(MeasureId::BandHeight, Length::mm(38.0), None);
        doc
    }

    pub fn spec(&self) -> Spec {
        Spec::of(&self.doc(), self.size)
    }
}

pub fn ferryman() -> StyleDoc {
    let folder = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../style/demo/saltmarsh/styles/ferryman"
    );
    style::load(folder.as_ref()).unwrap().style
}

/// All rows of `tests/data/tables.md`, from the inches in brackets.
///
/// As where the tables were made: inseam 32 in for men and 30 in for women, thigh 1 in below the
/// crotch, knee 2 in above the middle of the inseam.
pub fn table_rows() -> Vec<Chart> {
    let text = include_str!("../data/tables.md");
    let mut rows = Vec::new();
    let mut heading = (Figure::Men, Fit::Slim);
    for line in text.lines() {
        if let Some(title) = line.strip_prefix("**") {
            let (who, rest) = title.split_once(" – ").unwrap();
            let figure = Figure::WORDS.iter().find(|w| who.to_lowercase() == w.0);
            let fit = Fit::WORDS.iter().find(|w| rest.starts_with(w.0));
            heading = (figure.unwrap().1, fit.unwrap().1);
        }
        let cells: Vec<&str> = line.split('|').map(str::trim).collect();
        let Some(Ok(tag)) = cells.get(1).map(|c| c.parse::<u32>()) else {
            continue;
        };
        let inches = |k: usize| {
            let cell = cells[k];
            let (from, to) = (cell.find('(').unwrap(), cell.find(')').unwrap());
            Length::inches(cell[from + 1..to].parse().unwrap())
        };
        let length = if heading.0 == Figure::Men { 32 } else { 30 };
        let inseam = Length::inches(f64::from(length));
        rows.push(Chart {
            figure: heading.0,
            fit: heading.1,
            size: Size::new(tag, length),
            waist: inches(2),
            seat: inches(3),
            thigh: inches(4),
            knee: inches(5),
            hem: inches(6),
            front_rise: inches(7),
            back_rise: inches(8),
            inseam,
            knee_at: inseam / 2.0 - Length::inches(2.0),
        });
    }
    rows
}
