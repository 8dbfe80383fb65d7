# Einheiten, wie sie hinter einer Zahl stehen. $n ist die Zahl, für Wörter, die sich mit ihr ändern.
unit-m = m
unit-cm = cm
unit-ft = Fuß
unit-in = Zoll
unit-yd = yd
unit-m2 = m²
unit-ft2 = ft²
unit-yd2 = yd²
unit-ha = ha
unit-acre = { $n ->
    [one] Acre
   *[other] Acres
}
unit-L = L
unit-mL = mL
unit-gal_us = US-gal
unit-qt_us = US-qt
unit-pt_us = US-pt
unit-fl_oz_us = US-fl-oz
unit-gal_imp = imp gal
unit-pt_imp = imp pt
unit-fl_oz_imp = imp fl oz
unit-g = g
unit-kg = kg
unit-oz = oz
unit-lb = lb
unit-s = s
unit-min = min
unit-hour = { $n ->
    [one] Stunde
   *[other] Stunden
}
unit-day = { $n ->
    [one] Tag
   *[other] Tage
}
unit-month = { $n ->
    [one] Monat
   *[other] Monate
}
unit-L-per-min = L/min
unit-mL-per-min = mL/min
unit-gal_us-per-min = US-gal/min
unit-m-per-s = m/s
unit-km-per-h = km/h
unit-mph = mph
unit-ft-per-min = ft/min
unit-kn = { $n ->
    [one] Knoten
   *[other] Knoten
}
unit-mL-per-m2 = mL/m²
unit-mL-per-100m2 = mL/100 m²
unit-L-per-100m2 = L/100 m²
unit-L-per-ha = L/ha
unit-gal-per-1000ft2 = US-gal/1000 ft²
unit-fl_oz-per-1000ft2 = US-fl-oz/1000 ft²
unit-gal-per-acre = US-gal/Acre
unit-fl_oz-per-acre = US-fl-oz/Acre
unit-g-per-m2 = g/m²
unit-g-per-100m2 = g/100 m²
unit-kg-per-ha = kg/ha
unit-oz-per-1000ft2 = oz/1000 ft²
unit-lb-per-1000ft2 = lb/1000 ft²
unit-lb-per-acre = lb/Acre
unit-mL-per-L = mL/L
unit-g-per-L = g/L
unit-g-per-mL = g/mL
unit-kg-per-L = kg/L
unit-bar = bar
unit-kPa = kPa
unit-psi = psi
unit-deg = °
unit-degC = °C
unit-degF = °F
unit-pt_imp-per-min = imp pt/min
unit-fl_oz_imp-per-min = imp fl oz/min
unit-gal_imp-per-acre = imp gal/Acre
unit-fl_oz_imp-per-yd2 = imp fl oz/yd²
unit-pt_imp-per-100yd2 = imp pt/100 yd²
unit-fl_oz_imp-per-100yd2 = imp fl oz/100 yd²
unit-oz-per-yd2 = oz/yd²
unit-oz-per-100yd2 = oz/100 yd²
unit-fl_oz_imp-per-gal_imp = imp fl oz/imp gal
unit-oz-per-gal_imp = oz/imp gal
unit-K = °C
unit-percent = %
unit-times = { $n ->
    [one] Mal
   *[other] Mal
}
unit-steps = { $n ->
    [one] Schritt
   *[other] Schritte
}
unit-steps-per-min = Schritte/min
unit-passes = { $n ->
    [one] Durchgang
   *[other] Durchgänge
}
unit-pH = pH
unit-mg-per-L = mg/L
unit-ppm = ppm
unit-dH = °dH
unit-percent_ww = % (Masse)
unit-percent_wv = % (Masse je Volumen)
unit-g-per-kg = g/kg
