### What the program says about changes: names of actions, refusals, steps that can be undone.

## What a part of the draft is
thing-draft = Entwurf
thing-row = Zeile
thing-person = Person
thing-size-set = Größengruppe
thing-value = Wert
thing-drawing = Zeichnung
thing-piece = Schnittteil
thing-placement = Lage
thing-seam = Naht
thing-joint = Stoßstelle
thing-condition = Bedingung
thing-measure = Fertigmaß
thing-material = Material
thing-strip = Streifen
thing-notion = Zutat
thing-view = Variante
thing-step = Anleitungsschritt
thing-sheet = Bogen
thing-kept = Aufbewahrtes
thing-point = Punkt
thing-edge = Kante
thing-line = Linie
thing-dart = Abnäher
thing-pleat = Falte
thing-tuck = Biese
thing-fold = Bruchlinie
thing-lengthen = Verlängerungslinie
thing-slit = Schlitz
thing-mark = Markierung
thing-called = { $kind } { $name }
axis-girth = Weite
axis-cup = Cup
axis-length = Länge

## Menus, and the actions in their order
menu-draft = Entwurf
menu-change = Ändern
menu-add = Hinzufügen
menu-look = Ansicht
menu-help = Hilfe
action-new = Neuer Entwurf
action-new-does = Beginnt einen leeren Entwurf.
action-open = Öffnen …
action-open-does = Öffnet einen Entwurf aus einer Datei.
action-save = Speichern
action-save-does = Speichert den Entwurf in seiner Datei.
action-save-as = Speichern unter …
action-save-as-does = Speichert den Entwurf unter einem anderen Namen.
action-print = Seiten schreiben …
action-print-does = Schreibt die Seiten, die unter „Bögen“ zu sehen sind, als PDF-Datei.
action-publish = Veröffentlichen …
action-publish-does = Schreibt, was von Seiten, Bögen, Anleitung und Tabellen gewählt ist, in den gewählten Größen und Varianten in einen Ordner.
action-release = Ausgabe herausgeben …
action-release-does = Macht eine Ausgabe: alles, was veröffentlicht wird, mit dem Entwurf und Prüfsummen aller Dateien, in einem eigenen Ordner.
action-read-table = Zahlen aus einer Tabelle lesen …
action-read-table-does = Liest eine Tabelle in die Maßtabelle; sie wird angesehen, bevor etwas übernommen wird.
action-write-table = Maßtabelle als Tabelle schreiben …
action-write-table-does = Schreibt die Maßtabelle als Tabelle für die Tabellenkalkulation.
action-quit = Fenster schließen
action-quit-does = Schließt das Fenster; fragt vorher, wenn etwas nicht gespeichert ist.
action-undo = Rückgängig
action-undo-does = Nimmt die letzte Änderung zurück.
action-redo = Wiederholen
action-redo-does = Macht die Änderung wieder, die zuletzt zurückgenommen wurde.
action-rename = Umbenennen …
action-rename-does = Gibt dem gewählten Teil einen anderen Namen, in jeder Formel.
action-delete = Löschen …
action-delete-does = Nimmt den gewählten Teil heraus; sagt vorher, was ihn nennt.
action-used-by = Verwendet von …
action-used-by-does = Führt auf, was den gewählten Teil nennt.
action-rename-size = Größe umbenennen …
action-rename-size-does = Gibt der gewählten Größe eine andere Bezeichnung, überall, wo sie genannt ist.
action-delete-size = Größe löschen …
action-delete-size-does = Nimmt die gewählte Größe mit ihren Zahlen aus der Maßtabelle.
action-base = Zur Basisgröße machen
action-base-does = Macht die gewählte Größe zum Nullpunkt der Sprünge und zur ersten, die gezeigt wird.
action-row-up = Nach oben
action-row-up-does = Setzt Zeile, Streifen, Zutat, Stoff oder Anleitungsschritt, was gewählt ist, einen Platz höher.
action-row-down = Nach unten
action-row-down-does = Setzt Zeile, Streifen, Zutat, Stoff oder Anleitungsschritt, was gewählt ist, einen Platz tiefer.
action-paste-numbers = Zahlen einfügen …
action-paste-numbers-does = Nimmt einen Block Zahlen aus einer Tabellenkalkulation in die Maßtabelle; er wird vorher angesehen.
action-move-by = Verschieben um …
action-move-by-does = Verschiebt die gewählten Punkte um getippte Längen; Umschalt und ein Klick wählen mehrere.
action-reach-all = In allen Größen ziehen
action-reach-all-does = Was gezogen wird, ändert sich in allen Größen.
action-reach-one = Nur in dieser Größe ziehen
action-reach-one-does = Was gezogen wird, ändert sich nur in der gewählten Größe.
action-reach-up = Ab hier aufwärts ziehen
action-reach-up-does = Was gezogen wird, ändert sich in der gewählten Größe und in allen darüber.
action-keep-plan = Schnittbild behalten
action-keep-plan-does = Schreibt das Schnittbild, das zu sehen ist, in den Entwurf.
action-keep-plans = Alle Schnittbilder behalten
action-keep-plans-does = Schreibt alle gefundenen Schnittbilder in den Entwurf, als einen Schritt.
action-take-plan = Schnittbild herausnehmen
action-take-plan-does = Nimmt das behaltene Schnittbild der gewählten Zelle aus dem Entwurf.
action-take-stale-plans = Veraltete Schnittbilder herausnehmen
action-take-stale-plans-does = Nimmt alle Schnittbilder aus dem Entwurf, die nicht mehr zu seinen Schnittteilen gehören.
action-turn-half = Um die Hälfte drehen
action-turn-half-does = Dreht das gewählte Schnittteil auf dem Stoff um die Hälfte, wo es so liegen darf.
action-turn-over = Umdrehen
action-turn-over-does = Dreht das gewählte Schnittteil auf dem Stoff um, wo es so liegen darf.
action-lock-piece = Festlegen oder lösen
action-lock-piece-does = Legt das gewählte Schnittteil fest, wo es liegt, so dass eine Suche den Rest darum legt, oder löst es.
action-confirm = Vorgeschlagene Zahlen bestätigen
action-confirm-does = Macht alle vorgeschlagenen Zahlen der Maßtabelle zu getippten.
action-pencil = Stift
action-pencil-does = Zeichnet Punkte und Linien im gewählten Schnittteil durch Zeigen; noch einmal: legt den Stift weg.
action-add-size = Größe hinzufügen …
action-add-size-does = Fügt eine Größe zwischen oder jenseits der anderen hinzu.
action-add-person = Person hinzufügen …
action-add-person-does = Fügt einen einzelnen Körper neben der Größenreihe hinzu.
action-add-row = Zeile hinzufügen …
action-add-row-does = Fügt der Maßtabelle eine Zeile hinzu.
action-add-set = Größengruppe hinzufügen …
action-add-set-does = Fügt einen benannten Teil der Größenreihe hinzu.
action-add-value = Wert hinzufügen …
action-add-value-does = Fügt einen benannten Wert mit einer Formel hinzu.
action-add-found = Zu findenden Wert hinzufügen …
action-add-found-does = Fügt einen Wert hinzu, der Nähte oder Bedingungen erfüllt hält.
action-add-piece = Schnittteil hinzufügen …
action-add-piece-does = Beginnt ein Schnittteil.
action-derive-piece = Schnittteil ableiten …
action-derive-piece-does = Beginnt ein Schnittteil, das durch Schritte aus einem anderen gemacht wird und ihm immer folgt.
action-take-block = Grundschnitt aus anderem Entwurf übernehmen …
action-take-block-does = Übernimmt Schnittteile eines anderen Entwurfs mit allem, was sie brauchen; ändert sich jener Entwurf, wird es gesagt.
action-add-point = Punkt hinzufügen …
action-add-point-does = Fügt dem gewählten Schnittteil einen Punkt hinzu.
action-add-edge = Kante hinzufügen …
action-add-edge-does = Fügt eine Kante zwischen Punkten des gewählten Schnittteils hinzu.
action-close-outline = Umriss schließen …
action-close-outline-does = Fügt die Kante vom letzten Punkt des Umrisses zum ersten hinzu.
action-trace = Umrissdatei nachzeichnen …
action-trace-does = Nimmt Umrisse einer SVG-Datei als Schnittteile in den Entwurf.
action-picture = Bild unterlegen …
action-picture-does = Legt einen Scan oder ein Foto unter das gewählte Schnittteil, die gewählte Zeichnung oder auf den Tisch.
action-add-seam = Naht hinzufügen …
action-add-seam-does = Sagt, welche Kanten an welche genäht werden.
action-add-view = Variante hinzufügen …
action-add-view-does = Fügt eine Fassung des Kleidungsstücks mit eigenen Schnittteilen und Werten hinzu.
action-add-strip = Streifen hinzufügen …
action-add-strip-does = Fügt etwas hinzu, das auf Länge geschnitten wird: Einfassung, Gummiband, Kordel oder Band.
action-add-notion = Zutat hinzufügen …
action-add-notion-does = Fügt etwas hinzu, das gekauft wird: Reißverschluss, Knöpfe, Garn.
action-add-cloth = Stoff hinzufügen …
action-add-cloth-does = Fügt Stoff, Futter oder Einlage hinzu, woraus Schnittteile geschnitten werden.
action-add-width = Stoffbreite hinzufügen …
action-add-width-does = Fügt eine Breite hinzu, in der ein Stoff verkauft wird.
action-add-group = Größen zusammen auslegen …
action-add-group-does = Fügt der Stofftabelle eine Zeile hinzu: mehrere Kleidungsstücke zusammen ausgelegt, etwa 2 x S, 4 x M.
action-add-step = Anleitungsschritt hinzufügen …
action-add-step-does = Fügt der Anleitung hinter dem gewählten Schritt einen Nähschritt hinzu.
action-add-fitting = Anprobe hinzufügen
action-add-fitting-does = Notiert, dass die gewählte Größe genäht wurde, wann und aus welchem Stoff.
action-add-condition = Bedingung hinzufügen …
action-add-condition-does = Fügt eine Gleichung hinzu, die gelten muss, oder einen Vergleich, der beobachtet wird.
action-find = Suchen …
action-find-does = Findet einen Befehl oder einen Teil nach seinem Namen.
action-tape = Maßband
action-tape-does = Misst zwischen Punkten, an Kanten entlang, um Ecken, über mehrere Schnittteile, in jeder Größe; noch einmal: legt das Maßband weg.
action-see-all = Alles zeigen
action-see-all-does = Passt alle Schnittteile in das Fenster ein.
action-arrange = Tisch neu ordnen
action-arrange-does = Legt alle Schnittteile nebeneinander, wohin sie auch von Hand gelegt wurden.
action-curvature = Krümmung
action-curvature-does = Zeigt, wie sich die Kanten des gewählten Schnittteils biegen und wie sie an ihren Übergängen weiterlaufen, oder nicht.
action-nearer = Näher
action-nearer-does = Geht näher an die Mitte des Blatts heran.
action-further = Weiter weg
action-further-does = Geht weiter weg.
action-next-size = Nächste Größe
action-next-size-does = Zeigt die nächste Größe kräftig.
action-previous-size = Vorige Größe
action-previous-size-does = Zeigt die Größe davor kräftig.
action-other-sizes = Andere Größen
action-other-sizes-does = Zeichnet die anderen Größen dünn hinter der gewählten, oder nicht.
action-chart = Maßtabelle
action-chart-does = Zeigt in der Mitte die Maßtabelle, oder wieder die Schnittteile.
action-steps = Sprünge in der Maßtabelle
action-steps-does = Zeigt unter jeder Zahl der Maßtabelle den Sprung von der Größe davor, oder nicht.
action-chart-sizes = Größen und Gruppen
action-chart-sizes-does = Zeigt die Achsen der Maßtabelle, ihre Bezeichnungen und die Größengruppen.
action-proposals = Vorgeschlagene Zahlen
action-proposals-does = Führt die Zahlen der Maßtabelle auf, die auf Bestätigung warten.
action-sheets = Bögen
action-sheets-does = Zeigt die Seiten, wie sie gedruckt werden, oder wieder die Schnittteile.
action-cloth = Stoff
action-cloth-does = Zeigt, welcher Stoff zu kaufen ist und wie er ausgelegt wird, oder wieder die Schnittteile.
action-plan-all = Allen Stoff planen
action-plan-all-does = Sucht die kürzesten Schnittbilder aller Größen, Materialien und Breiten, neben dem Fenster.
action-improve-plan = Schnittbild verbessern
action-improve-plan-does = Sucht für die gewählte Zelle ein kürzeres Schnittbild, um das herum, was festliegt.
action-stop-planning = Planen beenden
action-stop-planning-does = Beendet die Suche nach Schnittbildern; das beste bisher bleibt.
action-longest = Längstes aus so viel Stoff …
action-longest-does = Sagt, wie groß eine Länge sein kann, so dass alles aus dem vorhandenen Stoff kommt.
action-booklet = Anleitung
action-booklet-does = Zeigt die Anleitung, wie sie gedruckt wird, oder wieder die Schnittteile.
action-roll = Naht abrollen
action-roll-does = Rollt eine Seite der gewählten Naht an der anderen ab, oder zeigt wieder die Schnittteile.
action-compare = Mit anderem Entwurf vergleichen …
action-compare-does = Sagt, was von einem anderen Entwurf abweicht, und legt dessen Umrisse unter die Schnittteile.
action-differences = Unterschiede
action-differences-does = Führt auf, was vom anderen Entwurf abweicht, oder zeigt wieder die Schnittteile.
action-end-comparing = Vergleich beenden
action-end-comparing-does = Nimmt den anderen Entwurf wieder weg.
action-next-finding = Nächster Befund
action-next-finding-does = Geht zum nächsten Befund und seiner Stelle.
action-previous-finding = Voriger Befund
action-previous-finding-does = Geht zum Befund davor.
action-all-findings = Alle Befunde
action-all-findings-does = Führt alle Befunde auf, oder die ersten paar.
action-true-scale = Originalgröße
action-true-scale-does = Zeigt einen Millimeter des Tischs als Millimeter des Bildschirms, oder wieder alle Schnittteile.
action-theme = Hell oder dunkel
action-theme-does = Wechselt zwischen hellem und dunklem Aussehen.
action-preferences = Einstellungen
action-preferences-does = Zeigt, wie das Fenster aussieht und wie groß der Bildschirm ist, zum Ändern; keine Zahl eines Entwurfs hängt daran.
action-help = Hilfe
action-help-does = Öffnet die Hilfe zu dem, was gerade getan wird.
action-keys = Tasten
action-keys-does = Führt die Tasten aller Aktionen auf.
action-guide = Geführter erster Entwurf
action-guide-does = Zeigt auf dem Weg zu einem ersten Entwurf, was als Nächstes zu tun ist, oder verlässt das.
action-first-page = Startseite
action-first-page-does = Zeigt die Beispiele und die Entwürfe, die zuletzt offen waren.

