### The same in German.
### From memory: no native pattern cutter has read these words yet.

## What comes on a cloth, and kept lay plans
kept-plan-no-size = eine Größe { $size } gibt es nicht mehr
kept-plan-width = die Breite `{ $width }` ist keine Länge über null
kept-plan-folded = die Breite des gefalteten Teils, `{ $width }`, ist keine Länge
on-cloth-no-material = ein Material namens { $material } gibt es nicht{ $known }
on-cloth-no-width = { $material } liegt { $wide } mm breit, und die Webkanten lassen davon nichts übrig; breiteren Stoff oder schmalere Webkanten angeben
on-cloth-no-number = { $what } von { $material } lässt sich in Größe { $size } nicht berechnen; nachsehen, was `proof` dazu sagt
on-cloth-no-outline = { $piece } lässt sich in Größe { $size } nicht legen: { $problem }
on-cloth-no-strip = der Streifen { $strip } lässt sich in Größe { $size } nicht legen: seine Länge oder seine Breite lässt sich nicht berechnen
on-cloth-nothing = nichts wird aus { $material } zugeschnitten; beim Zuschnitt eines Schnittteils oder Streifens angeben, dass es so ist
on-cloth-nothing-in-view = nichts wird in der Variante { $view } aus { $material } zugeschnitten; beim Zuschnitt eines Schnittteils oder Streifens angeben, dass es so ist
on-cloth-no-size = keine Größe ist verlangt
on-cloth-none = : der Entwurf hat keines
on-cloth-known = ; die Materialien sind { $known }
on-cloth-selvedge = die Webkante
on-cloth-shrinkage-along = das Einlaufen im Fadenlauf
on-cloth-shrinkage-across = das Einlaufen quer dazu
on-cloth-folded = die Breite des gefalteten Teils
on-cloth-gap = der Abstand zwischen den Schnittteilen
on-cloth-sold-in = der Schritt, in dem verkauft wird
on-cloth-not-drawn = es lässt sich dort nicht zeichnen; nachsehen, was `proof` dazu sagt
on-cloth-no-grain = sein Fadenlauf lässt sich nicht berechnen
on-cloth-cut-line = seine Schnittlinie ist kein Umriss
on-cloth-no-cut-line = es hat keine Schnittlinie
cut-nothing-left = seine Nahtzugaben lassen keinen Umriss übrig, der sich zuschneiden ließe
cut-shrinks = sein Stoff würde um weniger als nichts oder um mehr als die Hälfte einlaufen
setting-angle = ein Winkel wie `1 deg`
setting-length = eine Länge wie `1 mm`

## Findings about the whole draft
found-seam = Naht { $seam }
found-condition = Bedingung { $name }
found-measure = Fertigmaß { $name }
block-author-and-licence = Urheber und Lizenz
block-author = Urheber
block-licence = Lizenz
cut-its-cloth = „eigener Stoff“
cut-heading-of = `heading` von { $line }
hem-second-turn = { $edge }, zweiter Umschlag
hem-turn-deep = der zweite Umschlag von { $name } ist tiefer als der Saum
hem-turn-in = { $name } hat ein `turn_in`, das für Säume mit `turns: 2` ist
cut-not-set-off = er lässt sich nicht versetzen
cut-near = , bei { $right } mm nach rechts und { $down } mm nach unten
takes-darts-and-pleats = den Abnähern und Falten
takes-darts = den Abnähern
takes-pleats = den Falten
kept-plan-no-view-without-name = eine Variante ohne Namen gibt es nicht
kept-plan-no-view = eine Variante { $view } gibt es nicht
kept-plan-others-now = Umrisse, Anzahlen, der Stoff oder die Stellen darin sind jetzt andere
kept-plan-cloth-laid = { $cloth }, { $laid }
kept-plan-cloth-nap = { $cloth }, mit Strich
kept-plan-cloth-view = { $cloth } (Variante { $view })
meant-least = mindestens { $least }
meant-most = höchstens { $most }
meant-between = { $least } bis { $most }
unchecked-unknown = `{ $code }` ist kein Name einer Prüfung, die sich abschalten lässt
unchecked-no-reason = die Prüfung `{ $code }` ist ohne Begründung abgeschaltet
looked-at = geprüft: { $seams ->
        [one] 1 Naht
       *[other] { $seams } Nähte
    }, { $conditions ->
        [one] 1 Bedingung
       *[other] { $conditions } Bedingungen
    }, Linien, die über Nähte laufen, Schnittlinien, Passzeichen, Bruchlinien und Säume, { $cuts ->
        [one] 1 Zuschnitt
       *[other] { $cuts } Zuschnitte
    }, { $measures ->
        [one] 1 Fertigmaß
       *[other] { $measures } Fertigmaße
    }, in { $sizes ->
        [one] 1 Größe
       *[other] { $sizes } Größen
    }{ $views }{ $off }{ $plans }; nicht geprüft: wie Stoff sich verhält, der Wortlaut von Beschriftungen und Anleitung
