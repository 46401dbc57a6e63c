//! Which edge of a piece is which, by where it lies and how long it is.

use geometry::tolerance::NO_LENGTH_MM;
use geometry::{Point, Vec2, polyline_length};
use style::{EdgeId, OwnPieceName, PieceId};

use crate::outline::Outline;

/// A change of direction below this is no corner between two edges.
const CORNER_DEG: f64 = 24.0;

/// An edge of a piece with the corners it runs between.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GuessedEdge {
    /// Which.
    pub id: EdgeId,
    /// The corner it begins at.
    pub from: String,
    /// The corner it ends at.
    pub to: String,
    /// Whether the file itself names it.
    pub sure: bool,
}

/// The edges of a piece: those the file names, else those its shape suggests; else why none.
pub(crate) fn edges(
    outline: &Outline,
    known: &'static OwnPieceName,
) -> Result<Vec<GuessedEdge>, String> {
    if let Some(named) = named(outline, known) {
        return Ok(named);
    }
    let shape = Shape::of(outline)?;
    let found = match known.id {
        PieceId::Front => front(&shape),
        PieceId::Back => back(&shape),
        PieceId::Yoke => yoke(&shape),
        PieceId::Band => band(&shape),
        PieceId::PocketFacing => facing(&shape),
        PieceId::CoinPocket => coin(&shape),
        PieceId::BackPocketLeft | PieceId::BackPocketRight => back_pocket(&shape),
        PieceId::FlyFacing
        | PieceId::FlyShield
        | PieceId::PocketBag
        | PieceId::BackLiningLeft
        | PieceId::BackLiningRight
        | PieceId::LoopStrip
        | PieceId::ExtraPocket => Err("such a piece cannot be brought".to_owned()),
    }?;
    Ok(found
        .into_iter()
        .map(|(id, from, to)| GuessedEdge {
            id,
            from: shape.name(from),
            to: shape.name(to),
            sure: false,
        })
        .collect())
}

/// The edges between corners the maker names: one corner for each edge, in the order of the edges.
pub(crate) fn stated(
    outline: &Outline,
    known: &'static OwnPieceName,
    corners: &[String],
) -> Result<Vec<GuessedEdge>, String> {
    for corner in corners {
        if !outline.corners.contains_key(corner) {
            let there: Vec<&str> = outline.corners.keys().map(String::as_str).collect();
            return Err(format!(
                "it has no corner \"{corner}\"; its corners are {}",
                there.join(", ")
            ));
        }
    }
    let all = known.edges();
    let is_needed = |edge: &EdgeId| known.left_out(*edge).is_none();
    let needed = all.iter().filter(|edge| is_needed(edge)).count();
    let ids: Vec<EdgeId> = if corners.len() == all.len() {
        all.to_vec()
    } else if corners.len() == needed {
        all.iter().copied().filter(is_needed).collect()
    } else {
        return Err(format!(
            "{} named; it takes {}, one where each edge begins: {}",
            if corners.len() == 1 {
                "1 corner is".to_owned()
            } else {
                format!("{} corners are", corners.len())
            },
            if needed == all.len() {
                needed.to_string()
            } else {
                format!("{} or {needed}", all.len())
            },
            known.edge_list()
        ));
    };
    Ok(ids
        .into_iter()
        .enumerate()
        .map(|(k, id)| GuessedEdge {
            id,
            from: corners[k].clone(),
            to: corners[(k + 1) % corners.len()].clone(),
            sure: true,
        })
        .collect())
}

/// The edges as the file names them, where it names all that are needed.
fn named(outline: &Outline, known: &'static OwnPieceName) -> Option<Vec<GuessedEdge>> {
    let mut out = Vec::new();
    for id in known.edges() {
        match outline.named.iter().find(|n| n.name == id.code()) {
            Some(edge) => out.push(GuessedEdge {
                id: *id,
                from: outline.corner_at(edge.from)?.to_owned(),
                to: outline.corner_at(edge.to)?.to_owned(),
                sure: true,
            }),
            None => known.left_out(*id).map(|_| ())?,
        }
    }
    Some(out)
}

