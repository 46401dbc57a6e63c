//! The block: the outlines of front, back and yoke as a function of their free shape parameters.
//!
//! This is the textbook construction turned round. A handful of numbers (how far the crotch reaches,
//! how high the waist stands, how the yoke turns) fix every line; the fit then moves those numbers
//! until the lines measure what the chart says.
//!
//! Frame, in millimetres: x runs from the centre of the body towards the side, y up. The crotch
//! point of the front lies at y = 0; the knee and hem lie at the same heights on front and back.
//! The front is drawn as the wearer's left front seen from outside, the back as the right back.
//!
//! Construction after the industrial method of drafting from a finished chart (common practice;
//! the split of girths, the handles of the curves and the slope of the seat are shape parameters).

use std::f64::consts::FRAC_PI_2;

use geometry::tolerance::NO_DIRECTION;
use geometry::{Path, Point, Vec2, angle_between, left_of};
use style::{Level, MeasureId};
use trade::{Angle, Length};

use crate::spec::Spec;

/// How nearly a curve may leave along the way to where it goes, as the sine of the angle between.
const LEAST_ACROSS: f64 = 1e-3;

/// The front crotch curve runs into the straight centre front at this share of the seat level, so the
/// seat is measured on the straight part.
const FRONT_CURVE_TOP_SHARE: f64 = 0.75;
/// Slope of the back crotch curve at the crotch point; near level, so the curves meet level.
const BACK_CROTCH_SLOPE_DEG: f64 = 7.7;
/// The inseam leaves the crotch point this far inward for every 100 mm down.
const FRONT_INSEAM_LEAN: f64 = 0.14;
const BACK_INSEAM_LEAN: f64 = 0.32;
/// The top of the side seam leans this many times as much as its chord to the hip: more than the
/// chord, less than a circle, so that the hip line has no corner.
const SIDE_LEAN: f64 = 1.2;
/// The outseam at the crotch line lies about twice this far inside the hip point, so the crease sits
/// this far towards the inseam from halfway between crotch point and hip point: in the middle of the
/// crotch line.
const CREASE_SHIFT_MM: f64 = 2.0;

/// How strongly the inseam's lean at the crotch follows the knee when the outseam is straight: enough
/// that the thigh stays hollow. The back follows less, or its longer curve would drop the crotch.
const FRONT_FOLLOWS: f64 = 1.3;
const BACK_FOLLOWS: f64 = 0.5;

/// How many free shape parameters the block has.
pub(crate) const PARAMETERS: usize = 13;

/// The free shape parameters, all in millimetres but the last.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Shape {
    /// Front crotch extension beyond the centre front line.
    pub front_extension: f64,
    /// Height of the hem (negative: below the crotch).
    pub hem_y: f64,
    /// Height of the waist seam at centre front.
    pub front_waist_y: f64,
    /// Waist seam at the side, on the front.
    pub side_waist: (f64, f64),
    /// Half girths of the hem, straight across.
    pub front_hem: f64,
    pub back_hem: f64,
    /// Back crotch extension beyond the seat line's foot.
    pub back_extension: f64,
    /// How much lower the back crotch point lies.
    pub drop: f64,
    /// Length of the straight seat line from the hip level to the yoke seam.
    pub seat_line: f64,
    /// Yoke seam at the side, on the back.
    pub side_yoke: (f64, f64),
    /// By how much the lower edge of the yoke turns between seat and side, in radians.
    pub yoke_turn: f64,
}

impl Shape {
    pub fn to_array(self) -> [f64; PARAMETERS] {
        [
            self.front_extension,
            self.hem_y,
            self.front_waist_y,
            self.side_waist.0,
            self.side_waist.1,
            self.front_hem,
            self.back_hem,
            self.back_extension,
            self.drop,
            self.seat_line,
            self.side_yoke.0,
            self.side_yoke.1,
            // Scaled so that one unit of every parameter moves lines by about a millimetre.
            self.yoke_turn * 200.0,
        ]
    }

    pub fn from_array(a: &[f64; PARAMETERS]) -> Shape {
        Shape {
            front_extension: a[0],
            hem_y: a[1],
            front_waist_y: a[2],
            side_waist: (a[3], a[4]),
            front_hem: a[5],
            back_hem: a[6],
            back_extension: a[7],
            drop: a[8],
            seat_line: a[9],
            side_yoke: (a[10], a[11]),
            yoke_turn: a[12] / 200.0,
        }
    }

