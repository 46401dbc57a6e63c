//! The sewn-in labels: each in its place inside, its words, art, fold and stitching.

use draft::{ClothUse, EdgeId, PieceId};
use geometry::{Affine, Path, Point, Vec2, bounds_of};
use sewing::{Face, Fixing, FixingKind, Garment, On, label_below_band};
use style::{Label, LabelFold, SeamId};
use trade::{Colour, Length};
use words::{Key, Words, key, say};

use super::figure::{Figure, Outline};
use super::flat_goods::{Standing, corners, flat_of, lay};
use super::measure::Side;
use super::notes::{MeasuredFrom, note_rows_on};
use super::page::Draft;
use super::scale::PlateScale;
use super::tone::{BELOW, set_back, tone};
use super::waistband::Measures;
use super::words::{amount, listed, system};
use crate::lettering::text_width;
use crate::palette::{INK, QUIET, TYPE_FIGURES};
use crate::sheet::{Stroke, open};

/// Cloth shown round the labels.
const ROUND_MM: f64 = 4.0;
/// What the drawing turns under at a folded end; the maker of the label decides it.
const TURN_MM: f64 = 7.0;
/// How far the ends of a mitre fold stand above its strip.
const TAB_MM: f64 = 5.0;

/// Where the ends of the band lie that is seen in part.
const LEFT: Key = key::DRAWN_WEARERS_LEFT;
const RIGHT: Key = key::DRAWN_WEARERS_RIGHT;

type Set<'a> = (&'a Label, &'a Fixing);

/// Every label that has a place.
fn all(garment: &Garment) -> Vec<Set<'_>> {
    let labels = garment.doc.labels.iter();
    labels
        .filter_map(|label| {
            let of = |f: &&Fixing| {
                f.from.trim() == Some(label.trim.as_str())
                    && matches!(f.kind, FixingKind::Label(..))
            };
            Some((label, garment.fixings.iter().find(of)?))
        })
        .collect()
}

pub(super) fn on_band<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
) -> Option<Draft<'a>> {
    let labels: Vec<Set<'_>> = all(garment)
        .into_iter()
        .filter(|(_, f)| f.piece == PieceId::Band)
        .collect();
    let mut figures = vec![band(garment, words, scale, &labels)?];
    figures.extend(folds(garment, words, scale, &labels));
    Some(Draft {
        title: words.say(key::DRAWN_LABELS_BAND_TITLE),
        caption: words.say(key::DRAWN_LABELS_BAND_CAPTION),
        figures,
    })
}

pub(super) fn in_seam<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
) -> Option<Draft<'a>> {
    let labels: Vec<Set<'_>> = all(garment)
        .into_iter()
        .filter(|(_, f)| f.piece != PieceId::Band)
        .collect();
    let each = labels
        .iter()
        .filter_map(|(label, fixing)| side_seam(garment, words, scale, label, fixing));
    let mut figures: Vec<Figure<'_>> = each.collect();
    if figures.is_empty() {
        return None;
    }
    figures.extend(folds(garment, words, scale, &labels));
    Some(Draft {
        title: words.say(key::DRAWN_LABELS_SEAM_TITLE),
        caption: words.say(key::DRAWN_LABELS_SEAM_CAPTION),
        figures,
    })
}

