//! What a cloth and a label say they are made of.
//!
//! How a composition has to be worded is law, which differs from place to place: only whether two texts say the same is
//! looked at here, and where words of two languages meet, the maker is asked to look.

/// Parts of words that name fibres which stretch: elastane, élasthanne, elastano, elastomultiester; spandex and lastol in
/// the United States (from memory; Regulation (EU) No 1007/2011, annex I, names the former).
const STRETCH: [&str; 4] = ["elast", "élasth", "spandex", "lastol"];

/// Names of one fibre in several languages, each group one fibre (from memory).
const SAME: [&[&str]; 8] = [
    &[
        "cotton",
        "coton",
        "algodão",
        "algodón",
        "cotone",
        "baumwolle",
        "katoen",
        "bomull",
        "bomuld",
        "puuvilla",
        "bawełna",
        "pamuk",
        "綿",
    ],
    &[
        "elastane",
        "spandex",
        "élasthanne",
        "elasthanne",
        "elastano",
        "elastan",
        "elasthan",
        "elastaani",
        "ポリウレタン",
    ],
    &[
        "polyester",
        "poliéster",
        "poliestere",
        "polyesteri",
        "poliester",
        "ポリエステル",
    ],
    &["polyamide", "nylon", "poliamida", "poliammide", "polyamid"],
    &["viscose", "rayon", "viscosa", "viskose", "viskos"],
    &[
        "hemp", "chanvre", "cânhamo", "cáñamo", "canapa", "hanf", "hennep",
    ],
    &["linen", "flax", "lin", "linho", "lino", "leinen", "linnen"],
    &["lyocell", "liocel"],
];

/// One part of a composition: hundredths of a percent, and the fibre in small letters.
#[derive(Clone, Debug, PartialEq)]
struct Part {
    share: u32,
    fibre: String,
}

/// The words, where there are any.
pub(super) fn told(fibre: &str) -> Option<&str> {
    let words = fibre.trim();
    (!words.is_empty()).then_some(words)
}

/// Whether a composition names a fibre that stretches.
pub(super) fn stretches(fibre: &str) -> bool {
    let fibre = fibre.to_lowercase();
    STRETCH.iter().any(|part| fibre.contains(part))
}

/// How two texts compare.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Compared {
    /// They say the same, or one of them states no shares.
    Alike,
    /// The same shares under names of which it is not known that they mean the same.
    Named,
    /// Different shares or fibres.
    Different,
}

/// Whether a label says of a cloth what the cloth says of itself. A label in several languages says it several times.
pub(super) fn compare(label: &str, cloth: &str) -> Compared {
    let (label, cloth) = (whole(parts(label)), parts(cloth));
    if cloth.is_empty() {
        return Compared::Alike;
    }
    let each = label.iter().map(|said| one(said, &cloth));
    each.max_by_key(|compared| *compared as u8)
        .unwrap_or(Compared::Alike)
}

/// Whether a text states shares of fibres at all.
pub(super) fn states_shares(text: &str) -> bool {
    !parts(text).is_empty()
}

fn one(label: &[Part], cloth: &[Part]) -> Compared {
    let shares = |parts: &[Part]| {
        let mut shares: Vec<u32> = parts.iter().map(|part| part.share).collect();
        shares.sort_unstable();
        shares
    };
    if shares(label) != shares(cloth) {
        return Compared::Different;
    }
    let group = |fibre: &str| SAME.iter().position(|names| names.contains(&fibre));
    let mut found = Compared::Alike;
    for part in label {
        let alike = cloth.iter().filter(|other| other.share == part.share);
        let (mut same, mut open) = (false, false);
        for other in alike {
            let (a, b) = (group(&part.fibre), group(&other.fibre));
            same |= part.fibre == other.fibre || (a.is_some() && a == b);
            open |= a.is_none() || b.is_none();
        }
        if !same && !open {
            return Compared::Different;
        }
        if !same {
            found = Compared::Named;
        }
    }
    found
}

/// Parts that come to a hundred percent, one after the other; what is left over stands alone.
fn whole(parts: Vec<Part>) -> Vec<Vec<Part>> {
    const ALL: u32 = 10_000;
    let mut out = Vec::new();
    let mut open: Vec<Part> = Vec::new();
    for part in parts {
        open.push(part);
        if open
            .iter()
            .map(|part| part.share)
            .fold(0, u32::saturating_add)
            >= ALL
        {
            out.push(std::mem::take(&mut open));
        }
    }
    if !open.is_empty() {
        out.push(open);
    }
    out
}

