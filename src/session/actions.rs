//! Everything that can be done by name, in one table: menus, the finder, shortcuts, help and tests read it.
//!
//! How an action is carried out is the window's.

use serde::Serialize;

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

    /// Its word.
    pub fn word(self) -> &'static str {
        match self {
            Self::Draft => "Draft",
            Self::Change => "Change",
            Self::Add => "Add",
            Self::Look => "Look",
            Self::Help => "Help",
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
    ($($id:ident $word:literal, $name:literal, $key:literal, $menu:ident, $when:ident, $what:literal;)*) => {
        /// An action.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Act { $(#[doc = $what] $id,)* }

        /// All actions, in the order in which menus show them.
        pub const ACTIONS: &[Action] = &[$(Action {
            act: Act::$id, id: $word, name: $name, key: $key, menu: Menu::$menu, when: When::$when, what: $what,
        },)*];
    };
}

/// A row of the table.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct Action {
    /// What the window does.
    #[serde(skip)]
    pub act: Act,
    /// Its name for machines.
    pub id: &'static str,
    /// Its name for people.
    pub name: &'static str,
    /// Its key; empty: none. `Ctrl` is the command key where there is one.
    pub key: &'static str,
    /// Under which heading it stands.
    pub menu: Menu,
    /// When it can be done.
    pub when: When,
    /// What it does, in one sentence.
    pub what: &'static str,
}

impl Act {
    /// Its row.
    pub fn action(self) -> &'static Action {
        // The table has a row for every one, in their order.
        &ACTIONS[self as usize]
    }
}

