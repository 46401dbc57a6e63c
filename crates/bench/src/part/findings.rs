//! What was noticed about the style in the size shown, worst first.

use draft::Finding;
use maud::{Markup, html};
use sewing::Garment;
use style::known;

use crate::field::capital;
use crate::see::{Panel, See};

/// How many there are.
pub(crate) fn count(garment: &Garment) -> usize {
    garment.findings.len()
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
                    Some((panel, part)) => a href="#panel" data-part=(part) data-panel=(panel.word()) { (capital(&finding.about)) },
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
fn place(about: &str) -> Option<(Panel, String)> {
    let about = about.to_lowercase();
    let seam = known::SEAMS
        .iter()
        .find(|seam| about == seam.title || about == seam.name);
    let measure = || {
        known::MEASURES
            .iter()
            .find(|measure| about == measure.title || about == measure.name)
    };
    match seam {
        Some(seam) => Some((Panel::Construction, format!("seam:{}", seam.name))),
        None => measure().map(|measure| (Panel::Fit, format!("measure:{}", measure.name))),
    }
}
