//! The waistband laid flat, outside and inside, in lengths broken from one another where it is too long for the
//! page: places told on a tape from centre back.

use draft::{ClothUse, Piece, PieceId, PointId};
use geometry::{Affine, Path, Point, Vec2};
use sewing::{Face, Fixing, FixingKind, Garment, StitchRow, band_is_joined, band_join_allowance};
use style::{BandMethod, MeasureId, SeamId, SetAfter};
use trade::{Colour, Length};
use words::{Key, Said, Words, key, say};

use super::figure::{Figure, Outline, Spot};
use super::flat_goods::{Standing, corners, lay};
use super::labels::note_label_rows;
use super::measure::Side;
use super::notes::{MeasuredFrom, note_rows};
use super::page::{Draft, WIDE_MM};
use super::scale::PlateScale;
use super::tone::{AROUND, BELOW, set_back};
use super::words::{amount, row_words, system};
use crate::palette::{HAIRLINE, INK, QUIET};
use crate::sheet::{Stroke, open};

/// Cloth shown on both sides of a break in two lengths, so that what is cut there shows whole in one of them.
const OVERLAP_MM: f64 = 34.0;
/// Paper for dimensions at the sides of a length.
const SIDES_MM: f64 = 15.0;
/// Cloth shown beyond the ends, above and below.
const BEYOND_MM: f64 = 4.0;
const BELOW_MM: f64 = 22.0;

pub(super) fn outside<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
) -> Option<Draft<'a>> {
    draw(garment, words, scale, Face::Outside)
}

pub(super) fn inside<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
) -> Option<Draft<'a>> {
    draw(garment, words, scale, Face::Inside)
}

/// What the band measures, in its own frame.
pub(super) struct Measures {
    pub height: f64,
    pub waist: f64,
    pub end: f64,
    pub centre: f64,
}

impl Measures {
    pub fn of(garment: &Garment) -> Option<Measures> {
        let band = garment.pattern.piece(PieceId::Band)?;
        let x = |id| band.point(id).map(|p| p.x);
        let found = Measures {
            height: garment.pattern.spec[MeasureId::BandHeight].to_mm(),
            waist: x(PointId::CentreFrontRight)?,
            end: x(PointId::EndRight)?,
            centre: x(PointId::CentreBack)?,
        };
        let sound = [found.height, found.waist, found.end]
            .iter()
            .all(|v| v.is_finite() && *v > 1.0);
        sound.then_some(found)
    }

    /// The inner half of the unfolded band turned down behind the outer.
    pub fn folded(&self) -> Affine {
        Affine::new([1.0, 0.0, 0.0, -1.0, 0.0, 2.0 * self.height])
    }
}

/// The lengths the band is drawn in: each from where to where, along the band.
fn lengths(m: &Measures, scale: PlateScale) -> Vec<(f64, f64)> {
    let most = (WIDE_MM - SIDES_MM * 2.0) / scale.times() - 2.0 * BEYOND_MM;
    let count = (1..=4)
        .find(|n| m.end / f64::from(*n) + OVERLAP_MM <= most)
        .unwrap_or(5);
    let each = m.end / f64::from(count);
    let reach = if count > 1 { OVERLAP_MM / 2.0 } else { 0.0 };
    (0..count)
        .map(|k| {
            let from = each * f64::from(k);
            let (first, last) = (k == 0, k + 1 == count);
            let a = if first { -BEYOND_MM } else { from - reach };
            let b = if last {
                m.end + BEYOND_MM
            } else {
                from + each + reach
            };
            (a, b)
        })
        .collect()
}

