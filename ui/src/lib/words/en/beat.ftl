# The beat of the steps, what the phone says by sound and vibration, the lock, and how the app looks and sounds.

## On the walk
strip-to-the-back = Away from the front
strip-to-the-front = Towards the front
strip-to-the-right = To the right
strip-to-the-left = To the left
strip-round-the-edge = Round the edge
walk-begin = I begin now
walk-strip-start = Start strip { $strip }
walk-strip-counts-itself = { $length }. Counts itself after { $seconds }; touch when you are done before.
beat-begin = Begin with the beat
beat-start = Beat
beat-trial = Walk the next length to this beat
beat-stop = Stop the beat
beat-narrow = Narrow strip: { $steps }
beat-no-steps = No beat: steps were not counted in this kit’s timed walk. Count them when you measure it again.
beat-sign-alt = The beat of your steps: the sole that comes down is filled.
beat-foot-left = Left
beat-foot-right = Right
beat-pump = Pump
walk-leave-ask = Still on the walk. Leave it?
walk-leave-stay = Stay
walk-leave-do = Leave

## Said aloud
walk-say-pass = Pass { $pass } of { $of }.
walk-say-strip = Strip { $strip } of { $of }, { $length }.
walk-say-refill = Refill after this strip.
walk-say-pass-end = Last strip of this pass.

## The lock
lock-do = Lock
lock-heading = Locked against touches
lock-next = The clicker goes on. Its next press: { $next }.
lock-slide = Slide to unlock
lock-numbers = Or press 1, 2, 3 in this order.
lock-number = Unlock: press { $number }

## How it looks and sounds
look-heading = How it looks and sounds
look-open = How it looks, sounds and beats
look-done = Back to the lawns
look-page = The page
look-theme = Light
theme-auto = As the device
theme-day = Day
theme-dusk = Dusk
look-motion = Moving pictures
motion-auto = As the device
motion-still = Keep them still
look-hand = The hand that holds the phone
look-hand-hint = Small acts go to the side of its thumb.
hand-right = Right
hand-left = Left
look-sound = Sound and vibration
look-with-sound = Sound, vibration and voice
look-volume = Volume
look-volume-n = Volume { $n } of { $of }
look-vibration = Vibration
look-no-vibration = This device cannot vibrate, or does not let the app.
look-voice = Say each step aloud
look-voice-hint = By the voice of the device, in the language of the app.
look-no-voice = This device has no voice for the app.
look-voice-try = Hear the voice
look-signals = What the phone says from the pouch
look-signals-hint = Each has its own sound and its own vibration. Try them.
look-try = Try it
signal-accepted = A tap was written down
signal-accepted-like = One short high tick; one short buzz.
signal-counted = A strip counted itself
signal-counted-like = Two short high ticks, the second higher; two short buzzes.
signal-refused = A tap was refused
signal-refused-like = One low tone; three short buzzes.
signal-refill = The refill comes after this strip
signal-refill-like = Low and high, twice; short and long buzzes, twice.
signal-pass = The last strip of the pass
signal-pass-like = Three tones going down, the last one long; three buzzes that get shorter.
signal-paused = Paused
signal-paused-like = Two long deep tones; one long buzz.
look-pouch-hint = Strip by strip the refill and the end of a pass are told by the count. By pass they are told by the planned time since you began; turning is not in it, so they come early rather than late.
look-beat = The beat
look-beat-hint = It beats at the steps that were counted in your timed walk, and slower on a narrow strip that is walked slower.
look-beat-when = When it beats
beat-when-off = Never
beat-when-first = On the first strip of each pass
beat-when-throughout = All the way
look-beat-itself = Begin by itself when a pass comes up
look-beat-itself-more = Else it begins with a touch. Strip by strip it begins with the strip.
look-timbre = Sound of a step
timbre-wood = Wood
timbre-bell = Bell
timbre-drum = Drum
look-foot = The foot that begins
foot-left = Left
foot-right = Right
look-pump = Strokes of the lever
look-pump-hint = One stroke with every so many steps: what kept the pressure steady when you measured. Common practice, no source. A pump with a motor needs none.
look-pump-n = { $n ->
    [0] no strokes
    [one] a stroke with every step
   *[other] a stroke every { $n } steps
}
look-beat-try = Try the beat
look-beat-try-hint = Tried at { $steps }, an example. On the walk it beats at your own.
look-strips = Strip by strip
look-strip-count = What counts a strip
strip-count-two = A touch where it begins and one where it ends
strip-count-one = One touch where it ends
strip-count-time = A touch where it begins, then its planned time
look-strip-time-hint = Counted too early? Take it back and touch when you are there.
