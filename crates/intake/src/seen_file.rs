//! What was seen in a pattern file.

use std::collections::BTreeMap;

use geometry::{Point, polyline_length};
use indexmap::IndexMap;
use patterns::{PatternFile, Piece};
use style::{
    Drawn, OWN_PIECES, OwnPieceName, PieceBlock, PieceFile, PieceId, Size, Tag, own_piece,
};
use trade::{Angle, Area, Length};

use crate::edges::{GuessedEdge, edges, stated};
use crate::opened_half::opened;
use crate::outline::{Outline, outline};
use crate::sizes::{SizeName, sizes};
use crate::{IntakeError, names};

/// How our own files end the kind of a copy that is not the mirror image of the other.
const OTHER_COPY: &str = "_mirrored";

/// What the maker says beyond the file.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Asked {
    /// Sizes.
    pub sizes: Vec<SizeName>,
    /// Pieces, as the program's name and the file's: "front", "FRONT PANEL".
    pub pieces: Vec<(String, String)>,
    /// Corners of a piece, one where each edge begins: "front", ["3", "4", ...].
    pub corners: Vec<(String, Vec<String>)>,
    /// That outlines are what is sewn along where the file does not say.
    pub sewn: bool,
    /// That the grain runs up the page where the file has no grain line.
    pub grain_up: bool,
    /// The lengths the style is made in, for files that name sizes by the waist alone.
    pub lengths: Vec<Tag>,
    /// The size to show; the first of the file when left out.
    pub base: Option<Size>,
}

/// A corner of a piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Corner {
    /// Its name in the file, or its number along the outline.
    pub name: String,
    /// Where it is.
    pub at: Point,
}

/// The outline from one corner to the next.
#[derive(Clone, Debug, PartialEq)]
pub struct Side {
    /// The corner it begins at.
    pub from: String,
    /// The corner it ends at.
    pub to: String,
    /// How long it is.
    pub length: Length,
}

/// A piece as it was seen.
#[derive(Clone, Debug, PartialEq)]
pub struct SeenPiece {
    /// Its name in the file.
    pub name: String,
    /// The sizes it is there in.
    pub sizes: Vec<Size>,
    /// The size whose measures follow.
    pub shown: Size,
    /// How wide it is across its grain.
    pub width: Length,
    /// How long it is along its grain.
    pub height: Length,
    /// Its area within the outline.
    pub area: Area,
    /// Whether the outline is the line it is sewn along; else it is the line it is cut along.
    pub sewn: bool,
    /// The direction of its grain from x, if it has one.
    pub grain: Option<Angle>,
    /// Whether the file holds a half of it, which was opened over its mirror line.
    pub half: bool,
    /// How many notches it has.
    pub notches: usize,
    /// Its corners in the order of the outline.
    pub corners: Vec<Corner>,
    /// Its outline from corner to corner.
    pub sides: Vec<Side>,
    /// Which piece it is taken for.
    pub taken_for: Option<&'static OwnPieceName>,
    /// Why: "its name", "its shape", "as stated".
    pub because: &'static str,
    /// Its edges, where they can be made out.
    pub edges: Vec<GuessedEdge>,
    /// Why it is left aside, where it is.
    pub aside: Option<String>,
}

/// Everything seen.
#[derive(Clone, Debug, PartialEq)]
pub struct Look {
    /// The pieces as `style` keeps them.
    pub file: PieceFile,
    /// What was seen of each.
    pub pieces: Vec<SeenPiece>,
    /// The sizes every brought piece is there in.
    pub sizes: Vec<Size>,
    /// For which state of the cloth the outlines are, where the file says it. What it says the wash takes is taken off
    /// already.
    pub drawn: Option<Drawn>,
}

