//! What can be wrong with a quantity written as text.

use super::kind::Quantity;

/// Why a text is not the quantity that was wanted, with a hint how to write it.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum UnitError {
    /// The number stands alone.
    #[error("\"{text}\" has no unit: write {}", .wanted.with_units(.text))]
    MissingUnit {
        /// The text as written.
        text: String,
        /// What was wanted.
        wanted: Quantity,
    },
    /// The unit is a known one, of another quantity.
    #[error("\"{text}\" is {}; {} is wanted, such as {}", .found.noun(), .wanted.noun(), .wanted.examples())]
    WrongQuantity {
        /// The text as written.
        text: String,
        /// What the unit measures.
        found: Quantity,
        /// What was wanted.
        wanted: Quantity,
    },
    /// The unit is not one we know.
    #[error("\"{unit}\" in \"{text}\" is not a unit known here: write {} such as {}", .wanted.noun(), .wanted.examples())]
    UnknownUnit {
        /// The text as written.
        text: String,
        /// The part that should have been a unit.
        unit: String,
        /// What was wanted.
        wanted: Quantity,
    },
    /// No number can be read.
    #[error("\"{text}\" does not hold a number: write {} such as {}", .wanted.noun(), .wanted.examples())]
    NotANumber {
        /// The text as written.
        text: String,
        /// What was wanted.
        wanted: Quantity,
    },
    /// A comma stands where the decimal point belongs.
    #[error("\"{text}\" has a comma in its number: write decimals with a point, such as {}", .wanted.examples())]
    Comma {
        /// The text as written.
        text: String,
        /// What was wanted.
        wanted: Quantity,
    },
    /// The number is infinite, not a number, or too large to hold.
    #[error("\"{text}\" is not a finite quantity: write {} such as {}", .wanted.noun(), .wanted.examples())]
    NotFinite {
        /// The text as written.
        text: String,
        /// What was wanted.
        wanted: Quantity,
    },
    /// The fraction has nothing below its line.
    #[error(
        "\"{text}\" has a fraction over zero: write the part below the line as 2, 4, 8, 16 or 32"
    )]
    DivisionByZero {
        /// The text as written.
        text: String,
        /// What was wanted.
        wanted: Quantity,
    },
    /// A good quantity is followed by something else.
    #[error(
        "\"{text}\" goes on after its quantity with \"{extra}\": leave only the number and its unit"
    )]
    TrailingText {
        /// The text as written.
        text: String,
        /// The part too many.
        extra: String,
        /// What was wanted.
        wanted: Quantity,
    },
}

/// The text as it is quoted in a message: long ones are cut so that a message stays a line.
pub(super) fn quoted(text: &str) -> String {
    const LONGEST: usize = 60;
    match text.char_indices().nth(LONGEST) {
        Some((cut, _)) => format!("{}...", &text[..cut]),
        None => text.to_owned(),
    }
}
