//! Every rule is kept by a sound style and broken by one spoilt on purpose.
#![allow(clippy::unwrap_used, missing_docs)]

mod common;

use std::collections::BTreeSet;

use common::ferryman;
use draft::{Finding, LineId, PieceId, Severity};
use geometry::{Affine, Vec2};
use sewing::{FixingKind, Garment, SEWING_RULES, make, sewing_findings};
use style::{
    Closing, Construction, Loaded, MeasureId, OutseamLine, RowSpec, SeamId, SetAfter, Size,
    WashFinish, WashedBy,
};
use trade::{Length, Share, StitchDensity, StitchType, YarnSize};

const SIZE: Size = Size::new(32, 32);

/// One rule: what makes the demo style sound where it is not, what spoils the style, and what spoils
/// the garment made from it where no style could.
struct Trial {
    code: &'static str,
    sound: fn(&mut Loaded),
    spoil: fn(&mut Loaded),
    then: fn(&mut Garment),
}

fn as_it_is(_: &mut Loaded) {}
fn as_made(_: &mut Garment) {}

/// The demo style is sound, and this spoils it.
const fn spoilt(code: &'static str, spoil: fn(&mut Loaded)) -> Trial {
    Trial {
        code,
        sound: as_it_is,
        spoil,
        then: as_made,
    }
}

/// The demo style has something to say; this makes it sound, and that spoils it.
const fn mended(code: &'static str, sound: fn(&mut Loaded), spoil: fn(&mut Loaded)) -> Trial {
    Trial {
        code,
        sound,
        spoil,
        then: as_made,
    }
}

/// The demo style is sound, and no style could break the rule; this spoils the garment.
const fn spoilt_after(code: &'static str, then: fn(&mut Garment)) -> Trial {
    Trial {
        code,
        sound: as_it_is,
        spoil: as_it_is,
        then,
    }
}

fn rows(l: &mut Loaded, seam: SeamId) -> &mut Vec<RowSpec> {
    let resolved = l.style.seam(seam).unwrap().rows;
    l.style.seams[&seam].rows.get_or_insert(resolved)
}

fn chart(l: &mut Loaded, measure: MeasureId, mm: f64) {
    l.style.chart[&measure].value = Length::mm(mm);
}

fn shell_of(l: &mut Loaded, mm: f64) {
    let key = l.style.cloth.shell.clone();
    l.collection.cloths[&key].thickness = Length::mm(mm);
}

fn construct(l: &mut Loaded, seam: SeamId, construction: Construction) {
    l.style.seams[&seam].construction = Some(construction);
}

fn yarn(l: &mut Loaded, key: &str, tex: f64) {
    l.collection.yarns[key].size = YarnSize::tex(tex);
}

/// Sold raw, in a shell that loses so many per cent along its warp.
fn raw(l: &mut Loaded, percent: f64) {
    l.style.wash.as_mut().unwrap().finish = WashFinish::Raw;
    let shell = l.style.cloth.shell.clone();
    let shell = &mut l.collection.cloths[&shell];
    shell.warp_shrinkage = Some(Share::percent(percent));
    shell.weft_shrinkage = Some(Share::ZERO);
}

/// Moves a line on a piece.
fn shift(g: &mut Garment, piece: PieceId, line: LineId, by: Vec2) {
    let piece = g.pattern.pieces.iter_mut().find(|p| p.id == piece).unwrap();
    let line = piece.lines.iter_mut().find(|l| l.id == line).unwrap();
    line.path = line.path.transformed(Affine::translate(by));
}

fn holes(g: &mut Garment, change: fn(&mut sewing::Fixing)) {
    for fixing in &mut g.fixings {
        if matches!(fixing.kind, FixingKind::Buttonhole(_)) {
            change(fixing);
        }
    }
}

fn without_extra(l: &mut Loaded) {
    l.style.pockets.extra = None;
    for seam in [SeamId::ExtraHem, SeamId::ExtraSet] {
        l.style.seams.shift_remove(&seam);
    }
}

