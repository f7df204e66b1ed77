"""The job itself: everything that is true with the lights off."""
