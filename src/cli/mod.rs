//! The command line: the same engine without a window.
//!
//! Data on stdout, messages on stderr. Exits: 0 fine; 1 the content says no; 2 cannot read or write, or a wrong call;
//! 3 no display for the window. Every message says what, where and what to do.

mod actions;
mod block;
mod chart;
mod compare;
mod desktop;
mod findings;
mod finish;
mod format;
mod functions;
mod help;
mod lay;
mod lay_call;
mod lengthen;
mod measure;
mod proof;
mod publish;
mod publish_calls;
mod release;
mod report;
mod roll;
mod tables;
mod trace;
mod window;

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::{Args, Parser, Subcommand};

pub use lay_call::{LaidCall, LayCall};
pub use publish_calls::{PaperCall, PublishCall, Purpose, ReleaseCall, ReleaseWhat, TablesCall, WhatCall};
pub use window::{draft_for_window, no_window, windowless};

use crate::base::Finding;
use crate::compute::{InView, Model};
use crate::document::Draft;
use crate::file;
use crate::texts::say;

/// All is well.
pub const FINE: u8 = 0;
/// The content says no.
pub const NO: u8 = 1;
/// Cannot read or write, or a wrong call.
pub const TROUBLE: u8 = 2;
/// No display for the window.
pub const NO_DISPLAY: u8 = 3;

/// A drafting table for garment patterns: formulas over a body chart, seams kept true in every size.
#[derive(Debug, Parser)]
#[command(name = "tracewheel", version, args_conflicts_with_subcommands = true, disable_help_subcommand = true)]
pub struct Call {
    /// What to do; without it the window opens.
    #[command(subcommand)]
    pub command: Option<Command>,
    /// The draft to open in the window.
    pub file: Option<PathBuf>,
}

/// The commands.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Evaluate formulas in every size, or in the named ones.
    Measure(MeasureCall),
    /// List everything that was found, in all sizes.
    Proof {
        /// The draft.
        file: PathBuf,
        /// Only what concerns this view; may be repeated.
        #[arg(long = "view", value_name = "VIEW")]
        views: Vec<String>,
        /// As JSON on stdout.
        #[arg(long)]
        json: bool,
    },
    /// Say what differs between two drafts: pieces, edges, values, sizes, by how much and in which sizes.
    Compare(CompareCall),
    /// Print cut lines, notches, marks and grain lines.
    Finish {
        /// The draft.
        file: PathBuf,
        /// Only in this size (or for this person), as `SIZE`, or `VIEW//SIZE` in one view; may be repeated.
        #[arg(long = "size")]
        sizes: Vec<String>,
        /// Only in this view; may be repeated.
        #[arg(long = "view", value_name = "VIEW")]
        views: Vec<String>,
        /// Pieces that are cut on the fold are unfolded.
        #[arg(long)]
        whole: bool,
        /// As JSON on stdout: by size and piece, in mm.
        #[arg(long)]
        json: bool,
    },
    /// Roll side two of a seam along side one: notches on both sides, and how the pieces lie.
    Roll {
        /// The draft.
        file: PathBuf,
        /// The seam.
        seam: String,
        /// In this size (or for this person), or `VIEW//SIZE`; without it the base size.
        #[arg(long)]
        size: Option<String>,
        /// In this view; without it the first that has the seam.
        #[arg(long, value_name = "VIEW")]
        view: Option<String>,
        /// How far, from the start of the seam, in mm.
        #[arg(long, default_value_t = 0.0, value_name = "MM")]
        to: f64,
        /// As JSON on stdout.
        #[arg(long)]
        json: bool,
    },
    /// Lengthen or shorten a piece at one of its lines: everything beyond it moves as a block.
    Lengthen {
        /// The draft.
        file: PathBuf,
        /// The piece.
        piece: String,
        /// Its line.
        line: String,
        /// By how much in all, as `2 cm`; below zero it gets shorter.
        #[arg(allow_hyphen_values = true)]
        by: String,
        /// What becomes of comments in the file, which rewriting does not keep.
        #[arg(long, value_enum)]
        comments: Option<Comments>,
    },
    /// Take outlines of an SVG file into a draft as pieces; without `--into`, list them.
    Trace(TraceCall),
    /// Write the pieces in true size.
    Publish(PublishCall),
    /// Print the tables for the buyer: body chart, finished measures, strips, notions, cutting list.
    Tables(TablesCall),
    /// Lay the pieces on cloth: lay plans, how much to buy for each size and width, pictures.
    Lay(Box<LayCall>),
    /// Release an edition: all files, the draft and digests in a folder of its own; copy one again; check one.
    Release(ReleaseCall),
    /// The body chart: list it, add a size, import or export it.
    Chart {
        /// The draft.
        file: PathBuf,
        /// What to do.
        #[command(subcommand)]
        what: ChartCall,
    },
    /// Blocks: pieces taken from other drafts. List them with what changed there, take one, take changes over.
    Block {
        /// The draft.
        file: PathBuf,
        /// What to do.
        #[command(subcommand)]
        what: BlockCall,
    },
    /// List what can be done in the window: names, keys, menus.
    Actions {
        /// As JSON on stdout.
        #[arg(long)]
        json: bool,
    },
    /// List the functions of formulas: what they take and give, what they are for, an example.
    Functions {
        /// As JSON on stdout.
        #[arg(long)]
        json: bool,
    },
    /// List every kind of finding: code, severity, what it means, whether it can be silenced.
    Findings {
        /// As JSON on stdout.
        #[arg(long)]
        json: bool,
    },
    /// Print a page of help: about a panel, a function, a finding, an action, a word of the trade. Without words: all pages.
    Help {
        /// The name of a page, or words that it holds.
        topic: Vec<String>,
    },
    /// Put this program into the menu of the desktop, with its icon, and have drafts opened by it; for this person only.
    Desktop {
        /// Take that away again.
        #[arg(long)]
        remove: bool,
    },
    /// Rewrite the file in its standard form.
    Format {
        /// The draft.
        file: PathBuf,
        /// What becomes of comments, which the standard form does not keep.
        #[arg(long, value_enum)]
        comments: Option<Comments>,
    },
}