fn row_of(g: &mut Garment, seam: SeamId) -> &mut sewing::StitchRow {
    g.rows.iter_mut().find(|row| row.seam == seam).unwrap()
}

const TRIALS: &[Trial] = &[
    spoilt("sewing::unusual-value", |l| {
        chart(l, MeasureId::HemDepth, 240.0);
    }),
    spoilt("sewing::tolerance-wide", |l| {
        l.style.chart[&MeasureId::LoopWidth].tolerance = Length::mm(4.0);
    }),
    spoilt("sewing::cloth-use", |l| {
        l.style.cloth.shell = "oar-lining".to_owned();
    }),
    // A mean man with a 32 in waist is 94.3 cm round the seat.
    spoilt("sewing::needs-stretch", |l| {
        chart(l, MeasureId::Seat, 915.0);
    }),
    spoilt("sewing::row-near-edge", |l| {
        rows(l, SeamId::Mouth)[0].offset = Length::mm(0.4);
    }),
    spoilt("sewing::row-catches-nothing", |l| {
        rows(l, SeamId::Hem)[0].offset = Length::mm(20.0);
    }),
    spoilt("sewing::stitches-crowded", |l| {
        rows(l, SeamId::Mouth)[1].density = StitchDensity::per_cm(20.0);
    }),
    spoilt("sewing::stitches-open", |l| {
        rows(l, SeamId::Seat)[0].density = StitchDensity::per_inch(5.0);
    }),
    spoilt("sewing::row-gauge", |l| {
        rows(l, SeamId::Seat)[1].offset = Length::mm(4.0);
    }),
    spoilt("sewing::chain-end", |l| {
        rows(l, SeamId::BackPocketSet)[0].stitch = StitchType::S401;
    }),
    spoilt("sewing::under-yarn", |l| {
        rows(l, SeamId::Mouth)[0].under = "night-40".to_owned();
    }),
    spoilt("sewing::stitch-misplaced", |l| {
        rows(l, SeamId::Inseam)[0].stitch = StitchType::S504;
    }),
    spoilt("sewing::hem-density", |l| {
        rows(l, SeamId::Hem)[0].density = StitchDensity::per_inch(10.0);
    }),
    spoilt("sewing::lap-narrow", |l| {
        rows(l, SeamId::Inseam)[1].offset = Length::mm(3.0);
    }),
    mended(
        "sewing::joining-row",
        |_| (),
        |l| rows(l, SeamId::FrontRise).truncate(2),
    ),
    spoilt("sewing::no-rows", |l| rows(l, SeamId::CoinSet).clear()),
    mended(
        "sewing::overedge-unstated",
        |l| {
            // The demo leaves the overedge beside the cloth's own edge open.
            let mut row = rows(l, SeamId::FrontRise)[3].clone();
            row.offset = Length::ZERO;
            rows(l, SeamId::Outseam).push(row);
        },
        |l| rows(l, SeamId::FrontRise).truncate(3),
    ),
    spoilt("sewing::facing-edge", |l| {
        construct(l, SeamId::FacingSet, Construction::LaidOn);
    }),
    spoilt("sewing::band-join", |l| {
        l.style.seams.shift_remove(&SeamId::BandJoin);
    }),
    // Eight plies of 0.82 mm are 6.6 mm.
    spoilt("sewing::hem-narrow", |l| {
        chart(l, MeasureId::HemDepth, 6.0);
        rows(l, SeamId::Hem)[0].offset = Length::mm(4.5);
    }),
    mended(
        "sewing::yarn-for-cloth",
        |l| {
            yarn(l, "night-40", 60.0);
        },
        |l| yarn(l, "rope-105", 240.0),
    ),
    spoilt("sewing::unknown-name", |l| {
        rows(l, SeamId::Band)[0].yarn = "cable-900".to_owned();
    }),
    spoilt("sewing::needle-shared", |l| {
        rows(l, SeamId::Inseam)[1].yarn = "night-40".to_owned();
    }),
    // Tex 150 wants at least 130; pocketing of 6.5 oz/yd² takes tex 60 and its 110 at most.
    spoilt("sewing::needle-for-cloth", |l| yarn(l, "chalk-40", 150.0)),
    spoilt("sewing::band-button", |l| {
        chart(l, MeasureId::BandOverlap, 20.0)
    }),
    // Holes of a 14 mm button end 9.5 + 14 + 3.2 = 26.7 mm from the fly edge.
    spoilt("sewing::fly-holes", |l| {
        rows(l, SeamId::Fly)[1].offset = Length::mm(26.0);
    }),
    spoilt("sewing::fly-buttons", |l| l.style.fly.buttons = 30),
    spoilt("sewing::zip-length", |l| {
        let mut zip = l.collection.trims["rivet-9"].clone();
        zip.length = Some(Length::mm(200.0));
        l.collection.trims.insert("zip".to_owned(), zip);
        l.style.fly.closing = Closing::Zip;
        l.style.fly.zip = Some("zip".to_owned());
    }),
    spoilt_after("sewing::hole-near-end", |g| {
        holes(g, |hole| hole.at += hole.along * 8.0);
    }),
    spoilt_after("sewing::hole-for-button", |g| {
        holes(g, |hole| {
            hole.kind = FixingKind::Buttonhole(Length::mm(14.0))
        });
    }),
    spoilt("sewing::pocket-outside", |l| {
        chart(l, MeasureId::BackPocketFromCentre, 190.0);
    }),
    spoilt("sewing::pocket-near-seam", |l| {
        chart(l, MeasureId::BackPocketFromYoke, 4.0);
    }),
    spoilt_after("sewing::pocket-levels", |g| {
        shift(g, PieceId::Back, LineId::PocketLeft, Vec2::new(0.0, -5.0));
    }),
    spoilt("sewing::coin-beyond-facing", |l| {
        chart(l, MeasureId::CoinDepth, 160.0);
    }),
    spoilt("sewing::coin-hidden", |l| {
        l.style.pockets.coin.below_band = Length::mm(85.0);
        chart(l, MeasureId::CoinDepth, 20.0);
    }),
    // 22 mm from the outseam and 90 mm wide, in a mouth of 105 mm.
    spoilt("sewing::coin-wide", |l| {
        chart(l, MeasureId::CoinWidth, 100.0)
    }),
    spoilt("sewing::coin-foot", |l| {
        chart(l, MeasureId::CoinDepth, 20.0);
        chart(l, MeasureId::CoinWidth, 40.0);
        l.style.pockets.coin.below_band = Length::mm(10.0);
    }),
    spoilt_after("sewing::extra-below-band", |g| {
        shift(
            g,
            PieceId::PocketBag,
            LineId::ExtraPocket,
            Vec2::new(0.0, -12.0),
        );
    }),
    // Nearer to the centre it lies in the fold of the bag.
    spoilt("sewing::extra-on-bag", |l| {
        l.style.pockets.extra.as_mut().unwrap().from_centre = Length::mm(10.0);
    }),
    spoilt("sewing::bag-short", |l| {
        l.style.pockets.bag.depth = Length::mm(200.0);
    }),
    spoilt("sewing::bag-facing", |l| {
        l.style.pockets.bag.width = Length::mm(170.0);
    }),
    // 57 mm less two tacks of 2 mm leave 53 mm: a belt of 50 mm and 3 mm of play go through, no wider.
    spoilt("sewing::loop-short", |l| {
        l.style.loops.belt = Length::mm(50.5)
    }),
    spoilt("sewing::loop-loose", |l| {
        l.style.loops.belt = Length::mm(20.0);
    }),
    spoilt("sewing::loop-foot", |l| {
        chart(l, MeasureId::LoopLength, 40.0)
    }),
    spoilt("sewing::loop-spacing", |l| l.style.loops.count = 3),
    spoilt("sewing::patch-on-loop", |l| {
        l.style.patch.as_mut().unwrap().from_centre = Length::mm(130.0);
    }),
    spoilt("sewing::rivet-thin", |l| {
        let pocketing = l.style.cloth.pocketing.clone();
        l.collection.cloths[&pocketing].thickness = Length::mm(0.1);
        shell_of(l, 0.2);
    }),
    spoilt("sewing::rivet-thick", |l| shell_of(l, 1.3)),
    // The rows of the mouth keep a rivet 4.8 mm from its edge.
    spoilt("sewing::rivet-near-edge", |l| {
        l.collection.trims["rivet-9"].diameter = Some(Length::mm(12.0));
    }),
    spoilt_after("sewing::tack-on-rivet", |g| {
        let rivet = g
            .fixings
            .iter()
            .find(|f| f.from.trim() == Some("rivet-9") && f.piece == PieceId::Front);
        let at = rivet.unwrap().at;
        let tack = g
            .fixings
            .iter_mut()
            .find(|f| f.piece == PieceId::Front && matches!(f.kind, FixingKind::Bartack(..)));
        tack.unwrap().at = at;
    }),
    spoilt("sewing::bulk-machine", |l| shell_of(l, 1.8)),
    mended(
        "sewing::felled-crossing",
        |l| shell_of(l, 0.5),
        |l| shell_of(l, 1.3),
    ),
    mended(
        "sewing::hem-bulk",
        |l| construct(l, SeamId::Inseam, Construction::Overlocked),
        |l| construct(l, SeamId::Inseam, Construction::LapFelled),
    ),
    spoilt("sewing::label-over-seam", |l| {
        l.collection.trims["main-label"].height = Some(Length::mm(36.0));
    }),
    spoilt("sewing::labels-overlap", |l| {
        l.style.labels[1].place = l.style.labels[0].place.clone();
    }),
    spoilt("sewing::patch-on-label", |l| {
        l.style.labels[1].place = "band inside, right of main label".to_owned();
    }),
    spoilt("sewing::patch-off-band", |l| {
        l.style.patch.as_mut().unwrap().from_centre = Length::mm(450.0);
    }),
    spoilt("sewing::art-beyond", |l| {
        l.collection.trims["patch"].width = Some(Length::mm(50.0));
    }),
    spoilt("sewing::fibre-label", |l| l.style.labels[2].purpose.clear()),
    spoilt("sewing::label-lacks", |l| {
        l.style.labels[2].text = Some("100 % cotton. Made in Portugal.".to_owned());
    }),
    spoilt("sewing::fibre-differs", |l| {
        l.style.labels[2].text = Some("98 % cotton, 2 % elastane".to_owned());
    }),
    spoilt("sewing::workroom-open", |l| l.style.style.workroom.clear()),
    spoilt("sewing::patch-open", |l| {
        l.collection.trims["patch"].text.clear();
        l.style.patch.as_mut().unwrap().art = None;
    }),
    spoilt("sewing::label-open", |l| {
        l.collection.trims["main-label"].text.clear();
    }),
    spoilt("sewing::roping", |l| {
        construct(l, SeamId::Hem, Construction::FoldedHem);
    }),
    spoilt("sewing::leather-chromium", |l| {
        l.collection.trims["patch"].tanning = None;
    }),
    spoilt("sewing::nickel", |l| {
        l.collection.trims["shank-22"].material = "brass".to_owned();
    }),
    spoilt("sewing::tack-density", |l| l.style.bartacks.stitches = 12),
    mended(
        "sewing::selvedge-curve",
        |l| l.style.shape.outseam = OutseamLine::Straight,
        |l| l.style.shape.outseam = OutseamLine::Shaped,
    ),
    mended(
        "sewing::selvedge-dart",
        |l| l.style.shape.seat_dart = Length::mm(5.0),
        |l| l.style.shape.seat_dart = Length::mm(18.0),
    ),
    spoilt("sewing::selvedge-missing", |l| {
        let shell = l.style.cloth.shell.clone();
        l.collection.cloths[&shell].selvedge = false;
    }),
    // The caps reach from 2 to 11 mm inside the edges of the pocket, its second row lies at 8 mm.
    spoilt("sewing::needle-on-metal", |l| {
        l.style.rivets.as_mut().unwrap().back_hidden = true;
    }),
    // Caps of 7 mm begin 3 mm inside the edges: 2 mm from a row at 1 mm.
    spoilt("sewing::foot-on-metal", |l| {
        l.style.rivets.as_mut().unwrap().back_hidden = true;
        l.collection.trims["rivet-9"].diameter = Some(Length::mm(7.0));
        rows(l, SeamId::BackPocketSet).truncate(1);
        rows(l, SeamId::BackPocketSet)[0].offset = Length::mm(1.0);
    }),
    mended("sewing::extra-sewn-shut", without_extra, |l| {
        l.style.pockets.extra.as_mut().unwrap().from_centre = Length::mm(90.0);
    }),
    spoilt("sewing::coin-sewn-shut", |l| {
        l.style.pockets.coin.below_band = Length::mm(2.0);
        l.style.pockets.coin.from_side = Length::mm(20.0);
    }),
    spoilt_after("sewing::mouth-sewn-shut", |g| {
        let front = g.pattern.piece(PieceId::Front).unwrap();
        let mouth = front.edge(style::EdgeId::Mouth).unwrap();
        let middle = mouth.point_at(mouth.length() / 2.0);
        let tack = g
            .fixings
            .iter_mut()
            .find(|f| f.piece == PieceId::Front && matches!(f.kind, FixingKind::Bartack(..)));
        tack.unwrap().at = middle;
    }),
    // The tack at the top of the loop behind goes through a label as high as the band.
    spoilt("sewing::sewn-through-trim", |l| {
        // And is sewn on before the loops are.
        l.style.wash = None;
        l.collection.trims["main-label"].height = Some(Length::mm(37.0));
    }),
    spoilt("sewing::patch-through-band", |l| {
        l.collection.trims["patch"].height = Some(Length::mm(55.0));
    }),
    // Holes of 10 mm buttons end 22.7 mm from the fly edge at most, and two lie above where its rows turn in.
    mended(
        "sewing::hole-bite",
        |l| {
            l.style.fly.buttons = 2;
            l.collection.trims["shank-22"].diameter = Some(Length::mm(10.0));
        },
        |l| rows(l, SeamId::Fly)[1].offset = Length::mm(28.0),
    ),
    spoilt_after("sewing::button-bite", |g| {
        let button = g
            .fixings
            .iter_mut()
            .find(|f| f.piece == PieceId::FlyShield && matches!(f.kind, FixingKind::Button(_)));
        button.unwrap().at.x -= 4.0;
    }),
    spoilt_after("sewing::rows-together", |g| {
        let along = row_of(g, SeamId::Fly).path.clone();
        row_of(g, SeamId::FrontRise).path =
            along.transformed(Affine::translate(Vec2::new(0.5, 0.0)));
    }),
    // The inner sides of the back pockets lie over the rows of the seat seam.
    spoilt("sewing::rows-cross", |l| {
        chart(l, MeasureId::BackPocketFromCentre, -8.0);
    }),
    // A coverstitch is made on a flat bed.
    spoilt("sewing::no-arm", |l| {
        rows(l, SeamId::Hem)[0].stitch = StitchType::S406;
    }),
    spoilt("sewing::closed-before", |l| {
        l.style.wash.as_mut().unwrap().set_after = vec![style::SetAfter::Labels];
    }),
    spoilt("sewing::patch-in-wash", |l| {
        l.style.wash.as_mut().unwrap().set_after.clear();
    }),
    mended("sewing::raw-shrinks", |l| raw(l, 3.0), |l| raw(l, 3.1)),
    spoilt("sewing::why-of-nothing", |l| l.style.patch = None),
];

