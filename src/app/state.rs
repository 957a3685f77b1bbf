//! What the window shows and how, apart from the draft; and what a person wishes in a frame.

use std::path::PathBuf;
use std::sync::Arc;

use egui::Rect;
use kurbo::{Point, Vec2};

use super::ask::Ask;
use super::blocks::{BlockWish, Blocks};
use super::chart::{ChartShown, ChartWish};
use super::cloth::{ClothShown, ClothWish};
use super::finder::Finder;
use super::guide::GuideWish;
use super::help::{HelpState, HelpWish};
use super::own::OwnWish;
use super::pencil::{Pencil, Stroke};
use super::publish::{PublishAsk, PublishWish};
use super::release::{ReleaseAsk, ReleaseWish};
use super::roll::Rolling;
use super::shapes::Drawn;
use super::sheets::Printing;
use super::tape::{Hold, Tape};
use super::trace::{TraceAsk, TraceWish};
use super::underlay::{LayWish, Underlay};
use super::versus::Versus;
use super::view::View;
use crate::document::{Address, Part};
use crate::session::{Act, Command, Completions, Computed, Grip, Own, Reach};

/// What a person asks for in a frame. Rooms write them, the window grants them after the last pass of the frame.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Wish {
    /// Do this action.
    Act(Act),
    /// Make this change.
    Run(Command),
    /// Show this size or person strong.
    Choose(String),
    /// Show this view of the garment.
    SeeView(String),
    /// Show this size alone, or again with the others.
    Alone(String),
    /// Choose this part.
    Part(Part),
    /// Choose nothing.
    Nothing,
    /// Print this.
    Printing(Printing),
    /// A piece was taken on the pages, where it lay.
    OnPagesFrom(String, Point),
    /// It is moved there.
    OnPagesTo(String, Point),
    /// Something in the dialog for outlines.
    Trace(TraceWish),
    /// Something of a picture underneath.
    Lay(LayWish),
    /// Something in the dialog of what is published.
    Publish(PublishWish),
    /// Something in the dialog for a release.
    Edition(ReleaseWish),
    /// Something of cloth and lay plans.
    Cloth(ClothWish),
    /// Stop publishing.
    StopPrinting,
    /// Show this in the middle.
    Room(Room),
    /// Something of the chart.
    Chart(ChartWish),
    /// See this part of the table; none: all of it.
    Look(Option<View>),
    /// Go to a finding, by its place in the list.
    Finding(usize),
    /// Silence, mend: replace the text of a formula by a proposal.
    Mend(usize),
    /// To which sizes a pull goes.
    Reach(Reach),
    /// The pointer is over something that can be pulled.
    Hover(Option<Address>),
    /// It was taken, at this place of the table.
    Grab(Grabbed, Point),
    /// A point or handle is chosen beside others, or not any more.
    Also(Address),
    /// A piece was taken on the table, by its name, at this place of the table.
    OnTableFrom(String, Point),
    /// It is moved there.
    OnTableTo(Point),
    /// It is pulled to this place; whether by an offset at the end of its formula.
    PullTo(Point, bool),
    /// It is pushed by keys, mm.
    Nudge(Address, Vec2, bool),
    /// It was let go.
    Release,
    /// The pencil was used.
    Pencil(Stroke),
    /// The tape was used.
    Tape(Hold),
    /// Take a step of a derived piece out, by its place; asked first where something uses what it makes.
    TakeOut(String, usize),
    /// Give up what is going on and leave everything as it was.
    Cancel,
    /// A field was entered.
    Enter(Field),
    /// Something was typed in the field.
    Typed(Field, String),
    /// The cursor of a formula field stands at this byte; whether the person asks what may follow.
    Cursor(Spot, String, usize, bool),
    /// To this line of what may follow.
    OfferedAt(Option<usize>),
    /// The list of what may follow closes until something else is typed.
    NoOffers,
    /// The cursor goes into this field as soon as it is there.
    Want(Field),
    /// The pointer is over something that the formula could name.
    Pointed(Option<String>),
    /// The field was left.
    Leave(Field, String),
    /// A text in the dialog was typed.
    AskTyped(usize, String),
    /// A choice in the dialog.
    AskDone(usize),
    /// The finder's text.
    FinderTyped(String),
    /// The line of the finder on which the person is.
    FinderAt(usize),
    /// That line was taken.
    FinderTake(usize),
    /// A file was chosen in the system's dialog.
    Chosen(Option<PathBuf>),
    /// Open or fold the values in the contents.
    FoldValues,
    /// Take up work that was left behind, or throw it away.
    Recover(usize, bool),
    /// The file on the disk changed: load it again, or keep what is here.
    Outside(bool),
    /// Of the help.
    Help(HelpWish),
    /// Of the guided first draft.
    Guide(GuideWish),
    /// Go to a difference, by its place in the list.
    Difference(usize),
    /// Of blocks taken from other drafts.
    Block(BlockWish),
    /// Of what is the person's own: preferences, recent drafts, examples.
    Own(OwnWish),
}

