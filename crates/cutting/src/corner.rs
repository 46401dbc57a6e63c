//! Which corner the cut line makes where two allowances meet, and why.
//!
//! At most corners one seam is sewn, or one edge turned, before the other. The allowance of the first
//! then lies folded while the second is sewn across it; its end has to be shaped on the flat piece so
//! that folded it ends flush with what it lies on. [`CORNER_RULES`] is the whole table.

use draft::EdgeId;
use geometry::Point;
use geometry::tolerance::ROUNDING;
use words::{Key, key};

use crate::allowance_lie::{EdgeLie, Lie, rank};

/// A corner turned by so much more than a right angle is still a right one.
const A_HAIR_RAD: f64 = 1e-6;

/// The four shapes of a corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum CornerKind {
    /// Both cut lines run on until they meet; where the allowance comes to lie on another piece, it is
    /// that piece's cut line that runs on.
    Full,
    /// The end of the allowance is square to the seam line.
    Squared,
    /// The end of the allowance changes course at a place square to the seam line: where one seam
    /// ends and another begins, or at the fold inside a felled seam.
    Stepped,
    /// The end of the allowance is the mirror image, over its fold, of the cut line it is folded onto.
    Mirrored,
}

impl CornerKind {
    /// All kinds.
    pub const ALL: [CornerKind; 4] = [
        CornerKind::Full,
        CornerKind::Squared,
        CornerKind::Stepped,
        CornerKind::Mirrored,
    ];

    /// What it is called.
    pub const fn key(self) -> Key {
        match self {
            CornerKind::Full => key::CORNER_FULL,
            CornerKind::Squared => key::CORNER_SQUARED,
            CornerKind::Stepped => key::CORNER_STEPPED,
            CornerKind::Mirrored => key::CORNER_MIRRORED,
        }
    }

    /// Its stable code, for programs.
    pub const fn code(self) -> &'static str {
        match self {
            CornerKind::Full => "full",
            CornerKind::Squared => "squared",
            CornerKind::Stepped => "stepped",
            CornerKind::Mirrored => "mirrored",
        }
    }
}

/// One line of the table of corners.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CornerRule {
    /// Stable name.
    pub key: &'static str,
    /// The shape.
    pub kind: CornerKind,
    /// Where it is used.
    pub when: Key,
    /// Why.
    pub why: Key,
}

macro_rules! rules {
    ($($name:ident: $key:literal, $kind:ident, $when:ident, $why:ident;)+) => {
        $(pub(crate) const $name: CornerRule = CornerRule {
            key: $key,
            kind: CornerKind::$kind,
            when: key::$when,
            why: key::$why,
        };)+
        /// Every rule by which corners are shaped. Common practice, after the order of sewing; that the
        /// ends of a seam laid open are cut square so that both plies match, and that turned edges
        /// mirror what lies beside them, is also how published sewing manuals true a pattern.
        pub const CORNER_RULES: &[CornerRule] = &[$($name),+];
    };
}

rules! {
    RUNS_ON: "runs-on", Full, CORNER_WHEN_RUNS_ON, CORNER_WHY_RUNS_ON;
    CHANGES: "changes", Stepped, CORNER_WHEN_CHANGES, CORNER_WHY_CHANGES;
    INWARD: "inward", Full, CORNER_WHEN_INWARD, CORNER_WHY_INWARD;
    TOGETHER: "together", Full, CORNER_WHEN_TOGETHER, CORNER_WHY_TOGETHER;
    BARE: "bare", Full, CORNER_WHEN_BARE, CORNER_WHY_BARE;
    SHARP: "sharp", Squared, CORNER_WHEN_SHARP, CORNER_WHY_SHARP;
    HEM: "hem", Mirrored, CORNER_WHEN_HEM, CORNER_WHY_HEM;
    HEM_ON_EDGE: "hem-on-cloth-edge", Full, CORNER_WHEN_HEM_ON_CLOTH_EDGE, CORNER_WHY_HEM_ON_CLOTH_EDGE;
    TURNED: "turned", Mirrored, CORNER_WHEN_TURNED, CORNER_WHY_TURNED;
    ACROSS_MIRROR: "across-mirrored", Mirrored, CORNER_WHEN_ACROSS_MIRRORED, CORNER_WHY_ACROSS_MIRRORED;
    ACROSS: "across", Full, CORNER_WHEN_ACROSS, CORNER_WHY_ACROSS;
    FELLED: "felled", Stepped, CORNER_WHEN_FELLED, CORNER_WHY_FELLED;
    OPENED: "opened", Squared, CORNER_WHEN_OPENED, CORNER_WHY_OPENED;
    OPENED_SHARP: "opened-sharp", Mirrored, CORNER_WHEN_OPENED_SHARP, CORNER_WHY_OPENED_SHARP;
}

/// One corner of a cut piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Corner {
    /// The corner of the sewn outline.
    pub at: Point,
    /// The edge that ends here.
    pub before: EdgeId,
    /// The edge that begins here.
    pub after: EdgeId,
    /// The rule that shaped it.
    pub rule: &'static CornerRule,
    /// The edge whose allowance is shaped at its end; `None` where no one edge is.
    pub shaped: Option<EdgeId>,
    /// The cut line round the corner, from the cut line of `before` to that of `after`, millimetres.
    pub line: Vec<Point>,
}

