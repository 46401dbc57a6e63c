//! Labels, patch, metal and bartacks.

use draft::PointId;
use style::{MeasureId, PartId, Purpose, SeamId, Subject, Tanning, TrimKind};
use trade::Length;

use super::case::{Broken, Case, place};
use super::fibres::{Compared, compare, states_shares, told};
use crate::context::mm;
use crate::garment::{Fixing, FixingKind};

/// Words that say a leather is tanned without chromium.
const NO_CHROMIUM: [&str; 6] = [
    "vegetable",
    "chrome-free",
    "chromium-free",
    "free of chrom",
    "metal-free",
    "no chrom",
];

/// Words that say a metal is free of nickel.
const NO_NICKEL: [&str; 4] = ["nickel-free", "nickel free", "free of nickel", "no nickel"];

/// Bartack stitches to a quarter inch, least and most.
const TACK_STITCHES: (f64, f64) = (14.0, 32.0);

fn labels<'a>(case: &Case<'a>) -> Vec<(&'a Fixing, Length, Length)> {
    let fixings = case.fixings.iter();
    fixings
        .filter_map(|f| match &f.kind {
            FixingKind::Label(width, height, _) => Some((f, *width, *height)),
            _ => None,
        })
        .collect()
}

/// A label on the band that covers a row of its stitching.
pub(super) fn label_over_seam(case: &Case<'_>) -> Vec<Broken> {
    let band = case.context.pattern.spec[MeasureId::BandHeight];
    let Some(seam) = case.context.seam(SeamId::Band) else {
        return Vec::new();
    };
    let mut out = Vec::new();
    for (label, _, height) in labels(case) {
        if label.piece != draft::PieceId::Band {
            continue;
        }
        // The inner face lies above the fold, upside down: its join is at twice the height.
        let middle = band * 2.0 - Length::mm(label.at.y);
        let crossed = seam
            .rows
            .iter()
            .find(|row| (row.offset - middle).abs() < height / 2.0);
        out.extend(crossed.map(|row| {
            Broken::note(
                Subject::Label(label.from.code().to_owned()),
                format!(
                    "it is {} high and covers the row at {} from the band seam",
                    mm(height),
                    mm(row.offset)
                ),
            )
            .help("a lower label, or sew it in with the band")
            .at(place(label.piece, label.at))
        }));
    }
    out
}

/// How near the middles of two things can come before one lies on the other. Edges that meet lie beside each other: a patch
/// and a label are sewn on inside their own edges, and the last digits of a length decide nothing.
fn reach(a: Length, b: Length) -> f64 {
    const BESIDE_MM: f64 = 0.1;
    (a + b).to_mm() / 2.0 - BESIDE_MM
}

pub(super) fn labels_overlap(case: &Case<'_>) -> Vec<Broken> {
    let all = labels(case);
    let mut out = Vec::new();
    for (index, (a, width, height)) in all.iter().enumerate() {
        for (b, other_width, other_height) in &all[..index] {
            let apart = a.at - b.at;
            let over = a.piece == b.piece
                && a.on == b.on
                && apart.x.abs() < reach(*width, *other_width)
                && apart.y.abs() < reach(*height, *other_height);
            if over {
                out.push(
                    Broken::warning(
                        Subject::Label(a.from.code().to_owned()),
                        format!("it lies on the label {}", b.from.code()),
                    )
                    .help("place one beside the other")
                    .at(place(a.piece, a.at)),
                );
            }
        }
    }
    out
}

/// The patch is sewn through both plies of the band, and so through a label that lies behind it.
pub(super) fn patch_on_label(case: &Case<'_>) -> Vec<Broken> {
    let band = case.context.pattern.spec[MeasureId::BandHeight].to_mm();
    let patch = case.fixings.iter().find_map(|f| match &f.kind {
        FixingKind::Patch(width, height, _) => Some((f, *width, *height)),
        _ => None,
    });
    let Some((patch, width, height)) = patch else {
        return Vec::new();
    };
    labels(case)
        .into_iter()
        .filter(|(label, ..)| label.piece == draft::PieceId::Band)
        .filter(|(label, label_width, label_height)| {
            // The inner face lies above the fold, upside down.
            let up = 2.0 * band - label.at.y;
            (label.at.x - patch.at.x).abs() < reach(width, *label_width)
                && (up - patch.at.y).abs() < reach(height, *label_height)
        })
        .map(|(label, ..)| {
            Broken::warning(
                Subject::Label(label.from.code().to_owned()),
                "it lies behind the patch, whose stitching goes through it",
            )
            .help("place it clear of the patch")
            .at(place(label.piece, label.at))
        })
        .collect()
}

