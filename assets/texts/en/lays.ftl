### Lay plans: as they are published, as they are told to the designer, and in the room of cloth. What else `output` tells the designer:
### why something cannot be written, and what differs between drafts.

## Why something cannot be laid
lay-too-wide = { $piece } does not fit: it is { $least } across in its narrowest way and has { $room }; { $done }
lay-too-wide-in = { $piece } does not fit in size { $size }: it is { $least } across in its narrowest way and has { $room }; { $done }
lay-wide-cloth = take cloth at least { $width } wide
lay-wide-lengthwise = or cut it with its length along the cloth, where it is { $width } across
lay-wide-halves = or lay it on open cloth in two halves with a seam
lay-wide-joined = or join it of { $pieces } pieces
lay-border = { $piece } cannot lie at the border: the way its arrow points, the edge for the border looks to the other side; turn its grain by half, or let it lie both ways
lay-border-in = { $piece } cannot lie at the border in size { $size }: the way its arrow points, the edge for the border looks to the other side; turn its grain by half, or let it lie both ways
lay-strip = the strip { $strip } does not come out of the cloth: { $why }
lay-strip-in = the strip { $strip } does not come out of the cloth in size { $size }: { $why }
lay-strip-not-joined = it is longer than the longest piece, { $most }, and nothing tells how it is joined; say the allowance of its joins
lay-strip-narrow = { $usable } between the selvedges are not enough; take wider cloth
lay-not-found = no lay without overlap was found in the time; give it more
lay-locked = pieces that are to stay where they are overlap, or lie beyond the cloth; move or unlock them
lay-stale = what is laid, or the cloth, is not what it was laid for; lay it anew
lay-faulty =
    { $count ->
        [one] 1 place of it cannot be cut as it lies; lay it anew
       *[other] { $count } places of it cannot be cut as they lie; lay it anew
    }

## What a person should know of a lay
lay-note-too-wide = { $piece } is too wide for the folded cloth.
lay-note-single = { $piece } lies on a single layer of cloth.
lay-note-untold = Nothing tells the thread of { $piece }: it is taken to run down the piece.
lay-reason-nap = With nap: all pieces lie with their heads one way.
lay-reason-one-way = These may lie one way only: { $pieces }.
lay-reason-border = At the border lie: { $pieces }.
lay-reason-behind = On a single layer behind the folded cloth lie: { $pieces }.
lay-reason-one-layer = Cut from one layer only, the other one stays whole: { $pieces }.
lay-reason-strips = Cloth for these strips is added: { $strips }.
lay-reason-washed = Washed before it is cut: what it loses is bought too.

## Pictures of lays
lay-open = single layer, right side of the cloth up
lay-folded = folded lengthwise, right sides together
lay-to-middle = both selvedges folded to the middle, right sides together
lay-part = folded in part, right sides together there; the rest in a single layer, right side up
lay-brief-open = open
lay-brief-folded = folded lengthwise
lay-brief-to-middle = both selvedges to the middle
lay-brief-part = folded in part
lay-selvedge = selvedge
lay-selvedges = selvedges
lay-fold = fold
lay-above = { $edge }: { $laid }
lay-above-nap = { $edge }: { $laid }; with nap: all arrows point to the right, where the hems are
lay-below = { $edge }; this stretch is { $length } long
lay-one-layer = cut from one layer
lay-need = { $cm } ({ $yards }) needed; buy { $buy_cm } or { $buy_yards }.
lay-face-down = Grey: face down, the printed side of the pattern towards the cloth.
lay-on-fold = Pieces that touch the fold are drawn as halves and cut there whole.
lay-twice = Other pieces on folded cloth are cut twice at once, one the mirror image of the other.
lay-said-of = { $names }: { $words }
lay-drawn = Drawn 1 : { $scale }.
lay-scale = Scale 1 : { $scale }. One letter for each piece; arrows run along its thread.
lay-cloth = { $name } { $width } wide, { $laid }
lay-cloth-nap = { $name } { $width } wide, { $laid }, with nap
lay-figure-says = Lay plans on { $cloth }. { $plans }

