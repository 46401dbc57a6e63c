//! What the cutter needs: what is cut from which cloth, the lays, the corners, and how pieces grow.

use cut_sheets::{
    ListedPiece, corner_sheet, grows, is_second_copy, lay_sheet_at, nest_point, nests_overview,
};
use cutting::{
    ClothWash, CutPiece, CutSize, Follows, Landmark, Plan, Shrinkage, increments, movements,
};
use geometry::Vec2;
use lay::Lay;
use style::{Loaded, Size};
use trade::{Length, Share};
use words::{Words, key, say};

use super::context::Context;
use super::figures::{LEAST_ONE_TO, UPRIGHT_MM, at, drawn, fits, together};
use super::lays::{ClothLay, SizeLay};
use super::open::fact;
use super::shrinkage::Basis;
use super::spreading;
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
            key::PAPERS_NESTS_BY_WAIST,
            context.say.say(say::PapersNestsByWaistNote {
                base: base.to_string(),
                length: base.length.to_string(),
            }),
        ),
        (
            &growth.lengths,
            key::PAPERS_NESTS_BY_LENGTH,
            context.say.say(say::PapersNestsByLengthNote {
                base: base.to_string(),
                waist: base.waist.to_string(),
            }),
        ),
    ] {
        nests.extend(together(
            &nests_overview(run, base, context.say),
            context.say.named(title),
            &caption,
        )?);
        let like = run.iter().find(|cut| cut.size == base);
        let pieces = like.into_iter().flat_map(|cut| &cut.pieces);
        for piece in pieces.filter(|piece| !is_second_copy(piece)) {
            moves.extend(move_table(context.say, run, base, piece));
        }
    }
    let corners = corner_sheet(&context.cut, context.say);
    let corners =
        (!corners.layers.is_empty() && corners.height > Length::mm(2.0)).then_some(corners);
    let corners = corners.map(|sheet| -> Result<Figure, PaperError> {
        Ok(Figure {
            callouts: Vec::new(),
            state: String::new(),
            drawing: drawn(&sheet)?,
            title: context.say.named(key::PAPERS_CORNERS).to_owned(),
            caption: context.say.named(key::PAPERS_CORNERS_NOTE).to_owned(),
            scale: None,
        })
    });
    let asks = spreading::asks(context);
    Ok(CuttingPart {
        note: spreading::note(context, lays, &asks),
        asks,
        cloths: lays.iter().map(|lay| cloth(context, lay)).collect(),
        lays: lay_figures(context, lays, other_sizes)?,
        corners: corners.transpose()?.into_iter().collect(),
        nests,
        grades: grades(context),
        moves,
    })
}

/// What is cut from one cloth, and how much of it one pair takes.
fn cloth(context: &Context<'_>, laid: &ClothLay<'_>) -> ClothCut {
    let words = context.words;
    let mut facts = vec![fact(
        context,
        key::PAPERS_FACT_WIDTH,
        words.length(laid.cloth.width),
    )];
    let pieces = || {
        let pieces = context.cut.pieces.iter();
        pieces.filter(|piece| piece.cloth_name == laid.key)
    };
    if let Some(first) = pieces().next() {
        facts.extend(shrinkage(context, laid, first));
    }
    match &laid.lay {
        Ok(lay) => {
            let bound = lay.bounds.best();
            let used = format!("{:.1} %", lay.efficiency.to_percent());
            facts.extend([
                fact(context, key::PAPERS_FACT_TAKES, words.cloth(lay.length)),
                fact(context, key::PAPERS_FACT_LEAST, words.cloth(bound)),
                fact(context, key::PAPERS_FACT_USED, used),
            ]);
        }
        Err(why) => facts.push(fact(context, key::PAPERS_FACT_NO_LAY, why.clone())),
    }
    ClothCut {
        name: laid.cloth.name.clone(),
        facts,
        rows: pieces().map(|piece| row(context, piece)).collect(),
    }
}

/// What the pieces of a cloth are cut for, and what that leaves of a cloth that loses less by itself.
fn shrinkage(context: &Context<'_>, laid: &ClothLay<'_>, piece: &CutPiece) -> Vec<Fact> {
    let system = context.words.system;
    let Shrinkage { warp, weft } = piece.scale.shrinkage;
    let [warp_text, weft_text] = [warp, weft].map(|share| share.show(system));
    let follows = piece.scale.follows == Follows::Shell;
    let cut_for = if follows {
        context.say.say(say::PapersCutForShells {
            warp: warp_text,
            weft: weft_text,
        })
    } else {
        context.say.say(say::PapersCutForOwn {
            basis: Basis::of(laid.cloth).word(),
            warp: warp_text,
            weft: weft_text,
        })
    };
    let own = ClothWash::of(laid.cloth).shrinkage;
    let slack = |own: Share, cut: Share| left_over(own, cut);
    let (along, across) = (slack(own.warp, warp), slack(own.weft, weft));
    let slack = (follows && (along.abs() > NO_SLACK || across.abs() > NO_SLACK)).then(|| {
        let said = say::PapersSlackOf {
            warp: along.show(system),
            weft: across.show(system),
        };
        fact(context, key::PAPERS_FACT_SLACK, context.say.say(said))
    });
    let cut_for = fact(context, key::PAPERS_FACT_CUT_FOR, cut_for);
    [Some(cut_for), slack].into_iter().flatten().collect()
}

/// What no hand feels on a pocket bag.
const NO_SLACK: Share = Share::percent(0.5);

/// How much longer than the shell a cloth is after the wash, when it was cut for the shell's loss and loses its own.
fn left_over(own: Share, cut_for: Share) -> Share {
    Share::percent(100.0 * ((1.0 - own.to_ratio()) / (1.0 - cut_for.to_ratio()) - 1.0))
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
        piece: listed.name(context.say),
        as_drawn: as_drawn.to_string(),
        mirrored: mirrored.to_string(),
        side: piece.label_as_cut().side_in(context.say),
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
            callouts: Vec::new(),
            state: String::new(),
            drawing,
            title: context.say.say(say::PapersLayOn { cloth, size }),
            caption: String::new(),
            scale: None,
        };
        at(figure, one_to, context.say.say(say::PapersLayNote { size }))
    });
    Ok(figures.collect())
}

/// The lays drawn at 1:n. Words are set for that scale, and take room of their own.
fn lays_at(
    context: &Context<'_>,
    lays: &[Found<'_>],
    one_to: u32,
) -> Result<Vec<Drawing>, PaperError> {
    let words = (context.say, context.words.system);
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
fn move_table(words: &Words, run: &[CutSize], base: Size, piece: &CutPiece) -> Option<MoveTable> {
    let at = nest_point(piece)?;
    let nest = cutting::nest(run, piece.piece, piece.part, piece.on, at).ok()?;
    if !grows(&nest) {
        return None;
    }
    let table = movements(run, base, piece.piece, piece.part, piece.on, at).ok()?;
    let plain = |at: Landmark| at.words(words);
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
        piece: words.say(piece.said()),
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
        (true, key::PAPERS_GRADE_WAISTS),
        (false, key::PAPERS_GRADE_LENGTHS),
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
                measure: measure.words(context.say).to_owned(),
                by: found
                    .iter()
                    .map(|s| s.map_or(String::new(), |s| moved(s.by.to_mm())))
                    .collect(),
                breaks: found.iter().map(|s| s.is_some_and(|s| s.breaks)).collect(),
            });
        }
        (!rows.is_empty()).then(|| GradeTable {
            title: context.say.named(title).to_owned(),
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
