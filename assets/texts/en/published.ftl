### The words of all that is published, in English. Code names them by `t!("id", name = value)`; the format is Fluent.
### A text that is changed here changes what is printed. Names and numbers are put in as they are.

## Common: sizes, views, pages, units
yes = yes
no = no
of-size = size { $size }
of-sizes = sizes { $sizes }
of-sizes-to = sizes { $first } to { $last }
of-view = view { $view }
of-set = set { $set }
size-head = Size { $size }
sizes-head = Sizes { $sizes }
pages =
    { $count ->
        [one] 1 page
       *[other] { $count } pages
    }
page-of = page { $page } of { $many }
page-named = page { $name } ({ $number } of { $many })
unit-inch = in
length-both = { $cm } cm ({ $inches } in)
area-both = { $cm } cm² ({ $inches } in²)
under-a-sixteenth = under 1/16
length-small = { $mm } mm (under 1/16 in)
list-and = { $first } and { $last }
paper-both = A4 or US Letter
edition = edition { $edition }
edition-of = edition { $edition }, { $date }
untitled = Untitled draft
for-toile = for a toile
for-testers = for testers

## Pieces and their labels
cut = cut { $count }
cut-on-fold = cut { $count } on the fold
cut-right-side = cut { $count }, right side of the cloth up
cut-wrong-side = cut { $count }, wrong side of the cloth up
cut-mirrored = cut { $count } ({ $half } + { $half } mirrored)
cut-from = { $cut } from { $material }
cut-pairs =
    { $count } = { $pairs ->
        [one] 1 pair
       *[other] { $pairs } pairs
    }
outline-less = without allowance
outline-block = a rough block, fused before cutting
label-whole = drawn whole: not on the fold
label-thread-off = thread at { $degrees }° to the arrow
label-nap-along = nap along the thread
label-nap-arrow = nap { $way }, as the arrow points
label-nap = nap { $way }
label-either-way = grain either way
label-one-way = grain one way on all pieces
way-down = down
way-up = up
way-right = to the right
way-left = to the left
label-no-allowance = no allowance
label-some-without = { $words }, some edges without
label-allowance = with allowance { $allowance }
label-allowances = with allowances { $least } to { $most }
lengthen-here = lengthen or shorten here
fold = fold
on-fold-of-cloth = on the fold of the cloth

## The first page and the block of words on a sheet
title-no-allowance = All outlines are stitch lines; no seam allowance is included.
title-some-allowance = Pieces with a dotted line inside are cut along the outer line: allowance is included. Outlines without one are stitch lines.
title-allowance = Cut along the outer lines: seam allowance is included. Sew along the dotted lines.
title-page = Page { $width } x { $height } mm ({ $across } x { $down } in)
title-true-size = True size, printed at 100 %: measure the marks above and at the left first.
title-faded = Pieces in grey are not true in their size: do not cut them.
title-size = Size: { $size }
title-sizes = Sizes:
guide-how = How to print
guide-which = Which pages
guide-print = Print on { $paper } at 100 %, "actual size", never fitted to the page. Print this page first and measure both marks in both directions: a difference of 1 mm on 100 mm is too much.
guide-stretched = If the two directions differ, the print is stretched and nothing made from it fits together: a mark of 100 mm that measures 100 mm across and 98 mm down means that the width is at 100 % and the length at 98 %. Print again until both are right.
guide-why = Why it matters: if the 100 mm mark measures { $mark } mm (US Letter fitted to A4), this garment, meant for { $measure } { $meant }, comes out for { $comes }.
guide-join = Cut along the frame at the right and the bottom of each page, lay it over its neighbours so that the half marks make whole ones, and join. The marks at both ends of an edge and where lines cross it must meet; the ticks are 10 mm apart on every page.
guide-pages =
    { $pages ->
        [one] 1 page besides this one, { $columns } across and { $rows } down.
       *[other] { $pages } pages besides this one, { $columns } across and { $rows } down.
    }