    /// The first shape, from proportions of the seat as textbook drafts give them.
    pub fn first(spec: &Spec) -> Shape {
        let seat = spec[MeasureId::Seat].to_mm();
        let rise = (spec[MeasureId::FrontRise] - spec[MeasureId::BandHeight]).to_mm();
        let front_waist_y = rise - 25.0;
        let quarter_waist = spec[MeasureId::Waist].to_mm() / 4.0;
        let side_y = front_waist_y + 20.0;
        let yoke_side = spec[MeasureId::YokeSide].to_mm();
        Shape {
            front_extension: 0.05 * seat,
            hem_y: -spec[MeasureId::Inseam].to_mm() + 2.0,
            front_waist_y,
            side_waist: (
                spec.front_tilt.to_mm() + quarter_waist - spec.waist_split.to_mm(),
                side_y,
            ),
            front_hem: spec[MeasureId::Hem].to_mm() / 2.0 - spec.hem_split.to_mm(),
            back_hem: spec[MeasureId::Hem].to_mm() / 2.0 + spec.hem_split.to_mm(),
            back_extension: 0.085 * seat,
            drop: 7.0,
            seat_line: (spec[MeasureId::BackRise]
                - spec[MeasureId::BandHeight]
                - spec[MeasureId::YokeCentre])
                .to_mm()
                - 130.0,
            side_yoke: (
                seat / 4.0 + spec.seat_split.to_mm() + 18.0,
                side_y - yoke_side,
            ),
            yoke_turn: 0.12,
        }
    }
}

/// The outlines that the chart decides. Each path runs anticlockwise round its piece.
#[derive(Clone, Debug)]
pub(crate) struct Block {
    /// Waist at centre front → crotch point.
    pub front_centre: Path,
    /// Crotch point → hem.
    pub front_inseam: Path,
    /// Inseam → outseam.
    pub front_hem: Path,
    /// Hem → waist.
    pub front_side: Path,
    /// Outseam → centre front.
    pub front_waist: Path,
    /// Yoke seam at centre back → crotch point.
    pub back_seat: Path,
    pub back_inseam: Path,
    pub back_hem: Path,
    /// Hem → yoke seam.
    pub back_side: Path,
    /// Outseam → centre back, along the yoke seam.
    pub back_top: Path,
    /// Waist → yoke seam, along the centre back.
    pub yoke_centre: Path,
    /// Centre back → outseam, along the yoke seam.
    pub yoke_lower: Path,
    /// Yoke seam → waist, along the outseam.
    pub yoke_side: Path,
    /// Outseam → centre back, along the waist.
    pub yoke_top: Path,
    /// Crease lines (grain) of front and back, as x.
    pub front_crease: f64,
    pub back_crease: f64,
    /// Heights of the levels.
    pub knee_y: f64,
    pub hem_y: f64,
}

/// One leg below the crotch: inseam, hem and the lower outseam, symmetrical about the crease below the knee.
struct Leg {
    crease: f64,
    inseam: Path,
    hem: Path,
    /// Outer hem → hip point.
    side_low: Path,
}

struct LegInput {
    crotch: Point,
    lean: f64,
    follows: f64,
    hip: Point,
    knee_width: f64,
    knee_y: f64,
    hem_width: f64,
    hem_y: f64,
    straight: bool,
}

fn leg(input: &LegInput) -> Leg {
    let LegInput {
        crotch,
        lean,
        follows,
        hip,
        knee_width,
        knee_y,
        hem_width,
        hem_y,
        straight,
    } = *input;
    let even = (crotch.x + hip.x) / 2.0 - CREASE_SHIFT_MM;
    // A straight outseam drops plumb from the hip; what the knee moves outward by, the inseam
    // follows with a stronger lean.
    let crease = if straight {
        hip.x - knee_width / 2.0
    } else {
        even
    };
    let lean = lean + follows * (crease - even) / (-knee_y).max(1.0);
    let hem_middle = if straight {
        hip.x - hem_width / 2.0
    } else {
        even
    };
    let knee_in = Point::new(crease - knee_width / 2.0, knee_y);
    let knee_out = Point::new(crease + knee_width / 2.0, knee_y);
    let hem_in = Point::new(hem_middle - hem_width / 2.0, hem_y);
    let hem_out = Point::new(hem_middle + hem_width / 2.0, hem_y);
    let up_in = unit(knee_in - hem_in);
    let up_out = unit(knee_out - hem_out);
    // Handles grow with the thigh so that short and long legs keep the same character.
    let scale = (-knee_y / 370.0).clamp(0.5, 1.5);
    let thigh_handle = 100.0 * scale;
    let knee_handle = 120.0 * scale;
    let inseam = Path::cubic(
        crotch,
        crotch + Vec2::new(lean, -1.0) * thigh_handle,
        knee_in + up_in * knee_handle,
        knee_in,
    )
    .then(&Path::line(knee_in, hem_in));
    // The hem leaves both seams squarely, so that the closed hem runs round without a corner.
    let hem = Path::between(hem_in, -left_of(up_in), hem_out, -left_of(up_out), 0.3);
    let thigh_side = if straight {
        Path::line(knee_out, hip)
    } else {
        Path::cubic(
            knee_out,
            knee_out + up_out * knee_handle,
            hip - Vec2::new(0.0, 120.0 * scale),
            hip,
        )
    };
    let side_low = Path::line(hem_out, knee_out).then(&thigh_side);
    Leg {
        crease,
        inseam,
        hem,
        side_low,
    }
}

