//! The pieces as they are cut: a list for each cloth, drawings with every mark, corners, and how they grow.

use cut_sheets::{corner_sheet, piece_number, piece_thumbnail, pieces_overview};
use cutting::{CutPiece, CutSize};
use maud::{Markup, PreEscaped, html};
use sewing::Garment;
use style::Loaded;
use trade::{Length, System};
use words::Words;

use crate::addresses::style_path;
use crate::consequence::area;
use crate::garment::written;
use crate::page::cutting::lay_page::row;
use crate::page::cutting::pieces::Pieces;
use crate::viewing::Viewing;

pub(super) fn render(
    say: &'static Words,
    name: &str,
    loaded: &Loaded,
    see: &Viewing,
    pieces: Pieces,
) -> Markup {
    let system = see.system(&loaded.collection);
    let Pieces { size, garment, cut } = pieces;
    let overview = pieces_overview(&garment.pattern, &cut, say);
    let corners = corner_sheet(&cut, say);
    html! {
        (row(say, name, see, "cutting/pieces"))
        div.sheets {
            h2 { (say.pieces_title(size)) }
            p.lead { (say.pieces_lead()) }
            label.size { span { (say.pieces_size()) }
                select data-go="size" {
                    @for each in loaded.style.sizes.all() {
                        option value=(each) selected[each == size] { (each.waist) " × " (each.length) }
                    }
                }
            }
            @for refused in &cut.refused { p.bad { (say.say(refused.message())) } }
            @for (key, title) in cloths(say, loaded, &cut) { (list(say, &garment, &cut, (&key, &title), system)) }
            section aria-labelledby="sheets-title" {
                h2 #sheets-title { (say.pieces_drawn(overview.one_to)) }
                div.papers-row {
                    @for sheet in overview.sheets {
                        @let picture = written(sheet);
                        figure.paper aria-label=(picture.title) { (PreEscaped(&picture.svg)) }
                    }
                }
            }
            @if !corners.layers.is_empty() && corners.height > Length::mm(2.0) {
                section aria-labelledby="corners-title" {
                    h2 #corners-title { (say.pieces_corners()) }
                    p.lead { (say.pieces_corners_lead()) }
                    @let picture = written(corners);
                    div.papers-row { figure.paper aria-label=(picture.title) { (PreEscaped(&picture.svg)) } }
                }
            }
            section aria-labelledby="nests-title" {
                h2 #nests-title { (say.pieces_nests()) }
                p.lead { (say.pieces_nests_lead()) }
                div.papers-row {
                    @for (by, words) in [("waist", say.pieces_nests_waist()), ("length", say.pieces_nests_length())] {
                        figure.paper {
                            img loading="lazy" width="172" height="227" alt=(words)
                                src={ (style_path(name)) "/cutting/nests.svg?by=" (by) "&revision=" (loaded.revision) };
                            figcaption { (words) }
                        }
                    }
                }
            }
        }
    }
}

/// The cloths of the pieces: the name in the collection, and what people call it.
fn cloths(say: &'static Words, loaded: &Loaded, cut: &CutSize) -> Vec<(String, String)> {
    let mut out: Vec<(String, String)> = Vec::new();
    for piece in &cut.pieces {
        if out.iter().any(|(key, _)| *key == piece.cloth_name) {
            continue;
        }
        let known = loaded.collection.cloths.get(&piece.cloth_name);
        let title = known.map_or(say.pieces_no_cloth(), |cloth| cloth.name.as_str());
        out.push((piece.cloth_name.clone(), title.to_owned()));
    }
    out
}

fn list(
    say: &'static Words,
    garment: &Garment,
    cut: &CutSize,
    (key, title): (&str, &str),
    system: System,
) -> Markup {
    let pieces = || cut.pieces.iter().filter(|piece| piece.cloth_name == key);
    html! {
        section {
            h3 { (say.pieces_from(title)) }
            table.cut-list {
                thead { tr {
                    th scope="col" { (say.pieces_number()) } th scope="col" { (say.pieces_piece()) } th scope="col" { span.unseen { (say.pieces_shape()) } }
                    th scope="col" { (say.pieces_cut()) } th scope="col" { (say.pieces_side()) } th scope="col" { (say.pieces_allowances()) }
                    th.figure scope="col" { (say.pieces_area()) }
                } }
                tbody {
                    @for piece in pieces() {
                        tr {
                            td { (piece_number(&garment.pattern, piece).map(|n| n.to_string()).unwrap_or_default()) }
                            th scope="row" { (say.say(piece.said())) }
                            td.shape { (PreEscaped(thumbnail(say, piece))) }
                            td { (say.saying(&piece.label.cut)) }
                            td { (piece.label.side_in(say)) }
                            td.allowances { (allowances(say, piece)) }
                            td.figure { (area(piece.area(), system)) }
                        }
                    }
                }
            }
        }
    }
}

/// The shape alone: it says nothing that the row does not.
fn thumbnail(say: &Words, piece: &CutPiece) -> String {
    let picture = written(piece_thumbnail(piece, say));
    picture
        .svg
        .replacen("role=\"img\"", "aria-hidden=\"true\"", 1)
}

/// The allowances of a piece, edges of the same width together, the widest first.
fn allowances(say: &Words, piece: &CutPiece) -> String {
    let mut widths: Vec<(i64, Vec<String>)> = Vec::new();
    for edge in &piece.edges {
        // Tenths of a millimetre, as they are said.
        let tenths = (edge.allowance.to_mm() * 10.0).round() as i64;
        let name = edge.id.words(say).to_owned();
        match widths.iter_mut().find(|(width, _)| *width == tenths) {
            Some((_, names)) => names.push(name),
            None => widths.push((tenths, vec![name])),
        }
    }
    widths.sort_by_key(|(width, _)| std::cmp::Reverse(*width));
    let each: Vec<String> = widths
        .into_iter()
        .map(|(tenths, names)| {
            let width = tenths as f64 / 10.0;
            format!("{width} mm {}", names.join(", "))
        })
        .collect();
    each.join("; ")
}
