### What the program says about changes: names of actions, refusals, steps that can be undone.

## What a part of the draft is
thing-draft = draft
thing-row = row
thing-person = person
thing-size-set = size set
thing-value = value
thing-drawing = drawing
thing-piece = piece
thing-placement = placement
thing-seam = seam
thing-joint = joint
thing-condition = condition
thing-measure = measure
thing-material = material
thing-strip = strip
thing-notion = notion
thing-view = view
thing-step = booklet step
thing-sheet = sheet
thing-kept = what is kept
thing-point = point
thing-edge = edge
thing-line = line
thing-dart = dart
thing-pleat = pleat
thing-tuck = tuck
thing-fold = fold
thing-lengthen = lengthen-shorten line
thing-slit = slit
thing-mark = mark
thing-called = { $kind } { $name }
axis-girth = girth
axis-cup = cup
axis-length = length

## Menus, and the actions in their order
menu-draft = Draft
menu-change = Change
menu-add = Add
menu-look = Look
menu-help = Help
action-new = New draft
action-new-does = Begins an empty draft.
action-open = Open …
action-open-does = Opens a draft from a file.
action-save = Save
action-save-does = Saves the draft in its file.
action-save-as = Save as …
action-save-as-does = Saves the draft under another name.
action-print = Write the pages …
action-print-does = Writes the pages that Sheets shows as a PDF file.
action-publish = Publish …
action-publish-does = Writes what is chosen of pages, sheets, booklet and tables, in the chosen sizes and views, into a folder.
action-release = Release …
action-release-does = Makes an edition: all that is published, with the draft and digests of every file, in a folder of its own.
action-read-table = Read numbers from a table …
action-read-table-does = Reads a table into the chart; it is looked at before anything is taken.
action-write-table = Write the chart as a table …
action-write-table-does = Writes the chart as a table for spreadsheets.
action-quit = Close the window
action-quit-does = Closes the window; asks first if something is not saved.
action-undo = Undo
action-undo-does = Takes the last change back.
action-redo = Redo
action-redo-does = Does the change again that was taken back last.
action-rename = Rename …
action-rename-does = Gives the chosen part another name, in every formula.
action-delete = Delete …
action-delete-does = Takes the chosen part out; says first what names it.
action-used-by = Used by …
action-used-by-does = Lists what names the chosen part.
action-rename-size = Rename the size …
action-rename-size-does = Gives the chosen size another label, wherever it is named.
action-delete-size = Delete the size …
action-delete-size-does = Takes the chosen size out of the chart, with its numbers.
action-base = Make it the base size
action-base-does = Makes the chosen size the zero of steps and the first to be shown.
action-row-up = Move up
action-row-up-does = Moves the chosen row, strip, notion, cloth or step of the booklet one place up.
action-row-down = Move down
action-row-down-does = Moves the chosen row, strip, notion, cloth or step of the booklet one place down.
action-paste-numbers = Paste numbers …
action-paste-numbers-does = Takes a block of numbers from a spreadsheet into the chart; it is looked at first.
action-move-by = Move by …
action-move-by-does = Moves the chosen points by typed lengths; Shift and a click choose several.
action-reach-all = Pull all sizes
action-reach-all-does = What is pulled changes in all sizes.
action-reach-one = Pull this size only
action-reach-one-does = What is pulled changes in the chosen size only.
action-reach-up = Pull from here up
action-reach-up-does = What is pulled changes in the chosen size and all beyond it.
action-keep-plan = Keep the plan
action-keep-plan-does = Writes the plan that is seen into the draft.
action-keep-plans = Keep all plans
action-keep-plans-does = Writes all plans that were found into the draft, as one step.
action-take-plan = Take the plan out
action-take-plan-does = Takes the kept plan of the chosen cell out of the draft.
action-take-stale-plans = Take stale plans out
action-take-stale-plans-does = Takes all plans out of the draft that are not of its pieces any more.
action-turn-half = Turn by half
action-turn-half-does = Turns the chosen piece on the cloth by half, where it may lie so.
action-turn-over = Turn over
action-turn-over-does = Turns the chosen piece on the cloth over, where it may lie so.
action-lock-piece = Lock or unlock
action-lock-piece-does = Locks the chosen piece where it lies, so that a search lays the rest around it, or frees it.
action-confirm = Confirm proposed numbers
action-confirm-does = Makes all proposed numbers of the chart typed ones.
action-pencil = Pencil
action-pencil-does = Draws points and lines in the chosen piece by pointing; again: puts the pencil down.
action-add-size = Add a size …
action-add-size-does = Adds a size between or beyond the others.
action-add-person = Add a person …
action-add-person-does = Adds a single body beside the range.
action-add-row = Add a row …
action-add-row-does = Adds a row to the chart.
action-add-set = Add a size set …
action-add-set-does = Adds a named part of the range.
action-add-value = Add a value …
action-add-value-does = Adds a named value with a formula.
action-add-found = Add a value to be found …
action-add-found-does = Adds a value that keeps seams or conditions true.
action-add-piece = Add a piece …
action-add-piece-does = Begins a piece.
action-derive-piece = Derive a piece …
action-derive-piece-does = Begins a piece that is made of another one by steps and follows it for ever.
action-take-block = Take a block from another draft …
action-take-block-does = Takes pieces of another draft with all that they need; when that draft changes, it is said.
action-add-point = Add a point …
action-add-point-does = Adds a point to the chosen piece.
action-add-edge = Add an edge …
action-add-edge-does = Adds an edge between points of the chosen piece.
action-close-outline = Close the outline …
action-close-outline-does = Adds the edge from the last point of the outline to its first.
action-trace = Trace an outline file …
action-trace-does = Takes outlines of an SVG file into the draft as pieces.
action-picture = Lay a picture underneath …
action-picture-does = Lays a scan or photograph under the chosen piece or drawing, or on the table.
action-add-seam = Add a seam …
action-add-seam-does = Says which edges are sewn to which.
action-add-view = Add a view …
action-add-view-does = Adds a version of the garment, with pieces and values of its own.
action-add-strip = Add a strip …
action-add-strip-does = Adds a thing cut to a length: a binding, elastic, cord or band.
action-add-notion = Add a notion …
action-add-notion-does = Adds a thing that is bought: a zip, buttons, thread.
action-add-cloth = Add a cloth …
action-add-cloth-does = Adds a cloth, lining or interfacing that pieces are cut from.
action-add-width = Add a width of cloth …
action-add-width-does = Adds a width in which a cloth is sold.
action-add-group = Lay sizes together …
action-add-group-does = Adds a row to the table of cloth: several garments laid together, such as 2 x S, 4 x M.
action-add-step = Add a booklet step …
action-add-step-does = Adds a step of sewing to the booklet, behind the chosen one.
action-add-fitting = Add a fitting
action-add-fitting-does = Notes that the chosen size was sewn, when and in which cloth.
action-add-condition = Add a condition …
action-add-condition-does = Adds an equation that must hold, or a comparison that is watched.
action-find = Find …
action-find-does = Finds a command or a part by its name.
action-tape = Tape
action-tape-does = Measures between points, along edges, around corners, over several pieces, in every size; again: puts the tape away.
action-see-all = See all
action-see-all-does = Fits all pieces to the window.
action-arrange = Arrange the table anew
action-arrange-does = Puts all pieces beside each other, wherever they were put by hand.
action-curvature = Curvature
action-curvature-does = Shows how the chosen piece's edges bend, and how they run on at their joints, or not.
action-nearer = Nearer
action-nearer-does = Comes nearer to the middle of the sheet.
action-further = Further
action-further-does = Goes further away.
action-next-size = Next size
action-next-size-does = Shows the next size strong.
action-previous-size = Previous size
action-previous-size-does = Shows the size before strong.
action-other-sizes = Other sizes
action-other-sizes-does = Draws the other sizes thin behind the chosen one, or not.
action-chart = Chart
action-chart-does = Shows the body chart in the middle, or the pieces again.
action-steps = Steps in the chart
action-steps-does = Shows under each number of the chart the step from the size before, or not.
action-chart-sizes = Sizes and sets
action-chart-sizes-does = Shows the axes of the chart, their labels and the size sets.
action-proposals = Proposed numbers
action-proposals-does = Lists the numbers of the chart that wait to be confirmed.
action-sheets = Sheets
action-sheets-does = Shows the pages as they will print, or the pieces again.
action-cloth = Cloth
action-cloth-does = Shows what cloth is to be bought and how it is laid, or the pieces again.
action-plan-all = Plan all cloth
action-plan-all-does = Looks for the shortest lays of all sizes, materials and widths, beside the window.
action-improve-plan = Improve the plan
action-improve-plan-does = Looks for a shorter lay of the chosen cell, around what is locked.
action-stop-planning = Stop planning
action-stop-planning-does = Ends the search for lays; the best so far stays.
action-longest = Longest from so much cloth …
action-longest-does = Says how large a length can be so that everything comes out of the cloth at hand.
action-booklet = Booklet
action-booklet-does = Shows the booklet as it will print, or the pieces again.
action-roll = Roll the seam
action-roll-does = Rolls one side of the chosen seam along the other, or shows the pieces again.
action-compare = Compare with another draft …
action-compare-does = Says what differs from another draft, and lays its outlines under the pieces.
action-differences = Differences
action-differences-does = Lists what differs from the other draft, or shows the pieces again.
action-end-comparing = End comparing
action-end-comparing-does = Takes the other draft away again.
action-next-finding = Next finding
action-next-finding-does = Goes to the next finding and its place.
action-previous-finding = Previous finding
action-previous-finding-does = Goes to the finding before.
action-all-findings = All findings
action-all-findings-does = Lists all findings, or the first few.
action-true-scale = True scale
action-true-scale-does = Shows a millimetre of the table as a millimetre of the screen, or all pieces again.
action-theme = Light or dark
action-theme-does = Changes between the light and the dark look.
action-preferences = Preferences
action-preferences-does = Shows how the window looks and how large the screen is, to be changed; no number of a draft hangs on it.
action-help = Help
action-help-does = Opens help on what you are at.
action-keys = Keys
action-keys-does = Lists the keys of all actions.
action-guide = Guided first draft
action-guide-does = Shows what to do next on the way to a first draft, or leaves that.
action-first-page = First page
action-first-page-does = Shows the examples and the drafts that were open last.

