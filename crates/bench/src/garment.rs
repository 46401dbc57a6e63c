//! The calls into the rooms below: work out a garment, count its yarn, and draw it.

use std::slice;
use std::sync::OnceLock;

use cutting::{CutPiece, CutSize, Plan};
use draft::measure;
use draft::{Finding, PieceId};
use drawing::Sheet;
use flat::{Places, View};
use sewing::yarn::{Consumption, consumption};
use sewing::{Face, Garment};
use style::{Loaded, MeasureId, Size};
use trade::{Area, Length, Mass};
use words::Words;

use crate::grip::{self, Shown};
use crate::marks::{self, Mark};
use crate::viewing::{Layer, OnPaper, Panel, Viewing};

/// One size of a style, worked out, and what was asked about it since.
pub(crate) struct Worked {
    pub(crate) garment: Garment,
    /// What its pieces take of cloth.
    pub(crate) cut: Cut,
    yarn: OnceLock<Consumption>,
    thickest: OnceLock<Length>,
}

/// What the pieces of one pair take of cloth, as they are cut.
pub(crate) struct Cut {
    pub(crate) area: Area,
    pub(crate) mass: Mass,
    /// The same for each cloth, in the order in which pieces first name it.
    pub(crate) of_cloth: Vec<ClothShare>,
    /// Of the shell, were its whole width used; `None` where the shell is not known.
    pub(crate) shell_length: Option<Length>,
}

/// What one cloth gives to a pair.
pub(crate) struct ClothShare {
    /// The cloth's name in the collection.
    pub(crate) name: String,
    pub(crate) area: Area,
    /// How many pieces are cut from it.
    pub(crate) pieces: u32,
    /// What those are called, each once.
    pub(crate) named: Vec<PieceId>,
}

impl Cut {
    fn of(cut: &CutSize, garment: &Garment) -> Self {
        let cloths = &garment.collection.cloths;
        let of = |piece: &CutPiece| piece.area() * f64::from(piece.as_drawn + piece.mirrored);
        let weighed = |piece: &CutPiece| Some(of(piece) * cloths.get(&piece.cloth_name)?.weight);
        let mut of_cloth: Vec<ClothShare> = Vec::new();
        for piece in &cut.pieces {
            let known = of_cloth
                .iter()
                .position(|share| share.name == piece.cloth_name);
            let at = known.unwrap_or_else(|| {
                of_cloth.push(ClothShare {
                    name: piece.cloth_name.clone(),
                    area: Area::ZERO,
                    pieces: 0,
                    named: Vec::new(),
                });
                of_cloth.len() - 1
            });
            let Some(share) = of_cloth.get_mut(at) else {
                continue;
            };
            share.area += of(piece);
            share.pieces += piece.as_drawn + piece.mirrored;
            let name = piece.piece;
            if !share.named.contains(&name) {
                share.named.push(name);
            }
        }
        let shell = &garment.doc.cloth.shell;
        let of_shell = cut.pieces.iter().filter(|piece| piece.cloth_name == *shell);
        let shell_area: Area = of_shell.map(of).sum();
        Self {
            area: cut.pieces.iter().map(of).sum(),
            mass: cut.pieces.iter().filter_map(weighed).sum(),
            of_cloth,
            shell_length: cloths.get(shell).map(|cloth| shell_area / cloth.width),
        }
    }
}

impl Worked {
    /// Works out one size of a style, and what is to be known before it is cut.
    pub(crate) fn out(loaded: &Loaded, size: Size) -> Self {
        let mut garment = sewing::make(&loaded.style, &loaded.collection, size);
        let cut = cutting::cut(&garment, &Plan::of(&garment.doc));
        let taken = Cut::of(&cut, &garment);
        let noticed = cutting::noticed(slice::from_ref(&garment), slice::from_ref(&cut));
        garment.findings = noticed.into_iter().flat_map(|(_, found)| found).collect();
        Self {
            garment,
            cut: taken,
            yarn: OnceLock::new(),
            thickest: OnceLock::new(),
        }
    }

    /// The thickest place there is to be sewn across.
    pub(crate) fn thickest(&self) -> Length {
        *self.thickest.get_or_init(|| {
            let crossings = sewing::bulk(&self.garment);
            crossings
                .first()
                .map_or(Length::ZERO, |crossing| crossing.thickness)
        })
    }

    /// The findings that count: all but those the maker muted, and those that go with a conflict.
    pub(crate) fn counted(&self) -> Vec<&Finding> {
        let doc = &self.garment.doc;
        let all = self.garment.findings.iter();
        all.filter(|finding| finding.counts(doc)).collect()
    }

