//! What changed between two versions, in words.
#![allow(clippy::unwrap_used)]

mod common;

use common::{demo_collection, demo_style};
use style::{Edit, StyleDoc, apply, difference, parse};
use trade::System;
use words::Words;

fn read(text: &str) -> StyleDoc {
    parse(text, "style.toml", &demo_collection()).unwrap()
}

fn after(edits: &[Edit]) -> (StyleDoc, StyleDoc) {
    let text = edits.iter().fold(demo_style().to_owned(), |text, edit| {
        apply(&text, edit).unwrap()
    });
    (read(demo_style()), read(&text))
}

fn sentences(edits: &[Edit]) -> Vec<String> {
    let (old, new) = after(edits);
    difference(&old, &new)
        .iter()
        .map(|change| change.words(Words::english(), System::Metric))
        .collect()
}

fn set(path: &str, value: &str) -> Edit {
    Edit::set(path, value).unwrap()
}

fn remove(path: &str) -> Edit {
    Edit::remove(path).unwrap()
}

fn insert(path: &str, value: &str) -> Edit {
    Edit::Insert {
        path: path.parse().unwrap(),
        value: serde_json::from_str(value).unwrap(),
    }
}

#[test]
fn a_style_differs_from_itself_in_nothing() {
    let style = read(demo_style());
    assert_eq!(difference(&style, &style), []);
    let respaced = read(
        &demo_style()
            .replace(" = ", "=")
            .replacen("# Ferryman", "# F", 1),
    );
    assert_eq!(difference(&style, &respaced), []);
}

#[test]
fn measures_and_seams_read_as_a_person_would_say_them() {
    let edits = [
        set("seams.inseam.construction", "safety-stitched"),
        set("chart.thigh.value", "63 cm"),
        set("chart.thigh.tolerance", "1 cm"),
        set("chart.inseam.grade", "1/16 in"),
        remove("seams.seat.rows[1]"),
        set("seams.mouth.rows[0].yarn", "rope-80"),
    ];
    assert_eq!(
        sentences(&edits),
        [
            "thigh at size 32x32: 62.23 cm → 63.0 cm (+0.77 cm)",
            "thigh tolerance: 0.8 cm → 1.0 cm (+0.2 cm)",
            "inseam grade for an inch of waist: none → 0.16 cm",
            "inseam: construction lap-felled → safety-stitched",
            "inseam lap: front over back → none",
            "row 2 of seat seam removed",
            "yoke seam changes with seat seam",
            "row 1 of pocket mouth: yarn: rope-105 → rope-80",
        ]
    );
}

