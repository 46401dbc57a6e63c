//! What the cutter needs: what is cut from which cloth, the lays, the corners, and how pieces grow.

use cut_sheets::{
    ListedPiece, corner_sheet, grows, is_second_copy, lay_sheet_at, nest_point, nests_overview,
};
use cutting::{CutPiece, CutSize, Follows, Landmark, Plan, increments, movements};
use geometry::Vec2;
use lay::Lay;
use style::{Loaded, Size};
use trade::Length;
use words::{Words, say};

use super::context::Context;
use super::figures::{LEAST_ONE_TO, UPRIGHT_MM, at, drawn, fits, together};
use super::lays::{ClothLay, SizeLay};
use crate::{
    ClothCut, CutRow, CuttingPart, Drawing, Fact, Figure, GradeRow, GradeTable, MoveRow, MoveTable,
    PaperError,
};

/// Scales of lays that a workroom has a ruler for; the first at which every lay fits is taken.
const LAY_SCALES: [u32; 6] = [10, 15, 20, 30, 40, LEAST_ONE_TO];

/// What is decided before cutting.
pub(super) fn plan(loaded: &Loaded) -> Plan {
    Plan::of(&loaded.style)
}

pub(super) fn part(
    context: &Context<'_>,
    lays: &[ClothLay<'_>],
    other_sizes: &[SizeLay<'_>],
) -> Result<CuttingPart, PaperError> {
    let base = context.loaded.style.sizes.base;
    let growth = &context.growth;
    let mut nests = Vec::new();
    let mut moves = Vec::new();
    for (run, title, caption) in [
        (
            &growth.waists,
            "Nests by waist",
            format!(
                "Length {}, each size on the base {base} at the ringed point; strong line {base}.",
                base.length
            ),
        ),
        (
            &growth.lengths,
            "Nests by length",
            format!(
                "Waist {}, each length on the base {base} at the ringed point; strong line {base}.",
                base.waist
            ),
        ),
    ] {
        nests.extend(together(
            &nests_overview(run, base, Words::english()),
            title,
            &caption,
        )?);
        let like = run.iter().find(|cut| cut.size == base);
        let pieces = like.into_iter().flat_map(|cut| &cut.pieces);
        for piece in pieces.filter(|piece| !is_second_copy(piece)) {
            moves.extend(move_table(run, base, piece));
        }
    }
    let corners = corner_sheet(&context.cut, Words::english());
    let corners =
        (!corners.layers.is_empty() && corners.height > Length::mm(2.0)).then_some(corners);
    let corners = corners.map(|sheet| -> Result<Figure, PaperError> {
        Ok(Figure {
            drawing: drawn(&sheet)?,
            title: "Corners as they are cut".to_owned(),
            caption: "One for each kind. Figures are allowances in millimetres.".to_owned(),
            scale: None,
        })
    });
    Ok(CuttingPart {
        note: note(context),
        cloths: lays.iter().map(|lay| cloth(context, lay)).collect(),
        lays: lay_figures(context, lays, other_sizes)?,
        corners: corners.transpose()?.into_iter().collect(),
        nests,
        grades: grades(context),
        moves,
    })
}

fn note(context: &Context<'_>) -> String {
    let refused = context
        .cut
        .refused
        .iter()
        .map(|refused| Words::english().say(refused.message()));
    let refused: Vec<String> = refused
        .map(|why| format!(" The band is not cut yet: {why}."))
        .collect();
    format!(
        "Pieces of size {} as they are cut: larger by what the first wash takes, with their allowances. \
         Measure the shrinkage of your own lot before you cut.{}",
        context.cut.size,
        refused.concat()
    )
}

/// What is cut from one cloth, and how much of it one pair takes.
fn cloth(context: &Context<'_>, laid: &ClothLay<'_>) -> ClothCut {
    let words = context.words;
    let fact = |label: &str, value: String| Fact {
        label: label.to_owned(),
        value,
    };
    let mut facts = vec![fact("Usable width", words.length(laid.cloth.width))];
    let pieces = || {
        context
            .cut
            .pieces
            .iter()
            .filter(|p| p.cloth_name == laid.key)
    };
    if let Some(first) = pieces().next() {
        let shrinkage = first.scale.shrinkage;
        let whose = match first.scale.follows {
            Follows::Shell => ", the shell\u{2019}s, to which it is sewn",
            Follows::OwnCloth | Follows::Stated => "",
        };
        facts.push(fact(
            "Cut for a shrinkage of",
            format!(
                "{} warp, {} weft{whose}",
                shrinkage.warp.show(words.system),
                shrinkage.weft.show(words.system)
            ),
        ));
    }
    match &laid.lay {
        Ok(lay) => {
            let bound = lay.bounds.best();
            facts.push(fact("One pair takes", words.cloth(lay.length)));
            facts.push(fact("No lay is shorter than", words.cloth(bound)));
            facts.push(fact(
                "Cloth used",
                format!("{:.1} %", lay.efficiency.to_percent()),
            ));
        }
        Err(why) => facts.push(fact("No lay", why.clone())),
    }
    ClothCut {
        name: laid.cloth.name.clone(),
        facts,
        rows: pieces().map(|piece| row(context, piece)).collect(),
    }
}

fn row(context: &Context<'_>, piece: &CutPiece) -> CutRow {
    let listed = ListedPiece::of(&context.shown.pattern, piece);
    // As its sheet shows it.
    let (as_drawn, mirrored) = if listed.turned {
        (piece.mirrored, piece.as_drawn)
    } else {
        (piece.as_drawn, piece.mirrored)
    };
    CutRow {
        number: listed.number.map(|n| n.to_string()).unwrap_or_default(),
        piece: listed.name(Words::english()),
        as_drawn: as_drawn.to_string(),
        mirrored: mirrored.to_string(),
        side: piece.label_as_cut().side_in(Words::english()),
        area: context.words.piece_area(piece.area()),
    }
}

/// A lay that was found, and the size in it.
struct Found<'a> {
    on: &'a ClothLay<'a>,
    lay: &'a Lay,
    size: &'a str,
}

/// Every lay at one scale, the largest at which each fits an upright page, so that they stand together.
fn lay_figures(
    context: &Context<'_>,
    lays: &[ClothLay<'_>],
    other_sizes: &[SizeLay<'_>],
) -> Result<Vec<Figure>, PaperError> {
    let drawn_size = context.cut.size.to_string();
    let of_drawn = |on| (on, drawn_size.as_str());
    let of_others = other_sizes.iter().map(|lay| (&lay.on, lay.size.as_str()));
    // All of the shell together.
    let (shell, inside) = lays.split_at(lays.len().min(1));
    let lays: Vec<Found<'_>> = shell
        .iter()
        .map(of_drawn)
        .chain(of_others)
        .chain(inside.iter().map(of_drawn))
        .filter_map(|(on, size)| {
            let lay = on.lay.as_ref().ok()?;
            Some(Found { on, lay, size })
        })
        .collect();
    let [mut one_to, smaller @ ..] = LAY_SCALES;
    let mut drawings = lays_at(context, &lays, one_to)?;
    for next in smaller {
        if drawings.iter().all(|d| fits(d, one_to, &[UPRIGHT_MM])) {
            break;
        }
        one_to = next;
        drawings = lays_at(context, &lays, one_to)?;
    }
    let figures = drawings.into_iter().zip(&lays).map(|(drawing, found)| {
        let (cloth, size) = (found.on.cloth.name.as_str(), found.size);
        let figure = Figure {
            drawing,
            title: context.say.say(say::PapersLay { cloth, size }),
            caption: String::new(),
            scale: None,
        };
        at(
            figure,
            one_to,
            context.say.say(say::PapersLayCaption { size }),
        )
    });
    Ok(figures.collect())
}

/// The lays drawn at 1:n. Words are set for that scale, and take room of their own.
fn lays_at(
    context: &Context<'_>,
    lays: &[Found<'_>],
    one_to: u32,
) -> Result<Vec<Drawing>, PaperError> {
    let words = (Words::english(), context.words.system);
    let listed = ListedPiece::all(&context.shown.pattern, &context.cut);
    let sheet = |found: &Found<'_>| {
        let Found { on, lay, .. } = found;
        lay_sheet_at(one_to, &on.spread, lay, on.cloth, &listed, words)
    };
    lays.iter().map(|found| drawn(&sheet(found))).collect()
}

/// Millimetres to a tenth with their sign, nought as a dash.
fn moved(mm: f64) -> String {
    let text = format!("{mm:.1}");
    match text.as_str() {
        "0.0" | "-0.0" => "\u{2013}".to_owned(),
        _ => match text.strip_prefix('-') {
            Some(rest) => format!("\u{2212}{rest}"),
            None => text,
        },
    }
}

fn both(by: Option<Vec2>) -> [String; 2] {
    by.map_or([String::new(), String::new()], |v| [moved(v.x), moved(v.y)])
}

/// How the points of a piece move; none for a piece that is the same in every size.
fn move_table(run: &[CutSize], base: Size, piece: &CutPiece) -> Option<MoveTable> {
    let at = nest_point(piece)?;
    let nest = cutting::nest(run, piece.piece, piece.part, piece.on, at).ok()?;
    if !grows(&nest) {
        return None;
    }
    let table = movements(run, base, piece.piece, piece.part, piece.on, at).ok()?;
    let plain = |at: Landmark| at.words(Words::english());
    let others: Vec<usize> = (0..table.sizes.len())
        .filter(|k| table.sizes.get(*k).is_some_and(|size| *size != base))
        .collect();
    let rows: Vec<MoveRow> = table
        .points
        .iter()
        .filter(|point| point.point != table.at)
        .map(|point| MoveRow {
            point: plain(point.point),
            base: [
                format!("{:.1}", point.base.x),
                format!("{:.1}", point.base.y),
            ]
            .map(|t| t.replace('-', "\u{2212}")),
            by: others
                .iter()
                .map(|k| both(point.by.get(*k).copied().flatten()))
                .collect(),
        })
        .collect();
    if rows.is_empty() {
        return None;
    }
    Some(MoveTable {
        piece: Words::english().say(piece.said()),
        at: plain(table.at),
        base: base.to_string(),
        sizes: others
            .iter()
            .filter_map(|k| table.sizes.get(*k))
            .map(ToString::to_string)
            .collect(),
        rows,
    })
}

/// How the chart grows from tag to tag, once for waists and once for lengths.
fn grades(context: &Context<'_>) -> Vec<GradeTable> {
    let style = &context.loaded.style;
    let steps = increments(style);
    let by_waist = |waist: bool| {
        steps
            .iter()
            .filter(move |s| (s.from.waist != s.to.waist) == waist)
    };
    [
        (true, "From waist to waist"),
        (false, "From length to length"),
    ]
    .into_iter()
    .filter_map(|(waist, title)| {
        let mut columns: Vec<(Size, Size)> = Vec::new();
        for step in by_waist(waist) {
            if !columns.contains(&(step.from, step.to)) {
                columns.push((step.from, step.to));
            }
        }
        let tag = |size: Size| if waist { size.waist } else { size.length };
        let mut rows: Vec<GradeRow> = Vec::new();
        for measure in style.chart.keys() {
            let of = |column: &(Size, Size)| {
                by_waist(waist).find(|s| s.measure == *measure && (s.from, s.to) == *column)
            };
            let found: Vec<_> = columns.iter().map(of).collect();
            let still = found
                .iter()
                .flatten()
                .all(|s| s.by.abs() < Length::mm(0.005));
            if still {
                continue;
            }
            rows.push(GradeRow {
                measure: measure.words(words::Words::english()).to_owned(),
                by: found
                    .iter()
                    .map(|s| s.map_or(String::new(), |s| moved(s.by.to_mm())))
                    .collect(),
                breaks: found.iter().map(|s| s.is_some_and(|s| s.breaks)).collect(),
            });
        }
        (!rows.is_empty()).then(|| GradeTable {
            title: title.to_owned(),
            steps: columns
                .iter()
                .map(|(a, b)| format!("{}\u{2013}{}", tag(*a), tag(*b)))
                .collect(),
            rows,
        })
    })
    .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn movements_are_signed_tenths_and_nought_is_a_dash() {
        assert_eq!(moved(12.34), "12.3");
        assert_eq!(moved(-0.26), "\u{2212}0.3");
        assert_eq!(moved(-0.04), "\u{2013}");
        assert_eq!(both(None), ["", ""]);
    }
}
