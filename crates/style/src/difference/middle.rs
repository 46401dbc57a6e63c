//! Two lists beside one another.

/// Two lists without what they share at their ends: what is left changed, went or came.
pub(super) struct Middle<'a, T> {
    start: usize,
    old: &'a [T],
    new: &'a [T],
}

impl<'a, T: PartialEq> Middle<'a, T> {
    pub(super) fn of(old: &'a [T], new: &'a [T]) -> Self {
        let start = old.iter().zip(new).take_while(|(a, b)| a == b).count();
        let (old, new) = (
            old.get(start..).unwrap_or(&[]),
            new.get(start..).unwrap_or(&[]),
        );
        let end = old
            .iter()
            .rev()
            .zip(new.iter().rev())
            .take_while(|(a, b)| a == b)
            .count();
        let old = old.get(..old.len() - end).unwrap_or(&[]);
        let new = new.get(..new.len() - end).unwrap_or(&[]);
        Self { start, old, new }
    }

    /// Members that became others, with their number.
    pub(super) fn pairs(&self) -> impl Iterator<Item = (usize, (&'a T, &'a T))> + use<'a, T> {
        let start = self.start;
        let pairs = self.old.iter().zip(self.new).enumerate();
        pairs.map(move |(index, pair)| (start + index, pair))
    }

    /// Members that went, with their old number.
    pub(super) fn gone(&self) -> impl Iterator<Item = (usize, &'a T)> + use<'a, T> {
        let start = self.start;
        let gone = self.old.iter().enumerate().skip(self.new.len());
        gone.map(move |(index, member)| (start + index, member))
    }

    /// Members that came, with their new number.
    pub(super) fn come(&self) -> impl Iterator<Item = (usize, &'a T)> + use<'a, T> {
        let start = self.start;
        let come = self.new.iter().enumerate().skip(self.old.len());
        come.map(move |(index, member)| (start + index, member))
    }
}
