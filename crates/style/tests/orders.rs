//! Orders: the demo's loads with its styles, and every mistake is told with its place.
#![allow(clippy::unwrap_used)]

mod common;

use common::{Copy, demo_text};
use style::{OrderWay, Size, Tag, load_order};
use trade::{Length, Share};

fn order() -> &'static str {
    demo_text(style::demo::ORDER)
}

#[test]
fn the_demo_order_loads_with_its_style() {
    let copy = Copy::new();
    let loaded = load_order(&copy.root().join(style::demo::ORDER)).unwrap();
    assert_eq!(loaded.order.pairs(), 62);
    assert_eq!(loaded.styles.keys().collect::<Vec<_>>(), ["ferryman"]);
    let line = &loaded.order.lines[0];
    assert_eq!(line.pairs[0], (Size::new(30, 32), 6));
    let shell = loaded.order.limits_of("tideline-14");
    assert_eq!(shell.plies(Length::mm(0.82)), 48);
    assert_eq!(shell.plies(Length::mm(0.8)), 50);
    assert_eq!(shell.way, OrderWay::TwoWay);
    assert_eq!(shell.faults, Share::percent(1.0));
    assert_eq!(loaded.order.limits_of("bargeman-drill").most_pairs, 6);
    assert_eq!(loaded.order.limits_of("another").most_pairs, 4);
    assert_eq!(loaded.order.rolls_of("tideline-14").len(), 4);
    assert!(style::is_order(&loaded.path));
    assert!(!style::is_order(&copy.style()));
}

#[test]
fn what_may_be_left_out_has_the_stated_default() {
    let copy = Copy::new();
    let text = "format = 1\n[order]\nname = \"Few\"\n[[lines]]\nstyle = \"ferryman\"\npairs = { 32x32 = 1 }\n\
                [limits]\nmost_plies = 3\ntable = \"4 m\"\nmost_pairs = 2\n";
    copy.write("orders/few.toml", text);
    let order = load_order(&copy.root().join("orders/few.toml"))
        .unwrap()
        .order;
    let limits = &order.limits;
    assert_eq!(order.lines[0].cloth, None);
    assert_eq!(limits.plies(Length::mm(0.1)), 3);
    assert_eq!((limits.fewest_lays, limits.most_lays), (1, 4));
    assert_eq!(limits.end_loss, Length::cm(2.0));
    assert_eq!((limits.gap, limits.most_lap), (Length::ZERO, Length::ZERO));
    assert_eq!(limits.way, OrderWay::TwoWay);
    assert_eq!((limits.zones, limits.match_within), (1, None));
    assert_eq!((limits.faults, limits.splices), (Share::ZERO, Share::ZERO));
    assert!(order.rolls_of("tideline-14").is_empty());
}

/// A mistake: its name, its code, what is replaced in the demo's order and by what.
const MISTAKES: &[(&str, &str, &str, &str)] = &[
    (
        "order_of_no_style",
        "style::unknown-style",
        "style = \"ferryman\"",
        "style = \"feryman\"",
    ),
    (
        "order_of_no_size",
        "style::no-such-size",
        "31x32 = 8",
        "35x32 = 8",
    ),
    (
        "order_of_no_readable_size",
        "style::unreadable-size",
        "31x32 = 8",
        "thirty = 8",
    ),
    (
        "order_of_a_size_twice",
        "style::duplicate-size",
        "31x32 = 8",
        "30X32 = 8",
    ),
    (
        "order_of_no_pairs",
        "style::out-of-range",
        "31x32 = 8",
        "31x32 = 0",
    ),
    (
        "order_of_half_a_pair",
        "style::wrong-type",
        "31x32 = 8",
        "31x32 = 8.5",
    ),
    (
        "order_of_too_many_pairs",
        "style::out-of-range",
        "31x32 = 8",
        "31x32 = 9990",
    ),
    (
        "order_of_nothing",
        "style::empty-list",
        "pairs = { 30x32 = 6, 31x32 = 8, 32x32 = 14, 33x32 = 10, 34x32 = 10, 36x32 = 4, 32x34 = 6, 34x34 = 4 }",
        "pairs = {}",
    ),
    (
        "order_on_no_cloth",
        "style::unknown-cloth",
        "style = \"ferryman\"",
        "style = \"ferryman\"\ncloth = \"tideline-15\"\n#",
    ),
    (
        "order_on_pocketing",
        "style::wrong-cloth",
        "style = \"ferryman\"",
        "style = \"ferryman\"\ncloth = \"bargeman-drill\"\n#",
    ),
    (
        "order_with_a_section_for_no_cloth",
        "style::unknown-cloth",
        "[cloths.oar-lining]",
        "[cloths.oar-linen]",
    ),
    (
        "order_without_height",
        "style::missing-key",
        "height = \"4 cm\"",
        "#",
    ),
    (
        "order_without_table",
        "style::missing-key",
        "table = \"12 m\"",
        "#",
    ),
    (
        "order_without_most_pairs",
        "style::missing-key",
        "most_pairs = 4 ",
        "#",
    ),
    (
        "order_with_an_unknown_limit",
        "style::unknown-key",
        "most_lap = ",
        "most_laps = ",
    ),
    (
        "order_whose_lays_fight",
        "style::limits-fight",
        "most_lays = 5",
        "fewest_lays = 6\nmost_lays = 5",
    ),
    (
        "order_whose_ends_take_the_table",
        "style::limits-fight",
        "end_loss = \"2 cm\"",
        "end_loss = \"6 m\"",
    ),
    (
        "order_with_a_table_without_unit",
        "style::missing-unit",
        "table = \"12 m\"",
        "table = \"12\"",
    ),
    (
        "order_with_a_roll_twice",
        "style::duplicate-name",
        "name = \"T-03\"",
        "name = \"T-07\"",
    ),
    (
        "order_with_limits_misspelt",
        "style::unknown-key",
        "[limits]",
        "[limit]",
    ),
];

