//! What a maker takes hold of on the drawing: which thing, at which point, and which values of the style move it.
//!
//! How far the drawing follows a value is not known here and not in the page's script: the garment is worked out once
//! more with the value a little changed, and the two drawings are compared point by point. Where something ends up
//! after a drag is for the style file to say; until then the page shows an outline that moves in proportion.

use draft::{EdgeId, PieceId};
use flat::{Places, View};
use serde::Serialize;
use sewing::{Face, FixingKind, Garment};
use std::borrow::Cow;
use style::{Edit, MeasureId, SeamId, StyleDoc};
use trade::{Length, System};
use words::Words;

use crate::garment::{Mm, Worked};
use crate::sentences::Saying;
use crate::typed_fields::Fields;
use crate::viewing::Viewing;

/// How much a value is changed to see what moves, in millimetres: many times the solver's tolerance, and little on a
/// garment.
const NUDGES_MM: [f64; 2] = [4.0, -4.0];
/// A value that moves the grip by less than this share of its own change is no handle on it.
const MOVES: f64 = 0.05;

type Value = fn(&StyleDoc) -> Length;

/// Something to take hold of.
pub(crate) struct Grip {
    /// Its name in addresses.
    pub(crate) key: &'static str,
    /// What it is, for people.
    pub(crate) words: Saying,
    /// The part of the drawing it belongs to.
    pub(crate) part: &'static str,
    view: View,
    face: Face,
    drawn: Drawn,
    at: At,
    fields: &'static [Field],
}

/// The line that moves.
#[derive(Clone, Copy)]
enum Drawn {
    /// The outline of a piece.
    Piece(PieceId),
    /// One edge of a piece.
    Edge(PieceId, EdgeId),
    /// A row of the stitching on a back pocket.
    Stitching(PieceId),
    /// The patch.
    Patch,
    /// The belt loop nearest the centre of the view.
    Loop,
}

/// Where the grip lies on that line.
#[derive(Clone, Copy, PartialEq)]
enum At {
    /// All of it is the grip: it is shown in the middle, and dragging the thing itself drags it.
    Whole,
    /// Where an edge begins.
    Start(EdgeId),
    /// In the middle of an edge.
    Middle(EdgeId),
    /// At a share of a single line.
    Share(f64),
}

/// Where a value stands in the style's file.
enum Place {
    /// The value of a measure of the chart.
    Measure(MeasureId),
    /// At a path.
    At(&'static str),
}

impl Place {
    fn path(&self) -> Cow<'static, str> {
        match self {
            Place::Measure(measure) => measure.path("value").into(),
            Place::At(path) => (*path).into(),
        }
    }
}

/// A value of the style that moves a grip.
struct Field {
    place: Place,
    words: Saying,
    now: Value,
    /// Values it may line up with, and what to say then.
    beside: &'static [(Saying, Value)],
    /// Whether it may fall below zero.
    signed: bool,
}

macro_rules! field {
    ($path:expr, $words:expr, $now:expr) => {
        field!($path, $words, $now, [], signed false)
    };
    ($path:expr, $words:expr, $now:expr, [$($beside:expr),*], signed $signed:literal) => {
        Field { place: Place::At($path), words: $words, now: $now, beside: &[$($beside),*], signed: $signed }
    };
}

fn charted(doc: &StyleDoc, measure: MeasureId) -> Length {
    let entry = doc.chart.get(&measure).map(|entry| entry.value);
    let usual = || measure.known().value();
    entry.or_else(usual).unwrap_or(Length::ZERO)
}

macro_rules! charted {
    ($measure:ident, $words:expr) => {
        Field {
            place: Place::Measure(MeasureId::$measure),
            words: $words,
            now: |doc| charted(doc, MeasureId::$measure),
            beside: &[],
            signed: false,
        }
    };
}

macro_rules! as_on {
    (left) => {
        Words::grip_as_on_left
    };
    (right) => {
        Words::grip_as_on_right
    };
}

macro_rules! back_pocket {
    ($side:ident, $other:ident, $key:ident, $words:expr, signed $signed:literal) => {
        field!(
            concat!("pockets.back.", stringify!($side), ".", stringify!($key)),
            $words,
            |doc| doc.pockets.back.$side.$key,
            [(as_on!($other), |doc| doc.pockets.back.$other.$key)],
            signed $signed
        )
    };
}

