//! `fellwork look`: a place of the pair as it will be seen, as PNG.

use std::thread;

use look::{Light, PlaceId, Scene, Wear, Window, picture, whereabouts};
use trade::{Angle, Length, Share};
use words::{Words, key, say};

use crate::args::Look;
use crate::command::named_file::load;
use crate::exit::Exit;
use crate::files;
use crate::output::{Kind, OneFile};
use crate::png_file::png;
use crate::printed;
use crate::trouble::Trouble;

pub fn run(asked: &Look) -> Result<Exit, Trouble> {
    let output = OneFile::new(&asked.output, &[Kind::Png], asked.over.replace)?;
    let loaded = load(&asked.style)?;
    let size = jobs::size_of(&loaded.style, asked.size)?;
    let garment = sewing::make(&loaded.style, &loaded.collection, size);
    let (view, face) = (asked.view.into(), asked.face.into());
    let place = asked.at.0;
    let there = |place: &PlaceId| whereabouts(&garment, view, face, *place).is_some();
    let not_there = || {
        let places: Vec<&str> = PlaceId::ALL
            .iter()
            .filter(|p| there(p))
            .map(|p| p.code())
            .collect();
        Trouble::NotOnThisSide {
            place: place.code().to_owned(),
            places: format!("on it are: {}", places.join(", ")),
        }
    };
    let scene = Scene::of(&garment, view, face).ok_or_else(not_there)?;
    let middle = whereabouts(&garment, view, face, place).ok_or_else(not_there)?;
    let window = Window {
        middle,
        width: asked.width.unwrap_or(place.usual_width()),
        wide: asked.pixels,
        high: if place == PlaceId::Whole {
            asked.pixels * 3 / 2
        } else {
            asked.pixels
        },
    };
    let wear = Wear::of(Share::ratio(asked.wear));
    let light = Light {
        sun: Angle::deg(asked.sun),
    };
    let threads = thread::available_parallelism().map_or(1, usize::from);
    let drawn = picture(&scene, &window, &light, wear, threads);
    let said = said(&scene, wear, Words::english());
    let bytes = png(&drawn, &said).map_err(|why| Trouble::Write {
        path: asked.output.clone(),
        why,
    })?;
    output.write(&bytes)?;
    if files::is_printed(&asked.output) {
        printed::to_stderr(&said);
    } else {
        printed::words(&said)?;
    }
    Ok(Exit::Done)
}

/// What goes with every picture: that it is a drawing, what was derived, and of wear that it is a forecast.
fn said(scene: &Scene, wear: Wear, words: &Words) -> String {
    let mut lines = vec![words.named(key::LOOK_NOT_PROMISED).to_owned()];
    if let Some(cloth) = scene.shell() {
        lines.push(words.say(say::LookDerived {
            end: short(cloth.end_spacing),
            pick: short(cloth.pick_spacing),
            yarn: format!("tex {:.0}", cloth.yarn.to_tex()),
        }));
    }
    if wear > Wear::RAW {
        let share = format!("{:.2}", wear.share().to_ratio());
        lines.push(words.say(say::LookForecast { share }));
    }
    lines.push(String::new());
    lines.join("\n")
}

fn short(length: Length) -> String {
    format!("{:.2} mm", length.to_mm())
}
