### The same in German. From memory: no native tailor has read these words yet.
### Terms: Schnittbild (lay plan), Lage (layer), Stoffbruch (fold of the cloth), Webkante (selvedge), Abschnitt (stretch of cloth).

## Why something cannot be laid
lay-too-wide = { $piece } passt nicht: quer zum Stoff misst es in der schmalsten Lage { $least }, und Platz ist { $room }; { $done }
lay-too-wide-in = { $piece } passt in Größe { $size } nicht: quer zum Stoff misst es in der schmalsten Lage { $least }, und Platz ist { $room }; { $done }
lay-wide-cloth = mindestens { $width } breiten Stoff nehmen
lay-wide-lengthwise = oder mit der Länge entlang des Stoffs zuschneiden, dann misst es quer { $width }
lay-wide-halves = oder auf offenem Stoff in zwei Hälften mit einer Naht auflegen
lay-wide-joined = oder aus { $pieces } Stücken zusammensetzen
lay-border = { $piece } kann nicht an der Bordüre liegen: so wie der Pfeil zeigt, weist die Kante für die Bordüre zur anderen Seite; den Fadenlauf um eine halbe Drehung wenden oder beide Richtungen zulassen
lay-border-in = { $piece } kann in Größe { $size } nicht an der Bordüre liegen: so wie der Pfeil zeigt, weist die Kante für die Bordüre zur anderen Seite; den Fadenlauf um eine halbe Drehung wenden oder beide Richtungen zulassen
lay-strip = der Streifen { $strip } passt nicht auf den Stoff: { $why }
lay-strip-in = der Streifen { $strip } passt in Größe { $size } nicht auf den Stoff: { $why }
lay-strip-not-joined = er ist länger als das längste Stück, { $most }, und nicht gesagt ist, wie er angesetzt wird; die Zugabe der Ansatznähte angeben
lay-strip-narrow = { $usable } zwischen den Webkanten reichen nicht; breiteren Stoff nehmen
lay-not-found = in der Zeit wurde kein Schnittbild ohne Überlappung gefunden; mehr Zeit geben
lay-locked = Teile, die an ihrem Platz bleiben sollen, überlappen oder liegen neben dem Stoff; verschieben oder entsperren
lay-stale = die aufgelegten Teile oder der Stoff sind nicht mehr dieselben; neu auflegen
lay-faulty =
    { $count ->
        [one] an 1 Stelle lässt es sich so nicht zuschneiden; neu auflegen
       *[other] an { $count } Stellen lässt es sich so nicht zuschneiden; neu auflegen
    }

## What a person should know of a lay
lay-note-too-wide = { $piece } ist zu breit für den gefalteten Stoff.
lay-note-single = { $piece } liegt auf einfacher Stofflage.
lay-note-untold = Für { $piece } ist kein Fadenlauf angegeben: angenommen wird, dass er das Teil hinab verläuft.
lay-reason-nap = Mit Strich: alle Teile liegen mit dem Kopf in einer Richtung.
lay-reason-one-way = Nur in einer Richtung dürfen liegen: { $pieces }.
lay-reason-border = An der Bordüre liegen: { $pieces }.
lay-reason-behind = Auf einfacher Lage hinter dem gefalteten Stoff liegen: { $pieces }.
lay-reason-one-layer = Nur aus einer Lage zugeschnitten, die andere bleibt ganz: { $pieces }.
lay-reason-strips = Dazu kommt Stoff für diese Streifen: { $strips }.
lay-reason-washed = Vor dem Zuschneiden gewaschen: was der Stoff dabei verliert, ist mitgerechnet.

