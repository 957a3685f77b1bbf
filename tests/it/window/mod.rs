//! The window, driven by events and seen through the accessibility tree, judged by the saved file on the command line.

mod actions;
mod blocks;
mod chart;
mod chart_large;
mod cloth;
mod comparing;
mod derived;
mod finishing;
mod formulas;
mod hands;
mod help;
mod moments;
mod outlines;
mod painted;
mod pencil;
mod preferences;
mod publishing;
mod safety;
mod seeing;
mod spoken;
mod stage;
mod tape;
mod views;
mod whole;
