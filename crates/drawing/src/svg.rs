//! Writing a sheet as SVG. One user unit is one millimetre; the same sheet gives the same bytes.

use std::fmt::Write;

use geometry::tolerance::ROUNDING;
use geometry::{BezPath, PathEl, Point};
use trade::{Colour, Length, Share, trimmed};

use crate::sheet::{Anchor, Layer, Mark, Shape, Sheet, Stroke, Text};

/// The family drawings ask for; readers without it fall back to any plain sans-serif.
const FONT: &str = "'IBM Plex Sans', 'Source Sans 3', 'Helvetica Neue', Arial, sans-serif";

/// How every drawing begins, and how its first tag ends.
const BEGINS: &str = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"";
const FIRST_TAG_ENDS: &str = "\" role=\"img\"><title>";

/// Whether these are the bytes of a drawing that [`svg`] wrote.
pub fn is_our_svg(bytes: &[u8]) -> bool {
    let Some(after) = bytes.strip_prefix(BEGINS.as_bytes()) else {
        return false;
    };
    let tag = after.iter().position(|b| *b == b'>');
    tag.and_then(|end| after.get(..end + 1 + "<title>".len()))
        .is_some_and(|head| head.ends_with(FIRST_TAG_ENDS.as_bytes()))
}

/// The sheet as an SVG document at true scale (`width` and `height` in millimetres).
pub fn svg(sheet: &Sheet) -> String {
    let mut out = String::new();
    let (w, h) = (sheet.width.to_mm(), sheet.height.to_mm());
    out.push_str(BEGINS);
    number(&mut out, w);
    out.push_str("mm\" height=\"");
    number(&mut out, h);
    out.push_str("mm\" viewBox=\"");
    for (i, v) in [sheet.origin.x, sheet.origin.y, w, h]
        .into_iter()
        .enumerate()
    {
        if i > 0 {
            out.push(' ');
        }
        number(&mut out, v);
    }
    out.push_str(FIRST_TAG_ENDS);
    escape(&mut out, &sheet.title);
    out.push_str("</title>");
    let name = short_name(&sheet.title);
    for (i, layer) in sheet.layers.iter().enumerate() {
        write_layer(&mut out, layer, &format!("{name}-{i}"));
    }
    out.push_str("</svg>\n");
    out
}

/// A name for the clips of this sheet that no other sheet on the same page has (FNV-1a of the title).
fn short_name(title: &str) -> String {
    let hash = title.bytes().fold(0x811c_9dc5_u32, |h, b| {
        (h ^ u32::from(b)).wrapping_mul(0x0100_0193)
    });
    format!("c{hash:08x}")
}

fn write_layer(out: &mut String, layer: &Layer, id: &str) {
    if let Some(clip) = &layer.clip {
        let _ = write!(out, "<clipPath id=\"{id}\"><path d=\"");
        path_data(out, clip);
        out.push_str("\"/></clipPath>");
    }
    out.push_str("<g data-layer=\"");
    escape(out, &layer.name);
    out.push('"');
    if layer.clip.is_some() {
        let _ = write!(out, " clip-path=\"url(#{id})\"");
    }
    out.push('>');
    for mark in &layer.marks {
        write_mark(out, mark, layer.cover);
    }
    out.push_str("</g>");
}

/// How much a fill or a line covers. Said of each rather than of their group, which browsers would paint aside and lay over
/// the rest, for each group anew.
fn write_cover(out: &mut String, of: &str, cover: Option<Share>) {
    if let Some(cover) = cover {
        let _ = write!(out, " {of}-opacity=\"");
        number(out, cover.to_ratio().clamp(0.0, 1.0));
        out.push('"');
    }
}

fn write_mark(out: &mut String, mark: &Mark, cover: Option<Share>) {
    let part = |out: &mut String| {
        if let Some(part) = &mark.part {
            out.push_str(" data-part=\"");
            escape(out, part);
            out.push('"');
        }
    };
    match &mark.shape {
        Shape::Area { path, fill, stroke } => {
            out.push_str("<path d=\"");
            path_data(out, path);
            out.push_str("\" fill=\"");
            colour(out, *fill);
            out.push('"');
            write_cover(out, "fill", cover);
            if let Some(stroke) = stroke {
                write_stroke(out, stroke);
                write_cover(out, "stroke", cover);
            }
            part(out);
            out.push_str("/>");
        }
        Shape::Line { path, stroke } => {
            out.push_str("<path d=\"");
            path_data(out, path);
            out.push_str("\" fill=\"none\"");
            write_stroke(out, stroke);
            write_cover(out, "stroke", cover);
            part(out);
            out.push_str("/>");
        }
        Shape::Text(text) => write_text(out, text, cover, part),
    }
}

fn write_text(out: &mut String, text: &Text, cover: Option<Share>, part: impl Fn(&mut String)) {
    out.push_str("<text x=\"");
    number(out, text.at.x);
    out.push_str("\" y=\"");
    number(out, text.at.y);
    out.push_str("\" font-family=\"");
    out.push_str(FONT);
    out.push_str("\" font-size=\"");
    number(out, text.size.to_mm());
    out.push_str("\" fill=\"");
    colour(out, text.colour);
    out.push('"');
    write_cover(out, "fill", cover);
    match text.anchor {
        Anchor::Start => {}
        Anchor::Middle => out.push_str(" text-anchor=\"middle\""),
        Anchor::End => out.push_str(" text-anchor=\"end\""),
    }
    if text.bold {
        out.push_str(" font-weight=\"600\"");
    }
    if text.turn_deg.abs() > ROUNDING {
        out.push_str(" transform=\"rotate(");
        number(out, text.turn_deg);
        out.push(' ');
        number(out, text.at.x);
        out.push(' ');
        number(out, text.at.y);
        out.push_str(")\"");
    }
    part(out);
    out.push('>');
    escape(out, &text.words);
    out.push_str("</text>");
}

