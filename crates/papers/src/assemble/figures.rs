//! The drawings of the pack: garment views, measure diagrams, pieces.

use cut_sheets::{PieceCaption, PiecesOverview, piece_number, piece_sheet, pieces_overview};
use cutting::CutPiece;
use drawing::{Sheet, View, garment_view, measure_sheets, plates, svg};
use sewing::{Face, On};
use trade::Length;
use words::Words;

use super::context::Context;
use super::words::capital;
use crate::{Drawing, Figure, PaperError, Scale};

/// What an A4 page leaves for a drawing at a stated scale: the page less its margins, title, scale bar
/// and a caption of one line, or of three (upright and turned).
const VIEW_MM: (f64, f64) = (172.0, 227.0);
pub(super) const UPRIGHT_MM: (f64, f64) = (172.0, 217.0);
pub(super) const TURNED_MM: (f64, f64) = (259.0, 130.0);

/// White left round a garment view, on the cloth. The view's own margin is for the screen.
const ROUND_VIEW: Length = Length::mm(6.0);
const VIEW_MARGIN: Length = Length::mm(25.0);

/// The largest scale a view is printed at.
const VIEW_ONE_TO: u32 = 5;

/// No drawing needs to be smaller than this.
pub(super) const LEAST_ONE_TO: u32 = 50;

/// All drawings but those of the cover and the lists.
pub(super) struct Figures {
    pub diagrams: Vec<Figure>,
    pub plates: Vec<Figure>,
    pub views: Vec<Figure>,
    pub piece_sheets: Vec<Figure>,
}

pub(super) fn figures(context: &Context<'_>) -> Result<Figures, PaperError> {
    Ok(Figures {
        diagrams: diagrams(context)?,
        plates: details(context)?,
        views: views(context)?,
        piece_sheets: piece_sheets(context)?,
    })
}

/// A sheet as a drawing of the size it states.
pub(super) fn drawn(sheet: &Sheet) -> Result<Drawing, PaperError> {
    Drawing::from_svg(svg(sheet), &format!("the drawing “{}”", sheet.title))
}

/// A view of the garment, without a stated scale.
pub(super) fn view(sheet: Sheet, title: &str) -> Result<Figure, PaperError> {
    Ok(Figure {
        drawing: drawn(&trimmed(sheet))?,
        title: title.to_owned(),
        caption: String::new(),
        scale: None,
    })
}

/// The sheet with less white round it.
fn trimmed(sheet: Sheet) -> Sheet {
    let off = VIEW_MARGIN - ROUND_VIEW;
    let (width, height) = (sheet.width - off * 2.0, sheet.height - off * 2.0);
    if width <= Length::ZERO || height <= Length::ZERO {
        return sheet;
    }
    let origin = sheet.origin + geometry::Vec2::new(off.to_mm(), off.to_mm());
    Sheet {
        origin,
        width,
        height,
        ..sheet
    }
}

fn views(context: &Context<'_>) -> Result<Vec<Figure>, PaperError> {
    // At most 90 letters with the size, which is one line.
    let inside = "Turned inside out, so left and right change places; allowances as sewn.";
    let outside = "Laid flat and closed, as it is measured; every row at its true place.";
    [
        (View::Front, Face::Outside, "Front, outside", outside),
        (View::Back, Face::Outside, "Back, outside", outside),
        (View::Front, Face::Inside, "Front, inside", inside),
        (View::Back, Face::Inside, "Back, inside", inside),
    ]
    .into_iter()
    .map(|(from, face, title, caption)| {
        let figure = view(garment_view(context.shown, from, face), title)?;
        let scale = (VIEW_ONE_TO..=LEAST_ONE_TO)
            .find(|n| fits(&figure.drawing, *n, &[VIEW_MM]))
            .unwrap_or(LEAST_ONE_TO);
        Ok(at(
            figure,
            scale,
            format!("Size {}. {caption}", context.shown.size),
        ))
    })
    .collect()
}

pub(super) fn fits(drawing: &Drawing, one_to: u32, rooms: &[(f64, f64)]) -> bool {
    let n = f64::from(one_to);
    let (width, height) = (drawing.width_mm() / n, drawing.height_mm() / n);
    rooms.iter().any(|(w, h)| width <= *w && height <= *h)
}

pub(super) fn at(figure: Figure, one_to: u32, caption: String) -> Figure {
    let scale = Scale::one_to(one_to);
    Figure {
        drawing: match &scale {
            Some(scale) => figure.drawing.at(scale),
            None => figure.drawing,
        },
        caption,
        scale,
        ..figure
    }
}

