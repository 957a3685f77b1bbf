### The command line: what commands print and say. The help of their arguments is in `cli` itself, in English.

## Common
cli-comments = { $file } holds comments, which rewriting does not keep; say `--comments keep` to have them in the draft's note, or `--comments drop`. Nothing was written
cli-unread = { $file } cannot be read: { $problem }
cli-unprinted = what was asked for could not be printed in full: { $problem }; print it elsewhere
cli-above-zero = `{ $flag }` needs a number above zero
cli-window = no window can be opened here ({ $reason }); the same engine runs without one, as `tracewheel proof { $file }` or `tracewheel --help`
cli-window-file = FILE

## Findings
cli-in-view = in view { $view }
cli-silenced = silenced: { $reason }
cli-perhaps = perhaps: { $formula }
cli-finding-off = can be silenced, or switched off in `settings.unchecked`
cli-finding-always = always told
cli-proof-counts =
    { $errors ->
        [one] 1 error
       *[other] { $errors } errors
    }, { $warnings ->
        [one] 1 warning
       *[other] { $warnings } warnings
    }, { $notes ->
        [one] 1 note
       *[other] { $notes } notes
    }

## Blocks
cli-block-none = no blocks were taken from other drafts
cli-block-same = nothing changed there
cli-block-changed = changed there: { $parts }
cli-block-file = from { $file }
cli-block-author = by { $author }
cli-block-unlicensed = no licence told
cli-block = { $name }: { $from }; pieces { $pieces }
cli-block-not = it cannot be taken over: { $problem }
cli-block-wrong = then this would be wrong:
cli-block-would = taking it over would change:
cli-block-keep = { $problem }: --keep here, or --keep there

## The chart
cli-chart-axis = there is no axis { $axis }; the axes are girth, cup, length
cli-chart-cell = `{ $cell }` needs the form ROW=LENGTH, as `bust=86cm`
cli-chart-row = row
cli-chart-kind = kind
cli-chart-body = body
cli-chart-house = house
cli-chart-base = base
cli-chart-guessed = guessed, not confirmed

## Comparing
cli-compare-piece = neither draft has a piece or drawing { $piece }; there are { $known }

## The menu of the desktop
cli-desktop-none = this system has no desktop entries of that kind: make a link to the program by its own means
cli-desktop-home = neither XDG_DATA_HOME nor HOME says where a person's own files lie
cli-desktop-lost = where this program lies cannot be told: { $problem }
cli-desktop-name = a desktop entry cannot name the program { $program }: put it in a folder of plain letters
cli-desktop-removed = { $file } cannot be removed: { $problem }
cli-desktop-nothing = there was no entry to take away
cli-desktop-login = { $programs } did not run: the entry is seen after the next login

## Cut lines, formats, functions, help
cli-finish-not = cannot be drawn
cli-finish-nothing = nothing is cut: no piece says from which cloth, and how often
cli-finish-unsaid = not said how it is cut
cli-format-is = { $file } is in its standard form already
cli-format-done = { $file } was rewritten in its standard form
cli-function-gives = Gives { $kind }.
cli-help-more = More: `tracewheel help { $page }` ({ $title })
cli-help-none = no page of help holds `{ $words }`; `tracewheel help` lists all pages
cli-help-several = { $count } pages hold `{ $words }`; print one by its name, such as `tracewheel help { $page }`:
cli-help-rest = and { $count } more
cli-help-contents = Print a page by its name: `tracewheel help start`; any words find the pages that hold them.

## Lay plans
cli-lay-no-time = { $name }: there was no time to lay it; give it more
cli-lay-short = { $name }: { $more } more is needed than what is at hand
cli-lay-cannot = cannot be laid
cli-lay-not-yet = not laid yet
cli-lay-progress = { $name }: { $so_far } after { $moves } moves
cli-lay-no-materials = the draft has no materials, so nothing can be laid; add one with its widths
cli-lay-which = say which material with `--material`: { $materials }
cli-lay-unknown = there is no material { $material }; the materials are { $materials }
cli-lay-width = the width { $width } of { $material } cannot be computed
cli-lay-no-width = nothing tells how wide { $material } is; say `--width`, such as `--width 140cm`
cli-lay-nothing = there is nothing to lay: no size of the range in these views
cli-lay-group = `--group "{ $text }"` needs sizes with their numbers, such as `--group "2 x S, 4 x M"`
cli-lay-vary = `--vary` answers for one size and one width at a time; these are { $count }: say `--size` and `--width`
cli-lay-tries =
    { $count ->
        [one] 1 lay was made, of { $moves } moves each.
       *[other] { $count } lays were made, of { $moves } moves each.
    }
