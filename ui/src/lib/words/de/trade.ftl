# Was das Fach und die Abläufe außerhalb der Prüfungen sagen: Felder, Fehler, Dinge zum Abhaken, getane Schritte.

# At a field
empty = Bitte ausfüllen.
not-a-number = Das ist keine Zahl. Geben Sie Ziffern ein, etwa 2,5.
not-a-whole-number = Geben Sie eine ganze Zahl ein.
ambiguous = Das lässt sich auf zwei Arten lesen. Geben Sie es ohne Zeichen zwischen den Tausendern ein, etwa 1200.
negative = Das kann nicht unter null liegen.
zero = Das kann nicht null sein.
too-small = Das ist zu klein, um zu stimmen: Es sollte mindestens { $limit } sein.
too-large = Das ist zu groß, um zu stimmen: Es sollte höchstens { $limit } sein.
count-too-large = Das sind zu viele, um zu stimmen: Es sollten höchstens { $limit } sein.
too-many = Das sind zu viele: höchstens { $limit }.
wrong-unit = Diese Einheit passt hier nicht. Wählen Sie eine andere.
unit-unknown = Diese Einheit ist nicht bekannt ({ $unit }). Wählen Sie eine andere.
choose-one = Wählen Sie eines aus.
choose-at-least-one = Wählen Sie mindestens eines aus.
choice-unknown = Diese Auswahl ist nicht bekannt ({ $choice }). Wählen Sie eine andere.
text-too-long = Das ist zu lang: { $count } Zeichen, höchstens { $limit }.
not-a-date = Das ist kein Tag. Geben Sie Jahr, Monat, Tag ein.