    /// The yarn of one pair, counted once.
    pub(crate) fn yarn(&self) -> &Consumption {
        self.yarn.get_or_init(|| consumption(&self.garment))
    }
}

/// A drawing, ready to be put into a page.
pub(crate) struct Picture {
    /// What it shows, in words.
    pub(crate) title: String,
    /// What is to be known about it besides; empty for nothing.
    pub(crate) caption: String,
    /// The drawing as SVG.
    pub(crate) svg: String,
    /// Whether it is a page to be printed, and not the pair itself.
    pub(crate) on_paper: bool,
    /// The part of the plane that is drawn, as SVG's `viewBox` says it.
    pub(crate) frame: String,
    /// Where findings lie on it.
    pub(crate) marks: Vec<Mark>,
    /// The numbers of findings that lie on the other side.
    pub(crate) other_side: Vec<usize>,
    /// What can be taken hold of.
    pub(crate) grips: Vec<Shown>,
    /// Outlines of what lies below what is seen.
    pub(crate) below: Vec<Vec<Mm>>,
    /// Where the tape lies for each measure.
    pub(crate) tapes: Vec<Tape>,
}

/// A place on the drawing, in its millimetres.
pub(crate) type Mm = (f64, f64);

/// A measure as it is taken on the drawing.
pub(crate) struct Tape {
    pub(crate) measure: MeasureId,
    pub(crate) lines: Vec<Vec<Mm>>,
}

impl Tape {
    /// The middle of its longest line, where its value is led to.
    pub(crate) fn middle(&self) -> Option<Mm> {
        let step = |a: Mm, b: Mm| (b.0 - a.0).hypot(b.1 - a.1);
        let length = |line: &[Mm]| {
            line.iter()
                .zip(line.iter().skip(1))
                .map(|(a, b)| step(*a, *b))
                .sum::<f64>()
        };
        let longest = self
            .lines
            .iter()
            .max_by(|a, b| length(a).total_cmp(&length(b)))?;
        let mut left = length(longest) / 2.0;
        for (a, b) in longest.iter().zip(longest.iter().skip(1)) {
            let long = step(*a, *b);
            if long >= left && long > 0.0 {
                let share = left / long;
                return Some((a.0 + (b.0 - a.0) * share, a.1 + (b.1 - a.1) * share));
            }
            left -= long;
        }
        longest.last().copied()
    }
}

/// What lies below each side and is drawn dashed there.
const BELOW: [(View, &[PieceId]); 2] = [
    (
        View::Front,
        &[
            PieceId::PocketFacing,
            PieceId::PocketBag,
            PieceId::CoinPocket,
            PieceId::FlyFacing,
            PieceId::FlyShield,
            PieceId::ExtraPocket,
        ],
    ),
    (
        View::Back,
        &[PieceId::BackLiningLeft, PieceId::BackLiningRight],
    ),
];

/// Draws what is looked at: the plate, where the style has one of it, else the side and face.
pub(crate) fn picture(say: &'static Words, worked: &Worked, see: &Viewing) -> Picture {
    if let Some(plate) = see.plate.and_then(|plate| on_paper(say, worked, plate)) {
        return plate;
    }
    let garment = &worked.garment;
    let numbered = see.panel == Panel::Findings || see.shows(Layer::Findings);
    let pair = if numbered {
        with_findings(say, garment, see)
    } else {
        written(drawing::garment_view(garment, see.view, see.face, say))
    };
    let pair = match Places::of(garment, see.view, see.face) {
        Some(places) => Picture {
            grips: grip::shown(garment, &places, see),
            below: below(&places, see),
            tapes: tapes(garment, &places, see),
            ..pair
        },
        None => pair,
    };
    let caption = see
        .plate
        .map(|plate| say.drawing_plate_missing(plate.words(say)));
    Picture {
        caption: caption.unwrap_or_default(),
        ..pair
    }
}

/// The front of a style in its base size, light enough for a list of many: without its stitches.
pub(crate) fn small_picture(say: &Words, loaded: &Loaded) -> String {
    let size = loaded.style.sizes.base;
    let garment = sewing::make(&loaded.style, &loaded.collection, size);
    let mut sheet = drawing::garment_picture(&garment, View::Front, Face::Outside, say);
    sheet
        .layers
        .retain(|layer| layer.name != "rows" && layer.name != "roping");
    written(sheet).svg
}

fn on_paper(say: &Words, worked: &Worked, plate: OnPaper) -> Option<Picture> {
    match plate {
        OnPaper::YarnPlan => {
            let garment = &worked.garment;
            let plan = sewing::yarn::plan(garment);
            let maker = drawing::PlanFor::Maker;
            Some(Picture {
                on_paper: true,
                ..written(drawing::yarn_plan_sheet(
                    &plan,
                    &garment.collection,
                    maker,
                    say,
                ))
            })
        }
        OnPaper::Detail(id) => {
            let plate = drawing::plate(&worked.garment, say, id)?;
            Some(Picture {
                caption: plate.caption,
                title: plate.title,
                on_paper: true,
                ..written(plate.sheet)
            })
        }
    }
}

