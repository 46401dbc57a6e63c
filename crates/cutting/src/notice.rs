//! Everything noticed about a style, from its chart to its cut pieces.
//!
//! A chart in conflict is drawn as near as may be, and whatever is then wrong with the pieces says nothing of its own. So
//! the way out of the conflict is tried: the style is made once more with it, in memory, and a finding that is not there
//! any more only followed from the conflict.

use std::cmp::Reverse;

use draft::{Finding, Remedy, remedies};
use sewing::Garment;
use style::{Collection, Size, StyleDoc};

use crate::cut::cut;
use crate::piece::CutSize;
use crate::plan::Plan;

const CONFLICT: &str = "fit::conflict";

/// How much further a value is taken where something else goes wrong at the nearest that drafts.
const FURTHER: [f64; 3] = [0.02, 0.05, 0.1];

/// The findings of one size.
pub type OfSize = (Size, Vec<Finding>);

/// What was noticed about the sizes of a run that were sewn and cut, the gravest first; what only follows from a conflict
/// comes last and says so ([`Finding::follows`]), and the conflict says what would end it.
#[must_use]
pub fn noticed(run: &[Garment], cuts: &[CutSize]) -> Vec<OfSize> {
    let mut all = together(run, cuts);
    let Some(garment) = run.iter().find(|garment| garment.conflict.is_some()) else {
        return all;
    };
    let (ways, mended) = ways_out(garment, &all);
    let base = garment.doc.sizes.base;
    let at = (garment.doc.sizes.all().count() > 1).then_some(base);
    for (garment, (size, findings)) in run.iter().zip(&mut all) {
        for finding in findings.iter_mut() {
            if finding.code == CONFLICT {
                say(finding, garment, &ways, at);
            } else {
                finding.follows = match &mended {
                    Some(mended) => !still_there(finding, *size, mended),
                    None => garment.conflict.is_some() && of_pieces(finding),
                };
            }
        }
        findings.sort_by_key(|finding| (finding.follows, Reverse(finding.severity)));
    }
    all
}

fn together(run: &[Garment], cuts: &[CutSize]) -> Vec<OfSize> {
    run.iter()
        .zip(cuts)
        .map(|(garment, cut)| {
            let mut findings = garment.findings.clone();
            findings.extend(cut.findings.iter().cloned());
            findings.sort_by_key(|finding| Reverse(finding.severity));
            (garment.size, findings)
        })
        .collect()
}

/// The ways out under which nothing else goes wrong, and what is noticed under the first. Where something goes wrong under
/// each, those under which the conflict at least is gone; the rest is said once the maker has taken one.
fn ways_out(garment: &Garment, now: &[OfSize]) -> (Vec<Remedy>, Option<Vec<OfSize>>) {
    let sizes: Vec<Size> = now.iter().map(|(size, _)| *size).collect();
    // The first is made in every size, for all that follows; of another only the ends of the run are looked at.
    let ends: Vec<Size> = [sizes.first(), sizes.last()]
        .into_iter()
        .flatten()
        .copied()
        .collect();
    let (mut good, mut others) = (Vec::new(), Vec::new());
    for way in remedies(&garment.doc) {
        let sizes = if good.is_empty() { &sizes } else { &ends };
        let further = FURTHER.iter().filter_map(|share| way.further(*share));
        // What only just drafts may leave no room for the allowances.
        for way in [way.clone()].into_iter().chain(further) {
            let made = made(&way.applied(&garment.doc), &garment.collection, sizes);
            if new_errors(&made, now).next().is_none() {
                good.push((way, made));
                break;
            }
            if !new_errors(&made, now).any(|error| error.code == CONFLICT) {
                others.push((way, made));
            }
        }
    }
    let mut kept = if good.is_empty() { others } else { good }.into_iter();
    let first = kept.next();
    let (first, mended) = first.map_or((None, None), |(way, made)| (Some(way), Some(made)));
    let ways = first.into_iter().chain(kept.map(|(way, _)| way));
    (ways.collect(), mended)
}

fn made(doc: &StyleDoc, collection: &Collection, sizes: &[Size]) -> Vec<OfSize> {
    let plan = Plan::of(doc);
    let run: Vec<Garment> = sizes
        .iter()
        .map(|size| sewing::make(doc, collection, *size))
        .collect();
    let cuts: Vec<CutSize> = run.iter().map(|garment| cut(garment, &plan)).collect();
    together(&run, &cuts)
}

/// The errors that were not there before, and a conflict that stayed.
fn new_errors<'a>(made: &'a [OfSize], before: &'a [OfSize]) -> impl Iterator<Item = &'a Finding> {
    let errors = |all: &'a [OfSize]| {
        let findings = all.iter().flat_map(|(_, findings)| findings);
        findings.filter(|finding| finding.is_error())
    };
    errors(made).filter(move |error| {
        error.code == CONFLICT || !errors(before).any(|known| alike(known, error))
    })
}

fn alike(a: &Finding, b: &Finding) -> bool {
    a.code == b.code && a.subject == b.subject
}

fn still_there(finding: &Finding, size: Size, mended: &[OfSize]) -> bool {
    let of_size = mended.iter().filter(|(of, _)| *of == size);
    of_size
        .flat_map(|(_, findings)| findings)
        .any(|other| alike(other, finding) && other.severity >= finding.severity)
}

/// Where no way out is known: what was found on pieces that are only a compromise.
fn of_pieces(finding: &Finding) -> bool {
    finding.is_error() && finding.code.starts_with("cutting::")
}

fn say(finding: &mut Finding, garment: &Garment, ways: &[Remedy], at: Option<Size>) {
    let Some(conflict) = &garment.conflict else {
        return;
    };
    finding.message = conflict.with(ways, at);
    finding.remedy = ways.first().and_then(Remedy::advice);
    finding.edit = ways.first().and_then(Remedy::edit);
}
