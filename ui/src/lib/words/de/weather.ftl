### Worte des Wetters über das Formular in visit.ftl hinaus: wieder ansehen, die Luft, jede Kante, trocken gehaltener Boden.

weather-sky = Der Himmel
sky-clear = Klar
sky-cloudy = Bewölkt
sky-mist = Nebel, Rauch oder Staub hängt
weather-deeper = Mehr: Himmelsrichtung, Böen, Luftfeuchte
weather-wind-from = Nach dem Kompass: Woher kommt er?
weather-wind-from-hint = Statt der Seite des Rasens oben. Die Lage des Rasens muss bekannt sein.
compass-N = Norden
compass-NE = Nordosten
compass-E = Osten
compass-SE = Südosten
compass-S = Süden
compass-SW = Südwesten
compass-W = Westen
compass-NW = Nordwesten
weather-wind-degrees = Oder als Name oder in Grad
weather-gust-speed = Stärkste Böe
weather-gust-speed-hint = Mit demselben Messer in derselben Höhe.
weather-humidity = Relative Luftfeuchte
weather-humidity-hint = Mit der Temperatur sagt sie, wie schnell Tropfen trocknen.
weather-altitude = Höhe über dem Meer
weather-altitude-hint = Leer gelassen nahe am Meer.
weather-look-now = Wetter ansehen
weather-as-before = Nachgesehen: Es ist wie vorher
weather-as-before-more = Neu festgehalten mit dieser Uhrzeit.
weather-has-changed = Es hat sich geändert
weather-due-on-walk = Wetter

air-heading = Die Luft
air-drying-difference = Trocknungsdifferenz
air-wet-bulb = Feuchttemperatur
air-dew-point = Taupunkt
air-pressure = Luftdruck
air-informs = Das unterrichtet. Es entscheidet nicht.

edges-heading = Der Wind an jeder Kante
keep-back-heading = Was noch zu machen ist
keep-back-left = Kann behandelt werden
keep-back-all = Ohne das
keep-back-width = An diesen Kanten trocken halten
keep-back-width-hint = Leer gelassen, gilt die Breite oben.
keep-back-do = Diesen Boden trocken halten und neu planen
keep-back-give-back = Doch behandeln und neu planen
