//! The layers of the practice.

use crate::model::{LineKind, NotchKind};

pub(super) const CUT: u32 = 1;
pub(super) const TURN: u32 = 2;
pub(super) const CURVE: u32 = 3;
pub(super) const NOTCH: u32 = 4;
pub(super) const GRADE_REFERENCE: u32 = 5;
pub(super) const MIRROR: u32 = 6;
pub(super) const GRAIN: u32 = 7;
pub(super) const INTERNAL: u32 = 8;
pub(super) const STRIPE: u32 = 9;
pub(super) const PLAID: u32 = 10;
pub(super) const CUTOUT: u32 = 11;
pub(super) const DRILL: u32 = 13;
pub(super) const SEW: u32 = 14;
pub(super) const NOTE: u32 = 15;

/// The layer of a notch that is cut; a drawn one is an internal line.
pub(super) const fn of_notch(kind: NotchKind) -> u32 {
    match kind {
        NotchKind::Slit => NOTCH,
        NotchKind::T => 80,
        NotchKind::Castle => 81,
        NotchKind::Check => 82,
        NotchKind::U => 83,
        NotchKind::Drawn => INTERNAL,
    }
}

/// The notch of a layer.
pub(super) const fn notch(layer: u32) -> Option<NotchKind> {
    match layer {
        NOTCH => Some(NotchKind::Slit),
        80 => Some(NotchKind::T),
        81 => Some(NotchKind::Castle),
        82 => Some(NotchKind::Check),
        83 => Some(NotchKind::U),
        _ => None,
    }
}

/// The layer of a line that is drawn and not cut.
pub(super) const fn of_line(kind: LineKind) -> u32 {
    match kind {
        LineKind::Internal | LineKind::Fold | LineKind::Placement => INTERNAL,
        LineKind::Stripe => STRIPE,
        LineKind::Plaid => PLAID,
        LineKind::GradeReference => GRADE_REFERENCE,
    }
}

/// What a line of a layer is for, as far as the layer says.
pub(super) const fn line(layer: u32) -> Option<LineKind> {
    match layer {
        INTERNAL => Some(LineKind::Internal),
        STRIPE => Some(LineKind::Stripe),
        PLAID => Some(LineKind::Plaid),
        GRADE_REFERENCE => Some(LineKind::GradeReference),
        _ => None,
    }
}
