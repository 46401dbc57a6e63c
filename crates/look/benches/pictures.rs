//! How long a picture takes on two threads: the scene, the whole pair, a first sight of it, and close-ups.

use std::path::Path;

use divan::{Bencher, black_box};
use flat::View;
use geometry::Point;
use look::{Light, PlaceId, Scene, Wear, Window, picture, whereabouts};
use sewing::{Face, Garment};
use trade::Length;

fn main() {
    divan::main();
}

fn ferryman() -> Garment {
    let style =
        Path::new(env!("CARGO_MANIFEST_DIR")).join("../style/demo/saltmarsh/styles/ferryman");
    match style::load(&style) {
        Ok(loaded) => sewing::make(&loaded.style, &loaded.collection, loaded.style.sizes.base),
        Err(report) => panic!("{report}"),
    }
}

fn window(middle: Point, width: f64, wide: u32, high: u32) -> Window {
    Window {
        middle,
        width: Length::mm(width),
        wide,
        high,
    }
}

fn drawn(bencher: Bencher, width: f64, (wide, high): (u32, u32), place: PlaceId, wear: Wear) {
    let garment = ferryman();
    let (view, face) = (View::Back, Face::Outside);
    let at = whereabouts(&garment, view, face, place);
    let (Some(scene), Some(at)) = (Scene::of(&garment, view, face), at) else {
        panic!("the demo has no back")
    };
    let window = window(at, width, wide, high);
    bencher.bench_local(|| picture(black_box(&scene), &window, &Light::default(), wear, 2));
}

#[divan::bench(sample_count = 10)]
fn scene_of_a_side(bencher: Bencher) {
    let garment = ferryman();
    bencher.bench_local(|| Scene::of(black_box(&garment), View::Back, Face::Outside));
}

#[divan::bench(sample_count = 10)]
fn whole_pair_1200_by_1500(bencher: Bencher) {
    drawn(bencher, 900.0, (1200, 1500), PlaceId::Whole, Wear::WORN);
}

#[divan::bench(sample_count = 10)]
fn first_sight_300_by_375(bencher: Bencher) {
    drawn(bencher, 900.0, (300, 375), PlaceId::Whole, Wear::WORN);
}

#[divan::bench(sample_count = 10)]
fn close_up_60_mm_800_by_800(bencher: Bencher) {
    drawn(
        bencher,
        60.0,
        (800, 800),
        PlaceId::BackPocketCorner,
        Wear::RAW,
    );
}

#[divan::bench(sample_count = 10)]
fn close_up_12_mm_800_by_800(bencher: Bencher) {
    drawn(
        bencher,
        12.0,
        (800, 800),
        PlaceId::BackPocketCorner,
        Wear::WORN,
    );
}
