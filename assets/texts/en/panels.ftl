### The canvas, the card and the chart.

## The card
card-step-title = Booklet step { $number }
card-log-title = Log
card-question = the card
card-called = { $caption } of { $part }
card-found = found
card-note = note
card-take-out = Take it out
card-nothing = nothing
card-none = none
card-the-same = the same
card-not-said = not said

## The card of a step of the booklet, and of the log
card-step-heading = heading
card-step-heading-hint = such as Join the shoulders
card-step-words = words
card-step-words-hint = What is done. A formula in braces becomes a number: {"{"} length(front.hem) {"}"}. Lines with - are points of a list.
card-step-pieces = pieces drawn beside it
card-step-piece = { $piece } drawn in { $part }
card-step-views = views that it belongs to
card-step-view = { $part } in view { $view }
card-picture-file = file of picture{ $number }
card-picture-file-hint = a PNG or JPEG in the folder of the draft
card-picture-says = what picture{ $number } shows
card-picture-says-hint = for whoever does not see it
card-picture-caption = words under picture{ $number }
card-picture-caption-hint = none
card-picture-take = take out picture{ $number }
card-picture-add = Add a picture
card-step-reads = how it reads in { $size }
card-log-about = Which sizes were sewn, and when. A release tells the sizes that never were.
card-fitting = Fitting { $number }: { $size }
card-fitting-unsized = Fitting { $number }: a size
card-fitting-date = date, fitting { $number }
card-fitting-date-hint = such as 2025-03-14
card-fitting-size = size that was sewn, fitting { $number }
card-fitting-cloth = in which cloth, fitting { $number }
card-fitting-note = what was changed, fitting { $number }
card-fitting-take = take out fitting { $number }
card-released = released
card-release = edition { $edition }, { $date }

## Numbers by size
card-no-value = no value
card-size-line = { $size }: { $number }
card-by-size = by size

## The card of the draft
card-language = language of what is published
card-audience = who is to wear it (cautions hang on it)
card-youngest = the youngest
card-youngest-hint = such as 2 years
card-oldest = the oldest
card-oldest-hint = such as 8 years
card-worn-as = worn as
card-wearers = whose sizes the rules are asked for
card-survey = the chart is a survey of bodies, not a chart to fit by
card-rule-size = size of the rules that { $size } is
card-rule-sizes = Say which sizes of the rules they are
card-girth = garment around the { $place }
card-girth-hint = all round, such as 2 * length(front.hem)
card-girth-take = take out the girth of the { $place }
card-girths = girths of the garment that rules speak of
card-girth-say = Say a girth …
card-girth-called = girth of the { $place }
card-title = title
card-author = author
card-licence = licence
card-contact = contact
card-edition = edition
card-date = date
card-unit = lengths are shown in
card-unit-eighths = in, eighths
card-unit-sixteenths = in, sixteenths
card-unit-show = show { $unit }
card-seam-limit = how far seams may be off
card-notch-limit = how far notches may be apart
card-joint-angle = how far lines may bend at a seam
card-joint-gap = how far they may be off 10 mm beside it
card-allowance = seam allowance where none is said

