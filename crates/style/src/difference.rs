//! What changed between two versions of a style, in words a person can read.
//!
//! Long because every section of a style is told in its own words, one short function each.

use std::fmt::Display;

use serde::Serialize;
use trade::{Length, System};

use crate::making::RowEnding;
use crate::muted::Muted;
use crate::own::{OWN_PIECES, OwnPattern, OwnPiece};
use crate::seams::{RowSpec, Seam};
use crate::{BackPocket, ChartEntry, EdgeId, ExtraPocket, Label, Patch, Rivets, StyleDoc, known};

/// One change between two versions.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Change {
    /// What changed, as a path in the style file ("chart.thigh.value").
    pub path: String,
    /// The change in words: "thigh at size 32x32: 62.2 cm → 63.0 cm (+0.8 cm)".
    pub sentence: String,
}

/// What changed from one version to another, in the order of a style file, lengths in centimetres.
///
/// A style differs from itself in nothing.
#[must_use]
pub fn difference(old: &StyleDoc, new: &StyleDoc) -> Vec<Change> {
    difference_in(old, new, System::Metric)
}

/// [`difference`] with lengths in the system given.
#[must_use]
pub fn difference_in(old: &StyleDoc, new: &StyleDoc, system: System) -> Vec<Change> {
    let mut words = Words {
        system,
        changes: Vec::new(),
    };
    identity(&mut words, old, new);
    sizes(&mut words, old, new);
    cloth(&mut words, old, new);
    chart(&mut words, old, new);
    shape(&mut words, old, new);
    fly(&mut words, old, new);
    band(&mut words, old, new);
    pockets(&mut words, old, new);
    hem(&mut words, old, new);
    hardware(&mut words, old, new);
    labels(&mut words, &old.labels, &new.labels);
    seams(&mut words, old, new);
    bartacks(&mut words, old, new);
    pattern(&mut words, old.pattern.as_ref(), new.pattern.as_ref());
    cutting(&mut words, old, new);
    muted(&mut words, &old.muted, &new.muted);
    words.changes
}

/// Collects changes as they are found.
struct Words {
    system: System,
    changes: Vec<Change>,
}

impl Words {
    fn push(&mut self, path: impl Into<String>, sentence: String) {
        self.changes.push(Change {
            path: path.into(),
            sentence,
        });
    }

    /// Two values that print as they are.
    fn plain<T: PartialEq + Display>(&mut self, path: &str, what: &str, old: &T, new: &T) {
        if old != new {
            self.push(path, format!("{what}: {old} → {new}"));
        }
    }

    /// Two values of which either may be absent.
    fn maybe<T: PartialEq + Display>(
        &mut self,
        path: &str,
        what: &str,
        old: Option<&T>,
        new: Option<&T>,
    ) {
        if old != new {
            let say = |value: Option<&T>| value.map_or_else(|| "none".to_owned(), T::to_string);
            self.push(path, format!("{what}: {} → {}", say(old), say(new)));
        }
    }

    fn length(&mut self, path: &str, what: &str, old: Length, new: Length) {
        if old != new {
            let (old_text, new_text) = self.pair(old, new);
            let by = self.signed(new - old);
            self.push(path, format!("{what}: {old_text} → {new_text} ({by})"));
        }
    }

    fn maybe_length(&mut self, path: &str, what: &str, old: Option<Length>, new: Option<Length>) {
        match (old, new) {
            (Some(old), Some(new)) => self.length(path, what, old, new),
            (None, None) => {}
            (old, new) => {
                let say = |value: Option<Length>| {
                    value.map_or_else(|| "none".to_owned(), |length| length.show(self.system))
                };
                let sentence = format!("{what}: {} → {}", say(old), say(new));
                self.push(path, sentence);
            }
        }
    }

    /// Two lengths as a person reads them; exactly where they would read alike.
    fn pair(&self, old: Length, new: Length) -> (String, String) {
        let (a, b) = (old.show(self.system), new.show(self.system));
        if a == b {
            (old.to_string(), new.to_string())
        } else {
            (a, b)
        }
    }

    fn signed(&self, by: Length) -> String {
        let shown = by.abs().show(self.system);
        let nothing = Length::ZERO.show(self.system);
        let size = if shown == nothing {
            by.abs().to_string()
        } else {
            shown
        };
        format!("{}{size}", if by < Length::ZERO { "-" } else { "+" })
    }
}

