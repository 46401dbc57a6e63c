//! The sewn-in labels: each in its place inside, its words, art, fold and stitching.

use draft::{ClothUse, PieceId};
use geometry::{Affine, Path, Point, Vec2};
use sewing::{Face, Fixing, FixingKind, Garment, On};
use style::{Label, LabelFold};
use trade::{Colour, Length};

use super::figure::{Figure, Outline};
use super::flat_goods::{Standing, corners, flat_of, lay};
use super::measure::Side;
use super::notes::note_rows;
use super::page::Draft;
use super::scale::PlateScale;
use super::tone::{BELOW, set_back, tone};
use super::waistband::Measures;
use super::words::{amount, listed, system};
use crate::lettering::text_width;
use crate::palette::{HAIRLINE, INK, QUIET, TYPE_FIGURES};
use crate::sheet::{Stroke, open};

/// Cloth shown round the labels.
const ROUND_MM: f64 = 6.0;
/// What the drawing turns under at a folded end; the maker of the label decides it.
const TURN_MM: f64 = 7.0;

type Set<'a> = (&'a Label, &'a Fixing);

/// Every label that has a place.
fn all(garment: &Garment) -> Vec<Set<'_>> {
    let labels = garment.doc.labels.iter();
    labels
        .filter_map(|label| {
            let of = |f: &&Fixing| f.from == label.trim && matches!(f.kind, FixingKind::Label(..));
            Some((label, garment.fixings.iter().find(of)?))
        })
        .collect()
}

pub(super) fn on_band(garment: &Garment, scale: PlateScale) -> Option<Draft<'_>> {
    let labels: Vec<Set<'_>> = all(garment).into_iter().filter(|(_, f)| f.piece == PieceId::Band).collect();
    let mut figures = vec![band(garment, scale, &labels)?];
    figures.extend(folds(garment, scale, &labels));
    Some(Draft {
        title: "Labels on the band".to_owned(),
        caption: "Sewn on the inner half of the band alone, before the band is set on, so that no stitch of them shows outside.".to_owned(),
        figures,
    })
}

pub(super) fn in_seam(garment: &Garment, scale: PlateScale) -> Option<Draft<'_>> {
    let labels: Vec<Set<'_>> = all(garment).into_iter().filter(|(_, f)| f.piece != PieceId::Band).collect();
    let each = labels.iter().filter_map(|(label, fixing)| side_seam(garment, scale, label, fixing));
    let mut figures: Vec<Figure<'_>> = each.collect();
    if figures.is_empty() {
        return None;
    }
    figures.extend(folds(garment, scale, &labels));
    Some(Draft {
        title: "Labels in the outseam".to_owned(),
        caption: "Laid into the seam, towards the front, before it is closed; the seam's own row holds them.".to_owned(),
        figures,
    })
}

