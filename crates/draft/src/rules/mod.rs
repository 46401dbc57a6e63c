//! The rules a sound set of trouser pieces keeps, checked on the drafted pieces of one size.
//!
//! Each rule is a row of [`RULES`]: its code, its title, where its number comes from and the
//! function that looks. A line that must be equal to another and is not is an error; a number
//! outside the range drafts usually have is a warning, because the maker may want it so.

mod case;
mod chart;
mod corners;
mod crotch;
mod lines;
mod pieces;
mod seams;
#[cfg(test)]
mod tests;

use style::{PartId, Size, StyleDoc};
use trade::Length;
use words::{Key, Said, key, say};

pub use corners::{Corner, Joint, corners, joints};

use self::case::{Broken, Case, beyond};
use crate::drafted::Drafted;
use crate::finding::{Finding, Severity};
use crate::fit::MET_MM;
use crate::pattern::{FromFile, Pattern};

/// One rule.
#[derive(Clone, Copy)]
pub struct Rule {
    /// Stable code, such as `fit::outseam-walk`.
    pub code: &'static str,
    /// What the rule demands, in a few words.
    pub title: Key,
    /// Where the rule and its numbers come from.
    pub source: Key,
    /// What has to be looked at.
    reads: Reads,
    check: fn(&Case<'_>) -> Vec<Broken>,
}

/// Whether a rule still means something when the chart could not be drafted.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Reads {
    /// The chart alone.
    Chart,
    /// The pieces, which are only a compromise when the chart is in conflict.
    Pieces,
}