fn list<T: Display>(values: &[T]) -> String {
    let values: Vec<String> = values.iter().map(T::to_string).collect();
    if values.is_empty() {
        return "none".to_owned();
    }
    values.join(", ")
}

fn yes_no(flag: bool) -> &'static str {
    if flag { "yes" } else { "no" }
}

fn identity(words: &mut Words, old: &StyleDoc, new: &StyleDoc) {
    let (a, b) = (&old.style, &new.style);
    words.plain("style.name", "name", &a.name, &b.name);
    words.plain("style.code", "code", &a.code, &b.code);
    words.plain("style.figure", "figure", &a.figure, &b.figure);
    words.plain("style.fit", "fit", &a.fit, &b.fit);
    words.plain("style.summary", "summary", &a.summary, &b.summary);
    let room = |name: &str| {
        if name.is_empty() {
            "open".to_owned()
        } else {
            name.to_owned()
        }
    };
    let (was, is) = (room(&a.workroom), room(&b.workroom));
    words.plain("style.workroom", "workroom", &was, &is);
}

fn sizes(words: &mut Words, old: &StyleDoc, new: &StyleDoc) {
    let (a, b) = (&old.sizes, &new.sizes);
    words.plain("sizes.waists", "waists", &list(&a.waists), &list(&b.waists));
    words.plain(
        "sizes.lengths",
        "lengths",
        &list(&a.lengths),
        &list(&b.lengths),
    );
    words.plain("sizes.base", "base size", &a.base, &b.base);
}

fn cloth(words: &mut Words, old: &StyleDoc, new: &StyleDoc) {
    let (a, b) = (&old.cloth, &new.cloth);
    words.plain("cloth.shell", "shell cloth", &a.shell, &b.shell);
    words.plain("cloth.pocketing", "pocketing", &a.pocketing, &b.pocketing);
    words.maybe(
        "cloth.lining",
        "lining cloth",
        a.lining.as_ref(),
        b.lining.as_ref(),
    );
}

fn chart(words: &mut Words, old: &StyleDoc, new: &StyleDoc) {
    let gone = old
        .chart
        .keys()
        .filter(|name| !new.chart.contains_key(*name));
    for (name, entry) in &new.chart {
        let title = title_of(name);
        match old.chart.get(name) {
            Some(before) => measure(words, (old, before), (new, entry), name, title),
            None => {
                let value = entry.value.show(words.system);
                let sentence = format!(
                    "{title} added to the chart: {value} at size {}",
                    new.sizes.base
                );
                words.push(format!("chart.{name}"), sentence);
            }
        }
    }
    for name in gone {
        words.push(
            format!("chart.{name}"),
            format!("{} taken out of the chart", title_of(name)),
        );
    }
}

fn title_of(measure: &str) -> &str {
    known::measure(measure).map_or(measure, |measure| measure.title)
}

fn measure(
    words: &mut Words,
    (old, a): (&StyleDoc, &ChartEntry),
    (new, b): (&StyleDoc, &ChartEntry),
    name: &str,
    title: &str,
) {
    let path = |key: &str| format!("chart.{name}.{key}");
    let base = new.sizes.base;
    // With another base size the old chart is read at the new one: only a real difference is told.
    let before = if old.sizes.base == base {
        a.value
    } else {
        a.value_at(old.sizes.base, base)
    };
    let moved = old.sizes.base != base && (before - b.value).abs() < Length::mm(1e-6);
    if !moved {
        words.length(
            &path("value"),
            &format!("{title} at size {base}"),
            before,
            b.value,
        );
    }
    let grade = format!("{title} grade for an inch of waist");
    words.maybe_length(&path("grade"), &grade, a.grade, b.grade);
    let per_length = format!("{title} grade for an inch of length");
    words.maybe_length(&path("per_length"), &per_length, a.per_length, b.per_length);
    let system = words.system;
    let breaks = |entry: &ChartEntry| -> String {
        let one = |step: &crate::Break| format!("{} above {}", step.grade.show(system), step.above);
        let all: Vec<String> = entry.breaks.iter().map(one).collect();
        if all.is_empty() {
            "none".to_owned()
        } else {
            all.join(", ")
        }
    };
    if a.breaks != b.breaks {
        let sentence = format!("{title} grade breaks: {} → {}", breaks(a), breaks(b));
        words.push(path("breaks"), sentence);
    }
    words.maybe_length(&path("at"), &format!("level of {title}"), a.at, b.at);
    words.length(
        &path("tolerance"),
        &format!("{title} tolerance"),
        a.tolerance,
        b.tolerance,
    );
}