# Lawns
a = die Seite an der Vorderkante
b = die rechte Seite
c = die linke Seite
triangle-side-too-long = Ein solches Dreieck gibt es nicht. Zu lang: { $side } mit { $value }; die beiden anderen haben zusammen nur { $others }. Messen Sie noch einmal.
angle-too-small = Diese Öffnung ist zu klein: mindestens { $limit }.
no-parts = Ein Rasen braucht mindestens eine Form.
first-part-taken-out = Die erste Form muss Rasen sein.
no-such-side = Eine solche Seite gibt es nicht.
side-twice = Diese Seite wurde zweimal genannt.
patch-does-not-fit = Das passt nicht in den Rasen. Machen Sie es kleiner oder sagen Sie, wo es liegt.
patch-larger-than-lawn = Das ist größer als der Rasen selbst. Prüfen Sie die Größe und wo es liegt.
patch-outside = Das liegt außerhalb des Rasens. Ändern Sie, wo es liegt.
patch-partly-outside = { $what }: Ein Teil davon liegt außerhalb des Rasens; ausgespart wird nur, was auf dem Rasen liegt.
patches-overlap = { $one } und { $other } liegen übereinander. Ihr gemeinsamer Boden wird einmal ausgespart.
place-needed = Sagen Sie, wie weit rechts und wie weit hinten das beginnt.
place-too-far = Diese Stelle liegt auf keinem Rasen.
corners-none = Noch gibt es keine Ecken. Zeichnen Sie ihn, oder holen Sie eine Datei.
corner-unknown = Eine solche Ecke gibt es nicht.
part-no-surer = Von Hand verschobene Ecken machen die Fläche nicht sicherer, als sie vorher gemessen war.
outline-turned-over = Dort wäre der Umriss umgeklappt. Lassen Sie die Ecke auf ihrer Seite.
file-among-unplaced = Die anderen Stücke und Stellen dieses Rasens wurden von Hand gesetzt, und niemand weiß, wo auf der Erde das ist. Die Datei lässt sich nicht danebenlegen. Holen Sie sie in einen eigenen Rasen, oder nehmen Sie die Stellen vorher heraus.
file-before-bearing = Stellen Sie erst die Himmelsrichtung richtig: Nach ihr wird die Datei hingelegt.
corner-of-no-ring = Eine runde Form hat keine Ecken zum Verschieben. Zeichnen Sie sie stattdessen mit Ecken.
walked-nothing = Hier ist noch niemand herumgegangen.
part-now-by-corners = Das wird jetzt nach seinen Ecken gemessen. Was vorher eingegeben war, bleibt erhalten: Wählen Sie die alte Art, und es ist wieder da.
side-between = { $from } bis { $to }
lawn-without-origin = Niemand weiß, wo auf der Erde dieser Rasen liegt. Gehen Sie einmal herum, oder holen Sie ihn aus einer Datei.
gpx-more-tracks = Weitere Spuren in dieser Datei, weggelassen: { $found }.
place-needs-both = Sagen Sie beides, wie weit rechts und wie weit hinten, oder keines.
nothing-left-to-treat = Vom Rasen bleibt nichts übrig. Machen Sie Beete oder Randstreifen kleiner.
corner-twice = Ecke { $corner } und die nächste sind dieselbe. Nehmen Sie eine davon heraus.
slope-too-steep = Das ist zu steil, um zu Fuß zu spritzen: höchstens { $limit }. Prüfen Sie die Angaben.
rise-longer-than-ground = Der Höhenunterschied kann nicht so groß sein wie die Länge am Boden, { $ground }. Messen Sie beides noch einmal.
brace-missing = Diese Längen halten die Ecken nicht fest. Messen Sie auch { $from }–{ $to }.
braces-fit-nothing = Kein Umriss passt annähernd zu diesen Längen. Messen Sie sie noch einmal.
braces-cross = Mit diesen Längen trifft Seite { $one } auf Seite { $other }. Prüfen Sie die Längen und die Reihenfolge der Ecken.
no-such-corner = Eine solche Ecke gibt es nicht.
line-to-itself = Eine Länge läuft zwischen zwei verschiedenen Ecken.
line-longer-than-way-round = { $from }–{ $to } kann nicht { $value } sein: Der Weg { $way } hat nur { $round }. Messen Sie beides noch einmal.
lengths-close = Alle Längen passen auf { $worst } zusammen (am schlechtesten { $from }–{ $to }).
lengths-unchecked = Noch prüft keine Länge eine andere.
line-likely-wrong = { $from }–{ $to } ist höchstwahrscheinlich falsch: gemessen { $value }, nach den anderen { $others }. Messen Sie noch einmal.
one-of-these-wrong = Eine davon ist höchstwahrscheinlich falsch: { $among }. Messen Sie sie noch einmal, oder auch { $from }–{ $to }.
one-of-these-wrong-all-taped = Eine davon ist höchstwahrscheinlich falsch: { $among }. Messen Sie sie noch einmal.
lengths-disagree = Die Längen passen nicht zusammen und können nicht zeigen, welche falsch ist. Messen Sie auch { $from }–{ $to }, oder alle noch einmal.
lengths-disagree-all-taped = Die Längen passen nicht zusammen und können nicht zeigen, welche falsch ist. Messen Sie sie noch einmal.
doubt-from-residuals = Die Längen passen schlechter, als sie sollten; darum gilt die Fläche als unsicherer.
outline-not-settled = Zwei Umrisse passen zu diesen Längen; der wahrscheinlichere ist gezeichnet. Messen Sie { $from }–{ $to }, um sicher zu sein.
corner-held-weakly = Ecke { $corner } kann um { $off } falsch liegen. Messen Sie { $from }–{ $to }, das hält sie fest.
nothing-checks = Nichts prüft diese Längen. Messen Sie auch { $from }–{ $to }, dann zeigt sich ein Fehler.
nothing-checks-all-taped = Nichts prüft diese Längen. Messen Sie eine davon noch einmal.
offsets-too-few = Eine Messlinie braucht mindestens zwei Stellen.
chainage-not-rising = Die Stellen folgen einander auf der Linie: Diese sollte jenseits von { $limit } liegen.
offset-without-width = Bei { $at } hat der Rasen keine Breite. Messen Sie ihn in zwei Teilen, oder prüfen Sie die Abstände.
simpson-needs-equal-spaces = Die Simpsonregel braucht gleiche Abstände zwischen den Stellen.
simpson-needs-odd-stations = Die Simpsonregel braucht eine ungerade Zahl von Stellen.
area-too-uncertain = Die Fläche kann um { $doubt } falsch sein; dosieren lässt sich bis { $limit }. Messen Sie mit dem Maßband, oder mehr Längen.
outline-not-finite = Die Form lässt sich nicht zeichnen. Prüfen Sie die Längen.
outline-too-few-corners = Die Form hat zu wenige Ecken. Prüfen Sie die Längen.
outline-crosses-itself = Der Umriss kreuzt sich selbst. Prüfen Sie die Längen, oder ziehen Sie die Ecke zurück.
outline-without-area = Der Umriss umschließt keinen Rasen. Prüfen Sie die Längen.
patch-place-assumed = { $what }: Niemand hat gesagt, wo das liegt; es ist in der Mitte gezeichnet.
part-set-beside = Niemand hat gesagt, wo Form { $part } liegt: Sie ist neben der ersten gezeichnet.
client-unknown = Dieser Kunde ist hier nicht eingetragen. Wählen Sie noch einmal.
doubt-not-stated = Niemand hat gesagt, wie falsch die Fläche sein kann: Sie gilt, wie sie ist.
doubt-of-part-unknown = Niemand weiß, wie falsch diese Formen sein können; sie gelten als genau: { $parts }. Das ± ist das der anderen. Wenn Sie wissen, wie falsch die ganze Fläche sein kann, geben Sie es ein.

