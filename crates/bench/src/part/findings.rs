//! What was noticed about the style in the size shown, worst first.

use draft::{Finding, PieceId, Severity};
use drawing::View;
use maud::{Markup, html};
use serde_json::json;
use sewing::Garment;
use style::{MeasureId, PartId, SeamId, StyleDoc, Subject};
use words::Words;

use crate::addresses;
use crate::chosen_fields;
use crate::garment::{Picture, other_side};
use crate::typed_fields::{Fields, capital};
use crate::viewing::{Panel, Viewing};

/// How many there are.
pub(crate) fn count(garment: &Garment) -> usize {
    let all = garment.findings.iter();
    all.filter(|finding| finding.counts(&garment.doc)).count()
}

/// How many keep the style from being sewn as charted.
pub(crate) fn errors(garment: &Garment) -> usize {
    let errors = garment.findings.iter();
    errors
        .filter(|finding| finding.severity == Severity::Error && !finding.follows)
        .count()
}

pub(crate) fn render(
    show: &Fields<'_>,
    garment: &Garment,
    name: &str,
    see: &Viewing,
    picture: &Picture,
) -> Markup {
    let say = show.say;
    let doc = &show.loaded.style;
    let numbered = || garment.findings.iter().zip(1..);
    let muted = numbered()
        .filter(|(finding, _)| !finding.follows)
        .filter_map(|(finding, number)| Some((finding, number, finding.muted(doc)?)));
    let muted: Vec<_> = muted.collect();
    html! {
        section #findings aria-labelledby="findings-title" hidden[see.panel != Panel::Findings] {
            h2 #findings-title tabindex="-1" { (say.finding_title(garment.size)) }
            @if count(garment) == 0 {
                p.lead { (say.finding_none()) }
            } @else {
                p.lead { (say.finding_lead()) }
            }
            ol.findings {
                @for (finding, number) in numbered() {
                    @if finding.counts(doc) { (item(say, finding, number, garment, name, see, picture)) }
                }
            }
            @if !muted.is_empty() {
                h3 { (say.finding_muted()) }
                ul.findings.muted {
                    @for (finding, number, (at, why)) in &muted {
                        li id={ "finding-" (number) } tabindex="-1" {
                            span.number {}
                            div {
                                p.head { (capital(&finding.about(say))) }
                                p { (capital(&finding.message(say))) }
                                p.remedy { (capital(&why.reason)) }
                                (chosen_fields::button(&[chosen_fields::remove(&format!("muted[{at}]"))], say.finding_unmute(), None))
                                p.source { code { (finding.code) } }
                            }
                        }
                    }
                }
            }
        }
    }
}

fn item(
    say: &'static Words,
    finding: &Finding,
    number: usize,
    garment: &Garment,
    name: &str,
    see: &Viewing,
    picture: &Picture,
) -> Markup {
    let severity = finding.severity.word();
    let muted = garment.doc.muted.len();
    let place = place(&finding.subject, &garment.doc).or_else(|| of_piece(finding.place?.piece));
    let remedy = finding.remedy(say);
    let part = place.as_ref().map(|place| place.part.as_str());
    let marked = picture.marks.iter().any(|mark| mark.number == number);
    let elsewhere = elsewhere(say, number, finding, see, picture);
    html! {
        li.(severity) id={ "finding-" (number) } data-key={ (finding.code) " " (finding.subject) } data-finding=(number) data-about=[part] tabindex="-1" {
            @if marked { button.number type="button" data-show=(number) aria-label=(say.finding_show(number)) { (number) } }
            @else { span.number { (number) } }
            div {
                p.head {
                    span.severity { (capital(severity)) }
                    " "
                    @match &place {
                        Some(place) => a href="#panel" data-part=(place.part) data-panel=(place.panel.word()) { (capital(&finding.about(say))) },
                        None => span { (capital(&finding.about(say))) },
                    }
                }
                p { (capital(&finding.message(say))) }
                @if let Some(remedy) = &remedy { p.remedy { (capital(remedy)) } }
                @if let Some(edit) = finding.edit.as_ref().and_then(|edit| serde_json::to_value(edit).ok()) {
                    (chosen_fields::button(&[edit], say.finding_remedy(), Some(&say.finding_remedy_label(remedy.as_deref().unwrap_or_default()))))
                }
                @if finding.code == "fit::conflict" { (followers(say, garment)) }
                @if finding.severity != Severity::Error { (muting(say, finding, number, muted)) }
                p.source {
                    (finding.source(say)) " · " code { (finding.code) }
                    @if let Some((words, to)) = &elsewhere {
                        " · " a href=(addresses::style(name, to)) data-swap { (words) }
                    }
                }
            }
        }
    }
}