type Found = Result<Vec<(EdgeId, usize, usize)>, String>;

/// The outline with its grain upright, cut at its clear corners. Edge `k` runs from corner `k` to the next.
struct Shape {
    names: Vec<String>,
    corners: Vec<Point>,
    lines: Vec<Vec<Point>>,
    /// How many notches lie on each edge, and how far from its start.
    notches: Vec<Vec<f64>>,
    low: f64,
    high: f64,
}

impl Shape {
    fn of(outline: &Outline) -> Result<Shape, String> {
        let (foot, top) = outline.grain.ok_or("it has no grain line")?;
        let grain = top - foot;
        if grain.hypot() < 1.0 {
            return Err("its grain line is too short".to_owned());
        }
        let turn = geometry::Affine::rotate(std::f64::consts::FRAC_PI_2 - grain.atan2());
        let line: Vec<Point> = outline.line.iter().map(|p| turn * *p).collect();
        let n = line.len();
        let clear: Vec<(&String, usize)> = outline
            .corners
            .iter()
            .map(|(name, k)| (name, *k))
            .filter(|(_, k)| {
                let (a, b, c) = (line[(k + n - 1) % n], line[*k], line[(k + 1) % n]);
                turn_deg(b - a, c - b).abs() > CORNER_DEG
            })
            .collect();
        let count = clear.len();
        let lines: Vec<Vec<Point>> = (0..count)
            .map(|k| {
                let part = outline.stretch(clear[k].1, clear[(k + 1) % count].1);
                part.into_iter().map(|p| turn * p).collect()
            })
            .collect();
        let notches = notches(outline, turn, &lines);
        let ys = line.iter().map(|p| p.y);
        Ok(Shape {
            names: clear.iter().map(|c| c.0.clone()).collect(),
            corners: clear.iter().map(|c| line[c.1]).collect(),
            low: ys.clone().fold(f64::INFINITY, f64::min),
            high: ys.fold(f64::NEG_INFINITY, f64::max),
            lines,
            notches,
        })
    }

    fn count(&self) -> usize {
        self.corners.len()
    }

    fn name(&self, k: usize) -> String {
        self.names[k % self.count()].clone()
    }

    fn length(&self, k: usize) -> f64 {
        polyline_length(&self.lines[k % self.count()]).to_mm()
    }

    fn chord(&self, k: usize) -> Vec2 {
        self.corners[(k + 1) % self.count()] - self.corners[k % self.count()]
    }

    /// How much longer an edge is than straight.
    fn bow(&self, k: usize) -> f64 {
        self.length(k) / self.chord(k).hypot().max(NO_LENGTH_MM)
    }

    fn needs(&self, wanted: &[usize], what: &str) -> Result<(), String> {
        if wanted.contains(&self.count()) {
            return Ok(());
        }
        let wanted: Vec<String> = wanted.iter().map(usize::to_string).collect();
        Err(format!(
            "it has {} clear corners; {what} has {}",
            self.count(),
            wanted.join(" or ")
        ))
    }
}

fn turn_deg(a: Vec2, b: Vec2) -> f64 {
    a.cross(b).atan2(a.dot(b)).to_degrees()
}

fn notches(outline: &Outline, turn: geometry::Affine, lines: &[Vec<Point>]) -> Vec<Vec<f64>> {
    /// A notch on the cut line lies no further from the sewn line than this.
    const REACH_MM: f64 = 45.0;
    let mut out = vec![Vec::new(); lines.len()];
    for notch in &outline.notches {
        let near = lines.iter().enumerate().map(|(k, line)| {
            let (along, away) = geometry::Path::polyline(line).nearest(turn * *notch);
            (k, along.to_mm(), away.to_mm())
        });
        if let Some((k, along, away)) = near.min_by(|a, b| a.2.total_cmp(&b.2))
            && away <= REACH_MM
        {
            out[k].push(along);
        }
    }
    out
}

/// The corners of a leg: the two of the hem and the crotch point, and which way round it goes.
struct Leg {
    /// From the hem's corner at the outseam up and round to the crotch point, in order.
    upper: Vec<usize>,
    hem_in: usize,
    crotch: usize,
}

