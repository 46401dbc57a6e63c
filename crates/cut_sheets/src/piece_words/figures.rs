//! The widths of allowances, each beside the stretch of cut line that has it.

use drawing::Layer;
use drawing::dimension::place_along;
use drawing::lettering::{CAPITALS, Taken, centred, no_leader, text_box, text_width};
use drawing::palette::{CONSTRUCTION, TYPE_FIGURES};
use geometry::{Point, Rect, Vec2, angle_between, bounds_of};
use trade::{Angle, Length, trimmed};
use words::{Words, say};

use super::CLEAR_MM;
use crate::laid_piece::Laid;

/// Runs whose ends are no further apart are one line.
const JOINED_MM: f64 = 1e-3;
/// Two edges that bend by less than this read as one.
const SMOOTH: Angle = Angle::deg(8.0);

/// Writes every allowance in millimetres outside the cut line, beside the middle of its edge.
/// Neighbouring edges that run on smoothly with the same allowance share one figure. Returns the
/// room taken.
pub(crate) fn allowance_figures(
    laid: &Laid,
    say: &Words,
    taken: &mut Taken,
    layer: &mut Layer,
    part: Option<&str>,
) -> Option<Rect> {
    let mut room: Option<Rect> = None;
    let size = laid.words.length(TYPE_FIGURES);
    for (run, allowance, on_cloth_edge) in runs_of_one_allowance(laid) {
        let words = if on_cloth_edge {
            to_own_edge(laid, say)
        } else {
            figure(allowance)
        };
        let clear = laid.words.mm(CLEAR_MM);
        let mut wide = text_width(&words, size).to_mm() + 2.0 * clear;
        let mut tall = CAPITALS * size.to_mm() + 2.0 * clear;
        // Words beside an upright edge run along it.
        let box_of = bounds_of(&run);
        let turned = on_cloth_edge && box_of.height() > box_of.width();
        if turned {
            (wide, tall) = (tall, wide);
        }
        let shares = [
            0.5, 0.44, 0.56, 0.37, 0.63, 0.3, 0.7, 0.22, 0.78, 0.12, 0.88,
        ];
        let candidates = [0.0, 0.8, 1.8, 3.0].into_iter().flat_map(|further| {
            let run = &run;
            shares.into_iter().filter_map(move |share| {
                let (p, along) = place_along(run, share)?;
                let out = laid.outward(along);
                let reach = laid.to_cut_line(p, out, allowance);
                // Half the extent of the box in this direction, so that it just stands clear.
                let half = (out.x.abs() * wide + out.y.abs() * tall) / 2.0;
                Some(p + out * (reach + half + laid.words.mm(further + 0.3)))
            })
        });
        if let Some(centre) = taken.place(Vec2::new(wide, tall), candidates, no_leader) {
            let mut text = centred(&words, size, centre);
            if turned {
                text.turn_deg = -90.0;
                text.at = centre + Vec2::new(CAPITALS / 2.0 * size.to_mm(), 0.0);
            }
            text.colour = CONSTRUCTION;
            let place = text_box(&text);
            room = Some(room.map_or(place, |r| r.union(place)));
            layer.text(part, text);
        }
    }
    room
}

/// How far the seam line lies from the cloth's own edge, as that is cut: one figure, or from the least to the most.
fn to_own_edge(laid: &Laid, words: &Words) -> String {
    let Some(edge) = &laid.piece.cloth_edge else {
        return String::new();
    };
    let (least, most) = (figure(edge.narrowest), figure(edge.widest));
    if least == most {
        words.cut_cloth_edge_at(least)
    } else {
        words.say(say::CutClothEdgeFrom { least, most })
    }
}

/// The edges with what is cut beyond them, and whether that ends at the cloth's own edge.
fn runs_of_one_allowance(laid: &Laid) -> Vec<(Vec<Point>, Length, bool)> {
    let cloth_edge = laid.piece.cloth_edge.as_ref().map(|c| c.edge);
    let mut runs: Vec<(Vec<Point>, Length, bool)> = Vec::new();
    for (edge, line) in laid.piece.edges.iter().zip(&laid.edges) {
        let on_cloth_edge = cloth_edge == Some(edge.id);
        if let Some((run, same, along)) = runs.last_mut()
            && (*same - edge.allowance).abs() < Length::mm(0.05)
            && *along == on_cloth_edge
            && runs_on(run, line)
        {
            run.extend_from_slice(&line[1..]);
        } else {
            runs.push((line.clone(), edge.allowance, on_cloth_edge));
        }
    }
    runs
}

fn runs_on(run: &[Point], next: &[Point]) -> bool {
    let ([.., a, b], [c, d, ..]) = (run, next) else {
        return false;
    };
    (*c - *b).hypot() < JOINED_MM && angle_between(*b - *a, *d - *c) < SMOOTH
}

/// Millimetres to the tenth, without a needless nought.
pub(crate) fn figure(allowance: Length) -> String {
    trimmed((allowance.to_mm() * 10.0).round() / 10.0, 0, 1)
}