## What of a part is chosen
chosen-language-english = English
chosen-language-german = German
chosen-band = band
chosen-binding = binding
chosen-elastic = elastic
chosen-cord = cord or tie
chosen-grain-along = along the thread
chosen-grain-across = across it
chosen-grain-bias = on the bias
chosen-unsaid = not said
chosen-place-neck = hood or neck
chosen-place-waist = waist
chosen-place-hem = lower edge
chosen-place-elsewhere = elsewhere
chosen-cloth = outer cloth
chosen-lining = lining
chosen-interfacing = interfacing
chosen-nap-without = without nap
chosen-nap-with = with nap
chosen-laid-open = open, in one layer
chosen-laid-folded = folded lengthwise
chosen-laid-to-middle = both selvedges to the middle
chosen-laid-part = folded in part
chosen-shrinks-in-pieces = pieces are cut larger
chosen-shrinks-before = washed before it is cut
chosen-in-lay-counted = its own cloth is added
chosen-in-lay-laid = it lies among the pieces
chosen-worn-outerwear = outerwear
chosen-worn-sleepwear = loose sleepwear
chosen-worn-tight = tight sleepwear
chosen-worn-other = anything else
chosen-wearers-anyone = anyone
chosen-wearers-boys = boys
chosen-wearers-girls = girls
chosen-adults = adults
chosen-children = children

