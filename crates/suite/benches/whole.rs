//! How long a maker waits: for a change to be drawn, for all sizes, for the pack.
//!
//! Aimed at, in release on two idle cores: a change to its new drawing 50 ms, a size 5 ms, the pack 2 s.
#![allow(clippy::unwrap_used)]

use divan::{Bencher, black_box};
use drawing::{View, garment_view, svg};
use papers::{Assembly, PdfOptions, assemble, pack_pdf};
use sewing::{Face, make, make_run};
use style::{Edit, Loaded};

fn main() {
    divan::main();
}

fn ferryman() -> Loaded {
    let folder = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../style/demo/saltmarsh/styles/ferryman"
    );
    style::load(folder.as_ref()).unwrap()
}

/// What the bench does at a change: edit the text, read it, draft, sew, draw, write down.
#[divan::bench(args = [Face::Outside, Face::Inside])]
fn a_chart_edit_to_its_new_drawing(bencher: Bencher, face: Face) {
    let loaded = ferryman();
    let edit = Edit::set("chart.knee.value", "17 1/2 in").unwrap();
    let size = loaded.style.sizes.base;
    bencher.bench(|| {
        let changed = loaded.with_edit(black_box(&edit)).unwrap();
        let garment = make(&changed.style, &changed.collection, size);
        svg(&garment_view(
            &garment,
            View::Front,
            face,
            words::Words::english(),
        ))
    });
}

#[divan::bench]
fn all_27_sizes_drafted_and_sewn(bencher: Bencher) {
    let loaded = ferryman();
    bencher.bench(|| make_run(black_box(&loaded.style), &loaded.collection));
}

#[divan::bench(sample_count = 10)]
fn the_pack(bencher: Bencher) {
    let loaded = ferryman();
    let options = PdfOptions { date: None };
    bencher.bench(|| {
        let run = make_run(&loaded.style, &loaded.collection);
        let pack = assemble(black_box(&loaded), &run, &Assembly::default()).unwrap();
        pack_pdf(&pack, &options).unwrap()
    });
}
