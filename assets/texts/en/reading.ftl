### What is said of files, of what is cut and marked, and of the draft as a whole. Much of it is put into findings.

## What comes on a cloth, and kept lay plans
kept-plan-no-size = there is no size { $size } any more
kept-plan-width = its width `{ $width }` is no length above zero
kept-plan-folded = the width of its folded part, `{ $width }`, is no length
on-cloth-no-material = there is no material called { $material }{ $known }
on-cloth-no-width = { $material } is { $wide } mm wide and its selvedges leave nothing of it; say a wider cloth or narrower selvedges
on-cloth-no-number = { $what } of { $material } cannot be computed in size { $size }; see what `proof` says of it
on-cloth-no-outline = { $piece } cannot be laid in size { $size }: { $problem }
on-cloth-no-strip = the strip { $strip } cannot be laid in size { $size }: its length or its width cannot be computed
on-cloth-nothing = nothing is cut from { $material }; say in the cuts of a piece, or of a strip, that it is
on-cloth-nothing-in-view = nothing is cut from { $material } in the view { $view }; say in the cuts of a piece, or of a strip, that it is
on-cloth-no-size = no size is asked for
on-cloth-none = : the draft has none
on-cloth-known = ; the materials are { $known }
on-cloth-selvedge = the selvedge
on-cloth-shrinkage-along = the shrinkage along the thread
on-cloth-shrinkage-across = the shrinkage across
on-cloth-folded = the width of the folded part
on-cloth-gap = the distance between pieces
on-cloth-sold-in = the step in which it is sold
on-cloth-not-drawn = it cannot be drawn there; see what `proof` says of it
on-cloth-no-grain = its grain cannot be computed
on-cloth-cut-line = its cut line is no outline
on-cloth-no-cut-line = it has no cut line
cut-nothing-left = its allowances leave no outline that could be cut
cut-shrinks = its cloth would shrink by less than nothing or by more than half
setting-angle = an angle such as `1 deg`
setting-length = a length such as `1 mm`

## Findings about the whole draft
found-seam = seam { $seam }
found-condition = condition { $name }
found-measure = finished measure { $name }
block-author-and-licence = an author and a licence
block-author = an author
block-licence = a licence
cut-its-cloth = its cloth
cut-heading-of = `heading` of { $line }
hem-second-turn = { $edge }, second turn
hem-turn-deep = the second turn of { $name } is deeper than its hem
hem-turn-in = { $name } has a `turn_in`, which is for hems with `turns: 2`
cut-not-set-off = it cannot be set off
cut-near = , near { $right } mm to the right and { $down } mm down
takes-darts-and-pleats = the darts and pleats
takes-darts = the darts
takes-pleats = the pleats
kept-plan-no-view-without-name = there is no view without a name
kept-plan-no-view = there is no view { $view }
kept-plan-others-now = outlines, counts, the cloth or the places in them are others now
kept-plan-cloth-laid = { $cloth }, { $laid }
kept-plan-cloth-nap = { $cloth }, with nap
kept-plan-cloth-view = { $cloth } (view { $view })
meant-least = at least { $least }
meant-most = at most { $most }
meant-between = { $least } to { $most }
unchecked-unknown = `{ $code }` is not the code of a check that can be switched off
unchecked-no-reason = the check `{ $code }` is switched off without a reason
looked-at = looked at: { $seams ->
        [one] 1 seam
       *[other] { $seams } seams
    }, { $conditions ->
        [one] 1 condition
       *[other] { $conditions } conditions
    }, lines that run over seams, cut lines, notches, folds and hems, { $cuts ->
        [one] 1 cut
       *[other] { $cuts } cuts
    }, { $measures ->
        [one] 1 finished measure
       *[other] { $measures } finished measures
    }, in { $sizes ->
        [one] 1 size
       *[other] { $sizes } sizes
    }{ $views }{ $off }{ $plans }; not looked at: how cloth behaves, the words of labels and booklet