fn leg(shape: &Shape, what: &str) -> Result<Leg, String> {
    let n = shape.count();
    let unclear = || format!("hem and crotch of {what} cannot be made out");
    let tall = shape.high - shape.low;
    // The grain may point either way: the hem is the end with a straight edge across it.
    let mut best: Option<(f64, Leg)> = None;
    for up in [1.0, -1.0] {
        let height = |k: usize| {
            let y = shape.corners[k % n].y;
            if up > 0.0 {
                y - shape.low
            } else {
                shape.high - y
            }
        };
        let hem = (0..n).find(|k| {
            height(*k) < 0.1 * tall && height(k + 1) < 0.1 * tall && shape.chord(*k).x.abs() > 80.0
        });
        let Some(hem) = hem else { continue };
        // The crotch point is the lowest corner of the body, next to the hem along the inseam.
        let (after, before) = ((hem + 2) % n, (hem + n - 1) % n);
        let is_crotch = |k: usize| height(k) > 0.35 * tall && height(k) < 0.88 * tall;
        let lower = if height(after) < height(before) {
            after
        } else {
            before
        };
        if !is_crotch(lower) {
            continue;
        }
        let ring: Vec<usize> = if lower == after {
            // Round the other way: outseam, body, crotch.
            (0..n).map(|k| (hem + n - k) % n).collect()
        } else {
            (0..n).map(|k| (hem + 1 + k) % n).collect()
        };
        let hem_in = if lower == after { (hem + 1) % n } else { hem };
        let upper: Vec<usize> = ring.into_iter().take_while(|k| *k != lower).collect();
        // The straighter the hem, the surer.
        let doubt = shape.bow(hem);
        let leg = Leg {
            upper,
            hem_in,
            crotch: lower,
        };
        if best.as_ref().is_none_or(|(other, _)| doubt < *other) {
            best = Some((doubt, leg));
        }
    }
    best.map(|(_, leg)| leg).ok_or_else(unclear)
}

fn front(shape: &Shape) -> Found {
    let leg = leg(shape, "the front")?;
    let (crotch, hem_in) = (leg.crotch, leg.hem_in);
    match leg.upper.as_slice() {
        [hem_out, corner, centre] => Ok(vec![
            (EdgeId::Fly, *centre, crotch),
            (EdgeId::Inseam, crotch, hem_in),
            (EdgeId::Hem, hem_in, *hem_out),
            (EdgeId::Side, *hem_out, *corner),
            (EdgeId::Waist, *corner, *centre),
        ]),
        [hem_out, on_side, on_waist, centre] => Ok(vec![
            (EdgeId::Fly, *centre, crotch),
            (EdgeId::Inseam, crotch, hem_in),
            (EdgeId::Hem, hem_in, *hem_out),
            (EdgeId::Side, *hem_out, *on_side),
            (EdgeId::Mouth, *on_side, *on_waist),
            (EdgeId::Waist, *on_waist, *centre),
        ]),
        others => Err(format!(
            "between outseam and crotch it has {} clear corners; a front has 2, or 3 with its pocket mouth cut away",
            others.len().saturating_sub(1)
        )),
    }
}

fn back(shape: &Shape) -> Found {
    let leg = leg(shape, "the back")?;
    let [hem_out, side, centre] = leg.upper.as_slice() else {
        return Err(format!(
            "between outseam and crotch it has {} clear corners; a back below its yoke has 2",
            leg.upper.len().saturating_sub(1)
        ));
    };
    Ok(vec![
        (EdgeId::Seat, *centre, leg.crotch),
        (EdgeId::Inseam, leg.crotch, leg.hem_in),
        (EdgeId::Hem, leg.hem_in, *hem_out),
        (EdgeId::Side, *hem_out, *side),
        (EdgeId::Top, *side, *centre),
    ])
}

