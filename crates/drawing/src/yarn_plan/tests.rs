#![allow(clippy::unwrap_used)]

use super::*;
use crate::samples::{ferryman, sewn, texts, words_stand_clear};
use crate::sheet::Shape;
use crate::svg;
use sewing::yarn::plan;
use strip::{drawn_by, fitting};
use style::Size;
use trade::stitch::FaceLook;

/// The plan as a maker sees it, yarns and cloths by the names of the demo's collection.
fn drawn(plan: &YarnPlan) -> Sheet {
    yarn_plan_sheet(
        plan,
        &ferryman().collection,
        PlanFor::Maker,
        Words::english(),
    )
}

fn yarn_marks(layer: &Layer) -> usize {
    let yarn = |m: &&crate::sheet::Mark| {
        m.part.as_deref().is_some_and(|p| p.starts_with("yarn:"))
            && matches!(m.shape, Shape::Line { .. })
    };
    layer.marks.iter().filter(yarn).count()
}

#[test]
fn words_are_clear_of_one_another_in_small_and_large_sizes() {
    for (waist, length) in [(28, 30), (32, 32), (38, 34)] {
        let whole = plan(&sewn(waist, length));
        words_stand_clear(&drawn(&whole));
        for role in [Role::Needle, Role::Under] {
            let groups = whole.groups.iter().filter(|g| g.role == role).cloned();
            let part = YarnPlan {
                groups: groups.collect(),
                ..whole.clone()
            };
            // What an upright A4 page leaves below a title.
            let sheet = drawn(&part);
            assert!(sheet.height < Length::mm(222.0), "{:?}", sheet.height);
        }
    }
}

#[test]
fn no_stitch_is_cut_off_by_its_strip() {
    let plan = plan(&sewn(32, 32));
    let sheet = drawn(&plan);
    let mut drawn = 0;
    for strip in sheet.layers.iter().filter(|l| l.clip.is_some()) {
        let cloth = geometry::bounds(strip.clip.as_ref().unwrap());
        for mark in &strip.marks {
            if let (Some(_), Shape::Line { path, stroke }) = (&mark.part, &mark.shape) {
                let half = stroke.width.to_mm() / 2.0;
                let yarn = geometry::bounds(path);
                assert!(yarn.y0 - half >= cloth.y0 && yarn.y1 + half <= cloth.y1);
                drawn += 1;
            }
        }
    }
    assert!(drawn > 100);
}

/// Stitches on the strip, counted, against the length of the strip over the pitch.
#[test]
fn every_stitch_of_a_strip_is_drawn_at_its_pitch() {
    let plan = plan(&sewn(32, 32));
    let sheet = drawn(&plan);
    let strips: Vec<&Layer> = sheet.layers.iter().filter(|l| l.clip.is_some()).collect();
    assert_eq!(strips.len(), 2 * plan.groups.len());
    let mut counted = 0;
    for (group, pair) in plan.groups.iter().zip(strips.chunks(2)) {
        let Some(density) = group.density else {
            continue;
        };
        let looks = drawn_by(group).unwrap().stitch.looks();
        let look = match group.role {
            Role::Needle => looks.needle_face,
            Role::Under => looks.under_face,
        };
        if !matches!(look, FaceLook::Dashes | FaceLook::Chain) {
            continue;
        }
        for (layer, scale) in pair.iter().zip([1.0, 3.0]) {
            let room = STRIP_WIDE_MM - 3.0;
            let wanted = (room / (density.figure().pitch().to_mm() * scale)).floor() as usize;
            assert_eq!(yarn_marks(layer), wanted, "{}", group.colour_name);
            counted += wanted;
        }
    }
    assert!(counted > 100);
}

#[test]
fn yarn_is_drawn_at_its_thickness() {
    let plan = plan(&sewn(32, 32));
    let sheet = drawn(&plan);
    let first = &plan.groups[0];
    let widths: Vec<Length> = sheet
        .layers
        .iter()
        .filter(|l| l.clip.is_some())
        .take(2)
        .map(|l| {
            let line = l.marks.iter().find_map(|m| match &m.shape {
                Shape::Line { stroke, .. } => Some(stroke.width),
                _ => None,
            });
            line.unwrap()
        })
        .collect();
    assert!((widths[0] - first.diameter).abs() < Length::mm(1e-9));
    assert!((widths[1] - first.diameter * 3.0).abs() < Length::mm(1e-9));
}

