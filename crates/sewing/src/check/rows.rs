//! Rows of stitches: where they run, how dense they are, and how they end.

use draft::PieceId;
use style::{Construction, MeasureId, RowSpec, Seam, SeamId, Subject};
use trade::{Length, StitchDensity, StitchType};

use super::case::{Broken, Case};
use crate::allowance::{EDGE_MARGIN, FELL_WIDTH, allowances};
use crate::context::mm;
use crate::garment::RowEnd;
use crate::rows::JOINING;
use crate::seam::{Strain, facts};

/// A visible row nearer to its edge than this slips off the fold.
const NEAREST_TO_EDGE: Length = Length::mm(1.0);

/// A stitch shorter than this many diameters of its yarn is crowded.
const LEAST_PITCH: f64 = 2.5;

/// The narrowest usual distance of two needles, 1/8 inch.
const LEAST_GAUGE: Length = Length::mm(3.1);

/// Stitches to an inch a loaded seam of denim has at least.
const LEAST_LOADED: f64 = 6.0;

/// Stitches to an inch of a hem.
const HEM_USUAL: (f64, f64) = (5.5, 9.0);

/// Whether the row is the one that joins the plies, on the seam line.
pub(super) fn joins(seam: &Seam, row: &RowSpec) -> bool {
    let plain = matches!(
        seam.construction,
        Construction::PressedOpen
            | Construction::SafetyStitched
            | Construction::Overlocked
            | Construction::MockFelled
            | Construction::Surface
            | Construction::FrenchSeam
            | Construction::BandTurned
    );
    // The first row of a French seam lies beyond the seam line, inside the enclosed edges.
    let enclosed = seam.construction == Construction::FrenchSeam && row.offset < JOINING;
    enclosed || plain && row.offset.abs() < JOINING
}

/// Looks at every row of every seam.
fn each(case: &Case<'_>, look: impl Fn(&Seam, &RowSpec, Subject) -> Option<Broken>) -> Vec<Broken> {
    let mut out = Vec::new();
    for seam in case.context.seams {
        for (index, row) in seam.rows.iter().enumerate() {
            let about = Subject::Row(seam.id, index + 1);
            out.extend(look(seam, row, about).map(|b| b.at(case.row_place(seam.id, index))));
        }
    }
    out
}

pub(super) fn near_edge(case: &Case<'_>) -> Vec<Broken> {
    each(case, |seam, row, about| {
        // Beside a seam pressed open a row may lie on either ply.
        let off = match seam.construction {
            Construction::PressedOpen => row.offset.abs(),
            _ => row.offset,
        };
        if joins(seam, row) || off >= NEAREST_TO_EDGE {
            return None;
        }
        let said = format!(
            "runs {} from the edge and may slip off the fold",
            mm(row.offset)
        );
        Some(Broken::warning(about, said).help("1.6 mm is usual for a row along an edge"))
    })
}

/// What a row of this construction has to catch lies this far from the seam line at most.
fn reach(case: &Case<'_>, seam: &Seam) -> Option<(Length, &'static str)> {
    let spec = &case.context.pattern.spec;
    let allowance = allowances(seam, spec[MeasureId::HemDepth]).over;
    let faced_with = facts(seam.id).turned.map(|turned| turned.faced_with);
    Some(match (seam.construction, faced_with) {
        (Construction::TurnedEdge, Some(PieceId::FlyFacing)) => {
            (spec[MeasureId::FlyWidth], "the facing is this wide")
        }
        (Construction::TurnedEdge, _) => (
            case.context.doc.pockets.bag.facing,
            "the facing is this wide",
        ),
        (Construction::BandOverEdge | Construction::BandTurned, _) => {
            (spec[MeasureId::BandHeight], "the band is this high")
        }
        (Construction::RolledHem | Construction::FoldedHem, _) => {
            (spec[MeasureId::HemDepth], "the hem is this deep")
        }
        (Construction::Strip, _) => (spec[MeasureId::LoopWidth], "the loop is this wide"),
        (Construction::LapFelled, _) => (FELL_WIDTH.1 - EDGE_MARGIN, "a lap is at most this wide"),
        (
            Construction::MockFelled
            | Construction::SafetyStitched
            | Construction::Overlocked
            | Construction::PressedOpen
            | Construction::CleanFinished
            | Construction::PatchSet,
            _,
        ) => (allowance, "the allowance reaches this far"),
        (Construction::LaidOn, _) => (laid_on(case, seam)? / 2.0, "half of what is laid on"),
        _ => return None,
    })
}

/// The smallest side of what a seam sews on with its edges as they are.
fn laid_on(case: &Case<'_>, seam: &Seam) -> Option<Length> {
    let doc = case.context.doc;
    let trims: Vec<&str> = if seam.id == SeamId::PatchSet {
        doc.patch.iter().map(|patch| patch.trim.as_str()).collect()
    } else {
        doc.labels.iter().map(|label| label.trim.as_str()).collect()
    };
    let sides = trims
        .into_iter()
        .filter_map(|key| case.trim(key))
        .flat_map(|trim| [trim.width, trim.height])
        .flatten();
    sides.reduce(Length::min)
}

pub(super) fn beyond(case: &Case<'_>) -> Vec<Broken> {
    each(case, |seam, row, about| {
        let (reach, what) = reach(case, seam)?;
        if row.offset <= reach {
            return None;
        }
        let said = format!(
            "runs {} from the seam line, past what it should catch ({what}: {})",
            mm(row.offset),
            mm(reach)
        );
        let inside = (reach - EDGE_MARGIN).max(Length::ZERO);
        Some(Broken::warning(about, said).help(format!("at most {}", mm(inside))))
    })
}

