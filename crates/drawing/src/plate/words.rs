//! Quantities and rows as a plate says them, in the collection's units.

use sewing::StitchRow;
use style::Collection;
use trade::{Length, System, trimmed};
use words::{Key, Words, key, say};

pub(super) use crate::shown_units::system;

/// What stands for a length that is not a number.
const UNKNOWN: &str = "?";

/// What a length read off a drawing may be out by. Half a step is rounded up whichever way it is out, so that one
/// length is never told in two ways.
const READ_OFF: Length = Length::mm(1e-6);

/// A length on a dimension line: "7.5 cm", below a centimetre "1.6 mm"; "2 15/16 in".
pub(super) fn amount(read: Length, system: System) -> String {
    let length = read + READ_OFF;
    match system {
        _ if !length.is_finite() => UNKNOWN.to_owned(),
        System::Metric if length.to_mm().abs() < 9.95 => length.show_mm(),
        // Short ones to a tenth of a millimetre: a row or a button stands by it.
        System::Metric if length.to_mm().abs() < 50.0 => {
            format!("{} cm", trimmed(length.to_cm(), 0, 2))
        }
        System::Metric => format!("{} cm", trimmed(length.to_cm(), 0, 1)),
        System::Inch => length.show(system),
    }
}

/// A length without its unit, for lists that say the unit once: centimetres to a tenth, or inches.
pub(super) fn figure_of(length: Length, system: System) -> String {
    match system {
        _ if !length.is_finite() => UNKNOWN.to_owned(),
        System::Metric => trimmed(length.to_cm(), 0, 1),
        System::Inch => format!("{:.2}", length.to_inches() + 0.0),
    }
}

/// The unit of [`figure_of`].
pub(super) const fn unit_word(system: System) -> Key {
    match system {
        System::Metric => key::DRAWN_CENTIMETRES,
        System::Inch => key::DRAWN_INCHES,
    }
}

/// Signs of units that stand behind a figure and are never parted from it.
const UNITS: [&str; 14] = [
    "mm", "cm", "m", "in", "/cm", "/in", "cm²", "g", "g/m²", "kg", "oz", "°C", "°F", "%",
];

/// Whether a word is the sign of a unit.
pub(super) fn is_unit(word: &str) -> bool {
    UNITS.contains(&word)
}

/// Words one by one, a figure and the unit behind it as one.
pub(super) fn with_units<'a>(
    words: impl Iterator<Item = &'a str>,
    is_unit: impl Fn(&str) -> bool,
) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    for word in words {
        let unit = is_unit(word.trim_end_matches([',', ';', '.', ':']));
        match out.last_mut() {
            Some(last) if unit && last.ends_with(|c: char| c.is_ascii_digit()) => {
                last.push(' ');
                last.push_str(word);
            }
            _ => out.push(word.to_owned()),
        }
    }
    out
}

/// "301, 3.1 /cm, Rope 80 / Rope 60": stitch, density, needle yarn and under yarn.
pub(super) fn row_words(collection: &Collection, row: &StitchRow) -> String {
    let yarn = |key: &str| {
        let named = collection.yarns.get(key).map(|y| y.name.as_str());
        named.unwrap_or(key).to_owned()
    };
    let density = row.density.show(system(collection));
    let (needle, under) = (yarn(&row.needle.key), yarn(&row.under.key));
    format!("{}, {density}, {needle} / {under}", row.stitch.code())
}

/// The text with its first letter large.
pub(super) fn capitalised(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

/// "a", "a and b", "a, b and c".
pub(super) fn listed(all: &[String], words: &Words) -> String {
    match all {
        [] => String::new(),
        [one] => one.clone(),
        [before @ .., last] => words.say(say::JoinedAnd {
            first: before.join(", "),
            next: last,
        }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn amounts_read_as_a_workroom_writes_them() {
        let metric = |mm: f64| amount(Length::mm(mm), System::Metric);
        assert_eq!(metric(75.0), "7.5 cm");
        assert_eq!(metric(80.0), "8 cm");
        assert_eq!(metric(9.96), "1 cm");
        assert_eq!(metric(1.6), "1.6 mm");
        assert_eq!(metric(8.0), "8 mm");
        assert_eq!([metric(43.75 - 1e-9), metric(43.75 + 1e-9)], ["4.38 cm"; 2]);
        assert_eq!(amount(Length::inches(2.9375), System::Inch), "2 15/16 in");
    }
}
