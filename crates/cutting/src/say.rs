//! What the cutter is told besides the pieces.

use draft::{ClothUse, Piece, Severity};
use sewing::On;
use style::{Level, MeasureId, PartId, Subject};
use trade::{Length, Share, StitchDensity, System};

use crate::band::BandCut;
use crate::cut::{Cutter, INNER_APART};
use crate::plan::cloth_key;
use crate::retrue::{Leg, SeamBeforeWash, Settled};
use crate::scale::AgainstSkew;
use crate::selvedge::ClothEdge;
use crate::skew::{MOST_TWIST, turns_towards, twist};
use crate::thread::density_at_machine;

impl Cutter<'_> {
    /// Pocketing and lining that are cut for the shell's shrinkage, and what that comes to.
    pub fn say_inner(&mut self) {
        for cloth in [ClothUse::Pocketing, ClothUse::Lining] {
            let (own, shell) = (self.washes.of(cloth), self.washes.of(ClothUse::Shell));
            let used = self.garment.pattern.pieces.iter().any(|p| p.cloth == cloth);
            if !used || own.shrinkage.apart(shell.shrinkage) <= INNER_APART {
                continue;
            }
            let percent = |s: Share| s.show(System::Metric);
            let tight = own.shrinkage.warp > shell.shrinkage.warp
                || own.shrinkage.weft > shell.shrinkage.weft;
            // What is left of a length cut for the shell, against the shell beside it.
            let against = |own: Share, shell: Share| {
                let left = (1.0 - own.to_ratio()) / (1.0 - shell.to_ratio()) - 1.0;
                let word = if left < 0.0 { "shorter" } else { "longer" };
                format!("{} {word}", percent(Share::ratio(left.abs())))
            };
            let then = format!(
                "after the wash they are {} along the warp and {} along the weft than drawn{}",
                against(own.shrinkage.warp, shell.shrinkage.warp),
                against(own.shrinkage.weft, shell.shrinkage.weft),
                if tight { ", and pull the shell" } else { "" },
            );
            let severity = if tight {
                Severity::Warning
            } else {
                Severity::Note
            };
            let found = self.finding(
                "cutting::inner-cloth",
                severity,
                Subject::Cloth(cloth_key(self.garment, cloth).to_owned()),
                format!(
                    "it shrinks by {} and {} (warp and weft), the shell by {} and {}; its pieces are cut for the shell's shrinkage, so that their edges fit when they are sewn, and {then}",
                    percent(own.shrinkage.warp),
                    percent(own.shrinkage.weft),
                    percent(shell.shrinkage.warp),
                    percent(shell.shrinkage.weft),
                ),
            );
            self.findings.push(if tight {
                found.help("wash this cloth before cutting")
            } else {
                found
            });
        }
    }

    /// Pieces cut against a skew, and what the legs would do without that.
    pub fn say_skew(&mut self) {
        let skew = self.washes.of(ClothUse::Shell).skew;
        if skew == Share::ZERO {
            return;
        }
        let spec = &self.garment.pattern.spec;
        let lower_leg = (spec[MeasureId::Inseam] - spec.level(Level::Knee)).max(Length::ZERO);
        let without = twist(skew, lower_leg);
        let shell = self
            .garment
            .collection
            .cloths
            .get(&self.garment.doc.cloth.shell);
        let towards = shell
            .and_then(|cloth| turns_towards(&cloth.construction))
            .map_or_else(String::new, |side| format!(" towards the {side}"));
        let turned = format!(
            "turn {}{towards} between knee and hem, {} the {} that count as a fault",
            mm(without.moves),
            if without.faulty {
                "more than"
            } else {
                "less than"
            },
            mm(MOST_TWIST),
        );
        let skew = skew.show(System::Metric);
        let against = |how: &str| {
            format!(
                "pieces are cut against a skew of {skew} {how}, so left and right differ on the cloth; cut straight, the seams would {turned}"
            )
        };
        let message = match self.washes.against {
            AgainstSkew::Straight => format!(
                "its weft lies {skew} askew after the wash and pieces are cut straight: the seams of the legs {turned}"
            ),
            AgainstSkew::Sheared => against("by shearing them"),
            AgainstSkew::GrainTurned => against("with their grain turned"),
        };
        let straight = self.washes.against == AgainstSkew::Straight;
        let (severity, help) = match (straight, without.faulty) {
            (true, true) => (
                Severity::Warning,
                Some("write skew = \"sheared\" or \"grain turned\" under [cutting]"),
            ),
            (true, false) => (Severity::Note, None),
            (false, true) => (
                Severity::Note,
                Some("lay all pieces of a pair in one direction, face up"),
            ),
            (false, false) => (Severity::Note, Some("such a cloth may be cut straight")),
        };
        let about = Subject::Cloth(cloth_key(self.garment, ClothUse::Shell).to_owned());
        let found = self.finding("cutting::skew", severity, about, message);
        self.findings.push(match help {
            Some(help) => found.help(help),
            None => found,
        });
    }

    /// Seams whose two sides differ before the wash.
    pub fn say_seams(&mut self, walked: &[SeamBeforeWash], band_refused: bool) {
        for seam in walked {
            // The band has its own words.
            if seam.join.seam == "band" && (band_refused || self.band_cut != BandCut::Unstated) {
                continue;
            }
            let alike = walked
                .iter()
                .filter(|w| w.join.seam == seam.join.seam)
                .all(|w| (w.gap() - seam.gap()).abs() < Length::mm(0.01));
            if seam.leg == Leg::Right && alike {
                continue;
            }
            let by = mm(seam.gap().abs());
            let leg = match seam.leg {
                _ if alike => "",
                Leg::Both => "",
                Leg::Left => "on the left leg, ",
                Leg::Right => "on the right leg, ",
            };
            let (severity, message) = match seam.settled {
                Settled::Even => continue,
                Settled::Eased { a_is_fuller } => (
                    Severity::Note,
                    format!(
                        "{leg}before the wash the side of the {} is {by} the longer, for it lies at another angle to the warp; it is eased on evenly",
                        if a_is_fuller {
                            first_of(seam.join.a.0)
                        } else {
                            first_of(seam.join.b.0)
                        }
                    ),
                ),
                Settled::No => (
                    Severity::Error,
                    format!("{leg}before the wash its two sides differ by {by}, too much to ease"),
                ),
            };
            let found = self.finding(
                "cutting::seam-before-wash",
                severity,
                seam.join.name,
                message,
            );
            self.findings.push(if seam.settled == Settled::No {
                found.help("turn the grain of the smaller piece so that both edges lie at the same angle to the warp; against a skew, write skew = \"grain turned\" under [cutting]")
            } else {
                found
            });
        }
    }

    /// Rows sewn before the wash come closer together with the cloth.
    pub fn say_thread(&mut self) {
        let shell = self.washes.of(ClothUse::Shell).shrinkage;
        if shell.warp.max(shell.weft) <= INNER_APART {
            return;
        }
        let sewn = StitchDensity::per_inch(8.0);
        let at_machine = density_at_machine(sewn, shell.warp);
        let found = self.finding(
            "cutting::thread",
            Severity::Note,
            PartId::SewingThread,
            format!(
                "a seam along the warp is {} shorter after the wash and its stitches that much closer: for 8 to the inch in the finished pair the machine is set to {}; polyester thread does not shrink with the cloth, so tensions are kept low or the seam will pucker",
                shell.warp.show(System::Metric),
                at_machine.show(System::Inch)
            ),
        );
        self.findings.push(found);
    }

    /// An allowance that cannot keep its width along the cloth's own edge.
    pub fn say_cloth_edge(&mut self, piece: &Piece, on: On, asked: bool, edge: Option<&ClothEdge>) {
        if on == On::Mirrored || !asked {
            return;
        }
        let Some(edge) = edge else {
            let found = self
                .finding(
                    "cutting::cloth-edge",
                    Severity::Error,
                    piece.id,
                    "its outseam is to lie on the cloth's own edge, and its grain does not run along that edge",
                )
                .help("write skew = \"sheared\" under [cutting], or neaten the outseam with an overedge stitch");
            self.findings.push(found);
            return;
        };
        if edge.widest - edge.narrowest < Length::mm(1.0) {
            return;
        }
        let widths = format!(
            "its allowance is between {} and {} wide",
            mm(edge.narrowest),
            mm(edge.widest)
        );
        let (message, help) = if edge.runs_out < Length::mm(1.0) {
            (
                format!(
                    "the cut runs along the cloth's own edge, which is straight, and the outseam is not: {widths}"
                ),
                "mark the seam line, and sew by the mark instead of by the edge".to_owned(),
            )
        } else {
            // The yoke seam of the back is as long as that of the yoke and the dart, so what is taken off
            // the dart the outseam comes in by.
            (
                format!(
                    "above the hip the outseam runs out by {}, for the slope of the seat and the dart of the yoke take out more than waist and seat differ by; the cut runs along the cloth's own edge, which is straight, so {widths}",
                    mm(edge.runs_out)
                ),
                format!(
                    "take {} off seat_dart under [shape] and the outseam runs straight; else mark the seam line, and sew by the mark instead of by the edge",
                    mm(edge.runs_out)
                ),
            )
        };
        let about = piece.id;
        let found = self.finding("cutting::cloth-edge", Severity::Note, about, message);
        self.findings.push(found.help(help));
    }
}

/// A short length in millimetres, to a tenth.
fn mm(length: Length) -> String {
    format!("{:.1} mm", length.to_mm())
}

fn first_of(run: draft::EdgeRun) -> String {
    run.first()
        .map_or_else(String::new, |(piece, _)| piece.name().to_lowercase())
}
