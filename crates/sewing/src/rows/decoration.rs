//! The stitching on the back pockets: the maker's own drawing, or a pair of tide lines, one below
//! the other, that rise towards the outseam. The two pockets mirror each other unless one is turned
//! over.

use draft::{Finding, Piece, PieceId, PointId, Severity, path_of};
use geometry::tolerance::SAME_MM;
use geometry::{Path, Point, Vec2, clip_to_polygon, polyline_length};
use style::{BackPocket, Decoration, Drawing, MeasureId, RowSpec, SeamId};
use trade::Length;
use words::key;

use super::course::BACK_POCKET_SIDES;
use super::laid::Laid;
use crate::context::{Context, finding, with_remedy};
use crate::garment::{On, RowEnd};
use crate::inset_lines::{Ground, points_along};
use crate::placement::back_pockets;

/// Where the upper and the lower line run, as a share of the pocket's length below its top edge.
const DOWN: [f64; 2] = [0.40, 0.49];

/// The most half waves that are drawn across a pocket.
const MOST_WAVES: u32 = 40;

/// Handles of each half wave, as a share of its width: level at crest and trough.
const HANDLE: f64 = 0.4;

/// What is left of a drawn line is sewn from this length on: shorter is not a row.
const SHORTEST: Length = Length::mm(3.0);

/// Beyond every pocket.
const FAR_MM: f64 = 1.0e5;

/// The lines on both pockets; a further row of the seam runs below the first by its offset.
pub(super) fn rows(context: &Context<'_>, spec: &RowSpec) -> Vec<Laid> {
    let below = Vec2::new(0.0, -spec.offset.to_mm());
    back_pockets()
        .into_iter()
        .flat_map(|(id, on)| on_pocket(context, id, on, below))
        .collect()
}

/// Whether there is anything to sew on either pocket.
pub(super) fn wanted(context: &Context<'_>) -> bool {
    back_pockets().iter().any(|(id, _)| {
        let pocket = stated(context, *id);
        pocket.drawing.is_some() || is_tide(pocket)
    })
}

/// A drawing that lies beside its pocket.
pub(super) fn notes(context: &Context<'_>) -> Vec<Finding> {
    let seam = context.seam(SeamId::Decoration);
    let mut out = Vec::new();
    for (id, on) in back_pockets() {
        if seam.is_some()
            && stated(context, id).drawing.is_some()
            && on_pocket(context, id, on, Vec2::ZERO).is_empty()
        {
            let found = finding(
                context,
                "sewing::drawing-off-pocket",
                Severity::Warning,
                SeamId::Decoration,
                key::SEWING_DECORATION_NOTES,
            );
            out.push(with_remedy(found, key::SEWING_DECORATION_NOTES_2));
        }
    }
    out
}

fn stated<'a>(context: &'a Context<'_>, id: PieceId) -> &'a BackPocket {
    match id {
        PieceId::BackPocketLeft => &context.doc.pockets.back.left,
        _ => &context.doc.pockets.back.right,
    }
}

/// A drawing takes the place of the built-in lines, also where it could not be read along.
fn is_tide(pocket: &BackPocket) -> bool {
    pocket.art.is_none() && pocket.decoration == Decoration::Tide
}

fn on_pocket(context: &Context<'_>, id: PieceId, on: On, below: Vec2) -> Vec<Laid> {
    let Some(piece) = context.pattern.piece(id) else {
        return Vec::new();
    };
    let pocket = stated(context, id);
    let width = context.pattern.spec[MeasureId::BackPocketWidth].to_mm();
    let laid = |path, begins, ends| Laid {
        piece: id,
        on,
        path,
        begins,
        ends,
        outside: true,
        inside: false,
    };
    // Turned over about the middle of the pocket, and moved down.
    let lay = |p: Point| {
        let x = if pocket.mirror { width - p.x } else { p.x };
        Point::new(x, p.y) + below
    };
    match &pocket.drawing {
        Some(drawing) => drawn(context, piece, drawing, lay)
            .into_iter()
            .map(|(path, begins, ends)| laid(path, begins, ends))
            .collect(),
        None if is_tide(pocket) => (0..DOWN.len())
            .filter_map(|index| tide_line(piece, pocket, index, lay))
            .map(|path| laid(path, RowEnd::CaughtInSeam, RowEnd::CaughtInSeam))
            .collect(),
        None => Vec::new(),
    }
}