## What of a part is chosen
chosen-language-english = Englisch
chosen-language-german = Deutsch
chosen-band = Band
chosen-binding = Einfassung
chosen-elastic = Gummiband
chosen-cord = Kordel oder Bindeband
chosen-grain-along = im Fadenlauf
chosen-grain-across = quer zum Fadenlauf
chosen-grain-bias = im schrägen Fadenlauf
chosen-unsaid = keine Angabe
chosen-place-neck = Kapuze oder Hals
chosen-place-waist = Taille
chosen-place-hem = untere Kante
chosen-place-elsewhere = anderswo
chosen-cloth = Oberstoff
chosen-lining = Futter
chosen-interfacing = Einlage
chosen-nap-without = ohne Strich
chosen-nap-with = mit Strich
chosen-laid-open = offen, in einer Lage
chosen-laid-folded = der Länge nach gefaltet
chosen-laid-to-middle = beide Webkanten zur Mitte
chosen-laid-part = teilweise gefaltet
chosen-shrinks-in-pieces = Schnittteile werden größer geschnitten
chosen-shrinks-before = wird vor dem Zuschnitt gewaschen
chosen-in-lay-counted = eigener Stoff kommt hinzu
chosen-in-lay-laid = liegt zwischen den Schnittteilen
chosen-worn-outerwear = Überbekleidung
chosen-worn-sleepwear = weite Nachtwäsche
chosen-worn-tight = eng anliegende Nachtwäsche
chosen-worn-other = etwas anderes
chosen-wearers-anyone = alle
chosen-wearers-boys = Jungen
chosen-wearers-girls = Mädchen
chosen-adults = Erwachsene
chosen-children = Kinder

