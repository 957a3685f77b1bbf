### The same in German.
### From memory: no native tailor has read these words yet, and they should be before they are sold with.
### Terms: Schnittteil (piece), Fadenlauf (grain), Nahtzugabe (allowance), Stoffbruch (fold of the cloth), Passzeichen (notch), Strich (nap),
### Mehrweite (ease), Einfassung (binding), Ansatznaht (join), gegengleich (mirrored), Variante (view), Ausgabe (edition).

## Common: sizes, views, pages, units
yes = ja
no = nein
of-size = Größe { $size }
of-sizes = Größen { $sizes }
of-sizes-to = Größen { $first } bis { $last }
of-view = Variante { $view }
of-set = Größengruppe { $set }
size-head = Größe { $size }
sizes-head = Größen { $sizes }
pages =
    { $count ->
        [one] 1 Seite
       *[other] { $count } Seiten
    }
page-of = Seite { $page } von { $many }
page-named = Seite { $name } ({ $number } von { $many })
unit-inch = Zoll
length-both = { $cm } cm ({ $inches } Zoll)
area-both = { $cm } cm² ({ $inches } Quadratzoll)
under-a-sixteenth = unter 1/16
length-small = { $mm } mm (unter 1/16 Zoll)
list-and = { $first } und { $last }
paper-both = A4 oder US Letter
edition = Ausgabe { $edition }
edition-of = Ausgabe { $edition }, { $date }
untitled = Schnitt ohne Namen
for-toile = für ein Probeteil
for-testers = zum Probenähen

## Pieces and their labels
cut = { $count } × zuschneiden
cut-on-fold = { $count } × im Stoffbruch zuschneiden
cut-right-side = { $count } × zuschneiden, rechte Stoffseite oben
cut-wrong-side = { $count } × zuschneiden, linke Stoffseite oben
cut-mirrored = { $count } × zuschneiden ({ $half } + { $half } gegengleich)
cut-from = { $cut } aus { $material }
cut-pairs =
    { $count } = { $pairs ->
        [one] 1 Paar
       *[other] { $pairs } Paar
    }
outline-less = ohne Nahtzugabe
outline-block = grob als Rechteck, vor dem Zuschnitt mit Einlage beklebt
label-whole = ganz gezeichnet: nicht im Stoffbruch
label-thread-off = Fadenlauf { $degrees }° zum Pfeil
label-nap-along = Strich entlang des Fadenlaufs
label-nap-arrow = Strich { $way }, wie der Pfeil zeigt
label-nap = Strich { $way }
label-either-way = Fadenlauf in beiden Richtungen
label-one-way = Fadenlauf bei allen Teilen in einer Richtung
way-down = nach unten
way-up = nach oben
way-right = nach rechts
way-left = nach links
label-no-allowance = ohne Nahtzugabe
label-some-without = { $words }, manche Kanten ohne
label-allowance = mit Nahtzugabe { $allowance }
label-allowances = mit Nahtzugaben von { $least } bis { $most }
lengthen-here = hier verlängern oder kürzen
fold = Bruch
on-fold-of-cloth = im Stoffbruch

## The first page and the block of words on a sheet
title-no-allowance = Alle Umrisse sind Nahtlinien; Nahtzugaben sind nicht enthalten.
title-some-allowance = Teile mit einer punktierten Linie im Innern werden an der äußeren Linie geschnitten: die Nahtzugabe ist enthalten. Umrisse ohne eine solche sind Nahtlinien.
title-allowance = An den äußeren Linien schneiden: die Nahtzugabe ist enthalten. An den punktierten Linien nähen.
title-page = Seite { $width } x { $height } mm ({ $across } x { $down } Zoll)
title-true-size = Originalgröße bei Druck mit 100 %: zuerst die Maße oben und links nachmessen.
title-faded = Graue Teile stimmen in ihrer Größe nicht: nicht zuschneiden.
title-size = Größe: { $size }
title-sizes = Größen:
guide-how = So wird gedruckt
guide-which = Welche Seiten
guide-print = Auf { $paper } mit 100 %, „tatsächliche Größe“, drucken, nie an die Seite angepasst. Zuerst diese Seite drucken und beide Maße in beiden Richtungen nachmessen: 1 mm Abweichung auf 100 mm ist zu viel.
guide-stretched = Weichen die beiden Richtungen voneinander ab, ist der Druck verzerrt und nichts davon passt zusammen: ein Maß von 100 mm, das quer 100 mm und längs 98 mm misst, bedeutet 100 % in der Breite und 98 % in der Länge. Neu drucken, bis beide stimmen.
guide-why = Warum das wichtig ist: misst das 100-mm-Maß { $mark } mm (US Letter an A4 angepasst), fällt dieses Kleidungsstück, gedacht für { $measure } { $meant }, für { $comes } aus.
guide-join = Jede Seite rechts und unten am Rahmen abschneiden, so über die Nachbarseiten legen, dass die halben Zeichen ganze ergeben, und zusammenkleben. Die Zeichen an beiden Enden einer Kante und dort, wo Linien sie kreuzen, müssen aufeinandertreffen; die Striche stehen auf jeder Seite 10 mm auseinander.
guide-pages =
    { $pages ->
        [one] 1 Seite außer dieser, { $columns } nebeneinander und { $rows } untereinander.
       *[other] { $pages } Seiten außer dieser, { $columns } nebeneinander und { $rows } untereinander.
    }
