//! `fellwork lay`: the pieces of some pairs on one cloth.

use std::sync::atomic::AtomicBool;
use std::time::Duration;

use cutting::{BandCut, Plan, Spread, Way, cut};
use lay::{Lay, Limits, Options, search};
use serde::Serialize;
use style::{Loaded, Size, Units};
use trade::System;

use crate::args::{LayPieces, Pairs};
use crate::command::{can_be_cut, load, size_of};
use crate::exit::Exit;
use crate::trouble::Trouble;
use crate::{files, printed};

/// The version of the shape.
const FORMAT: u32 = 1;

pub fn run(asked: &LayPieces) -> Result<Exit, Trouble> {
    let loaded = load(&asked.style)?;
    let name = asked.cloth.as_deref().unwrap_or(&loaded.style.cloth.shell);
    let Some(cloth) = loaded.collection.cloths.get(name) else {
        let known: Vec<&str> = loaded
            .collection
            .cloths
            .keys()
            .map(String::as_str)
            .collect();
        return Err(Trouble::NoSuchCloth {
            cloth: name.to_owned(),
            cloths: format!("the cloths are {}", known.join(", ")),
        });
    };
    let order = order(&loaded, &asked.pairs)?;
    let stated = Plan::of(&loaded.style);
    let plan = Plan {
        band: asked.band.map_or(stated.band, BandCut::from),
        ..stated
    };
    let cuts: Vec<_> = order
        .iter()
        .map(|(size, pairs)| {
            let garment = sewing::make(&loaded.style, &loaded.collection, *size);
            (cut(&garment, &plan), *pairs)
        })
        .collect();
    cuts.iter().try_for_each(|(cut, _)| can_be_cut(cut))?;
    let asked_for: Vec<_> = cuts.iter().map(|(cut, pairs)| (cut, *pairs)).collect();
    let way = if asked.one_way {
        Way::OneWay
    } else {
        Way::TwoWay
    };
    let spread = Spread::new(&asked_for, name, cloth, (way, asked.gap));
    let options = Options {
        seed: asked.seed,
        limits: Limits {
            time: Some(Duration::from_secs(asked.seconds)),
            places: asked.places,
        },
        ..Options::default()
    };
    let found = search(
        &spread.problem,
        &options,
        &AtomicBool::new(false),
        &mut |_| (),
    )?;
    let system = match loaded.collection.units {
        Units::Centimetres => System::Metric,
        Units::Inches => System::Inch,
    };
    if let Some(output) = &asked.output {
        let text = if output
            .extension()
            .is_some_and(|kind| kind.eq_ignore_ascii_case("dxf"))
        {
            patterns::dxf::write_lay(&spread, &found)
        } else {
            drawing::svg(&drawing::lay_sheet(&spread, &found, cloth, system))
        };
        files::write(output, text.as_bytes())?;
    }
    let text = if asked.json {
        json(&spread, &found, name)?
    } else {
        words(&order, &found, system)
    };
    // The drawing on standard output is not mixed with words.
    if !asked.output.as_deref().is_some_and(files::is_printed) {
        printed::to_stdout(text)?;
    }
    Ok(Exit::Done)
}

/// The sizes asked for, or one pair of the base size.
fn order(loaded: &Loaded, pairs: &[Pairs]) -> Result<Vec<(Size, u32)>, Trouble> {
    if pairs.is_empty() {
        return Ok(vec![(loaded.style.sizes.base, 1)]);
    }
    pairs
        .iter()
        .map(|Pairs { size, count }| Ok((size_of(&loaded.style, Some(*size))?, *count)))
        .collect()
}

fn words(order: &[(Size, u32)], lay: &Lay, system: System) -> String {
    let pairs: u32 = order.iter().map(|(_, pairs)| pairs).sum();
    let each = lay.length / f64::from(pairs.max(1));
    let bound = lay.bounds.best();
    format!(
        "{} pieces of {pairs} {}: {} long, {} a pair, {:.1} % of the cloth used\n\
         no lay is shorter than {}; this one is {:.1} % longer\n",
        lay.placements.len(),
        if pairs == 1 { "pair" } else { "pairs" },
        lay.length.show(system),
        each.show(system),
        lay.efficiency.to_percent(),
        bound.show(system),
        (lay.length / bound - 1.0) * 100.0,
    )
}

#[derive(Serialize)]
struct Answer<'a> {
    format: u32,
    unit: &'static str,
    cloth: &'a str,
    width: f64,
    length: f64,
    efficiency: f64,
    bounds: BoundsRow,
    placements: Vec<PlacedRow<'a>>,
}

#[derive(Serialize)]
struct BoundsRow {
    best: f64,
    area: f64,
    longest: f64,
    wide: f64,
    segment: f64,
    path: f64,
    skeleton: f64,
}

#[derive(Serialize)]
struct PlacedRow<'a> {
    key: &'a str,
    copy: usize,
    turn: u16,
    x: f64,
    y: f64,
    on_edge: bool,
    outline: Vec<[f64; 2]>,
}

fn json(spread: &Spread, lay: &Lay, cloth: &str) -> Result<String, serde_json::Error> {
    let bounds = &lay.bounds;
    let placements = lay.placements.iter().filter_map(|placed| {
        let piece = spread.problem.pieces.iter().find(|p| p.key == placed.key)?;
        Some(PlacedRow {
            key: &placed.key,
            copy: placed.copy,
            turn: placed.turn.degrees(),
            x: placed.x.to_mm(),
            y: placed.y.to_mm(),
            on_edge: piece.on_edge.is_some(),
            outline: placed
                .outline(piece)
                .into_iter()
                .map(|p| [p.x, p.y])
                .collect(),
        })
    });
    let answer = Answer {
        format: FORMAT,
        unit: "mm",
        cloth,
        width: spread.problem.width.to_mm(),
        length: lay.length.to_mm(),
        efficiency: lay.efficiency.to_ratio(),
        bounds: BoundsRow {
            best: bounds.best().to_mm(),
            area: bounds.area.to_mm(),
            longest: bounds.longest.to_mm(),
            wide: bounds.wide.to_mm(),
            segment: bounds.segment.to_mm(),
            path: bounds.path.to_mm(),
            skeleton: bounds.skeleton.to_mm(),
        },
        placements: placements.collect(),
    };
    serde_json::to_string(&answer).map(|text| text + "\n")
}
