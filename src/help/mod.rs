//! Help: pages by name, found by words; the same in the window and on the command line.
//!
//! What the program knows of itself (functions, findings, actions) becomes pages here; the rest is written in
//! `assets/help`, a folder for each language. How a page looks is left to whoever shows it.

mod glossary;
mod made;
mod pages;
mod printed;
mod reader;

pub use glossary::{Word, glossary};
pub use made::function_page;
pub use pages::{Group, Page, page, pages, search};
pub use printed::printed;
pub use reader::{Block, Span, blocks, plain, spans};