guide-all-pages = alle Seiten
guide-size = Größe { $size }: { $pages }.

## The projector
grid-cm = Raster: durchgezogene Linien alle 5 cm
grid-inches = Raster: punktierte Linien alle 2 Zoll
grid-both = Raster: durchgezogene Linien alle 5 cm, punktierte alle 2 Zoll
grid-none = kein Raster
projector-test = Prüfen des Maßstabs. Das Bild muss auf dem Stoff { $width } breit und { $height } hoch sein: den Projektor verschieben, bis alle Maße in beiden Richtungen stimmen.
projector-pixels = Bei { $across } x { $down } Bildpunkten ist ein Bildpunkt { $pixel } mm und eine Linie { $line } mm breit; { $grid }.
projector-then = Dann die Seiten nacheinander bildfüllend zeigen: { $count ->
        [one] 1 Stellung
       *[other] { $count } Stellungen
    }. Wo ein Teil weitergeht, die Kreuze in ihren Ringen auf dem Stoff markieren, den Stoff verschieben und sie auf dieselben Kreuze der nächsten Seite legen.
projector-position = Stellung { $number } von { $count }
projector-part = { $pieces } { $number } von { $count }

## The booklet
chapter-size = Deine Größe
chapter-needs = Was du brauchst
chapter-pieces = Die Schnittteile
chapter-lays = So liegen die Teile auf dem Stoff
chapter-allowances = Nahtzugaben
chapter-sewing = Nähen
chapter-about = Über diesen Schnitt
figure-says = Gezeichnete Teile: { $pieces }
figure-says-in = In Größe { $size } gezeichnete Teile: { $pieces }
figure-caption = Alle in einem Maßstab gezeichnet.
figure-caption-in = In Größe { $size } gezeichnet, alle in einem Maßstab.
figure-lines-all = Äußere Linie: hier wird geschnitten; punktierte Linie: hier wird genäht.
figure-lines-some = Wo eine punktierte Linie ist, wird an ihr genäht und an der äußeren Linie geschnitten.
about-author = Entworfen von
about-licence = Lizenz
about-contact = Fragen, und Fehler, die du findest
step = Schritt { $number }
step-numbers = Schritt { $step }: { $many ->
        [one] die Zahl
       *[other] die Zahlen
    } nach Größe
allowance-none = keine
allowance-at = { $allowance } bei { $edges }
allowance-round = { $allowance } ringsum
allowance-but = { $allowance }, jedoch { $rest }
allowance-hem = { $depth } Saum
allowance-hem-turned = { $depth } Saum und { $turn } Einschlag
allowance-running = { $start } auf { $end } verlaufend
allowance-then = dann
allowances-included = Bei diesen Teilen sind die Nahtzugaben in der Schnittlinie enthalten: an der äußeren Linie schneiden, an der punktierten nähen.
allowances-without = Keine Nahtzugabe enthalten ist bei: { $pieces }. Vor dem Zuschneiden zugeben, was du brauchst, wenn die Schritte nichts anderes sagen.

