use flat::View;
use sewing::Face;

use super::{ferryman, seen, window};
use crate::asked::Asked;
use crate::field::Frame;
use crate::light::{Light, Sun};
use crate::picture::{Window, picture};
use crate::relief::Relief;
use crate::scene::{Border, Ridge, Scene, step_of};
use crate::wear::Wear;
use crate::whereabouts::{PlaceId, whereabouts};
use trade::Share;

fn back() -> Scene {
    Scene::of(&ferryman(), View::Back, Face::Outside)
        .unwrap_or_else(|| panic!("the demo has no back"))
}

/// Whatever the number of threads, and once more: near, between and from afar.
#[test]
fn the_same_bytes_come_twice_and_on_any_number_of_threads() {
    let scene = back();
    let views: [Window; 3] = [
        window(-190.0, 165.0, 0.06, 150, 90),
        window(-150.0, 120.0, 0.18, 90, 70),
        window(0.0, 0.0, 2.2, 200, 300),
    ];
    for window in views {
        let at = |threads| picture(&scene, &window, &Light::default(), Wear::WORN, threads);
        let first = at(1);
        for threads in [1, 2, 4] {
            assert!(at(threads) == first, "{threads} threads, {window:?}");
        }
    }
}

/// A picture moved by whole pixels shows the same cloth: every yarn and stitch hangs on the pair, not on the window.
#[test]
fn moving_the_window_moves_the_picture() {
    let scene = back();
    for (step, most) in [(0.06, 3.0), (0.6, 3.0)] {
        let (a, b) = (
            window(-190.0, 150.0, step, 120, 100),
            window(-190.0 + 20.0 * step, 150.0, step, 120, 100),
        );
        let (a, b) = (seen(&scene, &a, Wear::RAW), seen(&scene, &b, Wear::RAW));
        let mut off = 0.0;
        for y in 0..100 {
            for x in 0..100 {
                off += (a.grey(x + 20, y) - b.grey(x, y)).abs() / 10_000.0;
            }
        }
        assert!(off < most / 10.0, "{step}: {off} levels on average");
    }
}

/// The felled yoke seam along a line across it: four plies against one are three steps, each the ply's thickness times the
/// stated share that stands up (0.82 mm × 0.85 × 0.65).
#[test]
fn a_felled_seam_stands_as_high_as_its_plies() {
    let scene = back();
    // It runs across the back; the seat seam runs down, a hem lies low.
    let across = |r: &Ridge| (r.line[0][0] - r.line[r.line.len() - 1][0]).abs() > 80.0;
    let high = |r: &Ridge| r.line[0][1] > 100.0 && (8.0..14.0).contains(&r.width);
    let ridges = scene.ridges.iter();
    let felled = ridges.filter(|r| r.near == Border::Fold && across(r) && high(r));
    let ridge = felled.max_by(|a, b| a.height.total_cmp(&b.height));
    let ridge = ridge.unwrap_or_else(|| panic!("no felled seam"));
    let (step, mut highest, mut lines) = (0.1, 0.0_f32, 0.0_f32);
    for k in 3..12_usize {
        let at = ridge.line[ridge.line.len() * k / 16];
        let frame = Frame {
            left: at[0] - 15.0,
            top: at[1] + 15.0,
            step,
            wide: 300,
            high: 300,
        };
        let asked = Asked {
            scene: &scene,
            sun: Sun::of(&Light::default()),
            causes: Wear::RAW.causes(),
            threads: 2,
        };
        let relief = Relief::of(&asked, frame);
        let next = ridge.line[ridge.line.len() * k / 16 + 1];
        let way = [next[0] - at[0], next[1] - at[1]];
        let long = (way[0] * way[0] + way[1] * way[1]).sqrt();
        let into = [-way[1] / long * ridge.side, way[0] / long * ridge.side];
        let height = |s: f32| relief.height_at([at[0] + into[0] * s, at[1] + into[1] * s]);
        // Between the two rows, which draw the cloth in, against the panel on either side.
        let on = (height(4.4) + height(4.9) + height(5.4)) / 3.0;
        let beside = (height(-5.0) + height(14.0)) / 2.0;
        highest += on - beside;
        lines += 1.0;
    }
    let (found, stated) = (highest / lines, 3.0 * step_of(0.82));
    assert!(
        (found / stated - 1.0).abs() <= 0.10,
        "{found:.3} mm for {stated:.3}"
    );
}

