//! The words of the sewing order: what a seam is called there, what is done to it, and what to mind.
//! Common practice, but for the numbers, which come from the style.

use draft::EaseOf;
use style::{BandMethod, Construction, HemEnds, MeasureId, Seam, SeamId};
use trade::Length;

use super::passes::{Does, Holding, Pass};
use super::plan::says;
use super::told::told;
use crate::allowance::{Fell, allowances};
use crate::construct::construct;
use crate::context::mm;
use crate::garment::{Garment, RowEnd};
use crate::seam::facts;
use crate::seam_words::{lies, widths};

/// What is done to a seam: "fell".
pub(super) fn phrase(seam: SeamId, does: Does) -> &'static str {
    let own = told(seam).phrases.iter().find(|(of, _)| *of == does);
    if let Some((_, phrase)) = own {
        return phrase;
    }
    match does {
        Does::Neatens => "overedge the raw edges",
        Does::Joins => "join",
        Does::Holds(holding) => match holding {
            Holding::Fell => "fell",
            Holding::Topstitch => "topstitch",
            Holding::Hem => "hem",
            Holding::Set => "sew on",
            Holding::Round => "sew round ends and top",
            Holding::Bind => "bind the raw edge",
            Holding::TurnIn => "turn in the curved edge",
            Holding::Enclose => "turn and enclose the edges",
            Holding::Strip => "fold and sew",
            Holding::Decorate => "sew the decoration",
        },
    }
}

/// What to mind at a pass.
pub(super) fn of_pass(garment: &Garment, seam: &Seam, pass: &Pass, in_tube: bool) -> Vec<String> {
    let mut out = match pass.does {
        Does::Neatens => neatened(seam),
        Does::Joins => joined(garment, seam, in_tube),
        Does::Holds(holding) => held(garment, seam, holding, in_tube),
    };
    let first = matches!(
        pass.does,
        Does::Joins | Does::Holds(Holding::Fell | Holding::Set)
    );
    if first
        && pass
            .rows
            .first()
            .is_some_and(|row| *row == 1 || pass.does == Does::Joins)
    {
        out.extend(meets(garment, seam));
    }
    out.extend(ends(garment, seam, pass));
    out
}

/// What has to meet, to be caught or to be eased when a seam is first sewn.
fn meets(garment: &Garment, seam: &Seam) -> Vec<String> {
    let shape = &garment.doc.shape;
    let some = |length: Length| length.is_finite() && length > Length::mm(0.05);
    let told = told(seam.id);
    let mut out = says(told.meets);
    match told.ease {
        EaseOf::InseamStretch if some(shape.inseam_stretch) => out.push(format!(
            "stretch the back by {} on each leg between knee and crotch",
            mm(shape.inseam_stretch)
        )),
        EaseOf::Band if some(shape.band_ease) => out.push(format!(
            "ease {} of the body onto the band",
            mm(shape.band_ease)
        )),
        EaseOf::None | EaseOf::InseamStretch | EaseOf::Band => {}
    }
    out
}

/// What to mind where the style states no row for it.
pub(super) fn of_unstated(
    garment: &Garment,
    seam: &Seam,
    does: Does,
    in_tube: bool,
) -> Vec<String> {
    match does {
        Does::Neatens => neatened(seam),
        _ => joined(garment, seam, in_tube),
    }
}

fn neatened(seam: &Seam) -> Vec<String> {
    let single = seam.id == SeamId::FlyEdge;
    says(&[match (single, seam.construction) {
        (true, Construction::Overlocked) => {
            "both plies together, on their finished line; cut nothing off"
        }
        (true, _) => "each ply by itself",
        (false, Construction::PressedOpen) => {
            "each edge by itself, before the seam is joined; cut nothing off"
        }
        (false, _) => "both raw edges together; cut nothing off",
    }])
}

fn joined(garment: &Garment, seam: &Seam, in_tube: bool) -> Vec<String> {
    let plain = mm(allowances(seam, garment.pattern.spec[MeasureId::HemDepth]).over);
    let how = if seam.construction == Construction::FrenchSeam {
        "wrong sides together, from the fold to the outseam; trim, so that nothing shows after turning".to_owned()
    } else if seam.id == SeamId::Outseam && in_tube {
        format!(
            "right sides together, {plain} on each ply; the legs are inside out, this closes them"
        )
    } else {
        (told(seam.id).joined)(&plain)
    };
    let mut out = vec![how];
    if matches!(
        seam.construction,
        Construction::SafetyStitched | Construction::Overlocked
    ) {
        out.push(lies(garment, seam));
    }
    out
}

