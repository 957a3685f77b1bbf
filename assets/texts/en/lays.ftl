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
