### The same in German. Names of commands, flags and forms to be typed stay as they are.

## Common
cli-comments = { $file } enthält Kommentare, die beim Neuschreiben verloren gehen; `--comments keep` behält sie in der Notiz des Entwurfs, `--comments drop` verwirft sie. Nichts wurde geschrieben
cli-unread = { $file } lässt sich nicht lesen: { $problem }
cli-unprinted = die Ausgabe ist nicht vollständig: { $problem }; anderswohin ausgeben
cli-above-zero = `{ $flag }` braucht eine Zahl über null
cli-window = hier lässt sich kein Fenster öffnen ({ $reason }); es geht auch ohne, etwa mit `tracewheel proof { $file }` oder `tracewheel --help`
cli-window-file = DATEI

## Findings
cli-in-view = in Variante { $view }
cli-silenced = stummgeschaltet: { $reason }
cli-perhaps = vielleicht: { $formula }
cli-finding-off = lässt sich stummschalten oder in `settings.unchecked` abschalten
cli-finding-always = wird immer gesagt
cli-proof-counts =
    { $errors ->
        [one] 1 Fehler
       *[other] { $errors } Fehler
    }, { $warnings ->
        [one] 1 Warnung
       *[other] { $warnings } Warnungen
    }, { $notes ->
        [one] 1 Hinweis
       *[other] { $notes } Hinweise
    }

## Blocks
cli-block-none = aus anderen Entwürfen wurde kein Grundschnitt übernommen
cli-block-same = dort hat sich nichts geändert
cli-block-changed = dort geändert: { $parts }
cli-block-file = aus { $file }
cli-block-author = von { $author }
cli-block-unlicensed = keine Lizenz angegeben
cli-block = { $name }: { $from }; Schnittteile { $pieces }
cli-block-not = lässt sich nicht übernehmen: { $problem }
cli-block-wrong = danach wäre das falsch:
cli-block-would = die Übernahme würde ändern:
cli-block-keep = { $problem }: --keep here oder --keep there

## The chart
cli-chart-axis = die Achse { $axis } gibt es nicht; es gibt girth, cup, length
cli-chart-cell = `{ $cell }` braucht die Form ROW=LENGTH, etwa `bust=86cm`
cli-chart-row = Zeile
cli-chart-kind = Art
cli-chart-body = Körper
cli-chart-house = Haus
cli-chart-base = Basisgröße
cli-chart-guessed = geschätzt, nicht bestätigt

## Comparing
cli-compare-piece = keiner der Entwürfe hat ein Schnittteil oder eine Zeichnung { $piece }; es gibt { $known }

## The menu of the desktop
cli-desktop-none = dieses System kennt solche Menüeinträge nicht: mit seinen eigenen Mitteln eine Verknüpfung zum Programm anlegen
cli-desktop-home = weder XDG_DATA_HOME noch HOME sagt, wo die eigenen Dateien liegen
cli-desktop-lost = wo dieses Programm liegt, lässt sich nicht feststellen: { $problem }
cli-desktop-name = ein Menüeintrag kann das Programm { $program } nicht nennen: in einen Ordner aus einfachen Buchstaben legen
cli-desktop-removed = { $file } lässt sich nicht entfernen: { $problem }
cli-desktop-nothing = es gab keinen Eintrag zu entfernen
cli-desktop-login = nicht ausgeführt: { $programs }; der Eintrag erscheint nach der nächsten Anmeldung

## Cut lines, formats, functions, help
cli-finish-not = lässt sich nicht zeichnen
cli-finish-nothing = nichts wird zugeschnitten: kein Schnittteil sagt, aus welchem Stoff und wie oft
cli-finish-unsaid = nicht gesagt, wie es zugeschnitten wird
cli-format-is = { $file } hat schon die Standardform
cli-format-done = { $file } wurde in Standardform neu geschrieben
cli-function-gives = Ergibt: { $kind }.
cli-help-more = Mehr: `tracewheel help { $page }` ({ $title })
cli-help-none = auf keiner Hilfeseite steht `{ $words }`; `tracewheel help` zeigt alle Seiten
cli-help-several = auf { $count } Seiten steht `{ $words }`; eine davon mit ihrem Namen ausgeben, etwa `tracewheel help { $page }`:
cli-help-rest = und { $count } weitere
cli-help-contents = Eine Seite mit ihrem Namen ausgeben: `tracewheel help start`; beliebige Wörter finden die Seiten, auf denen sie stehen.

## Lay plans
cli-lay-no-time = { $name }: zum Auflegen fehlte die Zeit; mehr Zeit geben
cli-lay-short = { $name }: { $more } mehr werden gebraucht, als vorhanden sind
cli-lay-cannot = lässt sich nicht auflegen
cli-lay-not-yet = noch nicht aufgelegt
cli-lay-progress = { $name }: { $so_far } nach { $moves } Zügen
cli-lay-no-materials = der Entwurf hat keine Materialien, also lässt sich nichts auflegen; eines mit seinen Breiten hinzufügen
cli-lay-which = mit `--material` sagen, welches Material: { $materials }
cli-lay-unknown = das Material { $material } gibt es nicht; es gibt { $materials }
cli-lay-width = die Breite { $width } von { $material } lässt sich nicht berechnen
cli-lay-no-width = nicht gesagt ist, wie breit { $material } ist; `--width` angeben, etwa `--width 140cm`
cli-lay-nothing = nichts aufzulegen: keine Größe der Reihe in diesen Varianten
cli-lay-group = `--group "{ $text }"` braucht Größen mit ihrer Anzahl, etwa `--group "2 x S, 4 x M"`
cli-lay-vary = `--vary` antwortet für eine Größe und eine Breite auf einmal; das sind { $count }: `--size` und `--width` angeben
cli-lay-tries =
    { $count ->
        [one] 1 Schnittbild wurde gelegt, mit { $moves } Zügen.
       *[other] { $count } Schnittbilder wurden gelegt, mit je { $moves } Zügen.
    }