fn draw<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
    face: Face,
) -> Option<Draft<'a>> {
    let band = garment.pattern.piece(PieceId::Band)?;
    let m = Measures::of(garment)?;
    let mut parts = lengths(&m, scale);
    if parts.len() > 4 {
        // Without a figure of any size no page takes it, and a smaller scale is tried.
        let none = Figure::new(garment, words, scale, (face, ""), Affine::IDENTITY, false);
        return Some(Draft {
            title: String::new(),
            caption: String::new(),
            figures: vec![none],
        });
    }
    let whole = parts.len() == 1;
    if face == Face::Inside {
        parts.reverse();
    }
    let mut figures = Vec::new();
    for (k, (a, b)) in parts.iter().enumerate() {
        let title = title(face, (*a < 0.0, *b > m.end), whole, k);
        let mut figure = Figure::new(
            garment,
            words,
            scale,
            (face, title),
            Affine::IDENTITY,
            face == Face::Inside,
        );
        strip(&mut figure, band, &m, (*a, *b));
        figures.push(figure);
    }
    let (title, shown) = match face {
        Face::Outside => (key::DRAWN_BAND_OUTSIDE, key::DRAWN_OUTSIDE),
        Face::Inside => (key::DRAWN_BAND_INSIDE, key::DRAWN_INSIDE),
    };
    let rows = match garment.doc.band.method {
        BandMethod::AllRound => key::DRAWN_BAND_ALL_ROUND,
        BandMethod::TwoRow => key::DRAWN_BAND_TWO_ROW,
    };
    let caption: Said = if whole {
        say::DrawnBandCaption { rows, shown }.into()
    } else {
        say::DrawnBandBroken { rows, shown }.into()
    };
    Some(Draft {
        title: words.say(title),
        caption: words.say(caption),
        figures,
    })
}

fn title(face: Face, (left, right): (bool, bool), whole: bool, k: usize) -> Said {
    let face = match face {
        Face::Outside => key::DRAWN_OUTSIDE,
        Face::Inside => key::DRAWN_LOOKING_IN,
    };
    match (whole, left, right) {
        (true, ..) => face.into(),
        (_, true, _) => say::DrawnLengthLeft { face }.into(),
        (_, _, true) => say::DrawnLengthRight { face }.into(),
        _ if k == 0 => face.into(),
        _ => say::DrawnLengthBack { face }.into(),
    }
}

/// One length of the band with what is on it.
fn strip(figure: &mut Figure<'_>, band: &Piece, m: &Measures, (a, b): (f64, f64)) {
    let garment = figure.garment;
    let low = -BELOW_MM.max(garment.doc.band.start_below.to_mm().clamp(0.0, 60.0) + 3.0);
    let p = Point::new;
    figure.window(&[p(a, low), p(b, m.height + BEYOND_MM)]);
    ground(figure, band, m, low);
    let outside = figure.face == Face::Outside;
    let shows = |r: &StitchRow| {
        if outside {
            r.shows_outside
        } else {
            r.shows_inside
        }
    };
    let rows = figure.rows(PieceId::Band, Affine::IDENTITY, |r| {
        shows(r) && r.seam == SeamId::Band
    });
    let here: Vec<&Fixing> = garment
        .fixings
        .iter()
        .filter(|f| f.piece == PieceId::Band && f.at.x > a - 30.0 && f.at.x < b + 30.0)
        .filter(|f| if outside { f.outside } else { f.inside })
        .collect();
    let mut laid = Vec::new();
    let later = garment.is_set_after_wash(SetAfter::Patch);
    for fixing in &here {
        match fixing.kind {
            FixingKind::Patch(..) if outside && later => patch_to_come(figure, fixing),
            FixingKind::Patch(..) if outside => {
                lay(figure, fixing, Affine::IDENTITY, Standing::Pressed, true);
                laid.extend(figure.rows(PieceId::Band, Affine::IDENTITY, |r| {
                    r.seam == SeamId::PatchSet
                }));
            }
            FixingKind::Label(..) => lay(figure, fixing, m.folded(), Standing::Printed, true),
            FixingKind::Loop(length, width) => belt_loop(figure, fixing.at, length, width),
            _ => {}
        }
    }
    if !outside {
        laid.extend(figure.rows(PieceId::Band, m.folded(), |r| r.seam == SeamId::LabelSet));
        laid.extend(figure.rows(PieceId::Band, Affine::IDENTITY, |r| {
            r.seam == SeamId::PatchSet && !later
        }));
    }
    for fixing in &here {
        let set = matches!(
            fixing.kind,
            FixingKind::Button(_) | FixingKind::Buttonhole(_) | FixingKind::Bartack(..)
        );
        if set {
            figure.fixing(fixing, Affine::IDENTITY, false);
        }
    }
    note_band_rows(figure, &rows, m);
    // Windows decide which numbers stand here; labels lie in the folded half.
    let garment_rows = &garment.rows;
    let (labels, rest): (Vec<usize>, Vec<usize>) = laid.iter().copied().partition(|k| {
        garment_rows
            .get(*k)
            .is_some_and(|r| r.seam == SeamId::LabelSet)
    });
    note_label_rows(figure, &labels, m.folded());
    note_rows(
        figure,
        &rest,
        Affine::IDENTITY,
        Some(MeasuredFrom::PatchEdge),
    );
    dimensions(figure, m, (a, b));
    let units = system(&garment.collection);
    let spots = spots((garment, figure.words), band, m, outside, units);
    figure.tape(&spots);
    let (low, top) = (p(0.0, low), p(0.0, m.height + BEYOND_MM));
    for (x, out) in [(a, -1.0), (b, 1.0)] {
        if x > 0.0 && x < m.end {
            let over = Vec2::new(x, 0.0);
            figure.break_line(low + over, top + over, Vec2::new(out, 0.0));
        }
    }
}

