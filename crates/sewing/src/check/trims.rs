//! Labels, patch, metal and bartacks.

use draft::PointId;
use style::{MeasureId, PartId, Purpose, SeamId, Subject, Tanning, TrimKind};
use trade::Length;
use words::{key, say};

use super::case::{Broken, Case, place};
use super::fibres::{Compared, compare, states_shares, told};
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
                say::SewingTrimsLabelOverSeam {
                    height: height.in_mm(1),
                    offset: row.offset.in_mm(1),
                },
            )
            .help(key::SEWING_TRIMS_LABEL_OVER_SEAM_HELP)
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
                        say::SewingTrimsLabelsOverlap {
                            code: b.from.code().to_string(),
                        },
                    )
                    .help(key::SEWING_TRIMS_LABELS_OVERLAP_HELP)
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
                key::SEWING_TRIMS_PATCH_ON_LABEL,
            )
            .help(key::SEWING_TRIMS_PATCH_ON_LABEL_HELP)
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
        let how = match trim.tanning {
            Some(Tanning::Vegetable | Tanning::ChromeFree) => return None,
            Some(Tanning::Chrome) => key::SEWING_TRIMS_LEATHER_2,
            None if says(&trim.material, &NO_CHROMIUM) => return None,
            None => key::SEWING_TRIMS_LEATHER_3,
        };
        trim.is_leather().then(|| {
            Broken::note(
                PartId::Patch,
                say::SewingTrimsLeather {
                    how,
                    trim: trim.name.to_string(),
                },
            )
            .help(key::SEWING_TRIMS_LEATHER_HELP)
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
                    say::SewingTrimsNickel {
                        trim: trim.name.to_string(),
                    },
                )
                .help(key::SEWING_TRIMS_NICKEL_HELP)
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
        key::SEWING_TRIMS_TACK_OPEN
    } else if density > TACK_STITCHES.1 {
        key::SEWING_TRIMS_TACK_CUTS
    } else {
        return Vec::new();
    };
    vec![
        Broken::warning(
            PartId::Bartacks,
            say::SewingTrimsTackDensity {
                density: format!("{:.0}", density),
                said,
                stitches: tack.stitches.to_string(),
                tack: tack.length.in_mm(1),
            },
        )
        .help(say::SewingTrimsTackDensityHelp {
            ceil: format!("{:.0}", (TACK_STITCHES.0 * quarters).ceil()),
            floor: format!("{:.0}", (TACK_STITCHES.1 * quarters).floor()),
        })
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
        Broken::note(PartId::Labels, key::SEWING_TRIMS_FIBRE_LABEL)
            .help(key::SEWING_TRIMS_FIBRE_LABEL_HELP)
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
            let text = label
                .text
                .as_deref()
                .or_else(|| Some(&case.trim(&label.trim)?.text))?;
            let words = told(text)?;
            let about = Subject::Label(label.trim.clone());
            let broken = match (told(&shell.fibre), states_shares(words)) {
                (None, false) => return None,
                (None, true) => Broken::note(
                    about,
                    say::SewingTrimsFibreDiffers {
                        shell: shell.name.to_string(),
                        words: words.to_string(),
                    },
                )
                .help(key::SEWING_TRIMS_FIBRE_DIFFERS_HELP),
                (Some(_), false) => Broken::note(
                    about,
                    say::SewingTrimsFibreDiffers2 {
                        words: words.to_string(),
                    },
                )
                .help(key::SEWING_TRIMS_FIBRE_DIFFERS_HELP_2),
                (Some(fibre), true) => match compare(words, fibre) {
                    Compared::Alike => return None,
                    Compared::Named => Broken::note(
                        about,
                        say::SewingTrimsFibreDiffers3 {
                            fibre,
                            shell: shell.name.to_string(),
                            words: words.to_string(),
                        },
                    ),
                    Compared::Different => Broken::warning(
                        about,
                        say::SewingTrimsFibreDiffers4 {
                            fibre,
                            shell: shell.name.to_string(),
                            words: words.to_string(),
                        },
                    )
                    .help(key::SEWING_TRIMS_FIBRE_DIFFERS_HELP_3),
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
                say::SewingTrimsPatchOffBand {
                    from_centre: (case
                        .context
                        .doc
                        .patch
                        .as_ref()
                        .map_or(Length::ZERO, |p| p.from_centre))
                    .in_mm(1),
                    past: Length::mm(past).in_mm(1),
                },
            )
            .help(key::SEWING_TRIMS_PATCH_OFF_BAND_HELP)
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
                    say::SewingTrimsArtBeyond {
                        height: height.in_mm(1),
                        width: width.in_mm(1),
                    },
                )
                .help(key::SEWING_TRIMS_ART_BEYOND_HELP)
                .at(case.fixing(key))
            })
        })
        .collect()
}