## Pictures of lays
lay-open = einfache Lage, rechte Stoffseite oben
lay-folded = längs gefaltet, rechts auf rechts
lay-to-middle = beide Webkanten zur Mitte gefaltet, rechts auf rechts
lay-part = teilweise gefaltet, dort rechts auf rechts; der Rest in einfacher Lage, rechte Stoffseite oben
lay-brief-open = offen
lay-brief-folded = längs gefaltet
lay-brief-to-middle = beide Webkanten zur Mitte
lay-brief-part = teilweise gefaltet
lay-selvedge = Webkante
lay-selvedges = Webkanten
lay-fold = Stoffbruch
lay-above = { $edge }: { $laid }
lay-above-nap = { $edge }: { $laid }; mit Strich: alle Pfeile zeigen nach rechts, wo die Säume sind
lay-below = { $edge }; dieser Abschnitt ist { $length } lang
lay-one-layer = aus einer Lage
lay-need = Gebraucht { $cm } ({ $yards }); zu kaufen { $buy_cm } oder { $buy_yards }.
lay-face-down = Grau: umgedreht, die bedruckte Seite des Schnitts liegt auf dem Stoff.
lay-on-fold = Teile am Stoffbruch sind halb gezeichnet und werden dort ganz zugeschnitten.
lay-twice = Andere Teile auf gefaltetem Stoff werden auf einmal doppelt zugeschnitten, gegengleich.
lay-said-of = { $names }: { $words }
lay-drawn = Gezeichnet 1 : { $scale }.
lay-scale = Maßstab 1 : { $scale }. Ein Buchstabe für jedes Teil; Pfeile verlaufen im Fadenlauf.
lay-cloth = { $name } { $width } breit, { $laid }
lay-cloth-nap = { $name } { $width } breit, { $laid }, mit Strich
lay-figure-says = Schnittbilder auf { $cloth }. { $plans }

## Tables of cloth to buy
lay-table = Stoffbedarf
lay-table-before = Stofflängen aus Schnittbildern, jede mit eigener Zeichnung, für ein Kleidungsstück.
lay-table-needed = gebraucht
lay-table-metre = zu kaufen, nach Metern
lay-table-yard = zu kaufen, nach Yards
lay-table-together = Stoff für mehrere Kleidungsstücke zusammen
lay-table-garments = Kleidungsstücke
lay-table-cloth = { $cloth }, { $width } breit
lay-table-nap = mit Strich
lay-tells-nothing = Das Schnittbild { $plan } sagt nichts: { $why }
lay-title = Schnittbilder
lay-title-of = Schnittbilder – { $garment }

## Why something cannot be written
output-piece = Schnittteil { $piece }
output-piece-in = Schnittteil { $piece } in Größe { $size }
output-no-pieces-file = es gibt keine Schnittteile zu schreiben; eines zeichnen oder andere Schnittteile oder Größen wählen
output-unwritten = { $piece } hat keinen Umriss, der sich schreiben lässt; zuerst nach seinen Befunden sehen
output-drawing-empty = die Zeichnung { $title } ist { $width } x { $height } mm groß; beide Seiten müssen über null sein
output-drawing-place = in der Zeichnung { $title } liegt etwas an einer Stelle, die keine brauchbare Zahl ist; die Form dahinter wurde nicht berechnet
output-no-page = es gibt keine Seite zu schreiben; mindestens eine zeichnen
output-page-empty = Seite { $page } ist { $width } x { $height } mm groß; beide Seiten müssen über null sein
output-page-large = Seite { $page } ist { $width } x { $height } mm groß, { $too_much }; eine PDF-Seite misst in jeder Richtung höchstens { $most } mm: auf mehrere Seiten verteilen
output-too-wide = { $wide } mm zu breit
output-too-high = { $high } mm zu hoch
output-too-wide-and-high = { $wide } mm zu breit und { $high } mm zu hoch
output-page-place = auf Seite { $page } liegt etwas an einer Stelle, die keine brauchbare Zahl ist; die Form dahinter wurde nicht berechnet
output-font = die eingebaute Schrift lässt sich nicht in die Datei schreiben: { $problem }; das Programm ist beschädigt oder hat einen Fehler, bitte melden
output-photo-large = es hat { $bytes } Bytes; höchstens { $most } werden gelesen: kleiner speichern
output-photo-unread = es lässt sich nicht als PNG- oder JPEG-Bild lesen: { $problem }
output-photo-other = es ist eine andere Art von Datei
output-no-pieces = es gibt keine Schnittteile für den Bogen; eines zeichnen oder andere Schnittteile oder Größen wählen
output-width = eine Seite von { $width } mm Breite ist nicht möglich; { $least } bis { $most } mm angeben
output-margin = ein Rand von { $margin } mm lässt zu wenig von der Seite; 0 bis { $most } mm angeben
output-undrawn = { $piece } hat keinen Umriss, der sich zeichnen lässt; zuerst nach seinen Befunden sehen
output-piece-wide = { $piece } ist { $needed } mm breit, die Seite lässt aber nur { $room } mm; eine Seite von mindestens { $least } mm Breite angeben
output-piece-beyond = { $piece } ist { $needed } mm breit, die Seite lässt aber nur { $room } mm; eine Seite von mindestens { $least } mm Breite angeben (eine PDF-Seite misst höchstens { $most } mm: dieses Schnittteil braucht mehrere Seiten)
output-too-long = die Schnittteile brauchen eine Seite von { $height } mm Länge, { $over } mm mehr als die { $most } mm, die eine PDF-Seite haben kann; eine breitere Seite als { $width } mm angeben, oder weniger Größen oder Schnittteile
output-projected = ein Bild von { $width } x { $height } mm mit { $across } x { $down } Bildpunkten lässt sich nicht projizieren; nachmessen, was auf dem Tisch beleuchtet ist (jede Seite { $least } bis { $most } mm), und die Bildpunkte nachsehen
output-line-thin = Linien von { $line } mm Breite sind auf Stoff nicht zu sehen: ein Bildpunkt ist hier { $pixel } mm, also mindestens { $least } mm ({ $pixels } Bildpunkte) angeben oder die Breite dem Programm überlassen
output-common = benachbarte Stellungen können nicht { $common } mm gemeinsam haben; { $least } bis { $most } mm angeben
output-crowded = { $piece }: Linien benachbarter Größen liegen an { $count } seiner Kanten enger als { $apart } mm; die Größen einzeln drucken
output-narrower =
    wäre alles { $by } schmaler, sparte das bis zu { $count ->
        [one] 1 Seite
       *[other] { $count } Seiten
    }