# Kits and calibrations
dead-volume-fills-the-tank = Das kann nicht so viel sein, wie der Tank fasst.
jug-or-scales-needed = Nennen Sie den kleinsten Teilstrich Ihres Messbechers oder Ihrer Waage.
flow-not-believed = Das ergibt { $value }, was keine solche Düse ausbringt (von { $least } bis { $most }). Prüfen Sie Messbecher und Uhr.
pace-not-believed = Das ergibt { $value }, was niemand geht (von { $least } bis { $most }). Prüfen Sie Länge und Uhr.

# Labels
needed-for-plant-protection = Das Etikett eines Pflanzenschutzmittels nennt das. Schreiben Sie es ab.
density-needed-for-dose-by-mass = Die Aufwandmenge ist nach Gewicht: Sagen Sie, was ein Liter wiegt.
label-without-name = Das Etikett hat noch keinen Namen.
label-without-purpose = Wählen Sie, wofür das Etikett es erlaubt.
label-without-dose = Das Etikett hat noch keine Aufwandmenge.
label-without-authorisation-number = Ein Pflanzenschutzmittel hat eine Zulassungsnummer. Schreiben Sie sie ab.
label-dose-kinds-differ = Eine Aufwandmenge ist nach Gewicht und die andere nach Volumen. Schreiben Sie beide gleich ab.
label-dose-above-highest = Die Aufwandmenge, { $dose }, liegt über der höchsten, { $highest }. Sehen Sie noch einmal aufs Etikett.
label-water-range-reversed = Das meiste Wasser ist weniger als das wenigste. Sehen Sie noch einmal aufs Etikett.
label-concentration-kind-differs = Die Aufwandmenge ist nach Gewicht und die Konzentration nach Volumen, oder umgekehrt. Schreiben Sie beide gleich ab.
label-crystals-by-volume = Kristalle und Pulver werden nach Gewicht dosiert.
look-again-highest-far-above-dose = Die höchste Aufwandmenge ist { $times } so groß wie die genannte. Steht das so auf dem Etikett?
look-again-water-range-wide = Der Bereich für das Wasser ist sehr weit. Steht das so auf dem Etikett?
look-again-water-unusual = So viel Wasser, { $value }, ist für eine Rückenspritze ungewöhnlich. Steht das so auf dem Etikett?
look-again-dose-much-for-the-water = Das ist viel Mittel für so wenig Wasser. Steht das so auf dem Etikett?
look-again-no-equipment-for-mixing = Für den Umgang mit dem Mittel ist keine Schutzausrüstung abgeschrieben. Verlangt das Etikett wirklich keine?
look-again-no-margin-to-water = Keine Abstandsauflage zu Gewässern ist abgeschrieben. Nennt das Etikett wirklich keine?
look-again-kills-grass = Es tötet Gras: Es darf auf keinen Rasen.
look-again-date-in-future = Der Tag { $date } liegt in der Zukunft.

