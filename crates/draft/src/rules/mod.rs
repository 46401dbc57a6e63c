//! The rules a sound set of trouser pieces keeps, checked on the drafted pieces of one size.
//!
//! Each rule is a row of [`RULES`]: its code, its title, where its number comes from and the
//! function that looks. A line that must be equal to another and is not is an error; a number
//! outside the range drafts usually have is a warning, because the maker may want it so.

mod chart;
mod corners;
mod crotch;
mod lines;
mod pieces;
mod seams;
#[cfg(test)]
mod tests;

use style::{Figure, Fit, PartId, Size, StyleDoc, Subject};
use trade::{Angle, Length};
use words::Said;

pub use corners::{Corner, Joint, corners, joints};

use crate::finding::{Finding, Severity};
use crate::fit::MET_MM;
use crate::pattern::{Drafted, FromFile, Pattern};

/// One rule.
#[derive(Clone, Copy)]
pub struct Rule {
    /// Stable code, such as `fit::outseam-walk`.
    pub code: &'static str,
    /// What the rule demands, in a few words.
    pub title: &'static str,
    /// Where the rule and its numbers come from.
    pub source: &'static str,
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

/// What a rule looks at.
struct Case<'a> {
    pattern: &'a Pattern,
    size: Size,
    figure: Figure,
    fit: Fit,
    /// Whether this is the size the chart is stated at.
    base: bool,
}

/// A rule that does not hold, before code and source are added.
#[derive(Clone, Debug, PartialEq)]
struct Broken {
    severity: Severity,
    subject: Subject,
    message: String,
    remedy: Option<&'static str>,
}

impl Broken {
    fn new(severity: Severity, about: impl Into<Subject>, message: String) -> Broken {
        Broken {
            severity,
            subject: about.into(),
            message,
            remedy: None,
        }
    }

    fn error(about: impl Into<Subject>, message: String) -> Broken {
        Broken::new(Severity::Error, about, message)
    }

    fn warning(about: impl Into<Subject>, message: String) -> Broken {
        Broken::new(Severity::Warning, about, message)
    }

    fn note(about: impl Into<Subject>, message: String) -> Broken {
        Broken::new(Severity::Note, about, message)
    }

    fn help(mut self, remedy: &'static str) -> Broken {
        self.remedy = Some(remedy);
        self
    }
}