output-lower =
    wäre alles { $by } niedriger, sparte das bis zu { $count ->
        [one] 1 Seite
       *[other] { $count } Seiten
    }

## Files and folders
output-folder-missing = den Ordner { $folder } gibt es nicht; zuerst anlegen oder einen anderen nennen
output-no-folder = { $folder } ist kein Ordner; einen Ordner nennen, in den geschrieben werden kann
output-folder-not-made = der Ordner { $folder } lässt sich nicht anlegen: { $why }; nichts wurde geschrieben
output-folder-exists = { $folder } gibt es schon und wird nie überschrieben; verschieben oder anderswohin schreiben; nichts wurde geschrieben
output-name-bad = { $name } kann hier kein Dateiname sein: { $problem }; nichts wurde geschrieben
output-name-bad-in-folder = { $name } kann kein Dateiname in einem Ordner sein: { $problem }; nichts wurde geschrieben
output-names-nothing = er nennt keine Datei
output-name-separates = er enthält ein Zeichen, das Ordner trennt
output-name-twice = er steht zweimal in der Liste
output-name-leads-elsewhere = ein Teil davon ist leer oder führt anderswohin
output-name-kept = dieser Name ist für die Zeit des Schreibens vergeben
output-in-the-way = { $file } ist ein Ordner, dort lässt sich keine Datei schreiben; verschieben oder anderswohin schreiben; nichts wurde geschrieben
output-unchanged = { $file } ließ sich nicht schreiben: { $why }; nichts wurde geändert
output-unwritten-file = { $file } ließ sich nicht schreiben: { $why }; nichts wurde geschrieben
output-none-replaced = { $file } ließ sich nicht an seinen Platz bringen: { $why }; nichts wurde geändert
output-some-replaced = { $file } ließ sich nicht an seinen Platz bringen: { $why }; schon neu: { $files }; noch einmal schreiben, damit alle vom selben Augenblick sind
output-disk-full = der Datenträger ist voll; Platz schaffen oder anderswohin schreiben
output-no-rights = dort darf nicht geschrieben werden; die Rechte ändern oder anderswohin schreiben
output-read-only = der Datenträger lässt sich nur lesen; anderswohin schreiben

## What differs between two drafts, besides what those who sew are told
fact-base-size = Basisgröße
fact-order-of-sizes = Reihenfolge der Größen
fact-checks-off = abgeschaltete Prüfungen
fact-silenced = stummgeschaltete Befunde
fact-silenced-at = { $code } bei { $at }
fact-table = wo Teile auf dem Tisch und auf Seiten liegen
fact-pictures = wie Bilder darunter liegen
fact-plans = Schnittbilder
fact-plan-cloth = Stoffbedarf des Schnittbilds { $plan }
fact-plan-need = { $exact }; zu kaufen { $buy } oder { $yards }
fact-plan-untold = nicht gesagt: es ist nicht von diesen Teilen
fact-fittings = Anproben
fact-releases = Ausgaben
fact-comes-about = wie er zustande kommt
fact-found = gefunden
fact-given = vorgegeben
fact-cut-count = { $count } Stück
fact-cut-outline = Umriss { $outline }
fact-cut-one-way = nur in einer Richtung
fact-cut-allowances = Nahtzugaben { $set }
fact-turn = Drehung
fact-turned-over = gewendet
fact-left-side = linke Seite
fact-right-side = rechte Seite
fact-must = was gelten muss
fact-whole-piece = das ganze Teil
part-kept = mit dem Entwurf bewahrt
fact-notch-told =
    { $count ->
        [one] 1 Strich, angegeben auf Seite { $side }
       *[other] { $count } Striche, angegeben auf Seite { $side }
    }