looked-at-plans = ; whether { $count ->
        [one] 1 lay plan is
       *[other] { $count } lay plans are
    } of these pieces
looked-at-off = ; switched off: { $codes }
looked-at-views = {" "}of { $count ->
        [one] 1 view
       *[other] { $count } views
    }
side-word-one = side one
side-word-two = side two
notch-beyond = it would lie beyond the end
notch-in-mouth = it falls into the mouth of { $dart }
notch-point-off = its point is not on that side
notch-other-piece = its point is one of a piece that is not on that side; say `on` the other side
notch-away = { $problem }, { $by } mm away
notch-made = that is made
notch-seams-alike = the seams { $seams }
strip-no-material = the strip is cut from `{ $material }`, but no material is called so
strip-along = along
strip-across = across
odd-length = the length of { $edge }
odd-corner = the corner at { $corner }
found-stretch = stretch { $number } of seam { $seam }
seam-stretch-one = stretch { $number } ends before it starts on side one
seam-stretch-two = stretch { $number } ends before it starts on side two
seam-equal = equal
seam-too-long = { $by } too long
seam-too-short = { $by } too short
seam-gathered = gathered
seam-stretched = stretched
unused-sheets = places on sheets of their own

## Care: what is told to the designer alone
care-ages-typed = “{ $from }” to “{ $to }”
care-is-cord = { $name } is a cord
care-is-hood = { $name } is a hood
care-is-sleepwear = it is sleepwear
care-no-girths = no girth is told around the { $places } (`care.girths`)
care-no-rule-sizes = no one size of the rules is told for { $sizes } (`care.rule_sizes`)
care-and-also = { $first }, and { $last }
care-rule-size = it is no size of the rules: write 2T, 4, 6X, 12, 12-14, L, XL or 18-24 mo
care-no-size = the chart has no such size
care-youngest = the youngest is older than the oldest
care-write-ages = write years or months, such as 2 years or 18 months, at most 21 years

