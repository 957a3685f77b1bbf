### Everything in the window that stands in no room or panel of its own: menus, dialogs, notices, findings, guide, help, publishing.

## Common
cancel = Cancel
good = Good
browse = Browse …
file-label = file
path-hint = a path
path-to-hint = a path to a { $ending } file
folder-label = folder
such-as = such as { $example }
and-more = and { $count } more
file-needs-name = a name is needed
show-the-pieces = Show the pieces
cannot-be-computed = the draft cannot be computed

## Dialogs in which something is added
ask-name = name
ask-formula = formula
ask-label = label
ask-size-note = Rows without a formula get a proposal for it, to be confirmed in the chart.
ask-size-do = Add the size
ask-size-after = after which size
ask-size-after-hint = in order of the numbers, else the last
ask-size-axis = along which axis
ask-size-axis-hint = girth, cup or length
ask-person-note = A single body: kept out of the range, shown beside it.
ask-person-do = Add the person
ask-row-note = A body row is a measure of bodies and is published; a house row is anything else that goes by size.
ask-row-body = Add a body row
ask-row-house = Add a house row
ask-row-hint = such as hip
ask-set-note = A part of the range under a name of its own; its sizes are chosen afterwards.
ask-set-do = Add the set
ask-set-hint = such as petite
ask-value-note = A number, length or angle with a name.
ask-value-do = Add the value
ask-value-hint = such as bust_ease
ask-found-note = The program finds it in every size, so that the seams or conditions that name it hold.
ask-found-hint = such as cap_height
ask-found-start = start
ask-found-least = least
ask-found-most = most
ask-found-no-limit = no limit
ask-piece-do = Add the piece
ask-piece-hint = such as front
ask-derive-note = A copy that is styled by steps: the block can be changed afterwards, and it follows.
ask-derive-do = Derive the piece
ask-derive-hint = such as side_panel
ask-derive-of = made of
ask-derive-of-hint = a piece
ask-point-note = A point of { $piece }. Right and down are positive.
ask-point-do = Add the point
ask-point-hint = such as neck
ask-point-place = place
ask-point-place-hint = such as neck.down(8 cm).right(bust / 4)
ask-edge-note = Straight between points of { $piece }; it can be curved afterwards. Points: { $points }.
ask-edge-do = Add the edge
ask-edge-hint = such as shoulder
ask-edge-from = from
ask-edge-from-hint = a point
ask-edge-to = to
ask-edge-to-hint = a point, or several in order
ask-close-note = A straight edge from the last point of the outline to its first.
ask-close-do = Close it
ask-close-name = name of the edge
ask-close-hint = such as centre
ask-seam-note = Both sides start at the same sewn end. An edge that runs the other way is written reversed(front.side).
ask-seam-do = Add the seam
ask-seam-hint = such as side
ask-seam-one = side one
ask-seam-one-hint = such as front.side
ask-seam-two = side two
ask-seam-two-hint = such as back.side
ask-kept-by = kept true by
ask-seam-kept-hint = watched only
ask-view-note = A version of the garment. It has all pieces at first; which, and what values say in it, stands on its card.
ask-view-do = Add the view
ask-view-hint = such as sleeveless
ask-strip-note = A thing cut to a length. What it is, its width and how it is joined stand on its card.
ask-strip-do = Add the strip
ask-strip-hint = such as waist_elastic
ask-strip-length = length
ask-strip-length-hint = finished, from seam to seam: such as waist * 0.9
ask-notion-note = A thing that is bought. How many, and the sizes in which it is sold, stand on its card.
ask-notion-do = Add the notion
ask-notion-hint = such as zip
ask-notion-size = length or size
ask-notion-size-hint = such as 20 cm; it may stay empty
ask-material-note = What pieces and strips are cut from.
ask-material-cloth = Add an outer cloth
ask-material-lining = Add a lining
ask-material-interfacing = Add an interfacing
ask-material-hint = such as cotton
ask-step-note = A step of sewing, behind the chosen one. Its words stand on its card.
ask-step-do = Add the step
ask-step-heading = heading
ask-step-hint = such as Join the shoulders
ask-condition-note = An equation that must hold, or a comparison that is watched.
ask-condition-do = Add the condition
ask-condition-hint = such as neck_opening
ask-condition-holds = must hold
ask-condition-holds-hint = a = b, or a >= b
ask-condition-kept-hint = all that it depends on

