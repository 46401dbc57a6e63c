//! Small words of the trade's messages: counts with their nouns, and texts that are safe to show.

use std::borrow::Cow;
use std::fmt::Display;

/// A count with its noun: "1 ply", "2 plies".
///
/// ```
/// assert_eq!(trade::counted(1, "ply", "plies"), "1 ply");
/// assert_eq!(trade::counted(0_u32, "pair", "pairs"), "0 pairs");
/// ```
#[must_use]
pub fn counted<N: Display + PartialEq + From<u8>>(count: N, one: &str, many: &str) -> String {
    let noun = if count == N::from(1) { one } else { many };
    format!("{count} {noun}")
}

/// A text as it may be shown on a terminal: characters that steer it or that turn the direction of writing
/// are replaced, each by one that takes as many bytes, so that places in the text stay where they are.
/// Line breaks and tabs stay.
///
/// ```
/// assert_eq!(trade::plain("red\u{1b}[31m"), "red?[31m");
/// assert_eq!(trade::plain("a\u{202e}b\r\n"), "a\u{fffd}b\r\n");
/// ```
#[must_use]
pub fn plain(text: &str) -> Cow<'_, str> {
    if !text.chars().any(|c| c == '\r' || steers(c)) {
        return Cow::Borrowed(text);
    }
    let mut out = String::with_capacity(text.len());
    let mut rest = text.chars().peekable();
    while let Some(c) = rest.next() {
        let harmless = if c == '\r' {
            rest.peek() == Some(&'\n')
        } else {
            !steers(c)
        };
        out.push(match (harmless, c.len_utf8()) {
            (true, _) => c,
            (false, 1) => '?',
            (false, 2) => '·',
            (false, _) => '\u{fffd}',
        });
    }
    Cow::Owned(out)
}

/// Whether a character steers a terminal, breaks the line unseen or turns the direction of writing. Those that
/// only join or part letters belong to names of many scripts and stay.
#[must_use]
pub fn steers(c: char) -> bool {
    let turns = matches!(
        c,
        '\u{061c}' | '\u{200e}' | '\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2066}'..='\u{2069}'
    );
    turns || (c.is_control() && !matches!(c, '\n' | '\t' | '\r'))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_that_steers_is_left_and_no_place_moves() {
        let every = (0..=0x10_ffff).filter_map(char::from_u32);
        let text: String = every.filter(|c| c.len_utf8() < 4).collect();
        let shown = plain(&text);
        assert_eq!(shown.len(), text.len());
        assert!(!shown.chars().any(steers));
        assert!(!plain("over\rwritten").contains('\r'));
        assert_eq!(plain("Größe 32, 東\n"), "Größe 32, 東\n");
    }
}
