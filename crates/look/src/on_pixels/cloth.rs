use std::f32::consts::TAU;

use draft::ClothUse;
use trade::Length;
use trade::colour_difference::ciede2000;

use super::{ferryman, seen, window};
use crate::laying::cloth_look;
use crate::picture::Picture;
use crate::scene::Scene;
use crate::wear::Wear;

fn plain(reverse: bool, warp: [f32; 2]) -> Scene {
    Scene::plain(cloth_look(&ferryman(), ClothUse::Shell), reverse, warp)
}

/// CIEDE2000 of the mean of a picture of flat raw cloth to the colour its file states: on both faces, with its warp in
/// three directions, from 25 pixels a millimetre to one.
#[test]
fn flat_raw_cloth_has_the_colour_its_file_states() {
    for reverse in [false, true] {
        for (angle, warp) in [(0, [0.0, 1.0]), (29, [0.485, 0.875]), (69, [0.934, 0.358])] {
            let scene = plain(reverse, warp);
            for (step, pixels) in [
                (0.025, 400),
                (0.04, 260),
                (0.075, 200),
                (0.16, 100),
                (0.4, 80),
                (0.9, 80),
            ] {
                let picture = seen(&scene, &window(5.0, 3.0, step, pixels, pixels), Wear::RAW);
                let garment = ferryman();
                let cloth = &garment.collection.cloths[&garment.doc.cloth.shell];
                let stated = if reverse {
                    cloth.reverse_colour
                } else {
                    cloth.colour
                };
                let off = ciede2000(picture.mean(), stated).to_delta_e();
                assert!(
                    off <= 1.0,
                    "reverse {reverse}, warp at {angle}, {step} mm: {off:.2}, {}",
                    picture.mean()
                );
            }
        }
    }
}

/// How strong a wave of so many turns a millimetre is in a picture.
fn wave(picture: &Picture, step: f32, turns: [f32; 2]) -> f32 {
    let (mut cosine, mut sine, mut mean) = (0.0, 0.0, 0.0);
    let count = (picture.wide * picture.high) as f32;
    for y in 0..picture.high {
        for x in 0..picture.wide {
            mean += picture.grey(x, y) / count;
        }
    }
    for y in 0..picture.high {
        for x in 0..picture.wide {
            let at = TAU * (x as f32 * step * turns[0] - y as f32 * step * turns[1]);
            let grey = picture.grey(x, y) - mean;
            cosine += grey * at.cos();
            sine += grey * at.sin();
        }
    }
    (cosine * cosine + sine * sine).sqrt() / count
}

/// The lag, near an expected one, at which rows (or columns) of a picture are most like themselves.
fn lag(picture: &Picture, step: f32, near: f32, down: bool) -> f32 {
    let (lines, long) = if down {
        (picture.wide, picture.high)
    } else {
        (picture.high, picture.wide)
    };
    let at = |line: u32, k: u32| {
        if down {
            picture.grey(line, k)
        } else {
            picture.grey(k, line)
        }
    };
    let (from, to) = ((near * 0.8 / step) as u32, (near * 1.2 / step) as u32);
    let mut likeness = vec![0.0_f64; (to + 2) as usize];
    for line in (0..lines).step_by(3) {
        let mean: f32 = (0..long).map(|k| at(line, k)).sum::<f32>() / long as f32;
        for (lag, sum) in likeness.iter_mut().enumerate().skip(from as usize - 1) {
            let pairs = 0..long - lag as u32;
            let count = f64::from(pairs.end);
            let product = |k: u32| (at(line, k) - mean) * (at(line, k + lag as u32) - mean);
            *sum += f64::from(pairs.map(product).sum::<f32>()) / count;
        }
    }
    let best = (from as usize..=to as usize).max_by(|a, b| likeness[*a].total_cmp(&likeness[*b]));
    let best = best.unwrap_or(0);
    // Between samples: the top of a parabola through three.
    let (a, b, c) = (likeness[best - 1], likeness[best], likeness[best + 1]);
    (best as f32 + ((a - c) / (2.0 * (a - 2.0 * b + c))) as f32) * step
}

/// Ends and picks as the published formula gives them for 14 oz/yd² (worked apart: 65.8 and 43.6 an inch, repeat 1.545 by
/// 2.329 mm), found again in the picture by autocorrelation.
#[test]
fn the_repeat_in_the_picture_is_that_of_ends_and_picks() {
    const STEP: f32 = 0.03;
    let scene = plain(false, [0.0, 1.0]);
    let picture = seen(
        &scene,
        &window(0.0, 0.0, f64::from(STEP), 900, 900),
        Wear::RAW,
    );
    for (down, repeat) in [(false, 1.545), (true, 2.329)] {
        let found = lag(&picture, STEP, repeat, down);
        assert!(
            (found / repeat - 1.0).abs() < 0.012,
            "down {down}: {found:.3} mm for {repeat}"
        );
    }
}

/// A right-hand twill climbs to the right on its face and to the left on its reverse; its angle is that of ends to picks.
#[test]
fn a_right_hand_twill_climbs_to_the_right_at_the_angle_of_its_spacings() {
    const STEP: f32 = 0.04;
    let cloth = plain(false, [0.0, 1.0])
        .shell()
        .map(|c| [c.end_spacing, c.pick_spacing].map(Length::to_mm));
    let [end, pick] = cloth.unwrap_or_default().map(|mm| mm as f32 * 4.0);
    for reverse in [false, true] {
        let picture = seen(
            &plain(reverse, [0.0, 1.0]),
            &window(0.0, 0.0, f64::from(STEP), 500, 500),
            Wear::RAW,
        );
        let right = wave(&picture, STEP, [1.0 / end, -1.0 / pick]);
        let left = wave(&picture, STEP, [1.0 / end, 1.0 / pick]);
        let (strong, weak) = if reverse {
            (left, right)
        } else {
            (right, left)
        };
        assert!(strong > 5.0 * weak, "reverse {reverse}: {right} {left}");
        // The same wave five degrees aside is much weaker.
        let (c, s) = (0.9962, if reverse { 0.0872 } else { -0.0872 });
        let turns = [1.0 / end, if reverse { 1.0 / pick } else { -1.0 / pick }];
        let aside = [turns[0] * c - turns[1] * s, turns[0] * s + turns[1] * c];
        assert!(
            wave(&picture, STEP, aside) < 0.5 * strong,
            "reverse {reverse}"
        );
    }
}
