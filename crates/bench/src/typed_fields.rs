//! What a maker types, each field tied to a value of the style file by its path. What is chosen is in `chosen_fields`.

use maud::{Markup, html};
use style::{Collection, Loaded};
use trade::{Angle, Length, Share, StitchDensity, System};
use words::Words;

use crate::file_words::FileWords;

/// Makes the fields of a style: from the file's own words, in the units chosen.
#[derive(Clone, Copy)]
pub(crate) struct Fields<'a> {
    pub(crate) say: &'static Words,
    pub(crate) loaded: &'a Loaded,
    pub(crate) written: &'a FileWords,
    pub(crate) system: System,
}

/// One value to type.
pub(crate) struct TypedField {
    /// Where it is in the file, such as `chart.thigh.value`.
    pub(crate) path: String,
    /// What it is, for somebody who cannot see the table around it.
    pub(crate) label: String,
    /// What the field holds.
    pub(crate) value: String,
    /// What holds when the field is empty; a field with one may be emptied.
    pub(crate) usual: Option<String>,
    /// What is said of the file's own words, where the field shows something else.
    pub(crate) kept: Option<String>,
    /// Whether a whole number is meant and not words.
    pub(crate) whole: bool,
}

impl<'a> Fields<'a> {
    /// A length that the file has to say.
    pub(crate) fn length(&self, path: String, label: String, value: Length) -> TypedField {
        self.quantity(path, label, Some(value.show(self.system)), None)
    }

    /// A length that the file may leave out; `usual` says in words what then holds.
    pub(crate) fn optional(
        &self,
        path: String,
        label: String,
        value: Option<Length>,
        usual: &str,
    ) -> TypedField {
        let value = value.map(|value| value.show(self.system));
        self.quantity(path, label, value, Some(usual.to_owned()))
    }

    /// An angle that the file may leave out, and what then holds.
    pub(crate) fn angle(&self, path: &str, label: &str, usual: Angle) -> TypedField {
        let usual = Some(usual.show(self.system));
        self.quantity(path.to_owned(), label.to_owned(), None, usual)
    }

    /// A share that the file may leave out, and what then holds.
    pub(crate) fn share(&self, path: &str, label: &str, usual: Share) -> TypedField {
        let usual = Some(usual.show(self.system));
        self.quantity(path.to_owned(), label.to_owned(), None, usual)
    }

    /// A whole number that the file may leave out, and what then holds.
    pub(crate) fn whole(&self, path: &str, label: &str, value: u32, usual: u32) -> TypedField {
        let written = self.written.get(path).map(|_| value.to_string());
        TypedField {
            path: path.to_owned(),
            label: label.to_owned(),
            value: written.unwrap_or_default(),
            usual: Some(usual.to_string()),
            kept: None,
            whole: true,
        }
    }

    /// Words; `usual` says what holds when the file leaves them out, where it may.
    pub(crate) fn words(&self, path: &str, label: &str, usual: Option<&str>) -> TypedField {
        TypedField {
            path: path.to_owned(),
            label: label.to_owned(),
            value: self.written.get(path).unwrap_or_default().to_owned(),
            usual: usual.map(str::to_owned),
            kept: None,
            whole: false,
        }
    }

    /// A stitch density.
    pub(crate) fn density(&self, path: String, label: String, value: StitchDensity) -> TypedField {
        self.quantity(path, label, Some(value.show(self.system)), None)
    }

    /// The file's own words where they are in the units chosen; else the value in those units, and the words beside it.
    fn quantity(
        &self,
        path: String,
        label: String,
        shown: Option<String>,
        usual: Option<String>,
    ) -> TypedField {
        let written = self.written.get(&path);
        let (value, kept) = match (written, shown) {
            (Some(words), _) if is_in(words, self.system) => (words.to_owned(), None),
            (Some(words), Some(shown)) => (shown, Some(words)),
            (Some(words), None) => (words.to_owned(), None),
            // What the file does not say stands in the field only where there is no other place for it.
            (None, Some(shown)) if usual.is_none() => (shown, None),
            (None, _) => (String::new(), None),
        };
        TypedField {
            path,
            label,
            value,
            usual,
            kept: kept.map(|words| self.say.field_kept(words)),
            whole: false,
        }
    }

    pub(crate) fn collection(&self) -> &'a Collection {
        &self.loaded.collection
    }
}

impl TypedField {
    pub(crate) fn render(&self) -> Markup {
        self.with_id("f")
    }

    /// The same field once more, on the drawing.
    pub(crate) fn on_drawing(&self) -> Markup {
        self.with_id("d")
    }

    fn with_id(&self, kind: &str) -> Markup {
        html! {
            input type="text" id={ (kind) "-" (self.path) } data-path=(self.path) aria-label=(self.label)
                value=(self.value) placeholder=[self.usual.as_deref()] title=[self.kept.as_deref()]
                data-optional[self.usual.is_some()] data-kept[self.kept.is_some()]
                data-kind=[self.whole.then_some("whole")] inputmode=[self.whole.then_some("numeric")]
                autocomplete="off" spellcheck="false";
        }
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
    // Angles and shares have one way to be written.
    let of_both = ["deg", "°", "%"];
    if of_both.contains(&unit.as_str()) {
        return true;
    }
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