# Planning
tank-too-small-for-a-strip = Der Tank reicht nicht für eine Bahn. Gehen Sie schneller, oder nehmen Sie einen größeren Tank.
too-many-fills = Das gibt zu viele Füllungen. Nehmen Sie einen größeren Tank.
too-many-strips = Das gibt zu viele Bahnen. Prüfen Sie die Arbeitsbreite.
nothing-to-spray = Es gibt nichts zu spritzen. Prüfen Sie Aufwandmenge und Wasser.
number-of-passes = Zwischen einem und { $limit } Durchgängen.
headings-and-passes-differ = Jeder Durchgang braucht eine Richtung.
no-dose = Die Aufwandmenge muss über null liegen.
measure-kind-differs = Das Mittel wird gewogen und zur Spritze gehört keine Waage, oder umgekehrt. Tragen Sie bei der Spritze ein, was fehlt.
trim-not-believed = Das beim letzten Mal gelernte Wasser, { $value }, kann nicht stimmen. Litern Sie die Spritze neu aus.
both-headings-turned = Die Restbahn kann nicht in beiden Richtungen der anderen Richtung überlassen werden.
no-such-number-of-passes = Die Restbahn lässt sich nicht in { $passes } Durchgängen spritzen.

# Failures
failure-refused = { $count ->
    [0] So kann das nicht behalten werden.
    [one] Eines ist erst richtigzustellen.
   *[other] { $count } Dinge sind erst richtigzustellen.
}
failure-barred = Das steht im Weg:
failure-not-found = Das gibt es hier nicht: { $what }.
thing-visit = Einsatz
thing-lawn = Rasen
thing-client = Kunde
thing-product = Etikett
thing-kit = Spritze
thing-calibration = Messung
thing-operator = Anwender
thing-label = Etikett
failure-stale = Inzwischen ging es weiter. Sehen Sie es an, wie es jetzt steht.
failure-already-answered = Das wurde schon getan.
failure-malformed = Die App hat etwas gefragt, das keinen Sinn ergibt. Bitte melden Sie das: { $reason }
failure-unreadable = Etwas im Heft lässt sich nicht lesen: { $reason }
failure-newer = Dieses Heft hat eine neuere Version geschrieben ({ $version }). Hier lässt es sich lesen, nicht schreiben. Bringen Sie die App auf den neuen Stand.
file-some-unreadable = { $count ->
    [one] Ein Rasen lässt sich nicht lesen und wird nicht gezeigt. Kopieren Sie die Datei des Hefts, bevor Sie weitermachen.
   *[other] { $count } Rasenflächen lassen sich nicht lesen und werden nicht gezeigt. Kopieren Sie die Datei des Hefts, bevor Sie weitermachen.
}
failure-no-room = Das Gerät ist voll. Schaffen Sie Platz und versuchen Sie es noch einmal. Nichts, was festgehalten war, ging verloren.
failure-cannot-write = Ins Heft lässt sich nicht schreiben: { $reason }
failure-damaged = Das Heft ist beschädigt: { $reason }
failure-busy = Ein anderes Programm hält das Heft fest. Schließen Sie es und versuchen Sie es noch einmal.
failure-id-taken = Derselbe Eintrag liegt schon mit anderem Inhalt vor ({ $id }).
failure-file-exists = Unter { $path } gibt es schon eine Datei.
failure-file = Die Datei des Hefts hat versagt: { $reason }
failure-replaced = Die Datei des Hefts wurde ersetzt, verschoben oder gelöscht, während die App sie offen hatte; deshalb wird nichts mehr geschrieben. Alles, was aufgehoben war, liegt in { $path }. Schließen Sie die App, legen Sie diese Kopie an die Stelle des Hefts, wenn sie die richtige ist, und starten Sie neu.
failure-replaced-uncopied = Die Datei des Hefts wurde ersetzt, verschoben oder gelöscht, während die App sie offen hatte, und was aufgehoben war, ließ sich nicht kopieren ({ $reason }). Schließen Sie die App nicht: Schreiben Sie ab, was sie zeigt, und legen Sie die Datei zurück.
failure-open-no-room = Das Gerät ist voll; darum lässt sich das Heft unter { $path } nicht öffnen. Schaffen Sie Platz und versuchen Sie es noch einmal.
failure-open-cannot-write = In das Heft unter { $path } lässt sich nicht schreiben ({ $reason }). Geben Sie der App das Recht, dort zu schreiben, und versuchen Sie es noch einmal.
failure-open-damaged = Das Heft unter { $path } ist beschädigt ({ $reason }).
failure-open-busy = Ein anderes Programm hält das Heft unter { $path } fest. Schließen Sie es und versuchen Sie es noch einmal.
failure-open = Das Heft unter { $path } lässt sich nicht öffnen: { $reason }

