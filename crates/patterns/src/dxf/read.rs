//! A DXF file as a pattern.

use std::collections::{BTreeMap, BTreeSet};

use geometry::Affine;
use trade::Length;

use super::drawing::{self, Drawing};
use super::entity::{Budget, Shape};
use super::flattened::{Reading, pass};
use super::groups::decoded;
use super::piece;
use crate::error::{ReadError, shown};
use crate::limits::MOST_PIECES;
use crate::model::{PatternFile, Read};

/// What one unit of a file is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FileUnit {
    /// A millimetre.
    Millimetre,
    /// A centimetre.
    Centimetre,
    /// A metre.
    Metre,
    /// An inch.
    Inch,
}

impl FileUnit {
    /// How long it is.
    pub const fn length(self) -> Length {
        match self {
            FileUnit::Millimetre => Length::mm(1.0),
            FileUnit::Centimetre => Length::cm(1.0),
            FileUnit::Metre => Length::m(1.0),
            FileUnit::Inch => Length::inches(1.0),
        }
    }
}

/// Reads a DXF file. Its unit is the `stated` one; else what its text `Units:` says (METRIC is the
/// millimetre, ENGLISH the inch), else `$INSUNITS`, else `$MEASUREMENT` of its header.
///
/// Where the pieces are placed among the entities is their arrangement and is passed over; how they are
/// turned, mirrored and scaled there is kept. A file without blocks is read as loose lines: each outermost
/// closed line is a piece, named by the text inside it.
///
/// # Errors
/// The first thing that is wrong, with its line; nothing is half read.
pub fn read(bytes: &[u8], stated: Option<FileUnit>) -> Result<Read, ReadError> {
    let text = decoded(bytes)?;
    let mut budget = Budget::default();
    let drawing = drawing::read(&text, &mut budget)?;
    let mut pattern = PatternFile::default();
    let unit = style_texts(&drawing, &mut pattern, stated)?;
    let mut reading = Reading {
        drawing: &drawing,
        budget,
        passed: BTreeMap::new(),
    };
    let scale = Affine::scale(unit.length().to_mm());
    pieces(&mut reading, scale, &mut pattern)?;
    if pattern.pieces.is_empty() {
        let flats = reading.flattened(&drawing.entities, scale, None)?;
        pattern.pieces = super::loose::pieces(flats, &mut reading.passed)?;
    }
    if pattern.pieces.is_empty() {
        return Err(ReadError::whole(
            "there is no piece in it",
            "draw each piece as a closed POLYLINE on layer 1 of a block of its own, and insert the block",
        ));
    }
    let passed_over = reading
        .passed
        .iter()
        .map(|(what, n)| format!("{n} × {what}"));
    Ok(Read {
        pattern,
        passed_over: passed_over.collect(),
    })
}

/// Takes what the texts among the entities say of the style, and finds the unit.
fn style_texts(
    drawing: &Drawing,
    pattern: &mut PatternFile,
    stated: Option<FileUnit>,
) -> Result<FileUnit, ReadError> {
    let mut units = None;
    for entity in &drawing.entities {
        let Shape::Text(_, _, words) = &entity.shape else {
            continue;
        };
        let Some((key, value)) = words.split_once(':') else {
            continue;
        };
        let value = value.trim();
        match key.trim().to_ascii_lowercase().as_str() {
            "style name" => pattern.style = value.to_owned(),
            "author" => pattern.author = value.to_owned(),
            "creation date" => pattern.date = value.to_owned(),
            "sample size" => pattern.sample_size = value.to_owned(),
            "units" => units = Some((entity.line, value.to_owned())),
            _ => {}
        }
    }
    if let Some(unit) = stated {
        return Ok(unit);
    }
    if let Some((line, word)) = units {
        return match word.to_ascii_uppercase().as_str() {
            "METRIC" => Ok(FileUnit::Millimetre),
            "ENGLISH" => Ok(FileUnit::Inch),
            _ => Err(ReadError::line(
                line,
                format!("the units are `{}`", shown(&word)),
                "write Units: METRIC for millimetres or Units: ENGLISH for inches",
            )),
        };
    }
    match (drawing.insunits, drawing.measurement) {
        (Some(1), _) => Ok(FileUnit::Inch),
        (Some(4), _) => Ok(FileUnit::Millimetre),
        (Some(5), _) => Ok(FileUnit::Centimetre),
        (Some(6), _) => Ok(FileUnit::Metre),
        (_, Some(0)) => Ok(FileUnit::Inch),
        (_, Some(1)) => Ok(FileUnit::Millimetre),
        _ => Err(ReadError::whole(
            "it does not say its units",
            "add a text Units: METRIC (millimetres) or Units: ENGLISH (inches) among its entities",
        )),
    }
}

/// Reads each block that is used among the entities, or every block where none is.
fn pieces(
    reading: &mut Reading<'_>,
    scale: Affine,
    pattern: &mut PatternFile,
) -> Result<(), ReadError> {
    let drawing = reading.drawing;
    let mut seen = BTreeSet::new();
    let mut used: Vec<(&str, Affine)> = Vec::new();
    for entity in &drawing.entities {
        let Shape::Insert {
            block,
            scale: (x, y),
            degrees,
            ..
        } = &entity.shape
        else {
            continue;
        };
        if !drawing.blocks.contains_key(block) {
            return Err(ReadError::line(
                entity.line,
                format!("there is no block {}", shown(block)),
                "insert a block that the section BLOCKS holds",
            ));
        }
        if seen.insert((block, x.to_bits(), y.to_bits(), degrees.to_bits())) {
            let turn = Affine::rotate(degrees.to_radians());
            used.push((block, scale * turn * Affine::scale_non_uniform(*x, *y)));
        }
    }
    if used.is_empty() {
        let all = drawing.blocks.keys().filter(|name| !name.starts_with('*'));
        used = all.map(|name| (name.as_str(), scale)).collect();
    }
    for (name, map) in used {
        let Some(block) = drawing.blocks.get(name) else {
            continue;
        };
        let flats = reading.flattened(&block.entities, map, Some(name))?;
        match piece::build(name, block.line, flats, &mut reading.passed)? {
            Some(piece) => pattern.pieces.push(piece),
            None => pass(&mut reading.passed, "block without a piece"),
        }
        if pattern.pieces.len() > MOST_PIECES {
            return Err(ReadError::line(
                block.line,
                format!("more than {MOST_PIECES} pieces up to here"),
                "write fewer sizes into one file",
            ));
        }
    }
    Ok(())
}
