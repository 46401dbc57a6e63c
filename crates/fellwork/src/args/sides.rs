//! Answers with two sides and an = between them.

use std::str::FromStr;

use style::Size;

/// `--pairs`: a size and how many pairs of it.
#[derive(Clone, Copy, Debug)]
pub struct Pairs {
    /// The size.
    pub size: Size,
    /// How many.
    pub count: u32,
}

impl FromStr for Pairs {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        /// More than one lay of any cutting room holds.
        const MOST: u32 = 200;
        let (size, count) = text
            .split_once('=')
            .ok_or_else(|| "write a size and a number, such as 32x32=4".to_owned())?;
        let size = size.trim().parse().map_err(|why| format!("{why}"))?;
        let count = count.trim().parse().ok().filter(|n| (1..=MOST).contains(n));
        let count = count.ok_or_else(|| format!("pairs are a whole number from 1 to {MOST}"))?;
        Ok(Pairs { size, count })
    }
}

/// `--piece`: a piece of the style and its name in the file.
#[derive(Clone, Debug)]
pub struct NamedPiece {
    /// The program's name.
    pub own: String,
    /// The file's.
    pub theirs: String,
}

impl FromStr for NamedPiece {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let (own, theirs) = text.split_once('=').ok_or_else(|| {
            "write a piece and its name in the file, such as front=\"P-01\"".to_owned()
        })?;
        Ok(NamedPiece {
            own: own.trim().to_owned(),
            theirs: theirs.trim().to_owned(),
        })
    }
}

/// `--corners`: a piece of the style and the corners at which its edges begin.
#[derive(Clone, Debug)]
pub struct PieceCorners {
    /// The program's name of the piece.
    pub own: String,
    /// The corners, in the order of the edges.
    pub corners: Vec<String>,
}

impl FromStr for PieceCorners {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let (own, corners) = text
            .split_once('=')
            .ok_or_else(|| "write a piece and its corners, such as yoke=1,2,3,4".to_owned())?;
        Ok(PieceCorners {
            own: own.trim().to_owned(),
            corners: corners.split(',').map(|c| c.trim().to_owned()).collect(),
        })
    }
}

/// `--name`: a version and what it is called from now on.
#[derive(Clone, Debug)]
pub struct VersionName {
    /// Which version.
    pub version: String,
    /// Its name; `None` takes it away.
    pub name: Option<String>,
}

impl FromStr for VersionName {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let (version, name) = text.split_once('=').ok_or_else(|| {
            "write a version and its name, such as 12=\"first sample\"".to_owned()
        })?;
        let name = Some(name.trim()).filter(|name| !name.is_empty());
        Ok(VersionName {
            version: version.trim().to_owned(),
            name: name.map(str::to_owned),
        })
    }
}
