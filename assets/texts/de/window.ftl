### Alles im Fenster, was in keinem Raum und keiner Leiste für sich steht: Menüs, Dialoge, Meldungen, Befunde, Einführung, Hilfe, Veröffentlichen.

## Gemeinsam
cancel = Abbrechen
good = Gut
browse = Durchsuchen …
file-label = Datei
path-hint = ein Pfad
path-to-hint = ein Pfad zu einer Datei { $ending }
folder-label = Ordner
such-as = etwa { $example }
and-more = und { $count } weitere
file-needs-name = ein Name wird gebraucht
show-the-pieces = Schnittteile zeigen
cannot-be-computed = der Entwurf lässt sich nicht berechnen

## Dialoge, in denen etwas angelegt wird
ask-name = Name
ask-formula = Formel
ask-label = Bezeichnung
ask-size-note = Zeilen ohne Formel bekommen einen Vorschlag dafür, der in der Maßtabelle zu bestätigen ist.
ask-size-do = Größe anlegen
ask-size-after = nach welcher Größe
ask-size-after-hint = nach der Reihe der Zahlen, sonst die letzte
ask-size-axis = auf welcher Achse
ask-size-axis-hint = girth (Umfang), cup (Cup) oder length (Länge)
ask-person-note = Ein einzelner Körper: nicht in der Größenreihe, sondern daneben gezeigt.
ask-person-do = Person anlegen
ask-row-note = Eine Körperzeile ist ein Körpermaß und wird veröffentlicht; eine Hauszeile ist alles andere, was sich nach der Größe richtet.
ask-row-body = Körperzeile anlegen
ask-row-house = Hauszeile anlegen
ask-row-hint = etwa hüfte
ask-set-note = Ein Teil der Größenreihe unter eigenem Namen; seine Größen werden danach gewählt.
ask-set-do = Größengruppe anlegen
ask-set-hint = etwa kurzgröße
ask-value-note = Eine Zahl, eine Länge oder ein Winkel mit einem Namen.
ask-value-do = Wert anlegen
ask-value-hint = etwa zugabe_brust
ask-found-note = Das Programm findet ihn in jeder Größe so, dass die Nähte oder Bedingungen, die ihn nennen, erfüllt sind.
ask-found-hint = etwa kugelhöhe
ask-found-start = Anfang
ask-found-least = mindestens
ask-found-most = höchstens
ask-found-no-limit = keine Grenze
ask-piece-do = Schnittteil anlegen
ask-piece-hint = etwa vorderteil
ask-derive-note = Eine Kopie, die Schritt für Schritt zum Modell wird: der Grundschnitt lässt sich danach noch ändern, und sie folgt ihm.
ask-derive-do = Schnittteil ableiten
ask-derive-hint = etwa seitenteil
ask-derive-of = abgeleitet von
ask-derive-of-hint = ein Schnittteil
ask-point-note = Ein Punkt von { $piece }. Rechts und unten sind positiv.
ask-point-do = Punkt anlegen
ask-point-hint = etwa hals
ask-point-place = Ort
ask-point-place-hint = etwa hals.down(8 cm).right(brust / 4)
ask-edge-note = Eine gerade Kante zwischen Punkten von { $piece }; sie lässt sich danach biegen. Punkte: { $points }.
ask-edge-do = Kante anlegen
ask-edge-hint = etwa schulter
ask-edge-from = von
ask-edge-from-hint = ein Punkt
ask-edge-to = nach
ask-edge-to-hint = ein Punkt, oder mehrere der Reihe nach
ask-close-note = Eine gerade Kante vom letzten Punkt des Umrisses zum ersten.
ask-close-do = Schließen
ask-close-name = Name der Kante
ask-close-hint = etwa mitte
ask-seam-note = Beide Seiten beginnen am selben genähten Ende. Eine Kante, die andersherum läuft, wird reversed(vorderteil.seite) geschrieben.
ask-seam-do = Naht anlegen
ask-seam-hint = etwa seite
ask-seam-one = erste Seite
ask-seam-one-hint = etwa vorderteil.seite
ask-seam-two = zweite Seite
ask-seam-two-hint = etwa rückenteil.seite
ask-kept-by = erfüllt durch
ask-seam-kept-hint = nur überwacht
ask-view-note = Eine Ausführung des Kleidungsstücks. Sie hat zuerst alle Schnittteile; welche es sind und was Werte in ihr sagen, steht auf ihrer Karte.
ask-view-do = Variante anlegen
ask-view-hint = etwa ärmellos
ask-strip-note = Etwas, das auf Länge geschnitten wird. Was es ist, wie breit und wie angesetzt, steht auf seiner Karte.
ask-strip-do = Streifen anlegen
ask-strip-hint = etwa bundgummi
ask-strip-length = Länge
ask-strip-length-hint = fertig, von Naht zu Naht: etwa taille * 0.9
ask-notion-note = Etwas, das gekauft wird. Wie viele, und in welchen Größen es verkauft wird, steht auf seiner Karte.
ask-notion-do = Zutat anlegen
ask-notion-hint = etwa reißverschluss
ask-notion-size = Länge oder Größe
ask-notion-size-hint = etwa 20 cm; darf leer bleiben
ask-material-note = Woraus Schnittteile und Streifen geschnitten werden.
ask-material-cloth = Oberstoff anlegen
ask-material-lining = Futter anlegen
ask-material-interfacing = Einlage anlegen
ask-material-hint = etwa baumwolle
ask-step-note = Ein Nähschritt, hinter dem gewählten. Sein Text steht auf seiner Karte.
ask-step-do = Schritt anlegen
ask-step-heading = Überschrift
ask-step-hint = etwa Schulternähte schließen
ask-condition-note = Eine Gleichung, die gelten muss, oder ein Vergleich, der überwacht wird.
ask-condition-do = Bedingung anlegen
ask-condition-hint = etwa halsloch
ask-condition-holds = muss gelten
ask-condition-holds-hint = a = b oder a >= b
ask-condition-kept-hint = alle, von denen sie abhängt