/// What goes with a conflict, folded under it.
fn followers(say: &'static Words, garment: &Garment) -> Markup {
    let all = || garment.findings.iter().filter(|finding| finding.follows);
    html! {
        @if all().next().is_some() {
            details.followers {
                summary { (say.finding_followers(all().count())) }
                ul {
                    @for finding in all() {
                        li { (capital(&finding.about(say))) ": " (finding.message(say)) " " code { (finding.code) } }
                    }
                }
            }
        }
    }
}

/// A field for the reason why the maker lives with it. `muted` is how many findings are muted already.
fn muting(say: &'static Words, finding: &Finding, number: usize, muted: usize) -> Markup {
    let value = json!({ "code": finding.code, "about": finding.subject.code(), "reason": "" });
    let edit = match muted {
        // A file that mutes nothing has no list to put one into.
        0 => chosen_fields::set("muted", json!([value])),
        _ => chosen_fields::insert(&format!("muted[{muted}]"), value),
    };
    html! {
        details.muting {
            summary { (say.finding_mute()) }
            div {
                input type="text" id={ "mute-" (number) } data-told="reason" aria-label=(say.finding_reason_label(number))
                    placeholder=(say.finding_reason()) autocomplete="off" maxlength="200";
                button.small type="button" data-tell=(edit) data-then="findings-title" { (say.finding_mute()) }
            }
        }
    }
}

/// Where a finding lies that this picture does not show, and the way there.
fn elsewhere(
    say: &'static Words,
    number: usize,
    finding: &Finding,
    see: &Viewing,
    picture: &Picture,
) -> Option<(&'static str, Viewing)> {
    let on_plate = picture.on_paper && finding.place.is_some();
    let (words, view) = if on_plate {
        (say.finding_on_pair(), see.view)
    } else if picture.other_side.contains(&number) {
        match other_side(see.view) {
            View::Front => (say.finding_on_front(), View::Front),
            View::Back => (say.finding_on_back(), View::Back),
        }
    } else {
        return None;
    };
    let to = Viewing {
        view,
        plate: None,
        ..see.clone()
    };
    Some((words, to))
}

/// Where the thing a finding is about can be changed.
struct Place {
    panel: Panel,
    part: String,
}

impl Place {
    fn new(panel: Panel, kind: &str, code: &str) -> Option<Self> {
        let part = format!("{kind}:{code}");
        Some(Self { panel, part })
    }

    fn measure(measure: MeasureId) -> Option<Self> {
        Self::new(Panel::Fit, "measure", measure.code())
    }

    fn seam(seam: SeamId) -> Option<Self> {
        Self::new(Panel::Construction, "seam", seam.code())
    }

    fn group(key: &str) -> Option<Self> {
        Self::new(Panel::Details, "group", key)
    }
}

/// Where what a finding is about is decided; `None` for what follows from much.
fn place(subject: &Subject, doc: &StyleDoc) -> Option<Place> {
    match subject {
        Subject::Part(part) => of_part(*part),
        Subject::Measure(measure) | Subject::Tolerance(measure) => Place::measure(*measure),
        Subject::Seam(seam) | Subject::Row(seam, _) | Subject::Rows(seam, _, _) => {
            Place::seam(*seam)
        }
        Subject::Piece(piece) | Subject::LeftHalf(piece) | Subject::RightHalf(piece) => {
            of_piece(*piece)
        }
        Subject::Cloth(_)
        | Subject::WashTest(_)
        | Subject::Shrinkage(..)
        | Subject::ClothSkew(_) => Place::group("cloth"),
        Subject::Yarn(_) | Subject::NeedleYarn(_) | Subject::UnderYarn(_) => {
            Place::new(Panel::Yarn, "panel", "yarn")
        }
        Subject::Trim(key) => of_trim(key, doc),
        Subject::Label(_) => Place::group("labels"),
        Subject::Rivet(_) | Subject::RivetOn(_) => Place::group("rivets"),
        Subject::Buttonhole(PieceId::Band) => Place::group("band"),
        Subject::Buttonhole(_) | Subject::ButtonholeFor(_) => Place::group("fly"),
        Subject::Value(value) => of_value(value.path(), doc),
        Subject::Other(_) => None,
    }
}