## The examples
example-straight-skirt = ein Grundschnitt aus zwei Schnittteilen, mit einem Fehler, den die Prüfung findet
example-circle-skirt = Bögen, und ein Wert, der ihn ganz oder halb macht
example-bodice-sleeve = Oberteil und Ärmel, in zwölf Größen passend gehalten
example-bodice-finished = dasselbe mit Schnittlinien, Passzeichen und Markierungen
example-skirt-finished = ein Rock mit Bund, Reißverschluss und Säumen, bis zur letzten Markierung
example-market-apron = Zoll, eine Falte, gelegte Schnittteile, eine übernommene Kante
example-flat-collar = ein Kragen, gezeichnet auf aneinandergelegten Halsausschnitten
example-chest-bodice = ein Oberteil nach Bruchteilen des Brustumfangs
example-sleeve-head = eine Armkugel über ihren beiden schrägen Hilfslinien
example-top-in-views = ein Oberteil mit langem Ärmel, oder ärmellos und kürzer
example-panel-top = ein Oberteil aus Bahnen und Belegen, abgeleitet vom Oberteil-Grundschnitt
example-yoke-skirt = ein ausgestellter Rock mit Passe, Belegen und Futter, abgeleitet vom Rock-Grundschnitt
example-trousers = Vorder- und Hinterhose einer schlichten Hose
example-work-smock = ein ganzer Schnitt zum Verkauf: ein Kittel mit langen oder kurzen Ärmeln, gefütterten Taschen, Anleitung
example-childs-smock = derselbe für Kinder, mit dem Sicherheitshinweis zu Kordeln, den er braucht

## Steps of derived pieces
step-kind-move-dart = Abnäher verlegen
step-kind-spread = Einschneiden und sperren
step-kind-cut = In zwei Teile schneiden
step-kind-join = Schnittteil ansetzen
step-kind-unfold = Aufklappen
step-kind-turn-over = Umdrehen
step-kind-add-strip = Streifen ansetzen
step-kind-move-edge = Kante versetzen
step-kind-slash = Mehrfach einschneiden
step-kind-share = Betrag verteilen
step-kind-to-cut-line = Zur Schnittlinie

## Steps in the chart
chart-rule-of-steps = Ein Sprung wird mit ≠ bezeichnet, wo er größer oder kleiner ist als der Sprung davor und der danach, und zwar um mehr als ein Zehntel des größeren von beiden und um mehr, als die Zeile gerundet ist (höchstens ein Viertelzoll). Übliche Praxis, ohne Quelle.

## Steps that can be undone: the chart
undo-add-size = Größe { $size } hinzufügen
undo-add-person = Person { $name } hinzufügen
undo-add-row = Zeile { $name } hinzufügen
undo-change-cell = { $row } in { $size } ändern
undo-change-person = { $row } von { $person } ändern
undo-confirm = vorgeschlagene Zahlen bestätigen
undo-base = { $size } zur Basisgröße machen
undo-rename-size = Größe { $old } in { $new } umbenennen
undo-delete-size = Größe { $size } löschen
undo-move-size = Größe { $size } verschieben
undo-move-row = Zeile { $name } verschieben
undo-row-kind = die Art von { $name } ändern
undo-row-axes = ändern, womit { $name } wechselt
undo-remove-axis = die Achse { $axis } herausnehmen
undo-add-set = Größengruppe { $name } hinzufügen
undo-set-sizes = die Größen der Gruppe { $name } ändern
undo-set-base = die Basis der Gruppe { $name } ändern
undo-paste = Zahlen in die Maßtabelle übernehmen

## The chart: refusals and what was done
refused-person-name = `{ $name }` kann keine Person benennen: bis zu 60 Zeichen ohne `/` sind möglich
refused-size-or-person = eine Größe oder Person { $name } gibt es schon
told-person-added = { $name } wurde hinzugefügt
told-person-measure = { $name } wurde hinzugefügt; noch zu messen: { $rows }
gone-row = die Zeile { $name } gibt es nicht mehr
gone-person = die Person { $name } gibt es nicht mehr
refused-row-everywhere = { $row } ist in jeder Größe gleich: als Formel der Zeile schreiben
refused-cell = { $row }: `{ $typed }`: { $problem }
refused-no-proposal = es gibt keine vorgeschlagene Zahl zu bestätigen
told-confirmed =
    { $count ->
        [one] 1 vorgeschlagene Zahl wurde bestätigt
       *[other] { $count } vorgeschlagene Zahlen wurden bestätigt
    }

## Steps that can be undone: how pieces are finished
undo-allowance = Nahtzugabe von { $piece }.{ $edge }
undo-hem = Saum von { $piece }.{ $edge }
undo-take-allowance = eine Nahtzugabe von { $piece } herausnehmen
undo-cut = Zuschnitt von { $piece }
undo-take-cut = einen Zuschnitt von { $piece } herausnehmen
undo-add-notch = der Naht { $seam } ein Passzeichen geben
undo-take-notch = ein Passzeichen der Naht { $seam } herausnehmen
undo-lengthen = { $piece } bei { $line } verlängern
undo-press = Bügeln der Naht { $seam }
refused-no-edge = { $piece } hat keine Kante { $edge }
refused-no-piece = es gibt kein Schnittteil { $name }
refused-no-seam = es gibt keine Naht { $name }
gone-it = es ist nicht mehr da

## Lay plans that are kept
undo-keep-plans =
    { $count ->
        [one] ein Schnittbild behalten
       *[other] Schnittbilder behalten
    }
undo-take-plans =
    { $count ->
        [one] ein Schnittbild herausnehmen
       *[other] Schnittbilder herausnehmen
    }
undo-take-stale = veraltete Schnittbilder herausnehmen
gone-plan = dieses Schnittbild ist nicht mehr da
refused-stale-unknown = der Entwurf lässt sich nicht berechnen, also lässt sich nicht sagen, welche Schnittbilder veraltet sind
refused-keep-uncomputed = der Entwurf lässt sich nicht berechnen, also lässt sich kein Schnittbild davon behalten
refused-plan-view = es gibt keine Variante { $view } zu diesem Schnittbild
refused-plan = das Schnittbild { $plan } wird nicht behalten: { $why }

## Traced outlines, pictures underneath
undo-trace = { $piece } nachzeichnen
undo-trace-pieces = { $count } Schnittteile nachzeichnen
undo-picture = das Bild unter { $name } ändern
undo-picture-table = das Bild auf dem Tisch ändern
undo-no-picture = das Bild unter { $name } entfernen
undo-no-picture-table = das Bild auf dem Tisch entfernen
told-traced = nachgezeichnet: { $pieces }
gone-frame = ein Schnittteil oder eine Zeichnung { $name } gibt es nicht mehr