## Allowances, cuts, notches
card-hem-depth = depth of the hem
card-allowance-of = allowance of { $edge }
card-allowance-from = allowance of { $edge } from { $from }
card-second-turn = second turn
card-second-turn-hint = as deep as the first
card-holds-from = holds from, on { $edge }
card-holds-from-hint = its start
card-runs-to = runs to, at the end of { $edge }
card-no-hem = No hem at { $edge }
card-no-allowance = No own allowance at { $edge }
card-no-allowance-from = No own allowance at { $edge } from { $from }
card-own-allowance = Own allowance
card-further-width = A further width
card-hem = Hem
card-hem-twice = Hem, turned twice
card-allowance-else = its seam's allowance holds, else that of the draft
card-cut-material = material{ $number }
card-cut-material-hint = the name of a material
card-cut-heading = heading of the grain{ $number }
card-cut-heading-hint = 90°: down the piece
card-cut-along = grain must follow{ $number }
card-cut-along-hint = an edge or line
card-cut-count = cut { $count } of { $piece }{ $number }
card-no-fold = no fold
card-fold-at = fold at { $edge }
card-cut-take = Take out this cut{ $number }
card-cut-say = Say how it is cut
card-cut-another = Cut it from another cloth too
card-label = place of its label
card-label-hint = where there is room
card-longer = longer at { $line } by
card-longer-hint = a length; below 0: shorter
card-lengthen = Lengthen or shorten at { $line }
card-lengthen-about = Everything beyond the line gets to hang on one value and moves as a block
card-notch = notch { $name } at
card-notch-hint = a length, a fraction or a point
card-notch-take = Take out notch { $name }
card-notch-add = Add a notch
card-roll = Roll it
card-order = sewn as number, or after
card-order-hint = such as 2, or after side
card-pressed = allowances pressed
card-pressed-open = open
card-pressed-one = to side one
card-pressed-two = to side two
card-pressed-called = pressed { $way }
card-seam-allowance = allowance of both sides
card-seam-allowance-hint = that of the draft
card-closure = open for a closure, from its start
card-closure-hint = sewn all along

## Cards of pieces, points and edges
card-letter = letter on sheets
card-points =
    { $count ->
        [one] 1 point
       *[other] { $count } points
    }
card-edges =
    { $count ->
        [one] 1 edge
       *[other] { $count } edges
    }
card-lines =
    { $count ->
        [one] 1 line
       *[other] { $count } lines
    }
card-darts =
    { $count ->
        [one] 1 dart
       *[other] { $count } darts
    }
card-empty-piece = nothing in it yet
card-stacked = sizes lie over each other at
card-stacked-across = sizes lie over each other across at
card-stacked-down = and down at
card-stacked-hint = a point
card-stack-points = Lay sizes over each other at points
card-stack-origin = Lay sizes over each other at the origin
card-place = place
card-place-hint = such as neck.down(8 cm) or (0 cm, 0 cm)
card-placed = { $right } right, { $down } down in { $size }
card-no-place = no place in { $size }
card-stack-here = lay the sizes over each other here
card-stack-both = Both ways
card-stack-both-at = stack both ways at { $point }
card-stack-across = Across only
card-stack-across-at = stack across only at { $point }
card-stack-down = Down only
card-stack-down-at = stack down only at { $point }
card-right-of-origin = right of the origin
card-below-origin = below the origin
card-edge-follows = it follows from { $of } and the steps of { $piece }
card-sewn-length = sewn length by size
card-edge-ends = from { $from } to { $to }, { $bent } of { $count } curved
card-curve = Curve it
card-straighten = Make it straight
card-handle-leaving = handle leaving { $point }
card-handle-arriving = handle arriving at { $point }
card-centre = centre
card-heading-leaving = heading leaving
card-heading-arriving = heading arriving
card-heading-free = free
card-through = through point { $number }
card-curve-taken = curve taken
card-set-off = set off by, inside positive
card-set-off-hint = not set off
card-set-off-end = running to, at its end
card-smooth-at = must run on smoothly at { $point }
card-make-smooth = Make it smooth at { $point }
card-make-smooth-about = Turns a handle there so that it runs on; in every size