/// Where a part is decided.
fn of_part(part: PartId) -> Option<Place> {
    use PartId::{
        BackCentreAtWaist, BackCentreOnBand, BackCrease, BackCrotch, BackCrotchCurve,
        BackHemAtCrease, BackHemAtInseam, BackHemAtOutseam, BackOutseam, BackPanel, BackPocket,
        BackPockets, Band, BandButton, BandSeam, Bartacks, BeltLoop, BeltLoops, Chart, CoinPocket,
        Crotch, CrotchCurves, CrotchLine, CrotchPoint, ExtraPocket, Fly, FrontCentreAtWaist,
        FrontCrease, FrontCrotch, FrontCrotchCurve, FrontHemAtCrease, FrontHemAtInseam,
        FrontHemAtOutseam, FrontOutseam, FrontPanel, HemAcrossInseam, HemAcrossOutseam, Hip,
        InseamHemToKnee, InseamKneeToCrotch, JoinBagFoot, JoinBand, JoinFlyEdge, JoinFrontRise,
        JoinInseam, JoinMouth, JoinOutseam, JoinSeat, JoinYoke, KneeOnInseam, KneeOnOutseam,
        Labels, LeftBackPocket, LeftBandEndInner, LeftBandEndLower, LeftSideOnBand, LegBalance,
        LegBelowKnee, MouthOnOutseam, OtherTexts, OutseamAcrossYoke, OutseamAndYoke,
        OutseamAtMouth, OutseamHemToKnee, OutseamHipToWaist, OutseamKneeToHip, OwnPattern, Patch,
        PocketBag, PocketMouth, RightBackPocket, RightBandEndInner, RightBandEndLower,
        RightSideOnBand, Rises, SeatAcrossYoke, SeatAndYoke, SeatSeam, SewingThread,
        WaistAcrossOutseam, WaistAtMouth, Waistband, WholeCrotch, Workroom, YokeSeam,
        YokeSeamMiddle, Zip,
    };
    match part {
        Chart => Place::measure(MeasureId::Waist),
        OutseamHemToKnee | OutseamKneeToHip | OutseamHipToWaist => {
            Place::measure(MeasureId::Outseam)
        }
        InseamHemToKnee | InseamKneeToCrotch => Place::measure(MeasureId::Inseam),
        SeatAndYoke | SeatSeam | JoinSeat => Place::seam(SeamId::Seat),
        OutseamAndYoke | JoinOutseam => Place::seam(SeamId::Outseam),
        Crotch | CrotchPoint | CrotchCurves | CrotchLine | FrontCrotchCurve | BackCrotchCurve
        | FrontCrotch | BackCrotch | WholeCrotch | JoinInseam => Place::seam(SeamId::Inseam),
        YokeSeam | JoinYoke => Place::seam(SeamId::Yoke),
        JoinFrontRise => Place::seam(SeamId::FrontRise),
        PocketMouth | JoinMouth => Place::seam(SeamId::Mouth),
        Fly => Place::seam(SeamId::Fly),
        Band => Place::seam(SeamId::Band),
        Waistband => of_piece(PieceId::Band),
        PocketBag => of_piece(PieceId::PocketBag),
        CoinPocket => of_piece(PieceId::CoinPocket),
        FrontPanel => of_piece(PieceId::Front),
        BackPanel => of_piece(PieceId::Back),
        BandButton | BandSeam | JoinBand | LeftBandEndLower | RightBandEndLower
        | RightBandEndInner | LeftBandEndInner | LeftSideOnBand | BackCentreOnBand
        | RightSideOnBand => Place::group("band"),
        BeltLoop | BeltLoops => Place::group("loops"),
        BackPocket | BackPockets | LeftBackPocket | RightBackPocket => Place::group("back"),
        ExtraPocket => Place::group("extra"),
        JoinBagFoot => Place::group("bag"),
        Patch => Place::group("patch"),
        Labels => Place::group("labels"),
        Bartacks => Place::group("bartacks"),
        Zip | JoinFlyEdge => Place::group("fly"),
        OwnPattern | Workroom | SewingThread | OtherTexts | Rises | LegBalance | FrontCrease
        | BackCrease | FrontOutseam | BackOutseam | LegBelowKnee | OutseamAtMouth
        | WaistAtMouth | FrontCentreAtWaist | BackCentreAtWaist | FrontHemAtInseam
        | FrontHemAtOutseam | BackHemAtInseam | BackHemAtOutseam | FrontHemAtCrease
        | BackHemAtCrease | SeatAcrossYoke | OutseamAcrossYoke | WaistAcrossOutseam
        | HemAcrossOutseam | HemAcrossInseam | KneeOnOutseam | Hip | KneeOnInseam
        | YokeSeamMiddle | MouthOnOutseam => None,
    }
}