fn held(garment: &Garment, seam: &Seam, holding: Holding, in_tube: bool) -> Vec<String> {
    let spec = &garment.pattern.spec;
    let doc = &garment.doc;
    let mut out = Vec::new();
    match holding {
        Holding::Fell => {
            let fell = Fell::of(seam);
            out.push(lies(garment, seam));
            out.push(format!(
                "allowances {}; {} turned in on each edge, no raw edge may show on either face",
                widths(garment, seam),
                mm(fell.turn)
            ));
        }
        Holding::Topstitch => out.push(topstitched(garment, seam)),
        Holding::Hem if seam.id == SeamId::Hem => {
            out.push(format!(
                "{} finished depth all round",
                mm(spec[MeasureId::HemDepth])
            ));
            out.push(format!("begin and end at the {}", doc.hem.join));
            if doc.hem.roping {
                out.push(
                    "let the feed pull the upper ply ahead: diagonal ridges are wanted".to_owned(),
                );
            }
        }
        Holding::Hem => out.push(lies(garment, seam)),
        Holding::Set => out.extend(set_on(garment, seam)),
        Holding::Round => {
            out.push(format!(
                "begin {} below the band seam at the end of the fly, up the end, along the top, down the other end",
                mm(doc.band.start_below)
            ));
            out.push("finish in the V: its point is the place of the button".to_owned());
        }
        Holding::Bind => out.extend(says(&[
            "strip wrapped evenly; catch both its edges",
            "the strip is not among the pieces: ask for its cloth and width",
        ])),
        Holding::TurnIn => out.push(lies(garment, seam)),
        Holding::Enclose => {
            out.push(
                "turn, push the seam out to its edge; no thread of the raw edges may show"
                    .to_owned(),
            );
        }
        Holding::Strip => {
            out.push(format!(
                "{} finished; {}",
                mm(spec[MeasureId::LoopWidth]),
                lies(garment, seam)
            ));
        }
        Holding::Decorate => {
            out.push("through the pocket alone, before it is lined and set on".to_owned());
        }
    }
    out.extend(reach(seam, in_tube));
    out
}

fn topstitched(garment: &Garment, seam: &Seam) -> String {
    match told(seam.id).topstitched {
        Some(how) => how(garment).to_owned(),
        None => lies(garment, seam),
    }
}

/// Where a piece is set on another its place is told; of any other seam first how it lies.
fn set_on(garment: &Garment, seam: &Seam) -> Vec<String> {
    let set = told(seam.id).set;
    let mut out = Vec::new();
    if set.is_empty() || facts(seam.id).onto.is_empty() {
        out.push(lies(garment, seam));
    }
    out.extend(says(set));
    if seam.id == SeamId::Band && garment.doc.band.method == BandMethod::AllRound {
        out.push("end to end without a stop".to_owned());
    }
    out
}

/// Which way the work lies under the machine.
fn reach(seam: &Seam, in_tube: bool) -> Option<String> {
    let reach = told(seam.id).reach?;
    Some(if in_tube { reach.tube } else { reach.open }.to_owned())
}

/// What a way of ending a row asks for.
fn ends(garment: &Garment, seam: &Seam, pass: &Pass) -> Vec<String> {
    let rows = || {
        let of_pass = |r: &&crate::StitchRow| r.seam == seam.id && pass.rows.contains(&r.number);
        garment.rows.iter().filter(of_pass)
    };
    let any = |end| rows().any(|row| row.begins == end || row.ends == end);
    let mut out = Vec::new();
    if any(RowEnd::TuckedIn) {
        out.push("tuck the thread ends into the fold at both ends while stitching".to_owned());
    }
    if any(RowEnd::TiedByHand) {
        let left = if seam.id == SeamId::Hem && garment.doc.hem.ends == HemEnds::TiedByHand {
            "leave 10 cm of thread to be tied"
        } else {
            "leave thread to be tied by hand"
        };
        out.push(left.to_owned());
    }
    if any(RowEnd::Overlapped) {
        out.push("run on 10 mm over the start".to_owned());
    }
    out
}

/// What is pressed before the last rows of a seam, and what to mind; `more` rows follow.
pub(super) fn pressing(
    garment: &Garment,
    seam: &Seam,
    more: bool,
    in_tube: bool,
) -> Option<(&'static str, Vec<String>)> {
    let what = match seam.construction {
        Construction::PressedOpen => "press open",
        Construction::MockFelled => "press to one side",
        Construction::SafetyStitched | Construction::Overlocked
            if more && seam.id != SeamId::FlyEdge =>
        {
            "press to one side"
        }
        Construction::TurnedEdge => "turn and press",
        Construction::FoldedHem => "fold and press",
        _ => return None,
    };
    let mut out = match seam.construction {
        Construction::TurnedEdge => {
            says(&["edge rolled a little to the inside, so that what lies behind does not show"])
        }
        Construction::FoldedHem => vec![format!(
            "{}; {} deep",
            construct(seam.construction).lies,
            mm(garment.pattern.spec[MeasureId::HemDepth])
        )],
        _ => vec![lies(garment, seam)],
    };
    if in_tube {
        out.push("the leg is a tube now: over a sleeve board or on a leg press".to_owned());
    }
    Some((what, out))
}