guide-all-pages = all pages
guide-size = Size { $size }: { $pages }.

## The projector
grid-cm = grid: solid lines 5 cm apart
grid-inches = grid: dotted lines 2 in apart
grid-both = grid: solid lines 5 cm apart, dotted lines 2 in apart
grid-none = no grid
projector-test = Test of the scale. The picture must be { $width } wide and { $height } high on the cloth: move the projector until all marks measure what they say, both ways.
projector-pixels = At { $across } x { $down } pixels one pixel is { $pixel } mm and a line is { $line } mm wide; { $grid }.
projector-then = Then show the pages one after the other, each filling the picture: { $count ->
        [one] 1 position
       *[other] { $count } positions
    }. Where a piece goes on, mark the crosses in their rings on the cloth, move the cloth, and lay them on the same crosses of the next page.
projector-position = position { $number } of { $count }
projector-part = { $pieces } { $number } of { $count }

## The booklet
chapter-size = Your size
chapter-needs = What you need
chapter-pieces = The pieces
chapter-lays = How the pieces lie on the cloth
chapter-allowances = Seam allowances
chapter-sewing = Sewing
chapter-about = About this pattern
figure-says = Pieces drawn: { $pieces }
figure-says-in = Pieces drawn in size { $size }: { $pieces }
figure-caption = Drawn, all to one scale.
figure-caption-in = Drawn in size { $size }, all to one scale.
figure-lines-all = Outer line: where it is cut; dotted line: where it is sewn.
figure-lines-some = Where there is a dotted line, that is where it is sewn, and the outer line where it is cut.
about-author = Drafted by
about-licence = Licence
about-contact = Questions, and mistakes that you find
step = Step { $number }
step-numbers = Step { $step }: { $many ->
        [one] the number
       *[other] the numbers
    } by size
allowance-none = none
allowance-at = { $allowance } at { $edges }
allowance-round = { $allowance } all round
allowance-but = { $allowance }, but { $rest }
allowance-hem = { $depth } hem
allowance-hem-turned = { $depth } hem and { $turn } turned in
allowance-running = { $start } running to { $end }
allowance-then = then
allowances-included = Allowances are included in the cut line of these pieces: cut along the outer line, sew along the dotted one.
allowances-without = No allowance is included in: { $pieces }. Add what you need before cutting, unless the steps say otherwise.

## Tables
table-size = size
table-untitled = untitled draft
csv-group = group
csv-unit = unit
csv-sign = sign
csv-note = note
html-skip = Skip to the words
html-contents = Contents
html-line = line
sign-guessed = not measured: a proposal between its neighbours
sign-beyond = not measured: a proposal beyond its neighbours
sign-untrue = not true: it hangs on an equation that does not hold in this size
how-many = how many
table-body = Body chart
body-before = Measures of the body, without any ease: pick the size by these.
body-survey = A survey: what bodies were found to be, not a chart to fit by.
body-level = at the level of { $level }
body-source = Source: { $source }
body-source-of = Source of { $rows }: { $source }
table-measures = Finished measures
measures-before = Measures of the sewn garment, all round where a round is named. Ease is garment minus body. Each number is rounded by itself.
measure-finished = finished
measure-body = body ({ $row })
measure-ease = ease
measure-least = least ease meant
measure-most = most ease meant
measure-stretches = stretches to
measure-passes = must pass ({ $row })
table-notions = Notions
table-notions-by-size = Notions by size
notions-before = The same in all sizes.
notion = notion
notion-size = size
notion-sold = next size sold
notion-needed = size needed
table-cutting = Cutting list
cutting-before = What is cut, the same in all sizes. Counts are of cut pieces; a piece on the fold is one.
cutting-piece = piece
cutting-letter = letter
cutting-cut = cut
cutting-how = how
cutting-face = face
cutting-grain = grain
grain-along = along the thread
grain-across = across the thread
grain-bias = on the bias
cutting-strip = strip: its lengths are in its own table
cutting-sum = in all
cutting-untold = Nothing tells from what these are cut, and how often: { $pieces }.
cutting-own-cloth = its cloth
cutting-lining = { $name } (lining)
cutting-interfacing = { $name } (interfacing)
face-right = right side of the cloth up
face-wrong = wrong side of the cloth up
grain-either-way = either way
grain-one-way = one way
grain-along-line = { $ways }, along { $line }
grain-by-arrow = { $ways }, by the arrow
cutting-on-fold = on the fold
cutting-pairs =
    { $pairs ->
        [one] 1 pair: 1 and 1 mirrored
       *[other] { $pairs } pairs: { $pairs } and { $pairs } mirrored
    }

