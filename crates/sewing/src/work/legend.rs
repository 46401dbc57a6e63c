//! What holds of a whole sewing order, said once beside it.

use words::{Key, key};

use crate::garment::{Garment, RowEnd};

/// What is to be known of every operation alike: how rows are numbered, what is not stated of needles, and how long the
/// ways of ending a row are that the pair has.
pub fn order_notes(garment: &Garment) -> Vec<Key> {
    let ends = |end: RowEnd| {
        let mut rows = garment.rows.iter();
        rows.any(|row| row.begins == end || row.ends == end)
    };
    let ways = [
        (RowEnd::Backtacked, key::ORDER_NOTE_BACKTACKED),
        (RowEnd::Overlapped, key::ORDER_NOTE_OVERLAPPED),
        (RowEnd::TiedByHand, key::ORDER_NOTE_TIED),
        (RowEnd::ChainedOff, key::ORDER_NOTE_CHAINED_OFF),
    ];
    let of_ways = ways.into_iter().filter(|(end, _)| ends(*end));
    [
        key::ORDER_NOTE_ROWS,
        key::ORDER_NOTE_NEEDLES,
        key::ORDER_NOTE_NEEDLES_ASK,
    ]
    .into_iter()
    .chain(of_ways.map(|(_, note)| note))
    .chain([key::ORDER_NOTE_EDGES])
    .collect()
}