fn shape(words: &mut Words, old: &StyleDoc, new: &StyleDoc) {
    let (a, b) = (&old.shape, &new.shape);
    words.length("shape.seat_split", "seat split", a.seat_split, b.seat_split);
    words.length(
        "shape.thigh_split",
        "thigh split",
        a.thigh_split,
        b.thigh_split,
    );
    words.length("shape.knee_split", "knee split", a.knee_split, b.knee_split);
    words.length("shape.hem_split", "hem split", a.hem_split, b.hem_split);
    words.length(
        "shape.waist_split",
        "waist split",
        a.waist_split,
        b.waist_split,
    );
    words.length(
        "shape.front_tilt",
        "centre front tilt",
        a.front_tilt,
        b.front_tilt,
    );
    words.plain(
        "shape.seat_angle",
        "seat angle",
        &a.seat_angle,
        &b.seat_angle,
    );
    words.length("shape.seat_dart", "seat dart", a.seat_dart, b.seat_dart);
    words.length(
        "shape.inseam_stretch",
        "inseam stretch",
        a.inseam_stretch,
        b.inseam_stretch,
    );
    words.length("shape.band_ease", "band ease", a.band_ease, b.band_ease);
    words.plain("shape.outseam", "outseam line", &a.outseam, &b.outseam);
}

fn pattern(words: &mut Words, old: Option<&OwnPattern>, new: Option<&OwnPattern>) {
    let (a, b) = match (old, new) {
        (Some(a), Some(b)) => (a, b),
        (None, None) => return,
        (None, Some(b)) => {
            let sentence = format!("own pattern: drafted from the chart → {}", b.file.as_str());
            return words.push("pattern", sentence);
        }
        (Some(a), None) => {
            let sentence = format!("own pattern: {} → drafted from the chart", a.file.as_str());
            return words.push("pattern", sentence);
        }
    };
    let (file, other) = (a.file.as_str(), b.file.as_str());
    words.plain("pattern.file", "own pattern", &file, &other);
    words.plain("pattern.drawn", "own pattern drawn", &a.drawn, &b.drawn);
    words.maybe_length(
        "pattern.allowance",
        "allowance of the own pattern",
        a.allowance,
        b.allowance,
    );
    let mut edges: Vec<&EdgeId> = a.allowances.keys().collect();
    edges.extend(
        b.allowances
            .keys()
            .filter(|edge| !a.allowances.contains_key(*edge)),
    );
    for edge in edges {
        words.maybe_length(
            &format!("pattern.allowances.{}", edge.code()),
            &format!(
                "allowance of the own pattern, {}",
                edge.words(::words::Words::english())
            ),
            a.allowances.get(edge).copied(),
            b.allowances.get(edge).copied(),
        );
    }
    for known in OWN_PIECES {
        let (one, other) = (a.pieces.get(&known.id), b.pieces.get(&known.id));
        let name = |piece: Option<&OwnPiece>| piece.map(|piece| piece.piece.clone());
        let path = format!("pattern.{}", known.id.code());
        let title = format!("{} of the own pattern", known.title);
        words.maybe(&path, &title, name(one).as_ref(), name(other).as_ref());
        if let (Some(one), Some(other)) = (one, other)
            && one.edges != other.edges
        {
            words.push(path, format!("{title}: its edges are named otherwise"));
        }
    }
}

fn fly(words: &mut Words, old: &StyleDoc, new: &StyleDoc) {
    let (a, b) = (&old.fly, &new.fly);
    words.plain("fly.closing", "fly", &a.closing, &b.closing);
    words.plain("fly.buttons", "fly buttons", &a.buttons, &b.buttons);
    words.maybe(
        "fly.button",
        "fly button",
        a.button.as_ref(),
        b.button.as_ref(),
    );
    words.maybe("fly.zip", "fly zip", a.zip.as_ref(), b.zip.as_ref());
    words.plain(
        "fly.band_button",
        "band button",
        &a.band_button,
        &b.band_button,
    );
}

