//! Plies and thickness at every crossing, against counts by hand.
#![allow(clippy::unwrap_used, missing_docs)]

mod common;

use common::ferryman;
use draft::{PieceId, PointId, Severity};
use sewing::{Crossing, CrossingKind, Garment, bulk, make, sewing_findings};
use style::{Construction, Lining, Loaded, MeasureId, SeamId, Size};
use trade::Length;

fn sewn(change: impl FnOnce(&mut Loaded)) -> Garment {
    let mut loaded = ferryman();
    change(&mut loaded);
    make(&loaded.style, &loaded.collection, Size::new(32, 32))
}

fn all(change: impl FnOnce(&mut Loaded)) -> Vec<Crossing> {
    bulk(&sewn(change))
}

fn said(words: &words::Said) -> String {
    words::Words::english().saying(words)
}

fn named<'a>(all: &'a [Crossing], words: &str) -> &'a Crossing {
    all.iter().find(|c| said(&c.name).contains(words)).unwrap()
}

fn plies(crossing: &Crossing) -> [u32; 3] {
    let p = crossing.plies;
    [p.shell, p.pocketing, p.lining]
}

/// The shell of the demo style is 0.82 mm, its pocketing 0.45 and its lining 0.30 mm thick.
#[test]
fn crossings_of_the_demo_style_counted_by_hand() {
    let all = all(|_| {});
    // Name, plies of shell, pocketing and lining, and millimetres.
    let wanted: [(&str, [u32; 3], f64); 14] = [
        // Four plies of the seat seam, each of them the four of the yoke seam.
        ("the seat seam crosses the yoke seam", [16, 0, 0], 13.12),
        // Twice the three of the front rise, twice the four of the seat seam.
        ("at the crotch", [14, 0, 0], 11.48),
        // Three of the hem, four of the inseam or two of the outseam.
        ("hem crosses the inseam", [12, 0, 0], 9.84),
        ("hem crosses the outseam", [6, 0, 0], 4.92),
        // The yoke seam doubled where the outseam is pressed open.
        ("outseam crosses the yoke seam", [8, 0, 0], 6.56),
        // Four of the band and four of the seat seam.
        ("band crosses the seat seam", [8, 0, 0], 6.56),
        // Four of the band; facing and bag, doubled.
        ("band crosses the left outseam", [6, 2, 0], 5.82),
        // The mouth edge and its allowance, the bag and its own; facing and bag below.
        ("band crosses the end of the pocket mouth", [7, 3, 0], 7.09),
        (
            "outseam crosses the end of the pocket mouth",
            [6, 6, 0],
            7.62,
        ),
        // The loop is two plies, and four where its end is turned under.
        (
            "loop at the centre back crosses the band seam",
            [10, 0, 0],
            8.20,
        ),
        ("foot of the loop at the centre back", [8, 0, 0], 6.56),
        ("top of the loop at the centre back", [6, 0, 0], 4.92),
        // A hem of three, turned in at the side, on the lining's turned edge and the back.
        ("inner top corner of the left back pocket", [7, 0, 2], 6.34),
        ("outer top corner of the coin pocket", [7, 0, 0], 5.74),
    ];
    for (name, count, mm) in wanted {
        let crossing = named(&all, name);
        assert_eq!(plies(crossing), count, "{name}");
        let off = crossing.thickness.to_mm() - mm;
        assert!(off.abs() < 1e-9, "{name}: {}", crossing.thickness);
    }
}

#[test]
fn crossings_come_thickest_first_and_on_their_pieces() {
    let garment = sewn(|_| {});
    let all = bulk(&garment);
    assert!(all.is_sorted_by(|a, b| a.thickness >= b.thickness));
    assert_eq!(all[0].kind, CrossingKind::SeatYoke);
    for crossing in &all {
        let piece = garment.pattern.piece(crossing.place.piece);
        assert!(piece.is_some(), "{}", said(&crossing.name));
        assert!(crossing.place.at.is_finite());
        let less = crossing.trimmed.map(|(_, thickness)| thickness);
        assert!(less.is_none_or(|t| t < crossing.thickness));
    }
    let loops = all.iter().filter(|c| c.kind == CrossingKind::Loop).count();
    assert_eq!(loops, 5 * 3);
    let hem = garment.pattern.piece(PieceId::Front).unwrap();
    let at = named(&all, "hem crosses the inseam").place.at;
    assert_eq!(Some(at), hem.point(PointId::HemIn));
}

#[test]
fn a_crossing_says_itself_in_words() {
    let all = all(|_| {});
    assert_eq!(
        said(&named(&all, "top of the loop on the left back").words()),
        "six plies of 0.82 mm, 4.9 mm, under the top of the loop on the left back"
    );
    assert_eq!(
        said(&named(&all, "band crosses the end").words()),
        "ten plies (7 of shell, 3 of pocketing), 7.1 mm, where the band crosses the end of the pocket mouth"
    );
}