## Whole parts
undo-add-value = Wert { $name } hinzufügen
undo-find-value = { $name } finden lassen
undo-give-value = { $name } vorgeben
undo-add-piece = Schnittteil { $name } hinzufügen
undo-add-drawing = Zeichnung { $name } hinzufügen
undo-add-seam = Naht { $name } hinzufügen
undo-seam-edges = die Kanten der Naht { $name } ändern
undo-seam-fit = die Passung der Naht { $name } ändern
undo-found-by = ändern, was { $part } erfüllt hält
undo-add-condition = Bedingung { $name } hinzufügen
undo-on-pages = { $piece } auf den Seiten verschieben
undo-arrange-pages = die Seiten neu ordnen
undo-on-table = { $piece } auf dem Tisch verschieben
undo-arrange-table = den Tisch neu ordnen
undo-rename = { $part } in { $name } umbenennen
undo-delete = { $part } löschen
refused-no-start = ein gefundener Wert braucht einen Anfang, etwa `14 cm`
gone-condition = die Bedingung { $name } gibt es nicht mehr
refused-uses-unknown = der Entwurf lässt sich nicht berechnen, also ist nicht bekannt, was wovon verwendet wird
gone-seam = die Naht { $name } gibt es nicht mehr
gone-value = den Wert { $name } gibt es nicht mehr
told-found = { $name } wird von jetzt an gefunden; Grenzen angeben und sagen, welche Naht damit erfüllt bleibt
refused-keeps-seams = { $name } hält diese Nähte erfüllt: { $seams }

## Points, edges and outlines
undo-add-point = Punkt { $frame }.{ $name } hinzufügen
undo-add-edge = Kante { $piece }.{ $name } hinzufügen
undo-add-line = Linie { $frame }.{ $name } hinzufügen
undo-close = den Umriss von { $piece } schließen
undo-curve = { $piece }.{ $edge } krümmen
undo-straighten = { $piece }.{ $edge } gerade machen
undo-joints = die Übergänge von { $piece }.{ $edge } ändern
undo-smooth = { $piece }.{ $edge } bei { $point } glatt machen
undo-stack = ändern, wo Größen von { $piece } übereinanderliegen
refused-nothing-to-close = { $piece } hat noch keine Kante, also gibt es nichts zu schließen
refused-closed = der Umriss von { $piece } ist schon geschlossen, bei { $point }
refused-no-point-yet = es hat noch keinen Punkt
refused-no-joint = { $point } ist kein Übergang innerhalb von { $edge }
gone-piece = das Schnittteil { $name } gibt es nicht mehr
gone-edge = die Kante { $piece }.{ $name } gibt es nicht mehr
refused-edge-end = die Kante { $name } braucht einen Punkt, zu dem sie geht
refused-edge-same = die Kante { $name } geht von { $point } zum selben Punkt
refused-line-same = die Linie { $name } geht von { $point } zum selben Punkt
hint-add-first = ; ihn zuerst hinzufügen
hint-meant-quoted = ; gemeint war vielleicht `{ $name }`
refused-no-point = { $frame } hat keinen Punkt `{ $point }`{ $hint }
refused-no-handle = keine Seite von { $point } hat einen Anfasser, der sich drehen ließe; zuerst eine davon krümmen
refused-no-segment = { $piece }.{ $name } hat keinen Abschnitt { $number }

## What is published beside the pieces
undo-add-strip = Streifen { $name } hinzufügen
undo-add-notion = Zutat { $name } hinzufügen
undo-add-material = Material { $name } hinzufügen
undo-add-booklet-step = einen Anleitungsschritt hinzufügen
undo-add-fitting = eine Anprobe hinzufügen
undo-released = Ausgabe { $edition } herausgeben
undo-move = { $part } verschieben
undo-change = { $part } ändern
undo-care = ändern, woran Sicherheitshinweise hängen
refused-only-view = { $view } ist die einzige Variante dieses Schritts; stattdessen den Schritt löschen
gone-part = nicht mehr da: { $part }

## Derived pieces
undo-derive = { $name } aus { $of } ableiten
undo-add-step = { $piece } den Schritt { $step } geben
undo-take-step = Schritt { $number } von { $piece } herausnehmen
undo-move-step = Schritt { $number } von { $piece } verschieben
undo-change-step = Schritt { $number } von { $piece } ändern
gone-derived = das Schnittteil { $name } ist nicht mehr da
gone-step = { $name } hat keinen Schritt { $number } mehr
refused-first-step = es ist der erste Schritt
refused-last-step = es ist der letzte Schritt
refused-no-choice = dieser Schritt hat keine solche Wahl
told-step-taken = der Schritt wurde herausgenommen; was ihn verwendet hat, ist jetzt unterbrochen: { $count }
refused-step-used = was Schritt { $number } von { $piece } macht, wird verwendet von { $users }
refused-derive = es gibt kein Schnittteil { $of }, aus dem es gemacht werden könnte; Schnittteile sind { $pieces }

## Texts and views
undo-display = Längen in einer anderen Einheit zeigen
refused-by-renaming = { $part } bekommt einen anderen Namen durch Umbenennen
gone-from-draft = { $part } ist nicht mehr im Entwurf
undo-add-view = Variante { $name } hinzufügen
undo-view-piece = { $piece } in die Variante { $view } nehmen
undo-view-no-piece = { $piece } aus der Variante { $view } nehmen
undo-view-value = { $value } in der Variante { $view } ändern
undo-view-no-value = { $value } in der Variante { $view } gleich lassen
refused-only-piece = { $piece } ist das einzige Schnittteil der Variante { $view }; eine Variante hat mindestens eines
gone-view = die Variante { $name } gibt es nicht mehr

## Blocks of numbers and tables
word-size = Größe
refused-nothing-taken = nichts lässt sich übernehmen: { $why }
told-all-there = jede Zahl steht schon in der Maßtabelle
told-taken =
    { $count ->
        [one] 1 Zahl wurde übernommen
       *[other] { $count } Zahlen wurden übernommen
    }
told-added-too = ; hinzugefügt: { $parts }
told-not-taken =
    { $count ->
        [one] { $count } Zelle ließ sich nicht übernehmen und bleibt aufgeführt
       *[other] { $count } Zellen ließen sich nicht übernehmen und bleiben aufgeführt
    }
parted-tabs = Tabulatoren
parted-semicolons = Semikolons
parted-commas = Kommas
parted-nothing = nichts
block-bytes = der Text hat { $bytes } Byte; höchstens { $most } werden gelesen
block-columns = Zeile { $line }: sie hat { $columns } Spalten; höchstens { $most } werden gelesen
block-lines = es sind mehr als { $most } Zeilen; weniger auf einmal nehmen
block-empty = es steht noch keine Zahl darin
block-cells = es sind { $cells } Zellen; höchstens { $most } werden auf einmal gelesen
cell-lengths = in der Zeile stehen Längen
cell-angles = in der Zeile stehen Winkel
cell-plain = in der Zeile stehen bloße Zahlen
cell-sign = eine Zahl der Maßtabelle hat kein Vorzeichen; ein Sprung wird in die Maßtabelle selbst getippt
cell-no-row = es ist keine Zahl, und `{ $name }` ist keine Zeile der Maßtabelle
cell-angle-unit = in der Zeile stehen Winkel: `deg` in die Zelle schreiben
cell-no-unit = es hat keine Einheit: sagen, welche für die bloßen Zahlen gilt, oder sie in die Zelle schreiben
cell-fraction = ein Bruch wird nur in Zoll gelesen, nicht in { $unit }
block-no-numbers = es stehen Namen darin, aber keine Zahlen
block-row-kind = `{ $word }` ist keine Art von Zeile; `body` und `house` sind es
block-no-label = seine Spalte hat keine Bezeichnung
block-two-columns = es gibt zwei Spalten { $label }
block-no-place = die Maßtabelle hat keinen Platz { $label }; zuerst seine Größen hinzufügen
refused-label = `{ $label }` kann keine Größe bezeichnen: bis zu 60 Zeichen ohne `/` sind möglich
block-no-size = die Maßtabelle hat keine Größe { $label }; die neuen Größen hinzufügen oder weglassen
block-no-column = hinter den Namen ist keine Spalte
block-no-column-behind = hinter { $column } ist keine Spalte
block-two-lines = es gibt zwei Zeilen { $name }
block-no-row = unter den Größen ist keine Zeile
block-no-row-below = unter { $row } ist keine Zeile
block-no-name = die Zeile nennt keine Zeile der Maßtabelle
block-new-row = die Maßtabelle hat keine Zeile { $name }; die neuen Zeilen hinzufügen oder weglassen
block-other-axes = die Zeile wechselt mit { $axes } und hat keinen Platz { $place }