/// Every rule, the seams first.
pub const RULES: &[Rule] = &[
    Rule {
        code: "fit::outseam-walk",
        title: key::FIT_RULE_OUTSEAM_WALK,
        source: key::FIT_SOURCE_OUTSEAM_WALK,
        reads: Reads::Pieces,
        check: seams::outseam,
    },
    Rule {
        code: "fit::inseam-below-knee",
        title: key::FIT_RULE_INSEAM_BELOW_KNEE,
        source: key::FIT_SOURCE_INSEAM_BELOW_KNEE,
        reads: Reads::Pieces,
        check: seams::inseam_below_knee,
    },
    Rule {
        code: "fit::inseam-stretch",
        title: key::FIT_RULE_INSEAM_STRETCH,
        source: key::FIT_SOURCE_INSEAM_STRETCH,
        reads: Reads::Pieces,
        check: seams::inseam_stretch,
    },
    Rule {
        code: "fit::crotch-drop",
        title: key::FIT_RULE_CROTCH_DROP,
        source: key::FIT_SOURCE_CROTCH_DROP,
        reads: Reads::Pieces,
        check: crotch::drop,
    },
    Rule {
        code: "fit::crotch-level",
        title: key::FIT_RULE_CROTCH_LEVEL,
        source: key::FIT_SOURCE_CROTCH_LEVEL,
        reads: Reads::Pieces,
        check: crotch::level,
    },
    Rule {
        code: "fit::crotch-smooth",
        title: key::FIT_RULE_CROTCH_SMOOTH,
        source: key::SOURCE_COMMON_PRACTICE,
        reads: Reads::Pieces,
        check: crotch::smooth,
    },
    Rule {
        code: "fit::line-smooth",
        title: key::FIT_RULE_LINE_SMOOTH,
        source: key::SOURCE_COMMON_PRACTICE,
        reads: Reads::Pieces,
        check: lines::smooth,
    },
    Rule {
        code: "fit::corner-square",
        title: key::FIT_RULE_CORNER_SQUARE,
        source: key::SOURCE_COMMON_PRACTICE,
        reads: Reads::Pieces,
        check: lines::square,
    },
    Rule {
        code: "fit::crotch-curve",
        title: key::FIT_RULE_CROTCH_CURVE,
        source: key::FIT_SOURCE_CROTCH_CURVE,
        reads: Reads::Pieces,
        check: crotch::curve,
    },
    Rule {
        code: "fit::yoke-walk",
        title: key::FIT_RULE_YOKE_WALK,
        source: key::SOURCE_COMMON_PRACTICE,
        reads: Reads::Pieces,
        check: seams::yoke,
    },
    Rule {
        code: "fit::band-walk",
        title: key::FIT_RULE_BAND_WALK,
        source: key::FIT_SOURCE_BAND_WALK,
        reads: Reads::Pieces,
        check: seams::band,
    },
    Rule {
        code: "fit::band-overlap",
        title: key::FIT_RULE_BAND_OVERLAP,
        source: key::FIT_SOURCE_BAND_OVERLAP,
        reads: Reads::Pieces,
        check: seams::overlap,
    },
    Rule {
        code: "fit::crease",
        title: key::FIT_RULE_CREASE,
        source: key::FIT_SOURCE_CREASE,
        reads: Reads::Pieces,
        check: lines::crease,
    },
    Rule {
        code: "fit::leg-taper",
        title: key::FIT_RULE_LEG_TAPER,
        source: key::SOURCE_COMMON_PRACTICE,
        reads: Reads::Pieces,
        check: lines::taper,
    },
    Rule {
        code: "fit::balance",
        title: key::FIT_RULE_BALANCE,
        source: key::FIT_SOURCE_BALANCE,
        reads: Reads::Pieces,
        check: crotch::balance,
    },
    Rule {
        code: "fit::seat-slope",
        title: key::FIT_RULE_SEAT_SLOPE,
        source: key::FIT_SOURCE_SEAT_SLOPE,
        reads: Reads::Pieces,
        check: crotch::seat_slope,
    },
    Rule {
        code: "fit::rise-difference",
        title: key::FIT_RULE_RISE_DIFFERENCE,
        source: key::FIT_SOURCE_RISE_DIFFERENCE,
        reads: Reads::Chart,
        check: chart::rise_difference,
    },
    Rule {
        code: "fit::seat-share",
        title: key::FIT_RULE_SEAT_SHARE,
        source: key::FIT_SOURCE_SEAT_SHARE,
        reads: Reads::Chart,
        check: chart::seat_share,
    },
    Rule {
        code: "fit::pocket-facing",
        title: key::FIT_RULE_POCKET_FACING,
        source: key::FIT_SOURCE_POCKET_FACING,
        reads: Reads::Pieces,
        check: seams::pocket_facing,
    },
    Rule {
        code: "fit::outline",
        title: key::FIT_RULE_OUTLINE,
        source: key::FIT_SOURCE_OUTLINE,
        reads: Reads::Pieces,
        check: pieces::outlines,
    },
    Rule {
        code: "fit::front-extension",
        title: key::FIT_RULE_FRONT_EXTENSION,
        source: key::FIT_SOURCE_FRONT_EXTENSION,
        reads: Reads::Pieces,
        check: crotch::front_extension,
    },
    Rule {
        code: "fit::back-extension",
        title: key::FIT_RULE_BACK_EXTENSION,
        source: key::FIT_SOURCE_BACK_EXTENSION,
        reads: Reads::Pieces,
        check: crotch::back_extension,
    },
    Rule {
        code: "fit::fork",
        title: key::FIT_RULE_FORK,
        source: key::FIT_SOURCE_FORK,
        reads: Reads::Pieces,
        check: crotch::fork,
    },
    Rule {
        code: "fit::foot-passage",
        title: key::FIT_RULE_FOOT_PASSAGE,
        source: key::FIT_SOURCE_FOOT_PASSAGE,
        reads: Reads::Chart,
        check: chart::foot_passage,
    },
    Rule {
        code: "fit::seat-ease",
        title: key::FIT_RULE_SEAT_EASE,
        source: key::FIT_SOURCE_SEAT_EASE,
        reads: Reads::Chart,
        check: chart::seat_ease,
    },
    Rule {
        code: "fit::waist-for-size",
        title: key::FIT_RULE_WAIST_FOR_SIZE,
        source: key::FIT_SOURCE_WAIST_FOR_SIZE,
        reads: Reads::Chart,
        check: chart::waist_for_size,
    },
    Rule {
        code: "fit::inseam-for-size",
        title: key::FIT_RULE_INSEAM_FOR_SIZE,
        source: key::FIT_SOURCE_INSEAM_FOR_SIZE,
        reads: Reads::Chart,
        check: chart::inseam_for_size,
    },
];

/// Everything noticed about one drafted size, in the order of [`RULES`].
///
/// A chart that could not be drafted gives `fit::conflict`; the pieces are then a compromise, and
/// only the rules that read the chart alone are added.
pub fn findings(drafted: &Drafted, size: Size, doc: &StyleDoc) -> Vec<Finding> {
    let case = Case {
        pattern: &drafted.pattern,
        size,
        figure: doc.style.figure,
        fit: doc.style.fit,
        base: size == doc.sizes.base,
    };
    let mut found = contract(drafted, size, doc);
    let drafts = drafted.conflict.is_none();
    for rule in RULES.iter().filter(|r| drafts || r.reads == Reads::Chart) {
        let own = drafted.pattern.own.is_some();
        found.extend((rule.check)(&case).into_iter().map(|broken| Finding {
            code: rule.code,
            severity: judged(rule.code, broken.severity, own),
            subject: broken.subject,
            size: Some(size),
            found_in: None,
            message: broken.message,
            source: rule.source.into(),
            remedy: broken.remedy,
            edit: None,
            place: None,
            follows: false,
        }));
    }
    found
}

/// Whether no rule that reads the pieces finds an error in a size.
pub(crate) fn sound(drafted: &Drafted, size: Size, doc: &StyleDoc) -> bool {
    let pieces = |code| {
        RULES
            .iter()
            .any(|r| r.code == code && r.reads == Reads::Pieces)
    };
    let found = findings(drafted, size, doc);
    found.iter().all(|f| !(f.is_error() && pieces(f.code)))
}