looked-at-plans = ; ob { $count ->
        [one] 1 Schnittbild noch zu den Schnittteilen gehört
       *[other] { $count } Schnittbilder noch zu den Schnittteilen gehören
    }
looked-at-off = ; abgeschaltet: { $codes }
looked-at-views = {" "}von { $count ->
        [one] 1 Variante
       *[other] { $count } Varianten
    }
side-word-one = Seite eins
side-word-two = Seite zwei
notch-beyond = er läge jenseits des Endes
notch-in-mouth = er fällt in die Öffnung von { $dart }
notch-point-off = sein Punkt liegt nicht auf dieser Seite
notch-other-piece = sein Punkt gehört zu einem Schnittteil, das nicht auf dieser Seite ist; mit `on` die andere Seite angeben
notch-away = { $problem }, { $by } mm entfernt
notch-made = (gemacht)
notch-seams-alike = die Nähte { $seams }
strip-no-material = der Streifen wird aus `{ $material }` zugeschnitten, aber kein Material heißt so
strip-along = längs
strip-across = quer
odd-length = die Länge von { $edge }
odd-corner = die Ecke bei { $corner }
found-stretch = Strecke { $number } der Naht { $seam }
seam-stretch-one = Strecke { $number } endet auf Seite eins, bevor sie anfängt
seam-stretch-two = Strecke { $number } endet auf Seite zwei, bevor sie anfängt
seam-equal = gleich
seam-too-long = { $by } zu lang
seam-too-short = { $by } zu kurz
seam-gathered = gekräuselt
seam-stretched = gedehnt
unused-sheets = Stellen auf eigenen Bögen

## Care: what is told to the designer alone
care-ages-typed = „{ $from }“ bis „{ $to }“
care-is-cord = { $name } ist eine Kordel
care-is-hood = { $name } ist eine Kapuze
care-is-sleepwear = es ist Nachtwäsche
care-no-girths = kein Umfang ist genannt für: { $places } (`care.girths`)
care-no-rule-sizes = keine einzelne Größe der Regeln ist genannt für: { $sizes } (`care.rule_sizes`)
care-and-also = { $first }, und { $last }
care-rule-size = es ist keine Größe der Regeln: 2T, 4, 6X, 12, 12-14, L, XL oder 18-24 mo schreiben
care-no-size = die Maßtabelle hat keine solche Größe
care-youngest = das jüngste Kind ist älter als das älteste
care-write-ages = Jahre oder Monate schreiben, etwa 2 years oder 18 months, höchstens 21 years