/// All labels on the band, seen from inside.
fn band<'a>(
    garment: &'a Garment,
    words: &'a Words,
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
        words,
        scale,
        (Face::Inside, key::DRAWN_FIGURE_ON_THE_BAND_INSIDE),
        Affine::IDENTITY,
        true,
    );
    // Room beside the labels for the words that say which end is which.
    let one = figure.on_paper(Length::mm(1.0)).to_mm();
    let beside = (text_width(words.named(RIGHT), TYPE_FIGURES).to_mm() + 4.0) / one;
    figure.window(&[p(x0 - beside, low), p(x1 + beside, m.height + 3.0)]);
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
    let rows = figure.rows(PieceId::Band, map, |r| r.seam == SeamId::LabelSet);
    for (label, fixing) in labels {
        note(&mut figure, label, fixing, map);
    }
    note_label_rows(&mut figure, &rows, map);
    for (_, fixing) in labels {
        let Some(c) = corners(fixing, map) else {
            continue;
        };
        let (left, right) = (c[0].x.min(c[1].x), c[0].x.max(c[1].x));
        let (foot, top) = (c[0].y.min(c[2].y), c[0].y.max(c[2].y));
        figure.dimension(Side::Below, p(left, foot), p(right, foot), None);
        let outer = (left - m.centre).abs() > (right - m.centre).abs();
        // One that stands on the centre is centred; the others say how far their nearer edge is.
        if (left - m.centre) * (right - m.centre) > 0.0 {
            let near = if outer { right } else { left };
            figure.dimension(Side::Above, p(m.centre, m.height), p(near, top), None);
        }
        let side = if fixing.at.x <= m.centre {
            Side::Right
        } else {
            Side::Left
        };
        figure.dimension(side, p(left, foot), p(left, top), None);
        figure.dimension(side, p(left, top), p(left, m.height), None);
    }
    figure.name(
        key::DRAWN_CENTRE_BACK,
        &[p(m.centre, low + 2.6), p(m.centre + 12.0, low + 2.6)],
        QUIET,
    );
    // The band runs from the wearer's left to the right: from inside that is from right to left.
    for (name, x) in [(LEFT, x0 - beside / 2.0), (RIGHT, x1 + beside / 2.0)] {
        let places = [low + 2.6, low + 2.0, low + 3.2, low + 5.0].map(|y| p(x, y));
        figure.name(name, &places, QUIET);
    }
    Some(figure)
}

/// One note for the rows of each label, which begin and end in ways of their own.
pub(super) fn note_label_rows(figure: &mut Figure<'_>, rows: &[usize], map: Affine) {
    let garment = figure.garment;
    for (label, fixing) in all(garment) {
        let Some(around) = corners(fixing, map).map(|c| bounds_of(&c).inflate(1.0, 1.0)) else {
            continue;
        };
        let on_it = |k: &usize| {
            let row = garment.rows.get(*k);
            row.is_some_and(|r| around.contains(map * r.path.point_at(r.length() * 0.5)))
        };
        let its: Vec<usize> = rows.iter().copied().filter(on_it).collect();
        let trim = garment.collection.trims.get(&label.trim);
        let name = trim.map_or(label.trim.as_str(), |t| t.name.as_str());
        note_rows_on(figure, &its, map, (MeasuredFrom::LabelEdge, name));
    }
}