## Strips
table-strip = Strip: { $strip }
strip-finished-length = finished length
strip-ends = added at each end
strip-cut-length = length of each as cut
strip-total = length of all together
strip-finished-width = finished width
strip-cut-width = width as cut
strip-to-buy = length to buy
strip-rounded = Lengths to buy are rounded up, to whole centimetres or to eighths of an inch.
strip-band = A band
strip-binding = A binding
strip-elastic = Elastic
strip-cord = A cord
strip-bought = bought by length
strip-from-along = cut from { $material } along the thread
strip-from-across = cut from { $material } across the thread
strip-from-bias = cut from { $material } on the bias, at 45° to the thread
strip-rule = { $kind }, { $from }. Its numbers hold for this grain only.
strip-rule-bought = { $kind }, { $from }.
strip-length-rule = The rule of its finished length, the same in all sizes: { $length }.
strip-length-by-size = Its finished length stands by size below.
strip-length-by-size-ends = Its finished length stands by size below; each end gets { $ends } more.
strip-length-rule-ends = The rule of its finished length, the same in all sizes: { $length }; each end gets { $ends } more.
strip-width-rule = Its width as cut: { $layers ->
        [one] once
       *[other] { $layers } times
    } the finished width.
strip-width-rule-more = Its width as cut: { $layers ->
        [one] once
       *[other] { $layers } times
    } the finished width and { $allowance } along each side.
strip-joined = Joined straight across where the cloth is too narrow, with { $join } on each side of a join.
strip-joined-bias = Joined on the diagonal where the cloth is too narrow, with { $join } on each side of a join.
strip-cloth = from { $material } that is { $width } wide
strip-longest = longest piece from selvedge to selvedge
strip-side-by-side = whole strips side by side
strip-joins = joins in all
strip-joins-take = length that joins take
strip-cloth-for-all = cloth for all of them
strip-too-narrow = The strip does not go into { $cloth }: the cloth is too narrow.
strip-not-joined = The strip is too long for one piece { $cloth }, and nothing tells how it is joined.
strip-too-much = No reasonable length of cloth is enough { $cloth }.
strip-width-untold = Nothing tells how wide { $material } is sold, so what comes out of it is not told.
strip-alone = Cloth for strips alone, rounded up; between pieces they often fit for less.
strip-bias = A bias strip across the cloth is its width times √2 long, with slanting ends; strips lie their own width times √2 apart along the selvedge, and ends that are cut square take the strip's width once.
strip-marks = marks for the seam { $seam }, from the cut end
strip-starts = The strip starts where its seam starts; where a seam is told for one half, the strip goes back along the other half.
strip-unmarked = The marks for the seam { $seam } cannot be told: it takes another length than the strip or a whole part of it.
mark-start = start of the seam
mark-end = end of the seam
mark-notch = notch { $name }
mark-meeting = where two pieces meet
mark-meeting-of = where { $pieces } meet
mark-stretch = end of stretch { $which }

