//! What a new style's folder is called, and its code.

use std::path::Path;

use toml_edit::DocumentMut;
use unicode_normalization::UnicodeNormalization;
use unicode_normalization::char::is_combining_mark;

use super::error::StartError;
use crate::list_styles;
use crate::load::read_file;

/// The longest name of a folder, in bytes: half of what file systems take, so that what is written beside it fits too.
pub(super) const LONGEST: usize = 120;

/// Names that some systems keep for devices.
const RESERVED: [&str; 4] = ["con", "prn", "aux", "nul"];

/// The most letters of a code that is made of a name.
const INITIALS: usize = 4;

/// The folder of a style: `stated`, else named after the style.
pub(super) fn folder(name: &str, stated: Option<&str>) -> Result<String, StartError> {
    let wanted = stated.unwrap_or(name);
    slug(wanted).ok_or_else(|| StartError::Nameless(wanted.to_owned()))
}

/// "Harbour Wide 2" → "harbour-wide-2", "Forêt Bleue" → "forêt-bleue": letters and digits of all scripts, small and
/// composed, so that one name is one folder however it was typed.
fn slug(name: &str) -> Option<String> {
    let lower: String = name
        .nfc()
        .collect::<String>()
        .to_lowercase()
        .nfc()
        .collect();
    let kept = |c: char| c.is_alphanumeric() || is_combining_mark(c);
    let words: Vec<&str> = lower
        .split(|c| !kept(c))
        .filter(|word| !word.is_empty())
        .collect();
    let mut slug = words.join("-");
    // A mark alone is no letter, and a mark that begins a name would hang on what stands before it.
    if !slug.chars().next()?.is_alphanumeric() {
        return None;
    }
    if is_reserved(&slug) {
        slug.push_str("-style");
    }
    (slug.len() <= LONGEST).then_some(slug)
}

fn is_reserved(slug: &str) -> bool {
    let port = |slug: &str| {
        let number = slug
            .strip_prefix("com")
            .or_else(|| slug.strip_prefix("lpt"));
        number.is_some_and(|n| n.chars().count() == 1 && n.chars().all(char::is_numeric))
    };
    RESERVED.contains(&slug) || port(slug)
}

/// The first letters of a name: "Harbour Wide" → "HW".
fn initials(name: &str) -> String {
    let name: String = name.nfc().collect();
    let initials: String = name
        .split(|c: char| !c.is_alphanumeric() && !is_combining_mark(c))
        .filter_map(|word| word.chars().next())
        .flat_map(char::to_uppercase)
        .take(INITIALS)
        .collect();
    if initials.is_empty() {
        "S".to_owned()
    } else {
        initials
    }
}

/// The code a new style gets: the one that was asked for, else one of its name that no other style of the collection has.
pub(super) fn code(
    collection: Option<&Path>,
    asked: &str,
    name: &str,
) -> Result<String, StartError> {
    let there = collection.map(codes).unwrap_or_default();
    let same = |a: &str, b: &str| {
        let plain = |code: &str| code.trim().nfc().collect::<String>().to_lowercase();
        plain(a) == plain(b)
    };
    let asked = asked.trim();
    if asked.is_empty() {
        let initials = initials(name);
        let mut all = (1_u32..).map(|number| format!("{initials}-{number}"));
        let free = all.find(|code| !there.iter().any(|(_, other)| same(code, other)));
        return Ok(free.unwrap_or(initials));
    }
    match there.into_iter().find(|(_, other)| same(asked, other)) {
        Some((style, _)) => Err(StartError::CodeTaken {
            code: asked.to_owned(),
            style,
        }),
        None => Ok(asked.to_owned()),
    }
}

/// The code of every style of a collection. A style that cannot be read has none that could be known.
fn codes(collection: &Path) -> Vec<(std::path::PathBuf, String)> {
    let styles = list_styles(collection).unwrap_or_default();
    let code = |file: &Path| {
        let document: DocumentMut = read_file(file).ok()?.parse().ok()?;
        let code = document.get("style")?.get("code")?.as_str()?;
        Some(code.to_owned())
    };
    styles
        .into_iter()
        .filter_map(|file| code(&file).map(|code| (file, code)))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_folder_keeps_the_letters_of_every_script() {
        for (name, folder) in [
            ("Harbour Wide 2", "harbour-wide-2"),
            ("Forêt  Bleue!", "forêt-bleue"),
            // The same, typed with accents of their own.
            ("Fore\u{302}t Bleue", "forêt-bleue"),
            ("渡し舟 No. 3", "渡し舟-no-3"),
            // A voiced mark of its own composes too.
            ("か\u{3099}ま", "がま"),
            ("Паромщик", "паромщик"),
            ("عبّارة", "عبّارة"),
            ("नाविक", "नाविक"),
            ("ΦΑΡΟΣ", "φαρος"),
            ("Straße", "straße"),
            ("../etc/passwd", "etc-passwd"),
            (".hidden", "hidden"),
            ("con", "con-style"),
            ("COM1", "com1-style"),
            ("comet", "comet"),
            ("a\u{202e}b\0c", "a-b-c"),
        ] {
            let expected: String = folder.nfc().collect();
            let expected = if name == "ΦΑΡΟΣ" {
                "φαρος".replace('σ', "ς")
            } else {
                expected
            };
            assert_eq!(slug(name).as_deref(), Some(expected.as_str()), "{name}");
        }
        for name in ["", "***", "★", "\u{301}", &"渡".repeat(41)] {
            assert_eq!(slug(name), None, "{name}");
        }
        assert_eq!(slug(&"渡".repeat(40)).map(|slug| slug.len()), Some(LONGEST));
    }

    #[test]
    fn a_code_is_made_of_first_letters() {
        for (name, found) in [
            ("Harbour Wide", "HW-1"),
            ("lighter", "L-1"),
            ("渡し舟 藍", "渡藍-1"),
            ("★", "S-1"),
        ] {
            assert_eq!(code(None, "", name).ok().as_deref(), Some(found));
        }
    }

    proptest! {
        #[test]
        fn any_name_is_one_plain_folder_or_none(name in "\\PC{0,60}|[a-zA-Z .-]{0,9}") {
            if let Some(slug) = slug(&name) {
                prop_assert!(slug.len() <= LONGEST + "-style".len());
                prop_assert!(!slug.contains(['/', '\\', '.', ':', '\0']));
                prop_assert!(!slug.starts_with('-') && !slug.ends_with('-'));
                // However it was typed.
                let apart: String = name.nfd().collect();
                prop_assert_eq!(super::slug(&apart), Some(slug));
            }
        }
    }
}