## The examples
example-straight-skirt = a block of two pieces, with a flaw that proof finds
example-circle-skirt = arcs, and one value that makes it full or half
example-bodice-sleeve = a bodice and a sleeve kept true in twelve sizes
example-bodice-finished = the same with cut lines, notches and marks
example-skirt-finished = a skirt with a band, a zip and hems, to the last mark
example-market-apron = inches, a pleat, laid pieces, an edge taken over
example-flat-collar = a collar drawn on laid necklines
example-chest-bodice = a bodice by fractions of the chest
example-sleeve-head = a sleeve head from its two legs
example-top-in-views = a top with a long sleeve, or sleeveless and shorter
example-panel-top = a top of panels and facings derived from the check block
example-yoke-skirt = a flared skirt with yoke, facings and lining derived from the skirt block
example-trousers = front and back of plain trousers
example-work-smock = a whole pattern to be sold: a smock with long or short sleeves, lined pockets, booklet
example-childs-smock = the same for children, with the caution about cords that it calls for

## Steps of derived pieces
step-kind-move-dart = Move a dart
step-kind-spread = Slash and spread
step-kind-cut = Cut in two
step-kind-join = Join a piece
step-kind-unfold = Unfold
step-kind-turn-over = Turn over
step-kind-add-strip = Add a strip
step-kind-move-edge = Move an edge
step-kind-slash = Slash several times
step-kind-share = Share an amount
step-kind-to-cut-line = To the cut line

## Steps in the chart
chart-rule-of-steps = A step is marked ≠ where it is larger, or smaller, than the step before it and the step after it, by more than a tenth of the larger of the two and by more than the row is rounded to (a quarter inch at most). Common practice, no source.

## Steps that can be undone: the chart
undo-add-size = add size { $size }
undo-add-person = add person { $name }
undo-add-row = add row { $name }
undo-change-cell = change { $row } in { $size }
undo-change-person = change { $row } of { $person }
undo-confirm = confirm proposed numbers
undo-base = make { $size } the base size
undo-rename-size = rename size { $old } to { $new }
undo-delete-size = delete size { $size }
undo-move-size = move size { $size }
undo-move-row = move row { $name }
undo-row-kind = change the kind of { $name }
undo-row-axes = change by what { $name } varies
undo-remove-axis = take out the axis { $axis }
undo-add-set = add size set { $name }
undo-set-sizes = change the sizes of set { $name }
undo-set-base = change the base of set { $name }
undo-paste = take numbers into the chart

## The chart: refusals and what was done
refused-person-name = `{ $name }` cannot name a person: up to 60 letters without `/` may
refused-size-or-person = there is a size or person { $name } already
told-person-added = { $name } was added
told-person-measure = { $name } was added; still to be measured: { $rows }
gone-row = there is no row { $name } any more
gone-person = there is no person { $name } any more
refused-row-everywhere = { $row } is the same in every size: write it as the row's formula
refused-cell = { $row }: `{ $typed }`: { $problem }
refused-no-proposal = there is no proposed number to confirm
told-confirmed =
    { $count ->
        [one] 1 proposed number was confirmed
       *[other] { $count } proposed numbers were confirmed
    }

## Steps that can be undone: how pieces are finished
undo-allowance = allowance of { $piece }.{ $edge }
undo-hem = hem of { $piece }.{ $edge }
undo-take-allowance = take out an allowance of { $piece }
undo-cut = how { $piece } is cut
undo-take-cut = take out a cut of { $piece }
undo-add-notch = add a notch to seam { $seam }
undo-take-notch = take out a notch of seam { $seam }
undo-lengthen = lengthen { $piece } at { $line }
undo-press = pressing of seam { $seam }
refused-no-edge = { $piece } has no edge { $edge }
refused-no-piece = there is no piece { $name }
refused-no-seam = there is no seam { $name }
gone-it = it is not there any more

## Lay plans that are kept
undo-keep-plans =
    { $count ->
        [one] keep a lay plan
       *[other] keep lay plans
    }
undo-take-plans =
    { $count ->
        [one] take a lay plan out
       *[other] take lay plans out
    }
undo-take-stale = take stale lay plans out
gone-plan = that lay plan is not there any more
refused-stale-unknown = the draft cannot be computed, so nobody can say which plans are stale
refused-keep-uncomputed = the draft cannot be computed, so no lay plan of it can be kept
refused-plan-view = there is no view { $view } for this lay plan
refused-plan = the lay plan { $plan } is not kept: { $why }

## Traced outlines, pictures underneath
undo-trace = trace { $piece }
undo-trace-pieces = trace { $count } pieces
undo-picture = change the picture under { $name }
undo-picture-table = change the picture on the table
undo-no-picture = remove the picture under { $name }
undo-no-picture-table = remove the picture on the table
told-traced = traced: { $pieces }
gone-frame = there is no piece or drawing { $name } any more

## Whole parts
undo-add-value = add value { $name }
undo-find-value = let { $name } be found
undo-give-value = give { $name }
undo-add-piece = add piece { $name }
undo-add-drawing = add drawing { $name }
undo-add-seam = add seam { $name }
undo-seam-edges = change the edges of seam { $name }
undo-seam-fit = change the fit of seam { $name }
undo-found-by = change what keeps { $part } true
undo-add-condition = add condition { $name }
undo-on-pages = move { $piece } on the pages
undo-arrange-pages = arrange the pages anew
undo-on-table = move { $piece } on the table
undo-arrange-table = arrange the table anew
undo-rename = rename { $part } to { $name }
undo-delete = delete { $part }
refused-no-start = a value that is found needs a start, such as `14 cm`
gone-condition = there is no condition { $name } any more
refused-uses-unknown = the draft cannot be computed, so it is not known what uses what
gone-seam = there is no seam { $name } any more
gone-value = there is no value { $name } any more
told-found = { $name } is found from now on; give it limits, and say which seam it keeps true
refused-keeps-seams = { $name } keeps these seams true: { $seams }

