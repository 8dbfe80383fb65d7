# Worte der Felder eines Einsatzes. Sätze, die der Kern sagt, stehen in trade.ftl, checks.ftl und record.ftl.
visit-heading = Einsatz
visit-back = Rasen
visit-so-far = Bisher
visit-was-stale = Inzwischen ging es weiter. Die Seite ist neu gezeichnet, wie es jetzt steht.
trail-done = getan
trail-now = jetzt
trail-later = später
undo-list = { $n ->
    [one] Zurücknehmen: ein Schritt
   *[other] Zurücknehmen: { $n } Schritte
}
undo-hint = Der letzte Schritt zuerst.
undo-do = Zurück{"\u00AD"}nehmen
stop-for-good = Einsatz endgültig abbrechen
stop-for-good-hint = Was getan ist, steht in einer Teilaufzeichnung. Danach lässt sich dieser Einsatz nicht fortsetzen.
stop-why = Warum?
stop-reason-weather = Wetter
stop-reason-equipment = Ausrüstung
stop-reason-client = Der Kunde
stop-reason-health = Gesundheit
stop-reason-other = Etwas anderes
stop-note = Weitere Worte, falls nötig
stop-do = Endgültig abbrechen

verdict-go = Frei
verdict-caution = Vorsicht
verdict-stop = Stopp
verdict-passed = Übergangen
check-found = Befund: { $value }.
check-limit = Grenze: { $limit }.
check-source = { $source }, { $tag }.
check-pass = Mit Grund weitermachen
check-pass-reason = Warum? Es kommt in die Aufzeichnung.
check-pass-do = Mit diesem Grund übergehen
check-passed-because = Übergangen: { $reason }
check-going = { $n ->
    [one] Eines sagt Frei
   *[other] { $n } Dinge sagen Frei
}

assess-heading = Ist eine Behandlung richtig?
assess-target = Was ist da, oder was ist gewünscht?
target-weeds = Unkraut
target-moss = Moos
target-feeding = Düngung
target-colour = Farbe
target-water = Wasser
target-nothing = Nichts zu behandeln
assess-share = Wie viel davon?
share-few = Einzelne Stellen
share-some = Hier und da
share-much = Großer Teil
assess-applied = Kam dieses Jahr etwas auf diesen Rasen?
assess-applied-hint = Von Ihnen, vom Kunden oder sonst jemandem. Fragen Sie.
was-applied-nothing = Nichts
was-applied-something = Etwas
was-applied-unknown = Niemand weiß es
assess-applied-what = Was war es?
assess-applied-on = Wann?
assess-applied-on-hint = Leer, wenn es niemand weiß.
assess-survivors = Was ist von der letzten Behandlung übrig?
survivors-none = Nichts
survivors-edges = An den Kanten
survivors-patches = In Flecken
survivors-along_strip = Entlang einer Bahn
assess-situation = Welche Art Rasen ist es?
assess-mown-on = Wann wurde zuletzt gemäht?
assess-not-known-hint = Leer, wenn es niemand weiß.
assess-sown-on = Wann wurde gesät?
assess-sown-on-hint = Leer, wenn es niemand weiß. Junger Rasen verträgt weniger.
situation-lawn = Ein Rasen
situation-amenity_turf = Öffentliches Grün
situation-sports_turf = Sportrasen
situation-other_turf = Anderer Rasen
assess-history = Früher auf diesem Rasen
assess-do = Weiter zum Mittel

choose-heading = Welches Mittel?
choose-none = Noch ist kein Etikett abgeschrieben.
choose-do = Dieses Mittel nehmen
choose-kit-heading = Welche Spritze?
choose-kit-none = Noch ist keine Spritze angelegt.
choose-kit-do = Diese Spritze nehmen

