### The canvas, the card and the chart.

## The card
card-step-title = Schritt { $number } der Anleitung
card-log-title = Protokoll
card-question = der Karte
card-called = { $part }: { $caption }
card-found = Befunde
card-note = Notiz
card-take-out = Herausnehmen
card-nothing = nichts
card-none = keine
card-the-same = dasselbe
card-not-said = keine Angabe

## The card of a step of the booklet, and of the log
card-step-heading = Überschrift
card-step-heading-hint = etwa Schulternähte schließen
card-step-words = Text
card-step-words-hint = Was zu tun ist. Eine Formel in geschweiften Klammern wird zur Zahl: {"{"} length(front.hem) {"}"}. Zeilen mit - sind Punkte einer Liste.
card-step-pieces = daneben gezeichnete Schnittteile
card-step-piece = { $part }: { $piece } gezeichnet
card-step-views = Varianten, zu denen er gehört
card-step-view = { $part } in Variante { $view }
card-picture-file = Datei des Bildes{ $number }
card-picture-file-hint = PNG oder JPEG im Ordner des Entwurfs
card-picture-says = was das Bild{ $number } zeigt
card-picture-says-hint = für alle, die es nicht sehen
card-picture-caption = Text unter dem Bild{ $number }
card-picture-caption-hint = keiner
card-picture-take = Bild{ $number } herausnehmen
card-picture-add = Bild hinzufügen
card-step-reads = so steht es da: { $size }
card-log-about = Welche Größen genäht wurden, und wann. Eine Ausgabe sagt, welche noch nie genäht wurden.
card-fitting = Anprobe { $number }: { $size }
card-fitting-unsized = Anprobe { $number }: eine Größe
card-fitting-date = Datum, Anprobe { $number }
card-fitting-date-hint = etwa 2025-03-14
card-fitting-size = genähte Größe, Anprobe { $number }
card-fitting-cloth = aus welchem Stoff, Anprobe { $number }
card-fitting-note = was geändert wurde, Anprobe { $number }
card-fitting-take = Anprobe { $number } herausnehmen
card-released = Ausgaben
card-release = Ausgabe { $edition }, { $date }

## Numbers by size
card-no-value = kein Wert
card-size-line = { $size }: { $number }
card-by-size = nach Größe

## The card of the draft
card-language = Sprache der Veröffentlichung
card-audience = wer es tragen soll (davon hängen Hinweise zur Sicherheit ab)
card-youngest = die Jüngsten
card-youngest-hint = etwa 2 years
card-oldest = die Ältesten
card-oldest-hint = etwa 8 years
card-worn-as = getragen als
card-wearers = nach wessen Größen die Regeln gefragt werden
card-survey = die Maßtabelle ist eine Reihenmessung, keine Tabelle für die Passform
card-rule-size = welche Größe der Regeln { $size } ist
card-rule-sizes = Sagen, welche Größen der Regeln es sind
card-girth = Umfang des Kleidungsstücks: { $place }
card-girth-hint = rundum, etwa 2 * length(front.hem)
card-girth-take = Umfang herausnehmen: { $place }
card-girths = Umfänge des Kleidungsstücks, von denen Regeln sprechen
card-girth-say = Umfang angeben …
card-girth-called = Umfang: { $place }
card-title = Titel
card-author = Entwurf von
card-licence = Lizenz
card-contact = Kontakt
card-edition = Ausgabe
card-date = Datum
card-unit = Längen werden gezeigt in
card-unit-eighths = Zoll, Achtel
card-unit-sixteenths = Zoll, Sechzehntel
card-unit-show = { $unit } zeigen
card-seam-limit = wie weit Nähte abweichen dürfen
card-notch-limit = wie weit Passzeichen auseinanderliegen dürfen
card-joint-angle = wie weit Linien an einer Naht knicken dürfen
card-joint-gap = wie weit sie 10 mm daneben abweichen dürfen
card-allowance = Nahtzugabe, wo keine gesagt ist

