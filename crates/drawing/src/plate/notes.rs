//! What the key says about rows, rivets and tacks.

use geometry::{Affine, Point};
use sewing::{Fixing, FixingKind, Garment, RowEnd, StitchRow};
use style::SeamId;
use trade::{Length, System};
use words::{Given, Key, Said, Words, key, say};

use super::figure::Figure;
use super::words::{amount, capitalised, figure_of, listed, row_words, system, unit_word};

/// Places along a row its number may point at, the middle first.
const SHARES: [f64; 9] = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88];

/// What the distance of a row is told from.
#[derive(Clone, Copy, Debug)]
pub(super) enum MeasuredFrom {
    Edge,
    ItsEdge,
    FacingEdge,
    LabelEdge,
    PatchEdge,
    BandSeam,
    LoopEdge,
}

impl MeasuredFrom {
    fn said(self, far: String) -> Said {
        match self {
            Self::Edge => say::DrawnFromTheEdge { far }.into(),
            Self::ItsEdge => say::DrawnFromItsEdge { far }.into(),
            Self::FacingEdge => say::DrawnFromTheFacingsEdge { far }.into(),
            Self::LabelEdge => say::DrawnFromTheLabelsEdge { far }.into(),
            Self::PatchEdge => say::DrawnFromThePatchsEdge { far }.into(),
            Self::BandSeam => say::DrawnFromTheBandSeam { far }.into(),
            Self::LoopEdge => say::DrawnFromTheLoopsLeftEdge { far }.into(),
        }
    }
}

/// One note for each row of a seam among those drawn: stitch, density, yarns, distance, ends and
/// how many stitches. `from` says where the distance is taken from, such as "from the edge".
pub(super) fn note_rows(
    figure: &mut Figure<'_>,
    rows: &[usize],
    map: Affine,
    from: Option<MeasuredFrom>,
) {
    note_rows_of(figure, rows, rows, map, from);
}

/// The same for rows on one of several things that are sewn alike, which is named.
pub(super) fn note_rows_on(
    figure: &mut Figure<'_>,
    rows: &[usize],
    map: Affine,
    (from, thing): (MeasuredFrom, &str),
) {
    let Some(row) = rows.first().and_then(|k| figure.garment.rows.get(*k)) else {
        return;
    };
    let at: Vec<Point> = SHARES
        .iter()
        .map(|share| map * row.path.point_at(row.length() * *share))
        .collect();
    let told = row_note(figure.garment, figure.words, rows, Some(from));
    let note = figure.words.putting(&told);
    figure.note(say::DrawnRowOn { note, thing }, &at);
}

/// The same, the words speaking for all of `alike`, of which `rows` are drawn here: left and right
/// share an entry of the key.
pub(super) fn note_rows_of(
    figure: &mut Figure<'_>,
    rows: &[usize],
    alike: &[usize],
    map: Affine,
    from: Option<MeasuredFrom>,
) {
    let garment = figure.garment;
    let mut said: Vec<(SeamId, usize)> = Vec::new();
    for index in rows {
        let Some(row) = garment.rows.get(*index) else {
            continue;
        };
        let name = (row.seam, row.number);
        if said.contains(&name) {
            continue;
        }
        said.push(name);
        let same: Vec<usize> = alike
            .iter()
            .copied()
            .filter(|k| {
                let other = garment.rows.get(*k);
                other.is_some_and(|r| (r.seam, r.number) == name)
            })
            .collect();
        let at: Vec<Point> = SHARES
            .iter()
            .map(|share| map * row.path.point_at(row.length() * *share))
            .collect();
        figure.note(row_note(garment, figure.words, &same, from), &at);
    }
}

/// The words about rows of one seam and number.
pub(super) fn row_note(
    garment: &Garment,
    words: &Words,
    rows: &[usize],
    from: Option<MeasuredFrom>,
) -> Given {
    let all: Vec<_> = rows.iter().filter_map(|k| garment.rows.get(*k)).collect();
    let Some(row) = all.first() else {
        return String::new().into();
    };
    let seam = garment.seams.iter().find(|s| s.id == row.seam);
    let several = seam.is_some_and(|s| s.rows.len() > 1);
    let offset = seam
        .and_then(|s| s.rows.get(row.number.checked_sub(1)?))
        .map(|r| r.offset)
        .filter(|o| o.to_mm() > 0.0);
    let title = capitalised(row.seam.words(words));
    let head: Given = if several {
        let row = row.number;
        say::DrawnRowNumbered { row, seam: title }.into()
    } else {
        title.into()
    };
    let mut ends: Vec<Said> = Vec::new();
    for row in &all {
        let way = ends_words(row);
        if !ends.contains(&way) {
            ends.push(way);
        }
    }
    let ends: Vec<String> = ends.iter().map(|way| words.saying(way)).collect();
    let ends = ends.join("; ");
    let mut counts: Vec<String> = all.iter().map(|r| r.stitches().to_string()).collect();
    counts.dedup();
    let each = counts.len() < all.len();
    let counts = listed(&counts, words);
    let stitches: Said = if each {
        say::DrawnStitchesEach { counts }.into()
    } else {
        say::DrawnStitches { counts }.into()
    };
    let made = row_words(&garment.collection, row);
    match (offset, from) {
        (Some(offset), Some(from)) => say::DrawnRowAway {
            away: from.said(amount(offset, system(&garment.collection))),
            ends,
            head,
            made,
            stitches,
        }
        .into(),
        _ => say::DrawnRow {
            ends,
            head,
            made,
            stitches,
        }
        .into(),
    }
}

