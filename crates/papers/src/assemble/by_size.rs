//! What is not the same in every size: yarn, cloth, and what is marked or counted.

use cutting::CutSize;
use draft::{EdgeId, PieceId, PointId};
use geometry::Point;
use sewing::work::set_densities;
use sewing::yarn::{Order, order};
use sewing::{FixingKind, Garment, stitches_along};
use style::SeamId;
use trade::Length;
use words::{key, say};

use super::context::Context;
use super::lays::{ClothLay, SizeLay};
use super::yarn::yarn_text;
use crate::{SizeRow, SizeTable};

/// One column: a size as it is sewn and as it is cut.
struct Column<'a> {
    garment: &'a Garment,
    cut: &'a CutSize,
}

pub(super) fn tables(
    context: &Context<'_>,
    lays: &[ClothLay<'_>],
    other_sizes: &[SizeLay<'_>],
) -> Vec<SizeTable> {
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
            cloth(context, &columns, (lays, other_sizes)),
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

/// Where no lay is shown.
const NO_LAY: &str = "\u{2013}";

/// What each cloth loses to a pair: its cut pieces, and what a lay takes in the sizes whose lay is shown.
fn cloth(
    context: &Context<'_>,
    columns: &[Column<'_>],
    (lays, other_sizes): (&[ClothLay<'_>], &[SizeLay<'_>]),
) -> Vec<SizeRow> {
    let words = context.words;
    let drawn = context.cut.size.to_string();
    let mut out = Vec::new();
    for laid in lays {
        let areas = columns.iter().map(|column| {
            let pieces = column.cut.pieces.iter();
            pieces
                .filter(|piece| piece.cloth_name == laid.key)
                .map(|piece| piece.area() * f64::from(piece.as_drawn + piece.mirrored))
                .sum::<trade::Area>()
        });
        let cloth = laid.cloth.name.as_str();
        out.push(SizeRow {
            what: context.say.say(say::PapersSizesNet { cloth }),
            values: areas.map(|area| words.area(area)).collect(),
        });
        let of_drawn = [(drawn.as_str(), laid)].into_iter();
        let others = other_sizes.iter().map(|lay| (lay.size.as_str(), &lay.on));
        let of_cloth = of_drawn.chain(others.filter(|(_, on)| on.key == laid.key));
        let found: Vec<(&str, Length)> = of_cloth
            .filter_map(|(size, on)| Some((size, on.length()?)))
            .collect();
        if found.is_empty() {
            continue;
        }
        let length = |column: &Column<'_>| {
            let size = column.cut.size.to_string();
            let lay = found.iter().find(|(of, _)| *of == size);
            lay.map_or_else(|| NO_LAY.to_owned(), |(_, length)| words.cloth(*length))
        };
        out.push(SizeRow {
            what: context.say.say(say::PapersSizesLaid { cloth }),
            values: columns.iter().map(length).collect(),
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
    let sewn: Vec<Garment> = columns.iter().map(|c| c.garment.as_sewn()).collect();
    let row = |what: String, values: Vec<String>| {
        let any = values.iter().any(|value| !value.is_empty());
        any.then_some(SizeRow { what, values })
    };
    let of_sewn = |key, value: &dyn Fn(&Garment) -> String| {
        let what = context.say.named(key).to_owned();
        row(what, sewn.iter().map(value).collect())
    };
    let decoration = |key, piece| {
        let value = |c: &Column<'_>| stitches(c.garment, piece);
        let what = context.say.named(key).to_owned();
        row(what, columns.iter().map(value).collect())
    };
    let counted = [
        of_sewn(key::PAPERS_MARKS_FIRST_BUTTON, &first_button),
        of_sewn(key::PAPERS_MARKS_BUTTONS, &button_spacing),
        decoration(key::PAPERS_MARKS_DECORATION_LEFT, PieceId::BackPocketLeft),
        decoration(key::PAPERS_MARKS_DECORATION_RIGHT, PieceId::BackPocketRight),
    ];
    let loops = PointId::LOOPS.into_iter().map(|point| {
        let value = |sewn: &Garment| loop_place(sewn, point).unwrap_or_default();
        let place = point.words(context.say);
        let what = context.say.say(say::PapersMarksLoop { place });
        row(what, sewn.iter().map(value).collect())
    });
    counted.into_iter().chain(loops).flatten().collect()
}

/// How far the middle of a belt loop lies from the band's left end; none for one that is not there.
fn loop_place(sewn: &Garment, point: PointId) -> Option<String> {
    let band = sewn.pattern.piece(PieceId::Band)?;
    let at = band.point(point)?;
    let end = band.edge(EdgeId::EndLeft)?.start();
    Some(format!("{:.1}", (at.x - end.x).abs()))
}

/// The buttons of the fly from the top down, on the pair as it is sewn, as its plate shows them.
fn fly_buttons(sewn: &Garment) -> Vec<Point> {
    let on_shield = sewn.fixings.iter().filter(|fixing| {
        fixing.piece == PieceId::FlyShield && matches!(fixing.kind, FixingKind::Button(_))
    });
    let mut at: Vec<Point> = on_shield.map(|fixing| fixing.at).collect();
    at.sort_by(|a, b| b.y.total_cmp(&a.y));
    at
}

/// From the band seam down to the first button of the fly; nothing without one.
fn first_button(sewn: &Garment) -> String {
    let shield = sewn.pattern.piece(PieceId::FlyShield);
    let top = shield.and_then(|shield| Some(shield.edge(EdgeId::Top)?.bounds().y1));
    let first = fly_buttons(sewn).first().copied();
    let down = top.zip(first).map(|(top, first)| top - first.y);
    down.map_or_else(String::new, |down| format!("{down:.1}"))
}

/// From one button of the fly to the next; nothing for fewer than two.
fn button_spacing(sewn: &Garment) -> String {
    let mut apart: Vec<String> = Vec::new();
    for pair in fly_buttons(sewn).windows(2) {
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
