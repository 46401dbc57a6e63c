//! The drawings of the pack: garment views, measure diagrams, pieces.

use drawing::{PieceCaption, Sheet, View, garment_view, measure_sheets, piece_sheet, pieces_overview, svg};
use sewing::{CutPiece, Face, On};
use trade::Length;

use super::Context;
use super::words::millimetres;
use crate::{Drawing, Figure, PaperError, Scale};

/// What an A4 page leaves for a drawing at a stated scale with a caption of up to three lines, upright
/// and turned: the page less its margins, title, caption and scale bar.
const UPRIGHT_MM: (f64, f64) = (172.0, 217.0);
const TURNED_MM: (f64, f64) = (259.0, 130.0);

/// White left round a garment view, on the cloth. The view's own margin is for the screen.
const ROUND_VIEW: Length = Length::mm(6.0);
const VIEW_MARGIN: Length = Length::mm(25.0);

/// The largest scale a view is printed at.
const VIEW_ONE_TO: u32 = 5;

/// No drawing needs to be smaller than this.
const LEAST_ONE_TO: u32 = 50;

/// All drawings but those of the cover and the lists.
pub(super) struct Figures {
    pub diagrams: Vec<Figure>,
    pub views: Vec<Figure>,
    pub piece_sheets: Vec<Figure>,
}

pub(super) fn figures(context: &Context<'_>) -> Result<Figures, PaperError> {
    Ok(Figures {
        diagrams: diagrams(context)?,
        views: views(context)?,
        piece_sheets: overview(context)?.into_iter().chain(single_pieces(context)?).collect(),
    })
}

/// A sheet as a drawing of the size it states.
pub(super) fn drawn(sheet: &Sheet) -> Result<Drawing, PaperError> {
    Drawing::from_svg(svg(sheet), &format!("the drawing “{}”", sheet.title))
}

/// One view of the garment, without a stated scale.
pub(super) fn view(
    context: &Context<'_>,
    from: View,
    face: Face,
    title: &str,
) -> Result<Figure, PaperError> {
    Ok(Figure {
        drawing: drawn(&trimmed(garment_view(context.shown, from, face)))?,
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
    let inside = "Turned out: left and right stay where they are, allowances lie as each seam says.";
    let outside = "Laid flat and closed, as it is measured. Every row of stitches lies at its true place.";
    [
        (View::Front, Face::Outside, "Front, outside", outside),
        (View::Back, Face::Outside, "Back, outside", outside),
        (View::Front, Face::Inside, "Front, inside", inside),
        (View::Back, Face::Inside, "Back, inside", inside),
    ]
    .into_iter()
    .map(|(from, face, title, caption)| {
        let figure = view(context, from, face, title)?;
        let scale = (VIEW_ONE_TO..=LEAST_ONE_TO)
            .find(|n| fits(&figure.drawing, *n, &[UPRIGHT_MM]))
            .unwrap_or(LEAST_ONE_TO);
        Ok(at(figure, scale, format!("Size {}. {caption}", context.shown.size)))
    })
    .collect()
}

fn fits(drawing: &Drawing, one_to: u32, rooms: &[(f64, f64)]) -> bool {
    let n = f64::from(one_to);
    let (width, height) = (drawing.width_mm() / n, drawing.height_mm() / n);
    rooms.iter().any(|(w, h)| width <= *w && height <= *h)
}

fn at(figure: Figure, one_to: u32, caption: String) -> Figure {
    let scale = Scale::one_to(one_to);
    Figure {
        drawing: match scale {
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

/// All pieces together, at one scale.
fn overview(context: &Context<'_>) -> Result<Vec<Figure>, PaperError> {
    let overview = pieces_overview(&context.shown.pattern, &context.shown.cut);
    let count = overview.sheets.len();
    overview
        .sheets
        .iter()
        .enumerate()
        .map(|(k, sheet)| {
            let title = if count > 1 {
                format!("All pieces, {} of {count}", k + 1)
            } else {
                "All pieces".to_owned()
            };
            Ok(Figure {
                drawing: drawn(sheet)?,
                title,
                caption: format!(
                    "Size {}, washed size, to one scale. Numbers as in the list of pieces.",
                    context.shown.size
                ),
                scale: Scale::one_to(overview.one_to),
            })
        })
        .collect()
}

/// One sheet for each way a piece is cut, as large as fits.
fn single_pieces(context: &Context<'_>) -> Result<Vec<Figure>, PaperError> {
    let shown = context.shown;
    let mut out = Vec::new();
    for (index, piece) in shown.pattern.pieces.iter().enumerate() {
        for cut in shown.cut.iter().filter(|cut| cut.piece == piece.id) {
            let sheet = |one_to: u32| {
                let caption = PieceCaption {
                    style: context.loaded.style.style.name.clone(),
                    size: shown.size.to_string(),
                    number: index + 1,
                    scale: 1.0 / f64::from(one_to),
                };
                drawn(&piece_sheet(piece, Some(cut), &caption))
            };
            let (mut one_to, mut drawing) = (1, sheet(1)?);
            while one_to < LEAST_ONE_TO && !fits(&drawing, one_to, &[UPRIGHT_MM, TURNED_MM]) {
                one_to += 1;
                drawing = sheet(one_to)?;
            }
            let figure = Figure {
                drawing,
                title: format!("{}  {}{}", index + 1, piece.id.name(), copy_words(cut)),
                caption: String::new(),
                scale: None,
            };
            out.push(at(figure, one_to, caption(context, piece, cut)));
        }
    }
    Ok(out)
}

/// Which copies a sheet is for, where left and right are cut differently.
fn copy_words(cut: &CutPiece) -> &'static str {
    match cut.on {
        On::Both => "",
        On::AsDrawn => "",
        On::Mirrored => ", mirrored copy",
    }
}

fn caption(context: &Context<'_>, piece: &draft::Piece, cut: &CutPiece) -> String {
    let copies = match cut.on {
        On::Both => format!("{} as drawn and {} mirrored", piece.cut.as_drawn, piece.cut.mirrored),
        On::AsDrawn => format!("{} as drawn", piece.cut.as_drawn),
        On::Mirrored => format!("{} turned over: the drawing is its mirror image", piece.cut.mirrored),
    };
    let widths: Vec<String> = cut
        .allowances
        .iter()
        .map(|(edge, width)| format!("{} {}", edge.replace('_', " "), millimetres(*width)))
        .collect();
    format!(
        "Cut {copies}, size {}. Allowances: {}.",
        context.shown.size,
        widths.join(", ")
    )
}