## The check list
table-check-list = Check list
check-part = part
check-is = is
check-notches = notches
check-steps = in steps
check-open = open
check-before = What every piece is cut from, where each of its edges goes, its notches on both sides counted once, and the steps of the booklet that show it, in brackets those that only name it. What is missing stands in the last column.
check-strips = strips
check-notions = notions
check-notion = { $count } ×
check-cloth = cloth
check-no-plan = no lay plan tells how much to buy ({ $sizes })
check-all-sizes = every size
check-nothing-open = Nothing is open.
check-lines-open =
    { $count ->
        [one] One line has something open.
       *[other] { $count } lines have something open.
    }
check-no-cut = nothing tells from what it is cut
check-no-grain = no grain
check-no-step = no step mentions it
check-the-piece = the piece
check-edge-open = neither sewn nor hemmed, on no fold, and no allowance of its own is told
check-own-copy = its own mirrored copy
check-and = and
check-seam = seam { $seam }
check-seam-to = seam { $seam }, to { $others }
check-partly = a part of it: { $words }
check-border = on the border of the cloth
check-hem =
    { $turns ->
        [one] hem, one turn
       *[other] hem, { $turns } turns
    }
check-fold = fold { $name }
check-lies-on = lies on { $piece }, at the place marked there
check-as-cut = left as it is cut
check-own-allowance = in no seam, with an allowance of its own
check-edge = edge { $number }
check-cut = { $count } from { $material }

## Cautions
care-usual = This is the usual caution and no more: local rules, and a person who knows them, decide
care-the-rule = The rule: { $rule }.
care-of-view = { $title } (view { $views })
care-not-checked = Not checked: { $what }.
care-unchecked-title = What was not checked for a child’s garment
care-not-worn = what a child wears it as is not said, so the rules for sleepwear were not asked
care-sizes =
    { $count ->
        [one] size { $sizes }
       *[other] sizes { $sizes }
    }
