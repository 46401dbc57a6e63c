//! Sections, views and sheets are drawn in the words of their reader: in a made-up language nothing stands on them but its
//! own words, figures, and names that the maker gave.

use std::collections::BTreeSet;
use std::sync::atomic::AtomicBool;

use cut_sheets::{
    LayMarks, NestLook, PatternSet, PieceCaption, corner_sheet, lay_sheet, nest_point, nest_sheet,
    nests_overview, piece_number, piece_sheet, piece_thumbnail, pieces_overview,
};
use cutting::{CutSize, Plan, SizePairs, Spread, SpreadRules, Way, cut};
use drawing::{
    PlanFor, Sheet, View, garment_picture, garment_view, measure_sheets, seam_section,
    seam_section_thumbnail, yarn_plan_sheet,
};
use lay::{Lay, Limits, Options, Splice, search};
use sewing::{Face, Garment, make};
use style::{Loaded, Seam, Size, known};
use trade::{Length, System};
use words::Words;

use crate::two_languages::{MARK, marked};

/// The demo, cut and laid.
struct Demo {
    loaded: Loaded,
    garment: Garment,
    run: Vec<CutSize>,
    spread: Spread,
    lay: Lay,
}

impl Demo {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let file = style::write_demo(&folder.path().join("demo")).unwrap();
        let loaded = style::load(&file).unwrap();
        let plan = Plan::of(&loaded.style);
        let sewn = |size: Size| make(&loaded.style, &loaded.collection, size);
        let sizes = [
            Size::new(32, 32),
            Size::new(30, 32),
            Size::new(32, 34),
            Size::new(34, 32),
        ];
        let run: Vec<CutSize> = sizes.map(|size| cut(&sewn(size), &plan)).into();
        let shell = &loaded.style.cloth.shell;
        let cloth = &loaded.collection.cloths[shell];
        let pairs = SizePairs {
            label: "32x32",
            cut: &run[0],
            pairs: 1,
        };
        let rules = SpreadRules::plain(Way::TwoWay, Length::mm(2.0));
        let spread = Spread::new(&[pairs], shell, cloth, &rules);
        let options = Options {
            limits: Limits {
                time: None,
                places: Some(1),
            },
            workers: 1,
            ..Options::default()
        };
        let never = AtomicBool::new(false);
        let lay = search(&spread.problem, &options, &never, &mut |_| ()).unwrap();
        Self {
            garment: sewn(sizes[0]),
            run,
            spread,
            lay,
            loaded,
        }
    }

    /// The seams of the demo, and each seam in each of its constructions.
    fn seams(&self) -> Vec<Seam> {
        let own = self.garment.seams.iter();
        let others = own.clone().flat_map(|seam| {
            let constructions = known::seam(seam.id).constructions.iter();
            constructions.map(|construction| Seam {
                construction: *construction,
                ..seam.clone()
            })
        });
        own.cloned().chain(others).collect()
    }

    fn sections(&self, words: &Words) -> Vec<Sheet> {
        let drawn = |seam: &Seam| {
            [
                seam_section(&self.garment, seam, words),
                seam_section_thumbnail(&self.garment, seam, words),
            ]
        };
        self.seams().iter().flat_map(drawn).flatten().collect()
    }

    fn views(&self, words: &Words) -> Vec<Sheet> {
        let mut all = Vec::new();
        for view in [View::Front, View::Back] {
            for face in [Face::Outside, Face::Inside] {
                all.push(garment_view(&self.garment, view, face, words));
                all.push(garment_picture(&self.garment, view, face, words));
            }
        }
        all.extend(measure_sheets(&self.garment.pattern, words));
        let plan = sewing::yarn::plan(&self.garment);
        for reader in [PlanFor::Maker, PlanFor::Workroom] {
            let collection = &self.garment.collection;
            all.push(yarn_plan_sheet(&plan, collection, reader, words));
        }
        all
    }

    fn cut_sheets(&self, words: &Words) -> Vec<Sheet> {
        let (cut, pattern) = (&self.run[0], &self.garment.pattern);
        let look = NestLook {
            base: cut.size,
            scale: 0.2,
            type_size: 1.0,
            named: true,
        };
        let mut all = vec![corner_sheet(cut, words)];
        for piece in &cut.pieces {
            let caption = PieceCaption {
                number: piece_number(pattern, piece),
                style_and_size: true,
                scale: 0.2,
                type_size: 1.0,
            };
            all.push(piece_sheet(piece, &caption, words));
            all.push(piece_thumbnail(piece, words));
            let at = nest_point(piece).unwrap();
            let nest = cutting::nest(&self.run, piece.piece, piece.part, piece.on, at).unwrap();
            all.push(nest_sheet(&self.run, &nest, &look, words));
        }
        all.extend(pieces_overview(pattern, cut, words).sheets);
        all.extend(nests_overview(&self.run, cut.size, words).sheets);
        let wide = Length::cm(90.0);
        let (nested, left_out) = PatternSet::nested(&self.run, cut.size, words);
        assert!(left_out.is_empty());
        for set in [PatternSet::of_size(pattern, cut, words), nested] {
            all.push(set.on_width(wide, true).sheet);
        }
        let cloth = &self.loaded.collection.cloths[&self.loaded.style.cloth.shell];
        let marks = LayMarks {
            heading: String::new(),
            splices: vec![Splice {
                from: Length::cm(40.0),
                until: Length::cm(60.0),
            }],
            zones: 2,
        };
        let read = (words, System::Metric);
        all.push(lay_sheet(&self.spread, &self.lay, cloth, &marks, read));
        all
    }

    fn sheets(&self, words: &Words) -> Vec<Sheet> {
        let mut all = self.sections(words);
        all.extend(self.views(words));
        all.extend(self.cut_sheets(words));
        all
    }

    /// Every word of the names the maker gave.
    fn names(&self) -> BTreeSet<String> {
        let (style, collection) = (&self.loaded.style.style, &self.loaded.collection);
        let mut all = vec![style.name.as_str(), style.code.as_str()];
        all.extend(
            self.loaded
                .style
                .labels
                .iter()
                .filter_map(|label| label.text.as_deref()),
        );
        for (key, cloth) in &collection.cloths {
            all.extend([key.as_str(), cloth.name.as_str()]);
        }
        for (key, yarn) in &collection.yarns {
            all.extend([key.as_str(), yarn.name.as_str(), yarn.colour_name.as_str()]);
        }
        for (key, trim) in &collection.trims {
            all.extend([key.as_str(), trim.name.as_str(), trim.text.as_str()]);
        }
        all.iter().flat_map(|name| parts(name)).collect()
    }
}