/// Arguments of `measure`.
#[derive(Args, Debug)]
pub struct MeasureCall {
    /// The draft.
    pub file: PathBuf,
    /// Formulas, with names in full: `length(front.armhole)`, `bust + bust_ease`.
    #[arg(required = true, allow_negative_numbers = true)]
    pub formulas: Vec<String>,
    /// Only in this size (or for this person), as `SIZE`, or `VIEW//SIZE` in one view; may be repeated.
    #[arg(long = "size")]
    pub sizes: Vec<String>,
    /// Only in this view; may be repeated.
    #[arg(long = "view", value_name = "VIEW")]
    pub views: Vec<String>,
    /// With this value or row overridden for this run, as `bust_ease=10 cm`; a value that is found is thereby given.
    #[arg(long = "set", value_name = "NAME=FORMULA")]
    pub sets: Vec<String>,
    /// As JSON on stdout: {"formula": {"size": number or null}} in mm, mm2, degrees or plain.
    #[arg(long)]
    pub json: bool,
}

/// Arguments of `compare`.
#[derive(Args, Debug)]
pub struct CompareCall {
    /// The draft as it was.
    pub old: PathBuf,
    /// The draft as it is.
    pub new: PathBuf,
    /// Only in this size (or for this person); may be repeated.
    #[arg(long = "size")]
    pub sizes: Vec<String>,
    /// Only in this view; may be repeated.
    #[arg(long = "view", value_name = "VIEW")]
    pub views: Vec<String>,
    /// Only what concerns this piece or drawing; may be repeated.
    #[arg(long = "piece")]
    pub pieces: Vec<String>,
    /// As JSON on stdout: mm, degrees, plain.
    #[arg(long)]
    pub json: bool,
    /// A plain list for testers and buyers, by piece, with the pieces that are to be printed again.
    #[arg(long, conflicts_with = "json")]
    pub errata: bool,
}

