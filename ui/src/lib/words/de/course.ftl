### Was ein Einsatz unterwegs sagt: Füllungen, Gehen, Nachsteuern, Rest verbrauchen, Rat, was der nächste Einsatz wissen soll.

## Why something can't be done now
failure-not-now = Der Einsatz ist weitergegangen: Er steht jetzt bei „{ $stage }“. Sehen Sie die Seite an, wie sie jetzt ist.
is-paused = Sie machen Pause. Setzen Sie erst fort.
nothing-to-undo = Es gibt nichts zurückzunehmen.
no-such-item = Dieser Punkt steht nicht mehr auf der Liste. Sehen Sie die Liste an, wie sie jetzt ist.
not-one-of-these = Wählen Sie eine der gezeigten Antworten.
passes-out-of-range = Zwischen { $least } und { $most } Durchgängen.
plan-not-now = Hier lässt sich kein Plan machen: { $why }
reason-missing = Sagen Sie in ein paar Worten, warum: Es kommt in die Aufzeichnung.
name-missing = Geben Sie den Namen dessen ein, der unterschreibt.
certificate-missing = Geben Sie die Nummer Ihres Sachkundenachweises ein.
force-out-of-range = Die Windstärke geht von 0 bis { $most }.
kit-not-calibrated = Diese Spritze wurde nie ausgelitert: Machen Sie erst Auslitern und Gehprobe. Ohne sie ist das Wasser geraten.
visit-has-a-gap = In diesem Einsatz fehlt ein Schritt (Nummer { $at }). Er lässt sich lesen, nicht ändern.
visit-has-unknown = Dieser Einsatz enthält etwas, das diese Version nicht kennt ({ $kind }). Er lässt sich lesen, nicht ändern.

## Lists
visit-open = { $date } · im Gang
visit-closed = { $date } · { $product }
visit-closed-part = { $date } · { $product } · ein Teil des Rasens
visit-closed-not-treated = { $date } · nicht behandelt
history-treated = Behandelt am { $date }
look-back-is-due = Nachschau: Die letzte Behandlung war am { $date } anzusehen. Was hat überlebt?
next-water-more = Nächstes Mal: { $percent } mehr Wasser. Das Mittel bleibt gleich.
next-water-less = Nächstes Mal: { $percent } weniger Wasser. Das Mittel bleibt gleich.
next-measure-the-lawn = Nächstes Mal: erst den Rasen neu messen. Eine neue Fläche ändert auch das Mittel.
next-measure-the-kit = Nächstes Mal: erst Auslitern und Gehprobe neu machen.

## Story
story-target = Gegen oder für: { $target }
story-product = Mittel: { $product }
story-kit = Düse: { $nozzle }
story-plan = Geplant: { $area }, Durchgänge: { $passes }
story-pass = Durchgang { $pass }: verbraucht { $used }, geplant { $planned }

## Plan
plan-water-trimmed-up = Beim letzten Einsatz wurde mehr verbraucht als geplant: Das Wasser ist um { $percent } erhöht. Das Mittel nicht.
plan-water-trimmed-down = Beim letzten Einsatz wurde weniger verbraucht als geplant: Das Wasser ist um { $percent } gesenkt. Das Mittel nicht.
plan-room-unknown = Wie viel Raum das Mittel einnimmt, ist nicht bekannt: Gießen Sie erst weniger Wasser ein und füllen Sie dann bis zur Marke auf.
plan-nozzle-between = Kein Tempo, das sich gehen lässt, bringt das Wasser mit dieser Düse in den Bereich des Etiketts. Bei { $passes } { $passes ->
    [one] Durchgang
   *[other] Durchgängen
  } in Ihrem Tempo müsste sie zwischen { $least } und { $most } ausbringen: Wechseln Sie Düse oder Druck, und litern Sie neu aus.
plan-nozzle-at-least = Kein Tempo, das sich gehen lässt, bringt mit dieser Düse genug Wasser. Bei { $passes } { $passes ->
    [one] Durchgang
   *[other] Durchgängen
  } in Ihrem Tempo müsste sie mindestens { $least } ausbringen: Wechseln Sie Düse oder Druck, und litern Sie neu aus.
plan-nozzle-at-most = Kein Tempo, das sich gehen lässt, hält mit dieser Düse das Wasser niedrig genug. Bei { $passes } { $passes ->
    [one] Durchgang
   *[other] Durchgängen
  } in Ihrem Tempo darf sie höchstens { $most } ausbringen: Wechseln Sie Düse oder Druck, und litern Sie neu aus.