rule-cords = 16 CFR 1120.3(b) with ASTM F1816
rule-sleepwear = 16 CFR 1615 (to size 6X) and 1616 (sizes 7 to 14)
rule-cylinder = a cylinder 1 1/4 in across and 1 to 2 1/4 in deep (3.2 cm; 2.5 to 5.7 cm; as commonly quoted: look it up in the rule itself, the inches count)
care-loose-band = { $strip } is a band that no seam sews on: if its ends hang free it is a cord, and what is said of cords holds for it
care-loose-binding = { $strip } is a binding that no seam sews on: if its ends hang free it is a cord, and what is said of cords holds for it
care-cord-elsewhere = the cord { $strip }, which is neither at hood or neck nor at waist or lower edge: { $rule } does not speak of it, { $europe } may
care-cords-europe = { $europe } on cords of children’s clothes, whose numbers differ between editions
care-cords-unchecked = knots, toggles and anything else at the ends of cords; ties and tapes that are no strips of the draft
care-worn-unsaid = whether it is worn over other clothes is not said
care-worn-otherwise = the rule speaks of clothes that are worn over others, the caution is the same for these
care-neck-allows = { $rule } allows none there in sizes 2T to 12{ $worn }
care-neck-title = A cord at hood or neck of a child’s garment
care-neck-is = { $strip } is a cord at hood or neck, in { $sizes }.
care-neck-do = A child can be caught by it and strangled; leave it out, and close the hood or neck another way.
care-neck-rule = { $rule }: none there in sizes 2T to 12{ $worn }; by name also { $europe }.
care-end-in = { $length } in { $sizes }
care-ends-lost = the free ends of { $strip } in { $sizes }: they cannot be computed there
care-ends-unread = the free ends of { $strip }: their formula cannot be read
care-ends-untold = how far the free ends of { $strip } hang out, which is not said; { $rule } wants at most 75 mm (3 in)
care-ends-look = How far the free ends of { $strip } hang out is not said: look at them, at most 75 mm (3 in).
care-ends-look-lost = How far the free ends of { $strip } hang out cannot be computed: look at them, at most 75 mm (3 in).
care-ends-are = The free ends of { $strip } hang out: { $ends }.
care-end-over = { $over } too much in { $sizes }
care-ends-over = That is more than { $rule } allows: { $over }. Shorten them.
care-cord-loose = The cord { $strip } is not sewn fast in this pattern and can be drawn out, so that one end grows long: { $rule } asks that it is sewn fast by a bar tack at the middle of the back.
care-waist-title = A cord at waist or lower edge of a child’s garment
care-waist-rule = { $rule }, in sizes 2T to 16: at most 75 mm (3 in) outside the channel with the garment opened to its full width; nothing at the free ends, no knot and no toggle; one continuous cord is sewn fast by a bar tack, at the middle of the back{ $worn }.
care-waist-europe = By name also { $europe }, whose numbers differ between editions.
care-ages-apart = which of its sizes is for whom: it is said to be for children from { $from } to { $to } years, and its sizes to be those of { $least } to { $most } years, so what is said of children of the first is taken to hold for all sizes
care-size-unknown = which size of the rules { $sizes } is, so every rule is taken to speak of it
care-parts-title = Small parts on a garment for a child under three
care-parts-on-it = On it are { $parts }; each can come off and be swallowed or breathed in.
care-part-mark = { $mark } on { $piece }
care-parts-rule = { $rule }: no part that fits whole into { $cylinder }, also not one that comes off in use.
care-parts-do = Sew them on fast, test each by pulling, or close the garment another way.
care-parts-unchecked = how large small parts are and how fast they sit ({ $rule })
care-loose-title = Loose sleepwear for children
care-loose-fire = Loose sleepwear catches fire more easily than what fits close.
care-loose-rule = { $rule }: cloth, seams and trimmings of children’s sleepwear must resist flames, unless it fits close.
care-loose-cloth = Cloth is not looked at here: ask its maker, and keep the garment away from fire.
care-loose-unchecked = whether cloth and trimmings of the sleepwear resist flames
care-close-title = Close-fitting sleepwear for children
care-close-rule = { $rule }: sleepwear that fits close is no wider than the most of the rule for its size, measured all round, laid flat; of cm and inches the smaller counts. Sleepwear that is wider is loose, and its cloth must resist flames.
care-girth-size = { $size }: { $is }, at most { $cm } cm and { $inches } in in size { $rule_size }
care-girth = Around the { $place }, by size – { $sizes }.
care-girth-over = { $told }, so { $over } too wide
care-girth-most = { $size }: { $cm } cm and { $inches } in, in size { $rule_size }
care-girth-untold = Around the { $place } it was not checked: how wide it is there is not told. Measure it; at most, by size – { $sizes }.
care-girths-unsized = How wide it is was not checked: which sizes of the rule its sizes are is not told. Measure it, and look up the most of the rule.
care-girth-lost = the { $place } in { $sizes }: it cannot be computed there
care-girths-missing = the sleepwear around { $places }: how wide it is there is not told
care-girths-without = the girths in { $sizes }: no one size of the rules for sleepwear is told for them
care-close-unchecked = that sleeve, leg and body are nowhere wider than at these places and narrow as the rules for sleepwear say; how far trimmings stand off; where the lowest fastening sits; what its labels say; the cloth
girth-chest = chest
girth-waist = waist
girth-seat = seat
girth-upper-arm = upper arm
girth-thigh = thigh
girth-wrist = wrist
girth-ankle = ankle

