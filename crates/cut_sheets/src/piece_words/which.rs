//! Which copy of a piece something is on, said beside it.

use cutting::{CutPiece, side_of};
use drawing::Layer;
use drawing::lettering::{CAPITALS, Taken, centred, no_leader, text_box, text_width};
use drawing::palette::TYPE_FIGURES;
use geometry::{Point, Rect, Vec2, bounds_of};
use sewing::On;
use words::{Key, Words, key};

use super::CLEAR_MM;
use crate::laid_piece::Laid;

/// Says of lines and drill holes that are on one copy only, which. Returns the room taken.
pub(crate) fn which_copy(
    laid: &Laid,
    say: &Words,
    taken: &mut Taken,
    layer: &mut Layer,
    part: Option<&str>,
) -> Option<Rect> {
    let piece = laid.piece;
    if piece.as_drawn == 0 || piece.mirrored == 0 {
        return None;
    }
    let lines = piece.inner.iter().map(|l| (l.on, l.line.clone()));
    // A hole inside a line that is told already needs no words of its own.
    let told = |at: Point| {
        let mut ones = piece.inner.iter().filter(|l| l.on != On::Both);
        ones.any(|l| bounds_of(&l.line).inflate(20.0, 20.0).contains(at))
    };
    let drills = piece
        .drills
        .iter()
        .filter(|d| !told(d.at))
        .map(|d| (d.on, vec![d.at]));
    let size = laid.words.length(TYPE_FIGURES);
    let mut room: Option<Rect> = None;
    for (on, line) in lines.chain(drills).filter(|(on, _)| *on != On::Both) {
        let words = say.cut_only(say.named(copy_key(piece, on)));
        let line: Vec<Point> = line.iter().map(|p| laid.map * *p).collect();
        let clear = laid.words.mm(CLEAR_MM);
        let wide = text_width(&words, size).to_mm() + 2.0 * clear;
        let tall = CAPITALS * size.to_mm() + 2.0 * clear;
        let around = bounds_of(&line);
        let (x, y) = (around.center().x, around.center().y);
        let candidates = [0.6, 1.2, 2.0, 3.0, 4.5].into_iter().flat_map(|away| {
            let (by, beside) = (tall * away, wide / 2.0 + tall * away);
            [
                Point::new(x, around.y1 + by),
                Point::new(x, around.y0 - by),
                Point::new(around.x1 + beside, y),
                Point::new(around.x0 - beside, y),
            ]
        });
        if let Some(centre) = taken.place(Vec2::new(wide, tall), candidates, no_leader) {
            let text = centred(&words, size, centre);
            let place = text_box(&text);
            room = Some(room.map_or(place, |r| r.union(place)));
            layer.text(part, text);
        }
    }
    room
}

/// Which copy, as the workroom calls it.
fn copy_key(piece: &CutPiece, on: On) -> Key {
    let mirrored = on == On::Mirrored;
    match side_of(piece.piece, mirrored) {
        Some(ply) => ply.key(),
        None if mirrored => key::CUT_COPY_MIRRORED,
        None => key::CUT_COPY_DRAWN,
    }
}