/// The lines of a drawing as far as they lie inside the outer row that sets the pocket and the lower one that hems it.
/// They cross the inner rows, and what is cut off is caught by the last one.
fn drawn(
    context: &Context<'_>,
    piece: &Piece,
    drawing: &Drawing,
    lay: impl Fn(Point) -> Point,
) -> Vec<(Path, RowEnd, RowEnd)> {
    let Some((inside, below_hem)) = inner(context, piece) else {
        return Vec::new();
    };
    let mut out = Vec::new();
    for line in &drawing.lines {
        let Some(points) = points_along(&path_of(line)) else {
            continue;
        };
        let points: Vec<Point> = points.into_iter().map(&lay).collect();
        let (Some(first), Some(last)) = (points.first(), points.last()) else {
            continue;
        };
        let parts = clip_to_polygon(&points, &inside);
        let parts = parts
            .iter()
            .flat_map(|part| clip_to_polygon(part, &below_hem));
        for part in parts.filter(|part| polyline_length(part) >= SHORTEST) {
            let (Some(from), Some(to)) = (part.first(), part.last()) else {
                continue;
            };
            let same = |a: &Point, b: &Point| (*a - *b).hypot() < SAME_MM;
            let whole = same(from, first) && same(to, last);
            let end = |reached: bool| match (line.closed && whole, reached) {
                (true, _) => RowEnd::Overlapped,
                (false, true) => RowEnd::Backtacked,
                (false, false) => RowEnd::CaughtInSeam,
            };
            let ends = (end(same(from, first)), end(same(to, last)));
            out.push((Path::polyline(&part), ends.0, ends.1));
        }
    }
    out
}

/// The pocket inside its outer set row, and all that lies below its hem rows.
fn inner(context: &Context<'_>, piece: &Piece) -> Option<(Vec<Point>, [Point; 4])> {
    let offsets = |seam: SeamId| {
        let rows = context.seam(seam).into_iter().flat_map(|s| &s.rows);
        rows.map(|row| row.offset)
            .filter(|offset| offset.is_finite())
    };
    let outer = offsets(SeamId::BackPocketSet).reduce(Length::min);
    let set = outer.unwrap_or(Length::ZERO).max(Length::ZERO);
    let inside = points_along(&Ground::of(piece)?.inset(BACK_POCKET_SIDES, set)?)?;
    let hem = -offsets(SeamId::BackPocketHem)
        .fold(Length::ZERO, Length::max)
        .to_mm();
    let below_hem = [
        Point::new(-FAR_MM, -FAR_MM),
        Point::new(FAR_MM, -FAR_MM),
        Point::new(FAR_MM, hem),
        Point::new(-FAR_MM, hem),
    ];
    Some((inside, below_hem))
}

/// One line from side to side. Crests grow towards the outer side; the lower line starts with a
/// trough where the upper starts with a crest.
fn tide_line(
    piece: &Piece,
    pocket: &BackPocket,
    index: usize,
    lay: impl Fn(Point) -> Point,
) -> Option<Path> {
    let (outer, point) = (
        piece.point(PointId::TopOuter)?,
        piece.point(PointId::Point)?,
    );
    let (width, length) = (outer.x, -point.y);
    let waves = pocket.waves.clamp(1, MOST_WAVES);
    let at = |k: u32| {
        let share = f64::from(k) / f64::from(waves);
        let swing = if (k as usize + index).is_multiple_of(2) {
            0.5
        } else {
            -0.5
        };
        let crest = pocket.crest.to_mm() * (0.5 + 0.5 * share) * swing;
        let rise = pocket.rise.to_mm() * share;
        Point::new(width * share, rise + crest - length * DOWN[index])
    };
    let reach = Vec2::new(HANDLE * width / f64::from(waves), 0.0);
    let curves: Vec<_> = (0..waves)
        .flat_map(|k| {
            let (a, b) = (at(k), at(k + 1));
            let curve = Path::cubic(lay(a), lay(a + reach), lay(b - reach), lay(b));
            curve.segments().to_vec()
        })
        .collect();
    Ground::of(piece)?.clip(&points_along(&Path::new(curves))?)
}
