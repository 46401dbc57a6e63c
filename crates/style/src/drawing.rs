//! The maker's own drawing of a pocket's stitching, read from an SVG file.
//!
//! Only the lines count: paths, in groups or alone, moved and scaled. One unit is one millimetre; x runs from the
//! pocket's inner top corner towards its outer side, y down. Colours and widths are the thread's, so what the file
//! says about them is passed over. Anything that could do or fetch something is refused.

use roxmltree::{Document, Node};
use svgtypes::{
    SimplePathSegment, SimplifyingPathParser, TransformListParser, TransformListToken as Turn,
};
use trade::{Length, counted};

use crate::reader::short;
use crate::report::{Diagnostic, Source};

/// The largest drawing that is read; stitching is a few lines.
pub(crate) const LARGEST_DRAWING: u64 = 256 * 1024;

/// The most steps all lines of a drawing may have together.
const MOST_STEPS: usize = 4000;

/// How deep groups may lie in groups.
const DEEPEST: usize = 64;

/// No pocket is larger than this; a drawing that is must be in another unit.
const FARTHEST_MM: f64 = 1000.0;

/// A place on a pocket: from its inner top corner towards its outer side, and down.
pub type Spot = [Length; 2];

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

impl DrawnLine {
    /// Where it ends.
    #[must_use]
    pub fn end(&self) -> Spot {
        self.steps.last().map_or(self.from, DrawnStep::end)
    }
}

impl DrawnStep {
    /// Where it ends.
    #[must_use]
    pub const fn end(&self) -> Spot {
        match self {
            Self::Straight(end) | Self::Curve(_, _, end) => *end,
        }
    }
}

/// One line, sewn without a break.
#[derive(Clone, Debug, PartialEq)]
pub struct DrawnLine {
    /// Where it begins.
    pub from: Spot,
    /// Its steps, each from where the one before ended.
    pub steps: Vec<DrawnStep>,
    /// Whether it ends where it began.
    pub closed: bool,
}

/// One step of a line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum DrawnStep {
    /// Straight to a place.
    Straight(Spot),
    /// A cubic Bézier curve: its two handles and where it ends.
    Curve(Spot, Spot, Spot),
}