fn says(material: &str, words: &[&str]) -> bool {
    let material = material.to_lowercase();
    words.iter().any(|word| material.contains(word))
}

pub(super) fn leather(case: &Case<'_>) -> Vec<Broken> {
    let found = || {
        let key = &case.context.doc.patch.as_ref()?.trim;
        let trim = case.trim(key)?;
        let leather = trim.tanning.is_some() || says(&trim.material, &["leather", "hide", "suede"]);
        let how = match trim.tanning {
            Some(Tanning::Vegetable | Tanning::ChromeFree) => return None,
            Some(Tanning::Chrome) => "it is tanned with chromium",
            None if says(&trim.material, &NO_CHROMIUM) => return None,
            None => "how it is tanned is not stated",
        };
        leather.then(|| {
            Broken::note(
                PartId::Patch,
                format!(
                    "{}: leather that touches the skin may hold less than 3 mg/kg of chromium VI, and {how}",
                    trim.name
                ),
            )
            .help("ask for a test to EN ISO 17075, or for leather tanned without chromium, and state it as `tanning`")
            .at(case.fixing(key))
        })
    };
    found().into_iter().collect()
}

pub(super) fn nickel(case: &Case<'_>) -> Vec<Broken> {
    let doc = case.context.doc;
    let mut keys: Vec<&str> = vec![&doc.fly.band_button];
    keys.extend(doc.fly.button.as_deref());
    keys.extend(doc.fly.zip.as_deref());
    keys.extend(doc.rivets.as_ref().map(|r| r.trim.as_str()));
    let mut out: Vec<Broken> = Vec::new();
    for key in keys {
        let Some(trim) = case.trim(key) else {
            continue;
        };
        let metal = matches!(
            trim.kind,
            TrimKind::ShankButton | TrimKind::Rivet | TrimKind::Zip
        );
        let about = Subject::Trim(key.to_owned());
        if metal && !says(&trim.material, &NO_NICKEL) && out.iter().all(|b| b.subject != about) {
            out.push(
                Broken::note(
                    about,
                    format!(
                        "{}: buttons, rivets and zips that touch the skin may release at most 0.5 µg of nickel a square centimetre and week; its material does not say that it is free of nickel",
                        trim.name
                    ),
                )
                .help("ask for a test to EN 1811, and write \"nickel-free\" in the material")
                .at(case.fixing(key)),
            );
        }
    }
    out
}

pub(super) fn tack_density(case: &Case<'_>) -> Vec<Broken> {
    let tack = &case.context.doc.bartacks;
    let quarters = tack.length / Length::inches(0.25);
    let density = f64::from(tack.stitches) / quarters;
    if !density.is_finite() || quarters <= 0.0 {
        return Vec::new();
    }
    let said = if density < TACK_STITCHES.0 {
        "leave it open"
    } else if density > TACK_STITCHES.1 {
        "cut the cloth"
    } else {
        return Vec::new();
    };
    vec![
        Broken::warning(
            PartId::Bartacks,
            format!(
                "{} stitches on {} are {density:.0} to a quarter inch and {said}",
                tack.stitches,
                mm(tack.length)
            ),
        )
        .help(format!(
            "{:.0} to {:.0} stitches",
            (TACK_STITCHES.0 * quarters).ceil(),
            (TACK_STITCHES.1 * quarters).floor()
        ))
        .at(case.fixings.iter().find_map(|f| {
            matches!(f.kind, FixingKind::Bartack(..))
                .then(|| place(f.piece, f.at))
                .flatten()
        })),
    ]
}

/// What is sold in the European Union has to say what it is made of; other places have their own rules.
pub(super) fn fibre_label(case: &Case<'_>) -> Vec<Broken> {
    let labels = &case.context.doc.labels;
    let told = labels.iter().any(|l| l.purpose.contains(&Purpose::Fibre));
    if told {
        return Vec::new();
    }
    vec![
        Broken::note(
            PartId::Labels,
            "no label is stated to tell the fibre content, which has to be on textiles when they are sold",
        )
        .help("add \"fibre\" to the purpose of the label that tells it, and check the rules where it is sold")
        .at(case.point(draft::PieceId::Band, PointId::CentreBack)),
    ]
}

