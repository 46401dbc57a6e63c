//! Half sizes: read, refused, begun with, graded half way, and written back as they were.
#![allow(clippy::unwrap_used)]

mod common;

use common::{Copy, with};
use style::{Answers, MeasureId, NewStyle, Size, Tag};
use trade::Length;

const WAISTS: &str = "waists = [28, 29, 30, 31, 32, 33, 34, 36, 38]";
const BREAK: &str = "above = 34";

fn half(waist: u32, length: u32) -> Size {
    Size::of(Tag::halves(waist), Tag::halves(length))
}

fn with_text(text: &str) -> Copy {
    let copy = Copy::new();
    copy.write(style::demo::STYLE, text);
    copy
}

#[test]
fn a_run_holds_halves_beside_whole_inches() {
    let text = with(WAISTS, "waists = [31, 31.5, 32, 32.50]");
    let loaded = with_text(&text).loaded();
    let tags = [62, 63, 64, 65].map(Tag::halves);
    assert_eq!(loaded.style.sizes.waists, tags);
    assert!(loaded.style.sizes.contains(half(63, 64)));
    let json = serde_json::to_value(&loaded.style.sizes).unwrap();
    assert_eq!(json["waists"], serde_json::json!([31, 31.5, 32, 32.5]));
}

#[test]
fn a_half_size_lies_between_its_neighbours() {
    let text = with(WAISTS, "waists = [31, 31.5, 32]");
    let text = text.replace("lengths = [30, 32, 34]", "lengths = [30, 31, 31.5, 32, 34]");
    let style = with_text(&text).loaded().style;
    let near = |measure: MeasureId, a: Length, b: Length| {
        assert!((a - b).abs() < Length::mm(1e-9), "{measure:?}: {a} {b}");
    };
    for &measure in style.chart.keys() {
        let at = |waist, length| style.value(measure, half(waist, length)).unwrap();
        near(measure, at(63, 64), (at(62, 64) + at(64, 64)) / 2.0);
        near(measure, at(64, 63), (at(64, 62) + at(64, 64)) / 2.0);
    }
    let waist = |tag| style.value(MeasureId::Waist, half(tag, 64)).unwrap();
    assert!(waist(62) < waist(63) && waist(63) < waist(64));
}

#[test]
fn a_break_may_lie_at_a_half_and_the_base_may_be_one() {
    let text = with(BREAK, "above = 31.5").replace("base = \"32x32\"", "base = \"31.5x32\"");
    let text = text.replace(WAISTS, "waists = [31, 31.5, 32]");
    let style = with_text(&text).loaded().style;
    assert_eq!(style.sizes.base, half(63, 64));
    let broken = style.chart.values().find(|entry| !entry.breaks.is_empty());
    assert_eq!(broken.unwrap().breaks[0].above, Tag::halves(63));
}

#[test]
fn what_is_no_tag_is_answered_with_what_is_right() {
    for (run, words) in [
        ("[31, 31.25, 32]", "`sizes.waists[1]` is 31.25"),
        (
            "[31, 31,5, 32]",
            "with a half after a point, such as 32 or 31.5",
        ),
        ("[\"31.5\", 32]", "inches without quotes"),
        ("[\"31,5\", 32]", "such as 32 or 31.5"),
        ("[9.5, 32]", "write inches from 10 to 80"),
        ("[32, 80.5]", "write inches from 10 to 80"),
        ("[nan, 32]", "write inches from 10 to 80"),
        ("[-31.5, 32]", "write inches from 10 to 80"),
        ("[1e300, 32]", "write inches from 10 to 80"),
        ("[31.5, 31.5, 32]", "31.5 stands twice"),
        ("[31.5, 31, 32]", "31 is out of order"),
    ] {
        let copy = with_text(&with(WAISTS, &format!("waists = {run}")));
        let said = copy.render(&copy.load().unwrap_err());
        assert!(said.contains(words), "{run}: {said}");
    }
    let copy = with_text(&with("base = \"32x32\"", "base = \"31,5x32\""));
    let said = copy.render(&copy.load().unwrap_err());
    assert!(
        said.contains("write halves with a point: 31.5x32"),
        "{said}"
    );
}

#[test]
fn a_style_begins_in_half_sizes() {
    let copy = Copy::new();
    let begin = |waists: &[u32]| {
        let answers = Answers {
            waists: waists.iter().copied().map(Tag::halves).collect(),
            ..Answers::default()
        };
        let asked = NewStyle {
            name: "Heron".to_owned(),
            answers,
            ..NewStyle::default()
        };
        style::new_style(&copy.root(), &asked)
    };
    let why = begin(&[63, 87]).unwrap_err().to_string();
    assert!(why.contains("waist 43.5 cannot be begun with"), "{why}");
    let loaded = style::load(&begin(&[60, 63, 64]).unwrap()).unwrap();
    assert!(loaded.text.contains("waists = [30, 31.5, 32]"));
    assert_eq!(loaded.style.sizes.waists, [60, 63, 64].map(Tag::halves));
}
