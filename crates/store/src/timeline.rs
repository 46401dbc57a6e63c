//! All changes of all files of a collection in the order of time, and where undo and redo lead along it.

use std::collections::{BTreeMap, HashMap};
use std::fs;
use std::io;
use std::path::Path;

use jiff::Timestamp;

use crate::journal::{Entry, Way, entries, list_of};
use crate::place::within;
use crate::version::Shelf;
use crate::{Revision, VersionedFile};

/// One change: a file came from one version to the next.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    /// Which file, by its way from the collection's folder.
    pub file: String,
    /// What it was.
    pub from: Revision,
    /// What it became.
    pub to: Revision,
    /// How it came about.
    pub way: Way,
}

impl Change {
    /// What a page that shows this change calls it by.
    #[must_use]
    pub fn token(&self) -> String {
        format!("{} {}", self.to.key(), self.file)
    }
}

/// Which way along the changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// The last change is taken back.
    Back,
    /// The change last taken back is made again.
    Forward,
}

/// The changes of a collection, earliest first.
#[derive(Clone, Debug, Default)]
pub struct Timeline {
    changes: Vec<Change>,
    /// What can be taken back and what can be made again, the next one last.
    back: Vec<usize>,
    forward: Vec<usize>,
}

/// Tells whether a timeline is still that of its collection without making it anew.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Stamp(Option<(u64, Option<std::time::SystemTime>)>);

impl Stamp {
    /// The stamp of a collection as it is.
    #[must_use]
    pub fn of(root: &Path) -> Self {
        let metadata = fs::metadata(list_of(root)).ok();
        Self(metadata.map(|list| (list.len(), list.modified().ok())))
    }
}

impl Timeline {
    /// The timeline of some files of a collection.
    ///
    /// # Errors
    /// A folder of versions is there and cannot be listed.
    pub fn of<'a>(
        root: &Path,
        files: impl IntoIterator<Item = &'a VersionedFile>,
    ) -> io::Result<Self> {
        let mut known: BTreeMap<String, Vec<Revision>> = BTreeMap::new();
        for file in files {
            let Some(name) = within(root, file.path()) else {
                continue;
            };
            known.insert(name, Shelf::of(file.versions())?.versions);
        }
        Ok(Self::put_together(&known, &entries(root)))
    }

    fn put_together(known: &BTreeMap<String, Vec<Revision>>, told: &[Entry]) -> Self {
        let mut timeline = Self::default();
        for (change, way) in in_order(known, told) {
            timeline.add(change, way);
        }
        timeline
    }

    /// Adds a change. One of which nobody noted how it came about is taken for what it did: it took back the change that
    /// undo led to where it left the same text, and so on.
    fn add(&mut self, mut change: Change, way: Option<Way>) {
        let leads = |at: Option<&usize>, text: fn(&Change) -> &Revision| {
            let next = at.and_then(|at| self.changes.get(*at));
            next.is_some_and(|next| next.file == change.file && text(next).id == change.to.id)
        };
        let undoes = leads(self.back.last(), |next| &next.from);
        let redoes = leads(self.forward.last(), |next| &next.to);
        let at = self.changes.len();
        change.way = match way {
            Some(Way::Undo) | None if undoes => Way::Undo,
            Some(Way::Redo) | None if redoes => Way::Redo,
            Some(Way::Undo | Way::Redo) | None => Way::Edit,
            Some(way) => way,
        };
        match change.way {
            Way::Undo => self.forward.extend(self.back.pop()),
            Way::Redo => self.back.extend(self.forward.pop()),
            Way::Edit | Way::PutBack | Way::Outside => {
                self.back.push(at);
                self.forward.clear();
            }
        }
        self.changes.push(change);
    }

    /// Every change, earliest first.
    #[must_use]
    pub fn changes(&self) -> &[Change] {
        &self.changes
    }

    /// The changes that can be taken back, the last one last.
    #[must_use]
    pub fn standing(&self) -> Vec<&Change> {
        self.standing_since(0)
    }

    /// Those of them that came after so many changes.
    #[must_use]
    pub fn standing_since(&self, changes: usize) -> Vec<&Change> {
        let since = self.back.iter().filter(|at| **at >= changes);
        since.filter_map(|at| self.changes.get(*at)).collect()
    }

    /// What undo or redo is about: the change that is taken back or made again.
    #[must_use]
    pub fn next(&self, direction: Direction) -> Option<&Change> {
        let at = match direction {
            Direction::Back => self.back.last(),
            Direction::Forward => self.forward.last(),
        };
        self.changes.get(*at?)
    }
}