macro_rules! back_pocket_grips {
    (
        $side:ident, $other:ident, $piece:expr,
        [$place:ident, $width:ident, $inner:ident, $outer:ident, $point:ident, $rise:ident, $crest:ident]
    ) => {{
        const PART: &str = concat!("piece:back_pocket_", stringify!($side));
        const fn grip(key: &'static str, words: Saying, at: At, fields: &'static [Field]) -> Grip {
            Grip { key, words, part: PART, view: View::Back, face: Face::Outside, drawn: Drawn::Piece($piece), at, fields }
        }
        [
            grip(
                concat!("back-pocket-", stringify!($side)),
                Words::$place,
                At::Whole,
                &[
                    charted!(BackPocketFromCentre, Words::grip_back_from_centre),
                    charted!(BackPocketFromYoke, Words::grip_back_from_yoke),
                ],
            ),
            grip(
                concat!("back-pocket-", stringify!($side), "-width"),
                Words::$width,
                At::Start(EdgeId::Top),
                &[charted!(BackPocketWidth, Words::grip_back_top_width)],
            ),
            grip(
                concat!("back-pocket-", stringify!($side), "-inner"),
                Words::$inner,
                At::Start(EdgeId::FootInner),
                &[
                    back_pocket!($side, $other, foot_width, Words::grip_back_foot_width, signed false),
                    back_pocket!($side, $other, side_length, Words::grip_back_inner_side, signed false),
                ],
            ),
            grip(
                concat!("back-pocket-", stringify!($side), "-outer"),
                Words::$outer,
                At::Start(EdgeId::Outer),
                &[
                    back_pocket!($side, $other, foot_width, Words::grip_back_foot_width, signed false),
                    back_pocket!($side, $other, outer_drop, Words::grip_back_outer_drop, signed true),
                ],
            ),
            grip(
                concat!("back-pocket-", stringify!($side), "-point"),
                Words::$point,
                At::Start(EdgeId::FootOuter),
                &[charted!(BackPocketLength, Words::grip_back_length)],
            ),
            Grip {
                drawn: Drawn::Stitching($piece),
                part: "seam:decoration",
                ..grip(
                    concat!("stitching-", stringify!($side), "-rise"),
                    Words::$rise,
                    At::Share(1.0),
                    &[back_pocket!($side, $other, rise, Words::grip_stitching_rise, signed true)],
                )
            },
            Grip {
                drawn: Drawn::Stitching($piece),
                part: "seam:decoration",
                ..grip(
                    concat!("stitching-", stringify!($side), "-crest"),
                    Words::$crest,
                    At::Share(0.8),
                    &[back_pocket!($side, $other, crest, Words::grip_stitching_crest, signed false)],
                )
            },
        ]
    }};
}

const LEFT: [Grip; 7] = back_pocket_grips!(
    left,
    right,
    PieceId::BackPocketLeft,
    [
        grip_left_place,
        grip_left_width,
        grip_left_inner,
        grip_left_outer,
        grip_left_point,
        grip_left_rise,
        grip_left_crest
    ]
);
const RIGHT: [Grip; 7] = back_pocket_grips!(
    right,
    left,
    PieceId::BackPocketRight,
    [
        grip_right_place,
        grip_right_width,
        grip_right_inner,
        grip_right_outer,
        grip_right_point,
        grip_right_rise,
        grip_right_crest
    ]
);

const fn front(
    key: &'static str,
    words: Saying,
    part: &'static str,
    (drawn, at): (Drawn, At),
    fields: &'static [Field],
) -> Grip {
    Grip {
        key,
        words,
        part,
        view: View::Front,
        face: Face::Outside,
        drawn,
        at,
        fields,
    }
}

const COIN: Drawn = Drawn::Piece(PieceId::CoinPocket);
const COIN_PART: &str = "piece:coin_pocket";
const MOUTH: Drawn = Drawn::Edge(PieceId::Front, EdgeId::Mouth);
const EXTRA: Drawn = Drawn::Piece(PieceId::ExtraPocket);
const EXTRA_PART: &str = "piece:extra_pocket";

