//! What was seen in a pattern file, for a person.

use std::fmt::Write;

use intake::{Look, SeenPiece};
use jobs::Brought;
use style::{EdgeId, Size};
use trade::counted;
use words::Words;

/// Every piece with its measures, its corners and what it is taken for.
pub fn list(look: &Look, passed_over: &[String]) -> String {
    let mut out = format!(
        "{}: {}\n",
        look.file.from,
        counted(look.pieces.len(), "piece", "pieces")
    );
    for piece in &look.pieces {
        one(&mut out, piece);
    }
    if look.drawn.is_some() {
        let _ = writeln!(out, "\n{WASH_SAID}");
    }
    passed(&mut out, passed_over);
    out
}

/// Said where a file says itself for which state of the cloth it is drawn.
const WASH_SAID: &str =
    "the file says what the wash takes from each piece; outlines and measures are without it";

fn one(out: &mut String, piece: &SeenPiece) {
    let sizes: Vec<String> = piece.sizes.iter().map(Size::to_string).collect();
    // Writing into a string does not fail.
    let _ = writeln!(out, "\n\"{}\" in {}", piece.name, sizes.join(", "));
    let _ = writeln!(
        out,
        "  in {}: {:.1} × {:.1} cm, {:.1} cm², {}, {}, {}",
        piece.shown,
        piece.width.to_cm(),
        piece.height.to_cm(),
        piece.area.to_cm2(),
        if piece.sewn {
            "outline is sewn along"
        } else {
            "outline is cut along"
        },
        piece.grain.map_or_else(
            || "no grain line".to_owned(),
            |grain| format!("grain at {:.1}°", grain.to_deg())
        ),
        counted(piece.notches, "notch", "notches")
    );
    if piece.half {
        let _ = writeln!(out, "  given as a half, opened over its mirror line");
    }
    match (piece.taken_for, &piece.aside) {
        (Some(known), _) => {
            let _ = writeln!(out, "  taken for the {} by {}", known.title, because(piece));
        }
        (None, Some(why)) => {
            let _ = writeln!(out, "  left aside: {why}");
        }
        (None, None) => {
            let _ = writeln!(out, "  left aside: nothing says which piece it is");
        }
    }
    for (k, side) in piece.sides.iter().enumerate() {
        let _ = writeln!(
            out,
            "  {:>16} to {:<16} {:>8.1} mm   {}",
            side.from,
            side.to,
            side.length.to_mm(),
            edge_of(piece, k).map_or("", |id| id.words(Words::english()))
        );
    }
}

/// The edge that a stretch between two corners belongs to, if it belongs to one.
fn edge_of(piece: &SeenPiece, side: usize) -> Option<EdgeId> {
    let n = piece.sides.len();
    let corner = |name: &str| piece.sides.iter().position(|s| s.from == name);
    let spans = |from: &str, to: &str| {
        let (from, to) = (corner(from)?, corner(to)?);
        Some((from, (to + n - from) % n))
    };
    let onward: usize = piece
        .edges
        .iter()
        .filter_map(|e| Some(spans(&e.from, &e.to)?.1))
        .sum();
    let within = |from: &str, to: &str| {
        spans(from, to).is_some_and(|(from, steps)| (side + n - from) % n < steps)
    };
    // The edges may follow one another against the outline.
    let found = piece.edges.iter().find(|e| {
        if onward == n {
            within(&e.from, &e.to)
        } else {
            within(&e.to, &e.from)
        }
    });
    found.map(|e| e.id)
}

fn because(piece: &SeenPiece) -> &str {
    match piece.because {
        "as stated" => "what you said",
        "as the file says" => "what the file says",
        other => other,
    }
}

fn passed(out: &mut String, passed_over: &[String]) {
    if !passed_over.is_empty() {
        let _ = writeln!(out, "\npassed over: {}", passed_over.join(", "));
    }
}

/// What was brought and what is to be done now.
pub fn told(brought: &Brought, look: &Look, passed_over: &[String]) -> String {
    let loaded = &brought.saved.loaded;
    let taken: Vec<&SeenPiece> = look
        .pieces
        .iter()
        .filter(|p| p.taken_for.is_some())
        .collect();
    let mut out = format!(
        "{} of {} {} brought into {}\n",
        counted(taken.len(), "piece", "pieces"),
        look.file.from,
        if taken.len() == 1 { "is" } else { "are" },
        loaded.path.display()
    );
    let guesses: usize = taken
        .iter()
        .map(|p| p.edges.iter().filter(|e| !e.sure).count())
        .sum();
    for piece in &taken {
        let title = piece.taken_for.map_or("", |known| known.title);
        let _ = writeln!(
            out,
            "  {title:<20} \"{}\", by {}",
            piece.name,
            because(piece)
        );
    }
    for piece in look.pieces.iter().filter(|p| p.taken_for.is_none()) {
        let why = piece
            .aside
            .as_deref()
            .unwrap_or("laid out by the program instead");
        let _ = writeln!(out, "  left aside           \"{}\": {why}", piece.name);
    }
    if look.drawn.is_some() {
        let _ = writeln!(out, "{WASH_SAID}");
    }
    passed(&mut out, passed_over);
    if let Some(sizes) = &brought.sizes {
        let words: Vec<String> = sizes.iter().map(Size::to_string).collect();
        let _ = writeln!(
            out,
            "the style is now made in {}, as the pattern is",
            words.join(", ")
        );
    }
    let _ = writeln!(out, "the outlines lie in {} beside the style", brought.file);
    if guesses > 0 {
        let _ = writeln!(
            out,
            "{} guessed: confirm {} in [pattern] of the style file",
            counted(guesses, "edge was", "edges were"),
            if guesses == 1 { "it" } else { "them" }
        );
    }
    let folder = loaded.folder().display();
    let _ = writeln!(out, "next: fellwork check {folder} --measures");
    out
}
