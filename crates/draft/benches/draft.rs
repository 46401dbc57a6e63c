//! How long drafting takes: one size, the whole run of the demo style, and a chart that cannot be drafted.
#![allow(clippy::unwrap_used)]

use divan::{Bencher, black_box};
use draft::{Spec, draft, findings, remedies};
use style::{MeasureId, Size, StyleDoc};
use trade::Length;

fn main() {
    divan::main();
}

fn ferryman() -> StyleDoc {
    let folder = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../style/demo/saltmarsh/styles/ferryman"
    );
    style::load(folder.as_ref()).unwrap().style
}

#[divan::bench]
fn one_size(bencher: Bencher) {
    let spec = Spec::of(&ferryman(), Size::new(32, 32));
    bencher.bench(|| draft(black_box(&spec)));
}

#[divan::bench]
fn all_27_sizes(bencher: Bencher) {
    let doc = ferryman();
    bencher.bench(|| {
        doc.sizes
            .all()
            .map(|size| draft(&Spec::of(&doc, size)))
            .collect::<Vec<_>>()
    });
}

#[divan::bench]
fn findings_of_one_size(bencher: Bencher) {
    let (doc, size) = (ferryman(), Size::new(32, 32));
    let drafted = draft(&Spec::of(&doc, size));
    bencher.bench(|| findings(black_box(&drafted), size, &doc));
}

#[divan::bench]
fn one_conflict(bencher: Bencher) {
    let mut doc = ferryman();
    doc.chart[&MeasureId::Thigh].value = Length::cm(48.0);
    bencher.bench(|| remedies(black_box(&doc)));
}