/// All labels on the band, seen from inside.
fn band<'a>(
    garment: &'a Garment,
    scale: PlateScale,
    labels: &[(&Label, &Fixing)],
) -> Option<Figure<'a>> {
    let m = Measures::of(garment)?;
    let map = m.folded();
    let all: Vec<[Point; 4]> = labels.iter().filter_map(|(_, f)| corners(f, map)).collect();
    let xs = || all.iter().flatten().map(|p| p.x).chain([m.centre]);
    let (x0, x1) = (
        xs().fold(f64::INFINITY, f64::min),
        xs().fold(f64::NEG_INFINITY, f64::max),
    );
    if all.is_empty() || !(x1 - x0).is_finite() {
        return None;
    }
    let low = all.iter().flatten().map(|p| p.y).fold(0.0, f64::min) - ROUND_MM;
    let p = Point::new;
    let mut figure = Figure::new(
        garment,
        scale,
        (Face::Inside, "On the band, inside"),
        Affine::IDENTITY,
        true,
    );
    figure.window(&[
        p(x0 - 2.0 * ROUND_MM, low),
        p(x1 + 2.0 * ROUND_MM, m.height + 3.0),
    ]);
    let quiet = set_back(figure.tone(ClothUse::Shell));
    let shell = set_back(tone(garment, ClothUse::Shell, Face::Outside));
    let rect =
        |y0: f64, y1: f64| [(0.0, y0), (m.end, y0), (m.end, y1), (0.0, y1)].map(|(x, y)| p(x, y));
    figure.area("piece:yoke", &rect(low - 9.0, 0.0), quiet, Outline::Light);
    figure.area("piece:band", &rect(0.0, m.height), shell, Outline::Light);
    figure.fold(
        "piece:band",
        &Path::line(p(m.centre, 0.0), p(m.centre, m.height)),
    );
    for (_, fixing) in labels {
        lay(&mut figure, fixing, map, Standing::Printed, true);
    }
    let rows = figure.rows(PieceId::Band, map, |r| r.seam == "label_set");
    for (label, fixing) in labels {
        note(&mut figure, label, fixing, map);
    }
    note_rows(&mut figure, &rows, map, "from the label's edge");
    for (_, fixing) in labels {
        let Some(c) = corners(fixing, map) else {
            continue;
        };
        let (left, right) = (c[0].x.min(c[1].x), c[0].x.max(c[1].x));
        let (foot, top) = (c[0].y.min(c[2].y), c[0].y.max(c[2].y));
        figure.dimension(Side::Below, p(left, foot), p(right, foot), "");
        let outer = (left - m.centre).abs() > (right - m.centre).abs();
        // One that stands on the centre is centred; the others say how far their nearer edge is.
        if (left - m.centre) * (right - m.centre) > 0.0 {
            let near = if outer { right } else { left };
            figure.dimension(Side::Above, p(m.centre, m.height), p(near, top), "");
        }
        let side = if fixing.at.x <= m.centre {
            Side::Right
        } else {
            Side::Left
        };
        figure.dimension(side, p(left, foot), p(left, top), "");
        figure.dimension(side, p(left, top), p(left, m.height), "");
    }
    figure.name(
        "centre back",
        &[p(m.centre, low + 2.6), p(m.centre + 12.0, low + 2.6)],
        QUIET,
    );
    Some(figure)
}