/// A field in which a person types.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub(super) enum Field {
    /// A text of the draft.
    Text(Address, bool),
    /// A cell: row and label.
    Cell(String, String),
    /// A person's number: person and row.
    PersonCell(String, String),
    /// The edges of a seam's side, one behind the other.
    SeamSide(String, bool),
    /// The values that keep a seam or condition true.
    FoundBy(Part),
}

/// What is typed in the field that has the focus.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Typing {
    pub field: Field,
    pub text: String,
}

/// Where a formula is typed.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Spot {
    /// In a field of a card.
    Field(Field),
    /// In a field of the dialog.
    Ask(usize),
}

/// What may follow in the formula that is typed.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Offered {
    /// The field, its text and the place of the cursor in it, in bytes.
    pub of: (Spot, String, usize),
    /// Of which revision and size.
    pub revision: (u64, String),
    pub what: Completions,
    /// The line on which the person is; none: the keys are the field's.
    pub at: Option<usize>,
    /// The cursor stands where a name may follow: pointing at the sheet puts one in.
    pub wants_name: bool,
}

impl Offered {
    /// The piece or drawing in which the formula stands.
    pub fn frame(&self) -> Option<&str> {
        match &self.of.0 {
            Spot::Field(Field::Text(at, _)) => at.part.frame(),
            _ => None,
        }
    }
}

/// What a person takes hold of.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Grabbed {
    /// A point or handle; with those that are chosen beside it, if it is one of them.
    Grip(Address),
    /// An edge or line.
    Edge(Part),
}

/// Something that is pulled.
pub(super) struct Held {
    /// What moves, and how far for each step of the hand.
    pub grips: Vec<(Grip, f64)>,
    /// How it is called, for undo.
    pub called: String,
    /// Where the pointer was when it was taken, on the table.
    pub from: Point,
    /// What was known then.
    pub computed: Arc<Computed>,
    /// The pieces as they were, in the chosen size.
    pub ghost: Vec<Arc<Drawn>>,
}

impl Held {
    /// The grip of a point or handle, if it is one of those that are held.
    pub fn grip(&self, at: &Address) -> Option<&Grip> {
        self.grips.iter().map(|(g, _)| g).find(|g| g.at == *at)
    }
}

/// What would happen to what is under the pointer.
#[derive(Clone)]
pub(super) struct Hint {
    pub at: Address,
    pub revision: u64,
    pub grip: Result<Grip, String>,
}

/// How loud a message is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Tone {
    /// Something was done.
    Told,
    /// Something was not done.
    Refused,
}

/// What stands in the middle of the window.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Room {
    /// The pieces on the table.
    Table,
    /// The chart.
    Chart,
    /// The pages as they will print.
    Sheets,
    /// What cloth is to be bought, and how it is laid.
    Cloth,
    /// The booklet as it will print.
    Booklet,
    /// A seam that is rolled.
    Roll(Rolling),
    /// A page of help, by its name.
    Help(String),
    /// What differs from another draft.
    Differences,
    /// How the window looks.
    Preferences,
    /// Where to begin.
    Welcome,
}