## Dialoge, in denen etwas umbenannt, entfernt oder nachgesehen wird
ask-rename-title = { $part } umbenennen
ask-rename-note = Jede Formel, die den Namen nennt, folgt.
ask-rename-note-of = { $from } Jede Formel, die den Namen nennt, folgt.
ask-rename-do = Umbenennen
ask-rename-size-title = Größe { $size } umbenennen
ask-rename-size-note = Ihre Zahlen und jede Formel, die sie nennt, folgen.
ask-delete-size-title = Größe { $size } löschen
ask-delete-size-note =
    { $count ->
        [one] Ihre Zahl geht mit ihr; Rückgängig bringt sie zurück.
       *[other] Ihre { $count } Zahlen gehen mit ihr; Rückgängig bringt sie zurück.
    }
ask-delete-size-do = Größe löschen
ask-delete-title = { $part } löschen
ask-delete-step-note = Sein Text geht mit ihm; Rückgängig bringt ihn zurück.
ask-delete-unnamed = Nichts nennt den Namen.
ask-delete-do = Löschen
ask-used-by-all = Verwendet von: { $users }.
ask-delete-put-value = Stattdessen den jetzigen Wert einsetzen
ask-delete-break = Löschen, und was ihn verwendet, fehlerhaft lassen
ask-take-out-note = Was er erzeugt, wird verwendet von: { $users }.
ask-take-out-title = Schritt { $number } von { $piece } herausnehmen
ask-take-out-do = Herausnehmen, und was ihn verwendet, fehlerhaft lassen
ask-uses-title = Verwendet von und verwendet: { $part }
ask-uses-used-by = verwendet von { $place }
ask-uses-other = verwendet { $part }
ask-uses-nothing = Nichts nennt es, und es nennt nichts.
ask-listed-more = { $list } und { $count } weitere

## Dialoge, in denen eine Datei genannt wird
ask-open-title = Entwurf öffnen
ask-open-do = Öffnen
ask-compare-title = Mit einem anderen Entwurf vergleichen
ask-compare-note = Was anders ist, wird aufgezählt; seine Linien liegen unter den Schnittteilen. Er selbst wird nicht geändert.
ask-compare-do = Vergleichen
ask-save-as-title = Entwurf speichern als
ask-save-do = Speichern
ask-print-title = Seiten schreiben
ask-print-note = Was unter Bögen zu sehen ist, als PDF-Datei zum Drucken mit 100 %.
ask-write-do = Schreiben
ask-read-table-title = Zahlen aus einer Tabelle lesen
ask-read-table-note = Eine Tabelle, wie Tabellenkalkulationen sie speichern (CSV). Sie wird erst gezeigt, bevor etwas übernommen wird.
ask-read-do = Lesen
ask-write-table-title = Maßtabelle als Tabelle schreiben
ask-write-table-note = Zeilen, Größen und Personen als Text mit Kommas dazwischen, Zellen so, wie sie getippt wurden.
ask-unsaved-title = Erst speichern?
ask-unsaved-note = { $file } enthält Änderungen, die nicht gespeichert sind.
ask-unsaved-note-unnamed = Der Entwurf enthält Änderungen, die nicht gespeichert sind.
ask-unsaved-go-on = Ohne Speichern weiter
ask-this-dialog = diesem Dialog