/// The words of a text, without the signs round them.
fn parts(text: &str) -> impl Iterator<Item = String> {
    let words = text.split(|c: char| !c.is_alphabetic());
    words.filter(|word| word.len() > 1).map(str::to_owned)
}

/// What stands on a sheet, its title first.
fn said(sheet: &Sheet) -> Vec<&str> {
    let texts = sheet.texts().map(|text| text.words.as_str());
    std::iter::once(sheet.title.as_str()).chain(texts).collect()
}

/// Signs of units.
const UNITS: [&str; 4] = ["mm", "cm", "in", "tex"];

#[test]
fn sections_views_and_sheets_are_drawn_in_the_words_of_their_reader() {
    let demo = Demo::new();
    let (plain, strange) = (demo.sheets(Words::english()), demo.sheets(&marked()));
    // Longer words may ask for one more page of an overview, so the sheets are not paired.
    for sheets in [&plain, &strange] {
        assert!(sheets.len() > 120, "only {} sheets", sheets.len());
    }
    let names = demo.names();
    let mut foreign = BTreeSet::new();
    let (mut ours, mut theirs) = (0, 0);
    for sheet in &plain {
        let of_english = said(sheet);
        assert!(of_english.iter().all(|said| !said.contains(MARK)));
        ours += of_english.len();
    }
    for strange in &strange {
        assert!(strange.title.contains(MARK), "{}", strange.title);
        for text in said(strange) {
            theirs += usize::from(text.contains(MARK));
            // A word with the mark is the made-up language's own; "32x32" is a size.
            let words = text.split_whitespace().filter(|word| !word.contains(MARK));
            let words = words.filter(|word| !word.starts_with(|c: char| c.is_ascii_digit()));
            let left = words
                .flat_map(parts)
                .filter(|word| !names.contains(word) && !UNITS.contains(&word.as_str()));
            foreign.extend(left.map(|word| format!("{word} in {text:?} of {:?}", strange.title)));
        }
    }
    assert!(ours > 1500 && theirs > 1000, "{ours} and {theirs} texts");
    assert!(foreign.is_empty(), "{foreign:#?}");
}
