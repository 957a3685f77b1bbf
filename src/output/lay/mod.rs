//! Cloth: how pieces are laid on it, and how much of it must be bought.

pub mod packing;
