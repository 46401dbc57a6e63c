//! What was noticed about the style in the size shown, worst first.

use draft::{Finding, PieceId, Severity};
use maud::{Markup, html};
use sewing::Garment;
use style::known;

use crate::field::capital;
use crate::see::{Panel, See};

/// How many there are.
pub(crate) fn count(garment: &Garment) -> usize {
    garment.findings.len()
}

/// How many keep the style from being sewn as charted.
pub(crate) fn errors(garment: &Garment) -> usize {
    let errors = garment.findings.iter();
    errors
        .filter(|finding| finding.severity == Severity::Error)
        .count()
}

pub(crate) fn render(garment: &Garment, see: &See) -> Markup {
    html! {
        section #findings aria-labelledby="findings-title" hidden[see.panel != Panel::Findings] {
            h2 #findings-title { "Findings in size " (garment.size) }
            @if count(garment) == 0 {
                p.lead { "Nothing was found that would keep this from being sewn as charted." }
            }
            ol.findings {
                @for finding in &garment.findings { (item(finding)) }
            }
        }
    }
}

fn item(finding: &Finding) -> Markup {
    let severity = finding.severity.word();
    html! {
        li.(severity) {
            p.head {
                span.severity { (capital(severity)) }
                " "
                @match place(&finding.about) {
                    Some(place) => a href="#panel" data-part=(place.part) data-panel=(place.panel.word()) { (capital(place.name)) },
                    None => span { (capital(&finding.about)) },
                }
            }
            p { (capital(&finding.message)) }
            @if let Some(remedy) = &finding.remedy { p.remedy { (capital(remedy)) } }
            p.source { (finding.source) " · " code { (finding.code) } }
        }
    }
}

/// Where the thing a finding is about can be changed.
struct Place {
    panel: Panel,
    part: String,
    name: &'static str,
}

fn place(about: &str) -> Option<Place> {
    let about = about.to_lowercase();
    let seam = known::SEAMS
        .iter()
        .find(|seam| about == seam.title || about == seam.name);
    let measure = draft::measure::MEASURES
        .iter()
        .find(|measure| about == measure.name.to_lowercase());
    let piece = PieceId::ALL
        .iter()
        .find(|piece| about == piece.name().to_lowercase());
    let place = |panel, kind: &str, code: &str, name| Place {
        panel,
        part: format!("{kind}:{code}"),
        name,
    };
    match (seam, measure, piece) {
        _ if about == "chart" => Some(place(Panel::Fit, "measure", "waist", "chart")),
        (Some(seam), _, _) => Some(place(Panel::Construction, "seam", seam.name, seam.title)),
        (_, Some(measure), _) => Some(place(Panel::Fit, "measure", measure.key, measure.name)),
        (_, _, Some(piece)) => Some(place(Panel::Fit, "piece", piece.code(), piece.name())),
        _ => None,
    }
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
        assert_eq!(part("Back").as_deref(), Some("piece:back"));
        assert_eq!(part("the weather"), None);
    }
}