/// Looks at a pattern file; `from` is its name.
///
/// # Errors
/// It has no pieces, two of one name in one size, a size that cannot be told, or what was stated does not fit it.
pub fn look(file: &PatternFile, from: &str, asked: &Asked) -> Result<Look, IntakeError> {
    let sizes = sizes(file, &asked.sizes, &asked.lengths)?;
    let mut outlines: IndexMap<String, BTreeMap<Size, (Outline, String)>> = IndexMap::new();
    let mut halves: Vec<String> = Vec::new();
    for (k, piece) in file.pieces.iter().enumerate() {
        let Some((_, size)) = sizes.iter().find(|(label, _)| *label == piece.size) else {
            continue;
        };
        let name = name_of(piece, k);
        let freed = freed(piece, &name)?;
        let piece = freed.as_ref().unwrap_or(piece);
        let whole = opened(piece);
        let mut found = outline(whole.as_ref().unwrap_or(piece));
        found.freed = freed.is_some();
        if whole.is_some() && !halves.contains(&name) {
            halves.push(name.clone());
        }
        found.sewn |= asked.sewn;
        if asked.grain_up {
            found.grain_up();
        }
        if found.line.len() < 3 {
            continue;
        }
        let category = piece.category.strip_suffix(OTHER_COPY);
        let category = category.unwrap_or(&piece.category).to_owned();
        let all = outlines.entry(name.clone()).or_default();
        // Copies that are cut with other allowances are sewn along the same line.
        if let Some((there, _)) = all.get(size)
            && there.is_same(&found)
        {
            continue;
        }
        if all.insert(*size, (found, category)).is_some() {
            return Err(IntakeError::new(
                format!("the file has two pieces named \"{name}\" in {size}"),
                "give each piece a name of its own in the program the file comes from",
            ));
        }
    }
    if outlines.is_empty() {
        return Err(IntakeError::new(
            "the file holds no piece with an outline",
            "a piece has a closed line it is cut along",
        ));
    }
    for stated in asked
        .pieces
        .iter()
        .map(|p| &p.0)
        .chain(asked.corners.iter().map(|c| &c.0))
    {
        if own_piece(stated).is_none() {
            let known: Vec<&str> = OWN_PIECES.iter().map(|p| p.id.code()).collect();
            return Err(IntakeError::new(
                format!("\"{stated}\" is no piece that can be brought"),
                format!("write {}", known.join(", ")),
            ));
        }
    }
    for (_, name) in &asked.pieces {
        if !outlines.contains_key(name) {
            let there: Vec<String> = outlines.keys().map(|n| format!("\"{n}\"")).collect();
            return Err(IntakeError::new(
                format!("the file has no piece named \"{name}\""),
                format!("its pieces are {}", there.join(", ")),
            ));
        }
    }
    let mut pieces = seen(&outlines, asked)?;
    for piece in &mut pieces {
        piece.half = halves.contains(&piece.name);
    }
    let drawn = drawn(&outlines, &pieces)?;
    let held: Vec<Size> = sizes.iter().map(|s| s.1).collect();
    let everywhere = |size: &Size| {
        let mut taken = pieces.iter().filter(|p| p.taken_for.is_some());
        taken.all(|p| p.sizes.contains(size))
    };
    let blocks = |all: &BTreeMap<Size, (Outline, String)>| -> IndexMap<Size, PieceBlock> {
        all.iter()
            .map(|(size, (o, _))| (*size, o.block()))
            .collect()
    };
    Ok(Look {
        sizes: held.into_iter().filter(everywhere).collect(),
        file: PieceFile {
            from: from.to_owned(),
            pieces: outlines
                .iter()
                .map(|(name, all)| (name.clone(), blocks(all)))
                .collect(),
        },
        pieces,
        drawn,
    })
}

/// The piece after the wash, where it says how it was made larger.
fn freed(piece: &Piece, name: &str) -> Result<Option<Piece>, IntakeError> {
    let said = piece.before_wash().map_err(|note| {
        IntakeError::new(
            format!("\"{name}\" says \"{note}\", which is nothing a cloth does"),
            "write it as in before wash: warp 3 %, weft 12 %; skew: 3 % sheared, or take the line away",
        )
    })?;
    let Some(said) = said else {
        return Ok(None);
    };
    match piece.finished(&said) {
        Some(finished) => Ok(Some(finished)),
        None => Err(IntakeError::new(
            format!("\"{name}\" says what the wash takes along its grain, and has no grain line"),
            "draw its grain line again",
        )),
    }
}

/// For which state of the cloth the pieces are drawn that were made out: after the wash where each says how it was made
/// larger, for that is taken off; `None` where none says it.
fn drawn(
    outlines: &IndexMap<String, BTreeMap<Size, (Outline, String)>>,
    pieces: &[SeenPiece],
) -> Result<Option<Drawn>, IntakeError> {
    let taken = pieces.iter().filter(|piece| piece.taken_for.is_some());
    let all = taken.filter_map(|piece| Some((piece, outlines.get(&piece.name)?)));
    let each = all.flat_map(|(piece, sizes)| sizes.values().map(move |(o, _)| (piece, o)));
    let (says, silent): (Vec<_>, Vec<_>) = each.partition(|(_, outline)| outline.freed);
    let (Some((one, _)), other) = (says.first(), silent.first()) else {
        return Ok(None);
    };
    if let Some((other, _)) = other {
        return Err(IntakeError::new(
            format!(
                "\"{}\" says what the wash takes from it, and \"{}\" does not say for which state of the cloth it is drawn",
                one.name, other.name
            ),
            "give each piece the line before wash: warp …, weft … as fellwork patterns writes it, or take it from all",
        ));
    }
    // An allowance is sewn off before the wash, so it would have to come off first.
    if let Some((cut, _)) = says.iter().find(|(_, outline)| !outline.sewn) {
        return Err(IntakeError::new(
            format!(
                "\"{}\" says what the wash takes from it, and has no line it is sewn along",
                cut.name
            ),
            "draw its sewn lines again; or take the line before wash: … from all pieces and say --before-wash and --allowance",
        ));
    }
    Ok(Some(Drawn::AfterWash))
}