actions! {
    New "new", "New draft", "Ctrl+N", Draft, Always, "Begins an empty draft.";
    Open "open", "Open …", "Ctrl+O", Draft, Always, "Opens a draft from a file.";
    Save "save", "Save", "Ctrl+S", Draft, Always, "Saves the draft in its file.";
    SaveAs "save_as", "Save as …", "Ctrl+Shift+S", Draft, Always, "Saves the draft under another name.";
    Print "print", "Write the pages …", "Ctrl+Shift+W", Draft, HasSizes, "Writes the pages that Sheets shows as a PDF file.";
    Publish "publish", "Publish …", "Ctrl+Shift+U", Draft, HasSizes, "Writes what is chosen of pages, sheets, booklet and tables, in the chosen sizes and views, into a folder.";
    Release "release", "Release …", "", Draft, HasSizes, "Makes an edition: all that is published, with the draft and digests of every file, in a folder of its own.";
    ReadTable "read_table", "Read numbers from a table …", "", Draft, Always, "Reads a table into the chart; it is looked at before anything is taken.";
    WriteTable "write_table", "Write the chart as a table …", "", Draft, Always, "Writes the chart as a table for spreadsheets.";
    Quit "quit", "Close the window", "Ctrl+Q", Draft, Always, "Closes the window; asks first if something is not saved.";

    Undo "undo", "Undo", "Ctrl+Z", Change, CanUndo, "Takes the last change back.";
    Redo "redo", "Redo", "Ctrl+Shift+Z", Change, CanRedo, "Does the change again that was taken back last.";
    Rename "rename", "Rename …", "F2", Change, PartChosen, "Gives the chosen part another name, in every formula.";
    Delete "delete", "Delete …", "Delete", Change, CanDelete, "Takes the chosen part out; says first what names it.";
    UsedBy "used_by", "Used by …", "Ctrl+U", Change, PartChosen, "Lists what names the chosen part.";
    RenameSize "rename_size", "Rename the size …", "", Change, SizeChosen, "Gives the chosen size another label, wherever it is named.";
    DeleteSize "delete_size", "Delete the size …", "", Change, SizeChosen, "Takes the chosen size out of the chart, with its numbers.";
    Base "base", "Make it the base size", "", Change, SizeChosen, "Makes the chosen size the zero of steps and the first to be shown.";
    RowUp "row_up", "Move up", "Alt+Up", Change, InOrder, "Moves the chosen row, strip, notion, cloth or step of the booklet one place up.";
    RowDown "row_down", "Move down", "Alt+Down", Change, InOrder, "Moves the chosen row, strip, notion, cloth or step of the booklet one place down.";
    PasteNumbers "paste_numbers", "Paste numbers …", "Ctrl+Shift+V", Change, Always, "Takes a block of numbers from a spreadsheet into the chart; it is looked at first.";
    MoveBy "move_by", "Move by …", "M", Change, PieceChosen, "Moves the chosen points by typed lengths; Shift and a click choose several.";
    ReachAll "reach_all", "Pull all sizes", "Alt+1", Change, Always, "What is pulled changes in all sizes.";
    ReachOne "reach_one", "Pull this size only", "Alt+2", Change, Always, "What is pulled changes in the chosen size only.";
    ReachUp "reach_up", "Pull from here up", "Alt+3", Change, Always, "What is pulled changes in the chosen size and all beyond it.";
    KeepPlan "keep_plan", "Keep the plan", "Ctrl+Shift+K", Change, PlanSeen, "Writes the plan that is seen into the draft.";
    KeepPlans "keep_plans", "Keep all plans", "", Change, HasSizes, "Writes all plans that were found into the draft, as one step.";
    TakePlan "take_plan", "Take the plan out", "", Change, PlanSeen, "Takes the kept plan of the chosen cell out of the draft.";
    TakeStalePlans "take_stale_plans", "Take stale plans out", "", Change, HasPlans, "Takes all plans out of the draft that are not of its pieces any more.";
    TurnHalf "turn_half", "Turn by half", "R", Change, LaidChosen, "Turns the chosen piece on the cloth by half, where it may lie so.";
    TurnOver "turn_over", "Turn over", "O", Change, LaidChosen, "Turns the chosen piece on the cloth over, where it may lie so.";
    LockPiece "lock_piece", "Lock or unlock", "L", Change, LaidChosen, "Locks the chosen piece where it lies, so that a search lays the rest around it, or frees it.";
    Confirm "confirm", "Confirm proposed numbers", "", Change, HasProposals, "Makes all proposed numbers of the chart typed ones.";

    Pencil "pencil", "Pencil", "D", Add, HasSizes, "Draws points and lines in the chosen piece by pointing; again: puts the pencil down.";
    AddSize "add_size", "Add a size …", "Ctrl+Shift+N", Add, Always, "Adds a size between or beyond the others.";
    AddPerson "add_person", "Add a person …", "", Add, Always, "Adds a single body beside the range.";
    AddRow "add_row", "Add a row …", "", Add, Always, "Adds a row to the chart.";
    AddSet "add_set", "Add a size set …", "", Add, Always, "Adds a named part of the range.";
    AddValue "add_value", "Add a value …", "", Add, Always, "Adds a named value with a formula.";
    AddFound "add_found", "Add a value to be found …", "", Add, Always, "Adds a value that keeps seams or conditions true.";
    AddPiece "add_piece", "Add a piece …", "", Add, Always, "Begins a piece.";
    DerivePiece "derive_piece", "Derive a piece …", "", Add, Always, "Begins a piece that is made of another one by steps and follows it for ever.";
    TakeBlock "take_block", "Take a block from another draft …", "", Add, Always, "Takes pieces of another draft with all that they need; when that draft changes, it is said.";
    AddPoint "add_point", "Add a point …", "Ctrl+P", Add, PieceChosen, "Adds a point to the chosen piece.";
    AddEdge "add_edge", "Add an edge …", "Ctrl+E", Add, PieceChosen, "Adds an edge between points of the chosen piece.";
    Close "close_outline", "Close the outline …", "", Add, OutlineOpen, "Adds the edge from the last point of the outline to its first.";
    Trace "trace", "Trace an outline file …", "", Add, Always, "Takes outlines of an SVG file into the draft as pieces.";
    Picture "picture", "Lay a picture underneath …", "", Add, Always, "Lays a scan or photograph under the chosen piece or drawing, or on the table.";
    AddSeam "add_seam", "Add a seam …", "", Add, Always, "Says which edges are sewn to which.";
    AddView "add_view", "Add a view …", "", Add, Always, "Adds a version of the garment, with pieces and values of its own.";
    AddStrip "add_strip", "Add a strip …", "", Add, Always, "Adds a thing cut to a length: a binding, elastic, cord or band.";
    AddNotion "add_notion", "Add a notion …", "", Add, Always, "Adds a thing that is bought: a zip, buttons, thread.";
    AddMaterial "add_cloth", "Add a cloth …", "", Add, Always, "Adds a cloth, lining or interfacing that pieces are cut from.";
    AddWidth "add_width", "Add a width of cloth …", "", Add, Always, "Adds a width in which a cloth is sold.";
    AddGroup "add_group", "Lay sizes together …", "", Add, HasSizes, "Adds a row to the table of cloth: several garments laid together, such as 2 x S, 4 x M.";
    AddStep "add_step", "Add a booklet step …", "", Add, Always, "Adds a step of sewing to the booklet, behind the chosen one.";
    AddFitting "add_fitting", "Add a fitting", "", Add, HasSizes, "Notes that the chosen size was sewn, when and in which cloth.";
    AddCondition "add_condition", "Add a condition …", "", Add, Always, "Adds an equation that must hold, or a comparison that is watched.";

    Find "find", "Find …", "Ctrl+K", Look, Always, "Finds a command or a part by its name.";
    Tape "tape", "Tape", "T", Look, HasSizes, "Measures between points, along edges, around corners, over several pieces, in every size; again: puts the tape away.";
    SeeAll "see_all", "See all", "Ctrl+0", Look, Always, "Fits all pieces to the window.";
    Arrange "arrange", "Arrange the table anew", "", Look, HasSizes, "Puts all pieces beside each other, wherever they were put by hand.";
    Bends "curvature", "Curvature", "C", Look, HasSizes, "Shows how the chosen piece's edges bend, and how they run on at their joints, or not.";
    Nearer "nearer", "Nearer", "Ctrl++", Look, Always, "Comes nearer to the middle of the sheet.";
    Further "further", "Further", "Ctrl+-", Look, Always, "Goes further away.";
    NextSize "next_size", "Next size", "Right", Look, HasSizes, "Shows the next size strong.";
    PreviousSize "previous_size", "Previous size", "Left", Look, HasSizes, "Shows the size before strong.";
    Others "other_sizes", "Other sizes", "Ctrl+B", Look, HasSizes, "Draws the other sizes thin behind the chosen one, or not.";
    Chart "chart", "Chart", "Ctrl+T", Look, Always, "Shows the body chart in the middle, or the pieces again.";
    Steps "steps", "Steps in the chart", "", Look, Always, "Shows under each number of the chart the step from the size before, or not.";
    ChartSizes "chart_sizes", "Sizes and sets", "", Look, Always, "Shows the axes of the chart, their labels and the size sets.";
    Proposals "proposals", "Proposed numbers", "", Look, Always, "Lists the numbers of the chart that wait to be confirmed.";
    Sheets "sheets", "Sheets", "Ctrl+Shift+P", Look, HasSizes, "Shows the pages as they will print, or the pieces again.";
    Cloth "cloth", "Cloth", "Ctrl+L", Look, HasSizes, "Shows what cloth is to be bought and how it is laid, or the pieces again.";
    PlanAll "plan_all", "Plan all cloth", "Ctrl+Shift+L", Look, HasSizes, "Looks for the shortest lays of all sizes, materials and widths, beside the window.";
    ImprovePlan "improve_plan", "Improve the plan", "Ctrl+I", Look, PlanSeen, "Looks for a shorter lay of the chosen cell, around what is locked.";
    StopPlanning "stop_planning", "Stop planning", "Ctrl+.", Look, Planning, "Ends the search for lays; the best so far stays.";
    Longest "longest", "Longest from so much cloth …", "", Look, HasSizes, "Says how large a length can be so that everything comes out of the cloth at hand.";
    Booklet "booklet", "Booklet", "Ctrl+Shift+B", Look, HasSizes, "Shows the booklet as it will print, or the pieces again.";
    Roll "roll", "Roll the seam", "Ctrl+R", Look, SeamChosen, "Rolls one side of the chosen seam along the other, or shows the pieces again.";
    Compare "compare", "Compare with another draft …", "", Look, Always, "Says what differs from another draft, and lays its outlines under the pieces.";
    Differences "differences", "Differences", "Ctrl+D", Look, Comparing, "Lists what differs from the other draft, or shows the pieces again.";
    EndCompare "end_comparing", "End comparing", "", Look, Comparing, "Takes the other draft away again.";
    NextFinding "next_finding", "Next finding", "F8", Look, HasFindings, "Goes to the next finding and its place.";
    PreviousFinding "previous_finding", "Previous finding", "Shift+F8", Look, HasFindings, "Goes to the finding before.";
    AllFindings "all_findings", "All findings", "Ctrl+J", Look, HasFindings, "Lists all findings, or the first few.";
    TrueScale "true_scale", "True scale", "Ctrl+1", Look, Always, "Shows a millimetre of the table as a millimetre of the screen, or all pieces again.";
    Theme "theme", "Light or dark", "", Look, Always, "Changes between the light and the dark look.";
    Preferences "preferences", "Preferences", "Ctrl+,", Look, Always, "Shows how the window looks and how large the screen is, to be changed; no number of a draft hangs on it.";

    Help "help", "Help", "F1", Help, Always, "Opens help on what you are at.";
    Keys "keys", "Keys", "", Help, Always, "Lists the keys of all actions.";
    Guide "guide", "Guided first draft", "", Help, Always, "Shows what to do next on the way to a first draft, or leaves that.";
    Welcome "first_page", "First page", "", Help, Always, "Shows the examples and the drafts that were open last.";
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
            assert!(action.what.ends_with('.'), "{}", action.what);
        }
        let ids: BTreeSet<&str> = ACTIONS.iter().map(|a| a.id).collect();
        let names: BTreeSet<&str> = ACTIONS.iter().map(|a| a.name).collect();
        let keys: Vec<&str> = ACTIONS.iter().map(|a| a.key).filter(|k| !k.is_empty()).collect();
        assert_eq!((ids.len(), names.len()), (ACTIONS.len(), ACTIONS.len()));
        assert_eq!(keys.iter().collect::<BTreeSet<_>>().len(), keys.len(), "{keys:?}");
    }
}
