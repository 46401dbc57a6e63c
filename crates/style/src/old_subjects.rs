//! What findings were about before their subjects had codes: the words that style files hold from then.
//!
//! These words are those of that time and never change, whatever the catalogue says by now.

use crate::{Along, MeasureId, PartId, PieceId, SeamId, Subject};

/// Rules whose findings are about measures; elsewhere the same words are a seam or a part.
const OF_MEASURES: &[&str] = &[
    "fit::foot-passage",
    "fit::inseam-for-size",
    "fit::measure-missed",
    "fit::seat-ease",
    "fit::waist-for-size",
    "pattern::measure",
    "sewing::needs-stretch",
];

/// Rules whose findings are about a seam as a whole.
const OF_SEAMS: &[&str] = &[
    "sewing::band-row-round",
    "sewing::band-rows-together",
    "sewing::coin-foot",
    "sewing::drawing-off-pocket",
    "sewing::hem-ends",
    "sewing::hem-narrow",
    "sewing::joining-row",
    "sewing::lap-narrow",
    "sewing::no-rows",
    "sewing::overedge-unstated",
    "sewing::row-without-place",
];

/// Words of parts.
const PARTS: &[(&str, PartId)] = &[
    ("chart", PartId::Chart),
    ("own pattern", PartId::OwnPattern),
    ("workroom", PartId::Workroom),
    ("labels", PartId::Labels),
    ("bartacks", PartId::Bartacks),
    ("sewing thread", PartId::SewingThread),
    ("other texts", PartId::OtherTexts),
    ("band button", PartId::BandButton),
    ("fly", PartId::Fly),
    ("zip", PartId::Zip),
    ("patch", PartId::Patch),
    ("belt loops", PartId::BeltLoops),
    ("extra pocket", PartId::ExtraPocket),
    ("pocket bag", PartId::PocketBag),
    ("coin pocket", PartId::CoinPocket),
    ("back pockets", PartId::BackPockets),
    ("left back pocket", PartId::LeftBackPocket),
    ("right back pocket", PartId::RightBackPocket),
    ("waistband", PartId::Waistband),
    ("seat and yoke", PartId::SeatAndYoke),
    ("crotch", PartId::Crotch),
    ("outseam and yoke", PartId::OutseamAndYoke),
    ("band", PartId::Band),
    ("belt loop", PartId::BeltLoop),
    ("pocket mouth", PartId::PocketMouth),
    ("back pocket", PartId::BackPocket),
    ("rises", PartId::Rises),
    ("crotch point", PartId::CrotchPoint),
    ("crotch curves", PartId::CrotchCurves),
    ("crotch line", PartId::CrotchLine),
    ("front crotch curve", PartId::FrontCrotchCurve),
    ("back crotch curve", PartId::BackCrotchCurve),
    ("balance of the leg", PartId::LegBalance),
    ("seat seam", PartId::SeatSeam),
    ("yoke seam", PartId::YokeSeam),
    ("band seam", PartId::BandSeam),
    ("front crease", PartId::FrontCrease),
    ("back crease", PartId::BackCrease),
    ("front outseam", PartId::FrontOutseam),
    ("back outseam", PartId::BackOutseam),
    ("leg below the knee", PartId::LegBelowKnee),
    ("the front crotch", PartId::FrontCrotch),
    ("the back crotch", PartId::BackCrotch),
    ("the whole crotch", PartId::WholeCrotch),
    ("outseam, hem to knee", PartId::OutseamHemToKnee),
    ("outseam, knee to hip", PartId::OutseamKneeToHip),
    ("outseam, hip to waist", PartId::OutseamHipToWaist),
    ("inseam, hem to knee", PartId::InseamHemToKnee),
    ("inseam, knee to crotch", PartId::InseamKneeToCrotch),
    ("outseam at the pocket mouth", PartId::OutseamAtMouth),
    ("waist at the pocket mouth", PartId::WaistAtMouth),
    ("centre front at the waist", PartId::FrontCentreAtWaist),
    ("centre back at the waist", PartId::BackCentreAtWaist),
    ("front hem at the inseam", PartId::FrontHemAtInseam),
    ("front hem at the outseam", PartId::FrontHemAtOutseam),
    ("back hem at the inseam", PartId::BackHemAtInseam),
    ("back hem at the outseam", PartId::BackHemAtOutseam),
    ("left band end, lower corner", PartId::LeftBandEndLower),
    ("right band end, lower corner", PartId::RightBandEndLower),
    ("right band end, inner corner", PartId::RightBandEndInner),
    ("left band end, inner corner", PartId::LeftBandEndInner),
    ("front hem at the crease", PartId::FrontHemAtCrease),
    ("back hem at the crease", PartId::BackHemAtCrease),
    ("seat seam across the yoke seam", PartId::SeatAcrossYoke),
    ("outseam across the yoke seam", PartId::OutseamAcrossYoke),
    ("waist across the outseam", PartId::WaistAcrossOutseam),
    ("hem across the outseam", PartId::HemAcrossOutseam),
    ("hem across the inseam", PartId::HemAcrossInseam),
    ("knee on the outseam", PartId::KneeOnOutseam),
    ("hip", PartId::Hip),
    ("knee on the inseam", PartId::KneeOnInseam),
    ("middle of the yoke seam", PartId::YokeSeamMiddle),
    ("pocket mouth on the outseam", PartId::MouthOnOutseam),
    ("left side on the band", PartId::LeftSideOnBand),
    ("centre back on the band", PartId::BackCentreOnBand),
    ("right side on the band", PartId::RightSideOnBand),
    ("Yoke seam", PartId::JoinYoke),
    ("Seat seam", PartId::JoinSeat),
    ("Front rise", PartId::JoinFrontRise),
    ("Inseam", PartId::JoinInseam),
    ("Outseam", PartId::JoinOutseam),
    ("Band seam", PartId::JoinBand),
    ("Pocket mouth", PartId::JoinMouth),
    ("Fly edge", PartId::JoinFlyEdge),
    ("Pocket bag foot", PartId::JoinBagFoot),
    ("front", PartId::FrontPanel),
    ("back", PartId::BackPanel),
];