cli-lay-plan = plan
cli-lay-needed = needed
cli-lay-buy = buy
cli-lay-covered = covered
cli-lay-not-in-time = was not laid in the time
cli-lay-none = none found
cli-lay-not-fit = does not fit
cli-lay-undrawn = there is no lay to be drawn
cli-lay-unkept = there is no lay to be kept; nothing was written
cli-lay-kept =
    { $count ->
        [one] 1 lay plan kept in { $file }
       *[other] { $count } lay plans kept in { $file }
    }

## Formulas
cli-measure-set = `--set { $set }` needs the form NAME=FORMULA, as `--set "bust_ease=10 cm"`
cli-measure-no-sizes = the chart has no sizes, so nothing can be computed; add one with `tracewheel chart FILE add`
cli-measure-absent = `{ $formula }` speaks of what is not in the view { $view }
cli-measure-not = not in every size: { $formulas }
cli-measure-size = size
cli-measure-view-size = view//size
cli-measure-pair = ({ $x }, { $y })
cli-measure-line = { $point } at { $angle }°

## Publishing
cli-publish-blocked = a release is blocked by errors; nothing was written. A toile can be printed all the same
cli-publish-piece = there is no piece { $name }
cli-publish-piece-near = there is no piece { $name }; did you mean { $near }?
cli-publish-left-out = { $name } cannot be drawn in size { $size } and is left out; `tracewheel proof { $file }` says why
cli-publish-no-lays = the draft keeps no lay plan that is still true; `tracewheel lay --keep` makes some; nothing was written
cli-publish-nothing = nothing can be drawn; nothing was written
cli-publish-unread = `{ $call }` cannot be read; write it as `{ $example }`
cli-publish-no-sheets = there is no sheet { $name }; the draft tells of none
cli-publish-sheet = there is no sheet { $name }; there are { $known }
cli-publish-sizes = { $count } sizes are too many to be told apart in one file to cut from: at most { $most }, or `--all-sizes` with a layer for each
cli-tables-person = { $name } is a person, not a size of the range: persons are in no table
cli-tables-nothing = there is nothing to be told in tables: no size of the range, or no rows, measures, strips, notions and cuts

## Releases
cli-release-call = name a draft and, by `--out`, the folder in which the release is to lie
cli-release-files =
    { $count ->
        [one] 1 file
       *[other] { $count } files
    }
cli-release-unlogged = the release stands, but it could not be written into the log of the draft: { $problem }
cli-release-left-out = { $file } does not belong to the release and was left out
cli-release-stranger = { $file } does not belong to the release
cli-release-checked =
    { $count ->
        [one] { $release }: 1 file as it was written
       *[other] { $release }: { $count } files as they were written
    }

## Rolling
cli-roll-seam = there is no seam { $seam }; the draft has: { $all }
cli-roll-seam-near = there is no seam { $seam }; did you mean { $near }?
cli-roll-view = the view { $view } does not have the pieces of seam { $seam }
cli-roll-cannot = seam { $seam } cannot be rolled there; `tracewheel proof { $file }` says why
cli-roll-notch = notch
cli-roll-apart = apart
cli-roll-end = end

## Outlines of an SVG file
cli-trace-outline = outline
cli-trace-name = name
cli-trace-width = width
cli-trace-height = height
cli-trace-units = { $units } units
cli-trace-crosses = crosses itself
cli-trace-open =
    { $count ->
        [one] 1 open line comes with the outline that holds it
       *[other] { $count } open lines come with the outline that holds them
    }
cli-trace-scale = the scale is not known: { $why }; say it with --unit, --width or --css-px
cli-trace-note = left out or odd: { $note }
cli-trace-refused = { $problem }. Nothing was written
cli-trace-none = there is no closed outline that does not cross itself; nothing was written
cli-trace-unknown = there is no closed outline { $outline }; there are { $known }
cli-trace-unscaled = { $problem } (--unit "0.5 mm", --width "20 cm" of the first outline, or --css-px). Nothing was written
cli-trace-corner = --corner must lie between 0 and 180 degrees
cli-trace-unit = one unit of the file is { $mm } mm
