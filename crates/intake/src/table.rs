//! The `[pattern]` of a style file, guesses marked for the maker.

use std::fmt::Write;

use style::{Drawn, OWN_PIECES, toml_text};
use trade::Length;

use crate::seen_file::{Look, SeenPiece};

/// The text of `[pattern]` for the pieces that were made out. `file` is the file of pieces as the style names it;
/// `drawn` holds where the pattern does not say it itself.
#[must_use]
pub fn table(look: &Look, file: &str, drawn: Drawn, allowance: Option<Length>) -> String {
    let mut out = String::from("[pattern]\n");
    let _ = writeln!(out, "file = \"{file}\"");
    let (drawn, why) = match look.drawn {
        Some(said) => (
            said,
            "            # what its file says the wash takes is taken off",
        ),
        None => (drawn, ""),
    };
    let _ = writeln!(out, "drawn = \"{}\"{why}", drawn.word());
    if let Some(allowance) = allowance {
        let _ = writeln!(
            out,
            "allowance = \"{} mm\"            # other widths go into [pattern.allowances], such as hem = \"30 mm\"",
            allowance.to_mm()
        );
    }
    for known in OWN_PIECES {
        let mut taken = look.pieces.iter();
        let found = taken.find(|p| p.taken_for.is_some_and(|k| k.id == known.id));
        if let Some(piece) = found {
            one(&mut out, known.id.code(), piece);
        }
    }
    out
}

fn one(out: &mut String, name: &str, piece: &SeenPiece) {
    let _ = write!(out, "\n[pattern.{name}]\n");
    let guessed = match piece.because {
        "as stated" | "as the file says" => String::new(),
        because => format!("   # guessed by {because}: please confirm"),
    };
    let _ = writeln!(out, "piece = {}{guessed}", toml_text(&piece.name));
    for edge in &piece.edges {
        let ends = format!("[{}, {}]", toml_text(&edge.from), toml_text(&edge.to));
        let length = length(piece, &edge.from, &edge.to);
        let words = match (edge.sure, length) {
            (true, _) => String::new(),
            (false, Some(length)) => {
                format!("   # guessed: {:.1} cm, please confirm", length.to_cm())
            }
            (false, None) => "   # guessed: please confirm".to_owned(),
        };
        let _ = writeln!(out, "{} = {ends}{words}", edge.id.code());
    }
}

/// How long the outline is from one corner to another, the shorter way round.
fn length(piece: &SeenPiece, from: &str, to: &str) -> Option<Length> {
    let n = piece.sides.len();
    let start = |name: &str| piece.sides.iter().position(|s| s.from == name);
    let (a, b) = (start(from)?, start(to)?);
    let walk = |a: usize, b: usize| -> Length {
        (0..(b + n - a) % n)
            .map(|k| piece.sides[(a + k) % n].length)
            .sum()
    };
    Some(walk(a, b).min(walk(b, a)))
}