## Why a text was not read as a draft
refused-no-draft = das ist kein Entwurf: { $found }, erwartet wird { $expected }
refused-newer = von einer neueren Version { $found } geschrieben; diese liest { $expected }
refused-most = Zeile { $line }, Spalte { $column }: gefunden { $found }, höchstens { $expected }
refused = Zeile { $line }, Spalte { $column }: gefunden { $found }, erwartet { $expected }
refused-most-at = Zeile { $line }, Spalte { $column }, bei `{ $path }`: gefunden { $found }, höchstens { $expected }
refused-at = Zeile { $line }, Spalte { $column }, bei `{ $path }`: gefunden { $found }, erwartet { $expected }
refused-unknown-field = das unbekannte Feld `{ $found }`
refused-unknown-word = das unbekannte Wort `{ $found }`
refused-field-twice = das Feld `{ $field }` ein zweites Mal
refused-once = es einmal
refused-stands-already = es steht schon in Zeile { $line }
refused-a-group = eine Gruppe
refused-field-missing = { $group } ohne das Feld `{ $field }`
refused-wants-text = ein Text in Anführungszeichen
refused-write-quoted = "{ $word }" schreiben
refused-wants-whole = eine ganze Zahl von 0 bis 4294967295
refused-wants-truth = `true` oder `false`
refused-wants-list = eine Liste `[ … ]`
refused-single-entry = auch ein einzelner Eintrag steht in `[ ]`
refused-wants-bare-group = eine Gruppe `( … )` ohne ein Wort davor
refused-wants-group = eine Gruppe `( … )`
refused-write-group = `{ $word }(…)` schreiben
refused-wants-field = der Name eines Felds und `:`
refused-wants-word = ein bloßes Wort
refused-entries = { $given } seiner Einträge
refused-too-many = { $sign }, eines zu viel
refused-behind-word = { $sign } hinter einem bloßen Wort
refused-comma-or = `,` oder `{ $close }`
refused-escape-letter = ein Text mit einem `\u` oder `\x`, das keinen Buchstaben nennt
refused-wants-letter-number = die Nummer eines Buchstabens, wie in `\u{"{"}e9{"}"}`
refused-backslash = ein Backslash selbst wird doppelt geschrieben
refused-unreadable = etwas Unlesbares ({ $problem })
refused-wants-draft = ein Entwurf
refused-one-of = eines von { $words }
refused-meant = ist `{ $near }` gemeint?
refused-write-bare = ohne Anführungszeichen schreiben: { $word }
refused-other-format = sein Format ist { $format }
refused-no-format = sein Format ist nicht gesagt
refused-no-version = keine `version`
refused-up-to = bis Version { $version }
refused-open-newer = mit einem neueren Tracewheel öffnen
refused-empty = er ist leer
refused-begins = die Datei beginnt mit `{ $shown }`
refused-nothing-more = nichts mehr
refused-closed-early = der Entwurf endet davor: ist eine Klammer zu früh geschlossen?
refused-without-quotes = er steht ohne Anführungszeichen
refused-name-of-field = der Name eines Felds
refused-after-word = { $sign } nach dem Wort `{ $word }`
refused-counts = Anzahlen sind ganze Zahlen; alles andere ist ein Text in Anführungszeichen: "{ $number }"
refused-text-or-number = ein Text oder eine ganze Zahl
refused-any-value = ein Text, ein Wort, eine ganze Zahl, `(` oder `[`
refused-plain-word = ein Wort aus Buchstaben, Ziffern und `_`
refused-plain-meant = ist `{ $plain }` gemeint, oder ein Text in Anführungszeichen?
refused-still-open = die `{ $bracket }` in Zeile { $line }, Spalte { $column } ist noch offen
refused-still-open-end = die `{ $bracket }` in Zeile { $line }, Spalte { $column } ist noch offen: ist die Datei abgeschnitten?
refused-is-group = eine Gruppe `(`
refused-is-list = eine Liste `[`
refused-is-text = der Text { $short }
refused-is-word = das Wort `{ $short }`
refused-is-number = die Zahl `{ $short }`
refused-is-end = das Ende der Datei
refused-comma-missing = fehlt davor ein Komma?
refused-long-text = der Text, der in Zeile { $line }, Spalte { $column } beginnt, endet in Zeile { $last }: fehlt sein schließendes Anführungszeichen?
refused-sign = ein Zeichen eines Entwurfs
refused-open-text = ein Text, der nie endet
refused-closing-quote = ein schließendes Anführungszeichen `"`
refused-cut-or-quote = ist die Datei abgeschnitten, oder fehlt ein Anführungszeichen?
refused-open-comment = ein Kommentar, der nie endet
refused-closing-comment = sein schließendes `*/`
refused-cut-off = ist die Datei abgeschnitten?
refused-escape = `\{ $letter }` in einem Text
refused-wants-escape = `\\`, `\"`, `\n` oder `\t`
refused-the-letter = das Zeichen U+{ $code }
refused-straight-quotes = Texte stehen in geraden Anführungszeichen: "…"
refused-brackets = Felder stehen in runden Klammern, Listen in eckigen
refused-no-blank = es ist kein Leerzeichen, obwohl es so aussieht: ersetzen
refused-damaged = die Datei ist beschädigt
refused-quotes-missing = gehört es zu einem Text, dessen Anführungszeichen fehlen?

