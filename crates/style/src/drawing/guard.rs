//! What of a drawing is taken, what is passed over, and what is refused.
//!
//! A drawing program writes much beside the lines: definitions, notes for itself, colours. None of it is followed, so it
//! is passed over. What runs or fetches something is refused wherever it is drawn, and so is what would change the lines
//! in a way that is not followed here: a line that looks other than it is sewn would be worse than none.

use std::collections::BTreeSet;

use roxmltree::{Attribute, Document, Node};
use svgtypes::{TransformListParser, TransformListToken as Turn};

use super::drawn_line::Problem;
use super::shape::Map;
use crate::reader::short;

/// The namespace of SVG.
const SVG: &str = "http://www.w3.org/2000/svg";

/// The namespace of links in older drawings.
const LINKS: &str = "http://www.w3.org/1999/xlink";

/// Elements that are drawn, and those that hold others.
const DRAWN: [&str; 9] = [
    "svg", "g", "path", "rect", "line", "circle", "ellipse", "polyline", "polygon",
];

/// Elements that draw nothing where they stand.
const STOWED: [&str; 15] = [
    "title",
    "desc",
    "defs",
    "metadata",
    "style",
    "symbol",
    "clipPath",
    "mask",
    "marker",
    "pattern",
    "filter",
    "linearGradient",
    "radialGradient",
    "view",
    "color-profile",
];

/// What a style may say that moves or shapes a line.
const SHAPING: [&str; 13] = [
    "transform",
    "translate",
    "rotate",
    "scale",
    "d",
    "x",
    "y",
    "cx",
    "cy",
    "r",
    "rx",
    "ry",
    "offset-path",
];

/// What cuts a line off or puts something else in its place, as an attribute or in a style.
const CUTTING: [&str; 6] = [
    "clip-path",
    "mask",
    "marker",
    "marker-start",
    "marker-mid",
    "marker-end",
];

const UNFIT: &str = "style::unfit-art";

/// What becomes of an element.
pub(super) enum Take {
    /// It and what is in it draw nothing.
    PassedOver,
    /// It is drawn, under a map of its own.
    Within(Map),
}

/// Refuses what stands beside the drawing and would fetch something.
pub(super) fn beside_the_drawing(document: &Document<'_>) -> Result<(), Problem> {
    let sheet = document
        .root()
        .children()
        .find(|node| node.pi().is_some_and(|pi| pi.target == "xml-stylesheet"));
    match sheet {
        Some(node) => Err((
            node.range(),
            UNFIT,
            "the drawing takes its looks from another file".to_owned(),
            "take this line out",
        )),
        None => Ok(()),
    }
}

/// What the drawing's own style sheets say that matters: which classes, elements and ids are not shown.
#[derive(Default)]
pub(super) struct Rules {
    hidden: BTreeSet<String>,
}

impl Rules {
    /// Reads every style sheet of a drawing. Rules by class, element or id are followed as far as they hide something.
    pub fn of(root: Node<'_, '_>) -> Result<Self, Problem> {
        let mut rules = Self::default();
        let sheets = root
            .descendants()
            .filter(|node| is_svg(*node) && node.tag_name().name() == "style");
        for sheet in sheets {
            let text: String = sheet
                .descendants()
                .filter(Node::is_text)
                .filter_map(|part| part.text())
                .collect();
            rules
                .take(&without_comments(&text))
                .map_err(|(message, hint)| (sheet.range(), UNFIT, message, hint))?;
        }
        Ok(rules)
    }

    fn take(&mut self, text: &str) -> Result<(), (String, &'static str)> {
        if text.contains("@import") || leads_outside(text) {
            return Err((
                "the style sheet leads to something outside the drawing".to_owned(),
                "take that rule out",
            ));
        }
        for rule in text.split('}') {
            let Some((selectors, said)) = rule.rsplit_once('{') else {
                continue;
            };
            let said = declarations(said)?;
            let selectors = selectors
                .rsplit_once('{')
                .map_or(selectors, |(_, last)| last);
            for selector in selectors.split(',').map(str::trim) {
                if said.hides && is_simple(selector) {
                    self.hidden.insert(selector.to_owned());
                } else if said.hides {
                    return Err((
                        format!(
                            "the style sheet hides lines by a rule that is not followed here: \"{}\"",
                            short(selector)
                        ),
                        "hide them by a plain class such as .hidden, or take them out",
                    ));
                }
            }
        }
        Ok(())
    }

    fn hide(&self, node: Node<'_, '_>) -> bool {
        if self.hidden.is_empty() {
            return false;
        }
        let classes = node.attribute("class").unwrap_or_default();
        let mut classes = classes.split_whitespace().map(|class| format!(".{class}"));
        let id = node.attribute("id").map(|id| format!("#{id}"));
        self.hidden.contains(node.tag_name().name())
            || id.is_some_and(|id| self.hidden.contains(&id))
            || classes.any(|class| self.hidden.contains(&class))
    }
}

/// A class, an element or an id alone.
fn is_simple(selector: &str) -> bool {
    let name = selector.trim_start_matches(['.', '#']);
    let plain = |c: char| c.is_alphanumeric() || c == '-' || c == '_';
    !name.is_empty() && selector.len() - name.len() <= 1 && name.chars().all(plain)
}

fn without_comments(text: &str) -> String {
    let mut out = String::new();
    let mut rest = text;
    while let Some((before, after)) = rest.split_once("/*") {
        out.push_str(before);
        rest = after.split_once("*/").map_or("", |(_, rest)| rest);
    }
    out + rest
}

/// What a style says that matters to lines.
#[derive(Default)]
struct Said {
    hides: bool,
}