## Points, edges and outlines
undo-add-point = add point { $frame }.{ $name }
undo-add-edge = add edge { $piece }.{ $name }
undo-add-line = add line { $frame }.{ $name }
undo-close = close the outline of { $piece }
undo-curve = curve { $piece }.{ $edge }
undo-straighten = straighten { $piece }.{ $edge }
undo-joints = change the joints of { $piece }.{ $edge }
undo-smooth = make { $piece }.{ $edge } smooth at { $point }
undo-stack = change where sizes of { $piece } lie over each other
refused-nothing-to-close = { $piece } has no edge yet, so there is nothing to close
refused-closed = the outline of { $piece } is closed already, at { $point }
refused-no-point-yet = it has no point yet
refused-no-joint = { $point } is no joint inside { $edge }
gone-piece = there is no piece { $name } any more
gone-edge = there is no edge { $piece }.{ $name } any more
refused-edge-end = the edge { $name } needs a point to go to
refused-edge-same = the edge { $name } goes from { $point } to the same point
refused-line-same = the line { $name } goes from { $point } to the same point
hint-add-first = ; add it first
hint-meant-quoted = ; did you mean `{ $name }`?
refused-no-point = { $frame } has no point `{ $point }`{ $hint }
refused-no-handle = neither side of { $point } has a handle that could be turned; curve one of them first
refused-no-segment = { $piece }.{ $name } has no segment { $number }

## What is published beside the pieces
undo-add-strip = add strip { $name }
undo-add-notion = add notion { $name }
undo-add-material = add material { $name }
undo-add-booklet-step = add a booklet step
undo-add-fitting = add a fitting
undo-released = release edition { $edition }
undo-move = move { $part }
undo-change = change { $part }
undo-care = change what cautions hang on
refused-only-view = { $view } is the only view of this step; delete the step instead
gone-part = there is no { $part } any more

## Derived pieces
undo-derive = derive { $name } from { $of }
undo-add-step = add step { $step } to { $piece }
undo-take-step = take step { $number } out of { $piece }
undo-move-step = move step { $number } of { $piece }
undo-change-step = change step { $number } of { $piece }
gone-derived = piece { $name } is not there any more
gone-step = { $name } has no step { $number } any more
refused-first-step = it is the first step
refused-last-step = it is the last step
refused-no-choice = this step has no such choice
told-step-taken = the step was taken out; what used it is broken now: { $count }
refused-step-used = what step { $number } of { $piece } makes is used by { $users }
refused-derive = there is no piece { $of } to be made of; pieces are { $pieces }

## Texts and views
undo-display = show lengths in another unit
refused-by-renaming = { $part } gets another name by renaming it
gone-from-draft = { $part } is not in the draft any more
undo-add-view = add view { $name }
undo-view-piece = put { $piece } into view { $view }
undo-view-no-piece = take { $piece } out of view { $view }
undo-view-value = change { $value } in view { $view }
undo-view-no-value = let { $value } be the same in view { $view }
refused-only-piece = { $piece } is the only piece of the view { $view }; a view has at least one
gone-view = there is no view { $name } any more

## Blocks of numbers and tables
word-size = size
refused-nothing-taken = nothing can be taken: { $why }
told-all-there = every number stands in the chart already
told-taken =
    { $count ->
        [one] 1 number was taken
       *[other] { $count } numbers were taken
    }
told-added-too = ; added: { $parts }
told-not-taken =
    { $count ->
        [one] { $count } cell could not be taken and stays listed
       *[other] { $count } cells could not be taken and stay listed
    }
parted-tabs = tabs
parted-semicolons = semicolons
parted-commas = commas
parted-nothing = nothing
block-bytes = the text has { $bytes } bytes; at most { $most } are read
block-columns = line { $line }: it has { $columns } columns; at most { $most } are read
block-lines = there are more than { $most } lines; take fewer at a time
block-empty = there is no number in it yet
block-cells = there are { $cells } cells; at most { $most } are read at a time
cell-lengths = the row holds lengths
cell-angles = the row holds angles
cell-plain = the row holds plain numbers
cell-sign = a number of the chart has no sign; a step is typed into the chart itself
cell-no-row = it is no number, and `{ $name }` is no row of the chart
cell-angle-unit = the row holds angles: write `deg` into the cell
cell-no-unit = it has no unit: say which one the bare numbers are in, or write it into the cell
cell-fraction = a fraction is read in inches only, not in { $unit }
block-no-numbers = there are names in it, but no numbers
block-row-kind = `{ $word }` is not a kind of row; `body` and `house` are
block-no-label = its column has no label
block-two-columns = there are two columns { $label }
block-no-place = the chart has no place { $label }; add its sizes first
refused-label = `{ $label }` cannot be the label of a size: up to 60 letters without `/` may stand there
block-no-size = the chart has no size { $label }; add the new sizes, or leave them out
block-no-column = there is no column behind the names
block-no-column-behind = there is no column behind { $column }
block-two-lines = there are two lines { $name }
block-no-row = there is no row below the sizes
block-no-row-below = there is no row below { $row }
block-no-name = the line names no row
block-new-row = the chart has no row { $name }; add the new rows, or leave them out
block-other-axes = the row goes by { $axes }, and has no place { $place }

## Tables that are read
table-line = line { $line }: { $problem }
table-cells =
    cells that cannot be read ({ $count }), so nothing was taken:
    { $cells }
table-unit = `{ $unit }` is not a unit; mm, cm, m, in, ft, yd, deg are
table-head = the first column must be headed `row`, the others by sizes
table-cell = line { $line }, { $row }, { $size }: `{ $typed }`: { $why }
table-broken = line { $line }: this line cannot be read as a table