/// The outlines of what lies below, where they are asked for.
fn below(places: &Places<'_>, see: &Viewing) -> Vec<Vec<Mm>> {
    if !see.shows(Layer::Below) || see.face == Face::Inside {
        return Vec::new();
    }
    let pieces = BELOW.iter().filter(|(view, _)| *view == see.view);
    let pieces = pieces.flat_map(|(_, pieces)| pieces.iter());
    let outlines = pieces.flat_map(|piece| places.outlines(*piece));
    outlines
        .map(|line| line.iter().map(|p| (p.x, p.y)).collect())
        .collect()
}

/// The measures that are taken on the side that is looked at, where they are asked for.
fn tapes(garment: &Garment, places: &Places<'_>, see: &Viewing) -> Vec<Tape> {
    if !see.shows(Layer::Measures) {
        return Vec::new();
    }
    let other = Places::of(garment, other_side(see.view), see.face);
    // What is taken round a fold may lie on the other side than the one it is usually shown on.
    let here = |measure: MeasureId| {
        let usual = match measure::taking(measure).shown {
            measure::Shown::Front => View::Front,
            measure::Shown::Back => View::Back,
        };
        usual == see.view
            || other
                .as_ref()
                .is_none_or(|other| other.tape(measure).is_empty())
    };
    let measures = MeasureId::ALL.into_iter().filter(|measure| here(*measure));
    measures
        .map(|measure| Tape {
            measure,
            lines: places
                .tape(measure)
                .iter()
                .map(|line| line.iter().map(|p| (p.x, p.y)).collect())
                .collect(),
        })
        .filter(|tape| !tape.lines.is_empty())
        .collect()
}

/// The pair with the numbers of its findings.
fn with_findings(say: &Words, garment: &Garment, see: &Viewing) -> Picture {
    let (sheet, mut marks) = marks::marked_view(say, garment, see.view, see.face);
    let counts = |number: usize| {
        let finding = garment.findings.get(number - 1);
        finding.is_none_or(|finding| finding.counts(&garment.doc))
    };
    marks.retain(|mark| counts(mark.number));
    let shown = |number| marks.iter().any(|mark| mark.number == number);
    let findings = garment.findings.iter().zip(1..);
    let hidden = |(finding, number): (&Finding, usize)| finding.place.is_some() && !shown(number);
    // The other side is only looked at where something may lie there.
    let other_side = if findings.into_iter().any(hidden) {
        let (_, there) = marks::marked_view(say, garment, other_side(see.view), see.face);
        let there = there.into_iter().map(|mark| mark.number);
        there
            .filter(|number| !shown(*number) && counts(*number))
            .collect()
    } else {
        Vec::new()
    };
    Picture {
        marks,
        other_side,
        ..written(sheet)
    }
}

/// The side that is not looked at.
pub(crate) const fn other_side(view: View) -> View {
    match view {
        View::Front => View::Back,
        View::Back => View::Front,
    }
}

/// A sheet as a picture of the page.
pub(crate) fn written(sheet: Sheet) -> Picture {
    let corner = sheet.origin;
    let (wide, tall) = (sheet.width.to_mm(), sheet.height.to_mm());
    Picture {
        caption: String::new(),
        on_paper: false,
        frame: format!("{:.2} {:.2} {wide:.2} {tall:.2}", corner.x, corner.y),
        marks: Vec::new(),
        other_side: Vec::new(),
        grips: Vec::new(),
        below: Vec::new(),
        tapes: Vec::new(),
        svg: untitled(drawing::svg(&sheet)),
        title: sheet.title,
    }
}

/// A title inside a drawing pops up over all of it; the page says it beside the drawing instead, and whoever does not see
/// the drawing hears it as its name. The sheet keeps its own until it is written, because the names of its clips come from
/// it and no two drawings of a page may share those.
fn untitled(mut svg: String) -> String {
    const START: &str = "<title>";
    const END: &str = "</title>";
    const ROLE: &str = "role=\"img\"";
    let Some((start, end)) = svg.find(START).zip(svg.find(END)) else {
        return svg;
    };
    let title = svg.get(start + START.len()..end).unwrap_or_default();
    // The writer has escaped it for either place.
    let named = format!("{ROLE} aria-label=\"{title}\"");
    svg.replace_range(start..end + END.len(), "");
    svg.replacen(ROLE, &named, 1)
}