## Allowances, cuts, notches
card-hem-depth = Tiefe des Saums
card-allowance-of = Nahtzugabe von { $edge }
card-allowance-from = Nahtzugabe von { $edge } ab { $from }
card-second-turn = zweiter Umschlag
card-second-turn-hint = so tief wie der erste
card-holds-from = gilt ab, auf { $edge }
card-holds-from-hint = ihrem Anfang
card-runs-to = läuft am Ende von { $edge } auf
card-no-hem = Kein Saum an { $edge }
card-no-allowance = Keine eigene Zugabe an { $edge }
card-no-allowance-from = Keine eigene Zugabe an { $edge } ab { $from }
card-own-allowance = Eigene Zugabe
card-further-width = Weitere Breite
card-hem = Saum
card-hem-twice = Saum, doppelt eingeschlagen
card-allowance-else = es gilt die Zugabe ihrer Naht, sonst die des Entwurfs
card-cut-material = Material{ $number }
card-cut-material-hint = Name eines Materials
card-cut-heading = Richtung des Fadenlaufs{ $number }
card-cut-heading-hint = 90°: am Teil nach unten
card-cut-along = Fadenlauf muss folgen{ $number }
card-cut-along-hint = einer Kante oder Linie
card-cut-count = { $count } × zuschneiden: { $piece }{ $number }
card-no-fold = kein Stoffbruch
card-fold-at = Stoffbruch an { $edge }
card-cut-take = Diesen Zuschnitt{ $number } herausnehmen
card-cut-say = Zuschnitt angeben
card-cut-another = Auch aus anderem Stoff zuschneiden
card-label = Platz der Beschriftung
card-label-hint = wo Platz ist
card-longer = länger an { $line } um
card-longer-hint = eine Länge; unter 0: kürzer
card-lengthen = An { $line } verlängern oder kürzen
card-lengthen-about = Alles jenseits der Linie hängt dann an einem Wert und bewegt sich als Ganzes
card-notch = Passzeichen { $name } bei
card-notch-hint = eine Länge, ein Anteil oder ein Punkt
card-notch-take = Passzeichen { $name } herausnehmen
card-notch-add = Passzeichen hinzufügen
card-roll = Abrollen
card-order = genäht als Nummer, oder nach
card-order-hint = etwa 2, oder after side
card-pressed = Nahtzugaben gebügelt
card-pressed-open = auseinander
card-pressed-one = zur ersten Seite
card-pressed-two = zur zweiten Seite
card-pressed-called = { $way } gebügelt
card-seam-allowance = Nahtzugabe beider Seiten
card-seam-allowance-hint = die des Entwurfs
card-closure = vom Anfang an offen für einen Verschluss
card-closure-hint = ganz zugenäht

## Cards of pieces, points and edges
card-letter = Buchstabe auf Bögen
card-points =
    { $count ->
        [one] 1 Punkt
       *[other] { $count } Punkte
    }
card-edges =
    { $count ->
        [one] 1 Kante
       *[other] { $count } Kanten
    }
card-lines =
    { $count ->
        [one] 1 Linie
       *[other] { $count } Linien
    }
card-darts =
    { $count ->
        [one] 1 Abnäher
       *[other] { $count } Abnäher
    }
card-empty-piece = noch leer
card-stacked = Größen liegen übereinander bei
card-stacked-across = Größen liegen quer übereinander bei
card-stacked-down = und längs bei
card-stacked-hint = ein Punkt
card-stack-points = Größen an Punkten übereinanderlegen
card-stack-origin = Größen am Nullpunkt übereinanderlegen
card-place = Ort
card-place-hint = etwa neck.down(8 cm) oder (0 cm, 0 cm)
card-placed = { $right } rechts, { $down } unten in { $size }
card-no-place = kein Ort in { $size }
card-stack-here = Größen hier übereinanderlegen
card-stack-both = Ganz
card-stack-both-at = ganz übereinanderlegen bei { $point }
card-stack-across = Nur quer
card-stack-across-at = nur quer übereinanderlegen bei { $point }
card-stack-down = Nur längs
card-stack-down-at = nur längs übereinanderlegen bei { $point }
card-right-of-origin = rechts vom Nullpunkt
card-below-origin = unter dem Nullpunkt
card-edge-follows = folgt aus { $of } und den Schritten von { $piece }
card-sewn-length = genähte Länge nach Größe
card-edge-ends = von { $from } bis { $to }, { $bent } von { $count } gebogen
card-curve = Biegen
card-straighten = Gerade machen
card-handle-leaving = Anfasser ab { $point }
card-handle-arriving = Anfasser vor { $point }
card-centre = Mitte
card-heading-leaving = Richtung am Anfang
card-heading-arriving = Richtung am Ende
card-heading-free = frei
card-through = durch Punkt { $number }
card-curve-taken = übernommene Kurve
card-set-off = abgesetzt um, nach innen positiv
card-set-off-hint = nicht abgesetzt
card-set-off-end = am Ende um
card-smooth-at = muss bei { $point } glatt weiterlaufen
card-make-smooth = Bei { $point } glätten
card-make-smooth-about = Dreht dort einen Anfasser, so dass die Linie weiterläuft; in jeder Größe