## Dialogs in which something is renamed, taken out or looked up
ask-rename-title = Rename { $part }
ask-rename-note = Every formula that names it follows.
ask-rename-note-of = { $from } Every formula that names it follows.
ask-rename-do = Rename it
ask-rename-size-title = Rename size { $size }
ask-rename-size-note = Its numbers and every formula that names it follow.
ask-delete-size-title = Delete size { $size }
ask-delete-size-note =
    { $count ->
        [one] Its number goes with it; undoing brings it back.
       *[other] Its { $count } numbers go with it; undoing brings them back.
    }
ask-delete-size-do = Delete the size
ask-delete-title = Delete { $part }
ask-delete-step-note = Its words go with it; undoing brings them back.
ask-delete-unnamed = Nothing names it.
ask-delete-do = Delete
ask-used-by-all = It is used by { $users }.
ask-delete-put-value = Put its present value instead
ask-delete-break = Delete, and leave what uses it broken
ask-take-out-note = What it makes is used by { $users }.
ask-take-out-title = Take out step { $number } of { $piece }
ask-take-out-do = Take it out, and leave what uses it broken
ask-uses-title = Used by and uses: { $part }
ask-uses-used-by = used by { $place }
ask-uses-other = uses { $part }
ask-uses-nothing = Nothing names it, and it names nothing.
ask-listed-more = { $list } and { $count } more

## Dialogs in which a file is named
ask-open-title = Open a draft
ask-open-do = Open
ask-compare-title = Compare with another draft
ask-compare-note = What differs from it is listed; its lines are laid under the pieces. It is not changed.
ask-compare-do = Compare
ask-save-as-title = Save the draft as
ask-save-do = Save
ask-print-title = Write the pages
ask-print-note = What Sheets shows, as a PDF file to be printed at 100 %.
ask-write-do = Write
ask-read-table-title = Read numbers from a table
ask-read-table-note = A table as spreadsheets save it (CSV). It is looked at before anything is taken.
ask-read-do = Read
ask-write-table-title = Write the chart as a table
ask-write-table-note = Rows, sizes and persons as text with commas between, cells as they were typed.
ask-unsaved-title = Save first?
ask-unsaved-note = { $file } holds changes that are not saved.
ask-unsaved-note-unnamed = The draft holds changes that are not saved.
ask-unsaved-go-on = Go on without saving
ask-this-dialog = this dialog

## What an action or a dialog says when it is done or refused
done-undone = undone: { $label }
done-again = done again: { $label }
done-bends-choose = choose a piece or an edge to see how it bends
done-taken-up = the work that was left behind is open; save it to keep it
done-saved = { $file } is saved
done-copy-open = a copy of { $example } is open; saving it asks for a name
done-end-of-list = { $part } stands at the end of its list
done-no-axis = the axes are girth, cup and length
done-no-size-before = there is no size { $size } to stand after
done-pages-written =
    { $count ->
        [one] 1 page is
       *[other] { $count } pages are
    } written to { $path }
done-nothing-chosen-file = nothing was chosen; where the system shows no dialog, type the path
release-blocked = a release is blocked by errors ({ $count }); a toile can be printed all the same
comments-title = Comments would be lost
comments-note = The file holds comments ({ $count }), which the standard form cannot keep.
comments-keep = Keep them as the draft's note
comments-drop = Save without them
over-title = Save over it?
over-removed = { $path } was removed by another program since it was opened.
over-changed = { $path } was changed by another program since it was opened.
over-there = There is a file { $path } already.
over-other-name = Save under another name
over-do = Save over it