fn said(code: &str, change: fn(&mut Loaded), then: fn(&mut Garment)) -> Vec<Finding> {
    let mut loaded = ferryman();
    change(&mut loaded);
    let mut garment = make(&loaded.style, &loaded.collection, SIZE);
    then(&mut garment);
    let mut found = sewing_findings(&garment);
    found.retain(|f| f.code == code);
    found
}

#[test]
fn every_rule_passes_a_sound_style() {
    for trial in TRIALS {
        let found = said(trial.code, trial.sound, as_made);
        assert_eq!(found, [], "{}", trial.code);
    }
}

#[test]
fn every_rule_fails_a_spoilt_style() {
    for trial in TRIALS {
        let found = said(trial.code, trial.spoil, trial.then);
        assert!(!found.is_empty(), "{}", trial.code);
        let rule = SEWING_RULES.iter().find(|r| r.code == trial.code).unwrap();
        for f in &found {
            assert!(f.severity <= rule.severity, "{f:?}");
            assert_eq!(f.size, Some(SIZE));
            let own = style::ranges().map(|range| range.reason);
            let sources: Vec<&str> = match rule.code {
                // Each quantity has its own.
                "sewing::unusual-value" => own.collect(),
                _ => vec![words::Words::english().named(rule.source)],
            };
            assert!(
                sources.contains(&f.source(words::Words::english()).as_str()),
                "{f:?}"
            );
            // What has no row or trim to point at has no place.
            let nowhere = [
                "sewing::unknown-name",
                "sewing::no-rows",
                "sewing::unusual-value",
                "sewing::tolerance-wide",
                // A chart too small for the body is often one that cannot be drafted.
                "sewing::needs-stretch",
                "sewing::workroom-open",
                "sewing::why-of-nothing",
            ];
            assert!(f.place.is_some() || nowhere.contains(&f.code), "{f:?}");
            assert!(f.place.is_none_or(|p| p.at.is_finite()), "{f:?}");
            assert!(
                f.message(words::Words::english())
                    .ends_with(|c: char| c != '.')
                    && !f.about(words::Words::english()).is_empty(),
                "{f:?}"
            );
        }
    }
}