## Cards of strips, notions and cloth
card-what-it-is = was es ist
card-how-many = Anzahl
card-finished-length = fertige Länge, von Naht zu Naht
card-finished-length-hint = etwa waist * 0.9
card-strip-ends = Zugabe an jedem Ende
card-finished-width = fertige Breite
card-finished-width-hint = etwa 2 cm
card-layers = Lagen
card-strip-sides = Zugabe an jeder Längsseite
card-strip-grain = wie er auf dem Stoff liegt
card-strip-join = Zugabe auf jeder Seite einer Ansatznaht
card-strip-join-hint = er wird nicht angesetzt
card-strip-place = wo am Körper (davon hängen Hinweise zur Sicherheit ab)
card-free-end = wie weit jedes freie Ende heraushängt
card-fastened = in der Mitte festgenäht
card-in-lay = in Schnittbildern seines Stoffs
card-notion-size = Länge oder Größe
card-sold = verkauft in
card-sold-another = Weitere Größe, in der es verkauft wird
card-sold-hint = etwa 20 cm
card-width = verkauft in der Breite
card-width-another = Weitere Breite, in der es verkauft wird
card-width-hint = etwa 140 cm
card-selvedge = Webkante auf jeder Seite, nicht genutzt
card-nap = Strich
card-laid = wie er zum Zuschneiden liegt
card-folded-part = Breite des gefalteten Teils, vom Bruch an
card-folded-part-hint = so breit, wie seine Teile brauchen
card-gap = Mindestabstand zwischen Teilen
card-sold-in = verkauft in Schritten von
card-sold-in-hint = 10 cm oder 1/8 yd
card-stretch-along = dehnt sich im Fadenlauf um
card-stretch-hint = nichts, etwa 5 %
card-stretch-across = dehnt sich quer um
card-shrink-along = läuft im Fadenlauf ein um
card-shrink-across = läuft quer ein um
card-shrinks = wo das berücksichtigt ist
card-length-by-size = Länge nach Größe
card-cloth = Wie viel zu kaufen ist
card-cut-from = zugeschnitten aus
card-bought = gekauft
card-number-in = { $number } in { $size }
card-choice-of = { $part }: { $caption }
card-fewer = weniger: { $what }
card-more = mehr: { $what }
card-take-out-what = herausnehmen: { $what }

## The card of a row of the chart
card-row-formula = Formel für Größen ohne Zahl
card-row-formula-hint = keine: ein Vorschlag zwischen den Nachbarn
card-row-what = was gemessen wird
card-row-level = Höhe
card-row-how = wie gemessen wird
card-row-source = Quelle
card-show-chart = Maßtabelle zeigen
card-row-body = Körper
card-row-body-called = Körperzeile
card-row-body-about = Ein Maß von Körpern; wird veröffentlicht
card-row-house = Haus
card-row-house-called = Hauszeile
card-row-house-about = Alles andere, was nach Größen geht; wird nie veröffentlicht
card-row-up = Auf
card-row-down = Ab
card-varies = ändert sich mit
card-varies-by = ändert sich mit { $axis }

## Cards of seams and conditions
card-side-one = erste Seite
card-side-one-of = erste Seite der Naht { $seam }
card-side-two = zweite Seite
card-side-two-of = zweite Seite der Naht { $seam }
card-side-hint = Kanten hintereinander, etwa front.side
card-seam-found-by = passend gemacht durch diese Werte (keine: sie wird nur beobachtet)
card-seam-found-by-of = Naht { $seam }, passend gemacht durch
card-seam-found-by-hint = nur beobachtet
card-seam-in = { $state } in { $size }
card-seam-difference = erste Seite minus zweite Seite
card-seam-excess = zu lang oder zu kurz
card-fit = wie die Seiten zusammenpassen
card-fit-equal = gleich lang
card-fit-eased = eingehalten
card-fit-gathered = gekräuselt
card-fit-stretched = gedehnt
card-fit-called = Passung: { $fit }
card-fit-by = länger um
card-fit-times = mal so lang
card-one-longer = erste Seite ist länger
card-one-shorter = erste Seite ist kürzer
card-two-longer = zweite Seite ist länger
card-two-shorter = zweite Seite ist kürzer
card-other-side = Die andere Seite
card-must = muss gelten
card-must-hint = a = b oder a >= b
card-condition-found-by = erfüllt durch diese Werte
card-condition-found-by-of = Bedingung { $condition }, erfüllt durch
card-condition-found-by-hint = alle, von denen sie abhängt
card-left-side = linke Seite nach Größe
card-right-side = rechte Seite nach Größe