compare-differences =
    { $count ->
        [one] 1 Unterschied
       *[other] { $count } Unterschiede
    }
compare-notes =
    { $count ->
        [one] 1 Notiz
       *[other] { $count } Notizen
    }
compare-note = Notiz: { $part }
compare-none = keine Unterschiede
compare-no-sizes = keine Größe ist in beiden Entwürfen, also wurde keine Zahl verglichen
compare-not = nicht verglichen: { $part }: { $what } in { $sizes }: kein Entwurf berechnet es

## Plain choices of the file
choice-true = ja
choice-false = nein
choice-cm = cm
choice-mm = mm
choice-inch-eighths = Achtelzoll
choice-inch-sixteenths = Sechzehntelzoll
choice-english = Englisch
choice-german = Deutsch
choice-unstated = keine Angabe
choice-adult = Erwachsene
choice-body = Körper
choice-house = Haus
choice-slashed = aufgeschnitten
choice-cut-out = ausgeschnitten
choice-two-ended = mit zwei Enden
choice-to-start = zum Anfang
choice-to-end = zum Ende
choice-pairs = paarweise
choice-right-side-up = rechte Stoffseite oben
choice-wrong-side-up = linke Stoffseite oben
choice-full = ganz
choice-less-allowance = ohne Nahtzugabe
choice-block = Rechteck
choice-by-sewing = nach der Nähreihenfolge
choice-plain = einfach
choice-mitred = Briefecke
choice-across = quer
choice-circle = Kreis
choice-drill-hole = Bohrloch
choice-button = Knopf
choice-buttonhole = Knopfloch
choice-zip-end = Ende des Reißverschlusses
choice-place = Platz eines Teils
choice-text = Text
choice-to-one = zur ersten Seite
choice-to-two = zur zweiten Seite
choice-one = eins
choice-two = zwei
choice-equal = gleich
choice-cloth = Stoff
choice-lining = Futter
choice-interfacing = Einlage
choice-without = ohne
choice-with = mit
choice-open = offen
choice-folded = gefaltet
choice-folded-to-middle = zur Mitte gefaltet
choice-folded-part = teilweise gefaltet
choice-in-pieces = in den Teilen
choice-before-cutting = vor dem Zuschneiden
choice-along = längs
choice-bias = schräg
choice-band = Band
choice-binding = Einfassung
choice-elastic = Gummiband
choice-cord = Kordel
choice-neck = Hals
choice-waist = Taille
choice-hem = Saum
choice-elsewhere = anderswo
choice-laid = aufgelegt
choice-counted = gezählt

## The room of cloth: how a plan stands
cloth-title = Stoff
cloth-help-of = Stoff
cloth-looking = Die Schnittteile werden durchgesehen
cloth-not-computed = Der Entwurf lässt sich nicht berechnen, also lässt sich nichts auflegen.
cloth-not-planned = nicht geplant
cloth-searching = wird gesucht
cloth-found = gefunden
cloth-by-hand = von Hand
cloth-kept = behalten
cloth-stale = veraltet
cloth-does-not-fit = passt nicht
cloth-cannot-be-laid = nicht auflegbar
cloth-none-found = keines gefunden
cloth-others-now = die Schnittteile oder der Stoff sind inzwischen andere; neu planen
cloth-nothing = Noch wird nichts aus einem Stoff geschnitten. Ein Stoff braucht eine Breite, in der er verkauft wird, und ein Schnittteil oder einen Streifen, der daraus geschnitten wird: das steht auf den Karten von beiden.
cloth-add = Stoff hinzufügen …