pub(super) fn crowded(case: &Case<'_>) -> Vec<Broken> {
    each(case, |_, row, about| {
        let pitch = row.density.pitch();
        let diameter = case.context.yarn(&row.yarn).diameter;
        if pitch >= diameter * LEAST_PITCH {
            return None;
        }
        let said = format!(
            "a stitch of {} is too short for a yarn of {:.2} mm",
            mm(pitch),
            diameter.to_mm()
        );
        let help = format!("make it at least {}", mm(diameter * LEAST_PITCH));
        Some(Broken::warning(about, said).help(help))
    })
}

fn per_inch(density: StitchDensity) -> String {
    format!("{:.1} stitches to the inch", density.to_per_inch())
}

pub(super) fn open(case: &Case<'_>) -> Vec<Broken> {
    each(case, |seam, row, about| {
        let loaded = facts(seam.id).strain == Strain::Loaded;
        (loaded && row.density.to_per_inch() < LEAST_LOADED).then(|| {
            Broken::warning(
                about,
                format!(
                    "{} are few for a seam that is pulled",
                    per_inch(row.density)
                ),
            )
            .help("7 to 9 to the inch are usual")
        })
    })
}

pub(super) fn hem_density(case: &Case<'_>) -> Vec<Broken> {
    each(case, |seam, row, about| {
        let n = row.density.to_per_inch();
        let usual = (HEM_USUAL.0..=HEM_USUAL.1).contains(&n);
        (seam.id == SeamId::Hem && !usual).then(|| {
            Broken::note(
                about,
                format!("{} are unusual for a hem", per_inch(row.density)),
            )
            .help("6 to 8 to the inch; fewer stitches stand out more and pull the hem into ridges")
        })
    })
}

/// Rows of one seam that lie nearer to one another than two needles can stand.
pub(super) fn gauge(case: &Case<'_>) -> Vec<Broken> {
    let mut out = Vec::new();
    for seam in case.context.seams {
        for (index, row) in seam.rows.iter().enumerate() {
            for (before, other) in seam.rows[..index].iter().enumerate() {
                let gap = (row.offset - other.offset).abs();
                // An overedge is a pass of its own, beside the row that joins.
                let apart = row.stitch.is_overedge() != other.stitch.is_overedge();
                if gap >= LEAST_GAUGE || apart || joins(seam, row) != joins(seam, other) {
                    continue;
                }
                out.push(
                    Broken::warning(
                        Subject::Rows(seam.id, before + 1, index + 1),
                        format!(
                            "run {} apart; two needles stand at least {} apart",
                            mm(gap),
                            mm(LEAST_GAUGE)
                        ),
                    )
                    .help("6.4 mm (1/4 in) is the usual gauge")
                    .at(case.row_place(seam.id, index)),
                );
            }
        }
    }
    out
}

/// A chainstitch runs back from its last loop, and sewing back and forth does not hold it.
pub(super) fn chain_end(case: &Case<'_>) -> Vec<Broken> {
    use StitchType::{S101, S401, S404, S406};
    let mut out: Vec<Broken> = Vec::new();
    for row in case.rows {
        let chain = matches!(row.stitch, S101 | S401 | S404 | S406);
        let loose = row.begins == RowEnd::Backtacked || row.ends == RowEnd::Backtacked;
        let about = Subject::Row(row.seam, row.number);
        if chain && loose && out.iter().all(|b| b.subject != about) {
            out.push(
                Broken::warning(
                    about,
                    format!(
                        "a {} ends where no other seam catches it and runs back from its last loop",
                        row.stitch.name()
                    ),
                )
                .help("a lockstitch, 301, or carry the row into the next seam")
                .at(case.row_place(row.seam, row.number.saturating_sub(1))),
            );
        }
    }
    out
}

/// The finer yarn of a lockstitch breaks first, a heavier one below pulls the knot down.
pub(super) fn under_yarn(case: &Case<'_>) -> Vec<Broken> {
    each(case, |_, row, about| {
        let yarns = &case.context.collection.yarns;
        let (needle, under) = (yarns.get(&row.yarn)?.size, yarns.get(&row.under)?.size);
        if row.stitch != StitchType::S301 {
            return None;
        }
        // A hair of rounding is no difference.
        let share = under / needle;
        let how = if share < 0.5 - geometry::tolerance::ROUNDING {
            "less than half as heavy as"
        } else if share > 1.0 + geometry::tolerance::ROUNDING {
            "heavier than"
        } else {
            return None;
        };
        Some(
            Broken::warning(
                about,
                format!("the bobbin yarn of {under} is {how} the needle yarn of {needle}"),
            )
            .help("a bobbin yarn of half to all of the needle yarn's size"),
        )
    })
}

/// Overedge stitches wrap a cut edge; these constructions leave none free.
pub(super) fn misplaced(case: &Case<'_>) -> Vec<Broken> {
    use Construction as C;
    each(case, |seam, row, about| {
        let overedge = row.stitch.class_name().starts_with("class 500");
        let no_edge = matches!(
            seam.construction,
            C::LapFelled
                | C::FrenchSeam
                | C::BoundEdge
                | C::CleanFinished
                | C::BandTurned
                | C::RolledHem
                | C::FoldedHem
                | C::LaidOn
                | C::TurnedHem
                | C::TurnedEdge
                | C::PatchSet
                | C::BandOverEdge
                | C::Strip
                | C::Surface
        );
        (overedge && no_edge).then(|| {
            Broken::warning(
                about,
                format!(
                    "a {} wraps a cut edge, and {} has none within reach",
                    row.stitch.name(),
                    seam.construction
                ),
            )
            .help("301 or 401")
        })
    })
}
