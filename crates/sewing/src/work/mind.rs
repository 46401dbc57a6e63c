//! The words of the sewing order: what a seam is called there, what is done to it, and what to mind.
//! Common practice, but for the numbers, which come from the style.

use draft::PieceId;
use style::{BandMethod, Closing, Construction, HemEnds, MeasureId, Seam, known};
use trade::Length;

use super::passes::{Does, Holding, Pass};
use super::plan::says;
use crate::allowance::{Fell, allowances};
use crate::construct::construct;
use crate::context::mm;
use crate::describe::{capitalised, lies, widths};
use crate::garment::{Garment, RowEnd};

/// What a seam is called at the head of an operation.
pub(super) fn subject(seam: &str) -> String {
    let short = match seam {
        "coin_hem" | "coin_set" => "Coin pocket",
        "back_pocket_hem" | "back_pocket_set" | "decoration" => "Back pockets",
        "extra_hem" | "extra_set" => "Extra pocket",
        "facing_set" => "Hip pocket facings",
        "bag_close" => "Pocket bags",
        "mouth" => "Pocket mouths",
        "fly_edge" => "Fly facing",
        "band" => "Waistband",
        "front_rise" => "Front rise",
        "patch_set" => "Patch",
        "label_set" => "Labels",
        "yoke" => "Yokes",
        "inseam" => "Inseams",
        "outseam" => "Outseams",
        "hem" => "Hems",
        _ => return capitalised(known::seam_name(seam).map_or(seam, |s| s.title)),
    };
    short.to_owned()
}

/// What is done to a seam: "fell".
pub(super) fn phrase(seam: &str, does: Does) -> &'static str {
    match (does, seam) {
        (Does::Neatens, "fly_edge") => "overedge the curved edge",
        (Does::Neatens, _) => "overedge the raw edges",
        (Does::Joins, "mouth") => "join the bags to the fronts",
        (Does::Joins, "fly") => "join the facing to the left front",
        (Does::Joins, "band") => "join to the body",
        (Does::Joins, "bag_close") => "close",
        (Does::Joins, _) => "join",
        (Does::Holds(holding), _) => match (holding, seam) {
            (Holding::Fell, _) => "fell",
            (Holding::Topstitch, "band") => "sew down from outside",
            (Holding::Topstitch, "fly_edge") => "sew along the curved edge",
            (Holding::Topstitch, _) => "topstitch",
            (Holding::Hem, "hem") => "sew",
            (Holding::Hem, _) => "hem",
            (Holding::Set, "coin_set") => "set on its facing",
            (Holding::Set, "back_pocket_set") => "set on the backs",
            (Holding::Set, "facing_set") => "set on the bags",
            (Holding::Set, "extra_set") => "set on the bag",
            (Holding::Set, "band") => "set on the body",
            (Holding::Set, _) => "sew on",
            (Holding::Round, _) => "sew round ends and top",
            (Holding::Bind, _) => "bind the raw edge",
            (Holding::TurnIn, _) => "turn in the curved edge",
            (Holding::Enclose, _) => "turn and enclose the edges",
            (Holding::Strip, _) => "fold and sew",
            (Holding::Decorate, _) => "sew the decoration",
        },
    }
}

/// The pieces a seam is sewn onto without an edge of theirs in it.
pub(super) fn sewn_onto(seam: &str) -> &'static [PieceId] {
    use PieceId as P;
    match seam {
        "coin_set" => &[P::PocketFacing],
        "back_pocket_set" => &[P::Back],
        "decoration" => &[P::BackPocketLeft, P::BackPocketRight],
        "facing_set" | "extra_set" => &[P::PocketBag],
        "patch_set" | "label_set" => &[P::Band],
        _ => &[],
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
    match seam.name.as_str() {
        "seat" => says(&["the yoke seams meet at centre back"]),
        "inseam" => {
            let mut out = says(&["front rise and seat seam meet at the crotch"]);
            if some(shape.inseam_stretch) {
                out.push(format!(
                    "stretch the back by {} on each leg between knee and crotch",
                    mm(shape.inseam_stretch)
                ));
            }
            out
        }
        "outseam" => says(&["catch facing and bag at the top; the yoke seam keeps its height"]),
        "band" if some(shape.band_ease) => {
            vec![format!(
                "ease {} of the body onto the band",
                mm(shape.band_ease)
            )]
        }
        _ => Vec::new(),
    }
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
    match (seam.name.as_str(), seam.construction) {
        ("fly_edge", Construction::Overlocked) => {
            says(&["both plies together, on their finished line; cut nothing off"])
        }
        ("fly_edge", _) => says(&["each ply by itself"]),
        (_, Construction::PressedOpen) => {
            says(&["each edge by itself, before the seam is joined; cut nothing off"])
        }
        _ => says(&["both raw edges together; cut nothing off"]),
    }
}