fn band(words: &mut Words, old: &StyleDoc, new: &StyleDoc) {
    let (a, b) = (&old.band, &new.band);
    words.plain("band.method", "band rows", &a.method, &b.method);
    words.length(
        "band.start_below",
        "band row begins below the band",
        a.start_below,
        b.start_below,
    );
    words.plain("band.v_angle", "band V", &a.v_angle, &b.v_angle);
}

fn hem(words: &mut Words, old: &StyleDoc, new: &StyleDoc) {
    let (a, b) = (&old.hem, &new.hem);
    words.plain("hem.join", "hem begins at", &a.join, &b.join);
    words.plain("hem.ends", "hem thread ends", &a.ends, &b.ends);
    let what = "roping at the hem";
    words.plain("hem.roping", what, &yes_no(a.roping), &yes_no(b.roping));
}

fn pockets(words: &mut Words, old: &StyleDoc, new: &StyleDoc) {
    let (a, b) = (&old.pockets.coin, &new.pockets.coin);
    words.plain("pockets.coin.side", "coin pocket side", &a.side, &b.side);
    words.length(
        "pockets.coin.below_band",
        "coin pocket below band",
        a.below_band,
        b.below_band,
    );
    words.length(
        "pockets.coin.from_side",
        "coin pocket from side",
        a.from_side,
        b.from_side,
    );
    let (path, what) = (
        "pockets.coin.lower_narrowing",
        "coin pocket lower narrowing",
    );
    words.length(path, what, a.lower_narrowing, b.lower_narrowing);
    words.plain(
        "pockets.coin.shape",
        "coin pocket shape",
        &a.shape,
        &b.shape,
    );
    words.length("pockets.coin.drop", "coin pocket drop", a.drop, b.drop);
    let (path, what) = ("pockets.coin.art", "coin pocket outline");
    words.maybe(path, what, a.art.as_ref(), b.art.as_ref());
    let (a, b) = (&old.pockets.bag, &new.pockets.bag);
    words.length("pockets.bag.depth", "pocket bag depth", a.depth, b.depth);
    words.length("pockets.bag.width", "pocket bag width", a.width, b.width);
    words.length("pockets.bag.facing", "pocket facing", a.facing, b.facing);
    let (path, what) = ("pockets.bag.mouth_fullness", "pocket mouth fullness");
    words.plain(path, what, &a.mouth_fullness, &b.mouth_fullness);
    let (a, b) = (&old.pockets.back, &new.pockets.back);
    back_pocket(words, "left", &a.left, &b.left);
    back_pocket(words, "right", &a.right, &b.right);
    extra(
        words,
        old.pockets.extra.as_ref(),
        new.pockets.extra.as_ref(),
    );
}

fn back_pocket(words: &mut Words, side: &str, a: &BackPocket, b: &BackPocket) {
    let path = |key: &str| format!("pockets.back.{side}.{key}");
    let what = |of: &str| format!("{side} back pocket {of}");
    words.length(
        &path("foot_width"),
        &what("foot width"),
        a.foot_width,
        b.foot_width,
    );
    words.length(
        &path("side_length"),
        &what("side length"),
        a.side_length,
        b.side_length,
    );
    words.length(
        &path("outer_drop"),
        &what("outer drop"),
        a.outer_drop,
        b.outer_drop,
    );
    words.plain(&path("lining"), &what("lining"), &a.lining, &b.lining);
    let cloths = [a, b].map(|pocket| pocket.lining_cloth.as_ref());
    words.maybe(
        &path("lining_cloth"),
        &what("lining cloth"),
        cloths[0],
        cloths[1],
    );
    words.plain(
        &path("decoration"),
        &what("stitching"),
        &a.decoration,
        &b.decoration,
    );
    words.plain(&path("waves"), &what("half waves"), &a.waves, &b.waves);
    words.length(&path("crest"), &what("wave height"), a.crest, b.crest);
    words.length(&path("rise"), &what("rise of the waves"), a.rise, b.rise);
    let turned = what("stitching turned over");
    words.plain(
        &path("mirror"),
        &turned,
        &yes_no(a.mirror),
        &yes_no(b.mirror),
    );
    words.maybe(
        &path("art"),
        &what("drawing"),
        a.art.as_ref(),
        b.art.as_ref(),
    );
}

