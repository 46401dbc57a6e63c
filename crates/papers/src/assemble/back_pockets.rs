//! In what the two back pockets differ: a pair that looks crooked by mistake is unpicked.

use style::{BackPocket, Wash};
use trade::Length;
use words::{Given, key, say};

use super::context::Context;

/// That the right pocket is meant to be unlike the left, and in what; none where they are alike.
pub(super) fn differ(context: &Context<'_>) -> Option<String> {
    let back = &context.loaded.style.pockets.back;
    let (left, right) = (&back.left, &back.right);
    let state = if context.loaded.style.wash.as_ref().is_some_and(Wash::is_raw) {
        key::PAPERS_FIGURE_UNWASHED
    } else {
        key::PAPERS_FIGURE_AFTER
    };
    let measure = |what, of: fn(&BackPocket) -> Length| -> Option<Given> {
        let [right, left] = [of(right), of(left)].map(Length::show_mm);
        (left != right).then(|| {
            say::PapersPocketMeasure {
                left,
                right,
                state,
                what,
            }
            .into()
        })
    };
    let stitched = |of: &BackPocket| {
        let art = of.art.as_ref().map(ToString::to_string);
        (art, of.decoration, of.mirror)
    };
    let stitching =
        (stitched(left) != stitched(right)).then(|| key::PAPERS_POCKET_STITCHING.into());
    let how: Vec<Given> = [
        measure(key::PAPERS_POCKET_FOOT, |pocket| pocket.foot_width),
        measure(key::PAPERS_POCKET_SIDE, |pocket| pocket.side_length),
        measure(key::PAPERS_POCKET_DROP, |pocket| pocket.outer_drop),
        stitching,
    ]
    .into_iter()
    .flatten()
    .collect();
    if how.is_empty() {
        return None;
    }
    let how = Given::List(how);
    Some(context.say.say(say::PapersPocketsDiffer { how }))
}