## Why an action cannot be done now
why-nothing-chosen = nothing is chosen
why-no-change = nothing was changed yet
why-nothing-undone = nothing was taken back
why-choose-part = { $chosen }; choose a part first
why-choose-in-order = choose a row of the chart, a strip, notion, cloth or step of the booklet first
why-choose-piece = choose a piece first
why-outline-closed = the outline is closed, or there is none yet
why-choose-seam = choose a seam first
why-choose-size = choose a size of the girth axis first
why-no-sizes = the draft has no sizes yet
why-no-findings = nothing was found
why-no-proposals = there is no proposed number
why-not-comparing = compare with another draft first
why-not-planning = nothing is being looked for
why-choose-plan = choose a plan in the room of cloth first (Ctrl+L)
why-choose-laid = choose a piece on the cloth first
why-no-plans = no plan is kept in the draft

## Blocks from other drafts
block-changed = Block { $block } was changed in { $file }: { $changes }.
block-untold = Whether block { $block } was changed cannot be said: { $problem }
block-all-same = nothing changed in the blocks
block-to-see = looked at: { $count } to be seen to, above
block-where-title = Where block { $block } is
block-where-note = It was moved, or has another name. What was taken is here and computes.
block-where-do = Look there
block-not-taken-over = it cannot be taken over: { $problem }
block-taken-over = block { $block } taken over
block-save-first = save this draft first: a block is found from the folder of the draft
block-take-title = Take a block from another draft
block-take-note = Its pieces come along with the values, seams and rows that they need. They are in this draft then; when the other draft changes, that is said and can be taken over.
block-take-do = Take it
block-take-name = name of the block
block-take-name-hint = as its file
block-take-pieces = pieces
block-take-pieces-hint = all
block-take-prefix = put in front of all names
block-take-prefix-hint = nothing, or such as base_
block-caption = blocks from other drafts
block-from = { $block } from { $file }
block-no-author = author not told
block-no-licence = licence not told
block-by = { $author }, { $licence }
block-by-edition = { $author }, { $licence }, edition { $edition }
block-not-looked = not looked at: save this draft first
block-same-there = nothing changed there
block-changed-there = changed there: { $changes }
block-unreadable = its file cannot be read
block-button = { $word } of block { $block }
block-where = Where it is …
block-untie = Untie
block-look-again = Look at the blocks again

## The booklet
booklet-title = Booklet
booklet-about = the booklet
booklet-no-steps = There are no steps yet: what is here comes from the draft by itself. Add the first step of sewing.
booklet-page = booklet page { $number }: { $words }
booklet-step = step { $step } of the booklet, page { $page }: { $title }

## Contents
contents-draft = Draft
contents-about = the contents
contents-chart = Chart
contents-sizes =
    { $count ->
        [one] 1 size
       *[other] { $count } sizes
    }
contents-rows =
    { $count ->
        [one] 1 row
       *[other] { $count } rows
    }
contents-values = Values
contents-some-found = { $all }, { $found } found
contents-found = found
contents-drawings = Drawings
contents-pieces = Pieces
contents-not-in-view = not in this view
contents-seams = Seams
contents-seams-fine = { $count } · all fine
contents-seams-off = { $count } · { $off } to look at
contents-conditions = Conditions
contents-views = Views
contents-placements = Placements
contents-sheets = Sheets
contents-in-file = { $count } · only in the file
contents-strips = Strips
contents-notions = Notions
contents-cloth = Cloth
contents-booklet = Booklet
contents-log = Log
contents-fittings =
    { $count ->
        [one] 1 fitting
       *[other] { $count } fittings
    }
contents-kept = fittings and releases
contents-fold = fold { $name }
contents-unfold = unfold { $name }

## Kinds of files, where one is looked for
files-drafts = drafts
files-pictures = pictures
files-outlines = outlines

## What was found about a field
field-put = Put { $text }

## The finder
finder-hint = A command, a point, a seam, a size
finder-called = find
finder-nothing = Nothing of that name.
finder-person = person
finder-size = size
finder-recent = recent draft
finder-help = help

## Proof: the findings
proof-list-title = Proof
proof-list-about = proof
proof-list-first = First findings
proof-list-all = All { $count } findings
proof-list-nothing-yet = nothing to look at yet
proof-list-errors =
    { $count ->
        [one] 1 error
       *[other] { $count } errors
    }