## Was eine Handlung oder ein Dialog nach getaner Arbeit oder als Absage sagt
done-undone = rückgängig gemacht: { $label }
done-again = wiederholt: { $label }
done-bends-choose = ein Schnittteil oder eine Kante wählen, um die Krümmung zu sehen
done-taken-up = die liegen gebliebene Arbeit ist geöffnet; speichern, um sie zu behalten
done-saved = { $file } ist gespeichert
done-copy-open = eine Kopie von { $example } ist geöffnet; beim Speichern wird nach einem Namen gefragt
done-end-of-list = { $part } steht am Ende seiner Liste
done-no-axis = die Achsen sind girth (Umfang), cup (Cup) und length (Länge)
done-no-size-before = es gibt keine Größe { $size }, nach der sie stehen könnte
done-pages-written =
    { $count ->
        [one] 1 Seite ist
       *[other] { $count } Seiten sind
    } nach { $path } geschrieben
done-nothing-chosen-file = nichts gewählt; wo das System keinen Dialog zeigt, den Pfad eintippen
release-blocked = Fehler ({ $count }) verhindern eine Ausgabe; ein Probemodell lässt sich trotzdem drucken
comments-title = Kommentare gingen verloren
comments-note = Die Datei enthält Kommentare ({ $count }), die in der Standardform nicht erhalten bleiben.
comments-keep = Als Notiz des Entwurfs behalten
comments-drop = Ohne sie speichern
over-title = Überschreiben?
over-removed = { $path } wurde seit dem Öffnen von einem anderen Programm entfernt.
over-changed = { $path } wurde seit dem Öffnen von einem anderen Programm geändert.
over-there = Es gibt schon eine Datei { $path }.
over-other-name = Unter anderem Namen speichern
over-do = Überschreiben

## Warum eine Handlung jetzt nicht geht
why-nothing-chosen = nichts ist gewählt
why-no-change = noch ist nichts geändert
why-nothing-undone = nichts ist rückgängig gemacht
why-choose-part = { $chosen }; erst einen Teil des Entwurfs wählen
why-choose-in-order = erst eine Zeile der Maßtabelle, einen Streifen, eine Zutat, einen Stoff oder einen Schritt der Anleitung wählen
why-choose-piece = erst ein Schnittteil wählen
why-outline-closed = der Umriss ist geschlossen, oder es gibt noch keinen
why-choose-seam = erst eine Naht wählen
why-choose-size = erst eine Größe der Umfangsachse wählen
why-no-sizes = der Entwurf hat noch keine Größen
why-no-findings = kein Befund
why-no-proposals = es gibt keine vorgeschlagene Zahl
why-not-comparing = erst mit einem anderen Entwurf vergleichen
why-not-planning = es wird nichts gesucht
why-choose-plan = erst im Raum Stoff ein Schnittbild wählen (Ctrl+L)
why-choose-laid = erst ein Schnittteil auf dem Stoff wählen
why-no-plans = im Entwurf liegt kein Schnittbild

## Grundschnitte aus anderen Entwürfen
block-changed = Grundschnitt { $block } wurde in { $file } geändert: { $changes }.
block-untold = Ob Grundschnitt { $block } geändert wurde, lässt sich nicht sagen: { $problem }
block-all-same = an den Grundschnitten hat sich nichts geändert
block-to-see = nachgesehen: { $count } zu klären, siehe oben
block-where-title = Wo Grundschnitt { $block } liegt
block-where-note = Er wurde verschoben oder heißt anders. Was übernommen wurde, ist hier und wird berechnet.
block-where-do = Dort nachsehen
block-not-taken-over = das lässt sich nicht übernehmen: { $problem }
block-taken-over = Grundschnitt { $block } übernommen
block-save-first = erst diesen Entwurf speichern: ein Grundschnitt wird vom Ordner des Entwurfs aus gefunden
block-take-title = Grundschnitt aus einem anderen Entwurf übernehmen
block-take-note = Seine Schnittteile kommen mit den Werten, Nähten und Zeilen, die sie brauchen. Sie stehen dann in diesem Entwurf; ändert sich der andere, wird es gesagt und lässt sich übernehmen.
block-take-do = Übernehmen
block-take-name = Name des Grundschnitts
block-take-name-hint = wie seine Datei
block-take-pieces = Schnittteile
block-take-pieces-hint = alle
block-take-prefix = vor alle Namen gesetzt
block-take-prefix-hint = nichts, oder etwa grund_
block-caption = Grundschnitte aus anderen Entwürfen
block-from = { $block } aus { $file }
block-no-author = Urheber nicht gesagt
block-no-licence = Lizenz nicht gesagt
block-by = { $author }, { $licence }
block-by-edition = { $author }, { $licence }, Ausgabe { $edition }
block-not-looked = nicht nachgesehen: erst diesen Entwurf speichern
block-same-there = dort nichts geändert
block-changed-there = dort geändert: { $changes }
block-unreadable = seine Datei ist nicht lesbar
block-button = { $word } bei Grundschnitt { $block }
block-where = Wo er liegt …
block-untie = Ablösen
block-look-again = Grundschnitte neu nachsehen

