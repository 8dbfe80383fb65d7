### Die Worte der Führung zwischen zwei Berührungen: Zählung, Ablesungen im Durchgang, Ursachen, Pausen, Zurücknehmen, Reste und Spülwasser.

# Nachfüllen, wie es der Tank zeigt
walk-refill-soon = Bald nachfüllen: vor Bahn { $strip }.
refill-earlier = Der Tank reicht nicht wie geplant: Nachfüllen vor Bahn { $strip }, nicht { $planned }.
refill-in-this-pass = Der Tank reicht nicht für diesen Durchgang: Nachfüllen vor Bahn { $strip }.
refill-runs-dry-later = Bei diesem Verbrauch wird der Tank in Bahn { $strip } von Durchgang { $pass } leer, vor dem Nachfüllen.
refill-none-left = Bei diesem Verbrauch wird der Tank in Bahn { $strip } von Durchgang { $pass } leer, und es kommt keine Füllung mehr. Geben Sie kein Mittel dazu: Sagen Sie es, wenn er leer ist.
walk-tank-lasted = Er reichte: Durchgang fertig
walk-look-into-tank = der Tank weicht vom Plan ab: Sehen Sie hinein

# Was vor dem Nachfüllen im Durchgang noch da ist
mix-left-lead = Sehen Sie in den Tank, bevor Sie ihn füllen. { $planned } sollten übrig sein; mehr als { $most } können es nicht sein.
mix-left-as-planned = Wie geplant: weiter
mix-left-do = Rest festhalten
mix-took-more = Diese Bahnen brauchten { $used }, geplant waren { $planned }. Sehen Sie nach Düse, Druck und Schlauch und nach Ihrem Tempo. Was angesetzt ist, bleibt, wie es ist: Nachgesteuert wird, wenn der Durchgang fertig ist.
mix-took-less = Diese Bahnen brauchten { $used }, geplant waren { $planned }. Ist die Düse verstopft? Nie durchblasen. Ist der Druck niedrig, oder wurde eine Bahn ausgelassen? Nachgesteuert wird, wenn der Durchgang fertig ist.
left-is-known = Was noch im Tank ist, ist schon bekannt.
record-left-measured = davor waren { $left } übrig; bis dahin gingen { $used } hinaus, geplant waren { $planned }
record-left-as-planned = davor sollten { $left } übrig sein; niemand sah nach

# Wie lange es dauerte
correct-walked = Gegangen in
correct-walked-planned = Geplante Zeit
record-pass-time = { $walked } gegangen, { $planned } geplant

