//! Clashes are found on a style that has them, and on no other.
#![allow(clippy::unwrap_used, missing_docs)]

mod common;

use common::ferryman;
use draft::{Finding, PieceId};
use sewing::{FixingKind, Garment, findings_of_run, make, make_run};
use style::{
    Answers, Edit, Figure, LabelWords, Loaded, NewStyle, PartId, PatchThrough, Subject, Taste,
};
use words::Words;

/// The demo's style as it was before its clashes were looked for: what they are is known by hand.
fn first_ferryman() -> Loaded {
    let folder = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/tests/fixtures/first_ferryman/styles/ferryman"
    );
    style::load(folder.as_ref()).unwrap()
}

/// The rules that look at the sewn pair in its order.
const CLASHES: [&str; 13] = [
    "sewing::needle-on-metal",
    "sewing::foot-on-metal",
    "sewing::extra-sewn-shut",
    "sewing::coin-sewn-shut",
    "sewing::mouth-sewn-shut",
    "sewing::sewn-through-trim",
    "sewing::patch-through-band",
    "sewing::hole-bite",
    "sewing::button-bite",
    "sewing::rows-together",
    "sewing::rows-cross",
    "sewing::no-arm",
    "sewing::closed-before",
];

fn base(loaded: &Loaded) -> Garment {
    make(&loaded.style, &loaded.collection, loaded.style.sizes.base)
}

fn of<'g>(garment: &'g Garment, code: &str) -> Vec<&'g Finding> {
    garment.findings.iter().filter(|f| f.code == code).collect()
}

fn said(finding: &Finding) -> String {
    finding.message(Words::english())
}

/// Every clash.
fn clashes(findings: &[Finding]) -> Vec<String> {
    findings
        .iter()
        .filter(|f| CLASHES.contains(&f.code))
        .map(|f| format!("{} {}: {}", f.code, f.subject, said(f)))
        .collect()
}

/// Caps of 9 mm lie 6.5 mm inside the corners, the second setting row 8 mm inside the sides, and is sewn after them.
#[test]
fn a_hidden_rivet_under_a_setting_row_is_found() {
    let garment = base(&first_ferryman());
    let found = of(&garment, "sewing::needle-on-metal");
    let pockets: Vec<&Subject> = found.iter().map(|f| &f.subject).collect();
    let right = Subject::RivetOn(PieceId::BackPocketRight);
    let left = Subject::RivetOn(PieceId::BackPocketLeft);
    assert!(
        pockets.contains(&&right) && pockets.contains(&&left),
        "{pockets:?}"
    );
    for finding in &found {
        assert!(
            said(finding).contains("back_pocket_set, row 2"),
            "{}",
            said(finding)
        );
        assert!(said(finding).contains("hidden rivets"), "{}", said(finding));
        let remedy = Edit::set("rivets.back_hidden", "false").unwrap();
        assert_eq!(finding.edit, Some(remedy));
    }
}

#[test]
fn a_loop_tack_that_sews_the_extra_pocket_shut_is_found() {
    let garment = base(&first_ferryman());
    let found = of(&garment, "sewing::extra-sewn-shut");
    assert!(
        found
            .iter()
            .any(|f| said(f).contains("foot of a belt loop")),
        "{found:?}"
    );
    for finding in found {
        assert_eq!(finding.subject, PartId::ExtraPocket.into());
        assert_eq!(finding.place.unwrap().piece, PieceId::Front);
    }
}

/// A coin pocket 3 mm below the band and further towards the front lies under the foot of the loop beside the mouth.
#[test]
fn a_loop_tack_that_sews_the_coin_pocket_shut_is_found() {
    let mut demo = ferryman();
    demo.style.pockets.coin.below_band = trade::Length::mm(2.0);
    demo.style.pockets.coin.from_side = trade::Length::mm(20.0);
    let garment = base(&demo);
    let found = of(&garment, "sewing::coin-sewn-shut");
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0].subject, PartId::CoinPocket.into());
    assert!(
        said(found[0]).contains("foot of a belt loop"),
        "{}",
        said(found[0])
    );
}

/// A label on the inner ply of the band that is to be sewn on after the wash finds the band closed.
#[test]
fn a_label_sewn_on_when_the_band_is_closed_is_found() {
    let mut demo = ferryman();
    assert!(of(&base(&demo), "sewing::closed-before").is_empty());
    demo.style.wash.as_mut().unwrap().set_after = vec![style::SetAfter::Labels];
    let garment = base(&demo);
    let found = of(&garment, "sewing::closed-before");
    assert_eq!(found.len(), 1, "{found:?}");
    assert!(
        said(found[0]).contains("no machine reaches in"),
        "{}",
        said(found[0])
    );
}

