//! Letters as strokes: drawn for this room on a grid of four by six, as a stamp cuts them or a loom weaves them.

use crate::place::Place;

/// A letter's strokes: places on the grid, two digits each, strokes parted by a bar.
fn strokes_of(letter: char) -> Option<&'static str> {
    Some(match letter {
        'A' => "00 26 40|12 32",
        'B' => "00 06 26 35 34 23 03|23 42 41 30 00",
        'C' => "45 36 16 05 01 10 30 41",
        'D' => "00 06 26 44 42 20 00",
        'E' => "40 00 06 46|03 33",
        'F' => "00 06 46|03 33",
        'G' => "45 36 16 05 01 10 30 41 43 23",
        'H' => "00 06|40 46|03 43",
        'I' => "20 26",
        'J' => "46 41 30 10 01",
        'K' => "00 06|46 03|13 40",
        'L' => "06 00 40",
        'M' => "00 06 23 46 40",
        'N' => "00 06 40 46",
        'O' => "10 01 05 16 36 45 41 30 10",
        'P' => "00 06 36 45 44 33 03",
        'Q' => "10 01 05 16 36 45 41 30 10|22 40",
        'R' => "00 06 36 45 44 33 03|23 40",
        'S' => "45 36 16 05 04 13 33 42 41 30 10 01",
        'T' => "06 46|26 20",
        'U' => "06 01 10 30 41 46",
        'V' => "06 20 46",
        'W' => "06 10 24 30 46",
        'X' => "00 46|06 40",
        'Y' => "06 23 46|23 20",
        'Z' => "06 46 00 40",
        '0' => "10 01 05 16 36 45 41 30 10",
        '1' => "14 26 20",
        '2' => "05 16 36 45 44 00 40",
        '3' => "05 16 36 45 44 33 13|33 42 41 30 10 01",
        '4' => "30 36 02 42",
        '5' => "46 06 04 34 43 41 30 10 01",
        '6' => "45 36 16 05 01 10 30 41 42 33 13 02",
        '7' => "06 46 10",
        '8' => "13 04 05 16 36 45 44 33 13 02 01 10 30 41 42 33",
        '9' => "01 10 30 41 45 36 16 05 04 13 33 44",
        '.' => "20 20",
        ',' => "20 10",
        ':' => "21 21|24 24",
        '-' => "13 33",
        '+' => "13 33|22 24",
        '/' => "00 46",
        '\'' => "26 25",
        '&' => "40 05 16 25 24 02 01 10 20 42",
        '%' => "00 46|05 05|41 41",
        '°' => "15 26 35 24 15",
        '(' => "36 25 21 30",
        ')' => "16 25 21 10",
        _ => return None,
    })
}

/// From the left of one letter to that of the next, in units of the grid.
const ADVANCE: f32 = 5.6;
const HIGH: f32 = 6.0;
const LINE: f32 = 9.5;
/// Small letters are capitals so much smaller.
const SMALL: f32 = 0.78;

/// Words as strokes about a middle, as large as fits into a width and a height, over several lines where they have to.
/// Letters that are not known stay blank.
pub(crate) fn set(words: &str, wide: f32, high: f32) -> (Vec<[Place; 2]>, f32) {
    let length = words.chars().count();
    if length == 0 || length > 600 {
        return (Vec::new(), 0.0);
    }
    let best = (1..=14)
        .map(|lines| wrapped(words, length.div_ceil(lines)))
        .map(|lines| {
            let longest = lines.iter().map(|l| l.chars().count()).max().unwrap_or(1) as f32;
            let tall = (lines.len() as f32 - 1.0) * LINE + HIGH;
            ((wide / (longest * ADVANCE - 1.6)).min(high / tall), lines)
        })
        .max_by(|a, b| a.0.total_cmp(&b.0));
    let Some((unit, lines)) = best else {
        return (Vec::new(), 0.0);
    };
    let mut out = Vec::new();
    let tall = (lines.len() as f32 - 1.0) * LINE + HIGH;
    for (k, line) in lines.iter().enumerate() {
        let base = tall / 2.0 - HIGH - k as f32 * LINE;
        let start = -(line.chars().count() as f32 * ADVANCE - 1.6) / 2.0;
        for (n, letter) in line.chars().enumerate() {
            let left = start + n as f32 * ADVANCE;
            add(letter, [left, base], unit, &mut out);
        }
    }
    (out, unit)
}

fn add(letter: char, [left, base]: Place, unit: f32, out: &mut Vec<[Place; 2]>) {
    let upper = letter.to_uppercase().next().unwrap_or(letter);
    let size = if letter == upper { 1.0 } else { SMALL };
    let Some(strokes) = strokes_of(upper) else {
        return;
    };
    for stroke in strokes.split('|') {
        let places: Vec<Place> = stroke
            .split(' ')
            .filter_map(|pair| {
                let mut digits = pair.chars().filter_map(|c| c.to_digit(10));
                let (x, y) = (digits.next()? as f32, digits.next()? as f32);
                Some([(left + x * size) * unit, (base + y * size) * unit])
            })
            .collect();
        out.extend(places.windows(2).map(|w| [w[0], w[1]]));
    }
}

/// Words over lines of about so many letters.
fn wrapped(words: &str, most: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in words.split_whitespace() {
        match lines.last_mut() {
            Some(line) if line.chars().count() + word.chars().count() < most => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_stay_within_their_room() {
        for words in [
            "SALTMARSH YARD",
            "32x32",
            "Wash at 30 °C inside out, dry on a line.",
        ] {
            let (strokes, unit) = set(words, 60.0, 20.0);
            assert!(unit > 0.0 && strokes.len() > 10, "{words}");
            assert!(
                strokes
                    .iter()
                    .flatten()
                    .all(|p| p[0].abs() <= 30.1 && p[1].abs() <= 10.1),
                "{words}"
            );
        }
    }

    #[test]
    fn every_plain_letter_has_strokes() {
        assert!(
            ('A'..='Z')
                .chain('0'..='9')
                .all(|c| strokes_of(c).is_some())
        );
        assert!(set("", 10.0, 10.0).0.is_empty());
        assert!(set("日本", 10.0, 10.0).0.is_empty());
    }
}
