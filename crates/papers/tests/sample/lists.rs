//! The lists of the sample pack.

use papers::{Caution, Change, FindingRow, MaterialGroup, MaterialRow, PieceRow, Severity, Swatch};

use super::drawings::leg;

/// What changed since the second revision.
pub fn changes() -> Vec<Change> {
    [
        (
            "Thigh, every size",
            "62.9 cm in 32 × 32",
            "62.2 cm in 32 × 32",
        ),
        ("Inseam, second row", "ochre, tex 105", "night blue, tex 80"),
        (
            "Right back pocket",
            "",
            "outer side 6 mm longer than the inner",
        ),
    ]
    .map(|(about, before, after)| Change {
        about: about.into(),
        before: before.into(),
        after: after.into(),
    })
    .into()
}

/// Pieces to cut.
pub fn pieces() -> Vec<PieceRow> {
    [
        (
            "Front",
            "Tideline 14",
            "2",
            "mirrored pair",
            "4 012 cm²",
            "outseam on the finished edge",
            330.0,
            1150.0,
        ),
        (
            "Back",
            "Tideline 14",
            "2",
            "mirrored pair",
            "5 240 cm²",
            "outseam on the finished edge",
            430.0,
            1190.0,
        ),
        (
            "Yoke",
            "Tideline 14",
            "2",
            "mirrored pair",
            "198 cm²",
            "",
            240.0,
            90.0,
        ),
        (
            "Waistband",
            "Tideline 14",
            "1",
            "",
            "880 cm²",
            "along the warp, both ends folded in",
            1010.0,
            98.0,
        ),
        (
            "Fly facing",
            "Tideline 14",
            "1",
            "left only",
            "121 cm²",
            "",
            60.0,
            210.0,
        ),
        (
            "Fly shield",
            "Tideline 14",
            "1",
            "right only",
            "216 cm²",
            "folded",
            110.0,
            210.0,
        ),
        (
            "Hip pocket facing",
            "Tideline 14",
            "2",
            "mirrored pair",
            "240 cm²",
            "",
            150.0,
            180.0,
        ),
        (
            "Coin pocket",
            "Tideline 14",
            "1",
            "right only",
            "108 cm²",
            "upper edge on the finished edge",
            95.0,
            115.0,
        ),
        (
            "Pocket bag",
            "Bargeman drill",
            "2",
            "mirrored pair",
            "1 010 cm²",
            "",
            350.0,
            310.0,
        ),
        (
            "Back pocket, left",
            "Tideline 14",
            "1",
            "left only",
            "342 cm²",
            "",
            180.0,
            205.0,
        ),
        (
            "Back pocket, right",
            "Tideline 14",
            "1",
            "right only",
            "347 cm²",
            "outer side 6 mm longer",
            180.0,
            208.0,
        ),
        (
            "Back pocket lining",
            "Oar lining",
            "2",
            "mirrored pair",
            "170 cm²",
            "",
            175.0,
            100.0,
        ),
        (
            "Belt loop strip",
            "Tideline 14",
            "1",
            "",
            "126 cm²",
            "gives five loops",
            420.0,
            30.0,
        ),
        (
            "Inner pocket",
            "Bargeman drill",
            "1",
            "left only",
            "260 cm²",
            "",
            150.0,
            170.0,
        ),
    ]
    .iter()
    .enumerate()
    .map(
        |(at, (name, cloth, count, pairing, area, notes, w, h))| PieceRow {
            number: (at + 1).to_string(),
            name: (*name).into(),
            cloth: (*cloth).into(),
            count: (*count).into(),
            pairing: (*pairing).into(),
            area: (*area).into(),
            notes: (*notes).into(),
            thumbnail: Some(leg(*w, *h, 20.0)),
        },
    )
    .collect()
}

fn group(heading: &str, rows: &[(&str, &str, &str, &str, &str)]) -> MaterialGroup {
    MaterialGroup {
        heading: heading.into(),
        rows: rows
            .iter()
            .map(|(name, spec, colour, used, quantity)| MaterialRow {
                name: (*name).into(),
                spec: (*spec).into(),
                colour: Swatch::from_hex(colour),
                supply: "Fenmill, article 12".into(),
                asks: Vec::new(),
                used: (*used).into(),
                quantity: (*quantity).into(),
            })
            .collect(),
    }
}

