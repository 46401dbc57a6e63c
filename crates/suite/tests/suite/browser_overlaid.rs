//! Two versions laid over one another in a real browser: every line of either that its own drawing does not cover has
//! its ink, in its own colour, where the drawing says it lies.

use std::collections::BTreeMap;
use std::io::Cursor;
use std::path::Path;

use drawing::{Shape, Sheet, View, garment_view};
use geometry::{BezPath, PathEl, Point};
use sewing::{Face, make};
use style::Loaded;
use suite::browser::{found, home, in_a_browser, no_complaints, resize, saved, typed, until};
use thirtyfour::prelude::*;
use trade::Length;

/// From one place looked at to the next, along a line.
const STEP: Length = Length::mm(4.0);
/// An area's edge hides half of a line that runs along it; nearer than this it is not said which half.
const NEAR_MM: f64 = 1.5;
/// A line of fewer places, such as the short side of a tack, is counted with the others of its part.
const FEW: usize = 3;
/// The share of a line's places that have ink, in whole places. Where a line ends or turns sharply one may miss it.
const INKED: f64 = 0.9;

/// What is compared: which of the two drawings, the channel that its colour leaves dark and the other's does not, and
/// how dark.
struct Ink {
    name: &'static str,
    channel: usize,
    /// Whether its lines are dashed.
    dashed: bool,
}

const UNDER: Ink = Ink {
    name: "full",
    channel: 0,
    dashed: false,
};
const UPPER: Ink = Ink {
    name: "dashed",
    channel: 2,
    dashed: true,
};

/// A line that stands somewhere on the drawing.
fn along(path: &BezPath) -> Vec<Vec<Point>> {
    let mut runs: Vec<Vec<Point>> = Vec::new();
    let mut first = Point::ORIGIN;
    for element in path.elements() {
        let last = runs.last().and_then(|run| run.last()).copied();
        let line = match (*element, last) {
            (PathEl::MoveTo(p), _) => {
                first = p;
                runs.push(vec![p]);
                continue;
            }
            (PathEl::LineTo(p), Some(_)) => vec![p],
            (PathEl::ClosePath, Some(_)) => vec![first],
            (PathEl::QuadTo(_, p), Some(_)) => vec![p],
            (PathEl::CurveTo(a, b, p), Some(from)) => (1..=8)
                .map(|k| {
                    let t = f64::from(k) / 8.0;
                    let (ab, bc, cd) = (from.lerp(a, t), a.lerp(b, t), b.lerp(p, t));
                    ab.lerp(bc, t).lerp(bc.lerp(cd, t), t)
                })
                .collect(),
            (_, None) => continue,
        };
        if let Some(run) = runs.last_mut() {
            run.extend(line);
        }
    }
    runs
}

/// Well inside, well outside, or neither.
fn covers(outline: &[Vec<Point>], p: Point) -> Option<bool> {
    let at = |p: Point| {
        let crossed = outline.iter().filter(|run| geometry::contains(run, p));
        crossed.count() % 2 == 1
    };
    let here = at(p);
    let mut round = (0..8).map(|k| {
        let turn = std::f64::consts::FRAC_PI_4 * f64::from(k);
        p + geometry::Vec2::from_angle(turn) * NEAR_MM
    });
    round.all(|near| at(near) == here).then_some(here)
}

/// The places of a sheet's lines that its own areas leave to be seen, by the part they belong to.
fn seen(sheet: &Sheet) -> Vec<(String, Vec<Point>)> {
    struct Marked<'a> {
        part: &'a str,
        clip: Option<usize>,
        runs: Vec<Vec<Point>>,
        fills: bool,
        line: bool,
    }
    let clips: Vec<Option<Vec<Vec<Point>>>> = sheet
        .layers
        .iter()
        .map(|layer| layer.clip.as_ref().map(along))
        .collect();
    let mut all: Vec<Marked<'_>> = Vec::new();
    for (index, layer) in sheet.layers.iter().enumerate() {
        for mark in &layer.marks {
            let (path, fills, line) = match &mark.shape {
                Shape::Area { path, stroke, .. } => (path, true, stroke.is_some()),
                Shape::Line { path, .. } => (path, false, true),
                Shape::Text(_) => continue,
            };
            all.push(Marked {
                part: mark.part.as_deref().unwrap_or("outline"),
                clip: clips[index].is_some().then_some(index),
                runs: along(path),
                fills,
                line,
            });
        }
    }
    let within = |clip: Option<usize>, p: Point| match clip.and_then(|at| clips[at].as_ref()) {
        Some(clip) => covers(clip, p),
        None => Some(true),
    };
    let mut out = Vec::new();
    for (at, marked) in all.iter().enumerate().filter(|(_, marked)| marked.line) {
        let later: Vec<&Marked<'_>> = all[at + 1..].iter().filter(|other| other.fills).collect();
        let points = marked
            .runs
            .iter()
            .flat_map(|run| geometry::resample(run, STEP));
        let free = points.filter(|p| {
            within(marked.clip, *p) == Some(true)
                && later.iter().all(|other| {
                    covers(&other.runs, *p) == Some(false) || within(other.clip, *p) == Some(false)
                })
        });
        let free: Vec<Point> = free.collect();
        if !free.is_empty() {
            out.push((marked.part.to_owned(), free));
        }
    }
    out
}

/// A picture of the page, in colours.
struct Shot {
    width: usize,
    channels: usize,
    bytes: Vec<u8>,
}