impl Corner {
    /// The shape.
    pub fn kind(&self) -> CornerKind {
        self.rule.kind
    }
}

/// What two edges are at a corner.
pub(crate) struct Meeting<'a> {
    /// Edge that ends, and edge that begins.
    pub lies: (&'a EdgeLie, &'a EdgeLie),
    /// How far the outline turns, in radians: positive outward corners.
    pub turn: f64,
    /// Whether either edge lies on the cloth's own edge.
    pub on_cloth_edge: (bool, bool),
}

/// Below this change of direction one edge counts as running smoothly into the next.
pub(crate) const SLIGHT_RAD: f64 = 0.2;

/// What shapes a corner: the rule and, where it is one edge's allowance that is shaped, whether that is
/// the edge that ends here.
pub(crate) struct Decision {
    pub rule: &'static CornerRule,
    pub first_is_before: bool,
}

/// The rule for a corner. `beside` is what lies beside the edge sewn first: `Some(true)` the other copy
/// of the same piece, `Some(false)` another piece, `None` nothing known.
pub(crate) fn decide(meeting: &Meeting<'_>, beside: impl Fn(bool) -> Option<bool>) -> Decision {
    let (before, after) = meeting.lies;
    let whole = |rule| Decision {
        rule,
        first_is_before: true,
    };
    if meeting.turn.abs() < SLIGHT_RAD {
        let same = (before.allowance - after.allowance).abs().to_mm() < ROUNDING;
        return whole(if same { &RUNS_ON } else { &CHANGES });
    }
    if meeting.turn < 0.0 {
        return whole(&INWARD);
    }
    let hemmed = |lie: &EdgeLie| matches!(lie.lie, Lie::Hemmed { .. });
    if hemmed(before) != hemmed(after) {
        let first_is_before = hemmed(before);
        let beside_edge = if first_is_before {
            meeting.on_cloth_edge.1
        } else {
            meeting.on_cloth_edge.0
        };
        return Decision {
            rule: if beside_edge { &HEM_ON_EDGE } else { &HEM },
            first_is_before,
        };
    }
    let (one, two) = (rank(before.seam), rank(after.seam));
    if one == two {
        return whole(&TOGETHER);
    }
    let first_is_before = one < two;
    let first = if first_is_before { before } else { after };
    let rule = match first.lie {
        Lie::None => &BARE,
        Lie::Turned => &TURNED,
        Lie::Hemmed { .. } => &HEM,
        Lie::Felled { .. } => &FELLED,
        Lie::Across => match beside(first_is_before) {
            Some(true) => &ACROSS_MIRROR,
            _ => &ACROSS,
        },
        // A hair under square still counts as square.
        Lie::Opened if meeting.turn <= std::f64::consts::FRAC_PI_2 + A_HAIR_RAD => &OPENED,
        Lie::Opened => &OPENED_SHARP,
    };
    Decision {
        rule,
        first_is_before,
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use style::SeamId;
    use trade::Length;

    fn lie(seam: Option<SeamId>, lie: Lie, mm: f64) -> EdgeLie {
        EdgeLie {
            seam,
            construction: None,
            lie,
            allowance: Length::mm(mm),
            over: None,
        }
    }

    fn rule(a: &EdgeLie, b: &EdgeLie, turn: f64) -> (&'static str, bool) {
        let meeting = Meeting {
            lies: (a, b),
            turn,
            on_cloth_edge: (false, false),
        };
        let decision = decide(&meeting, |_| None);
        (decision.rule.key, decision.first_is_before)
    }

    #[test]
    fn the_table_has_every_kind_and_no_name_twice() {
        for kind in CornerKind::ALL {
            assert!(CORNER_RULES.iter().any(|r| r.kind == kind), "{kind:?}");
        }
        for (k, rule) in CORNER_RULES.iter().enumerate() {
            assert!(CORNER_RULES.iter().skip(k + 1).all(|r| r.key != rule.key));
        }
    }

    #[test]
    fn the_seam_sewn_first_is_shaped() {
        let square = std::f64::consts::FRAC_PI_2;
        let outseam = lie(Some(SeamId::Outseam), Lie::Opened, 12.7);
        let band = lie(Some(SeamId::Band), Lie::Across, 9.5);
        let hem = lie(
            Some(SeamId::Hem),
            Lie::Hemmed {
                first: Length::mm(13.5),
            },
            27.0,
        );
        let yoke = lie(
            Some(SeamId::Yoke),
            Lie::Felled {
                lap: Length::mm(9.6),
            },
            17.7,
        );
        let seat = lie(Some(SeamId::Seat), Lie::Turned, 8.1);
        assert_eq!(rule(&outseam, &band, square - 0.05), ("opened", true));
        assert_eq!(rule(&outseam, &band, square + 0.05), ("opened-sharp", true));
        assert_eq!(rule(&hem, &outseam, square), ("hem", true));
        assert_eq!(rule(&outseam, &hem, square), ("hem", false));
        assert_eq!(rule(&yoke, &seat, square), ("felled", true));
        assert_eq!(rule(&seat, &yoke, square), ("felled", false));
        assert_eq!(rule(&seat, &band, square), ("turned", true));
        assert_eq!(rule(&seat, &seat, square), ("together", true));
        assert_eq!(rule(&seat, &band, -square), ("inward", true));
        assert_eq!(rule(&seat, &band, 0.0), ("changes", true));
    }
}