fn joined(garment: &Garment, seam: &Seam, in_tube: bool) -> Vec<String> {
    let plain = mm(allowances(seam, garment.pattern.spec[MeasureId::HemDepth]).over);
    let how = match (seam.name.as_str(), seam.construction) {
        ("mouth", _) => {
            format!("right side of the front on the bag's upper layer, {plain} from the edge; clip the curve")
        }
        ("fly", _) => {
            format!("right sides together, {plain} from the edge, from the band edge to the foot of the fly")
        }
        ("band", _) => {
            format!("right side of the band on the right side of the body, {plain} from the edges; match centre back, sides and fronts")
        }
        ("bag_close", Construction::FrenchSeam) => {
            "wrong sides together, from the fold to the outseam; trim, so that nothing shows after turning".to_owned()
        }
        ("bag_close", _) => {
            format!("right sides together, {plain} on each layer, from the fold to the outseam")
        }
        ("front_rise", _) => {
            format!("right sides together, {plain} on each ply, from the foot of the fly to the crotch")
        }
        ("inseam", _) => {
            format!("right sides together, {plain} on each ply, from hem to hem over the crossing at the crotch")
        }
        ("outseam", _) if in_tube => {
            format!("right sides together, {plain} on each ply; the legs are inside out, this closes them")
        }
        _ => format!("right sides together, {plain} on each ply"),
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
        Holding::Hem if seam.name == "hem" => {
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
    match seam.name.as_str() {
        "fly" if garment.doc.fly.closing == Closing::Buttons => {
            "from the band edge down; fold the shield out of the way, catch the facing all along".to_owned()
        }
        "fly" => "from the band edge down; fold shield and zip out of the way, catch the facing all along".to_owned(),
        "mouth" => "through front and upper layer of the bag only; fold the under layer away".to_owned(),
        "band" => "inner edge turned in just past the joining row, so that this row catches it".to_owned(),
        _ => lies(garment, seam),
    }
}

fn set_on(garment: &Garment, seam: &Seam) -> Vec<String> {
    let doc = &garment.doc;
    match seam.name.as_str() {
        "coin_set" => says(&["on the placement line of the facing; the top edge stays open"]),
        "back_pocket_set" => says(&[
            "on the placement lines of the backs; the top edge stays open",
            "the setting rows catch the sides of the lining",
        ]),
        "facing_set" => says(&["right side up on the under layer of the bag, outer edges level"]),
        "extra_set" => says(&[
            "on the side of the bag that lies towards the body, through the one layer",
            "the top edge stays open, level with the lower edge of the band",
        ]),
        "band" => {
            let mut out = vec![lies(garment, seam)];
            out.push("match centre back, sides and fronts; ends of equal height".to_owned());
            if doc.band.method == BandMethod::AllRound {
                out.push("end to end without a stop".to_owned());
            }
            out
        }
        "patch_set" => says(&["all round, through the whole band"]),
        "label_set" => says(&["through the inner ply of the band alone: nothing shows outside"]),
        _ => vec![lies(garment, seam)],
    }
}

/// Which way the work lies under the machine.
fn reach(seam: &Seam, in_tube: bool) -> Option<String> {
    let how = match (seam.name.as_str(), in_tube) {
        ("inseam", false) => {
            "from hem to hem over the crossing at the crotch; the legs are open at the outseams and lie flat"
        }
        ("inseam", true) => {
            "from hem to hem over the crossing at the crotch; the legs are tubes now, over the arm of the machine"
        }
        ("outseam", false) => "the legs are open at the inseams and lie flat",
        ("outseam", true) => "the legs are tubes now: over the arm of the machine, from the hem",
        _ => return None,
    };
    Some(how.to_owned())
}

/// What a way of ending a row asks for.
fn ends(garment: &Garment, seam: &Seam, pass: &Pass) -> Vec<String> {
    let rows = || {
        let of_pass = |r: &&crate::StitchRow| r.seam == seam.name && pass.rows.contains(&r.number);
        garment.rows.iter().filter(of_pass)
    };
    let any = |end| rows().any(|row| row.begins == end || row.ends == end);
    let mut out = Vec::new();
    if any(RowEnd::TuckedIn) {
        out.push("tuck the thread ends into the fold at both ends while stitching".to_owned());
    }
    if any(RowEnd::TiedByHand) {
        let left = if seam.name == "hem" && garment.doc.hem.ends == HemEnds::TiedByHand {
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
            if more && seam.name != "fly_edge" =>
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