## Cards of strips, notions and cloth
card-what-it-is = what it is
card-how-many = how many
card-finished-length = finished length, from seam to seam
card-finished-length-hint = such as waist * 0.9
card-strip-ends = added at each end
card-finished-width = finished width
card-finished-width-hint = such as 2 cm
card-layers = layers of it
card-strip-sides = added along each side
card-strip-grain = how it lies on the cloth
card-strip-join = allowance on each side of a join
card-strip-join-hint = it is not joined
card-strip-place = where on the body (cautions hang on it)
card-free-end = how far each free end hangs out
card-fastened = sewn fast at its middle
card-in-lay = in lay plans of its cloth
card-notion-size = length or size
card-sold = sold in
card-sold-another = Another size in which it is sold
card-sold-hint = such as 20 cm
card-width = sold in the width
card-width-another = Another width in which it is sold
card-width-hint = such as 140 cm
card-selvedge = selvedge on each side, not used
card-nap = direction
card-laid = how it is laid to be cut
card-folded-part = width of the folded part, from the fold on
card-folded-part-hint = as wide as its pieces need
card-gap = least distance between pieces
card-sold-in = sold in steps of
card-sold-in-hint = 10 cm, or 1/8 yd
card-stretch-along = stretches along the thread by
card-stretch-hint = nothing, such as 5 %
card-stretch-across = stretches across by
card-shrink-along = shrinks along the thread by
card-shrink-across = shrinks across by
card-shrinks = where that is allowed for
card-length-by-size = length by size
card-cloth = How much to buy
card-cut-from = cut from
card-bought = bought
card-number-in = { $number } in { $size }
card-choice-of = { $caption }, of { $part }
card-fewer = fewer: { $what }
card-more = more: { $what }
card-take-out-what = take out: { $what }

## The card of a row of the chart
card-row-formula = formula for sizes without a number
card-row-formula-hint = none: a proposal between the neighbours
card-row-what = what is measured
card-row-level = level
card-row-how = how to take it
card-row-source = source
card-show-chart = Show the chart
card-row-body = body
card-row-body-called = body row
card-row-body-about = A measure of bodies; published
card-row-house = house
card-row-house-called = house row
card-row-house-about = Anything else that goes by size; never published
card-row-up = Up
card-row-down = Down
card-varies = varies by
card-varies-by = varies by { $axis }

## Cards of seams and conditions
card-side-one = side one
card-side-one-of = side one of seam { $seam }
card-side-two = side two
card-side-two-of = side two of seam { $seam }
card-side-hint = edges one behind the other, such as front.side
card-seam-found-by = kept true by these values (none: it is watched)
card-seam-found-by-of = kept true by, of seam { $seam }
card-seam-found-by-hint = watched only
card-seam-in = { $state } in { $size }
card-seam-difference = side one less side two
card-seam-excess = too long or too short
card-fit = how the sides fit
card-fit-equal = equal
card-fit-eased = eased
card-fit-gathered = gathered
card-fit-stretched = stretched
card-fit-called = fit { $fit }
card-fit-by = longer by
card-fit-times = times as long
card-one-longer = side one is longer
card-one-shorter = side one is shorter
card-two-longer = side two is longer
card-two-shorter = side two is shorter
card-other-side = The other side
card-must = must hold
card-must-hint = a = b, or a >= b
card-condition-found-by = kept true by these values
card-condition-found-by-of = kept true by, of condition { $condition }
card-condition-found-by-hint = all that it depends on
card-left-side = left side by size
card-right-side = right side by size

## Steps of derived pieces
card-made-of = made of { $piece }; it follows that piece in every size
card-further-step = a further step
card-step = { $number }. { $does }
card-step-times = { $number }. { $does }, { $count } times
card-earlier = Earlier
card-later = Later
card-take-step-out = Take out
card-step-called = { $word } step { $step }
card-opening-usual = As usual
card-opening-dart = A dart
card-opening-straight = Straight across
card-opening-curve = A curve across
card-parallel = In parallel
card-more-slashes = One more slash
card-fewer-slashes = One slash less
card-other-way = The other way
card-square-ends = Square ends
card-mirrored-ends = Mirrored ends
card-switch-called = { $word } in step { $step }
card-did-move-dart = Dart moved
card-did-spread = Slashed and spread
card-did-cut = Cut in two
card-did-join = Joined
card-did-unfold = Unfolded
card-did-turn-over = Turned over
card-did-add-strip = Strip added
card-did-move-edge = Edge moved
card-did-share = Amount shared
card-did-to-cut-line = To the cut line
card-did-redraw = Edge drawn anew
card-did-draw = Drawn
card-did-leave-out = Left out

