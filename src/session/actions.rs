//! Everything that can be done by name, in one table: menus, the finder, shortcuts, help and tests read it.
//!
//! How an action is carried out is the window's.

use std::sync::OnceLock;

use serde::ser::SerializeStruct as _;
use serde::{Serialize, Serializer};

use crate::base::Language;
use crate::texts::{id, own, said, say};

/// Under which heading an action stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Menu {
    /// Files.
    Draft,
    /// Changes to what is there.
    Change,
    /// New things.
    Add,
    /// What is seen.
    Look,
    /// How things are done.
    Help,
}

impl Menu {
    /// All of them, in the order in which they stand.
    pub const ALL: [Self; 5] = [Self::Draft, Self::Change, Self::Add, Self::Look, Self::Help];

    /// Its word for whoever is at the program.
    pub fn words(self) -> String {
        match self {
            Self::Draft => say!("menu-draft"),
            Self::Change => say!("menu-change"),
            Self::Add => say!("menu-add"),
            Self::Look => say!("menu-look"),
            Self::Help => say!("menu-help"),
        }
    }
}

/// When an action can be done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum When {
    /// At any time.
    Always,
    /// Something was changed that can be taken back.
    CanUndo,
    /// Something was taken back that can be done again.
    CanRedo,
    /// A part with a name is chosen.
    PartChosen,
    /// A part that can be taken out is chosen.
    CanDelete,
    /// A part is chosen that stands in a list with an order of its own: a row of the chart, a step of the booklet.
    InOrder,
    /// A piece, or something in it, is chosen.
    PieceChosen,
    /// A piece is chosen whose outline is open.
    OutlineOpen,
    /// A seam is chosen.
    SeamChosen,
    /// A size of the range is chosen.
    SizeChosen,
    /// The draft has a size.
    HasSizes,
    /// There is something in the list of findings.
    HasFindings,
    /// Numbers of the chart are proposals.
    HasProposals,
    /// The draft is being compared with another one.
    Comparing,
    /// Lay plans are being looked for.
    Planning,
    /// A plan is chosen in the room of cloth.
    PlanSeen,
    /// A piece on the cloth is chosen.
    LaidChosen,
    /// Lay plans are kept in the draft.
    HasPlans,
}

macro_rules! actions {
    ($($id:ident $word:literal, $name:expr, $what:expr, $key:literal, $menu:ident, $when:ident;)*) => {
        /// An action.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Act { $(#[doc = concat!("What `", $word, "` does.")] $id,)* }

        /// All actions, in the order in which menus show them.
        pub const ACTIONS: &[Action] = &[$(Action {
            act: Act::$id, id: $word, key: $key, menu: Menu::$menu, when: When::$when, texts: [$name, $what],
        },)*];
    };
}

/// A row of the table.
#[derive(Clone, Copy, Debug)]
pub struct Action {
    /// What the window does.
    pub act: Act,
    /// Its name for machines.
    pub id: &'static str,
    /// Its key; empty: none. `Ctrl` is the command key where there is one.
    pub key: &'static str,
    /// Under which heading it stands.
    pub menu: Menu,
    /// When it can be done.
    pub when: When,
    /// Ids of its name and of the sentence that says what it does.
    texts: [&'static str; 2],
}

impl Action {
    /// Its name for whoever is at the program.
    pub fn name(&self) -> &'static str {
        &self.said()[0]
    }

    /// What it does, in one sentence.
    pub fn what(&self) -> &'static str {
        &self.said()[1]
    }

    /// Its words in the language of this thread; they are shown in each frame, so each language is worded once.
    fn said(&self) -> &'static [String; 2] {
        static SAID: [OnceLock<Vec<[String; 2]>>; Language::ALL.len()] =
            [const { OnceLock::new() }; Language::ALL.len()];
        let language = own();
        let all = SAID[language as usize]
            .get_or_init(|| ACTIONS.iter().map(|a| a.texts.map(|id| said(language, id, &[]))).collect());
        &all[self.act as usize]
    }
}