fn write_stroke(out: &mut String, stroke: &Stroke) {
    out.push_str(" stroke=\"");
    colour(out, stroke.colour);
    out.push_str("\" stroke-width=\"");
    number(out, stroke.width.to_mm());
    out.push('"');
    if let Some((dash, gap)) = stroke.dash {
        out.push_str(" stroke-dasharray=\"");
        fine(out, dash);
        out.push(' ');
        fine(out, gap);
        out.push('"');
    }
    if stroke.round {
        out.push_str(" stroke-linecap=\"round\" stroke-linejoin=\"round\"");
    } else {
        out.push_str(" stroke-linejoin=\"round\"");
    }
}

fn path_data(out: &mut String, path: &BezPath) {
    let point = |out: &mut String, p: Point| {
        number(out, p.x);
        out.push(' ');
        number(out, p.y);
    };
    let mut last = ' ';
    for el in path.elements() {
        match *el {
            PathEl::MoveTo(p) => {
                out.push('M');
                point(out, p);
                last = 'M';
            }
            PathEl::LineTo(p) => {
                // Numbers after M or L go on as lines, which halves the size of long polylines.
                out.push(if matches!(last, 'L' | 'M') { ' ' } else { 'L' });
                point(out, p);
                last = 'L';
            }
            PathEl::QuadTo(a, b) => {
                out.push('Q');
                point(out, a);
                out.push(' ');
                point(out, b);
                last = 'Q';
            }
            PathEl::CurveTo(a, b, c) => {
                out.push('C');
                point(out, a);
                out.push(' ');
                point(out, b);
                out.push(' ');
                point(out, c);
                last = 'C';
            }
            PathEl::ClosePath => {
                out.push('Z');
                last = 'Z';
            }
        }
    }
}

/// Writes a number of millimetres to the hundredth, without needless digits. Not-a-number is
/// written as zero, so that a broken shape never breaks the file.
fn number(out: &mut String, v: f64) {
    write_rounded(out, v, 100.0, 2);
}

/// Dash lengths accumulate along a row, so they are written to the ten-thousandth.
fn fine(out: &mut String, v: Length) {
    write_rounded(out, v.to_mm(), 10_000.0, 4);
}

fn write_rounded(out: &mut String, v: f64, scale: f64, digits: usize) {
    let v = if v.is_finite() {
        (v * scale).round() / scale
    } else {
        0.0
    };
    out.push_str(&trimmed(v, 0, digits));
}

fn colour(out: &mut String, c: Colour) {
    let _ = write!(out, "{c}");
}

fn escape(out: &mut String, text: &str) {
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            // Control characters are not allowed in XML at all.
            c if c.is_control() && !matches!(c, '\n' | '\t') => out.push(' '),
            c => out.push(c),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sheet::open;

    fn sheet(layer: Layer) -> Sheet {
        Sheet {
            title: "a <sheet>".to_owned(),
            origin: Point::new(-10.0, 0.0),
            width: Length::mm(100.0),
            height: Length::mm(50.5),
            layers: vec![layer],
        }
    }

    #[test]
    fn writes_true_scale_and_short_numbers() {
        let mut layer = Layer::named("rows");
        layer.line(
            Some("seam:inseam"),
            open(&[Point::new(0.0, -0.001), Point::new(12.3456, 10.0)]),
            Stroke::plain(Colour::BLACK, Length::mm(0.4))
                .dashed(Length::mm(2.123_456), Length::mm(1.0)),
        );
        let text = svg(&sheet(layer));
        assert!(text.contains("width=\"100mm\" height=\"50.5mm\" viewBox=\"-10 0 100 50.5\""));
        assert!(text.contains("d=\"M0 0 12.35 10\""), "{text}");
        assert!(text.contains("stroke-dasharray=\"2.1235 1\""));
        assert!(text.contains("data-part=\"seam:inseam\""));
        assert!(text.contains("<title>a &lt;sheet&gt;</title>"));
    }

    #[test]
    fn shade_covers_as_much_as_it_says() {
        let mut layer = Layer::named("shade");
        layer.line(
            None,
            open(&[Point::ORIGIN, Point::new(1.0, 0.0)]),
            Stroke::plain(Colour::BLACK, Length::mm(4.0)),
        );
        assert!(!svg(&sheet(layer.clone())).contains("opacity"));
        layer.cover = Some(Share::percent(6.0));
        let text = svg(&sheet(layer));
        assert!(
            text.contains("stroke-width=\"4\" stroke-linejoin=\"round\" stroke-opacity=\"0.06\"/>"),
            "{text}"
        );
    }

    #[test]
    fn hostile_words_and_broken_numbers_stay_harmless() {
        let mut layer = Layer::named("\"><script>");
        layer.text(
            None,
            Text {
                at: Point::new(f64::NAN, f64::INFINITY),
                words: "<script>alert(1)</script>\u{0}".to_owned(),
                size: Length::mm(3.0),
                anchor: Anchor::Start,
                turn_deg: 0.0,
                colour: Colour::BLACK,
                bold: false,
            },
        );
        let text = svg(&sheet(layer));
        assert!(!text.contains("<script"));
        assert!(!text.contains("NaN") && !text.contains("inf"));
        assert!(!text.contains('\u{0}'));
    }
}
