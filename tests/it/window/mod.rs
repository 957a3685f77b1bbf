//! The window, driven by events and seen through the accessibility tree, judged by the saved file on the command line.

mod actions;
mod finishing;
mod help;
mod moments;
mod preferences;
mod safety;
mod seeing;
mod stage;