## Steps of derived pieces
card-made-of = abgeleitet von { $piece } und folgt ihm in jeder Größe
card-further-step = ein weiterer Schritt
card-step = { $number }. { $does }
card-step-times = { $number }. { $does }, { $count }-mal
card-earlier = Früher
card-later = Später
card-take-step-out = Herausnehmen
card-step-called = Schritt { $step }: { $word }
card-opening-usual = Wie üblich
card-opening-dart = Abnäher
card-opening-straight = Gerade darüber
card-opening-curve = Kurve darüber
card-parallel = Parallel
card-more-slashes = Ein Schnitt mehr
card-fewer-slashes = Ein Schnitt weniger
card-other-way = Andersherum
card-square-ends = Gerade Enden
card-mirrored-ends = Gespiegelte Enden
card-switch-called = { $word } in Schritt { $step }
card-did-move-dart = Abnäher verlegt
card-did-spread = Aufgeschnitten und gespreizt
card-did-cut = Geteilt
card-did-join = Zusammengelegt
card-did-unfold = Aufgeklappt
card-did-turn-over = Gewendet
card-did-add-strip = Streifen angesetzt
card-did-move-edge = Kante verschoben
card-did-share = Betrag verteilt
card-did-to-cut-line = Auf die Schnittlinie
card-did-redraw = Kante neu gezeichnet
card-did-draw = Gezeichnet
card-did-leave-out = Weggelassen

## Cards of values, persons and views
card-start = Start
card-start-hint = wo die Suche beginnt
card-least = mindestens
card-most = höchstens
card-no-limit = keine Grenze
card-formula = Formel
card-formula-hint = eine Formel, etwa 2 cm oder bust / 20
card-in-view = in Variante { $view }
card-give = Vorgeben
card-give-about = Der Start wird zur Formel, und nichts wird mehr durch ihn gefunden
card-find = Finden lassen
card-find-about = Die Formel wird zum Start; eine Naht oder Bedingung sagt, wodurch er gefunden wird
card-person-numbers = Die Zahlen von { $name } stehen in der Maßtabelle, hinter den Größen.
card-see-view = Diese Variante zeigen
card-view-pieces = Schnittteile
card-view-piece = { $piece } in Variante { $view }
card-view-values = Werte, die in ihr anders sind
card-elsewhere = Wie sonst
card-elsewhere-about = Nimmt diese Formel aus der Variante heraus
card-value-elsewhere = { $value } wie sonst
card-another-value = Weiterer Wert …
card-value-other = { $value } ist anders

