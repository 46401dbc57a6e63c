//! Reading open packing instances and writing lays, as JSON.

use std::time::Duration;

use geometry::Point;
use lay::{Lay, Piece, Problem, Turn};
use serde::Deserialize;
use serde_json::{Value, json};
use trade::{Length, Share};

#[derive(Deserialize)]
struct Instance {
    strip_height: f64,
    items: Vec<Item>,
}

#[derive(Deserialize)]
struct Item {
    id: u64,
    demand: usize,
    shape: Shape,
    orientation: Orientation,
}

#[derive(Deserialize)]
#[serde(tag = "type", content = "data", rename_all = "snake_case")]
enum Shape {
    SimplePolygon(Vec<(f64, f64)>),
}

#[derive(Deserialize)]
struct Orientation {
    rotation: Rotation,
}

#[derive(Deserialize)]
#[serde(tag = "mode", rename_all = "snake_case")]
enum Rotation {
    Discrete { angles: Vec<f64> },
}

/// Reads an instance; units are taken as millimetres.
pub fn read(file: &str) -> Result<Problem, String> {
    let text = std::fs::read_to_string(file).map_err(|e| format!("{file}: {e}"))?;
    let instance: Instance = serde_json::from_str(&text).map_err(|e| format!("{file}: {e}"))?;
    let pieces = instance.items.into_iter().map(piece).collect::<Result<_, String>>()?;
    Ok(Problem {
        width: Length::mm(instance.strip_height),
        pieces,
        gap: Length::ZERO,
        faults: Vec::new(),
    })
}

fn piece(item: Item) -> Result<Piece, String> {
    let Shape::SimplePolygon(outline) = item.shape;
    let Rotation::Discrete { angles } = item.orientation.rotation;
    let turn = |angle: f64| {
        Turn::ALL
            .into_iter()
            .find(|t| f64::from(t.degrees()) == angle.rem_euclid(360.0))
            .ok_or_else(|| format!("item {}: {angle} is not a quarter turn", item.id))
    };
    Ok(Piece {
        key: item.id.to_string(),
        outline: outline.into_iter().map(Point::from).collect(),
        demand: item.demand,
        turns: angles.into_iter().map(turn).collect::<Result<_, String>>()?,
        on_edge: None,
    })
}

/// The lay with all that is needed to check it: outlines are turned about the origin by
/// `rotation` degrees anticlockwise and then moved by `x` and `y`.
pub fn answer(problem: &Problem, lay: &Lay, first: Option<(Duration, Share)>) -> Value {
    let placements: Vec<Value> = lay
        .placements
        .iter()
        .map(|p| {
            json!({
                "id": p.key,
                "copy": p.copy,
                "rotation": p.turn.degrees(),
                "x": p.x.to_mm(),
                "y": p.y.to_mm(),
            })
        })
        .collect();
    json!({
        "strip_height": problem.width.to_mm(),
        "length": lay.length.to_mm(),
        "density": lay.efficiency.to_ratio(),
        "bound": lay.bounds.best().to_mm(),
        "ended": format!("{:?}", lay.ended),
        "places": lay.places,
        "first": first.map(|(time, share)| json!({ "seconds": time.as_secs_f64(), "density": share.to_ratio() })),
        "placements": placements,
    })
}