fn declarations(text: &str) -> Result<Said, (String, &'static str)> {
    let mut said = Said::default();
    for (key, value) in text.split(';').filter_map(|part| part.split_once(':')) {
        let key = key.trim().to_ascii_lowercase();
        let value = value.trim().to_ascii_lowercase();
        said.hides |= matches!(
            (key.as_str(), value.as_str()),
            ("display", "none") | ("visibility", "hidden" | "collapse")
        );
        if SHAPING.contains(&key.as_str()) {
            return Err((
                format!(
                    "the style sets `{}`, which is not followed here",
                    short(&key)
                ),
                "draw the lines where they belong",
            ));
        }
        if CUTTING.contains(&key.as_str()) && value != "none" {
            return Err(cut_off(&key));
        }
        if leads_outside(&value) {
            return Err((
                format!("`{}` leads to something outside the drawing", short(&key)),
                "take it out and draw the lines themselves",
            ));
        }
    }
    Ok(said)
}

fn cut_off(key: &str) -> (String, &'static str) {
    (
        format!(
            "`{}` changes what is seen of the lines, and is not followed here",
            short(key)
        ),
        "take it out and draw the lines themselves",
    )
}

/// Whether a value names anything but a part of the drawing itself.
fn leads_outside(value: &str) -> bool {
    value.split("url(").skip(1).any(|rest| {
        let name = rest.trim_start().trim_start_matches(['"', '\'']);
        !name.trim_start().starts_with('#')
    })
}

fn is_svg(node: Node<'_, '_>) -> bool {
    node.tag_name().namespace().is_none_or(|space| space == SVG)
}

/// Says what becomes of an element, and gives its own map.
pub(super) fn element(
    node: Node<'_, '_>,
    root: Node<'_, '_>,
    rules: &Rules,
) -> Result<Take, Problem> {
    let name = node.tag_name().name();
    // What a drawing program keeps for itself. A part of a web page in a drawing is not that.
    if !is_svg(node) {
        return Ok(Take::PassedOver);
    }
    if STOWED.contains(&name) {
        let script = node
            .descendants()
            .find(|part| part.tag_name().name() == "script");
        return script.map_or(Ok(Take::PassedOver), |script| Err(unfit(script)));
    }
    if !DRAWN.contains(&name) {
        return Err(unfit(node));
    }
    if name == "svg" && node != root && ["x", "y", "viewBox"].iter().any(|a| node.has_attribute(*a))
    {
        let message = "a drawing within the drawing has a place of its own".to_owned();
        return Err((
            node.range(),
            UNFIT,
            message,
            "take its lines out into the drawing",
        ));
    }
    let mut map = Map::default();
    let mut hidden = rules.hide(node);
    for attribute in node.attributes() {
        let foreign = attribute.namespace().is_some_and(|space| space != SVG);
        if foreign && attribute.namespace() != Some(LINKS) {
            continue;
        }
        let said = self::attribute(&attribute, node == root)
            .map_err(|(message, hint)| (attribute.range(), UNFIT, message, hint))?;
        hidden |= said.hides;
        if attribute.name() == "transform" {
            map = map.then(transform(&attribute)?);
        }
    }
    Ok(if hidden {
        Take::PassedOver
    } else {
        Take::Within(map)
    })
}

fn unfit(node: Node<'_, '_>) -> Problem {
    let message = format!("<{}> cannot be sewn", short(node.tag_name().name()));
    let hint = "keep paths and plain shapes (in groups, if you like): turn letters and copies into paths, take the rest out";
    (node.range(), UNFIT, message, hint)
}

fn attribute(attribute: &Attribute<'_, '_>, of_root: bool) -> Result<Said, (String, &'static str)> {
    let (name, value) = (attribute.name(), attribute.value());
    if name.starts_with("on") {
        return Err((
            format!("`{}` would run a script", short(name)),
            "take it out",
        ));
    }
    if name == "href" || leads_outside(value) {
        return Err((
            format!("`{}` leads to something outside the paths", short(name)),
            "take it out and draw the lines themselves",
        ));
    }
    match name {
        // Of the whole drawing a style says how it is shown on a page.
        "style" if of_root => Ok(declarations(value).unwrap_or_default()),
        "style" => declarations(value),
        "display" | "visibility" => declarations(&format!("{name}:{value}")),
        _ if CUTTING.contains(&name) && value.trim() != "none" => Err(cut_off(name)),
        _ => Ok(Said::default()),
    }
}

fn transform(attribute: &Attribute<'_, '_>) -> Result<Map, Problem> {
    let value = attribute.value();
    let mut map = Map::default();
    for turn in TransformListParser::from(value) {
        map = map.then(match turn {
            Ok(Turn::Matrix { a, b, c, d, e, f }) => Map([a, b, c, d, e, f]),
            Ok(Turn::Translate { tx, ty }) => Map([1.0, 0.0, 0.0, 1.0, tx, ty]),
            Ok(Turn::Scale { sx, sy }) => Map([sx, 0.0, 0.0, sy, 0.0, 0.0]),
            Ok(Turn::Rotate { angle }) => {
                let (sin, cos) = angle.to_radians().sin_cos();
                Map([cos, sin, -sin, cos, 0.0, 0.0])
            }
            Ok(Turn::SkewX { angle }) => Map([1.0, 0.0, angle.to_radians().tan(), 1.0, 0.0, 0.0]),
            Ok(Turn::SkewY { angle }) => Map([1.0, angle.to_radians().tan(), 0.0, 1.0, 0.0, 0.0]),
            Err(_) => {
                return Err((
                    attribute.range(),
                    UNFIT,
                    format!("`transform` cannot be \"{}\"", short(value)),
                    "write it as SVG has it, such as translate(10 20) rotate(30), or draw the lines where they belong",
                ));
            }
        });
    }
    Ok(map)
}
