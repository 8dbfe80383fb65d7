# Der Tag: Luft, Himmel, Böen, vor dem Wind trocken gehaltener Boden, und wann wieder nachzusehen ist.

# How fast a drop dries: information beside the wind, never a Stop.
drying-worked-out = Ein Tropfen trocknet bei einem Unterschied von { $value } zwischen trockener und feuchter Luft.
drying-slow = Tropfen trocknen langsam: { $value } zwischen trockener und feuchter Luft; gewünscht sind mindestens { $limit }. Sie hängen länger in der Luft.
drying-fine = Tropfen trocknen, wie sie sollen: { $value } zwischen trockener und feuchter Luft, bis { $limit }.
drying-fast = Tropfen trocknen schnell: { $value } zwischen trockener und feuchter Luft, über { $limit }. Größere Tropfen und eine frühere Stunde helfen.
drying-too-fast = Tropfen trocknen zu schnell: { $value } zwischen trockener und feuchter Luft, über { $limit }. Warten Sie auf eine kühlere, feuchtere Stunde.

gust-below-wind = Böen sind mindestens so stark wie der Wind: Sehen Sie noch einmal auf den Messer.
gust-without-meter = Die Stärke der Böen gehört zu einer Messung: Geben Sie auch den Wind nach dem Messer an, oder lassen Sie es leer.
gusts-too-strong = Böen von { $value } sind zu stark: höchstens { $limit }.

# Still, layered air near the ground carries fine drops far.
inversion-calm-and-clear = Windstill unter klarem Himmel: Die Luft kann geschichtet liegen und feine Tropfen weit tragen, am ehesten von 17 bis 19 Uhr und bis nach Sonnenaufgang. Warten Sie, bis sie sich rührt.
inversion-mist-hangs = Nebel, Rauch oder Staub hängt in stiller Luft: Sie liegt geschichtet und trägt feine Tropfen weit. Warten Sie, bis es aufklart.
inversion-mist-in-wind = Nebel, Rauch oder Staub hängt, obwohl Wind geht: Sehen Sie nach, ob die Luft geschichtet liegt.
inversion-no-sign = Kein Zeichen, dass die Luft geschichtet liegt.
inversion-not-looked-for = Niemand hat nachgesehen, ob Nebel oder Rauch hängt oder ob es unter klarem Himmel windstill ist.

keep-back-no-edge = Der zuletzt gesehene Wind weht auf keine Kante, die frei bleiben muss: Es ist kein Abstand zu halten.
keep-back-nothing-kept = Zurzeit wird kein Boden trocken gehalten.
keep-back-no-wider-than-the-margin = Der Randstreifen dort ist schon so breit: Geben Sie eine größere Breite an.
keep-back-offered = Mit { $width } trocken an den Kanten, auf die der Wind weht, lassen sich noch { $left } von { $all } machen.
keep-back-kept = { $width } bleiben an den Kanten trocken, auf die der Wind weht: Heute werden { $left } von { $all } gemacht.

limit-not-above-calm = Der stärkste Wind muss über dem liegen, was als windstill gilt.
limit-not-above-lowest = Die höchste Temperatur muss über der niedrigsten liegen.
limit-wind-calm = Windstill unter
limit-wind-ideal-from = Gut ab
limit-wind-ideal-to = Gut bis
limit-wind-most = Zu stark ab
limit-temperature-lowest = Zu kalt unter
limit-temperature-highest = Zu heiß über
limit-drying-least = Tropfen trocknen langsam unter
limit-drying-most = Tropfen trocknen schnell über
limit-drying-avoid = Tropfen trocknen zu schnell über
limit-keep-back = Trocken gehalten an einer Kante, auf die der Wind weht
limit-reminder = Wetter wieder ansehen nach

not-a-compass-direction = Geben Sie die Windrichtung als Himmelsrichtung an, etwa SW, oder in Grad von 0 bis 360.
wind-direction-told-twice = Die Richtung ist zweimal genannt, nach dem Kompass und nach der Seite des Rasens: Lassen Sie eine leer.
weather-due-after-a-while = Seit dem letzten Blick aufs Wetter: { $value }. Sehen Sie noch einmal nach ({ $limit }).
weather-due-at-end = Sehen Sie noch einmal nach dem Wetter: Die Aufzeichnung sagt, wie es am Ende war.
weather-due-at-fill = Sehen Sie vor dieser Füllung nach dem Wetter.

wind-lawn-bearing-unknown = Der Wind ist nach dem Kompass genannt, und niemand weiß, wie der Rasen liegt: Nennen Sie die Seite, zu der er weht, oder tragen Sie die Lage des Rasens ein.
wind-may-reach-edge = Der Wind kann hierhin reichen: { $beside }. Er ist nur ungefähr genannt.
wind-strength-unknown = Niemand weiß, wie stark der Wind hier ist: { $beside }.
wind-towards-edge-kept-back = Der Wind weht hierhin: { $beside }. Der Boden davor bleibt trocken.

# Where limits of the day stand
australian-weather-bureau = Wetterdienst Australiens, wie Beratungsblätter ihn zitieren
australian-spray-advice = Australische Beratung zum Spritzen
us-stewardship-default = Beratungsseiten der USA zum Pflanzenschutz, wo ein Etikett schweigt
extension-inversion-guides = Beratungsblätter zu Inversionslagen