fn name_of(piece: &Piece, index: usize) -> String {
    let name = piece.name.trim();
    if name.is_empty() {
        format!("piece {}", index + 1)
    } else {
        name.to_owned()
    }
}

fn seen(
    outlines: &IndexMap<String, BTreeMap<Size, (Outline, String)>>,
    asked: &Asked,
) -> Result<Vec<SeenPiece>, IntakeError> {
    let mut out = Vec::new();
    for (name, all) in outlines {
        let shown = asked.base.filter(|size| all.contains_key(size));
        let Some((size, (outline, category))) = shown
            .and_then(|size| all.get_key_value(&size))
            .or_else(|| all.iter().next())
        else {
            continue;
        };
        let mut piece = measured(name, *size, outline);
        piece.sizes = all.keys().copied().collect();
        (piece.taken_for, piece.because) = taken_for(name, category, outline, &piece, asked);
        out.push(piece);
    }
    by_shape(&mut out);
    one_each(&mut out);
    for piece in &mut out {
        let Some(known) = piece.taken_for else {
            continue;
        };
        let Some(all) = outlines.get(&piece.name) else {
            continue;
        };
        let Some((outline, _)) = all.get(&piece.shown) else {
            continue;
        };
        let said = asked.corners.iter().find(|(own, _)| own == known.id.code());
        let found = match said {
            Some((_, corners)) => Some(stated(outline, known, corners).map_err(|why| {
                IntakeError::new(
                    format!("\"{}\": {why}", piece.name),
                    "name corners as fellwork bring --list shows them",
                )
            })?),
            None => None,
        };
        match found.map_or_else(|| edges(outline, known), Ok) {
            Ok(found) => match uneven(all, &piece.shown, &found) {
                None => piece.edges = found,
                Some(why) => piece.aside = Some(why),
            },
            Err(why) => piece.aside = Some(why),
        }
        if piece.aside.is_some() {
            piece.taken_for = None;
        }
    }
    Ok(out)
}

/// Why the corners of one size cannot be those of another, where they cannot.
fn uneven(
    all: &BTreeMap<Size, (Outline, String)>,
    shown: &Size,
    edges: &[GuessedEdge],
) -> Option<String> {
    let numbered = edges
        .iter()
        .any(|edge| edge.from.chars().all(|c| c.is_ascii_digit()));
    let count = all.get(shown)?.0.corners.len();
    let other = all
        .iter()
        .find(|(_, (o, _))| numbered && o.corners.len() != count);
    other.map(|(size, (o, _))| {
        format!(
            "it has {count} corners in {shown} and {} in {size}, so their numbers do not mean the same",
            o.corners.len()
        )
    })
}

fn measured(name: &str, size: Size, outline: &Outline) -> SeenPiece {
    let grain = outline.grain.map(|(a, b)| b - a);
    let turn = grain.map_or(0.0, |g| std::f64::consts::FRAC_PI_2 - g.atan2());
    let upright = geometry::Affine::rotate(turn);
    let reach = |along: fn(Point) -> f64| {
        let all = outline.line.iter().map(|p| along(upright * *p));
        let (low, high) = all.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| {
            (l.min(v), h.max(v))
        });
        Length::mm(high - low)
    };
    let corners: Vec<(&String, usize)> = outline.corners.iter().map(|(n, k)| (n, *k)).collect();
    let next = |k: usize| corners[(k + 1) % corners.len()];
    SeenPiece {
        name: name.to_owned(),
        sizes: Vec::new(),
        shown: size,
        width: reach(|p| p.x),
        height: reach(|p| p.y),
        area: geometry::area(&outline.line),
        sewn: outline.sewn,
        grain: grain.map(|g| Angle::rad(g.atan2())),
        half: false,
        notches: outline.notches.len(),
        sides: (0..corners.len())
            .map(|k| Side {
                from: corners[k].0.clone(),
                to: next(k).0.clone(),
                length: polyline_length(&outline.stretch(corners[k].1, next(k).1)),
            })
            .collect(),
        corners: corners
            .iter()
            .map(|(name, k)| Corner {
                name: (*name).clone(),
                at: outline.line[*k],
            })
            .collect(),
        taken_for: None,
        because: "",
        edges: Vec::new(),
        aside: None,
    }
}