## Tables
table-size = Größe
table-untitled = Schnitt ohne Namen
csv-group = Gruppe
csv-unit = Einheit
csv-sign = Zeichen
csv-note = Hinweis
html-skip = Zum Text springen
html-contents = Inhalt
html-line = Zeile
sign-guessed = nicht gemessen: ein Vorschlag zwischen den Nachbargrößen
sign-beyond = nicht gemessen: ein Vorschlag jenseits der Nachbargrößen
sign-untrue = stimmt nicht: hängt an einer Gleichung, die in dieser Größe nicht erfüllt ist
how-many = Anzahl
table-body = Körpermaße
body-before = Maße des Körpers, ohne Zugabe für die Weite: danach die Größe wählen.
body-survey = Eine Reihenmessung: wie Körper gemessen wurden, keine Tabelle, nach der man Passform bestimmt.
body-level = auf Höhe von { $level }
body-source = Quelle: { $source }
body-source-of = Quelle für { $rows }: { $source }
table-measures = Fertigmaße
measures-before = Maße des genähten Kleidungsstücks, rundum, wo ein Umfang genannt ist. Mehrweite ist Kleidungsstück minus Körper. Jede Zahl ist für sich gerundet.
measure-finished = fertig
measure-body = Körper ({ $row })
measure-ease = Mehrweite
measure-least = Mehrweite mindestens
measure-most = Mehrweite höchstens
measure-stretches = dehnt sich bis
measure-passes = muss darüber passen ({ $row })
table-notions = Kurzwaren
table-notions-by-size = Kurzwaren nach Größe
notions-before = In allen Größen gleich.
notion = Kurzware
notion-size = Größe
notion-sold = nächste käufliche Größe
notion-needed = gebrauchte Größe
table-cutting = Zuschnittliste
cutting-before = Was zugeschnitten wird, in allen Größen gleich. Gezählt werden zugeschnittene Teile; ein Teil im Stoffbruch ist eines.
cutting-piece = Schnittteil
cutting-letter = Buchstabe
cutting-cut = Anzahl
cutting-how = wie
cutting-face = Stoffseite
cutting-grain = Fadenlauf
grain-along = im Fadenlauf
grain-across = quer zum Fadenlauf
grain-bias = im schrägen Fadenlauf
cutting-strip = Streifen: seine Längen stehen in einer eigenen Tabelle
cutting-sum = zusammen
cutting-untold = Nicht gesagt ist, woraus und wie oft diese zugeschnitten werden: { $pieces }.
cutting-own-cloth = eigener Stoff
cutting-lining = { $name } (Futter)
cutting-interfacing = { $name } (Einlage)
face-right = rechte Stoffseite oben
face-wrong = linke Stoffseite oben
grain-either-way = in beiden Richtungen
grain-one-way = in einer Richtung
grain-along-line = { $ways }, entlang { $line }
grain-by-arrow = { $ways }, nach dem Pfeil
cutting-on-fold = im Stoffbruch
cutting-pairs =
    { $pairs ->
        [one] 1 Paar: 1 und 1 gegengleich
       *[other] { $pairs } Paar: { $pairs } und { $pairs } gegengleich
    }

## Strips
table-strip = Streifen: { $strip }
strip-finished-length = fertige Länge
strip-ends = Zugabe an jedem Ende
strip-cut-length = Zuschnittlänge je Streifen
strip-total = Länge aller zusammen
strip-finished-width = fertige Breite
strip-cut-width = Zuschnittbreite
strip-to-buy = zu kaufende Länge
strip-rounded = Zu kaufende Längen sind aufgerundet, auf ganze Zentimeter oder auf Achtelzoll.
strip-band = Ein Band
strip-binding = Eine Einfassung
strip-elastic = Gummiband
strip-cord = Eine Kordel
strip-bought = als Meterware gekauft
strip-from-along = aus { $material } im Fadenlauf geschnitten
strip-from-across = aus { $material } quer zum Fadenlauf geschnitten
strip-from-bias = aus { $material } im schrägen Fadenlauf geschnitten, 45° zum Faden
strip-rule = { $kind }, { $from }. Die Zahlen gelten nur für diesen Fadenlauf.
strip-rule-bought = { $kind }, { $from }.
strip-length-rule = Die Regel für die fertige Länge, in allen Größen dieselbe: { $length }.
strip-length-by-size = Ihre fertige Länge steht unten nach Größen.
strip-length-by-size-ends = Ihre fertige Länge steht unten nach Größen; an jedem Ende kommen { $ends } dazu.
strip-length-rule-ends = Die Regel für die fertige Länge, in allen Größen dieselbe: { $length }; an jedem Ende kommen { $ends } dazu.
strip-width-rule = Zuschnittbreite: { $layers ->
        [one] einmal
       *[other] { $layers }-mal
    } die fertige Breite.
strip-width-rule-more = Zuschnittbreite: { $layers ->
        [one] einmal
       *[other] { $layers }-mal
    } die fertige Breite und { $allowance } an jeder Längsseite.