## Tables of cloth to buy
lay-table = Cloth to buy
lay-table-before = Lengths of cloth from lay plans, each with its own picture, one garment.
lay-table-needed = needed
lay-table-metre = to buy by the metre
lay-table-yard = to buy by the yard
lay-table-together = Cloth for several garments together
lay-table-garments = garments
lay-table-cloth = { $cloth }, { $width } wide
lay-table-nap = with nap
lay-tells-nothing = The lay plan { $plan } tells nothing: { $why }
lay-title = Lay plans
lay-title-of = Lay plans – { $garment }

## Why something cannot be written
output-piece = piece { $piece }
output-piece-in = piece { $piece } in size { $size }
output-no-pieces-file = there are no pieces to write; draw a piece, or choose other pieces or sizes
output-unwritten = { $piece } has no outline that can be written; look for its findings first
output-drawing-empty = the drawing { $title } is { $width } x { $height } mm; both sides must be above zero
output-drawing-place = something in the drawing { $title } lies at a place that is no usable number; the shape behind it was not computed
output-no-page = there is no page to write; draw at least one
output-page-empty = page { $page } is { $width } x { $height } mm; both sides must be above zero
output-page-large = page { $page } is { $width } x { $height } mm, { $too_much }; a PDF page can be { $most } mm at most in each direction: spread it over several pages
output-too-wide = { $wide } mm too wide
output-too-high = { $high } mm too high
output-too-wide-and-high = { $wide } mm too wide and { $high } mm too high
output-page-place = something on page { $page } lies at a place that is no usable number; the shape behind it was not computed
output-font = the built-in font cannot be put into the file: { $problem }; the program is damaged or has a fault, please report it
output-photo-large = it has { $bytes } bytes; at most { $most } are read: save it smaller
output-photo-unread = it cannot be read as a PNG or JPEG picture: { $problem }
output-photo-other = it is another kind of file
output-no-pieces = there are no pieces to put on the sheet; draw a piece, or choose other pieces or sizes
output-width = a page { $width } mm wide cannot be made; ask for { $least } to { $most } mm
output-margin = a margin of { $margin } mm leaves too little of the page; ask for 0 to { $most } mm
output-undrawn = { $piece } has no outline that can be drawn; look for its findings first
output-piece-wide = { $piece } is { $needed } mm wide, but the page leaves { $room } mm; ask for a page at least { $least } mm wide
output-piece-beyond = { $piece } is { $needed } mm wide, but the page leaves { $room } mm; ask for a page at least { $least } mm wide (a PDF page can be { $most } mm at most: this piece needs several pages)
output-too-long = the pieces need a page { $height } mm long, { $over } mm more than the { $most } mm that a PDF page can have; ask for a wider page than { $width } mm, or for fewer sizes or pieces
output-projected = a picture of { $width } x { $height } mm at { $across } x { $down } pixels cannot be projected; measure what is lit on the table (each side { $least } to { $most } mm), and look up its pixels
output-line-thin = lines { $line } mm wide vanish on cloth: a pixel of this picture is { $pixel } mm, so ask for at least { $least } mm ({ $pixels } pixels), or leave the width to the program
output-common = neighbouring positions cannot have { $common } mm in common; ask for { $least } to { $most } mm
output-crowded = { $piece }: lines of neighbouring sizes lie closer than { $apart } mm along { $count } of its edges; print its sizes one by one
output-narrower =
    were everything { $by } narrower, up to { $count ->
        [one] 1 page
       *[other] { $count } pages
    } would be saved
output-lower =
    were everything { $by } lower, up to { $count ->
        [one] 1 page
       *[other] { $count } pages
    } would be saved