/// What a label says the pair is made of, beside what the shell's mill says of it.
pub(super) fn fibre_differs(case: &Case<'_>) -> Vec<Broken> {
    let doc = case.context.doc;
    let Some(shell) = case.context.collection.cloths.get(&doc.cloth.shell) else {
        return Vec::new();
    };
    let labels = doc
        .labels
        .iter()
        .filter(|l| l.purpose.contains(&Purpose::Fibre));
    labels
        .filter_map(|label| {
            let text = label.text.as_deref().or_else(|| Some(&case.trim(&label.trim)?.text))?;
            let words = told(text)?;
            let about = Subject::Label(label.trim.clone());
            let broken = match (told(&shell.fibre), states_shares(words)) {
                (None, false) => return None,
                (None, true) => Broken::note(
                    about,
                    format!(
                        "it says \"{words}\", and {} does not say what it is made of",
                        shell.name
                    ),
                )
                .help("state the cloth's `fibre` as its mill does"),
                (Some(_), false) => Broken::note(
                    about,
                    format!("it is to tell the fibre content, and \"{words}\" gives no shares"),
                )
                .help("add them to its text, in the words of the law where it is sold"),
                (Some(fibre), true) => match compare(words, fibre) {
                    Compared::Alike => return None,
                    Compared::Named => Broken::note(
                        about,
                        format!(
                            "it says \"{words}\" and {} is \"{fibre}\": look whether both mean the same",
                            shell.name
                        ),
                    ),
                    Compared::Different => Broken::warning(
                        about,
                        format!("it says \"{words}\" and {} is \"{fibre}\"", shell.name),
                    )
                    .help("change the label's text, or the cloth's `fibre`; the law where it is sold says how it is worded"),
                },
            };
            Some(broken.at(case.fixing(&label.trim)))
        })
        .collect()
}

/// A patch that runs past an end of the band, or over its centre back.
pub(super) fn patch_off_band(case: &Case<'_>) -> Vec<Broken> {
    let found = || {
        let (patch, width) = case.fixings.iter().find_map(|f| match &f.kind {
            FixingKind::Patch(width, ..) => Some((f, *width)),
            _ => None,
        })?;
        let along = case.ground(draft::PieceId::Band)?;
        let ends = along.polygon().iter().map(|p| p.x);
        let (low, high) = ends.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), x| {
            (low.min(x), high.max(x))
        });
        let half = width.to_mm() / 2.0;
        let past = (patch.at.x + half - high).max(low - (patch.at.x - half));
        (past > 0.0).then(|| {
            Broken::warning(
                PartId::Patch,
                format!(
                    "set {} from centre back it runs {} past the end of the band",
                    mm(case
                        .context
                        .doc
                        .patch
                        .as_ref()
                        .map_or(Length::ZERO, |p| p.from_centre)),
                    mm(Length::mm(past))
                ),
            )
            .help("set it nearer to centre back")
            .at(place(patch.piece, patch.at))
        })
    };
    found().into_iter().collect()
}

/// A label or a patch that is sewn all round needs room between its edge and its row.
pub(super) fn art_beyond(case: &Case<'_>) -> Vec<Broken> {
    let doc = case.context.doc;
    let labels = doc
        .labels
        .iter()
        .map(|l| (Subject::Label(l.trim.clone()), &l.trim, &l.drawing));
    let patch = doc
        .patch
        .iter()
        .map(|p| (PartId::Patch.into(), &p.trim, &p.drawing));
    patch
        .chain(labels)
        .filter_map(|(about, key, drawing)| {
            let trim = case.trim(key)?;
            let (width, height) = (trim.width?, trim.height?);
            let lines = &drawing.as_ref()?.lines;
            let out = |[x, y]: style::Spot| {
                x < Length::ZERO || y < Length::ZERO || x > width || y > height
            };
            let beyond = lines
                .iter()
                .any(|line| out(line.from) || line.steps.iter().any(|step| out(step.end())));
            beyond.then(|| {
                Broken::warning(
                    about,
                    format!(
                        "its drawing runs beyond its {} by {}",
                        mm(width),
                        mm(height)
                    ),
                )
                .help("draw it smaller, from the upper left corner, one unit a millimetre")
                .at(case.fixing(key))
            })
        })
        .collect()
}