# Warum ein Durchgang abwich
strayed-heading = Warum?
strayed-less-in-planned-time = Er brauchte { $percent } weniger als er sollte, in der geplanten Zeit.
strayed-less-in-less-time = Er brauchte { $percent } weniger als er sollte, und weniger Zeit.
strayed-more-in-planned-time = Er brauchte { $percent } mehr als er sollte, in der geplanten Zeit.
strayed-more-in-more-time = Er brauchte { $percent } mehr als er sollte, und mehr Zeit.
strayed-hint = Das Wahrscheinlichste zuerst. Es geht in die Aufzeichnung und in das, was geraten wird.
strayed-do = Daran lag es
strayed-change = Es lag an etwas anderem
pass-cause-nozzle_blocked = Die Düse oder ihr Sieb war verstopft
pass-cause-nozzle_worn = Die Düse ist verschlissen, oder eine andere ist drauf
pass-cause-pressure_low = Der Druck war niedrig
pass-cause-pressure_high = Der Druck war hoch
pass-cause-missed_strip = Eine Bahn wurde ausgelassen
pass-cause-pace_quick = Ich ging schneller
pass-cause-pace_slow = Ich ging langsamer
pass-cause-leak = Etwas war undicht
pass-cause-unknown = Ich weiß es nicht
cause-advice-nozzle-blocked = Lassen Sie den Druck ab, nehmen Sie Düse und Sieb mit Handschuhen heraus, und spülen oder bürsten Sie sie über dem Tank. Nie mit dem Mund durchblasen. Die kommenden Durchgänge werden wieder wie geplant angenommen; Boden, der zu wenig bekam, wird nicht auf Verdacht zweimal gespritzt.
cause-advice-nozzle-worn = Bis eine andere Düse drauf und ausgelitert ist, wird für die kommenden Durchgänge derselbe Verbrauch angenommen. Litern Sie vor dem nächsten Rasen aus.
cause-advice-pressure-low = Pumpen Sie wie beim Auslitern. Die kommenden Durchgänge werden wieder wie geplant angenommen.
cause-advice-pressure-high = Pumpen Sie wie beim Auslitern. Hoher Druck macht feine Tropfen, die abdriften. Die kommenden Durchgänge werden wieder wie geplant angenommen.
cause-advice-missed-strip = Nehmen Sie die Ablesung zurück, spritzen Sie die ausgelassene Bahn jetzt im üblichen Tempo, und lesen Sie den Tank noch einmal ab. Nur eine Bahn, bei der Sie sicher sind: Zweimal ist zu viel.
cause-advice-pace-quick = Gehen Sie nach dem Takt, oder so weiter: Für die kommenden Durchgänge wird so wenig Verbrauch angenommen.
cause-advice-pace-slow = Gehen Sie nach dem Takt, oder so weiter: Für die kommenden Durchgänge wird so viel Verbrauch angenommen.
cause-advice-leak = Halten Sie an, bis sie dicht ist. Was auslief, liegt an einer Stelle: Halten Sie Menschen und Tiere davon fern, und tun Sie, was das Etikett zum Verschütten sagt. Geben Sie kein Mittel dafür dazu.
cause-advice-unknown = Litern Sie die Düse vor dem nächsten Durchgang aus. Für die kommenden Durchgänge wird derselbe Verbrauch angenommen.

# Pausen
pause-tell = Warum haben Sie angehalten?
pause-another-day-heading = An einem anderen Tag fertig machen
pause-another-day-hint = Der Einsatz wird mit einer Teilaufzeichnung geschlossen, und der Rest des Rasens wartet auf der ersten Seite. In der Spritze wird keine Brühe aufbewahrt: Was übrig ist, wird verbraucht, wo die Aufwandmenge es erlaubt, oder aufbewahrt, wie Ihr Recht es sagt, und die Spritze wird gewaschen.
pause-another-day-do = Für heute aufhören
stop-reason-another_day = Der Rest an einem anderen Tag
deviation-stopped-another-day = Abgebrochen: der Rest wird an einem anderen Tag behandelt
deviation-paused-weather = Pause: das Wetter

# Ursachen in der Aufzeichnung
deviation-pass-cause-nozzle-blocked = Die Düse war verstopft: Verbrauch in diesem Durchgang
deviation-pass-cause-nozzle-worn = Die Düse ist verschlissen, oder eine andere war drauf: Verbrauch in diesem Durchgang
deviation-pass-cause-pressure-low = Der Druck war niedrig: Verbrauch in diesem Durchgang
deviation-pass-cause-pressure-high = Der Druck war hoch: Verbrauch in diesem Durchgang
deviation-pass-cause-missed-strip = Eine Bahn wurde ausgelassen: Verbrauch in diesem Durchgang
deviation-pass-cause-pace-quick = Schneller gegangen: Verbrauch in diesem Durchgang
deviation-pass-cause-pace-slow = Langsamer gegangen: Verbrauch in diesem Durchgang
deviation-pass-cause-leak = Etwas war undicht: Verbrauch in diesem Durchgang
deviation-pass-cause-unknown = Ein Durchgang brauchte mehr oder weniger, niemand weiß warum: Verbrauch in diesem Durchgang

# Zurücknehmen
undo-to = Bis hierher zurücknehmen
undo-older = { $n ->
    [one] Ein älterer Schritt wird aufgeführt, sobald diese zurückgenommen sind.
   *[other] { $n } ältere Schritte werden aufgeführt, sobald diese zurückgenommen sind.
}
undo-with = { $n ->
    [one] Nimmt diesen Schritt zurück.
   *[other] Nimmt { $n } Schritte zurück.
}
step-left-read = Vor Füllung { $fill } wurde in den Tank gesehen
step-cause-told = Warum Durchgang { $pass } abwich
step-pause-reason-told = Warum angehalten wurde

