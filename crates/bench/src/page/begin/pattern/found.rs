//! What was found in a pattern file: each piece drawn, with what it is taken for.

use std::fmt::Write;

use intake::{Asked, Look, SeenPiece};
use maud::{Markup, html};
use style::{OWN_PIECES, PieceBlock};
use trade::System;
use words::Words;

use crate::typed_fields::capital;

/// More pieces than a pair of jeans has are counted, not drawn.
const MOST_DRAWN: usize = 40;

/// Places of an outline that are drawn at most; the outline itself keeps all of its own.
const MOST_PLACES: usize = 1500;

pub(super) fn render(
    say: &'static Words,
    look: &Look,
    passed_over: &[String],
    asked: &Asked,
) -> Markup {
    let unclear = jobs::unclear(look);
    let sizes: Vec<String> = look.sizes.iter().map(ToString::to_string).collect();
    let more = look.pieces.len().saturating_sub(MOST_DRAWN);
    html! {
        div #found role="status" {
            h2 { @if sizes.is_empty() { (say.bring_pieces(look.pieces.len())) } @else { (say.say(words::say::BringPiecesInSizes { pieces: look.pieces.len(), sizes: listed(say, &sizes) })) } }
            @if unclear.is_empty() {
                p.lead { (say.bring_made_out()) }
            } @else {
                @for line in &unclear { p.problem { (capital(line)) } }
            }
            ul.pieces {
                @for (number, piece) in look.pieces.iter().take(MOST_DRAWN).enumerate() {
                    (one(say, look, piece, number, asked))
                }
            }
            @if more > 0 { p.aside { (say.bring_more_pieces(more)) } }
            @if !passed_over.is_empty() { p.aside { (say.bring_passed_over(passed_over.join(", "))) } }
        }
    }
}

/// Some of many sizes.
fn listed(say: &'static Words, sizes: &[String]) -> String {
    match sizes {
        [first, .., last] if sizes.len() > 4 => say.say(words::say::BringManySizes {
            first,
            last,
            sizes: sizes.len(),
        }),
        _ => sizes.join(", "),
    }
}

fn one(
    say: &'static Words,
    look: &Look,
    piece: &SeenPiece,
    number: usize,
    asked: &Asked,
) -> Markup {
    let block = look.file.pieces.get(&piece.name);
    let block = block.and_then(|sizes| sizes.get(&piece.shown));
    let stated = asked
        .pieces
        .iter()
        .find(|(_, theirs)| *theirs == piece.name);
    let stated = stated.map(|(own, _)| own.as_str());
    let corners = piece.taken_for.and_then(|known| {
        let mut all = asked.corners.iter();
        all.find(|(own, _)| own == known.id.code())
    });
    let corners = corners.map(|(_, names)| names.join(", "));
    html! {
        li.piece data-piece=(piece.name) {
            @if let Some(block) = block { (drawn(say, piece, block)) }
            div {
                h3 { (piece.name) }
                p.about { (lines(say, piece)) }
                label.cell {
                    span { (say.bring_it_is()) }
                    select data-which aria-label=(say.bring_what_is(&piece.name)) {
                        option value="" selected[stated.is_none()] {
                            @match piece.taken_for {
                                Some(known) if stated.is_none() => { (say.say(words::say::BringTakenFor { piece: known.title, reason: piece.because })) }
                                _ => { (say.bring_left_aside()) }
                            }
                        }
                        @for known in OWN_PIECES {
                            option value=(known.id.code()) selected[stated == Some(known.id.code())] { (known.title) }
                        }
                    }
                }
                @if let Some(why) = &piece.aside { p.problem { (capital(why)) } }
                @if let Some(known) = piece.taken_for {
                    details {
                        summary { (edges(say, piece)) }
                        table {
                            @for edge in &piece.edges {
                                tr { th scope="row" { (edge.id.words(say)) } td { (say.say(words::say::BringEdgeBetween { from: &edge.from, to: &edge.to })) } }
                            }
                        }
                        label.cell {
                            span { (say.bring_corners(known.edge_list().replace('_', " "))) }
                            input type="text" id={ "corners-" (number) } data-corners=(known.id.code()) value=[corners] placeholder=(say.bring_corners_usual()) autocomplete="off" spellcheck="false";
                        }
                    }
                }
            }
        }
    }
}

