//! The demo collection loads, and says what a maker reading it would expect.
#![allow(clippy::unwrap_used)]

use std::path::Path;

use style::{Construction, Lap, MeasureId, Ply, SeamId, Size, load};
use trade::Length;

fn demo() -> style::Loaded {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("demo/saltmarsh")
        .join(style::demo::STYLE);
    match load(&path) {
        Ok(loaded) => loaded,
        Err(report) => panic!("{report}"),
    }
}

#[test]
fn the_demo_loads_whole() {
    let loaded = demo();
    assert_eq!(loaded.style.sizes.all().count(), 27);
    for measure in MeasureId::ALL {
        let charted = loaded.style.chart.contains_key(&measure);
        assert!(charted, "the demo's chart has no {measure:?}");
    }
    assert_eq!(loaded.style.seams.len(), style::SeamId::ALL.len());
    assert_eq!(loaded.collection.yarns.len(), 6);
    let (line, column) = loaded.place("chart.thigh.value").unwrap();
    let text = loaded.text.lines().nth(line - 1).unwrap();
    assert_eq!((text, column), ("value = \"24 1/2 in\"", 9));
}

/// Both are seen in the demo: what a label states of its suppliers, and what it leaves open.
#[test]
fn some_of_who_sells_what_is_stated_and_some_is_open() {
    let collection = demo().collection;
    assert!(collection.contact.contains("@saltmarsh.example"));
    assert_eq!(collection.workrooms["azenha"].contact, "");
    let shell = &collection.cloths["tideline-14"];
    assert_eq!(shell.supply.article, "TL-475-LS");
    assert_eq!(shell.colour_name, "deep indigo");
    assert_eq!(shell.dye, "rope-dyed indigo warp, undyed weft");
    assert_eq!(
        collection.cloths["oar-lining"].supply,
        style::Supply::default()
    );
    assert_eq!(collection.yarns["rope-105"].shade, "4417");
    assert_eq!(collection.yarns["rope-60"].shade, "");
    let rivet = &collection.trims["rivet-9"].supply;
    assert_eq!(
        (rivet.supplier.as_str(), rivet.article.as_str()),
        ("Thwart Metalworks", "")
    );
}

#[test]
fn a_measure_follows_its_grades() {
    let style = demo().style;
    let value = |measure, waist, length| style.value(measure, Size::new(waist, length)).unwrap();
    let near = |a: Length, b: Length| assert!((a - b).abs() < Length::mm(1e-9), "{a} {b}");
    near(value(MeasureId::Thigh, 32, 32), Length::inches(24.5));
    near(value(MeasureId::Thigh, 28, 30), Length::inches(22.5));
    near(value(MeasureId::Thigh, 38, 34), Length::inches(27.5));
    near(value(MeasureId::Inseam, 38, 30), Length::inches(30.0));
    near(
        value(MeasureId::Outseam, 33, 34),
        value(MeasureId::Outseam, 32, 32) + Length::inches(2.125),
    );
    // The fly grows by an eighth up to 34 and not beyond.
    near(
        value(MeasureId::FlyLength, 38, 32),
        value(MeasureId::FlyLength, 34, 32),
    );
    near(
        value(MeasureId::FlyLength, 34, 32),
        Length::cm(16.5) + Length::inches(0.25),
    );
    near(
        value(MeasureId::FlyLength, 28, 32),
        Length::cm(16.5) - Length::inches(0.5),
    );
}

#[test]
fn like_is_followed() {
    let style = demo().style;
    let yoke = style.seam(SeamId::Yoke).unwrap();
    let seat = style.seam(SeamId::Seat).unwrap();
    assert_eq!(yoke.construction, Construction::LapFelled);
    assert_eq!(yoke.rows, seat.rows);
    assert_eq!(
        yoke.lap,
        Some(Lap {
            over: Ply::Yoke,
            under: Ply::Back
        })
    );
    assert_eq!(
        seat.lap,
        Some(Lap {
            over: Ply::Left,
            under: Ply::Right
        })
    );
    assert_eq!(style.seam(SeamId::Outseam).unwrap().lap, None);
    assert_eq!(style.all_seams().count(), style.seams.len());
}