/// Words of measures: as papers named them, and as the chart did.
const MEASURES: &[(&str, &str, MeasureId)] = &[
    ("waist", "waist", MeasureId::Waist),
    ("seat", "seat", MeasureId::Seat),
    ("front rise", "front rise", MeasureId::FrontRise),
    ("back rise", "back rise", MeasureId::BackRise),
    ("thigh", "thigh", MeasureId::Thigh),
    ("knee", "knee", MeasureId::Knee),
    ("hem", "hem", MeasureId::Hem),
    ("inseam", "inseam", MeasureId::Inseam),
    ("outseam", "outseam", MeasureId::Outseam),
    ("band height", "band height", MeasureId::BandHeight),
    ("band overlap", "band overlap", MeasureId::BandOverlap),
    ("fly length", "fly length", MeasureId::FlyLength),
    ("fly width", "fly width", MeasureId::FlyWidth),
    (
        "yoke height, centre back",
        "yoke at centre back",
        MeasureId::YokeCentre,
    ),
    ("yoke height, side", "yoke at the side", MeasureId::YokeSide),
    (
        "pocket mouth, width",
        "pocket mouth width",
        MeasureId::MouthWidth,
    ),
    (
        "pocket mouth, depth",
        "pocket mouth depth",
        MeasureId::MouthDepth,
    ),
    (
        "coin pocket, width",
        "coin pocket width",
        MeasureId::CoinWidth,
    ),
    (
        "coin pocket, depth",
        "coin pocket depth",
        MeasureId::CoinDepth,
    ),
    (
        "back pocket, width",
        "back pocket width",
        MeasureId::BackPocketWidth,
    ),
    (
        "back pocket, length",
        "back pocket length",
        MeasureId::BackPocketLength,
    ),
    (
        "back pocket below yoke",
        "back pocket from yoke",
        MeasureId::BackPocketFromYoke,
    ),
    (
        "back pocket from centre back",
        "back pocket from centre back",
        MeasureId::BackPocketFromCentre,
    ),
    (
        "belt loop, length",
        "belt loop length",
        MeasureId::LoopLength,
    ),
    ("belt loop, width", "belt loop width", MeasureId::LoopWidth),
    ("hem depth", "hem depth", MeasureId::HemDepth),
];