#[test]
fn every_rule_is_tried_and_explained() {
    let tried: Vec<&str> = TRIALS.iter().map(|t| t.code).collect();
    let codes: Vec<&str> = SEWING_RULES.iter().map(|r| r.code).collect();
    assert_eq!(tried, codes);
    assert_eq!(codes.iter().collect::<BTreeSet<_>>().len(), codes.len());
    assert!(codes.len() >= 30);
    for rule in SEWING_RULES {
        let texts =
            [rule.title, rule.reason, rule.source].map(|key| words::Words::english().named(key));
        assert!(
            texts.iter().all(|t| t.len() > 8 && !t.ends_with('.')),
            "{}",
            rule.code
        );
    }
}

/// What a label says may stand in its own entry, on its trim or in a drawing; a size label says its size.
#[test]
fn a_label_is_open_only_where_nothing_says_anything() {
    let open = |change: fn(&mut Loaded)| said("sewing::label-open", change, as_made);
    let found = open(|l| {
        for trim in ["main-label", "size-label", "care-label"] {
            l.collection.trims[trim].text.clear();
        }
        l.style.labels[2].text = None;
    });
    let about: Vec<String> = found
        .iter()
        .map(|f| f.about(words::Words::english()))
        .collect();
    assert_eq!(about, ["label main-label", "label care-label"]);
    assert!(
        found[1]
            .message(words::Words::english())
            .ends_with("it is to tell fibre, care, origin"),
        "{}",
        found[1].message(words::Words::english())
    );
    let told = open(|l| {
        l.collection.trims["main-label"].text.clear();
        l.style.labels[0].text = Some("Reed Bank".to_owned());
    });
    assert!(told.is_empty());
}