fn diagrams(context: &Context<'_>) -> Result<Vec<Figure>, PaperError> {
    measure_sheets(&context.shown.pattern)
        .iter()
        .map(|sheet| {
            Ok(Figure {
                drawing: drawn(sheet)?,
                title: sheet.title.clone(),
                caption: String::new(),
                scale: None,
            })
        })
        .collect()
}

/// The details, each at the scale of its plate, which shows its own bar.
fn details(context: &Context<'_>) -> Result<Vec<Figure>, PaperError> {
    plates(context.shown, Words::english())
        .into_iter()
        .map(|plate| {
            Ok(Figure {
                drawing: drawn(&plate.sheet)?,
                title: plate.title,
                caption: plate.caption,
                scale: Some(Scale::Shown(plate.scale.to_string())),
            })
        })
        .collect()
}

/// All pieces together at one scale, then those a page can show much larger, one by one.
fn piece_sheets(context: &Context<'_>) -> Result<Vec<Figure>, PaperError> {
    let overview = pieces_overview(&context.shown.pattern, &context.cut);
    let caption = format!(
        "Size {}, as cut before the first wash. Numbers as in the list of pieces; figures are allowances in millimetres.",
        context.shown.size
    );
    let mut out = together(&overview, "All pieces", &caption)?;
    out.extend(single_pieces(context, overview.one_to)?);
    Ok(out)
}

/// The pages of an overview.
pub(super) fn together(
    overview: &PiecesOverview,
    title: &str,
    caption: &str,
) -> Result<Vec<Figure>, PaperError> {
    let count = overview.sheets.len();
    let page = |(k, sheet): (usize, &Sheet)| {
        let of = format!(", {} of {count}", k + 1);
        Ok(Figure {
            drawing: drawn(sheet)?,
            title: format!("{title}{}", if count > 1 { &of } else { "" }),
            caption: caption.to_owned(),
            scale: Scale::one_to(overview.one_to),
        })
    };
    overview.sheets.iter().enumerate().map(page).collect()
}

/// One sheet for each cut piece, as large as fits, where that is at least twice as large as 1:`than`.
fn single_pieces(context: &Context<'_>, than: u32) -> Result<Vec<Figure>, PaperError> {
    let mut out = Vec::new();
    for piece in &context.cut.pieces {
        let number = piece_number(&context.shown.pattern, piece);
        let Some((one_to, drawing)) = twice_as_large(number, piece, than)? else {
            continue;
        };
        let copy = match piece.on {
            On::Mirrored if piece.pair => ", mirrored copy",
            _ => "",
        };
        let number = number.map(|n| n.to_string()).unwrap_or_default();
        let figure = Figure {
            drawing,
            title: format!("{number}  {}{copy}", piece.name()),
            caption: String::new(),
            scale: None,
        };
        out.push(at(figure, one_to, caption(context, piece)));
    }
    Ok(out)
}

/// The sheet of a piece at the largest 1:n that fits a page, and n; none where n is above half of `than`.
fn twice_as_large(
    number: Option<usize>,
    piece: &CutPiece,
    than: u32,
) -> Result<Option<(u32, Drawing)>, PaperError> {
    for one_to in 1..=than / 2 {
        let caption = PieceCaption {
            number,
            style_and_size: true,
            scale: 1.0 / f64::from(one_to),
            type_size: 1.0,
        };
        let drawing = drawn(&piece_sheet(piece, &caption))?;
        if fits(&drawing, one_to, &[UPRIGHT_MM, TURNED_MM]) {
            return Ok(Some((one_to, drawing)));
        }
    }
    Ok(None)
}

fn caption(context: &Context<'_>, piece: &CutPiece) -> String {
    let turned = match piece.on {
        On::Mirrored => " The drawing is its mirror image.",
        _ => "",
    };
    format!(
        "{}, size {}.{turned} {}.",
        capital(&piece.label.cut),
        context.shown.size,
        allowances(piece)
    )
}

/// The allowances with the edges they are on, those of one width together.
fn allowances(cut: &CutPiece) -> String {
    let mut widths: Vec<(String, Vec<String>)> = Vec::new();
    for edge in &cut.edges {
        let (width, edge) = (
            edge.allowance.show_mm(),
            edge.id.words(Words::english()).to_owned(),
        );
        match widths.iter_mut().find(|(known, _)| *known == width) {
            Some((_, edges)) => edges.push(edge),
            None => widths.push((width, vec![edge])),
        }
    }
    match widths.as_slice() {
        [] => "No allowances".to_owned(),
        [(width, _)] if width == "0 mm" => "Cut on the finished line".to_owned(),
        [(width, _)] => format!("Allowance {width} all round"),
        several => {
            let parts: Vec<String> = several
                .iter()
                .map(|(width, edges)| format!("{width} at {}", edges.join(", ")))
                .collect();
            format!("Allowances {}", parts.join("; "))
        }
    }
}