sum-treated = Behandelte Fläche
sum-dose = Aufwandmenge
sum-lower-area = Kleinere Fläche, die bei der höchsten Aufwandmenge zählt
sum-product-exact = Mittel, genau
sum-product-measured = Mittel zum Abmessen, in Teilstrichen
sum-walked = Brühe, die ausgebracht wird: Durchfluss × Meter ÷ Tempo, alle Durchgänge
sum-dead-volume = Bleibt in Pumpe, Schlauch und Lanze, einmal
sum-own-volume = Raum, den das Mittel einnimmt
sum-clean-water-in-tank = Klares Wasser, das schon im Tank ist
sum-clean-water = Klares Wasser zum Eingießen
narrow-as-it-is = Die letzte Bahn ist { $width } breit. Wie die anderen gegangen, bekäme sie { $factor } so viel wie vorgesehen: Ein schmalerer Fächer mindert den Durchfluss nicht.
narrow-option-as-it-is = Wie die anderen gehen.
narrow-option-some-passes = { $passes ->
    [one] Nur in { $passes } Durchgang spritzen, mit { $pace }, den Fächer um { $turn } gedreht.
   *[other] Nur in { $passes } Durchgängen spritzen, mit { $pace }, den Fächer um { $turn } gedreht.
  }
narrow-option-even-out = Alle Bahnen gleich breit machen: { $water } Wasser, im Ganzen { $extra } mehr, dieselbe Menge Mittel.
narrow-option-other-direction = Rechtwinklig dazu gehen: im Ganzen { $water } Wasser.
narrow-option-leave = Auslassen: { $left_out } bleiben unbehandelt und brauchen kein Mittel.

## Fills
fill-covers-pass = Durchgang { $pass }
fill-covers-passes = Durchgänge { $first } bis { $last }
fill-covers-part = Durchgang { $from_pass }, Bahn { $from_strip }, bis Durchgang { $to_pass }, Bahn { $to_strip }
fill-falls-first = Vor der ersten Bahn
fill-falls-before-pass = Vor Durchgang { $pass }
fill-falls-before-strip = In Durchgang { $pass }, vor Bahn { $strip } von { $strips }
group-mixing = Ansetzen
group-washing = Waschen
group-again = Noch einmal ansehen
mix-over-dosed-behind = Die ersten { $strips } Bahnen von Durchgang { $pass } haben { $dose } bekommen: mehr als die höchste Aufwandmenge des Etiketts. Spritzen Sie sie in diesem Einsatz nicht noch einmal. Suchen Sie erst die Ursache: Tempo, Düse, Druck, eine falsch gelesene Marke. Finden Sie sie nicht, brechen Sie endgültig ab. Es kommt in die Aufzeichnung.
mix-more-water-than-planned = Die noch anzusetzenden Füllungen bekommen { $water } mehr Wasser als geplant. Das Mittel bleibt gleich.
mix-less-water-than-planned = Die noch anzusetzenden Füllungen bekommen { $water } weniger Wasser als geplant. Das Mittel bleibt gleich.

## Walk
strip-move-marker = An ihrem Ende den Fluchtstab { $distance } weitersetzen: zwei Arbeitsbreiten.
strip-move-marker-less = An ihrem Ende den Fluchtstab { $distance } weitersetzen: weniger als zwei Arbeitsbreiten, wegen der Restbahn.
strip-has-gaps = Diese Bahn hat { $runs } Stücke: dazwischen absperren.
strip-narrow = Schmal: { $width } breit. Drehen Sie den Fächer um { $turn } und gehen Sie mit { $pace }.
pass-begin-here = Fangen Sie am Fluchtstab an. Er sollte auf der Seite stehen, zu der der Wind weht.
pass-back-over-the-same = Zurück über dieselben Bahnen, von da, wo Sie aufgehört haben.
pass-turn-square = Rechtwinklig drehen: Dieser Durchgang geht quer zum letzten.
pass-leaves-narrow-strip = Lassen Sie in diesem Durchgang die Restbahn ({ $width }) aus.
pass-narrow-strip = Die Restbahn ({ $width }): Drehen Sie den Fächer um { $turn } und gehen Sie sie mit { $pace }.
strip-stop-short = Wo sie an dem endet, was trocken bleiben muss, bleiben Sie { $reach } vorher stehen: So weit vor Ihren Füßen trifft der Strahl auf.
pass-stop-short-by = Bleiben Sie { $reach } vor dem stehen, was trocken bleiben muss, in der Zeichnung schraffiert: So weit vor Ihren Füßen trifft der Strahl auf.
pass-stop-short = Hören Sie vor dem auf, was trocken bleiben muss: In der Zeichnung ist es schraffiert.