/// Trimming leaves the two plies of a felled seam that run on: eight at the yoke, as crossings of
/// felled seams are said to have (8 to 10 plies, from memory).
#[test]
fn cutting_away_turned_edges_halves_a_felled_crossing() {
    let all = all(|_| {});
    let (plies, thickness) = named(&all, "seat seam crosses the yoke").trimmed.unwrap();
    assert_eq!(plies.total(), 8);
    assert!((thickness.to_mm() - 8.0 * 0.82).abs() < 1e-9);
    assert_eq!(named(&all, "hem crosses the outseam").trimmed, None);
}

#[test]
fn another_construction_or_cloth_changes_the_crossings_it_is_in() {
    let open = all(|l| {
        l.style.seams[&SeamId::Inseam].construction = Some(Construction::PressedOpen);
    });
    assert_eq!(plies(named(&open, "hem crosses the inseam")), [6, 0, 0]);
    // Pressed open, the inseam is twice its thicker side: the four of the seat seam.
    assert_eq!(plies(named(&open, "at the crotch")), [8, 0, 0]);
    let thick = all(|l| {
        let shell = l.style.cloth.shell.clone();
        l.collection.cloths[&shell].thickness = Length::mm(1.0);
    });
    let hem = named(&thick, "hem crosses the inseam").thickness;
    assert!((hem.to_mm() - 12.0).abs() < 1e-9);
    let unlined = all(|l| l.style.pockets.back.left.lining = Lining::None);
    assert_eq!(plies(named(&unlined, "left back pocket")), [7, 0, 0]);
    assert_eq!(plies(named(&unlined, "right back pocket")), [7, 0, 2]);
}

#[test]
fn a_style_without_loops_has_no_crossings_under_them() {
    let none = all(|l| l.style.loops.count = 0);
    assert!(none.iter().all(|c| c.kind != CrossingKind::Loop));
    // A loop that ends on the band is tacked through the band seam.
    let short = all(|l| l.style.chart[&MeasureId::LoopLength].value = Length::mm(30.0));
    let foot = named(&short, "foot of the loop at the centre back");
    assert_eq!(plies(foot), [12, 0, 0]);
    assert!(
        short
            .iter()
            .all(|c| !said(&c.name).contains("crosses the band seam"))
    );
}

/// Foot lift is clearance; a machine sews less (four fifths of it, from memory). The hem over the felled inseam is
/// 12 × 0.82 = 9.84 mm, not pressed; a hemmer lifts 10 mm and sews 8.
#[test]
fn what_goes_under_the_foot_is_not_yet_sewn() {
    let judged = |shell: f64, code: &str| {
        let garment = sewn(|l| {
            let key = l.style.cloth.shell.clone();
            l.collection.cloths[&key].thickness = Length::mm(shell);
        });
        let mut found = sewing_findings(&garment);
        found.retain(|f| f.code == code);
        let machines = bulk(&garment).into_iter().filter_map(|c| c.machine);
        assert!(machines.into_iter().all(|m| m.sews < m.lift));
        found.into_iter().map(|f| f.severity).max()
    };
    // 12 × 0.66 = 7.92, 12 × 0.68 = 8.16, 12 × 0.84 = 10.08.
    assert_eq!(judged(0.66, "sewing::hem-bulk"), None);
    assert_eq!(judged(0.68, "sewing::hem-bulk"), Some(Severity::Note));
    assert_eq!(judged(0.84, "sewing::hem-bulk"), Some(Severity::Error));
    // The outseam over the end of the mouth: 6 plies of shell and 6 of pocketing of 0.45 on a chainstitch machine.
    assert_eq!(judged(0.82, "sewing::bulk-machine"), None);
    assert_eq!(judged(0.90, "sewing::bulk-machine"), Some(Severity::Note));
    assert_eq!(judged(1.30, "sewing::bulk-machine"), Some(Severity::Error));
}

/// Each pocket by its own lining: 7 × 0.82 + 2 × 0.30 on the left, 2 × 0.50 on the right.
#[test]
fn each_back_pocket_is_as_thick_as_its_own_lining() {
    let all = all(|l| {
        let mut thick = l.collection.cloths["oar-lining"].clone();
        thick.thickness = Length::mm(0.50);
        l.collection.cloths.insert("thole".to_owned(), thick);
        l.style.pockets.back.right.lining_cloth = Some("thole".to_owned());
    });
    for (name, mm) in [("left back pocket", 6.34), ("right back pocket", 6.74)] {
        let thickness = named(&all, name).thickness;
        assert!((thickness.to_mm() - mm).abs() < 1e-9, "{name}: {thickness}");
    }
}