fn extra(words: &mut Words, old: Option<&ExtraPocket>, new: Option<&ExtraPocket>) {
    let path = |key: &str| format!("pockets.extra.{key}");
    match (old, new) {
        (Some(a), Some(b)) => {
            words.plain(&path("side"), "extra pocket side", &a.side, &b.side);
            words.length(&path("width"), "extra pocket width", a.width, b.width);
            words.length(&path("depth"), "extra pocket depth", a.depth, b.depth);
            let what = "extra pocket from centre front";
            words.length(&path("from_centre"), what, a.from_centre, b.from_centre);
        }
        (Some(_), None) => words.push("pockets.extra", "extra pocket removed".to_owned()),
        (None, Some(pocket)) => {
            let size = [pocket.width, pocket.depth].map(|length| length.show(words.system));
            let sentence = format!(
                "extra pocket added on the {}: {}",
                pocket.side,
                size.join(" x ")
            );
            words.push("pockets.extra", sentence);
        }
        (None, None) => {}
    }
}

fn hardware(words: &mut Words, old: &StyleDoc, new: &StyleDoc) {
    words.plain(
        "loops.count",
        "belt loops",
        &old.loops.count,
        &new.loops.count,
    );
    let (a, b) = (old.loops.belt, new.loops.belt);
    words.length("loops.belt", "width of the belt", a, b);
    rivets(words, old.rivets.as_ref(), new.rivets.as_ref());
    patch(words, old.patch.as_ref(), new.patch.as_ref());
}

fn rivets(words: &mut Words, old: Option<&Rivets>, new: Option<&Rivets>) {
    match (old, new) {
        (Some(a), Some(b)) => {
            words.plain("rivets.trim", "rivet", &a.trim, &b.trim);
            let mut flag = |path, what, a, b| words.plain(path, what, &yes_no(a), &yes_no(b));
            flag(
                "rivets.mouth",
                "rivets at the pocket mouths",
                a.mouth,
                b.mouth,
            );
            flag("rivets.coin", "rivets at the coin pocket", a.coin, b.coin);
            let what = "hidden rivets at the back pockets";
            flag("rivets.back_hidden", what, a.back_hidden, b.back_hidden);
        }
        (Some(_), None) => words.push("rivets", "rivets removed".to_owned()),
        (None, Some(rivets)) => words.push("rivets", format!("rivets added: {}", rivets.trim)),
        (None, None) => {}
    }
}

fn patch(words: &mut Words, old: Option<&Patch>, new: Option<&Patch>) {
    match (old, new) {
        (Some(a), Some(b)) => {
            words.plain("patch.trim", "patch", &a.trim, &b.trim);
            words.length(
                "patch.from_centre",
                "patch from centre back",
                a.from_centre,
                b.from_centre,
            );
            words.plain(
                "patch.letters",
                "letters of the patch",
                &a.letters,
                &b.letters,
            );
            words.maybe("patch.art", "patch drawing", a.art.as_ref(), b.art.as_ref());
        }
        (Some(_), None) => words.push("patch", "patch removed".to_owned()),
        (None, Some(patch)) => words.push("patch", format!("patch added: {}", patch.trim)),
        (None, None) => {}
    }
}