/// Every change in the order of the list; what the list does not have where its time belongs, but never before or after
/// a change of the same file that it followed or led to.
fn in_order(known: &BTreeMap<String, Vec<Revision>>, told: &[Entry]) -> Vec<(Change, Option<Way>)> {
    let mut left: BTreeMap<(&str, u32), (Change, Option<Way>)> = BTreeMap::new();
    for (file, versions) in known {
        for pair in versions.windows(2) {
            let [from, to] = pair else { continue };
            // A version whose text is that of the one before it changed nothing.
            if from.id == to.id {
                continue;
            }
            let change = Change {
                file: file.clone(),
                from: from.clone(),
                to: to.clone(),
                way: Way::Edit,
            };
            left.insert((file, to.number), (change, None));
        }
    }
    // A line may have been written twice, by a save that was killed and by one that was not: the later is the true one.
    let mut at: HashMap<(&str, u32), usize> = HashMap::new();
    for (index, entry) in told.iter().enumerate() {
        let meant = left.get(&(entry.file.as_str(), entry.number));
        if meant.is_some_and(|(change, _)| change.to.id == entry.id) {
            at.insert((&entry.file, entry.number), index);
        }
    }
    let mut ordered: Vec<(Timestamp, (Change, Option<Way>))> = Vec::new();
    for (index, entry) in told.iter().enumerate() {
        let place = (entry.file.as_str(), entry.number);
        if at.get(&place) == Some(&index)
            && let Some((change, _)) = left.remove(&place)
        {
            ordered.push((entry.at, (change, Some(entry.way))));
        }
    }
    let mut untold: Vec<(Timestamp, (Change, Option<Way>))> = left
        .into_values()
        .map(|change| (time_of(&change.0.to), change))
        .collect();
    untold.sort_by(|(a, (one, _)), (b, (other, _))| {
        (a, &one.file, one.to.number).cmp(&(b, &other.file, other.to.number))
    });
    for (time, (change, way)) in untold {
        let same = |other: &(Timestamp, (Change, Option<Way>))| other.1.0.file == change.file;
        let earlier = |other: &(Timestamp, (Change, Option<Way>))| {
            same(other) && other.1.0.to.number < change.to.number
        };
        let from = ordered.iter().rposition(earlier).map_or(0, |at| at + 1);
        let to = ordered
            .iter()
            .position(|other| same(other) && other.1.0.to.number > change.to.number)
            .unwrap_or(ordered.len())
            .max(from);
        let later = ordered[from..to]
            .iter()
            .position(|(other, _)| *other > time);
        ordered.insert(later.map_or(to, |at| from + at), (time, (change, way)));
    }
    ordered.into_iter().map(|(_, change)| change).collect()
}