/// The demo style is meant to be sewn: nothing about it is an error, and little a warning.
#[test]
fn the_demo_style_can_be_sewn_in_every_size() {
    let loaded = ferryman();
    for size in loaded.style.sizes.all() {
        let garment = make(&loaded.style, &loaded.collection, size);
        let found = sewing_findings(&garment);
        assert!(
            found.iter().all(|f| f.severity < Severity::Error),
            "{found:#?}"
        );
        assert!(found.len() <= 10, "{found:#?}");
    }
}

/// A ceiling by yarn and stitch, from memory: 4 diameters of the needle yarn, 5 in a chain.
#[test]
fn heavy_yarn_has_a_densest_stitch() {
    let crowded = |seam: SeamId, stitch: StitchType, per_inch: f64| {
        let mut loaded = ferryman();
        let row = &mut rows(&mut loaded, seam)[0];
        (row.stitch, row.density) = (stitch, StitchDensity::per_inch(per_inch));
        let garment = make(&loaded.style, &loaded.collection, SIZE);
        let found = sewing_findings(&garment);
        found.iter().any(|f| f.code == "sewing::stitches-crowded")
    };
    // Tex 105.
    for (stitch, sewn, too_dense) in [
        (StitchType::S301, 14.0, 25.0),
        (StitchType::S401, 11.0, 14.0),
    ] {
        assert!(!crowded(SeamId::Mouth, stitch, sewn), "{stitch}");
        assert!(crowded(SeamId::Mouth, stitch, too_dense), "{stitch}");
    }
    // Tex 40 of the pocket bag.
    assert!(!crowded(SeamId::FacingSet, StitchType::S301, 20.0));
}