/// What a piece is by what was stated, by the program's own names in the file, or by its name.
fn taken_for(
    name: &str,
    category: &str,
    outline: &Outline,
    piece: &SeenPiece,
    asked: &Asked,
) -> (Option<&'static OwnPieceName>, &'static str) {
    if let Some((own, _)) = asked.pieces.iter().find(|(_, theirs)| theirs == name) {
        return (own_piece(own), "as stated");
    }
    let (found, because) = by_itself(name, category, outline, piece);
    let stated = |known: &OwnPieceName| asked.pieces.iter().any(|(own, _)| own == known.id.code());
    match found {
        Some(known) if stated(known) => (None, "another is stated"),
        _ => (found, because),
    }
}

/// What a piece is by the program's own names in the file, or by its name.
fn by_itself(
    name: &str,
    category: &str,
    outline: &Outline,
    piece: &SeenPiece,
) -> (Option<&'static OwnPieceName>, &'static str) {
    if let Some(known) = own_piece(category).filter(|_| !outline.named.is_empty()) {
        return (Some(known), "as the file says");
    }
    match names::by_name(name).or_else(|| names::by_name(category)) {
        Some(Some("back_pocket")) => {
            let side = if names::is_left(name) == Some(true) {
                "back_pocket_left"
            } else {
                "back_pocket_right"
            };
            (own_piece(side), "its name")
        }
        // A panel of a leg is long; a short piece with such a word in its name is something else.
        Some(Some("front" | "back")) if piece.height < Length::cm(60.0) => (None, "nothing"),
        Some(Some(own)) => (own_piece(own), "its name"),
        Some(None) => (None, "its name"),
        None => (None, "nothing"),
    }
}

/// Front and back by their size, where no name says which they are: the two largest long pieces, the back the larger.
fn by_shape(pieces: &mut [SeenPiece]) {
    let is_there = |pieces: &[SeenPiece], id: PieceId| {
        pieces
            .iter()
            .any(|p| p.taken_for.is_some_and(|k| k.id == id))
    };
    let mut long: Vec<usize> = (0..pieces.len())
        .filter(|k| {
            let p = &pieces[*k];
            let open = p.taken_for.is_none() && p.because == "nothing";
            open && p.height > Length::cm(60.0) && p.width > Length::cm(15.0)
        })
        .collect();
    long.sort_by(|a, b| {
        let area = |k: &usize| pieces[*k].area.to_mm2();
        area(b).total_cmp(&area(a))
    });
    let free: Vec<PieceId> = [PieceId::Back, PieceId::Front]
        .into_iter()
        .filter(|id| !is_there(pieces, *id))
        .collect();
    if long.len() == free.len() {
        for (k, id) in long.into_iter().zip(free) {
            pieces[k].taken_for = own_piece(id.code());
            pieces[k].because = "its shape";
        }
    }
    // A band is the one long narrow piece.
    let narrow: Vec<usize> = (0..pieces.len())
        .filter(|k| {
            let p = &pieces[*k];
            let (long, short) = (p.width.max(p.height), p.width.min(p.height));
            let open = p.taken_for.is_none() && p.because == "nothing";
            open && long > Length::cm(60.0) && short < Length::cm(14.0) && short > Length::cm(5.0)
        })
        .collect();
    if let ([k], false) = (narrow.as_slice(), is_there(pieces, PieceId::Band)) {
        pieces[*k].taken_for = own_piece(PieceId::Band.code());
        pieces[*k].because = "its shape";
    }
}

/// Two pieces cannot be the same one: the later is left aside. A single back pocket serves both sides.
fn one_each(pieces: &mut [SeenPiece]) {
    for k in 0..pieces.len() {
        let Some(known) = pieces[k].taken_for else {
            continue;
        };
        let first = pieces[..k]
            .iter()
            .find(|p| p.taken_for.is_some_and(|other| other.id == known.id));
        if let Some(first) = first {
            let why = format!(
                "\"{}\" is taken for the {} already; say which it is with --piece {}=\"NAME\"",
                first.name,
                known.title,
                known.id.code()
            );
            pieces[k].aside = Some(why);
            pieces[k].taken_for = None;
        }
    }
}