const OTHERS: [Grip; 14] = [
    front(
        "mouth-width",
        Words::grip_at_mouth_width,
        "seam:mouth",
        (MOUTH, At::Share(1.0)),
        &[charted!(MouthWidth, Words::grip_mouth_width)],
    ),
    front(
        "mouth-depth",
        Words::grip_at_mouth_depth,
        "seam:mouth",
        (MOUTH, At::Share(0.0)),
        &[charted!(MouthDepth, Words::grip_mouth_depth)],
    ),
    front(
        "coin",
        Words::grip_at_coin,
        COIN_PART,
        (COIN, At::Whole),
        &[
            field!(
                "pockets.coin.from_side",
                Words::grip_coin_from_side,
                |doc| { doc.pockets.coin.from_side }
            ),
            field!(
                "pockets.coin.below_band",
                Words::grip_coin_below_band,
                |doc| { doc.pockets.coin.below_band }
            ),
        ],
    ),
    front(
        "coin-width",
        Words::grip_at_coin_width,
        COIN_PART,
        (COIN, At::Start(EdgeId::Left)),
        &[charted!(CoinWidth, Words::grip_coin_width)],
    ),
    front(
        "coin-depth",
        Words::grip_at_coin_depth,
        COIN_PART,
        (COIN, At::Middle(EdgeId::Foot)),
        &[charted!(CoinDepth, Words::grip_coin_depth)],
    ),
    front(
        "coin-foot",
        Words::grip_at_coin_foot,
        COIN_PART,
        (COIN, At::Start(EdgeId::Foot)),
        &[
            field!(
                "pockets.coin.lower_narrowing",
                Words::grip_coin_narrowing,
                |doc| doc.pockets.coin.lower_narrowing,
                [(Words::grip_coin_as_top, |_| Length::ZERO)],
                signed false
            ),
            field!("pockets.coin.drop", Words::grip_coin_drop, |doc| doc
                .pockets
                .coin
                .drop),
        ],
    ),
    front(
        "fly-length",
        Words::grip_at_fly_length,
        "seam:fly",
        (
            Drawn::Edge(PieceId::FlyFacing, EdgeId::Edge),
            At::Share(1.0),
        ),
        &[charted!(FlyLength, Words::grip_fly_length)],
    ),
    Grip {
        face: Face::Inside,
        ..front(
            "extra",
            Words::grip_at_extra,
            EXTRA_PART,
            (EXTRA, At::Whole),
            &[field!(
                "pockets.extra.from_centre",
                Words::grip_extra_from_centre,
                |doc| { extra(doc, |extra| extra.from_centre) }
            )],
        )
    },
    Grip {
        face: Face::Inside,
        ..front(
            "extra-depth",
            Words::grip_at_extra_depth,
            EXTRA_PART,
            (EXTRA, At::Middle(EdgeId::Foot)),
            &[field!(
                "pockets.extra.depth",
                Words::grip_extra_depth,
                |doc| { extra(doc, |extra| extra.depth) }
            )],
        )
    },
    Grip {
        face: Face::Inside,
        ..front(
            "extra-width",
            Words::grip_at_extra_width,
            EXTRA_PART,
            (EXTRA, At::Middle(EdgeId::Right)),
            &[field!(
                "pockets.extra.width",
                Words::grip_extra_width,
                |doc| { extra(doc, |extra| extra.width) }
            )],
        )
    },
    Grip {
        view: View::Back,
        ..front(
            "yoke-centre",
            Words::grip_at_yoke_centre,
            "seam:yoke",
            (Drawn::Edge(PieceId::Back, EdgeId::Top), At::Share(1.0)),
            &[charted!(YokeCentre, Words::grip_yoke_centre)],
        )
    },
    Grip {
        view: View::Back,
        ..front(
            "patch",
            Words::grip_at_patch,
            "fixing:patch",
            (Drawn::Patch, At::Whole),
            &[field!(
                "patch.from_centre",
                Words::grip_patch_from_centre,
                |doc| {
                    let patch = doc.patch.as_ref();
                    patch.map_or(Length::ZERO, |patch| patch.from_centre)
                }
            )],
        )
    },
    Grip {
        view: View::Back,
        ..front(
            "loop-length",
            Words::grip_at_loop_length,
            "fixing:loop_edge",
            (Drawn::Loop, At::Share(0.0)),
            &[charted!(LoopLength, Words::grip_loop_length)],
        )
    },
    Grip {
        view: View::Back,
        ..front(
            "loop-width",
            Words::grip_at_loop_width,
            "fixing:loop_edge",
            (Drawn::Loop, At::Share(0.25)),
            &[charted!(LoopWidth, Words::grip_loop_width)],
        )
    },
];

fn extra(doc: &StyleDoc, value: fn(&style::ExtraPocket) -> Length) -> Length {
    doc.pockets.extra.as_ref().map_or(Length::ZERO, value)
}

fn all() -> impl Iterator<Item = &'static Grip> {
    static ALL: [&[Grip]; 3] = [&OTHERS, &LEFT, &RIGHT];
    ALL.iter().copied().flatten()
}

