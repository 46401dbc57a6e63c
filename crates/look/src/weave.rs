//! The height of woven cloth at a point: which yarn lies on top there, and where on it.

use crate::chance::{along, along_both, chance, over, parted, smooth};
use crate::cloth::{System, TWIST, Woven};

/// What lies on top at a point of the cloth.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Hit {
    /// Above the middle of the cloth, millimetres.
    pub(crate) z: f32,
    pub(crate) weft: bool,
    /// Across the yarn, from -1 to 1; along it, millimetres; its number.
    pub(crate) across: f32,
    pub(crate) along: f32,
    pub(crate) yarn: i32,
}

/// A float sinks a little at each of its two ends.
const SINKS: f32 = 0.24;
/// How far a float spreads into a gap beside it, of its half width: without it the weft shows as square windows.
const LEANS: f32 = 0.5;
/// Single fibres are seen at samples so close.
const SEEN_FIBRE: f32 = 0.024;
/// How many crossings about a point are looked at.
const BEFORE: i32 = 6;
pub(crate) const WARP_SALT: u32 = 3;
pub(crate) const WEFT_SALT: u32 = 7;

/// One face of a cloth, ready to be asked point by point.
pub(crate) struct Face {
    pub(crate) woven: Woven,
    /// +1 the face, -1 the reverse.
    side: i32,
    /// Levels by phase, the repeat gone through so often that no phase near it has to be reduced.
    warp_level: Vec<f32>,
    weft_level: Vec<f32>,
    /// Whether samples lie so close that single fibres are seen.
    pub(crate) fine: bool,
    turn: i32,
    floor: f32,
    twist: [f32; 2],
    /// How high the crowns of this face stand above the middle.
    pub(crate) crown: f32,
}

impl Face {
    /// `step` is how far apart its samples will lie.
    pub(crate) fn of(woven: &Woven, reverse: bool, step: f32) -> Face {
        let twill = woven.twill;
        let n = twill.repeat;
        // Seen from behind, what was under is over, and left and right have changed places.
        let turn = if twill.right_hand == reverse { -1 } else { 1 };
        let warp_up = |phase: i32| twill.over(phase) != reverse;
        let level = |up: &dyn Fn(i32) -> bool| -> Vec<f32> {
            (-BEFORE..n + BEFORE)
                .map(|phase| {
                    let here = up(phase);
                    let ends = [phase - 1, phase + 1].map(|p| up(p) != here);
                    let ends = ends.iter().filter(|end| **end).count() as f32;
                    if here { 1.0 - SINKS * ends } else { -1.0 }
                })
                .collect()
        };
        let turns =
            std::f32::consts::PI * woven.diameter * TWIST / woven.tex.max(1.0).sqrt() / 1000.0;
        let root = (1.0 + turns * turns).sqrt();
        let mut face = Face {
            woven: *woven,
            side: if reverse { -1 } else { 1 },
            warp_level: level(&warp_up),
            weft_level: level(&|phase| !warp_up(phase)),
            turn,
            fine: step <= SEEN_FIBRE,
            floor: -woven.warp.half[1] - woven.warp.wave.max(woven.weft.wave) / 2.0,
            twist: [1.0 / root, turns / root],
            crown: woven.crown(),
        };
        face.crown = face.found_crown();
        face
    }

    /// The height that one in twenty places of the face stands above.
    fn found_crown(&self) -> f32 {
        const TRIES: i32 = 40;
        let repeat = self.woven.repeat();
        let mut heights: Vec<f32> = (0..TRIES * TRIES)
            .map(|k| {
                let share = |n: i32| (n as f32 + 0.5) / TRIES as f32;
                self.at(share(k % TRIES) * repeat[0], share(k / TRIES) * repeat[1])
                    .z
            })
            .collect();
        heights.sort_by(f32::total_cmp);
        heights.get(heights.len() * 19 / 20).copied().unwrap_or(0.0)
    }

    /// Phase of a crossing in the repeat.
    #[inline(always)]
    fn phase(&self, end: i32, pick: i32) -> i32 {
        pick.wrapping_sub(end.wrapping_mul(self.turn))
            .rem_euclid(self.woven.twill.repeat)
    }

    /// At `x` across and `y` along the warp.
    pub(crate) fn at(&self, x: f32, y: f32) -> Hit {
        let mut hit = Hit {
            z: self.floor,
            weft: false,
            across: 0.0,
            along: 0.0,
            yarn: 0,
        };
        self.system::<false>(x, y, &mut hit);
        let weft = &self.woven.weft;
        if hit.z < weft.wave / 2.0 + weft.half[1] * 1.25 {
            self.system::<true>(y, x, &mut hit);
        }
        hit
    }

