//! Rows of stitches: where they run, how dense they are, and how they end.

use draft::PieceId;
use style::{Construction, MeasureId, RowSpec, Seam, SeamId, Subject};
use trade::{Length, StitchDensity, StitchType};
use words::{Key, Said, key, say};

use super::case::{Broken, Case};
use crate::allowance::{EDGE_MARGIN, FELL_WIDTH, allowances};
use crate::garment::RowEnd;
use crate::joining::JOINING;
use crate::seam::{Strain, facts};

/// A visible row nearer to its edge than this slips off the fold.
const NEAREST_TO_EDGE: Length = Length::mm(1.0);

/// A stitch shorter than this many diameters of its needle yarn is crowded. In each stitch the yarn goes down and up
/// beside the under yarn; in a chain the loop of the stitch before lies there too. From memory: topstitching of tex 105
/// is sewn to some 14 stitches to the inch, chained to some 12; a sewn sample decides.
const fn least_pitch(stitch: StitchType) -> f64 {
    match stitch {
        StitchType::S101 | StitchType::S401 | StitchType::S404 => 5.0,
        StitchType::S301
        | StitchType::S304
        | StitchType::S406
        | StitchType::S503
        | StitchType::S504
        | StitchType::S505
        | StitchType::S512
        | StitchType::S514
        | StitchType::S515
        | StitchType::S516
        | StitchType::S602
        | StitchType::S605
        | StitchType::S607 => 4.0,
    }
}

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

/// An overedge round the cut edge of a facing that is laid flat on its bag.
fn wraps_laid_edge(seam: &Seam, row: &RowSpec) -> bool {
    seam.id == SeamId::FacingSet
        && seam.construction == Construction::LaidOn
        && row.stitch.is_overedge()
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
        if joins(seam, row) || wraps_laid_edge(seam, row) || off >= NEAREST_TO_EDGE {
            return None;
        }
        let said = say::SewingRowsNearEdge {
            offset: row.offset.in_mm(1),
        };
        Some(Broken::warning(about, said).help(key::SEWING_ROWS_NEAR_EDGE_HELP))
    })
}

/// What a row of this construction has to catch lies this far from the seam line at most.
fn reach(case: &Case<'_>, seam: &Seam) -> Option<(Length, Key)> {
    let spec = &case.context.pattern.spec;
    let allowance = allowances(seam, spec[MeasureId::HemDepth]).over;
    let faced_with = facts(seam.id).turned.map(|turned| turned.faced_with);
    Some(match (seam.construction, faced_with) {
        (Construction::TurnedEdge, Some(PieceId::FlyFacing)) => {
            (spec[MeasureId::FlyWidth], key::SEWING_ROWS_REACH)
        }
        (Construction::TurnedEdge, _) => (
            case.context.doc.pockets.bag.facing,
            key::SEWING_ROWS_REACH_2,
        ),
        (Construction::BandOverEdge | Construction::BandTurned, _) => {
            (spec[MeasureId::BandHeight], key::SEWING_ROWS_REACH_3)
        }
        (Construction::RolledHem | Construction::FoldedHem, _) => {
            (spec[MeasureId::HemDepth], key::SEWING_ROWS_REACH_4)
        }
        (Construction::Strip, _) => (spec[MeasureId::LoopWidth], key::SEWING_ROWS_REACH_5),
        (Construction::LapFelled, _) => (FELL_WIDTH.1 - EDGE_MARGIN, key::SEWING_ROWS_REACH_6),
        (
            Construction::MockFelled
            | Construction::SafetyStitched
            | Construction::Overlocked
            | Construction::PressedOpen
            | Construction::CleanFinished
            | Construction::PatchSet,
            _,
        ) => (allowance, key::SEWING_ROWS_REACH_7),
        (Construction::LaidOn, _) if seam.id == SeamId::FacingSet => {
            (case.context.doc.pockets.bag.facing, key::SEWING_ROWS_REACH)
        }
        (Construction::LaidOn, _) => (laid_on(case, seam)? / 2.0, key::SEWING_ROWS_REACH_8),
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
        let said = say::SewingRowsBeyond {
            offset: row.offset.in_mm(1),
            reach: reach.in_mm(1),
            what,
        };
        let inside = (reach - EDGE_MARGIN).max(Length::ZERO);
        Some(
            Broken::warning(about, said).help(say::SewingRowsBeyondHelp {
                inside: inside.in_mm(1),
            }),
        )
    })
}

