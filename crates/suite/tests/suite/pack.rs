//! The demo's pack, opened by programs that did not write it.

use std::path::{Path, PathBuf};
use std::process::Command;
use style::MeasureId;

use suite::fellwork::succeed;
use suite::outside::tool;
use suite::picture::Picture;
use tempfile::TempDir;

const DATE: &str = "2026-03-01";

/// A pack of the demo, in a folder that goes when it is dropped.
fn pack() -> (TempDir, PathBuf) {
    let folder = tempfile::tempdir().unwrap();
    let style = style::write_demo(&folder.path().join("demo")).unwrap();
    let pdf = folder.path().join("pack.pdf");
    succeed([
        "pack",
        style.to_str().unwrap(),
        "--date",
        DATE,
        "-o",
        pdf.to_str().unwrap(),
    ]);
    (folder, pdf)
}

fn says(program: &Path, arguments: &[&str], pdf: &Path, last: &[&str]) -> String {
    let output = Command::new(program)
        .args(arguments)
        .arg(pdf)
        .args(last)
        .output()
        .unwrap();
    let words = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{}: {words}", program.display());
    String::from_utf8(output.stdout).unwrap()
}

/// The words of every page, as they stand.
fn pages(pdf: &Path) -> Option<Vec<String>> {
    let text = says(&tool(&["pdftotext"])?, &["-layout"], pdf, &["-"]);
    // Every page ends with a form feed.
    let mut pages: Vec<String> = text.split('\u{c}').map(str::to_owned).collect();
    assert_eq!(pages.pop().as_deref(), Some(""));
    Some(pages)
}

#[test]
fn qpdf_finds_no_fault() {
    let Some(qpdf) = tool(&["qpdf"]) else { return };
    let (_folder, pdf) = pack();
    let said = says(&qpdf, &["--check"], &pdf, &[]);
    assert!(
        said.contains("No syntax or stream encoding errors found"),
        "{said}"
    );
}

#[test]
fn every_font_is_embedded_and_has_its_letters() {
    let Some(pdffonts) = tool(&["pdffonts"]) else {
        return;
    };
    let (_folder, pdf) = pack();
    let said = says(&pdffonts, &[], &pdf, &[]);
    let fonts: Vec<&str> = said.lines().skip(2).collect();
    assert!(!fonts.is_empty());
    // All of it is Latin: the typeface of Japanese letters stands last and is not asked.
    assert!(!said.contains("Noto"), "{said}");
    for font in fonts {
        // The columns emb, sub and uni, then object number and generation.
        let columns: Vec<&str> = font.split_whitespace().rev().take(5).collect();
        assert_eq!(columns[2..], ["yes", "yes", "yes"], "{font}");
    }
}

#[test]
fn the_document_says_what_it_is() {
    let Some(pdfinfo) = tool(&["pdfinfo"]) else {
        return;
    };
    let (_folder, pdf) = pack();
    let said = says(&pdfinfo, &[], &pdf, &[]);
    let value = |key: &str| {
        let line = said.lines().find(|line| line.starts_with(key));
        line.unwrap().split_once(':').unwrap().1.trim().to_owned()
    };
    assert!(value("Title").contains("Ferryman"));
    assert_eq!(value("Author"), "Saltmarsh Yard");
    assert_eq!(value("Tagged"), "yes");
    assert!(value("Page size").contains("A4"));
    assert!(value("CreationDate").contains("2026"));
}

/// What is open is said as open, and nothing of the demo stands in its place.
#[test]
fn a_new_labels_pack_has_nothing_of_the_demo() {
    let folder = tempfile::tempdir().unwrap();
    let (root, pdf) = (folder.path().join("own"), folder.path().join("own.pdf"));
    let (root, pdf_name) = (root.to_str().unwrap(), pdf.to_str().unwrap());
    succeed(["new", root, "--name", "Bittern"]);
    let style = format!("{root}/styles/bittern");
    succeed(["pack", &style, "--date", DATE, "-o", pdf_name]);
    let Some(pages) = pages(&pdf) else { return };
    let text = pages.concat();
    let small = text.to_lowercase();
    for word in [
        "saltmarsh",
        "ferryman",
        "azenha",
        "vale de arca",
        "portugal",
        "bight",
        "punt",
        "tideline",
        "bargeman",
        "oar plain",
        "rope ",
        "night ",
        "chalk",
        "keel",
        "rowlock",
    ] {
        let found = small.lines().find(|line| line.contains(word));
        assert_eq!(found, None, "{word}");
    }
    for words in [
        "for a workroom that is open",
        "– what it says",
        "It is open which workroom sews it",
        "It is open what the patch says or shows",
    ] {
        assert!(text.contains(words), "{words}");
    }
}