/// Where it is decided that a trim is used.
fn of_trim(key: &str, doc: &StyleDoc) -> Option<Place> {
    let fly = [
        Some(&doc.fly.band_button),
        doc.fly.button.as_ref(),
        doc.fly.zip.as_ref(),
    ];
    if doc.rivets.as_ref().is_some_and(|rivets| rivets.trim == key) {
        Place::group("rivets")
    } else if fly.into_iter().flatten().any(|trim| trim == key) {
        Place::group("fly")
    } else if doc.patch.as_ref().is_some_and(|patch| patch.trim == key) {
        Place::group("patch")
    } else if doc.labels.iter().any(|label| label.trim == key) {
        Place::group("labels")
    } else {
        None
    }
}

/// Where a value of a file is changed, by its path.
fn of_value(path: &str, doc: &StyleDoc) -> Option<Place> {
    let mut steps = path.split(['.', '[']);
    match (steps.next()?, steps.next().unwrap_or_default()) {
        ("chart", measure) => Place::measure(MeasureId::of(measure)?),
        ("seams", seam) => Place::seam(SeamId::of(seam)?),
        ("pockets", pocket) => Place::group(pocket),
        ("cloths", _) => Place::group("cloth"),
        ("yarns", _) => Place::new(Panel::Yarn, "panel", "yarn"),
        ("trims", trim) => of_trim(trim, doc),
        ("cutting", _) => Place::group("band"),
        (group @ ("fly" | "band" | "loops" | "patch" | "bartacks" | "wash"), _) => {
            Place::group(group)
        }
        _ => None,
    }
}

/// Where a piece is decided.
fn of_piece(piece: PieceId) -> Option<Place> {
    Place::new(Panel::Details, "piece", piece.code())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_a_finding_is_about_leads_to_where_it_is_changed() {
        let folder = concat!(
            env!("CARGO_MANIFEST_DIR"),
            "/../style/demo/saltmarsh/styles/ferryman"
        );
        let doc = style::load(folder.as_ref()).expect("the demo").style;
        let part = |code: &str| {
            let subject = Subject::of(code).expect("a subject");
            place(&subject, &doc).map(|place| place.part)
        };
        for (subject, leads_to) in [
            ("seam:front_rise", "seam:front_rise"),
            ("part:join-seat", "seam:seat"),
            ("measure:thigh", "measure:thigh"),
            ("tolerance:yoke_centre", "measure:yoke_centre"),
            ("value:seams.inseam.rows[0].offset", "seam:inseam"),
            ("value:pockets.coin.drop", "group:coin"),
            ("value:wash.steps[0].temperature", "group:wash"),
            ("piece:back", "piece:back"),
            ("row:inseam/2", "seam:inseam"),
            ("trim:rivet-9", "group:rivets"),
            ("trim:shank-22", "group:fly"),
            ("yarn:rope-80", "panel:yarn"),
            ("part:chart", "measure:waist"),
        ] {
            assert_eq!(part(subject).as_deref(), Some(leads_to), "{subject}");
        }
        assert_eq!(part("part:hip"), None);
        assert!(place(&Subject::Other("the weather".to_owned()), &doc).is_none());
    }
}