## Die Anleitung
booklet-title = Anleitung
booklet-about = der Anleitung
booklet-no-steps = Es gibt noch keine Schritte: was hier steht, kommt von selbst aus dem Entwurf. Den ersten Nähschritt anlegen.
booklet-page = Seite { $number } der Anleitung: { $words }
booklet-step = Schritt { $step } der Anleitung, Seite { $page }: { $title }

## Inhalt
contents-draft = Entwurf
contents-about = dem Inhalt
contents-chart = Maßtabelle
contents-sizes =
    { $count ->
        [one] 1 Größe
       *[other] { $count } Größen
    }
contents-rows =
    { $count ->
        [one] 1 Zeile
       *[other] { $count } Zeilen
    }
contents-values = Werte
contents-some-found = { $all } · { $found } gef.
contents-found = gefunden
contents-drawings = Zeichnungen
contents-pieces = Schnittteile
contents-not-in-view = nicht in dieser Variante
contents-seams = Nähte
contents-seams-fine = { $count } · alle in Ordnung
contents-seams-off = { $count } · { $off } ansehen
contents-conditions = Bedingungen
contents-views = Varianten
contents-placements = Lagen
contents-sheets = Bögen
contents-in-file = { $count } · nur in der Datei
contents-strips = Streifen
contents-notions = Zutaten
contents-cloth = Stoff
contents-booklet = Anleitung
contents-log = Protokoll
contents-fittings =
    { $count ->
        [one] 1 Anprobe
       *[other] { $count } Anproben
    }
contents-kept = Anproben und Ausgaben
contents-fold = { $name } einklappen
contents-unfold = { $name } ausklappen

## Arten von Dateien, wo eine gesucht wird
files-drafts = Entwürfe
files-pictures = Bilder
files-outlines = Umrisse

## Was zu einem Feld gefunden wurde
field-put = { $text } einsetzen

## Die Befehlssuche
finder-hint = Ein Befehl, ein Punkt, eine Naht, eine Größe
finder-called = suchen
finder-nothing = Nichts mit diesem Namen.
finder-person = Person
finder-size = Größe
finder-recent = zuletzt geöffnet
finder-help = Hilfe

## Prüfung: die Befunde
proof-list-title = Prüfung
proof-list-about = der Prüfung
proof-list-first = Erste Befunde
proof-list-all = Alle { $count } Befunde
proof-list-nothing-yet = noch nichts zu prüfen
proof-list-errors =
    { $count ->
        [one] 1 Fehler
       *[other] { $count } Fehler
    }
proof-list-warnings =
    { $count ->
        [one] 1 Warnung
       *[other] { $count } Warnungen
    }
proof-list-notes =
    { $count ->
        [one] 1 Hinweis
       *[other] { $count } Hinweise
    }
proof-list-silenced = { $count } stummgeschaltet
proof-list-none = Kein Befund.
proof-list-rest = und { $count } weitere: der Befehl `proof` zählt alle auf

## Die Einführung: der erste Entwurf Schritt für Schritt
guide-sizes = Zwei Größen anlegen
guide-sizes-words = Eine Größe ist eine Spalte der Maßtabelle. Eine anlegen, etwa 88, mit dem + hinter „Größen“; dann eine zweite, etwa 96.
guide-row = Eine Zeile mit Zahlen anlegen
guide-row-words = Eine Zeile ist ein Körpermaß. In der Maßtabelle die Körperzeile „hüfte“ anlegen und für jede Größe eine Zahl mit Einheit eintippen, etwa 94 cm und 102 cm.
guide-piece = Ein Schnittteil beginnen
guide-piece-words = Ein Schnittteil anlegen, etwa „vorderteil“, mit dem + neben „Schnittteile“ im Inhalt. Es ist zuerst leer.
guide-points = Vier Punkte anlegen
guide-points-words = Anlegen: a bei (0 cm, 0 cm); b bei a.right(20 cm); c bei b.down(50 cm); d bei a.down(50 cm). Rechts und unten sind positiv. Oder mit dem Stift zeichnen: D.
guide-follow = Einen Punkt dem Körper folgen lassen
guide-follow-words = Die Formel von b in a.right(hüfte / 4) ändern: sie nennt die Zeile, also hat jede Größe nun ihre eigene Breite.
guide-edges = Kanten zwischen den Punkten anlegen
guide-edges-words = Bei gewähltem Schnittteil die Kante „taille“ von a nach b anlegen, dann „seite“ von b nach c, dann „saum“ von c nach d.
guide-close = Den Umriss schließen
guide-close-words = Die letzte Kante führt zum ersten Punkt zurück. Sie „mitte“ nennen. Ein geschlossener Umriss ist ein Schnittteil, das sich zuschneiden lässt.
guide-second = Ein zweites Schnittteil zeichnen
guide-second-words = Das Schnittteil „rückenteil“ beginnen und wie das erste zeichnen, bis auch sein Umriss geschlossen ist.
guide-seam = Eine Naht nähen
guide-seam-words = Die Naht „seite“ anlegen: die erste Seite ist vorderteil.seite, die zweite rückenteil.seite. Beide beginnen am selben genähten Ende.
guide-proof = Lesen, was die Prüfung sagt
guide-proof-words = Die Prüfung, unten, sieht sich jede Größe an. Ein Klick auf einen Fehler führt zu seiner Stelle, F1 sagt dann, was zu tun ist; weitermachen, bis keiner mehr da ist.
guide-save = Speichern
guide-save-words = Ctrl+S, oder „Speichern“ im Menü Entwurf. Die Datei ist reiner Text und enthält, was getippt wurde. Das war ein ganzer Entwurf.
guide-leave = Einführung verlassen
guide-about = der Einführung
guide-where = Zeigen, wo
guide-at = { $number } von { $all }: { $title }. { $words }
guide-at-done = { $number } von { $all }, erledigt: { $title }. { $words }
guide-all-done = Alles ist erledigt. Einen Punkt ziehen, eine Größe anlegen, eine Formel ändern: der Rest folgt.
guide-step-done = Schritt { $number }, erledigt: { $title }
guide-step-to-do = Schritt { $number }, zu tun: { $title }