# Reste und Spülwasser
using-up-part-on-strips = Spritzen Sie es auf die Bahnen { $first } bis { $last }, auf der Zeichnung markiert: { $ground }, wo mindestens { $area } nötig sind.
using-up-part-several-times = Spritzen Sie es auf die Bahnen { $first } bis { $last }, auf der Zeichnung markiert: { $ground }, wo mindestens { $area } nötig sind. Das ist mehr, als ein Durchgang dort braucht: Gehen Sie sie { $times } Mal.
term-whole-pass-takes = Ein ganzer Durchgang braucht
term-product-left = Mittel, das übrig ist
term-dose-still-open = Von der höchsten Aufwandmenge dort noch offen
term-smallest-ground = Mittel durch Aufwandmenge: die kleinste Fläche
drawing-marked = Die Bahnen, die den Rest nehmen: { $strips }
rinsings-heading = Das Spülwasser
rinsings-product = Mittel in Pumpe, Schlauch und Lanze
rinsings-fit = Das Spülwasser darf auf den Rasen, verteilt auf mindestens diese Fläche, auf Boden, der den Rest nicht nahm.
rinsings-are-waste = Die höchste Aufwandmenge ist erreicht: Das Spülwasser darf nirgends auf diesen Rasen. Fangen Sie es in einem beschrifteten Behälter auf; Etikett und Recht an Ihrem Ort sagen, wer es nimmt. Nie in einen Abfluss, einen Graben oder ein Gewässer.

# Die Probe auf Pflaster
trial-offer = Beim ersten Mal oder mit einer neuen Düse: Gehen Sie eine abgesteckte Länge auf Pflaster mit klarem Wasser. Das gibt Durchfluss, Tempo und Takt auf einmal.
trial-heading = Probe auf Pflaster
trial-how-mark = Stecken Sie eine Länge auf trockenem Pflaster ab, etwa zehn Meter, mit Kreide oder zwei Stäben. Nur klares Wasser in einer sauberen Spritze.
trial-how-water = Füllen Sie die Spritze wie für einen Rasen, und setzen Sie sie auf: Das Gewicht gehört zu Ihrem Tempo.
trial-how-prime = Spritzen Sie, bis der Fächer gleichmäßig ist, und füllen Sie dann bis zu einer Marke am Tank auf, die Sie genau ablesen können.
trial-how-walk = Spritzen Sie von der ersten Marke zur zweiten wie auf einem Rasen. Tippen Sie, wenn Sie an einer Marke vorbeigehen, und spritzen Sie nur dazwischen. Einige Längen sind eine Runde; vier sind gut.
trial-how-refill = Gießen Sie nach jeder Runde Wasser aus dem Messbecher bis zur Marke nach, und halten Sie fest, wie viel. Drei Runden oder mehr.
trial-how-width = Messen Sie, solange das Pflaster nass ist, wie breit es nass ist.
trial-length = Abgesteckte Länge
trial-so-far = Bisher
trial-tally = { $walks ->
    [one] Eine Länge
   *[other] { $walks } Längen
} gegangen, { $rounds ->
    [one] eine Runde
   *[other] { $rounds } Runden
} nachgegossen
trial-after = Nach dieser Länge
trial-steps = Schritte der letzten Länge
trial-steps-hint = Falls Sie sie gezählt haben: Sie geben Ihren Takt.
trial-poured = Bis zur Marke nachgegossen
trial-poured-hint = Für { $seconds } Spritzen. Leer gelassen, gehört die nächste Länge zu derselben Runde.
trial-poured-do = Die Runde ist fertig
trial-width-heading = Die nasse Breite
trial-width-now = Arbeitsbreite nach den Breiten bisher: { $swath }.
trial-width = Nasse Breite
trial-width-do = Diese Breite beim Gerät behalten
trial-to-figures = Zu den Zahlen, und behalten
trial-start = Los an der ersten Marke
trial-stop = An der zweiten Marke