proof-list-warnings =
    { $count ->
        [one] 1 warning
       *[other] { $count } warnings
    }
proof-list-notes =
    { $count ->
        [one] 1 note
       *[other] { $count } notes
    }
proof-list-silenced = { $count } silenced
proof-list-none = Nothing was found.
proof-list-rest = and { $count } more: the command `proof` lists all of them

## The guided first draft
guide-sizes = Add two sizes
guide-sizes-words = A size is a column of the chart. Add one, such as 88, with the + behind "Sizes"; then a second one, such as 96.
guide-row = Add a row with numbers
guide-row-words = A row is a measure of the body. In the chart add the body row hip and type a number for each size, such as 94 cm and 102 cm.
guide-piece = Begin a piece
guide-piece-words = Add a piece, such as front, with the + beside "Pieces" in the contents. It is empty at first.
guide-points = Add four points
guide-points-words = Add a at (0 cm, 0 cm); b at a.right(20 cm); c at b.down(50 cm); d at a.down(50 cm). Right and down are positive. Or draw them with the pencil: D.
guide-follow = Let a point follow the body
guide-follow-words = Change the formula of b to a.right(hip / 4): it names the row, so every size now has its own width.
guide-edges = Add edges between the points
guide-edges-words = With the piece chosen add the edge waist from a to b, then side from b to c, then hem from c to d.
guide-close = Close the outline
guide-close-words = The last edge comes back to the first point. Call it centre. A closed outline is a piece that can be cut.
guide-second = Draft a second piece
guide-second-words = Begin the piece back and draft it like the first one, until its outline is closed too.
guide-seam = Sew a seam
guide-seam-words = Add the seam side: side one is front.side, side two is back.side. Both begin at the same sewn end.
guide-proof = Read what proof says
guide-proof-words = Proof, below, looks at every size. Click on an error to go to its place, F1 then tells what to do; go on until none is left.
guide-save = Save it
guide-save-words = Ctrl+S, or "Save" in the menu Draft. The file is plain text and holds what you typed. That was a whole draft.
guide-leave = Leave the guide
guide-about = the guide
guide-where = Show me where
guide-at = { $number } of { $all }: { $title }. { $words }
guide-at-done = { $number } of { $all }, done: { $title }. { $words }
guide-all-done = Everything was done. Pull a point, add a size, change a formula: the rest follows.
guide-step-done = step { $number }, done: { $title }
guide-step-to-do = step { $number }, to do: { $title }

## Help
help-room-title = Help
help-room-called = help about { $of }
help-room-hint = Help about this
help-room-back = Back
help-room-back-called = back to the page before
help-room-close = Close help
help-room-about = this help
help-room-search = Search all pages
help-room-search-called = search help
help-room-none = No page holds these words.
help-room-page = page { $page }
help-room-link = to { $page }
help-room-no-page = there is no page of help called { $page }

## Publishing beside the window
job-ended = the print ended without a word
job-nothing = nothing can be drawn; nothing was written
job-written =
    { $count ->
        [one] 1 file is
       *[other] { $count } files are
    } written to { $folder }
piece-left-out = { $piece } cannot be drawn in size { $size } and is left out

## Lines above the sheet that want an answer
notice-throw-away = Throw it away
notice-take-up = Take it up
notice-published = Being published: { $done } of { $all } files are made.
notice-stop = Stop
notice-laying = Lay plans are being looked for.
notice-stop-search = Stop the search
notice-see-cloth = See the cloth
notice-outside = { $what } since it was opened.
notice-keep-here = Keep what is here
notice-load-again = Load it again
notice-not-now = Not now
notice-where = Say where it is …
notice-take-over = Take it over
notice-take-all = Take all over
notice-keep-changes = Keep what was changed here
notice-show-change = Show what would change
ago-now = just now
ago-minutes =
    { $count ->
        [one] a minute
       *[other] { $count } minutes
    } ago