## Cards of values, persons and views
card-start = start
card-start-hint = where the search begins
card-least = least
card-most = most
card-no-limit = no limit
card-formula = formula
card-formula-hint = a formula, such as 2 cm or bust / 20
card-in-view = in view { $view }
card-give = Give it
card-give-about = Its start becomes its formula, and nothing is found by it any more
card-find = Let it be found
card-find-about = Its formula becomes the start; a seam or condition says what it is found by
card-person-numbers = The numbers of { $name } stand in the chart, behind the sizes.
card-see-view = See this view
card-view-pieces = pieces
card-view-piece = { $piece } in view { $view }
card-view-values = values that are other in it
card-elsewhere = As elsewhere
card-elsewhere-about = Takes this formula out of the view
card-value-elsewhere = { $value } as elsewhere
card-another-value = Another value …
card-value-other = { $value } is other

## Fields of the file, where a card lists them
card-field-name = name
card-field-note = note
card-field-girth = girth
card-field-cup = cup
card-field-length = length
card-field-base = base
card-field-sheets = sheets
card-field-paper = paper
card-field-sizes = sizes
card-field-pieces = pieces
card-field-lay = lay
card-field-on = on
card-field-point = point
card-field-onto = onto
card-field-towards = towards
card-field-along = along
card-field-turned = turned
card-field-overlap = overlap
card-field-corners = corners
card-field-meant = meant
card-field-is = is
card-field-body = body
card-field-ease-least = ease least
card-field-ease-most = ease most
card-field-drift-most = drift most
card-field-passes = passes
card-field-stretch = stretch
card-field-centre = centre
card-field-foot = foot
card-field-intake = intake
card-field-tip = tip
card-field-bow = bow
card-field-allowance = allowance
card-field-depth = depth
card-field-line = line
card-field-over = over
card-field-at = at
card-field-to = to
card-field-fixed = fixed
card-field-piece = piece
card-field-size = size
card-field-text = text
card-field-person = person
card-field-close = close
card-field-share = share
card-field-stays = stays
card-field-makes = makes
card-field-from = from
card-field-from-at = from at
card-field-to-at = to at
card-field-from-until = from until
card-field-to-until = to until
card-field-by = by
card-field-angle = angle
card-field-darts = darts
card-field-keep = keep
card-field-start = start
card-field-end = end
card-field-rest = rest
card-field-edge = edge
card-field-prefix = prefix
card-field-width = width
card-field-to-by = to by
card-field-edges = edges
card-field-set = set
card-field-smooth-at = smooth at
card-field-segment-to = segment to
card-field-leaving = leaving
card-field-arriving = arriving
card-field-through = through
card-field-leaving-heading = leaving heading
card-field-arriving-heading = arriving heading
card-field-curve = curve
card-field-off = off
card-field-off-end = off end
card-field-leaves-out = leaves out
card-field-point-name = point name
card-field-point-note = point note
card-field-line-name = line name
card-field-line-from = line from
card-field-line-note = line note
card-field-dart-name = dart name
card-field-dart-on = dart on
card-field-dart-centre = dart centre
card-field-dart-foot = dart foot
card-field-dart-intake = dart intake
card-field-dart-tip = dart tip
card-field-dart-bow = dart bow
card-field-dart-allowance = dart allowance
card-field-dart-note = dart note
card-field-mark-name = mark name
card-field-mark-at = mark at
card-field-mark-to = mark to
card-field-mark-fixed = mark fixed
card-field-mark-piece = mark piece
card-field-mark-size = mark size
card-field-mark-text = mark text