## Files and folders
output-folder-missing = the folder { $folder } does not exist; make it first, or name another
output-no-folder = { $folder } is not a folder; name a folder to write into
output-folder-not-made = the folder { $folder } cannot be made: { $why }; nothing was written
output-folder-exists = { $folder } is there already and is never written over; move it away, or write elsewhere; nothing was written
output-name-bad = { $name } cannot be the name of a file here: { $problem }; nothing was written
output-name-bad-in-folder = { $name } cannot be the name of a file in a folder: { $problem }; nothing was written
output-names-nothing = it names no file
output-name-separates = it holds a sign that separates folders
output-name-twice = it stands twice in the list
output-name-leads-elsewhere = a part of it is empty or leads elsewhere
output-name-kept = that name is kept for the time of writing
output-in-the-way = { $file } is a folder, so no file can be written there; move it away or write elsewhere; nothing was written
output-unchanged = { $file } could not be written: { $why }; nothing was changed
output-unwritten-file = { $file } could not be written: { $why }; nothing was written
output-none-replaced = { $file } could not be put into place: { $why }; nothing was changed
output-some-replaced = { $file } could not be put into place: { $why }; already new: { $files }; write again to have all of them from one moment
output-disk-full = the disk is full; make room or write elsewhere
output-no-rights = you may not write there; change the rights or write elsewhere
output-read-only = the disk can only be read; write elsewhere

## What differs between two drafts, besides what those who sew are told
fact-base-size = base size
fact-order-of-sizes = order of the sizes
fact-checks-off = checks that are switched off
fact-silenced = findings that are silenced
fact-silenced-at = { $code } at { $at }
fact-table = where pieces lie on the table and on pages
fact-pictures = how pictures lie underneath
fact-plans = lay plans
fact-plan-cloth = cloth needed by the lay plan { $plan }
fact-plan-need = { $exact }; to buy { $buy } or { $yards }
fact-plan-untold = not told: it is not of these pieces
fact-fittings = fittings
fact-releases = releases
fact-comes-about = how it comes about
fact-found = found
fact-given = given
fact-cut-count = { $count } of them
fact-cut-outline = outline { $outline }
fact-cut-one-way = one way only
fact-cut-allowances = allowances { $set }
fact-turn = turn
fact-turned-over = turned over
fact-left-side = left side
fact-right-side = right side
fact-must = what must hold
fact-whole-piece = the whole piece
part-kept = kept with the draft
fact-notch-told =
    { $count ->
        [one] 1 stroke, told on side { $side }
       *[other] { $count } strokes, told on side { $side }
    }
compare-differences =
    { $count ->
        [one] 1 difference
       *[other] { $count } differences
    }
compare-notes =
    { $count ->
        [one] 1 note
       *[other] { $count } notes
    }
compare-note = note: { $part }
compare-none = no differences
compare-no-sizes = no size is in both drafts, so no number was compared
compare-not = not compared: { $part }: { $what } in { $sizes }: neither draft computes it

## Plain choices of the file
choice-true = true
choice-false = false
choice-cm = cm
choice-mm = mm
choice-inch-eighths = inch eighths
choice-inch-sixteenths = inch sixteenths
choice-english = english
choice-german = german
choice-unstated = unstated
choice-adult = adult
choice-body = body
choice-house = house
choice-slashed = slashed
choice-cut-out = cut out
choice-two-ended = two ended
choice-to-start = to start
choice-to-end = to end
choice-pairs = pairs
choice-right-side-up = right side up
choice-wrong-side-up = wrong side up
choice-full = full
choice-less-allowance = less allowance
choice-block = block
choice-by-sewing = by sewing
choice-plain = plain
choice-mitred = mitred
choice-across = across
choice-circle = circle
choice-drill-hole = drill hole
choice-button = button
choice-buttonhole = buttonhole
choice-zip-end = zip end
choice-place = place
choice-text = text
choice-to-one = to one
choice-to-two = to two
choice-one = one
choice-two = two
choice-equal = equal
choice-cloth = cloth
choice-lining = lining
choice-interfacing = interfacing
choice-without = without
choice-with = with
choice-open = open
choice-folded = folded
choice-folded-to-middle = folded to middle
choice-folded-part = folded part
choice-in-pieces = in pieces
choice-before-cutting = before cutting
choice-along = along
choice-bias = bias
choice-band = band
choice-binding = binding
choice-elastic = elastic
choice-cord = cord
choice-neck = neck
choice-waist = waist
choice-hem = hem
choice-elsewhere = elsewhere
choice-laid = laid
choice-counted = counted