ago-hours = { $count } hours ago
ago-days = { $count } days ago
ago-some-time = some time ago
left-behind = Unsaved work was left behind { $ago }: { $title } ({ $from }).
left-never-saved = never saved
left-unreadable = Unsaved work was left behind { $ago } that cannot be read ({ $problem }); it lies in { $path }.

## Changes that can be undone, as the window calls them
step-on-pages = move { $piece } on the pages
step-on-table = move { $piece } on the table
step-change = change { $part }
step-change-cell = change { $row } in { $size }
step-change-person = change { $row } of { $person }
step-change-seam = change seam { $seam }
step-change-picture = change the picture { $where }
step-pull = pull { $part }
step-pull-points = pull { $count } points
step-move-points = move { $count } points
step-draw = draw { $point }

## The window itself
window-no-drawing = this display offers no OpenGL to draw with
window-no-display = there is no display
window-untitled = Draft without a title
window-size = size { $size }

## What may follow in a formula
offers-line = offer { $name }: { $about }
offers-hint = ↓ to choose, Enter takes it

## Pencil and tape
pencil-choose = Pencil: choose the piece to draw in first
tape-two-places = Tape: hold it at two places first

## Pictures underneath
picture-cut-short = it could not be read to its end
picture-no-file = it is no file
picture-too-heavy = it has more than { $count } MB; save it smaller
picture-other-kind = it is neither PNG nor JPEG; save it as one of these
picture-damaged = it is damaged or too large ({ $problem })
picture-too-many-points = { $width } × { $height } points are too many; save it smaller
picture-not-flat = A photograph is not flat and its perspective is not corrected: measure a second distance to check.
picture-on-table = on the table
picture-under = under { $piece }
picture-ask-title = Lay a picture underneath
picture-ask-note = A PNG or JPEG file, a scan or a photograph. It lies { $where }; nothing in the draft hangs on it.
picture-ask-do = Lay it underneath
picture-needs-file = a file is needed
picture-there = there is a picture { $where } already: { $file }; remove it first
picture-not-laid = { $path } cannot be laid underneath: { $problem }
picture-lies = the picture lies { $where }; it is not scaled yet: use Scale …
picture-not-shown = the picture { $path } cannot be shown: { $problem }; the draft is open without it
picture-distance = { $length } between the two points
picture-distance-unsure = { $length } between the two points, but the picture is not scaled yet
picture-straight = the picture is straightened
picture-scaled = one pixel of the picture is { $millimetres } mm. { $caution }

## Preferences
prefer-title = Preferences
prefer-about = preferences
prefer-note = Your own, on this computer. No number of a draft hangs on them.
prefer-called = { $of }: { $word }
prefer-language = Language
prefer-language-called = language
prefer-language-note = Of the window. In which language a pattern is published stands on the card of its draft.
prefer-light = Light or dark
prefer-light-called = look
prefer-as-system = as the system
prefer-is-light = light
prefer-is-dark = dark
prefer-text = Size of text
prefer-text-called = text
prefer-spacing = Spacing
prefer-spacing-called = spacing
prefer-dense = dense
prefer-usual = usual
prefer-roomy = roomy
prefer-colours = Colours
prefer-contrast = High contrast
prefer-apart = Colours for colour-blind eyes
prefer-sizes = sizes:
prefer-scale = True scale
prefer-scale-note = Lay a bank card on the outline, or a ruler on the bar below it, and make them as long. A bank card is 85.60 mm wide (ISO/IEC 7810, ID-1).
prefer-pixels = px in a millimetre
prefer-unmeasured = not measured: { $inch } px to the inch are taken
prefer-measured = measured: { $millimetre } px in a millimetre, { $inch } to the inch
prefer-forget = Forget the measuring

## True scale
screen-bar = a bar of { $length } mm
screen-card = the outline of a bank card
screen-shorter = shorter
screen-longer = longer
screen-hair-shorter = a hair shorter
screen-hair-longer = a hair longer
screen-usual = true scale for a screen of 96 px to the inch; measure yours in Preferences (Ctrl+,)
screen-measured = a millimetre of the table is a millimetre of the screen, as it was measured