#[test]
fn every_page_is_headed_numbered_and_dated() {
    let (_folder, pdf) = pack();
    let Some(pages) = pages(&pdf) else { return };
    let annex = annex(&pages);
    // What the workroom reads is one document that can be held in a hand; the annex is the maker's.
    assert!((30..=54).contains(&annex), "{annex} pages for the workroom");
    assert!(
        pages.len() - annex <= 14,
        "{} pages of annex",
        pages.len() - annex
    );
    for (number, page) in pages.iter().enumerate() {
        let foot = format!("page {} of {}", number + 1, pages.len());
        for words in ["Ferryman", "SY-101", "Revision 1", "1 March 2026", &foot] {
            assert!(
                page.contains(words),
                "page {} does not say {words}",
                number + 1
            );
        }
    }
}

/// How many pages stand before the annex.
fn annex(pages: &[String]) -> usize {
    let annex = pages
        .iter()
        .skip(1)
        .position(|page| page.contains("annex for the maker"));
    annex.unwrap() + 1
}

/// A figure of the wrong side of the wash makes a pair of the wrong size, so every page says which it prints.
#[test]
fn every_page_with_figures_says_in_which_state_they_are() {
    let (_folder, pdf) = pack();
    let Some(pages) = pages(&pdf) else { return };
    let annex = annex(&pages);
    // "9 The garment": the contents of the cover are skipped.
    let page_of = |title: &str| {
        let is_title = |line: &str| {
            let number_off = line
                .trim_start()
                .trim_start_matches(|c: char| c.is_ascii_digit());
            number_off.len() < line.trim_start().len() && number_off.trim_start().starts_with(title)
        };
        let at = pages
            .iter()
            .skip(1)
            .position(|page| page.lines().any(is_title));
        at.unwrap_or_else(|| panic!("no page is headed {title}")) + 1
    };
    for (title, state) in [
        ("Materials", "before the wash"),
        ("Measurement chart", "after the wash"),
        ("Measurement chart before the wash", "before the wash"),
        ("The garment", "after the wash"),
        ("Sewing order", "before the wash"),
        ("Detail plates", "before the wash"),
    ] {
        let head: String = pages[page_of(title)].lines().take(2).collect();
        // A chart is of every size.
        let sizes = if title.contains("chart") {
            "all sizes"
        } else {
            "size 32x32"
        };
        let words = format!("{sizes} · figures {state}");
        assert!(head.contains(&words), "{title}: {head}");
    }
    let inspection = page_of("Inspection and packing");
    for (at, page) in pages.iter().enumerate().skip(page_of("Materials")) {
        // It may begin below the last plates, whose state that page says.
        if at == inspection {
            continue;
        }
        let head: String = page.lines().take(2).collect();
        let plain = (inspection..annex).contains(&at);
        let stated = head.contains("figures ") || head.contains("annex for the maker");
        assert_eq!(stated, !plain, "page {}: {head}", at + 1);
    }
    // What is open stands in one list, behind the cover.
    let asked = page_of("To ask before the first pair is cut");
    assert_eq!(asked, 1);
    // Codes are the maker's: the workroom knows nothing of them.
    for page in &pages[..annex] {
        assert!(!page.contains("::"), "{page}");
    }
    assert!(pages[annex..].concat().contains("sewing::"));
}