strip-joined = Wo der Stoff zu schmal ist, gerade angesetzt, mit { $join } auf jeder Seite der Ansatznaht.
strip-joined-bias = Wo der Stoff zu schmal ist, schräg angesetzt, mit { $join } auf jeder Seite der Ansatznaht.
strip-cloth = aus { $material }, { $width } breit
strip-longest = längstes Stück von Webkante zu Webkante
strip-side-by-side = ganze Streifen nebeneinander
strip-joins = Ansatznähte insgesamt
strip-joins-take = Länge, die Ansatznähte kosten
strip-cloth-for-all = Stoff für alle
strip-too-narrow = Der Streifen passt nicht ({ $cloth }): der Stoff ist zu schmal.
strip-not-joined = Der Streifen ist zu lang für ein Stück { $cloth }, und nicht gesagt ist, wie er angesetzt wird.
strip-too-much = Keine sinnvolle Länge Stoff reicht { $cloth }.
strip-width-untold = Nicht gesagt ist, wie breit { $material } verkauft wird; was sich daraus ergibt, steht deshalb nicht hier.
strip-alone = Stoff für die Streifen allein, aufgerundet; zwischen den Teilen brauchen sie oft weniger.
strip-bias = Ein Schrägstreifen quer über den Stoff ist dessen Breite mal √2 lang, mit schrägen Enden; die Streifen liegen an der Webkante ihre eigene Breite mal √2 auseinander, und gerade geschnittene Enden kosten einmal die Streifenbreite.
strip-marks = Zeichen für die Naht { $seam }, vom Schnittende aus
strip-starts = Der Streifen beginnt, wo seine Naht beginnt; ist eine Naht für eine Hälfte angegeben, läuft er an der anderen Hälfte zurück.
strip-unmarked = Die Zeichen für die Naht { $seam } lassen sich nicht angeben: sie braucht eine andere Länge als der Streifen oder ein ganzer Teil von ihm.
mark-start = Anfang der Naht
mark-end = Ende der Naht
mark-notch = Passzeichen { $name }
mark-meeting = wo zwei Teile aufeinandertreffen
mark-meeting-of = wo { $pieces } aufeinandertreffen
mark-stretch = Ende der Strecke { $which }

## The check list
table-check-list = Prüfliste
check-part = Stelle
check-is = ist
check-notches = Passzeichen
check-steps = in Schritten
check-open = offen
check-before = Woraus jedes Teil geschnitten wird, wohin jede seiner Kanten gehört, seine Passzeichen (auf beiden Seiten einmal gezählt) und die Schritte der Anleitung, die es zeigen, in Klammern die, die es nur nennen. Was fehlt, steht in der letzten Spalte.
check-strips = Streifen
check-notions = Zutaten
check-notion = { $count } ×
check-cloth = Stoff
check-no-plan = kein Zuschneideplan sagt, wie viel zu kaufen ist ({ $sizes })
check-all-sizes = alle Größen
check-nothing-open = Nichts ist offen.
check-lines-open =
    { $count ->
        [one] In einer Zeile ist etwas offen.
       *[other] In { $count } Zeilen ist etwas offen.
    }
check-no-cut = nicht gesagt, woraus es geschnitten wird
check-no-grain = kein Fadenlauf
check-no-step = kein Schritt erwähnt es
check-the-piece = das Teil
check-edge-open = weder genäht noch gesäumt, nicht im Stoffbruch, und keine eigene Nahtzugabe angegeben
check-own-copy = dem eigenen gegengleichen Teil
check-and = und
check-seam = Naht { $seam }
check-seam-to = Naht { $seam }, mit { $others }
check-partly = ein Stück davon: { $words }
check-border = an der Bordüre des Stoffs
check-hem =
    { $turns ->
        [one] Saum, einmal eingeschlagen
       *[other] Saum, { $turns }-mal eingeschlagen
    }
check-fold = Bruchlinie { $name }
check-lies-on = liegt auf { $piece }, an der dort markierten Stelle
check-as-cut = bleibt offenkantig
check-own-allowance = in keiner Naht, mit eigener Nahtzugabe
check-edge = Kante { $number }
check-cut = { $count } aus { $material }

## Cautions
## The translation of these has not been checked by a lawyer. They must say what the English ones say: no rule,
## number or "not checked" may be missing, and nothing may say that a garment keeps to a rule.
care-usual = Dies ist der übliche Hinweis und nicht mehr: es entscheiden die örtlichen Vorschriften und eine Person, die sie kennt
care-the-rule = Die Regel: { $rule }.
care-of-view = { $title } (Variante { $views })
care-not-checked = Nicht geprüft: { $what }.
care-unchecked-title = Was bei einem Kleidungsstück für Kinder nicht geprüft wurde
care-not-worn = als was ein Kind es trägt, ist nicht gesagt, also wurden die Regeln für Nachtwäsche nicht herangezogen
care-sizes =
    { $count ->
        [one] Größe { $sizes }
       *[other] den Größen { $sizes }
    }