## Hilfe
help-room-title = Hilfe
help-room-called = Hilfe zu { $of }
help-room-hint = Hilfe dazu
help-room-back = Zurück
help-room-back-called = zurück zur vorigen Seite
help-room-close = Hilfe schließen
help-room-about = dieser Hilfe
help-room-search = Alle Seiten durchsuchen
help-room-search-called = Hilfe durchsuchen
help-room-none = Keine Seite enthält diese Wörter.
help-room-page = Seite { $page }
help-room-link = zu { $page }
help-room-no-page = es gibt keine Hilfeseite mit dem Namen { $page }

## Veröffentlichen neben dem Fenster
job-ended = der Druck endete ohne Ergebnis
job-nothing = nichts lässt sich zeichnen; nichts wurde geschrieben
job-written =
    { $count ->
        [one] 1 Datei ist
       *[other] { $count } Dateien sind
    } nach { $folder } geschrieben
piece-left-out = { $piece } lässt sich in Größe { $size } nicht zeichnen und fehlt

## Zeilen über dem Tisch, die eine Antwort wollen
notice-throw-away = Wegwerfen
notice-take-up = Wieder aufnehmen
notice-published = Wird veröffentlicht: { $done } von { $all } Dateien sind fertig.
notice-stop = Anhalten
notice-laying = Schnittbilder werden gesucht.
notice-stop-search = Suche anhalten
notice-see-cloth = Stoff ansehen
notice-outside = { $what }, seit er geöffnet wurde.
notice-keep-here = Behalten, was hier ist
notice-load-again = Neu laden
notice-not-now = Jetzt nicht
notice-where = Sagen, wo er liegt …
notice-take-over = Übernehmen
notice-take-all = Alles übernehmen
notice-keep-changes = Hier Geändertes behalten
notice-show-change = Zeigen, was sich ändern würde
ago-now = eben
ago-minutes =
    vor { $count ->
        [one] 1 Minute
       *[other] { $count } Minuten
    }
ago-hours = vor { $count } Stunden
ago-days = vor { $count } Tagen
ago-some-time = vor einiger Zeit
left-behind = Nicht gespeicherte Arbeit blieb { $ago } liegen: { $title } ({ $from }).
left-never-saved = nie gespeichert
left-unreadable = Nicht gespeicherte Arbeit blieb { $ago } liegen und ist nicht lesbar ({ $problem }); sie liegt in { $path }.

## Änderungen, wie das Fenster sie beim Rückgängigmachen nennt
step-on-pages = { $piece } auf den Seiten verschieben
step-on-table = { $piece } auf dem Tisch verschieben
step-change = { $part } ändern
step-change-cell = { $row } in { $size } ändern
step-change-person = { $row } von { $person } ändern
step-change-seam = Naht { $seam } ändern
step-change-picture = Bild { $where } ändern
step-pull = { $part } ziehen
step-pull-points = { $count } Punkte ziehen
step-move-points = { $count } Punkte verschieben
step-draw = { $point } zeichnen

## Das Fenster selbst
window-no-drawing = diese Anzeige bietet kein OpenGL zum Zeichnen
window-no-display = es gibt keine Anzeige
window-untitled = Entwurf ohne Titel
window-size = Größe { $size }

## Was in einer Formel folgen kann
offers-line = Angebot { $name }: { $about }
offers-hint = ↓ zum Wählen, Enter übernimmt

## Stift und Maßband
pencil-choose = Stift: erst das Schnittteil wählen, in dem gezeichnet wird
tape-two-places = Maßband: erst an zwei Stellen anlegen