#[test]
fn the_chart_has_every_measure_and_size_with_its_value() {
    let (_folder, pdf) = pack();
    let Some(pages) = pages(&pdf) else { return };
    let start = pages
        .iter()
        .position(|page| page.contains("1 Waist"))
        .unwrap();
    let chart = &pages[start];
    for measure in MeasureId::ALL {
        let name = measure.words(words::Words::english());
        let row = chart.lines().find(|line| {
            line.trim_start_matches(|c: char| c.is_whitespace() || c.is_ascii_digit())
                .starts_with(name)
        });
        assert!(row.is_some(), "the chart has no {name}");
    }
    let numbers = |line: &str| -> Vec<f64> {
        line.split_whitespace()
            .filter_map(|word| word.parse().ok())
            .collect()
    };
    let waists: Vec<f64> = [28, 29, 30, 31, 32, 33, 34, 36, 38].map(f64::from).into();
    assert!(
        chart.lines().any(|line| numbers(line).ends_with(&waists)),
        "no row of sizes"
    );
    // The demo: a waist of 33 1/2 in at 32, and an inch more for each inch of size; 1 in is 2.54 cm.
    let row = chart
        .lines()
        .find(|line| line.trim_start().starts_with("1 Waist"))
        .unwrap();
    let printed = numbers(row);
    let printed = &printed[printed.len() - waists.len()..];
    for (waist, printed) in waists.iter().zip(printed) {
        let meant = (33.5 + (waist - 32.0)) * 2.54;
        assert!(
            (meant - printed).abs() < 0.0501,
            "waist {waist}: {printed} printed, {meant} meant"
        );
    }
}

#[test]
fn nothing_runs_off_a_page() {
    const DOTS_AN_INCH: usize = 50;
    const EDGE: usize = 6; // dots, 3 mm
    let Some(pdftoppm) = tool(&["pdftoppm"]) else {
        return;
    };
    let (folder, pdf) = pack();
    let place = folder.path().join("page");
    let dots = DOTS_AN_INCH.to_string();
    says(
        &pdftoppm,
        &["-r", &dots, "-gray", "-png"],
        &pdf,
        &[place.to_str().unwrap()],
    );
    let mut seen = 0;
    for entry in std::fs::read_dir(folder.path()).unwrap() {
        let file = entry.unwrap().path();
        if file.extension().is_none_or(|ext| ext != "png") {
            continue;
        }
        seen += 1;
        let page = Picture::read(&file);
        let inked = |x: usize, y: usize| page.shades[y * page.width + x] < 250;
        let (mut ink, mut off) = (0, 0);
        for y in 0..page.height {
            for x in (0..page.width).filter(|x| inked(*x, y)) {
                ink += 1;
                let inside = (EDGE..page.width - EDGE).contains(&x)
                    && (EDGE..page.height - EDGE).contains(&y);
                off += usize::from(!inside);
            }
        }
        assert!(ink > 100, "{} is empty", file.display());
        assert_eq!(off, 0, "{} has ink at its edge", file.display());
    }
    assert!(seen >= 12, "{seen} pages");
}

/// A label and a style named in Japanese: the typeface that has the letters is embedded, and no letter is left without.
#[test]
fn japanese_names_are_printed() {
    let Some(pdffonts) = tool(&["pdffonts"]) else {
        return;
    };
    let folder = tempfile::tempdir().unwrap();
    let (root, pdf) = (folder.path().join("own"), folder.path().join("own.pdf"));
    let (root, pdf_name) = (root.to_str().unwrap(), pdf.to_str().unwrap());
    succeed([
        "new",
        root,
        "--name",
        "渡し守",
        "--label",
        "潮風堂",
        "--code",
        "WM-1",
        "--folder",
        "watashi",
    ]);
    let style = format!("{root}/styles/watashi");
    succeed(["pack", &style, "--date", DATE, "-o", pdf_name]);
    let fonts = says(&pdffonts, &[], &pdf, &[]);
    assert!(fonts.contains("NotoSansJP"), "{fonts}");
    let Some(pages) = pages(&pdf) else { return };
    assert!(pages[0].contains("潮風堂") && pages[0].contains("渡し守"));
    assert!(!pages.concat().contains("papers::letters"));
}
