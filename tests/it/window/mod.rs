//! The window, driven by events and seen through the accessibility tree, judged by the saved file on the command line.

mod actions;
mod finishing;
mod moments;
mod outlines;
mod safety;
mod seeing;
mod stage;