fn labels(words: &mut Words, old: &[Label], new: &[Label]) {
    let middle = Middle::of(old, new);
    for (index, (a, b)) in middle.pairs() {
        let path = |key: &str| format!("labels[{index}].{key}");
        words.plain(
            &path("trim"),
            &format!("label {}", index + 1),
            &a.trim,
            &b.trim,
        );
        let place = format!("place of label {} ({})", index + 1, b.trim);
        words.plain(&path("place"), &place, &a.place, &b.place);
        let what = |of: &str| format!("{of} of label {} ({})", index + 1, b.trim);
        let (old_purpose, new_purpose) = (list(&a.purpose), list(&b.purpose));
        words.plain(
            &path("purpose"),
            &what("purpose"),
            &old_purpose,
            &new_purpose,
        );
        words.plain(&path("fold"), &what("fold"), &a.fold, &b.fold);
        words.maybe(
            &path("text"),
            &what("text"),
            a.text.as_ref(),
            b.text.as_ref(),
        );
        let drawing = what("drawing");
        words.maybe(&path("art"), &drawing, a.art.as_ref(), b.art.as_ref());
    }
    for (index, label) in middle.gone() {
        words.push(
            format!("labels[{index}]"),
            format!("label {} removed", label.trim),
        );
    }
    for (index, label) in middle.come() {
        let sentence = format!("label {} added: {}", label.trim, label.place);
        words.push(format!("labels[{index}]"), sentence);
    }
}

fn muted(words: &mut Words, old: &[Muted], new: &[Muted]) {
    let middle = Middle::of(old, new);
    for (index, (a, b)) in middle.pairs() {
        let what = |of: &str| format!("{of} of the muted finding {}", b.code);
        let path = |key: &str| format!("muted[{index}].{key}");
        words.plain(&path("code"), &what("code"), &a.code, &b.code);
        words.plain(&path("about"), &what("subject"), &a.about, &b.about);
        words.plain(&path("reason"), &what("reason"), &a.reason, &b.reason);
    }
    for (index, gone) in middle.gone() {
        let sentence = format!("finding on {} counted again", gone.about);
        words.push(format!("muted[{index}]"), sentence);
    }
    for (index, come) in middle.come() {
        let sentence = format!("finding on {} muted: {}", come.about, come.reason);
        words.push(format!("muted[{index}]"), sentence);
    }
}

fn seams(words: &mut Words, old: &StyleDoc, new: &StyleDoc) {
    for (name, spec) in &new.seams {
        let title = seam_title(name);
        let (Some(before), Some(after)) = (old.seam(name), new.seam(name)) else {
            words.push(format!("seams.{name}"), format!("{title} added"));
            continue;
        };
        let spec_before = old.seams.get(name);
        match &spec.like {
            Some(like) if spec_before == Some(spec) => {
                if before != after {
                    let like = seam_title(like);
                    words.push(
                        format!("seams.{name}"),
                        format!("{title} changes with {like}"),
                    );
                }
            }
            like => {
                let was = spec_before.and_then(|spec| spec.like.as_ref());
                let say = |name: &String| seam_title(name).to_owned();
                let (was, is) = (was.map(say), like.as_ref().map(say));
                let what = format!("{title} sewn like");
                words.maybe(
                    &format!("seams.{name}.like"),
                    &what,
                    was.as_ref(),
                    is.as_ref(),
                );
                seam(words, title, &before, &after);
            }
        }
    }
    for name in old
        .seams
        .keys()
        .filter(|name| !new.seams.contains_key(*name))
    {
        words.push(
            format!("seams.{name}"),
            format!("{} removed", seam_title(name)),
        );
    }
}

fn seam_title(name: &str) -> &str {
    known::seam_name(name).map_or(name, |seam| seam.title)
}

fn seam(words: &mut Words, title: &str, a: &Seam, b: &Seam) {
    let path = |key: &str| format!("seams.{}.{key}", a.name);
    let what = format!("{title}: construction");
    if a.construction != b.construction {
        let sentence = format!("{what} {} → {}", a.construction, b.construction);
        words.push(path("construction"), sentence);
    }
    words.maybe(
        &path("lap"),
        &format!("{title} lap"),
        a.lap.as_ref(),
        b.lap.as_ref(),
    );
    let middle = Middle::of(&a.rows, &b.rows);
    for (index, (a, b)) in middle.pairs() {
        let path = |key: &str| path(&format!("rows[{index}].{key}"));
        let what = |of: &str| format!("row {} of {title}: {of}", index + 1);
        words.plain(&path("stitch"), &what("stitch"), &a.stitch, &b.stitch);
        words.plain(&path("density"), &what("density"), &a.density, &b.density);
        words.plain(&path("yarn"), &what("yarn"), &a.yarn, &b.yarn);
        words.plain(&path("under"), &what("under yarn"), &a.under, &b.under);
        words.length(&path("offset"), &what("offset"), a.offset, b.offset);
        let ending = |end: Option<RowEnding>| end.map_or("as usual", RowEnding::word);
        let (was, is) = (ending(a.begin), ending(b.begin));
        words.plain(&path("begin"), &what("begins"), &was, &is);
        let (was, is) = (ending(a.end), ending(b.end));
        words.plain(&path("end"), &what("ends"), &was, &is);
    }
    for (index, _) in middle.gone() {
        words.push(
            path(&format!("rows[{index}]")),
            format!("row {} of {title} removed", index + 1),
        );
    }
    for (index, row) in middle.come() {
        let sentence = format!("row {} of {title} added: {}", index + 1, row_words(row));
        words.push(path(&format!("rows[{index}]")), sentence);
    }
}