## The table: how edges bend
canvas-tightest = tightest radius { $radius }
canvas-straight = straight
canvas-bends = bends { $angle }
canvas-bends-at-joint = bends { $angle } at a joint
canvas-smooth = smooth
canvas-curvature = curvature of { $edge }: { $words }
canvas-corner = { $angle } at the corner
canvas-corner-start = start of { $edge }: { $words }
canvas-corner-end = end of { $edge }: { $words }

## The table: what can be pulled
canvas-grip = { $edge }, { $what }
canvas-arc-centre = centre of the arc to { $point }
canvas-way-point = point { $number } on the way to { $point }
canvas-no-number = no number of its own moves it; hold Shift to add an offset
canvas-slides = slides along a line; { $reach }
canvas-reach-all = changes all sizes
canvas-reach-one = changes { $size } only
canvas-reach-up = changes { $size } and up

## The table itself
canvas-pieces = the pieces in { $size }
canvas-table = the table
canvas-puts-name = click puts { $name } in the formula

## The table: another draft
canvas-end-comparing = End comparing
canvas-comparing = comparing
canvas-differences = Differences
canvas-dashed-line = dashed line: { $of }
canvas-whole-line = whole line: { $of }
canvas-not-in = { $size } is not in { $draft }
canvas-this-draft = this draft

## The table: the pencil
canvas-pencil-typed = Enter writes it; Esc takes the number back
canvas-pencil-click = click writes it; type a number
canvas-pencil-several = { $number } of { $all }: Space for the next; click writes it; type a number
canvas-pencil-elsewhere = this is { $other }: the pencil draws in { $piece }
canvas-pencil-from-none = click a point to measure from it
canvas-pencil-from = measures from { $point }
canvas-pencil-from-two = measures from { $point }, before it { $before }
canvas-pencil-in = Pencil in { $piece } · { $from }
canvas-pencil-told = typed { $typed }: { $state }
canvas-pencil-would = pencil would write { $told }
canvas-put-down = Put it down
canvas-pencil = the pencil
canvas-join = Join points
canvas-join-about = Each point is joined to the one before by a line; dragging draws one line; with Shift it is a curve
canvas-join-called = join points

## The table: names of pieces, grid, hints
canvas-piece-told = piece { $piece }, { $state }
canvas-drawing-told = drawing { $drawing }, { $state }
canvas-piece-past = piece { $piece } { $state }
canvas-drawing-past = drawing { $drawing } { $state }
canvas-size-note = { $size }, { $note }
canvas-size-noted = { $size } · { $note }
canvas-not-drawn = cannot be drawn in { $size }
canvas-as-it-was = { $note }; this is how it was
canvas-not-true = not true
canvas-step-fails = a step cannot be done: see proof
canvas-open = outline open
canvas-empty = nothing in it yet
canvas-move-piece = move { $piece } on the table
canvas-why-not = the findings below say why
canvas-grid = grid { $step }
canvas-hint = Drag to move, scroll to zoom, double click to see all; ← and → change the size; Ctrl+K finds everything
canvas-not-computed = This draft could not be computed; the message above says why.
canvas-no-sizes = No sizes yet: add the first one with the + above; then pieces can be drawn.
canvas-no-pieces = No pieces yet: add one from the menu Add, or at the left.

## The table: tags of seams
canvas-seam-not-in-view = not in this view
canvas-seam-not-measurable = cannot be measured
canvas-seam-not-measured = not measured
canvas-seam-too-long = { $by } too long
canvas-seam-too-short = { $by } too short
canvas-seam-equal = equal
canvas-seam-longer = { $by } longer, as meant
canvas-seam-shorter = { $by } shorter, as meant
canvas-tag = { $seam }: { $state }
canvas-tag-see-proof = { $seam }: { $state } · see proof
canvas-seam = seam { $seam }: { $state }
canvas-seam-see-proof = seam { $seam }: { $state }, see proof
canvas-seam-fine = seam { $seam }: { $state }, fine in all sizes