## Fields of the file, where a card lists them
card-field-name = Name
card-field-note = Notiz
card-field-girth = Weite
card-field-cup = Cup
card-field-length = Länge
card-field-base = Basis
card-field-sheets = Bögen
card-field-paper = Papier
card-field-sizes = Größen
card-field-pieces = Schnittteile
card-field-lay = legen
card-field-on = auf
card-field-point = Punkt
card-field-onto = auf Punkt
card-field-towards = in Richtung
card-field-along = entlang
card-field-turned = gedreht
card-field-overlap = Überlappung
card-field-corners = Ecken
card-field-meant = gemeint
card-field-is = ist
card-field-body = Körper
card-field-ease-least = Mehrweite mindestens
card-field-ease-most = Mehrweite höchstens
card-field-drift-most = Abweichung höchstens
card-field-passes = muss darüber passen
card-field-stretch = Dehnung
card-field-centre = Mitte
card-field-foot = Fuß
card-field-intake = Inhalt
card-field-tip = Spitze
card-field-bow = Wölbung
card-field-allowance = Nahtzugabe
card-field-depth = Tiefe
card-field-line = Linie
card-field-over = über
card-field-at = bei
card-field-to = bis
card-field-fixed = fest
card-field-piece = Schnittteil
card-field-size = Größe
card-field-text = Text
card-field-person = Person
card-field-close = schließen
card-field-share = Anteil
card-field-stays = bleibt liegen
card-field-makes = ergibt
card-field-from = von
card-field-from-at = von, bei
card-field-to-at = bis, bei
card-field-from-until = von, bis zu
card-field-to-until = bis, bis zu
card-field-by = um
card-field-angle = Winkel
card-field-darts = Abnäher
card-field-keep = behalten
card-field-start = Anfang
card-field-end = Ende
card-field-rest = Rest
card-field-edge = Kante
card-field-prefix = Vorsilbe
card-field-width = Breite
card-field-to-by = am Ende um
card-field-edges = Kanten
card-field-set = gesetzt
card-field-smooth-at = glatt bei
card-field-segment-to = Abschnitt bis
card-field-leaving = Anfasser am Anfang
card-field-arriving = Anfasser am Ende
card-field-through = durch
card-field-leaving-heading = Richtung am Anfang
card-field-arriving-heading = Richtung am Ende
card-field-curve = Kurve
card-field-off = abgesetzt um
card-field-off-end = am Ende abgesetzt um
card-field-leaves-out = lässt weg
card-field-point-name = Punkt, Name
card-field-point-note = Punkt, Notiz
card-field-line-name = Linie, Name
card-field-line-from = Linie, von
card-field-line-note = Linie, Notiz
card-field-dart-name = Abnäher, Name
card-field-dart-on = Abnäher, auf
card-field-dart-centre = Abnäher, Mitte
card-field-dart-foot = Abnäher, Fuß
card-field-dart-intake = Abnäher, Inhalt
card-field-dart-tip = Abnäher, Spitze
card-field-dart-bow = Abnäher, Wölbung
card-field-dart-allowance = Abnäher, Nahtzugabe
card-field-dart-note = Abnäher, Notiz
card-field-mark-name = Markierung, Name
card-field-mark-at = Markierung, bei
card-field-mark-to = Markierung, bis
card-field-mark-fixed = Markierung, fest
card-field-mark-piece = Markierung, Schnittteil
card-field-mark-size = Markierung, Größe
card-field-mark-text = Markierung, Text

## The table: how edges bend
canvas-tightest = kleinster Radius { $radius }
canvas-straight = gerade
canvas-bends = knickt um { $angle }
canvas-bends-at-joint = knickt um { $angle } an einem Übergang
canvas-smooth = glatt
canvas-curvature = Krümmung von { $edge }: { $words }
canvas-corner = { $angle } an der Ecke
canvas-corner-start = Anfang von { $edge }: { $words }
canvas-corner-end = Ende von { $edge }: { $words }

## The table: what can be pulled
canvas-grip = { $edge }, { $what }
canvas-arc-centre = Mitte des Bogens bis { $point }
canvas-way-point = Punkt { $number } auf dem Weg nach { $point }
canvas-no-number = keine eigene Zahl bewegt es; mit gehaltener Umschalttaste kommt ein Versatz dazu
canvas-slides = gleitet an einer Linie entlang; { $reach }
canvas-reach-all = ändert alle Größen
canvas-reach-one = ändert nur { $size }
canvas-reach-up = ändert { $size } und größere

## The table itself
canvas-pieces = Schnittteile in { $size }
canvas-table = dem Tisch
canvas-puts-name = ein Klick setzt { $name } in die Formel

## The table: another draft
canvas-end-comparing = Vergleich beenden
canvas-comparing = dem Vergleichen
canvas-differences = Unterschiede
canvas-dashed-line = gestrichelte Linie: { $of }
canvas-whole-line = durchgezogene Linie: { $of }
canvas-not-in = { $size } fehlt in { $draft }
canvas-this-draft = dieser Entwurf

## The table: the pencil
canvas-pencil-typed = Enter schreibt es; Esc nimmt die Zahl zurück
canvas-pencil-click = ein Klick schreibt es; eine Zahl lässt sich tippen
canvas-pencil-several = { $number } von { $all }: Leertaste für die nächste Lesart; ein Klick schreibt es; eine Zahl lässt sich tippen
canvas-pencil-elsewhere = das ist { $other }: der Stift zeichnet in { $piece }
canvas-pencil-from-none = einen Punkt anklicken, um von ihm aus zu messen
canvas-pencil-from = misst von { $point }
canvas-pencil-from-two = misst von { $point }, davor { $before }
canvas-pencil-in = Stift in { $piece } · { $from }
canvas-pencil-told = getippt { $typed }: { $state }
canvas-pencil-would = der Stift würde schreiben: { $told }
canvas-put-down = Weglegen
canvas-pencil = dem Stift
canvas-join = Punkte verbinden
canvas-join-about = Jeder Punkt wird durch eine Linie mit dem davor verbunden; Ziehen zeichnet eine einzelne Linie; mit der Umschalttaste wird es eine Kurve
canvas-join-called = Punkte verbinden