/// Letters for places of a drawing: a to z, then A to Z, without those that read as figures.
pub(super) fn letters() -> impl Iterator<Item = char> {
    ('a'..='z')
        .chain('A'..='Z')
        .filter(|c| !matches!(c, 'l' | 'o' | 'I' | 'O'))
}

/// "a 1.8 / 9.7", never parted at the end of a line.
pub(super) fn lettered(letter: char, across: Length, down: Length, units: System) -> String {
    let (across, down) = (figure_of(across, units), figure_of(down, units));
    format!("{letter}\u{a0}{across}\u{a0}/\u{a0}{down}")
}

/// Marks places with letters and lists the two distances of each in the key.
pub(super) fn note_places(
    figure: &mut Figure<'_>,
    places: &[(Point, Length, Length)],
    told: impl FnOnce(Key, String) -> Said,
) {
    let units = system(&figure.garment.collection);
    let mut said: Vec<String> = Vec::new();
    for ((p, across, down), letter) in places.iter().zip(letters()) {
        said.push(lettered(letter, *across, *down, units));
        figure.mark(*p, letter);
    }
    if !said.is_empty() {
        figure.remark(told(unit_word(units), said.join(", ")));
    }
}

/// How a row begins and ends.
pub(super) fn ends_words(row: &StitchRow) -> Said {
    if row.begins != row.ends {
        return say::DrawnEndsDiffer {
            begins: row.begins.said(),
            ends: row.ends.said(),
        }
        .into();
    }
    match row.begins {
        RowEnd::Overlapped => key::DRAWN_BOTH_OVERLAPPED.into(),
        RowEnd::TuckedIn => key::DRAWN_BOTH_TUCKED_IN.into(),
        RowEnd::TiedByHand => key::DRAWN_BOTH_TIED.into(),
        RowEnd::Cut => key::DRAWN_BOTH_CUT.into(),
        RowEnd::RunsOn => key::DRAWN_BOTH_RUN_ON.into(),
        RowEnd::Backtacked | RowEnd::CaughtInSeam | RowEnd::ChainedOff => say::DrawnEndsAlike {
            ends: row.begins.said(),
        }
        .into(),
    }
}

/// One note for all fixings alike among those drawn, after `before`, such as "Rivets".
pub(super) fn note_fixings(
    figure: &mut Figure<'_>,
    fixings: &[&Fixing],
    map: Affine,
    told: impl FnOnce(Said) -> Said,
) {
    let Some(first) = fixings.first() else { return };
    let at: Vec<Point> = fixings.iter().map(|f| map * f.at).collect();
    let what = fixing_words(figure.garment, first);
    figure.note(told(what), &at);
}

/// "Copper rivet 9 mm, 9 mm across"; "10 mm long, 2 mm wide, 28 stitches, Rope 80".
fn fixing_words(garment: &Garment, fixing: &Fixing) -> Said {
    let shown = |l: Length| amount(l, system(&garment.collection));
    let trim = fixing
        .from
        .trim()
        .and_then(|key| garment.collection.trims.get(key));
    let name = trim.map_or(fixing.from.code(), |t| t.name.as_str());
    match &fixing.kind {
        FixingKind::Rivet(d) | FixingKind::Button(d) => say::DrawnAcross {
            name,
            size: shown(*d),
        }
        .into(),
        FixingKind::Bartack(length, width, stitches) => {
            let yarn = &garment.doc.bartacks.yarn;
            let yarn = garment
                .collection
                .yarns
                .get(yarn)
                .map_or(yarn.as_str(), |y| y.name.as_str());
            say::DrawnBartack {
                length: shown(*length),
                stitches: *stitches,
                width: shown(*width),
                yarn,
            }
            .into()
        }
        FixingKind::Buttonhole(length) => say::DrawnLong {
            length: shown(*length),
        }
        .into(),
        FixingKind::Zip(length, width)
        | FixingKind::Loop(length, width)
        | FixingKind::Patch(length, width, _)
        | FixingKind::Label(length, width, _) => say::DrawnBy {
            length: shown(*length),
            name,
            width: shown(*width),
        }
        .into(),
    }
}
