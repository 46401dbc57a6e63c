//! The patch on the band and the sewn-in labels.

use draft::{EdgeId, Finding, PieceId, PointId, Severity};
use geometry::{Point, Vec2};
use style::{Label, LabelFold, MeasureId, PartId, Purpose, Subject, Trim};
use trade::{Length, Unwashed};
use words::{key, say};

use super::setting::fixing;
use crate::context::{Context, finding, with_remedy};
use crate::garment::{Fixing, FixingKind, Garment, On};

/// A patch taller than the band keeps this far below its top edge.
const BELOW_TOP_MM: f64 = 3.0;

/// Between two labels side by side, and below the pocket bag.
const GAP_MM: f64 = 5.0;

/// A label where the trim does not say how large it is.
const USUAL_LABEL: (Length, Length) = (Length::mm(50.0), Length::mm(25.0));

/// A patch where the trim does not say how large it is (2 1/2 to 3 by 2 to 2 1/4 inches, from memory).
const USUAL_PATCH: (Length, Length) = (Length::mm(70.0), Length::mm(54.0));

fn extent(trim: Option<&Trim>, usual: (Length, Length)) -> (Length, Length) {
    trim.map_or(usual, |t| {
        (t.width.unwrap_or(usual.0), t.height.unwrap_or(usual.1))
    })
}

fn words(trim: Option<&Trim>) -> String {
    trim.map_or_else(String::new, |t| t.text.clone())
}

/// What a label says in this size: its own text, else the size on a size label, else the trim's text.
fn label_words(context: &Context<'_>, label: &Label) -> String {
    let sized = || {
        let says_size = label.purpose.contains(&Purpose::Size);
        says_size.then(|| context.size.to_string())
    };
    let trim = context.collection.trims.get(&label.trim);
    label
        .text
        .clone()
        .or_else(sized)
        .unwrap_or_else(|| words(trim))
}

/// The patch: on the wearer's right, midway up the band, clear of the rows along its edges. One taller than the band
/// starts just below the top edge and hangs over the seam.
pub(super) fn patch(context: &Context<'_>, findings: &mut Vec<Finding>) -> Option<Fixing> {
    let patch = context.doc.patch.as_ref()?;
    let trim = context.collection.trims.get(&patch.trim);
    let (width, height) = extent(trim, USUAL_PATCH);
    let centre = context
        .pattern
        .piece(PieceId::Band)?
        .point(PointId::CentreBack)?;
    let band = context.pattern.spec[MeasureId::BandHeight];
    let hangs = height + Length::mm(BELOW_TOP_MM) - band;
    let middle = if height <= band {
        band.to_mm() / 2.0
    } else {
        findings.push(finding(
            context,
            "sewing::patch-hangs",
            Severity::Note,
            PartId::Patch,
            say::SewingLabelsPatch {
                band: band.in_mm(1),
                hangs: hangs.in_mm(1),
                height: height.in_mm(1),
            },
        ));
        band.to_mm() - BELOW_TOP_MM - height.to_mm() / 2.0
    };
    let x = centre.x + (patch.from_centre + width / 2.0).to_mm();
    Some(fixing(
        FixingKind::Patch(width, height, words(trim)),
        PieceId::Band,
        On::AsDrawn,
        Point::new(x, middle),
        Vec2::new(1.0, 0.0),
        (patch.trim.as_str().into(), context.trim_colour(&patch.trim)),
    ))
}

/// The patch as it lies on the band.
pub(crate) fn patch_on_band(context: &Context<'_>) -> Option<Fixing> {
    patch(context, &mut Vec::new())
}

/// A label on the inner face of the band, and how it is folded.
pub(crate) struct OnBand {
    pub fixing: Fixing,
    pub fold: LabelFold,
}

/// The labels on the band, in the order of the style.
pub(crate) fn labels_on_band(context: &Context<'_>) -> Vec<OnBand> {
    laid(context, &mut Vec::new())
        .into_iter()
        .filter(|(_, fixing)| fixing.piece == PieceId::Band)
        .map(|(label, fixing)| OnBand {
            fixing,
            fold: label.fold,
        })
        .collect()
}

/// Where a label is sewn.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Place {
    /// On the inner face of the band, its middle this far along the join.
    Band(f64),
    /// In the outseam of the left or right front, below the pocket bag.
    SideSeam(On),
}

pub(super) fn labels(context: &Context<'_>, findings: &mut Vec<Finding>) -> Vec<Fixing> {
    let labels = laid(context, findings).into_iter();
    labels.map(|(_, fixing)| fixing).collect()
}