/// Cloth never gets darker the more it is worn, nor yarn; leather that bark tanned never lighter.
#[test]
fn wear_goes_one_way_for_every_stuff() {
    let garment = ferryman();
    let scene = back();
    let at = |place| whereabouts(&garment, View::Back, Face::Outside, place).unwrap_or_default();
    let (pocket, patch) = (at(PlaceId::BackPocketRight), at(PlaceId::Patch));
    for step in [0.07, 0.5] {
        let mut before: Option<[f32; 3]> = None;
        for share in [0.2, 0.4, 0.6, 0.8, 1.0] {
            let wear = Wear::of(Share::ratio(share));
            let cloth = seen(
                &scene,
                &window(pocket.x, pocket.y - 30.0, step, 120, 120),
                wear,
            );
            let leather = seen(&scene, &window(patch.x, patch.y, step, 60, 40), wear);
            let (mut indigo, mut yarn, mut counts) = (0.0, 0.0, [0.0, 0.0]);
            for y in 0..120 {
                for x in 0..120 {
                    let [r, _, b] = cloth.pixel(x, y);
                    let of_yarn = r > b;
                    let sum = if of_yarn { &mut yarn } else { &mut indigo };
                    *sum += cloth.grey(x, y);
                    counts[usize::from(of_yarn)] += 1.0;
                }
            }
            let hide = (0..60).map(|x| leather.grey(x, 20)).sum::<f32>() / 60.0;
            let now = [indigo / counts[0], yarn / f32::max(counts[1], 1.0), hide];
            if let Some(before) = before {
                assert!(now[0] > before[0], "cloth at {share}: {now:?} {before:?}");
                assert!(
                    now[1] >= before[1] - 3.0,
                    "yarn at {share}: {now:?} {before:?}"
                );
                assert!(
                    now[2] <= before[2],
                    "leather at {share}: {now:?} {before:?}"
                );
            }
            before = Some(now);
        }
    }
}

/// No dye is lost that wear does not take: each cause only grows along the slider.
#[test]
fn every_cause_grows_along_the_slider() {
    let causes: Vec<_> = (0..=20)
        .map(|k| Wear::of(Share::percent(f64::from(k) * 5.0)).causes())
        .collect();
    for pair in causes.windows(2) {
        let (a, b) = (&pair[0], &pair[1]);
        assert!(b.loss >= a.loss && b.dose >= a.dose && b.feed >= a.feed && b.age >= a.age);
        assert!(b.stain <= a.stain && b.rinsed >= a.rinsed && b.hairs >= a.hairs);
    }
    assert!(causes[0].loss == 0.0 && causes[0].dose == 0.0);
}

/// All four sides are drawn, also of pairs as no chart should ask for, and whatever is asked of the window.
#[test]
fn no_window_breaks_a_picture() {
    let garment = ferryman();
    for view in [View::Front, View::Back] {
        for face in [Face::Outside, Face::Inside] {
            let Some(scene) = Scene::of(&garment, view, face) else {
                panic!("{view:?}")
            };
            for (x, y, step) in [
                (0.0, 0.0, 5.0),
                (f64::NAN, 9e9, 0.05),
                (9e9, 0.0, f64::NAN),
                (0.0, 100.0, 0.2),
            ] {
                let picture = seen(&scene, &window(x, y, step, 24, 18), Wear::WORN);
                assert_eq!(picture.rgb.len(), 24 * 18 * 3);
            }
        }
    }
}
