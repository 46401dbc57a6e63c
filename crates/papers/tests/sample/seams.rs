//! The seams of the sample pack.

use papers::{SeamBlock, StitchRowText, Swatch, YarnText};

use super::drawings::section;

/// "Rope, tex 105": name and size.
pub fn yarn(text: &str) -> YarnText {
    let (name, size) = text.split_once(", ").unwrap_or((text, ""));
    let hex = match name {
        "Rope" => "#c0813a",
        "Night" => "#222b40",
        _ => "#ece6d6",
    };
    YarnText {
        name: name.into(),
        what: size.into(),
        colour: Swatch::from_hex(hex),
    }
}

type Row<'a> = (&'a str, &'a str, &'a str, &'a str, &'a str, &'a str);

fn seam(name: &str, made: &str, class: &str, joins: &str, lies: &str, rows: &[Row]) -> SeamBlock {
    SeamBlock {
        name: name.into(),
        joins: joins.into(),
        construction: made.into(),
        class: class.into(),
        machine: "flatbed chainstitch".into(),
        plies: "4 plies, 3.3 mm".into(),
        allowances: "upper 20 mm, lower 10 mm".into(),
        lies: lies.into(),
        rows: rows
            .iter()
            .enumerate()
            .map(
                |(at, (stitch, density, needle, under, place, ends))| StitchRowText {
                    row: (at + 1).to_string(),
                    stitch: (*stitch).into(),
                    density: (*density).into(),
                    needle: yarn(needle),
                    under: yarn(under),
                    offset: (*place).into(),
                    gauge: "two needles, 6.4 mm".into(),
                    ends: (*ends).into(),
                },
            )
            .collect(),
        section: made.contains("fell").then(section),
    }
}

/// Seams in the order of sewing.
pub fn seams() -> Vec<SeamBlock> {
    let chain = "401 two-thread chainstitch";
    let lock = "301 lockstitch";
    vec![
        seam(
            "Coin pocket hem",
            "turned hem",
            "ISO 4916 6.03.03 · ASTM D6193 EFb-2",
            "the coin pocket’s upper edge",
            "turned to the inside twice",
            &[
                (
                    lock,
                    "3.1 /cm",
                    "Rope, tex 80",
                    "Rope, tex 60",
                    "2 mm from the edge",
                    "run off",
                ),
                (
                    lock,
                    "3.1 /cm",
                    "Rope, tex 80",
                    "Rope, tex 60",
                    "8.4 mm from the edge",
                    "run off",
                ),
            ],
        ),
        seam(
            "Pocket mouth",
            "turned edge",
            "ISO 4916 1.06.03 · ASTM D6193 SSe-3",
            "front and pocket bag",
            "bag rolled 1 mm to the inside",
            &[
                (
                    lock,
                    "3.1 /cm",
                    "Rope, tex 105",
                    "Rope, tex 60",
                    "1.6 mm from the fold",
                    "run off at band and outseam",
                ),
                (
                    lock,
                    "3.1 /cm",
                    "Rope, tex 105",
                    "Rope, tex 60",
                    "8 mm from the fold",
                    "run off at band and outseam",
                ),
            ],
        ),
        seam(
            "Pocket bag",
            "safety-stitched",
            "ISO 4916 1.01.03 · ASTM D6193 SSa-2",
            "pocket bag, folded",
            "towards the front",
            &[(
                "516 five-thread safety stitch",
                "3.5 /cm",
                "Chalk, tex 40",
                "Chalk, tex 40",
                "on the seam line",
                "latched in",
            )],
        ),
        seam(
            "Front rise",
            "mock-felled",
            "ISO 4916 2.02.03 · ASTM D6193 LSq-3",
            "left front and right front, below the fly",
            "left over right",
            &[
                (
                    lock,
                    "3.5 /cm",
                    "Rope, tex 105",
                    "Rope, tex 60",
                    "1.6 mm from the fold",
                    "backtacked at the fly end",
                ),
                (
                    lock,
                    "3.5 /cm",
                    "Rope, tex 105",
                    "Rope, tex 60",
                    "8 mm from the fold",
                    "caught by the inseam",
                ),
            ],
        ),
        seam(
            "Yoke",
            "lap-felled",
            "ISO 4916 2.04.06 · ASTM D6193 LSc-2",
            "yoke and back",
            "yoke over back",
            &[
                (
                    chain,
                    "3.1 /cm",
                    "Rope, tex 105",
                    "Rope, tex 60",
                    "1.6 mm from the fold",
                    "run off, caught by the seat seam",
                ),
                (
                    chain,
                    "3.1 /cm",
                    "Rope, tex 105",
                    "Rope, tex 60",
                    "8 mm from the fold",
                    "run off, caught by the seat seam",
                ),
            ],
        ),
        seam(
            "Seat",
            "lap-felled",
            "ISO 4916 2.04.06 · ASTM D6193 LSc-2",
            "left back and right back",
            "left over right",
            &[
                (
                    chain,
                    "3.1 /cm",
                    "Rope, tex 105",
                    "Rope, tex 60",
                    "1.6 mm from the fold",
                    "caught by band and inseam",
                ),
                (
                    chain,
                    "3.1 /cm",
                    "Rope, tex 105",
                    "Rope, tex 60",
                    "8 mm from the fold",
                    "caught by band and inseam",
                ),
            ],
        ),
        seam(
            "Inseam",
            "lap-felled",
            "ISO 4916 2.04.06 · ASTM D6193 LSc-2",
            "front and back, hem to hem through the crotch",
            "front over back",
            &[
                (
                    chain,
                    "3.1 /cm",
                    "Rope, tex 105",
                    "Rope, tex 60",
                    "1.6 mm from the fold",
                    "run off, caught by the hem",
                ),
                (
                    chain,
                    "3.1 /cm",
                    "Night, tex 80",
                    "Night, tex 40",
                    "8 mm from the fold",
                    "run off, caught by the hem",
                ),
            ],
        ),
        seam(
            "Outseam",
            "pressed open",
            "ISO 4916 1.01.01 · ASTM D6193 SSa-1",
            "front and back, band to hem, along the cloth’s finished edge",
            "open",
            &[(
                chain,
                "3.5 /cm",
                "Night, tex 80",
                "Night, tex 40",
                "on the seam line",
                "run off, caught by the hem",
            )],
        ),
        seam(
            "Band",
            "band over edge",
            "ISO 4916 3.05.03 · ASTM D6193 BSc-2",
            "waistband and body",
            "body edge inside the band",
            &[
                (
                    chain,
                    "3.1 /cm",
                    "Rope, tex 105",
                    "Rope, tex 60",
                    "2 mm above the seam",
                    "tucked in at both ends",
                ),
                (
                    lock,
                    "3.1 /cm",
                    "Rope, tex 105",
                    "Rope, tex 60",
                    "36 mm above the seam",
                    "tucked in at both ends",
                ),
            ],
        ),
        seam(
            "Hem",
            "rolled hem",
            "ISO 4916 6.03.01 · ASTM D6193 EFb-1",
            "the leg’s lower edge",
            "turned twice to the inside, 12 mm",
            &[(
                chain,
                "2.8 /cm",
                "Rope, tex 105",
                "Rope, tex 60",
                "10.5 mm from the edge",
                "overrun 20 mm at the inseam",
            )],
        ),
    ]
}
