//! Yarns, needles and trims against the collection and the weight of the cloth.

use draft::ClothUse;
use style::{PartId, RowSpec, Seam, Subject};
use trade::yarn::{nearest_row, yarns_for};
use trade::{ArealWeight, Length, YarnSize};
use words::{Key, key, say};

use super::case::{Broken, Case};
use crate::seam::{Strain, facts};
use crate::seam_words::sewn_on;

/// Rows nearer than this are sewn in one pass, with needles of one size.
const ONE_PASS: Length = Length::mm(12.7);

/// Yarns the panels are sewn with in the rows that count, by key, each once as needle and once as
/// under yarn.
fn used<'a>(case: &Case<'a>, counts: impl Fn(&Seam, &RowSpec) -> bool) -> Vec<(&'a str, bool)> {
    let rows = case
        .context
        .seams
        .iter()
        .filter(|seam| sewn_on(seam) == ClothUse::Shell)
        .flat_map(|seam| seam.rows.iter().filter(|row| counts(seam, row)));
    let tacks = &case.context.doc.bartacks;
    let all = rows
        .flat_map(|row| [(row.yarn.as_str(), true), (row.under.as_str(), false)])
        .chain([(tacks.yarn.as_str(), true), (tacks.under.as_str(), false)]);
    let mut out = Vec::new();
    for one in all {
        if !out.contains(&one) {
            out.push(one);
        }
    }
    out
}

pub(super) fn unusual(case: &Case<'_>) -> Vec<Broken> {
    let shell = &case.context.doc.cloth.shell;
    let Some(cloth) = case.context.collection.cloths.get(shell) else {
        return Vec::new();
    };
    // An overedge is sewn with finer yarn than a seam, and a label through one ply: neither bears strain.
    let bears = |seam: &Seam, row: &RowSpec| {
        !row.stitch.is_overedge() && facts(seam.id).strain != Strain::None
    };
    used(case, bears)
        .into_iter()
        .filter_map(|(key, needle)| {
            let size = case.context.collection.yarns.get(key)?.size;
            unusual_one(case, key, size, needle, cloth.weight)
        })
        .collect()
}

fn unusual_one(
    case: &Case<'_>,
    key: &str,
    size: YarnSize,
    needle: bool,
    weight: ArealWeight,
) -> Option<Broken> {
    let advice = yarns_for(weight);
    let (usual, role) = if needle {
        (advice.needle, Subject::NeedleYarn as fn(String) -> Subject)
    } else {
        (advice.under, Subject::UnderYarn as fn(String) -> Subject)
    };
    let (finest, heaviest) = (usual.first()?, usual.last()?);
    let word = if size < *finest {
        key::SEWING_YARNS_FINE
    } else if size > *heaviest {
        key::SEWING_YARNS_HEAVY
    } else {
        return None;
    };
    let row = case.rows.iter().find(|r| {
        let yarn = if needle { &r.needle } else { &r.under };
        yarn.key == key
    });
    let place = row.and_then(|r| case.row_place(r.seam, r.number.saturating_sub(1)));
    Some(
        Broken::note(
            role(key.to_owned()),
            say::SewingYarnsUnusualOne {
                finest: finest.to_string(),
                heaviest: heaviest.to_string(),
                size: size.to_string(),
                weight: weight.to_string(),
                word,
            },
        )
        .at(place),
    )
}