/// Words of pieces.
const PIECES: &[(&str, PieceId)] = &[
    ("front", PieceId::Front),
    ("back", PieceId::Back),
    ("yoke", PieceId::Yoke),
    ("waistband", PieceId::Band),
    ("fly facing", PieceId::FlyFacing),
    ("fly shield", PieceId::FlyShield),
    ("hip pocket facing", PieceId::PocketFacing),
    ("coin pocket", PieceId::CoinPocket),
    ("pocket bag", PieceId::PocketBag),
    ("back pocket, left", PieceId::BackPocketLeft),
    ("back pocket, right", PieceId::BackPocketRight),
    ("back pocket lining, left", PieceId::BackLiningLeft),
    ("back pocket lining, right", PieceId::BackLiningRight),
    ("belt loop strip", PieceId::LoopStrip),
    ("extra inner pocket", PieceId::ExtraPocket),
];

/// What the old words of a finding are about. `None` where nothing was ever called so; values of files have no words here.
pub(crate) fn of_old_words(code: &str, words: &str) -> Option<Subject> {
    let measure = || {
        let mut all = MEASURES.iter();
        all.find(|(paper, _, _)| *paper == words)
            .map(|m| Subject::Measure(m.2))
    };
    let seam = || SeamId::of(words).map(Subject::Seam);
    let part = || {
        let mut all = PARTS.iter();
        all.find(|(known, _)| *known == words)
            .map(|p| Subject::Part(p.1))
    };
    let whole = || {
        PIECES
            .iter()
            .find(|(known, _)| words.to_lowercase() == *known)
    };
    let piece = || whole().map(|p| Subject::Piece(p.1));
    if OF_MEASURES.contains(&code) {
        return measure();
    }
    if OF_SEAMS.contains(&code) {
        return seam();
    }
    // Cutting names pieces and the seams that it walks with a capital, and never the parts that are called like them.
    if code.starts_with("cutting::") && words.starts_with(char::is_uppercase) {
        return part().or_else(piece);
    }
    rows(words)
        .or_else(|| tolerance(words))
        .or_else(|| named(words))
        .or_else(part)
        .or_else(seam)
        .or_else(piece)
        .or_else(measure)
}

/// "inseam, row 2", and "inseam, rows 1 and 2".
fn rows(words: &str) -> Option<Subject> {
    let (seam, rest) = words.split_once(", row")?;
    let seam = SeamId::of(seam)?;
    if let Some(both) = rest.strip_prefix("s ") {
        let (first, second) = both.split_once(" and ")?;
        return Some(Subject::Rows(
            seam,
            first.parse().ok()?,
            second.parse().ok()?,
        ));
    }
    Some(Subject::Row(seam, rest.strip_prefix(' ')?.parse().ok()?))
}

fn tolerance(words: &str) -> Option<Subject> {
    let title = words.strip_suffix(", tolerance")?;
    let mut all = MEASURES.iter();
    all.find(|(_, chart, _)| *chart == title)
        .map(|m| Subject::Tolerance(m.2))
}