## Sizes and steps
hint-meant = ; did you mean { $name }?
refused-taken = there is a { $part } already
refused-neighbour = there is no size { $name } to stand beside{ $hint }
refused-not-beside = { $a } and { $b } are not beside each other, so it is not clear where the new size belongs
refused-no-row = there is no row { $name }{ $hint }
refused-size-axes = { $row } does not vary by { $axis } alone; its cells for { $label } must be typed in the file
refused-size-cell = { $row }: `{ $text }` cannot be read: { $problem }
told-size-added = size { $size } was added
told-proposed = ; proposed, to be confirmed: { $rows }
told-not-in-sets = ; it is not in the size sets that list their sizes: { $sets }
refused-step-first = a step needs a size before it
refused-step-untyped = a step needs a number typed for { $size }
refused-step-formula = a step is added to a plain number such as `84 cm`; { $size } has `{ $text }`
refused-step-kind = the step and `{ $text }` are not of one kind
refused-no-value-or-row = there is no value or row called { $name }{ $hint }

## Axes, size sets
gone-size = there is no size { $size } any more
refused-empty-axis = the chart has no sizes along { $axis } yet; add its first label
told-axis-lost =
    { $count ->
        [one] { $count } number of { $name } that differs from the base's went with the axis; undoing brings back what went
       *[other] { $count } numbers of { $name } that differ from the base's went with the axis; undoing brings back what went
    }
told-formula-gave-way = the formula of { $name } gave way to its number in the base
refused-only-axis = { $axis } is the only axis; a chart keeps one
told-axis-taken = the axis { $axis } was taken out
gone-set = there is no size set { $name } any more
told-set-added = set { $name } was added; it holds every size until its labels are chosen
refused-empty-set = set { $name } needs at least one size along { $axis }
told-set-base = the base of set { $name } is no longer in it; choose another

## Names
name-empty = a name is needed
name-long = a name has at most { $most } letters
name-digit = `{ $name }` starts with a digit; put a letter first
name-space = `{ $name }` holds a space; write `_` instead
name-letter = `{ $name }` holds `{ $letter }`; letters, digits and `_` may stand there
name-reserved = `{ $name }` is a word of the language; choose another name
name-taken = there is { $part } already; choose another name
comes-from-part = It is { $part }, which passes into { $frame }.
comes-from-step = It is made by step { $step } of { $piece }.

## Renaming
refused-rename = { $part } cannot be renamed: it is not there, or has no name
refused-meaning = renaming { $part } would change what `{ $text }` in { $place } means; change that formula first
refused-affix = `{ $shown }` is { $part } with what a step puts around its name: leave that in the new name, as in `{ $name }`, or rename { $part }
refused-person-rename = `{ $name }` cannot name a person, or there is one of that name
told-longer = ; { $count } got a longer spelling, to stay clear
told-renamed = { $part } is now called { $name }{ $also }
told-renamed-in =
    { $count ->
        [one] { $part } is now called { $name }, in 1 other place too{ $also }
       *[other] { $part } is now called { $name }, in { $count } other places too{ $also }
    }
refused-derived-name = in { $piece } it would be called `{ $name }`, which cannot be a name
word-prefix = what stands in front of names
word-it = it
place-step = step { $step } of { $piece }
refused-step-unnamed = a step needs a name
refused-step-name = there is a step { $name } of { $piece } already; choose another name
refused-size-rename = `{ $label }` cannot be the label of a size: it is taken, or holds a `/`, or has more than 60 letters
told-size-renamed = size { $old } is now called { $new }

## Taking parts out
place-perhaps = { $place } (perhaps)
refused-used = { $part } is used by { $users }
refused-made-by = { $part } is made by step { $step } of { $piece }: take out that step
hint-leave-out = , or let a step of { $piece } leave it out
refused-passes = { $part } is { $own }, which passes into { $piece }: take that out{ $leave }
refused-all-of-view = { $part } is all that the view { $view } has; take that view out first
told-taken-out = { $part } was taken out
users-more = { $named } and { $count } more
told-broken = ; what used it is broken now: { $count }
refused-no-value = no value can be put for { $part }: { $why }
value-only-rows = only rows and values have one
value-uncomputed = it cannot be computed
value-no-number = it is neither a number nor a length nor an angle
value-some-sizes = it has none in some sizes
value-other-in-view = it is another one in the view { $view }
told-text-instead = ; { $text } stands in its place
told-row-instead = ; the house row { $row } stands in its place, because the sizes differ
what-it-was = what { $part } was
refused-only-size = { $size } is the only size; a draft keeps one
told-base-now = ; { $size } is the base now
told-size-taken = size { $size } was taken out{ $based }

## Lengthening
told-lengthen-again = { $name } is { $by } now
refused-lengthen-piece = there is no piece { $name }{ $hint }
refused-lengthen-derived = { $piece } is made of { $of } by steps, so its outline does not stand in it: write the line into `lengthen` of { $of } and lengthen that; what is made of it follows
refused-shorten = only { $far } lies beyond { $line } in size { $size }: it cannot be shortened by more there
told-lengthened =
    { $count ->
        [one] { $piece } is { $by } longer at { $line }: { $name }, written into 1 formula
       *[other] { $piece } is { $by } longer at { $line }: { $name }, written into { $count } formulas
    }
