//! The drawings of the pack: garment views, measure diagrams, pieces.

use cut_sheets::{ListedPiece, PieceCaption, PiecesOverview, mark_legend, piece_figure};
use cutting::{CutNotch, CutPiece, NotchKind};
use draft::PieceId;
use drawing::{
    Plate, PlateId, Sheet, View, garment_view, measure_sheets, plates, svg, with_callouts,
};
use sewing::Face;
use trade::Length;
use words::Words;

use super::context::Context;
use super::pack_words;
use super::words::{capital, joined};
use crate::{Drawing, Figure, PaperError, Scale};

/// What an A4 page leaves for a drawing at a stated scale: the page less its margins, title, scale bar
/// and a caption of one line, or of three.
const VIEW_MM: (f64, f64) = (172.0, 227.0);
pub(super) const UPRIGHT_MM: (f64, f64) = (172.0, 217.0);

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
    let shown = plates(context.shown, Words::english());
    Ok(Figures {
        diagrams: diagrams(context)?,
        plates: details(context, &shown)?,
        views: views(context, &shown)?,
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
        callouts: Vec::new(),
        state: String::new(),
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

/// The four views, with numbers beside what the plates of `shown` tell more of.
fn views(context: &Context<'_>, shown: &[Plate]) -> Result<Vec<Figure>, PaperError> {
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
        let sheet = garment_view(context.shown, from, face, Words::english());
        let plain = view(sheet.clone(), title)?;
        let scale = (VIEW_ONE_TO..=LEAST_ONE_TO)
            .find(|n| fits(&plain.drawing, *n, &[VIEW_MM]))
            .unwrap_or(LEAST_ONE_TO);
        let ids: Vec<PlateId> = shown.iter().map(|plate| plate.id).collect();
        let seen = (from, face);
        let (sheet, numbered) = with_callouts(sheet, context.shown, seen, &ids, scale);
        let titles = numbered
            .iter()
            .filter_map(|id| shown.iter().find(|plate| plate.id == *id))
            .map(|plate| plate.title.clone());
        let figure = Figure {
            callouts: titles.collect(),
            ..view(sheet, title)?
        };
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
    measure_sheets(&context.shown.pattern, Words::english())
        .iter()
        .map(|sheet| {
            Ok(Figure {
                callouts: Vec::new(),
                state: String::new(),
                drawing: drawn(sheet)?,
                title: sheet.title.clone(),
                caption: String::new(),
                scale: None,
            })
        })
        .collect()
}

/// The details, each at the scale of its plate, which shows its own bar.
fn details(context: &Context<'_>, shown: &[Plate]) -> Result<Vec<Figure>, PaperError> {
    let after = pack_words::state_after(context);
    shown
        .iter()
        .map(|plate| {
            Ok(Figure {
                callouts: Vec::new(),
                state: if plate.of_washed {
                    after.clone()
                } else {
                    String::new()
                },
                drawing: drawn(&plate.sheet)?,
                title: plate.title.clone(),
                caption: plate.caption.clone(),
                scale: Some(Scale::Shown(plate.scale.to_string())),
            })
        })
        .collect()
}

/// What a page of A3 leaves for a drawing.
const LARGE_MM: (f64, f64) = (259.0, 340.0);

/// The scale of pieces, at which an A3 page holds the front and back of most sizes.
const PIECE_ONE_TO: u32 = 4;

/// Every cut piece: the large ones first, and of one scale the tallest, so that they stand together.
fn piece_sheets(context: &Context<'_>) -> Result<Vec<Figure>, PaperError> {
    let mut out = Vec::new();
    for piece in &context.cut.pieces {
        let listed = ListedPiece::of(&context.shown.pattern, piece);
        let (one_to, drawing) = as_large(listed.number, piece)?;
        let number = listed.number.map(|n| n.to_string()).unwrap_or_default();
        let figure = Figure {
            callouts: Vec::new(),
            state: String::new(),
            drawing,
            title: format!("{number}  {}", listed.name(Words::english())),
            caption: String::new(),
            scale: None,
        };
        out.push((one_to, at(figure, one_to, caption(piece))));
    }
    out.sort_by(|(one, a), (other, b)| {
        let taller = b.drawing.height_mm().total_cmp(&a.drawing.height_mm());
        other.cmp(one).then(taller)
    });
    let mut figures: Vec<Figure> = out.into_iter().map(|(_, figure)| figure).collect();
    if let Some(scale) = figures.first().map(|figure| figure.scale.clone()) {
        figures.push(legend(context, scale)?);
    }
    Ok(figures)
}

/// What the lines and marks on the piece sheets are, at its own size.
fn legend(context: &Context<'_>, scale: Option<Scale>) -> Result<Figure, PaperError> {
    let sheet = mark_legend(&context.cut, Words::english());
    Ok(Figure {
        callouts: Vec::new(),
        state: String::new(),
        drawing: drawn(&sheet)?,
        title: sheet.title.clone(),
        caption: String::new(),
        scale,
    })
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
            callouts: Vec::new(),
            state: String::new(),
            drawing: drawn(sheet)?,
            title: format!("{title}{}", if count > 1 { &of } else { "" }),
            caption: caption.to_owned(),
            scale: Scale::one_to(overview.one_to),
        })
    };
    overview.sheets.iter().enumerate().map(page).collect()
}