## Tables that are read
table-line = Zeile { $line }: { $problem }
table-cells =
    unlesbare Zellen ({ $count }), daher wurde nichts übernommen:
    { $cells }
table-unit = `{ $unit }` ist keine Einheit; mm, cm, m, in, ft, yd, deg sind es
table-head = über der ersten Spalte muss `row` stehen, über den anderen Größen
table-cell = Zeile { $line }, { $row }, { $size }: `{ $typed }`: { $why }
table-broken = Zeile { $line }: diese Zeile lässt sich nicht als Tabelle lesen

## Sizes and steps
hint-meant = ; gemeint war vielleicht { $name }
refused-taken = schon da: { $part }
refused-neighbour = es gibt keine Größe { $name }, neben der sie stehen könnte{ $hint }
refused-not-beside = { $a } und { $b } stehen nicht nebeneinander, also ist nicht klar, wohin die neue Größe gehört
refused-no-row = es gibt keine Zeile { $name }{ $hint }
refused-size-axes = { $row } wechselt nicht allein mit { $axis }; ihre Zellen für { $label } müssen in der Datei getippt werden
refused-size-cell = { $row }: `{ $text }` ist nicht lesbar: { $problem }
told-size-added = Größe { $size } wurde hinzugefügt
told-proposed = ; vorgeschlagen, zu bestätigen: { $rows }
told-not-in-sets = ; sie ist nicht in den Größengruppen, die ihre Größen aufführen: { $sets }
refused-step-first = ein Sprung braucht eine Größe davor
refused-step-untyped = ein Sprung braucht eine getippte Zahl für { $size }
refused-step-formula = ein Sprung wird zu einer bloßen Zahl wie `84 cm` addiert; { $size } hat `{ $text }`
refused-step-kind = der Sprung und `{ $text }` sind nicht von einer Art
refused-no-value-or-row = es gibt keinen Wert und keine Zeile { $name }{ $hint }

## Axes, size sets
gone-size = die Größe { $size } gibt es nicht mehr
refused-empty-axis = die Maßtabelle hat noch keine Größen entlang der Achse { $axis }; ihre erste Bezeichnung hinzufügen
told-axis-lost =
    { $count ->
        [one] { $count } Zahl von { $name }, die von der der Basis abweicht, ging mit der Achse verloren; Rückgängig bringt sie zurück
       *[other] { $count } Zahlen von { $name }, die von denen der Basis abweichen, gingen mit der Achse verloren; Rückgängig bringt sie zurück
    }
told-formula-gave-way = an die Stelle der Formel von { $name } trat ihre Zahl in der Basis
refused-only-axis = { $axis } ist die einzige Achse; eine Maßtabelle behält eine
told-axis-taken = die Achse { $axis } wurde herausgenommen
gone-set = die Größengruppe { $name } gibt es nicht mehr
told-set-added = die Größengruppe { $name } wurde hinzugefügt; sie enthält jede Größe, bis ihre Bezeichnungen gewählt sind
refused-empty-set = die Größengruppe { $name } braucht mindestens eine Größe entlang der Achse { $axis }
told-set-base = die Basis der Größengruppe { $name } ist nicht mehr darin; eine andere wählen

## Names
name-empty = ein Name fehlt
name-long = ein Name hat höchstens { $most } Zeichen
name-digit = `{ $name }` beginnt mit einer Ziffer; einen Buchstaben voranstellen
name-space = `{ $name }` enthält ein Leerzeichen; stattdessen `_` schreiben
name-letter = `{ $name }` enthält `{ $letter }`; Buchstaben, Ziffern und `_` sind möglich
name-reserved = `{ $name }` ist ein Wort der Formelsprache; einen anderen Namen wählen
name-taken = schon da: { $part }; einen anderen Namen wählen
comes-from-part = Das ist: { $part }, übernommen in { $frame }.
comes-from-step = Schritt { $step } von { $piece } macht es.

## Renaming
refused-rename = { $part } lässt sich nicht umbenennen: nicht da, oder ohne Namen
refused-meaning = Umbenennen würde ändern, was `{ $text }` in { $place } bedeutet ({ $part }); zuerst diese Formel ändern
refused-affix = `{ $shown }` ist { $part } mit dem, was ein Schritt um den Namen setzt: das im neuen Namen lassen, wie in `{ $name }`, oder umbenennen: { $part }
refused-person-rename = `{ $name }` kann keine Person benennen, oder es gibt schon eine dieses Namens
told-longer = ; { $count } wurden länger geschrieben, um eindeutig zu bleiben
told-renamed = { $part } heißt jetzt { $name }{ $also }
told-renamed-in =
    { $count ->
        [one] { $part } heißt jetzt { $name }, auch an 1 anderen Stelle{ $also }
       *[other] { $part } heißt jetzt { $name }, auch an { $count } anderen Stellen{ $also }
    }
refused-derived-name = in { $piece } hieße es `{ $name }`, was kein Name sein kann
word-prefix = was vor Namen steht
word-it = es
place-step = Schritt { $step } von { $piece }
refused-step-unnamed = ein Schritt braucht einen Namen
refused-step-name = { $piece } hat schon einen Schritt { $name }; einen anderen Namen wählen
refused-size-rename = `{ $label }` kann keine Größe bezeichnen: schon vergeben, mit `/` darin, oder länger als 60 Zeichen
told-size-renamed = Größe { $old } heißt jetzt { $new }

## Taking parts out
place-perhaps = { $place } (vielleicht)
refused-used = { $part } wird verwendet von { $users }
refused-made-by = { $part } kommt von Schritt { $step } von { $piece }: diesen Schritt herausnehmen
hint-leave-out = , oder von einem Schritt von { $piece } weglassen lassen
refused-passes = { $part } kommt von { $own } und geht in { $piece } über: dort herausnehmen{ $leave }
refused-all-of-view = { $part } ist alles, was die Variante { $view } hat; zuerst diese Variante herausnehmen
told-taken-out = herausgenommen: { $part }
users-more = { $named } und { $count } weiteren
told-broken = ; was es verwendet hat, ist jetzt unterbrochen: { $count }
refused-no-value = für { $part } lässt sich kein Wert einsetzen: { $why }
value-only-rows = nur Zeilen und Werte haben einen
value-uncomputed = er lässt sich nicht berechnen
value-no-number = er ist weder Zahl noch Länge noch Winkel
value-some-sizes = in manchen Größen gibt es keinen
value-other-in-view = in der Variante { $view } ist er ein anderer
told-text-instead = ; an seiner Stelle steht { $text }
told-row-instead = ; an seiner Stelle steht die Hauszeile { $row }, weil sich die Größen unterscheiden
what-it-was = was { $part } war
refused-only-size = { $size } ist die einzige Größe; ein Entwurf behält eine
told-base-now = ; { $size } ist jetzt die Basis
told-size-taken = Größe { $size } wurde herausgenommen{ $based }

## Lengthening
told-lengthen-again = { $name } ist jetzt { $by }
refused-lengthen-piece = es gibt kein Schnittteil { $name }{ $hint }
refused-lengthen-derived = { $piece } ist durch Schritte aus { $of } gemacht, also steht sein Umriss nicht darin: die Linie in `lengthen` von { $of } schreiben und das verlängern; was daraus gemacht ist, folgt
refused-shorten = nur { $far } liegen in Größe { $size } jenseits von { $line }: um mehr lässt es sich dort nicht kürzen
told-lengthened =
    { $count ->
        [one] { $piece } ist bei { $line } um { $by } länger: { $name }, in 1 Formel geschrieben
       *[other] { $piece } ist bei { $line } um { $by } länger: { $name }, in { $count } Formeln geschrieben
    }
