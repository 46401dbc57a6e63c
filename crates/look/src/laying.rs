//! From the sewn garment to a [`Scene`]: sheets from the lowest up, as the drawing of the view lays them, each row of
//! stitches above what it goes through.

mod hardware;
mod panels;
mod seams;
mod stitching;
mod trims;
mod zones;

#[cfg(test)]
pub(crate) use stitching::holes;

use draft::{ClothUse, Piece, PieceId};
use flat::{Half, Hand, LaidGarment, View};
use geometry::{Path, Point, Vec2};
use sewing::{Face, Garment};
use trade::{Colour, Length};

use crate::calibrated::{calibrated, calibrated_yarn};
use crate::cloth::Woven;
use crate::cloth_colour::ClothColour;
use crate::place::{Place, place, places};
use crate::scene::{ClothLook, Scene, Sheet, Stands, Stuff, step_of};
use crate::sewing_yarn::SewingYarn;

/// The cloths of a scene, by their number.
const SHELL: usize = 0;
const POCKETING: usize = 1;
const SELVEDGE: usize = 2;

/// A cloth that no file knows is grey.
const NO_CLOTH: Colour = Colour::rgb(0xdd, 0xdd, 0xdd);
/// Undyed edge of a selvedge cloth (from memory).
const UNDYED: Colour = Colour::rgb(0xe6, 0xde, 0xca);
/// A ply of a cloth that no file knows.
const USUAL_PLY: f32 = 0.8;

/// What is laid so far.
struct Laying<'a> {
    garment: &'a Garment,
    laid: LaidGarment,
    view: View,
    face: Face,
    scene: Scene,
    /// Thickness of a ply of the shell.
    ply: f32,
    /// The sheet of each panel of the half that is being laid.
    panels: Vec<(PieceId, usize)>,
    /// The outline of that half, and its lowest sheet.
    half: usize,
    base: usize,
}

impl Scene {
    /// The pair laid flat, from one side. `None` when its panels could not be drafted.
    pub fn of(garment: &Garment, view: View, face: Face) -> Option<Scene> {
        let laid = LaidGarment::of(garment, view, face)?;
        let shell = garment.collection.cloths.get(&garment.doc.cloth.shell);
        let thick = shell.map_or(f64::NAN, |cloth| cloth.thickness.to_mm()) as f32;
        let ply = if thick.is_finite() {
            thick.clamp(0.1, 3.0)
        } else {
            USUAL_PLY
        };
        let mut scene = Scene::plain(cloth_look(garment, ClothUse::Shell), false, [0.0, 1.0]);
        scene.sheets.clear();
        scene.table = -2.4 * ply;
        if face == Face::Inside {
            scene.cloths.push(cloth_look(garment, ClothUse::Pocketing));
            scene.cloths.push(calibrated(
                Woven::selvedge(),
                ClothColour::of(&Woven::selvedge(), UNDYED, UNDYED),
            ));
        }
        let mut laying = Laying {
            garment,
            laid,
            view,
            face,
            scene,
            ply,
            panels: Vec::new(),
            half: 0,
            base: 0,
        };
        laying.lay();
        Some(laying.scene)
    }
}

/// A cloth of the style as it is drawn.
pub(crate) fn cloth_look(garment: &Garment, use_: ClothUse) -> ClothLook {
    let refs = &garment.doc.cloth;
    let key = match use_ {
        ClothUse::Shell => Some(&refs.shell),
        ClothUse::Pocketing => Some(&refs.pocketing),
        ClothUse::Lining => refs.lining.as_ref(),
    };
    let cloth = key.and_then(|key| garment.collection.cloths.get(key));
    let woven = cloth.map_or_else(Woven::usual, Woven::of);
    let colours = cloth.map_or([NO_CLOTH; 2], |c| [c.colour, c.reverse_colour]);
    calibrated(woven, ClothColour::of(&woven, colours[0], colours[1]))
}