## Bilder als Unterlage
picture-cut-short = es ließ sich nicht zu Ende lesen
picture-no-file = das ist keine Datei
picture-too-heavy = es hat mehr als { $count } MB; kleiner speichern
picture-other-kind = es ist weder PNG noch JPEG; als eines davon speichern
picture-damaged = es ist beschädigt oder zu groß ({ $problem })
picture-too-many-points = { $width } × { $height } Bildpunkte sind zu viele; kleiner speichern
picture-not-flat = Ein Foto ist nicht eben, und seine Perspektive wird nicht berichtigt: zur Prüfung eine zweite Strecke messen.
picture-on-table = auf dem Tisch
picture-under = unter { $piece }
picture-ask-title = Bild unterlegen
picture-ask-note = Eine PNG- oder JPEG-Datei, ein Scan oder ein Foto. Es liegt { $where }; nichts im Entwurf hängt davon ab.
picture-ask-do = Unterlegen
picture-needs-file = eine Datei wird gebraucht
picture-there = { $where } liegt schon ein Bild: { $file }; erst entfernen
picture-not-laid = { $path } lässt sich nicht unterlegen: { $problem }
picture-lies = das Bild liegt { $where }; es hat noch keinen Maßstab: Maßstab … verwenden
picture-not-shown = das Bild { $path } lässt sich nicht zeigen: { $problem }; der Entwurf ist ohne es geöffnet
picture-distance = { $length } zwischen den beiden Punkten
picture-distance-unsure = { $length } zwischen den beiden Punkten, aber das Bild hat noch keinen Maßstab
picture-straight = das Bild ist gerade gerichtet
picture-scaled = ein Bildpunkt ist { $millimetres } mm. { $caution }

## Einstellungen
prefer-title = Einstellungen
prefer-about = den Einstellungen
prefer-note = Die eigenen, auf diesem Rechner. Keine Zahl eines Entwurfs hängt davon ab.
prefer-called = { $of }: { $word }
prefer-language = Sprache
prefer-language-called = Sprache
prefer-language-note = Die des Fensters. In welcher Sprache ein Schnitt veröffentlicht wird, steht auf der Karte seines Entwurfs.
prefer-light = Hell oder dunkel
prefer-light-called = Aussehen
prefer-as-system = wie das System
prefer-is-light = hell
prefer-is-dark = dunkel
prefer-text = Schriftgröße
prefer-text-called = Schrift
prefer-spacing = Abstände
prefer-spacing-called = Abstände
prefer-dense = eng
prefer-usual = üblich
prefer-roomy = weit
prefer-colours = Farben
prefer-contrast = Hoher Kontrast
prefer-apart = Farben bei Farbfehlsichtigkeit
prefer-sizes = Größen:
prefer-scale = Originalgröße
prefer-scale-note = Eine Bankkarte auf den Umriss legen, oder ein Lineal an den Balken darunter, und beide gleich lang machen. Eine Bankkarte ist 85,60 mm breit (ISO/IEC 7810, ID-1).
prefer-pixels = px je Millimeter
prefer-unmeasured = nicht gemessen: angenommen sind { $inch } px je Zoll
prefer-measured = gemessen: { $millimetre } px je Millimeter, { $inch } je Zoll
prefer-forget = Messung vergessen

## Originalgröße
screen-bar = ein Balken von { $length } mm
screen-card = der Umriss einer Bankkarte
screen-shorter = kürzer
screen-longer = länger
screen-hair-shorter = ein wenig kürzer
screen-hair-longer = ein wenig länger
screen-usual = Originalgröße für einen Bildschirm mit 96 px je Zoll; den eigenen unter Einstellungen messen (Ctrl+,)
screen-measured = ein Millimeter auf dem Tisch ist ein Millimeter auf dem Bildschirm, wie gemessen

## Veröffentlichen
publish-title = Veröffentlichen
publish-going-on = es wird schon etwas veröffentlicht; das erst anhalten
publish-needs-folder = ein Ordner wird gebraucht
publish-nothing = nichts zum Schreiben gewählt
publish-no-size = keine Größe gewählt
publish-too-many = { $count } Größen zusammen sind auf Seiten zum Zuschneiden nicht zu unterscheiden; höchstens { $most }
publish-no-view = keine Variante gewählt
publish-wide-paper = das Papier eines breiten Bogens
publish-projection = die Projektion auf dem Stoff
publish-no-pixels = `{ $text }` ist keine Zahl von Pixeln; schreiben wie `1280`
publish-lines = Linien eines Projektors
publish-length-problem = { $of }: { $problem }
publish-paper = Papier der Seiten
publish-for = wofür
publish-whole = Schnittteile im Stoffbruch werden ganz gezeichnet
publish-whole-called = ganze Schnittteile
publish-do = Schreiben
publish-kind = { $kind } – { $says }
publish-write = { $kind } schreiben
publish-write-sheet = Bogen { $sheet } schreiben
publish-sheets = Bögen, die im Entwurf stehen
publish-both-papers = A4 oder Letter
publish-sizes = Größen in einer Datei mit Schnittteilen (Anleitung und Tabellen enthalten alle)
publish-each = jede Größe für sich
publish-chosen = gewählte Größen zusammen
publish-all = alle in einer Datei, eine Ebene für jede
publish-size = Größe { $size } veröffentlichen
publish-views = Varianten
publish-view = Variante { $view } veröffentlichen
publish-width = Breite des Papiers eines breiten Bogens
publish-width-called = Breite des Papiers
publish-projector = Projektor: was auf dem Stoff zu sehen ist, seine Pixel dort, Breite der Linien
publish-across = Projektion quer
publish-down = Projektion längs
publish-pixels-across = Pixel quer
publish-pixels-down = Pixel längs
publish-lines-called = Linien des Projektors
publish-as-needed = nach Bedarf
publish-folder = Ordner (er wird angelegt, wenn es ihn nicht gibt)
paper-called = Papier { $paper }
purpose-toile = Probemodell
purpose-testers = Probenähen
purpose-release = Ausgabe
purpose-called = für { $purpose }