fn row_words(row: &RowSpec) -> String {
    let RowSpec {
        stitch,
        density,
        yarn,
        under,
        offset,
        begin,
        end,
    } = row;
    let mut words =
        format!("stitch {stitch}, {density}, {yarn} with {under}, {offset} from the seam line");
    for (what, ending) in [("begins", begin), ("ends", end)] {
        if let Some(ending) = ending {
            words.push_str(&format!(", {what} {ending}"));
        }
    }
    words
}

fn bartacks(words: &mut Words, old: &StyleDoc, new: &StyleDoc) {
    let (a, b) = (&old.bartacks, &new.bartacks);
    words.plain("bartacks.yarn", "bartack yarn", &a.yarn, &b.yarn);
    words.plain("bartacks.under", "bartack under yarn", &a.under, &b.under);
    words.length("bartacks.length", "bartack length", a.length, b.length);
    words.length("bartacks.width", "bartack width", a.width, b.width);
    words.plain(
        "bartacks.stitches",
        "bartack stitches",
        &a.stitches,
        &b.stitches,
    );
}

fn cutting(words: &mut Words, old: &StyleDoc, new: &StyleDoc) {
    let (a, b) = (&old.cutting, &new.cutting);
    let (path, what) = ("cutting.band", "waistband cut");
    words.maybe(path, what, a.band.as_ref(), b.band.as_ref());
    words.plain(
        "cutting.residual_warp",
        "band cloth still shrinks along the warp",
        &a.residual_warp,
        &b.residual_warp,
    );
    words.plain(
        "cutting.residual_weft",
        "band cloth still shrinks along the weft",
        &a.residual_weft,
        &b.residual_weft,
    );
    words.plain("cutting.skew", "cut on skewed cloth", &a.skew, &b.skew);
}

/// Two lists without what they share at their ends: what is left changed, went or came.
struct Middle<'a, T> {
    start: usize,
    old: &'a [T],
    new: &'a [T],
}

impl<'a, T: PartialEq> Middle<'a, T> {
    fn of(old: &'a [T], new: &'a [T]) -> Self {
        let start = old.iter().zip(new).take_while(|(a, b)| a == b).count();
        let (old, new) = (
            old.get(start..).unwrap_or(&[]),
            new.get(start..).unwrap_or(&[]),
        );
        let end = old
            .iter()
            .rev()
            .zip(new.iter().rev())
            .take_while(|(a, b)| a == b)
            .count();
        let old = old.get(..old.len() - end).unwrap_or(&[]);
        let new = new.get(..new.len() - end).unwrap_or(&[]);
        Self { start, old, new }
    }

    /// Members that became others, with their number.
    fn pairs(&self) -> impl Iterator<Item = (usize, (&'a T, &'a T))> + use<'a, T> {
        let start = self.start;
        let pairs = self.old.iter().zip(self.new).enumerate();
        pairs.map(move |(index, pair)| (start + index, pair))
    }

    /// Members that went, with their old number.
    fn gone(&self) -> impl Iterator<Item = (usize, &'a T)> + use<'a, T> {
        let start = self.start;
        let gone = self.old.iter().enumerate().skip(self.new.len());
        gone.map(move |(index, member)| (start + index, member))
    }

    /// Members that came, with their new number.
    fn come(&self) -> impl Iterator<Item = (usize, &'a T)> + use<'a, T> {
        let start = self.start;
        let come = self.new.iter().enumerate().skip(self.old.len());
        come.map(move |(index, member)| (start + index, member))
    }
}