/// What is wrong with a drawing: where, a code, what, and what would be right.
type Problem = (std::ops::Range<usize>, &'static str, String, &'static str);

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
    let mut out = Vec::new();
    let mut steps = 0;
    let mut open = vec![(root, Frame::default())];
    while let Some((node, frame)) = open.pop() {
        let frame = frame.within(element(node)?);
        if node.tag_name().name() == "path" {
            out.extend(path(node, frame, &mut steps)?);
        }
        // Last in, first out: turned round, so that lines keep the order of the file.
        let children: Vec<_> = node.children().filter(Node::is_element).collect();
        open.extend(children.into_iter().rev().map(|child| (child, frame)));
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

/// Scale and shift of a group; nothing else is taken.
#[derive(Clone, Copy, Debug)]
struct Frame {
    scale: [f64; 2],
    shift: [f64; 2],
}

impl Default for Frame {
    fn default() -> Self {
        Self {
            scale: [1.0, 1.0],
            shift: [0.0, 0.0],
        }
    }
}

impl Frame {
    /// This frame with another inside it.
    fn within(self, inner: Self) -> Self {
        let along = |k: usize| self.scale[k] * inner.shift[k] + self.shift[k];
        Self {
            scale: [
                self.scale[0] * inner.scale[0],
                self.scale[1] * inner.scale[1],
            ],
            shift: [along(0), along(1)],
        }
    }

    fn spot(self, x: f64, y: f64) -> Option<Spot> {
        let x = self.scale[0] * x + self.shift[0];
        let y = self.scale[1] * y + self.shift[1];
        let near = |v: f64| v.abs() <= FARTHEST_MM;
        (near(x) && near(y)).then(|| [Length::mm(x), Length::mm(y)])
    }
}

/// Checks an element and gives its own frame.
fn element(node: Node<'_, '_>) -> Result<Frame, Problem> {
    let name = node.tag_name().name();
    if !matches!(name, "svg" | "g" | "path" | "title" | "desc") {
        let message = format!("<{}> cannot be sewn", short(name));
        let hint = "keep paths only (in groups, if you like): turn shapes and letters into paths, take the rest out";
        return Err((node.range(), "style::unfit-art", message, hint));
    }
    let mut frame = Frame::default();
    for attribute in node.attributes() {
        let name = attribute.name();
        let refused =
            |message: String, hint| Err((attribute.range(), "style::unfit-art", message, hint));
        if name.starts_with("on") {
            return refused(
                format!("`{}` would run a script", short(name)),
                "take it out",
            );
        }
        if name == "href" || attribute.value().contains("url(") {
            let message = format!("`{}` leads to something outside the paths", short(name));
            return refused(message, "take it out and draw the lines themselves");
        }
        if name == "transform" {
            let value = attribute.value();
            for turn in TransformListParser::from(value) {
                frame = frame.within(match turn {
                    Ok(Turn::Translate { tx, ty }) => Frame {
                        shift: [tx, ty],
                        ..Frame::default()
                    },
                    Ok(Turn::Scale { sx, sy }) => Frame {
                        scale: [sx, sy],
                        ..Frame::default()
                    },
                    _ => {
                        return refused(
                            format!("`transform` cannot be \"{}\"", short(value)),
                            "use translate(...) and scale(...) only, or draw the lines where they belong",
                        );
                    }
                });
            }
        }
    }
    Ok(frame)
}

fn path(node: Node<'_, '_>, frame: Frame, steps: &mut usize) -> Result<Vec<DrawnLine>, Problem> {
    let Some(data) = node.attribute_node("d") else {
        let hint = "write d=\"M 20 60 L 130 60\", or take the path out";
        let message = "a <path> has no `d`".to_owned();
        return Err((node.range(), "style::unfit-art", message, hint));
    };
    let span = data.range();
    let unreadable = |what: String| {
        let hint = "a path begins with M and a place: \"M 20 60 L 130 60\"";
        (
            span.clone(),
            "style::unreadable-art",
            format!("`d`: {what}"),
            hint,
        )
    };
    let far = || {
        let message = format!("the path leaves the {FARTHEST_MM} mm around the pocket's corner");
        let hint = "one unit of the drawing is one millimetre: scale it down";
        (span.clone(), "style::unfit-art", message, hint)
    };
    let mut out: Vec<DrawnLine> = Vec::new();
    let mut last = (0.0, 0.0);
    let mut began = last;
    for segment in SimplifyingPathParser::from(data.value()) {
        let segment = segment.map_err(|error| unreadable(short(&error.to_string())))?;
        *steps += 1;
        if *steps > MOST_STEPS {
            let message = format!("the drawing has more than {MOST_STEPS} steps");
            let hint = "stitching needs far fewer: simplify the paths";
            return Err((span, "style::unfit-art", message, hint));
        }
        let spot = |x, y| frame.spot(x, y).ok_or_else(far);
        let step = match segment {
            SimplePathSegment::MoveTo { x, y } => {
                out.push(DrawnLine {
                    from: spot(x, y)?,
                    steps: Vec::new(),
                    closed: false,
                });
                (last, began) = ((x, y), (x, y));
                continue;
            }
            SimplePathSegment::LineTo { x, y } => {
                last = (x, y);
                DrawnStep::Straight(spot(x, y)?)
            }
            SimplePathSegment::CurveTo {
                x1,
                y1,
                x2,
                y2,
                x,
                y,
            } => {
                last = (x, y);
                DrawnStep::Curve(spot(x1, y1)?, spot(x2, y2)?, spot(x, y)?)
            }
            SimplePathSegment::Quadratic { x1, y1, x, y } => {
                // The same curve as a cubic: its handles reach two thirds of the way.
                let handle = |(a, b): (f64, f64)| spot(a + (x1 - a) / 1.5, b + (y1 - b) / 1.5);
                let handles = (handle(last)?, handle((x, y))?);
                last = (x, y);
                DrawnStep::Curve(handles.0, handles.1, spot(x, y)?)
            }
            SimplePathSegment::ClosePath => {
                if let Some(line) = out.last_mut() {
                    line.closed = true;
                }
                if last == began {
                    continue;
                }
                last = began;
                DrawnStep::Straight(spot(began.0, began.1)?)
            }
        };
        if let Some(line) = out.last_mut() {
            line.steps.push(step);
        }
    }
    out.retain(|line| !line.steps.is_empty());
    Ok(out)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
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
                format!("<g transform=\"rotate(30)\">{line}</g>"),
                "style::unfit-art",
                "`transform` cannot be \"rotate(30)\"",
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
            (svg(&"<g>".repeat(50_000)), "style::unfit-art"),
            (
                svg(&format!("<path d=\"M0 0{}\"/>", " L1 1".repeat(MOST_STEPS))),
                "style::unfit-art",
            ),
        ] {
            assert_eq!(read("a.svg", &text).unwrap_err().code, code);
        }
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
            let drawn = read("a.svg", &svg(&format!("<path transform=\"{turn}\" d=\"{data}\"/>")));
            for line in drawn.into_iter().flat_map(|drawing| drawing.lines) {
                prop_assert!(!line.steps.is_empty());
                prop_assert!(line.from.iter().all(|along| along.is_finite()));
            }
        }
    }
}