pub(super) fn unknown(case: &Case<'_>) -> Vec<Broken> {
    let doc = case.context.doc;
    let collection = case.context.collection;
    let mut yarns: Vec<&str> = Vec::new();
    let mut trims: Vec<&str> = vec![&doc.fly.band_button];
    for (key, _) in used(case, |_, _| true) {
        if !yarns.contains(&key) {
            yarns.push(key);
        }
    }
    trims.extend(doc.fly.button.as_deref());
    trims.extend(doc.fly.zip.as_deref());
    trims.extend(doc.rivets.as_ref().map(|r| r.trim.as_str()));
    trims.extend(doc.patch.as_ref().map(|p| p.trim.as_str()));
    trims.extend(doc.labels.iter().map(|l| l.trim.as_str()));
    let mut out: Vec<Broken> = Vec::new();
    let mut say = |about: Subject, what: Key, key: &str, file: &str, known: bool| {
        if !known && out.iter().all(|b| b.subject != about) {
            out.push(
                Broken::error(
                    about,
                    say::SewingYarnsUnknown {
                        key: key.to_string(),
                        what,
                    },
                )
                .help(say::SewingYarnsUnknownHelp {
                    file: file.to_string(),
                }),
            );
        }
    };
    for key in yarns {
        say(
            Subject::Yarn(key.to_owned()),
            key::SEWING_YARNS_UNKNOWN_YARN,
            key,
            "yarns.toml",
            collection.yarns.contains_key(key),
        );
    }
    for key in trims {
        say(
            Subject::Trim(key.to_owned()),
            key::SEWING_YARNS_UNKNOWN_TRIM,
            key,
            "trims.toml",
            collection.trims.contains_key(key),
        );
    }
    out
}

/// Rows sewn in one pass share a needle size; their yarns must have one in common.
pub(super) fn needle_shared(case: &Case<'_>) -> Vec<Broken> {
    let mut out = Vec::new();
    for seam in case.context.seams {
        for index in 1..seam.rows.len() {
            out.extend(unlike_needles(case, seam, index));
        }
    }
    out
}

fn unlike_needles(case: &Case<'_>, seam: &Seam, index: usize) -> Option<Broken> {
    let (a, b) = (seam.rows.get(index - 1)?, seam.rows.get(index)?);
    let one_pass =
        a.stitch == b.stitch && a.density == b.density && (a.offset - b.offset).abs() <= ONE_PASS;
    let size = |key: &str| Some(case.context.collection.yarns.get(key)?.size);
    let (first, second) = (size(&a.yarn)?, size(&b.yarn)?);
    let (one, other) = (nearest_row(first).needles, nearest_row(second).needles);
    let common = one.0 <= other.1 && other.0 <= one.1;
    (one_pass && !common).then(|| {
        Broken::warning(
            Subject::Rows(seam.id, index, index + 1),
            say::SewingYarnsUnlikeNeedles {
                first: first.to_string(),
                one: one.0.to_string(),
                one_2: one.1.to_string(),
                other: other.0.to_string(),
                other_2: other.1.to_string(),
                second: second.to_string(),
            },
        )
        .help(key::SEWING_YARNS_UNLIKE_NEEDLES_HELP)
        .at(case.row_place(seam.id, index))
    })
}

/// A yarn whose finest needle is heavier than any usual for the cloth cuts it.
pub(super) fn needle_for_cloth(case: &Case<'_>) -> Vec<Broken> {
    let mut out = Vec::new();
    for seam in case.context.seams {
        for (index, row) in seam.rows.iter().enumerate() {
            out.extend(heavy_needle(case, seam, &row.yarn).map(|b| {
                Broken {
                    subject: Subject::Row(seam.id, index + 1),
                    ..b
                }
                .at(case.row_place(seam.id, index))
            }));
        }
    }
    out
}

fn heavy_needle(case: &Case<'_>, seam: &Seam, yarn: &str) -> Option<Broken> {
    let cloths = &case.context.doc.cloth;
    let key = match sewn_on(seam) {
        ClothUse::Shell => Some(cloths.shell.as_str()),
        ClothUse::Pocketing => Some(cloths.pocketing.as_str()),
        ClothUse::Lining => case.context.doc.linings().first().copied(),
    }?;
    let cloth = case.context.collection.cloths.get(key)?;
    let size = case.context.collection.yarns.get(yarn)?.size;
    let heaviest = yarns_for(cloth.weight).needle.last()?;
    let (needs, takes) = (
        nearest_row(size).needles.0,
        nearest_row(*heaviest).needles.1,
    );
    (needs > takes).then(|| {
        Broken::warning(
            PartId::SewingThread,
            say::SewingYarnsHeavyNeedle {
                needs: needs.to_string(),
                size: size.to_string(),
                takes: takes.to_string(),
                weight: cloth.weight.to_string(),
            },
        )
        .help(say::SewingYarnsHeavyNeedleHelp {
            heaviest: heaviest.to_string(),
        })
    })
}