/// A label caught in the outseam, seen from inside.
fn side_seam<'a>(
    garment: &'a Garment,
    scale: PlateScale,
    label: &Label,
    fixing: &Fixing,
) -> Option<Figure<'a>> {
    let front = garment.pattern.piece(PieceId::Front)?;
    let side = front.edge("side")?;
    let c = corners(fixing, Affine::IDENTITY)?;
    let left = fixing.on == On::AsDrawn;
    let title = if left {
        "In the left outseam, inside"
    } else {
        "In the right outseam, inside"
    };
    // Fronts are drawn as the left; from inside the left is mirrored, the right as drawn.
    let mut figure = Figure::new(
        garment,
        scale,
        (Face::Inside, title),
        Affine::IDENTITY,
        left,
    );
    let xs = c.map(|p| p.x);
    let ys = c.map(|p| p.y);
    let most = |v: [f64; 4]| v.into_iter().fold(f64::NEG_INFINITY, f64::max);
    let least = |v: [f64; 4]| v.into_iter().fold(f64::INFINITY, f64::min);
    let p = Point::new;
    let gap = ROUND_MM + 9.0;
    figure.window(&[
        p(least(xs) - 2.0 * ROUND_MM, least(ys) - ROUND_MM),
        p(most(xs) + 1.5 * ROUND_MM, most(ys) + gap),
    ]);
    let back = set_back(figure.tone(ClothUse::Shell));
    figure.ground("piece:back", back);
    figure.piece(PieceId::Front, Affine::IDENTITY, back, Outline::Light);
    if let Some(bag) = garment.pattern.piece(PieceId::PocketBag) {
        let bag_tone = figure.tone(ClothUse::Pocketing);
        let points = bag.polygon(Length::mm(1.0));
        // The half of the folded bag that lies on the front.
        let inner: Vec<Point> = points;
        figure.area("piece:pocket_bag", &inner, bag_tone, Outline::Light);
    }
    lay(
        &mut figure,
        fixing,
        Affine::IDENTITY,
        Standing::Printed,
        true,
    );
    note(&mut figure, label, fixing, Affine::IDENTITY);
    let (wide, tall, _) = flat_of(fixing)?;
    let from_top = side.length() - nearest_along(side, fixing.at);
    let mouth = garment.pattern.spec.mouth_depth;
    let upper = from_top - tall / 2.0 + mouth;
    let units = system(&garment.collection);
    let (a, b) = (c[0].midpoint(c[3]), c[1].midpoint(c[2]));
    figure.dimension(Side::Below, p(a.x, least(ys)), p(b.x, least(ys)), "");
    let beside = if left { Side::Right } else { Side::Left };
    figure.dimension(beside, p(least(xs), least(ys)), p(least(xs), most(ys)), "");
    let seam_side = Point::new(side.point_at(nearest_along(side, fixing.at)).x, fixing.at.y);
    figure.point_at(
        seam_side + Vec2::new(0.0, -tall.to_mm() * 0.3),
        "outseam".to_owned(),
    );
    let folded = match label.fold {
        LabelFold::CentreFold => "its ends are caught in the seam, the fold lies towards the front",
        LabelFold::MitreFold => "its turned-up ends are caught in the seam",
        LabelFold::Flat | LabelFold::EndFold => "one end is caught in the seam",
    };
    figure.remark(format!(
        "Label in the outseam: its upper edge {} below the band seam, along the outseam; {folded}. {} by {} shows.",
        amount(upper, units),
        amount(wide, units),
        amount(tall, units)
    ));
    Some(figure)
}

/// Arc length on an edge nearest to a point, to the millimetre.
fn nearest_along(edge: &Path, p: Point) -> Length {
    let whole = edge.length();
    let steps = whole.to_mm().clamp(1.0, 3000.0) as u32;
    (0..=steps)
        .map(|k| whole * (f64::from(k) / f64::from(steps)))
        .min_by(|a, b| {
            (edge.point_at(*a) - p)
                .hypot()
                .total_cmp(&(edge.point_at(*b) - p).hypot())
        })
        .unwrap_or(Length::ZERO)
}

/// Words, purpose, cloth, fold and size of a label.
fn note(figure: &mut Figure<'_>, label: &Label, fixing: &Fixing, map: Affine) {
    let garment = figure.garment;
    let Some((wide, tall, words)) = flat_of(fixing) else {
        return;
    };
    let units = system(&garment.collection);
    let trim = garment.collection.trims.get(&label.trim);
    let name = trim.map_or(label.trim.as_str(), |t| t.name.as_str());
    let mut out = format!("{name}: \u{201c}{words}\u{201d}");
    if !label.purpose.is_empty() {
        let told: Vec<String> = label.purpose.iter().map(|p| p.word().to_owned()).collect();
        out.push_str(&format!(", tells {}", listed(&told)));
    }
    if let Some(material) = trim.map(|t| t.material.as_str()).filter(|m| !m.is_empty()) {
        out.push_str(&format!("; {material}"));
    }
    out.push_str(&format!(
        "; {}, finished {} by {}",
        label.fold.word(),
        amount(wide, units),
        amount(tall, units)
    ));
    if let Some(art) = &label.art {
        out.push_str(&format!(
            "; lines as in {art}, millimetres from the upper left corner"
        ));
    }
    let Some(c) = corners(fixing, map) else {
        return;
    };
    let at = [
        c[0].lerp(c[2], 0.15),
        c[1].lerp(c[3], 0.15),
        c[0].lerp(c[2], 0.85),
    ];
    figure.note(out, &at);
}

