"""Ready beginnings: shapes of the outline, build-ups of the floor, ways of the drain."""
