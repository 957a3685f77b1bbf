//! Changes, one file for each noun.

mod chart;
mod finish;
mod lay;
mod outline;
mod part;
mod piece;
mod publish;
mod step;
mod text;
mod view;

pub use chart::ChartCommand;
pub(super) use chart::put_cell;
pub use finish::FinishCommand;
pub use lay::LayCommand;
pub use outline::OutlineCommand;
pub use part::{Deletion, PartCommand};
pub use piece::PieceCommand;
pub use publish::{PublishCommand, place_of};
pub use step::{STEP_KINDS, StepCommand, Switch, new_step, users_of_step};
pub use text::TextCommand;
pub use view::ViewCommand;