#[test]
fn every_mistake_is_told_with_its_place() {
    let mut settings = insta::Settings::clone_current();
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| {
        for (name, code, from, to) in MISTAKES {
            assert!(order().contains(from), "{name}: the order has no {from:?}");
            let copy = Copy::new();
            copy.write(style::demo::ORDER, order().replacen(from, to, 1));
            let report = load_order(&copy.root().join(style::demo::ORDER)).unwrap_err();
            let problem = report.problems.iter().find(|p| p.code == *code);
            assert!(problem.is_some_and(|p| p.line > 0), "{name}: {report}");
            insta::assert_snapshot!(*name, copy.render(&report));
        }
    });
}

const FEW: &str = "format = 1\n[order]\nname = \"Few\"\n[[lines]]\nstyle = \"ferryman\"\npairs = PAIRS\n\
                   [limits]\nmost_plies = 3\ntable = \"4 m\"\nmost_pairs = 2\n";

/// A collection whose style has waists 31, 31.5 and 32, with an order of these pairs.
fn halves_ordered(pairs: &str) -> Copy {
    let copy = Copy::new();
    let text = common::with(
        "waists = [28, 29, 30, 31, 32, 33, 34, 36, 38]",
        "waists = [31, 31.5, 32]",
    );
    copy.write(style::demo::STYLE, text);
    copy.write("orders/few.toml", FEW.replace("PAIRS", pairs));
    copy
}

#[test]
fn half_sizes_are_ordered_in_quotes() {
    let copy = halves_ordered("{ \"31.5x32\" = 4, 32x32 = 2 }");
    let order = load_order(&copy.root().join("orders/few.toml"))
        .unwrap()
        .order;
    let half = Size::of(Tag::halves(63), Tag::inches(32));
    assert_eq!(order.lines[0].pairs, [(half, 4), (Size::new(32, 32), 2)]);
}

#[test]
fn a_half_size_without_quotes_or_with_a_comma_is_answered_with_what_is_right() {
    for (pairs, words) in [
        ("{ 31.5x32 = 4 }", "write it in quotes: \"31.5x32\" = 4"),
        ("{ 32x31.5 = 4 }", "write it in quotes: \"32x31.5\" = 4"),
        ("{ 31.5x30.5 = 4 }", "write it in quotes: \"31.5x30.5\" = 4"),
        ("{ \"31,5x32\" = 4 }", "write halves with a point: 31.5x32"),
        ("{ \"31.25x32\" = 4 }", "write waist x length in inches"),
        ("{ \"32.5x32\" = 4 }", "its waists are 31, 31.5, 32;"),
    ] {
        let copy = halves_ordered(pairs);
        let report = load_order(&copy.root().join("orders/few.toml")).unwrap_err();
        let said = copy.render(&report);
        assert!(said.contains(words), "{pairs}: {said}");
        assert!(said.contains("orders/few.toml"), "{pairs}: {said}");
    }
}

#[test]
fn mistakes_of_the_style_are_told_too() {
    let copy = Copy::new();
    let text = common::with("value = \"33 1/2 in\"", "value = \"33 1/2\"");
    copy.write(style::demo::STYLE, text);
    let report = load_order(&copy.root().join(style::demo::ORDER)).unwrap_err();
    assert_eq!(report.problems[0].code, "style::missing-unit");
    assert!(report.problems[0].file.ends_with("style.toml"));
}
