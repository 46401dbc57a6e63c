//! What each seam joins and where its rows are measured from, in words.

use style::{Construction, Seam, StyleDoc};
use trade::Length;

use super::words::millimetres;

/// What a seam joins. Empty for a name that is no seam.
pub(super) fn joins(seam: &str, style: &StyleDoc) -> String {
    let coin = style.pockets.coin.side;
    let text = match seam {
        "outseam" => "front with pocket facing to back with yoke, waist to hem",
        "inseam" => "front to back, crotch to hem",
        "seat" => "left back with yoke to right back with yoke, waist to crotch",
        "yoke" => "yoke to back, outseam to centre back",
        "front_rise" => "left front to right front, foot of the fly to crotch",
        "band" => "waistband to fronts, facings and yokes, fly edge to fly edge",
        "hem" => "the lower edge of each leg",
        "mouth" => "front to upper ply of the pocket bag, along the pocket mouth",
        "fly" => "left front to fly facing; sewn along the outline of the facing",
        "coin_hem" => "the top edge of the coin pocket",
        "coin_set" => return format!("coin pocket onto the {coin} pocket facing"),
        "back_pocket_hem" => "the top edges of the back pockets",
        "back_pocket_set" => "back pockets, with their linings, onto the backs",
        "facing_set" => "pocket facing onto the under ply of the pocket bag",
        "bag_close" => "upper to under ply of each pocket bag, along its foot",
        "extra_hem" => "the top edge of the inner pocket",
        "extra_set" => return extra(style),
        "loop_edge" => "the strip the belt loops are cut from",
        "decoration" => "through each back pocket before it is set on",
        _ => "",
    };
    text.to_owned()
}

fn extra(style: &StyleDoc) -> String {
    style.pockets.extra.as_ref().map_or_else(String::new, |extra| {
        format!("inner pocket onto the inside of the {} front", extra.side)
    })
}

/// Where a row lies.
pub(super) fn place(seam: &Seam, offset: Length) -> String {
    let from = match (seam.name.as_str(), seam.construction) {
        ("fly", _) => "fly edge",
        ("band", _) => "band seam",
        (_, Construction::LapFelled | Construction::MockFelled) => "visible fold",
        (_, Construction::RolledHem) => "finished lower edge",
        (_, Construction::TurnedHem | Construction::TurnedEdge) => "finished edge",
        (_, Construction::PatchSet) => "edge of the upper piece",
        (_, Construction::Strip) => "left edge of the finished loop",
        (_, Construction::Surface) => "drawn line",
        _ => "seam line",
    };
    if offset.abs() < Length::mm(0.05) {
        format!("on the {from}")
    } else {
        format!("{} from the {from}", millimetres(offset))
    }
}
