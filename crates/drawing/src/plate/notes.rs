//! What the key says about rows, rivets and tacks.

use geometry::{Affine, Point};
use sewing::{Fixing, FixingKind, Garment, RowEnd, StitchRow};
use style::SeamId;
use trade::{Length, System};

use super::figure::Figure;
use super::words::{amount, capitalised, figure_of, listed, row_words, system, unit_word};

/// Places along a row its number may point at, the middle first.
const SHARES: [f64; 9] = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88];

/// One note for each row of a seam among those drawn: stitch, density, yarns, distance, ends and
/// how many stitches. `from` says where the distance is taken from, such as "from the edge".
pub(super) fn note_rows(figure: &mut Figure<'_>, rows: &[usize], map: Affine, from: &str) {
    note_rows_of(figure, rows, rows, map, from);
}

/// The same, the words speaking for all of `alike`, of which `rows` are drawn here: left and right
/// share an entry of the key.
pub(super) fn note_rows_of(
    figure: &mut Figure<'_>,
    rows: &[usize],
    alike: &[usize],
    map: Affine,
    from: &str,
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
        figure.note(row_note(garment, &same, from), &at);
    }
}

/// The words about rows of one seam and number.
pub(super) fn row_note(garment: &Garment, rows: &[usize], from: &str) -> String {
    let all: Vec<_> = rows.iter().filter_map(|k| garment.rows.get(*k)).collect();
    let Some(row) = all.first() else {
        return String::new();
    };
    let title = row.seam.title();
    let seam = garment.seams.iter().find(|s| s.id == row.seam);
    let several = seam.is_some_and(|s| s.rows.len() > 1);
    let offset = seam
        .and_then(|s| s.rows.get(row.number.checked_sub(1)?))
        .map(|r| r.offset)
        .filter(|o| o.to_mm() > 0.0 && !from.is_empty());
    let mut words = capitalised(title);
    if several {
        words.push_str(&format!(", row {}", row.number));
    }
    words.push_str(&format!(": {}", row_words(&garment.collection, row)));
    if let Some(offset) = offset {
        let far = amount(offset, system(&garment.collection));
        words.push_str(&format!(", {far} {from}"));
    }
    let mut ends: Vec<String> = Vec::new();
    for row in &all {
        let way = ends_words(row);
        if !ends.contains(&way) {
            ends.push(way);
        }
    }
    words.push_str(&format!("; {}", ends.join("; ")));
    let mut counts: Vec<String> = all.iter().map(|r| r.stitches().to_string()).collect();
    counts.dedup();
    let each = if counts.len() < all.len() {
        " each"
    } else {
        ""
    };
    words.push_str(&format!("; {} stitches{each}", listed(&counts)));
    words
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
    what: &str,
    how: &str,
    places: &[(Point, Length, Length)],
) {
    let units = system(&figure.garment.collection);
    let mut said: Vec<String> = Vec::new();
    for ((p, across, down), letter) in places.iter().zip(letters()) {
        said.push(lettered(letter, *across, *down, units));
        figure.mark(*p, letter);
    }
    if !said.is_empty() {
        let unit = unit_word(units);
        figure.remark(format!("{what} in {unit}, {how}: {}", said.join(", ")));
    }
}

/// How a row begins and ends.
pub(super) fn ends_words(row: &StitchRow) -> String {
    if row.begins != row.ends {
        return format!("begins {}, ends {}", row.begins.word(), row.ends.word());
    }
    match row.begins {
        RowEnd::Overlapped => "overlaps its own start".to_owned(),
        RowEnd::TuckedIn => "threads of both ends tucked into the fold".to_owned(),
        RowEnd::TiedByHand => "threads of both ends tied by hand".to_owned(),
        RowEnd::Cut => "threads of both ends cut".to_owned(),
        RowEnd::RunsOn => "runs on over the seams at both ends".to_owned(),
        RowEnd::Backtacked | RowEnd::CaughtInSeam => format!("ends {}", row.begins.word()),
    }
}

/// One note for all fixings alike among those drawn, after `before`, such as "Rivets".
pub(super) fn note_fixings(
    figure: &mut Figure<'_>,
    fixings: &[&Fixing],
    map: Affine,
    (before, after): (&str, &str),
) {
    let Some(first) = fixings.first() else { return };
    let at: Vec<Point> = fixings.iter().map(|f| map * f.at).collect();
    let what = fixing_words(figure.garment, first);
    figure.note(format!("{before}: {what}{after}"), &at);
}

/// "Copper rivet 9 mm, 9 mm across"; "10 mm long, 2 mm wide, 28 stitches, Rope 80".
fn fixing_words(garment: &Garment, fixing: &Fixing) -> String {
    let say = |l: Length| amount(l, system(&garment.collection));
    let trim = fixing
        .from
        .trim()
        .and_then(|key| garment.collection.trims.get(key));
    let name = trim.map_or(fixing.from.code(), |t| t.name.as_str());
    match &fixing.kind {
        FixingKind::Rivet(d) | FixingKind::Button(d) => format!("{name}, {} across", say(*d)),
        FixingKind::Bartack(length, width, stitches) => {
            let yarn = &garment.doc.bartacks.yarn;
            let yarn = garment
                .collection
                .yarns
                .get(yarn)
                .map_or(yarn.as_str(), |y| y.name.as_str());
            format!(
                "{} long, {} wide, {stitches} stitches, {yarn}",
                say(*length),
                say(*width)
            )
        }
        FixingKind::Buttonhole(length) => format!("{} long", say(*length)),
        FixingKind::Zip(length, width)
        | FixingKind::Loop(length, width)
        | FixingKind::Patch(length, width, _)
        | FixingKind::Label(length, width, _) => {
            format!("{name}, {} by {}", say(*length), say(*width))
        }
    }
}
