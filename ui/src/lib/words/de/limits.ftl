# Worte der Grenzwerte, nach denen ein Anwender arbeitet.
limits-heading = Grenzwerte des Tages
limits-profile = Nach wessen Grenzwerten arbeiten Sie?
limits-profile-hint = Wind, Temperatur und Kanten. Ein Grenzwert des Etiketts geht vor.
limits-of-united_kingdom = Vereinigtes Königreich, Leitfaden
limits-of-neutral = Neutral, für überall sonst
limits-of-own = Meine eigenen
limits-own-hint = Was Sie leer lassen, kommt aus den neutralen.
limits-wind-calm = Windstill unter
limits-wind-most = Zu windig ab
limits-temp-low = Zu kalt unter
limits-temp-high = Zu warm über
limits-keep-back = Abstand von einer Kante, auf die der Wind weht
limits-reminder = Wetter wieder ansehen nach
limits-rows = Jeder Grenzwert und seine Quelle ({ $n })
limits-seen = Die Quelle wurde gesehen.
limits-not-seen = Aus dem Gedächtnis oder allgemein üblich: Die Quelle wurde nicht gesehen.