impl Shot {
    async fn of(page: &WebDriver) -> WebDriverResult<Shot> {
        let mut decoder = png::Decoder::new(Cursor::new(page.screenshot_as_png().await?));
        decoder.set_transformations(png::Transformations::normalize_to_color8());
        let mut reader = decoder.read_info().unwrap();
        let mut bytes = vec![0; reader.output_buffer_size().unwrap()];
        let info = reader.next_frame(&mut bytes).unwrap();
        Ok(Shot {
            width: info.width as usize,
            channels: info.color_type.samples(),
            bytes,
        })
    }

    /// The darkest a channel is near a place.
    fn darkest(&self, (x, y): (f64, f64), channel: usize, reach: i64) -> u8 {
        let (x, y) = (x.floor() as i64, y.floor() as i64);
        let places =
            (-reach..=reach).flat_map(|dy| (-reach..=reach).map(move |dx| (x + dx, y + dy)));
        let shades = places.filter_map(|(x, y)| {
            let (x, y) = (usize::try_from(x).ok()?, usize::try_from(y).ok()?);
            (x < self.width)
                .then(|| {
                    self.bytes
                        .get((y * self.width + x) * self.channels + channel)
                })?
                .copied()
        });
        shades.min().unwrap_or(u8::MAX)
    }
}

/// Shades below this are ink: paper is near 255, a hairline less than half of that.
const DARK: u8 = 150;

/// Every line of the sheet is there in its ink.
fn inked(sheet: &Sheet, ink: &Ink, shot: &Shot, map: [f64; 4]) {
    let [scale, _, x, y] = map;
    let mut parts: BTreeMap<String, (usize, usize)> = BTreeMap::new();
    let mut missing = Vec::new();
    for (part, points) in seen(sheet) {
        let found = points.iter().filter(|p| {
            let at = (p.x * scale + x, p.y * scale + y);
            // A gap between dashes is three pixels wide.
            shot.darkest(at, ink.channel, if ink.dashed { 3 } else { 1 }) < DARK
        });
        let found = found.count();
        if points.len() >= FEW && found < (points.len() as f64 * INKED) as usize {
            missing.push(format!("{part}: {found} of {}", points.len()));
        }
        let sum = parts.entry(part).or_default();
        sum.0 += found;
        sum.1 += points.len();
    }
    assert!(parts.len() > 8, "{}: only {parts:?}", sheet.title);
    for (part, (found, all)) in &parts {
        if (*found as f64) < *all as f64 * INKED {
            missing.push(format!("all of {part}: {found} of {all}"));
        }
    }
    assert!(
        missing.is_empty(),
        "{}, the {} lines: without ink are {missing:#?}",
        sheet.title,
        ink.name
    );
}

async fn change(page: &WebDriver, file: &Path, key: &str, words: &str) -> WebDriverResult<()> {
    let field = found(page, &format!("input[data-path=\"chart.{key}.value\"]")).await?;
    typed(&field, words).await?;
    field.send_keys(Key::Enter + "").await?;
    saved(file, words).await?;
    found(page, "#bench:not([aria-busy])").await?;
    Ok(())
}

async fn overlaid(page: &WebDriver, url: &str, file: &Path) -> WebDriverResult<()> {
    let folder = file.parent().unwrap();
    let read = || -> Loaded { style::load(folder).unwrap() };
    let first = read();
    page.goto(url).await?;
    page.goto(&format!("{}style/ferryman", home(url))).await?;
    change(page, file, "fly_width", "52 mm").await?;
    change(page, file, "mouth_depth", "84 mm").await?;
    change(page, file, "back_pocket_width", "176 mm").await?;
    change(page, file, "hem", "46 cm").await?;
    let last = read();
    // Large enough that rows of a needle gauge stand apart.
    resize(page, 2000, 2300).await?;
    for (view, face) in [
        (View::Front, Face::Outside),
        (View::Back, Face::Outside),
        (View::Front, Face::Inside),
        (View::Back, Face::Inside),
    ] {
        let face_word = match face {
            Face::Outside => "outside",
            Face::Inside => "inside",
        };
        let address = format!(
            "{}style/ferryman/history/compare?a=1&b=now&look=over&view={}&face={face_word}&size=32x32",
            home(url),
            view.word()
        );
        page.goto(&address).await?;
        found(page, ".stack .upper svg").await?;
        until(page, "return document.readyState === 'complete'").await?;
        let script = "const m = document.querySelector('.stack svg').getScreenCTM(); return [m.a, m.d, m.e, m.f]";
        let map: Vec<f64> = page.execute(script, Vec::new()).await?.convert()?;
        let map: [f64; 4] = map.try_into().unwrap();
        let shot = Shot::of(page).await?;
        let size = first.style.sizes.base;
        let drawn = |loaded: &Loaded| {
            let garment = make(&loaded.style, &loaded.collection, size);
            let mut sheet = garment_view(&garment, view, face, words::Words::english());
            // Weave and shade are left out of what is compared.
            sheet.layers.retain(|layer| layer.cover.is_none());
            sheet
        };
        inked(&drawn(&last), &UNDER, &shot, map);
        inked(&drawn(&first), &UPPER, &shot, map);
    }
    no_complaints(page).await
}

#[test]
fn overlaid_every_line_of_both_versions_is_there() {
    in_a_browser(overlaid);
}
