# Der Takt der Schritte, was das Telefon mit Ton und Vibration sagt, die Sperre, und wie die App aussieht und klingt.

## Beim Gehen
strip-to-the-back = Von vorn weg
strip-to-the-front = Nach vorn
strip-to-the-right = Nach rechts
strip-to-the-left = Nach links
strip-round-the-edge = Am Rand herum
walk-begin = Ich beginne jetzt
walk-strip-start = Bahn { $strip } beginnen
walk-strip-counts-itself = { $length }. Zählt sich nach { $seconds } selbst; tippen, wenn Sie früher fertig sind.
beat-begin = Mit dem Takt beginnen
beat-start = Takt
beat-trial = Die nächste Strecke in diesem Takt gehen
beat-stop = Takt anhalten
beat-narrow = Restbahn: { $steps }
beat-no-steps = Kein Takt: Bei der Gehprobe wurden mit diesem Gerät keine Schritte gezählt. Zählen Sie sie beim nächsten Messen.
beat-sign-alt = Der Takt Ihrer Schritte: Die Sohle, die aufsetzt, ist gefüllt.
beat-foot-left = Links
beat-foot-right = Rechts
beat-pump = Pumpe
walk-leave-ask = Noch beim Gehen. Verlassen?
walk-leave-stay = Bleiben
walk-leave-do = Verlassen

## Laut gesagt
walk-say-pass = Durchgang { $pass } von { $of }.
walk-say-strip = Bahn { $strip } von { $of }, { $length }.
walk-say-refill = Nach dieser Bahn nachfüllen.
walk-say-pass-end = Letzte Bahn dieses Durchgangs.

## Die Sperre
lock-do = Sperren
lock-heading = Gegen Berührung gesperrt
lock-next = Der Klicker geht weiter. Sein nächster Druck: { $next }.
lock-slide = Zum Entsperren schieben
lock-numbers = Oder 1, 2, 3 der Reihe nach drücken.
lock-number = Entsperren: { $number } drücken

## Wie es aussieht und klingt
look-heading = Wie es aussieht und klingt
look-open = Aussehen, Klang und Takt
look-done = Zurück zu den Rasenflächen
look-page = Die Seite
look-theme = Licht
theme-auto = Wie das Gerät
theme-day = Tag
theme-dusk = Dämmerung
look-motion = Bewegte Bilder
motion-auto = Wie das Gerät
motion-still = Still halten
look-hand = Die Hand, die das Telefon hält
look-hand-hint = Was seltener getippt wird, liegt auf der Seite ihres Daumens.
hand-right = Rechts
hand-left = Links
look-sound = Ton und Vibration
look-with-sound = Ton, Vibration und Stimme
look-volume = Lautstärke
look-volume-n = Lautstärke { $n } von { $of }
look-vibration = Vibration
look-no-vibration = Dieses Gerät kann nicht vibrieren oder lässt es die App nicht.
look-voice = Jeden Schritt laut sagen
look-voice-hint = Mit der Stimme des Geräts, in der Sprache der App.
look-no-voice = Dieses Gerät hat keine Stimme für die App.
look-voice-try = Stimme hören
look-signals = Was das Telefon aus der Tasche sagt
look-signals-hint = Jedes hat einen eigenen Ton und eine eigene Vibration. Probieren Sie sie.
look-try = Probieren
signal-accepted = Ein Tipp ist festgehalten
signal-accepted-like = Ein kurzer hoher Tick; ein kurzes Brummen.
signal-counted = Eine Bahn hat sich selbst gezählt
signal-counted-like = Zwei kurze hohe Ticks, der zweite höher; zweimal kurzes Brummen.
signal-refused = Ein Tipp wurde abgelehnt
signal-refused-like = Ein tiefer Ton; dreimal kurzes Brummen.
signal-refill = Nach dieser Bahn wird nachgefüllt
signal-refill-like = Tief und hoch, zweimal; kurzes und langes Brummen, zweimal.
signal-pass = Die letzte Bahn des Durchgangs
signal-pass-like = Drei fallende Töne, der letzte lang; dreimal Brummen, immer kürzer.
signal-paused = Pause
signal-paused-like = Zwei lange tiefe Töne; ein langes Brummen.
look-pouch-hint = Bahn für Bahn richten sich Nachfüllen und Ende des Durchgangs nach der Zählung. Nach Durchgängen richten sie sich nach der geplanten Zeit seit Ihrem Beginn; das Wenden zählt nicht mit, also kommen sie eher zu früh als zu spät.
look-beat = Der Takt
look-beat-hint = Er schlägt die Schritte, die bei der Gehprobe gezählt wurden, und langsamer auf einer Restbahn, die langsamer gegangen wird.
look-beat-when = Wann er schlägt
beat-when-off = Nie
beat-when-first = Auf der ersten Bahn jedes Durchgangs
beat-when-throughout = Den ganzen Weg
look-beat-itself = Von selbst beginnen, wenn ein Durchgang kommt
look-beat-itself-more = Sonst beginnt er mit einem Tipp. Bahn für Bahn beginnt er mit der Bahn.
look-timbre = Klang eines Schritts
timbre-wood = Holz
timbre-bell = Glocke
timbre-drum = Trommel
look-foot = Der Fuß, der beginnt
foot-left = Links
foot-right = Rechts
look-pump = Züge am Hebel
look-pump-hint = Ein Zug auf so viele Schritte: was beim Messen den Druck gleich hielt. Übliche Praxis, ohne Quelle. Eine Pumpe mit Motor braucht keinen.
look-pump-n = { $n ->
    [0] keine Züge
    [one] ein Zug mit jedem Schritt
   *[other] ein Zug alle { $n } Schritte
}
look-beat-try = Takt probieren
look-beat-try-hint = Probiert mit { $steps }, einem Beispiel. Beim Gehen schlägt er Ihre eigenen.
look-strips = Bahn für Bahn
look-strip-count = Was eine Bahn zählt
strip-count-two = Ein Tipp, wo sie beginnt, und einer, wo sie endet
strip-count-one = Ein Tipp, wo sie endet
strip-count-time = Ein Tipp, wo sie beginnt, dann ihre geplante Zeit
look-strip-time-hint = Zu früh gezählt? Nehmen Sie es zurück und tippen Sie, wenn Sie da sind.