/// How each label is folded, drawn at its own width.
fn folds<'a>(
    garment: &'a Garment,
    scale: PlateScale,
    all: &[(&Label, &Fixing)],
) -> Option<Figure<'a>> {
    let title = (
        Face::Inside,
        "How they are folded, edge on (mitre fold: from its face)",
    );
    let mut figure = Figure::new(garment, scale, title, Affine::IDENTITY, false);
    let p = Point::new;
    let mut x = 0.0;
    let mut any = false;
    for (label, fixing) in all {
        let (wide, tall, _) = flat_of(fixing)?;
        let (w, h) = (
            wide.to_mm().clamp(3.0, 300.0),
            tall.to_mm().clamp(3.0, 300.0),
        );
        let turn = TURN_MM.min(w * 0.3);
        let ply = Stroke {
            round: true,
            ..Stroke::plain(INK, Length::mm(0.45))
        };
        let line: Vec<Point> = match label.fold {
            LabelFold::Flat => vec![p(x, 0.0), p(x + w, 0.0)],
            LabelFold::EndFold => vec![
                p(x + turn, -1.6),
                p(x + 0.6, -1.6),
                p(x, -0.8),
                p(x + 0.6, 0.0),
                p(x + w - 0.6, 0.0),
                p(x + w, -0.8),
                p(x + w - 0.6, -1.6),
                p(x + w - turn, -1.6),
            ],
            LabelFold::CentreFold => vec![
                p(x, 0.0),
                p(x + w - 0.8, 0.0),
                p(x + w, -0.8),
                p(x + w - 0.8, -1.6),
                p(x, -1.6),
            ],
            LabelFold::MitreFold => {
                let up = h.min(w * 0.45);
                vec![
                    p(x, 6.0),
                    p(x, 0.0),
                    p(x + w, 0.0),
                    p(x + w, 6.0),
                    p(x + w - up * 0.5, 6.0),
                    p(x + w - up * 0.5, up * 0.5),
                    p(x + up * 0.5, up * 0.5),
                    p(x + up * 0.5, 6.0),
                    p(x, 6.0),
                ]
            }
        };
        let pale = fixing.colour.mixed(Colour::BLACK, 0.04);
        figure.fill(
            "labels",
            &[p(x, -2.6), p(x + w, -2.6), p(x + w, 1.0), p(x, 1.0)],
            Colour::WHITE,
            None,
        );
        let path = open(&line);
        figure.stroke(
            "labels",
            &path,
            Stroke {
                width: Length::mm(0.8),
                ..ply
            },
        );
        figure.stroke(
            "labels",
            &path,
            Stroke {
                colour: pale,
                width: Length::mm(0.35),
                ..ply
            },
        );
        if label.fold == LabelFold::CentreFold {
            let seam = [p(x, 2.0), p(x, -3.6)];
            let thin =
                Stroke::plain(INK, BELOW.max(HAIRLINE)).dashed(Length::mm(1.2), Length::mm(0.8));
            figure.stroke("labels", &open(&seam), thin);
        }
        let trim = garment.collection.trims.get(&label.trim);
        let name = trim.map_or(label.trim.as_str(), |t| t.name.as_str());
        let drop = 5.5 / figure.on_paper(Length::mm(1.0)).to_mm();
        figure.fill(
            "labels",
            &[
                p(x, -drop - 3.5),
                p(x + w, -drop - 3.5),
                p(x + w, -drop),
                p(x, -drop),
            ],
            Colour::WHITE,
            None,
        );
        figure.name(
            &format!("{name}: {}", label.fold.word()),
            &[p(x + w / 2.0, -drop - 1.0), p(x + w / 2.0, -drop - 4.0)],
            QUIET,
        );
        let words = format!("{name}: {}", label.fold.word());
        let name_mm = text_width(&words, TYPE_FIGURES) + 6.0;
        x += (w + 10.0).max(name_mm / figure.on_paper(Length::mm(1.0)).to_mm());
        any = true;
    }
    any.then_some(figure)
}