#[test]
fn every_part_of_a_style_is_compared() {
    let edits = [
        set("style.fit", "tapered"),
        set("sizes.waists", "30 31 32"),
        set("cloth.pocketing", "oar-lining"),
        remove("cloth.lining"),
        set("chart.fly_length.breaks", ""),
        set("chart.seat.at", "9 cm"),
        remove("chart.loop_width"),
        set("shape.seat_angle", "14 deg"),
        set("shape.band_ease", "2 mm"),
        set("fly.buttons", "5"),
        set("pockets.coin.side", "left"),
        set("pockets.bag.depth", "28 cm"),
        set("pockets.back.left.lining", "full"),
        remove("pockets.extra"),
        set("loops.count", "7"),
        set("rivets.back_hidden", "true"),
        remove("patch"),
        remove("labels[1]"),
        insert(
            "labels[2]",
            r#"{"trim": "main-label", "place": "right side seam"}"#,
        ),
        insert(
            "seams.hem.rows[1]",
            r#"{"stitch": "301", "density": "8 /in", "yarn": "rope-80", "offset": "3 mm"}"#,
        ),
        set("seams.yoke.like", "inseam"),
        remove("seams.decoration"),
        set("bartacks.stitches", "30"),
        set("cutting.band", "preshrunk"),
        set("cutting.residual_warp", "1 %"),
        set("cutting.skew", "sheared"),
        set("wash.finish", "washed"),
        set("wash.by", "workroom"),
        remove("wash.set_after"),
        set("wash.steps[0].temperature", "60 °C"),
    ];
    // An empty list has no text form: taking the key out says the same.
    let edits: Vec<Edit> = edits
        .into_iter()
        .map(|edit| match edit.path().to_string().as_str() {
            "chart.fly_length.breaks" => remove("chart.fly_length.breaks"),
            _ => edit,
        })
        .collect();
    assert_eq!(
        sentences(&edits),
        [
            "fit: straight → tapered",
            "waists: 28, 29, 30, 31, 32, 33, 34, 36, 38 → 30, 31, 32",
            "pocketing: bargeman-drill → oar-lining",
            "lining cloth: oar-lining → none",
            "level of seat: 8.0 cm → 9.0 cm (+1.0 cm)",
            "fly length grade breaks: 0.0 cm above 34 → none",
            "belt loop width taken out of the chart",
            "seat angle: 13 deg → 14 deg",
            "band ease: 0.0 cm → 0.2 cm (+0.2 cm)",
            "fly buttons: 4 → 5",
            "coin pocket side: right → left",
            "pocket bag depth: 27.0 cm → 28.0 cm (+1.0 cm)",
            "left back pocket lining: half → full",
            "extra pocket removed",
            "belt loops: 5 → 7",
            "hidden rivets at the back pockets: no → yes",
            "patch removed",
            "label 2: size-label → care-label",
            "place of label 2 (care-label): band inside, left of main label → left side seam inside, below the pocket bag",
            "purpose of label 2 (care-label): size → fibre, care, origin",
            "fold of label 2 (care-label): flat → centre fold",
            "text of label 2 (care-label): none → 100 % cotton. Contains non-textile parts of animal origin. Wash at 30 °C inside out, dry on a line. Made in Portugal.",
            "label 3: care-label → main-label",
            "place of label 3 (main-label): left side seam inside, below the pocket bag → right side seam",
            "purpose of label 3 (main-label): fibre, care, origin → none",
            "fold of label 3 (main-label): centre fold → flat",
            "text of label 3 (main-label): 100 % cotton. Contains non-textile parts of animal origin. Wash at 30 °C inside out, dry on a line. Made in Portugal. → none",
            "yoke seam sewn like: seat seam → inseam",
            "row 2 of yoke seam: yarn: rope-105 → night-80",
            "row 2 of yoke seam: under yarn: rope-60 → night-40",
            "row 2 of hem added: stitch 301, 8 /in, rope-80 with rope-80, 3 mm from the seam line",
            "back pocket stitching removed",
            "bartack stitches: 28 → 30",
            "waistband cut: weft → preshrunk",
            "band cloth still shrinks along the warp: 0 % → 1 %",
            "cut on skewed cloth: straight → sheared",
            "finish: rinsed → washed",
            "washed by: laundry → workroom",
            "set after the wash: patch → none",
            "wash recipe: rinse inside out, 40 °C, 15 min, 1:10, spin, hang by the hem, dry on a line, press lightly → \
             rinse inside out, 60 °C, 15 min, 1:10, spin, hang by the hem, dry on a line, press lightly",
        ]
    );
}

#[test]
fn lengths_can_be_told_in_inches_and_small_ones_exactly() {
    let (old, new) = after(&[set("chart.thigh.value", "25 in")]);
    let [change] = &difference(&old, &new)[..] else {
        panic!()
    };
    assert_eq!(
        change.words(Words::english(), System::Inch),
        "thigh at size 32x32: 24 1/2 in → 25 in (+1/2 in)"
    );
    assert_eq!(change.path, "chart.thigh.value");
    let (old, new) = after(&[set("chart.hem_depth.value", "12.01 mm")]);
    let [change] = &difference(&old, &new)[..] else {
        panic!()
    };
    assert_eq!(
        change.words(Words::english(), System::Metric),
        "hem depth at size 32x32: 1.2 cm → 1.201 cm (+0.01 mm)"
    );
}

#[test]
fn restating_the_chart_at_another_base_size_is_no_change_of_measure() {
    let (old, new) = after(&[
        set("sizes.base", "33x32"),
        set("chart.waist.value", "34 1/2 in"),
    ]);
    let said: Vec<String> = difference(&old, &new)
        .iter()
        .map(|change| change.words(Words::english(), System::Metric))
        .collect();
    assert_eq!(said[0], "base size: 32x32 → 33x32");
    assert!(
        !said.iter().any(|sentence| sentence.starts_with("waist at")),
        "{said:?}"
    );
    assert!(
        said.contains(&"seat at size 33x32: 104.14 cm → 101.6 cm (-2.54 cm)".to_owned()),
        "{said:?}"
    );
}
