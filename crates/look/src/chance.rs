//! Unevenness that is the same on every machine and in every window: an integer hash on absolute cells.

/// One number of 32 bits for a cell; neighbouring cells have nothing in common.
#[inline(always)]
pub(crate) fn hash(i: i32, j: i32, salt: u32) -> u32 {
    let mut h = (i as u32).wrapping_mul(0x9E37_79B1)
        ^ (j as u32).wrapping_mul(0x85EB_CA77)
        ^ salt.wrapping_mul(0xC2B2_AE3D);
    h ^= h >> 15;
    h = h.wrapping_mul(0x2C1B_3C6D);
    h ^= h >> 12;
    h = h.wrapping_mul(0x297A_2D39);
    h ^ (h >> 15)
}

/// From 0 to 1, for a cell.
#[inline(always)]
pub(crate) fn chance(i: i32, j: i32, salt: u32) -> f32 {
    (hash(i, j, salt) >> 8) as f32 * (1.0 / 16_777_216.0)
}

/// Smooth step from 0 to 1.
#[inline(always)]
pub(crate) fn smooth(t: f32) -> f32 {
    let t = t.clamp(0.0, 1.0);
    t * t * (3.0 - 2.0 * t)
}

/// The whole number at or below and what is left, for what is less than four million: by the bits of a number whose last is
/// worth one, for the conversion that looks at every case takes longer than all else here. At a whole number what is left
/// may be one of the number before, which is the same place.
#[inline(always)]
pub(crate) fn parted(u: f32) -> (i32, f32) {
    const ONES: f32 = 12_582_912.0;
    let shifted = (u - 0.5) + ONES;
    let whole = (shifted.to_bits() as i32).wrapping_sub(ONES.to_bits() as i32);
    (whole, u - (shifted - ONES))
}

/// Unevenness along a line of its own, one cell a unit, from -1 to 1.
#[inline(always)]
pub(crate) fn along(u: f32, line: i32, salt: u32) -> f32 {
    let (i, f) = parted(u);
    let f = f * f * (3.0 - 2.0 * f);
    let (a, b) = (chance(i, line, salt), chance(i.wrapping_add(1), line, salt));
    2.0 * (a + (b - a) * f) - 1.0
}

/// Two unevennesses along a line of its own, from one hash.
#[inline(always)]
pub(crate) fn along_both(u: f32, line: i32, salt: u32) -> (f32, f32) {
    let (i, f) = parted(u);
    let f = f * f * (3.0 - 2.0 * f);
    let (a, b) = (hash(i, line, salt), hash(i.wrapping_add(1), line, salt));
    let mix = |a: u32, b: u32| {
        let (a, b) = (a as f32, b as f32);
        (a + (b - a) * f) * (2.0 / 65_536.0) - 1.0
    };
    (mix(a >> 16, b >> 16), mix(a & 0xFFFF, b & 0xFFFF))
}

/// Unevenness over the plane, one cell a unit, from -1 to 1.
#[inline(always)]
pub(crate) fn over(u: f32, v: f32, salt: u32) -> f32 {
    let ((i, f), (j, g)) = (parted(u), parted(v));
    let (f, g) = (f * f * (3.0 - 2.0 * f), g * g * (3.0 - 2.0 * g));
    let (i1, j1) = (i.wrapping_add(1), j.wrapping_add(1));
    let low = chance(i, j, salt) + (chance(i1, j, salt) - chance(i, j, salt)) * f;
    let high = chance(i, j1, salt) + (chance(i1, j1, salt) - chance(i, j1, salt)) * f;
    2.0 * (low + (high - low) * g) - 1.0
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked through by hand-written Python of the same integer steps.
    #[test]
    fn a_cell_has_the_same_number_everywhere() {
        assert_eq!(hash(0, 0, 0), 0);
        assert_eq!(hash(1, 2, 3), 4_206_275_386);
        assert_eq!(hash(-5, 7, 11), 2_274_715_999);
    }

    #[test]
    fn a_number_is_parted_at_the_whole_one_below() {
        for u in [
            -7.3_f32, -1.0, -0.2, 0.0, 0.4, 0.5, 1.0, 2.0, 3.0, 41.999, 250_000.3,
        ] {
            let (whole, left) = parted(u);
            assert!((whole as f32 + left - u).abs() < 1e-4, "{u}");
            assert!((0.0..=1.0).contains(&left), "{u}: {left}");
        }
    }

    #[test]
    fn unevenness_has_no_leaning() {
        let mean = (0..4000).map(|k| along(k as f32 * 0.37, 5, 9)).sum::<f32>() / 4000.0;
        assert!(mean.abs() < 0.05, "{mean}");
    }
}
