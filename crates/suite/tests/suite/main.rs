//! The whole job, judged from outside. One binary, so that it is linked once.

#![allow(clippy::unwrap_used)]

mod answers;
mod architecture;
mod beginnings;
mod browser;
mod browser_access;
mod browser_cutting;
mod browser_fields;
mod browser_history;
mod browser_hostile;
mod browser_keys;
mod browser_overlaid;
mod browser_start;
mod browser_story;
mod catalogue;
mod circles;
mod cut_pieces;
mod day;
mod demo;
mod details;
mod drawn_in_two_languages;
mod gathered;
mod licences;
mod one_build;
mod one_change;
mod pack;
mod pages;
mod paper;
mod pattern_files;
mod recomputed;
mod recover;
mod same_bytes;
mod small_words;
mod swap;
mod two_languages;
mod views;