impl Serialize for Action {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let Self { id, key, menu, when, .. } = self;
        let mut row = to.serialize_struct("Action", 6)?;
        row.serialize_field("id", id)?;
        row.serialize_field("name", self.name())?;
        row.serialize_field("key", key)?;
        row.serialize_field("menu", menu)?;
        row.serialize_field("when", when)?;
        row.serialize_field("what", self.what())?;
        row.end()
    }
}

impl Act {
    /// Its row.
    pub fn action(self) -> &'static Action {
        // The table has a row for every one, in their order.
        &ACTIONS[self as usize]
    }
}

actions! {
    New "new", id!("action-new"), id!("action-new-does"), "Ctrl+N", Draft, Always;
    Open "open", id!("action-open"), id!("action-open-does"), "Ctrl+O", Draft, Always;
    Save "save", id!("action-save"), id!("action-save-does"), "Ctrl+S", Draft, Always;
    SaveAs "save_as", id!("action-save-as"), id!("action-save-as-does"), "Ctrl+Shift+S", Draft, Always;
    Print "print", id!("action-print"), id!("action-print-does"), "Ctrl+Shift+W", Draft, HasSizes;
    Publish "publish", id!("action-publish"), id!("action-publish-does"), "Ctrl+Shift+U", Draft, HasSizes;
    Release "release", id!("action-release"), id!("action-release-does"), "", Draft, HasSizes;
    ReadTable "read_table", id!("action-read-table"), id!("action-read-table-does"), "", Draft, Always;
    WriteTable "write_table", id!("action-write-table"), id!("action-write-table-does"), "", Draft, Always;
    Quit "quit", id!("action-quit"), id!("action-quit-does"), "Ctrl+Q", Draft, Always;

    Undo "undo", id!("action-undo"), id!("action-undo-does"), "Ctrl+Z", Change, CanUndo;
    Redo "redo", id!("action-redo"), id!("action-redo-does"), "Ctrl+Shift+Z", Change, CanRedo;
    Rename "rename", id!("action-rename"), id!("action-rename-does"), "F2", Change, PartChosen;
    Delete "delete", id!("action-delete"), id!("action-delete-does"), "Delete", Change, CanDelete;
    UsedBy "used_by", id!("action-used-by"), id!("action-used-by-does"), "Ctrl+U", Change, PartChosen;
    RenameSize "rename_size", id!("action-rename-size"), id!("action-rename-size-does"), "", Change, SizeChosen;
    DeleteSize "delete_size", id!("action-delete-size"), id!("action-delete-size-does"), "", Change, SizeChosen;
    Base "base", id!("action-base"), id!("action-base-does"), "", Change, SizeChosen;
    RowUp "row_up", id!("action-row-up"), id!("action-row-up-does"), "Alt+Up", Change, InOrder;
    RowDown "row_down", id!("action-row-down"), id!("action-row-down-does"), "Alt+Down", Change, InOrder;
    PasteNumbers "paste_numbers", id!("action-paste-numbers"), id!("action-paste-numbers-does"), "Ctrl+Shift+V", Change, Always;
    MoveBy "move_by", id!("action-move-by"), id!("action-move-by-does"), "M", Change, PieceChosen;
    ReachAll "reach_all", id!("action-reach-all"), id!("action-reach-all-does"), "Alt+1", Change, Always;
    ReachOne "reach_one", id!("action-reach-one"), id!("action-reach-one-does"), "Alt+2", Change, Always;
    ReachUp "reach_up", id!("action-reach-up"), id!("action-reach-up-does"), "Alt+3", Change, Always;
    KeepPlan "keep_plan", id!("action-keep-plan"), id!("action-keep-plan-does"), "Ctrl+Shift+K", Change, PlanSeen;
    KeepPlans "keep_plans", id!("action-keep-plans"), id!("action-keep-plans-does"), "", Change, HasSizes;
    TakePlan "take_plan", id!("action-take-plan"), id!("action-take-plan-does"), "", Change, PlanSeen;
    TakeStalePlans "take_stale_plans", id!("action-take-stale-plans"), id!("action-take-stale-plans-does"), "", Change, HasPlans;
    TurnHalf "turn_half", id!("action-turn-half"), id!("action-turn-half-does"), "R", Change, LaidChosen;
    TurnOver "turn_over", id!("action-turn-over"), id!("action-turn-over-does"), "O", Change, LaidChosen;
    LockPiece "lock_piece", id!("action-lock-piece"), id!("action-lock-piece-does"), "L", Change, LaidChosen;
    Confirm "confirm", id!("action-confirm"), id!("action-confirm-does"), "", Change, HasProposals;

    Pencil "pencil", id!("action-pencil"), id!("action-pencil-does"), "D", Add, HasSizes;
    AddSize "add_size", id!("action-add-size"), id!("action-add-size-does"), "Ctrl+Shift+N", Add, Always;
    AddPerson "add_person", id!("action-add-person"), id!("action-add-person-does"), "", Add, Always;
    AddRow "add_row", id!("action-add-row"), id!("action-add-row-does"), "", Add, Always;
    AddSet "add_set", id!("action-add-set"), id!("action-add-set-does"), "", Add, Always;
    AddValue "add_value", id!("action-add-value"), id!("action-add-value-does"), "", Add, Always;
    AddFound "add_found", id!("action-add-found"), id!("action-add-found-does"), "", Add, Always;
    AddPiece "add_piece", id!("action-add-piece"), id!("action-add-piece-does"), "", Add, Always;
    DerivePiece "derive_piece", id!("action-derive-piece"), id!("action-derive-piece-does"), "", Add, Always;
    TakeBlock "take_block", id!("action-take-block"), id!("action-take-block-does"), "", Add, Always;
    AddPoint "add_point", id!("action-add-point"), id!("action-add-point-does"), "Ctrl+P", Add, PieceChosen;
    AddEdge "add_edge", id!("action-add-edge"), id!("action-add-edge-does"), "Ctrl+E", Add, PieceChosen;
    Close "close_outline", id!("action-close-outline"), id!("action-close-outline-does"), "", Add, OutlineOpen;
    Trace "trace", id!("action-trace"), id!("action-trace-does"), "", Add, Always;
    Picture "picture", id!("action-picture"), id!("action-picture-does"), "", Add, Always;
    AddSeam "add_seam", id!("action-add-seam"), id!("action-add-seam-does"), "", Add, Always;
    AddView "add_view", id!("action-add-view"), id!("action-add-view-does"), "", Add, Always;
    AddStrip "add_strip", id!("action-add-strip"), id!("action-add-strip-does"), "", Add, Always;
    AddNotion "add_notion", id!("action-add-notion"), id!("action-add-notion-does"), "", Add, Always;
    AddMaterial "add_cloth", id!("action-add-cloth"), id!("action-add-cloth-does"), "", Add, Always;
    AddWidth "add_width", id!("action-add-width"), id!("action-add-width-does"), "", Add, Always;
    AddGroup "add_group", id!("action-add-group"), id!("action-add-group-does"), "", Add, HasSizes;
    AddStep "add_step", id!("action-add-step"), id!("action-add-step-does"), "", Add, Always;
    AddFitting "add_fitting", id!("action-add-fitting"), id!("action-add-fitting-does"), "", Add, HasSizes;
    AddCondition "add_condition", id!("action-add-condition"), id!("action-add-condition-does"), "", Add, Always;

    Find "find", id!("action-find"), id!("action-find-does"), "Ctrl+K", Look, Always;
    Tape "tape", id!("action-tape"), id!("action-tape-does"), "T", Look, HasSizes;
    SeeAll "see_all", id!("action-see-all"), id!("action-see-all-does"), "Ctrl+0", Look, Always;
    Arrange "arrange", id!("action-arrange"), id!("action-arrange-does"), "", Look, HasSizes;
    Bends "curvature", id!("action-curvature"), id!("action-curvature-does"), "C", Look, HasSizes;
    Nearer "nearer", id!("action-nearer"), id!("action-nearer-does"), "Ctrl++", Look, Always;
    Further "further", id!("action-further"), id!("action-further-does"), "Ctrl+-", Look, Always;
    NextSize "next_size", id!("action-next-size"), id!("action-next-size-does"), "Right", Look, HasSizes;
    PreviousSize "previous_size", id!("action-previous-size"), id!("action-previous-size-does"), "Left", Look, HasSizes;
    Others "other_sizes", id!("action-other-sizes"), id!("action-other-sizes-does"), "Ctrl+B", Look, HasSizes;
    Chart "chart", id!("action-chart"), id!("action-chart-does"), "Ctrl+T", Look, Always;
    Steps "steps", id!("action-steps"), id!("action-steps-does"), "", Look, Always;
    ChartSizes "chart_sizes", id!("action-chart-sizes"), id!("action-chart-sizes-does"), "", Look, Always;
    Proposals "proposals", id!("action-proposals"), id!("action-proposals-does"), "", Look, Always;
    Sheets "sheets", id!("action-sheets"), id!("action-sheets-does"), "Ctrl+Shift+P", Look, HasSizes;
    Cloth "cloth", id!("action-cloth"), id!("action-cloth-does"), "Ctrl+L", Look, HasSizes;
    PlanAll "plan_all", id!("action-plan-all"), id!("action-plan-all-does"), "Ctrl+Shift+L", Look, HasSizes;
    ImprovePlan "improve_plan", id!("action-improve-plan"), id!("action-improve-plan-does"), "Ctrl+I", Look, PlanSeen;
    StopPlanning "stop_planning", id!("action-stop-planning"), id!("action-stop-planning-does"), "Ctrl+.", Look, Planning;
    Longest "longest", id!("action-longest"), id!("action-longest-does"), "", Look, HasSizes;
    Booklet "booklet", id!("action-booklet"), id!("action-booklet-does"), "Ctrl+Shift+B", Look, HasSizes;
    Roll "roll", id!("action-roll"), id!("action-roll-does"), "Ctrl+R", Look, SeamChosen;
    Compare "compare", id!("action-compare"), id!("action-compare-does"), "", Look, Always;
    Differences "differences", id!("action-differences"), id!("action-differences-does"), "Ctrl+D", Look, Comparing;
    EndCompare "end_comparing", id!("action-end-comparing"), id!("action-end-comparing-does"), "", Look, Comparing;
    NextFinding "next_finding", id!("action-next-finding"), id!("action-next-finding-does"), "F8", Look, HasFindings;
    PreviousFinding "previous_finding", id!("action-previous-finding"), id!("action-previous-finding-does"), "Shift+F8", Look, HasFindings;
    AllFindings "all_findings", id!("action-all-findings"), id!("action-all-findings-does"), "Ctrl+J", Look, HasFindings;
    TrueScale "true_scale", id!("action-true-scale"), id!("action-true-scale-does"), "Ctrl+1", Look, Always;
    Theme "theme", id!("action-theme"), id!("action-theme-does"), "", Look, Always;
    Preferences "preferences", id!("action-preferences"), id!("action-preferences-does"), "Ctrl+,", Look, Always;

    Help "help", id!("action-help"), id!("action-help-does"), "F1", Help, Always;
    Keys "keys", id!("action-keys"), id!("action-keys-does"), "", Help, Always;
    Guide "guide", id!("action-guide"), id!("action-guide-does"), "", Help, Always;
    Welcome "first_page", id!("action-first-page"), id!("action-first-page-does"), "", Help, Always;
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_action_has_its_row_and_its_own_name_and_key() {
        for (i, action) in ACTIONS.iter().enumerate() {
            assert_eq!(action.act as usize, i);
            assert_eq!(action.act.action().id, action.id);
            assert!(action.what().ends_with('.'), "{}", action.what());
        }
        let ids: BTreeSet<&str> = ACTIONS.iter().map(|a| a.id).collect();
        let names: BTreeSet<&str> = ACTIONS.iter().map(|a| a.name()).collect();
        let keys: Vec<&str> = ACTIONS.iter().map(|a| a.key).filter(|k| !k.is_empty()).collect();
        assert_eq!((ids.len(), names.len()), (ACTIONS.len(), ACTIONS.len()));
        assert_eq!(keys.iter().collect::<BTreeSet<_>>().len(), keys.len(), "{keys:?}");
    }
}