/// Every rule, the seams first.
pub const RULES: &[Rule] = &[
    Rule {
        code: "fit::outseam-walk",
        title: "front and back outseam are equally long, in all and between notches",
        source: "drafting books draw both side seams equally long; 1 mm in all and 0.5 mm between notches are common practice",
        reads: Reads::Pieces,
        check: seams::outseam,
    },
    Rule {
        code: "fit::inseam-below-knee",
        title: "front and back inseam are equally long from hem to knee",
        source: "drafting books draw both equally long; 0.5 mm is common practice",
        reads: Reads::Pieces,
        check: seams::inseam_below_knee,
    },
    Rule {
        code: "fit::inseam-stretch",
        title: "above the knee the back inseam is a little shorter and stretched on",
        source: "0.1 cm in the classic metric block, 0.4 cm in a proportional men's draft (both computed for this project); up to 1 cm in the trade, from memory",
        reads: Reads::Pieces,
        check: seams::inseam_stretch,
    },
    Rule {
        code: "fit::crotch-drop",
        title: "the back crotch point lies a little lower than the front one",
        source: "0.5 cm in the classic metric block, 1 cm in a proportional men's draft; 0 to 1.5 cm accepted for this project",
        reads: Reads::Pieces,
        check: crotch::drop,
    },
    Rule {
        code: "fit::crotch-level",
        title: "the lowest points of both crotch curves lie level",
        source: "half an inch in published fitting advice",
        reads: Reads::Pieces,
        check: crotch::level,
    },
    Rule {
        code: "fit::crotch-smooth",
        title: "the crotch line runs through the inseam without a corner",
        source: "common practice",
        reads: Reads::Pieces,
        check: crotch::smooth,
    },
    Rule {
        code: "fit::line-smooth",
        title: "lines run on through the seams they cross",
        source: "common practice",
        reads: Reads::Pieces,
        check: lines::smooth,
    },
    Rule {
        code: "fit::corner-square",
        title: "waist, hem and band meet their seams squarely",
        source: "common practice",
        reads: Reads::Pieces,
        check: lines::square,
    },
    Rule {
        code: "fit::crotch-curve",
        title: "the crotch curve turns one way and not too sharply",
        source: "common practice: radius of at least 3 cm in front and 5 cm behind",
        reads: Reads::Pieces,
        check: crotch::curve,
    },
    Rule {
        code: "fit::yoke-walk",
        title: "the yoke's lower edge is as long as the back's upper edge",
        source: "common practice",
        reads: Reads::Pieces,
        check: seams::yoke,
    },
    Rule {
        code: "fit::band-walk",
        title: "the band seam of the body is as long as the band, plus the stated ease",
        source: "common practice: ease of at most 0.5 % or 1 cm",
        reads: Reads::Pieces,
        check: seams::band,
    },
    Rule {
        code: "fit::band-overlap",
        title: "the band is longer than the waist by its overlap",
        source: "common practice: overlap of 3.5 to 4.5 cm",
        reads: Reads::Pieces,
        check: seams::overlap,
    },
    Rule {
        code: "fit::crease",
        title: "the grain runs down the crease, in the middle of knee and hem",
        source: "published advice on balancing a leg: symmetrical about the grain below the knee; 1 mm is common practice",
        reads: Reads::Pieces,
        check: lines::crease,
    },
    Rule {
        code: "fit::leg-taper",
        title: "inner and outer leg line taper alike, front and back",
        source: "common practice",
        reads: Reads::Pieces,
        check: lines::taper,
    },
    Rule {
        code: "fit::balance",
        title: "the back reaches further inward of the crease than the front, by half the difference of the crotch extensions",
        source: "computed for this project",
        reads: Reads::Pieces,
        check: crotch::balance,
    },
    Rule {
        code: "fit::seat-slope",
        title: "the seat seam slopes as jeans do",
        source: "7 to 10 degrees in trouser drafts, 15 in tailoring of the 1890s; 12 to 16 for jeans, from memory",
        reads: Reads::Pieces,
        check: crotch::seat_slope,
    },
    Rule {
        code: "fit::rise-difference",
        title: "the back rise is longer than the front rise by a usual amount",
        source: "published charts: 2 3/4 to 4 in, up to 14 cm when the front rise is low",
        reads: Reads::Chart,
        check: chart::rise_difference,
    },
    Rule {
        code: "fit::seat-share",
        title: "the back rise is a usual share of the whole crotch length",
        source: "back share of the body's crotch length, men 0.573 and women 0.551, computed from the ANSUR II survey for this project; 0.55 to 0.60 accepted",
        reads: Reads::Chart,
        check: chart::seat_share,
    },
    Rule {
        code: "fit::pocket-facing",
        title: "front and pocket facing together make the uncut front",
        source: "common practice: 0.5 mm",
        reads: Reads::Pieces,
        check: seams::pocket_facing,
    },
    Rule {
        code: "fit::outline",
        title: "pieces are closed, do not cross themselves, and their notches meet",
        source: "common practice: notches within 1 mm",
        reads: Reads::Pieces,
        check: pieces::outlines,
    },
    Rule {
        code: "fit::front-extension",
        title: "the front crotch reaches a usual share of the seat",
        source: "0.041 to 0.071 of the seat over the charts solved for this project; 0.035 to 0.075 accepted",
        reads: Reads::Pieces,
        check: crotch::front_extension,
    },
    Rule {
        code: "fit::back-extension",
        title: "the back crotch reaches a usual share of the seat",
        source: "0.070 to 0.107 of the seat over the charts solved for this project; 0.065 to 0.125 accepted",
        reads: Reads::Pieces,
        check: crotch::back_extension,
    },
    Rule {
        code: "fit::fork",
        title: "front and back crotch together reach a usual share of the seat",
        source: "0.110 to 0.178 of the seat over the charts solved for this project; 0.105 to 0.185 accepted",
        reads: Reads::Pieces,
        check: crotch::fork,
    },
    Rule {
        code: "fit::foot-passage",
        title: "the closed hem lets the heel through",
        source: "heel and ankle girth of the ANSUR II survey, men 34.4 cm and women 31.0 cm on average; limits computed for this project",
        reads: Reads::Chart,
        check: chart::foot_passage,
    },
    Rule {
        code: "fit::seat-ease",
        title: "the seat has the ease of its kind of fit",
        source: "charts of this project against the mean body of the ANSUR II survey; common practice",
        reads: Reads::Chart,
        check: chart::seat_ease,
    },
    Rule {
        code: "fit::waist-for-size",
        title: "the waist suits the number on the label",
        source: "published charts: as the label says to 2 in more; 2 in less to 5 in more accepted, from memory",
        reads: Reads::Chart,
        check: chart::waist_for_size,
    },
    Rule {
        code: "fit::inseam-for-size",
        title: "the inseam suits the number on the label",
        source: "published charts: as the label says; 2 in either way accepted, from memory",
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
            message: broken.message.into(),
            source: rule.source.into(),
            remedy: broken.remedy.map(Said::from),
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
    const SOURCE: &str = "the maker's own pattern beside the maker's own chart";
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
        let message = format!(
            "the pattern measures {}, the chart says {}: {} {}, with {} either way allowed",
            fine(m.pattern),
            fine(chart),
            fine(off.abs()),
            if off > Length::ZERO { "more" } else { "less" },
            fine(allowed)
        );
        let finding = Finding::new("pattern::measure", severity, m.measure, message, SOURCE)
            .of_size(size)
            .help("change the chart to what the pattern measures, or correct the pattern and bring it again");
        // The chart's values are those of the base size; other sizes follow by its grades.
        Some(if size == doc.sizes.base {
            finding.curing(&m.measure.path("value"), &fine(m.pattern))
        } else {
            finding
        })
    });
    off.collect()
}