refused-no-length = `{ $text }` gibt nicht in jeder Größe eine Länge; eine schreiben, etwa `2 cm` oder `-3/4 in`
hint-write-lengthen = ; es hat keine: eine in sein `lengthen` schreiben
hint-there-is = ; es gibt { $names }
spot-handle = ein Anfasser von { $piece }.{ $edge }
spot-mark = die Markierung { $piece }.{ $mark }
spot-label = die Beschriftung von { $piece }
refused-no-lengthen-line = { $piece } hat keine Verlängerungslinie { $line }{ $hint }
refused-line-place = die Linie { $line } hat in Größe { $size } keine Lage
refused-line-direction = die Linie { $line } hat keine Richtung
refused-line-turns = die Linie { $line } hat in Größe { $size } eine andere Richtung
refused-no-sizes = der Entwurf hat keine Größen
refused-arc-over-line = der Bogen von { $piece }.{ $edge } läuft über die Linie { $line }
refused-beyond-in-some = { $spot } liegt nur in manchen Größen jenseits der Linie { $line }: in { $size } anders als in { $other }
refused-nothing-beyond = nichts von { $piece } liegt jenseits der Linie { $line }
refused-edge-lost = { $piece }.{ $edge } hätte keine Form: sie hängt an etwas, das sich nicht bewegt wie ihre Enden
lengthen-hangs = seine Formel, oder was gefunden oder erfüllt gehalten wird, hängt an etwas auf der anderen Seite
refused-stays = { $spot } bewegt sich nicht wie der Rest: { $why }
refused-moves = { $spot } würde sich mitbewegen: { $why }
told-dart-behind = Abnäher { $dart } wird von etwas aus gemessen, das sich nicht wie er bewegt: nachsehen
word-match-mark = ein Passpunkt
told-notch-behind = Passzeichen { $name } der Naht { $seam } wird an einer Kante gemessen, die über die Linie läuft: es bleibt um { $far } je { $each } Änderung zurück

## What is typed; the file of a draft
note-before-lengthened = { $point }, bevor das Schnittteil verlängert wurde
refused-typed-length = `{ $text }` ist keine Länge über null, wie `20 cm` es ist
refused-typed-unit = `{ $text }` hat keine Einheit: ist es `{ $text } mm`, `{ $text } cm` oder `{ $text } in`?
new-draft = Neuer Entwurf
no-file-yet = noch in keiner Datei
file-changed-outside = { $name } wurde von einem anderen Programm geändert
file-removed-outside = { $name } wurde von einem anderen Programm entfernt

## What is the person's own
since-now = gerade eben
since-minutes =
    { $count ->
        [one] vor einer Minute
       *[other] vor { $count } Minuten
    }
since-hours =
    { $count ->
        [one] vor einer Stunde
       *[other] vor { $count } Stunden
    }
since-days =
    { $count ->
        [one] vor einem Tag
       *[other] vor { $count } Tagen
    }
own-set-aside = die Einstellungen in `{ $path }` sind nicht lesbar ({ $problem }); sie sind als `{ $aside }` beiseitegelegt, und es gelten die üblichen
own-not-set-aside = die Einstellungen in `{ $path }` lassen sich weder lesen ({ $problem }) noch beiseitelegen ({ $error }); es gelten die üblichen, und keine werden behalten
own-unread = die Einstellungen sind nicht mehr lesbar ({ $problem }) und bleiben, wie sie sind
own-unwritten = die Einstellungen lassen sich nicht in `{ $path }` schreiben: { $error }
own-version = sie sind von Version { $version }, und dieses Programm liest { $known }

## Unsaved work that is kept
work-unkept = nicht gespeicherte Arbeit lässt sich nicht in `{ $folder }` sichern: { $error }
work-unread = die nicht gespeicherte Arbeit in `{ $path }` ist nicht lesbar: { $problem }; die Datei bleibt, wie sie ist
work-taken = die nicht gespeicherte Arbeit in `{ $path }` ist in einem anderen Fenster offen
work-bytes = sie hat { $bytes } Byte
work-cut-off = sie ist abgeschnitten
work-first-line = ihre erste Zeile ist falsch: { $error }
work-too-much = zu viel Arbeit liegt dort noch; einiges davon öffnen oder wegwerfen
work-trouble = nicht gespeicherte Arbeit wird in `{ $folder }` nicht gesichert: { $error }; den Entwurf speichern und dort nach Platz und Rechten sehen

## Pulling; what cannot be computed
compare-other-uncomputed = der andere Entwurf lässt sich nicht berechnen
draft-uncomputed = der Entwurf lässt sich nicht berechnen
refused-pull = { $part } lässt sich nicht ziehen: { $why }
pull-elsewhere = es folgt aus { $of } und den Schritten von { $piece }; dort ziehen
pull-computing = es wird noch berechnet
pull-no-answer = seine Formel hat in dieser Größe kein Ergebnis
pull-held = keine eigene Zahl bewegt es: es folgt aus { $text }
pull-held-hint = { $why }; mit gehaltener Umschalttaste kommt am Ende ein Versatz dazu
pull-size-gone = diese Größe ist nicht mehr da
undo-pull = { $part } ziehen
undo-pull-in = { $part } in { $size } ziehen
undo-pull-up = { $part } ab { $size } aufwärts ziehen
pull-too-far = die Zahl { $number } kann sich nicht so weit ändern
gone-named = { $part } ist nicht mehr da
told-house-row = die Änderung steht in der Hauszeile { $rows }
note-added-to = hinzugefügt zu { $part }
pull-house-row = `{ $text }` in der Hauszeile { $row } ist keine bloße Zahl, die sich ändern ließe
pull-no-edge = es ist keine Kante
pull-no-shape-here = sie hat in dieser Größe keine Form
pull-no-point = sie geht durch keinen eigenen Punkt
pull-arc = ein Bogen wird an seiner Mitte gezogen; was von anderswo übernommen ist, folgt jenem
pull-no-shape = sie hat keine Form

## The pencil: what a place could mean
pencil-half = auf halbem Weg
pencil-third = auf einem Drittel des Wegs
pencil-two-thirds = auf zwei Dritteln des Wegs
pencil-quarter = auf einem Viertel des Wegs
pencil-three-quarters = auf drei Vierteln des Wegs
pencil-first = der erste Punkt, wo die Koordinaten beginnen
pencil-point = der Punkt { $name }
pencil-cross = wo sich { $one } und { $other } kreuzen
pencil-on = auf { $edge }, { $part }
pencil-square-on = auf { $edge }, im rechten Winkel dazu von { $from }
pencil-level-on = auf { $edge }, waagerecht zu { $with }
pencil-plumb-on = auf { $edge }, senkrecht zu { $with }
pencil-touch = wo eine Gerade von { $from } die Kante { $edge } berührt
pencil-swing = auf { $edge }, { $far } gerade von { $from }
pencil-along = auf { $edge }, { $far } von { $from }
pencil-meet = wo sich { $one } und { $other } träfen
pencil-beyond = { $far } über { $end } hinaus, wie { $edge } weiterläuft
pencil-level-plumb = waagerecht zu { $level }, senkrecht zu { $plumb }
pencil-level = waagerecht zu { $with }
pencil-plumb = senkrecht zu { $with }
pencil-mirrored = { $from } an { $edge } gespiegelt
pencil-square-off = im rechten Winkel von { $edge } weg, bei { $from }
pencil-parallel = wie { $edge } läuft
pencil-square = im rechten Winkel zu { $edge }
pencil-bisect = auf der Winkelhalbierenden bei { $from }
pencil-halfway = auf halbem Weg von { $first } nach { $last }
pencil-part-way = { $part } von { $first } nach { $last }
pencil-towards = { $far } von { $first } auf { $last } zu
pencil-turned = { $last } um { $first } gedreht
pencil-coordinates = an diesen Koordinaten
pencil-measured = gemessen von { $from }
pencil-polar = eine Richtung von { $from }, im Uhrzeigersinn von rechts
pencil-compass = so weit von { $first } und von { $last }
formula-no-answer = es hat in dieser Größe kein Ergebnis
formula-uncomputed = `{ $text }` lässt sich nicht berechnen

