//! Changes to a draft, each all or nothing, undo, and what is computed of it.
//!
//! [`Work`] is the one door: the window and the tests hand it a [`Command`], it gives back the next draft and has it computed.
//! Beside it stand the changes that the command line makes to a draft of its own.

mod actions;
mod block;
mod choices;
mod command;
mod commands;
mod comparing;
mod complete;
mod computed;
mod delete;
mod examples;
mod frozen;
mod laying;
mod lengthen;
mod literal;
mod moved;
mod naming;
mod open_draft;
mod pencil;
mod places;
mod preferences;
mod publishing;
mod pull;
mod pull_edge;
mod recovery;
mod references;
mod release;
mod rename;
mod set;
mod shaping;
mod size;
mod stated_scale;
mod steps;
mod table;
mod taken;
mod tape;
mod traced_shape;
mod tracing;
mod underlay;
mod uses;
mod watch;
mod work;

pub use actions::{ACTIONS, Act, Action, Menu, When};
pub use block::{Block, Fate, Home, Laid, LaidCell, LaidRow, Parted, lay};
pub use choices::{Choice, Choosing, choices};
pub use command::{Command, EditError};
pub use commands::{
    ChartCommand, Deletion, FinishCommand, LayCommand, OutlineCommand, PartCommand, PieceCommand, PublishCommand,
    STEP_KINDS, StepCommand, Switch, TextCommand, ViewCommand, new_step, place_of, users_of_step,
};
pub use comparing::{Compared, Comparing};
pub use complete::{Completion, Completions, completions, wants_name};
pub use computed::{Computed, Wake};
pub use delete::{DeleteError, Deleting, delete, delete_size, stands_elsewhere, users};
pub use examples::{EXAMPLES, Example};
pub use laying::{
    HandFault, KeptLocked, KeptPlan, LayCell, LayEffort, LayHand, LayKey, LayRow, LayTable, LayWish, Laying, Longest,
    LongestStop, QUICK_MOVES, USUAL_MOVES, job_of, jobs_of, lay_table, lays, lays_until, longest, longest_until,
    plan_name, sizes_called, sizes_typed, usual_wishes, wish_of_plan,
};
pub use lengthen::{lengthen, lengthening};
pub use literal::{length_typed, length_with_unit, signed_length, unit_missing};
pub use naming::{check_free, comes_from, fresh_inner, fresh_name, inner_parts};
pub use open_draft::OpenDraft;
pub use pencil::{Joined, Pointing, Reading, Rounding, Sight, joined};
pub use places::{part_named, part_of_finding};
pub use preferences::{Left, LightWish, Own, Preferences, Recent, Spacing};
pub use publishing::{
    Order, OutputError, Outputs, PAGES, PrintFor, PrintWish, Progress, ProjectorWish, Published, SheetPlan, What,
    booklet_of, file_name, home_print, home_settings, how_many, outputs, photos, pieces_of_view, places_on, put_on,
    sheet_plan, title_of, wanted_pieces,
};
pub use pull::{Grip, Pull, Reach};
pub use pull_edge::edge_grips;
pub use recovery::{KeepError, Keeper, KeptAbout, LeftBehind, RecoveryFolder, TakenUp};
pub use release::{
    DRAFT, Last, Looked, MANIFEST, Manifest, ReleaseOrder, ReleaseStop, Released, ReleasedFile, last_beside,
    look_at_release, never_sewn, release, release_again, untold,
};
pub use rename::{RenameError, qualify_for, rename, rename_size};
pub use set::{SetError, set_for_run};
pub use shaping::base_with;
pub use size::{NewSize, SizeError, add_size};
pub use stated_scale::StatedScale;
pub use steps::{Step, length_unit, rounded_to, row_steps, step_rule, steps};
pub use table::{TableError, export_chart, import_chart};
pub use taken::{
    BlockCommand, Keep, LookedAt, PartChange, Standing, Taking, There, accept_block, block_path, look_at_blocks,
    move_block, named_beside, open_block, relative_to, standing, take_block, untie_block,
};
pub use tape::{TapeStop, tape_between};
pub use tracing::{TracedOutline, Tracing, closed_outlines, told_scale, trace};
pub use underlay::Lie;
pub use uses::{Use, used_by, used_of_step, uses};
pub use watch::{Seen, Watch};
pub use work::{MAX_STEPS, Work};

/// A hint behind a refusal: which name may have been meant; empty where none is near.
fn meant(hint: Option<&str>) -> String {
    hint.map_or_else(String::new, |name| crate::texts::say!("hint-meant", name))
}

/// Names in a row, as whoever is at the program reads them: "a, b and c".
fn gathered(names: &[String]) -> String {
    crate::texts::owned(|| crate::texts::gathered(names))
}
