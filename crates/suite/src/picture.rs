//! Two pictures compared as an eye would: small shifts of grey along an edge are nothing, a line
//! that moved or a part that is missing is something.

use std::fs::{self, File};
use std::io::{BufReader, BufWriter};
use std::path::Path;

/// A picture in shades of grey, 0 black to 255 white, row by row.
#[derive(Clone, PartialEq, Eq)]
pub struct Picture {
    /// Pixels in a row.
    pub width: usize,
    /// Rows.
    pub height: usize,
    /// `width * height` shades.
    pub shades: Vec<u8>,
}

/// How far apart two pictures are.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Apart {
    /// The share of pixels, 0 to 1, that have no pixel of nearly their shade near the same place.
    pub share: f64,
    /// The mean difference of shades, 0 to 255.
    pub mean: f64,
}

/// Shades this near count as the same. Stitches on dark denim stand out by little more.
const NEAR_SHADE: u8 = 12;

impl Picture {
    /// Reads a PNG of 8 bits a channel and turns it grey (ITU-R BT.601 weights); what is see-through is white.
    ///
    /// # Panics
    /// The file is not there or is no such PNG.
    pub fn read(file: &Path) -> Picture {
        let open = File::open(file).unwrap_or_else(|e| panic!("{}: {e}", file.display()));
        let mut decoder = png::Decoder::new(BufReader::new(open));
        decoder.set_transformations(png::Transformations::normalize_to_color8());
        let mut reader = decoder.read_info().expect("a PNG");
        let mut bytes = vec![
            0;
            reader
                .output_buffer_size()
                .expect("a picture that fits memory")
        ];
        let info = reader.next_frame(&mut bytes).expect("a whole PNG");
        let channels = info.color_type.samples();
        let shade = |pixel: &[u8]| {
            let grey = if channels < 3 {
                f64::from(pixel[0])
            } else {
                0.299 * f64::from(pixel[0])
                    + 0.587 * f64::from(pixel[1])
                    + 0.114 * f64::from(pixel[2])
            };
            let cover = if channels.is_multiple_of(2) {
                f64::from(pixel[channels - 1]) / 255.0
            } else {
                1.0
            };
            (grey * cover + 255.0 * (1.0 - cover)).round() as u8
        };
        let pixels = info.width as usize * info.height as usize;
        Picture {
            width: info.width as usize,
            height: info.height as usize,
            shades: bytes
                .chunks_exact(channels)
                .take(pixels)
                .map(shade)
                .collect(),
        }
    }

    /// Writes a grey PNG, and the folder it lies in.
    ///
    /// # Panics
    /// It cannot be written.
    pub fn write(&self, file: &Path) {
        if let Some(folder) = file.parent() {
            fs::create_dir_all(folder).expect("the folder can be made");
        }
        let open = File::create(file).unwrap_or_else(|e| panic!("{}: {e}", file.display()));
        let (width, height) = (self.width as u32, self.height as u32);
        let mut encoder = png::Encoder::new(BufWriter::new(open), width, height);
        encoder.set_color(png::ColorType::Grayscale);
        encoder.set_depth(png::BitDepth::Eight);
        encoder.set_compression(png::Compression::High);
        let mut writer = encoder.write_header().expect("a PNG can be begun");
        writer
            .write_image_data(&self.shades)
            .expect("a PNG can be written");
    }

    /// The upper left part of the picture.
    ///
    /// # Panics
    /// The picture is smaller.
    pub fn cut_to(&self, width: usize, height: usize) -> Picture {
        assert!(
            width <= self.width && height <= self.height,
            "there is not so much of the picture"
        );
        let rows = self.shades.chunks_exact(self.width).take(height);
        Picture {
            width,
            height,
            shades: rows.flat_map(|row| &row[..width]).copied().collect(),
        }
    }

    /// The picture at a whole fraction of its size, each pixel the mean of those it stands for.
    pub fn smaller(&self, by: usize) -> Picture {
        let (width, height) = (self.width / by, self.height / by);
        let mut shades = Vec::with_capacity(width * height);
        for y in 0..height {
            for x in 0..width {
                let rows = (0..by).map(|k| (y * by + k) * self.width + x * by);
                let sum: u32 = rows
                    .flat_map(|row| &self.shades[row..row + by])
                    .map(|shade| u32::from(*shade))
                    .sum();
                shades.push((sum / (by * by) as u32) as u8);
            }
        }
        Picture {
            width,
            height,
            shades,
        }
    }

    /// How far apart this picture and another of the same size are, and a picture that shows where
    /// (dark). `None` when their sizes differ.
    pub fn apart(&self, other: &Picture) -> Option<(Apart, Picture)> {
        if (self.width, self.height) != (other.width, other.height) {
            return None;
        }
        let mut shown = Picture {
            shades: vec![255; self.shades.len()],
            ..self.clone()
        };
        let mut far = 0usize;
        for (k, shade) in shown.shades.iter_mut().enumerate() {
            let (x, y) = (k % self.width, k / self.width);
            if !(other.has_near(x, y, self.shades[k]) && self.has_near(x, y, other.shades[k])) {
                *shade = 0;
                far += 1;
            }
        }
        let pairs = self.shades.iter().zip(&other.shades);
        let sum: f64 = pairs.map(|(a, b)| f64::from(a.abs_diff(*b))).sum();
        let count = self.shades.len().max(1) as f64;
        let apart = Apart {
            share: far as f64 / count,
            mean: sum / count,
        };
        Some((apart, shown))
    }

    /// Whether a shade is found at a place or right beside it, or lies between shades found there.
    fn has_near(&self, x: usize, y: usize, shade: u8) -> bool {
        let (mut darkest, mut lightest) = (u8::MAX, u8::MIN);
        for y in y.saturating_sub(1)..=(y + 1).min(self.height - 1) {
            for x in x.saturating_sub(1)..=(x + 1).min(self.width - 1) {
                let found = self.shades[y * self.width + x];
                darkest = darkest.min(found);
                lightest = lightest.max(found);
            }
        }
        (darkest.saturating_sub(NEAR_SHADE)..=lightest.saturating_add(NEAR_SHADE)).contains(&shade)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    /// A black upright line on white.
    fn line(at: usize) -> Picture {
        let shades = (0..400)
            .map(|k| if k % 20 == at { 0 } else { 255 })
            .collect();
        Picture {
            width: 20,
            height: 20,
            shades,
        }
    }

    #[test]
    fn a_line_moved_by_a_pixel_is_the_same_and_by_three_is_not() {
        assert_eq!(line(8).apart(&line(9)).unwrap().0.share, 0.0);
        assert!(line(8).apart(&line(11)).unwrap().0.share >= 0.1);
    }

    #[test]
    fn a_missing_line_is_seen_from_both_sides() {
        let blank = Picture {
            shades: vec![255; 400],
            ..line(0)
        };
        assert!(line(8).apart(&blank).unwrap().0.share >= 0.05);
        assert!(blank.apart(&line(8)).unwrap().0.share >= 0.05);
    }

    #[test]
    fn pictures_of_different_sizes_cannot_be_compared() {
        assert!(line(8).apart(&line(8).smaller(2)).is_none());
    }

    #[test]
    fn a_picture_comes_back_as_it_was_written() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("deep/line.png");
        line(4).write(&file);
        assert!(Picture::read(&file) == line(4));
    }
}