## Why a text was not read as a draft
refused-no-draft = this is not a draft: { $found }, expected { $expected }
refused-newer = written by a newer version { $found }; this one reads { $expected }
refused-most = line { $line }, column { $column }: found { $found }, at most { $expected }
refused = line { $line }, column { $column }: found { $found }, expected { $expected }
refused-most-at = line { $line }, column { $column }, at `{ $path }`: found { $found }, at most { $expected }
refused-at = line { $line }, column { $column }, at `{ $path }`: found { $found }, expected { $expected }
refused-unknown-field = the unknown field `{ $found }`
refused-unknown-word = the unknown word `{ $found }`
refused-field-twice = the field `{ $field }` a second time
refused-once = it once
refused-stands-already = it stands in line { $line } already
refused-a-group = a group
refused-field-missing = { $group } without the field `{ $field }`
refused-wants-text = a text in quotes
refused-write-quoted = write "{ $word }"
refused-wants-whole = a whole number from 0 to 4294967295
refused-wants-truth = `true` or `false`
refused-wants-list = a list `[ … ]`
refused-single-entry = also a single entry stands in `[ ]`
refused-wants-bare-group = a group `( … )` without a word before it
refused-wants-group = a group `( … )`
refused-write-group = write `{ $word }(…)`
refused-wants-field = the name of a field and `:`
refused-wants-word = a plain word
refused-entries = { $given } of its entries
refused-too-many = { $sign }, one too many
refused-behind-word = { $sign } behind a plain word
refused-comma-or = `,` or `{ $close }`
refused-escape-letter = a text with a `\u` or `\x` that names no letter
refused-wants-letter-number = a letter's number, as in `\u{"{"}e9{"}"}`
refused-backslash = a backslash itself is written twice
refused-unreadable = something unreadable ({ $problem })
refused-wants-draft = a draft
refused-one-of = one of { $words }
refused-meant = did you mean `{ $near }`?
refused-write-bare = write it without quotes: { $word }
refused-other-format = its format is { $format }
refused-no-format = it does not say its format
refused-no-version = no `version`
refused-up-to = up to version { $version }
refused-open-newer = open it with a newer Tracewheel
refused-empty = it is empty
refused-begins = it begins with `{ $shown }`
refused-nothing-more = nothing more
refused-closed-early = the draft ends before it: is a bracket closed too early?
refused-without-quotes = it stands without quotes
refused-name-of-field = the name of a field
refused-after-word = { $sign } after the word `{ $word }`
refused-counts = counts are whole numbers; anything else is a text in quotes: "{ $number }"
refused-text-or-number = a text or a whole number
refused-any-value = a text, a word, a whole number, `(` or `[`
refused-plain-word = a word of letters, digits and `_`
refused-plain-meant = is `{ $plain }` meant, or a text in quotes?
refused-still-open = the `{ $bracket }` of line { $line }, column { $column } is still open
refused-still-open-end = the `{ $bracket }` of line { $line }, column { $column } is still open: is the file cut off?
refused-is-group = a group `(`
refused-is-list = a list `[`
refused-is-text = the text { $short }
refused-is-word = the word `{ $short }`
refused-is-number = the number `{ $short }`
refused-is-end = the end of the file
refused-comma-missing = is a comma missing before it?
refused-long-text = the text that begins in line { $line }, column { $column } ends in line { $last }: is its closing quote missing?
refused-sign = a sign of a draft
refused-open-text = a text that never ends
refused-closing-quote = a closing quote `"`
refused-cut-or-quote = is the file cut off, or a quote missing?
refused-open-comment = a comment that never ends
refused-closing-comment = its closing `*/`
refused-cut-off = is the file cut off?
refused-escape = `\{ $letter }` in a text
refused-wants-escape = `\\`, `\"`, `\n` or `\t`
refused-the-letter = the letter U+{ $code }
refused-straight-quotes = texts stand in straight quotes: "…"
refused-brackets = fields stand in round brackets, lists in square ones
refused-no-blank = it is no blank although it looks like one: replace it
refused-damaged = the file is damaged
refused-quotes-missing = is it part of a text whose quotes are missing?

## Limits of the reader: what is counted, and what to do
limit-split = split the draft in two
limit-fewer = take some out
limit-bytes = bytes
limit-delete = delete it
limit-brackets = brackets inside one another
limit-take-brackets = take out the superfluous brackets
limit-groups = groups and lists in the file
limit-letters = letters in a formula, name or label
limit-name-parts = name its parts as values or points
limit-text = letters in a text
limit-shorten = shorten it
limit-split-piece = split the piece
limit-by = entries in `by`
limit-split-edge = split the edge
limit-through = points in `through`
limit-split-curve = split the curve
limit-two-goes = derive the piece in two goes
limit-booklet = steps in the booklet
limit-entries = entries
limit-pieces = pieces
limit-drawings = drawings
limit-points = points
limit-edges = edges
limit-lines = lines
limit-sizes = sizes
limit-rows = rows
limit-cells = cells
limit-persons = persons
limit-values = values
limit-seams = seams
limit-conditions = conditions
limit-measures = measures
limit-steps = steps
limit-places = places