impl Laying<'_> {
    fn lay(&mut self) {
        if self.view == View::Front {
            self.behind();
        }
        for hand in [Hand::Right, Hand::Left] {
            self.panels_of(hand);
            self.bag(hand);
            self.seams_of(hand);
            self.rows_of(hand);
        }
        self.band();
        self.fixings();
        self.rows_on_top();
        self.shield();
        self.rub();
        self.bound();
    }

    fn bound(&mut self) {
        let all = self.scene.sheets.iter().flat_map(|sheet| {
            let clip = sheet.clip.and_then(|k| self.scene.clips.get(k));
            clip.unwrap_or(&sheet.outline)
        });
        let mut b = [
            f32::INFINITY,
            f32::INFINITY,
            f32::NEG_INFINITY,
            f32::NEG_INFINITY,
        ];
        for p in all {
            b = [
                b[0].min(p[0]),
                b[1].min(p[1]),
                b[2].max(p[0]),
                b[3].max(p[1]),
            ];
        }
        self.scene.bounds = if b.iter().all(|v| v.is_finite()) {
            b
        } else {
            [0.0; 4]
        };
    }

    fn inside(&self) -> bool {
        self.face == Face::Inside
    }

    fn step(&self) -> f32 {
        step_of(self.ply)
    }

    fn piece(&self, id: PieceId) -> Option<&Piece> {
        self.garment.pattern.piece(id)
    }

    /// The direction of the warp of a piece on the view, and a place its weave is reckoned from.
    fn grain(&self, id: PieceId, hand: Hand) -> (Place, Place) {
        let Some(piece) = self.piece(id) else {
            return ([0.0, 1.0], [0.0, 0.0]);
        };
        let (a, b) = piece.grain;
        let ends = if id == PieceId::Band {
            let middle = a.midpoint(b);
            [
                self.laid.band(middle).at,
                self.laid.band(middle + geometry::unit(b - a)).at,
            ]
        } else {
            // Near the middle of the piece, where it lies about straight.
            let (middle, way) = (a.midpoint(b), geometry::unit(b - a) * 30.0);
            let both = self.laid.area(id, &[middle - way, middle + way], hand);
            match both[..] {
                [a, b] => [a, b],
                _ => [Point::ORIGIN, Point::new(0.0, 1.0)],
            }
        };
        let way = geometry::unit(ends[1] - ends[0]);
        let way = if way == Vec2::ZERO {
            Vec2::new(0.0, 1.0)
        } else {
            way
        };
        ([way.x as f32, way.y as f32], place(ends[0]))
    }

    /// Shell or another cloth as a piece shows it.
    fn cloth_of(&self, id: PieceId, hand: Hand, cloth: usize, reverse: bool) -> Stuff {
        let (warp, from) = self.grain(id, hand);
        Stuff::Woven {
            cloth,
            reverse,
            warp,
            from,
        }
    }

    fn push(&mut self, sheet: Sheet) -> usize {
        self.scene.sheets.push(sheet);
        self.scene.sheets.len() - 1
    }

    /// The whole outline of a piece on the view.
    fn outline(&self, id: PieceId, hand: Hand) -> Vec<Place> {
        let Some(piece) = self.piece(id) else {
            return Vec::new();
        };
        let points: Vec<Point> = piece.edges.iter().flat_map(|e| fine(&e.path)).collect();
        places(&self.laid.area(id, &points, hand))
    }

    /// The number of a sewing yarn, new or known.
    fn yarn(&mut self, colour: Colour, diameter: Length) -> usize {
        let yarn = SewingYarn::of(colour, diameter);
        let alike = |y: &SewingYarn| y.diameter == yarn.diameter && y.colour == yarn.colour;
        if let Some(known) = self.scene.yarns.iter().position(alike) {
            return known;
        }
        self.scene.yarns.push(calibrated_yarn(yarn));
        self.scene.yarns.len() - 1
    }

    /// The half of the view.
    fn seen(&self) -> Half {
        self.view.half()
    }
}

/// Points along an edge, straight parts too: what is straight on a piece may be bent on the view.
fn fine(path: &Path) -> Vec<Point> {
    const STEP: Length = Length::mm(3.0);
    geometry::resample(&path.dense(STEP), STEP)
}

/// A sheet that stands on others with a round edge all about.
fn set_on(outline: Vec<Place>, clip: Option<usize>, stuff: Stuff, more: f32, round: f32) -> Sheet {
    let mut rim = outline.clone();
    rim.extend(outline.first().copied());
    Sheet {
        outline,
        clip,
        stuff,
        stands: Stands::On(more),
        rims: vec![rim],
        round,
        folds: true,
    }
}