## Publishing
publish-title = Publish
publish-going-on = something is being published already; stop that first
publish-needs-folder = a folder is needed
publish-nothing = nothing is chosen to be written
publish-no-size = no size is chosen
publish-too-many = { $count } sizes together cannot be told apart on pages to cut from; at most { $most }
publish-no-view = no view is chosen
publish-wide-paper = the paper of a wide sheet
publish-projection = the projection on the cloth
publish-no-pixels = `{ $text }` is no number of pixels; write it as `1280`
publish-lines = lines of a projector
publish-length-problem = { $of }: { $problem }
publish-paper = paper of pages
publish-for = what for
publish-whole = pieces on the fold are drawn whole
publish-whole-called = whole pieces
publish-do = Write them
publish-kind = { $kind } – { $says }
publish-write = write { $kind }
publish-write-sheet = write sheet { $sheet }
publish-sheets = sheets that the draft tells of
publish-both-papers = A4 or Letter
publish-sizes = sizes in a file of pieces (booklet and tables hold them all)
publish-each = each size by itself
publish-chosen = chosen sizes together
publish-all = all in one file, a layer for each
publish-size = publish size { $size }
publish-views = views
publish-view = publish view { $view }
publish-width = width of the paper of a wide sheet
publish-width-called = width of the paper
publish-projector = projector: what is seen on the cloth, its pixels there, width of lines
publish-across = projection across
publish-down = projection down
publish-pixels-across = pixels across
publish-pixels-down = pixels down
publish-lines-called = lines of the projector
publish-as-needed = as needed
publish-folder = folder (it is made if it is not there)
paper-called = paper { $paper }
purpose-toile = toile
purpose-testers = testers
purpose-release = release
purpose-called = for { $purpose }

## Pulling and moving
pull-needs-length = a length such as 1.5 cm or -3/8 in is needed
pull-choose-point = Move by: choose a point first; with Shift several
pull-ask-title = Move by
pull-ask-note = Moves { $points }; a length below zero moves it left or up.
pull-ask-do = Move
pull-right = right
pull-down = down

## A release
release-title = Release
release-found = edition { $edition }, { $date }
release-going-on = a release is being made already
release-no-file = the draft has no file yet: save it first; a release is made of its file
release-comments = the file holds comments, which the log cannot be written beside: save the draft first
release-ended = the release ended without a word
release-not-logged = it could not be written into the log of the draft: { $problem }
release-log-unsaved = the log of the draft tells of it; save the draft to keep that
release-log-not-saved = the log of the draft tells of it, but the draft could not be saved: { $problem }
release-do = Release it
release-in-making = It is being made …
release-note = All that is published, with the draft and digests of every file, in a folder of its own. A release is never made twice: what changes needs a new edition.
release-last = Released last: edition { $edition }, { $date }.
release-edition = edition
release-date = date
release-date-hint = year, month, day, such as 2026-05-31
release-folder-hint = in which that of the release is made
release-against = what changed is told against
release-beside = the last release in that folder
release-elsewhere = one elsewhere
release-first = none: it is the first
release-that-is = That is { $found }.
release-before-at = folder of the release before
release-survey = The chart is a survey of bodies, so what is drafted on it cannot be released.
release-unsewn = Never sewn, as far as the log tells: { $what }.
release-errors = Errors block a release ({ $count }):

## Rolling a seam
roll-title = Roll seam { $seam }
roll-about = rolling
roll-cannot = seam { $seam } cannot be rolled in { $size }
roll-slider = how far seam { $seam } is rolled
roll-to-start = To the start
roll-to-notch = To the next notch
roll-to-end = To the end
roll-state = { $size }: rolled to { $far } of { $one } (side one) and { $two } (side two)
roll-match-mark = match mark
roll-notch = { $notch }: { $one } and { $two }, { $apart } mm apart
roll-longer = at the end side one is { $by } mm longer
roll-shorter = at the end side one is { $by } mm shorter
roll-piece-one = { $piece }, side one, rolled
roll-piece-two = { $piece }, side two, rolled
roll-hint = Side two rolls along side one without slipping; dots are notches, the ring is where they touch