pub(super) fn crowded(case: &Case<'_>) -> Vec<Broken> {
    each(case, |_, row, about| {
        let pitch = row.density.pitch();
        let diameter = case.context.yarn(&row.yarn).diameter;
        let least = diameter * least_pitch(row.stitch);
        if pitch >= least {
            return None;
        }
        let said = say::SewingRowsCrowded {
            diameter: format!("{:.2}", diameter.to_mm()),
            pitch: pitch.in_mm(1),
        };
        let help = say::SewingRowsCrowdedHelp {
            least_pitch: least.in_mm(1),
            most: format!("{:.0}", (Length::inches(1.0) / least).floor()),
        };
        Some(Broken::warning(about, said).help(help))
    })
}

fn per_inch(density: StitchDensity) -> Said {
    say::SewingRowsPerInch {
        stitches: format!("{:.1}", density.to_per_inch()),
    }
    .into()
}

pub(super) fn open(case: &Case<'_>) -> Vec<Broken> {
    each(case, |seam, row, about| {
        let loaded = facts(seam.id).strain == Strain::Loaded;
        (loaded && row.density.to_per_inch() < LEAST_LOADED).then(|| {
            Broken::warning(
                about,
                say::SewingRowsOpen {
                    density: per_inch(row.density),
                },
            )
            .help(key::SEWING_ROWS_OPEN_HELP)
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
                say::SewingRowsHemDensity {
                    density: per_inch(row.density),
                },
            )
            .help(key::SEWING_ROWS_HEM_DENSITY_HELP)
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
                        say::SewingRowsGauge {
                            gap: gap.in_mm(1),
                            least_gauge: LEAST_GAUGE.in_mm(1),
                        },
                    )
                    .help(key::SEWING_ROWS_GAUGE_HELP)
                    .at(case.row_place(seam.id, index)),
                );
            }
        }
    }
    out
}

/// Only a lockstitch is sewn back over itself. A chain runs back from its last loop even where it is chained off; the
/// tail of an overedge holds once it is caught or sewn in.
pub(super) fn chain_end(case: &Case<'_>) -> Vec<Broken> {
    let mut out: Vec<Broken> = Vec::new();
    for row in case.rows {
        if row.stitch.sews_back() {
            continue;
        }
        let has = |end| row.begins == end || row.ends == end;
        let stitch = row.stitch.key();
        let overedge = row.stitch.is_overedge();
        let said: Said = if has(RowEnd::Backtacked) {
            say::SewingRowsNoReverse { stitch }.into()
        } else if has(RowEnd::ChainedOff) && !overedge {
            say::SewingRowsChainEnd { stitch }.into()
        } else {
            continue;
        };
        let about = Subject::Row(row.seam, row.number);
        if out.iter().all(|b| b.subject != about) {
            let help = if overedge {
                key::SEWING_ROWS_NO_REVERSE_HELP
            } else {
                key::SEWING_ROWS_CHAIN_END_HELP
            };
            let place = case.row_place(row.seam, row.number.saturating_sub(1));
            out.push(Broken::warning(about, said).help(help).at(place));
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
            key::SEWING_ROWS_UNDER_YARN_2
        } else if share > 1.0 + geometry::tolerance::ROUNDING {
            key::SEWING_ROWS_UNDER_YARN_3
        } else {
            return None;
        };
        Some(
            Broken::warning(
                about,
                say::SewingRowsUnderYarn {
                    how,
                    needle: needle.to_string(),
                    under: under.to_string(),
                },
            )
            .help(key::SEWING_ROWS_UNDER_YARN_HELP),
        )
    })
}

/// Overedge stitches wrap a cut edge; these constructions leave none free.
pub(super) fn misplaced(case: &Case<'_>) -> Vec<Broken> {
    use Construction as C;
    each(case, |seam, row, about| {
        let overedge = row.stitch.is_overedge();
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
        (overedge && no_edge && !wraps_laid_edge(seam, row)).then(|| {
            Broken::warning(
                about,
                say::SewingRowsMisplaced {
                    construction: seam.construction.to_string(),
                    stitch: row.stitch.key(),
                },
            )
            .help(key::SEWING_ROWS_MISPLACED_HELP)
        })
    })
}
