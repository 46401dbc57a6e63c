//! A brought pattern may be of any shape: it is drafted, sewn and cut, or refused in words, and nothing panics.
#![allow(clippy::unwrap_used)]

use std::sync::{Arc, OnceLock};

use cutting::{BandCut, Plan, cut};
use intake::{Asked, look, table};
use patterns::{PatternFile, from_cut};
use proptest::prelude::*;
use style::{Beside, Drawn, Loaded, Size, piece_file_text, save_beside, with_pattern};
use trade::Length;

const SIZE: Size = Size::new(32, 32);

/// The demo with its own pieces brought back.
fn brought() -> &'static Loaded {
    static BROUGHT: OnceLock<Loaded> = OnceLock::new();
    BROUGHT.get_or_init(|| {
        let folder = tempfile::tempdir().unwrap();
        let path = style::write_demo(&folder.path().join("saltmarsh")).unwrap();
        let loaded = style::load(&path).unwrap();
        let garment = sewing::make(&loaded.style, &loaded.collection, SIZE);
        let plan = Plan {
            band: BandCut::AlongWeft,
            ..Plan::default()
        };
        let file = PatternFile {
            pieces: from_cut(&cut(&garment, &plan), words::Words::english()),
            ..PatternFile::default()
        };
        let seen = look(&file, "ferryman.dxf", &Asked::default()).unwrap();
        let text = piece_file_text(&seen.file).into_bytes();
        let pieces = Beside::new(&loaded, "pattern", "ferryman", "toml", text);
        let pattern = table(&seen, &pieces.name, Drawn::BeforeWash, None);
        let text = with_pattern(&loaded.text, &pattern, Some(&seen.sizes));
        save_beside(&loaded, &text, &[pieces]).unwrap().loaded
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, ..ProptestConfig::default() })]

    /// Whole edges moved, squeezed, emptied or turned round.
    #[test]
    fn any_shape_is_answered(
        piece in 0..8usize, edge in 0..7usize, dx in -400.0..400.0_f64, dy in -400.0..400.0_f64,
        squeeze in prop_oneof![Just(0.0), Just(1.0), -2.0..2.0_f64], sewn in any::<bool>(), notch in any::<bool>(),
    ) {
        let loaded = brought();
        let mut doc = loaded.style.clone();
        let pattern = doc.pattern.as_mut().unwrap();
        pattern.allowance = Some(Length::mm(10.0));
        let count = pattern.pieces.len();
        let (_, own) = pattern.pieces.get_index_mut(piece % count).unwrap();
        let outline = Arc::make_mut(&mut own.outlines).get_mut(&SIZE).unwrap();
        outline.sewn = sewn;
        let edges = outline.edges.len();
        let points = &mut outline.edges[edge % edges].1;
        for [x, y] in points.iter_mut() {
            *x = *x * squeeze + Length::mm(dx);
            *y = *y * squeeze + Length::mm(dy);
        }
        if notch {
            outline.notches.push([Length::mm(dx), Length::mm(dy)]);
        }
        let garment = sewing::make(&doc, &loaded.collection, SIZE);
        prop_assert!(!garment.pattern.pieces.is_empty());
        let plan = Plan { band: BandCut::AlongWeft, ..Plan::default() };
        prop_assert!(cut(&garment, &plan).size == SIZE);
    }
}