/// The sheet of a piece at the largest 1:n that fits a page, and n.
fn as_large(number: Option<usize>, piece: &CutPiece) -> Result<(u32, Drawing), PaperError> {
    let at_scale = |one_to: u32| {
        let caption = PieceCaption {
            number,
            style_and_size: false,
            scale: 1.0 / f64::from(one_to),
            type_size: 1.0,
        };
        drawn(&piece_figure(piece, &caption, Words::english()))
    };
    let mut one_to = PIECE_ONE_TO;
    let mut drawing = at_scale(one_to)?;
    while one_to < LEAST_ONE_TO && !fits(&drawing, one_to, &[LARGE_MM]) {
        one_to += 1;
        drawing = at_scale(one_to)?;
    }
    Ok((one_to, drawing))
}

fn caption(piece: &CutPiece) -> String {
    let label = piece.label_as_cut();
    let (cut, side) = (
        Words::english().saying(&label.cut),
        label.side_in(Words::english()),
    );
    let told = [
        capital(&joined(
            [cut.as_str(), side.as_str(), label.cloth.as_str()],
            ", ",
        )),
        allowances(piece),
        marks(piece),
        grain(piece).to_owned(),
    ];
    let told: Vec<String> = told.into_iter().filter(|words| !words.is_empty()).collect();
    format!("{}.", told.join(". "))
}

/// How many notches and drill marks a piece has.
fn marks(piece: &CutPiece) -> String {
    let counted = |count: usize, one: &str, several: &str| match count {
        0 => None,
        1 => Some(format!("1 {one}")),
        n => Some(format!("{n} {several}")),
    };
    let of = |wanted: fn(&CutNotch) -> bool| piece.notches.iter().filter(|n| wanted(n)).count();
    let told = [
        counted(
            of(|n| n.kind == NotchKind::Slit && !n.double),
            "notch",
            "notches",
        ),
        counted(
            of(|n| n.kind == NotchKind::Slit && n.double),
            "double notch",
            "double notches",
        ),
        counted(
            of(|n| n.kind == NotchKind::Drawn),
            "drawn notch",
            "drawn notches",
        ),
        counted(piece.drills.len(), "drill mark", "drill marks"),
    ];
    capital(&told.into_iter().flatten().collect::<Vec<_>>().join(", "))
}

/// What is to be known of the grain where it surprises: a band is cut across its length.
fn grain(piece: &CutPiece) -> &'static str {
    let box_of = geometry::bounds_of(&piece.cut);
    let along_is_x = box_of.width() > box_of.height();
    let warp = piece.warp();
    let across = if along_is_x {
        warp.y.abs() > warp.x.abs()
    } else {
        warp.x.abs() > warp.y.abs()
    };
    if piece.piece == PieceId::Band && across {
        "The warp runs across its length, as the arrow shows: that grain is wanted"
    } else {
        ""
    }
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