## What files are for, and what an edition says
files-title = What each file is for
files-need = You need the pages or the wide sheet of your own size only. Print one page first, measure its marks, and go on when they are right.
heading-pages = pages
heading-wide = wide
heading-projector = projector
heading-svg = svg
heading-dxf = dxf
heading-tables = tables
heading-booklet = booklet
heading-lays = lays
heading-check-list = check-list
what-pages = pieces in true size on pages of a home printer, to be joined; print the first page first
what-wide = pieces in true size on one wide sheet, for a copy shop
what-projector = pieces in true size for a projector over the cloth, light lines on black and dark lines on white
what-svg = pieces as lines for other drawing programs, in millimetres, each kind of line by itself
what-dxf = pieces for cutting machines and other programs of the trade, in the layers of the open standard
what-tables = body chart, finished measures, lengths to cut, what to buy, cutting list; to read, or for a spreadsheet
what-lays = how the pieces lie on the cloth, and how much of it to buy; a page for each size and width
what-check-list = each piece with what it is sewn to, notches, grain, counts and the steps that mention it; for the maker and testers, in no release
what-booklet = how to choose a size, what is needed, the pieces, and how it is sewn
edition-head = Edition { $edition }, { $date }
what-changed-is = what is other than in the edition before, and which pages to print again.
about-questions = Questions and mistakes
caution-head = Caution: { $title }
caution-new = new: { $title }
caution-other = says something else: { $title }
caution-gone = gone: { $title }
cautions-heading = Cautions, which stand in read-me-first.txt and in the booklet
file-new = { $name }: new
file-all-pages =
    { $name }: all { $count ->
        [one] 1 page
       *[other] { $count } pages
    }
file-some-pages = { $name }: { $pages } of { $count }
file-named-pages = { $name }: { $pages }
pages-first = the first page
pages-first-and = the first page and { $count ->
        [one] page
       *[other] pages
    } { $pages }
pages-which =
    { $count ->
        [one] page
       *[other] pages
    } { $pages }
pages-none-again = No page of the files needs to be printed again.
pages-again = Pages to print again
files-other = Files that are not printed and are other
files-by-edition = Files that are not printed and are other by edition, date and contact alone
files-gone = Files that are no longer there

## What changed, for those who sew: facts of parts
fact-number = number
fact-row-kind = kind of row
fact-row-by = varies by
fact-value = value
fact-sewn-length = sewn length
fact-length = length
fact-line = line
fact-place = place
fact-intake = intake
fact-first-foot = first foot
fact-second-foot = second foot
fact-tip = tip
fact-leg = leg
fact-bow = bow of its legs
fact-dart-form = how it is sewn
fact-pressed = pressed
fact-dart-kept = leg that is kept
fact-cut-line = cut line
fact-match-mark = match mark
fact-mark-kind = kind of mark
fact-count = how many
fact-turns = turns
fact-fit = fit
fact-order = order of sewing
fact-measure = finished measure
fact-kind = kind
fact-nap = nap
fact-laid = how it is laid
fact-shrinks = where shrinking is allowed for
fact-layers = layers
fact-thread = thread
fact-strip-kind = what it is
fact-strip-place = where it is
fact-fastened = sewn fast at its middle
fact-in-lay = how it stands in lay plans
fact-display = unit in which lengths are shown
fact-language = language of what is published
fact-audience = who wears it
fact-worn = what it is worn as
fact-survey = whether the chart is a survey
fact-cut-line-in = cut line in { $material }
fact-notch = notch { $name }
fact-mark-of = { $mark } of seam { $seam } on { $edge }
fact-cut-from = cut from { $material }
fact-turns-at = turns of the hem at { $edge }
fact-corner-at = corner of the cut line at { $corner }
fact-place-number = place of number { $number }
fact-stretch-of = stretch { $stretch } of side { $side }
fact-side-one = one
fact-side-two = two
fact-notch-along = notch { $name } along side { $side }
fact-stretch-fit = fit of stretch { $stretch }
fact-difference = side one less side two
field-formula = formula
field-side-one = side one
field-side-two = side two
field-allowance = allowance
field-allowance-start = start of the allowance
field-allowance-end = allowance at its end
field-turn-in = second turn of the hem
field-corner-width = width left at the corner
field-material = material
field-grain = grain
field-grain-line = line along which the grain lies
field-on-fold = edge on the fold
field-border = edge at the border of the cloth
field-folded-part = width of the folded part
field-gap = distance between pieces
field-sold-in = step in which it is sold
field-label = label
field-label-turn = turn of the label
field-fit = amount of the fit
field-stretch-fit = amount of the fit of a stretch
field-closure = length left open for a closure
field-edge = edge it is on
field-title = title
field-author = author
field-licence = licence
field-contact = contact
field-edition = edition
field-date = date
field-width = width
field-ends = ends
field-join = join
field-size = size
field-letter = letter
field-source = source
field-what = what
field-how = how
field-level = level
field-body = body
field-least = least
field-most = most
field-depth = depth
field-text = text
fact-of = { $what } of { $of }
fact-of-step = { $what } of step { $step }