/// A label caught in the outseam, seen from inside.
fn side_seam<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
    label: &Label,
    fixing: &Fixing,
) -> Option<Figure<'a>> {
    let front = garment.pattern.piece(PieceId::Front)?;
    let side = front.edge(EdgeId::Side)?;
    let c = corners(fixing, Affine::IDENTITY)?;
    let left = fixing.on == On::AsDrawn;
    let title = if left {
        key::DRAWN_FIGURE_IN_THE_WEARERS_LEFT_OUTSEAM_INSIDE
    } else {
        key::DRAWN_FIGURE_IN_THE_WEARERS_RIGHT_OUTSEAM_INSIDE
    };
    // Fronts are drawn as the left; from inside the left is mirrored, the right as drawn.
    let mut figure = Figure::new(
        garment,
        words,
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
    let gap = ROUND_MM + 4.0;
    figure.window(&[
        p(least(xs) - 4.0 * ROUND_MM, least(ys) - ROUND_MM),
        p(most(xs) + 1.5 * ROUND_MM, most(ys) + gap),
    ]);
    let back = set_back(figure.tone(ClothUse::Shell));
    figure.ground("piece:back", back);
    figure.piece(PieceId::Front, Affine::IDENTITY, back, Outline::Light);
    if let Some(bag) = garment.pattern.piece(PieceId::PocketBag) {
        let bag_tone = figure.tone(ClothUse::Pocketing);
        let points = bag.polygon(Length::mm(1.0));
        figure.area("piece:pocket_bag", &points, bag_tone, Outline::Light);
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
    let along = side.nearest(fixing.at).0;
    let upper = label_below_band(garment, fixing)?.figure();
    let units = system(&garment.collection);
    let (a, b) = (c[0].midpoint(c[3]), c[1].midpoint(c[2]));
    figure.dimension(Side::Below, p(a.x, least(ys)), p(b.x, least(ys)), None);
    let beside = if left { Side::Right } else { Side::Left };
    figure.dimension(
        beside,
        p(least(xs), least(ys)),
        p(least(xs), most(ys)),
        None,
    );
    let seam_side = Point::new(side.point_at(along).x, fixing.at.y);
    figure.point_at(
        seam_side - Vec2::new(0.0, tall.to_mm() / 2.0 + 3.0),
        key::DRAWN_OUTSEAM,
    );
    let folded = match label.fold {
        LabelFold::CentreFold => key::DRAWN_CAUGHT_CENTRE,
        LabelFold::MitreFold => key::DRAWN_CAUGHT_MITRE,
        LabelFold::Flat | LabelFold::EndFold => key::DRAWN_CAUGHT_FLAT,
    };
    figure.remark(say::DrawnLabelInSeam {
        below: amount(upper, units),
        folded,
        height: amount(tall, units),
        width: amount(wide, units),
    });
    Some(figure)
}

/// Words, purpose, cloth, fold and size of a label.
fn note(figure: &mut Figure<'_>, label: &Label, fixing: &Fixing, map: Affine) {
    let garment = figure.garment;
    let Some((wide, tall, letters)) = flat_of(fixing) else {
        return;
    };
    let units = system(&garment.collection);
    let trim = garment.collection.trims.get(&label.trim);
    let name = trim.map_or(label.trim.as_str(), |t| t.name.as_str());
    let words = figure.words;
    let mut out = words.say(say::DrawnLabelLetters {
        name,
        says: letters,
    });
    if !label.purpose.is_empty() {
        let told: Vec<String> = label
            .purpose
            .iter()
            .map(|purpose| words.named(purpose.key()).to_owned())
            .collect();
        out = words.say(say::DrawnLabelTells {
            label: out,
            purposes: listed(&told, words),
        });
    }
    if let Some(material) = trim.map(|t| t.material.as_str()).filter(|m| !m.is_empty()) {
        out = words.say(say::JoinedAlso {
            first: out,
            next: material,
        });
    }
    out = words.say(say::DrawnLabelFinished {
        fold: label.fold.key(),
        height: amount(tall, units),
        label: out,
        width: amount(wide, units),
    });
    if label.art.is_some() {
        out = words.drawn_lines_of_the_style(out);
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
    words: &'a Words,
    scale: PlateScale,
    all: &[(&Label, &Fixing)],
) -> Option<Figure<'a>> {
    let mitred = all
        .iter()
        .any(|(label, _)| label.fold == LabelFold::MitreFold);
    let title = if mitred {
        key::DRAWN_FOLDED_MITRE
    } else {
        key::DRAWN_FOLDED_EDGE
    };
    let mut figure = Figure::new(
        garment,
        words,
        scale,
        (Face::Inside, title),
        Affine::IDENTITY,
        false,
    );
    let one = figure.on_paper(Length::mm(1.0)).to_mm();
    let p = Point::new;
    let mut x = 0.0;
    for (label, fixing) in all {
        let (wide, tall, _) = flat_of(fixing)?;
        let w = wide.to_mm().clamp(3.0, 300.0);
        let strip = tall.to_mm().clamp(3.0, 300.0).min(w * 0.3);
        let trim = garment.collection.trims.get(&label.trim);
        let name = trim.map_or(label.trim.as_str(), |t| t.name.as_str());
        let told = words.say(say::DrawnFoldOf {
            fold: label.fold.key(),
            name,
        });
        let room = w.max((text_width(&told, TYPE_FIGURES).to_mm() + 2.0) / one);
        let line = fold_line(label.fold, x, w, strip);
        let top = line.iter().map(|q| q.y).fold(1.0, f64::max);
        figure.hold(&[p(x, -9.5 / one), p(x + room, top + 1.0)]);
        let path = open(&line);
        let paper = fixing.colour.mixed(Colour::BLACK, 0.04);
        for (colour, width) in [(INK, 0.8), (paper, 0.35)] {
            let stroke = Stroke {
                round: true,
                ..Stroke::plain(colour, Length::mm(width))
            };
            figure.stroke("labels", &path, stroke);
        }
        let thin = Stroke::plain(INK, BELOW).dashed(Length::mm(1.2), Length::mm(0.8));
        match label.fold {
            // The seam its ends are caught in.
            LabelFold::CentreFold => figure.stroke("labels", &open(&[p(x, 2.0), p(x, -3.6)]), thin),
            LabelFold::MitreFold => {
                for (corner, inner) in [(x, x + strip), (x + w, x + w - strip)] {
                    figure.stroke("labels", &open(&[p(corner, 0.0), p(inner, strip)]), thin);
                }
            }
            LabelFold::Flat | LabelFold::EndFold => {}
        }
        let below = [-6.5, -7.5].map(|down| p(x + room / 2.0, down / one));
        figure.name(&told, &below, QUIET);
        x += room + 10.0;
    }
    figure.body.is_some().then_some(figure)
}

/// The line of a folded label from `x` on: seen from its edge, a mitre fold from its back.
fn fold_line(fold: LabelFold, x: f64, w: f64, strip: f64) -> Vec<Point> {
    /// From ply to ply.
    const APART: f64 = 1.6;
    let turn = TURN_MM.min(w * 0.3);
    let end = x + w;
    let points: Vec<(f64, f64)> = match fold {
        LabelFold::Flat => vec![(x, 0.0), (end, 0.0)],
        LabelFold::EndFold => vec![
            (x + turn, -APART),
            (x + 0.6, -APART),
            (x, -APART / 2.0),
            (x + 0.6, 0.0),
            (end - 0.6, 0.0),
            (end, -APART / 2.0),
            (end - 0.6, -APART),
            (end - turn, -APART),
        ],
        LabelFold::CentreFold => vec![
            (x, 0.0),
            (end - 0.8, 0.0),
            (end, -APART / 2.0),
            (end - 0.8, -APART),
            (x, -APART),
        ],
        // Both ends turned up along 45 degrees, standing above the strip.
        LabelFold::MitreFold => vec![
            (x, 0.0),
            (end, 0.0),
            (end, strip + TAB_MM),
            (end - strip, strip + TAB_MM),
            (end - strip, strip),
            (x + strip, strip),
            (x + strip, strip + TAB_MM),
            (x, strip + TAB_MM),
            (x, 0.0),
        ],
    };
    points.into_iter().map(|(x, y)| Point::new(x, y)).collect()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::plate::{PlateId, fitted};
    use crate::samples::{sewn, texts};

    #[test]
    fn every_label_says_its_words_its_purpose_and_its_fold() {
        let garment = sewn(32, 32);
        let band = fitted(&garment, Words::english(), PlateId::LabelsOnBand, on_band).unwrap();
        let seam = fitted(&garment, Words::english(), PlateId::LabelsInSeam, in_seam).unwrap();
        let all: Vec<String> = [&band, &seam]
            .iter()
            .flat_map(|plate| texts(&plate.sheet))
            .map(|t| t.words.clone())
            .collect();
        let all = all.join(" ");
        for words in [
            "\u{201c}Saltmarsh Yard\u{201d}, tells brand",
            "\u{201c}32x32\u{201d}, tells size",
            "tells fibre, care and origin",
            "end fold, finished 6 cm by 3 cm",
            "centre fold",
        ] {
            assert!(all.contains(words), "{words} not in {all}");
        }
    }

    /// From inside the wearer's left is on the right.
    #[test]
    fn the_plate_of_the_band_says_which_end_is_which() {
        for (waist, length) in [(28, 30), (32, 32), (38, 34)] {
            let garment = sewn(waist, length);
            let plate = fitted(&garment, Words::english(), PlateId::LabelsOnBand, on_band).unwrap();
            let all = texts(&plate.sheet);
            let at = |words: &str| all.iter().find(|t| t.words == words).unwrap().at.x;
            assert!(
                at(Words::english().named(LEFT)) > at("centre back")
                    && at(Words::english().named(RIGHT)) < at("centre back")
            );
        }
    }

    #[test]
    fn a_style_without_labels_has_no_such_plate() {
        let mut garment = sewn(32, 32);
        garment.doc.labels.clear();
        assert!(fitted(&garment, Words::english(), PlateId::LabelsOnBand, on_band).is_none());
        assert!(fitted(&garment, Words::english(), PlateId::LabelsInSeam, in_seam).is_none());
    }
}
