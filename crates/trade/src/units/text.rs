//! Reading a quantity from text: a number, perhaps with a fraction, beside its unit.

use super::error::{UnitError, quoted};
use super::kind::{Quantity, system_before, unit_after};

/// Reads `text` as a quantity of the kind `wanted` and returns it in base units.
///
/// # Errors
/// Any [`UnitError`]; the value returned is always finite.
pub(super) fn read(text: &str, wanted: Quantity) -> Result<f64, UnitError> {
    Reader {
        text: text.trim(),
        wanted,
    }
    .read()
}

/// A number read from the front of a text, and what follows it.
struct Front<'a> {
    number: f64,
    rest: &'a str,
}

struct Reader<'a> {
    text: &'a str,
    wanted: Quantity,
}

impl<'a> Reader<'a> {
    fn read(&self) -> Result<f64, UnitError> {
        let word_end = self
            .text
            .find(|c: char| !c.is_alphabetic())
            .unwrap_or(self.text.len());
        let base = match self.text.split_at(word_end) {
            ("", _) => self.read_number_first()?,
            (word, rest) => self.read_system_first(word, rest)?,
        };
        if base.is_finite() {
            Ok(base)
        } else {
            Err(self.not_finite())
        }
    }

    /// "tex 105": only yarn sizes are written this way round. No fraction is read here, so that
    /// a two-ply "Nm 20/2" is refused rather than guessed at.
    fn read_system_first(&self, word: &str, rest: &'a str) -> Result<f64, UnitError> {
        let Some(conversion) = system_before(word) else {
            return Err(self.no_number(self.text));
        };
        let Some(front) = plain_number(rest.trim_start()) else {
            return Err(self.no_number(rest));
        };
        let extra = front.rest.trim();
        if !extra.is_empty() {
            return Err(self.after_number(
                extra,
                UnitError::TrailingText {
                    text: quoted(self.text),
                    extra: quoted(extra),
                    wanted: self.wanted,
                },
            ));
        }
        if self.wanted == Quantity::YarnSize {
            Ok(conversion.to_base(front.number))
        } else {
            Err(self.wrong_quantity(Quantity::YarnSize))
        }
    }

    /// "10 1/2 in": everything but a count of yarn.
    fn read_number_first(&self) -> Result<f64, UnitError> {
        let Some(whole) = plain_number(self.text) else {
            return Err(self.no_number(self.text));
        };
        let front = self.with_fraction(whole)?;
        let unit: String = squeeze(front.rest);
        if unit.is_empty() {
            return Err(if front.number.is_finite() {
                UnitError::MissingUnit {
                    text: quoted(self.text),
                    wanted: self.wanted,
                }
            } else {
                self.not_finite()
            });
        }
        if let Some((found, conversion)) = unit_after(&unit) {
            return if found == self.wanted {
                Ok(conversion.to_base(front.number))
            } else {
                Err(self.wrong_quantity(found))
            };
        }
        let rest = front.rest.trim();
        let error = match rest.split_once(char::is_whitespace) {
            Some((first, extra)) if unit_after(first).is_some() => UnitError::TrailingText {
                text: quoted(self.text),
                extra: quoted(extra.trim()),
                wanted: self.wanted,
            },
            _ => UnitError::UnknownUnit {
                text: quoted(self.text),
                unit: quoted(rest),
                wanted: self.wanted,
            },
        };
        Err(self.after_number(rest, error))
    }