## The room of cloth: how a plan stands
cloth-title = Cloth
cloth-help-of = cloth
cloth-looking = The pieces are being looked at
cloth-not-computed = The draft cannot be computed, so nothing can be laid.
cloth-not-planned = not planned
cloth-searching = searching
cloth-found = found
cloth-by-hand = by hand
cloth-kept = kept
cloth-stale = stale
cloth-does-not-fit = does not fit
cloth-cannot-be-laid = cannot be laid
cloth-none-found = none found
cloth-others-now = its pieces or its cloth are others by now; plan it again
cloth-nothing = Nothing is cut from a cloth yet. A cloth needs a width in which it is sold, and a piece or strip that is cut from it: that stands on the cards of both.
cloth-add = Add a cloth …

## The room of cloth: its head
cloth-plan-all = Plan all
cloth-stop = Stop
cloth-keep-all = Keep all
cloth-group = Sizes together …
cloth-width = Another width …
cloth-longest = Longest …
cloth-show-pieces = Show the pieces
cloth-settled = Searching: { $settled } of { $all } settled
cloth-phase-first = laid for the first time
cloth-phase-explore = shorter lengths are tried
cloth-phase-compress = pressed together
cloth-at = { $plan }: { $what }
cloth-at-best = { $plan }: { $what }, best so far { $best }
cloth-moves = { $moves } moves
cloth-lengths = Lengths to buy
cloth-kept-of = { $kept } of { $all } kept
cloth-many-open = { $count } not planned
cloth-many-stale = { $count } stale: plan again
cloth-many-never =
    { $count ->
        [one] 1 does not fit
       *[other] { $count } do not fit
    }

## The room of cloth: the table
cloth-size = size
cloth-lies-nap = { $laid }, nap
cloth-column = cloth { $name } { $width }, { $lies }: its card
cloth-column-hint = Its card: widths, how it lies, nap, gap between pieces, the step in which it is sold
cloth-take-group = take { $sizes } out of the table
cloth-kept-for = Kept for { $cloth }, which its card does not say:
cloth-take-out = Take out
cloth-take-plans = take the plans for { $cloth } out
cloth-take-plans-hint = Takes these plans out of the draft; undo brings them back
cloth-lost = The plan { $plan } is of nothing here: { $why }.

## The room of cloth: the plan
cloth-choose = Choose a cell of the table to see its plan; "Plan all" looks for all of them.
cloth-buy = buy { $length }
cloth-lie-on = pieces lie on { $pieces }
cloth-lie-on-strips = pieces lie on { $pieces }, strips take { $strips }
cloth-covered = { $share } % covered
cloth-plan-it = Plan it
cloth-plan-again = Plan again
cloth-improve = Improve
cloth-keep = Keep
cloth-turn-half = Turn by half
cloth-turn-over = Turn over
cloth-lock = Lock
cloth-unlock = Unlock
cloth-arrows = Arrows: { $step }
cloth-arrows-hint = How far an arrow pushes the chosen piece; a click takes the next step
cloth-is-stale = This plan is stale: { $why }.
cloth-being-sought = It is being looked for.
cloth-not-yet = Not planned yet. "Plan it" looks for the shortest lay, beside the window.
cloth-more-faults =
    { $count ->
        [one] and 1 more that cannot be cut so
       *[other] and { $count } more that cannot be cut so
    }
cloth-hint = Drag a piece; R turns it by half, O turns it over, L locks it, arrows push it. Drag beside the pieces to move the cloth, scroll to come nearer, double click to see all.
cloth-plan-of = the plan of { $plan }
cloth-sign-over = over
cloth-locked = locked
cloth-sign-fold = on fold
cloth-sign-layer = one layer
cloth-on-cloth = { $piece }, on the cloth
cloth-cannot-cut = cannot be cut so
cloth-is-double = cut through both layers, { $count } pieces
cloth-is-half = its half lies on the fold
cloth-is-one-layer = cut from one layer only
cloth-is-border = at the border
cloth-is-over = turned over
cloth-is-turned = turned by half
cloth-is-one-way = one way only
cloth-fold = fold
cloth-selvedge = selvedge
cloth-selvedges = selvedges
cloth-both-selvedges = both selvedges
cloth-side-up = single layer, printed side up
cloth-side-part = printed side inside where it is folded
cloth-sides-together = two layers, printed sides together
cloth-thread = thread
cloth-thread-nap = thread and nap: the way that the arrows of the pieces point, to the hems
cloth-measures = { $long } long, { $wide } wide
cloth-as-drawn = as drawn