/// The end of the hip curve above the hip point: the direction in which the side seam arrives at the top.
fn side_up(hip: Point, top: Point) -> Vec2 {
    let lean = SIDE_LEAN * (hip.x - top.x).atan2((top.y - hip.y).max(1.0));
    Vec2::new(-lean.sin(), lean.cos())
}

fn side_high(hip: Point, top: Point) -> Path {
    let up = side_up(hip, top);
    let reach = (top.y - hip.y).abs() / 3.0;
    Path::cubic(hip, hip + Vec2::new(0.0, reach), top - up * reach, top)
}

pub(crate) fn build(spec: &Spec, shape: &Shape) -> Block {
    let hip_y = spec.level(Level::Seat).to_mm();
    let knee_y = -spec.level(Level::Knee).to_mm();
    let quarter_seat = spec[MeasureId::Seat].to_mm() / 4.0;
    let half_knee = spec[MeasureId::Knee].to_mm() / 2.0;
    let (seat_split, knee_split) = (spec.seat_split.to_mm(), spec.knee_split.to_mm());

    // Front panel.
    let waist_front = Point::new(spec.front_tilt.to_mm(), shape.front_waist_y);
    let tilt = spec.front_tilt.to_mm() / shape.front_waist_y.max(1.0);
    let centre_up = unit(Vec2::new(tilt, 1.0));
    let front_hip = Point::new(tilt * hip_y + quarter_seat - seat_split, hip_y);
    let front_crotch = Point::new(-shape.front_extension, 0.0);
    let front_leg = leg(&LegInput {
        crotch: front_crotch,
        lean: FRONT_INSEAM_LEAN,
        follows: FRONT_FOLLOWS,
        hip: front_hip,
        knee_width: half_knee - knee_split,
        knee_y,
        hem_width: shape.front_hem,
        hem_y: shape.hem_y,
        straight: spec.straight_outseam,
    });

    // Back panel.
    let seat_up = direction_from_vertical(spec.seat_angle);
    let seat_foot = Point::new(0.0, hip_y);
    let back_hip = Point::new(quarter_seat + seat_split, hip_y);
    let back_crotch = Point::new(-shape.back_extension, -shape.drop);
    let back_leg = leg(&LegInput {
        crotch: back_crotch,
        lean: BACK_INSEAM_LEAN,
        follows: BACK_FOLLOWS,
        hip: back_hip,
        knee_width: half_knee + knee_split,
        knee_y,
        hem_width: shape.back_hem,
        hem_y: shape.hem_y,
        straight: spec.straight_outseam,
    });

    // Crotch curves. The back one leaves the crotch point nearly level; the front one takes the
    // slope that makes both run through the inseam as one smooth line.
    // Where a straight outseam makes the inseams lean more, front and back share what that adds.
    let lean_of = |inseam: &Path| {
        let down = inseam.start_direction();
        down.x.atan2(-down.y)
    };
    let more_lean = lean_of(&front_leg.inseam) + lean_of(&back_leg.inseam)
        - FRONT_INSEAM_LEAN.atan()
        - BACK_INSEAM_LEAN.atan();
    let slope = BACK_CROTCH_SLOPE_DEG.to_radians() + more_lean / 2.0;
    let back_out = Vec2::new(slope.cos(), slope.sin());
    let back_curve_reach = 0.55 * shape.back_extension;
    let back_curve = Path::cubic(
        back_crotch,
        back_crotch + back_out * back_curve_reach,
        seat_foot - seat_up * 0.65 * hip_y,
        seat_foot,
    );
    let back_corner = angle_between(back_out, back_leg.inseam.start_direction());
    let front_down = front_leg.inseam.start_direction();
    let front_out = rotated(front_down, std::f64::consts::PI - back_corner.to_rad());
    let curve_top = FRONT_CURVE_TOP_SHARE * hip_y;
    let centre_foot = Point::new(tilt * curve_top, curve_top);
    let front_curve = Path::cubic(
        front_crotch,
        front_crotch + front_out * (0.55 * shape.front_extension),
        centre_foot - centre_up * front_handle(front_crotch, front_out, centre_foot, centre_up),
        centre_foot,
    );
    let front_centre = Path::line(waist_front, centre_foot).then(&front_curve.reversed());

    // Yoke seam: straight on the back, so that it runs through a folder without easing.
    let seat_top = seat_foot + seat_up * shape.seat_line;
    let side_top = Point::new(shape.side_yoke.0, shape.side_yoke.1);
    let back_top = Path::line(side_top, seat_top);
    let back_seat = Path::line(seat_top, seat_foot).then(&back_curve.reversed());
    let back_side = back_leg.side_low.then(&side_high(back_hip, side_top));

    // Yoke, standing on the back panel at the centre back and turned at the side.
    let seam = side_top - seat_top;
    let yoke_lower = Path::arc(
        seat_top,
        unit(seam),
        shape.yoke_turn,
        Length::mm(seam.hypot()),
    );
    let yoke_up = rotated(side_up(back_hip, side_top), shape.yoke_turn);
    let yoke_corner = yoke_lower.end();
    let yoke_side_top = yoke_corner + yoke_up * spec[MeasureId::YokeSide].to_mm();
    let centre_top = seat_top + seat_up * spec[MeasureId::YokeCentre].to_mm();

    // Waist. Square to the centre front and the centre back; at the side, front and yoke share one
    // smooth line, and the angle between them is split so that neither curve has to hook.
    let side_waist = Point::new(shape.side_waist.0, shape.side_waist.1);
    let front_up = side_up(front_hip, side_waist);
    let front_out_dir = -left_of(centre_up);
    let yoke_out_dir = -left_of(seat_up);
    let natural = |from: Point, out: Vec2, to: Point, up: Vec2| {
        let chord = to - from;
        let end = 2.0 * chord.atan2() - out.atan2();
        let square = up.atan2() - FRAC_PI_2;
        (FRAC_PI_2 + square - end, square)
    };
    let (front_natural, front_square) = natural(waist_front, front_out_dir, side_waist, front_up);
    let (yoke_natural, yoke_square) = natural(centre_top, yoke_out_dir, yoke_side_top, yoke_up);
    let excess = front_natural + yoke_natural - std::f64::consts::PI;
    let front_corner = front_natural - excess / 2.0;
    let yoke_corner_angle = std::f64::consts::PI - front_corner;
    let arrive = |square: f64, corner: f64| {
        let a = FRAC_PI_2 + square - corner;
        Vec2::new(a.cos(), a.sin())
    };
    let front_waist = Path::between(
        waist_front,
        front_out_dir,
        side_waist,
        arrive(front_square, front_corner),
        0.36,
    )
    .reversed();
    let yoke_top = Path::between(
        centre_top,
        yoke_out_dir,
        yoke_side_top,
        arrive(yoke_square, yoke_corner_angle),
        0.36,
    )
    .reversed();

    Block {
        front_centre,
        front_side: front_leg.side_low.then(&side_high(front_hip, side_waist)),
        front_inseam: front_leg.inseam,
        front_hem: front_leg.hem,
        front_waist,
        back_seat,
        back_inseam: back_leg.inseam,
        back_hem: back_leg.hem,
        back_side,
        back_top,
        yoke_centre: Path::line(centre_top, seat_top),
        yoke_lower,
        yoke_side: Path::line(yoke_corner, yoke_side_top),
        yoke_top,
        front_crease: front_leg.crease,
        back_crease: back_leg.crease,
        knee_y,
        hem_y: shape.hem_y,
    }
}

