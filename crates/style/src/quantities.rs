//! Reading quantities: the unit is required, and each has limits beyond which it must be a mistake (see `range`).

use std::str::FromStr;

use trade::{Colour, UnitError};

use crate::range::{Amount, Measured, Range, range_of};
use crate::reader::{Node, short};

impl Node<'_> {
    /// A quantity with its unit, within what its row of the table says is possible.
    pub(crate) fn quantity<T: Measured>(&self) -> Option<T> {
        let text = match (self.as_str(), self.bare_number()) {
            (Some(text), _) => text,
            (None, Some(number)) => number,
            (None, None) => {
                self.wrong_type(
                    "a number with its unit",
                    "it in quotes, such as \"26.5 cm\"",
                );
                return None;
            }
        };
        match text.parse::<T>() {
            Ok(value) => self.within(text, value),
            Err(error) => {
                let (message, hint) = split_hint(&error.to_string());
                self.problem(
                    unit_code(&error),
                    format!("`{}`: {message}", self.key()),
                    hint,
                );
                None
            }
        }
    }

    /// How many there are of something, at least so many and within what its row of the table says is possible.
    pub(crate) fn count(&self, least: u32) -> Option<u32> {
        let row = self.row()?;
        let [Amount::Count(low), Amount::Count(high)] = row.possible else {
            return self.no_row();
        };
        #[cfg(test)]
        self.context.read_quantity(&self.path);
        self.whole(low.max(least), high)
    }

    fn row(&self) -> Option<&'static Range> {
        range_of(&self.path).or_else(|| self.no_row())
    }

    /// Never seen by a maker: a test reads every quantity of the format.
    fn no_row<T>(&self) -> Option<T> {
        let message = format!("nothing says what `{}` can be", self.key());
        let hint = "this is a fault of the program, not of the file: take the line out";
        self.problem("style::no-range", message, hint);
        None
    }

    fn within<T: Measured>(&self, text: &str, value: T) -> Option<T> {
        let row = self.row()?;
        #[cfg(test)]
        self.context.read_quantity(&self.path);
        let ends = row.possible.map(T::of);
        let [Some(low), Some(high)] = ends else {
            return self.no_row();
        };
        if row.is_possible(value.into()) {
            return Some(value);
        }
        let (zero, negative) = (T::default(), value < T::default());
        let [least, most] = row.possible;
        let limit = if value > high {
            format!("at most {most} makes sense here")
        } else if value > zero || low < zero {
            format!("at least {least} makes sense here")
        } else if low == zero {
            "it cannot be less than zero".to_owned()
        } else {
            "it has to be more than zero".to_owned()
        };
        let code = if negative && low >= zero {
            "style::negative"
        } else {
            "style::out-of-range"
        };
        let message = format!("`{}` is {}", self.key(), short(text.trim()));
        let [from, to] = row.usual;
        self.problem(code, message, format!("{limit}; {from} to {to} is usual"));
        None
    }

    /// A colour, "#rrggbb".
    pub(crate) fn colour(&self) -> Option<Colour> {
        self.parsed(
            "style::unreadable-colour",
            "a colour",
            "it in quotes, such as \"#27324a\"",
        )
    }

    /// Anything else that is read from a text and whose error says what would be right.
    pub(crate) fn parsed<T>(&self, code: &'static str, wanted: &str, example: &str) -> Option<T>
    where
        T: FromStr,
        T::Err: std::fmt::Display,
    {
        let Some(text) = self.as_str() else {
            self.wrong_type(wanted, example);
            return None;
        };
        match text.parse() {
            Ok(value) => Some(value),
            Err(error) => {
                let (message, hint) = split_hint(&error.to_string());
                self.problem(code, format!("`{}`: {message}", self.key()), hint);
                None
            }
        }
    }
}

fn unit_code(error: &UnitError) -> &'static str {
    match error {
        UnitError::MissingUnit { .. } => "style::missing-unit",
        UnitError::WrongQuantity { .. } | UnitError::UnknownUnit { .. } => "style::wrong-unit",
        UnitError::NotFinite { .. } => "style::not-a-number",
        UnitError::NotANumber { .. }
        | UnitError::Comma { .. }
        | UnitError::DivisionByZero { .. }
        | UnitError::TrailingText { .. } => "style::unreadable-quantity",
    }
}

/// The units' errors say "what is wrong: what would be right" in one line; here the two are shown apart.
fn split_hint(error: &str) -> (String, String) {
    for mark in [": write ", ": leave ", "; "] {
        if let Some(at) = error.rfind(mark) {
            let (message, hint) = error.split_at(at);
            let hint = hint.trim_start_matches([':', ';', ' ']);
            return (message.to_owned(), hint.to_owned());
        }
    }
    (
        error.to_owned(),
        "write a number and its unit in quotes".to_owned(),
    )
}
