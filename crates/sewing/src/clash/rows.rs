//! Rows of different seams that lie on one another or cross.

use geometry::tolerance::{NO_SQUARE_MM2, PARALLEL};
use geometry::{Point, Straight};
use style::{SeamId, Subject};
use trade::Length;
use words::{Given, Key, Said, key, say};

use super::scene::{Scene, Sewn, What, meets};
use super::whereabouts::{operation, place, whereabouts};
use crate::check::case::{Broken, Case};
use crate::garment::StitchRow;

/// A needle of size 110 to 120 and the yarn in its hole are this wide (from memory).
const NEEDLE: Length = Length::mm(1.2);

/// Rows this near for less than this only meet (common practice).
const MEETING_MM: f64 = 12.0;

/// Nearer than this to the end of either row they meet in a seam.
const NEAR_END_MM: f64 = 20.0;

/// Two rows of different seams through the same ply of the same panel.
struct Pair<'c, 'a> {
    first: (&'c Sewn<'a>, &'a StitchRow),
    second: (&'c Sewn<'a>, &'a StitchRow),
}

/// Seams whose rows are drawn freely, that hold a trim which covers what it crosses, or whose piece has a rule of its own for
/// all that is sewn through it.
fn free(seam: SeamId) -> bool {
    matches!(
        seam,
        SeamId::Decoration | SeamId::LabelSet | SeamId::PatchSet | SeamId::ExtraSet
    )
}

fn pairs<'c, 'a>(scene: &'c Scene<'a>) -> Vec<Pair<'c, 'a>> {
    let rows: Vec<(&Sewn<'a>, &'a StitchRow)> = scene
        .sewn
        .iter()
        .filter_map(|sewn| match sewn.what {
            What::Row(row) => Some((sewn, row)),
            What::Set(_) => None,
        })
        .filter(|(_, row)| !free(row.seam) && !row.stitch.is_overedge())
        .collect();
    let mut out = Vec::new();
    for (k, first) in rows.iter().enumerate() {
        for second in &rows[..k] {
            let other = (second.0.ground, second.0.on, &second.0.through[..]);
            let met = meets((first.0.ground, first.0.on, &first.0.through), other);
            // A seam that is joined is sewn across wherever another row runs over it.
            let joins = |row: &StitchRow| !row.shows_outside && row.seam == SeamId::BandJoin;
            let crossed = joins(first.1) || joins(second.1);
            if met && !crossed && first.1.seam != second.1.seam {
                out.push(Pair {
                    first: *first,
                    second: *second,
                });
            }
        }
    }
    out
}

/// Whether a place is away from both ends of a line.
fn within(line: &[Point], at: Point) -> bool {
    let ends = [line.first(), line.last()];
    let closed = line
        .first()
        .zip(line.last())
        .is_some_and(|(a, b)| (*a - *b).hypot() < NEEDLE.to_mm());
    closed
        || ends
            .into_iter()
            .flatten()
            .all(|end| (at - *end).hypot() > NEAR_END_MM)
}

/// The box round a line.
struct Span {
    low: Point,
    high: Point,
}

impl Span {
    fn of(line: &[Point]) -> Span {
        let mut span = Span {
            low: Point::new(f64::INFINITY, f64::INFINITY),
            high: Point::new(f64::NEG_INFINITY, f64::NEG_INFINITY),
        };
        for p in line {
            span.low = Point::new(span.low.x.min(p.x), span.low.y.min(p.y));
            span.high = Point::new(span.high.x.max(p.x), span.high.y.max(p.y));
        }
        span
    }

    /// Whether two boxes come within this distance of one another, along each axis.
    fn touches(&self, other: &Span, room: f64) -> bool {
        self.low.x <= other.high.x + room
            && other.low.x <= self.high.x + room
            && self.low.y <= other.high.y + room
            && other.low.y <= self.high.y + room
    }
}

/// The stretches of a line that come within this distance of a box.
fn stretches<'l>(
    line: &'l [Point],
    of: &'l Span,
    room: f64,
) -> impl Iterator<Item = Straight> + 'l {
    line.windows(2)
        .filter(move |side| Span::of(side).touches(of, room))
        .map(|side| Straight::between(side[0], side[1]))
}

