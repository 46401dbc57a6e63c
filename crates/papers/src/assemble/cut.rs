//! What the cutter needs: what is cut from which cloth, the lays, the corners, and how pieces grow.

use cut_sheets::{
    LayMarks, corner_sheet, grows, is_second_copy, lay_sheet_at, nest_point, nests_overview,
    piece_number,
};
use cutting::{CutPiece, CutSize, Follows, Landmark, Plan, increments, movements};
use geometry::Vec2;
use style::{Loaded, Size};
use trade::Length;
use words::Words;

use super::context::Context;
use super::figures::{LEAST_ONE_TO, UPRIGHT_MM, at, drawn, fits, together};
use super::lays::ClothLay;
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
        lays: lay_figures(context, lays)?,
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
    let number = piece_number(&context.shown.pattern, piece);
    CutRow {
        number: number.map(|n| n.to_string()).unwrap_or_default(),
        piece: Words::english().say(piece.said()),
        as_drawn: piece.as_drawn.to_string(),
        mirrored: piece.mirrored.to_string(),
        side: piece.label.side_in(Words::english()),
        area: context.words.piece_area(piece.area()),
    }
}

/// Every lay at one scale, the largest at which each fits an upright page, so that they stand together.
fn lay_figures(context: &Context<'_>, lays: &[ClothLay<'_>]) -> Result<Vec<Figure>, PaperError> {
    let [mut one_to, smaller @ ..] = LAY_SCALES;
    let mut drawings = lays_at(context, lays, one_to)?;
    let fit = |drawings: &[(Drawing, &str)], one_to| {
        let mut all = drawings.iter();
        all.all(|(drawing, _)| fits(drawing, one_to, &[UPRIGHT_MM]))
    };
    for next in smaller {
        if fit(&drawings, one_to) {
            break;
        }
        one_to = next;
        drawings = lays_at(context, lays, one_to)?;
    }
    let caption = format!(
        "One pair, size {}, pieces head to tail. The warp runs from left to right.",
        context.cut.size
    );
    let figure = |(drawing, cloth): (Drawing, &str)| {
        let figure = Figure {
            drawing,
            title: format!("Lay on {cloth}"),
            caption: String::new(),
            scale: None,
        };
        at(figure, one_to, caption.clone())
    };
    Ok(drawings.into_iter().map(figure).collect())
}

/// The lays that were found, drawn at 1:n with the names of their cloths. Words are set for that scale, and take
/// room of their own.
fn lays_at<'a>(
    context: &Context<'_>,
    lays: &[ClothLay<'a>],
    one_to: u32,
) -> Result<Vec<(Drawing, &'a str)>, PaperError> {
    let mut out = Vec::new();
    for laid in lays {
        let Ok(lay) = &laid.lay else { continue };
        let words = (Words::english(), context.words.system);
        let marks = LayMarks::default();
        let sheet = lay_sheet_at(one_to, &laid.spread, lay, laid.cloth, &marks, words);
        out.push((drawn(&sheet)?, laid.cloth.name.as_str()));
    }
    Ok(out)
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
