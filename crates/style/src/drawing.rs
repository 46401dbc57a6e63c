//! The maker's own drawing of a pocket's stitching, read from an SVG file.
//!
//! Only the lines count: paths and plain shapes, in groups or alone, moved, turned and scaled. One unit is one millimetre
//! unless the drawing states its true size; x runs from the pocket's inner top corner towards its outer side, y down.
//! Colours and widths are the thread's, so what the file says about them is passed over, and so is everything a drawing
//! program keeps for itself. Anything that could do or fetch something is refused, and so is what would change the lines
//! and is not followed here ([`guard`]).

mod doctype;
mod drawn_line;
mod guard;
mod shape;

use roxmltree::{Document, Node, NodeType};
use trade::{Length, counted};

use crate::reader::short;
use crate::report::{Diagnostic, Source};
use drawn_line::Problem;
pub use drawn_line::{DrawnLine, DrawnStep, Spot};
use guard::{Rules, Take};
use shape::Map;

/// The largest drawing that is read; stitching is a few lines.
pub(crate) const LARGEST_DRAWING: u64 = 256 * 1024;

/// How deep groups may lie in groups.
const DEEPEST: usize = 64;

/// The stitch lines of a drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// Its lines, in the order of the file; none is empty.
    pub lines: Vec<DrawnLine>,
}

impl Drawing {
    /// Why it cannot be the outline of a coin pocket; `None` when it can.
    #[must_use]
    pub fn unfit_outline(&self) -> Option<String> {
        /// Corners nearer than this are a slip of the pen, not a pocket.
        const NARROWEST: Length = Length::mm(10.0);
        let [line] = self.lines.as_slice() else {
            return Some(format!(
                "the outline has {}",
                counted(self.lines.len(), "line", "lines")
            ));
        };
        if line.closed {
            return Some("the outline is closed; a pocket is open at its top".to_owned());
        }
        let [from, end] = [line.from, line.end()];
        if end[0] - from[0] < NARROWEST {
            return Some(
                "the outline does not run from the inner corner to the outer one".to_owned(),
            );
        }
        let lowest = line
            .steps
            .iter()
            .map(|step| step.end()[1])
            .fold(from[1], Length::max);
        if lowest - from[1].max(end[1]) < NARROWEST {
            return Some("the outline has no depth".to_owned());
        }
        None
    }
}

/// Reads a drawing.
///
/// # Errors
/// The first problem with its place in the file.
pub(crate) fn read(file: &str, text: &str) -> Result<Drawing, Box<Diagnostic>> {
    let fail = |(span, code, message, hint): Problem| {
        Box::new(Diagnostic::at(&Source::new(file, text), span, code, message).hint(hint))
    };
    let lines = lines(text).map_err(fail)?;
    if lines.is_empty() {
        let message = "the drawing has no lines".to_owned();
        let hint = "draw the stitching as paths: <path d=\"M 20 60 L 130 60\"/>";
        return Err(fail((0..0, "style::empty-art", message, hint)));
    }
    Ok(Drawing { lines })
}

fn lines(text: &str) -> Result<Vec<DrawnLine>, Problem> {
    too_deep(text)?;
    // Its places stay, so that what is wrong further on is named where it stands.
    let text = &*doctype::blanked(text)?;
    let document = Document::parse(text).map_err(|error| {
        let at = error.pos();
        let line_start: usize = text
            .split_inclusive('\n')
            .take((at.row as usize).saturating_sub(1))
            .map(str::len)
            .sum();
        let at = line_start..line_start;
        let message = format!("this is not an SVG drawing: {}", short(&error.to_string()));
        (
            at,
            "style::unreadable-art",
            message,
            "save it as a plain SVG file",
        )
    })?;
    let root = document.root_element();
    if root.tag_name().name() != "svg" {
        let message = format!(
            "the drawing begins with <{}>, not with <svg>",
            short(root.tag_name().name())
        );
        return Err((
            root.range(),
            "style::unreadable-art",
            message,
            "save it as a plain SVG file",
        ));
    }
    guard::beside_the_drawing(&document)?;
    let rules = Rules::of(root)?;
    let mut out = Vec::new();
    let mut steps = 0;
    let mut open = vec![(root, shape::true_size(root)?)];
    while let Some((node, map)) = open.pop() {
        let map: Map = match guard::element(node, root, &rules)? {
            Take::PassedOver => continue,
            Take::Within(own) => map.then(own),
        };
        out.extend(shape::lines(node, map, &mut steps)?);
        // Last in, first out: turned round, so that lines keep the order of the file.
        let children: Vec<Node<'_, '_>> = node
            .children()
            .filter(|child| child.node_type() == NodeType::Element)
            .collect();
        open.extend(children.into_iter().rev().map(|child| (child, map)));
    }
    Ok(out)
}