## The table: the tape
canvas-put-away = Put it away
canvas-tape = the tape
canvas-tape-keep = Keep as a value …
canvas-tape-way = Another way
canvas-tape-way-about = Straight, along the edges, or around the other side (Space)
canvas-tape-click = Tape: click a point or an edge
canvas-tape-holds = Tape: click holds it at { $place }
canvas-tape-from = Tape from { $place }: point at where it goes
canvas-tape-no-length = no length
canvas-tape-lifted = Tape: { $length } lifted to another piece: { $formula }
canvas-tape-straight = Tape: { $length } straight: { $formula }
canvas-tape-along = Tape: { $length } along: { $formula }
canvas-tape-in = tape in { $size }: { $length }

## The table: pictures under the pieces
canvas-picture = Picture { $file }
canvas-picture-called = picture { $file } { $place }
canvas-picture-called-unscaled = picture { $file } { $place }, not scaled yet
canvas-picture-laid = the picture that is laid
canvas-picture-hidden = hidden
canvas-picture-scaled = scaled
canvas-picture-unscaled = not scaled yet
canvas-picture-read = is being read
canvas-picture-not-shown = cannot be shown: { $problem }
canvas-picture-scale = Scale …
canvas-picture-level = Make level
canvas-picture-plumb = Make plumb
canvas-picture-measure = Measure
canvas-picture-move = Move
canvas-picture-show = Show
canvas-picture-show-called = Show the picture
canvas-picture-hide = Hide
canvas-picture-hide-called = Hide the picture
canvas-picture-remove = Remove
canvas-picture-remove-called = Remove the picture
canvas-picture-faded = faded
canvas-picture-fade = how faded the picture is
canvas-lay-move = Drag the picture. Escape ends it.
canvas-lay-apart = How far apart are they really?
canvas-lay-scale-first = Click the first point of two whose distance you know, far apart.
canvas-lay-scale-second = Click the second point of two whose distance you know, far apart.
canvas-lay-level-first = Click the first point of two that lie level.
canvas-lay-level-second = Click the second point of two that lie level.
canvas-lay-plumb-first = Click the first point of two that lie plumb, one over the other.
canvas-lay-plumb-second = Click the second point of two that lie plumb, one over the other.
canvas-lay-measure-first = Click the first point of the distance.
canvas-lay-measure-second = Click the second point of the distance.
canvas-distance = real distance
canvas-distance-hint = such as 20 cm
canvas-set-scale = Set the scale

## The chart
chart-title = Chart
chart-question = the chart
chart-page = page { $page }
chart-numbers = Numbers
chart-sizes = Sizes and sets
chart-proposals = Proposals
chart-proposals-many = Proposals: { $many }
chart-paste = Paste
chart-show-pieces = Show the pieces
chart-steps = Steps
chart-steps-called = steps under the numbers
chart-how = Type a number with its unit, or +2 cm for a step from the size before. Enter, Tab and arrows go from cell to cell. Numbers with a question mark are proposals until they are confirmed.
chart-empty = A chart needs sizes and rows: add the first size and the first row with the buttons above, or paste a table.
chart-cell = { $row } in { $column }
chart-every-size = every size
chart-missing = missing
chart-step = step of { $row } to { $size }: { $step }
chart-step-uneven = step of { $row } to { $size }: { $step }, uneven
chart-row = row { $row }
chart-house-row = house row: { $what }
chart-same-in-all = the same in all
chart-by = by { $axes }
chart-column = column { $name }
chart-base-column = column { $name }, base
chart-column-of = column { $name }, rows { $rows }
chart-base-column-of = column { $name }, base, rows { $rows }
chart-base-of = { $name } base
chart-first-row = { $row } is the first row already
chart-last-row = { $row } is the last row already

## The chart: tables on the disk
chart-not-read = { $file } cannot be read: { $why }
chart-no-file = { $file } is not a file
chart-too-large = { $file } has { $bytes } bytes; at most { $most } are read
chart-not-text = { $file } is not plain text (UTF-8); save it as CSV first
chart-name-needed = a name is needed
chart-written = the chart is written to { $file }