/// What was named by what the maker called it: "cloth tideline-14, skew", "label main-label".
fn named(words: &str) -> Option<Subject> {
    let piece = |name: &str| PIECES.iter().find(|(known, _)| *known == name).map(|p| p.1);
    if words == "rivet at the pocket mouth" {
        return Some(Subject::RivetOn(PieceId::Front));
    }
    if let Some(on) = words.strip_prefix("rivet on ").and_then(piece) {
        return Some(Subject::RivetOn(on));
    }
    if let Some(of) = words.strip_prefix("buttonhole, ").and_then(piece) {
        return Some(Subject::Buttonhole(of));
    }
    if let Some(from) = words.strip_prefix("buttonhole for ") {
        return Some(Subject::ButtonholeFor(from.to_owned()));
    }
    let (kind, name) = words.split_once(' ')?;
    let (key, aspect) = name.split_once(", ").unwrap_or((name, ""));
    let key = key.to_owned();
    Some(match (kind, aspect) {
        ("cloth", "") => Subject::Cloth(key),
        ("cloth", "wash test") => Subject::WashTest(key),
        ("cloth", "warp shrinkage") => Subject::Shrinkage(key, Along::Warp),
        ("cloth", "weft shrinkage") => Subject::Shrinkage(key, Along::Weft),
        ("cloth", "skew") => Subject::ClothSkew(key),
        ("yarn", "") => Subject::Yarn(key),
        ("yarn", "on the needle") => Subject::NeedleYarn(key),
        ("yarn", "on looper and bobbin") => Subject::UnderYarn(key),
        ("trim", "") => Subject::Trim(key),
        ("label", "") => Subject::Label(key),
        ("rivet", "") => Subject::Rivet(key),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_of_old_words_is_still_read() {
        for (code, words, subject) in [
            ("sewing::row-near-edge", "inseam, row 1", "row:inseam/1"),
            (
                "sewing::row-gauge",
                "back_pocket_set, rows 1 and 2",
                "rows:back_pocket_set/1/2",
            ),
            (
                "sewing::tolerance-wide",
                "yoke at centre back, tolerance",
                "tolerance:yoke_centre",
            ),
            ("sewing::needs-stretch", "seat", "measure:seat"),
            ("sewing::no-rows", "seat", "seam:seat"),
            ("fit::foot-passage", "hem", "measure:hem"),
            ("sewing::roping", "hem", "seam:hem"),
            ("sewing::fly-holes", "fly", "part:fly"),
            (
                "fit::outseam-walk",
                "outseam, knee to hip",
                "part:outseam-knee-to-hip",
            ),
            (
                "fit::line-smooth",
                "waist across the outseam",
                "part:waist-across-outseam",
            ),
            ("cutting::band", "Waistband", "piece:band"),
            ("cutting::seam-before-wash", "Yoke seam", "part:join-yoke"),
            ("cutting::skew", "cloth tideline-14", "cloth:tideline-14"),
            (
                "cutting::wash-test",
                "cloth tideline-14, warp shrinkage",
                "warp-shrinkage:tideline-14",
            ),
            (
                "sewing::yarn-for-cloth",
                "yarn night-40, on looper and bobbin",
                "under-yarn:night-40",
            ),
            ("sewing::nickel", "trim shank-22", "trim:shank-22"),
            (
                "sewing::rivet-edge",
                "rivet on coin pocket",
                "rivet-on:coin_pocket",
            ),
            (
                "sewing::rivet-thin",
                "rivet at the pocket mouth",
                "rivet-on:front",
            ),
            (
                "sewing::hole-near-end",
                "buttonhole, fly facing",
                "buttonhole:fly_facing",
            ),
            (
                "sewing::hole-for-button",
                "buttonhole for shank-27",
                "buttonhole-for:shank-27",
            ),
        ] {
            let read = of_old_words(code, words).map(|subject| subject.code());
            assert_eq!(read.as_deref(), Some(subject), "{code}: {words}");
            let again = Subject::of(subject).map(|subject| subject.code());
            assert_eq!(again.as_deref(), Some(subject));
        }
        assert_eq!(of_old_words("sewing::no-rows", "nothing of ours"), None);
    }

    #[test]
    fn old_words_of_every_part_measure_and_piece_are_kept() {
        assert_eq!(PIECES.len(), PieceId::ALL.len());
        assert_eq!(MEASURES.len(), MeasureId::ALL.len());
        for (words, part) in PARTS {
            assert_eq!(
                Subject::of(&format!("part:{}", part.code())),
                Some(Subject::Part(*part)),
                "{words}"
            );
        }
    }
}