/// Where two rows cross away from the ends of both.
fn crossing(a: &[Point], b: &[Point]) -> Option<Point> {
    let whole = Span::of(b);
    stretches(a, &whole, 0.0).find_map(|one| {
        let span = Span::of(&[one.from, one.at(1.0)]);
        stretches(b, &span, 0.0)
            .filter_map(|other| one.crossing(other, PARALLEL))
            .find(|at| within(a, *at) && within(b, *at))
    })
}

/// From one place looked at to the next: two of them, and rows have run side by side for as long as they may only meet.
const STEP_MM: f64 = MEETING_MM / 2.0;

/// Where two rows run side by side nearer than a needle, for longer than they only meet, and how near.
fn side_by_side(a: &[Point], b: &[Point]) -> Option<(Point, f64)> {
    let needle = NEEDLE.to_mm();
    let whole = Span::of(b);
    let mut run = 0.0;
    let mut nearest: Option<(Point, f64)> = None;
    for side in a.windows(2) {
        let span = Span::of(side);
        let near = span.touches(&whole, needle);
        let beside: Vec<Straight> = if near {
            stretches(b, &span, needle).collect()
        } else {
            Vec::new()
        };
        let length = (side[1] - side[0]).hypot();
        let steps = (length / STEP_MM).ceil().max(1.0) as u32;
        for k in 0..steps {
            let at = side[0].lerp(side[1], (f64::from(k) + 0.5) / f64::from(steps));
            let far = beside
                .iter()
                .map(|other| other.distance(at, NO_SQUARE_MM2).to_mm())
                .fold(f64::INFINITY, f64::min);
            if far >= needle {
                run = 0.0;
                nearest = None;
                continue;
            }
            run += length / f64::from(steps);
            if nearest.is_none_or(|(_, known)| far < known) {
                nearest = Some((at, far));
            }
            if run > MEETING_MM {
                return nearest;
            }
        }
    }
    None
}

/// Whether the boxes of two rows come within a needle's width.
fn may_meet(first: &Sewn<'_>, second: &Sewn<'_>) -> bool {
    Span::of(&first.line).touches(&Span::of(&second.line), NEEDLE.to_mm())
}

/// What two rows are called, and the operations they are sewn in.
struct Named {
    other: Given,
    now: Given,
    set: Given,
    where_of: Given,
}

fn said<'a>(
    case: &Case<'a>,
    look: impl Fn(&Sewn<'a>, &Sewn<'a>) -> Option<(Point, f64)>,
    tell: impl Fn(Named, Length) -> (Said, Key),
) -> Vec<Broken> {
    let (scene, pattern) = (case.scene, case.context.pattern);
    let mut out: Vec<Broken> = Vec::new();
    for pair in pairs(scene) {
        let ((first, row), (second, other)) = (pair.first, pair.second);
        let subject = Subject::Row(row.seam, row.number);
        if out.iter().any(|b| b.subject == subject) || !may_meet(first, second) {
            continue;
        }
        let Some((at, gap)) = look(first, second) else {
            continue;
        };
        let named = Named {
            now: operation(scene, first.operation),
            other: (&Subject::Row(other.seam, other.number)).into(),
            set: operation(scene, second.operation),
            where_of: whereabouts(pattern, first.ground, at),
        };
        let (said, help) = tell(named, Length::mm(gap));
        out.push(
            Broken::warning(subject, said)
                .help(help)
                .at(place(first.ground, at)),
        );
    }
    out
}

/// Rows that cross where neither ends.
pub(crate) fn across(case: &Case<'_>) -> Vec<Broken> {
    said(
        case,
        |first, second| crossing(&first.line, &second.line).map(|at| (at, 0.0)),
        |named, _| {
            let said = say::ClashRowsCross {
                now: named.now,
                other: named.other,
                set: named.set,
                where_of: named.where_of,
            };
            (said.into(), key::CLASH_ROWS_CROSS_HELP)
        },
    )
}

/// Rows of two seams that run in each other's holes.
pub(crate) fn too_close(case: &Case<'_>) -> Vec<Broken> {
    said(
        case,
        |first, second| side_by_side(&first.line, &second.line),
        |named, gap| {
            let said = say::ClashRowsTogether {
                gap: gap.in_mm(1),
                needle: NEEDLE.in_mm(1),
                now: named.now,
                other: named.other,
                set: named.set,
                where_of: named.where_of,
            };
            (said.into(), key::CLASH_ROWS_TOGETHER_HELP)
        },
    )
}