/// Arguments of `trace`.
#[derive(Args, Debug)]
pub struct TraceCall {
    /// The SVG file.
    pub svg: PathBuf,
    /// The draft to which the pieces are added.
    #[arg(long, value_name = "FILE")]
    pub into: Option<PathBuf>,
    /// Only this outline, by its number or name in the list, and how the piece is called; may be repeated.
    #[arg(long = "piece", value_name = "OUTLINE=NAME")]
    pub pieces: Vec<String>,
    /// One unit of the file is so long, such as `0.5 mm`.
    #[arg(long, value_name = "LENGTH", conflicts_with_all = ["width", "css_px"])]
    pub unit: Option<String>,
    /// The first outline that is taken is so wide, such as `23.5 cm`.
    #[arg(long, value_name = "LENGTH", conflicts_with = "css_px")]
    pub width: Option<String>,
    /// One unit of the file is a CSS pixel, 96 to the inch.
    #[arg(long)]
    pub css_px: bool,
    /// Lines that turn by more than this make a corner, in degrees; without it 15.
    #[arg(long, value_name = "DEGREES")]
    pub corner: Option<f64>,
    /// What becomes of comments in the draft, which rewriting does not keep.
    #[arg(long, value_enum)]
    pub comments: Option<Comments>,
}

/// What becomes of comments.
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
pub enum Comments {
    /// They are kept in the draft's note.
    Keep,
    /// They are lost.
    Drop,
}

/// What to do with blocks.
#[derive(Debug, Subcommand)]
pub enum BlockCall {
    /// Print the blocks, what changed in their own drafts, and what taking that over would change here, in mm and sizes.
    List,
    /// Take pieces of another draft, with all that they need.
    Take {
        /// The other draft.
        from: PathBuf,
        /// Only this piece; may be repeated.
        #[arg(long = "piece")]
        pieces: Vec<String>,
        /// What the block is called here; without it as its file.
        #[arg(long)]
        name: Option<String>,
        /// What is put in front of all names that come along, but for rows and materials.
        #[arg(long, default_value = "")]
        prefix: String,
        /// What becomes of comments in the file, which rewriting does not keep.
        #[arg(long, value_enum)]
        comments: Option<Comments>,
    },
    /// Take over what changed in the draft of a block.
    Accept {
        /// The block; without it all.
        name: Option<String>,
        /// Which side counts where a part was changed on both.
        #[arg(long, value_enum)]
        keep: Option<KeepCall>,
        /// What becomes of comments in the file, which rewriting does not keep.
        #[arg(long, value_enum)]
        comments: Option<Comments>,
    },
    /// What was taken stays, and follows the block no more.
    Untie {
        /// The block.
        name: String,
        /// What becomes of comments in the file, which rewriting does not keep.
        #[arg(long, value_enum)]
        comments: Option<Comments>,
    },
    /// Say where the draft of a block lies now.
    Move {
        /// The block.
        name: String,
        /// Its file.
        to: PathBuf,
        /// What becomes of comments in the file, which rewriting does not keep.
        #[arg(long, value_enum)]
        comments: Option<Comments>,
    },
}

/// Which side counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
pub enum KeepCall {
    /// What is in this draft.
    Here,
    /// What is in the block's own.
    There,
}

/// What to do with the chart.
#[derive(Debug, Subcommand)]
pub enum ChartCall {
    /// Print the chart.
    List,
    /// Add a size. Rows that are given no number get a proposal, marked guessed until it is confirmed.
    Add {
        /// Its label.
        size: String,
        /// Numbers, as `bust=86 cm` or, as a step from the size before, `bust=+2 cm`.
        #[arg(value_name = "ROW=LENGTH")]
        cells: Vec<String>,
        /// Between these two neighbours. Without it: where its label belongs if labels are numbers, else at the end.
        #[arg(long, num_args = 2, value_names = ["A", "B"])]
        between: Option<Vec<String>>,
        /// On which axis.
        #[arg(long, default_value = "girth")]
        axis: String,
        /// What becomes of comments in the file, which rewriting does not keep.
        #[arg(long, value_enum)]
        comments: Option<Comments>,
    },
    /// Take rows and cells from a table: first line `row`, `kind` (may be left out) and the sizes.
    Import {
        /// The table, comma or tab separated.
        csv: PathBuf,
        /// The unit of cells without one.
        #[arg(long)]
        unit: Option<String>,
        /// What becomes of comments in the file, which rewriting does not keep.
        #[arg(long, value_enum)]
        comments: Option<Comments>,
    },
    /// Print the chart as a comma separated table, cells as typed.
    Export,
}