/// A patch that is set when the pair is washed: on the unwashed band its place is only shown.
fn patch_to_come(figure: &mut Figure<'_>, fixing: &Fixing) {
    figure.fixing(fixing, Affine::IDENTITY, true);
    let places = [0.0, 12.0, -12.0].map(|aside| fixing.at + Vec2::new(aside, 0.0));
    figure.note(key::DRAWN_PATCH_AFTER_THE_WASH, &places);
}

/// Notes of the band's rows: one that runs round has its distance from the band's own edges.
fn note_band_rows(figure: &mut Figure<'_>, rows: &[usize], m: &Measures) {
    let garment = figure.garment;
    let round = |k: &usize| {
        let row = garment.rows.get(*k);
        garment.doc.band.method == BandMethod::AllRound && row.is_some_and(|r| r.number > 1)
    };
    let (round, along): (Vec<usize>, Vec<usize>) = rows.iter().partition(|k| round(k));
    note_rows(
        figure,
        &along,
        Affine::IDENTITY,
        Some(MeasuredFrom::BandSeam),
    );
    for row in round.iter().filter_map(|k| garment.rows.get(*k)) {
        let edge = Length::mm(row.path.start().x);
        let told = say::DrawnBandRound {
            away: amount(edge, system(&garment.collection)),
            made: row_words(&garment.collection, row),
            row: row.number,
            stitches: row.stitches().to_string(),
        };
        let y = m.height - edge.to_mm();
        let at: Vec<Point> = (0..40)
            .map(|k| Point::new(m.end * (f64::from(k) + 0.5) / 40.0, y))
            .collect();
        figure.note(told, &at);
    }
}

/// The band, and the body it is set on.
fn ground(figure: &mut Figure<'_>, band: &Piece, m: &Measures, low: f64) {
    let quiet = set_back(figure.tone(ClothUse::Shell));
    // Folded along its length, the band shows the face of the cloth on both sides.
    let shell = super::tone::tone(figure.garment, ClothUse::Shell, Face::Outside);
    let rect = |x0: f64, x1: f64, y0: f64, y1: f64| {
        [(x0, y0), (x1, y0), (x1, y1), (x0, y1)].map(|(x, y)| Point::new(x, y))
    };
    figure.area(
        "piece:front",
        &rect(0.0, m.waist, low - 5.0, 0.0),
        quiet,
        Outline::Light,
    );
    // The right end stands on the shield.
    figure.area(
        "piece:fly_shield",
        &rect(m.waist, m.end, low - 5.0, 0.0),
        quiet,
        Outline::Light,
    );
    let on_shield = [0.5, 0.4, 0.6].map(|s| Point::new(m.waist + (m.end - m.waist) * s, low * 0.6));
    figure.name(key::DRAWN_FLY_SHIELD, &on_shield, QUIET);
    for id in [PointId::SideLeft, PointId::CentreBack, PointId::SideRight] {
        if let Some(at) = band.point(id) {
            figure.edge(
                "seam:outseam",
                &Path::line(at, at + Vec2::new(0.0, low - 5.0)),
                false,
            );
        }
    }
    figure.area(
        "piece:band",
        &rect(0.0, m.end, 0.0, m.height),
        shell,
        Outline::Heavy,
    );
    let centre = Point::new(m.centre, 0.0);
    let across = Path::line(centre, centre + Vec2::new(0.0, m.height));
    if band_is_joined(figure.garment) {
        figure.edge("seam:band_halves", &across, true);
        let how = joined(figure);
        let places = [0.8, 0.6, 0.4].map(|share| across.point_at(across.length() * share));
        figure.note(how, &places);
    } else {
        figure.fold("piece:band", &across);
    }
    if figure.face == Face::Outside && m.end > m.waist {
        let x = Point::new(m.waist, 0.0);
        figure.below("piece:band", &Path::line(x, x + Vec2::new(0.0, m.height)));
    }
}

