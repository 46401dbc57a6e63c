//! The pieces, joins and measures of one size.
//!
//! Everything is there to compute lengths, areas and measures again without Fellwork: edges and lines
//! as points at most half a millimetre apart, in millimetres to a ten-thousandth.

use draft::{InnerKind, Join, Piece, Walked, walk};
use geometry::{Path, Point};
use indexmap::IndexMap;
use serde::Serialize;
use sewing::{CutPiece, Garment};
use style::Size;
use trade::{Area, Length};
use words::Words;

use crate::number::{self, Fine, Xy};
use crate::sewn;
use crate::shape::Shape;
use crate::take::{Taken, edges, taken};
use crate::text::{AnswerError, line};

/// No two neighbouring points of an edge are further apart.
const STEP: Length = Length::mm(0.5);

/// Longer edges are given in this many points at most; a true piece needs far fewer.
const MOST_POINTS: f64 = 20_000.0;

#[derive(Serialize)]
struct Answer<'a> {
    format: u32,
    unit: &'static str,
    style: &'a str,
    code: &'a str,
    size: Size,
    pieces: Vec<PieceRow>,
    joins: Vec<JoinRow>,
    measures: Vec<MeasureRow>,
    rows: Vec<sewn::RowRow<'a>>,
    fixings: Vec<sewn::FixingRow<'a>>,
    findings: Vec<&'a str>,
}

#[derive(Serialize)]
struct PieceRow {
    id: &'static str,
    name: &'static str,
    cloth: &'static str,
    cut: CutCount,
    area: f64,
    perimeter: f64,
    edges: Vec<EdgeRow>,
    points: IndexMap<&'static str, Xy>,
    lines: Vec<LineRow>,
    notches: Vec<NotchRow>,
    grain: [Xy; 2],
    cut_pieces: Vec<CutRow>,
}

#[derive(Serialize)]
struct CutCount {
    as_drawn: u32,
    mirrored: u32,
}

#[derive(Serialize)]
struct EdgeRow {
    name: &'static str,
    length: f64,
    points: Vec<Xy>,
}

#[derive(Serialize)]
struct LineRow {
    name: &'static str,
    kind: &'static str,
    points: Vec<Xy>,
}

#[derive(Serialize)]
struct NotchRow {
    edge: &'static str,
    along: f64,
    name: &'static str,
    double: bool,
    at: Option<Xy>,
}

#[derive(Serialize)]
struct CutRow {
    copies: &'static str,
    allowances: IndexMap<&'static str, f64>,
    area: f64,
    outline: Vec<Xy>,
}

#[derive(Serialize)]
struct JoinRow {
    seam: &'static str,
    name: &'static str,
    a: SideRow,
    b: SideRow,
    ease: f64,
    gap: f64,
}

#[derive(Serialize)]
struct SideRow {
    times: u32,
    edges: Vec<(&'static str, &'static str)>,
    length: f64,
}

#[derive(Serialize)]
struct MeasureRow {
    key: &'static str,
    name: &'static str,
    how: &'static str,
    chart: Option<f64>,
    pattern: f64,
    take: Taken,
}

/// The answer for one size of a style.
///
/// # Errors
/// It cannot be put into JSON.
pub fn pieces(garment: &Garment) -> Result<String, AnswerError> {
    let pattern = &garment.pattern;
    let style = &garment.doc.style;
    let measure = |measured: draft::Measured| {
        let (measure, words) = (measured.measure, Words::english());
        MeasureRow {
            key: measure.code(),
            name: measure.words(words),
            how: words.named(measure.known().how),
            chart: measured.chart.map(mm),
            pattern: mm(measured.pattern),
            take: taken(measure, &pattern.spec),
        }
    };
    line(&Answer {
        format: Shape::Pieces.version(),
        unit: "mm",
        style: &style.name,
        code: &style.code,
        size: garment.size,
        pieces: pattern.pieces.iter().map(|p| piece(p, garment)).collect(),
        joins: walk(pattern).iter().map(join).collect(),
        measures: pattern.measures().into_iter().map(measure).collect(),
        rows: sewn::rows(garment),
        fixings: sewn::fixings(garment),
        findings: garment.findings.iter().map(|found| found.code).collect(),
    })
}

