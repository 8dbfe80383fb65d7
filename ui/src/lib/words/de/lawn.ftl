# Wie ein Rasen gemessen wird: die Arten, was bei jeder gefragt wird, und Zeichnen von Hand. Die Sätze des Fachs stehen in trade.ftl.

## Ways
way-question = Wie messen Sie?
way-shape = Länge und Breite
way-shape-more = Ein Rechteck, Dreieck oder Kreis.
way-braces = Seiten und Diagonalen
way-braces-more = Jede Seite, und quer von Ecke zu Ecke.
way-offsets = Entlang einer Messlinie
way-offsets-more = Eine Linie hindurch, und wie weit zu jeder Kante.
way-walked = Herumgehen
way-walked-more = Mit dem Standort des Telefons.
way-corners = Zeichnen oder Datei
way-corners-more = Ecken ziehen, oder GeoJSON oder GPX holen.
way-other = Auf andere Art messen
instrument-question = Womit messen Sie?
instrument-tape = Maßband
instrument-wheel = Messrad
instrument-paces = Schritte
pace-length = Einer Ihrer Schritte
pace-length-hint = Gehen Sie 20 Schritte am Maßband entlang und teilen Sie.

## Sides and braces
braces-hint = Fangen Sie an der vorderen linken Ecke an, A, und gehen Sie herum: an der Vorderkante bis B, und so weiter.
braces-corners = Ecken
braces-n-corners = { $n ->
    [one] eine Ecke
   *[other] { $n } Ecken
}
braces-side = Seite { $from } bis { $to }
braces-brace = Diagonale { $from } bis { $to }
braces-line = { $from } bis { $to }
braces-braces = Diagonalen
braces-braces-hint = Seiten allein können sich verschieben. Jede Diagonale hält die Form; eine mehr als nötig prüft sie alle.
braces-add-missing = Diagonale { $from } bis { $to } dazu: Sie fehlt noch
braces-add-other = Weitere Diagonale
braces-add = Diese Diagonale dazu
braces-from = Von Ecke
braces-to = Bis Ecke
braces-remove = Diagonale { $from } bis { $to } entfernen
braces-blunder = Messen Sie { $from } bis { $to } noch einmal. Sie lasen { $taped }; alle anderen zusammen ergeben { $others }.
braces-fit = Wie die Linien zusammenpassen
braces-fit-hint = Um wie viel länger (+) oder kürzer (−) alle zusammen jede machen, als sie gelesen wurde.
braces-fit-line = Linie
braces-fit-taped = Gelesen
braces-fit-off = Daneben
braces-unchecked = keine andere Linie prüft sie

## Baseline
offsets-hint = Legen Sie eine Linie durch den Rasen, von vorn nach hinten. Messen Sie an jeder Stelle rechtwinklig zur linken und zur rechten Kante, in Gehrichtung gesehen. Leer heißt: auf dieser Seite nichts.
offsets-unit = Gemessen in
offsets-row = Stelle { $n }
offsets-chainage = Entlang
offsets-left = Links
offsets-right = Rechts
offsets-add = Stelle dazu
offsets-remove = Stelle { $n } entfernen
offsets-trapezoid = Gerade zwischen den Stellen: { $area }. Danach wird die Behandlung bemessen.
offsets-simpson = Mit runden Kanten (Simpson), zum Vergleich: { $area }.

## Walked round
walked-hint = Stellen Sie sich an die Kante, starten Sie, und gehen Sie einmal in Ruhe außen herum. Halten Sie das Telefon unter freien Himmel.
walked-start = Herumgehen starten
walked-stop = Halt: Ich bin herum
walked-go-on = Diese Runde fortsetzen
walked-second = Zum Vergleich ein zweites Mal herumgehen
walked-anew = Diese Runde verwerfen
walked-n-fixes = { $n ->
    [0] Warten auf den ersten Punkt
    [one] Ein Punkt
   *[other] { $n } Punkte
}
walked-accuracy = Dieser ist auf { $accuracy } genau.
walked-waiting = Das Telefon sucht seinen Standort.
walked-file = GPX-Datei holen
walked-kept = { $kept } Punkte verwendet, { $dropped } weggelassen.

part-sd = { $area }, mit einer Standardunsicherheit von { $sd }. Das ± des ganzen Rasens ist das Doppelte der Unsicherheit seiner Stücke zusammen.

## By hand, and files
draw-hint = Beginnen Sie mit einem ungefähr gleich großen Rechteck und ziehen Sie seine Ecken. Oder holen Sie eine Datei.
draw-width = Ungefähr wie breit
draw-length = Ungefähr wie lang
draw-begin = Dieses Rechteck zeichnen
draw-no-rectangle = Diese Längen ergeben kein Rechteck.
draw-corners = { $n ->
   *[other] Die { $n } Ecken ziehen
}
draw-anew = Neu beginnen
draw-take-hold = Fassen Sie eine Ecke und ziehen Sie sie.
draw-corner = Ecke { $name }
draw-undo = { $n ->
    [0] Nichts zurückzunehmen
    [one] Zurück (1)
   *[other] Zurück ({ $n })
}
draw-snap = Rechtwinklig einrasten
draw-add = Ecke dazu
draw-add-hint = Tippen Sie auf die Seite, wo die neue Ecke hin soll.
draw-add-on = Ecke dazu auf der Seite { $from } bis { $to }
draw-remove = Ecke entfernen
draw-done = Fertig
file-bring = GeoJSON- oder GPX-Datei holen
file-reading = Die Datei wird gelesen
give-out-heading = Herausgeben
give-out-hint = Als GeoJSON, für andere Programme. Namen von Kunden sind nicht darin.
give-out-do = Datei anlegen
give-out-save = { $name } sichern

## Places
places-heading = Wo was ist
places-more = Zugang und Wasserhahn: Nachfüllen und die Folge der Bahnen richten sich danach.
places-do = In der Zeichnung markieren
places-hint = { $thing }: Tippen Sie in der Zeichnung dorthin, oder ziehen Sie es.
places-which = Was gesetzt wird
places-entry = Zugang
places-tap = Wasserhahn
places-piece = { $what } ({ $n })
places-set = An eine Ecke setzen
places-clear = Aus der Zeichnung nehmen
places-has-entry = Zugang markiert
places-has-tap = Wasserhahn markiert
part-place = In der Zeichnung ziehen

## Slope and compass
lawn-slope = Hat er Gefälle?
slope-question = Gefälle
slope-hint = Das Mittel richtet sich nach der ebenen Fläche, das Wasser nach dem Boden, den Sie gehen.
slope-level = Eben
slope-gradient = Ich kenne die Neigung
slope-rise = Höhe über eine gemessene Länge
slope-gradient-is = Neigung
slope-ground = Länge am Boden, gerade bergauf
slope-rise-is = Um wie viel ihr Ende höher liegt
slope-uphill = Wo geht es bergauf?
uphill-away = Nach hinten
uphill-right = Nach rechts
uphill-front = Nach vorn
uphill-left = Nach links
lawn-compass = Kompass
lawn-bearing = Kompasszahl von vorn nach hinten
lawn-bearing-placed = Der Ort des Rasens auf der Erde sagt, wo Norden ist: Es ist nichts einzugeben.
lawn-bearing-hint = Stellen Sie sich vorn hin, sehen Sie nach hinten und lesen Sie den Kompass ab: Norden ist 0, Osten 90. Dann wird Norden eingezeichnet.

## On the drawing
drawing-entry = Zugang
drawing-tap = Hahn
drawing-north = N
drawing-refill = vor { $strip }