/// Only a lockstitch is sewn back and forth. What has no reverse is chained off: a chain still runs back, an overedge holds.
#[test]
fn stitches_without_reverse_are_chained_off() {
    use sewing::RowEnd::{Backtacked, CaughtInSeam, ChainedOff};
    let ended = |seam: SeamId, stitch: StitchType, stated: Option<style::RowEnding>| {
        let mut loaded = ferryman();
        let row = &mut rows(&mut loaded, seam)[0];
        (row.stitch, row.begin) = (stitch, stated);
        let garment = make(&loaded.style, &loaded.collection, SIZE);
        let row = garment
            .rows
            .iter()
            .find(|row| row.seam == seam && row.number == 1)
            .unwrap();
        let found = sewing_findings(&garment);
        let told = found.iter().any(|f| f.code == "sewing::chain-end");
        (row.begins, row.ends, told)
    };
    let stated = Some(style::RowEnding::Backtacked);
    for overedge in [StitchType::S504, StitchType::S514, StitchType::S516] {
        assert_eq!(
            ended(SeamId::BagClose, overedge, None),
            (ChainedOff, CaughtInSeam, false)
        );
        assert_eq!(
            ended(SeamId::BagClose, overedge, stated),
            (Backtacked, CaughtInSeam, true)
        );
    }
    for chain in [
        StitchType::S101,
        StitchType::S401,
        StitchType::S406,
        StitchType::S602,
    ] {
        assert_eq!(
            ended(SeamId::BackPocketSet, chain, None),
            (ChainedOff, ChainedOff, true)
        );
    }
    assert_eq!(
        ended(SeamId::BackPocketSet, StitchType::S301, None),
        (Backtacked, Backtacked, false)
    );
}