plan-heading = Der Plan
plan-product = Mittel
plan-water = Klares Wasser
plan-passes = Durchgänge
plan-fills = Füllungen
plan-minutes = Gehzeit
plan-weight = Höchstens auf dem Rücken
plan-choose-passes = Durchgänge und Tempo
plan-passes-at = { $n ->
    [one] Ein Durchgang
   *[other] { $n } Durchgänge
} mit { $pace }
plan-own-pace = Ihr eigenes Tempo
plan-other-pace = ein anderes Tempo
plan-water-in-range = { $water } im Ganzen, { $pace }
plan-water-out-of-range = { $water } im Ganzen, außerhalb des Etiketts, { $pace }
plan-more-passes = { $n ->
    [one] Eine weitere Möglichkeit
   *[other] { $n } weitere Möglichkeiten
}
plan-choose-direction = In welcher Richtung gehen
heading-along = Längs
heading-across = Quer
plan-directions-hint = Die Zahlen gelten für einen Durchgang.
direction-along = Entlang: { $side }
direction-straight = Gerade von vorn nach hinten
direction-side-to-side = Von Seite zu Seite
direction-angle = { $angle } nach rechts gedreht
direction-advised = Empfohlen
direction-strips = { $strips ->
    [one] Eine Bahn
   *[other] { $strips } Bahnen
} in { $runs ->
    [one] einem Stück
   *[other] { $runs } Stücken
};
direction-narrow = Restbahn { $width }.
direction-no-narrow = keine Restbahn.
direction-walk = { $metres } spritzend, { $empty } leer, { $turns ->
    [one] eine Wende
   *[other] { $turns } Wenden
}, { $minutes };
direction-volume = { $volume }.
direction-ends = Gerade Enden verfehlen { $missed } und spritzen { $overshot } hinaus.
plan-along-side = Oder an einer Seite entlang
plan-along-none = Keine: wie oben gewählt
side-of-part = { $side }, Stück { $n }
plan-edge-first = Zuerst am Rand herum
plan-edge-first-more = Eine Bahn ringsum; dann müssen die Enden der anderen nicht genau an der Kante aufhören.
plan-narrow-at = Wo die Restbahn liegt
narrow-at-last = An der fernen Kante
narrow-at-first = Wo Sie anfangen
plan-drawn-pass = Gezeichnet: Durchgang
plan-pass = Durchgang { $n }
plan-print = Plan drucken
legend-heading = Zeichen in der Zeichnung
legend-fill = Füllung { $fill }
legend-lap = Am Rand herum
legend-narrow = Restbahn
legend-left-out = Ausgelassen
legend-dry = Bleibt trocken
legend-pond = Wasser
legend-missed = An den Enden verfehlt
legend-overshot = Über die Kante gespritzt
legend-start = Hier anfangen
legend-refill = Füllung { $fill } ansetzen vor Bahn { $strip }
plan-choose-last = Der letzte Durchgang
plan-last-same = In derselben Richtung
plan-last-across = Quer zu den anderen
plan-choose-start = Wo anfangen
plan-choose-start-hint = In Gehrichtung gesehen. Auf der Seite, zu der der Wind weht, damit Sie vom Nassen weggehen.
start-left = Links
start-right = Rechts
start-front = Vorn
start-back = Hinten
plan-narrow-heading = Die Restbahn
narrow-as_it_is = Wie die anderen gehen
narrow-some_passes = Nur in manchen Durchgängen spritzen
narrow-even_out = Alle Bahnen gleich breit
narrow-other_direction = In der anderen Richtung gehen
narrow-leave = Auslassen
plan-choose-guide = Wie Sie geführt werden wollen
guide-pass = Ein Tipp je Durchgang
guide-strip = Bahn für Bahn
plan-change-pace = Eigene Durchgänge, Tempo oder Aufwandmenge
plan-own-passes = Durchgänge
plan-pace = Tempo
plan-pace-hint = Leer: das Tempo Ihrer Gehprobe.
plan-dose = Aufwandmenge
plan-dose-hint = Die des Etiketts, wenn Sie nicht weniger wollen.
plan-fills-heading = Tank für Tank
plan-fill = Füllung { $n }
plan-fill-line = { $product } Mittel, aufgefüllt auf { $mixture }, { $weight } auf dem Rücken.
plan-fill-water = { $water } klares Wasser.
plan-figures = Alle Zahlen
plan-treated = Behandelte Fläche
plan-mixture = Brühe
plan-per-pass = Brühe in einem Durchgang
plan-dose-comes = Aufwandmenge, die sich ergibt
plan-water-comes = Wasser aller Durchgänge
plan-rounding = Runden auf den Messbecher
plan-steps = Schrittfrequenz
plan-metres = Zu gehen
plan-sums = Die Rechnung für Mittel und Wasser
plan-do = Plan annehmen

