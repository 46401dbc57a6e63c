//! The pairs of lines a DXF file is made of: a group code and a value.

use std::borrow::Cow;
use std::iter::Peekable;
use std::str::Lines;

use crate::error::{ReadError, shown};
use crate::limits::MOST_BYTES;

/// A group code with its value.
#[derive(Clone, Copy, Debug)]
pub(super) struct Group<'a> {
    /// The line of the value, counted from 1.
    pub line: usize,
    pub code: i32,
    pub value: &'a str,
}

impl Group<'_> {
    /// The value as a number.
    pub fn real(&self) -> Result<f64, ReadError> {
        let number: Option<f64> = self.value.trim().parse().ok();
        number.filter(|v| v.is_finite()).ok_or_else(|| {
            ReadError::line(
                self.line,
                format!(
                    "group {} is `{}`, not a number",
                    self.code,
                    shown(self.value)
                ),
                "write a decimal number such as 12.5",
            )
        })
    }

    /// The value as a whole number.
    pub fn whole(&self) -> Result<i64, ReadError> {
        let number = self.value.trim().parse().ok();
        number.ok_or_else(|| {
            ReadError::line(
                self.line,
                format!(
                    "group {} is `{}`, not a whole number",
                    self.code,
                    shown(self.value)
                ),
                "write a whole number such as 1",
            )
        })
    }
}

/// The text of a file. Older files are not UTF-8; each byte is then taken as a Latin letter.
pub(super) fn decoded(bytes: &[u8]) -> Result<Cow<'_, str>, ReadError> {
    const ASCII: &str = "save it as ASCII DXF, release 12 or later";
    if bytes.len() > MOST_BYTES {
        return Err(ReadError::whole(
            format!("{} MB are more than is read", bytes.len() / 1_000_000),
            format!(
                "write at most {} MB, in files of fewer sizes",
                MOST_BYTES / 1_000_000
            ),
        ));
    }
    if bytes.starts_with(b"AutoCAD Binary DXF") {
        return Err(ReadError::whole("this is binary DXF", ASCII));
    }
    if bytes.starts_with(b"AC10") {
        return Err(ReadError::whole("this is a DWG file, not DXF", ASCII));
    }
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    if bytes.contains(&0) {
        return Err(ReadError::whole("this is not text", ASCII));
    }
    Ok(match std::str::from_utf8(bytes) {
        Ok(text) => Cow::Borrowed(text),
        Err(_) => Cow::Owned(bytes.iter().map(|b| char::from(*b)).collect()),
    })
}

/// The groups of a file, one after the other. Comments (code 999) are passed over.
pub(super) struct Groups<'a> {
    lines: Peekable<Lines<'a>>,
    line: usize,
    ahead: Option<Group<'a>>,
}

impl<'a> Groups<'a> {
    pub fn new(text: &'a str) -> Self {
        Groups {
            lines: text.lines().peekable(),
            line: 0,
            ahead: None,
        }
    }

    /// The next group.
    ///
    /// # Errors
    /// A group code that is no number, or the file ends without its end mark.
    pub fn next(&mut self) -> Result<Group<'a>, ReadError> {
        match self.ahead.take() {
            Some(group) => Ok(group),
            None => self.read(),
        }
    }

    /// The next group unless it begins something new (code 0).
    pub fn next_within(&mut self) -> Result<Option<Group<'a>>, ReadError> {
        let group = self.next()?;
        if group.code == 0 {
            self.ahead = Some(group);
            return Ok(None);
        }
        Ok(Some(group))
    }

    fn read(&mut self) -> Result<Group<'a>, ReadError> {
        loop {
            let (Some(code), Some(value)) = (self.lines.next(), self.lines.next()) else {
                return Err(ReadError::line(
                    self.line.max(1),
                    "the file ends here, without its end mark",
                    "it seems cut short: write it again, to the lines 0 and EOF",
                ));
            };
            self.line += 2;
            let number: Option<i32> = code.trim().parse().ok();
            let Some(code) = number else {
                return Err(ReadError::line(
                    self.line - 1,
                    format!(
                        "a group code should stand here, and there is `{}`",
                        shown(code)
                    ),
                    "a DXF file is pairs of lines, a whole number and then its value",
                ));
            };
            if code != 999 {
                return Ok(Group {
                    line: self.line,
                    code,
                    value,
                });
            }
        }
    }
}
