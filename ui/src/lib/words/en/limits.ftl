# Words of the limits that an operator works by.
limits-heading = Limits of the day
limits-profile = Whose limits do you work by?
limits-profile-hint = Wind, temperature and edges. A label’s own limit comes first.
limits-of-united_kingdom = United Kingdom, code of practice
limits-of-neutral = Neutral, for anywhere else
limits-of-own = My own
limits-own-hint = What you leave empty is taken from the neutral ones.
limits-wind-calm = Calm below
limits-wind-most = Too windy from
limits-temp-low = Too cold below
limits-temp-high = Too warm above
limits-keep-back = Keep back from an edge the wind blows to
limits-reminder = Look at the weather again after
limits-rows = Each limit and its source ({ $n })
limits-seen = The source was seen.
limits-not-seen = From memory or common practice: the source was not seen.
