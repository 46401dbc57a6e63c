//! What was noticed about the style in the size shown, worst first.

use draft::{Finding, PieceId, Severity};
use drawing::View;
use maud::{Markup, html};
use serde_json::json;
use sewing::Garment;
use style::{SeamId, known};

use crate::choice;
use crate::field::{Show, capital};
use crate::garment::{Picture, other_side};
use crate::route;
use crate::said::say;
use crate::see::{Panel, See};

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
    show: &Show<'_>,
    garment: &Garment,
    name: &str,
    see: &See,
    picture: &Picture,
) -> Markup {
    let doc = &show.loaded.style;
    let numbered = || garment.findings.iter().zip(1..);
    let muted = numbered()
        .filter(|(finding, _)| !finding.follows)
        .filter_map(|(finding, number)| Some((finding, number, finding.muted(doc)?)));
    let muted: Vec<_> = muted.collect();
    html! {
        section #findings aria-labelledby="findings-title" hidden[see.panel != Panel::Findings] {
            h2 #findings-title tabindex="-1" { (say().finding_title(garment.size)) }
            @if count(garment) == 0 {
                p.lead { (say().finding_none()) }
            } @else {
                p.lead { (say().finding_lead()) }
            }
            ol.findings {
                @for (finding, number) in numbered() {
                    @if finding.counts(doc) { (item(finding, number, garment, name, see, picture)) }
                }
            }
            @if !muted.is_empty() {
                h3 { (say().finding_muted()) }
                ul.findings.muted {
                    @for (finding, number, (at, why)) in &muted {
                        li id={ "finding-" (number) } tabindex="-1" {
                            span.number {}
                            div {
                                p.head { (capital(&finding.about)) }
                                p { (capital(&finding.message)) }
                                p.remedy { (capital(&why.reason)) }
                                (choice::button(&[choice::remove(&format!("muted[{at}]"))], say().finding_unmute(), None))
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
    finding: &Finding,
    number: usize,
    garment: &Garment,
    name: &str,
    see: &See,
    picture: &Picture,
) -> Markup {
    let severity = finding.severity.word();
    let muted = garment.doc.muted.len();
    let place = place(&finding.about).or_else(|| of_piece(finding.place?.piece));
    let part = place.as_ref().map(|place| place.part.as_str());
    let marked = picture.marks.iter().any(|mark| mark.number == number);
    let elsewhere = elsewhere(number, finding, see, picture);
    html! {
        li.(severity) id={ "finding-" (number) } data-key={ (finding.code) " " (finding.about) } data-finding=(number) data-about=[part] tabindex="-1" {
            @if marked { button.number type="button" data-show=(number) aria-label=(say().finding_show(number)) { (number) } }
            @else { span.number { (number) } }
            div {
                p.head {
                    span.severity { (capital(severity)) }
                    " "
                    @match &place {
                        Some(place) => a href="#panel" data-part=(place.part) data-panel=(place.panel.word()) { (capital(&finding.about)) },
                        None => span { (capital(&finding.about)) },
                    }
                }
                p { (capital(&finding.message)) }
                @if let Some(remedy) = &finding.remedy { p.remedy { (capital(remedy)) } }
                @if let Some(edit) = finding.edit.as_ref().and_then(|edit| serde_json::to_value(edit).ok()) {
                    (choice::button(&[edit], say().finding_remedy(), Some(&say().finding_remedy_label(finding.remedy.as_deref().unwrap_or_default()))))
                }
                @if finding.code == "fit::conflict" { (followers(garment)) }
                @if finding.severity != Severity::Error { (muting(finding, number, muted)) }
                p.source {
                    (finding.source) " · " code { (finding.code) }
                    @if let Some((words, to)) = &elsewhere {
                        " · " a href=(route::style(name, to)) data-swap { (words) }
                    }
                }
            }
        }
    }
}

/// What goes with a conflict, folded under it.
fn followers(garment: &Garment) -> Markup {
    let all = || garment.findings.iter().filter(|finding| finding.follows);
    html! {
        @if all().next().is_some() {
            details.followers {
                summary { (say().finding_followers(all().count())) }
                ul {
                    @for finding in all() {
                        li { (capital(&finding.about)) ": " (finding.message) " " code { (finding.code) } }
                    }
                }
            }
        }
    }
}

/// A field for the reason why the maker lives with it. `muted` is how many findings are muted already.
fn muting(finding: &Finding, number: usize, muted: usize) -> Markup {
    let value = json!({ "code": finding.code, "about": finding.about, "reason": "" });
    let edit = match muted {
        // A file that mutes nothing has no list to put one into.
        0 => choice::set("muted", json!([value])),
        _ => choice::insert(&format!("muted[{muted}]"), value),
    };
    html! {
        details.muting {
            summary { (say().finding_mute()) }
            div {
                input type="text" id={ "mute-" (number) } data-reason aria-label=(say().finding_reason_label(number))
                    placeholder=(say().finding_reason()) autocomplete="off" maxlength="200";
                button.small type="button" data-mute=(edit) { (say().finding_mute()) }
            }
        }
    }
}

/// Where a finding lies that this picture does not show, and the way there.
fn elsewhere(
    number: usize,
    finding: &Finding,
    see: &See,
    picture: &Picture,
) -> Option<(&'static str, See)> {
    let on_plate = picture.on_paper && finding.place.is_some();
    let (words, view) = if on_plate {
        (say().finding_on_pair(), see.view)
    } else if picture.other_side.contains(&number) {
        match other_side(see.view) {
            View::Front => (say().finding_on_front(), View::Front),
            View::Back => (say().finding_on_back(), View::Back),
        }
    } else {
        return None;
    };
    let to = See {
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

    fn seam(seam: SeamId) -> Option<Self> {
        Self::new(Panel::Construction, "seam", seam.code())
    }

    fn group(key: &str) -> Option<Self> {
        Self::new(Panel::Details, "group", key)
    }
}

/// Words that name a place where plies meet, or a detail, and where that is decided.
const NAMED: &[(&str, Option<SeamId>, &str)] = &[
    ("seat and yoke", Some(SeamId::Seat), ""),
    ("outseam and yoke", Some(SeamId::Outseam), ""),
    ("crotch", Some(SeamId::Inseam), ""),
    ("band", None, "band"),
    ("belt loop", None, "loops"),
    ("back pocket", None, "back"),
    ("coin pocket", None, "coin"),
    ("extra", None, "extra"),
    ("pocket bag", None, "bag"),
    ("patch", None, "patch"),
    ("label", None, "labels"),
    ("rivet", None, "rivets"),
    ("bartack", None, "bartacks"),
    ("buttonhole", None, "fly"),
    ("button", None, "fly"),
    ("zip", None, "fly"),
    ("fly", None, "fly"),
    ("cloth", None, "cloth"),
    ("lining", None, "back"),
];

fn place(about: &str) -> Option<Place> {
    let about = about.to_lowercase();
    if about == "chart" {
        return Place::new(Panel::Fit, "measure", "waist");
    }
    // "inseam, row 2" is about the seam.
    let whole = about
        .split_once(", row ")
        .map_or(about.as_str(), |(seam, _)| seam);
    // "fly width, tolerance" is about the measure.
    let charted = known::MEASURES.iter().find(|measure| {
        let rest = about.strip_prefix(measure.title);
        rest.is_some_and(|rest| rest.is_empty() || rest.starts_with(", "))
    });
    let seam = SeamId::ALL
        .into_iter()
        .find(|seam| whole == seam.title() || whole == seam.code());
    if let Some(seam) = seam {
        return Place::seam(seam);
    }
    let measure = draft::measure::MEASURES
        .iter()
        .find(|measure| about == measure.name.to_lowercase());
    if let Some(measure) = measure {
        return Place::new(Panel::Fit, "measure", measure.key);
    }
    if let Some(measure) = charted {
        return Place::new(Panel::Fit, "measure", measure.name);
    }
    let piece = PieceId::ALL
        .into_iter()
        .find(|piece| about == piece.name().to_lowercase());
    if let Some(piece) = piece {
        return of_piece(piece);
    }
    if about.starts_with("yarn ") {
        return Place::new(Panel::Yarn, "panel", "yarn");
    }
    let named = NAMED.iter().find(|(words, ..)| about.contains(words));
    named.and_then(|(_, seam, group)| match seam {
        Some(seam) => Place::seam(*seam),
        None => Place::group(group),
    })
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
        let part = |about| place(about).map(|place| place.part);
        assert_eq!(part("front_rise").as_deref(), Some("seam:front_rise"));
        assert_eq!(part("Seat seam").as_deref(), Some("seam:seat"));
        assert_eq!(part("thigh").as_deref(), Some("measure:thigh"));
        assert_eq!(
            part("yoke at centre back, tolerance").as_deref(),
            Some("measure:yoke_centre")
        );
        assert_eq!(part("hem depth").as_deref(), Some("measure:hem_depth"));
        assert_eq!(
            part("inseam, row 1, offset").as_deref(),
            Some("seam:inseam")
        );
        assert_eq!(part("Back").as_deref(), Some("piece:back"));
        assert_eq!(part("inseam, row 2").as_deref(), Some("seam:inseam"));
        assert_eq!(part("trim rivet-9").as_deref(), Some("group:rivets"));
        assert_eq!(part("yarn rope-80").as_deref(), Some("panel:yarn"));
        assert_eq!(part("the weather"), None);
    }
}