/// What is shown and how.
pub(super) struct Shown {
    /// The address of the chosen size or person.
    pub case: String,
    /// Whether the other sizes are drawn too.
    pub behind: bool,
    /// What stands in the middle.
    pub room: Room,
    /// What of the chart is shown.
    pub chart: ChartShown,
    /// What of the cloth is shown.
    pub cloth: ClothShown,
    /// What is to be printed.
    pub printing: Printing,
    /// A piece that is moved on the pages, and where it lay.
    pub on_pages: Option<(String, Point)>,
    /// The part of the table that is seen; none: all of it, whatever the window's size.
    pub view: Option<View>,
    /// The pencil, while it is in the hand.
    pub pencil: Option<Pencil>,
    /// The tape, while it is in the hand.
    pub tape: Option<Tape>,
    /// Where the sheet was in the last frame.
    pub sheet: Rect,
    /// Whether all findings are listed.
    pub all_findings: bool,
    /// The finding that was gone to.
    pub finding: Option<usize>,
    /// The chosen part.
    pub part: Option<Part>,
    /// To which sizes a pull goes.
    pub reach: Reach,
    /// The field that is typed in.
    pub typing: Option<Typing>,
    /// The field that was left last: Tab goes on from it.
    pub left: Option<Field>,
    /// What may follow in it.
    pub offered: Option<Offered>,
    /// A field into which the cursor goes as soon as it is there.
    pub wanted: Option<Field>,
    /// The name of what the pointer is over while a formula wants one.
    pub named: Option<String>,
    /// What is pulled.
    pub held: Option<Held>,
    /// Points and handles that are chosen beside each other: what happens to one happens to all.
    pub also: Vec<Address>,
    /// A piece that is moved on the table: where its frame lay, and where it was taken.
    pub on_table: Option<(String, Point, Point)>,
    /// Whether curvature is shown.
    pub bends: bool,
    /// What is under the pointer.
    pub hint: Option<Hint>,
    /// The dialog that is open.
    pub ask: Option<Ask>,
    /// The dialog for outlines, if it is open.
    pub trace: Option<TraceAsk>,
    /// The dialog of what is published, if it is open.
    pub publish: Option<PublishAsk>,
    /// The dialog for a release, if it is open.
    pub release: Option<ReleaseAsk>,
    /// The draft that is compared with another one.
    pub versus: Option<Versus>,
    /// Blocks taken from other drafts, against their files.
    pub blocks: Blocks,
    /// Pictures underneath.
    pub under: Underlay,
    /// The finder, if it is open.
    pub finder: Option<Finder>,
    /// A message.
    pub message: Option<(Tone, String)>,
    /// Whether the values are open in the contents.
    pub values_open: bool,
    /// A part that is to be seen in the contents.
    pub scroll_to_part: bool,
    /// What is the person's own.
    pub own: Own,
    /// How the help is read.
    pub help: HelpState,
    /// The revision of the draft when the first page was shown.
    pub welcomed: u64,
    /// The step of the guided draft that is shown on request; none: the first that is not done.
    pub step: Option<usize>,
    /// The control that the guide pointed at, and whether it is to get the focus in this frame.
    pub pointed: Option<(Act, bool)>,
}

impl Shown {
    pub fn new(case: String) -> Self {
        Self {
            case,
            behind: true,
            room: Room::Table,
            chart: ChartShown::default(),
            cloth: ClothShown::default(),
            printing: Printing::default(),
            on_pages: None,
            view: None,
            pencil: None,
            tape: None,
            sheet: Rect::ZERO,
            all_findings: false,
            finding: None,
            part: None,
            reach: Reach::All,
            typing: None,
            left: None,
            offered: None,
            wanted: None,
            named: None,
            held: None,
            also: Vec::new(),
            on_table: None,
            bends: false,
            hint: None,
            ask: None,
            trace: None,
            publish: None,
            release: None,
            versus: None,
            blocks: Blocks::default(),
            under: Underlay::default(),
            finder: None,
            message: None,
            values_open: false,
            scroll_to_part: false,
            own: Own::default(),
            help: HelpState::default(),
            welcomed: 0,
            step: None,
            pointed: None,
        }
    }

    /// The piece or drawing that is chosen, or in which something is chosen.
    pub fn frame(&self) -> Option<&str> {
        self.part.as_ref().and_then(Part::frame)
    }
}
