# Was über Standorte gesagt wird: geholte Dateien, mit dem Telefon gegangene Runden.

# Files
import-empty = In dieser Datei ist nichts.
import-too-large = Diese Datei ist größer als { $limit } MB. Holen Sie eine, in der nur der Rasen ist.
geojson-not-json = Diese Datei bricht ab oder ist beschädigt, in Zeile { $line }, Stelle { $column }. Sichern Sie sie noch einmal als GeoJSON.
geojson-not-geojson = Das ist kein GeoJSON (RFC 7946). Sichern Sie den Umriss als GeoJSON und holen Sie das.
geojson-no-ground = Diese Datei enthält keinen geschlossenen Umriss, nur Punkte oder offene Linien. Zeichnen Sie den Rasen als Fläche.
geojson-other-crs = Diese Datei steht in einem anderen Koordinatensystem ({ $name }). Sichern Sie sie in WGS 84, Länge und Breite in Grad.
geojson-not-degrees = Das sind keine Grad: vielleicht Meter eines Kartengitters. Sichern Sie die Datei in WGS 84, Länge und Breite in Grad.
geojson-position-incomplete = Eine Ecke in dieser Datei hat nur eine Zahl. Sichern Sie sie noch einmal als GeoJSON.
geojson-looks-swapped = Länge und Breite scheinen vertauscht. In GeoJSON steht die Länge zuerst. Sichern Sie die Datei noch einmal so herum.
geojson-too-large = Die Formen liegen { $found } auseinander; ein Rasen reicht höchstens { $limit }. Holen Sie einen Rasen allein.
geojson-too-many-corners = Diese Datei hat { $found } Ecken; gelesen werden höchstens { $limit }. Holen Sie einen Rasen allein, oder einen einfacheren Umriss.
geojson-too-many-pieces = Diese Datei hat { $found } Formen; gelesen werden höchstens { $limit }. Holen Sie einen Rasen allein.
geojson-ring-too-few-corners = Form { $piece } hat einen Ring mit weniger als drei verschiedenen Ecken. Zeichnen Sie sie als Fläche und sichern Sie sie noch einmal.
geojson-ring-crosses-itself = Form { $piece } kreuzt sich selbst: Seite { $first } trifft auf Seite { $second }. Berichtigen Sie es dort, wo sie gezeichnet wurde.
geojson-ring-without-area = Form { $piece } hat einen Ring ohne Fläche.
geojson-hole-outside = Form { $piece } hat ein Loch, das außerhalb von ihr liegt. Berichtigen Sie es dort, wo sie gezeichnet wurde.
geojson-more-problems = Und { $found } weitere dieser Art.
geojson-lies-at = Das liegt auf der Breite { $latitude }, Länge { $longitude }. Ist dort der Rasen?
geojson-rings-closed = Offen gelassene Ringe, für Sie geschlossen: { $found }.
geojson-corners-doubled = Ecken, die doppelt standen und einmal zählen: { $found }.
geojson-holes-taken-out = Löcher, die zu Aussparungen werden: { $found }.
geojson-without-area = Punkte und offene Linien, die weggelassen wurden: { $found }.
geojson-worked-out-left = Zu behandelnde Fläche, Randstreifen und behandelter Boden in der Datei, die neu berechnet werden: { $found }.
gpx-not-gpx = Das ist keine GPX-Datei. Sichern Sie den Gang als GPX und holen Sie das.
gpx-no-positions = Diese Datei enthält keine Standorte.
gpx-too-many-positions = Diese Datei hat mehr als { $limit } Standorte. Holen Sie einen Gang allein.
gpx-too-many-tracks = Diese Datei hat mehr als { $limit } Spuren. Holen Sie einen Gang allein.
gpx-broken-off = Die Datei bricht ab; was bis dahin aufgezeichnet war, ist hier.
gpx-positions-unreadable = Standorte, die sich nicht lesen ließen und weggelassen wurden: { $found }.
gpx-accuracy-from-dilution = Die Datei nennt eine Verschlechterung (DOP), die keine Länge ist: Für jede Einheit davon gelten { $metres }.

# Positions
position-not-finite = Das ist kein Standort.
position-latitude-beyond-pole = Eine Breite liegt zwischen -90 und 90 Grad.
position-longitude-beyond-half = Eine Länge liegt zwischen -180 und 180 Grad.

# The device's position
position-refused = Das Telefon darf nicht sagen, wo es ist. Erlauben Sie dieser App in den Einstellungen des Telefons den Standort.
position-not-here = Dieses Gerät gibt keinen Standort. Holen Sie den Gang stattdessen als GPX-Datei.
position-not-found = Es wurde kein Standort gefunden. Gehen Sie ins Freie, weg von Mauern und Bäumen, und warten Sie einen Augenblick.
position-failed = Der Empfänger hatte Schwierigkeiten: { $detail }. Er versucht es weiter.

# A round walked with the phone
walk-too-many-fixes = Dieser Gang hat { $found } Punkte; verwendet werden höchstens { $limit }. Holen Sie eine Runde um einen Rasen.
walk-too-few-fixes = Nur { $usable } Punkte sind brauchbar und { $needed } werden gebraucht; { $dropped } wurden verworfen. Gehen Sie noch einmal unter freiem Himmel.
walk-too-large = Dieser Gang reicht weiter als { $limit }. Holen Sie die Runde um einen Rasen allein.
walk-not-closed = Der Gang endet { $gap } von seinem Anfang entfernt, bei einer Runde von { $round }. Gehen Sie weiter bis zum Anfang.
walk-crosses-itself = Der Gang kreuzt etwa { $after } nach dem Anfang seinen eigenen Weg. Gehen Sie die Kante einmal außen herum.
walk-without-area = Der Gang umschließt keinen Boden. Gehen Sie einmal außen herum.
walk-tape-instead = Die Fläche kann um { $doubt } falsch sein, mehr als { $limit }: Die Punkte sind für diesen Rasen zu unsicher. Messen Sie mit dem Maßband.
walk-again-to-compare = Aufeinanderfolgende Punkte teilen ihre Fehler. Gehen Sie ein zweites Mal herum und vergleichen Sie.
walk-accuracy-not-stated = Nicht jeder Punkt sagt, wie sicher er ist: Für diese gilt { $assumed }.
walk-fixes-dropped = Punkte, die nicht passten und weggelassen wurden: { $dropped }. Verwendet: { $kept }.
walk-loops-cut = Kleine Schleifen aus Zittern, abgeschnitten: { $found }.
walk-gap-closed = Die letzten { $gap } wurden gerade geschlossen.
walk-rounds-agree = Beide Runden stimmen überein: Sie liegen { $difference } auseinander; so unsicher, wie die Punkte sind, wären { $allowed } keine Überraschung. Die erste Runde zählt; das Mittel ist { $mean }.
walk-rounds-differ = Die Runden liegen { $difference } auseinander, mehr als die erlaubten { $allowed }. Gehen Sie noch einmal, oder messen Sie mit dem Maßband.