/// The corners of a piece with four edges, from the one where edge `first` begins, in the direction in which
/// `second` follows it.
fn four(shape: &Shape, ids: [EdgeId; 4], first: usize, forward: bool) -> Found {
    let n = 4;
    let corner = |k: usize| {
        if forward {
            (first + k) % n
        } else {
            (first + 1 + n * 2 - k) % n
        }
    };
    shape.needs(&[4], "such a piece")?;
    Ok((0..n).map(|k| (ids[k], corner(k), corner(k + 1))).collect())
}

fn yoke(shape: &Shape) -> Found {
    shape.needs(&[4], "a yoke")?;
    // Of the short edges the higher is the centre back; of the long ones the longer is sewn to the back.
    let short = if shape.length(0) + shape.length(2) < shape.length(1) + shape.length(3) {
        0
    } else {
        1
    };
    let centre = if shape.length(short) >= shape.length(short + 2) {
        short
    } else {
        short + 2
    };
    let forward = shape.length(centre + 1) >= shape.length(centre + 3);
    four(
        shape,
        [EdgeId::Centre, EdgeId::Lower, EdgeId::Side, EdgeId::Top],
        centre,
        forward,
    )
}

fn band(shape: &Shape) -> Found {
    shape.needs(&[4], "a straight waistband")?;
    let long = if shape.length(0) > shape.length(1) {
        0
    } else {
        1
    };
    let count = |k: usize| shape.notches[(k) % 4].len();
    let join = if count(long + 2) > count(long) {
        (long + 2) % 4
    } else {
        long
    };
    // The overlap lies beyond the last notch; without notches the right end is where the edge ends.
    let along = &shape.notches[join];
    let first = along.iter().copied().fold(f64::INFINITY, f64::min);
    let last = shape.length(join) - along.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let forward = along.is_empty() || last <= first;
    four(
        shape,
        [
            EdgeId::Join,
            EdgeId::EndRight,
            EdgeId::Inner,
            EdgeId::EndLeft,
        ],
        join,
        forward,
    )
}

fn facing(shape: &Shape) -> Found {
    shape.needs(&[3], "a hip pocket facing")?;
    let inner = (0..3)
        .max_by(|a, b| shape.bow(*a).total_cmp(&shape.bow(*b)))
        .unwrap_or(0);
    let slope = |k: usize| shape.chord(k).y.abs() / shape.chord(k).hypot().max(NO_LENGTH_MM);
    // The outseam runs with the grain, the waist across it.
    let forward = slope(inner + 1) >= slope(inner + 2);
    let (a, b) = (inner, (inner + 1) % 3);
    let c = (inner + 2) % 3;
    Ok(if forward {
        vec![
            (EdgeId::Waist, c, a),
            (EdgeId::Inner, a, b),
            (EdgeId::Side, b, c),
        ]
    } else {
        vec![
            (EdgeId::Waist, c, b),
            (EdgeId::Inner, b, a),
            (EdgeId::Side, a, c),
        ]
    })
}

/// The top edge of a pocket: the longest across the grain.
fn top(shape: &Shape) -> usize {
    let across = |k: &usize| {
        let chord = shape.chord(*k);
        if chord.x.abs() > chord.y.abs() * 3.0 {
            chord.x.abs()
        } else {
            0.0
        }
    };
    (0..shape.count())
        .max_by(|a, b| across(a).total_cmp(&across(b)))
        .unwrap_or(0)
}

fn coin(shape: &Shape) -> Found {
    let n = shape.count();
    if n < 4 {
        return Err(format!(
            "it has {n} clear corners; a coin pocket has 4 or more"
        ));
    }
    let top = top(shape);
    let corner = |k: usize| (top + k) % n;
    Ok(vec![
        (EdgeId::Left, corner(1), corner(2)),
        (EdgeId::Foot, corner(2), corner(n - 1)),
        (EdgeId::Right, corner(n - 1), corner(0)),
        (EdgeId::Top, corner(0), corner(1)),
    ])
}

fn back_pocket(shape: &Shape) -> Found {
    shape.needs(&[5], "a back pocket")?;
    let top = top(shape);
    let ids = PieceId::BackPocketLeft.edges();
    Ok(ids
        .iter()
        .enumerate()
        .map(|(k, id)| (*id, (top + 1 + k) % 5, (top + 2 + k) % 5))
        .collect())
}
