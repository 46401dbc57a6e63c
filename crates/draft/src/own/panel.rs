//! One brought piece: its edges as curves, anticlockwise, without allowance and after the wash.

use geometry::{Affine, Path, Point, area, smooth_through};
use style::{Drawn, EdgeId, OwnOutline, OwnPattern, Place};
use trade::Length;
use words::Words;

use super::sewn_line::inset;

/// A notch drawn on the cut line lies this far from the sewn line at most.
const NOTCH_REACH: Length = Length::mm(45.0);

/// A brought piece.
#[derive(Clone, Debug)]
pub(super) struct Panel {
    pub edges: Vec<(EdgeId, Path)>,
    pub notches: Vec<Point>,
    pub grain: (Point, Point),
}

impl Panel {
    /// The piece as the file has it, made anticlockwise and freed of what is added for sewing and washing.
    pub fn of(outline: &OwnOutline, own: &OwnPattern) -> Result<Panel, String> {
        let at = |place: &Place| Point::new(place[0].to_mm(), place[1].to_mm());
        let [foot, top] = outline.grain.ok_or("it has no grain line")?;
        let grain = (at(&foot), at(&top));
        if (grain.1 - grain.0).hypot() < 1.0 {
            return Err("its grain line is shorter than a millimetre".to_owned());
        }
        let edges: Vec<(EdgeId, Vec<Point>)> = outline
            .edges
            .iter()
            .map(|(name, places)| (*name, places.iter().map(at).collect()))
            .collect();
        let round: Vec<Point> = edges
            .iter()
            .flat_map(|(_, points)| points.iter().skip(1).copied())
            .collect();
        // Drawn as the other of the pair, it is turned over.
        let turned = if area(&round).to_mm2() < 0.0 {
            Affine::new([-1.0, 0.0, 0.0, 1.0, 0.0, 0.0])
        } else {
            Affine::IDENTITY
        };
        let grain = (turned * grain.0, turned * grain.1);
        let map = match (own.drawn, own.shrinkage) {
            (Drawn::BeforeWash, Some([warp, weft])) => {
                washed(grain, 1.0 - warp.to_ratio(), 1.0 - weft.to_ratio())
            }
            (Drawn::BeforeWash, None) => {
                return Err("what the wash takes from the shell is not known".to_owned());
            }
            (Drawn::AfterWash, _) => Affine::IDENTITY,
        };
        let over = |points: &[Point]| points.iter().map(|p| turned * *p).collect::<Vec<_>>();
        let mut edges: Vec<(EdgeId, Vec<Point>)> = edges
            .iter()
            .map(|(name, points)| (*name, over(points)))
            .collect();
        if !outline.sewn {
            // The allowance is sewn off before the wash, so it comes off before the wash is undone.
            edges = inset(&edges, |name| own.allowance(name))?;
        }
        let notches = over(&outline.notches.iter().map(at).collect::<Vec<_>>());
        Ok(Panel {
            edges: edges
                .iter()
                .map(|(name, points)| {
                    let after: Vec<Point> = points.iter().map(|p| map * *p).collect();
                    (*name, smooth_through(&after))
                })
                .collect(),
            notches: notches.iter().map(|p| map * *p).collect(),
            grain: (map * grain.0, map * grain.1),
        })
    }

    /// An edge, if the maker named it.
    pub fn edge(&self, id: EdgeId) -> Option<&Path> {
        self.edges.iter().find(|e| e.0 == id).map(|e| &e.1)
    }

    /// An edge that has to be named.
    pub fn need(&self, id: EdgeId) -> Result<&Path, String> {
        self.edge(id)
            .ok_or_else(|| format!("its edge `{}` is not named", id.words(Words::english())))
    }

    /// How long an edge is.
    pub fn length(&self, id: EdgeId) -> Result<Length, String> {
        self.need(id).map(Path::length)
    }

    /// The piece under a map that keeps lengths.
    #[must_use]
    pub fn moved(&self, map: Affine) -> Panel {
        Panel {
            edges: self
                .edges
                .iter()
                .map(|(name, path)| (*name, path.transformed(map)))
                .collect(),
            notches: self.notches.iter().map(|p| map * *p).collect(),
            grain: (map * self.grain.0, map * self.grain.1),
        }
    }

    /// Cuts the edge `whole` in two: its first part keeps the name, its last, of length `last`, takes the
    /// name `rest`. Nothing where `rest` is named already.
    pub fn split_end(&mut self, whole: EdgeId, rest: EdgeId, last: Length) -> Result<(), String> {
        if self.edge(rest).is_some() {
            return Ok(());
        }
        let length = self.length(whole)?;
        self.split(whole, length - last, |name, first, second| {
            vec![(name, first), (rest, second)]
        })
    }

    /// Cuts the edge `whole` in two: its last part keeps the name, what comes before takes the name `before`.
    pub fn split_start(
        &mut self,
        whole: EdgeId,
        before: EdgeId,
        last: Length,
    ) -> Result<(), String> {
        if self.edge(before).is_some() {
            return Ok(());
        }
        let length = self.length(whole)?;
        self.split(whole, length - last, |name, first, second| {
            vec![(before, first), (name, second)]
        })
    }

    fn split(
        &mut self,
        whole: EdgeId,
        at: Length,
        named: impl FnOnce(EdgeId, Path, Path) -> Vec<(EdgeId, Path)>,
    ) -> Result<(), String> {
        let index = self
            .edges
            .iter()
            .position(|e| e.0 == whole)
            .ok_or_else(|| format!("its edge `{}` is not named", whole.code()))?;
        let (name, path) = self.edges.remove(index);
        let length = path.length();
        if at < Length::mm(1.0) || at > length - Length::mm(1.0) {
            return Err(format!(
                "its edge `{}` is {} long, too short for the parts the chart says it has",
                name.words(Words::english()),
                length
            ));
        }
        let (first, second) = path.split(at);
        for (k, part) in named(name, first, second).into_iter().enumerate() {
            self.edges.insert(index + k, part);
        }
        Ok(())
    }

    /// The notch of the file that lies on this edge nearest to a place along it, if one is near enough.
    pub fn notch_near(&self, edge: &Path, along: Length, within: Length) -> Option<Length> {
        self.notches
            .iter()
            .filter_map(|notch| {
                let (at, away) = edge.nearest(*notch);
                let nearer = self
                    .edges
                    .iter()
                    .all(|(_, other)| other.nearest(*notch).1 >= away - Length::mm(0.01));
                let off = (at - along).abs();
                (nearer && away <= NOTCH_REACH && off <= within).then_some((off, at))
            })
            .min_by(|a, b| a.0.to_mm().total_cmp(&b.0.to_mm()))
            .map(|(_, at)| at)
    }
}

/// Shrinks along and across a grain line, whose foot stays.
fn washed(grain: (Point, Point), warp: f64, weft: f64) -> Affine {
    let along = (grain.1 - grain.0).atan2() - std::f64::consts::FRAC_PI_2;
    let about = grain.0.to_vec2();
    Affine::translate(about)
        * Affine::rotate(along)
        * Affine::scale_non_uniform(weft, warp)
        * Affine::rotate(-along)
        * Affine::translate(-about)
}