ready-heading = Prüfliste
ready-n-ticked = { $done } von { $of }
ready-due-again = Noch einmal ansehen.
ready-checks = Was der Tag sagt
ready-waits = Steht noch aus
ready-not-yet = { $n ->
    [0] Noch nicht bereit
    [one] Eines steht noch aus
   *[other] { $n } Dinge stehen noch aus
}
ready-do = Ansetzen beginnen

weather-heading = Das Wetter, wie Sie es sehen
weather-wind-by = Der Wind nach
wind-by-sign = dem, was er bewegt
wind-by-meter = einem Messer
weather-wind-force = Was bewegt der Wind?
weather-wind-force-hint = Windstärke nach Beauforts Zeichen an Land.
force-0 = Windstille
force-0-sign = Rauch steigt senkrecht auf.
force-1 = Leiser Zug
force-1-sign = Rauch zieht ab; eine Fahne hängt.
force-2 = Leichte Brise
force-2-sign = Im Gesicht zu spüren; Blätter säuseln.
force-3 = Schwache Brise
force-3-sign = Blätter und Zweige bewegen sich; ein Wimpel streckt sich.
force-4 = Mäßige Brise
force-4-sign = Staub und Papier werden aufgewirbelt; dünne Äste bewegen sich.
force-5 = Frische Brise
force-5-sign = Kleine Laubbäume schwanken.
force-6 = Starker Wind
force-6-sign = Starke Äste bewegen sich; Drähte pfeifen.
weather-wind-speed = Windgeschwindigkeit
weather-wind-height = So hoch über dem Boden gehalten
weather-wind-height-hint = Der Wind einer Vorhersage gilt für zehn Meter und zählt hier nicht.
weather-wind-towards = Wohin weht er?
weather-wind-towards-hint = Die Seite des Rasens, zu der der Wind weht.
towards-front = Nach vorn
towards-right = Nach rechts
towards-back = Nach hinten
towards-left = Nach links
towards-none = Es ist windstill
weather-gusts = Böen?
weather-rain-now = Regnet es?
yes-no-no = Nein
yes-no-yes = Ja
weather-dry-hours = Wie lange bleibt es laut Vorhersage trocken?
weather-dry-hours-hint = Leer, wenn Sie nicht nachgesehen haben.
weather-temperature = Lufttemperatur
weather-grass = Das Gras
of-grass-dry = Trocken
of-grass-damp = Feucht
of-grass-wet = Nass
weather-ground = Der Boden
of-ground-open = Offen
of-ground-frozen = Gefroren
weather-drought = Trockenheit
drought-no = Kein Zeichen davon
drought-stressed = Das Gras leidet
weather-do = Wetter festhalten

mix-heading = Füllung { $n } von { $of }
mix-product = Mittel
mix-product-exact = genau { $product }
mix-water-figure = Klares Wasser
mix-left-before = Im Tank sind noch { $left }.
mix-measured = Etwas anderes wurde abgemessen
mix-measured-product = Abgemessenes Mittel
mix-measured-volume = Jetzt im Tank
mix-measured-hint = Leer: { $planned } wie geplant.
mix-do = Die Füllung ist fertig
mix-do-more = { $mixture } im Tank
tank-alt = Der Tank mit seinen Marken: halbes Wasser bei { $half }, aufgefüllt auf { $full }.
tank-full = auffüllen: { $full }
tank-half = halbes Wasser: { $half }
steps-done = { $done } von { $of } getan
steps-next = Getan, weiter