#[test]
fn the_words_say_size_colour_density_metres_and_contrast() {
    let sheet = drawn(&plan(&sewn(32, 32)));
    let words: Vec<&str> = texts(&sheet).iter().map(|t| t.words.as_str()).collect();
    let all = words.join(" ");
    for wanted in [
        "tex 105 ochre, 2.76 /cm (7 /in)",
        "Rope 105 in 401",
        "on Tideline loomstate selvedge, face: 48.9, strong contrast",
        "2.5, tonal",
        "seat seam 1+2",
        "(outseam 1)",
        "tex 80 ochre, tacks",
    ] {
        assert!(all.contains(wanted), "{wanted}: {all}");
    }
}

/// Who threads machines reads names and places; how far a yarn is from its cloth is told to who chose it.
#[test]
fn a_workroom_is_told_no_keys_and_no_differences_of_colour() {
    let garment = sewn(32, 32);
    let (collection, workroom) = (&garment.collection, PlanFor::Workroom);
    let sheet = yarn_plan_sheet(&plan(&garment), collection, workroom, Words::english());
    let words: Vec<&str> = texts(&sheet).iter().map(|t| t.words.as_str()).collect();
    let all = words.join(" ");
    assert!(all.contains("Rope 105 in 401"), "{all}");
    for unwanted in ["rope-105", "tideline-14", "CIEDE2000", "contrast"] {
        assert!(!all.contains(unwanted), "{unwanted}: {all}");
    }
    assert!(sheet.height < drawn(&plan(&garment)).height);
}

#[test]
fn the_same_plan_gives_the_same_bytes() {
    let one = svg(&drawn(&plan(&sewn(32, 32))));
    assert_eq!(one, svg(&drawn(&plan(&sewn(32, 32)))));
    assert!(one.len() < 400_000, "{}", one.len());
}

#[test]
fn long_names_and_unknown_yarns_still_fit() {
    let mut loaded = ferryman();
    let long = "a-very-long-name-of-a-cloth-that-nobody-would-use-but-somebody-did".to_owned();
    let cloth = loaded.collection.cloths[0].clone();
    loaded.collection.cloths.insert(long.clone(), cloth);
    loaded.style.cloth.shell = long;
    loaded.collection.yarns.clear();
    let garment = sewing::make(&loaded.style, &loaded.collection, Size::new(32, 32));
    let (collection, maker) = (&garment.collection, PlanFor::Maker);
    let sheet = yarn_plan_sheet(&plan(&garment), collection, maker, Words::english());
    words_stand_clear(&sheet);
    let unknown = |t: &&Text| t.words.starts_with("size not known");
    assert!(texts(&sheet).iter().any(unknown));
}

#[test]
fn an_empty_plan_is_a_page_with_its_notes() {
    let empty = YarnPlan {
        size: Size::new(32, 32),
        groups: Vec::new(),
    };
    let sheet = drawn(&empty);
    words_stand_clear(&sheet);
    assert!(sheet.layers.iter().all(|l| l.clip.is_none()));
}

#[test]
fn stitches_that_run_together_are_not_counted() {
    assert_eq!(fitting(51.0, Length::mm(3.0), 1.0), 17);
    for pitch in [0.0, -3.0, 1e-9, f64::NAN, f64::INFINITY] {
        assert_eq!(fitting(51.0, Length::mm(pitch), 1.0), 0, "{pitch}");
    }
}

#[test]
fn words_are_wrapped_and_cut() {
    let size = Length::mm(2.0);
    for line in wrapped("one two three four five six seven eight", size, 12.0) {
        assert!(text_width(&line, size).to_mm() <= 12.0);
    }
    assert_eq!(wrapped("", size, 12.0), Vec::<String>::new());
    let cut = wrapped(&"x".repeat(500), size, 12.0);
    assert_eq!(cut.len(), 1);
    assert!(cut[0].ends_with('…') && text_width(&cut[0], size).to_mm() <= 12.0);
}