/// A patch of 55 mm begins 3 mm below the top of a band of 38 mm, and its row lies 3 mm inside its edge: 17 mm below.
#[test]
fn a_patch_sewn_through_the_finished_band_and_below_it_is_found() {
    let garment = base(&first_ferryman());
    let found = of(&garment, "sewing::patch-through-band");
    assert_eq!(found.len(), 1);
    assert!(
        said(found[0]).contains("17.0 mm below the band seam"),
        "{}",
        said(found[0])
    );
}

/// Holes of 17.2 mm with their eye 9 mm from the fly edge, as near to it as the button stays covered, end 26.2 mm from
/// it; the inner row lies at 28 mm.
#[test]
fn a_buttonhole_that_ends_at_a_row_is_found() {
    let garment = base(&first_ferryman());
    let found = of(&garment, "sewing::hole-bite");
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].subject, Subject::Buttonhole(PieceId::FlyFacing));
    assert!(
        said(found[0]).starts_with("it ends 1.8 mm from fly, row 2"),
        "{}",
        said(found[0])
    );
}

/// What is set after the row goes over it: the same rivets as the first sewing order has them are clear of it in no place,
/// and no mouth rivet, which is set last of all and lies on both rows of its mouth, is told of.
#[test]
fn metal_that_is_set_after_the_row_is_no_clash() {
    let garment = base(&first_ferryman());
    let rivets =
        |f: &&sewing::Fixing| matches!(f.kind, FixingKind::Rivet(_)) && f.piece == PieceId::Front;
    assert!(garment.fixings.iter().any(|f| rivets(&f)));
    let mouth = Subject::RivetOn(PieceId::Front);
    assert!(
        garment
            .findings
            .iter()
            .all(|f| f.subject != mouth || !CLASHES.contains(&f.code))
    );
}

/// The demo as it is, in every size of its run.
#[test]
fn the_demo_has_no_clash_of_its_own() {
    let demo = ferryman();
    let run = make_run(&demo.style, &demo.collection);
    let found = clashes(&findings_of_run(&run));
    assert_eq!(found, [""; 0]);
}

/// Styles begun by the questions, each taste and figure.
#[test]
fn a_style_that_is_begun_has_no_clash() {
    for figure in [Figure::Men, Figure::Women] {
        for taste in Taste::WORDS.iter().map(|(_, taste)| *taste) {
            let folder = tempfile::tempdir().unwrap();
            let asked = NewStyle {
                name: "Begun".to_owned(),
                code: "B-1".to_owned(),
                folder: None,
                label: Some("A label".to_owned()),
                words: LabelWords::default(),
                answers: Answers {
                    figure,
                    taste,
                    ..Answers::default()
                },
            };
            let root = folder.path().join("label");
            let path = style::new_style(&root, &asked).unwrap();
            let begun = style::load(&path).unwrap();
            let run = make_run(&begun.style, &begun.collection);
            let found = clashes(&findings_of_run(&run));
            assert_eq!(found, [""; 0], "{figure:?} {taste:?}");
        }
    }
}

/// Through the outer ply alone it is sewn on before the band is set on; through the whole band once that is finished.
#[test]
fn a_patch_is_sewn_on_when_the_plies_it_goes_through_are_there() {
    let mut demo = ferryman();
    for (through, first) in [
        (PatchThrough::OuterPly, true),
        (PatchThrough::WholeBand, false),
    ] {
        demo.style.patch.as_mut().unwrap().through = through;
        let garment = base(&demo);
        let order = sewing::work::sewing_order(&garment);
        let number = |key: &str| order.iter().find(|o| o.key.code() == key).unwrap().number;
        assert_eq!(number("patch-set") < number("band-set"), first, "{through}");
        let row = garment
            .rows
            .iter()
            .find(|row| row.seam == style::SeamId::PatchSet)
            .unwrap();
        assert_eq!(row.shows_inside, !first, "{through}");
    }
}

/// A rivet takes the place of a tack at the mouths unless the style says that both are there.
#[test]
fn a_mouth_is_tacked_where_no_rivet_sits_or_the_style_says_so() {
    let tacks = |mouth: Option<bool>, rivets: bool| {
        let mut demo = ferryman();
        demo.style.bartacks.mouth = mouth;
        demo.style.rivets.as_mut().unwrap().mouth = rivets;
        let garment = base(&demo);
        let at_mouth = |f: &&sewing::Fixing| {
            f.from == style::SeamId::Mouth && matches!(f.kind, FixingKind::Bartack(..))
        };
        garment.fixings.iter().filter(at_mouth).count()
    };
    assert_eq!(tacks(None, true), 0);
    assert_eq!(tacks(None, false), 2);
    assert_eq!(tacks(Some(true), true), 2);
    assert_eq!(tacks(Some(false), false), 0);
}