## After a pass
pass-used-more = Dieser Durchgang brauchte mehr als geplant.
pass-used-far-off = Das ist weit vom Plan weg. Sehen Sie erst nach: Ist die Düse verstopft (nie durchblasen), die Marke falsch gelesen, eine Bahn ausgelassen oder zweimal gegangen? Nehmen Sie die Ablesung zurück, wenn sie falsch war.
pass-used-less = Dieser Durchgang brauchte weniger als geplant.
correct-add-water-now = Geben Sie jetzt { $water } klares Wasser in den Tank. Kein Mittel.
correct-add-water-now-and-later = Geben Sie jetzt { $now } klares Wasser in den Tank, und setzen Sie die kommenden Füllungen mit { $later } mehr Wasser an. Kein Mittel.
correct-add-water-later = Setzen Sie die kommenden Füllungen im Ganzen mit { $water } mehr Wasser an. Nicht mehr Mittel.
correct-less-water = Setzen Sie die kommenden Füllungen im Ganzen mit { $water } weniger Wasser an. Dieselbe Menge Mittel.
correct-fewer-passes = Hören Sie nach Durchgang { $passes } auf. Dieselbe Menge Mittel in weniger Durchgängen.
correct-fewer-passes-more-water = Hören Sie nach Durchgang { $passes } auf, mit im Ganzen { $water } mehr klarem Wasser. Dieselbe Menge Mittel in weniger Durchgängen.
correct-fewer-passes-less-water = Hören Sie nach Durchgang { $passes } auf, und setzen Sie die kommenden Füllungen im Ganzen mit { $water } weniger Wasser an. Dieselbe Menge Mittel in weniger Durchgängen.
correct-more-passes = Gehen Sie bis Durchgang { $passes }. Nicht mehr Mittel.
correct-more-passes-more-water = Gehen Sie bis Durchgang { $passes }, mit im Ganzen { $water } mehr klarem Wasser. Nicht mehr Mittel.
correct-more-passes-less-water = Gehen Sie bis Durchgang { $passes }, und setzen Sie die kommenden Füllungen im Ganzen mit { $water } weniger Wasser an. Dieselbe Menge Mittel.
correct-as-planned = Weiter wie geplant.

## Using up
using-up-whole-pass = Geben Sie { $water } klares Wasser dazu und gehen Sie den ganzen Rasen noch einmal, leicht.
using-up-part = Spritzen Sie es auf { $area } des Rasens, wo die Aufwandmenge es noch erlaubt, gleichmäßig verteilt.
using-up-keep = Bewahren Sie es in einem geschlossenen, beschrifteten Behälter für den nächsten erlaubten Einsatz auf, oder geben Sie es ab, wie das Gesetz es sagt. Nie weggießen.
using-up-nothing-left = Es ist nichts Nennenswertes übrig.

## Closing
cause-used-more = Die Durchgänge brauchten { $percent } mehr als geplant. Warum?
cause-used-less = Die Durchgänge brauchten { $percent } weniger als geplant. Warum?
missing-client = Bei diesem Rasen ist kein Kunde genannt.
missing-certificate = Die Nummer des Sachkundenachweises fehlt.
missing-authorisation-number = Die Zulassungsnummer des Etiketts fehlt.
advice-keep-off-hours = Halten Sie Menschen und Tiere { $hours } fern, und bis es trocken ist.
advice-keep-off-until-dry = Halten Sie Menschen und Tiere fern, bis es trocken ist.
advice-mowing = Mähen: { $words }
advice-no-watering = Nicht wässern: { $hours }.
advice-water-in = Wässern Sie es ein, wenn es nicht regnet. Zeit dafür: { $hours }.
advice-iron-stains = Enthält Eisen: Es fleckt Pflaster und Schuhe, bis es eingewässert ist. Spülen Sie Spritzer auf Pflaster sofort ab.
advice-look-back = Nachschau am { $date }.

# What square ends do, and what the area's doubt does to the product
plan-ends-missed = Gerade Enden verfehlen { $area } in einem Durchgang.
plan-ends-overshot = Gerade Enden spritzen { $area } über die Kante hinaus in einem Durchgang; das braucht { $water }.
plan-lower-area-counts = Die Fläche kann um { $area } ({ $percent }) falsch sein. Bei der höchsten Aufwandmenge des Etiketts zählen nur { $lower }.
plan-doubt-moves-product = Die Fläche kann um { $area } ({ $percent }) falsch sein, und das Mittel mit ihr um { $product }.
angle-out-of-range = Eine Gehrichtung liegt zwischen 0 und 180 Grad.