/// How far down the centre front the front crotch curve is held before it turns in. Where a wide thigh on a straight outseam
/// makes it leave the crotch steeply, it is held less far: else it would turn out first and in afterwards.
fn front_handle(crotch: Point, out: Vec2, foot: Point, up: Vec2) -> f64 {
    /// Of the height of the curve.
    const USUAL: f64 = 0.533;
    const LEAST: f64 = 0.25;
    /// How far above the tangent at the crotch the other handle ends, of the way to the centre front.
    const ABOVE: f64 = 0.002;
    let chord = foot - crotch;
    let height = foot.y - crotch.y;
    let room = out.cross(chord) - ABOVE * chord.hypot();
    let most = room / out.cross(up).max(LEAST_ACROSS);
    (USUAL * height).min(most.max(LEAST * height))
}

/// The unit vector that leans from the vertical towards the side by `angle`.
fn direction_from_vertical(angle: Angle) -> Vec2 {
    let a = angle.to_rad();
    Vec2::new(a.sin(), a.cos())
}

fn unit(v: Vec2) -> Vec2 {
    let n = v.hypot();
    if n < NO_DIRECTION {
        Vec2::new(1.0, 0.0)
    } else {
        v / n
    }
}

fn rotated(v: Vec2, by_rad: f64) -> Vec2 {
    let (s, c) = by_rad.sin_cos();
    Vec2::new(c * v.x - s * v.y, s * v.x + c * v.y)
}