## The room of cloth: its head
cloth-plan-all = Alle planen
cloth-stop = Anhalten
cloth-keep-all = Alle behalten
cloth-group = Größen zusammen …
cloth-width = Andere Breite …
cloth-longest = Längstes …
cloth-show-pieces = Schnittteile zeigen
cloth-settled = Suche: { $settled } von { $all } fertig
cloth-phase-first = zum ersten Mal gelegt
cloth-phase-explore = kürzere Längen werden versucht
cloth-phase-compress = wird zusammengeschoben
cloth-at = { $plan }: { $what }
cloth-at-best = { $plan }: { $what }, bisher bestes { $best }
cloth-moves = { $moves } Züge
cloth-lengths = Zu kaufende Längen
cloth-kept-of = { $kept } von { $all } behalten
cloth-many-open = { $count } nicht geplant
cloth-many-stale = { $count } veraltet: neu planen
cloth-many-never =
    { $count } { $count ->
        [one] passt nicht
       *[other] passen nicht
    }

## The room of cloth: the table
cloth-size = Größe
cloth-lies-nap = { $laid }, Strich
cloth-column = Stoff { $name } { $width }, { $lies }: seine Karte
cloth-column-hint = Seine Karte: Breiten, wie er liegt, Strich, Abstand zwischen Teilen, der Schritt, in dem er verkauft wird
cloth-take-group = { $sizes } aus der Tabelle nehmen
cloth-kept-for = Behalten für { $cloth }, was nicht auf der Karte steht:
cloth-take-out = Herausnehmen
cloth-take-plans = die Schnittbilder für { $cloth } herausnehmen
cloth-take-plans-hint = Nimmt diese Schnittbilder aus dem Entwurf; Rückgängig bringt sie zurück
cloth-lost = Das Schnittbild { $plan } gehört hier zu nichts: { $why }.

## The room of cloth: the plan
cloth-choose = Eine Zelle der Tabelle wählen, um ihr Schnittbild zu sehen; „Alle planen“ sucht alle.
cloth-buy = kaufen { $length }
cloth-lie-on = Teile liegen auf { $pieces }
cloth-lie-on-strips = Teile liegen auf { $pieces }, Streifen brauchen { $strips }
cloth-covered = { $share } % bedeckt
cloth-plan-it = Planen
cloth-plan-again = Neu planen
cloth-improve = Verbessern
cloth-keep = Behalten
cloth-turn-half = Halb drehen
cloth-turn-over = Wenden
cloth-lock = Sperren
cloth-unlock = Entsperren
cloth-arrows = Pfeile: { $step }
cloth-arrows-hint = Wie weit ein Pfeil das gewählte Teil schiebt; ein Klick nimmt den nächsten Schritt
cloth-is-stale = Dieses Schnittbild ist veraltet: { $why }.
cloth-being-sought = Es wird gesucht.
cloth-not-yet = Noch nicht geplant. „Planen“ sucht das kürzeste Schnittbild, neben dem Fenster.
cloth-more-faults =
    und { $count ->
        [one] 1 weiteres, das sich so nicht zuschneiden lässt
       *[other] { $count } weitere, die sich so nicht zuschneiden lassen
    }
cloth-hint = Ein Teil ziehen; R dreht es halb, O wendet es, L sperrt es, Pfeile schieben es. Neben den Teilen ziehen bewegt den Stoff, Rollen bringt näher, ein Doppelklick zeigt alles.
cloth-plan-of = das Schnittbild von { $plan }
cloth-sign-over = gewendet
cloth-locked = gesperrt
cloth-sign-fold = im Bruch
cloth-sign-layer = eine Lage
cloth-on-cloth = { $piece }, auf dem Stoff
cloth-cannot-cut = so nicht zuzuschneiden
cloth-is-double = durch beide Lagen geschnitten, { $count } Teile
cloth-is-half = die Hälfte liegt am Stoffbruch
cloth-is-one-layer = nur aus einer Lage geschnitten
cloth-is-border = an der Bordüre
cloth-is-over = gewendet
cloth-is-turned = halb gedreht
cloth-is-one-way = nur in einer Richtung
cloth-fold = Bruch
cloth-selvedge = Webkante
cloth-selvedges = Webkanten
cloth-both-selvedges = beide Webkanten
cloth-side-up = einfache Lage, rechte Seite oben
cloth-side-part = rechte Seite innen, wo er gefaltet ist
cloth-sides-together = doppelte Lage, rechts auf rechts
cloth-thread = Fadenlauf
cloth-thread-nap = Fadenlauf und Strich: wohin die Pfeile der Teile zeigen, zu den Säumen
cloth-measures = { $long } lang, { $wide } breit
cloth-as-drawn = wie gezeichnet