# Ready list
group-protective = Anziehen
group-sprayer = Die Spritze
group-site = Der Ort
ready-gloves = Handschuhe sind an.
ready-coverall = Der Schutzanzug ist an.
ready-boots = Gummistiefel sind an.
ready-face-shield = Der Gesichtsschutz sitzt.
ready-glasses = Die Schutzbrille sitzt.
ready-apron = Die Schürze ist um.
ready-respirator = Die Atemschutzmaske sitzt, der Filter ist nicht abgelaufen.
ready-nozzle-sound = Die Düse ist heil und sauber.
ready-hoses-sound = Schläuche, Gurte und Deckel sind heil und dicht.
ready-sprayer-clean = Die Spritze ist frei von dem, was zuletzt darin war.
ready-emergency-water = Sauberes Wasser für Augen und Haut steht bereit.
ready-label-at-hand = Das Etikett ist zur Hand.
ready-phone-charged = Das Telefon ist geladen.
ready-clean-water-trial = Die Spritze wurde mit klarem Wasser erprobt.
ready-people-away = Niemand ist auf dem Rasen.
ready-pets-away = Tiere sind weg, Näpfe und Spielzeug weggeräumt.
ready-drains-covered = Abläufe sind abgedeckt.
ready-water-kept-clear = Teiche und Gräben sind bekannt und bleiben verschont.
ready-hives-looked-for = Nach Bienenstöcken wurde gesehen, und an keiner Blüte im Rasen sind Bienen.
ready-food-plants-covered = Essbare Pflanzen sind abgedeckt oder weit genug weg.
ready-washing-in = Die Wäsche ist abgenommen.
ready-windows-shut = Fenster sind zu.
ready-neighbours-told = Die Nachbarn wissen Bescheid.
ready-lawn-cleared = Der Rasen ist geräumt: kein Spielzeug, keine Steine, kein Laub.
again-wind-is-as-seen = Der Wind ist so, wie er festgehalten wurde.
again-rain-has-stopped = Der Regen hat aufgehört.
again-grass-is-dry = Das Gras ist wieder trocken.
again-gloves-back-on = Die Handschuhe sind wieder an.

# Mixing and washing
mix-protective-on = Ziehen Sie an, was das Etikett für den Umgang mit dem Mittel verlangt.
mix-half-water = Füllen Sie die Hälfte des Wassers ein. Hängen Sie nie den Schlauch in den Tank.
mix-measure-liquid = Messen Sie das Mittel im Messbecher ab, auf Augenhöhe.
mix-weigh = Wiegen Sie das Mittel ab.
mix-dissolve-and-strain = Lösen Sie es in einem Eimer Wasser auf und gießen Sie es durch ein Sieb.
mix-make-paste = Rühren Sie es mit wenig Wasser zu einem Brei an.
mix-pour-product = Gießen Sie es in den Tank.
mix-rinse-measure = Spülen Sie das Messgefäß dreimal in den Tank aus; eine leere Packung ebenso.
mix-make-up = Füllen Sie bis zur Marke auf.
mix-close = Schließen Sie den Deckel und wischen Sie außen ab.
mix-agitate = Schütteln Sie, bis die Brühe gleichmäßig ist.
wash-rinse-tank = Spülen Sie den Tank dreimal mit wenig klarem Wasser.
wash-spray-rinsings = Spritzen Sie das Spülwasser gleichmäßig auf den behandelten Rasen aus.
wash-nozzle-and-strainer = Waschen Sie Düse und Sieb. Nie mit dem Mund durchblasen.
wash-outside = Waschen Sie Spritze und Lanze von außen.
wash-containers = Leere Packungen sind dreimal gespült und zur Rückgabe aufgehoben.
wash-boots = Waschen Sie die Stiefel, bevor Sie den Rasen verlassen.
wash-phone-and-clicker = Wischen Sie Telefon und Klicker ab.
wash-gloves-then-hands = Waschen Sie die Handschuhe, ziehen Sie sie aus, dann waschen Sie Hände und Gesicht.
wash-product-locked-away = Das Mittel ist weggeschlossen.