    /// The yarns of one system: `t` across them, `s` along.
    fn system<const WEFT: bool>(&self, t: f32, s: f32, hit: &mut Hit) {
        let w = &self.woven;
        let (own, other, salt): (&System, &System, u32) = if WEFT {
            (&w.weft, &w.warp, WEFT_SALT)
        } else {
            (&w.warp, &w.weft, WARP_SALT)
        };
        let levels = if WEFT {
            &self.weft_level
        } else {
            &self.warp_level
        };
        let step = s * other.per_mm - 0.5;
        let (j, f) = parted(step);
        let f = smooth(f);
        let i0 = parted(t * own.per_mm).0;
        // One end on, the phase is one turn back; one pick on, one ahead.
        let (first, by_yarn, by_cross) = if WEFT {
            (self.phase(j, i0.wrapping_sub(2)), 1, -self.turn)
        } else {
            (self.phase(i0.wrapping_sub(2), j), -self.turn, 1)
        };
        let lv: [f32; 5] = std::array::from_fn(|k| {
            let at = (first + BEFORE + by_yarn * k as i32) as usize;
            let a = levels.get(at).copied().unwrap_or(-1.0);
            let b = levels
                .get((at as i32 + by_cross) as usize)
                .copied()
                .unwrap_or(-1.0);
            a + (b - a) * f
        });
        for k in 1..4 {
            let i = i0.wrapping_add(k as i32 - 2);
            let here = lv[k];
            let from_middle = t - (i as f32 + 0.5) * own.pitch;
            let beside = if from_middle > 0.0 {
                lv[k + 1]
            } else {
                lv[k - 1]
            };
            // A float leans into the gap where its neighbour dips.
            let room = smooth(0.85 * (1.0 - beside)) * ((1.0 + here) / 2.0).clamp(0.0, 1.0);
            let spread = if WEFT {
                0.88 + 0.16 * here + 0.20 * room
            } else {
                0.92 + 0.10 * here + LEANS * room
            };
            let widest = own.half[0] * spread * (1.0 + 1.5 * w.uneven) + w.stray + 0.012;
            if from_middle.abs() >= widest
                || own.wave / 2.0 * here + own.half[1] * (1.0 + 1.5 * w.uneven) <= hit.z
            {
                continue;
            }
            let (u, thick) = self.uneven(from_middle, s, i, salt);
            let u = u / (own.half[0] * thick * spread);
            if u.abs() >= 1.0 {
                continue;
            }
            let top = own.wave / 2.0 * here + own.half[1] * thick * (1.0 - u * u).sqrt();
            if top > hit.z {
                *hit = Hit {
                    z: top,
                    weft: WEFT,
                    across: u,
                    along: s,
                    yarn: i,
                };
            }
        }
    }

    /// Where across a yarn a point lies that strays, and how thick the yarn is there.
    #[inline(always)]
    fn uneven(&self, from_middle: f32, s: f32, i: i32, salt: u32) -> (f32, f32) {
        let w = &self.woven;
        if w.uneven <= 0.0 {
            return (from_middle, 1.0);
        }
        let own = chance(i, 0, salt);
        let shift = 31.0 * own;
        let (aside, thicker) = along_both(s * (1.0 / 2.1) + shift, i, salt);
        let thick = 1.0 + w.uneven * (1.1 * thicker + 0.6 * (own - 0.5));
        let stray = w.stray * aside;
        let hairy = if self.fine {
            0.012 * along(s / 0.11 + shift, i, salt + 60)
        } else {
            0.0
        };
        (from_middle - stray + hairy, thick)
    }

    /// Streaks of the fibres on a yarn, along the helix of its Z twist, from -1 to 1.
    #[inline(always)]
    pub(crate) fn fibres(&self, hit: &Hit) -> f32 {
        let u = hit.across;
        // The arc across the yarn, near enough for streaks.
        let arc = self.woven.warp.half[0] * (u + 0.18 * u * u * u);
        let [ca, sa] = self.twist;
        let flip = if hit.weft { -1.0 } else { 1.0 };
        let across = arc * ca - flip * hit.along * sa;
        let along = flip * arc * sa + hit.along * ca;
        let own = hit.yarn as f32;
        let coarse = 0.6 * over(across * (1.0 / 0.045), along * (1.0 / 0.7) + own * 3.7, 11);
        if self.fine {
            coarse + 0.4 * over(across / 0.02, along / 0.35 + own * 5.1, 12)
        } else {
            coarse
        }
    }

    /// How much more dye a warp yarn took than others, about 1.
    #[inline(always)]
    pub(crate) fn shade_of_yarn(&self, yarn: i32, s: f32) -> f32 {
        let even = chance(yarn, 9 * self.side, WARP_SALT) - 0.5;
        let drift = along(s * (1.0 / 12.0) + yarn as f32 * 0.618_034, yarn, 4);
        1.0 + 0.35 * even + 0.2 * drift
    }
}