## Limits of the reader: what is counted, and what to do
limit-split = den Entwurf in zwei teilen
limit-fewer = einige herausnehmen
limit-bytes = Bytes
limit-delete = sie löschen
limit-brackets = Klammern ineinander
limit-take-brackets = die überflüssigen Klammern herausnehmen
limit-groups = Gruppen und Listen in der Datei
limit-letters = Buchstaben in einer Formel, einem Namen oder einer Bezeichnung
limit-name-parts = ihren Teilen Namen als Werte oder Punkte geben
limit-text = Buchstaben in einem Text
limit-shorten = ihn kürzen
limit-split-piece = das Schnittteil teilen
limit-by = Einträge in `by`
limit-split-edge = die Kante teilen
limit-through = Punkte in `through`
limit-split-curve = die Kurve teilen
limit-two-goes = das Schnittteil in zwei Gängen ableiten
limit-booklet = Schritte in der Anleitung
limit-entries = Einträge
limit-pieces = Schnittteile
limit-drawings = Zeichnungen
limit-points = Punkte
limit-edges = Kanten
limit-lines = Linien
limit-sizes = Größen
limit-rows = Zeilen
limit-cells = Zellen
limit-persons = Personen
limit-values = Werte
limit-seams = Nähte
limit-conditions = Bedingungen
limit-measures = Maße
limit-steps = Schritte
limit-places = Stellen

## Why a file was not opened or saved
file-error-missing = eine Datei `{ $path }` gibt es nicht; Namen und Ordner nachsehen
file-error-no-folder = einen Ordner `{ $folder }` gibt es nicht; ihn anlegen oder anderswo speichern
file-error-is-folder = `{ $path }` ist ein Ordner; den Namen einer Datei darin angeben
file-error-not-plain = `{ $path }` ist keine gewöhnliche Datei; eine andere wählen
file-error-links = die Verknüpfungen von `{ $path }` führen nirgendwohin; die Datei selbst wählen
file-error-denied = keine Berechtigung für `{ $path }`; die Rechte ändern oder einen anderen Ort wählen
file-error-protected = `{ $path }` ist schreibgeschützt; den Schutz aufheben oder unter anderem Namen speichern
file-error-full = der Datenträger ist voll, `{ $path }` wurde nicht gespeichert und ist wie zuvor; Platz schaffen oder anderswo speichern
file-error-removed-outside = `{ $path }` wurde seit dem Öffnen von einem anderen Programm entfernt; unter anderem Namen speichern oder überschreiben
file-error-changed-outside = `{ $path }` wurde seit dem Öffnen von einem anderen Programm geändert; unter anderem Namen speichern oder überschreiben
file-error-too-long = `{ $path }` ist länger als { $most } Bytes, so viel wird höchstens gelesen; es ist kaum ein Entwurf
file-error-no-text = `{ $path }` ist kein Entwurf: Byte { $at } ist kein Text in UTF-8; eine andere Datei wählen
file-error-unreadable = `{ $path }` wurde nicht gespeichert und ist wie zuvor: der Entwurf ließ sich nicht wieder öffnen ({ $error })
file-error-not-as-written = `{ $path }` wurde nicht gespeichert und ist wie zuvor: das Zurücklesen ergab einen anderen Text; anderswo speichern
file-error-not-confirmed = `{ $path }` ist gespeichert, aber das System hat es nicht bestätigt ({ $error }); noch einmal speichern
file-error-not-saved = `{ $path }` ließ sich nicht speichern: { $error }; noch einmal versuchen oder einen anderen Ort wählen
file-error-not-read = `{ $path }` ließ sich nicht lesen: { $error }; noch einmal versuchen oder einen anderen Ort wählen
own-too-long = sie hat mehr als { $most } Bytes
own-no-text = sie ist kein Text in UTF-8
own-line = Zeile { $line }: { $problem }
own-too-many-aside = dort wurden zu viele Dateien beiseitegelegt