## The table: names of pieces, grid, hints
canvas-piece-told = Schnittteil { $piece }, { $state }
canvas-drawing-told = Zeichnung { $drawing }, { $state }
canvas-piece-past = Schnittteil { $piece } { $state }
canvas-drawing-past = Zeichnung { $drawing } { $state }
canvas-size-note = { $size }, { $note }
canvas-size-noted = { $size } · { $note }
canvas-not-drawn = nicht zeichenbar in { $size }
canvas-as-it-was = { $note }; so war es zuvor
canvas-not-true = stimmt nicht
canvas-step-fails = ein Schritt ist nicht möglich: siehe Prüfung
canvas-open = Umriss offen
canvas-empty = noch leer
canvas-move-piece = { $piece } auf dem Tisch verschieben
canvas-why-not = die Befunde unten sagen, warum
canvas-grid = Raster { $step }
canvas-hint = Ziehen verschiebt, Rollen zoomt, Doppelklick zeigt alles; ← und → wechseln die Größe; Ctrl+K findet alles
canvas-not-computed = Dieser Entwurf konnte nicht berechnet werden; die Meldung oben sagt, warum.
canvas-no-sizes = Noch keine Größen: mit dem + oben die erste hinzufügen; dann lassen sich Schnittteile zeichnen.
canvas-no-pieces = Noch keine Schnittteile: im Menü „Hinzufügen“ oder links eines anlegen.

## The table: tags of seams
canvas-seam-not-in-view = nicht in dieser Variante
canvas-seam-not-measurable = nicht messbar
canvas-seam-not-measured = nicht gemessen
canvas-seam-too-long = { $by } zu lang
canvas-seam-too-short = { $by } zu kurz
canvas-seam-equal = gleich lang
canvas-seam-longer = { $by } länger, wie gewollt
canvas-seam-shorter = { $by } kürzer, wie gewollt
canvas-tag = { $seam }: { $state }
canvas-tag-see-proof = { $seam }: { $state } · siehe Prüfung
canvas-seam = Naht { $seam }: { $state }
canvas-seam-see-proof = Naht { $seam }: { $state }, siehe Prüfung
canvas-seam-fine = Naht { $seam }: { $state }, in allen Größen in Ordnung

## The table: the tape
canvas-put-away = Weglegen
canvas-tape = dem Maßband
canvas-tape-keep = Als Wert behalten …
canvas-tape-way = Anderer Weg
canvas-tape-way-about = Gerade, an den Kanten entlang oder andersherum (Leertaste)
canvas-tape-click = Maßband: Punkt oder Kante anklicken
canvas-tape-holds = Maßband: ein Klick hält es an { $place }
canvas-tape-from = Maßband von { $place }: zeigen, wohin es geht
canvas-tape-no-length = keine Länge
canvas-tape-lifted = Maßband: { $length } abgehoben zu einem anderen Schnittteil: { $formula }
canvas-tape-straight = Maßband: { $length } gerade: { $formula }
canvas-tape-along = Maßband: { $length } entlang: { $formula }
canvas-tape-in = Maßband in { $size }: { $length }

