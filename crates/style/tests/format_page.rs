//! The page that describes the format says what the program does.
#![allow(clippy::unwrap_used)]

mod common;

use std::fmt::Write;

use common::{Copy, demo_collection, demo_text, with};
use style::known::seams;
use style::{
    Amount, Band, BandCutting, BandMethod, CoinPocket, Construction, Cutting, Hem, LeftOut,
    MeasureId, OWN_PIECES, OutseamLine, SeamId, parse, ranges,
};

const PAGE: &str = include_str!("../FORMAT.md");

#[test]
fn the_measures_are_listed_with_their_defaults() {
    let mut rows = String::new();
    for measure in MeasureId::ALL {
        let known = measure.known();
        let left_out = match known.left_out {
            LeftOut::Refused => "it has to be there".to_owned(),
            LeftOut::Drafted => "follows from the other measures".to_owned(),
            LeftOut::Usual(value) => format!("{} mm", value.to_mm()),
        };
        let (code, tolerance) = (measure.code(), known.tolerance.to_mm());
        writeln!(rows, "| `{code}` | {left_out} | {tolerance} mm |").unwrap();
    }
    assert!(PAGE.contains(&rows), "the page should say:\n{rows}");
}

/// The reader itself names the keys it knows, when it meets one that it does not.
#[test]
fn every_key_of_a_collections_files_is_on_the_page() {
    let page = PAGE.split("## The collection").nth(1).unwrap();
    for (file, header) in [
        ("collection.toml", "[collection]"),
        ("collection.toml", "[workrooms.azenha]"),
        ("cloths.toml", "[cloths.tideline-14]"),
        ("yarns.toml", "[yarns.rope-105]"),
        ("trims.toml", "[trims.patch]"),
    ] {
        let copy = Copy::new();
        let unknown = format!("{header}\nqqqqqqqqqqqqqqqq = 1");
        copy.write(file, demo_text(file).replacen(header, &unknown, 1));
        let report = copy.load().unwrap_err();
        let hint = report.problems[0].hint.clone().unwrap();
        let known = hint.strip_prefix("known here: ").unwrap();
        for key in known.split(", ") {
            assert!(page.contains(key), "{header} {key} is not on the page");
        }
    }
}

#[test]
fn what_is_usual_and_what_can_be_is_listed() {
    let mut rows = String::new();
    for row in ranges() {
        let paths: Vec<String> = row.paths.iter().map(|path| format!("`{path}`")).collect();
        let between = |[from, to]: [Amount; 2]| format!("{from} to {to}");
        writeln!(
            rows,
            "| {} | {} | {} | {} |",
            paths.join(", "),
            between(row.usual),
            between(row.possible),
            row.reason
        )
        .unwrap();
    }
    assert!(PAGE.contains(&rows), "the page should say:\n{rows}");
}

#[test]
fn the_seams_are_listed_with_what_they_can_be() {
    let mut rows = String::new();
    for seam in seams() {
        let words: Vec<&str> = seam.constructions.iter().map(|one| one.word()).collect();
        let lap = seam
            .usual_lap
            .map(|lap| format!("{lap} "))
            .unwrap_or_default();
        writeln!(
            rows,
            "| `{}` | {} | {lap}|",
            seam.id.code(),
            words.join(", ")
        )
        .unwrap();
    }
    assert!(PAGE.contains(&rows), "the page should say:\n{rows}");
    for (word, construction) in Construction::WORDS {
        let somewhere = seams().any(|seam| seam.constructions.contains(construction));
        assert!(somewhere, "no seam can be {word}");
    }
}

#[test]
fn the_pieces_that_can_be_brought_are_listed_with_their_edges() {
    let mut rows = String::new();
    for piece in OWN_PIECES {
        let optional: Vec<&str> = piece
            .edges()
            .iter()
            .filter(|edge| piece.left_out(**edge).is_some())
            .map(|edge| edge.code())
            .collect();
        let optional = optional.join(", ");
        let gap = if optional.is_empty() { "" } else { " " };
        writeln!(
            rows,
            "| `{}` | {} | {optional}{gap}|",
            piece.id.code(),
            piece.edge_list()
        )
        .unwrap();
    }
    assert!(PAGE.contains(&rows), "the page should say:\n{rows}");
}

#[test]
fn what_may_be_left_out_has_the_stated_default() {
    let lines = |from: &str, to: &str| {
        let text = common::demo_style();
        let start = text.find(from).unwrap();
        let end = start + text[start..].find(to).unwrap();
        text[start..end].to_owned()
    };
    let section = |from: &str, to: &str| with(&lines(from, to), "");
    let collection = demo_collection();
    let read = |text: &str| parse(text, "style.toml", &collection).unwrap();
    let demo = read(common::demo_style());
    // The demo states the usual shape but for its outseam, and the usual coin pocket, bag, loops and
    // tacks, so leaving them out changes nothing else.
    let mut shaped = demo.clone();
    shaped.shape.outseam = OutseamLine::Shaped;
    assert_eq!(read(&section("[shape]", "[fly]")), shaped);
    let mut plain = demo.clone();
    plain.pockets.coin = CoinPocket::default();
    assert_eq!(read(&section("[pockets.coin]", "[pockets.bag]")), plain);
    let usual = |text: &str| {
        let doc = read(text);
        (doc.band, doc.hem)
    };
    let (band, hem) = (Band::default(), Hem::default());
    assert_eq!(usual(&section("[band]", "[pockets.coin]")).0, band);
    assert_eq!(usual(&section("[hem]", "[loops]")).1, hem);
    assert_eq!((band.method, hem.roping), (BandMethod::TwoRow, false));
    assert_eq!(read(&section("[pockets.bag]", "[pockets.back.left]")), demo);
    assert_eq!(read(&section("[loops]", "[rivets]")), demo);
    assert_eq!(
        read(&with(
            "length = \"10 mm\"\nwidth = \"2 mm\"\nstitches = 28",
            ""
        )),
        demo
    );
    let start = common::demo_style().find("[cutting]").unwrap();
    let uncut = read(&common::demo_style()[..start]);
    assert_eq!(uncut.cutting, Cutting::default());
    assert_eq!(
        (uncut.cutting.band, demo.cutting.band),
        (None, Some(BandCutting::Weft))
    );
    assert_eq!(demo.cutting.skew, Cutting::default().skew);
    assert_eq!(read(&with("at = \"8 cm\"", "")), demo);
    assert_eq!(read(&section("[rivets]", "[patch]")).rivets, None);
    assert_eq!(read(&section("[patch]", "[[labels]]")).patch, None);
    assert_eq!(read(&section("[[labels]]", "# Seams.")).labels, []);
    let row = "under = \"night-40\", offset = \"0 mm\" }]";
    let bare = read(&with(&format!(", {row}"), " }]"))
        .seam(SeamId::Outseam)
        .unwrap()
        .rows;
    assert_eq!(
        (bare[0].under.as_str(), bare[0].offset),
        ("night-80", trade::Length::ZERO)
    );
}