rule-cords = 16 CFR 1120.3(b) mit ASTM F1816
rule-sleepwear = 16 CFR 1615 (bis Größe 6X) und 1616 (Größen 7 bis 14)
rule-cylinder = einen Zylinder von 1 1/4 Zoll Durchmesser und 1 bis 2 1/4 Zoll Tiefe (3,2 cm; 2,5 bis 5,7 cm; wie üblicherweise angegeben: in der Regel selbst nachsehen, es gelten die Zoll)
care-loose-band = { $strip } ist ein Band, das keine Naht annäht: hängen seine Enden frei, ist es eine Kordel, und es gilt dafür, was von Kordeln gesagt ist
care-loose-binding = { $strip } ist eine Einfassung, die keine Naht annäht: hängen ihre Enden frei, ist sie eine Kordel, und es gilt dafür, was von Kordeln gesagt ist
care-cord-elsewhere = die Kordel { $strip }, die weder an Kapuze oder Hals noch an Taille oder unterer Kante sitzt: { $rule } spricht nicht davon, { $europe } vielleicht
care-cords-europe = { $europe } über Kordeln an Kinderkleidung, deren Zahlen sich zwischen den Ausgaben unterscheiden
care-cords-unchecked = Knoten, Knebel und alles andere an den Enden von Kordeln; Bindebänder und Bänder, die keine Streifen des Schnitts sind
care-worn-unsaid = ob es über anderer Kleidung getragen wird, ist nicht gesagt
care-worn-otherwise = die Regel spricht von Kleidung, die über anderer getragen wird, der Hinweis ist für diese derselbe
care-neck-allows = { $rule } lässt dort in den Größen 2T bis 12 keine zu{ $worn }
care-neck-title = Eine Kordel an Kapuze oder Hals eines Kleidungsstücks für Kinder
care-neck-is = { $strip } ist eine Kordel an Kapuze oder Hals, in { $sizes }.
care-neck-do = Ein Kind kann daran hängen bleiben und stranguliert werden; weglassen und Kapuze oder Hals anders schließen.
care-neck-rule = { $rule }: dort keine in den Größen 2T bis 12{ $worn }; dem Namen nach auch { $europe }.
care-end-in = { $length } in { $sizes }
care-ends-lost = die freien Enden von { $strip } in { $sizes }: sie lassen sich dort nicht berechnen
care-ends-unread = die freien Enden von { $strip }: ihre Formel ist nicht lesbar
care-ends-untold = wie weit die freien Enden von { $strip } heraushängen, was nicht gesagt ist; { $rule } verlangt höchstens 75 mm (3 Zoll)
care-ends-look = Wie weit die freien Enden von { $strip } heraushängen, ist nicht gesagt: nachsehen, höchstens 75 mm (3 Zoll).
care-ends-look-lost = Wie weit die freien Enden von { $strip } heraushängen, lässt sich nicht berechnen: nachsehen, höchstens 75 mm (3 Zoll).
care-ends-are = Die freien Enden von { $strip } hängen heraus: { $ends }.
care-end-over = { $over } zu viel in { $sizes }
care-ends-over = Das ist mehr, als { $rule } zulässt: { $over }. Kürzen.
care-cord-loose = Die Kordel { $strip } ist in diesem Schnitt nicht festgenäht und lässt sich herausziehen, so dass ein Ende lang wird: { $rule } verlangt, dass sie mit einem Riegel in der rückwärtigen Mitte festgenäht ist.
care-waist-title = Eine Kordel an Taille oder unterer Kante eines Kleidungsstücks für Kinder
care-waist-rule = { $rule }, in den Größen 2T bis 16: höchstens 75 mm (3 Zoll) außerhalb des Tunnels, das Kleidungsstück zur vollen Weite geöffnet; nichts an den freien Enden, kein Knoten und kein Knebel; eine durchgehende Kordel wird mit einem Riegel festgenäht, in der rückwärtigen Mitte{ $worn }.
care-waist-europe = Dem Namen nach auch { $europe }, deren Zahlen sich zwischen den Ausgaben unterscheiden.
care-ages-apart = welche seiner Größen für wen ist: der Schnitt ist für Kinder von { $from } bis { $to } Jahren, seine Größen sind die von { $least } bis { $most } Jahren; deshalb gilt für alle Größen, was von Kindern der ersten Angabe gesagt ist
care-size-unknown = welche Größe der Regeln { $sizes } ist; deshalb gilt jede Regel als dafür gemeint
care-parts-title = Kleinteile an einem Kleidungsstück für ein Kind unter drei Jahren
care-parts-on-it = Daran sind { $parts }; jedes kann sich lösen und verschluckt oder eingeatmet werden.
care-part-mark = { $mark } auf { $piece }
care-parts-rule = { $rule }: kein Teil, das ganz in { $cylinder } passt, auch keines, das sich beim Gebrauch löst.
care-parts-do = Fest annähen, jedes durch Ziehen prüfen, oder das Kleidungsstück anders schließen.
care-parts-unchecked = wie groß Kleinteile sind und wie fest sie sitzen ({ $rule })
care-loose-title = Weite Nachtwäsche für Kinder
care-loose-fire = Weite Nachtwäsche fängt leichter Feuer als eng anliegende.
care-loose-rule = { $rule }: Stoff, Nähte und Besätze von Nachtwäsche für Kinder müssen Flammen widerstehen, wenn sie nicht eng anliegt.
care-loose-cloth = Der Stoff wird hier nicht geprüft: beim Hersteller nachfragen und das Kleidungsstück von Feuer fernhalten.
care-loose-unchecked = ob Stoff und Besätze der Nachtwäsche Flammen widerstehen
care-close-title = Eng anliegende Nachtwäsche für Kinder
care-close-rule = { $rule }: eng anliegende Nachtwäsche ist nicht weiter als das Höchstmaß der Regel für ihre Größe, rundum gemessen, flach gelegt; von cm und Zoll gilt das kleinere. Weitere Nachtwäsche gilt als weit, und ihr Stoff muss Flammen widerstehen.
care-girth-size = { $size }: { $is }, höchstens { $cm } cm und { $inches } Zoll in Größe { $rule_size }
care-girth = Umfang { $place } nach Größe – { $sizes }.
care-girth-over = { $told }, also { $over } zu weit
care-girth-most = { $size }: { $cm } cm und { $inches } Zoll, in Größe { $rule_size }
care-girth-untold = Umfang { $place }: nicht geprüft, die Weite dort ist nicht gesagt. Nachmessen; höchstens, nach Größe – { $sizes }.
care-girths-unsized = Die Weite wurde nicht geprüft: welche Größen der Regel die Größen sind, ist nicht gesagt. Nachmessen und das Höchstmaß der Regel nachsehen.
care-girth-lost = Umfang { $place } in { $sizes }: lässt sich dort nicht berechnen
care-girths-missing = die Nachtwäsche um { $places }: wie weit sie dort ist, ist nicht gesagt
care-girths-without = die Umfänge in { $sizes }: keine einzelne Größe der Regeln für Nachtwäsche ist dafür gesagt
care-close-unchecked = ob Ärmel, Bein und Rumpf nirgends weiter sind als an diesen Stellen und sich verengen, wie es die Regeln für Nachtwäsche sagen; wie weit Besätze abstehen; wo der unterste Verschluss sitzt; was die Etiketten sagen; der Stoff
girth-chest = Brust
girth-waist = Taille
girth-seat = Gesäß
girth-upper-arm = Oberarm
girth-thigh = Oberschenkel
girth-wrist = Handgelenk
girth-ankle = Knöchel

