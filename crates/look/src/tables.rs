//! Functions that systems round differently, as tables made once by arithmetic that is the same everywhere.

use std::sync::LazyLock;

use crate::chance::parted;

const FADE_STEPS: usize = 4096;
/// Beyond this `e` to the minus is nothing that eight bits could show.
const FADE_REACH: f32 = 16.0;

static FADE: LazyLock<Vec<f32>> = LazyLock::new(|| {
    (0..=FADE_STEPS + 1)
        .map(|k| libm::expf(-(k as f32) * FADE_REACH / FADE_STEPS as f32))
        .collect()
});

const TURN_STEPS: usize = 4096;

static TURN: LazyLock<Vec<f32>> = LazyLock::new(|| {
    (0..=TURN_STEPS + 1)
        .map(|k| libm::sinf(std::f32::consts::TAU * k as f32 / TURN_STEPS as f32))
        .collect()
});

const TONES: usize = 16_384;

static TONE: LazyLock<Vec<u8>> = LazyLock::new(|| {
    (0..=TONES)
        .map(|k| {
            let v = k as f32 / TONES as f32;
            let s = if v <= 0.003_130_8 {
                12.92 * v
            } else {
                1.055 * libm::powf(v, 1.0 / 2.4) - 0.055
            };
            (s * 255.0 + 0.5).clamp(0.0, 255.0) as u8
        })
        .collect()
});

/// The tables, taken once before a loop that asks them often.
#[derive(Clone, Copy)]
pub(crate) struct Tables {
    fade: &'static [f32],
    turn: &'static [f32],
    tone: &'static [u8],
}

impl Tables {
    pub(crate) fn new() -> Tables {
        Tables {
            fade: &FADE,
            turn: &TURN,
            tone: &TONE,
        }
    }

    /// `e` to the minus `x`, for `x` from 0 on.
    #[inline(always)]
    pub(crate) fn fade(&self, x: f32) -> f32 {
        let t = x.clamp(0.0, FADE_REACH) * (FADE_STEPS as f32 / FADE_REACH);
        let k = (t as usize).min(FADE_STEPS);
        self.fade[k] + (self.fade[k + 1] - self.fade[k]) * (t - k as f32)
    }

    /// The sine of so many turns.
    #[inline(always)]
    pub(crate) fn sine(&self, turns: f32) -> f32 {
        let t = parted(turns).1 * TURN_STEPS as f32;
        let k = (t as usize).min(TURN_STEPS);
        self.turn[k] + (self.turn[k + 1] - self.turn[k]) * (t - k as f32)
    }

    /// The cosine of so many turns.
    #[inline(always)]
    pub(crate) fn cosine(&self, turns: f32) -> f32 {
        self.sine(turns + 0.25)
    }

    /// Linear light as a channel of sRGB (IEC 61966-2-1).
    #[inline(always)]
    pub(crate) fn tone(&self, linear: f32) -> u8 {
        let k = (linear.clamp(0.0, 1.0) * TONES as f32 + 0.5) as usize;
        self.tone[k.min(TONES)]
    }
}