## The table: pictures under the pieces
canvas-picture = Bild { $file }
canvas-picture-called = Bild { $file } { $place }
canvas-picture-called-unscaled = Bild { $file } { $place }, noch ohne Maßstab
canvas-picture-laid = das Bild, das gelegt wird
canvas-picture-hidden = ausgeblendet
canvas-picture-scaled = mit Maßstab
canvas-picture-unscaled = noch ohne Maßstab
canvas-picture-read = wird gelesen
canvas-picture-not-shown = kann nicht gezeigt werden: { $problem }
canvas-picture-scale = Maßstab …
canvas-picture-level = Waagerecht richten
canvas-picture-plumb = Senkrecht richten
canvas-picture-measure = Messen
canvas-picture-move = Verschieben
canvas-picture-show = Zeigen
canvas-picture-show-called = Bild zeigen
canvas-picture-hide = Ausblenden
canvas-picture-hide-called = Bild ausblenden
canvas-picture-remove = Entfernen
canvas-picture-remove-called = Bild entfernen
canvas-picture-faded = blass
canvas-picture-fade = wie blass das Bild ist
canvas-lay-move = Das Bild ziehen. Escape beendet es.
canvas-lay-apart = Wie weit liegen sie wirklich auseinander?
canvas-lay-scale-first = Den ersten von zwei Punkten anklicken, deren Abstand bekannt ist, weit auseinander.
canvas-lay-scale-second = Den zweiten von zwei Punkten anklicken, deren Abstand bekannt ist, weit auseinander.
canvas-lay-level-first = Den ersten von zwei Punkten anklicken, die waagerecht liegen.
canvas-lay-level-second = Den zweiten von zwei Punkten anklicken, die waagerecht liegen.
canvas-lay-plumb-first = Den ersten von zwei Punkten anklicken, die senkrecht übereinander liegen.
canvas-lay-plumb-second = Den zweiten von zwei Punkten anklicken, die senkrecht übereinander liegen.
canvas-lay-measure-first = Den ersten Punkt der Strecke anklicken.
canvas-lay-measure-second = Den zweiten Punkt der Strecke anklicken.
canvas-distance = wirklicher Abstand
canvas-distance-hint = etwa 20 cm
canvas-set-scale = Maßstab setzen

## The chart
chart-title = Maßtabelle
chart-question = der Maßtabelle
chart-page = Seite { $page }
chart-numbers = Zahlen
chart-sizes = Größen und Gruppen
chart-proposals = Vorschläge
chart-proposals-many = Vorschläge: { $many }
chart-paste = Einfügen
chart-show-pieces = Schnittteile zeigen
chart-steps = Sprünge
chart-steps-called = Sprünge unter den Zahlen
chart-how = Eine Zahl mit Einheit tippen, oder +2 cm für einen Sprung von der Größe davor. Enter, Tab und Pfeile gehen von Zelle zu Zelle. Zahlen mit Fragezeichen sind Vorschläge, bis sie bestätigt werden.
chart-empty = Eine Maßtabelle braucht Größen und Zeilen: die erste Größe und die erste Zeile mit den Knöpfen oben hinzufügen oder eine Tabelle einfügen.
chart-cell = { $row }, { $column }
chart-every-size = jede Größe
chart-missing = fehlt
chart-step = Sprung von { $row } zu { $size }: { $step }
chart-step-uneven = Sprung von { $row } zu { $size }: { $step }, ungleichmäßig
chart-row = Zeile { $row }
chart-house-row = Hauszeile: { $what }
chart-same-in-all = in allen gleich
chart-by = nach { $axes }
chart-column = Spalte { $name }
chart-base-column = Spalte { $name }, Basis
chart-column-of = Spalte { $name }, Zeilen { $rows }
chart-base-column-of = Spalte { $name }, Basis, Zeilen { $rows }
chart-base-of = { $name } Basis
chart-first-row = { $row } ist schon die erste Zeile
chart-last-row = { $row } ist schon die letzte Zeile

## The chart: tables on the disk
chart-not-read = { $file } kann nicht gelesen werden: { $why }
chart-no-file = { $file } ist keine Datei
chart-too-large = { $file } hat { $bytes } Bytes; höchstens { $most } werden gelesen
chart-not-text = { $file } ist kein reiner Text (UTF-8); zuerst als CSV speichern
chart-name-needed = ein Name fehlt
chart-written = die Maßtabelle ist geschrieben: { $file }

## The chart: proposals
chart-none-waiting = Jede Zahl der Maßtabelle wurde getippt oder folgt aus einer Formel: nichts ist zu bestätigen.
chart-waiting = Diese Größen haben noch keine eigene Zahl. Was vorgeschlagen ist, liegt gleichmäßig zwischen den Nachbarn oder setzt den letzten Sprung fort; die Schnittteile sind damit gezeichnet. Bestätigen oder die gemessene Zahl tippen.
chart-confirm-all = Alle { $count } bestätigen
chart-confirm-row = { $count } von { $row } bestätigen
chart-more = und { $count } weitere
chart-confirm = Bestätigen
chart-confirm-cell = { $row } in { $size } bestätigen
chart-beyond = jenseits der getippten Zahlen
chart-between = zwischen zwei Zahlen

