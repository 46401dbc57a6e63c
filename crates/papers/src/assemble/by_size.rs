//! What is not the same in every size: yarn, cloth, and what is marked or counted.

use cutting::CutSize;
use draft::PieceId;
use sewing::work::set_densities;
use sewing::yarn::{Order, order};
use sewing::{FixingKind, Garment, stitches_along};
use style::SeamId;
use trade::Length;
use words::{key, say};

use super::context::Context;
use super::lays::ClothLay;
use super::yarn::yarn_text;
use crate::{SizeRow, SizeTable};

/// One column: a size as it is sewn and as it is cut.
struct Column<'a> {
    garment: &'a Garment,
    cut: &'a CutSize,
}

pub(super) fn tables(context: &Context<'_>, lays: &[ClothLay<'_>]) -> Vec<SizeTable> {
    let columns = columns(context);
    let sizes: Vec<String> = columns
        .iter()
        .map(|column| column.cut.size.to_string())
        .collect();
    let table = |title, note: String, rows: Vec<SizeRow>| SizeTable {
        title: context.say.named(title).to_owned(),
        note,
        sizes: sizes.clone(),
        rows,
    };
    let orders: Vec<Order> = columns
        .iter()
        .map(|column| order(&[(column.garment, 1)]))
        .collect();
    let waste = orders
        .first()
        .map(|order| order.waste.show(context.words.system))
        .unwrap_or_default();
    let named = |key| context.say.named(key).to_owned();
    [
        table(
            key::PAPERS_SIZES_CLOTH,
            named(key::PAPERS_SIZES_CLOTH_NOTE),
            cloth(context, &columns, lays),
        ),
        table(
            key::PAPERS_SIZES_YARN,
            context.say.say(say::PapersSizesYarnNote { waste }),
            yarn(context, &orders),
        ),
        table(
            key::PAPERS_SIZES_MARKS,
            named(key::PAPERS_SIZES_MARKS_NOTE),
            marks(context, &columns),
        ),
    ]
    .into_iter()
    .filter(|table| !table.rows.is_empty())
    .collect()
}

/// Every waist in the base length, then every other length in the base waist.
fn columns<'a>(context: &'a Context<'_>) -> Vec<Column<'a>> {
    let growth = &context.growth;
    let base = context.loaded.style.sizes.base;
    let others = growth.lengths.iter().filter(|cut| cut.size != base);
    let column = |cut: &'a CutSize| {
        let garment = context.run.iter().find(|g| g.size == cut.size)?;
        Some(Column { garment, cut })
    };
    growth
        .waists
        .iter()
        .chain(others)
        .filter_map(column)
        .collect()
}

/// What each cloth loses to a pair: its cut pieces, and about what is laid for them when a lay uses as much of
/// the cloth as the one that is shown.
fn cloth(context: &Context<'_>, columns: &[Column<'_>], lays: &[ClothLay<'_>]) -> Vec<SizeRow> {
    let words = context.words;
    let mut out = Vec::new();
    for laid in lays {
        let areas: Vec<_> = columns
            .iter()
            .map(|column| {
                let pieces = column.cut.pieces.iter();
                pieces
                    .filter(|piece| piece.cloth_name == laid.key)
                    .map(|piece| piece.area() * f64::from(piece.as_drawn + piece.mirrored))
                    .sum::<trade::Area>()
            })
            .collect();
        out.push(SizeRow {
            what: context.say.say(say::PapersSizesNet {
                cloth: laid.cloth.name.as_str(),
            }),
            values: areas.iter().map(|area| words.area(*area)).collect(),
        });
        let Ok(lay) = &laid.lay else { continue };
        let across = laid.cloth.width * lay.efficiency.to_ratio();
        if across <= Length::ZERO {
            continue;
        }
        let long = |area: &trade::Area| Length::mm(area.to_mm2() / across.to_mm());
        out.push(SizeRow {
            what: context.say.say(say::PapersSizesLaid {
                cloth: laid.cloth.name.as_str(),
            }),
            values: areas.iter().map(|area| words.cloth(long(area))).collect(),
        });
    }
    out
}

fn yarn(context: &Context<'_>, orders: &[Order]) -> Vec<SizeRow> {
    let mut keys: Vec<&str> = Vec::new();
    for need in orders.iter().flat_map(|order| &order.yarns) {
        if !keys.contains(&need.yarn.as_str()) {
            keys.push(&need.yarn);
        }
    }
    let value = |order: &Order, key: &str| {
        let need = order.yarns.iter().find(|need| need.yarn == key);
        need.map_or_else(String::new, |need| context.words.yarn(need.with_waste))
    };
    keys.iter()
        .map(|key| SizeRow {
            what: yarn_text(context, key).name,
            values: orders.iter().map(|order| value(order, key)).collect(),
        })
        .collect()
}

/// What is marked on the pieces or counted by the machine.
fn marks(context: &Context<'_>, columns: &[Column<'_>]) -> Vec<SizeRow> {
    let row = |key, value: &dyn Fn(&Garment) -> String| {
        let values: Vec<String> = columns.iter().map(|c| value(c.garment)).collect();
        let any = values.iter().any(|value| !value.is_empty());
        any.then(|| SizeRow {
            what: context.say.named(key).to_owned(),
            values,
        })
    };
    let decoration = |piece: PieceId| move |garment: &Garment| stitches(garment, piece);
    [
        row(key::PAPERS_MARKS_BUTTONS, &|g| button_spacing(g)),
        row(
            key::PAPERS_MARKS_DECORATION_LEFT,
            &decoration(PieceId::BackPocketLeft),
        ),
        row(
            key::PAPERS_MARKS_DECORATION_RIGHT,
            &decoration(PieceId::BackPocketRight),
        ),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// From one button of the fly to the next, as they are set on the unwashed pair and as its plate shows them; nothing
/// for fewer than two.
fn button_spacing(garment: &Garment) -> String {
    let sewn = garment.as_sewn();
    let set = sewn.fixings.iter().filter(|fixing| {
        fixing.piece == PieceId::FlyShield && matches!(fixing.kind, FixingKind::Button(_))
    });
    let mut at: Vec<_> = set.map(|fixing| fixing.at).collect();
    at.sort_by(|a, b| b.y.total_cmp(&a.y));
    let mut apart: Vec<String> = Vec::new();
    for pair in at.windows(2) {
        let told = format!("{:.1}", (pair[1] - pair[0]).hypot());
        if !apart.contains(&told) {
            apart.push(told);
        }
    }
    apart.join(", ")
}

/// Stitches of the decoration on a pocket, line by line, at the density the machine is set to.
fn stitches(garment: &Garment, piece: PieceId) -> String {
    let set = set_densities(garment);
    let lines = garment.rows.iter().zip(set);
    let lines = lines.filter(|(row, _)| row.seam == SeamId::Decoration && row.piece == piece);
    let counts: Vec<String> = lines
        .map(|(row, set)| stitches_along(garment.length_at_machine(row).figure(), set.figure()))
        .map(|count| count.to_string())
        .collect();
    counts.join(" + ")
}