refused-no-length = `{ $text }` gives no length in every size; write one, as `2 cm` or `-3/4 in`
hint-write-lengthen = ; it has none: write one into its `lengthen`
hint-there-is = ; there is { $names }
spot-handle = a handle of { $piece }.{ $edge }
spot-mark = the mark { $piece }.{ $mark }
spot-label = the label of { $piece }
refused-no-lengthen-line = { $piece } has no line { $line } to lengthen or shorten at{ $hint }
refused-line-place = the line { $line } has no place in size { $size }
refused-line-direction = the line { $line } has no direction
refused-line-turns = the line { $line } has another direction in size { $size }
refused-no-sizes = the draft has no sizes
refused-arc-over-line = the arc of { $piece }.{ $edge } runs over the line { $line }
refused-beyond-in-some = { $spot } lies beyond the line { $line } in some sizes only, not so in { $size } as in { $other }
refused-nothing-beyond = nothing of { $piece } lies beyond the line { $line }
refused-edge-lost = { $piece }.{ $edge } would have no shape: it hangs on what does not move as its ends do
lengthen-hangs = its formula, or what is found or kept true, hangs on what lies on the other side
refused-stays = { $spot } does not move as the rest does: { $why }
refused-moves = { $spot } would move too: { $why }
told-dart-behind = dart { $dart } is measured from what does not move as it does: look at it
word-match-mark = a match mark
told-notch-behind = notch { $name } of seam { $seam } is measured along an edge that runs over the line: it lags by { $far } for each { $each } of change

## What is typed; the file of a draft
note-before-lengthened = { $point } before the piece was lengthened
refused-typed-length = `{ $text }` is no length above zero, such as `20 cm`
refused-typed-unit = `{ $text }` has no unit: is it `{ $text } mm`, `{ $text } cm` or `{ $text } in`?
new-draft = New draft
no-file-yet = not in a file yet
file-changed-outside = { $name } was changed by another program
file-removed-outside = { $name } was removed by another program

## What is the person's own
since-now = just now
since-minutes =
    { $count ->
        [one] a minute ago
       *[other] { $count } minutes ago
    }
since-hours =
    { $count ->
        [one] an hour ago
       *[other] { $count } hours ago
    }
since-days =
    { $count ->
        [one] a day ago
       *[other] { $count } days ago
    }
own-set-aside = the preferences in `{ $path }` cannot be read ({ $problem }); they are set aside as `{ $aside }`, and the usual ones are used
own-not-set-aside = the preferences in `{ $path }` cannot be read ({ $problem }) nor set aside ({ $error }); the usual ones are used, and none are kept
own-unread = the preferences cannot be read any more ({ $problem }) and are left as they are
own-unwritten = the preferences cannot be written to `{ $path }`: { $error }
own-version = it is of version { $version }, and this program reads { $known }

## Unsaved work that is kept
work-unkept = unsaved work cannot be kept in `{ $folder }`: { $error }
work-unread = the unsaved work in `{ $path }` cannot be read: { $problem }; the file is left as it is
work-taken = the unsaved work in `{ $path }` is open in another window
work-bytes = it has { $bytes } bytes
work-cut-off = it is cut off
work-first-line = its first line is wrong: { $error }
work-too-much = too much work was left behind there; open or throw away some
work-trouble = unsaved work is not kept in `{ $folder }`: { $error }; save the draft, and see to the room and the rights there

## Pulling; what cannot be computed
compare-other-uncomputed = the other draft cannot be computed
draft-uncomputed = the draft cannot be computed
refused-pull = { $part } cannot be pulled: { $why }
pull-elsewhere = it follows from { $of } and the steps of { $piece }; pull it there
pull-computing = it is still being computed
pull-no-answer = its formula has no answer in this size
pull-held = no number of its own moves it: it follows from { $text }
pull-held-hint = { $why }; hold Shift to add an offset at its end
pull-size-gone = this size is not there any more
undo-pull = pull { $part }
undo-pull-in = pull { $part } in { $size }
undo-pull-up = pull { $part } from { $size } up
pull-too-far = the number { $number } cannot change so far
gone-named = { $part } is not there any more
told-house-row = the change stands in the house row { $rows }
note-added-to = added to { $part }
pull-house-row = `{ $text }` in the house row { $row } is no plain number to be changed
pull-no-edge = it is no edge
pull-no-shape-here = it has no shape in this size
pull-no-point = it passes no point of its own
pull-arc = an arc is pulled at its centre, what is taken from elsewhere follows that
pull-no-shape = it has no shape

## The pencil: what a place could mean
pencil-half = half way
pencil-third = a third of the way
pencil-two-thirds = two thirds of the way
pencil-quarter = a quarter of the way
pencil-three-quarters = three quarters of the way
pencil-first = the first point, where the coordinates begin
pencil-point = the point { $name }
pencil-cross = where { $one } and { $other } cross
pencil-on = on { $edge }, { $part }
pencil-square-on = on { $edge }, square to it from { $from }
pencil-level-on = on { $edge }, level with { $with }
pencil-plumb-on = on { $edge }, plumb with { $with }
pencil-touch = where a straight line from { $from } touches { $edge }
pencil-swing = on { $edge }, { $far } straight from { $from }
pencil-along = on { $edge }, { $far } from { $from }
pencil-meet = where { $one } and { $other } would meet
pencil-beyond = { $far } beyond { $end }, on as { $edge } runs
pencil-level-plumb = level with { $level }, plumb with { $plumb }
pencil-level = level with { $with }
pencil-plumb = plumb with { $with }
pencil-mirrored = { $from } mirrored in { $edge }
pencil-square-off = square off { $edge } at { $from }
pencil-parallel = as { $edge } runs
pencil-square = square to { $edge }
pencil-bisect = halving the corner at { $from }
pencil-halfway = half way from { $first } to { $last }
pencil-part-way = { $part } from { $first } to { $last }
pencil-towards = { $far } from { $first } towards { $last }
pencil-turned = { $last } turned about { $first }
pencil-coordinates = at these coordinates
pencil-measured = measured from { $from }
pencil-polar = a direction from { $from }, clockwise from the right
pencil-compass = so far from { $first } and from { $last }
formula-no-answer = it has no answer in this size
formula-uncomputed = `{ $text }` cannot be computed

