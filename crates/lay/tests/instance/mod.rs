//! Reading open packing instances.

use geometry::Point;
use lay::{Piece, Problem, Turn};
use serde::Deserialize;
use trade::Length;

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
    let pieces = instance
        .items
        .into_iter()
        .map(piece)
        .collect::<Result<_, String>>()?;
    Ok(Problem {
        width: Length::mm(instance.strip_height),
        pieces,
        gap: Length::ZERO,
        faults: Vec::new(),
        sets: vec![],
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
        turns: angles
            .into_iter()
            .map(turn)
            .collect::<Result<_, String>>()?,
        on_edge: None,
        within: None,
    })
}
