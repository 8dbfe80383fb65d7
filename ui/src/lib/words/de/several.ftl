### Mehrere Rasen in einem Einsatz: zusammenstellen, die Grenze zwischen zweien, ihre Zeilen im Protokoll.

lawn-of-several = Rasen { $nth } von { $of }: { $lawn }

several-heading = Weitere Rasen in diesem Einsatz
several-hint = Andere Rasen desselben Kunden, nach diesem behandelt: mit demselben Mittel, demselben Gerät und derselben Aufwandmenge.
several-add = Rasen hinzufügen
several-none-to-add = Dieser Kunde hat keinen anderen Rasen ohne laufenden Einsatz.
several-add-do = { $lawn } hinzufügen, { $area }
several-first = Zuerst: { $lawn }
several-then = Danach { $nth }: { $lawn }
several-earlier = Früher
several-later = Später
several-leave-out = Weglassen
several-mixtures = Die Brühe
mixtures-one = Eine für alle Rasen
mixtures-each = Für jeden Rasen eine eigene
mixtures-one-more = Bleibt von Rasen zu Rasen im selben Tank.
mixtures-each-more = Der Tank ist nach Plan leer, wo der nächste Rasen beginnt.
several-dose = Aufwandmenge hier: { $dose }
several-water = Wasser hier: { $water }
several-line = { $area }, { $product } Mittel, { $mixture } Brühe, { $minutes }
several-change = Durchgänge und Wege auf { $lawn }
several-in-all = Alle Rasen zusammen
several-serves = Für { $lawns }
several-applied = Kam dieses Jahr etwas auf { $lawn }?
several-survivors = Was ist auf { $lawn } von der letzten Behandlung übrig?
several-sown-on = Wann wurde { $lawn } gesät?
several-mown-on = Wann wurde { $lawn } zuletzt gemäht?
several-passes = Durchgänge auf { $lawn }

next-lawn-heading = Weiter: { $lawn }
next-lawn-done = { $lawn } ist fertig.
next-lawn-after = Danach: { $lawns }
next-lawn-left = Noch im Tank
next-lawn-site = Der Ort dieses Rasens
next-lawn-do = { $lawn } beginnen
next-lawn-leave-out = Diesen Rasen weglassen
next-lawn-leave-out-hint = Er bleibt unbehandelt, und das Protokoll sagt es. Was im Tank ist, geht auf den Rasen danach oder wird nach den Regeln für einen Rest verbraucht.
next-lawn-has-its-own-tankful = Zuerst wird eine Füllung angesetzt. Von der vorigen sind noch { $left } da und bleiben darunter.
next-lawn-runs-short = Hier werden { $needs } gebraucht, bevor wieder angesetzt wird, und { $short } fehlen. Lassen Sie den Rasen weg, oder hören Sie auf, wo der Tank leer ist: Das Protokoll sagt, wie weit es ging.
next-lawn-has-enough = Hier werden { $needs } gebraucht, und { $left } sind noch da. Es wird nichts mehr angesetzt.
next-lawn-has-enough-to-its-tankful = Hier werden bis zur nächsten Füllung { $needs } gebraucht, und { $left } sind noch da.

too-many-lawns = Das sind mehr Rasen, als ein Einsatz fasst. Behandeln Sie einige in einem eigenen Einsatz.
later-lawn-twice = Dieser Rasen ist schon im Einsatz.
later-lawn-of-another-client = Dieser Rasen gehört einem anderen Kunden und bekommt ein anderes Protokoll. Beginnen Sie dort einen eigenen Einsatz.
later-lawn-under-way = Auf diesem Rasen läuft schon ein Einsatz. Beenden Sie den zuerst, oder lassen Sie diesen Rasen weg.
weather-not-seen-here = Sehen Sie nach dem Wetter an diesem Rasen: Er hat andere Ränder.
no-mixture-for-this-lawn = Für diesen Rasen ist keine Brühe übrig und keine geplant. Lassen Sie ihn weg.

own-water-dose-differs = Eine Brühe für alle Rasen bringt hier { $value } aus, gewählt waren { $limit }: Dieser Rasen nimmt für seine Fläche anders viel Wasser. Setzen Sie für jeden Rasen eine eigene an, oder wählen Sie gleich viele Durchgänge.
own-water-dose-near = Eine Brühe für alle Rasen bringt hier { $value } aus, nahe an den gewählten { $limit }.

term-next-lawns-at-real-use = Die nächsten Rasen aus derselben Brühe, nach dem wirklichen Verbrauch

step-next-lawn-begun = Der nächste Rasen wurde begonnen
step-lawn-left-out = Ein Rasen wurde weggelassen
stage-next-lawn = Nächster Rasen

record-one-lawn = Ein Rasen des Einsatzes
record-lawn-done = Was daraus wurde
record-lawn-not-treated = Er wurde nicht behandelt.
record-lawn-part = Sein Plan wurde nur zum Teil ausgeführt.
record-lawn-sprayed = Hier ausgebrachte Brühe
record-lawn-product = Hier ausgebrachtes Mittel
record-lawn-passes = Ganze Durchgänge
record-lawns-drawn = Die Rasen, wie sie abgegangen wurden
deviation-lawn-not-treated = Ein Rasen war vereinbart und wurde nicht behandelt