/// Leather meets the water only where the sewn pair is washed with it on.
#[test]
fn a_leather_patch_is_noted_only_where_it_goes_through_the_wash() {
    let note = |change: fn(&mut Loaded)| said("sewing::patch-in-wash", change, as_made).len();
    let soaked: fn(&mut Loaded) =
        |l| l.style.wash.as_mut().unwrap().set_after = vec![SetAfter::Rivets];
    assert_eq!(note(soaked), 1);
    assert_eq!(
        note(|l| l
            .style
            .wash
            .as_mut()
            .unwrap()
            .set_after
            .push(SetAfter::Rivets)),
        0
    );
    assert_eq!(note(|l| l.style.wash = None), 0);
    for by in [WashedBy::Mill, WashedBy::Wearer] {
        let mut loaded = ferryman();
        let wash = loaded.style.wash.as_mut().unwrap();
        (wash.by, wash.set_after) = (by, Vec::new());
        let found = sewing_findings(&make(&loaded.style, &loaded.collection, SIZE));
        assert!(
            found.iter().all(|f| f.code != "sewing::patch-in-wash"),
            "{by:?}"
        );
    }
    let of_cloth: fn(&mut Loaded) = |l| {
        l.style.wash.as_mut().unwrap().set_after.clear();
        let patch = &mut l.collection.trims["patch"];
        (patch.tanning, patch.material) = (None, "cotton canvas".to_owned());
    };
    assert_eq!(note(of_cloth), 0);
}