## Ziehen und Verschieben
pull-needs-length = eine Länge wie 1.5 cm oder -3/8 in wird gebraucht
pull-choose-point = Verschieben um: erst einen Punkt wählen; mit Shift mehrere
pull-ask-title = Verschieben um
pull-ask-note = Verschiebt { $points }; eine Länge unter null schiebt nach links oder oben.
pull-ask-do = Verschieben
pull-right = nach rechts
pull-down = nach unten

## Eine Ausgabe
release-title = Ausgabe
release-found = Ausgabe { $edition }, { $date }
release-going-on = es wird schon eine Ausgabe gemacht
release-no-file = der Entwurf hat noch keine Datei: erst speichern; eine Ausgabe entsteht aus seiner Datei
release-comments = die Datei enthält Kommentare, neben denen das Protokoll nicht geschrieben werden kann: erst den Entwurf speichern
release-ended = die Ausgabe endete ohne Ergebnis
release-not-logged = sie ließ sich nicht ins Protokoll des Entwurfs schreiben: { $problem }
release-log-unsaved = das Protokoll des Entwurfs nennt sie; den Entwurf speichern, um das zu behalten
release-log-not-saved = das Protokoll des Entwurfs nennt sie, aber der Entwurf ließ sich nicht speichern: { $problem }
release-do = Ausgeben
release-in-making = Wird gemacht …
release-note = Alles, was veröffentlicht wird, mit dem Entwurf und Prüfsummen aller Dateien, in einem eigenen Ordner. Keine Ausgabe wird zweimal gemacht: was sich ändert, braucht eine neue.
release-last = Zuletzt ausgegeben: Ausgabe { $edition }, { $date }.
release-edition = Ausgabe
release-date = Datum
release-date-hint = Jahr, Monat, Tag, etwa 2026-05-31
release-folder-hint = in dem der Ordner der Ausgabe angelegt wird
release-against = Änderungen werden gesagt gegenüber
release-beside = der letzten Ausgabe in diesem Ordner
release-elsewhere = einer anderswo
release-first = keiner: es ist die erste
release-that-is = Das ist { $found }.
release-before-at = Ordner der Ausgabe davor
release-survey = Die Maßtabelle ist eine Reihenmessung, also lässt sich nicht ausgeben, was darauf entworfen ist.
release-unsewn = Laut Protokoll nie genäht: { $what }.
release-errors = Fehler verhindern eine Ausgabe ({ $count }):

## Eine Naht abrollen
roll-title = Naht { $seam } abrollen
roll-about = dem Abrollen
roll-cannot = Naht { $seam } lässt sich in { $size } nicht abrollen
roll-slider = wie weit Naht { $seam } abgerollt ist
roll-to-start = Zum Anfang
roll-to-notch = Zum nächsten Passzeichen
roll-to-end = Zum Ende
roll-state = { $size }: abgerollt bis { $far } von { $one } (erste Seite) und { $two } (zweite Seite)
roll-match-mark = Passpunkt
roll-notch = { $notch }: { $one } und { $two }, { $apart } mm auseinander
roll-longer = am Ende ist die erste Seite { $by } mm länger
roll-shorter = am Ende ist die erste Seite { $by } mm kürzer
roll-piece-one = { $piece }, erste Seite, abgerollt
roll-piece-two = { $piece }, zweite Seite, abgerollt
roll-hint = Die zweite Seite rollt ohne zu rutschen an der ersten entlang; Punkte sind Passzeichen, der Ring ist die Berührung