/// A grip as the page first shows it.
pub(crate) struct Shown {
    pub(crate) grip: &'static Grip,
    pub(crate) at: Mm,
}

impl Shown {
    /// The part that is dragged itself, where it is the whole thing.
    pub(crate) fn body(&self) -> Option<&'static str> {
        (self.grip.at == At::Whole).then_some(self.grip.part)
    }
}

/// Everything that can be taken hold of in what is looked at.
pub(crate) fn shown(garment: &Garment, places: &Places<'_>, see: &Viewing) -> Vec<Shown> {
    all()
        .filter(|grip| grip.view == see.view && grip.face == see.face)
        .filter_map(|grip| {
            let at = grip.lines(garment, places)?.at(grip.at)?;
            Some(Shown { grip, at })
        })
        .collect()
}

/// The lines of a grip, each with the edge it is where it is one.
struct Lines(Vec<(Option<EdgeId>, Vec<Mm>)>);

impl Lines {
    fn points(&self) -> impl Iterator<Item = Mm> + '_ {
        self.0.iter().flat_map(|(_, line)| line.iter().copied())
    }

    fn at(&self, at: At) -> Option<Mm> {
        let line = |id| self.0.iter().find(|(edge, _)| *edge == Some(id));
        match at {
            At::Whole => {
                let count = self.points().count();
                let sum = self
                    .points()
                    .fold((0.0, 0.0), |sum, p| (sum.0 + p.0, sum.1 + p.1));
                (count > 0).then(|| (sum.0 / count as f64, sum.1 / count as f64))
            }
            At::Start(edge) => line(edge)?.1.first().copied(),
            At::Middle(edge) => {
                let (_, line) = line(edge)?;
                line.get(line.len() / 2).copied()
            }
            At::Share(share) => {
                let (_, line) = self.0.first()?;
                let last = line.len().checked_sub(1)? as f64;
                line.get((last * share).round() as usize).copied()
            }
        }
    }
}

impl Grip {
    fn lines(&self, garment: &Garment, places: &Places<'_>) -> Option<Lines> {
        let edges = |piece| {
            let edges = places.edges(piece)?.into_iter();
            let plain =
                edges.map(|(edge, line)| (Some(edge), line.iter().map(|p| (p.x, p.y)).collect()));
            Some(plain.collect::<Vec<(Option<EdgeId>, Vec<Mm>)>>())
        };
        let lines = match self.drawn {
            Drawn::Piece(piece) => edges(piece)?,
            Drawn::Edge(piece, edge) => {
                let mut found = edges(piece)?;
                found.retain(|(known, _)| *known == Some(edge));
                found
            }
            Drawn::Stitching(piece) => {
                let back = &garment.doc.pockets.back;
                let pocket = match piece {
                    PieceId::BackPocketLeft => &back.left,
                    _ => &back.right,
                };
                // A drawing of the maker's own is changed where it was drawn.
                if pocket.art.is_some() {
                    return None;
                }
                let mut rows = garment.rows.iter();
                let row = rows.find(|row| row.seam == SeamId::Decoration && row.piece == piece)?;
                let line = places.row(row)?.iter().map(|p| (p.x, p.y)).collect();
                vec![(None, line)]
            }
            Drawn::Patch => {
                let mut fixings = garment.fixings.iter();
                let patch = fixings.find(|fixing| matches!(fixing.kind, FixingKind::Patch(..)))?;
                vec![(None, ring(places.corners(patch)?.map(|p| (p.x, p.y))))]
            }
            Drawn::Loop => {
                let loops = garment.fixings.iter();
                let loops = loops.filter(|fixing| matches!(fixing.kind, FixingKind::Loop(..)));
                let drawn = loops.filter_map(|fixing| places.corners(fixing));
                let drawn = drawn.map(|corners| ring(corners.map(|p| (p.x, p.y))));
                let off_centre = |ring: &[Mm]| ring.iter().map(|p| p.0).sum::<f64>().abs();
                let nearest = drawn.min_by(|a, b| off_centre(a).total_cmp(&off_centre(b)))?;
                vec![(None, nearest)]
            }
        };
        (!lines.is_empty()).then_some(Lines(lines))
    }
}

/// A closed line through the corners of a block and the middles of its sides, from the middle of its foot on.
fn ring(corners: [Mm; 4]) -> Vec<Mm> {
    let [a, b, c, d] = corners;
    let middle = |p: Mm, q: Mm| ((p.0 + q.0) / 2.0, (p.1 + q.1) / 2.0);
    let foot = middle(d, a);
    vec![
        foot,
        a,
        middle(a, b),
        b,
        middle(b, c),
        c,
        middle(c, d),
        d,
        foot,
    ]
}