## Why a file was not opened or saved
file-error-missing = there is no file `{ $path }`; look for its name and folder
file-error-no-folder = there is no folder `{ $folder }`; make it, or save elsewhere
file-error-is-folder = `{ $path }` is a folder; give the name of a file in it
file-error-not-plain = `{ $path }` is not a plain file; choose another one
file-error-links = the links from `{ $path }` lead nowhere; choose the file itself
file-error-denied = no permission for `{ $path }`; change the permissions, or choose another place
file-error-protected = `{ $path }` is protected against writing; take the protection off, or save under another name
file-error-full = the disk is full, `{ $path }` was not saved and is as it was; free some room, or save elsewhere
file-error-removed-outside = `{ $path }` was removed by another program since it was opened; save under another name, or save over it
file-error-changed-outside = `{ $path }` was changed by another program since it was opened; save under another name, or save over it
file-error-too-long = `{ $path }` is longer than { $most } bytes, the most that is read; it is hardly a draft
file-error-no-text = `{ $path }` is not a draft: byte { $at } is not text in UTF-8; choose another file
file-error-unreadable = `{ $path }` was not saved and is as it was: the draft could not be opened again ({ $error })
file-error-not-as-written = `{ $path }` was not saved and is as it was: reading back gave another text; save elsewhere
file-error-not-confirmed = `{ $path }` is saved, but the system did not confirm it ({ $error }); save once more
file-error-not-saved = `{ $path }` could not be saved: { $error }; try again, or choose another place
file-error-not-read = `{ $path }` could not be read: { $error }; try again, or choose another place
own-too-long = it has more than { $most } bytes
own-no-text = it is not text in UTF-8
own-line = line { $line }: { $problem }
own-too-many-aside = too many files were set aside there

## Outlines of a drawing
svg-not-read = { $path } cannot be read: { $problem }
svg-too-large = the file has more than { $most } bytes; save the outlines alone, without pictures, in a file of their own
svg-packed = the file is packed (svgz): unpack it first, or save it as plain SVG
svg-letters = the file is no UTF-8 text from byte { $byte } on; save it as plain SVG in UTF-8
svg-xml = the file is no well-formed XML: { $problem }
svg-kind = the file begins with `{ $word }`, not with `svg`: it is no SVG drawing
svg-nothing = there is no outline in the file{ $left_out }
svg-moving-styles = styles that move things: what they move lies where it would without them
svg-view-box = viewBox="{ $text }", which cannot be read
svg-no-side = the file gives no { $name }
svg-no-length = { $name }="{ $text }" is no length
svg-no-unit = { $name }="{ $text }" has no unit
svg-px = { $name }="{ $text }" is in px, which are of no certain size
svg-no-size = { $name }="{ $text }" tells no size
svg-size-no-view-box = the file gives a size, but no viewBox to say how many units that is
svg-scales-differ = one unit would be { $across } mm by the width and { $down } mm by the height of the file
svg-groups-deep = groups lie more than { $most } deep in one another; ungroup them, then save again
svg-elements = the file draws more than { $most } elements; save the outlines alone in a file of their own
svg-style-sheets = style sheets
svg-texts = texts
svg-pictures = pictures
svg-hidden = hidden elements
svg-moved-by-style = elements moved by a style, which is not read; they are left out
svg-styles = styles of elements
svg-clipped = outlines that the file cuts off by another; they are taken whole
svg-transform = elements whose transform cannot be read; they are left out
svg-inner-no-size = it has a viewBox, but no size
svg-numbers-large = outlines with numbers that are too large
svg-without-size = outlines without any size
svg-unknown-kind = elements of the kind `{ $kind }`, which is not known
svg-unread-named = a { $kind } "{ $name }" that cannot be read ({ $problem })
svg-unread = a { $kind } that cannot be read ({ $problem })
svg-inner = a drawing within the drawing that cannot be placed ({ $problem })
svg-use-outside = a `use` of "{ $link }", which is not in this file; nothing outside is read
svg-use-missing = a `use` of "#{ $id }", which is not in the file
svg-use-itself = a `use` of "#{ $id }" within itself
svg-use-not-placed = a `use` that cannot be placed ({ $problem })
svg-uses-deep = the file draws things again more than { $most } deep in one another
svg-stretches = outlines of more than { $most } stretches, which an edge cannot hold; simplify them first
svg-outlines = there are more than { $most } outlines in the file; save the pieces alone in a file of their own
svg-left-out = ; left out: { $notes }
svg-share = { $name }="{ $text }" is a share of a size that is not given
svg-letter-size = { $name }="{ $text }" hangs on the size of letters
svg-side-large = { $name } is too large
svg-number-large = a number is too large
svg-no-file = it is no file
