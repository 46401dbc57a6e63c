//! Whether buttons, buttonholes and zip fit the band and the fly.

use draft::{Finding, Severity};
use style::Closing;
use trade::Length;
use trade::hardware::buttonhole_length;

use crate::context::{Context, finding, mm, with_remedy};
use crate::fixings::{BAND_HOLE_FROM_END, FLY_HOLE_FROM_EDGE};

/// Cloth between two buttons, or between a button and an edge (common practice).
const ROOM: Length = Length::mm(3.0);

pub(super) fn findings(context: &Context<'_>) -> Vec<Finding> {
    let mut out: Vec<Finding> = band_button(context).into_iter().collect();
    match context.doc.fly.closing {
        Closing::Buttons => {
            out.extend(holes_in_stitching(context));
            out.extend(buttons_crowded(context));
        }
        Closing::Zip => out.extend(zip(context)),
    }
    out
}

fn diameter(context: &Context<'_>, key: &str) -> Option<Length> {
    context.collection.trims.get(key)?.diameter
}

fn band_button(context: &Context<'_>) -> Option<Finding> {
    let size = diameter(context, &context.doc.fly.band_button)?;
    let spec = &context.pattern.spec;
    let needs = BAND_HOLE_FROM_END + size / 2.0 + ROOM;
    let about = "band button";
    if spec.band_overlap < needs {
        let found = finding(
            context,
            "sewing::band-button",
            Severity::Warning,
            about,
            format!(
                "the overlap of {} is too short for a button of {} set {} beyond the centre front",
                mm(spec.band_overlap),
                mm(size),
                mm(BAND_HOLE_FROM_END)
            ),
        );
        return Some(with_remedy(found, format!("at least {}", mm(needs))));
    }
    (spec.band_height < size + ROOM * 2.0).then(|| {
        finding(
            context,
            "sewing::band-button",
            Severity::Warning,
            about,
            format!(
                "a band of {} leaves no room above and below a button of {}",
                mm(spec.band_height),
                mm(size)
            ),
        )
    })
}

/// The holes of a button fly end before the topstitching that holds their facing.
fn holes_in_stitching(context: &Context<'_>) -> Option<Finding> {
    let size = diameter(context, context.doc.fly.button.as_deref()?)?;
    let end = FLY_HOLE_FROM_EDGE + buttonhole_length(size);
    let rows = &context.seam("fly")?.rows;
    let nearest = rows
        .iter()
        .map(|r| r.offset)
        .filter(|offset| *offset > FLY_HOLE_FROM_EDGE)
        .min_by(Length::total_cmp)?;
    (nearest < end).then(|| {
        with_remedy(
            finding(
                context,
                "sewing::fly-holes",
                Severity::Warning,
                "fly",
                format!(
                    "a row at {} crosses the buttonholes, which end {} from the fly edge",
                    mm(nearest),
                    mm(end)
                ),
            ),
            "move the row outward, widen the fly, or choose a smaller button",
        )
    })
}

fn buttons_crowded(context: &Context<'_>) -> Option<Finding> {
    let fly = &context.doc.fly;
    let size = diameter(context, fly.button.as_deref()?)?;
    let gap = context.pattern.spec.fly_length / (f64::from(fly.buttons) + 1.0);
    (fly.buttons > 0 && gap < size + ROOM).then(|| {
        with_remedy(
            finding(
                context,
                "sewing::fly-buttons",
                Severity::Warning,
                "fly",
                format!(
                    "{} buttons of {} stand only {} apart",
                    fly.buttons,
                    mm(size),
                    mm(gap)
                ),
            ),
            "fewer buttons, or a longer fly",
        )
    })
}

/// The zip ends inside the tack at the foot of the fly.
fn zip(context: &Context<'_>) -> Option<Finding> {
    let zip = context.doc.fly.zip.as_deref()?;
    let length = context.collection.trims.get(zip)?.length?;
    let fly = context.pattern.spec.fly_length;
    (length > fly).then(|| Finding {
        source: "usual zip lengths, from memory",
        ..with_remedy(
            finding(
                context,
                "sewing::zip-length",
                Severity::Warning,
                "zip",
                format!("the zip is {} long and the fly {}", mm(length), mm(fly)),
            ),
            format!(
                "about {}: half an inch less than the fly",
                mm(fly - Length::inches(0.5))
            ),
        )
    })
}
