//! The pack as a PDF: that it is made, is the same every time, and survives any text.
#![allow(clippy::unwrap_used)]

mod sample;

use papers::{
    Caution, ChartRow, ChartValues, Drawing, Fact, Figure, LengthLine, Pack, PaperError, PdfOptions, Scale,
    SeamBlock, StitchRowText, pack_pdf,
};

fn options() -> PdfOptions {
    PdfOptions { date: Some(jiff::civil::date(2026, 11, 25)) }
}

fn page_count(pdf: &[u8]) -> usize {
    pdf.windows(12).filter(|bytes| *bytes == b"/Type /Page\n" || *bytes == b"/Type/Page\n\x20").count()
}

#[test]
fn probe() {
    for _ in 0..3 {
        let t = std::time::Instant::now();
        let pdf = pack_pdf(&sample::pack(), &options()).unwrap();
        println!("{:?} {} bytes", t.elapsed(), pdf.len());
        std::fs::write("/tmp/pack.pdf", pdf).unwrap();
    }
}
