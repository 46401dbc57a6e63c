//! The seams and their rows of stitches.

use words::{Given, key, say};

use super::change::{Kind, Part};
use super::found::Found;
use super::middle::Middle;
use super::value::Value;
use crate::StyleDoc;
use crate::band_and_hem::RowEnding;
use crate::seams::{RowSpec, Seam};

pub(super) fn seams(found: &mut Found, old: &StyleDoc, new: &StyleDoc) {
    for (name, spec) in &new.seams {
        let path = format!("seams.{}", name.code());
        let (Some(before), Some(after)) = (old.seam(*name), new.seam(*name)) else {
            found.added(path, Given::from(*name), Value::Nothing);
            continue;
        };
        let spec_before = old.seams.get(name);
        match &spec.like {
            Some(like) if spec_before == Some(spec) => {
                if before != after {
                    let is = Value::from(Given::from(*like));
                    found.push(path, Given::from(*name), Kind::Follows, Value::Nothing, is);
                }
            }
            like => {
                let was = spec_before.and_then(|spec| spec.like.as_ref());
                let [was, is] =
                    [was, like.as_ref()].map(|like| like.map(|like| Given::from(*like)));
                let seam = Given::from(*name);
                let about = say::DifferenceSeamLike { seam };
                found.value(format!("{path}.like"), about, was, is);
                compare(found, &Given::from(*name), &before, &after);
            }
        }
    }
    let gone = old.seams.keys();
    for name in gone.filter(|name| !new.seams.contains_key(*name)) {
        let path = format!("seams.{}", name.code());
        found.taken_out(path, Given::from(*name), Value::Nothing);
    }
}

fn compare(found: &mut Found, seam: &Given, a: &Seam, b: &Seam) {
    let path = |key: &str| format!("seams.{}.{key}", a.id.code());
    let (was, is) = (a.construction, b.construction);
    found.part(path("construction"), seam, Part::Construction, was, is);
    let about = say::DifferenceSeamLap { seam: seam.clone() };
    found.value(path("lap"), about, a.lap, b.lap);
    let row_of = |index: usize| -> Given {
        say::DifferenceRow {
            number: index + 1,
            seam: seam.clone(),
        }
        .into()
    };
    let middle = Middle::of(&a.rows, &b.rows);
    for (index, (a, b)) in middle.pairs() {
        let path = |key: &str| path(&format!("rows[{index}].{key}"));
        row(found, path, &row_of(index), a, b);
    }
    for (index, row) in middle.gone() {
        let was = Value::Row(Box::new(row.clone()));
        found.taken_out(path(&format!("rows[{index}]")), row_of(index), was);
    }
    for (index, row) in middle.come() {
        let is = Value::Row(Box::new(row.clone()));
        found.added(path(&format!("rows[{index}]")), row_of(index), is);
    }
}

fn row(found: &mut Found, path: impl Fn(&str) -> String, row: &Given, a: &RowSpec, b: &RowSpec) {
    found.part(path("stitch"), row, Part::Stitch, a.stitch, b.stitch);
    found.part(path("density"), row, Part::Density, a.density, b.density);
    found.part(path("yarn"), row, Part::Yarn, &a.yarn, &b.yarn);
    found.part(path("under"), row, Part::Under, &a.under, &b.under);
    found.part(path("offset"), row, Part::Offset, a.offset, b.offset);
    let ending =
        |end: Option<RowEnding>| end.map_or(Value::from(key::DIFFERENCE_AS_USUAL), Value::from);
    let (was, is) = (ending(a.begin), ending(b.begin));
    found.part(path("begin"), row, Part::Begin, was, is);
    let (was, is) = (ending(a.end), ending(b.end));
    found.part(path("end"), row, Part::End, was, is);
}