/// A message for stderr and the exit that goes with it.
#[derive(Debug)]
pub struct Stopped {
    message: String,
    exit: u8,
}

impl Stopped {
    fn trouble(message: impl Into<String>) -> Self {
        Self { message: message.into(), exit: TROUBLE }
    }
    fn no(message: impl Into<String>) -> Self {
        Self { message: message.into(), exit: NO }
    }
}

/// What a command prints, and its exit.
#[derive(Debug, Default)]
pub struct Done {
    /// For stdout.
    pub data: String,
    /// For stderr.
    pub messages: String,
    /// The exit.
    pub exit: u8,
}

/// Runs a command.
pub fn run(command: &Command) -> ExitCode {
    let done = match command {
        Command::Measure(call) => measure::run(call),
        Command::Compare(call) => compare::run(call),
        Command::Proof { file, views, json } => proof::run(file, views, *json),
        Command::Finish { file, sizes, views, whole, json } => finish::run(file, (sizes, views), *whole, *json),
        Command::Roll { file, seam, size, view, to, json } => {
            roll::run(file, seam, (size.as_deref(), view.as_deref()), *to, *json)
        }
        Command::Lengthen { file, piece, line, by, comments } => lengthen::run(file, [piece, line, by], *comments),
        Command::Trace(call) => trace::run(call),
        Command::Publish(call) => publish::run(call),
        Command::Tables(call) => tables::run(call),
        Command::Lay(call) => lay::run(call),
        Command::Release(call) => release::run(call),
        Command::Chart { file, what } => chart::run(file, what),
        Command::Block { file, what } => block::run(file, what),
        Command::Actions { json } => actions::run(*json),
        Command::Functions { json } => functions::run(*json),
        Command::Findings { json } => findings::run(*json),
        Command::Help { topic } => help::run(topic),
        Command::Desktop { remove } => desktop::run(*remove),
        Command::Format { file, comments } => format::run(file, *comments),
    };
    let done = done.unwrap_or_else(|s| Done { messages: named(&s.message), exit: s.exit, ..Done::default() });
    ExitCode::from(report::print(&done))
}

/// Opens a draft, or says why not.
fn open(path: &Path) -> Result<file::OpenedFile, Stopped> {
    file::open(path).map_err(|e| Stopped::trouble(e.to_string()))
}

/// The cases that are asked for by sizes and views.
fn asked(model: &Model, sizes: &[String], views: &[String]) -> Result<Vec<InView>, Stopped> {
    model.asked(sizes, views).map_err(|e| Stopped::trouble(e.to_string()))
}

/// Before a file is rewritten: what becomes of its comments.
fn mind_comments(opened: &mut file::OpenedFile, path: &Path, wish: Option<Comments>) -> Result<(), Stopped> {
    if !opened.had_comments {
        return Ok(());
    }
    match wish {
        Some(Comments::Drop) => Ok(()),
        Some(Comments::Keep) => {
            let kept = file::comments(&opened.text).join("\n");
            let note = std::mem::take(&mut opened.draft.note);
            opened.draft.note = if note.is_empty() { kept } else { format!("{note}\n{kept}") };
            Ok(())
        }
        None => Err(Stopped::no(say!("cli-comments", file = path.display().to_string()))),
    }
}

/// Writes a draft back, if the file is still the one that was read.
fn save(path: &Path, draft: &Draft, opened: &file::OpenedFile) -> Result<(), Stopped> {
    file::save(path, draft, Some(&opened.fingerprint)).map(|_| ()).map_err(|e| Stopped::trouble(e.to_string()))
}

/// A message for stderr under the name of the program.
fn named(words: &str) -> String {
    format!("tracewheel: {words}\n")
}

/// A finding of the program itself.
fn internal(finding: &Finding) -> Stopped {
    Stopped::no(crate::texts::message(finding, crate::base::DisplayUnit::Mm))
}