    /// The number with the fraction that may follow it: "1/8" or "10 1/2".
    fn with_fraction(&self, whole: Front<'a>) -> Result<Front<'a>, UnitError> {
        if let Some(below) = whole.rest.strip_prefix('/').and_then(digits) {
            return Ok(Front {
                number: self.divide(whole.number, below.number)?,
                rest: below.rest,
            });
        }
        let mixed = digits(whole.rest.trim_start()).and_then(|above| {
            let below = above.rest.strip_prefix('/').and_then(digits)?;
            Some((above.number, below))
        });
        let Some((above, below)) = mixed else {
            return Ok(whole);
        };
        let fraction = self.divide(above, below.number)?;
        let signed = if self.text.starts_with(MINUS) {
            -fraction
        } else {
            fraction
        };
        Ok(Front {
            number: whole.number + signed,
            rest: below.rest,
        })
    }

    fn divide(&self, above: f64, below: f64) -> Result<f64, UnitError> {
        if below == 0.0 {
            Err(UnitError::DivisionByZero {
                text: quoted(self.text),
                wanted: self.wanted,
            })
        } else {
            Ok(above / below)
        }
    }

    fn wrong_quantity(&self, found: Quantity) -> UnitError {
        UnitError::WrongQuantity {
            text: quoted(self.text),
            found,
            wanted: self.wanted,
        }
    }

    fn not_finite(&self) -> UnitError {
        UnitError::NotFinite {
            text: quoted(self.text),
            wanted: self.wanted,
        }
    }

    /// Nothing numeric where a number belongs; the words for "no finite number" are told apart.
    fn no_number(&self, at: &str) -> UnitError {
        let word: String = at
            .trim_start()
            .trim_start_matches(['+', '-', '−'])
            .chars()
            .take_while(|c| c.is_alphabetic())
            .collect();
        if ["nan", "inf", "infinity"]
            .iter()
            .any(|w| word.eq_ignore_ascii_case(w))
        {
            self.not_finite()
        } else {
            UnitError::NotANumber {
                text: quoted(self.text),
                wanted: self.wanted,
            }
        }
    }

    /// A comma straight after the digits is a decimal comma: say so instead of the general error.
    fn after_number(&self, rest: &str, otherwise: UnitError) -> UnitError {
        let decimal_comma = rest
            .strip_prefix(',')
            .is_some_and(|after| after.starts_with(|c: char| c.is_ascii_digit()));
        if decimal_comma {
            UnitError::Comma {
                text: quoted(self.text),
                wanted: self.wanted,
            }
        } else {
            otherwise
        }
    }
}

/// The minus of the keyboard and the minus of the typesetter.
const MINUS: [char; 2] = ['-', '−'];

/// The unit with its inner spaces dropped around a stroke: "oz / yd2" is "oz/yd2".
fn squeeze(unit: &str) -> String {
    let parts: Vec<&str> = unit.trim().split('/').map(str::trim).collect();
    parts.join("/")
}

/// Digits alone, at the very front.
fn digits(text: &str) -> Option<Front<'_>> {
    let end = text
        .find(|c: char| !c.is_ascii_digit())
        .unwrap_or(text.len());
    let (front, rest) = text.split_at(end);
    front.parse().ok().map(|number| Front { number, rest })
}

/// A decimal number at the very front: sign, digits, point, exponent.
fn plain_number(text: &str) -> Option<Front<'_>> {
    let (sign, unsigned) = match text.strip_prefix(MINUS) {
        Some(after) => (-1.0, after),
        None => (1.0, text.strip_prefix('+').unwrap_or(text)),
    };
    let bytes = unsigned.as_bytes();
    let run = |from: usize| {
        let tail = bytes.get(from..).unwrap_or_default();
        from + tail.iter().take_while(|b| b.is_ascii_digit()).count()
    };
    let mut end = run(0);
    if bytes.get(end) == Some(&b'.') {
        end = run(end + 1);
    }
    if matches!(bytes.get(end), Some(b'e' | b'E')) {
        let signed = usize::from(matches!(bytes.get(end + 1), Some(b'+' | b'-')));
        let exponent = run(end + 1 + signed);
        if exponent > end + 1 + signed {
            end = exponent;
        }
    }
    let (front, rest) = unsigned.split_at(end);
    let magnitude: f64 = front.parse().ok()?;
    Some(Front {
        number: sign * magnitude,
        rest,
    })
}