/// "98 % cotton, 2 % elastane" and "Cotton 98%, elastane 2%".
fn parts(text: &str) -> Vec<Part> {
    let text = text.to_lowercase();
    let pieces: Vec<&str> = text.split('%').collect();
    let behind = follows(&pieces);
    let mut out = Vec::new();
    for (at, before) in pieces
        .iter()
        .enumerate()
        .take(pieces.len().saturating_sub(1))
    {
        let trimmed = before.trim_end();
        let digits = trimmed
            .char_indices()
            .rev()
            .take_while(|(_, c)| c.is_ascii_digit() || matches!(c, '.' | ','))
            .last()
            .map(|(start, _)| trimmed.split_at(start));
        let Some((earlier, number)) = digits else {
            continue;
        };
        let number = number.trim_start_matches(['.', ',']).replace(',', ".");
        let Some(share) = number
            .parse::<f64>()
            .ok()
            .filter(|n| (0.0..=100.0).contains(n))
        else {
            continue;
        };
        let fibre = if behind {
            last_word(earlier)
        } else {
            pieces.get(at + 1).and_then(|rest| first_word(rest))
        };
        if let Some(fibre) = fibre {
            out.push(Part {
                share: (share * 100.0).round() as u32,
                fibre,
            });
        }
    }
    out
}

/// Whether the shares stand behind their fibres: the text begins with a word, and ends with a share or with a sentence
/// of its own.
fn follows(pieces: &[&str]) -> bool {
    let first = pieces.first().copied().unwrap_or_default();
    let begins = first
        .trim_start()
        .chars()
        .next()
        .is_some_and(char::is_alphabetic);
    let rest = pieces.last().copied().unwrap_or_default().trim_start();
    begins && (rest.is_empty() || !rest.starts_with(char::is_alphabetic))
}

fn first_word(text: &str) -> Option<String> {
    let word: String = text
        .trim_start()
        .chars()
        .take_while(|c| c.is_alphabetic() || *c == '-')
        .collect();
    (!word.is_empty()).then_some(word)
}

fn last_word(text: &str) -> Option<String> {
    let trimmed = text.trim_end_matches(|c: char| !c.is_alphabetic());
    let start = trimmed
        .char_indices()
        .rev()
        .take_while(|(_, c)| c.is_alphabetic() || *c == '-')
        .last()?
        .0;
    trimmed.get(start..).map(str::to_owned)
}

#[cfg(test)]
mod tests {
    use super::Compared::{Alike, Different, Named};
    use super::*;

    #[test]
    fn compositions_are_read_with_shares_before_and_after() {
        let of = |text: &str| -> Vec<(u32, String)> {
            parts(text)
                .into_iter()
                .map(|part| (part.share, part.fibre))
                .collect()
        };
        let own = |parts: &[(u32, &str)]| -> Vec<(u32, String)> {
            parts
                .iter()
                .map(|(share, fibre)| (*share, (*fibre).to_owned()))
                .collect()
        };
        let mixed = own(&[(9800, "cotton"), (200, "elastane")]);
        for text in [
            "98 % cotton, 2 % elastane",
            "98% Cotton 2% Elastane",
            "Cotton 98 %, elastane 2 %",
            "cotton 98%, elastane 2%. Made in Portugal.",
            "98,0 % cotton / 2,0 % elastane",
        ] {
            assert_eq!(of(text), mixed, "{text}");
        }
        assert_eq!(
            of("100 % cotton. Made in Portugal."),
            own(&[(10_000, "cotton")])
        );
        assert_eq!(of("98.5 % cotton 1.5 % elastane").len(), 2);
        for text in [
            "",
            "%",
            "% %",
            "cotton",
            "5 %",
            "1000 % cotton",
            "-% cotton",
            "é%é%",
        ] {
            assert!(of(text).len() <= 1, "{text}: {:?}", of(text));
        }
    }

    #[test]
    fn a_label_is_compared_with_its_cloth() {
        let all = "100 % cotton";
        for (label, cloth, found) in [
            ("100 % cotton. Made in Portugal.", all, Alike),
            ("100% Cotton", all, Alike),
            ("100 % algodão", all, Alike),
            ("100 % cotton / 100 % coton / 100 % Baumwolle", all, Alike),
            ("98 % cotton, 2 % elastane", all, Different),
            ("100 % linen", all, Different),
            ("100 % wild silk", all, Named),
            (all, "98 % cotton, 2 % elastane", Different),
            (
                "2 % spandex, 98 % cotton",
                "98 % cotton, 2 % elastane",
                Alike,
            ),
            (
                "98 % elastane, 2 % cotton",
                "98 % cotton, 2 % elastane",
                Different,
            ),
            ("Care as shown", all, Alike),
            (all, "", Alike),
            ("100 % cotton / 98 % coton 2 % élasthanne", all, Different),
        ] {
            assert_eq!(compare(label, cloth), found, "{label} | {cloth}");
        }
    }

    #[test]
    fn fibres_that_stretch_are_known_by_name() {
        assert!(stretches("98 % cotton, 2 % Elastane"));
        assert!(stretches("92 % coton, 8 % élasthanne"));
        assert!(!stretches("100 % cotton"));
    }
}