fn piece(piece: &Piece, garment: &Garment) -> PieceRow {
    let edge = |edge: &draft::Edge| EdgeRow {
        name: edge.id.code(),
        length: mm(edge.path.length()),
        points: dense(&edge.path),
    };
    let inner = |line: &draft::InnerLine| LineRow {
        name: line.id.code(),
        kind: match line.kind {
            InnerKind::Fold => "fold",
            InnerKind::Placement => "placement",
        },
        points: dense(&line.path),
    };
    let notch = |notch: &draft::Notch| NotchRow {
        edge: notch.edge.code(),
        along: mm(notch.along),
        name: notch.id.code(),
        double: notch.double,
        at: piece.notch_point(notch).map(xy),
    };
    let cut = garment.cut.iter().filter(|cut| cut.piece == piece.id);
    PieceRow {
        id: piece.id.code(),
        name: piece.id.words(Words::english()),
        cloth: piece.cloth.code(),
        cut: CutCount {
            as_drawn: piece.cut.as_drawn,
            mirrored: piece.cut.mirrored,
        },
        area: area(piece.area()),
        perimeter: mm(piece.edges.iter().map(|edge| edge.path.length()).sum()),
        edges: piece.edges.iter().map(edge).collect(),
        points: piece
            .points
            .iter()
            .map(|p| (p.id.code(), xy(p.at)))
            .collect(),
        lines: piece.lines.iter().map(inner).collect(),
        notches: piece.notches.iter().map(notch).collect(),
        grain: [xy(piece.grain.0), xy(piece.grain.1)],
        cut_pieces: cut.map(cut_row).collect(),
    }
}

fn cut_row(cut: &CutPiece) -> CutRow {
    CutRow {
        copies: sewn::copies(cut.on),
        allowances: cut
            .allowances
            .iter()
            .map(|(edge, by)| (edge.code(), mm(*by)))
            .collect(),
        area: area(geometry::area(&cut.outline)),
        outline: cut.outline.iter().copied().map(xy).collect(),
    }
}

fn join(walked: &Walked) -> JoinRow {
    let Join {
        seam, name, a, b, ..
    } = *walked.join;
    let side = |(run, times): (draft::EdgeRun, u32), length: Length| SideRow {
        times,
        edges: edges(run),
        length: mm(length),
    };
    JoinRow {
        seam: seam.code(),
        name: name.words(words::Words::english()),
        a: side(a, walked.a),
        b: side(b, walked.b),
        ease: mm(walked.ease),
        gap: mm(walked.gap()),
    }
}

/// Points along a path, straight stretches too.
pub(crate) fn dense(path: &Path) -> Vec<Xy> {
    let step = STEP.max(path.length() / MOST_POINTS);
    let points = path.dense(step);
    let mut out: Vec<Xy> = points.first().copied().map(xy).into_iter().collect();
    for pair in points.windows(2) {
        let parts = ((pair[1] - pair[0]).hypot() / step.to_mm()).ceil().max(1.0);
        // Bounded by MOST_POINTS; of a path that is not finite only the ends are given.
        let parts = if parts.is_finite() { parts as usize } else { 1 };
        out.extend((1..=parts).map(|k| xy(pair[0].lerp(pair[1], k as f64 / parts as f64))));
    }
    out
}

pub(crate) fn xy(point: Point) -> Xy {
    number::xy(point, Fine::TenThousandth)
}

pub(crate) fn mm(length: Length) -> f64 {
    number::mm(length, Fine::TenThousandth)
}

pub(crate) fn rounded(value: f64) -> f64 {
    number::written(value, Fine::TenThousandth)
}

fn area(area: Area) -> f64 {
    rounded(area.to_mm2())
}
