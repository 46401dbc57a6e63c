//! `fellwork look`.

use std::path::PathBuf;
use std::str::FromStr;

use clap::Args as ClapArgs;
use look::PlaceId;
use style::Size;
use trade::Length;

use super::{FaceWord, Over, ViewWord};

/// `fellwork look`.
#[derive(Debug, ClapArgs)]
#[command(
    override_usage = "fellwork look [OPTIONS] --view <VIEW> -o <FILE> <STYLE>",
    after_help = after_help()
)]
pub struct Look {
    /// The style's folder or its style.toml
    pub style: PathBuf,
    /// Which side of the garment
    #[arg(long)]
    pub view: ViewWord,
    /// Which face of the cloth
    #[arg(long, value_name = "FACE", default_value = "outside")]
    pub face: FaceWord,
    /// The place in the middle of the picture, by its name
    #[arg(long, value_name = "PLACE", default_value = "whole")]
    pub at: NamedPlace,
    /// How much of the pair the picture is wide, such as 60mm; what suits the place when left out
    #[arg(long, value_name = "LENGTH")]
    pub width: Option<Length>,
    /// How far it is worn, from 0, raw, over 0.2, rinsed, to 1, worn
    #[arg(long, value_name = "SHARE", default_value_t = 0.0)]
    pub wear: f64,
    /// Where the sun stands, in degrees anticlockwise from the right of the picture
    #[arg(long, value_name = "DEGREES", default_value_t = 135.0)]
    pub sun: f64,
    /// How many pixels the picture is wide
    #[arg(long, value_name = "N", default_value_t = 1000, value_parser = clap::value_parser!(u32).range(16..=8192))]
    pub pixels: u32,
    /// The size, such as 32x32; the base size when left out
    #[arg(long)]
    pub size: Option<Size>,
    /// Where the picture goes; - prints it
    #[arg(short, long, value_name = "FILE")]
    pub output: PathBuf,
    #[command(flatten)]
    pub over: Over,
}

fn after_help() -> String {
    let places: Vec<String> = PlaceId::ALL
        .iter()
        .map(|place| format!("  {}", place.code()))
        .collect();
    format!(
        "\
Examples:
  fellwork look saltmarsh/styles/ferryman --view front -o pair.png
  fellwork look saltmarsh/styles/ferryman --view back --at \"back pocket right\" \\
      --width 60mm --wear 0.5 -o pocket.png

Places, as far as the view shows them:
{}

A picture is a drawing computed from the file, not a promise; how it wears is a forecast.",
        places.join("\n")
    )
}

/// A place by its name.
#[derive(Clone, Copy, Debug)]
pub struct NamedPlace(pub PlaceId);

impl FromStr for NamedPlace {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let known = || {
            let names: Vec<&str> = PlaceId::ALL.iter().map(|place| place.code()).collect();
            format!("no such place: name one of {}", names.join(", "))
        };
        PlaceId::of(text.trim()).map(Self).ok_or_else(known)
    }
}