cli-lay-plan = Schnittbild
cli-lay-needed = gebraucht
cli-lay-buy = kaufen
cli-lay-covered = bedeckt
cli-lay-not-in-time = in der Zeit nicht aufgelegt
cli-lay-none = keines gefunden
cli-lay-not-fit = passt nicht
cli-lay-undrawn = es gibt kein Schnittbild zu zeichnen
cli-lay-unkept = es gibt kein Schnittbild zu behalten; nichts wurde geschrieben
cli-lay-kept =
    { $count ->
        [one] 1 Schnittbild in { $file } behalten
       *[other] { $count } Schnittbilder in { $file } behalten
    }

## Formulas
cli-measure-set = `--set { $set }` braucht die Form NAME=FORMULA, etwa `--set "bust_ease=10 cm"`
cli-measure-no-sizes = die Maßtabelle hat keine Größen, also lässt sich nichts berechnen; eine hinzufügen mit `tracewheel chart FILE add`
cli-measure-absent = `{ $formula }` nennt etwas, das die Variante { $view } nicht hat
cli-measure-not = nicht in jeder Größe: { $formulas }
cli-measure-size = Größe
cli-measure-view-size = Variante//Größe
cli-measure-pair = ({ $x }; { $y })
cli-measure-line = { $point } unter { $angle }°

## Publishing
cli-publish-blocked = Fehler stehen der Ausgabe im Weg; nichts wurde geschrieben. Ein Probemodell lässt sich trotzdem drucken
cli-publish-piece = das Schnittteil { $name } gibt es nicht
cli-publish-piece-near = das Schnittteil { $name } gibt es nicht; ist { $near } gemeint?
cli-publish-left-out = { $name } lässt sich in Größe { $size } nicht zeichnen und fehlt; warum, sagt `tracewheel proof { $file }`
cli-publish-no-lays = der Entwurf hat kein Schnittbild, das noch gilt; `tracewheel lay --keep` legt welche an; nichts wurde geschrieben
cli-publish-nothing = nichts lässt sich zeichnen; nichts wurde geschrieben
cli-publish-unread = `{ $call }` lässt sich nicht lesen; die Form ist `{ $example }`
cli-publish-no-sheets = den Bogen { $name } gibt es nicht; der Entwurf hat keine Bögen
cli-publish-sheet = den Bogen { $name } gibt es nicht; es gibt { $known }
cli-publish-sizes = { $count } Größen sind in einer Datei zum Zuschneiden nicht auseinanderzuhalten: höchstens { $most }, oder `--all-sizes` mit einer Ebene für jede
cli-tables-person = { $name } ist eine Person, keine Größe der Reihe: Personen stehen in keiner Tabelle
cli-tables-nothing = nichts für Tabellen: keine Größe der Reihe, oder keine Zeilen, Maße, Streifen, Zutaten und Zuschnitte

## Releases
cli-release-call = einen Entwurf nennen und mit `--out` den Ordner, in dem die Ausgabe liegen soll
cli-release-files =
    { $count ->
        [one] 1 Datei
       *[other] { $count } Dateien
    }
cli-release-unlogged = die Ausgabe steht, ließ sich aber nicht ins Protokoll des Entwurfs schreiben: { $problem }
cli-release-left-out = { $file } gehört nicht zur Ausgabe und wurde weggelassen
cli-release-stranger = { $file } gehört nicht zur Ausgabe
cli-release-checked =
    { $count ->
        [one] { $release }: 1 Datei, wie sie geschrieben wurde
       *[other] { $release }: { $count } Dateien, wie sie geschrieben wurden
    }

## Rolling
cli-roll-seam = die Naht { $seam } gibt es nicht; der Entwurf hat: { $all }
cli-roll-seam-near = die Naht { $seam } gibt es nicht; ist { $near } gemeint?
cli-roll-view = die Variante { $view } hat die Teile der Naht { $seam } nicht
cli-roll-cannot = die Naht { $seam } lässt sich dort nicht abrollen; warum, sagt `tracewheel proof { $file }`
cli-roll-notch = Passzeichen
cli-roll-apart = Abstand
cli-roll-end = Ende

## Outlines of an SVG file
cli-trace-outline = Umriss
cli-trace-name = Name
cli-trace-width = Breite
cli-trace-height = Höhe
cli-trace-units = { $units } Einheiten
cli-trace-crosses = kreuzt sich selbst
cli-trace-open =
    { $count ->
        [one] 1 offene Linie kommt mit dem Umriss, in dem sie liegt
       *[other] { $count } offene Linien kommen mit dem Umriss, in dem sie liegen
    }
cli-trace-scale = der Maßstab ist unbekannt: { $why }; mit --unit, --width oder --css-px angeben
cli-trace-note = weggelassen oder auffällig: { $note }
cli-trace-refused = { $problem }. Nichts wurde geschrieben
cli-trace-none = es gibt keinen geschlossenen Umriss, der sich nicht selbst kreuzt; nichts wurde geschrieben
cli-trace-unknown = den geschlossenen Umriss { $outline } gibt es nicht; es gibt { $known }
cli-trace-unscaled = { $problem } (--unit "0.5 mm", --width "20 cm" des ersten Umrisses, oder --css-px). Nichts wurde geschrieben
cli-trace-corner = --corner muss zwischen 0 und 180 Grad liegen
cli-trace-unit = eine Einheit der Datei ist { $mm } mm