/// Materials for one pair.
pub fn materials() -> Vec<MaterialGroup> {
    vec![
        group(
            "Cloth",
            &[
                (
                    "Tideline loomstate selvedge",
                    "14 oz/yd², 3/1 right-hand twill, 100 % cotton, 78 cm usable",
                    "#27324a",
                    "shell",
                    "2.61 m",
                ),
                (
                    "Bargeman pocketing drill",
                    "6.5 oz/yd², 2/1 drill, 100 % cotton, 148 cm usable",
                    "#e6dfcd",
                    "pocket bags, inner pocket",
                    "0.27 m",
                ),
                (
                    "Oar plain-weave lining",
                    "4 oz/yd², plain weave, 100 % cotton, 148 cm usable",
                    "#d9d3c3",
                    "back pocket linings",
                    "0.06 m",
                ),
            ],
        ),
        group(
            "Sewing yarn",
            &[
                (
                    "Rope 105, ochre",
                    "tex 105, corespun polyester and cotton",
                    "#c0813a",
                    "felled seams, band, hem: needle",
                    "61 m",
                ),
                (
                    "Rope 80, ochre",
                    "tex 80, corespun polyester and cotton",
                    "#c0813a",
                    "pockets, loops, bartacks: needle",
                    "19 m",
                ),
                (
                    "Rope 60, ochre",
                    "tex 60, corespun polyester and cotton",
                    "#c0813a",
                    "under yarn of the ochre rows",
                    "104 m",
                ),
                (
                    "Night 80, night blue",
                    "tex 80, corespun polyester and cotton",
                    "#222b40",
                    "outseam, second inseam row: needle",
                    "22 m",
                ),
                (
                    "Night 40, night blue",
                    "tex 40, corespun polyester and cotton",
                    "#222b40",
                    "under yarn of the night blue rows",
                    "29 m",
                ),
                (
                    "Chalk 40",
                    "tex 40, spun polyester",
                    "#ece6d6",
                    "pocket bags, facings",
                    "41 m",
                ),
            ],
        ),
        group(
            "Trims",
            &[
                (
                    "Keel shank button",
                    "17.1 mm (27 ligne), brass, nickel-free",
                    "#8a7444",
                    "band",
                    "1",
                ),
                (
                    "Keel fly button",
                    "14 mm (22 ligne), brass, nickel-free",
                    "#8a7444",
                    "fly",
                    "4",
                ),
                (
                    "Rowlock rivet",
                    "9 mm, copper, nickel-free",
                    "#a86b3c",
                    "pocket mouths, coin pocket, back pockets (hidden)",
                    "10",
                ),
                (
                    "Saltmarsh patch",
                    "75 × 55 mm, vegetable-tanned leather, 1.6 mm",
                    "#b98a57",
                    "band, right of centre back",
                    "1",
                ),
            ],
        ),
        group(
            "Labels",
            &[
                (
                    "Main label",
                    "60 × 30 mm, woven cotton",
                    "#efe9d9",
                    "band inside, centre back",
                    "1",
                ),
                (
                    "Size label",
                    "20 × 20 mm, woven cotton",
                    "#efe9d9",
                    "band inside, right of main label",
                    "1",
                ),
                (
                    "Fibre and care label",
                    "30 × 60 mm, printed satin",
                    "#f7f5ee",
                    "left side seam inside, below the pocket bag",
                    "1",
                ),
            ],
        ),
    ]
}

/// What the checks found.
pub fn findings() -> Vec<FindingRow> {
    [
        (Severity::Warning, "bulk-crossing", "hem over inseam", "Twelve plies of 0.82 mm cross where the hem is sewn over the felled inseam: 9.8 mm under the foot.", "Hammer the crossing before hemming, or thin the inseam’s allowance by 3 mm over the last 25 mm."),
        (Severity::Warning, "band-shrinkage", "band over seat", "The band is cut along the warp and shrinks 8 %; the body edge shrinks 4 % along the weft.", "Sew the band at equal length and judge the waist on a washed sample."),
        (Severity::Note, "row-near-rivet", "coin pocket", "The rivet at the coin pocket’s corner stands 4 mm from the second row.", ""),
    ]
    .map(|(severity, code, about, message, remedy)| FindingRow {
        severity,
        code: code.into(),
        about: about.into(),
        place: "Back, at the crotch".into(),
        message: message.into(),
        remedy: remedy.into(),
        basis: "common practice".into(),
    muted: false,
    })
    .into()
}

/// What to mind.
pub fn cautions() -> Vec<Caution> {
    [
        ("Nickel", "Buttons and rivets touch the skin. Buy them with a written statement that their nickel release keeps to the limits in force where the garment is sold, and keep it with the order."),
        ("Chromium VI", "The leather patch must come with a test report for chromium VI. Vegetable-tanned leather is asked for; a substitute needs our word in writing."),
        ("Needles", "One needle out, one needle in. A broken needle is found in all its parts and kept on its record before the machine runs on."),
        ("Fibre and origin label", "Fibre names and percentages are those of this pack. The label is sewn in so that it stays legible for the life of the garment."),
    ]
    .map(|(heading, text)| Caution { heading: heading.into(), text: text.into(), asks: Vec::new() })
    .into()
}