/// A grip that is held: its line and grip as drawn, and how both follow each value.
#[derive(Debug, Serialize)]
pub(crate) struct Held {
    words: &'static str,
    at: Mm,
    lines: Vec<Vec<Mm>>,
    values: Vec<HeldValue>,
}

/// A value of a held grip. Movements are for one millimetre more.
#[derive(Debug, Serialize)]
struct HeldValue {
    path: Cow<'static, str>,
    words: &'static str,
    /// What the file says or means, in millimetres, and the unit it is to be written in.
    mm: f64,
    unit: &'static str,
    /// What it may not fall below.
    least: Option<f64>,
    beside: Vec<Beside>,
    at: Mm,
    lines: Vec<Vec<Mm>>,
}

/// A value to line up with.
#[derive(Debug, Serialize)]
struct Beside {
    mm: f64,
    words: &'static str,
}

/// Takes hold of a grip. `None` where the style has no such thing, or none that can be drawn.
pub(crate) fn hold(key: &str, worked: &Worked, show: &Fields<'_>) -> Option<Held> {
    let grip = all().find(|grip| grip.key == key)?;
    let garment = &worked.garment;
    let lines = grip.lines(garment, &Places::of(garment, grip.view, grip.face)?)?;
    let at = lines.at(grip.at)?;
    let values = grip.fields.iter();
    let values = values.filter_map(|field| grip.value(field, garment, (&lines, at), show));
    Some(Held {
        words: (grip.words)(show.say),
        at: short(at),
        values: values.collect(),
        lines: all_short(&lines),
    })
}

impl Grip {
    /// What follows a value, seen by changing it a little; `None` where the grip does not follow.
    fn value(
        &self,
        field: &Field,
        garment: &Garment,
        (lines, at): (&Lines, Mm),
        show: &Fields<'_>,
    ) -> Option<HeldValue> {
        let say = show.say;
        let doc = &show.loaded.style;
        let (now, path) = ((field.now)(doc), field.place.path());
        let moved = NUDGES_MM.iter().find_map(|nudge| {
            let words = format!("{} mm", now.to_mm() + nudge);
            let edit = Edit::set(&path, &words).ok()?;
            let next = show.loaded.with_edit(&edit).ok()?;
            let next = sewing::make(&next.style, &next.collection, garment.size);
            let there = self.lines(&next, &Places::of(&next, self.view, self.face)?)?;
            let same =
                there.0.len() == lines.0.len() && there.points().count() == lines.points().count();
            let followed = |a: Mm, b: Mm| ((b.0 - a.0) / nudge, (b.1 - a.1) / nudge);
            let grip = followed(at, there.at(self.at)?);
            let lines = lines.0.iter().zip(&there.0).map(|((_, a), (_, b))| {
                let points = a.iter().zip(b);
                points.map(|(a, b)| short(followed(*a, *b))).collect()
            });
            same.then(|| (short(grip), lines.collect()))
        });
        let (at, lines): (Mm, Vec<Vec<Mm>>) = moved?;
        let beside = field.beside.iter();
        (at.0.hypot(at.1) >= MOVES).then(|| HeldValue {
            words: (field.words)(say),
            mm: now.to_mm(),
            unit: unit(show, &path),
            least: (!field.signed).then_some(0.0),
            beside: beside
                .map(|(words, value)| Beside {
                    mm: value(doc).to_mm(),
                    words: words(say),
                })
                .collect(),
            at,
            lines,
            path,
        })
    }
}

/// The unit the file has for a value, if it is one of those shown; else the usual one of those.
fn unit(show: &Fields<'_>, path: &str) -> &'static str {
    let written = show.written.get(path).unwrap_or_default().trim_end();
    match show.system {
        System::Inch => "in",
        System::Metric if written.ends_with("mm") => "mm",
        System::Metric => "cm",
    }
}

fn all_short(lines: &Lines) -> Vec<Vec<Mm>> {
    let lines = lines.0.iter();
    lines
        .map(|(_, line)| line.iter().copied().map(short).collect())
        .collect()
}

/// To a thousandth of a millimetre, which is more than a screen shows.
fn short(p: Mm) -> Mm {
    let round = |value: f64| (value * 1000.0).round() / 1000.0;
    (round(p.0), round(p.1))
}