## Outlines of a drawing
svg-not-read = { $path } lässt sich nicht lesen: { $problem }
svg-too-large = die Datei hat mehr als { $most } Bytes; die Umrisse allein, ohne Bilder, in einer eigenen Datei speichern
svg-packed = die Datei ist gepackt (svgz): erst entpacken oder als einfaches SVG speichern
svg-letters = die Datei ist ab Byte { $byte } kein Text in UTF-8; als einfaches SVG in UTF-8 speichern
svg-xml = die Datei ist kein wohlgeformtes XML: { $problem }
svg-kind = die Datei beginnt mit `{ $word }`, nicht mit `svg`: sie ist keine SVG-Zeichnung
svg-nothing = in der Datei ist kein Umriss{ $left_out }
svg-moving-styles = Stile, die etwas verschieben: was sie verschieben, liegt, wo es ohne sie läge
svg-view-box = viewBox="{ $text }", das sich nicht lesen lässt
svg-no-side = die Datei nennt kein { $name }
svg-no-length = { $name }="{ $text }" ist keine Länge
svg-no-unit = { $name }="{ $text }" hat keine Einheit
svg-px = { $name }="{ $text }" ist in px, die keine sichere Größe haben
svg-no-size = { $name }="{ $text }" nennt keine Größe
svg-size-no-view-box = die Datei nennt eine Größe, aber keine viewBox, die sagt, wie viele Einheiten das sind
svg-scales-differ = eine Einheit wäre { $across } mm nach der Breite und { $down } mm nach der Höhe der Datei
svg-groups-deep = Gruppen liegen mehr als { $most } tief ineinander; Gruppierung aufheben und noch einmal speichern
svg-elements = die Datei zeichnet mehr als { $most } Elemente; die Umrisse allein in einer eigenen Datei speichern
svg-style-sheets = Stilvorlagen
svg-texts = Texte
svg-pictures = Bilder
svg-hidden = verborgene Elemente
svg-moved-by-style = durch einen Stil verschobene Elemente; er wird nicht gelesen, sie sind weggelassen
svg-styles = Stile von Elementen
svg-clipped = Umrisse, die die Datei an einem anderen abschneidet; sie sind ganz genommen
svg-transform = Elemente, deren transform sich nicht lesen lässt; sie sind weggelassen
svg-inner-no-size = sie hat eine viewBox, aber keine Größe
svg-numbers-large = Umrisse mit zu großen Zahlen
svg-without-size = Umrisse ohne jede Ausdehnung
svg-unknown-kind = Elemente der Art `{ $kind }`, die nicht bekannt ist
svg-unread-named = ein { $kind } "{ $name }", das sich nicht lesen lässt ({ $problem })
svg-unread = ein { $kind }, das sich nicht lesen lässt ({ $problem })
svg-inner = eine Zeichnung in der Zeichnung, die sich nicht einsetzen lässt ({ $problem })
svg-use-outside = ein `use` von "{ $link }", das nicht in dieser Datei ist; nichts außerhalb wird gelesen
svg-use-missing = ein `use` von "#{ $id }", das nicht in der Datei ist
svg-use-itself = ein `use` von "#{ $id }" in sich selbst
svg-use-not-placed = ein `use`, das sich nicht einsetzen lässt ({ $problem })
svg-uses-deep = die Datei zeichnet etwas mehr als { $most } tief ineinander noch einmal
svg-stretches = Umrisse aus mehr als { $most } Strecken, die keine Kante fassen kann; erst vereinfachen
svg-outlines = in der Datei sind mehr als { $most } Umrisse; die Schnittteile allein in einer eigenen Datei speichern
svg-left-out = ; weggelassen: { $notes }
svg-share = { $name }="{ $text }" ist ein Anteil einer Größe, die nicht genannt ist
svg-letter-size = { $name }="{ $text }" hängt an der Größe von Buchstaben
svg-side-large = { $name } ist zu groß
svg-number-large = eine Zahl ist zu groß
svg-no-file = es ist keine Datei