/// How large a piece is, and which lines it has.
fn lines(say: &'static Words, piece: &SeenPiece) -> String {
    let height = piece.height.show(System::Metric);
    let width = piece.width.show(System::Metric);
    match (piece.sewn, piece.grain.is_some()) {
        (true, true) => say.say(words::say::BringPieceSewn { height, width }),
        (true, false) => say.say(words::say::BringPieceSewnNoGrain { height, width }),
        (false, true) => say.say(words::say::BringPieceCut { height, width }),
        (false, false) => say.say(words::say::BringPieceCutNoGrain { height, width }),
    }
}

/// How many edges a piece has, and whether all of them are sure.
fn edges(say: &'static Words, piece: &SeenPiece) -> String {
    let count = piece.edges.len();
    if piece.edges.iter().all(|edge| edge.sure) {
        say.bring_edges(count)
    } else {
        say.bring_edges_guessed(count)
    }
}

/// The outline with its corners by name, its grain and its notches.
fn drawn(say: &'static Words, piece: &SeenPiece, block: &PieceBlock) -> Markup {
    let every = block.outline.len().div_ceil(MOST_PLACES).max(1);
    let mut low = (f64::INFINITY, f64::INFINITY);
    let mut high = (f64::NEG_INFINITY, f64::NEG_INFINITY);
    let mut line = String::new();
    for (at, [x, y]) in block.outline.iter().enumerate() {
        // Paper y runs down.
        let (x, y) = (x.to_mm(), -y.to_mm());
        low = (low.0.min(x), low.1.min(y));
        high = (high.0.max(x), high.1.max(y));
        if at % every == 0 {
            // Writing into a text cannot fail.
            let _ = write!(line, "{}{x:.1} {y:.1}", if at == 0 { "M" } else { " L" });
        }
    }
    line.push_str(" Z");
    let (wide, tall) = (high.0 - low.0, high.1 - low.1);
    let reach = wide.max(tall);
    if !(reach.is_finite() && reach > 0.0) {
        return html! {};
    }
    // Corner names are as large as on any other piece, whatever its size.
    let unit = reach / 190.0;
    let margin = unit * 16.0;
    let middle = ((low.0 + high.0) / 2.0, (low.1 + high.1) / 2.0);
    let frame = format!(
        "{:.1} {:.1} {:.1} {:.1}",
        low.0 - margin,
        low.1 - margin,
        wide + 2.0 * margin,
        tall + 2.0 * margin
    );
    let corner = |x: f64, y: f64| {
        let (dx, dy) = (x - middle.0, y - middle.1);
        let off = dx.hypot(dy).max(unit);
        (x + dx / off * unit * 9.0, y + dy / off * unit * 9.0)
    };
    html! {
        svg viewBox=(frame) role="img" aria-label=(say.bring_outline(&piece.name)) {
            path.line d=(line) {}
            @if let Some([foot, top]) = &block.grain {
                path.grain d=(format!(
                    "M{:.1} {:.1} L{:.1} {:.1}",
                    foot[0].to_mm(), -foot[1].to_mm(), top[0].to_mm(), -top[1].to_mm()
                )) {}
            }
            @for [x, y] in &block.notches {
                circle.notch cx=(format!("{:.1}", x.to_mm())) cy=(format!("{:.1}", -y.to_mm())) r=(format!("{:.1}", unit * 1.5)) {}
            }
            @for named in &piece.corners {
                @let (x, y) = corner(named.at.x, -named.at.y);
                circle.corner cx=(format!("{:.1}", named.at.x)) cy=(format!("{:.1}", -named.at.y)) r=(format!("{:.1}", unit * 2.2)) {}
                text x=(format!("{x:.1}")) y=(format!("{:.1}", y + unit * 3.0)) font-size=(format!("{:.1}", unit * 9.0)) { (named.name) }
            }
        }
    }
}

pub(super) fn refused(lines: &[String]) -> Markup {
    html! {
        div #found role="status" {
            @for line in lines { p.problem { (capital(line)) } }
        }
    }
}