## What changed: sentences
change-longer = { $by } longer
change-shorter = { $by } shorter
change-moved = moved { $way }
change-turned = moved { $way } and turned by { $angle }
change-away = up to { $apart } away from where it was
change-was-is = was { $was }, is now { $is }
change-before-unsaid = { $is }, before not said
change-not-said-any-more = was { $was }, is not said any more
change-not-computed = cannot be computed any more, was { $was }
change-computed-now = can be computed now: { $is }
change-not-computed-unsaid = cannot be computed, was not said before
change-not-said-uncomputed = could not be computed, is not said any more
change-a-line = a line
change-quoted = “{ $words }”
change-square-cm = { $area } cm2
change-new = new
change-gone = gone
change-renamed = likely the former { $name }: all is equal but the name
change-now = { $what }: now { $new }
change-text-gone = { $what }: { $old } is gone
change-written = { $what } is written otherwise: was { $old }, is now { $new }
change-in-sizes = { $change } in { $sizes }
change-from-to = { $change } (from { $from } to { $to })
sizes-all = all sizes
sizes-run = { $first } to { $last }
sizes-in =
    { $count ->
        [one] size { $sizes }
       *[other] sizes { $sizes }
    }
persons-in =
    { $count ->
        [one] person { $names }
       *[other] persons { $names }
    }
changed-in-draft = the draft
changed-in-chart = the chart
changed-in-values = values
changed-in-placements = placements
changed-in-seams = seams
changed-in-conditions = conditions
changed-in-measures = finished measures
changed-in-needs = what is needed
changed-in-views = views
changed-in-booklet = booklet
changed-in-sheets = sheets
errata-head = What changed: { $now } (before: { $before })
errata-titled = { $title }, edition { $edition }
errata-step = step { $number } of the booklet says something else
errata-nothing = Nothing that is printed or sewn changed.
errata-piece-in = { $piece } in { $sizes }
errata-none-again = No piece needs to be printed again.
errata-again = Print again: { $pieces }.
errata-all-new = All pieces are new in { $sizes }.
part-piece = piece { $name }
part-row = row { $name }
part-measure = measure { $name }
part-material = material { $name }
part-strip = strip { $name }
part-notion = notion { $name }
part-view = view { $name }
part-seam = seam { $name }
part-step = booklet step { $number }
part-draft = draft
part-point = point { $name }
part-edge = edge { $name }
part-line = line { $name }
part-dart = dart { $name }
part-pleat = pleat { $name }
part-tuck = tuck { $name }
part-fold = fold { $name }
part-lengthen = lengthen-shorten line { $name }
part-slit = slit { $name }
part-mark = mark { $name }
side-one = one
side-two = two
fit-equal = equal
fit-eased = eased, side { $side } longer
fit-gathered = gathered, side { $side } longer
fit-stretched = stretched, side { $side } shorter
worn-unsaid = not told
worn-outerwear = over other clothes
worn-sleepwear = in bed, loose
worn-tight = in bed, close to the body
worn-other = neither over other clothes nor in bed
worn-by-boys = by boys
worn-by-girls = by girls
children-from = children from { $from } to { $to }