walk-heading = Gehen
walk-pass = Durchgang
walk-strip = Bahn
walk-fill = Füllung
walk-of = von { $of }
walk-in-tank = Im Tank
walk-to-do = Zu spritzen
walk-left = Zu gehen
walk-pace = { $pace }
walk-refill-before = Nachfüllen vor Bahn { $strip }.
walk-pass-done = Durchgang { $pass } fertig
walk-strip-done = Bahn { $strip } fertig
walk-refill = Jetzt nachfüllen
walk-pass-more = wie geplant: { $left } noch im Tank
walk-strip-more = { $length }, { $seconds }
walk-pause = Pause
walk-sound-off = Töne aus
walk-sound-on = Töne an
walk-tank-differs = Tank weicht ab
walk-more = Mehr
walk-more-heading = Beim Gehen
walk-back-to = Zurück zum Gehen
walk-pause-why = Pause wegen
pause-wind = Wind
pause-rain = Regen
pause-person_or_animal = Mensch oder Tier
pause-phone = Telefon
pause-equipment = Ausrüstung
pause-weather = Wetter
pause-other = Etwas anderes
walk-paused-heading = Pause
walk-paused-because = Pause: { $reason }
walk-again = Sehen Sie das noch einmal an, bevor es weitergeht
walk-seen = Gesehen, es ist in Ordnung
walk-resume = Weitergehen
walk-refill-heading = Der Tank braucht seine nächste Füllung
walk-refill-hint = Früher als geplant. Hören Sie am Ende einer Bahn auf.
walk-refill-now = Jetzt nachfüllen
walk-short-heading = Er ist leer gelaufen
walk-short-hint = Wie viele Bahnen dieses Durchgangs sind ganz fertig?
walk-short-strips = Ganz fertige Bahnen
walk-short-n = { $n } von { $of } Bahnen
walk-short-do = Hat nicht gereicht
stepper-less = Weniger
stepper-more = Mehr

pass-end-heading = Was ist noch im Tank?
pass-end-lead = Durchgang { $n } von { $of } ist fertig. Nach Plan sollten { $planned } übrig sein; mehr als { $most } können es nicht sein.
pass-end-broken-off = Angehalten in Durchgang { $n } von { $of }. Lesen Sie ab, was noch im Tank ist; mehr als { $most } können es nicht sein.
pass-end-left = Noch im Tank
pass-end-do = Rest bestätigen
pass-end-do-changed = Rest festhalten

correct-heading = Nachsteuern
correct-used = In diesem Durchgang verbraucht
correct-planned = Geplant
correct-add_water = Wasser dazugeben
correct-less_water = Weniger Wasser
correct-fewer_passes = Weniger Durchgänge
correct-more_passes = Ein Durchgang mehr
correct-as_planned = Weiter wie geplant
correct-do = So machen

use-up-heading = Rest verbrauchen
use-up-leftover = Noch im Tank
use-up-product = Mittel darin
use-up-whole_pass = Ein weiterer ganzer Durchgang, verdünnt
use-up-part = Auf einem Teil des Rasens
use-up-none = Nirgends hier
use-up-do = So machen

wash-heading = Waschen
wash-do = Alles gewaschen

close-heading = Aufzeichnung unterschreiben
close-missing = Der Aufzeichnung fehlt noch
close-cause = Warum wich der Verbrauch ab?
cause-pace_or_flow = Tempo oder Durchfluss
cause-nozzle = Eine andere Düse war drauf
cause-missed_strip = Eine Bahn wurde ausgelassen
cause-area_wrong = Die Fläche war falsch
cause-unknown = Ich weiß es nicht
close-advice = Was Sie dem Kunden gesagt haben
close-note = Gut zu wissen fürs nächste Mal
close-note-hint = Es kommt in die Aufzeichnung.
close-name = Unterschrieben von
close-look-back = Nachschau am { $day }
close-record = Die Aufzeichnung, wie sie stehen wird
close-do = Unterschreiben und abschließen

closed-heading = Die Aufzeichnung
closed-do = Zurück zu den Rasenflächen
record-closed = Abgeschlossen und unterschrieben.
record-open = Noch offen: So steht sie jetzt.
record-part = Nur ein Teil des Plans wurde gemacht.
record-advice = Rat an den Kunden
record-print = Drucken
record-copy = Als JSON kopieren
record-save = Als Datei sichern
record-copied = Kopiert.
record-copy-failed = Dieses Gerät erlaubt kein Kopieren. Öffnen Sie unten das JSON und kopieren Sie es von Hand.
record-json = Die Aufzeichnung als JSON
record-hash = Verkettet durch

## The weather again
weather-again = Das Wetter hat sich geändert: neu festhalten

# What is fed, and doses for single targets
plan-nutrients = Womit der Rasen gedüngt wird
plan-nutrient = { $element }: jetzt { $now }, im Jahr damit { $season }
plan-target-doses = Aufwandmengen, die das Etikett für einzelne Ziele nennt