/// Refuses groups in groups without end before anything follows them.
fn too_deep(text: &str) -> Result<(), Problem> {
    let mut depth = 0_usize;
    for (at, _) in text.match_indices('<') {
        let tag = text.get(at..).unwrap_or_default();
        let tag = tag
            .get(..tag.find('>').unwrap_or(tag.len()))
            .unwrap_or_default();
        if tag.starts_with("</") {
            depth = depth.saturating_sub(1);
        } else if !tag.ends_with('/') && !tag.starts_with("<!") && !tag.starts_with("<?") {
            depth += 1;
        }
        if depth > DEEPEST {
            let message = format!("groups lie more than {DEEPEST} deep in each other here");
            let hint = "take the paths out of their groups";
            return Err((at..at, "style::unfit-art", message, hint));
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::drawn_line::MOST_STEPS;
    use super::*;
    use proptest::prelude::*;

    fn svg(inside: &str) -> String {
        format!("<svg xmlns=\"http://www.w3.org/2000/svg\">\n{inside}\n</svg>")
    }

    fn mm(x: f64, y: f64) -> Spot {
        [Length::mm(x), Length::mm(y)]
    }

    #[test]
    fn lines_are_read_where_they_are_drawn() {
        let text = svg(concat!(
            "<title>x</title><g transform=\"translate(10 20) scale(2)\">",
            "<path stroke=\"red\" d=\"M1,2 h3 v4 z\"/></g><path d=\"M0 0 Q3 0 3 3 M9 9\"/>"
        ));
        let lines = read("a.svg", &text).unwrap().lines;
        assert_eq!(lines.len(), 2);
        assert_eq!(lines[0].from, mm(12.0, 24.0));
        assert!(lines[0].closed);
        assert_eq!(
            lines[0].steps,
            [mm(18.0, 24.0), mm(18.0, 32.0), mm(12.0, 24.0)].map(DrawnStep::Straight)
        );
        let curve = DrawnStep::Curve(mm(2.0, 0.0), mm(3.0, 1.0), mm(3.0, 3.0));
        assert_eq!(
            (lines[1].closed, &lines[1].steps[..]),
            (false, &[curve][..])
        );
    }

    #[test]
    fn what_cannot_be_sewn_is_refused_with_its_place() {
        let line = "<path d=\"M0 0 L9 9\"/>";
        for (inside, code, message) in [
            (
                "<script>x</script>".to_owned(),
                "style::unfit-art",
                "<script> cannot be sewn",
            ),
            (
                "<image href=\"x.png\"/>".to_owned(),
                "style::unfit-art",
                "<image> cannot be sewn",
            ),
            (
                format!("<g onclick=\"x()\">{line}</g>"),
                "style::unfit-art",
                "`onclick` would run a script",
            ),
            (
                "<path fill=\"url(http://x)\" d=\"M0 0 L9 9\"/>".to_owned(),
                "style::unfit-art",
                "`fill` leads to something outside the paths",
            ),
            (
                format!("<g transform=\"turn(30)\">{line}</g>"),
                "style::unfit-art",
                "`transform` cannot be \"turn(30)\"",
            ),
            (
                format!("<text>x</text>{line}"),
                "style::unfit-art",
                "<text> cannot be sewn",
            ),
            (
                format!("<use href=\"#a\"/>{line}"),
                "style::unfit-art",
                "<use> cannot be sewn",
            ),
            (
                "<path d=\"M0 0 L9 9\"><animate attributeName=\"d\"/></path>".to_owned(),
                "style::unfit-art",
                "<animate> cannot be sewn",
            ),
            (
                format!("<defs><script>x</script></defs>{line}"),
                "style::unfit-art",
                "<script> cannot be sewn",
            ),
            (
                format!("<g clip-path=\"url(#c)\">{line}</g>"),
                "style::unfit-art",
                "`clip-path` changes what is seen of the lines, and is not followed here",
            ),
            (
                format!("<g style=\"fill:none;transform:rotate(3deg)\">{line}</g>"),
                "style::unfit-art",
                "the style sets `transform`, which is not followed here",
            ),
            (
                format!("<g style=\"fill:url(http://x)\">{line}</g>"),
                "style::unfit-art",
                "`style` leads to something outside the paths",
            ),
            (
                format!("<style>@import 'http://x';</style>{line}"),
                "style::unfit-art",
                "the style sheet leads to something outside the drawing",
            ),
            (
                format!("<style>g > path {{ display: none }}</style>{line}"),
                "style::unfit-art",
                "the style sheet hides lines by a rule that is not followed here: \"g > path\"",
            ),
            (
                "<rect width=\"3mm\" height=\"4\"/>".to_owned(),
                "style::unreadable-art",
                "`width` is \"3mm\", not a number of the drawing's units",
            ),
            (
                format!("<svg viewBox=\"0 0 1 1\">{line}</svg>"),
                "style::unfit-art",
                "a drawing within the drawing has a place of its own",
            ),
            (
                "<path d=\"M0 0 L9000 9\"/>".to_owned(),
                "style::unfit-art",
                "the path leaves the 1000 mm around the pocket's corner",
            ),
            (
                "<path/>".to_owned(),
                "style::unfit-art",
                "a <path> has no `d`",
            ),
        ] {
            let problem = read("art/a.svg", &svg(&inside)).unwrap_err();
            assert_eq!((problem.code, problem.message.as_str()), (code, message));
            assert_eq!((problem.file.as_str(), problem.line), ("art/a.svg", 2));
            assert!(problem.hint.is_some());
        }
        for (text, code) in [
            (svg(""), "style::empty-art"),
            (svg("<path d=\"L 3 nonsense\"/>"), "style::unreadable-art"),
            ("<html/>".to_owned(), "style::unreadable-art"),
            ("not a drawing".to_owned(), "style::unreadable-art"),
            (
                format!("<!DOCTYPE svg [<!ENTITY a \"b\">]>{}", svg("&a;")),
                "style::unreadable-art",
            ),
            (
                format!("<!DOCTYPE svg SYSTEM \"a.dtd\"{}", svg("")),
                "style::unreadable-art",
            ),
            (
                format!(
                    "<?xml-stylesheet href=\"http://x\"?>{}",
                    svg("<path d=\"M0 0 L9 9\"/>")
                ),
                "style::unfit-art",
            ),
            (svg(&"<g>".repeat(50_000)), "style::unfit-art"),
            (
                svg(&format!("<path d=\"M0 0{}\"/>", " L1 1".repeat(MOST_STEPS))),
                "style::unfit-art",
            ),
        ] {
            assert_eq!(read("a.svg", &text).unwrap_err().code, code);
        }
    }

    /// As drawing programs save it: a document type, definitions, their own notes, styles and classes, shapes and maps.
    #[test]
    fn what_a_drawing_program_writes_is_taken() {
        let text = r##"<?xml version="1.0" encoding="UTF-8" standalone="no"?>
<!-- made by a drawing program > -->
<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">
<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" xmlns:own="http://example.org/own"
  width="75mm" height="55mm" viewBox="0 0 150 110" version="1.1" own:on="x" style="overflow:visible;x:3">
  <title>Heron</title>
  <defs><linearGradient id="a" xlink:href="#b"/><path d="M0 0 L9 9"/><clipPath id="c"><rect width="9" height="9"/></clipPath></defs>
  <metadata><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><a href="http://example.org"/></rdf:RDF></metadata>
  <own:view zoom="3"><own:guide/></own:view>
  <style type="text/css"><![CDATA[ /* a */ .cls-1, .cls-2 { fill: none; stroke: #000 } .off{display:none} @media print { .p { stroke:red } } ]]></style>
  <g class="cls-1" fill="url(#a)" own:label="Layer 1" transform="matrix(1 0 0 1 10 0)">
    <line x1="0" y1="0" x2="20" y2="10" style="fill:none;stroke:#000000;stroke-width:0.5px"/>
    <polyline points="0,0 10,0 10,10"/>
    <polygon points="0,0 10,0 10,10"/>
    <path class="off" d="M0 0 L5000 0"/>
    <g style="display:none"><rect width="9" height="9"/></g>
    <path visibility="hidden" d="M0 0 L5 5"/>
  </g>
  <rect x="10" y="20" width="30" height="40"/>
  <rect x="10" y="20" width="30" height="40" rx="4"/>
  <circle cx="20" cy="20" r="10" transform="rotate(90 20 20)"/>
  <ellipse cx="20" cy="20" rx="10" ry="5"/>
  <rect width="0" height="4"/>
</svg>"##;
        let lines = read("a.svg", text).unwrap().lines;
        assert_eq!(lines.len(), 7, "{lines:?}");
        // Two units of the drawing are a millimetre: it states its true size.
        assert_eq!(
            (lines[0].from, lines[0].end()),
            (mm(5.0, 0.0), mm(15.0, 5.0))
        );
        assert_eq!((lines[1].closed, lines[1].steps.len()), (false, 2));
        assert_eq!((lines[2].closed, lines[2].steps.len()), (true, 3));
        assert_eq!((lines[3].from, lines[3].steps.len()), (mm(5.0, 10.0), 4));
        assert_eq!((lines[4].from, lines[4].steps.len()), (mm(7.0, 10.0), 8));
        // Turned by a quarter, the circle begins at its foot.
        let [x, y] = lines[5].from;
        assert!((x.to_mm() - 10.0).abs() < 1e-9 && (y.to_mm() - 15.0).abs() < 1e-9);
        assert!(lines[5].closed && lines[5].steps.len() == 4);
        assert_eq!(lines[6].from, mm(15.0, 10.0));
    }

    /// A circle of four curves is round to a three-thousandth of its radius.
    #[test]
    fn a_circle_is_round() {
        let drawing = read("a.svg", &svg("<circle cx=\"50\" cy=\"50\" r=\"40\"/>")).unwrap();
        let line = &drawing.lines[0];
        let mut from = line.from;
        for step in &line.steps {
            let DrawnStep::Curve(a, b, to) = *step else {
                panic!("{step:?}")
            };
            // The middle of the curve.
            let at = |k: usize| (from[k] + a[k] * 3.0 + b[k] * 3.0 + to[k]).to_mm() / 8.0 - 50.0;
            assert!((at(0).hypot(at(1)) - 40.0).abs() < 40.0 / 3000.0);
            from = to;
        }
    }

    #[test]
    fn what_is_wrong_after_a_document_type_is_named_where_it_stands() {
        let text = format!("<!DOCTYPE svg PUBLIC \"a\"\n \"b\">\n{}", svg("<image/>"));
        let problem = read("a.svg", &text).unwrap_err();
        assert_eq!((problem.line, problem.column), (4, 1));
    }

    proptest! {
        #[test]
        fn any_text_is_a_drawing_or_a_problem(
            data in "[MmLlHhVvCcSsQqTtAaZz0-9eE., +-]{0,60}",
            any in "\\PC{0,60}",
            turn in "[a-z]{0,9}\\([0-9 ,.-]{0,9}\\)",
        ) {
            let _ = read("a.svg", &any);
            let _ = read("a.svg", &svg(&any));
            let _ = read("a.svg", &format!("<!DOCTYPE {any}>{}", svg("")));
            let _ = read("a.svg", &svg(&format!("<style>{any}</style><g style=\"{data}\"/>")));
            let _ = read("a.svg", &svg(&format!("<polygon points=\"{data}\"/><rect width=\"{data}\" rx=\"9\"/>")));
            let drawn = read("a.svg", &svg(&format!("<path transform=\"{turn}\" d=\"{data}\"/>")));
            for line in drawn.into_iter().flat_map(|drawing| drawing.lines) {
                prop_assert!(!line.steps.is_empty());
                prop_assert!(line.from.iter().all(|along| along.is_finite()));
            }
        }
    }
}
