//! The grid of pages on which a pattern is tiled.

use cut_sheets::{PatternSet, PatternSheet};
use geometry::{Point, Rect, Vec2};
use trade::Length;

/// Sizes of office paper (ISO 216).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Paper {
    /// 210 by 297 mm.
    A4,
    /// 297 by 420 mm.
    A3,
}

impl Paper {
    /// What it is called.
    pub const fn name(self) -> &'static str {
        match self {
            Paper::A4 => "A4",
            Paper::A3 => "A3",
        }
    }

    const fn size_mm(self) -> (f64, f64) {
        match self {
            Paper::A4 => (210.0, 297.0),
            Paper::A3 => (297.0, 420.0),
        }
    }
}

/// Room that office printers leave white, with a line of words in it.
const SIDE_MM: f64 = 9.0;
const TOP_MM: f64 = 9.0;
const FOOT_MM: f64 = 15.0;
/// What two neighbours show alike.
const OVERLAP_MM: f64 = 10.0;
/// Grids of at most so many columns are tried.
const MOST_COLUMNS: u32 = 7;

/// How the plane is cut into pages.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Grid {
    page: (f64, f64),
    /// The part of the page that shows the plane.
    window: (f64, f64),
}

/// One page of the grid.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Tile {
    pub row: u32,
    pub column: u32,
}

impl Tile {
    /// Rows are letters and columns numbers: "B3". After Z come AA, AB and so on.
    pub fn code(self) -> String {
        let mut letters = String::new();
        let mut left = self.row + 1;
        while left > 0 {
            let letter = u8::try_from((left - 1) % 26).unwrap_or(0);
            letters.insert(0, char::from(b'A' + letter));
            left = (left - 1) / 26;
        }
        format!("{letters}{}", self.column + 1)
    }

    pub fn left(self) -> Option<Tile> {
        let column = self.column.checked_sub(1)?;
        Some(Tile { column, ..self })
    }

    pub fn above(self) -> Option<Tile> {
        let row = self.row.checked_sub(1)?;
        Some(Tile { row, ..self })
    }

    pub fn right(self) -> Tile {
        Tile {
            column: self.column + 1,
            ..self
        }
    }

    pub fn below(self) -> Tile {
        Tile {
            row: self.row + 1,
            ..self
        }
    }
}

impl Grid {
    pub fn of(paper: Paper) -> Grid {
        let (wide, tall) = paper.size_mm();
        Grid {
            page: (wide, tall),
            window: (wide - 2.0 * SIDE_MM, tall - TOP_MM - FOOT_MM),
        }
    }

    /// Width and height of a page.
    pub fn page(&self) -> [f64; 2] {
        [self.page.0, self.page.1]
    }

    /// Where the window begins on the page.
    pub fn corner(&self) -> Point {
        Point::new(SIDE_MM, TOP_MM)
    }

    /// From one page to the next on the plane.
    pub fn step(&self) -> Vec2 {
        Vec2::new(self.window.0 - OVERLAP_MM, self.window.1 - OVERLAP_MM)
    }

    /// What a page shows of the plane.
    pub fn window(&self, tile: &Tile) -> Rect {
        let step = self.step();
        let (x, y) = (
            f64::from(tile.column) * step.x,
            f64::from(tile.row) * step.y,
        );
        Rect::new(x, y, x + self.window.0, y + self.window.1)
    }

    /// The layout that needs the fewest pages, and those of its pages that carry something, row by row.
    pub fn best(&self, set: &PatternSet) -> (PatternSheet, Vec<Tile>) {
        let step = self.step();
        let least = set.least_width().to_mm();
        // Where even the widest grid is too narrow, the last page grows as many columns as it needs.
        let fewest = ((least / step.x).ceil().clamp(1.0, 1000.0)) as u32;
        let widths = fewest..=fewest.max(MOST_COLUMNS);
        let laid = widths.map(|columns| {
            let sheet = set.on_width(Length::mm(f64::from(columns) * step.x), false);
            let tiles = self.tiles(&sheet);
            (sheet, tiles)
        });
        laid.min_by_key(|(_, tiles)| tiles.len())
            .unwrap_or_else(|| (set.on_width(Length::mm(step.x), false), Vec::new()))
    }

    /// The pages on which something lies that is not on another page as well.
    fn tiles(&self, sheet: &PatternSheet) -> Vec<Tile> {
        let step = self.step();
        let count =
            |length: Length, step: f64| (length.to_mm() / step).ceil().clamp(1.0, 5000.0) as u32;
        let (rows, columns) = (
            count(sheet.sheet.height, step.y),
            count(sheet.sheet.width, step.x),
        );
        let all = (0..rows).flat_map(|row| (0..columns).map(move |column| Tile { row, column }));
        all.filter(|tile| {
            let window = self.window(tile);
            let own = Rect::from_origin_size(window.origin(), (step.x, step.y));
            sheet.taken.iter().any(|r| r.overlaps(own))
        })
        .collect()
    }

    /// The register marks a page shares with its neighbours, on the plane: two on each joined side.
    pub fn marks(&self, tile: &Tile, tiles: &[Tile]) -> Vec<Point> {
        let step = self.step();
        let there = |t: Option<Tile>| t.is_some_and(|t| tiles.contains(&t));
        let window = self.window(tile);
        let mut marks = Vec::new();
        for share in [0.25, 0.75] {
            let (x, y) = (window.x0 + share * step.x, window.y0 + share * step.y);
            for (joined, mark) in [
                (there(tile.left()), Point::new(window.x0, y)),
                (there(tile.above()), Point::new(x, window.y0)),
                (there(Some(tile.right())), Point::new(window.x0 + step.x, y)),
                (there(Some(tile.below())), Point::new(x, window.y0 + step.y)),
            ] {
                if joined {
                    marks.push(mark);
                }
            }
        }
        marks
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_are_letters() {
        let code = |row, column| Tile { row, column }.code();
        assert_eq!(code(0, 0), "A1");
        assert_eq!(code(1, 11), "B12");
        assert_eq!(code(25, 0), "Z1");
        assert_eq!(code(26, 0), "AA1");
        assert_eq!(code(27, 2), "AB3");
    }

    #[test]
    fn neighbours_show_the_same_marks() {
        let grid = Grid::of(Paper::A4);
        let tiles: Vec<Tile> = (0..2)
            .flat_map(|row| (0..2).map(move |column| Tile { row, column }))
            .collect();
        let [a, b, ..] = tiles[..] else {
            panic!("four tiles")
        };
        let (one, other) = (grid.marks(&a, &tiles), grid.marks(&b, &tiles));
        assert_eq!(one.iter().filter(|m| other.contains(m)).count(), 2);
        for mark in one {
            assert!(grid.window(&a).contains(mark) || mark.x == grid.window(&a).x1);
        }
        // A page without neighbours has nothing to be joined to.
        assert!(grid.marks(&a, &[a]).is_empty());
    }

    #[test]
    fn windows_overlap_by_a_centimetre() {
        let grid = Grid::of(Paper::A3);
        let tile = Tile { row: 0, column: 0 };
        let (one, other) = (grid.window(&tile), grid.window(&tile.right()));
        assert!((one.x1 - other.x0 - OVERLAP_MM).abs() < 1e-9);
    }
}