## The tape, traced outlines, pictures underneath
tape-half = eine Stelle auf { $edge }, auf halbem Weg
tape-along = eine Stelle auf { $edge }, { $far } von { $from }
tracing-scale-unknown = der Maßstab ist nicht bekannt: { $why }; sagen, wie lang etwas ist
tracing-scale-zero = der Maßstab muss über null sein
tracing-none = kein Umriss ist gewählt
tracing-no-outline = es gibt keinen Umriss { $number }
tracing-crosses = der Umriss von { $name } kreuzt sich selbst: vor dem Zuschneiden ausbessern
tracing-too-large = { $name } wäre { $metres } m groß; stimmt der Maßstab?
tracing-too-small = { $name } wäre weniger als 1 mm breit oder hoch; stimmt der Maßstab?
tracing-open-lines = offene Linien, die in keinem der gewählten Umrisse liegen und weggelassen wurden: { $count }
tracing-rounded = Stellen sind auf { $step } gerundet
tracing-one-line = ein Umriss aus nur einer geraden Linie umschließt nichts
underlay-too-near = die beiden Punkte liegen zu nah beieinander; zwei weit voneinander entfernte anklicken
underlay-pixel = ein Bildpunkt wäre { $mm } mm groß; stimmt der Abstand?
scale-of = { $of }: { $why }
scale-unit = eine Einheit der Datei
scale-no-outline = kein Umriss ist gewählt, dessen Breite sich sagen ließe
scale-width = die Breite von { $name }

## What may follow in a formula
formula-has-parts = hat Teile
formula-of-takes = von { $function }: { $takes }
formula-of = von { $function }
formula-is = { $kind }, { $value }
formula-edge = { $kind }, { $long } lang

## Lays by hand, and looking for them
hand-overlap = { $one } und { $other } überdecken sich um { $far }
hand-near = { $one } und { $other } liegen { $far } zu nah
hand-outside = { $piece } liegt { $far } über den Stoff hinaus
hand-loose = { $piece } liegt { $far } neben Bruch oder Bordüre
hand-count = { $name } liegt { $laid }-mal, nicht { $asked }-mal
hand-unknown = etwas liegt, wo nichts liegen kann
hand-moved = ein festgelegtes Schnittteil ist verschoben
longest-no-length = { $name } ist in dieser Größe keine Länge, also lässt sich nichts variieren
longest-stopped = beendet, bevor bekannt war, dass etwas passt
longest-nothing = nichts bis hinab zu { $name } = { $least } passt auf { $have }: dort { $least_needs }; jetzt ist es { $now }, und dafür { $now_needs }
longest-needs = werden { $far } Stoff gebraucht
longest-no-lay = gibt es kein Schnittbild ({ $why })
longest-all = { $name } kann { $value } sein: das Schnittbild braucht dann alle { $have }.
longest-takes = { $name } kann { $value } sein: das Schnittbild braucht dann { $need } von { $have }.
longest-is-now = So groß ist es jetzt.
longest-now-fits = Jetzt ist es { $now }, das passt.
longest-now-needs = Jetzt ist es { $now }, was { $need } Stoff braucht, { $short } mehr, als da sind.
longest-now-none = Jetzt ist es { $now }, wofür es kein Schnittbild gibt: { $why }.
longest-more-none = Mit mehr davon wurde kein Schnittbild gefunden.
longest-beyond-none = Für { $beyond } wurde kein Schnittbild gefunden.
longest-untried = Mehr wurde nicht versucht.
longest-uncomputed = der Entwurf lässt sich damit nicht berechnen
longest-not-found = kein Schnittbild wurde gefunden
lay-longer-than = es braucht mehr als { $plan }: die Schnittteile liegen ungünstiger, oder eine längere Suche fände Besseres
sizes-typed-unknown = es gibt keine Größe { $size }; die Größen sind { $known }
sizes-typed-many = `{ $text }`: zwischen 1 und { $most } Kleidungsstücke einer Größe können zusammen liegen
sizes-typed-none = die Größen nennen, die zusammen liegen, etwa `2 x S, 4 x M`
plan-lost = der Stoff oder die Größen dazu sind nicht mehr im Entwurf
plan-no-view = es gehört zu keiner Variante, die der Entwurf hat
plan-otherwise = der Stoff liegt jetzt anders; neu planen
turn-border = { $name } bleibt: eine Kante liegt an der Bordüre
turn-nap = { $name } bleibt: dieser Stoff hat Strich, also liegt alles in einer Richtung
turn-one-way = { $name } bleibt: nur eine Richtung ist erlaubt
turn-fold = { $name } bleibt: die Hälfte liegt im Stoffbruch
turn-second = { $name } bleibt: umgedreht wäre es ein zweites der anderen Seite
turn-face = { $name } bleibt: welche Seite oben liegt, sagt der Zuschnitt
turn-on-fold = { $name } bleibt im Stoffbruch: beide Hälften werden in einem geschnitten
turn-at-border = { $name } bleibt an der Bordüre
turn-no-piece = dieses Schnittteil liegt nicht auf dem Stoff
turn-locked = { $name } ist festgelegt; zuerst lösen

## Publishing: what is told to whoever publishes
output-of = { $of }: { $problem }
output-stopped = beendet; nichts wurde geschrieben
output-size = Größe { $sizes }
output-view-size = Variante { $view }, Größe { $sizes }
output-plan-out = das Schnittbild { $plan } ist weggelassen: { $why }
photo-out = Anleitungsschritt { $step }: das Bild { $file } ist weggelassen: { $problem }
photo-unnamed = keine Datei ist genannt
photo-elsewhere = ein Bild liegt im Ordner des Entwurfs oder darunter: dorthin kopieren
photo-no-folder = der Entwurf hat noch keinen Ordner: zuerst speichern
photo-missing = im Ordner des Entwurfs ist keine solche Datei
sheet-of = Bogen { $name }: { $problem }
sheet-no-size = es gibt keine Größe { $size }{ $hint }
sheet-no-piece = es gibt kein Schnittteil { $piece }{ $hint }
sheet-too-many = { $count } Größen zusammen lassen sich nicht unterscheiden; höchstens { $most }
sheet-width = `{ $text }` ist keine Papierbreite; als `wide 914 mm` schreiben
sheet-paper = das Papier `{ $words }` ist nicht bekannt; eines davon schreiben: { $papers }
unsaid-unread = { $at }: `{ $text }` ist nicht lesbar und steht dort, wie es getippt wurde; die Prüfung sagt, warum
unsaid-cloth-in = { $material } in { $sizes }
unsaid-no-plan = nirgends steht, wie viel Stoff zu kaufen ist: für { $cloth } ist kein Schnittbild behalten; im Raum „Stoff“ suchen, oder mit `tracewheel lay … --keep`
unsaid-no-plan-in-view = nirgends steht, wie viel Stoff für die Variante { $view } zu kaufen ist: für { $cloth } ist kein Schnittbild behalten; im Raum „Stoff“ suchen, oder mit `tracewheel lay … --keep`
unsaid-no-value = { $at }: `{ $text }` hat in Größe { $sizes } keinen Wert, und dort steht ein Strich; die Prüfung sagt, warum

## Releases: why not, and what is told
stop-errors =
    { $count ->
        [one] Ein Fehler verhindert
       *[other] { $count } Fehler verhindern
    } eine Ausgabe:
    { $errors }
    Nichts wurde geschrieben. Ein Probemodell lässt sich trotzdem drucken