/// When a version was written, as its file says.
fn time_of(version: &Revision) -> Timestamp {
    let written = fs::metadata(&version.path).and_then(|file| file.modified());
    let time = written.ok().and_then(|time| Timestamp::try_from(time).ok());
    time.unwrap_or(Timestamp::UNIX_EPOCH)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn versions(file: &str, ids: &str) -> (String, Vec<Revision>) {
        let each = ids.split(' ').zip(1..);
        let revision = |(id, number): (&str, u32)| Revision {
            number,
            id: id.to_owned(),
            path: Path::new("nowhere").join(id),
        };
        (file.to_owned(), each.map(revision).collect())
    }

    fn told(list: &[(&str, u32, &str, Way)]) -> Vec<Entry> {
        let entry = |(at, (file, number, id, way)): (usize, &(&str, u32, &str, Way))| Entry {
            at: Timestamp::from_second(i64::try_from(at).unwrap()).unwrap(),
            way: *way,
            number: *number,
            id: (*id).to_owned(),
            file: (*file).to_owned(),
        };
        list.iter().enumerate().map(entry).collect()
    }

    /// A file, and the text of it that a step leads to.
    type Led<'a> = Option<(&'a str, &'a str)>;

    fn led(timeline: &Timeline) -> (Led<'_>, Led<'_>) {
        let next = |direction, text: fn(&Change) -> &Revision| {
            timeline
                .next(direction)
                .map(|change| (change.file.as_str(), text(change).id.as_str()))
        };
        (
            next(Direction::Back, |change| &change.from),
            next(Direction::Forward, |change| &change.to),
        )
    }

    /// The texts of one file that undo and redo lead to, where nobody noted how its versions came about.
    fn of_one(run: &str) -> (String, String) {
        let known = BTreeMap::from([versions("a", run)]);
        let timeline = Timeline::put_together(&known, &[]);
        let text = |at: &[usize], text: fn(&Change) -> &Revision| -> String {
            at.iter()
                .map(|at| text(&timeline.changes[*at]).id.as_str())
                .collect()
        };
        (
            text(&timeline.back, |change| &change.from),
            text(&timeline.forward, |change| &change.to),
        )
    }

    #[test]
    fn undo_and_redo_are_told_from_the_texts_where_nothing_else_tells() {
        let cases = [
            ("a", "", ""),
            ("a b c", "ab", ""),
            ("a b c b", "a", "c"),
            ("a b c b a", "", "cb"),
            ("a b c b a b", "a", "c"),
            ("a b c b a b c", "ab", ""),
            // A change after an undo ends what could be made again.
            ("a b c b d", "ab", ""),
            // A version of long ago put back is a change like any other.
            ("a b c a", "abc", ""),
        ];
        for (run, back, forward) in cases {
            assert_eq!(of_one(run), (back.to_owned(), forward.to_owned()), "{run}");
        }
    }

    #[test]
    fn the_last_change_is_taken_back_whichever_file_it_was_in() {
        let known = BTreeMap::from([versions("cloths", "p q"), versions("style", "a b")]);
        let list = |order: [(&'static str, &'static str); 2]| {
            let entries = order.map(|(file, id)| (file, 2, id, Way::Edit));
            Timeline::put_together(&known, &told(&entries))
        };
        assert_eq!(
            led(&list([("style", "b"), ("cloths", "q")])).0,
            Some(("cloths", "p"))
        );
        assert_eq!(
            led(&list([("cloths", "q"), ("style", "b")])).0,
            Some(("style", "a"))
        );
    }

    #[test]
    fn a_value_changed_to_and_fro_is_two_changes_and_an_undo_is_one() {
        let known = BTreeMap::from([versions("a", "x y x")]);
        let ways = |way| told(&[("a", 2, "y", Way::Edit), ("a", 3, "x", way)]);
        let fro = Timeline::put_together(&known, &ways(Way::Edit));
        assert_eq!(led(&fro), (Some(("a", "y")), None));
        let undone = Timeline::put_together(&known, &ways(Way::Undo));
        assert_eq!(led(&undone), (None, Some(("a", "y"))));
    }

    #[test]
    fn lines_of_saves_that_were_killed_count_for_nothing() {
        let known = BTreeMap::from([versions("a", "x y"), versions("b", "p q")]);
        let list = told(&[
            ("a", 2, "z", Way::Edit),
            ("b", 2, "q", Way::Edit),
            ("b", 9, "n", Way::Edit),
            ("gone", 2, "q", Way::Edit),
            ("a", 2, "y", Way::Edit),
            ("b", 2, "q", Way::Edit),
        ]);
        let timeline = Timeline::put_together(&known, &list);
        let files: Vec<&str> = timeline
            .changes()
            .iter()
            .map(|change| &*change.file)
            .collect();
        assert_eq!(files, ["a", "b"]);
    }

    #[test]
    fn what_the_list_does_not_have_keeps_its_place_in_its_own_file() {
        // Its file has no time, so it would come first; it still follows what it followed.
        let known = BTreeMap::from([versions("a", "w x y z"), versions("b", "p q")]);
        let list = told(&[
            ("a", 2, "x", Way::Edit),
            ("b", 2, "q", Way::Edit),
            ("a", 4, "z", Way::Edit),
        ]);
        let timeline = Timeline::put_together(&known, &list);
        let ids: Vec<&str> = timeline
            .changes()
            .iter()
            .map(|change| &*change.to.id)
            .collect();
        assert_eq!(ids, ["x", "y", "q", "z"]);
    }
}
