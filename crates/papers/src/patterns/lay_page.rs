//! A lay to scale on one page, in rows where it is long.

use drawing::palette::{CONSTRUCTION, HAIRLINE, INK, TYPE_FIGURES, TYPE_WORDS};
use drawing::{Anchor, Layer, Sheet, Stroke, Text, open};
use geometry::{Point, Rect, Vec2};
use trade::Length;

use super::PatternHead;
use super::page::moved;
use crate::PaperError;
use crate::sheets::{Leaf, Sheets, sheets_pdf};

/// The page is no longer either way than the long side of A0.
const LONGEST_MM: f64 = 1189.0;
/// So much of the end of a row comes again at the beginning of the next: more than the longest words
/// that stand in a piece, so that all are whole in one of the two.
const AGAIN_MM: f64 = 60.0;
/// White at either end of a row.
const WHITE_MM: f64 = 7.0;
/// The scales, the first that fits; the last always does.
const SCALES: [u32; 6] = [10, 20, 50, 100, 200, 500];

/// Prints a lay to scale on one page of its own size: 1:10, or smaller where even in rows the page would
/// be longer than A0. The scale stands at its foot.
///
/// # Errors
/// [`PaperError`] when typst cannot set the page.
pub fn lay_pdf(sheet: &Sheet, head: &PatternHead) -> Result<Vec<u8>, PaperError> {
    let rows = |one_to: u32| Rows::of(sheet, f64::from(one_to));
    let fits = |one_to: &u32| {
        let tall = f64::from(rows(*one_to).count) * sheet.height.to_mm();
        tall <= LONGEST_MM * f64::from(*one_to)
    };
    let one_to = SCALES
        .into_iter()
        .find(fits)
        .unwrap_or(SCALES[SCALES.len() - 1]);
    let page = rows(one_to).page(sheet, one_to);
    sheets_pdf(&Sheets {
        title: format!("{}, {}", head.style, sheet.title),
        author: head.collection.clone(),
        date: head.date,
        paper: [0.0, 0.0],
        cover: None,
        leaves: vec![Leaf::of_cloth(&page, one_to)?],
    })
}

/// How a drawing is parted into rows, millimetres of cloth.
struct Rows {
    count: u32,
    /// How wide each row is.
    wide: f64,
    /// How far one begins after the one above it.
    step: f64,
}

impl Rows {
    fn of(sheet: &Sheet, times: f64) -> Rows {
        let (all, again) = (sheet.width.to_mm(), AGAIN_MM * times);
        let most = (LONGEST_MM - 2.0 * WHITE_MM) * times;
        let count = ((all - again) / (most - again)).ceil().max(1.0);
        let wide = (all - again) / count + again;
        Rows {
            // A count beyond any page is refused by its height.
            count: count.min(1e6) as u32,
            wide: wide.min(all),
            step: wide - again,
        }
    }

    /// The rows one below the other, with the scale at the foot.
    fn page(&self, sheet: &Sheet, one_to: u32) -> Sheet {
        let times = f64::from(one_to);
        let tall = sheet.height.to_mm();
        let mut layers = Vec::new();
        for row in 0..self.count {
            let left = sheet.origin + Vec2::new(f64::from(row) * self.step, 0.0);
            let window = Rect::from_origin_size(left, (self.wide, tall));
            let by = Vec2::new(-f64::from(row) * self.step, f64::from(row) * tall);
            if self.count == 1 {
                layers.extend(sheet.layers.iter().cloned());
            } else {
                layers.extend(moved(sheet, Some(window), by));
                layers.push(self.ends(row, window + by, times));
            }
        }
        let mut foot = Layer::named("foot");
        let again = match self.count {
            1 => String::new(),
            n => format!(
                ", in {n} rows; the last {:.0} cm of each come again at the beginning of the next",
                AGAIN_MM * times / 10.0
            ),
        };
        let below = sheet.origin.y + tall * f64::from(self.count);
        foot.text(
            None,
            Text {
                at: Point::new(0.0, below - 2.6 * times),
                words: format!("Scale 1:{one_to}{again}"),
                size: TYPE_WORDS * times,
                anchor: Anchor::Start,
                turn_deg: 0.0,
                colour: INK,
                bold: false,
            },
        );
        layers.push(foot);
        // A row that goes on ends at a line, not at the edge of the paper.
        let white = if self.count > 1 {
            WHITE_MM * times
        } else {
            0.0
        };
        Sheet {
            origin: sheet.origin - Vec2::new(white, 0.0),
            width: Length::mm(self.wide + 2.0 * white),
            height: Length::mm(tall * f64::from(self.count)),
            layers,
            ..sheet.clone()
        }
    }

    /// Where a row goes on: a line at the end it is cut at, and which row it is.
    fn ends(&self, row: u32, shown: Rect, times: f64) -> Layer {
        let mut layer = Layer::named("rows");
        let stroke = Stroke::plain(CONSTRUCTION, HAIRLINE * times);
        let mut end = |x: f64, at: f64, anchor: Anchor, words: String| {
            let from_to = [Point::new(x, shown.y0), Point::new(x, shown.y1)];
            layer.line(None, open(&from_to), stroke);
            layer.text(
                None,
                Text {
                    at: Point::new(at, shown.y0 + 3.0 * times),
                    words,
                    size: TYPE_FIGURES * times,
                    anchor,
                    turn_deg: 0.0,
                    colour: CONSTRUCTION,
                    bold: false,
                },
            );
        };
        let aside = 1.5 * times;
        if row > 0 {
            let words = format!("row {}, from row {row}", row + 1);
            end(shown.x0, shown.x0 + aside, Anchor::Start, words);
        }
        if row + 1 < self.count {
            let words = format!("row {} goes on in row {}", row + 1, row + 2);
            end(shown.x1, shown.x1 - aside, Anchor::End, words);
        }
        layer
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sheet(wide: f64) -> Sheet {
        Sheet {
            title: "Lay".to_owned(),
            origin: Point::new(-90.0, -100.0),
            width: Length::mm(wide),
            height: Length::mm(900.0),
            layers: vec![Layer::named("cloth")],
        }
    }

    #[test]
    fn rows_cover_the_whole_lay_and_overlap() {
        for wide in [100.0, 11_750.0, 11_751.0, 28_000.0, 300_000.0] {
            let rows = Rows::of(&sheet(wide), 10.0);
            assert!(rows.wide <= 11_750.0 + 1e-6);
            let end = rows.step * f64::from(rows.count - 1) + rows.wide;
            assert!((end - wide).abs() < 1e-6, "{wide}: {end}");
            assert!(rows.count == 1 || (rows.wide - rows.step - 600.0).abs() < 1e-6);
        }
        assert_eq!(Rows::of(&sheet(28_000.0), 10.0).count, 3);
    }

    #[test]
    fn the_page_says_its_scale() {
        let page = Rows::of(&sheet(28_000.0), 10.0).page(&sheet(28_000.0), 10);
        let svg = drawing::svg(&page);
        assert!(svg.contains("Scale 1:10, in 3 rows"), "{svg}");
        assert!(svg.contains("row 1 goes on in row 2"));
    }
}