## The tape, traced outlines, pictures underneath
tape-half = a place on { $edge }, half way
tape-along = a place on { $edge }, { $far } from { $from }
tracing-scale-unknown = the scale is not known: { $why }; say how long something is
tracing-scale-zero = the scale must be above zero
tracing-none = no outline is chosen
tracing-no-outline = there is no outline { $number }
tracing-crosses = the outline of { $name } crosses itself: mend it before it is cut
tracing-too-large = { $name } would be { $metres } m large; is the scale right?
tracing-too-small = { $name } would be less than 1 mm wide or high; is the scale right?
tracing-open-lines = { $count } open lines lie in none of the chosen outlines and were left out
tracing-rounded = places are rounded to { $step }
tracing-one-line = an outline that is only one straight line encloses nothing
underlay-too-near = the two points are too near each other; click two that are far apart
underlay-pixel = one pixel of the picture would be { $mm } mm; is the distance right?
scale-of = { $of }: { $why }
scale-unit = one unit of the file
scale-no-outline = no outline is chosen whose width could be told
scale-width = the width of { $name }

## What may follow in a formula
formula-has-parts = has parts
formula-of-takes = of { $function }: { $takes }
formula-of = of { $function }
formula-is = { $kind }, { $value }
formula-edge = { $kind }, { $long } long

## Lays by hand, and looking for them
hand-overlap = { $one } and { $other } overlap by { $far }
hand-near = { $one } and { $other } are { $far } too near
hand-outside = { $piece } lies { $far } beyond the cloth
hand-loose = { $piece } is { $far } off the fold or border
hand-count = { $name } is laid { $laid } times, not { $asked }
hand-unknown = something lies where nothing can
hand-moved = a locked piece has moved
longest-no-length = { $name } is no length in this size, so it cannot be varied
longest-stopped = stopped before anything was known to fit
longest-nothing = nothing down to { $name } = { $least } fits on { $have }: there { $least_needs }; { $now } is what it is now, and then { $now_needs }
longest-needs = { $far } of cloth are needed
longest-no-lay = there is no lay ({ $why })
longest-all = { $name } can be { $value }: the lay then takes all of { $have }.
longest-takes = { $name } can be { $value }: the lay then takes { $need } of { $have }.
longest-is-now = That is what it is now.
longest-now-fits = Now it is { $now }, which fits.
longest-now-needs = Now it is { $now }, which needs { $need } of cloth, { $short } more than there is.
longest-now-none = Now it is { $now }, for which there is no lay: { $why }.
longest-more-none = With more of it no lay was found.
longest-beyond-none = For { $beyond } no lay was found.
longest-untried = More was not tried.
longest-uncomputed = the draft cannot be computed with it
longest-not-found = no lay was found
lay-longer-than = it needs more than { $plan }: its pieces lie worse, or a longer search would find better
sizes-typed-unknown = there is no size { $size }; the sizes are { $known }
sizes-typed-many = `{ $text }`: between 1 and { $most } garments of a size can lie together
sizes-typed-none = name the sizes that lie together, such as `2 x S, 4 x M`
plan-lost = its cloth or its sizes are not in the draft any more
plan-no-view = it is of no view that the draft has
plan-otherwise = the cloth lies otherwise now; plan it again
turn-border = { $name } stays: its edge lies at the border
turn-nap = { $name } stays: this cloth has nap, so all heads lie one way
turn-one-way = { $name } stays: it may lie one way only
turn-fold = { $name } stays: its half lies on the fold
turn-second = { $name } stays: turned over it would be a second one of the other side
turn-face = { $name } stays: which of its sides is up is told by its cut
turn-on-fold = { $name } stays on the fold: it is cut in one with its other half
turn-at-border = { $name } stays at the border
turn-no-piece = there is no such piece on the cloth
turn-locked = { $name } is locked; unlock it first

## Publishing: what is told to whoever publishes
output-of = { $of }: { $problem }
output-stopped = stopped; nothing was written
output-size = size { $sizes }
output-view-size = view { $view }, size { $sizes }
output-plan-out = the lay plan { $plan } is left out: { $why }
photo-out = booklet step { $step }: the picture { $file } is left out: { $problem }
photo-unnamed = no file is named
photo-elsewhere = a picture lies in the folder of the draft or below it: copy it there
photo-no-folder = the draft has no folder yet: save it first
photo-missing = there is no such file in the folder of the draft
sheet-of = sheet { $name }: { $problem }
sheet-no-size = there is no size { $size }{ $hint }
sheet-no-piece = there is no piece { $piece }{ $hint }
sheet-too-many = { $count } sizes together cannot be told apart; at most { $most }
sheet-width = `{ $text }` is no width of paper; write it as `wide 914 mm`
sheet-paper = the paper `{ $words }` is not known; write one of { $papers }
unsaid-unread = { $at }: `{ $text }` cannot be read and stands there as it was typed; proof says why
unsaid-cloth-in = { $material } in { $sizes }
unsaid-no-plan = nothing tells how much cloth to buy: no lay plan is kept of { $cloth }; find them in the room Cloth, or by `tracewheel lay … --keep`
unsaid-no-plan-in-view = nothing tells how much cloth to buy of the view { $view }: no lay plan is kept of { $cloth }; find them in the room Cloth, or by `tracewheel lay … --keep`
unsaid-no-value = { $at }: `{ $text }` has no value in size { $sizes } and a dash stands there; proof says why

## Releases: why not, and what is told
stop-errors =
    a release is blocked by { $count ->
        [one] an error
       *[other] { $count } errors
    }:
    { $errors }
    Nothing was written. A toile can be printed all the same
