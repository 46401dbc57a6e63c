//! The sections of a DXF file.

use std::collections::BTreeMap;

use geometry::Point;

use super::entity::{self, Budget, Entity};
use super::groups::Groups;
use crate::error::{ReadError, shown};

/// What a DXF file draws, in its own units.
#[derive(Default)]
pub(super) struct Drawing {
    pub insunits: Option<i64>,
    pub measurement: Option<i64>,
    pub blocks: BTreeMap<String, Block>,
    pub entities: Vec<Entity>,
}

/// A block.
pub(super) struct Block {
    pub line: usize,
    pub base: Point,
    pub entities: Vec<Entity>,
}

/// Reads the sections.
///
/// # Errors
/// The first thing that is not as DXF has it.
pub(super) fn read(text: &str, budget: &mut Budget) -> Result<Drawing, ReadError> {
    let mut groups = Groups::new(text);
    let mut drawing = Drawing::default();
    loop {
        let group = groups.next()?;
        match (group.code, group.value.trim()) {
            (0, "EOF") => return Ok(drawing),
            (0, "SECTION") => {}
            _ => {
                return Err(ReadError::line(
                    group.line,
                    format!(
                        "SECTION or EOF should stand here, and there is `{}`",
                        shown(group.value)
                    ),
                    "a DXF file begins with the lines 0 and SECTION",
                ));
            }
        }
        let name = groups.next()?;
        match name.value.trim() {
            "HEADER" => header(&mut groups, &mut drawing)?,
            "BLOCKS" => blocks(&mut groups, &mut drawing, budget)?,
            "ENTITIES" => {
                let (entities, _) = until(&mut groups, "ENDSEC", budget)?;
                drawing.entities.extend(entities);
            }
            _ => skip(&mut groups)?,
        }
    }
}

fn skip(groups: &mut Groups<'_>) -> Result<(), ReadError> {
    loop {
        let group = groups.next()?;
        if group.code == 0 && group.value.trim() == "ENDSEC" {
            return Ok(());
        }
    }
}

fn header(groups: &mut Groups<'_>, drawing: &mut Drawing) -> Result<(), ReadError> {
    let mut variable = "";
    loop {
        let group = groups.next()?;
        match (group.code, variable) {
            (0, _) if group.value.trim() == "ENDSEC" => return Ok(()),
            (9, _) => variable = group.value.trim(),
            (70, "$INSUNITS") => drawing.insunits = Some(group.whole()?),
            (70, "$MEASUREMENT") => drawing.measurement = Some(group.whole()?),
            _ => {}
        }
    }
}

/// Entities up to the one of this name, and the line where that stands.
fn until(
    groups: &mut Groups<'_>,
    end: &str,
    budget: &mut Budget,
) -> Result<(Vec<Entity>, usize), ReadError> {
    let mut out = Vec::new();
    loop {
        let group = groups.next()?;
        let word = group.value.trim();
        if group.code != 0 {
            return Err(ReadError::line(
                group.line,
                format!(
                    "an entity should begin here, and there is group {}",
                    group.code
                ),
                format!("write the line 0 and the entity's name, or {end}"),
            ));
        }
        if word == end {
            return Ok((out, group.line));
        }
        if matches!(word, "ENDSEC" | "ENDBLK" | "EOF" | "SECTION" | "BLOCK") {
            return Err(ReadError::line(
                group.line,
                format!("{word} stands here before {end}"),
                format!("end what was begun with {end} first"),
            ));
        }
        out.push(entity::read(&group, groups, budget)?);
    }
}

fn blocks(
    groups: &mut Groups<'_>,
    drawing: &mut Drawing,
    budget: &mut Budget,
) -> Result<(), ReadError> {
    loop {
        let group = groups.next()?;
        let line = group.line;
        match (group.code, group.value.trim()) {
            (0, "ENDSEC") => return Ok(()),
            (0, "BLOCK") => {}
            _ => {
                return Err(ReadError::line(
                    line,
                    format!(
                        "BLOCK or ENDSEC should stand here, and there is `{}`",
                        shown(group.value)
                    ),
                    "the section BLOCKS holds nothing but blocks",
                ));
            }
        }
        budget.entity(line)?;
        let (mut name, mut base) = (None, Point::ORIGIN);
        while let Some(group) = groups.next_within()? {
            match group.code {
                2 => name = Some(group.value.trim().to_owned()),
                10 => base.x = group.real()?,
                20 => base.y = group.real()?,
                _ => {}
            }
        }
        let (entities, _) = until(groups, "ENDBLK", budget)?;
        while groups.next_within()?.is_some() {}
        let name = name.ok_or_else(|| {
            ReadError::line(line, "this BLOCK has no name", "give its name as group 2")
        })?;
        let block = Block {
            line,
            base,
            entities,
        };
        if drawing.blocks.insert(name.clone(), block).is_some() {
            return Err(ReadError::line(
                line,
                format!("a block {} was there before", shown(&name)),
                "give every block a name of its own",
            ));
        }
    }
}
