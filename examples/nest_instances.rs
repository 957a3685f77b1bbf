//! Packs a public instance of irregular strip packing and prints what came of it.

fn main() {}
