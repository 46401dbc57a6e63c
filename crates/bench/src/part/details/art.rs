//! Choosing a drawing of the maker's own, beside a small picture of the one that is chosen.

use std::fmt::Write;

use maud::{Markup, html};
use style::{ArtPath, Drawing, DrawnStep};

use super::group::Details;
use crate::chosen_fields;

/// Round the lines of a small picture, as a share of its larger side.
const MARGIN: f64 = 0.04;

/// A list of the drawings in the style's folder, and the lines of the chosen one.
pub(super) fn choose(
    details: &Details<'_>,
    path: &str,
    label: &str,
    art: Option<&ArtPath>,
    drawing: Option<&Drawing>,
) -> Markup {
    let say = details.show.say;
    let list = chosen_fields::art(say, path, label, details.art, art.map(ArtPath::as_str));
    html! {
        span.with-art {
            @if let Some(picture) = drawing.and_then(picture) { (picture) }
            (list.render())
            label.bring title=(say.details_art_how()) {
                (say.details_art_bring())
                input.unseen type="file" accept=".svg,image/svg+xml" data-art=(path) aria-label=(say.details_art_bring_file(label));
            }
        }
    }
}

/// The lines of a drawing; nothing where they have no extent.
fn picture(drawing: &Drawing) -> Option<Markup> {
    let mut lines = String::new();
    let mut low = (f64::INFINITY, f64::INFINITY);
    let mut high = (f64::NEG_INFINITY, f64::NEG_INFINITY);
    let mut put = |out: &mut String, step: &str, spots: &[style::Spot]| {
        out.push_str(step);
        for [x, y] in spots {
            let (x, y) = (x.to_mm(), y.to_mm());
            low = (low.0.min(x), low.1.min(y));
            high = (high.0.max(x), high.1.max(y));
            // Writing into a text cannot fail.
            let _ = write!(out, " {x:.2} {y:.2}");
        }
    };
    for line in &drawing.lines {
        put(&mut lines, "M", &[line.from]);
        for step in &line.steps {
            match step {
                DrawnStep::Straight(to) => put(&mut lines, "L", &[*to]),
                DrawnStep::Curve(one, other, to) => put(&mut lines, "C", &[*one, *other, *to]),
            }
        }
        if line.closed {
            lines.push('Z');
        }
    }
    let (wide, tall) = (high.0 - low.0, high.1 - low.1);
    let margin = wide.max(tall) * MARGIN;
    if !(margin.is_finite() && margin > 0.0) {
        return None;
    }
    let frame = format!(
        "{:.2} {:.2} {:.2} {:.2}",
        low.0 - margin,
        low.1 - margin,
        wide + 2.0 * margin,
        tall + 2.0 * margin
    );
    Some(html! { svg.art viewBox=(frame) aria-hidden="true" { path d=(lines) {} } })
}

#[cfg(test)]
mod tests {
    use style::DrawnLine;
    use trade::Length;

    use super::*;

    #[test]
    fn a_drawing_is_shown_whole_and_nothing_is_not_shown() {
        let spot = |x, y| [Length::mm(x), Length::mm(y)];
        let line = |to| DrawnLine {
            from: spot(0.0, 0.0),
            steps: vec![DrawnStep::Straight(to)],
            closed: false,
        };
        let drawing = |to| Drawing {
            lines: vec![line(to)],
        };
        let shown = picture(&drawing(spot(100.0, 50.0))).map(Markup::into_string);
        let shown = shown.unwrap_or_default();
        assert!(
            shown.contains("viewBox=\"-4.00 -4.00 108.00 58.00\""),
            "{shown}"
        );
        assert!(shown.contains("d=\"M 0.00 0.00L 100.00 50.00\""), "{shown}");
        assert!(picture(&drawing(spot(0.0, 0.0))).is_none());
        assert!(picture(&Drawing { lines: Vec::new() }).is_none());
    }
}
