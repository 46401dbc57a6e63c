//! Drill marks that the pocket set over them does not cover.

use draft::{PieceId, Severity};
use geometry::{Point, contains};
use style::Subject;
use trade::Length;
use words::{key, say};

use crate::cut::Cutter;
use crate::marks::{SetOn, far_inside};
use crate::piece::{Drill, DrillKind};

/// A hole nearer than this to the edge of its pocket shows when the pocket is set a little askew (common practice).
const COVERED: Length = Length::mm(3.0);

impl Cutter<'_> {
    /// Says which pockets of a piece leave a mark of their own in sight; each pocket once, by its worst mark.
    pub fn say_marks_in_sight(&mut self, pockets: &[&SetOn], drills: &[Drill]) {
        for pocket in pockets {
            let outline: Vec<Point> = pocket
                .edges
                .iter()
                .flat_map(|edge| edge.dense(Length::mm(1.0)))
                .collect();
            let own = drills.iter().filter(|drill| {
                drill.kind == DrillKind::PocketCorner
                    && drill.on == pocket.on
                    && drill.name.starts_with(pocket.line.code())
            });
            let inside = |at: Point| {
                let far = Length::mm(far_inside(&outline, at));
                if contains(&outline, at) {
                    far
                } else {
                    Length::ZERO - far
                }
            };
            let least = own.map(|drill| inside(drill.at)).reduce(Length::min);
            if let Some(gap) = least.filter(|gap| *gap < COVERED) {
                self.say_in_sight(pocket.pocket, gap);
            }
        }
    }

    fn say_in_sight(&mut self, pocket: PieceId, gap: Length) {
        const CODE: &str = "cutting::mark-in-sight";
        let subject = Subject::Piece(pocket);
        let known = |found: &draft::Finding| found.code == CODE && found.subject == subject;
        if self.findings.iter().any(known) {
            return;
        }
        let message = say::CuttingMarkInSight {
            gap: gap.in_mm(1),
            least: COVERED.in_mm(1),
        };
        let found = self.finding(CODE, Severity::Warning, subject, message);
        self.findings
            .push(found.help(key::CUTTING_MARK_IN_SIGHT_HELP));
    }
}