## What files are for, and what an edition says
files-title = Wofür jede Datei ist
files-need = Du brauchst nur die Seiten oder den breiten Bogen deiner eigenen Größe. Erst eine Seite drucken, ihre Maße nachmessen und weiterdrucken, wenn sie stimmen.
heading-pages = Seiten
heading-wide = Bogen
heading-projector = Projektor
heading-svg = SVG
heading-dxf = DXF
heading-tables = Tabellen
heading-booklet = Anleitung
heading-lays = Schnittbilder
heading-check-list = Prüfliste
what-pages = Teile in Originalgröße auf Seiten für den Drucker zu Hause, zum Zusammenkleben; die erste Seite zuerst drucken
what-wide = Teile in Originalgröße auf einem breiten Bogen, für den Copyshop
what-projector = Teile in Originalgröße für einen Projektor über dem Stoff, helle Linien auf Schwarz und dunkle Linien auf Weiß
what-svg = Teile als Linien für andere Zeichenprogramme, in Millimetern, jede Linienart für sich
what-dxf = Teile für Schneidemaschinen und andere Programme der Branche, in den Ebenen des offenen Standards
what-tables = Körpermaße, Fertigmaße, zu schneidende Längen, Einkauf, Zuschnittliste; zum Lesen oder für eine Tabellenkalkulation
what-lays = wie die Teile auf dem Stoff liegen und wie viel davon zu kaufen ist; eine Seite für jede Größe und Breite
what-check-list = jedes Teil mit dem, woran es genäht wird, Passzeichen, Fadenlauf, Anzahlen und den Schritten, die es erwähnen; für die Entwerfenden und zum Probenähen, in keiner Ausgabe
what-booklet = wie man die Größe wählt, was man braucht, die Teile und wie genäht wird
edition-head = Ausgabe { $edition }, { $date }
what-changed-is = was anders ist als in der Ausgabe davor und welche Seiten neu zu drucken sind.
about-questions = Fragen und Fehler
caution-head = Achtung: { $title }
caution-new = neu: { $title }
caution-other = sagt etwas anderes: { $title }
caution-gone = entfallen: { $title }
cautions-heading = Hinweise zur Sicherheit, die in read-me-first.txt und in der Anleitung stehen
file-new = { $name }: neu
file-all-pages =
    { $name }: { $count ->
        [one] die eine Seite
       *[other] alle { $count } Seiten
    }
