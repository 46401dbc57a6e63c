//! What the cutter is told besides the pieces.

use draft::{ClothUse, Piece, Severity};
use sewing::On;
use style::{Level, MeasureId, PartId, SeamId, Side, Subject};
use trade::{Length, Share, StitchDensity, Washed};
use words::{Given, Said, key, say};

use crate::band::BandCut;
use crate::cut::Cutter;

use crate::seams_before_wash::{Leg, SeamBeforeWash, Settled};
use crate::selvedge::ClothEdge;
use crate::skew::{MOST_TWIST, outseam_forward, twist};
use sewing::wash::{AgainstSkew, INNER_APART, cloth_key};

impl Cutter<'_> {
    /// Pocketing and lining that are cut for the shell's shrinkage, and what that comes to.
    pub fn say_inner(&mut self) {
        for cloth in [ClothUse::Pocketing, ClothUse::Lining] {
            let (own, shell) = (self.washes.of(cloth), self.washes.of(ClothUse::Shell));
            let used = self.garment.pattern.pieces.iter().any(|p| p.cloth == cloth);
            if !used || own.shrinkage.apart(shell.shrinkage) <= INNER_APART {
                continue;
            }
            let tight = own.shrinkage.warp > shell.shrinkage.warp
                || own.shrinkage.weft > shell.shrinkage.weft;
            // What is left of a length cut for the shell, against the shell beside it.
            let against = |own: Share, shell: Share| -> Said {
                let left = (1.0 - own.to_ratio()) / (1.0 - shell.to_ratio()) - 1.0;
                let by = Share::ratio(left.abs()).figure();
                if left < 0.0 {
                    say::CuttingShorter { by }.into()
                } else {
                    say::CuttingLonger { by }.into()
                }
            };
            let across = against(own.shrinkage.weft, shell.shrinkage.weft);
            let along = against(own.shrinkage.warp, shell.shrinkage.warp);
            let (warp, weft) = (own.shrinkage.warp.figure(), own.shrinkage.weft.figure());
            let shell_warp = shell.shrinkage.warp.figure();
            let shell_weft = shell.shrinkage.weft.figure();
            let message: Said = if tight {
                say::CuttingInnerTight {
                    across,
                    along,
                    shell_warp,
                    shell_weft,
                    warp,
                    weft,
                }
                .into()
            } else {
                say::CuttingInner {
                    across,
                    along,
                    shell_warp,
                    shell_weft,
                    warp,
                    weft,
                }
                .into()
            };
            let severity = if tight {
                Severity::Warning
            } else {
                Severity::Note
            };
            let found = self.finding(
                "cutting::inner-cloth",
                severity,
                Subject::Cloth(cloth_key(&self.garment.doc, cloth).to_owned()),
                message,
            );
            self.findings.push(if tight {
                found.help(key::CUTTING_INNER_HELP)
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
        let by = without.moves.in_mm(1);
        let turn: Said = match outseam_forward(skew) {
            None | Some(Side::Left) => say::CuttingTurnLeft { by }.into(),
            Some(Side::Right) => say::CuttingTurnRight { by }.into(),
        };
        let fault = MOST_TWIST.in_mm(1);
        let turn: Said = if without.faulty {
            say::CuttingTurnMore { fault, turn }.into()
        } else {
            say::CuttingTurnLess { fault, turn }.into()
        };
        let skew = skew.figure();
        let message: Said = match self.against {
            AgainstSkew::Straight => say::CuttingSkewStraight { skew, turn }.into(),
            AgainstSkew::Sheared => say::CuttingSkewSheared { skew, turn }.into(),
            AgainstSkew::GrainTurned => say::CuttingSkewTurned { skew, turn }.into(),
        };
        let straight = self.against == AgainstSkew::Straight;
        let (severity, help) = match (straight, without.faulty) {
            (true, true) => (Severity::Warning, Some(key::CUTTING_SKEW_HELP)),
            (true, false) => (Severity::Note, None),
            (false, true) => (Severity::Note, Some(key::CUTTING_SKEW_LAY_HELP)),
            (false, false) => (Severity::Note, Some(key::CUTTING_SKEW_LITTLE_HELP)),
        };
        let about = Subject::Cloth(cloth_key(&self.garment.doc, ClothUse::Shell).to_owned());
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
            if seam.join.seam == SeamId::Band
                && (band_refused || self.band_cut != BandCut::Unstated)
            {
                continue;
            }
            let alike = walked
                .iter()
                .filter(|w| w.join.seam == seam.join.seam)
                .all(|w| (w.gap() - seam.gap()).abs() < Length::mm(0.01));
            if seam.leg == Leg::Right && alike {
                continue;
            }
            let by = seam.gap().abs().in_mm(1);
            let (severity, said): (_, Said) = match seam.settled {
                Settled::Even => continue,
                Settled::Eased { a_is_fuller } => (
                    Severity::Note,
                    say::CuttingSeamEased {
                        by,
                        piece: first_of(if a_is_fuller {
                            seam.join.a.0
                        } else {
                            seam.join.b.0
                        }),
                    }
                    .into(),
                ),
                Settled::No => (Severity::Error, say::CuttingSeamUnequal { by }.into()),
            };
            let message: Said = match seam.leg {
                _ if alike => said,
                Leg::Both => said,
                Leg::Left => say::CuttingLeftLeg { said }.into(),
                Leg::Right => say::CuttingRightLeg { said }.into(),
            };
            let found = self.finding(
                "cutting::seam-before-wash",
                severity,
                seam.join.name,
                message,
            );
            self.findings.push(if seam.settled == Settled::No {
                found.help(key::CUTTING_SEAM_HELP)
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
        let sewn = Washed::new(StitchDensity::per_inch(8.0));
        let at_machine = sewn.unwashed(shell.warp).figure();
        let found = self.finding(
            "cutting::thread",
            Severity::Note,
            PartId::SewingThread,
            say::CuttingThread {
                density: at_machine.figure_per_inch(),
                shrinkage: shell.warp.figure(),
            },
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
                    key::CUTTING_EDGE_NONE,
                )
                .help(key::CUTTING_EDGE_NONE_HELP);
            self.findings.push(found);
            return;
        };
        if edge.widest - edge.narrowest < Length::mm(1.0) {
            return;
        }
        let (narrowest, widest) = (edge.narrowest.in_mm(1), edge.widest.in_mm(1));
        let (message, help): (Said, Said) = if edge.runs_out < Length::mm(1.0) {
            (
                say::CuttingEdgeCurved { narrowest, widest }.into(),
                key::CUTTING_EDGE_CURVED_HELP.into(),
            )
        } else {
            // The yoke seam of the back is as long as that of the yoke and the dart, so what is taken off
            // the dart the outseam comes in by.
            let out = edge.runs_out.in_mm(1);
            (
                say::CuttingEdgeRunsOut {
                    narrowest,
                    out,
                    widest,
                }
                .into(),
                say::CuttingEdgeRunsOutHelp { out }.into(),
            )
        };
        let about = piece.id;
        let found = self.finding("cutting::cloth-edge", Severity::Note, about, message);
        self.findings.push(found.help(help));
    }
}

fn first_of(run: draft::EdgeRun) -> Given {
    run.first()
        .map_or_else(|| "".into(), |(piece, _)| piece.within().into())
}