/// Which pieces the maker's own pattern does not hold.
fn laid_out(pattern: &Pattern, own: &FromFile, size: Size) -> Option<Finding> {
    let missing: Vec<String> = pattern
        .pieces
        .iter()
        .filter(|piece| !own.pieces.contains(&piece.id))
        .map(|piece| piece.id.name().to_lowercase())
        .collect();
    let finding = Finding::new(
        "pattern::laid-out",
        Severity::Note,
        PartId::OwnPattern,
        format!(
            "{} holds no {}; they are laid out on its panels by the chart",
            own.file,
            missing.join("; ")
        ),
        "the maker's own pattern",
    );
    (!missing.is_empty()).then(|| finding.of_size(size))
}

/// Whether the pattern is what the chart asks for.
fn contract(drafted: &Drafted, size: Size, doc: &StyleDoc) -> Vec<Finding> {
    const SOURCE: &str = "the chart is the contract with the workroom";
    if let Some(why) = &drafted.unused {
        return vec![
            Finding::new(
                "pattern::unused",
                Severity::Error,
                PartId::OwnPattern,
                format!("the maker's own pattern could not be used, and the pieces are drafted from the chart: {why}"),
                "the maker's own pattern",
            )
            .of_size(size)
            .help("check corners and edges in [pattern], correct the pattern and bring it again"),
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
            message: conflict.to_string().into(),
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
            message: format!(
                "the pattern measures {}, the chart says {}",
                fine(m.pattern),
                fine(chart)
            )
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

/// Centimetres to a tenth, for sizes of things.
fn cm(length: Length) -> String {
    format!("{:.1} cm", length.to_cm())
}

/// Centimetres to a hundredth, for differences that should not be there.
fn fine(length: Length) -> String {
    format!("{:.2} cm", length.to_cm())
}

fn deg(angle: Angle) -> String {
    format!("{:.1}°", angle.to_deg())
}

/// Whether the value exceeds the limit; not a number exceeds every limit.
fn beyond(value: f64, limit: f64) -> bool {
    value > limit || value.is_nan()
}

/// Whether the value lies in the range; not a number lies in none.
fn within(value: f64, low: f64, high: f64) -> bool {
    (low..=high).contains(&value)
}