## The chart: sizes and sets
chart-sizes-about = Größen liegen auf einer bis drei Achsen; eine Zeile sagt auf ihrer Karte, mit welchen davon sie sich ändert. Die Basis ist der Nullpunkt der Sprünge und wird zuerst gezeigt: auf die Schnittteile hat sie keinen Einfluss.
chart-along = Achse { $axis }
chart-along-unused = Achse { $axis } (nicht benutzt)
chart-add-label = Größe auf { $axis } hinzufügen
chart-take-axis = { $axis } herausnehmen
chart-put-earlier = { $label } früher stellen
chart-put-later = { $label } später stellen
chart-rename = Umbenennen
chart-rename-size = Größe { $size } umbenennen
chart-rename-set = Größengruppe { $set } umbenennen
chart-delete = Löschen
chart-delete-size = Größe { $size } löschen
chart-delete-set = Größengruppe { $set } löschen
chart-base = Basis
chart-make-base = Zur Basis machen
chart-make-base-of = { $label } zur Basis machen
chart-sets = Größengruppen
chart-no-sets = Keine: der Bereich ist jede Größe jeder Achse mit jeder anderen. Eine Gruppe benennt einen Teil davon.
chart-sets-hold = Der Bereich ist, was die Gruppen enthalten.
chart-label-in-set = { $label } in Größengruppe { $set }
chart-set-base = Basis: { $base }
chart-set-no-base = Basis: noch keine
chart-set-base-choice = Basis von { $set }: { $base }
chart-base-of-set = Basis der Größengruppe { $set }

## The chart: a block before it is taken
chart-paste-here = Hier Zahlen aus einer Tabellenkalkulation einfügen oder tippen: je Zeile der Maßtabelle eine Zeile Text, dazwischen Tabulatoren, Semikolons oder Kommas.
chart-paste-from = Aus { $file }. In der Maßtabelle ändert sich nichts, bevor es übernommen wird.
chart-pasted = einzufügende Zahlen
chart-parted = Spalten sind getrennt durch
chart-parted-by = getrennt durch { $sign }
chart-bare = Zahlen ohne Einheit sind in
chart-bare-in = Zahlen ohne Einheit in { $unit }
chart-first-line = Die erste Zeile nennt Größen
chart-first-line-called = erste Zeile nennt Größen
chart-first-column = Die erste Spalte nennt Zeilen
chart-first-column-called = erste Spalte nennt Zeilen
chart-add-sizes = Die neuen Größen auf { $axis } hinzufügen
chart-add-sizes-called = die neuen Größen hinzufügen
chart-add-rows = Die neuen Zeilen hinzufügen
chart-add-rows-called = die neuen Zeilen hinzufügen
chart-new-sizes = neue Größen liegen auf
chart-new-sizes-along = neue Größen auf { $axis }
chart-new-labels = Namen neuer Größen
chart-new-labels-hint = etwa 132, 136
chart-new-names = Namen neuer Zeilen
chart-new-names-hint = etwa knöchel, wade
chart-take =
    { $count ->
        [one] 1 Zahl übernehmen
       *[other] { $count } Zahlen übernehmen
    }
chart-take-called = die Zahlen übernehmen
chart-put-away = Weglegen
chart-columns-nowhere = Spalten ohne Platz: { $count }
chart-lines-nowhere = Zeilen ohne Platz: { $count }
chart-already = schon da: { $count }
chart-wrong = nicht zu übernehmen: { $count }
chart-say-unit = Angeben, in welcher Einheit Zahlen ohne Einheit sind: das wird nie geraten.
chart-laid-same = { $place }: schon da
chart-laid-takes = { $place }: übernimmt { $text }
chart-laid-wrong = { $place }: falsch, { $why }
chart-laid-now = { $told } (jetzt { $now })
chart-block-row = Zeile { $name } des Blocks
chart-block-size = Größe { $name } des Blocks
chart-block-new-row = neue Zeile { $name } des Blocks
chart-block-new-size = neue Größe { $name } des Blocks
chart-block-no-row = kein Platz für Zeile { $name }: { $why }
chart-block-no-size = kein Platz für Größe { $name }: { $why }
chart-not-taken = Nicht zu übernehmen
chart-not-taken-line = Zeile { $number }, { $place }: `{ $typed }`: { $why }
