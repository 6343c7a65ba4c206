//! Entry.

fn main() {}