## Bögen
sheets-title = Bögen
sheets-about = den Bögen
sheets-pages = { $all } Seiten: die erste und { $count } zum Zusammenkleben
sheets-only = nur { $piece }
sheets-only-called = nur { $piece } drucken
sheets-true = Originalgröße
sheets-whole-hint = Schnittteile, die im Stoffbruch zugeschnitten werden, werden ganz gezeichnet
sheets-arrange = Neu anordnen
sheets-arrange-hint = Vergessen, wohin Schnittteile von Hand gelegt wurden
sheets-sizes = Größen in der Datei
sheets-size = Größe { $size } drucken
sheets-ruler = Ein Lineal an diesen Balken halten und ihn 100 mm lang machen.
sheets-page = Seite { $page }: { $pieces }
sheets-piece = { $piece } auf den Seiten
sheets-drag = Ein Schnittteil ziehen, um es auf den Seiten zu verschieben

## Die Leiste oben
top-not-saved = { $file } · nicht gespeichert
top-sizes = Größen
top-persons = Personen
top-sizes-about = den Größen
top-others = Andere Größen
top-others-called = andere Größen
top-find = Suchen …
top-label = { $action }: { $label }
top-reach-all = alle Größen
top-reach-all-called = alle Größen ziehen
top-reach-one = nur { $size }
top-reach-one-called = nur diese Größe ziehen
top-reach-up = ab { $size }
top-reach-up-called = ab hier aufwärts ziehen
top-pulls = Ziehen für
top-pulls-hint = Wofür Ziehen und Schieben mit Tasten gelten
top-hand = In der Hand
top-hand-called = Hand: { $what }
top-views = Varianten
top-see-view = Variante { $view } ansehen
top-base = Basis
top-is-base = { $size }, Basis

## Vergleichen
compare-going = wird verglichen …
compare-taken-away = der andere Entwurf ist weggenommen
compare-only-in = { $part } gibt es nur in { $draft }
compare-would-change = Was sich ändern würde: { $draft }
compare-from = Unterschiede zu { $draft }
compare-about = dem Vergleichen
compare-end = Vergleich beenden
compare-then-wrong = Dann wäre falsch:
compare-now-wrong = Jetzt falsch, und dort nicht:
compare-the-draft = der Entwurf
compare-rest = und { $count } weitere: der Befehl `compare` zählt alle auf
compare-line = { $part }:
compare-line-note = Hinweis: { $part }:
compare-called = Unterschied: { $line }
compare-called-in = Unterschied: { $piece }, { $line }

## Umrisse einer Datei
trace-title = Umrissdatei nachzeichnen
trace-note = Geschlossene Umrisse einer SVG-Datei werden Schnittteile, offene Linien werden Linien des Schnittteils, in dem sie liegen.
trace-none-closed = von den { $count } Linien der Datei ist keine geschlossen, also kann keine ein Schnittteil werden
trace-corner-range = die Drehung an einer Ecke muss zwischen 0 und 180 Grad liegen
trace-left-out = ausgelassen oder sonderbar: { $what }
trace-file-called = Umrissdatei
trace-read = Lesen
trace-corner-before = eine Ecke ist eine Drehung um mehr als
trace-corner-behind = Grad
trace-corner-called = Ecke, Grad
trace-make = Schnittteile erzeugen
trace-units = { $number } Einheiten
trace-outline = Umriss { $number }
trace-name = Name von Umriss { $number }
trace-size = { $width } × { $height }
trace-crosses = kreuzt sich selbst
trace-open = Offene Linien: { $count }. Jede kommt in den kleinsten gewählten Umriss, in dem sie liegt.
trace-odd = Ausgelassen oder sonderbar: { $what }.
trace-scale-file = die Datei sagt: eine Einheit ist { $millimetres } mm
trace-scale-unknown = Der Maßstab ist nicht bekannt: { $why }. Wie groß ist es?
trace-unit = eine Einheit ist
trace-unit-called = Länge einer Einheit
trace-the-first = der erste Umriss
trace-width = die Breite von { $outline } ist
trace-width-called = Breite des ersten Umrisses
trace-css = eine Einheit ist ein CSS-Pixel, 96 je Zoll

## Die erste Seite
welcome-title = Ein Zeichentisch für Schnittmuster
welcome-about = den ersten Schritten
welcome-note = Punkte sind Formeln über einer Maßtabelle; jede Größe wird zugleich gezeichnet, und Nähte bleiben passend.
welcome-again = Wieder öffnen
welcome-example = Ein Beispiel ansehen
welcome-example-note = Jedes wird als Kopie geöffnet: es kann nichts verdorben werden.
welcome-open-example = Beispiel { $example } öffnen
welcome-guide = Einführung beginnen
welcome-guide-about = elf Schritte zu zwei Schnittteilen und einer Naht
welcome-file = Datei öffnen …
welcome-file-about = ein Entwurf von diesem Rechner
welcome-empty = Leerer Entwurf
welcome-empty-about = für alle, die wissen, was sie wollen
open-again = { $path } wieder öffnen
welcome-forget = Vergessen
welcome-forget-called = { $path } vergessen
welcome-recent = { $ago }, { $folder }
welcome-recent-menu = { $folder }, { $ago }
picture-path-hint = ein Pfad zu einer Datei .png oder .jpg