/// How the halves of a band cut in two are joined: inside the band, so that only the line is seen.
fn joined(figure: &Figure<'_>) -> Said {
    let garment = figure.garment;
    let units = system(&garment.collection);
    let allowance = amount(band_join_allowance(&garment.seams), units);
    let row = garment.rows.iter().find(|row| row.seam == SeamId::BandJoin);
    match row {
        Some(row) => say::DrawnBandJoin {
            allowance,
            made: row_words(&garment.collection, row),
        }
        .into(),
        None => say::DrawnBandJoinOpen { allowance }.into(),
    }
}

fn belt_loop(figure: &mut Figure<'_>, at: Point, length: Length, width: Length) {
    let (l, w) = (length.to_mm() / 2.0, width.to_mm() / 2.0);
    let corners = [(-w, -l), (w, -l), (w, l), (-w, l)].map(|(x, y)| at + Vec2::new(x, y));
    let fill = figure.tone(ClothUse::Shell).mixed(Colour::WHITE, 0.2);
    figure.fill(
        "fixing:loop_edge",
        &corners,
        fill,
        Some(Stroke::plain(INK, AROUND)),
    );
    let seam = [at - Vec2::new(w, at.y), at + Vec2::new(w, -at.y)];
    let hidden = Stroke::plain(QUIET, HAIRLINE.min(BELOW)).dashed(Length::mm(0.7), Length::mm(0.5));
    figure.stroke("fixing:loop_edge", &open(&seam), hidden);
}

/// Height at the ends, whole length and overlap.
fn dimensions(figure: &mut Figure<'_>, m: &Measures, (a, b): (f64, f64)) {
    let p = Point::new;
    let mirrored = figure.face == Face::Inside;
    let broken = a > 0.0 || b < m.end;
    if a < 0.0 {
        let side = if mirrored { Side::Right } else { Side::Left };
        figure.dimension(side, p(0.0, 0.0), p(0.0, m.height), None);
        if broken {
            // No arrow on one length measures them all.
            let length = figure.amount_of(Length::mm(m.end));
            figure.remark(say::DrawnWholeLengthIs { length });
        } else {
            figure.dimension(
                Side::Above,
                p(0.0, m.height),
                p(m.end, m.height),
                Some(key::DRAWN_WHOLE_LENGTH),
            );
        }
    }
    if b > m.end {
        let side = if mirrored { Side::Left } else { Side::Right };
        figure.dimension(side, p(m.end, 0.0), p(m.end, m.height), None);
        figure.dimension(
            Side::Above,
            p(m.waist, m.height),
            p(m.end, m.height),
            Some(key::DRAWN_OVERLAP),
        );
    }
}