file-some-pages = { $name }: { $pages } von { $count }
file-named-pages = { $name }: { $pages }
pages-first = die erste Seite
pages-first-and = die erste Seite und { $count ->
        [one] Seite
       *[other] Seiten
    } { $pages }
pages-which =
    { $count ->
        [one] Seite
       *[other] Seiten
    } { $pages }
pages-none-again = Keine Seite der Dateien muss neu gedruckt werden.
pages-again = Neu zu druckende Seiten
files-other = Dateien, die nicht gedruckt werden und anders sind
files-by-edition = Dateien, die nicht gedruckt werden und nur in Ausgabe, Datum und Kontakt anders sind
files-gone = Dateien, die es nicht mehr gibt

## What changed, for those who sew: facts of parts
fact-number = Zahl
fact-row-kind = Art der Zeile
fact-row-by = ändert sich mit
fact-value = Wert
fact-sewn-length = genähte Länge
fact-length = Länge
fact-line = Linie
fact-place = Stelle
fact-intake = Tiefe
fact-first-foot = erster Fuß
fact-second-foot = zweiter Fuß
fact-tip = Spitze
fact-leg = Schenkel
fact-bow = Wölbung der Schenkel
fact-dart-form = wie er genäht wird
fact-pressed = gebügelt
fact-dart-kept = bleibender Schenkel
fact-cut-line = Schnittlinie
fact-match-mark = Passpunkt
fact-mark-kind = Art der Markierung
fact-count = Anzahl
fact-turns = Umschläge
fact-fit = Passung
fact-order = Nähreihenfolge
fact-measure = Fertigmaß
fact-kind = Art
fact-nap = Strich
fact-laid = wie er gelegt wird
fact-shrinks = wo das Einlaufen berücksichtigt ist
fact-layers = Lagen
fact-thread = Fadenlauf
fact-strip-kind = was es ist
fact-strip-place = wo es ist
fact-fastened = in der Mitte festgenäht
fact-in-lay = wie es in Schnittbildern steht
fact-display = Einheit der Längen
fact-language = Sprache des Schnitts
fact-audience = wer es trägt
fact-worn = als was es getragen wird
fact-survey = ob die Tabelle eine Reihenmessung ist
fact-cut-line-in = Schnittlinie in { $material }
fact-notch = Passzeichen { $name }
fact-mark-of = { $mark } der Naht { $seam } an { $edge }
fact-cut-from = zugeschnitten aus { $material }
fact-turns-at = Umschläge des Saums an { $edge }
fact-corner-at = Ecke der Schnittlinie bei { $corner }
fact-place-number = Stelle von Nummer { $number }
fact-stretch-of = Strecke { $stretch } der { $side } Seite
fact-side-one = ersten
fact-side-two = zweiten
fact-notch-along = Passzeichen { $name } entlang der { $side } Seite
fact-stretch-fit = Passung der Strecke { $stretch }
fact-difference = erste Seite minus zweite Seite
field-formula = Formel
field-side-one = erste Seite
field-side-two = zweite Seite
field-allowance = Nahtzugabe
field-allowance-start = Anfang der Nahtzugabe
field-allowance-end = Nahtzugabe am Ende
field-turn-in = Einschlag des Saums
field-corner-width = Breite an der Ecke
field-material = Stoff
field-grain = Fadenlauf
field-grain-line = Linie, an der der Fadenlauf liegt
field-on-fold = Kante im Stoffbruch
field-border = Kante an der Bordüre
field-folded-part = Breite des gefalteten Teils
field-gap = Abstand zwischen den Teilen
field-sold-in = Schritt, in dem er verkauft wird
field-label = Beschriftung
field-label-turn = Drehung der Beschriftung
field-fit = Betrag der Passung
field-stretch-fit = Betrag der Passung einer Strecke
field-closure = für einen Verschluss offene Länge
field-edge = Kante, an der es liegt
field-title = Titel
field-author = Entwurf
field-licence = Lizenz
field-contact = Kontakt
field-edition = Ausgabe
field-date = Datum
field-width = Breite
field-ends = Enden
field-join = Ansatznaht
field-size = Größe
field-letter = Buchstabe
field-source = Quelle
field-what = was
field-how = wie
field-level = Höhe
field-body = Körper
field-least = mindestens
field-most = höchstens
field-depth = Tiefe
field-text = Text
fact-of = { $what } von { $of }
fact-of-step = { $what } von Schritt { $step }