/// Every label that has a place, with that place.
fn laid<'a>(context: &Context<'a>, findings: &mut Vec<Finding>) -> Vec<(&'a Label, Fixing)> {
    let mut out = Vec::new();
    // The first label on the band is the main one; others are placed beside it.
    let mut main: Option<(f64, f64)> = None;
    for label in &context.doc.labels {
        let trim = context.collection.trims.get(&label.trim);
        let (width, height) = extent(trim, USUAL_LABEL);
        match place(context, &label.place, width, main) {
            Some(Place::Band(x)) => {
                main.get_or_insert((x, width.to_mm()));
                findings.extend(too_high(context, label, height));
                out.push((label, on_band(context, label, x, width, height)));
            }
            Some(Place::SideSeam(on)) => {
                let fixing = in_seam(context, label, on, width, height);
                out.extend(fixing.map(|fixing| (label, fixing)));
            }
            None => findings.push(with_remedy(
                finding(
                    context,
                    "sewing::label-place",
                    Severity::Warning,
                    Subject::Label(label.trim.clone()),
                    say::SewingLabelsLaid {
                        place: label.place.to_string(),
                    },
                ),
                key::SEWING_LABELS_LAID_2,
            )),
        }
    }
    out
}

fn too_high(context: &Context<'_>, label: &Label, height: Length) -> Option<Finding> {
    let band = context.pattern.spec[MeasureId::BandHeight];
    (height > band).then(|| {
        finding(
            context,
            "sewing::label-high",
            Severity::Note,
            Subject::Label(label.trim.clone()),
            say::SewingLabelsTooHigh {
                band: band.in_mm(1),
                height: height.in_mm(1),
            },
        )
    })
}

/// Reads a place from its words. Left and right are the wearer's.
fn place(
    context: &Context<'_>,
    words: &str,
    width: Length,
    main: Option<(f64, f64)>,
) -> Option<Place> {
    let words = words.to_lowercase();
    let says = |word: &str| words.contains(word);
    if says("side seam") {
        // Fronts are drawn as the left.
        return match (says("left"), says("right")) {
            (true, false) => Some(Place::SideSeam(On::AsDrawn)),
            (false, true) => Some(Place::SideSeam(On::Mirrored)),
            _ => None,
        };
    }
    if !says("band") || says("outside") {
        return None;
    }
    let band = context.pattern.piece(PieceId::Band)?;
    let centre = band.point(PointId::CentreBack)?.x;
    let beside = |side: f64| {
        let (x, main_width) = main.unwrap_or((centre, 0.0));
        x + side * ((main_width + width.to_mm()) / 2.0 + GAP_MM)
    };
    let x = if says("centre back") {
        centre
    } else if says("right of") {
        beside(1.0)
    } else if says("left of") {
        beside(-1.0)
    } else if says("right side") {
        band.point(PointId::SideRight)?.x
    } else if says("left side") {
        band.point(PointId::SideLeft)?.x
    } else {
        return None;
    };
    Some(Place::Band(x))
}

/// On the inner face, which lies above the fold in the unfolded band: upside down in its frame.
fn on_band(context: &Context<'_>, label: &Label, x: f64, width: Length, height: Length) -> Fixing {
    let middle = context.pattern.spec[MeasureId::BandHeight].to_mm() * 1.5;
    Fixing {
        outside: false,
        inside: true,
        ..fixing(
            FixingKind::Label(width, height, label_words(context, label)),
            PieceId::Band,
            On::AsDrawn,
            Point::new(x, middle),
            Vec2::new(-1.0, 0.0),
            (label.trim.as_str().into(), context.trim_colour(&label.trim)),
        )
    }
}

/// How far the upper edge of a label caught in an outseam is below the band seam, along the outseam of a garment as it is
/// sewn; none for a label anywhere else.
pub fn label_below_band(sewn: &Garment, label: &Fixing) -> Option<Unwashed<Length>> {
    let FixingKind::Label(_, height, _) = &label.kind else {
        return None;
    };
    let front = sewn.pattern.piece(PieceId::Front)?;
    let side = (label.piece == PieceId::Front).then(|| front.edge(EdgeId::Side))??;
    let from_top = side.length() - side.nearest(label.at).0;
    let mouth = sewn.pattern.spec[MeasureId::MouthDepth];
    Some(Unwashed::new(from_top - *height / 2.0 + mouth))
}

/// Caught in the outseam of a front below the pocket bag, lying towards the front.
fn in_seam(
    context: &Context<'_>,
    label: &Label,
    on: On,
    width: Length,
    height: Length,
) -> Option<Fixing> {
    let spec = &context.pattern.spec;
    let side = context.pattern.piece(PieceId::Front)?.edge(EdgeId::Side)?;
    let below = spec.bag_depth - spec[MeasureId::MouthDepth] + Length::mm(GAP_MM) + height / 2.0;
    let along = side.length() - below;
    let inward = geometry::left_of(side.direction_at(along));
    Some(Fixing {
        outside: false,
        inside: true,
        ..fixing(
            FixingKind::Label(width, height, label_words(context, label)),
            PieceId::Front,
            on,
            side.point_at(along) + inward * (width.to_mm() / 2.0),
            inward,
            (label.trim.as_str().into(), context.trim_colour(&label.trim)),
        )
    })
}
