//! The window, driven by events and seen through the accessibility tree, judged by the saved file on the command line.

mod actions;
mod chart;
mod chart_large;
mod finishing;
mod moments;
mod safety;
mod seeing;
mod stage;
