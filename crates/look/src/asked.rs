//! What every kind of picture is asked with.

use crate::light::Sun;
use crate::scene::Scene;
use crate::wear::Causes;

/// A scene under its sun, so far worn, drawn on so many threads.
pub(crate) struct Asked<'a> {
    pub(crate) scene: &'a Scene,
    pub(crate) sun: Sun,
    pub(crate) causes: Causes,
    pub(crate) threads: usize,
}
