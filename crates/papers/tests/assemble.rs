//! The pack of the demo style, assembled from its garments and read back.
#![allow(clippy::unwrap_used)]

use std::sync::OnceLock;

use papers::{Assembly, ChartValues, Pack, PdfOptions, Severity, assemble, pack_pdf};
use style::{Loaded, Size};

struct Demo {
    loaded: Loaded,
    pack: Pack,
}

fn demo() -> &'static Demo {
    static DEMO: OnceLock<Demo> = OnceLock::new();
    DEMO.get_or_init(|| {
        let folder = tempfile::tempdir().unwrap();
        let path = style::write_demo(&folder.path().join("demo")).unwrap();
        let loaded = style::load(&path).unwrap();
        let run = sewing::make_run(&loaded.style, &loaded.collection);
        let pack = assemble(
            &loaded,
            &run,
            &Assembly {
                revision: 1,
                ..Assembly::default()
            },
        )
        .unwrap();
        Demo { loaded, pack }
    })
}

fn by_size<'a>(pack: &'a Pack, name: &str) -> &'a [String] {
    let row = pack
        .chart
        .rows
        .iter()
        .find(|row| row.name.starts_with(name))
        .unwrap();
    match &row.values {
        ChartValues::BySize(values) => values,
        ChartValues::ByLength(_) => panic!("{name} follows the length"),
    }
}

/// The file says waist 33 1/2 in at size 32 and 1 in for each size: 85.09 cm, 2.54 cm a step.
#[test]
fn the_chart_is_the_style_s_chart_to_the_millimetre() {
    let pack = &demo().pack;
    assert_eq!(
        pack.chart.sizes,
        ["28", "29", "30", "31", "32", "33", "34", "36", "38"]
    );
    assert_eq!(pack.chart.sample, Some(4));
    let waist = by_size(pack, "Waist");
    assert_eq!(waist[4], "85.1");
    assert_eq!(waist[0], "74.9");
    assert_eq!(waist[8], "100.3");
    // The fly stops growing above 34: 16.5 cm at 32, 1/8 in a step.
    let fly = by_size(pack, "Fly length");
    assert_eq!((fly[6].as_str(), fly[8].as_str()), ("17.1", "17.1"));
    let inseam = pack
        .chart
        .rows
        .iter()
        .find(|row| row.name == "Inseam")
        .unwrap();
    let ChartValues::ByLength(lines) = &inseam.values else {
        panic!("the inseam follows the length")
    };
    let lines: Vec<(&str, &str)> = lines
        .iter()
        .map(|line| (line.length.as_str(), line.values[0].as_str()))
        .collect();
    assert_eq!(lines, [("30", "76.2"), ("32", "81.3"), ("34", "86.4")]);
}

#[test]
fn every_measure_has_the_number_of_its_diagram_and_says_how() {
    let pack = &demo().pack;
    for row in &pack.chart.rows {
        let drawn = pack.diagrams.iter().any(|_| !row.number.is_empty());
        assert!(
            drawn && !row.how.is_empty() && !row.tolerance.is_empty(),
            "{}",
            row.name
        );
        assert!(!row.how.contains("stated"), "{}", row.how);
    }
    let numbers: Vec<usize> = pack
        .chart
        .rows
        .iter()
        .map(|r| r.number.parse().unwrap())
        .collect();
    assert!(numbers.is_sorted(), "{numbers:?}");
}

#[test]
fn every_seam_says_what_it_joins_and_how_its_rows_are_sewn() {
    let Demo { loaded, pack } = demo();
    assert_eq!(pack.seams.len(), loaded.style.seams.len());
    for seam in &pack.seams {
        assert!(
            !seam.joins.is_empty() && !seam.plies.is_empty(),
            "{}",
            seam.name
        );
        assert!(seam.class.starts_with("ISO 4916 "), "{}", seam.name);
        for row in &seam.rows {
            assert!(
                row.needle.colour.is_some() && !row.ends.is_empty(),
                "{} {}",
                seam.name,
                row.row
            );
            assert!(row.offset.contains("the "), "{}", row.offset);
        }
    }
}

#[test]
fn pieces_are_listed_in_the_order_of_their_numbers_with_areas() {
    let pack = &demo().pack;
    assert_eq!(pack.pieces[0].name, "Front");
    assert_eq!(
        (
            pack.pieces[0].count.as_str(),
            pack.pieces[0].pairing.as_str()
        ),
        ("2", "left and right")
    );
    for (at, piece) in pack.pieces.iter().enumerate() {
        assert_eq!(piece.number, (at + 1).to_string());
        assert!(
            piece.thumbnail.is_some() && piece.area.ends_with("cm²"),
            "{}",
            piece.name
        );
    }
}

#[test]
fn metal_is_counted_from_the_garment() {
    let pack = &demo().pack;
    let quantity = |name: &str| {
        let mut rows = pack.materials.iter().flat_map(|group| &group.rows);
        rows.find(|row| row.name == name).unwrap().quantity.clone()
    };
    // One on the band, four on the fly; rivets: two at each mouth, two on the coin pocket, two on each back pocket.
    assert_eq!(quantity("Keel shank button"), "1");
    assert_eq!(quantity("Keel fly button"), "4");
    assert_eq!(quantity("Rowlock rivet"), "10");
    assert_eq!(quantity("Saltmarsh patch"), "1");
}

#[test]
fn a_leather_patch_brings_its_cautions() {
    let pack = &demo().pack;
    let all: String = pack.cautions.iter().map(|c| c.text.as_str()).collect();
    for words in [
        "EN 1811",
        "EN ISO 17075",
        "1007/2011",
        "non-textile parts of animal origin",
        "metal detector",
    ] {
        assert!(all.contains(words), "{words}");
    }
}

#[test]
fn findings_come_gravest_first() {
    let grades: Vec<Severity> = demo().pack.findings.iter().map(|f| f.severity).collect();
    assert!(grades.is_sorted(), "{grades:?}");
}

#[test]
fn the_same_style_gives_the_same_pack_and_bytes() {
    let Demo { loaded, pack } = demo();
    let base = loaded.style.sizes.base;
    let run = vec![sewing::make(&loaded.style, &loaded.collection, base)];
    let options = Assembly {
        size: Some(Size::new(1, 1)),
        revision: 1,
        ..Assembly::default()
    };
    // A run of one size, and a size that is not made: the base size is drawn, the chart is whole.
    let other = assemble(loaded, &run, &options).unwrap();
    assert_eq!(other.chart, pack.chart);
    assert_eq!(other.views, pack.views);
    let options = PdfOptions::default();
    assert!(pack_pdf(pack, &options).unwrap() == pack_pdf(pack, &options).unwrap());
}