stop-survey = the chart is a survey of bodies, so what is drafted on it cannot be released as a fitting chart; draft it on a chart that is made to fit by, and take `survey` out of it. Nothing was written. A toile can be printed all the same
stop-untold-edition = the draft does not tell its edition: write it at the head of the draft, `edition: "1"`; it stands on every piece and page. Nothing was written
stop-untold-date = the draft does not tell its date: say `--date` with year, month and day, such as 2026-05-31; it stands on every piece and page. Nothing was written
stop-date = `{ $date }` is no date: write 2026, 2026-05 or 2026-05-31. Nothing was written
stop-draft-date = the `date` at the head of the draft, `{ $date }`, is no date: write 2026, 2026-05 or 2026-05-31 there, or say `--date`. Nothing was written
stop-edition = edition { $edition } was released already{ $told }: { $mend }. Nothing was written
stop-lacking =
    a release would lack something:
    { $lacking }
    Nothing was written
stop-sheet = { $problem }. Nothing was written
stop-damaged =
    the release in { $folder } is not as it was written; nothing was written:
    { $faults }
stop-changes = what changed since the release before cannot be said: { $problem }; name its folder (`--last`, in the window “one elsewhere”), or say that this is the first (`--first`). Nothing was written
note-date-before = the date { $date } is before that of the release before, edition { $edition } of { $other }
edition-in = , in { $folder }
edition-on-in = {" "}on { $date }, in { $folder }
edition-on-log = {" "}on { $date }, as the log of the draft tells
mend-raise-edition = a release is never written over: raise the edition
mend-new-edition = what changed since needs a new edition: write it at the head of the draft
mend-print-again = print that one again by `tracewheel release again`, which copies it
lacks-piece = { $name } cannot be drawn in size { $size }
note-never-sewn = never sewn: the log tells of no fitting in { $sizes }. It is written into { $file }, not told to buyers
note-warnings =
    { $count ->
        [one] proof tells one warning; `tracewheel proof` lists it
       *[other] proof tells { $count } warnings; `tracewheel proof` lists them
    }
untold-licence = the draft tells no licence
untold-contact = the draft tells no contact for questions
look-missing = { $file } is missing
look-unread = { $file } cannot be read: { $error }
look-bytes = { $file } is damaged: it has { $bytes } bytes, not { $told }
look-digest = { $file } is damaged: its digest is another
last-not-there = the log of the draft tells edition { $edition } of { $date } last, and that release does not lie in { $folder }
last-no-draft = the release has no draft
last-passed-over = passed over: { $error }
manifest-missing = there is no such file, so this is no folder of a release
manifest-bytes = it has more than { $most } bytes
manifest-utf8 = it is not text in UTF-8
manifest-format = it is not of the format { $format }
manifest-no-seal = it has no seal
manifest-seal = it is not as it was written: its seal does not fit
manifest-outside = it names the file { $file }, which is not in its folder

## Blocks from other drafts
taken-changed-here = changed here: { $parts }
taken-new = { $part } new
taken-changed = { $part } changed
taken-gone = { $part } gone
taken-new-too = { $part } new (changed here, too)
taken-changed-too = { $part } changed (changed here, too)
taken-gone-too = { $part } gone (changed here, too)
undo-take-block = take block { $name }
undo-accept-block = take over what changed in block { $name }
undo-untie-block = untie block { $name }
undo-move-block = say where block { $name } is
block-none-taken = there is no block { $name }; blocks: none were taken
block-unknown = there is no block { $name }; blocks: { $known }
told-block-untied = block { $name } is untied: what was taken stays, and does not follow it any more
told-block-moved = block { $name } is looked for at { $file }
block-name = `{ $name }` cannot be the name of a block; letters, digits and `_` may stand there, a letter first
block-taken = there is a block { $name } already; choose another name
block-no-pieces = that draft has no pieces to be taken
block-names = this draft has names already that would come along: { $parts }; take the block with a prefix, such as `{ $name }_`
told-block-sizes = ; the sizes of its chart came along
told-block-taken = block { $name } was taken: { $counted }{ $also }
told-block-same = block { $name } is as it was taken
block-clashes = changed here and in the block: { $parts }; say which is to be kept
block-new-name = the block has a new { $part }, and this draft has that name already; rename it here first
told-block-kept = ; { $count } stayed as changed here
told-block-accepted =
    { $count ->
        [one] block { $name } was taken over: { $count } change{ $kept }
       *[other] block { $name } was taken over: { $count } changes{ $kept }
    }
head-none = none
head-quoted = “{ $text }”
head-instead = { $what }: { $now } instead of { $was }
count-rows =
    { $count ->
        [one] { $count } row
       *[other] { $count } rows
    }
count-values =
    { $count ->
        [one] { $count } value
       *[other] { $count } values
    }
count-drawings =
    { $count ->
        [one] { $count } drawing
       *[other] { $count } drawings
    }
count-pieces =
    { $count ->
        [one] { $count } piece
       *[other] { $count } pieces
    }
count-placements =
    { $count ->
        [one] { $count } placement
       *[other] { $count } placements
    }
count-seams =
    { $count ->
        [one] { $count } seam
       *[other] { $count } seams
    }
count-joints =
    { $count ->
        [one] { $count } joint
       *[other] { $count } joints
    }
count-conditions =
    { $count ->
        [one] { $count } condition
       *[other] { $count } conditions
    }
count-measures =
    { $count ->
        [one] { $count } measure
       *[other] { $count } measures
    }
count-materials =
    { $count ->
        [one] { $count } material
       *[other] { $count } materials
    }
count-strips =
    { $count ->
        [one] { $count } strip
       *[other] { $count } strips
    }
count-others = { $kind }: { $count }
told-own-stays = ; this draft's own, and another there: { $parts }
block-no-piece = there is no piece { $name } in the block's draft; its pieces are { $pieces }
block-part = { $part } of the block: { $problem }
block-file-lost = { $path } cannot be found: { $error }
block-other-drive = { $path } lies on another drive than the draft; copy it beside the draft

## The program itself
build-no-window = this build has none

## How cloth lies
lies-open = open
lies-folded = folded lengthwise
lies-to-middle = both selvedges to the middle
lies-part = folded in part
lies-with-nap = with nap
