//! `fellwork story`.

use std::path::PathBuf;

use clap::Args as ClapArgs;
use jiff::civil::Date;
use style::Size;

use super::Over;

/// `fellwork story`.
#[derive(Debug, ClapArgs)]
#[command(after_help = "\
Examples:
  fellwork story saltmarsh/styles/ferryman -o ferryman.html
  fellwork story saltmarsh/styles/ferryman -o ferryman.pdf --wear 0.2

What is told are the sentences of [[why]] in the style, in their order, each with a picture; the rest follows from the files. \
Suppliers, prices, findings and what is open are not in it. The page of the web carries its pictures and opens without a network.")]
pub struct Story {
    /// The style's folder or its style.toml
    pub style: PathBuf,
    /// Where it goes, as .pdf or .html; - prints the PDF
    #[arg(short, long, value_name = "FILE")]
    pub output: PathBuf,
    #[command(flatten)]
    pub over: Over,
    /// The size that is drawn and counted, such as 32x32; the base size when left out
    #[arg(long)]
    pub size: Option<Size>,
    /// How far the pair is worn in the pictures, from 0, raw, over 0.2, rinsed, to 1, worn
    #[arg(long, value_name = "SHARE", default_value_t = 0.0)]
    pub wear: f64,
    /// The date of the PDF; today when left out
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub date: Option<Date>,
}