stop-survey = die Maßtabelle ist eine Reihenmessung, also lässt sich, was darauf entworfen ist, nicht nach ihr als Passformtabelle herausgeben; auf einer Maßtabelle entwerfen, die für Passform gemacht ist, und `survey` herausnehmen. Nichts wurde geschrieben. Ein Probemodell lässt sich trotzdem drucken
stop-untold-edition = der Entwurf sagt nicht, welche Ausgabe er ist: am Kopf des Entwurfs angeben, `edition: "1"`; sie steht auf jedem Schnittteil und jeder Seite. Nichts wurde geschrieben
stop-untold-date = der Entwurf sagt nicht, von wann er ist: `--date` mit Jahr, Monat und Tag angeben, etwa 2026-05-31; das Datum steht auf jedem Schnittteil und jeder Seite. Nichts wurde geschrieben
stop-date = `{ $date }` ist kein Datum: 2026, 2026-05 oder 2026-05-31 schreiben. Nichts wurde geschrieben
stop-draft-date = `date` am Kopf des Entwurfs, `{ $date }`, ist kein Datum: dort 2026, 2026-05 oder 2026-05-31 schreiben, oder `--date` angeben. Nichts wurde geschrieben
stop-edition = Ausgabe { $edition } wurde schon herausgegeben{ $told }: { $mend }. Nichts wurde geschrieben
stop-lacking =
    einer Ausgabe würde etwas fehlen:
    { $lacking }
    Nichts wurde geschrieben
stop-sheet = { $problem }. Nichts wurde geschrieben
stop-damaged =
    die Ausgabe in { $folder } ist nicht, wie sie geschrieben wurde; nichts wurde geschrieben:
    { $faults }
stop-changes = was sich seit der Ausgabe davor geändert hat, lässt sich nicht sagen: { $problem }; ihren Ordner nennen (`--last`, im Fenster „eine anderswo“), oder sagen, dass dies die erste ist (`--first`). Nichts wurde geschrieben
note-date-before = das Datum { $date } liegt vor dem der Ausgabe davor, Ausgabe { $edition } vom { $other }
edition-in = , in { $folder }
edition-on-in = {" "}am { $date }, in { $folder }
edition-on-log = {" "}am { $date }, wie das Protokoll des Entwurfs sagt
mend-raise-edition = eine Ausgabe wird nie überschrieben: die Nummer der Ausgabe erhöhen
mend-new-edition = was sich seither geändert hat, braucht eine neue Ausgabe: am Kopf des Entwurfs angeben
mend-print-again = jene mit `tracewheel release again` noch einmal drucken, das kopiert sie
lacks-piece = { $name } lässt sich in Größe { $size } nicht zeichnen
note-never-sewn = nie genäht: das Protokoll sagt von keiner Anprobe in { $sizes }. Das steht in { $file }, wer kauft, erfährt es nicht
note-warnings =
    { $count ->
        [one] die Prüfung meldet eine Warnung; `tracewheel proof` führt sie auf
       *[other] die Prüfung meldet { $count } Warnungen; `tracewheel proof` führt sie auf
    }
untold-licence = der Entwurf nennt keine Lizenz
untold-contact = der Entwurf nennt keinen Kontakt für Fragen
look-missing = { $file } fehlt
look-unread = { $file } ist nicht lesbar: { $error }
look-bytes = { $file } ist beschädigt: { $bytes } Byte statt { $told }
look-digest = { $file } ist beschädigt: die Prüfsumme ist eine andere
last-not-there = das Protokoll des Entwurfs nennt zuletzt Ausgabe { $edition } vom { $date }, und diese liegt nicht in { $folder }
last-no-draft = die Ausgabe hat keinen Entwurf
last-passed-over = übergangen: { $error }
manifest-missing = es gibt keine solche Datei, also ist dies kein Ordner einer Ausgabe
manifest-bytes = sie hat mehr als { $most } Byte
manifest-utf8 = sie ist kein Text in UTF-8
manifest-format = sie ist nicht vom Format { $format }
manifest-no-seal = sie hat kein Siegel
manifest-seal = sie ist nicht, wie sie geschrieben wurde: ihr Siegel passt nicht
manifest-outside = sie nennt die Datei { $file }, die nicht in ihrem Ordner liegt

## Blocks from other drafts
taken-changed-here = hier geändert: { $parts }
taken-new = { $part } neu
taken-changed = { $part } geändert
taken-gone = { $part } entfallen
taken-new-too = { $part } neu (auch hier geändert)
taken-changed-too = { $part } geändert (auch hier geändert)
taken-gone-too = { $part } entfallen (auch hier geändert)
undo-take-block = Grundschnitt { $name } übernehmen
undo-accept-block = übernehmen, was sich im Grundschnitt { $name } geändert hat
undo-untie-block = Grundschnitt { $name } lösen
undo-move-block = sagen, wo der Grundschnitt { $name } ist
block-none-taken = es gibt keinen Grundschnitt { $name }; keiner wurde übernommen
block-unknown = es gibt keinen Grundschnitt { $name }; Grundschnitte: { $known }
told-block-untied = der Grundschnitt { $name } ist gelöst: was übernommen wurde, bleibt und folgt ihm nicht mehr
told-block-moved = der Grundschnitt { $name } wird bei { $file } gesucht
block-name = `{ $name }` kann kein Name eines Grundschnitts sein; Buchstaben, Ziffern und `_` sind möglich, zuerst ein Buchstabe
block-taken = einen Grundschnitt { $name } gibt es schon; einen anderen Namen wählen
block-no-pieces = jener Entwurf hat keine Schnittteile zu übernehmen
block-names = dieser Entwurf hat schon Namen, die mitkämen: { $parts }; den Grundschnitt mit einer Vorsilbe übernehmen, etwa `{ $name }_`
told-block-sizes = ; die Größen seiner Maßtabelle kamen mit
told-block-taken = der Grundschnitt { $name } wurde übernommen: { $counted }{ $also }
told-block-same = der Grundschnitt { $name } ist, wie er übernommen wurde
block-clashes = hier und im Grundschnitt geändert: { $parts }; sagen, was bleiben soll
block-new-name = neu im Grundschnitt: { $part }; dieser Entwurf hat den Namen schon, zuerst hier umbenennen
told-block-kept = ; { $count } blieben, wie sie hier geändert sind
told-block-accepted =
    { $count ->
        [one] vom Grundschnitt { $name } wurde übernommen: { $count } Änderung{ $kept }
       *[other] vom Grundschnitt { $name } wurde übernommen: { $count } Änderungen{ $kept }
    }
head-none = keine Angabe
head-quoted = „{ $text }“
head-instead = { $what }: { $now } statt { $was }
count-rows =
    { $count ->
        [one] { $count } Zeile
       *[other] { $count } Zeilen
    }
count-values =
    { $count ->
        [one] { $count } Wert
       *[other] { $count } Werte
    }
count-drawings =
    { $count ->
        [one] { $count } Zeichnung
       *[other] { $count } Zeichnungen
    }
count-pieces =
    { $count ->
        [one] { $count } Schnittteil
       *[other] { $count } Schnittteile
    }
count-placements =
    { $count ->
        [one] { $count } Lage
       *[other] { $count } Lagen
    }
count-seams =
    { $count ->
        [one] { $count } Naht
       *[other] { $count } Nähte
    }
count-joints =
    { $count ->
        [one] { $count } Stoßstelle
       *[other] { $count } Stoßstellen
    }
count-conditions =
    { $count ->
        [one] { $count } Bedingung
       *[other] { $count } Bedingungen
    }
count-measures =
    { $count ->
        [one] { $count } Fertigmaß
       *[other] { $count } Fertigmaße
    }
count-materials =
    { $count ->
        [one] { $count } Material
       *[other] { $count } Materialien
    }
count-strips =
    { $count ->
        [one] { $count } Streifen
       *[other] { $count } Streifen
    }
count-others = { $kind }: { $count }
told-own-stays = ; hier eigene, dort andere: { $parts }
block-no-piece = im Entwurf des Grundschnitts gibt es kein Schnittteil { $name }; seine Schnittteile sind { $pieces }
block-part = { $part } des Grundschnitts: { $problem }
block-file-lost = { $path } ist nicht zu finden: { $error }
block-other-drive = { $path } liegt auf einem anderen Laufwerk als der Entwurf; neben den Entwurf kopieren

## The program itself
build-no-window = dieses Programm ist ohne Fenster gebaut

## How cloth lies
lies-open = offen
lies-folded = der Länge nach gefaltet
lies-to-middle = beide Webkanten zur Mitte
lies-part = teilweise gefaltet
lies-with-nap = mit Strich