## The chart: proposals
chart-none-waiting = Every number of the chart was typed or follows from a formula: nothing waits to be confirmed.
chart-waiting = These sizes have no number of their own yet. What is proposed lies evenly between the neighbours, or goes on with the last step; the pieces are drawn with it. Confirm it, or type the measured number.
chart-confirm-all = Confirm all { $count }
chart-confirm-row = Confirm { $count } of { $row }
chart-more = and { $count } more
chart-confirm = Confirm
chart-confirm-cell = confirm { $row } in { $size }
chart-beyond = beyond the numbers that were typed
chart-between = between two numbers

## The chart: sizes and sets
chart-sizes-about = Sizes lie along one to three axes; a row says on its card by which of them it varies. The base is the zero of steps and the first to be shown: it has no power over the pieces.
chart-along = Along { $axis }
chart-along-unused = Along { $axis } (not used)
chart-add-label = Add a label to { $axis }
chart-take-axis = Take out { $axis }
chart-put-earlier = put { $label } earlier
chart-put-later = put { $label } later
chart-rename = Rename
chart-rename-size = rename size { $size }
chart-rename-set = rename set { $set }
chart-delete = Delete
chart-delete-size = delete size { $size }
chart-delete-set = delete set { $set }
chart-base = base
chart-make-base = Make it the base
chart-make-base-of = make { $label } the base
chart-sets = Size sets
chart-no-sets = None: the range is every label with every other. A set names a part of the range.
chart-sets-hold = The range is what the sets hold.
chart-label-in-set = { $label } in set { $set }
chart-set-base = base: { $base }
chart-set-no-base = base: none yet
chart-set-base-choice = base of { $set }: { $base }
chart-base-of-set = base of set { $set }

## The chart: a block before it is taken
chart-paste-here = Paste numbers from a spreadsheet here, or type them: a line for each row, tabs, semicolons or commas between.
chart-paste-from = From { $file }. Nothing changes in the chart before it is taken.
chart-pasted = numbers to be pasted
chart-parted = columns are parted by
chart-parted-by = parted by { $sign }
chart-bare = bare numbers are in
chart-bare-in = bare numbers in { $unit }
chart-first-line = The first line names sizes
chart-first-line-called = first line names sizes
chart-first-column = The first column names rows
chart-first-column-called = first column names rows
chart-add-sizes = Add the new sizes along { $axis }
chart-add-sizes-called = add the new sizes
chart-add-rows = Add the new rows
chart-add-rows-called = add the new rows
chart-new-sizes = new sizes go along
chart-new-sizes-along = new sizes along { $axis }
chart-new-labels = labels of new sizes
chart-new-labels-hint = such as 132, 136
chart-new-names = names of new rows
chart-new-names-hint = such as ankle, calf
chart-take =
    { $count ->
        [one] Take 1 number
       *[other] Take { $count } numbers
    }
chart-take-called = take the numbers
chart-put-away = Put it away
chart-columns-nowhere = columns without a place: { $count }
chart-lines-nowhere = lines without a place: { $count }
chart-already = already there: { $count }
chart-wrong = cannot be taken: { $count }
chart-say-unit = Say in which unit the bare numbers are: it is never guessed.
chart-laid-same = { $place }: already there
chart-laid-takes = { $place }: takes { $text }
chart-laid-wrong = { $place }: wrong, { $why }
chart-laid-now = { $told } (now { $now })
chart-block-row = row { $name } of the block
chart-block-size = size { $name } of the block
chart-block-new-row = new row { $name } of the block
chart-block-new-size = new size { $name } of the block
chart-block-no-row = no place for row { $name }: { $why }
chart-block-no-size = no place for size { $name }: { $why }
chart-not-taken = Cannot be taken
chart-not-taken-line = line { $number }, { $place }: `{ $typed }`: { $why }