/// How the leg hangs is the maker's own choice on a pattern of their own: there it is said, not judged.
const HANG: &[&str] = &["fit::crease", "fit::crotch-smooth"];

fn judged(code: &str, severity: Severity, own: bool) -> Severity {
    if own && HANG.contains(&code) {
        severity.min(Severity::Warning)
    } else {
        severity
    }
}

/// Differences below this are those of reading a file.
const READ_AS: Length = Length::mm(0.1);

/// What a pattern of the maker's own measures beside the chart. The pattern is what is cut, so a
/// difference is said and not judged.
fn beside_chart(pattern: &Pattern, size: Size, doc: &StyleDoc) -> Vec<Finding> {
    const SOURCE: Key = key::FIT_SOURCE_BESIDE;
    let off = pattern.measures().into_iter().filter_map(|m| {
        let chart = m.chart?;
        let off = m.pattern - chart;
        let allowed = doc.tolerance(m.measure);
        let severity = if beyond(off.abs().to_mm(), allowed.to_mm()) {
            Severity::Warning
        } else if beyond(off.abs().to_mm(), READ_AS.to_mm()) {
            Severity::Note
        } else {
            return None;
        };
        let allowed = allowed.in_cm(2);
        let (chart, pattern) = (chart.in_cm(2), m.pattern.in_cm(2));
        let (more, off) = (off > Length::ZERO, off.abs().in_cm(2));
        let message: Said = if more {
            say::FitOwnMore {
                allowed,
                chart,
                off,
                pattern,
            }
            .into()
        } else {
            say::FitOwnLess {
                allowed,
                chart,
                off,
                pattern,
            }
            .into()
        };
        let finding = Finding::new("pattern::measure", severity, m.measure, message, SOURCE)
            .of_size(size)
            .help(key::FIT_OWN_MEASURE_HELP);
        // The chart's values are those of the base size; other sizes follow by its grades.
        Some(if size == doc.sizes.base {
            finding.curing(&m.measure.path("value"), &pattern.to_string())
        } else {
            finding
        })
    });
    off.collect()
}

/// Which pieces the maker's own pattern does not hold.
fn laid_out(pattern: &Pattern, own: &FromFile, size: Size) -> Option<Finding> {
    let missing = pattern
        .pieces
        .iter()
        .filter(|piece| !own.pieces.contains(&piece.id))
        .map(|piece| Said::from(piece.id.within()))
        .reduce(|first, next| say::JoinedAlso { first, next }.into())?;
    let finding = Finding::new(
        "pattern::laid-out",
        Severity::Note,
        PartId::OwnPattern,
        say::FitOwnLaidOut {
            file: own.file.to_string(),
            missing,
        },
        key::FIT_SOURCE_OWN,
    );
    Some(finding.of_size(size))
}

/// Whether the pattern is what the chart asks for.
fn contract(drafted: &Drafted, size: Size, doc: &StyleDoc) -> Vec<Finding> {
    const SOURCE: Key = key::FIT_SOURCE_CONTRACT;
    if let Some(why) = &drafted.unused {
        return vec![
            Finding::new(
                "pattern::unused",
                Severity::Error,
                PartId::OwnPattern,
                say::FitOwnUnused { reason: why },
                key::FIT_SOURCE_OWN,
            )
            .of_size(size)
            .help(key::FIT_OWN_UNUSED_HELP),
        ];
    }
    if let Some(own) = &drafted.pattern.own {
        let mut found = beside_chart(&drafted.pattern, size, doc);
        found.extend(laid_out(&drafted.pattern, own, size));
        return found;
    }
    if let Some(conflict) = &drafted.conflict {
        return vec![Finding {
            code: "fit::conflict",
            severity: Severity::Error,
            subject: PartId::Chart.into(),
            size: Some(size),
            found_in: None,
            message: say::FitConflict {
                reason: conflict.reason.clone(),
            }
            .into(),
            source: SOURCE.into(),
            remedy: None,
            edit: None,
            place: None,
            follows: false,
        }];
    }
    let missed = drafted.pattern.measures().into_iter().filter_map(|m| {
        let chart = m.chart?;
        let off = m.pattern - chart;
        beyond(off.abs().to_mm(), MET_MM).then(|| Finding {
            code: "fit::measure-missed",
            severity: Severity::Error,
            subject: m.measure.into(),
            size: Some(size),
            found_in: None,
            message: say::FitMeasureMissed {
                chart: chart.in_cm(2),
                pattern: m.pattern.in_cm(2),
            }
            .into(),
            source: SOURCE.into(),
            remedy: None,
            edit: None,
            place: None,
            follows: false,
        })
    });
    missed.collect()
}
