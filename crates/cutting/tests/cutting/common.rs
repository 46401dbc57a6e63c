//! The demo style, sewn and cut.

use std::sync::OnceLock;

use cutting::{CutPiece, CutSize, Plan, cut, cut_run};
use draft::PieceId;
use geometry::Point;
use sewing::{Garment, On, make};
use style::{Loaded, Size};

/// The demo style and its collection.
pub fn ferryman() -> Loaded {
    let folder = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../style/demo/saltmarsh/styles/ferryman"
    );
    style::load(folder.as_ref()).unwrap()
}

/// A size of a style, sewn.
pub fn sewn(loaded: &Loaded, size: Size) -> Garment {
    make(&loaded.style, &loaded.collection, size)
}

/// What the demo decides.
pub fn plan() -> Plan {
    Plan::of(&ferryman().style)
}

/// The base size of the demo, cut.
pub fn base() -> CutSize {
    cut(&sewn(&ferryman(), Size::new(32, 32)), &plan())
}

/// Every size of the demo, sewn; once for all tests.
pub fn all_sizes() -> &'static [Garment] {
    static SEWN: OnceLock<Vec<Garment>> = OnceLock::new();
    SEWN.get_or_init(|| {
        let loaded = ferryman();
        let sizes = loaded.style.sizes.all();
        sizes.map(|size| sewn(&loaded, size)).collect()
    })
}

/// Every size of the demo, cut; once for all tests.
pub fn all_cut() -> &'static [CutSize] {
    static CUT: OnceLock<Vec<CutSize>> = OnceLock::new();
    CUT.get_or_init(|| cut_run(all_sizes(), &plan()))
}

/// The one cut piece of a piece.
pub fn piece(cut: &CutSize, id: PieceId) -> &CutPiece {
    cut.of(id).next().unwrap()
}

/// The cut piece of a piece for one copy.
pub fn copy(cut: &CutSize, id: PieceId, mirrored: bool) -> Option<&CutPiece> {
    cut.of(id).find(|p| match p.on {
        On::Both => true,
        On::AsDrawn => !mirrored,
        On::Mirrored => mirrored,
    })
}

/// How far a point lies outside a closed outline; zero inside.
pub fn outside(outline: &[Point], p: Point) -> f64 {
    if geometry::contains(outline, p) {
        return 0.0;
    }
    from_outline(outline, p)
}

/// How far a point lies from a closed outline.
pub fn from_outline(outline: &[Point], p: Point) -> f64 {
    let next = outline.iter().cycle().skip(1);
    outline
        .iter()
        .zip(next)
        .map(|(a, b)| {
            let along = *b - *a;
            let square = along.hypot2();
            let t = if square > 0.0 {
                ((p - *a).dot(along) / square).clamp(0.0, 1.0)
            } else {
                0.0
            };
            (p - (*a + along * t)).hypot()
        })
        .fold(f64::INFINITY, f64::min)
}

/// Whether a cut line turns straight back on itself anywhere.
pub fn doubles_back(line: &[Point]) -> bool {
    let n = line.len();
    (0..n).any(|k| {
        let (a, b) = (
            line[(k + 1) % n] - line[k],
            line[(k + 2) % n] - line[(k + 1) % n],
        );
        a.dot(b) < 0.0 && a.cross(b).abs() < 1e-6 * a.hypot() * b.hypot()
    })
}

/// Whether every corner that is folded as one really belongs to one seam: a corner that could not be
/// shaped by its own rule is mitred like these.
pub fn is_shaped(piece: &CutPiece) -> bool {
    piece.corners.iter().all(|c| {
        let seam = |name| piece.edge(name).unwrap().seam;
        c.rule.key != "together" || seam(c.before) == seam(c.after)
    })
}
