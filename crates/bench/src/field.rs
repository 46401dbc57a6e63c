//! The things a maker types into or chooses from, each tied to a value of the style file by its path.

use maud::{Markup, html};
use style::{Collection, Loaded};
use trade::{Length, StitchDensity, StitchType, System};

use crate::written::Written;

/// What fields need to show a value: the file's own words, and the units chosen.
#[derive(Clone, Copy)]
pub(crate) struct Show<'a> {
    pub(crate) loaded: &'a Loaded,
    pub(crate) written: &'a Written,
    pub(crate) system: System,
}

/// One value to type.
pub(crate) struct Typed<'a> {
    /// Where it is in the file, such as `chart.thigh.value`.
    pub(crate) path: String,
    /// What it is, for somebody who cannot see the table around it.
    pub(crate) label: String,
    /// What the field holds.
    pub(crate) value: String,
    /// What holds when the field is empty; a field with one may be emptied.
    pub(crate) usual: Option<String>,
    /// The file's own words, where the field shows something else.
    pub(crate) kept: Option<&'a str>,
}

impl<'a> Show<'a> {
    /// A length that the file has to say.
    pub(crate) fn length(&self, path: String, label: String, value: Length) -> Typed<'a> {
        self.quantity(path, label, Some(value.show(self.system)), None)
    }

    /// A length that the file may leave out; `usual` says in words what then holds.
    pub(crate) fn optional(
        &self,
        path: String,
        label: String,
        value: Option<Length>,
        usual: &str,
    ) -> Typed<'a> {
        let value = value.map(|value| value.show(self.system));
        self.quantity(path, label, value, Some(usual.to_owned()))
    }

    /// A stitch density.
    pub(crate) fn density(&self, path: String, label: String, value: StitchDensity) -> Typed<'a> {
        self.quantity(path, label, Some(value.show(self.system)), None)
    }

    /// The file's own words where they are in the units chosen; else the value in those units, and the words beside it.
    fn quantity(
        &self,
        path: String,
        label: String,
        shown: Option<String>,
        usual: Option<String>,
    ) -> Typed<'a> {
        let written = self.written.get(&path);
        let (value, kept) = match (written, shown) {
            (Some(words), _) if is_in(words, self.system) => (words.to_owned(), None),
            (Some(words), Some(shown)) => (shown, Some(words)),
            (Some(words), None) => (words.to_owned(), None),
            // What the file does not say stands in the field only where there is no other place for it.
            (None, Some(shown)) if usual.is_none() => (shown, None),
            (None, _) => (String::new(), None),
        };
        Typed {
            path,
            label,
            value,
            usual,
            kept,
        }
    }

    pub(crate) fn collection(&self) -> &'a Collection {
        &self.loaded.collection
    }
}

impl Typed<'_> {
    pub(crate) fn render(&self) -> Markup {
        let title = self.kept.map(|words| format!("in the file: {words}"));
        html! {
            input type="text" id={ "f-" (self.path) } data-path=(self.path) aria-label=(self.label)
                value=(self.value) placeholder=[self.usual.as_deref()] title=[title]
                data-optional[self.usual.is_some()] data-kept[self.kept.is_some()]
                autocomplete="off" spellcheck="false";
        }
    }
}

/// One value to choose.
pub(crate) struct Chosen {
    pub(crate) path: String,
    pub(crate) label: String,
    /// What a file says for each choice, and what a person reads.
    pub(crate) choices: Vec<(String, String)>,
    pub(crate) chosen: String,
}

impl Chosen {
    pub(crate) fn render(&self) -> Markup {
        html! {
            select id={ "f-" (self.path) } data-path=(self.path) aria-label=(self.label) {
                @for (value, words) in &self.choices {
                    option value=(value) selected[*value == self.chosen] { (words) }
                }
            }
        }
    }
}

/// A stitch type.
pub(crate) fn stitch(path: String, label: String, chosen: StitchType) -> Chosen {
    let choices = StitchType::ALL.iter().map(|stitch| {
        (
            stitch.code().to_owned(),
            format!("{} {}", stitch.code(), stitch.name()),
        )
    });
    Chosen {
        path,
        label,
        choices: choices.collect(),
        chosen: chosen.code().to_owned(),
    }
}

/// A yarn of the collection.
pub(crate) fn yarn(collection: &Collection, path: String, label: String, chosen: &str) -> Chosen {
    let choices = collection
        .yarns
        .iter()
        .map(|(key, yarn)| (key.clone(), format!("{}, {}", yarn.name, yarn.colour_name)));
    Chosen {
        path,
        label,
        choices: choices.collect(),
        chosen: chosen.to_owned(),
    }
}

/// A spot in a colour of the work.
pub(crate) fn swatch(colour: trade::Colour) -> Markup {
    html! {
        svg.swatch viewBox="0 0 10 10" aria-hidden="true" {
            circle cx="5" cy="5" r="4.5" fill=(colour) {}
        }
    }
}

/// Where a problem with one of the fields around it is said.
pub(crate) fn problem_place(about: &str) -> Markup {
    html! { p.problem id={ "problem-" (about) } data-keep hidden {} }
}

/// With a capital, to begin a line.
pub(crate) fn capital(words: &str) -> String {
    let mut rest = words.chars();
    match rest.next() {
        Some(first) => first.to_uppercase().chain(rest).collect(),
        None => String::new(),
    }
}

/// Whether a quantity is written in a system's units.
fn is_in(words: &str, system: System) -> bool {
    let unit = words
        .rsplit(|c: char| c.is_whitespace() || c.is_ascii_digit())
        .next()
        .unwrap_or_default()
        .trim_start_matches('/')
        .to_lowercase();
    let of_system: &[&str] = match system {
        System::Metric => &["mm", "cm", "m"],
        System::Inch => &["in", "inch", "inches", "yd", "yard", "yards"],
    };
    of_system.contains(&unit.as_str())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_are_kept_in_their_own_system() {
        for words in ["33 1/2 in", "8 /in", "1in", "2 INCHES"] {
            assert!(is_in(words, System::Inch), "{words}");
            assert!(!is_in(words, System::Metric), "{words}");
        }
        for words in ["26.5 cm", "3mm", "3.1 /cm"] {
            assert!(is_in(words, System::Metric), "{words}");
            assert!(!is_in(words, System::Inch), "{words}");
        }
        assert!(!is_in("", System::Metric));
    }
}
