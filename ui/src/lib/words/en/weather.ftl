### Words of the weather's panel beyond the form in visit.ftl: looking again, the air, each edge, ground kept dry.

weather-sky = The sky
sky-clear = Clear
sky-cloudy = Cloudy
sky-mist = Mist, smoke or dust hangs
weather-deeper = More: compass, gusts measured, humidity
weather-wind-from = By the compass: where does it come from?
weather-wind-from-hint = Instead of the side of the lawn above. The lawn’s own direction must be known.
compass-N = North
compass-NE = North-east
compass-E = East
compass-SE = South-east
compass-S = South
compass-SW = South-west
compass-W = West
compass-NW = North-west
weather-wind-degrees = Or by name or in degrees
weather-gust-speed = Strongest gust
weather-gust-speed-hint = By the same meter at the same height.
weather-humidity = Relative humidity
weather-humidity-hint = With the temperature it tells how fast drops dry.
weather-altitude = Height above the sea
weather-altitude-hint = Left empty near the sea.
weather-look-now = Look at the weather
weather-as-before = Looked: it is as it was
weather-as-before-more = Written down anew with this time.
weather-has-changed = It has changed
weather-due-on-walk = Weather

air-heading = The air
air-drying-difference = Drying difference
air-wet-bulb = Wet bulb
air-dew-point = Dew point
air-pressure = Air pressure
air-informs = This informs. It does not decide.

edges-heading = The wind at each edge
keep-back-heading = What can still be done
keep-back-left = Can be treated
keep-back-all = Without it
keep-back-width = Keep dry along these edges
keep-back-width-hint = Left empty, the width above is taken.
keep-back-do = Keep this ground dry and plan anew
keep-back-give-back = Treat it after all and plan anew
