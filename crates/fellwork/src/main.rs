//! The fellwork command: one style file in, a production pack out.
fn main() {}