## What changed: sentences
change-longer = { $by } länger
change-shorter = { $by } kürzer
change-moved = verschoben: { $way }
change-turned = verschoben: { $way }, und gedreht um { $angle }
change-away = bis zu { $apart } von der früheren Lage entfernt
change-was-is = war { $was }, ist jetzt { $is }
change-before-unsaid = { $is }, vorher nicht gesagt
change-not-said-any-more = war { $was }, ist nicht mehr gesagt
change-not-computed = nicht mehr berechenbar, war { $was }
change-computed-now = jetzt berechenbar: { $is }
change-not-computed-unsaid = nicht berechenbar, war vorher nicht gesagt
change-not-said-uncomputed = war nicht berechenbar, ist nicht mehr gesagt
change-a-line = eine Linie
change-quoted = „{ $words }“
change-square-cm = { $area } cm2
change-new = neu
change-gone = entfallen
change-renamed = wohl das frühere { $name }: alles ist gleich bis auf den Namen
change-now = { $what }: jetzt { $new }
change-text-gone = { $what }: { $old } ist entfallen
change-written = { $what } ist anders geschrieben: war { $old }, ist jetzt { $new }
change-in-sizes = { $change } in { $sizes }
change-from-to = { $change } (von { $from } auf { $to })
sizes-all = allen Größen
sizes-run = { $first } bis { $last }
sizes-in =
    { $count ->
        [one] Größe { $sizes }
       *[other] den Größen { $sizes }
    }
persons-in =
    { $count ->
        [one] Person { $names }
       *[other] den Personen { $names }
    }
changed-in-draft = der Schnitt
changed-in-chart = die Maßtabelle
changed-in-values = Werte
changed-in-placements = Lagen
changed-in-seams = Nähte
changed-in-conditions = Bedingungen
changed-in-measures = Fertigmaße
changed-in-needs = was gebraucht wird
changed-in-views = Varianten
changed-in-booklet = Anleitung
changed-in-sheets = Bögen
errata-head = Was sich geändert hat: { $now } (vorher: { $before })
errata-titled = { $title }, Ausgabe { $edition }
errata-step = Schritt { $number } der Anleitung sagt etwas anderes
errata-nothing = Nichts, was gedruckt oder genäht wird, hat sich geändert.
errata-piece-in = { $piece } in { $sizes }
errata-none-again = Kein Teil muss neu gedruckt werden.
errata-again = Neu drucken: { $pieces }.
errata-all-new = Alle Teile sind neu in { $sizes }.
part-piece = Teil { $name }
part-row = Zeile { $name }
part-measure = Fertigmaß { $name }
part-material = Stoff { $name }
part-strip = Streifen { $name }
part-notion = Kurzware { $name }
part-view = Variante { $name }
part-seam = Naht { $name }
part-step = Schritt { $number } der Anleitung
part-draft = Schnitt
part-point = Punkt { $name }
part-edge = Kante { $name }
part-line = Linie { $name }
part-dart = Abnäher { $name }
part-pleat = Falte { $name }
part-tuck = Biese { $name }
part-fold = Bruchlinie { $name }
part-lengthen = Verlängerungslinie { $name }
part-slit = Schlitz { $name }
part-mark = Markierung { $name }
side-one = erste
side-two = zweite
fit-equal = gleich lang
fit-eased = eingehalten, { $side } Seite länger
fit-gathered = gekräuselt, { $side } Seite länger
fit-stretched = gedehnt, { $side } Seite kürzer
worn-unsaid = keine Angabe
worn-outerwear = über anderer Kleidung
worn-sleepwear = im Bett, weit
worn-tight = im Bett, eng anliegend
worn-other = weder über anderer Kleidung noch im Bett
worn-by-boys = von Jungen
worn-by-girls = von Mädchen
children-from = Kinder von { $from } bis { $to }
