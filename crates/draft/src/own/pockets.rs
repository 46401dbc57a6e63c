//! Brought pockets: what the layout has to know of them, and their points.

use geometry::tolerance::NO_LENGTH_MM;
use geometry::{Affine, Path, PathSeg, Point};
use style::{CoinShape, DrawnLine, DrawnStep, MeasureId, Spot};
use trade::Length;

use super::panel::Panel;
use crate::layout::set_at;
use crate::piece::{EdgeId, LineId, NamedPoint, Piece, PieceId, PointId};
use crate::spec::{BackPocketSpec, Spec};

/// The coin pocket as a free outline of its own width and depth.
pub(super) fn take_coin(panel: &Panel, spec: &mut Spec) {
    let (Some(left), Some(foot), Some(right)) = (
        panel.edge(EdgeId::Left),
        panel.edge(EdgeId::Foot),
        panel.edge(EdgeId::Right),
    ) else {
        return;
    };
    let line = left.then(foot).then(right);
    let spot = |p: Point| -> Spot { [Length::mm(p.x), Length::mm(-p.y)] };
    spec.set(
        MeasureId::CoinWidth,
        Length::mm(line.end().x - line.start().x),
    );
    spec.set(
        MeasureId::CoinDepth,
        Length::mm(-below_middle(foot).unwrap_or(foot.bounds().y0)),
    );
    spec.coin_shape = CoinShape::Free;
    spec.coin_outline = Some(DrawnLine {
        from: spot(line.start()),
        steps: line
            .segments()
            .iter()
            .map(|segment| match segment {
                PathSeg::Line(l) => DrawnStep::Straight(spot(l.p1)),
                other => {
                    let bez = other.to_cubic();
                    DrawnStep::Curve(spot(bez.p1), spot(bez.p2), spot(bez.p3))
                }
            })
            .collect(),
        closed: false,
    });
}

/// The height at which a foot passes below the middle of the top edge.
fn below_middle(foot: &Path) -> Option<f64> {
    let points = foot.dense(Length::mm(0.2));
    let crossing = points
        .windows(2)
        .find(|w| (w[0].x <= 0.0) != (w[1].x <= 0.0))?;
    let share = crossing[0].x / (crossing[0].x - crossing[1].x);
    Some(crossing[0].y + (crossing[1].y - crossing[0].y) * share)
}

/// A hung back pocket with its inner top corner at the origin.
pub(super) fn from_corner(panel: &Panel) -> Panel {
    let inner = panel.edge(EdgeId::Top).map_or(Point::ORIGIN, Path::end);
    panel.moved(Affine::translate(-inner.to_vec2()))
}

/// The measures of the brought back pockets; both have the width and length of the left one, or of the
/// right one where it alone was brought.
pub(super) fn take_back(left: Option<&Panel>, right: Option<&Panel>, spec: &mut Spec) {
    if let Some(panel) = left.or(right) {
        let end = |id| panel.edge(id).map(Path::end);
        if let (Some(outer), Some(point)) = (end(EdgeId::Outer), end(EdgeId::FootInner)) {
            spec.set(MeasureId::BackPocketWidth, Length::mm(outer.x));
            spec.set(
                MeasureId::BackPocketLength,
                Length::mm((point - Point::new(outer.x / 2.0, 0.0)).hypot()),
            );
        }
    }
    for (panel, pocket) in [
        (left, &mut spec.back_pocket_left),
        (right, &mut spec.back_pocket_right),
    ] {
        if let Some(panel) = panel {
            take_sides(panel, pocket);
        }
    }
}

fn take_sides(panel: &Panel, pocket: &mut BackPocketSpec) {
    let (Some(inner), Some(outer)) = (panel.edge(EdgeId::Inner), panel.edge(EdgeId::Outer)) else {
        return;
    };
    pocket.side_length = inner.length();
    pocket.outer_drop = outer.length() - inner.length();
    pocket.foot_width = Length::mm(outer.start().x - inner.end().x);
}

/// Gives the points and placements of brought back pockets the places their edges have.
pub(super) fn mend_points(pieces: &mut [Piece], brought: &[PieceId]) {
    for (id, line) in [
        (PieceId::BackPocketLeft, LineId::PocketLeft),
        (PieceId::BackPocketRight, LineId::PocketRight),
    ] {
        if !brought.contains(&id) {
            continue;
        }
        let Some(outline) = pieces.iter_mut().find(|p| p.id == id).and_then(mended) else {
            continue;
        };
        let Some(back) = pieces.iter_mut().find(|p| p.id == PieceId::Back) else {
            continue;
        };
        let (Some(inner), Some(outer)) = (
            back.point(PointId::PocketInner),
            back.point(PointId::PocketOuter),
        ) else {
            continue;
        };
        let along = outer - inner;
        let along = along / along.hypot().max(NO_LENGTH_MM);
        if let Some(line) = back.lines.iter_mut().find(|l| l.id == line) {
            line.path = outline.transformed(set_at(inner, along));
        }
    }
}

/// Puts the named points of a back pocket at the ends of its edges; gives its outline below the top edge.
fn mended(pocket: &mut Piece) -> Option<Path> {
    let [inner, foot_inner, foot_outer, outer] = [
        EdgeId::Inner,
        EdgeId::FootInner,
        EdgeId::FootOuter,
        EdgeId::Outer,
    ]
    .map(|id| pocket.edge(id).cloned());
    let (inner, foot_inner, foot_outer, outer) = (inner?, foot_inner?, foot_outer?, outer?);
    let places = [
        (PointId::TopInner, inner.start()),
        (PointId::TopMiddle, inner.start().midpoint(outer.end())),
        (PointId::TopOuter, outer.end()),
        (PointId::FootInner, inner.end()),
        (PointId::Point, foot_inner.end()),
        (PointId::FootOuter, foot_outer.end()),
    ];
    for (id, at) in places {
        if let Some(point) = pocket.points.iter_mut().find(|p| p.id == id) {
            *point = NamedPoint { id, at };
        }
    }
    Some(inner.then(&foot_inner).then(&foot_outer).then(&outer))
}