## The room of cloth: by hand
cloth-sought = this plan is being looked for; stop the search first
cloth-is-locked = { $name } is locked; unlock it first
cloth-no-further = { $name } can go no further across the cloth
cloth-step-half = turn { $name } by half
cloth-step-over = turn { $name } over
cloth-step-lock = lock { $name }
cloth-step-unlock = unlock { $name }
cloth-step-push = push { $name }
cloth-step-move = move { $name } on the cloth
cloth-step-improve = improve the plan
cloth-step-width = add a width of { $cloth }

## The room of cloth: what came of it
cloth-table-failed = the table of cloth could not be made: the program failed on it
cloth-search-goes-on = a search goes on; stop it first
cloth-still-looking = the pieces are still being looked at; try again in a moment
cloth-nothing-shorter = { $plan }: nothing shorter was found
cloth-found-all = { $many } of { $all } plans are found; Keep all writes them into the draft
cloth-found-some = { $many } of { $all } plans are found, { $rest } were not looked for; Keep all writes them into the draft
cloth-plan-later = the pieces are being looked at; plan all once the table is there
cloth-nothing-to-lay = there is nothing that could be laid
cloth-none-kept = no plan is kept for this
cloth-cannot-keep = { $plan }: it cannot be kept so, { $why }
cloth-no-plan = there is no plan that could be kept; plan first
cloth-kept-plans =
    { $count ->
        [one] 1 plan is in the draft
       *[other] { $count } plans are in the draft
    }
cloth-group-stands = { $sizes } stands in the table; plan it
cloth-none-yet = the draft has no cloth yet; add one first
cloth-unknown = there is no cloth called { $cloth }; there are { $known }
cloth-width-needed = a width is needed, such as 140 cm

## The room of cloth: its dialogs
cloth-group-title = Sizes laid together
cloth-group-note = Several garments laid together take less cloth than one by one. The sizes are { $sizes }.
cloth-group-add = Add the row
cloth-group-sizes = sizes
cloth-group-hint = such as 2 x S, 4 x M
cloth-width-title = Another width of a cloth
cloth-width-note = From selvedge to selvedge, as it is sold. How it lies, its nap and the rest stand on the card of the cloth.
cloth-width-add = Add the width
cloth-width-cloth = cloth
cloth-width-field = width
cloth-width-hint = such as 140 cm
cloth-its-name = its name
cloth-longest-title = Longest from so much cloth
cloth-longest-help-of = this dialog
cloth-longest-about = How large can a length of the draft be, so that everything still comes out of the cloth at hand?
cloth-longest-value = value
cloth-longest-lengths = Lengths: { $names }
cloth-longest-at-hand = cloth at hand
cloth-longest-as = such as 3 m or 4 yd
cloth-longest-which = of which cloth
cloth-longest-of = of { $cloth }
cloth-longest-size = in which size
cloth-longest-in-size = in size { $sizes }
cloth-longest-looking = Looking for it on { $cloth }.
cloth-longest-look = Look for it
cloth-longest-put = Put it in the draft
cloth-longest-put-hint = Writes it into the draft, in the place of the formula; undo takes it back
cloth-good = Good
cloth-cancel = Cancel
cloth-longest-already = it is being looked for already
cloth-longest-have = `{ $text }` is no length of cloth, such as 3 m or 4 yd
cloth-longest-choose = choose the cloth and the size
cloth-longest-lost = the search ended without a word
cloth-longest-tries =
    { $count ->
        [one] 1 lay was made; a longer search may find a little more.
       *[other] { $count } lays were made; a longer search may find a little more.
    }
