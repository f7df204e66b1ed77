"""Tables as figures: schedules, index, key of materials, list of what is asked."""