/// Everything a workroom marks with a tape laid along the band from centre back.
fn spots(
    (garment, words): (&Garment, &Words),
    band: &Piece,
    m: &Measures,
    outside: bool,
    units: trade::System,
) -> Vec<Spot> {
    let mut out = Vec::new();
    let mut spot = |x: f64, low: f64, name: Key| {
        let far = Length::mm((x - m.centre).abs());
        let value = if far.to_mm() < 0.05 {
            "0".to_owned()
        } else {
            amount(far, units)
        };
        out.push(Spot {
            at: Point::new(x, low),
            words: vec![value, words.named(name).to_owned()],
        });
    };
    spot(0.0, 0.0, key::DRAWN_LEFT_END);
    spot(m.end, 0.0, key::DRAWN_RIGHT_END);
    spot(m.waist, 0.0, key::DRAWN_CENTRE_FRONT);
    for (point, name) in [
        (PointId::SideLeft, key::DRAWN_OUTSEAM),
        (PointId::SideRight, key::DRAWN_OUTSEAM),
    ] {
        if let Some(at) = band.point(point) {
            spot(at.x, 0.0, name);
        }
    }
    let mut at_centre = (key::DRAWN_CENTRE_BACK, 0.0);
    for fixing in garment.fixings.iter().filter(|f| f.piece == PieceId::Band) {
        match fixing.kind {
            FixingKind::Loop(length, _) if outside => {
                let low = fixing.at.y - length.to_mm() / 2.0;
                if (fixing.at.x - m.centre).abs() < 0.05 {
                    at_centre = (key::DRAWN_CENTRE_BACK_LOOP, low);
                } else {
                    spot(fixing.at.x, low, key::DRAWN_LOOP);
                }
            }
            FixingKind::Patch(..) if outside && !garment.is_set_after_wash(SetAfter::Patch) => {
                for corner in corners(fixing, Affine::IDENTITY)
                    .into_iter()
                    .flat_map(|c| [c[0], c[1]])
                {
                    spot(corner.x, corner.y, key::DRAWN_PATCH);
                }
            }
            // One that is centred needs no more; of the others the nearer edge.
            FixingKind::Label(..) if !outside => {
                let near = corners(fixing, m.folded())
                    .into_iter()
                    .flat_map(|c| [c[0], c[1]]);
                let off = |p: &Point| (p.x - m.centre).abs();
                let near = near.min_by(|a, b| off(a).total_cmp(&off(b)));
                if let Some(p) = near.filter(|_| (fixing.at.x - m.centre).abs() > 0.05) {
                    spot(p.x, p.y, key::DRAWN_LABEL);
                }
            }
            _ => {}
        }
    }
    spot(m.centre, at_centre.1, at_centre.0);
    out
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::plate::{PlateId, fitted};
    use crate::samples::sewn;

    #[test]
    fn each_length_shows_the_stitches_that_lie_in_it() {
        let garment = sewn(32, 32);
        let plate = fitted(
            &garment,
            Words::english(),
            PlateId::WaistbandOutside,
            outside,
        )
        .unwrap();
        let m = Measures::of(&garment).unwrap();
        let (index, row) = garment
            .rows
            .iter()
            .enumerate()
            .find(|(_, r)| r.seam == SeamId::Band && r.number == 1)
            .unwrap();
        let drawn: Vec<usize> = plate
            .stitches
            .iter()
            .filter(|d| d.row == index)
            .map(|d| d.drawn)
            .collect();
        let parts = lengths(&m, plate.scale);
        assert!(parts.len() > 1);
        // The row is straight: its needle points lie a pitch apart from the left end on.
        let pitch = 25.4 / 8.0;
        let within = |(a, b): (f64, f64)| {
            (0..row.stitches())
                .map(|k| row.path.start().x + pitch * k as f64)
                .filter(|x| *x >= a && *x <= b)
                .count()
        };
        assert_eq!(drawn, parts.into_iter().map(within).collect::<Vec<_>>());
    }

    #[test]
    fn lengths_leave_nothing_of_the_band_out() {
        let m = Measures {
            height: 38.0,
            waist: 850.0,
            end: 892.0,
            centre: 425.0,
        };
        for scale in PlateScale::ALL {
            let parts = lengths(&m, scale);
            assert!(parts[0].0 < 0.0 && parts[parts.len() - 1].1 > m.end);
            assert!(parts.windows(2).all(|w| w[1].0 < w[0].1));
        }
    }
}