# What a visit waits for, and what it refuses
weather-not-seen = Halten Sie das Wetter fest.
refill-comes-first = Erst muss der Tank nachgefüllt werden.
no-fill-left = Keine Füllung ist mehr übrig.
refill-after-this-pass = Nachgefüllt wird nach diesem Durchgang.
strips-done-out-of-range = Fertig können zwischen { $least } und { $most } Bahnen sein.
no-such-way = Dieser Weg steht hier nicht offen.
cause-missing = Sagen Sie, warum der Verbrauch abwich.
look-back-is-owed = Sagen Sie, was von der letzten Behandlung übrig ist.
less-than-was-left = Das ist weniger, als vorher noch im Tank war.
wrong-kind-of-amount = Das Mittel wird hier gewogen, oder umgekehrt. Nehmen Sie die angebotene Einheit.
more-than-the-tank-had = Das ist mehr, als da war: höchstens { $limit }.

# Terms of a sum
term-passes-left-at-real-use = Die übrigen Durchgänge, nach dem wirklichen Verbrauch
term-left-in-tank = Noch im Tank
term-fills-not-yet-made = Noch nicht angesetzte Füllungen
term-water-to-add = Wasser dazu

# Steps that can be taken back
step-opened = Der Einsatz wurde begonnen
step-assessed = Der Rasen wurde angesehen
step-product-chosen = Das Mittel wurde gewählt
step-kit-chosen = Die Spritze wurde gewählt
step-plan-agreed = Der Plan wurde angenommen
step-ready-ticked = Auf der Prüfliste abgehakt
step-weather-seen = Das Wetter wurde festgehalten
step-advisory-passed = Ein Stopp wurde mit Grund übergangen
step-mixing-begun = Das Ansetzen wurde begonnen
step-mix-ticked = Ein Schritt beim Ansetzen
step-fill-made = Füllung { $fill } wurde angesetzt
step-strip-done = Bahn { $strip } von Durchgang { $pass } wurde fertig
step-pass-done = Durchgang { $pass } wurde fertig
step-refill-called = Nachfüllen wurde in Durchgang { $pass } verlangt
step-ran-short = Der Tank lief leer
step-paused = Pause
step-resumed = Weitergemacht
step-tank-measured = Was nach Durchgang { $pass } noch im Tank war
step-corrected = Nach Durchgang { $pass } wurde nachgesteuert
step-used-up = Der Rest wurde verbraucht
step-wash-ticked = Ein Schritt beim Waschen
step-washed = Das Waschen ist erledigt
step-stopped = Endgültig abgebrochen
step-closed = Unterschrieben und abgeschlossen
step-undone = Zurückgenommen

# Stages
stage-assess = Ansehen
stage-choose = Mittel
stage-kit = Spritze
stage-plan = Plan
stage-ready = Prüfliste
stage-mix = Ansetzen
stage-walk = Gehen
stage-pass-end = Restmenge
stage-correct = Nachsteuern
stage-use-up = Rest verbrauchen
stage-wash = Waschen
stage-close = Unterschreiben
stage-closed = Abgeschlossen

# Directions set side by side
direction-quickest = Die schnellste davon.
direction-without-narrow-strip = Etwas langsamer als eine andere, aber ohne Restbahn.
direction-fewest-wedges = Etwas langsamer als eine andere, aber an schrägen Enden wird weniger verfehlt oder überspritzt.
direction-with-narrow-strip = Es bleibt eine Restbahn von { $width }.
direction-more-wedges = An schrägen Enden wird { $area } mehr verfehlt oder überspritzt.
direction-slower = Es dauert { $minutes } länger.
direction-as-good = Fast so gut.
plan-stop-short = Der Strahl trifft { $reach } vor Ihren Füßen auf: Schließen Sie die Lanze, wenn Sie so weit vor dem Ende einer Bahn sind.
start-as-chosen = Die gewählte Seite.
start-downwind = Der Anfang liegt auf der Seite, zu der der Wind weht; so geht die Arbeit gegen den Wind.
start-upwind = Der Wind weht zur anderen Seite: Fangen Sie dort an und arbeiten Sie gegen den Wind.
start-wind-unknown = Der Wind ist noch nicht bekannt: Fangen Sie auf der Seite an, zu der der Wind weht, und arbeiten Sie gegen den Wind.
