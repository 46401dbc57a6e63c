//! Pictures as PNG, with what is said of them inside.

use std::io;

use look::Picture;

/// Who wrote it: by this text in a picture it is known as ours.
const SOFTWARE: &str = "Software";
const OURS: &str = "Fellwork";

/// The picture as a file; what is said of it stands in it as text.
///
/// # Errors
/// It is too large to be written.
pub fn png(picture: &Picture, said: &str) -> io::Result<Vec<u8>> {
    let mut out = Vec::new();
    let mut encoder = png::Encoder::new(&mut out, picture.wide, picture.high);
    encoder.set_color(png::ColorType::Rgb);
    encoder.set_depth(png::BitDepth::Eight);
    encoder.set_source_srgb(png::SrgbRenderingIntent::Perceptual);
    let text = |error: png::EncodingError| io::Error::other(error.to_string());
    encoder
        .add_text_chunk(SOFTWARE.to_owned(), OURS.to_owned())
        .map_err(text)?;
    encoder
        .add_itxt_chunk("Comment".to_owned(), said.to_owned())
        .map_err(text)?;
    let mut writer = encoder.write_header().map_err(text)?;
    writer.write_image_data(&picture.rgb).map_err(text)?;
    writer.finish().map_err(text)?;
    Ok(out)
}

/// Whether these bytes are a picture that Fellwork wrote.
pub fn is_ours(bytes: &[u8]) -> bool {
    let reader = png::Decoder::new(io::Cursor::new(bytes)).read_info();
    reader.is_ok_and(|reader| {
        let texts = &reader.info().uncompressed_latin1_text;
        texts
            .iter()
            .any(|t| t.keyword == SOFTWARE && t.text == OURS)
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn a_picture_of_ours_is_known_as_ours_and_no_other() {
        let picture = Picture {
            wide: 2,
            high: 1,
            rgb: vec![1, 2, 3, 4, 5, 6],
        };
        let bytes = png(&picture, "a drawing, not a promise").unwrap();
        assert!(is_ours(&bytes));
        assert!(!is_ours(&bytes[..bytes.len() / 4]));
        assert!(!is_ours(b"\x89PNG\r\n\x1a\n"));
        let said = b"a drawing, not a promise";
        assert!(bytes.windows(said.len()).any(|part| part == said));
    }
}