## Sheets
sheets-title = Sheets
sheets-about = the sheets
sheets-pages = { $all } pages: the first, and { $count } to join
sheets-only = only { $piece }
sheets-only-called = print only { $piece }
sheets-true = true scale
sheets-whole-hint = Pieces that are cut on the fold are drawn whole
sheets-arrange = Arrange anew
sheets-arrange-hint = Forget where pieces were put by hand
sheets-sizes = Sizes in the file
sheets-size = print size { $size }
sheets-ruler = Hold a ruler to this bar and make it 100 mm long.
sheets-page = page { $page }: { $pieces }
sheets-piece = { $piece } on the pages
sheets-drag = Drag a piece to move it on the pages

## The strip at the top
top-not-saved = { $file } · not saved
top-sizes = Sizes
top-persons = Persons
top-sizes-about = the sizes
top-others = Other sizes
top-others-called = other sizes
top-find = Find …
top-label = { $action }: { $label }
top-reach-all = all sizes
top-reach-all-called = pull all sizes
top-reach-one = only { $size }
top-reach-one-called = pull this size only
top-reach-up = { $size } and up
top-reach-up-called = pull from here up
top-pulls = Pulls go to
top-pulls-hint = Where a pull or a push by keys goes
top-hand = In the hand
top-hand-called = hand: { $what }
top-views = Views
top-see-view = see view { $view }
top-base = base
top-is-base = { $size }, base

## Comparing
compare-going = comparing …
compare-taken-away = the other draft is taken away
compare-only-in = { $part } is only in { $draft }
compare-would-change = What would change: { $draft }
compare-from = Differences from { $draft }
compare-about = comparing
compare-end = End comparing
compare-then-wrong = Then this would be wrong:
compare-now-wrong = Wrong now, and not there:
compare-the-draft = the draft
compare-rest = and { $count } more: the command `compare` lists all of them
compare-line = { $part }:
compare-line-note = note: { $part }:
compare-called = difference: { $line }
compare-called-in = difference: { $piece }, { $line }

## Outlines of a file
trace-title = Trace an outline file
trace-note = Closed outlines of an SVG file become pieces, open lines become lines of the piece that holds them.
trace-none-closed = none of the { $count } lines in the file is closed, so none can be a piece
trace-corner-range = the turn of a corner must lie between 0 and 180 degrees
trace-left-out = left out or odd: { $what }
trace-file-called = outline file
trace-read = Read it
trace-corner-before = a corner is a turn of more than
trace-corner-behind = degrees
trace-corner-called = corner, degrees
trace-make = Make the pieces
trace-units = { $number } units
trace-outline = outline { $number }
trace-name = name of outline { $number }
trace-size = { $width } × { $height }
trace-crosses = crosses itself
trace-open = Open lines: { $count }. Each goes to the smallest chosen outline that holds it.
trace-odd = Left out or odd: { $what }.
trace-scale-file = the file says: one unit is { $millimetres } mm
trace-scale-unknown = The scale is not known: { $why }. How large is it?
trace-unit = one unit is
trace-unit-called = length of one unit
trace-the-first = the first outline
trace-width = the width of { $outline } is
trace-width-called = width of the first outline
trace-css = one unit is a CSS pixel, 96 to the inch

## The first page
welcome-title = A drafting table for garment patterns
welcome-about = the first steps
welcome-note = Points are formulas over a body chart; every size is drawn at once, and seams are kept true.
welcome-again = Open again
welcome-example = Look at an example
welcome-example-note = Each is opened as a copy: nothing can be spoilt.
welcome-open-example = open example { $example }
welcome-guide = Begin the guided draft
welcome-guide-about = eleven steps to two pieces and a seam
welcome-file = Open a file …
welcome-file-about = a draft from this computer
welcome-empty = An empty draft
welcome-empty-about = for those who know what they want
open-again = open again { $path }
welcome-forget = Forget
welcome-forget-called = forget { $path }
welcome-recent = { $ago }, { $folder }
welcome-recent-menu = { $folder }, { $ago }
picture-path-hint = a path to a .png or .jpg file