## The room of cloth: by hand
cloth-sought = dieses Schnittbild wird gerade gesucht; zuerst die Suche anhalten
cloth-is-locked = { $name } ist gesperrt; zuerst entsperren
cloth-no-further = { $name } kann quer zum Stoff nicht weiter
cloth-step-half = { $name } halb drehen
cloth-step-over = { $name } wenden
cloth-step-lock = { $name } sperren
cloth-step-unlock = { $name } entsperren
cloth-step-push = { $name } schieben
cloth-step-move = { $name } auf dem Stoff verschieben
cloth-step-improve = das Schnittbild verbessern
cloth-step-width = eine Breite von { $cloth } hinzufügen

## The room of cloth: what came of it
cloth-table-failed = die Stofftabelle ließ sich nicht machen: das Programm ist daran gescheitert
cloth-search-goes-on = eine Suche läuft; zuerst anhalten
cloth-still-looking = die Schnittteile werden noch durchgesehen; gleich noch einmal versuchen
cloth-nothing-shorter = { $plan }: nichts Kürzeres gefunden
cloth-found-all = { $many } von { $all } Schnittbildern sind gefunden; „Alle behalten“ schreibt sie in den Entwurf
cloth-found-some = { $many } von { $all } Schnittbildern sind gefunden, { $rest } wurden nicht gesucht; „Alle behalten“ schreibt sie in den Entwurf
cloth-plan-later = die Schnittteile werden durchgesehen; alle planen, sobald die Tabelle da ist
cloth-nothing-to-lay = es gibt nichts aufzulegen
cloth-none-kept = dafür ist kein Schnittbild behalten
cloth-cannot-keep = { $plan }: so lässt es sich nicht behalten, { $why }
cloth-no-plan = es gibt kein Schnittbild zu behalten; zuerst planen
cloth-kept-plans =
    { $count ->
        [one] 1 Schnittbild ist im Entwurf
       *[other] { $count } Schnittbilder sind im Entwurf
    }
cloth-group-stands = { $sizes } steht in der Tabelle; planen
cloth-none-yet = der Entwurf hat noch keinen Stoff; zuerst einen hinzufügen
cloth-unknown = einen Stoff { $cloth } gibt es nicht; es gibt { $known }
cloth-width-needed = eine Breite fehlt, etwa 140 cm

## The room of cloth: its dialogs
cloth-group-title = Größen zusammen auflegen
cloth-group-note = Mehrere Kleidungsstücke zusammen brauchen weniger Stoff als einzeln. Die Größen sind { $sizes }.
cloth-group-add = Zeile hinzufügen
cloth-group-sizes = Größen
cloth-group-hint = etwa 2 x S, 4 x M
cloth-width-title = Andere Breite eines Stoffs
cloth-width-note = Von Webkante zu Webkante, wie er verkauft wird. Wie er liegt, sein Strich und das Übrige stehen auf der Karte des Stoffs.
cloth-width-add = Breite hinzufügen
cloth-width-cloth = Stoff
cloth-width-field = Breite
cloth-width-hint = etwa 140 cm
cloth-its-name = Name
cloth-longest-title = Längstes aus so viel Stoff
cloth-longest-help-of = diesen Dialog
cloth-longest-about = Wie groß kann eine Länge des Entwurfs sein, damit alles noch auf den vorhandenen Stoff passt?
cloth-longest-value = Wert
cloth-longest-lengths = Längen: { $names }
cloth-longest-at-hand = vorhandener Stoff
cloth-longest-as = etwa 3 m oder 4 yd
cloth-longest-which = aus welchem Stoff
cloth-longest-of = aus { $cloth }
cloth-longest-size = in welcher Größe
cloth-longest-in-size = in Größe { $sizes }
cloth-longest-looking = Wird gesucht auf { $cloth }.
cloth-longest-look = Suchen
cloth-longest-put = In den Entwurf schreiben
cloth-longest-put-hint = Schreibt ihn in den Entwurf, an die Stelle der Formel; Rückgängig nimmt es zurück
cloth-good = Gut
cloth-cancel = Abbrechen
cloth-longest-already = danach wird schon gesucht
cloth-longest-have = `{ $text }` ist keine Stofflänge wie 3 m oder 4 yd
cloth-longest-choose = den Stoff und die Größe wählen
cloth-longest-lost = die Suche endete ohne Ergebnis
cloth-longest-tries =
    { $count ->
        [one] 1 Schnittbild wurde gelegt; eine längere Suche findet vielleicht etwas mehr.
       *[other] { $count } Schnittbilder wurden gelegt; eine längere Suche findet vielleicht etwas mehr.
    }
